//! The supply voltage against the plate.

use crate::normal::positive;

/// Fraction of rated voltage by which a motor's supply may differ (NEMA MG 1, 12.44.1: plus or minus 10 %).
pub const TOLERANCE: f32 = 0.1;

/// How a supply voltage stands to the plate, with the limit it was held against, V.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Supply {
    /// Below the lower limit.
    Low {
        /// The lower limit, V.
        limit_v: f32,
    },
    /// Between the limits.
    Good,
    /// Above the upper limit.
    High {
        /// The upper limit, V.
        limit_v: f32,
    },
}

/// Holds a supply voltage while running against the rated voltage, both V.
///
/// `None` where the voltage is not a finite number at or above zero, or the rating not above zero.
pub fn judge(voltage_v: f32, rated_v: f32) -> Option<Supply> {
    let (low, high) = (rated_v * (1.0 - TOLERANCE), rated_v * (1.0 + TOLERANCE));
    if !voltage_v.is_finite() || voltage_v < 0.0 || !positive(rated_v) || !high.is_finite() {
        return None;
    }
    Some(if voltage_v < low {
        Supply::Low { limit_v: low }
    } else if voltage_v > high {
        Supply::High { limit_v: high }
    } else {
        Supply::Good
    })
}
