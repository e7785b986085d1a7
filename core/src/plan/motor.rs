//! A machine that does not run: its supply and motor are looked at first, in the order of common practice.

use crate::measurement::Measurement;
use crate::readings::{Action, Complaint, Doable, Readings, Visit};

/// What is looked at, from the cheapest and safest on: controls, supply, insulation, windings, capacitors, the start.
pub(super) const ORDER: [Doable; 9] = [
    Doable::Measurement(Measurement::CallsForCooling),
    Doable::Measurement(Measurement::Voltage),
    Doable::Measurement(Measurement::WindingToFrame),
    Doable::Measurement(Measurement::WindingRun),
    Doable::Measurement(Measurement::WindingStart),
    Doable::Measurement(Measurement::WindingRunToStart),
    Doable::Measurement(Measurement::RunCapacitor),
    Doable::Measurement(Measurement::StartCapacitor),
    Doable::Action(Action::StartTest),
];

/// Whether the machine stands although it should run: told so, or complained of with nothing read that runs. One that was
/// switched off for its standing pressure does not.
pub(super) fn stands(visit: &Visit<'_>) -> bool {
    let complaints = visit.call.complaint.unwrap_or_default();
    let does_not_start = complaints.has(Complaint::DoesNotStart) || complaints.has(Complaint::Trips);
    match visit.readings.running {
        Some(false) => does_not_start || visit.readings.standing_pressure_kpa.is_none(),
        Some(true) => false,
        None => does_not_start && !shows_running(&visit.readings),
    }
}

/// Whether something was read that only a running machine shows.
pub(super) fn shows_running(readings: &Readings) -> bool {
    [
        readings.suction_pressure_kpa,
        readings.discharge_pressure_kpa,
        readings.liquid_pressure_kpa,
        readings.evaporator_outlet_c,
        readings.suction_line_c,
        readings.discharge_line_c,
        readings.liquid_line_c,
        readings.drier_outlet_c,
        readings.supply_air_c,
        readings.condenser_exhaust_c,
        readings.current_a,
        readings.power_w,
        readings.minutes_running,
    ]
    .iter()
    .any(Option::is_some)
}

/// Whether the circuit stands empty: what was in it is in the recovery cylinder.
pub(super) fn emptied(readings: &Readings) -> bool {
    readings.recovered_kg.is_some() && readings.added_kg.is_none()
}
