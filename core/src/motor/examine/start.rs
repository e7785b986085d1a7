//! Findings of a start: the inrush, and why a motor does not start.

use super::lines::locked_rotor;
use super::{Findings, add};
use crate::compressor::start::{self, Inrush};
use crate::motor::finding::{Finding, FindingKind as Kind, Rank, Winding, beyond};
use crate::readings::{Readings, StartSound, Visit};
use crate::system::{CompressorPlate, StartGear};

/// Standard uncertainty of an inrush caught by a clamp, as a fraction (common practice).
const INRUSH_SPREAD: f32 = 0.15;

/// The inrush against the locked-rotor current.
pub(super) fn inrush(found: &mut Findings, plate: &CompressorPlate, readings: &Readings) {
    let (Some(amps), Some(locked)) = (readings.start_current_a, locked_rotor(plate, readings)) else {
        return;
    };
    let u = (INRUSH_SPREAD * locked.value).max(1.0e-3);
    let new = |kind| Finding::new(kind, "A");
    match start::inrush(amps, locked.value) {
        Some(Inrush::Low { limit_a }) => {
            let sure = beyond((limit_a - amps) / u);
            add(found, new(Kind::StartCurrentLow).held(amps, Some(limit_a)).likely(sure));
        }
        Some(Inrush::Usual) => add(found, new(Kind::StartCurrentUsual).held(amps, Some(locked.value))),
        Some(Inrush::High { limit_a }) => {
            let sure = beyond((amps - limit_a) / u);
            add(found, new(Kind::StartCurrentHigh).held(amps, Some(limit_a)).likely(sure));
        }
        None => {}
    }
}

/// How often each is why a motor hums until its protector opens, against the others (judged from common practice; no
/// published statistics are known).
mod hums {
    pub(super) const START_GEAR: f32 = 0.30;
    pub(super) const CAPACITOR: f32 = 0.25;
    pub(super) const SEIZED: f32 = 0.20;
    pub(super) const UNEQUAL_PRESSURES: f32 = 0.12;
    pub(super) const LOW_VOLTAGE: f32 = 0.08;
    pub(super) const WINDING: f32 = 0.10;
    /// A phase that is missing, of a motor on three.
    pub(super) const MISSING_PHASE: f32 = 0.50;
}

/// The same of a motor that stays silent when it is called for.
mod silent {
    pub(super) const NO_SUPPLY: f32 = 0.55;
    pub(super) const OVERLOAD: f32 = 0.30;
    pub(super) const WINDING: f32 = 0.10;
}

/// What is left of a possibility once it was measured and found sound: meters and people err (judged).
const FOUND_SOUND: f32 = 0.03;
/// Probability from which a possibility is listed.
const WORTH_LISTING: f32 = 0.2;

/// Why a motor does not start, by what was heard and what the other findings leave open.
///
/// Nothing is added where nobody listened, where the machine is not called for, or where what was measured explains it.
pub(super) fn heard(found: &mut Findings, visit: &Visit<'_>) {
    if visit.observations.calls_for_cooling == Some(false) {
        return;
    }
    let explained = found.iter().any(|f| {
        matches!(f.finding.rank(), Rank::Stops | Rank::Supply)
            || matches!(
                f.finding,
                Kind::StartCapacitorLow | Kind::StartCapacitorOpen | Kind::RunCapacitorOpen
            )
    });
    if explained {
        return;
    }
    match visit.observations.start_sound {
        Some(StartSound::HumsAndTrips) => hums_and_trips(found, visit),
        Some(StartSound::Silent) => stays_silent(found, visit),
        Some(StartSound::Starts) | None => {}
    }
}

/// A possibility's weight: as often as it is, or what is left of it once it was found sound.
fn left(weight: f32, found_sound: bool) -> f32 {
    if found_sound { FOUND_SOUND * weight } else { weight }
}

/// Lists what a possibility amounts to among all.
fn list(found: &mut Findings, all: f32, weight: f32, finding: Finding) {
    let probability = weight / all.max(1.0e-6);
    if probability >= WORTH_LISTING {
        add(found, finding.likely(probability));
    }
}

fn hums_and_trips(found: &mut Findings, visit: &Visit<'_>) {
    let plate = &visit.system.compressor;
    let readings = &visit.readings;
    let sound = |kind: Kind| found.iter().any(|f| f.finding == kind);
    let windings = left(hums::WINDING, sound(Kind::WindingsGood));
    let voltage =
        left(hums::LOW_VOLTAGE, readings.voltage_v.or(readings.line_voltages_v.map(|v| v[0])).is_some());
    let equalised = match (readings.suction_pressure_kpa, readings.discharge_pressure_kpa) {
        (Some(low), Some(high)) => libm::fabsf(high - low) < 2.0 * visit.uncertainty.pressure_kpa(high),
        _ => readings.standing_pressure_kpa.is_some(),
    };
    let pressures = left(hums::UNEQUAL_PRESSURES, equalised);
    let seized = hums::SEIZED;
    if plate.phases == Some(3.0) {
        let missing = left(hums::MISSING_PHASE, readings.line_voltages_v.is_some());
        let all = missing + seized + windings + voltage + pressures;
        list(found, all, missing, Finding::new(Kind::SinglePhasing, ""));
        return list(found, all, seized, Finding::new(Kind::LockedRotor, ""));
    }
    let fitted = plate.start_capacitor_uf.is_some()
        || plate.run_capacitor_uf.is_some()
        || matches!(plate.start_gear, Some(StartGear::CurrentRelay | StartGear::PotentialRelay));
    let good = sound(Kind::StartCapacitorGood)
        || (plate.start_capacitor_uf.is_none() && sound(Kind::RunCapacitorGood));
    let capacitor = if fitted { left(hums::CAPACITOR, good) } else { 0.0 };
    let gear = if plate.start_gear == Some(StartGear::None) { 0.0 } else { hums::START_GEAR };
    let all = gear + capacitor + seized + windings + voltage + pressures;
    list(found, all, gear, Finding::new(Kind::StartGearFailed, "").of(Some(Winding::Start)));
    list(found, all, seized, Finding::new(Kind::LockedRotor, ""));
    // A capacitor that is fitted and was not measured: which of the two follows from the plate.
    let kind =
        if plate.start_capacitor_uf.is_some() { Kind::StartCapacitorOpen } else { Kind::RunCapacitorOpen };
    list(found, all, capacitor, Finding::new(kind, ""));
}

fn stays_silent(found: &mut Findings, visit: &Visit<'_>) {
    let readings = &visit.readings;
    let sound = |kind: Kind| found.iter().any(|f| f.finding == kind);
    // A voltage that passed its check was measured where the motor should have it.
    let supplied = readings.voltage_v.is_some() || readings.line_voltages_v.is_some();
    let no_supply = left(silent::NO_SUPPLY, supplied);
    let overload = left(silent::OVERLOAD, sound(Kind::WindingsGood));
    let winding = left(silent::WINDING, sound(Kind::WindingsGood));
    let all = no_supply + overload + winding;
    list(found, all, no_supply, Finding::new(Kind::NoSupply, ""));
    list(found, all, overload, Finding::new(Kind::OverloadOpen, "").of(Some(Winding::Common)));
    list(found, all, winding, Finding::new(Kind::OpenWinding, ""));
}
