//! The probability that one of several causes is there: of a family that readings cannot part, of a job that mends all.
//!
//! A pair of causes that lies within one union counts once, so that a union is never more probable than it is.

use super::hypothesis::Hypothesis;
use super::outcome::{Families, Jobs};
use super::tally::NEGLIGIBLE_NATS;
use crate::cause::Cause;
use crate::machine::Nominal;

/// A restriction or a metering device that passes too little.
const LIQUID_FEED: usize = 0;
/// Wrong charge, gas that cannot condense, a restriction.
const CIRCUIT: usize = 1;
/// The same, or the metering device.
const CIRCUIT_AND_METERING: usize = 2;
/// The metering device.
const METERING: usize = 3;
/// The number of unions.
const COUNT: usize = 4;

const CIRCUIT_CAUSES: [Cause; 6] = [
    Cause::Undercharge,
    Cause::Overcharge,
    Cause::LiquidLineRestriction,
    Cause::NonCondensables,
    Cause::MeteringUnderfeed,
    Cause::FloodBack,
];
/// The causes of each union.
const CAUSES: [&[Cause]; COUNT] = [
    &[Cause::LiquidLineRestriction, Cause::MeteringUnderfeed],
    CIRCUIT_CAUSES.split_at(4).0,
    &CIRCUIT_CAUSES,
    CIRCUIT_CAUSES.split_at(4).1,
];

/// Weights of the unions of causes, a pair that lies within one counted once.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Unions {
    with: [f32; COUNT],
    all: f32,
    top: f32,
}

impl Unions {
    pub(crate) const NEW: Self = Self { with: [0.0; COUNT], all: 0.0, top: -1.0e30 };

    pub(super) fn add(&mut self, hypothesis: &Hypothesis, ln: f32) {
        if ln > self.top {
            let lighter = libm::expf((self.top - ln).max(-80.0));
            for sum in self.with.iter_mut().chain([&mut self.all]) {
                *sum *= lighter;
            }
            self.top = ln;
        } else if ln < self.top - NEGLIGIBLE_NATS {
            return;
        }
        let weight = libm::expf(ln - self.top);
        self.all += weight;
        for (sum, causes) in self.with.iter_mut().zip(CAUSES) {
            if hypothesis.causes.iter().flatten().any(|cause| causes.contains(cause)) {
                *sum += hypothesis.presence * weight;
            }
        }
    }
    fn probability(&self, union: usize) -> f32 {
        (self.with.get(union).copied().unwrap_or(0.0) / self.all.max(1.0e-30)).min(1.0)
    }

    /// The families' probabilities.
    pub(super) fn families(&self) -> Families {
        Families { liquid_feed: self.probability(LIQUID_FEED) }
    }
    /// The jobs' probabilities, where each cause's own are given. A capillary or an orifice is mended in the open circuit,
    /// a valve by itself.
    pub(super) fn jobs(&self, nominal: &Nominal, of: &dyn Fn(Cause) -> f32) -> Jobs {
        let valve = nominal.valve();
        Jobs {
            condenser_air: of(Cause::CondenserAirflow),
            evaporator_air: of(Cause::EvaporatorAirflow),
            open_circuit: self.probability(if valve { CIRCUIT } else { CIRCUIT_AND_METERING }),
            metering_valve: if valve { self.probability(METERING) } else { 0.0 },
            compressor: of(Cause::WeakCompressor),
            none: of(Cause::None),
        }
    }
}
