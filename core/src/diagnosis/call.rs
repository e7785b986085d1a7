//! What the call itself says before anything is read: why the technician came, and what was done to the machine before.
//!
//! All weights are odds against a call of which nothing is known: judged from common practice, no published statistics are
//! known.

use super::hypothesis::Hypothesis;
use crate::cause::Cause;
use crate::readings::{Call, Complaint, History};

/// Weights of a machine without a fault, and of each cause, in the order of [`Cause`].
type Weights = [f32; Cause::COUNT];

/// Complaints that move the causes: a machine that someone calls faulty mostly is; one that is looked at in turn mostly is
/// not.
const COMPLAINTS: [(Complaint, Weights); 6] = [
    // A machine that does not start has a reason; mostly one of its motor or supply, which no cause stands for.
    (Complaint::DoesNotStart, [0.15, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0]),
    (Complaint::NotCold, [0.4, 1.2, 0.7, 1.2, 1.2, 0.7, 1.0, 1.0, 1.0, 0.8]),
    (Complaint::NeverStops, [0.5, 1.2, 0.8, 1.2, 1.2, 0.8, 1.2, 1.0, 1.0, 0.8]),
    (Complaint::IcesUp, [0.5, 1.5, 0.7, 1.2, 1.2, 0.8, 0.5, 0.5, 2.5, 0.5]),
    (Complaint::Trips, [0.6, 0.6, 1.3, 0.8, 0.8, 1.0, 0.8, 2.0, 0.7, 1.6]),
    (Complaint::Maintenance, [3.0, 1.0, 1.0, 0.8, 0.8, 0.8, 0.8, 1.5, 1.0, 0.8]),
];
/// What was done before: a circuit that was opened may hold air, dirt or a wrong charge; a replaced capillary may feed
/// too little or too much; what leaked once leaks again.
const HISTORIES: [(History, Weights); 6] = [
    (History::CompressorReplaced, [1.0, 1.5, 1.8, 1.8, 1.2, 1.0, 0.8, 1.0, 1.0, 2.5]),
    (History::MeteringReplaced, [1.0, 1.5, 1.8, 1.2, 2.0, 2.0, 1.0, 1.0, 1.0, 2.5]),
    (History::CircuitOpened, [1.0, 1.5, 2.0, 1.5, 1.2, 1.0, 1.0, 1.0, 1.0, 3.0]),
    (History::ChargeAdded, [0.9, 1.8, 2.5, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.5]),
    (History::LeakedBefore, [0.8, 3.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.3]),
    (History::CoilCleaned, [1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 0.5, 0.7, 1.0]),
];

/// The weights that a call gives.
#[derive(Clone, Copy, Debug)]
pub(super) struct Weighed(Weights);

impl Weighed {
    /// Multiplies the weights of everything that was told.
    pub(super) fn new(call: &Call) -> Self {
        let mut all = [1.0; Cause::COUNT];
        let mut take = |weights: &Weights| {
            for (all, weight) in all.iter_mut().zip(weights) {
                *all *= weight;
            }
        };
        for (complaint, weights) in &COMPLAINTS {
            if call.complaint.is_some_and(|told| told.has(*complaint)) {
                take(weights);
            }
        }
        for (history, weights) in &HISTORIES {
            if call.history.is_some_and(|told| told.has(*history)) {
                take(weights);
            }
        }
        Self(all)
    }

    /// The natural logarithm of a hypothesis's weight.
    pub(super) fn ln(&self, hypothesis: &Hypothesis) -> f32 {
        let of = |cause: Cause| self.0.get(cause.index()).copied().unwrap_or(1.0);
        let there: f32 = hypothesis.causes.iter().flatten().map(|cause| of(*cause)).product();
        libm::logf(hypothesis.presence * there + (1.0 - hypothesis.presence) * of(Cause::None))
    }
}
