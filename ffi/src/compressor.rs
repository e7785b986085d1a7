//! The compressor: its rating map, its pump-down, its start.

use crate::boundary::{Sized4, put, read};
use crate::estimate::RimewiseEstimate;
use crate::input::choice_or_none;
use crate::status::{RimewiseStatus, RimewiseStatus as Status};
use rimewise::compressor::pump_down::{self, Conditions, PumpDown};
use rimewise::compressor::rating::{Map, NoRating, Polynomial, Quantity, Scale};
use rimewise::compressor::start;
use rimewise::readings::{PumpDownEnd, PumpDownValve};

/// Most corners of a rating map's envelope.
pub const RIMEWISE_ENVELOPE_MAX: usize = 12;

/// One quantity of a compressor's rating map: ten coefficients over both dew temperatures (AHRI Standard 540).
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct RimewiseRatingMap {
    /// The size of this struct; set it before the call.
    pub size: u32,
    /// A RimewiseCompressorScale: that of both dew temperatures in the coefficients.
    pub scale: i32,
    /// C1 to C10 in the order of the standard, in whatever unit the map states.
    pub coefficients: [f32; 10],
    /// Standard uncertainty of the map's value, as a fraction; NaN takes the usual 0.025.
    pub spread: f32,
    /// Number of corners of the envelope, 3 to RIMEWISE_ENVELOPE_MAX; a map without an envelope has no answer.
    pub corner_count: u32,
    /// Evaporating dew temperatures of the corners in order around the envelope, degC.
    pub corner_evaporating_c: [f32; RIMEWISE_ENVELOPE_MAX],
    /// Condensing dew temperatures of the corners, degC.
    pub corner_condensing_c: [f32; RIMEWISE_ENVELOPE_MAX],
}

// SAFETY: repr(C), begins with its size, 4-byte numbers only.
unsafe impl Sized4 for RimewiseRatingMap {
    const FIRST: u32 = 152;
}

const NO_MAP: RimewiseRatingMap = RimewiseRatingMap {
    size: 0,
    scale: 0,
    coefficients: [0.0; 10],
    spread: 0.0,
    corner_count: 0,
    corner_evaporating_c: [0.0; RIMEWISE_ENVELOPE_MAX],
    corner_condensing_c: [0.0; RIMEWISE_ENVELOPE_MAX],
};

/// What a pump-down test says by itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewisePumpDownVerdict {
    /// It pulls low and holds.
    PullsAndHolds = 1,
    /// It pulls low and leaks back after it stops.
    PullsAndLeaksBack = 2,
    /// It cannot pull as low as a compressor in good order.
    CannotPull = 3,
    /// It reached what it was stopped at; how much lower it can pull is not known.
    ReachedStop = 4,
    /// The pressure rises, but behind a liquid-line valve that may be refrigerant boiling.
    RiseUnclear = 5,
}

/// What the first moments after a start show.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewiseStartVerdict {
    /// The current rose toward the locked-rotor current and fell in time.
    Good = 1,
    /// The current fell late: weak start gear or capacitor, low voltage, or a start against pressure.
    Slow = 2,
    /// The current stays near the locked-rotor current: the rotor stands still. Switch off.
    LockedRotor = 3,
    /// The inrush is far below the locked-rotor current: a clamp too slow to catch it, or a poor connection.
    InrushLow = 4,
}

/// Reads a rating map at evaporating and condensing dew temperature, degC.
///
/// Writes the value in the map's unit. Errors: UNKNOWN_CODE (scale), NOT_FINITE, OUT_OF_RANGE: outside the envelope, no
/// envelope, or no positive value.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_compressor_rate(
    map: *const RimewiseRatingMap,
    evaporating_c: f32,
    condensing_c: f32,
    value: *mut RimewiseEstimate,
) -> RimewiseStatus {
    // SAFETY: the contract of the header.
    unsafe {
        let map = match read(map, NO_MAP) {
            Ok(map) => map,
            Err(status) => return status,
        };
        let Some(scale) = Scale::from_code(map.scale) else {
            return Status::UnknownCode;
        };
        let corners: [(f32, f32); RIMEWISE_ENVELOPE_MAX] = core::array::from_fn(|n| {
            match (map.corner_evaporating_c.get(n), map.corner_condensing_c.get(n)) {
                (Some(evaporating), Some(condensing)) => (*evaporating, *condensing),
                _ => (0.0, 0.0),
            }
        });
        let Some(envelope_c) = corners.get(..map.corner_count as usize) else {
            return Status::OutOfRange;
        };
        let spread = if map.spread.is_nan() { Map::USUAL_SPREAD } else { map.spread };
        let core_map = Map {
            scale,
            mass_flow: Some(Polynomial { coefficients: map.coefficients }),
            power: None,
            current: None,
            capacity: None,
            envelope_c,
            spread,
        };
        match core_map.rate(Quantity::MassFlow, evaporating_c, condensing_c) {
            Ok(rated) => put(value, rated.into()),
            Err(NoRating::NotFinite) => Status::NotFinite,
            Err(_) => Status::OutOfRange,
        }
    }
}

/// Estimates the lowest suction pressure that a compressor in good order pulls against a closed valve, kPa absolute.
///
/// `discharge_kpa` at the end of the test, `running_suction_kpa` and `running_discharge_kpa` of the machine running in
/// good order, `gauge_u_kpa` the gauge's standard uncertainty. Errors: OUT_OF_RANGE where an input is not finite and
/// positive, or the suction not below the discharge.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_pump_down_expected(
    discharge_kpa: f32,
    running_suction_kpa: f32,
    running_discharge_kpa: f32,
    gauge_u_kpa: f32,
    lowest_kpa: *mut RimewiseEstimate,
) -> RimewiseStatus {
    let conditions = Conditions { discharge_kpa, running_suction_kpa, running_discharge_kpa };
    // SAFETY: the contract of the header.
    unsafe { RimewiseEstimate::put(lowest_kpa, pump_down::expected_kpa(&conditions, gauge_u_kpa)) }
}

/// Judges a pump-down.
///
/// `lowest_kpa` the lowest suction pressure, absolute; `rise_kpa_per_min` NaN where it was not watched; `valve` a
/// RimewisePumpDownValve and `ended_by` a RimewisePumpDownEnd or RIMEWISE_NOT_KNOWN; the rest as in
/// rimewise_pump_down_expected. Writes a RimewisePumpDownVerdict. Errors: UNKNOWN_CODE, OUT_OF_RANGE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_pump_down_judge(
    lowest_kpa: f32,
    rise_kpa_per_min: f32,
    valve: i32,
    ended_by: i32,
    discharge_kpa: f32,
    running_suction_kpa: f32,
    running_discharge_kpa: f32,
    gauge_u_kpa: f32,
    verdict: *mut i32,
) -> RimewiseStatus {
    let (Ok(valve), Ok(ended_by)) =
        (choice_or_none(valve, PumpDownValve::from_code), choice_or_none(ended_by, PumpDownEnd::from_code))
    else {
        return Status::UnknownCode;
    };
    let rise_kpa_per_min = Some(rise_kpa_per_min).filter(|rise| !rise.is_nan());
    let observation = PumpDown { lowest_kpa, rise_kpa_per_min, valve, ended_by };
    let conditions = Conditions { discharge_kpa, running_suction_kpa, running_discharge_kpa };
    let judged = match pump_down::judge(&observation, &conditions, gauge_u_kpa) {
        Some(pump_down::Verdict::PullsAndHolds) => RimewisePumpDownVerdict::PullsAndHolds,
        Some(pump_down::Verdict::PullsAndLeaksBack) => RimewisePumpDownVerdict::PullsAndLeaksBack,
        Some(pump_down::Verdict::CannotPull) => RimewisePumpDownVerdict::CannotPull,
        Some(pump_down::Verdict::ReachedStop) => RimewisePumpDownVerdict::ReachedStop,
        Some(pump_down::Verdict::RiseUnclear) => RimewisePumpDownVerdict::RiseUnclear,
        None => return Status::OutOfRange,
    };
    // SAFETY: the contract of the header.
    unsafe { put(verdict, judged as i32) }
}

/// Computes the locked-rotor current at the voltage the motor gets, A.
///
/// It is stated at rated voltage and follows the voltage. Errors: OUT_OF_RANGE where an input is not finite and
/// positive.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_locked_rotor_at(
    locked_rotor_a: f32,
    rated_v: f32,
    voltage_v: f32,
    current_a: *mut RimewiseEstimate,
) -> RimewiseStatus {
    // SAFETY: the contract of the header.
    unsafe { RimewiseEstimate::put(current_a, start::locked_rotor_at(locked_rotor_a, rated_v, voltage_v)) }
}

/// Judges a start.
///
/// `inrush_a` the highest current, `locked_rotor_a` at the voltage it had (see rimewise_locked_rotor_at),
/// `seconds_to_drop` until the current fell below half of it, `settled_a` the current after that. Writes a
/// RimewiseStartVerdict. Errors: OUT_OF_RANGE where an input is not finite, or negative.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_start_judge(
    inrush_a: f32,
    locked_rotor_a: f32,
    seconds_to_drop: f32,
    settled_a: f32,
    verdict: *mut i32,
) -> RimewiseStatus {
    let judged = match start::judge(inrush_a, locked_rotor_a, seconds_to_drop, settled_a) {
        Some(start::Start::Good) => RimewiseStartVerdict::Good,
        Some(start::Start::Slow) => RimewiseStartVerdict::Slow,
        Some(start::Start::LockedRotor) => RimewiseStartVerdict::LockedRotor,
        Some(start::Start::InrushLow) => RimewiseStartVerdict::InrushLow,
        None => return Status::OutOfRange,
    };
    // SAFETY: the contract of the header.
    unsafe { put(verdict, judged as i32) }
}
