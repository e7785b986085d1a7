//! Moist air at sea-level pressure, per kilogram of dry air.

use libm::exp;

/// Specific heat of moist air taken constant, J/(kg K).
pub const CP: f64 = 1012.0;

/// Saturation pressure of water over ice or liquid, Pa (Magnus form; coefficients of WMO No. 8, from memory).
pub fn saturation_pressure(t: f64) -> f64 {
    let c = t - 273.15;
    let water = || 611.2 * exp(17.62 * c / (243.12 + c));
    let ice = || 611.2 * exp(22.46 * c / (272.62 + c));
    if c >= 0.0 {
        water()
    } else if c <= -2.0 {
        ice()
    } else {
        // Water runs over into ice between 0 and -2 degC so that nothing kinks.
        let w = super::math::step(c, -2.0, 0.0);
        w * water() + (1.0 - w) * ice()
    }
}

/// Humidity ratio of saturated air.
pub fn saturated_humidity(t: f64) -> f64 {
    let p = saturation_pressure(t).min(60_000.0);
    0.622 * p / (101_325.0 - p)
}

/// Humidity ratio at a temperature and relative humidity (0 to 1).
pub fn humidity(t: f64, relative: f64) -> f64 {
    let p = (saturation_pressure(t) * relative).min(60_000.0);
    0.622 * p / (101_325.0 - p)
}

/// Enthalpy of moist air, J per kg of dry air.
pub fn enthalpy(t: f64, w: f64) -> f64 {
    CP * (t - 273.15) + w * 2_501_000.0
}

/// Enthalpy of saturated air.
pub fn saturated_enthalpy(t: f64) -> f64 {
    enthalpy(t, saturated_humidity(t))
}

/// Temperature of saturated air with the given enthalpy, K.
pub fn temperature_of_saturated(h: f64) -> f64 {
    let mut t = 273.15 + h / 2500.0;
    for _ in 0..12 {
        let (at, slope) = saturated_enthalpy_and_slope(t);
        let change = ((at - h) / slope).clamp(-15.0, 15.0);
        t -= change;
        if change.abs() < 1e-7 {
            break;
        }
    }
    t
}

/// Wet-bulb temperature, K, as the saturated air of the same enthalpy: good to a few tenths.
pub fn wet_bulb(t: f64, w: f64) -> f64 {
    temperature_of_saturated(enthalpy(t, w)).min(t)
}

/// Enthalpy of saturated air and its slope with temperature, J/kg and J/(kg K).
pub fn saturated_enthalpy_and_slope(t: f64) -> (f64, f64) {
    // The slope as a difference over a tenth of a kelvin: smooth, and cheaper than two more curves.
    let h = saturated_enthalpy(t);
    (h, (saturated_enthalpy(t + 0.1) - h) / 0.1)
}
