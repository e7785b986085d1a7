//! What the readings say the machine does.

use crate::diagnose::{refuse, visit};
use crate::estimate::give_quantities;
use crate::generated::inputs::{RimewiseReadings, RimewiseSystem, RimewiseUncertainty};
use crate::generated::quantities::{RIMEWISE_CYCLE_ROOM, RimewiseCycle};
use crate::invalid::RimewiseInvalid;
use crate::refrigerant::RimewiseRefrigerant;
use crate::status::{RimewiseStatus, RimewiseStatus as Status};
use rimewise::cycle::Cycle;
use rimewise::readings::Visit;

/// Computes the quantities of the cycle that the readings give, with their standard uncertainties.
///
/// `refrigerant` NULL: not known, so only what needs no saturation. `system`, `uncertainty` NULL: nothing known, usual
/// instruments. `invalid` NULL: the field at fault is not wanted. Errors: INVALID_INPUT, UNKNOWN_CODE (both write
/// `invalid`), WRONG_SIZE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_cycle(
    refrigerant: *const RimewiseRefrigerant,
    system: *const RimewiseSystem,
    readings: *const RimewiseReadings,
    uncertainty: *const RimewiseUncertainty,
    cycle: *mut RimewiseCycle,
    invalid: *mut RimewiseInvalid,
) -> RimewiseStatus {
    if cycle.is_null() {
        return Status::NullPointer;
    }
    // SAFETY: the contract of the header.
    unsafe {
        let mut given = Visit::default();
        if let Err(status) = visit(&mut given, system, readings, uncertainty, invalid) {
            return status;
        }
        let refrigerant = refrigerant.as_ref().map(|r| &r.0);
        if let Err(at_fault) = rimewise::check(refrigerant, &given) {
            return refuse(invalid, at_fault.into(), Status::InvalidInput);
        }
        let found = Cycle::from_readings(refrigerant, &given.system, &given.readings, &given.uncertainty);
        give_quantities(cycle.cast(), RIMEWISE_CYCLE_ROOM, &found.quantities());
        Status::Ok
    }
}
