//! The start: inrush against the locked-rotor current, and the time it takes.

use crate::estimate::Estimate;
use crate::normal::positive;

/// Fraction of the locked-rotor current above which a motor that should run is taken to stand still.
///
/// Loads that a turning motor survives stay below half of it (common practice).
pub const STANDS_STILL: f32 = 0.7;
/// Longest time a small hermetic takes to come up to speed, s (common practice; most need under 0.5 s).
pub const LONGEST_START_S: f32 = 2.0;

/// Computes the locked-rotor current at the voltage the motor gets, A.
///
/// It is stated at rated voltage and follows the voltage: `locked_rotor_a voltage_v / rated_v`, with 10 % of
/// uncertainty for plate and saturation. `None` where an input is not positive and finite.
pub fn locked_rotor_at(locked_rotor_a: f32, rated_v: f32, voltage_v: f32) -> Option<Estimate> {
    if ![locked_rotor_a, rated_v, voltage_v].into_iter().all(positive) {
        return None;
    }
    let value = locked_rotor_a * (voltage_v / rated_v);
    Estimate::new(value, 0.1 * value)
}

/// How an inrush stands to the locked-rotor current, with the limit it was held against, A.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Inrush {
    /// Far below the locked-rotor current: a clamp too slow to catch it, a soft starter, or a poor connection.
    Low {
        /// The lower limit, A.
        limit_a: f32,
    },
    /// About the locked-rotor current, as any start across the line.
    Usual,
    /// Above the locked-rotor current by more than its tolerance: shorted turns, or another motor's plate.
    High {
        /// The upper limit, A.
        limit_a: f32,
    },
}

/// Fraction of the locked-rotor current below which an inrush was not caught whole (common practice).
const INRUSH_LOW: f32 = 0.4;
/// The same above which it is too high: 20 % of tolerance (IEC 60034-1, from memory) and 10 % for the clamp.
const INRUSH_HIGH: f32 = 1.3;

/// Holds an inrush against the locked-rotor current at the voltage it had, both A; see [`locked_rotor_at`].
///
/// `None` where the inrush is negative or not finite, or the locked-rotor current not positive.
pub fn inrush(inrush_a: f32, locked_rotor_a: f32) -> Option<Inrush> {
    let (low, high) = (INRUSH_LOW * locked_rotor_a, INRUSH_HIGH * locked_rotor_a);
    if !inrush_a.is_finite() || inrush_a < 0.0 || !positive(locked_rotor_a) || !high.is_finite() {
        return None;
    }
    Some(if inrush_a < low {
        Inrush::Low { limit_a: low }
    } else if inrush_a > high {
        Inrush::High { limit_a: high }
    } else {
        Inrush::Usual
    })
}

/// What the first moments after the start show.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Start {
    /// The current rose toward the locked-rotor current and fell in time.
    Good,
    /// The current fell late: weak start gear or capacitor, low voltage, or a start against pressure.
    Slow,
    /// The current stays near the locked-rotor current: the rotor stands still. Switch off.
    LockedRotor,
    /// The inrush is far below the locked-rotor current: a clamp too slow to catch it, or a poor connection.
    InrushLow,
}

/// Judges a start from its inrush, the time until the current fell, and the current it fell to.
///
/// `inrush_a` against `locked_rotor_a` (already at the voltage it had, see [`locked_rotor_at`]), `seconds_to_drop`
/// until the current fell below half of it, `settled_a` the current after that. `None` where an input is not finite
/// or negative, or the locked-rotor current not positive.
pub fn judge(inrush_a: f32, locked_rotor_a: f32, seconds_to_drop: f32, settled_a: f32) -> Option<Start> {
    if [inrush_a, seconds_to_drop, settled_a].iter().any(|x| !x.is_finite() || *x < 0.0)
        || !positive(locked_rotor_a)
    {
        return None;
    }
    Some(if settled_a >= STANDS_STILL * locked_rotor_a {
        Start::LockedRotor
    } else if seconds_to_drop > LONGEST_START_S {
        Start::Slow
    } else if inrush_a < INRUSH_LOW * locked_rotor_a {
        Start::InrushLow
    } else {
        Start::Good
    })
}
