//! Moist air at a coil: what drives heat into a cold surface, sensible and latent together.
//!
//! At 101.325 kPa; altitude moves the ratios used here by less than their spread.

use super::positive;

/// Specific heat of moist air, kJ/(kg K) of dry air (ASHRAE Handbook - Fundamentals, psychrometrics, rounded).
const CP: f32 = 1.02;
const CELSIUS: f32 = 273.15;
const AMBIENT_HPA: f32 = 1013.25;

/// Vapour pressure in saturated air, hPa, from -40 to 50 degC within 0.4 %.
///
/// Saturation pressure of water in the Magnus form (Alduchov and Eskridge 1996), enhanced by air at sea level by
/// 0.45 % (from memory, 0.4 to 0.5 % at room temperature).
fn saturation_hpa(celsius: f32) -> f32 {
    6.1369 * libm::expf(17.625 * celsius / (celsius + 243.04))
}

/// Enthalpy, kJ/kg of dry air, at a temperature and a water vapour pressure (hPa).
fn enthalpy(celsius: f32, vapor_hpa: f32) -> f32 {
    let humidity = 0.621_98 * vapor_hpa / (AMBIENT_HPA - vapor_hpa);
    1.006 * celsius + humidity * (2501.0 + 1.86 * celsius)
}

/// Enthalpy of saturated air; below -60 degC and above 60 degC that of the limit.
fn saturated(kelvin: f32) -> f32 {
    let celsius = (kelvin - CELSIUS).max(-60.0).min(60.0);
    enthalpy(celsius, saturation_hpa(celsius))
}

/// Wet-bulb temperature, K, of air at a temperature (K) and relative humidity (0 to 1).
///
/// The wet bulb of equal enthalpy, which is within 0.1 K of the adiabatic saturation temperature in a room.
pub(super) fn wet_bulb_k(kelvin: f32, relative: f32) -> f32 {
    let celsius = (kelvin - CELSIUS).max(-40.0).min(50.0);
    let wanted = enthalpy(celsius, relative * saturation_hpa(celsius));
    let mut wet = kelvin - 20.0 * (1.0 - relative);
    for _ in 0..4 {
        let here = saturated(wet);
        let slope = saturated(wet + 0.5) - here;
        wet += (wanted - here) * 0.5 / slope.max(0.2);
    }
    wet.min(kelvin)
}

/// What drives heat from air into a surface, K of dry air.
///
/// A dry surface's temperature difference, or a wet one's enthalpy difference over the specific heat where that is
/// larger.
pub(super) fn drive(air_k: f32, wet_bulb_k: f32, surface_k: f32) -> f32 {
    let dry = air_k - surface_k;
    let wet = (saturated(wet_bulb_k) - saturated(surface_k)) / CP;
    dry + positive(wet - dry, 1.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_abs_diff_eq;

    #[test]
    fn saturated_air_has_the_tabulated_enthalpy() {
        // ASHRAE Handbook - Fundamentals, thermodynamic properties of moist air at 101.325 kPa, from memory:
        // 9.473 kJ/kg at 0 degC, 29.353 at 10 degC, 57.555 at 20 degC.
        for (celsius, printed) in [(0.0, 9.473), (10.0, 29.353), (20.0, 57.555)] {
            assert_abs_diff_eq!(saturated(celsius + CELSIUS), printed, epsilon = 0.15);
        }
    }

    #[test]
    fn the_rating_conditions_belong_together() {
        // 80 degF dry bulb and 67 degF wet bulb, the usual rating of an air conditioner, is 51 % on any chart.
        assert_abs_diff_eq!(wet_bulb_k(299.82, 0.51), 292.59, epsilon = 0.15);
    }

    #[test]
    fn a_dry_surface_is_driven_by_temperature_and_a_wet_one_by_more() {
        assert_abs_diff_eq!(drive(299.0, 286.0, 289.0), 10.0, epsilon = 0.2);
        assert!(drive(299.8, 292.6, 283.0) > 20.0);
    }
}
