//! What goes in: the structs themselves are written from core's sections, see `generated/inputs.rs`.

use crate::boundary::clear;
use crate::generated::inputs::{
    RimewiseAccess, RimewiseCall, RimewiseCosts, RimewiseMonitorSettings, RimewiseObservations,
    RimewiseReadings, RimewiseSample, RimewiseSystem, RimewiseUncertainty,
};
use crate::status::RimewiseStatus;

/// In every integer of the inputs: not known, not measured, not observed.
pub const RIMEWISE_NOT_KNOWN: i32 = -1;

/// One integer code that may be not known, outside a struct.
pub(crate) fn choice_or_none<T>(code: i32, from_code: impl Fn(i32) -> Option<T>) -> Result<Option<T>, ()> {
    if code == RIMEWISE_NOT_KNOWN { Ok(None) } else { from_code(code).map(Some).ok_or(()) }
}

/// Makes a system of which nothing is known.
///
/// `size` is sizeof(*system), which is also stored in the struct. Errors: WRONG_SIZE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_system_clear(system: *mut RimewiseSystem, size: u32) -> RimewiseStatus {
    // SAFETY: the contract of the header.
    unsafe { clear(system, size) }
}

/// Makes readings of which nothing was measured.
///
/// `size` is sizeof(*readings), which is also stored in the struct. Errors: WRONG_SIZE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_readings_clear(
    readings: *mut RimewiseReadings,
    size: u32,
) -> RimewiseStatus {
    // SAFETY: the contract of the header.
    unsafe { clear(readings, size) }
}

/// Makes observations of which nothing was looked at.
///
/// `size` is sizeof(*observations), which is also stored in the struct. Errors: WRONG_SIZE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_observations_clear(
    observations: *mut RimewiseObservations,
    size: u32,
) -> RimewiseStatus {
    // SAFETY: the contract of the header.
    unsafe { clear(observations, size) }
}

/// Makes uncertainties that take the usual values.
///
/// `size` is sizeof(*uncertainty), which is also stored in the struct. Errors: WRONG_SIZE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_uncertainty_clear(
    uncertainty: *mut RimewiseUncertainty,
    size: u32,
) -> RimewiseStatus {
    // SAFETY: the contract of the header.
    unsafe { clear(uncertainty, size) }
}

/// Makes an access of which nothing is known.
///
/// `size` is sizeof(*access), which is also stored in the struct. Errors: WRONG_SIZE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_access_clear(access: *mut RimewiseAccess, size: u32) -> RimewiseStatus {
    // SAFETY: the contract of the header.
    unsafe { clear(access, size) }
}

/// Makes a call of which nothing is known.
///
/// `size` is sizeof(*call), which is also stored in the struct. Errors: WRONG_SIZE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_call_clear(call: *mut RimewiseCall, size: u32) -> RimewiseStatus {
    // SAFETY: the contract of the header.
    unsafe { clear(call, size) }
}

/// Makes costs of which none is known.
///
/// `size` is sizeof(*costs), which is also stored in the struct. Errors: WRONG_SIZE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_costs_clear(costs: *mut RimewiseCosts, size: u32) -> RimewiseStatus {
    // SAFETY: the contract of the header.
    unsafe { clear(costs, size) }
}

/// Makes settings of which nothing is known.
///
/// `size` is sizeof(*settings), which is also stored in the struct. Errors: WRONG_SIZE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_monitor_settings_clear(
    settings: *mut RimewiseMonitorSettings,
    size: u32,
) -> RimewiseStatus {
    // SAFETY: the contract of the header.
    unsafe { clear(settings, size) }
}

/// Makes a sample of which nothing was measured.
///
/// `size` is sizeof(*sample), which is also stored in the struct. Errors: WRONG_SIZE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_sample_clear(sample: *mut RimewiseSample, size: u32) -> RimewiseStatus {
    // SAFETY: the contract of the header.
    unsafe { clear(sample, size) }
}
