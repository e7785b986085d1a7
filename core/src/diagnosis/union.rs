//! The probability that one of several causes is there: of a family that readings cannot part, of a job that mends all.
//!
//! A pair of causes that lies within one union counts once, so that a union is never more probable than it is.

use super::hypothesis::Hypothesis;
use super::outcome::{FamilyShares, JobShares};
use super::tally::NEGLIGIBLE_NATS;
use crate::cause::Cause;
use crate::exponential::exponential;
use crate::job::{Family, Job};

/// Weights of the unions of causes, a pair that lies within one counted once.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Unions {
    families: FamilyShares,
    jobs: JobShares,
    all: f32,
    top: f32,
    /// Whether a valve meters the liquid, which sets what each job mends.
    valve: bool,
}

impl Unions {
    pub(crate) const fn new(valve: bool) -> Self {
        Self { families: FamilyShares::NONE, jobs: JobShares::NONE, all: 0.0, top: -1.0e30, valve }
    }
    /// Forgets all weights.
    pub(super) fn clear(&mut self) {
        *self = Self::new(self.valve);
    }

    pub(super) fn add(&mut self, hypothesis: &Hypothesis, ln: f32) {
        if ln > self.top {
            let lighter = exponential((self.top - ln).max(-80.0));
            for sum in self.families.0.iter_mut().chain(&mut self.jobs.0).chain([&mut self.all]) {
                *sum *= lighter;
            }
            self.top = ln;
        } else if ln < self.top - NEGLIGIBLE_NATS {
            return;
        }
        let weight = exponential(ln - self.top);
        self.all += weight;
        if hypothesis.unlisted.is_some() {
            return;
        }
        let present = hypothesis.presence * weight;
        let holds = |causes: &[Cause]| hypothesis.causes.iter().flatten().any(|cause| causes.contains(cause));
        for (sum, family) in self.families.0.iter_mut().zip(Family::ALL) {
            if holds(family.causes()) {
                *sum += present;
            }
        }
        for (sum, job) in self.jobs.0.iter_mut().zip(Job::ALL) {
            if *job == Job::None {
                *sum += weight - present;
            } else if holds(job.causes(self.valve)) {
                *sum += present;
            }
        }
    }

    /// The families' probabilities.
    pub(super) fn families(&self) -> FamilyShares {
        FamilyShares(self.families.0.map(|sum| self.share(sum)))
    }
    /// The jobs' probabilities.
    pub(super) fn jobs(&self) -> JobShares {
        JobShares(self.jobs.0.map(|sum| self.share(sum)))
    }
    fn share(&self, sum: f32) -> f32 {
        (sum / self.all.max(1.0e-30)).min(1.0)
    }
}
