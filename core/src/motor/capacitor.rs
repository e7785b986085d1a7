//! Run and start capacitors, from a meter or from volts and amps, against their plate.

use crate::estimate::Estimate;
use crate::normal::{combine, positive, usable};

/// How far a capacitor may lie from its plate value, as fractions.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tolerance {
    /// Fraction below.
    pub below: f32,
    /// Fraction above.
    pub above: f32,
}

impl Tolerance {
    /// A usual run capacitor, plus or minus 6 % (common practice).
    pub const RUN_USUAL: Self = Self { below: 0.06, above: 0.06 };
    /// The narrower class of run capacitors, plus or minus 5 % (IEC 60252-1).
    pub const RUN_5: Self = Self { below: 0.05, above: 0.05 };
    /// The wider class of run capacitors, plus or minus 10 % (IEC 60252-1).
    pub const RUN_10: Self = Self { below: 0.10, above: 0.10 };
    /// An electrolytic start capacitor, -0/+20 % (EIA-463, from memory).
    pub const START: Self = Self { below: 0.0, above: 0.20 };

    /// Makes a tolerance of so many percent to both sides; `None` unless it is 0 to 100 %.
    pub fn both_sides_percent(percent: f32) -> Option<Self> {
        let fraction = percent / 100.0;
        (0.0..=1.0).contains(&fraction).then_some(Self { below: fraction, above: fraction })
    }
}

/// How a capacitor stands to its plate, with the limit it was held against, microfarad.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Condition {
    /// Within its tolerance of the plate.
    Good {
        /// The lower limit, microfarad.
        limit_uf: f32,
    },
    /// Below its tolerance.
    Low {
        /// The lower limit, microfarad.
        limit_uf: f32,
    },
    /// Above its tolerance: a wrong part, or a meter that reads it with something in parallel.
    High {
        /// The upper limit, microfarad.
        limit_uf: f32,
    },
    /// Open: next to nothing is left.
    Open,
}

/// Fraction of the plate value below which a capacitor counts as open: a broken connection still shows its stray.
const OPEN_BELOW: f32 = 0.02;

/// Computes a capacitance from the current through it and the voltage across it under load, microfarad.
///
/// C = I/(2 pi f V). The voltage is the capacitor's own, which in a running motor lies well above the supply's.
/// `None` where an input is not finite, the current is negative, or voltage or frequency is not positive.
pub fn from_amps_and_volts(current_a: Estimate, voltage_v: Estimate, hz: f32) -> Option<Estimate> {
    if !usable(current_a)
        || !usable(voltage_v)
        || current_a.value < 0.0
        || !positive(voltage_v.value)
        || !positive(hz)
    {
        return None;
    }
    let per_amp = 1.0e6 / core::f32::consts::TAU / hz / voltage_v.value;
    let value = current_a.value * per_amp;
    Estimate::new(value, combine(&[current_a.u * per_amp, value * (voltage_v.u / voltage_v.value)]))
}

/// Standard uncertainty of a capacitance meter, as a fraction of its reading and microfarad beside it (common practice:
/// hand meters state 2.5 % and some digits as limits; a limit over the root of three, JCGM 100:2008, 4.3.7).
const METER: (f32, f32) = (0.0145, 0.05);
/// Standard uncertainties that a reading must lie beyond a limit before the capacitor, and not the meter, is blamed: one
/// in twenty on one side (the guarded rejection of JCGM 106:2012).
pub const GUARD: f32 = 1.645;

/// Turns a meter's reading into a capacitance with the uncertainty of a usual hand meter, microfarad.
///
/// An open reading, positive infinity, stays one.
pub fn reading(measured_uf: f32) -> Estimate {
    let u = if measured_uf.is_finite() { combine(&[METER.0 * measured_uf, METER.1]) } else { 0.0 };
    Estimate { value: measured_uf, u: if u.is_finite() { u } else { 0.0 } }
}

/// Holds a capacitance against its plate value, both microfarad.
///
/// Positive infinity and zero read as open. The meter is allowed for: a reading counts as beyond its tolerance where
/// it lies beyond it by [`GUARD`] standard uncertainties, and the limit given is that one. `None` where the reading is
/// negative or not a number, its uncertainty negative or not finite, or the plate value not positive.
pub fn judge(measured_uf: Estimate, rated_uf: f32, tolerance: Tolerance) -> Option<Condition> {
    let Estimate { value, u } = measured_uf;
    let allowed = GUARD * u;
    let low = rated_uf * (1.0 - tolerance.below) - allowed;
    let high = rated_uf * (1.0 + tolerance.above) + allowed;
    if value.is_nan()
        || value < 0.0
        || !u.is_finite()
        || u < 0.0
        || !positive(rated_uf)
        || !low.is_finite()
        || !high.is_finite()
    {
        return None;
    }
    Some(if value.is_infinite() || value <= OPEN_BELOW * rated_uf {
        Condition::Open
    } else if value < low {
        Condition::Low { limit_uf: low }
    } else if value > high {
        Condition::High { limit_uf: high }
    } else {
        Condition::Good { limit_uf: low }
    })
}
