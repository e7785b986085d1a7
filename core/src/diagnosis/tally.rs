//! Sums of weights whose logarithms are given: over everything, over each cause, and the severity within it.

use super::hypothesis::Hypothesis;
use crate::cause::Cause;
use crate::exponential::exponential;

/// A sum of exponentials kept as its logarithm.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Sum {
    top: f32,
    rest: f32,
}

impl Sum {
    pub(crate) const fn new() -> Self {
        Self { top: -1.0e30, rest: 0.0 }
    }
    pub(crate) fn add(&mut self, ln: f32) {
        if ln > self.top {
            self.rest = self.rest * exponential((self.top - ln).max(-80.0)) + 1.0;
            self.top = ln;
        } else if ln > self.top - 12.0 {
            self.rest += exponential(ln - self.top);
        }
    }
    pub(crate) fn ln(&self) -> f32 {
        if self.rest > 0.0 { self.top + libm::logf(self.rest) } else { self.top }
    }
}

/// A mean whose weights' logarithms are given, with the logarithm of their sum.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Mean {
    sum: Sum,
    weighted: f32,
}

impl Mean {
    pub(crate) const fn new() -> Self {
        Self { sum: Sum::new(), weighted: 0.0 }
    }
    pub(crate) fn add(&mut self, value: f32, ln: f32) {
        let before = self.sum;
        self.sum.add(ln);
        if self.sum.top > before.top {
            self.weighted = self.weighted * exponential((before.top - ln).max(-80.0)) + value;
        } else {
            self.weighted += value * (self.sum.rest - before.rest);
        }
    }
    pub(crate) fn ln(&self) -> f32 {
        self.sum.ln()
    }
    pub(crate) fn mean(&self) -> f32 {
        if self.sum.rest > 0.0 { self.weighted / self.sum.rest } else { 0.0 }
    }
}

/// Nats below the heaviest weight at which a weight no longer counts beside it.
pub(super) const NEGLIGIBLE_NATS: f32 = 16.0;

/// Weights of the causes and of everything, relative to the heaviest that was added.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Tally {
    with: [f32; Cause::COUNT],
    all: f32,
    top: f32,
}

impl Tally {
    pub(crate) const NEW: Self = Self { with: [0.0; Cause::COUNT], all: 0.0, top: -1.0e30 };

    pub(super) fn add(&mut self, hypothesis: &Hypothesis, ln: f32) {
        self.add_within(NEGLIGIBLE_NATS, hypothesis, ln);
    }
    /// Adds a hypothesis that lies within so many nats of the heaviest.
    pub(super) fn add_within(&mut self, nats: f32, hypothesis: &Hypothesis, ln: f32) {
        let mut weight = 1.0;
        if ln > self.top {
            let lighter = exponential((self.top - ln).max(-80.0));
            for sum in self.with.iter_mut().chain([&mut self.all]) {
                *sum *= lighter;
            }
            self.top = ln;
        } else if ln > self.top - nats {
            weight = exponential(ln - self.top);
        } else {
            return;
        }
        self.all += weight;
        if hypothesis.unlisted.is_some() {
            return;
        }
        let present = hypothesis.presence * weight;
        let named = hypothesis.causes.iter().flatten().map(|cause| (*cause, present));
        for (cause, weight) in named.chain([(Cause::None, weight - present)]) {
            if let Some(sum) = self.with.get_mut(cause.index()) {
                *sum += weight;
            }
        }
    }
    /// The logarithm of the heaviest weight.
    pub(super) fn top(&self) -> f32 {
        self.top
    }
    /// The logarithm of the whole weight.
    pub(super) fn ln(&self) -> f32 {
        self.top + libm::logf(self.all.max(1.0e-30))
    }
    pub(super) fn probability(&self, cause: Cause) -> f32 {
        let with = self.with.get(cause.index()).copied().unwrap_or(0.0);
        (with / self.all.max(1.0e-30)).min(1.0)
    }
    pub(super) fn ln_odds(&self, cause: Cause) -> f32 {
        let p = self.probability(cause).max(1.0e-6).min(1.0 - 1.0e-6);
        libm::logf(p / (1.0 - p))
    }
}

/// A running mean severity whose weights are kept relative to the largest seen.
#[derive(Clone, Copy, Debug)]
pub(super) struct MeanSeverity {
    weight: f32,
    top: f32,
    pub(super) mean: f32,
}

impl MeanSeverity {
    pub(super) const NEW: Self = Self { weight: 0.0, top: -1.0e30, mean: 0.0 };

    /// Adds a severity with a share of the weight whose logarithm is given.
    pub(super) fn add(&mut self, severity: f32, share: f32, ln: f32) {
        if share <= 0.0 {
            return;
        }
        if ln > self.top {
            self.weight *= exponential((self.top - ln).max(-80.0));
            self.top = ln;
        }
        let weight = share * exponential((ln - self.top).max(-80.0));
        self.weight += weight;
        self.mean += (severity - self.mean) * weight / self.weight;
    }
}
