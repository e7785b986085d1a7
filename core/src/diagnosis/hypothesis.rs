//! Every explanation that is weighed: healthy, each cause at several severities, each pair of causes.

use super::cause::Cause;
use super::signature::{Ladder, Node};
use crate::symptom::{CHANNELS, DRIER_OUTLET, LIQUID_LINE, Vector};

/// A cause is present when it leaves less than this of capacity or COP.
const PRESENT_BELOW: f32 = 0.95;
/// Prior probability of a machine without a cause: a technician was called, so a cause is likely (judged).
const PRIOR_NONE: f32 = 0.4;
/// Prior probability of two causes at once (judged).
const PRIOR_PAIR: f32 = 0.12;
/// Prior weight of a severity too mild to count, against one that counts.
const MILD_WEIGHT: f32 = 0.05;
/// Probability that a restriction shows no drop between the clamps before and behind the drier (judged).
const SHOWS_NO_DROP: f32 = 0.2;

/// What one node stands for: up to two causes that count, and which one of them costs most.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Hypothesis {
    pub(crate) causes: [Option<Cause>; 2],
    pub(crate) severities: [f32; 2],
    pub(crate) ln_prior: f32,
    pub(crate) shift: Vector,
    /// The causes with their severities, those too mild to count included.
    pub(crate) members: [(Cause, f32); 2],
}

impl Hypothesis {
    /// The causes that count, or none.
    pub(crate) fn each_cause(&self) -> impl Iterator<Item = Cause> + '_ {
        let none = self.causes.iter().all(Option::is_none).then_some(Cause::None);
        self.causes.iter().copied().flatten().chain(none)
    }
    /// The largest of a table's entries for the causes that count.
    pub(crate) fn most(&self, table: &[f32; Cause::COUNT]) -> f32 {
        self.each_cause().map(|cause| table.get(cause.index()).copied().unwrap_or(0.0)).fold(0.0, f32::max)
    }
    /// The fraction of flow that the compressor lost.
    pub(crate) fn loss(&self) -> f32 {
        self.members.iter().filter(|(c, _)| *c == Cause::WeakCompressor).map(|(_, s)| *s).sum()
    }
}

/// Calls `each` with healthy and every cause at six severities.
pub(crate) fn singles(ladders: &[Ladder; Cause::COUNT - 1], mut each: impl FnMut(&Hypothesis)) {
    each(&Hypothesis {
        causes: [None, None],
        severities: [0.0; 2],
        ln_prior: libm::logf(PRIOR_NONE),
        shift: [0.0; CHANNELS],
        members: [(Cause::None, 0.0); 2],
    });
    let single = libm::logf((1.0 - PRIOR_NONE - PRIOR_PAIR) / 9.0);
    for (cause, ladder) in Cause::ALL.iter().skip(1).zip(ladders) {
        let mut weights = 0.0;
        for pass in 0..2 {
            let mut before = Node::HEALTHY;
            for node in ladder {
                for part in [0.5, 1.0] {
                    let here = Node::between(&before, node, part);
                    let counts = here.impact < PRESENT_BELOW;
                    let weight = if counts { 1.0 } else { MILD_WEIGHT };
                    if pass == 0 {
                        weights += weight;
                        continue;
                    }
                    let hypothesis = Hypothesis {
                        causes: [counts.then_some(*cause), None],
                        severities: [here.severity, 0.0],
                        ln_prior: single + libm::logf(weight / weights),
                        shift: here.shift,
                        members: [(*cause, here.severity), (Cause::None, 0.0)],
                    };
                    if *cause == Cause::LiquidLineRestriction {
                        each_restriction(&hypothesis, &mut each);
                    } else {
                        each(&hypothesis);
                    }
                }
                before = *node;
            }
        }
    }
}

/// A restriction shows a temperature drop at the drier only where it sits there and the liquid flashes in it; one
/// behind the clamp, or one that leaves the liquid subcooled, does not. Both are weighed.
fn each_restriction(hypothesis: &Hypothesis, each: &mut impl FnMut(&Hypothesis)) {
    let hidden = SHOWS_NO_DROP;
    let shown = Hypothesis { ln_prior: hypothesis.ln_prior + libm::logf(1.0 - hidden), ..*hypothesis };
    each(&shown);
    let mut shift = hypothesis.shift;
    shift[DRIER_OUTLET] = shift[LIQUID_LINE];
    each(&Hypothesis { ln_prior: hypothesis.ln_prior + libm::logf(hidden), shift, ..*hypothesis });
}

/// Calls `each` with every pair of causes at nine severities.
pub(crate) fn pairs(ladders: &[Ladder; Cause::COUNT - 1], mut each: impl FnMut(&Hypothesis)) {
    let pair = libm::logf(PRIOR_PAIR / (36.0 * 9.0));
    let named = || Cause::ALL.iter().skip(1).zip(ladders);
    for (i, (first, one)) in named().enumerate() {
        for (second, two) in named().skip(i + 1) {
            for a in one {
                for b in two {
                    // A member too mild to count leaves a single cause, which has its own hypotheses.
                    if a.impact >= PRESENT_BELOW || b.impact >= PRESENT_BELOW {
                        continue;
                    }
                    let mut shift = a.shift;
                    for (shift, b) in shift.iter_mut().zip(&b.shift) {
                        *shift += b;
                    }
                    each(&Hypothesis {
                        causes: [Some(*first), Some(*second)],
                        severities: [a.severity, b.severity],
                        ln_prior: pair,
                        shift,
                        members: [(*first, a.severity), (*second, b.severity)],
                    });
                }
            }
        }
    }
}
