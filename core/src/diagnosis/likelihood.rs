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

/// ln likelihood of a hypothesis, whole and in parts.
pub(crate) fn likelihood(
    deviation: &Deviation,
    factor: &mut Factor,
    hypothesis: &Hypothesis,
    steps: &[Step<'_>],
) -> Option<Likelihood> {
    let white = whiten(deviation, factor, hypothesis, steps)?;
    let size = deviation.size().min(CHANNELS);
    let square = square(&white);
    let weighted = factor.back(&white);
    let precision = factor.precision();
    let ln_clean = ln_student(square, size, factor.ln_det);
    let mut ln_without = [ln_clean; CHANNELS];
    let mut sum = Mean::new();
    sum.add(square, ln_clean + libm::log1pf(-WRONG * (size as f32) - WRONG_CONDITION * CONDITIONS as f32));
    for i in 0..size {
        let rest = square - weighted[i] * weighted[i] / precision[i];
        let ln_det = factor.ln_det + libm::logf(precision[i]);
        ln_without[i] = ln_student(rest, size - 1, ln_det);
        sum.add(rest, ln_without[i] + LN_WRONG + LN_WRONG_DENSITY);
    }
    let mut ln_disregarding = [None; CONDITIONS];
    for (condition, slot) in ln_disregarding.iter_mut().enumerate() {
        if let Some((ln, rest)) = deviation.disregarding(condition, factor, &white, square) {
            *slot = Some(ln);
            sum.add(rest, ln + LN_WRONG_CONDITION);
        }
    }
    Some(Likelihood { ln_all: sum.ln(), ln_clean, ln_without, ln_disregarding, square: sum.mean() })
}

/// ln of [`WRONG`].
pub(crate) const LN_WRONG: f32 = -4.605_17;
/// Prior probability that the space or the ambient temperature is grossly wrong (judged: air is easier to read right than
/// a pipe).
const WRONG_CONDITION: f32 = 0.0015;
/// Its natural logarithm.
pub(crate) const LN_WRONG_CONDITION: f32 = -6.502_29;
