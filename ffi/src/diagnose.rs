//! From a visit to a report.

use crate::boundary::{Fault, input_size, take, writable, write_sized};
use crate::field;
use crate::generated::inputs::{
    RimewiseAccess, RimewiseCall, RimewiseCosts, RimewiseObservations, RimewiseReadings, RimewiseSystem,
    RimewiseUncertainty,
};
use crate::invalid::RimewiseInvalid;
use crate::refrigerant::RimewiseRefrigerant;
use crate::report::RimewiseReport;
use crate::status::{RimewiseStatus, RimewiseStatus as Status};
use core::ffi::c_void;
use core::mem::{MaybeUninit, align_of, size_of};
use core::ptr;
use rimewise::Workspace;
use rimewise::measurement::Measurement;
use rimewise::readings::{Action, Doable, Readings, Visit};
use rimewise::report::Report;

/// The longest record of a visit.
pub const RIMEWISE_RECORD_MAX: u32 = 4;

/// Memory of the caller that a diagnosis works in, so that the stack stays small: 36,864 bytes on every target. Its
/// content is private and means nothing between calls; it need not be initialised, and two calls that run at once need
/// one each.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct RimewiseWorkspace {
    /// Private.
    pub opaque: [u64; 4608],
}

/// Most entries of RimewiseVisit.cannot.
pub const RIMEWISE_CANNOT_MAX: u32 = 32;
/// In RimewiseVisit.cannot, an action is this and its RimewiseAction; a RimewiseMeasurement stands for itself.
pub const RIMEWISE_CANNOT_ACTION: i32 = 1000;

/// One visit: what is known of the machine, what was measured and seen, and how well. NULL: nothing of that is known.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct RimewiseVisit {
    /// The size of this struct; set it before the call, and everything that is not used to zero.
    pub size: u32,
    /// Number of entries of `record`, at most RIMEWISE_RECORD_MAX.
    pub record_count: u32,
    /// Number of entries of `cannot`, at most RIMEWISE_CANNOT_MAX.
    pub cannot_count: u32,
    /// Zero.
    pub reserved: u32,
    /// What is known of the machine.
    pub system: *const RimewiseSystem,
    /// What was measured; must be there.
    pub readings: *const RimewiseReadings,
    /// What was seen and heard.
    pub observations: *const RimewiseObservations,
    /// How well the instruments measure; NULL: as usual.
    pub uncertainty: *const RimewiseUncertainty,
    /// Why the technician was called, and what was done before.
    pub call: *const RimewiseCall,
    /// What the machine lets be reached, and what is at hand.
    pub access: *const RimewiseAccess,
    /// What things cost.
    pub costs: *const RimewiseCosts,
    /// Readings of this same machine when it was good, each of its own `size`.
    pub record: *const RimewiseReadings,
    /// What this visit cannot take or do: RimewiseMeasurement, or RIMEWISE_CANNOT_ACTION and a RimewiseAction.
    pub cannot: *const i32,
}

impl RimewiseVisit {
    /// The size it had in the first release that had it.
    const FIRST: usize = 16 + 9 * size_of::<*const c_void>();
    const NOTHING: Self = Self {
        size: 0,
        record_count: 0,
        cannot_count: 0,
        reserved: 0,
        system: ptr::null(),
        readings: ptr::null(),
        observations: ptr::null(),
        uncertainty: ptr::null(),
        call: ptr::null(),
        access: ptr::null(),
        costs: ptr::null(),
        record: ptr::null(),
        cannot: ptr::null(),
    };
}

/// What lies in the caller's workspace.
struct Memory {
    work: Workspace,
    report: Report,
    visit: Visit<'static>,
    record: [Readings; RIMEWISE_RECORD_MAX as usize],
    cannot: [Doable; RIMEWISE_CANNOT_MAX as usize],
}

// Both begin as zeros, because values made on the stack and moved would take four times the stack that a diagnosis needs.
// SAFETY: computed while this compiles, where the compiler refuses zeros that are not a valid value of the type.
const _: Workspace = unsafe { MaybeUninit::zeroed().assume_init() };
// SAFETY: as the one above.
const _: Report = unsafe { MaybeUninit::zeroed().assume_init() };

const _: () = assert!(size_of::<Memory>() <= size_of::<RimewiseWorkspace>());
const _: () = assert!(align_of::<Memory>() <= align_of::<RimewiseWorkspace>());

/// Writes which field an input's fault is in, and gives the status of it.
unsafe fn at_fault(invalid: *mut RimewiseInvalid, record: i32, fault: Fault) -> Status {
    match fault {
        Fault::Status(status) => status,
        // SAFETY: as the caller's.
        Fault::Field(field) => unsafe {
            refuse(
                invalid,
                RimewiseInvalid { record, ..RimewiseInvalid::unknown_code(field) },
                Status::UnknownCode,
            )
        },
    }
}

/// Reads the machine, the readings and the uncertainties into a visit; an unknown code is written to `invalid`.
pub(crate) unsafe fn visit(
    visit: &mut Visit<'_>,
    system: *const RimewiseSystem,
    readings: *const RimewiseReadings,
    uncertainty: *const RimewiseUncertainty,
    invalid: *mut RimewiseInvalid,
) -> Result<(), Status> {
    // SAFETY: as the caller's.
    unsafe {
        if !invalid.is_null() {
            writable(invalid)?;
        }
        input_size(readings)?;
        let unknown = |fault| at_fault(invalid, -1, fault);
        take(system, &mut visit.system).map_err(unknown)?;
        take(readings, &mut visit.readings).map_err(unknown)?;
        take(uncertainty, &mut visit.uncertainty).map_err(unknown)
    }
}

/// Fills the caller's workspace with the visit and its record, in a frame of its own that is gone when the work begins.
#[inline(never)]
unsafe fn prepare(
    memory: *mut Memory,
    from: &RimewiseVisit,
    invalid: *mut RimewiseInvalid,
) -> Result<(), Status> {
    // SAFETY: as the caller's.
    unsafe {
        let given = &raw mut (*memory).visit;
        given.write(Visit::default());
        let given = &mut *given;
        visit(given, from.system, from.readings, from.uncertainty, invalid)?;
        let unknown = |fault| at_fault(invalid, -1, fault);
        take(from.observations, &mut given.observations).map_err(unknown)?;
        take(from.call, &mut given.call).map_err(unknown)?;
        take(from.access, &mut given.access).map_err(unknown)?;
        take(from.costs, &mut given.costs).map_err(unknown)?;
        let kept = (&raw mut (*memory).record).cast::<Readings>();
        let mut next = from.record.cast::<u8>();
        for position in 0..from.record_count as usize {
            let one = next.cast::<RimewiseReadings>();
            let size = input_size(one)?;
            let mut readings = Readings::default();
            take(one, &mut readings).map_err(|fault| at_fault(invalid, position as i32, fault))?;
            kept.add(position).write(readings);
            next = next.add(size);
        }
        given.record = core::slice::from_raw_parts(kept, from.record_count as usize);
        if from.cannot_count > 0 && from.cannot.is_null() {
            return Err(Status::NullPointer);
        }
        let cannot = (&raw mut (*memory).cannot).cast::<Doable>();
        for position in 0..from.cannot_count as usize {
            let code = from.cannot.add(position).read_unaligned();
            let action = code.checked_sub(RIMEWISE_CANNOT_ACTION).and_then(Action::from_code);
            let measurement = Measurement::from_code(code).map(Doable::Measurement);
            let Some(doable) = measurement.or(action.map(Doable::Action)) else {
                return Err(unknown(Fault::Field(field::number("access", "cannot"))));
            };
            cannot.add(position).write(doable);
        }
        given.cannot = core::slice::from_raw_parts(cannot, from.cannot_count as usize);
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
/// aligned for 64-bit integers.
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
    let visit = RimewiseVisit { system, readings, observations, uncertainty, ..RimewiseVisit::NOTHING };
    // SAFETY: the contract of the header.
    unsafe { diagnose(refrigerant, &visit, workspace, report, invalid) }
}

/// Diagnoses one visit with everything that can be told of it, a record of the machine included.
///
/// As rimewise_diagnose. What is known is used in the order record, target pressures, temperature differences, what is
/// usual. `visit->size` must be set before the call. Errors: as rimewise_diagnose, OUT_OF_RANGE also where a count is
/// above its limit.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_diagnose_visit(
    refrigerant: *const RimewiseRefrigerant,
    visit: *const RimewiseVisit,
    workspace: *mut RimewiseWorkspace,
    report: *mut RimewiseReport,
    invalid: *mut RimewiseInvalid,
) -> RimewiseStatus {
    if visit.is_null() {
        return Status::NullPointer;
    }
    // SAFETY: the contract of the header: the caller's struct has the size that its first word states.
    unsafe {
        let size = visit.cast::<u32>().read_unaligned() as usize;
        if size < RimewiseVisit::FIRST || size > size_of::<RimewiseVisit>() {
            return Status::WrongSize;
        }
        let mut given = RimewiseVisit::NOTHING;
        ptr::copy_nonoverlapping(visit.cast::<u8>(), (&raw mut given).cast::<u8>(), size);
        diagnose(refrigerant, &given, workspace, report, invalid)
    }
}

unsafe fn diagnose(
    refrigerant: *const RimewiseRefrigerant,
    given: &RimewiseVisit,
    workspace: *mut RimewiseWorkspace,
    report: *mut RimewiseReport,
    invalid: *mut RimewiseInvalid,
) -> RimewiseStatus {
    if workspace.is_null() {
        return Status::NullPointer;
    }
    if given.record_count > RIMEWISE_RECORD_MAX
        || given.cannot_count > RIMEWISE_CANNOT_MAX
        || !workspace.is_aligned()
    {
        return Status::OutOfRange;
    }
    let memory = workspace.cast::<Memory>();
    // SAFETY: the contract of the header; the workspace is large enough and aligned, see the assertions above.
    unsafe {
        let size = match writable(report) {
            Ok(size) => size,
            Err(status) => return status,
        };
        if let Err(status) = prepare(memory, given, invalid) {
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
