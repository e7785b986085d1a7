//! What the hose of a gauge takes out of the charge.

use super::requirement::Port;
use super::step::HoseTakes;
use crate::charge::hose::{Hose, contents, mass_kg};
use crate::expected::Expected;
use crate::quantity::{Pressure, Temperature};
use crate::readings::Visit;
use crate::refrigerant::Refrigerant;

/// The usual quarter-inch hose, 1.5 m long with a bore of 4.8 mm (common practice).
const USUAL: Hose = Hose { length_m: 1.5, inner_diameter_mm: 4.8 };
/// Room temperature of the hose where ambient was not read, degC.
const ROOM_C: f32 = 25.0;
/// Kelvin below bubble or above dew at which a saturated hose is reckoned.
const CLEAR_K: f32 = 1.0;
/// Percent of the charge from which a hose spoils what is measured afterwards (judged: a shortage that costs 5 % of the
/// capacity begins near 10 % of the charge).
pub(super) const SPOILS_PERCENT: f32 = 5.0;

/// What a hose holds at a port of this machine: vapour on the low side, liquid wherever it can condense.
pub(super) fn takes(
    port: Port,
    refrigerant: &Refrigerant<'_>,
    visit: &Visit<'_>,
    expected: &Expected,
) -> Option<HoseTakes> {
    let air_c = visit.readings.ambient_c.unwrap_or(ROOM_C);
    let at = |kpa: f32| {
        let (p, t) = (Pressure::from_kilopascals(kpa), Temperature::from_celsius(air_c));
        contents(&USUAL, refrigerant, p, t).ok().map(|held| held.mass_kg)
    };
    // At air temperature the high side stands above saturation, so that its hose fills with liquid.
    let liquid = || {
        let cold = Temperature::from_celsius(air_c);
        let bubble = refrigerant.bubble_pressure(Temperature::from_celsius(air_c + CLEAR_K)).ok()?;
        let state = refrigerant.liquid(bubble, cold).ok()?;
        mass_kg(USUAL.volume_m3()?, state.density.kg_per_m3())
    };
    let suction_kpa =
        || visit.readings.suction_pressure_kpa.or(expected.suction_pressure_kpa.map(|e| e.value));
    let kilograms = match port {
        Port::None => return None,
        Port::Suction | Port::Evaporator | Port::PumpDown => at(suction_kpa()?)?,
        Port::HighSide | Port::Liquid => liquid()?,
        // Standing: vapour a little below its dew pressure.
        Port::Any => {
            let dew = refrigerant.dew_pressure(Temperature::from_celsius(air_c - CLEAR_K)).ok()?;
            at(dew.kilopascals())?
        }
    };
    let percent = visit.system.charge_kg.filter(|c| *c > 0.0).map(|charge| 100.0 * kilograms / charge);
    Some(HoseTakes { grams: 1000.0 * kilograms, percent })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::readings::Readings;
    use crate::refrigerant::data::R290;
    use crate::system::System;

    #[test]
    fn a_hose_on_a_small_machine_takes_what_an_independent_library_says() {
        // 27.143 ml of R-290: vapour at 20 degC and 300 kPa 5.726857 kg/m3, 0.155446 g; liquid at 25 degC 492.4228 kg/m3,
        // 13.366 g, which is 11.14 % of 120 g (densities CoolProp 8.0).
        let system = System { charge_kg: Some(0.12), ..System::default() };
        let at = |ambient, port| {
            let readings = Readings {
                suction_pressure_kpa: Some(300.0),
                ambient_c: Some(ambient),
                ..Readings::default()
            };
            let visit = Visit { system, readings, ..Visit::default() };
            takes(port, &R290, &visit, &Expected::NONE).expect("a hose")
        };
        let low = at(20.0, Port::Suction);
        approx::assert_relative_eq!(low.grams, 0.155_446, max_relative = 0.002);
        approx::assert_relative_eq!(low.percent.unwrap(), 0.129_54, max_relative = 0.002);
        let high = at(25.0, Port::HighSide);
        approx::assert_relative_eq!(high.grams, 13.366, max_relative = 0.002);
        approx::assert_relative_eq!(high.percent.unwrap(), 11.14, max_relative = 0.002);
        assert!(high.percent.unwrap() > SPOILS_PERCENT && low.percent.unwrap() < SPOILS_PERCENT);
    }
}
