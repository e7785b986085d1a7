//! Findings of the winding resistances.

use super::{Findings, add};
use crate::estimate::Estimate;
use crate::motor::balance;
use crate::motor::finding::{Finding, FindingKind as Kind, Winding, beyond};
use crate::motor::ohmmeter::Ohmmeter;
use crate::motor::terminals::{self, Identification};
use crate::motor::windings::{self, AgainstPlate, Continuity, Reading};
use crate::normal::combine;
use crate::readings::Readings;
use crate::system::CompressorPlate;

/// Temperature that plates state resistances at unless they say otherwise, degC (common practice).
const PLATE_REFERENCE_C: f32 = 25.0;
/// Winding temperature below which an internal overload should have closed again, degC (common practice: those of
/// small hermetics open at 100 degC and more and close again at 50 to 70 degC).
const COLD_BELOW_C: f32 = 45.0;
/// Probability of an open circuit that all three readings agree on (judged: leads and corroded pins remain).
const OPEN_BY_THREE: f32 = 0.95;
/// The same where a reading that would confirm it is missing, or nothing at all conducts (judged).
const OPEN_BY_FEWER: f32 = 0.80;
/// Probability that two open readings of three unmarked terminals are the overload rather than a winding (judged:
/// overloads open often, windings seldom).
const OVERLOAD_BY_TERMINALS: f32 = 0.65;

/// The temperature the windings have, as well as the visit tells it, degC.
fn temperature(readings: &Readings) -> Estimate {
    let air = readings.standing_temperature_c.or(readings.ambient_c);
    match (readings.winding_c, air) {
        (Some(value), _) => Estimate { value, u: 3.0 },
        // A motor that ran shortly before is well above the air around it.
        (None, Some(air)) => Estimate { value: air + 15.0, u: 15.0 },
        (None, None) => Estimate { value: 40.0, u: 20.0 },
    }
}

/// Single-phase windings: between each other, then against the plate.
pub(super) fn two(found: &mut Findings, plate: &CompressorPlate, readings: &Readings) {
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
    let all_read = [reading.run_ohm, reading.start_ohm, reading.run_to_start_ohm].iter().all(Option::is_some);
    let sure = if all_read { OPEN_BY_THREE } else { OPEN_BY_FEWER };
    let open = |winding| Finding::new(Kind::OpenWinding, "ohm").of(Some(winding)).likely(sure);
    match windings::continuity(&reading, &meter) {
        None => return,
        Some(Continuity::OverloadOpen) => add(found, overload(readings, sure)),
        Some(Continuity::RunOpen) => add(found, open(Winding::Run)),
        Some(Continuity::StartOpen) => add(found, open(Winding::Start)),
        Some(Continuity::AllOpen) => {
            add(found, Finding::new(Kind::OpenWinding, "ohm").likely(OPEN_BY_FEWER));
        }
        Some(Continuity::Inconsistent { residual_ohm }) => add(found, inconsistent(residual_ohm)),
        Some(Continuity::Closed) => {}
    }
    let closed = |r: Option<f32>| r.and_then(|r| meter.resistance(r));
    let (run, start) = (closed(reading.run_ohm), closed(reading.start_ohm));
    let judged =
        [(run, plate.run_winding_ohm, Winding::Run), (start, plate.start_winding_ohm, Winding::Start)]
            .into_iter()
            .filter(|(measured, plate_ohm, winding)| {
                against_plate(found, readings, plate, (*measured, *plate_ohm, *winding)).is_some()
            })
            .count();
    if found.len() == before {
        unlike(found, plate, run, start);
        let residual = windings::residual(&reading, &meter);
        if found.len() == before && (judged > 0 || residual.is_some()) {
            let good = Finding::new(Kind::WindingsGood, "ohm");
            add(found, residual.map_or(good, |r| good.held(r.value, Some(windings::COVERAGE * r.u))));
        }
    }
}

/// One winding against its plate; `None` where there is nothing to hold against each other.
fn against_plate(
    found: &mut Findings,
    readings: &Readings,
    plate: &CompressorPlate,
    (measured, plate_ohm, winding): (Option<Estimate>, Option<f32>, Winding),
) -> Option<()> {
    let reference_c = plate.winding_reference_c.unwrap_or(PLATE_REFERENCE_C);
    match windings::against_plate(measured?, temperature(readings), plate_ohm?, reference_c)? {
        AgainstPlate::Good => {}
        AgainstPlate::ShortedTurns { percent } => {
            add(found, exceeding(Kind::ShortedTurns, percent, "%").of(Some(winding)));
        }
        AgainstPlate::HighResistance { excess_ohm } => {
            add(found, exceeding(Kind::HighResistanceConnection, excess_ohm, "ohm").of(Some(winding)));
        }
    }
    Some(())
}

/// A finding by how far a difference exceeds its own coverage.
fn exceeding(kind: Kind, difference: Estimate, unit: &'static str) -> Finding {
    let limit = windings::COVERAGE * difference.u;
    let excess = if difference.u > 0.0 { (difference.value - limit) / difference.u } else { 8.0 };
    Finding::new(kind, unit).held(difference.value, Some(limit)).likely(beyond(excess))
}

/// An open overload, with the temperature of the windings where it was measured: it tells whether to wait for it.
fn overload(readings: &Readings, sure: f32) -> Finding {
    let unit = if readings.winding_c.is_some() { "degC" } else { "ohm" };
    let finding = Finding::new(Kind::OverloadOpen, unit).of(Some(Winding::Common)).likely(sure);
    readings.winding_c.map_or(finding, |c| finding.held(c, Some(COLD_BELOW_C)))
}

/// Resistances that contradict each other.
fn inconsistent(residual_ohm: Option<Estimate>) -> Finding {
    let finding = Finding::new(Kind::WindingsInconsistent, "ohm");
    residual_ohm.map_or(finding, |r| {
        let size = Estimate { value: libm::fabsf(r.value), u: r.u };
        Finding { value: Some(r.value), ..exceeding(Kind::WindingsInconsistent, size, "ohm") }
    })
}

/// Windings that each pass alone but lie apart from each other, which no temperature explains.
fn unlike(found: &mut Findings, plate: &CompressorPlate, run: Option<Estimate>, start: Option<Estimate>) {
    let (Some(run), Some(start)) = (run, start) else { return };
    if let (Some(plate_run), Some(plate_start)) = (plate.run_winding_ohm, plate.start_winding_ohm) {
        let Some(ratio) = windings::run_over_start(run, start, plate_run, plate_start) else { return };
        // The lower winding has lost turns, or the higher has a poor connection: shorted turns are looked at first.
        let (lost, winding) = if ratio.value < 1.0 {
            (1.0 - ratio.value, Winding::Run)
        } else {
            (1.0 - 1.0 / ratio.value, Winding::Start)
        };
        if lost > windings::COVERAGE * ratio.u {
            let percent = Estimate { value: 100.0 * lost, u: 100.0 * ratio.u };
            add(found, exceeding(Kind::ShortedTurns, percent, "%").of(Some(winding)));
        }
    } else {
        // A start winding below the run winding: the terminals were taken for each other.
        let difference = Estimate { value: run.value - start.value, u: combine(&[run.u, start.u]) };
        if difference.value > windings::COVERAGE * difference.u {
            let finding = exceeding(Kind::WindingsInconsistent, difference, "ohm");
            add(found, Finding { value: Some(start.value), limit: Some(run.value), ..finding });
        }
    }
}

/// Unmarked terminals: told apart where the meter allows it.
fn unmarked(found: &mut Findings, readings: &Readings, meter: &Ohmmeter) -> Option<Reading> {
    let (a, b, c) = (readings.terminal_12_ohm?, readings.terminal_23_ohm?, readings.terminal_13_ohm?);
    match terminals::identify(a, b, c, meter)? {
        Identification::Identified(t) => {
            return Some(Reading {
                run_ohm: Some(t.run_ohm.value),
                start_ohm: Some(t.start_ohm.value),
                run_to_start_ohm: Some(t.run_ohm.value + t.start_ohm.value + t.residual_ohm.value),
            });
        }
        Identification::Ambiguous(t) => {
            let finding = Finding::new(Kind::TerminalsAmbiguous, "ohm");
            add(found, finding.held(t.start_ohm.value, Some(t.run_ohm.value)));
        }
        Identification::Inconsistent { residual_ohm } => add(found, inconsistent(Some(residual_ohm))),
        // Two open and one closed: the closed pair is start to run and the overload open, or one winding is open.
        // Both look alike here, and the overload's wait comes first.
        Identification::Open { open: 2 } => add(found, overload(readings, OVERLOAD_BY_TERMINALS)),
        Identification::Open { open: 1 } => add(found, inconsistent(None)),
        Identification::Open { .. } => {
            add(found, Finding::new(Kind::OpenWinding, "ohm").likely(OPEN_BY_FEWER));
        }
    }
    None
}

/// Three-phase windings: open ones, then their balance.
pub(super) fn three(found: &mut Findings, readings: &Readings) {
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
        // In a star the terminal that both open readings share is the open one. One open reading fits no winding.
        let line = match [a, b, c].map(f32::is_infinite) {
            [true, false, true] => Some(Winding::Line1),
            [true, true, false] => Some(Winding::Line2),
            [false, true, true] => Some(Winding::Line3),
            _ => None,
        };
        let sure = if line.is_some() { OPEN_BY_THREE } else { OPEN_BY_FEWER };
        return add(found, Finding::new(Kind::OpenWinding, "ohm").of(line).likely(sure));
    }
    if let Some(percent) = balance::unbalance_percent([a, b, c]) {
        // The meter's own share: a low-ohm winding cannot be held to a few percent with a hand meter.
        let mean = a / 3.0 + b / 3.0 + c / 3.0;
        let meter = Ohmmeter::USUAL.resistance(mean).map_or(0.0, |r| 100.0 * r.u / mean);
        let limit = balance::RESISTANCE_LIMIT_PERCENT.max(windings::COVERAGE * meter);
        add(
            found,
            if percent > limit {
                let sure = beyond((percent - limit) / meter.max(1.0));
                Finding::new(Kind::WindingsInconsistent, "%").held(percent, Some(limit)).likely(sure)
            } else {
                Finding::new(Kind::WindingsGood, "%").held(percent, Some(limit))
            },
        );
    }
}
