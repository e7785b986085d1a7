//! One pass over everything electrical that a visit holds, into a list of findings.

use super::balance;
use super::capacitor::{self, Condition, Tolerance};
use super::finding::{Finding, FindingKind as Kind};
use super::insulation::{self, Insulation};
use super::ohmmeter::Ohmmeter;
use super::supply::{self, Supply};
use super::terminals::{self, Identification};
use super::windings::{self, AgainstPlate, Continuity, Reading};
use crate::compressor::current::{self, Current};
use crate::compressor::start::{self, Inrush};
use crate::estimate::Estimate;
use crate::readings::{Readings, Uncertainty};
use crate::system::{CompressorPlate, System};

/// The findings of one visit.
pub type Findings = heapless::Vec<Finding, 16>;

/// Standard uncertainty of a current clamp unless the visit says otherwise, percent.
const CLAMP_PERCENT: f32 = 1.5;
/// Temperature that plates state resistances at unless they say otherwise, degC (common practice).
const PLATE_REFERENCE_C: f32 = 25.0;

/// Lists what the motor and supply readings show; empty when nothing was measured.
///
/// `expected_current` is what a machine in good order would draw at today's pressures, A; without it the plate
/// stands in with its wide uncertainty. Currents are not judged while the machine is said to be stopped. What the
/// plate does not state is not judged, except where the readings contradict each other.
pub fn examine(
    system: &System,
    readings: &Readings,
    uncertainty: &Uncertainty,
    expected_current: Option<Estimate>,
) -> Findings {
    let mut found = Findings::new();
    let plate = &system.compressor;
    if plate.phases == Some(3.0) {
        three_windings(&mut found, readings);
    } else {
        two_windings(&mut found, plate, readings);
    }
    frame(&mut found, readings);
    capacitors(&mut found, system, readings);
    voltage(&mut found, plate, readings);
    starting_current(&mut found, plate, readings);
    if readings.running != Some(false) {
        running_current(&mut found, plate, readings, uncertainty, expected_current);
    }
    found
}

/// Adds a finding; the list holds more than the checks can find, and what did not fit would be the last check's.
fn add(found: &mut Findings, finding: Kind, value: Option<f32>, limit: Option<f32>, unit: &'static str) {
    let finite = |x: Option<f32>| x.filter(|x| x.is_finite());
    let _ = found.push(Finding { finding, value: finite(value), limit: finite(limit), unit });
}

/// The temperature the windings have, as well as the visit tells it, degC.
fn winding_temperature(readings: &Readings) -> Estimate {
    let air = readings.standing_temperature_c.or(readings.ambient_c);
    match (readings.winding_c, air) {
        (Some(value), _) => Estimate { value, u: 3.0 },
        // A motor that ran shortly before is well above the air around it.
        (None, Some(air)) => Estimate { value: air + 15.0, u: 15.0 },
        (None, None) => Estimate { value: 40.0, u: 20.0 },
    }
}

/// Single-phase windings: between each other, then against the plate.
fn two_windings(found: &mut Findings, plate: &CompressorPlate, readings: &Readings) {
    let meter = Ohmmeter::USUAL;
    let mut reading = Reading {
        run_ohm: readings.winding_run_ohm,
        start_ohm: readings.winding_start_ohm,
        run_to_start_ohm: readings.winding_run_to_start_ohm,
    };
    if reading == Reading::default() {
        match unmarked(found, readings, &meter) {
            Some(marked) => reading = marked,
            None => return,
        }
    }
    let before = found.len();
    let (run, start) = (reading.run_ohm, reading.start_ohm);
    match windings::continuity(&reading, &meter) {
        None => return,
        Some(Continuity::OverloadOpen) => add(found, Kind::OverloadOpen, None, None, "ohm"),
        Some(Continuity::RunOpen | Continuity::StartOpen | Continuity::AllOpen) => {
            add(found, Kind::OpenWinding, None, None, "ohm");
        }
        Some(Continuity::Inconsistent { residual_ohm }) => {
            let limit = residual_ohm.map(|r| windings::COVERAGE * r.u);
            add(found, Kind::WindingsInconsistent, residual_ohm.map(|r| r.value), limit, "ohm");
        }
        Some(Continuity::Closed) => {}
    }
    let winding_c = winding_temperature(readings);
    let reference_c = plate.winding_reference_c.unwrap_or(PLATE_REFERENCE_C);
    let closed = |r: Option<f32>| r.and_then(|r| meter.resistance(r));
    let mut judged = 0;
    for (measured, plate_ohm) in
        [(closed(run), plate.run_winding_ohm), (closed(start), plate.start_winding_ohm)]
    {
        let (Some(measured), Some(plate_ohm)) = (measured, plate_ohm) else { continue };
        let Some(verdict) = windings::against_plate(measured, winding_c, plate_ohm, reference_c) else {
            continue;
        };
        judged += 1;
        match verdict {
            AgainstPlate::Good => {}
            AgainstPlate::ShortedTurns { percent } => {
                let limit = windings::COVERAGE * percent.u;
                add(found, Kind::ShortedTurns, Some(percent.value), Some(limit), "%");
            }
            AgainstPlate::HighResistance { excess_ohm } => {
                let limit = windings::COVERAGE * excess_ohm.u;
                add(found, Kind::HighResistanceConnection, Some(excess_ohm.value), Some(limit), "ohm");
            }
        }
    }
    if found.len() == before {
        let (run, start) = (closed(run), closed(start));
        unlike(found, plate, run, start);
        let residual = windings::residual(&reading, &meter);
        if found.len() == before && (judged > 0 || residual.is_some()) {
            let limit = residual.map(|r| windings::COVERAGE * r.u);
            add(found, Kind::WindingsGood, residual.map(|r| r.value), limit, "ohm");
        }
    }
}

/// Windings that each pass alone but lie apart from each other, which no temperature explains.
fn unlike(found: &mut Findings, plate: &CompressorPlate, run: Option<Estimate>, start: Option<Estimate>) {
    let (Some(run), Some(start)) = (run, start) else { return };
    if let (Some(plate_run), Some(plate_start)) = (plate.run_winding_ohm, plate.start_winding_ohm) {
        let Some(ratio) = windings::run_over_start(run, start, plate_run, plate_start) else { return };
        // The lower winding has lost turns, or the higher has a poor connection: shorted turns are looked at first.
        let lost = 1.0 - ratio.value.min(1.0 / ratio.value);
        let limit = windings::COVERAGE * ratio.u;
        if lost > limit {
            add(found, Kind::ShortedTurns, Some(100.0 * lost), Some(100.0 * limit), "%");
        }
    } else if run.value - start.value > windings::COVERAGE * (run.u + start.u) {
        // A start winding below the run winding: the terminals were taken for each other.
        add(found, Kind::WindingsInconsistent, Some(start.value), Some(run.value), "ohm");
    }
}

/// Unmarked terminals: told apart where the meter allows it.
fn unmarked(found: &mut Findings, readings: &Readings, meter: &Ohmmeter) -> Option<Reading> {
    let (a, b, c) = (readings.terminal_12_ohm?, readings.terminal_23_ohm?, readings.terminal_13_ohm?);
    match terminals::identify(a, b, c, meter)? {
        Identification::Identified(t) => Some(Reading {
            run_ohm: Some(t.run_ohm.value),
            start_ohm: Some(t.start_ohm.value),
            run_to_start_ohm: Some(t.run_ohm.value + t.start_ohm.value + t.residual_ohm.value),
        }),
        Identification::Ambiguous(t) => {
            add(found, Kind::TerminalsAmbiguous, Some(t.start_ohm.value), Some(t.run_ohm.value), "ohm");
            None
        }
        Identification::Inconsistent { residual_ohm } => {
            let limit = windings::COVERAGE * residual_ohm.u;
            add(found, Kind::WindingsInconsistent, Some(residual_ohm.value), Some(limit), "ohm");
            None
        }
        // Two open and one closed: the closed pair is start to run and the overload open, or one winding is open.
        // Both look alike here, and the overload's wait comes first.
        Identification::Open { open: 2 } => {
            add(found, Kind::OverloadOpen, None, None, "ohm");
            None
        }
        Identification::Open { open: 1 } => {
            add(found, Kind::WindingsInconsistent, None, None, "ohm");
            None
        }
        Identification::Open { .. } => {
            add(found, Kind::OpenWinding, None, None, "ohm");
            None
        }
    }
}

/// Three-phase windings: open ones, then their balance.
fn three_windings(found: &mut Findings, readings: &Readings) {
    let terminals = [readings.terminal_12_ohm, readings.terminal_23_ohm, readings.terminal_13_ohm];
    let marked = [readings.winding_run_ohm, readings.winding_start_ohm, readings.winding_run_to_start_ohm];
    let [Some(a), Some(b), Some(c)] =
        (if terminals.iter().all(Option::is_some) { terminals } else { marked })
    else {
        return;
    };
    if [a, b, c].iter().any(|r| r.is_nan() || *r < 0.0) {
        return;
    }
    if [a, b, c].iter().any(|r| r.is_infinite()) {
        return add(found, Kind::OpenWinding, None, None, "ohm");
    }
    let limit = balance::RESISTANCE_LIMIT_PERCENT;
    if let Some(percent) = balance::unbalance_percent([a, b, c]) {
        // The meter's own share: a low-ohm winding cannot be held to a few percent with a hand meter.
        let mean = a / 3.0 + b / 3.0 + c / 3.0;
        let meter = Ohmmeter::USUAL.resistance(mean).map_or(0.0, |r| 100.0 * windings::COVERAGE * r.u / mean);
        let limit = limit.max(meter);
        let kind = if percent > limit { Kind::WindingsInconsistent } else { Kind::WindingsGood };
        add(found, kind, Some(percent), Some(limit), "%");
    }
}

/// Insulation to the frame.
fn frame(found: &mut Findings, readings: &Readings) {
    let Some(megohm) = readings.winding_to_frame_megohm else { return };
    let limit = insulation::HERMETIC_LIMIT_MEGOHM;
    let test_v = readings.insulation_test_v.unwrap_or(insulation::TELLING_TEST_V);
    match insulation::judge(megohm, readings.winding_c) {
        Some(Insulation::Leaks) => add(found, Kind::WindingToFrame, Some(megohm), Some(limit), "megohm"),
        Some(Insulation::Doubtful) => {
            add(found, Kind::InsulationDoubtful, Some(megohm), Some(insulation::IEEE_43_MEGOHM), "megohm");
        }
        // A plain ohmmeter that finds no leak has not shown that there is none.
        Some(Insulation::Good) if found.is_empty() && test_v >= insulation::TELLING_TEST_V => {
            add(found, Kind::InsulationGood, Some(megohm), Some(insulation::IEEE_43_MEGOHM), "megohm");
        }
        _ => {}
    }
}

/// Both capacitors against the plate.
fn capacitors(found: &mut Findings, system: &System, readings: &Readings) {
    let run_tolerance = system
        .run_capacitor_tolerance_percent
        .and_then(Tolerance::both_sides_percent)
        .unwrap_or(Tolerance::RUN_USUAL);
    let plate = &system.compressor;
    let run = [Kind::RunCapacitorGood, Kind::RunCapacitorLow, Kind::RunCapacitorHigh, Kind::RunCapacitorOpen];
    let start = [
        Kind::StartCapacitorGood,
        Kind::StartCapacitorLow,
        Kind::StartCapacitorHigh,
        Kind::StartCapacitorOpen,
    ];
    for (measured, rated, tolerance, [good, low, high, open]) in [
        (readings.run_capacitor_uf, plate.run_capacitor_uf, run_tolerance, run),
        (readings.start_capacitor_uf, plate.start_capacitor_uf, Tolerance::START, start),
    ] {
        let Some(measured) = measured else { continue };
        match rated.and_then(|rated| capacitor::judge(measured, rated, tolerance)) {
            Some(Condition::Good { limit_uf }) => add(found, good, Some(measured), Some(limit_uf), "uF"),
            Some(Condition::Low { limit_uf }) => add(found, low, Some(measured), Some(limit_uf), "uF"),
            Some(Condition::High { limit_uf }) => add(found, high, Some(measured), Some(limit_uf), "uF"),
            Some(Condition::Open) => add(found, open, Some(measured), None, "uF"),
            // Without a plate value only an open capacitor can be told.
            None if measured.is_infinite() || measured == 0.0 => add(found, open, Some(measured), None, "uF"),
            None => {}
        }
    }
}

/// Supply voltage and its balance.
fn voltage(found: &mut Findings, plate: &CompressorPlate, readings: &Readings) {
    let mean = readings.line_voltages_v.map(|v| v.iter().map(|v| v / 3.0).sum::<f32>());
    if let (Some(volts), Some(rated)) = (readings.voltage_v.or(mean), plate.rated_v) {
        match supply::judge(volts, rated) {
            Some(Supply::Low { limit_v }) => add(found, Kind::LowVoltage, Some(volts), Some(limit_v), "V"),
            Some(Supply::High { limit_v }) => add(found, Kind::HighVoltage, Some(volts), Some(limit_v), "V"),
            Some(Supply::Good) | None => {}
        }
    }
    let limit = balance::VOLTAGE_LIMIT_PERCENT;
    if let Some(percent) =
        readings.line_voltages_v.and_then(balance::unbalance_percent).filter(|p| *p > limit)
    {
        add(found, Kind::VoltageUnbalance, Some(percent), Some(limit), "%");
    }
}

/// The locked-rotor current at the voltage the motor gets, as well as the visit tells it, A.
fn locked_rotor(plate: &CompressorPlate, readings: &Readings) -> Option<Estimate> {
    let locked = plate.locked_rotor_a?;
    match (plate.rated_v, readings.voltage_v) {
        (Some(rated), Some(volts)) => start::locked_rotor_at(locked, rated, volts),
        _ => Estimate::new(locked, 0.1 * locked).filter(|l| l.value > 0.0),
    }
}

/// The inrush against the locked-rotor current.
fn starting_current(found: &mut Findings, plate: &CompressorPlate, readings: &Readings) {
    let (Some(amps), Some(locked)) = (readings.start_current_a, locked_rotor(plate, readings)) else {
        return;
    };
    match start::inrush(amps, locked.value) {
        Some(Inrush::Low { limit_a }) => add(found, Kind::StartCurrentLow, Some(amps), Some(limit_a), "A"),
        Some(Inrush::Usual) => add(found, Kind::StartCurrentUsual, Some(amps), Some(locked.value), "A"),
        Some(Inrush::High { limit_a }) => add(found, Kind::StartCurrentHigh, Some(amps), Some(limit_a), "A"),
        None => {}
    }
}

/// The running current against a standing rotor, the plate and today's pressures.
fn running_current(
    found: &mut Findings,
    plate: &CompressorPlate,
    readings: &Readings,
    uncertainty: &Uncertainty,
    expected: Option<Estimate>,
) {
    if let Some(percent) = readings.line_currents_a.and_then(balance::unbalance_percent) {
        let explained = readings
            .line_voltages_v
            .and_then(balance::unbalance_percent)
            .and_then(balance::current_unbalance_explained)
            .map_or(0.0, |(_, high)| high);
        let limit = balance::CURRENT_LIMIT_PERCENT.max(explained);
        if percent > limit {
            add(found, Kind::CurrentUnbalance, Some(percent), Some(limit), "%");
        }
    }
    let mean = readings.line_currents_a.map(|a| a.iter().map(|a| a / 3.0).sum::<f32>());
    let Some(amps) = readings.current_a.or(mean) else { return };
    let Some(measured) =
        Estimate::new(amps, uncertainty.current_percent.unwrap_or(CLAMP_PERCENT) / 100.0 * amps)
    else {
        return;
    };
    if let Some(locked) = locked_rotor(plate, readings) {
        let limit = start::STANDS_STILL * locked.value;
        if amps >= limit {
            return add(found, Kind::LockedRotor, Some(amps), Some(limit), "A");
        }
    }
    if let Some(rated) = plate.rated_load_a.filter(|r| *r > 0.0) {
        // The plate is a limit of the motor, so only what the clamp may add is allowed above it.
        let limit = rated + 2.0 * measured.u;
        if amps > limit {
            return add(found, Kind::CurrentAboveRated, Some(amps), Some(limit), "A");
        }
    }
    let Some(expected) = expected.or_else(|| plate.rated_load_a.and_then(current::expected_from_plate))
    else {
        return;
    };
    match current::compare(measured, expected) {
        Some(Current::Below { limit_a }) => {
            add(found, Kind::CurrentBelowExpected, Some(amps), Some(limit_a), "A")
        }
        // Above today's pressures but within the plate: heat, voltage or load, not yet the motor's limit.
        Some(Current::AsExpected) => add(found, Kind::CurrentNormal, Some(amps), Some(expected.value), "A"),
        Some(Current::Above { limit_a }) if plate.rated_load_a.is_none() => {
            add(found, Kind::CurrentAboveRated, Some(amps), Some(limit_a), "A");
        }
        Some(Current::Above { limit_a }) => add(found, Kind::CurrentNormal, Some(amps), Some(limit_a), "A"),
        None => {}
    }
}
