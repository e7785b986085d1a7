//! Findings of the insulation and of the capacitors.

use super::{Findings, add};
use crate::estimate::Estimate;
use crate::motor::capacitor::{self, Condition, Tolerance};
use crate::motor::finding::{Corrected, Finding, FindingKind as Kind, beyond};
use crate::motor::insulation::{self, Insulation};
use crate::readings::Readings;
use crate::system::System;

/// Standard uncertainty of the logarithm of an insulation reading: some 10 % of the tester, a factor of two over 20 K
/// of the temperature rule (judged).
const INSULATION_SPREAD: f32 = 0.35;

/// Insulation to the frame, referred to 40 degC where the temperature of the windings is known.
pub(super) fn frame(found: &mut Findings, readings: &Readings) {
    let Some(megohm) = readings.winding_to_frame_megohm else { return };
    // A machine that stands at one temperature has it in its windings too.
    let winding_c = readings.winding_c.or(readings.standing_temperature_c);
    let corrected = winding_c.and_then(|from_c| {
        let value = insulation::referred_to_40c(megohm, from_c)?;
        Some(Corrected { value, from_c, to_c: insulation::REFERENCE_C })
    });
    let judged = corrected.map_or(megohm, |c| c.value);
    let below = |limit: f32| beyond(libm::logf(limit / judged.max(1.0e-6)) / INSULATION_SPREAD);
    let (kind, limit, probability) = match insulation::judge(megohm, winding_c) {
        Some(Insulation::Leaks) => {
            let limit = insulation::HERMETIC_LIMIT_MEGOHM;
            (Kind::WindingToFrame, limit, below(limit))
        }
        Some(Insulation::Doubtful) => {
            let limit = insulation::IEEE_43_MEGOHM;
            (Kind::InsulationDoubtful, limit, below(limit))
        }
        // A plain ohmmeter that finds no leak has not shown that there is none.
        Some(Insulation::Good)
            if found.is_empty()
                && readings.insulation_test_v.is_none_or(|v| v >= insulation::TELLING_TEST_V) =>
        {
            (
                Kind::InsulationGood,
                insulation::IEEE_43_MEGOHM,
                Finding::new(Kind::InsulationGood, "").probability,
            )
        }
        _ => return,
    };
    let finding = Finding::new(kind, "megohm").held(megohm, Some(limit)).likely(probability);
    add(found, Finding { corrected, ..finding });
}

/// Both capacitors against the plate.
pub(super) fn capacitors(found: &mut Findings, system: &System, readings: &Readings) {
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
    for (measured, rated, tolerance, kinds) in [
        (readings.run_capacitor_uf, plate.run_capacitor_uf, run_tolerance, run),
        (readings.start_capacitor_uf, plate.start_capacitor_uf, Tolerance::START, start),
    ] {
        if let Some(finding) = measured.and_then(|measured| one_capacitor(measured, rated, tolerance, kinds))
        {
            add(found, finding);
        }
    }
}

/// One capacitor; without a plate value only an open one can be told.
fn one_capacitor(
    measured_uf: f32,
    rated_uf: Option<f32>,
    tolerance: Tolerance,
    [good, low, high, open]: [Kind; 4],
) -> Option<Finding> {
    let read = capacitor::reading(measured_uf);
    let (u, value) = (read.u.max(1.0e-6), read.value);
    let condition = rated_uf.and_then(|rated| capacitor::judge(read, rated, tolerance));
    let new = |kind| Finding::new(kind, "uF");
    Some(match condition {
        Some(Condition::Good { limit_uf }) => new(good).held(value, Some(limit_uf)),
        Some(Condition::Low { limit_uf }) => {
            new(low).held(value, Some(limit_uf)).likely(beyond((limit_uf - value) / u))
        }
        Some(Condition::High { limit_uf }) => {
            new(high).held(value, Some(limit_uf)).likely(beyond((value - limit_uf) / u))
        }
        Some(Condition::Open) => new(open).held(value, None).likely(beyond(8.0)),
        None if Estimate::new(value, 0.0).is_none() || value == 0.0 => {
            new(open).held(value, None).likely(beyond(8.0))
        }
        None => return None,
    })
}
