//! Refuses what no machine can show, before anything is computed from it.

use crate::decision::Costs;
use crate::field::{Field, Kind, Unit};
use crate::invalid::{Invalid, Problem};
use crate::quantity::Pressure;
use crate::readings::{Call, Readings, Uncertainty, Visit};
use crate::refrigerant::Refrigerant;
use crate::system::{CompressorPlate, Design, System};

/// Checks every number of a visit; the refrigerant's table bounds the pressures where it is known.
///
/// # Errors
/// The first field that no machine can show, with what is wrong with it.
pub fn check(refrigerant: Option<&Refrigerant<'_>>, visit: &Visit<'_>) -> Result<(), Invalid> {
    let system = &visit.system;
    section("system.design", Design::FIELDS, &system.design.numbers())?;
    section("system.compressor", CompressorPlate::FIELDS, &system.compressor.numbers())?;
    if let Some(phases) = system.compressor.phases
        && phases != 1.0
        && phases != 3.0
    {
        let problem = Problem::PhasesUnknown { phases };
        return Err(Invalid::new("system.compressor", "phases", Unit::None, problem));
    }
    section("system", System::FIELDS, &system.numbers())?;
    section("uncertainty", Uncertainty::FIELDS, &visit.uncertainty.numbers())?;
    section("", Call::FIELDS, &visit.call.numbers())?;
    section("costs", Costs::FIELDS, &visit.costs.numbers())?;
    for cost in visit.costs.repair {
        number("costs", "repair", Kind::Money, cost)?;
    }
    readings(refrigerant, visit, &visit.readings)?;
    if let Some(before) = visit.before {
        readings(refrigerant, visit, before).map_err(|e| Invalid { section: "before.readings", ..e })?;
    }
    for (n, record) in visit.record.iter().enumerate() {
        readings(refrigerant, visit, record).map_err(|e| Invalid { record: Some(n), ..e })?;
    }
    if let Some(refrigerant) = refrigerant {
        for (field, pressure) in [
            ("suction_pressure_kpa", system.design.suction_pressure_kpa),
            ("discharge_pressure_kpa", system.design.discharge_pressure_kpa),
        ] {
            inside_table(refrigerant, "system.design", field, pressure)?;
        }
    }
    Ok(())
}

/// Head pressure over the critical pressure that no machine shows: its compressor stalls or its relief opens long before
/// (judged).
const HIGHEST_OVER_CRITICAL: f32 = 2.0;

fn readings(
    refrigerant: Option<&Refrigerant<'_>>,
    visit: &Visit<'_>,
    readings: &Readings,
) -> Result<(), Invalid> {
    section("readings", Readings::FIELDS, &readings.numbers())?;
    for (field, kind, triple) in [
        ("line_voltages_v", Kind::Voltage, readings.line_voltages_v),
        ("line_currents_a", Kind::Current, readings.line_currents_a),
    ] {
        for value in triple.into_iter().flatten() {
            number("readings", field, kind, Some(value))?;
        }
    }
    if let Some(refrigerant) = refrigerant {
        // A head above the table, or above the critical point, is dangerous rather than impossible: it is answered with
        // its alarm.
        let (_, end) = refrigerant.pressure_range();
        let highest = HIGHEST_OVER_CRITICAL * refrigerant.critical_pressure().kilopascals();
        let below_the_end = |kpa: f32| if kpa > highest { kpa } else { kpa.min(end.kilopascals()) };
        for (field, pressure) in [
            ("suction_pressure_kpa", readings.suction_pressure_kpa),
            ("evaporator_pressure_kpa", readings.evaporator_pressure_kpa),
            ("discharge_pressure_kpa", readings.discharge_pressure_kpa.map(below_the_end)),
            ("liquid_pressure_kpa", readings.liquid_pressure_kpa.map(below_the_end)),
            ("standing_pressure_kpa", readings.standing_pressure_kpa),
        ] {
            inside_table(refrigerant, "readings", field, pressure)?;
        }
    }
    if let (Some(suction), Some(discharge)) = (readings.suction_pressure_kpa, readings.discharge_pressure_kpa)
        && readings.running != Some(false)
    {
        let us = visit.uncertainty.pressure_kpa(suction);
        let ud = visit.uncertainty.pressure_kpa(discharge);
        let allowed = 3.0 * libm::sqrtf(us * us + ud * ud);
        if suction - discharge > allowed {
            let problem = Problem::AboveDischarge { kpa: suction, max_kpa: discharge + allowed };
            return Err(Invalid::new("readings", "suction_pressure_kpa", Unit::Kpa, problem));
        }
    }
    Ok(())
}

fn inside_table(
    refrigerant: &Refrigerant<'_>,
    section: &'static str,
    field: &'static str,
    kpa: Option<f32>,
) -> Result<(), Invalid> {
    let (min, max) = refrigerant.pressure_range();
    match kpa.map(Pressure::from_kilopascals) {
        Some(p) if p < min || p > max => {
            let (min_kpa, max_kpa) = (min.kilopascals(), max.kilopascals());
            let problem = Problem::OutsideTable { kpa: p.kilopascals(), min_kpa, max_kpa };
            Err(Invalid::new(section, field, Unit::Kpa, problem))
        }
        _ => Ok(()),
    }
}

fn section(section: &'static str, fields: &'static [Field], numbers: &[Option<f32>]) -> Result<(), Invalid> {
    for (field, value) in fields.iter().zip(numbers) {
        number(section, field.name, field.kind, *value)?;
    }
    Ok(())
}

fn number(section: &'static str, field: &'static str, kind: Kind, value: Option<f32>) -> Result<(), Invalid> {
    let Some(value) = value else { return Ok(()) };
    if value.is_nan() || (value.is_infinite() && !kind.takes_open()) {
        return Err(Invalid::new(section, field, kind.unit(), Problem::NotFinite));
    }
    let (min, max) = kind.range();
    if value < min || value > max {
        return Err(Invalid::new(section, field, kind.unit(), Problem::OutOfRange { value, min, max }));
    }
    Ok(())
}
