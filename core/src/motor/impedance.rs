//! Impedance of a winding or a capacitor from volts, amps and the angle between them.

use crate::estimate::Estimate;
use crate::normal::{positive, usable};

/// Correlation of the three readings, each -1 to 1; zero where they come from separate instruments.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Correlation {
    /// Of voltage and current.
    pub volts_amps: f32,
    /// Of voltage and phase angle.
    pub volts_angle: f32,
    /// Of current and phase angle.
    pub amps_angle: f32,
}

/// Resistance, reactance and impedance at one frequency, ohm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Impedance {
    /// The part in phase with the current.
    pub resistance_ohm: Estimate,
    /// The part at a right angle; positive for a winding, negative for a capacitor.
    pub reactance_ohm: Estimate,
    /// Voltage over current.
    pub impedance_ohm: Estimate,
}

/// Computes resistance, reactance and impedance from voltage, current and the angle the current lags, rad.
///
/// R = V/I cos a, X = V/I sin a, Z = V/I, their uncertainties with the readings' correlation (JCGM 100:2008, 5.2.2
/// and example H.2). A standing motor's impedance tells shorted turns that its resistance hides. `None` where an
/// input is not finite, voltage or current is not positive, or a correlation is outside -1 to 1.
pub fn from_volts_amps_angle(
    voltage_v: Estimate,
    current_a: Estimate,
    angle_rad: Estimate,
    correlation: Correlation,
) -> Option<Impedance> {
    let Correlation { volts_amps, volts_angle, amps_angle } = correlation;
    if ![voltage_v, current_a, angle_rad].into_iter().all(usable)
        || !positive(voltage_v.value)
        || !positive(current_a.value)
    {
        return None;
    }
    if ![volts_amps, volts_angle, amps_angle].iter().all(|r| (-1.0..=1.0).contains(r)) {
        return None;
    }
    let z = voltage_v.value / current_a.value;
    let (cos, sin) = (libm::cosf(angle_rad.value), libm::sinf(angle_rad.value));
    let (v, i, a) = (voltage_v.u / voltage_v.value, current_a.u / current_a.value, angle_rad.u);
    // Variance of ln Z, and its covariance with the angle.
    let along = (v * v + i * i - 2.0 * volts_amps * v * i).max(0.0);
    let across = (volts_angle * v - amps_angle * i) * a;
    let spread = |squared: f32| z * libm::sqrtf(squared.max(0.0));
    Some(Impedance {
        resistance_ohm: Estimate::new(
            z * cos,
            spread(cos * cos * along + sin * sin * a * a - 2.0 * sin * cos * across),
        )?,
        reactance_ohm: Estimate::new(
            z * sin,
            spread(sin * sin * along + cos * cos * a * a + 2.0 * sin * cos * across),
        )?,
        impedance_ohm: Estimate::new(z, spread(along))?,
    })
}
