//! Running current: from the plate alone, at another voltage, and measured against expected.

use crate::estimate::Estimate;
use crate::normal::{combine, positive, usable};

/// Rated-load current over the current at the design point; a plate is sized for the worst point, not the usual.
const RATED_OVER_DESIGN: f32 = 1.26;
/// Standard uncertainty of the current expected from a plate alone, as a fraction of it: the protector allows a
/// rating from the highest continuous current over 1.56 or 1.40, and the load varies with both pressures.
const PLATE_SPREAD: f32 = 0.20;
/// Combined standard uncertainties by which a current may differ before it is said to.
const COVERAGE: f32 = 2.0;

/// Computes the running current to expect from the plate's rated-load current alone, A.
///
/// About 0.8 of the rated load with a standard uncertainty of a fifth: enough to see a motor that is not loaded or
/// far overloaded, no more. `None` unless the rating is positive. Source: common practice.
pub fn expected_from_plate(rated_load_a: f32) -> Option<Estimate> {
    let value = rated_load_a / RATED_OVER_DESIGN;
    if positive(rated_load_a) { Estimate::new(value, PLATE_SPREAD * value) } else { None }
}

/// Refers a current from one supply voltage to another at the same shaft load, A.
///
/// The working part of the current falls with voltage, the magnetising part rises with its power of 1.5; their
/// shares follow from the power factor. Small single-phase motors lie 0.78-0.92 (common practice): half the
/// difference that leaves is the added uncertainty. `voltage_ratio` is the new voltage over the old. `None` where an
/// input is not finite, the power factor not in 0 to 1, or the ratio outside 0.7 to 1.3, where the motor may stall
/// or saturate and this form no longer holds.
pub fn at_voltage(current_a: Estimate, voltage_ratio: f32, power_factor: f32) -> Option<Estimate> {
    if !usable(current_a) || !(0.7..=1.3).contains(&voltage_ratio) || !(0.0..=1.0).contains(&power_factor) {
        return None;
    }
    let factor = |cos: f32| {
        let working = cos / voltage_ratio;
        let magnetising = (1.0 - cos * cos) * voltage_ratio * voltage_ratio * voltage_ratio;
        libm::sqrtf(working * working + magnetising)
    };
    let here = factor(power_factor);
    let spread =
        0.5 * libm::fabsf(factor((power_factor + 0.07).min(1.0)) - factor((power_factor - 0.07).max(0.0)));
    Estimate::new(current_a.value * here, combine(&[current_a.u * here, current_a.value * spread]))
}

/// How a measured current stands to the expected one, with the limit it was held against, A.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Current {
    /// Below what today's pressures ask for.
    Below {
        /// The lower limit, A.
        limit_a: f32,
    },
    /// What today's pressures ask for.
    AsExpected,
    /// Above what today's pressures ask for.
    Above {
        /// The upper limit, A.
        limit_a: f32,
    },
}

/// Compares a measured with an expected current, both A, at twice their combined uncertainty.
///
/// `None` where an input is not finite, the measured current is negative or the expected one not positive.
pub fn compare(measured_a: Estimate, expected_a: Estimate) -> Option<Current> {
    if !usable(measured_a) || !usable(expected_a) || measured_a.value < 0.0 || !positive(expected_a.value) {
        return None;
    }
    let margin = COVERAGE * combine(&[measured_a.u, expected_a.u]);
    let (low, high) = (expected_a.value - margin, expected_a.value + margin);
    if !low.is_finite() || !high.is_finite() {
        return None;
    }
    Some(if measured_a.value < low {
        Current::Below { limit_a: low }
    } else if measured_a.value > high {
        Current::Above { limit_a: high }
    } else {
        Current::AsExpected
    })
}
