//! The normal distribution, for limits that a reading is held against and for evidence that only bounds a value.

use crate::estimate::Estimate;

/// The smallest probability kept, so that no logarithm runs away; far below anything a meter can claim.
const LEAST: f32 = 1.0e-12;

/// Tells whether an estimate holds two finite numbers and an uncertainty that is not negative.
pub(crate) fn usable(estimate: Estimate) -> bool {
    estimate.value.is_finite() && estimate.u.is_finite() && estimate.u >= 0.0
}

/// Tells whether a number is finite and above zero.
pub(crate) fn positive(x: f32) -> bool {
    x.is_finite() && x > 0.0
}

/// Adds independent standard uncertainties (JCGM 100:2008, 5.1.2); infinite where a square overflows.
pub(crate) fn combine(parts: &[f32]) -> f32 {
    libm::sqrtf(parts.iter().map(|u| u * u).sum())
}

/// Computes the probability of a standard normal variable below `z`; 0.5 for NaN.
pub(crate) fn below(z: f32) -> f32 {
    if z.is_nan() {
        return 0.5;
    }
    (0.5 * libm::erfcf(-z * core::f32::consts::FRAC_1_SQRT_2)).clamp(LEAST, 1.0)
}

/// Computes the density of a normal variable with a mean and a standard deviation; never below a tiny floor.
pub(crate) fn density(x: f32, mean: f32, deviation: f32) -> f32 {
    let z = (x - mean) / deviation;
    // 0.398 942 3 = 1/sqrt(2 pi)
    let value = 0.398_942_3 * libm::expf(-0.5 * z * z) / deviation;
    if value.is_finite() { value.max(LEAST) } else { LEAST }
}

/// Takes the logarithm of a probability or density, held above a tiny floor.
pub(crate) fn ln(probability: f32) -> f32 {
    if probability.is_finite() { libm::logf(probability.max(LEAST)) } else { 0.0 }
}
