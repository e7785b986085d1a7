//! From a visit to a report.

use crate::boundary::{read, read_or, writable, write_sized};
use crate::input::{RimewiseObservations, RimewiseReadings, RimewiseSystem, RimewiseUncertainty};
use crate::invalid::RimewiseInvalid;
use crate::refrigerant::RimewiseRefrigerant;
use crate::report::RimewiseReport;
use crate::status::{RimewiseStatus, RimewiseStatus as Status};
use rimewise::readings::{Readings, Visit};

/// The longest record that rimewise_diagnose_with_record takes.
pub const RIMEWISE_RECORD_MAX: u32 = 8;

/// Reads the caller's structs into a visit without a record; an unknown code is written to `invalid`.
pub(crate) unsafe fn visit(
    visit: &mut Visit<'_>,
    system: *const RimewiseSystem,
    readings: *const RimewiseReadings,
    observations: *const RimewiseObservations,
    uncertainty: *const RimewiseUncertainty,
    invalid: *mut RimewiseInvalid,
) -> Result<(), Status> {
    // SAFETY: as the caller's.
    unsafe {
        if !invalid.is_null() {
            writable(invalid)?;
        }
        let unknown = |field| refuse(invalid, RimewiseInvalid::unknown_code(field), Status::UnknownCode);
        visit.system = read_or(system, RimewiseSystem::BLANK)?.to_core().map_err(unknown)?;
        visit.readings = read(readings, RimewiseReadings::BLANK)?.to_core().map_err(unknown)?;
        visit.observations =
            read_or(observations, RimewiseObservations::BLANK)?.to_core().map_err(unknown)?;
        visit.uncertainty = read_or(uncertainty, RimewiseUncertainty::BLANK)?.to_core();
    }
    Ok(())
}

/// Writes which field is at fault, where the caller wants it, and gives the status back.
pub(crate) unsafe fn refuse(invalid: *mut RimewiseInvalid, value: RimewiseInvalid, status: Status) -> Status {
    // SAFETY: as the caller's.
    unsafe {
        if let Ok(size) = writable(invalid) {
            write_sized(invalid, size, &value);
        }
    }
    status
}

/// Diagnoses one visit.
///
/// `refrigerant` NULL: not known, so pressures are not interpreted. `system`, `observations`, `uncertainty` NULL:
/// nothing known, nothing observed, usual instruments. `readings` must be there. `report->size` must be set before the
/// call. `invalid` NULL: the field at fault is not wanted; else `invalid->size` must be set.
/// Errors: INVALID_INPUT and UNKNOWN_CODE (both write `invalid`), WRONG_SIZE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_diagnose(
    refrigerant: *const RimewiseRefrigerant,
    system: *const RimewiseSystem,
    readings: *const RimewiseReadings,
    observations: *const RimewiseObservations,
    uncertainty: *const RimewiseUncertainty,
    report: *mut RimewiseReport,
    invalid: *mut RimewiseInvalid,
) -> RimewiseStatus {
    // SAFETY: the contract of the header.
    unsafe {
        let mut given = Visit::default();
        if let Err(status) = visit(&mut given, system, readings, observations, uncertainty, invalid) {
            return status;
        }
        diagnose(refrigerant, &given, report, invalid)
    }
}

/// Diagnoses one visit to a machine of which readings are recorded from when it was good.
///
/// As rimewise_diagnose, with `record`, an array of `record_count` readings, each of `record->size` bytes. What is
/// known is used in the order record, target pressures, temperature differences, what is usual. Needs 3 KiB more stack.
/// Errors: OUT_OF_RANGE where `record_count` is above RIMEWISE_RECORD_MAX.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_diagnose_with_record(
    refrigerant: *const RimewiseRefrigerant,
    system: *const RimewiseSystem,
    readings: *const RimewiseReadings,
    observations: *const RimewiseObservations,
    uncertainty: *const RimewiseUncertainty,
    record: *const RimewiseReadings,
    record_count: u32,
    report: *mut RimewiseReport,
    invalid: *mut RimewiseInvalid,
) -> RimewiseStatus {
    if record_count > RIMEWISE_RECORD_MAX {
        return Status::OutOfRange;
    }
    // SAFETY: the contract of the header.
    unsafe {
        let mut recorded = [Readings::default(); RIMEWISE_RECORD_MAX as usize];
        let mut next = record.cast::<u8>();
        for (position, place) in recorded.iter_mut().take(record_count as usize).enumerate() {
            let one = match read(next.cast::<RimewiseReadings>(), RimewiseReadings::BLANK) {
                Ok(one) => one,
                Err(status) => return status,
            };
            *place = match one.to_core() {
                Ok(readings) => readings,
                Err(field) => {
                    let at_fault =
                        RimewiseInvalid { record: position as i32, ..RimewiseInvalid::unknown_code(field) };
                    return refuse(invalid, at_fault, Status::UnknownCode);
                }
            };
            next = next.add(one.size as usize);
        }
        let mut given =
            Visit { record: recorded.get(..record_count as usize).unwrap_or_default(), ..Visit::default() };
        if let Err(status) = visit(&mut given, system, readings, observations, uncertainty, invalid) {
            return status;
        }
        diagnose(refrigerant, &given, report, invalid)
    }
}

/// Asks core and writes the report where the caller keeps it.
unsafe fn diagnose(
    refrigerant: *const RimewiseRefrigerant,
    visit: &Visit<'_>,
    report: *mut RimewiseReport,
    invalid: *mut RimewiseInvalid,
) -> Status {
    // SAFETY: the contract of the header.
    unsafe {
        let size = match writable(report) {
            Ok(size) => size,
            Err(status) => return status,
        };
        let refrigerant = refrigerant.as_ref().map(|r| &r.0);
        match rimewise::diagnose(refrigerant, visit) {
            Ok(found) => {
                RimewiseReport::write(&found, report, size);
                Status::Ok
            }
            Err(at_fault) => refuse(invalid, at_fault.into(), Status::InvalidInput),
        }
    }
}
