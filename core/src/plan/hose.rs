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
