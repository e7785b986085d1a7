//! From a visit to a report.

use crate::boundary::{read, read_or, writable, write_sized};
use crate::input::{RimewiseObservations, RimewiseReadings, RimewiseSystem, RimewiseUncertainty};
use crate::invalid::RimewiseInvalid;
use crate::refrigerant::RimewiseRefrigerant;
use crate::report::RimewiseReport;
use crate::status::{RimewiseStatus, RimewiseStatus as Status};
use core::ffi::c_void;
use core::mem::{MaybeUninit, align_of, size_of};
use rimewise::Workspace;
use rimewise::readings::{Readings, Visit};
use rimewise::report::Report;

/// The longest record that rimewise_diagnose_with_record takes.
pub const RIMEWISE_RECORD_MAX: u32 = 4;

/// Memory of the caller that a diagnosis works in, so that the stack stays small. Its content is private and means
/// nothing between calls; it need not be initialised, and two calls that run at once need one each.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct RimewiseWorkspace {
    /// Private.
    pub opaque: [*const c_void; 4096],
}

/// What lies in the caller's workspace.
struct Memory {
    work: Workspace,
    report: Report,
    visit: Visit<'static>,
    record: [Readings; RIMEWISE_RECORD_MAX as usize],
}

// Both may begin as zeros: the compiler refuses a constant that is not a valid value of its type. Values made on the
// stack and moved would take four times the stack that a diagnosis needs.
const _: Workspace = unsafe { MaybeUninit::zeroed().assume_init() };
const _: Report = unsafe { MaybeUninit::zeroed().assume_init() };

const _: () = assert!(size_of::<Memory>() <= size_of::<RimewiseWorkspace>());
const _: () = assert!(align_of::<Memory>() <= align_of::<RimewiseWorkspace>());

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

/// The caller's pointers of one visit.
struct Given {
    system: *const RimewiseSystem,
    readings: *const RimewiseReadings,
    observations: *const RimewiseObservations,
    uncertainty: *const RimewiseUncertainty,
    record: *const RimewiseReadings,
    record_count: u32,
}

/// Fills the caller's workspace with the visit and its record, in a frame of its own that is gone when the work begins.
#[inline(never)]
unsafe fn prepare(memory: *mut Memory, from: &Given, invalid: *mut RimewiseInvalid) -> Result<(), Status> {
    // SAFETY: as the caller's.
    unsafe {
        let given = &raw mut (*memory).visit;
        given.write(Visit::default());
        visit(&mut *given, from.system, from.readings, from.observations, from.uncertainty, invalid)?;
        let kept = (&raw mut (*memory).record).cast::<Readings>();
        let mut next = from.record.cast::<u8>();
        for position in 0..from.record_count as usize {
            let one = read(next.cast::<RimewiseReadings>(), RimewiseReadings::BLANK)?;
            let readings = one.to_core().map_err(|field| {
                let at_fault =
                    RimewiseInvalid { record: position as i32, ..RimewiseInvalid::unknown_code(field) };
                refuse(invalid, at_fault, Status::UnknownCode)
            })?;
            kept.add(position).write(readings);
            next = next.add(one.size as usize);
        }
        (*given).record = core::slice::from_raw_parts(kept, from.record_count as usize);
        (&raw mut (*memory).work).write_bytes(0, 1);
        (&raw mut (*memory).report).write_bytes(0, 1);
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
/// Errors: INVALID_INPUT and UNKNOWN_CODE (both write `invalid`), WRONG_SIZE, OUT_OF_RANGE where `workspace` is not
/// aligned for pointers.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_diagnose(
    refrigerant: *const RimewiseRefrigerant,
    system: *const RimewiseSystem,
    readings: *const RimewiseReadings,
    observations: *const RimewiseObservations,
    uncertainty: *const RimewiseUncertainty,
    workspace: *mut RimewiseWorkspace,
    report: *mut RimewiseReport,
    invalid: *mut RimewiseInvalid,
) -> RimewiseStatus {
    // SAFETY: the contract of the header.
    unsafe {
        rimewise_diagnose_with_record(
            refrigerant,
            system,
            readings,
            observations,
            uncertainty,
            core::ptr::null(),
            0,
            workspace,
            report,
            invalid,
        )
    }
}

/// Diagnoses one visit to a machine of which readings are recorded from when it was good.
///
/// As rimewise_diagnose, with `record`, an array of `record_count` readings, each of its own `size`. What is known is
/// used in the order record, target pressures, temperature differences, what is usual. Errors: as rimewise_diagnose,
/// OUT_OF_RANGE also where `record_count` is above RIMEWISE_RECORD_MAX.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_diagnose_with_record(
    refrigerant: *const RimewiseRefrigerant,
    system: *const RimewiseSystem,
    readings: *const RimewiseReadings,
    observations: *const RimewiseObservations,
    uncertainty: *const RimewiseUncertainty,
    record: *const RimewiseReadings,
    record_count: u32,
    workspace: *mut RimewiseWorkspace,
    report: *mut RimewiseReport,
    invalid: *mut RimewiseInvalid,
) -> RimewiseStatus {
    if workspace.is_null() {
        return Status::NullPointer;
    }
    if record_count > RIMEWISE_RECORD_MAX || !workspace.is_aligned() {
        return Status::OutOfRange;
    }
    let memory = workspace.cast::<Memory>();
    // SAFETY: the contract of the header; the workspace is large enough and aligned, see the assertions above.
    unsafe {
        let size = match writable(report) {
            Ok(size) => size,
            Err(status) => return status,
        };
        let given = Given { system, readings, observations, uncertainty, record, record_count };
        if let Err(status) = prepare(memory, &given, invalid) {
            return status;
        }
        // One by one, because the visit borrows the record that lies beside it.
        let (work, found) = (&mut (*memory).work, &mut (*memory).report);
        let visit = &(*memory).visit;
        match rimewise::diagnose_in(work, refrigerant.as_ref().map(|r| &r.0), visit, found) {
            Ok(()) => {
                RimewiseReport::write(found, report, size);
                Status::Ok
            }
            Err(at_fault) => refuse(invalid, at_fault.into(), Status::InvalidInput),
        }
    }
}
