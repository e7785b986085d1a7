//! Sums of weights that are kept as logarithms: over everything, over each cause, and the severity within it.

use super::cause::Cause;
use super::hypothesis::Hypothesis;

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
            self.rest = self.rest * libm::expf((self.top - ln).max(-80.0)) + 1.0;
            self.top = ln;
        } else if ln > self.top - 12.0 {
            self.rest += libm::expf(ln - self.top);
        }
    }
    pub(crate) fn ln(&self) -> f32 {
        if self.rest > 0.0 { self.top + libm::logf(self.rest) } else { self.top }
    }
}

/// Sums over classes that give ln odds in the end.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Tally {
    with: [Sum; Cause::COUNT],
    pub(super) all: Sum,
}

impl Tally {
    pub(crate) const NEW: Self = Self { with: [Sum::new(); Cause::COUNT], all: Sum::new() };

    pub(super) fn add(&mut self, hypothesis: &Hypothesis, ln: f32) {
        self.all.add(ln);
        let [present, healthy] = hypothesis.ln_shares;
        let named = hypothesis.causes.iter().flatten().map(|cause| (*cause, present));
        for (cause, share) in named.chain([(Cause::None, healthy)]) {
            if let Some(sum) = self.with.get_mut(cause.index()) {
                sum.add(ln + share);
            }
        }
    }
    pub(super) fn probability(&self, cause: Cause) -> f32 {
        let with = self.with.get(cause.index()).map_or(-1.0e30, Sum::ln);
        libm::expf((with - self.all.ln()).max(-80.0)).min(1.0)
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

    pub(super) fn add(&mut self, severity: f32, ln: f32) {
        if ln > self.top {
            self.weight *= libm::expf((self.top - ln).max(-80.0));
            self.top = ln;
        }
        let weight = libm::expf((ln - self.top).max(-80.0));
        self.weight += weight;
        self.mean += (severity - self.mean) * weight / self.weight;
    }
}
