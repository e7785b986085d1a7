//! How well one node explains the readings: all of them, and all but each one.

use super::hypothesis::{Hypothesis, Step};
use super::tally::Mean;
use crate::student_t::ln_student;
use crate::symptom::{CHANNELS, CONDITIONS, Deviation, Vector};
use crate::triangular::Factor;

/// Prior probability that any one reading is grossly wrong.
const WRONG: f32 = 0.01;
/// Density of a grossly wrong reading, per kelvin or per percent of current: anything within some 60.
pub(crate) const LN_WRONG_DENSITY: f32 = -4.1;

/// What a hypothesis's likelihood consists of; per-channel parts stand packed.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Likelihood {
    /// ln likelihood of all channels, with the chance that one reading is wrong.
    pub(super) ln_all: f32,
    /// ln likelihood of all channels, no reading wrong.
    pub(super) ln_clean: f32,
    /// ln likelihood with each channel left out.
    pub(super) ln_without: Vector,
    /// ln likelihood with each of the day's conditions taken for wrong.
    pub(super) ln_disregarding: [Option<f32>; CONDITIONS],
    /// Squared distance of the channels that are right, the mean over which of them is wrong.
    pub(super) square: f32,
}

/// Factors the covariance of a hypothesis with these steps; gives its whitened residual.
pub(crate) fn whiten(
    deviation: &Deviation,
    factor: &mut Factor,
    hypothesis: &Hypothesis,
    steps: &[Step<'_>],
) -> Option<Vector> {
    let spread = hypothesis.spread();
    let together = steps.iter().map(Step::deviation);
    deviation.invert(factor, &spread, together).then(|| deviation.whiten(factor, &hypothesis.shift))
}

/// The squared length of a whitened residual.
pub(crate) fn square(white: &Vector) -> f32 {
    white.iter().map(|w| w * w).sum()
}

/// What a hypothesis's parts must come to if they are to count, as natural logarithms.
pub(crate) struct Least {
    /// With the chance that one reading is wrong.
    pub(super) all: f32,
    /// With no reading wrong.
    pub(super) clean: f32,
    /// With any one channel left out.
    pub(super) without: f32,
}

/// A hypothesis that counts with its parts, or about what one comes to that does not.
pub(crate) enum Heard {
    Yes(Likelihood),
    No(f32),
}

/// The logarithm of more parts than a likelihood has: each channel wrong, each condition wrong, nothing wrong.
const LN_PARTS: f32 = 2.9;

/// ln likelihood of a hypothesis, whole and in parts; `None` where it has no covariance.
pub(crate) fn likelihood(
    deviation: &Deviation,
    factor: &mut Factor,
    hypothesis: &Hypothesis,
    steps: &[Step<'_>],
    least: &Least,
) -> Option<Heard> {
    let white = whiten(deviation, factor, hypothesis, steps)?;
    let size = deviation.size().min(CHANNELS);
    let square = square(&white);
    let weighted = factor.back(&white);
    let precision = factor.precision();
    let ln_clean = ln_student(square, size, factor.ln_det);
    // What is left of the distance without each channel, and bounds on that and on what the determinant loses.
    let mut rests = [0.0; CHANNELS];
    let (mut nearest, mut loosest) = (f32::INFINITY, f32::INFINITY);
    for i in 0..size {
        rests[i] = square - weighted[i] * weighted[i] / precision[i];
        nearest = nearest.min(rests[i]);
        loosest = loosest.min(precision[i]);
    }
    let ln_without_any = if size == 0 {
        f32::NEG_INFINITY
    } else {
        ln_student(nearest, size - 1, factor.ln_det + libm::logf(loosest))
    };
    let mut most = ln_clean.max(ln_without_any + LN_WRONG + LN_WRONG_DENSITY);
    let faint =
        |most: f32| ln_clean < least.clean && ln_without_any < least.without && most + LN_PARTS < least.all;
    let may_be_faint = faint(most);
    let mut disregarding = [None; CONDITIONS];
    for (condition, slot) in disregarding.iter_mut().enumerate() {
        *slot = deviation.disregarding(condition, factor, &white, square);
        if let Some((ln, _)) = slot {
            most = most.max(*ln + LN_WRONG_CONDITION);
        }
    }
    if may_be_faint && faint(most) {
        return Some(Heard::No(most));
    }
    let mut ln_without = [ln_clean; CHANNELS];
    let mut sum = Mean::new();
    sum.add(square, ln_clean + libm::log1pf(-WRONG * (size as f32) - WRONG_CONDITION * CONDITIONS as f32));
    for i in 0..size {
        let ln_det = factor.ln_det + libm::logf(precision[i]);
        ln_without[i] = ln_student(rests[i], size - 1, ln_det);
        sum.add(rests[i], ln_without[i] + LN_WRONG + LN_WRONG_DENSITY);
    }
    for (ln, rest) in disregarding.iter().flatten() {
        sum.add(*rest, ln + LN_WRONG_CONDITION);
    }
    let ln_disregarding = disregarding.map(|each| each.map(|(ln, _)| ln));
    let parts = Likelihood { ln_all: sum.ln(), ln_clean, ln_without, ln_disregarding, square: sum.mean() };
    Some(Heard::Yes(parts))
}

/// ln of [`WRONG`].
pub(crate) const LN_WRONG: f32 = -4.605_17;
/// Prior probability that the space or the ambient temperature is grossly wrong (judged: air is easier to read right than
/// a pipe).
const WRONG_CONDITION: f32 = 0.0015;
/// Its natural logarithm.
pub(crate) const LN_WRONG_CONDITION: f32 = -6.502_29;
