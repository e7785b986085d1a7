//! The monitor: a stream of samples in, events out, and averaged readings once the machine is steady.

use crate::boundary::{Fault, Sized4, give, input_size, number, put, take, writable};
use crate::diagnose::refuse;
use crate::generated::inputs::{
    RimewiseMonitorSettings, RimewiseReadings, RimewiseSample, RimewiseUncertainty,
};
use crate::invalid::RimewiseInvalid;
use crate::refrigerant::RimewiseRefrigerant;
use crate::status::{RimewiseStatus, RimewiseStatus as Status};
use core::mem::{align_of, size_of};
use rimewise::monitor::{Event, MOST_EVENTS, Monitor, Sample, Settings};
use rimewise::readings::Uncertainty;

/// Most events that one sample can bring.
pub const RIMEWISE_MONITOR_EVENTS_MAX: usize = 8;
const _: () = assert!(RIMEWISE_MONITOR_EVENTS_MAX == MOST_EVENTS);

/// One monitor of one machine, in the caller's memory. Its content is private: rimewise_monitor_start fills it, and
/// nothing but the functions of the monitor may write to it.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct RimewiseMonitor {
    /// Private.
    pub opaque: [u64; 128],
}

const _: () = assert!(size_of::<Monitor>() <= size_of::<RimewiseMonitor>());
const _: () = assert!(align_of::<Monitor>() <= align_of::<RimewiseMonitor>());

/// One event.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct RimewiseMonitorEvent {
    /// When, on the clock of the samples, ms, the lower 32 bits.
    pub time_ms_low: u32,
    /// The upper 32 bits of the time.
    pub time_ms_high: u32,
    /// A RimewiseMonitorEventKind, which says what the figures are.
    pub kind: i32,
    /// Bit n is set where `values[n]` is there.
    pub valid: u32,
    /// The figures.
    pub values: [f32; 3],
}

/// What one sample brought.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct RimewiseMonitorEvents {
    /// The size of this struct; set it before the call.
    pub size: u32,
    /// A RimewiseMonitorSampleProblem: why the sample could not be used, whole or in part; 0 for none.
    pub problem: i32,
    /// The channels that could not be used: bit n is the n-th number of RimewiseSample, from 0.
    pub unusable: u32,
    /// Number of entries of `events`.
    pub count: u32,
    /// What happened, in its order.
    pub events: [RimewiseMonitorEvent; RIMEWISE_MONITOR_EVENTS_MAX],
}

// SAFETY: repr(C), begins with its size, 4-byte numbers only.
unsafe impl Sized4 for RimewiseMonitorEvents {
    const FIRST: u32 = 240;
}

/// Starts a monitor that has seen nothing yet.
///
/// `settings` NULL: nothing known. `invalid` NULL: the field at fault is not wanted. Errors: INVALID_INPUT and
/// UNKNOWN_CODE (both write `invalid`), WRONG_SIZE, OUT_OF_RANGE where `monitor` is not aligned for 64-bit numbers.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_monitor_start(
    monitor: *mut RimewiseMonitor,
    settings: *const RimewiseMonitorSettings,
    invalid: *mut RimewiseInvalid,
) -> RimewiseStatus {
    if monitor.is_null() {
        return Status::NullPointer;
    }
    if !monitor.is_aligned() {
        return Status::OutOfRange;
    }
    // SAFETY: the contract of the header.
    unsafe {
        if !invalid.is_null()
            && let Err(status) = writable(invalid)
        {
            return status;
        }
        let mut given = Settings::default();
        match take(settings, &mut given) {
            Ok(()) => {}
            Err(Fault::Status(status)) => return status,
            Err(Fault::Field(field)) => {
                return refuse(invalid, RimewiseInvalid::unknown_code(field), Status::UnknownCode);
            }
        }
        match Monitor::new(&given) {
            Ok(started) => {
                monitor.cast::<Monitor>().write(started);
                Status::Ok
            }
            Err(at_fault) => refuse(invalid, at_fault.into(), Status::InvalidInput),
        }
    }
}

/// Takes one sample and tells what happened.
///
/// `refrigerant` gives superheat, without which liquid on start cannot be told; NULL: not known. `time_ms` is the time
/// of the sample on any clock that does not run backwards. `events->size` must be set before the call. A sample that
/// cannot be used is no error: `events->problem` says so. Errors: WRONG_SIZE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_monitor_push(
    monitor: *mut RimewiseMonitor,
    refrigerant: *const RimewiseRefrigerant,
    time_ms: u64,
    sample: *const RimewiseSample,
    events: *mut RimewiseMonitorEvents,
) -> RimewiseStatus {
    // SAFETY: the contract of the header.
    unsafe {
        let Some(monitor) = monitor.cast::<Monitor>().as_mut() else {
            return Status::NullPointer;
        };
        let sample_size = match (input_size(sample), writable(events)) {
            (Ok(size), Ok(_)) => size,
            (Err(status), _) | (_, Err(status)) => return status,
        };
        // Straight from the caller's words, which a small meter feels at every sample.
        let words = sample.cast::<u32>();
        let numbers = core::array::from_fn(|n| {
            if 4 * (n + 2) <= sample_size { number(words.add(n + 1).read_unaligned()) } else { None }
        });
        let sample = Sample { time_ms, ..Sample::of_numbers(numbers) };
        let pushed = monitor.push(refrigerant.as_ref().map(|r| &r.0), &sample);
        // In place, which a small meter feels at every sample.
        (&raw mut (*events).problem).write_unaligned(pushed.problem.map_or(0, |problem| problem.code()));
        (&raw mut (*events).unusable).write_unaligned(pushed.unusable.into());
        (&raw mut (*events).count).write_unaligned(pushed.events.as_slice().len() as u32);
        let mut place = (&raw mut (*events).events).cast::<RimewiseMonitorEvent>();
        for event in pushed.events.as_slice() {
            place.write_unaligned(event.into());
            place = place.add(1);
        }
    }
    Status::Ok
}

impl From<&Event> for RimewiseMonitorEvent {
    fn from(event: &Event) -> Self {
        let mut result = Self {
            time_ms_low: event.time_ms as u32,
            time_ms_high: (event.time_ms >> 32) as u32,
            kind: event.kind.code(),
            valid: 0,
            values: [0.0; 3],
        };
        let mut bit = 1;
        for (to, from) in result.values.iter_mut().zip(event.values) {
            if let Some(from) = from {
                *to = from;
                result.valid |= bit;
            }
            bit <<= 1;
        }
        result
    }
}

/// Tells what the machine does, after the last sample.
///
/// Writes a RimewiseMonitorState.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_monitor_state(
    monitor: *const RimewiseMonitor,
    state: *mut i32,
) -> RimewiseStatus {
    // SAFETY: the contract of the header.
    unsafe {
        match monitor.cast::<Monitor>().as_ref() {
            Some(monitor) => put(state, monitor.state().code()),
            None => Status::NullPointer,
        }
    }
}

/// Tells how long ago the compressor started or stopped, ms.
///
/// Errors: NOT_YET where that was not seen.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_monitor_since(
    monitor: *const RimewiseMonitor,
    since_ms: *mut u32,
) -> RimewiseStatus {
    // SAFETY: the contract of the header.
    unsafe {
        match monitor.cast::<Monitor>().as_ref().map(Monitor::since_ms) {
            Some(Some(since)) => put(since_ms, since),
            Some(None) => Status::NotYet,
            None => Status::NullPointer,
        }
    }
}

/// Gives the averaged readings while the machine is steady or pulls down smoothly, for rimewise_diagnose.
///
/// With them go the results of the tests seen in the stream: pump-down, standing pressure, highest current of the
/// start. `of_one` is the uncertainty of one reading (NULL: usual instruments); `uncertainty` takes that of the
/// averages. `readings->size` and `uncertainty->size` must be set before the call. Errors: NOT_YET in every other state
/// and until one minute was averaged, WRONG_SIZE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_monitor_readings(
    monitor: *const RimewiseMonitor,
    of_one: *const RimewiseUncertainty,
    readings: *mut RimewiseReadings,
    uncertainty: *mut RimewiseUncertainty,
) -> RimewiseStatus {
    // SAFETY: the contract of the header.
    unsafe {
        let Some(monitor) = monitor.cast::<Monitor>().as_ref() else {
            return Status::NullPointer;
        };
        let (readings_size, uncertainty_size) = match (input_size(readings), input_size(uncertainty)) {
            (Ok(readings), Ok(uncertainty)) => (readings, uncertainty),
            (Err(status), _) | (_, Err(status)) => return status,
        };
        let mut usual = Uncertainty::default();
        if let Err(Fault::Status(status)) = take(of_one, &mut usual) {
            return status;
        }
        let Some(steady) = monitor.readings() else {
            return Status::NotYet;
        };
        give(readings, readings_size, Some(&steady.readings));
        give(uncertainty, uncertainty_size, Some(&steady.uncertainty(&usual)));
    }
    Status::Ok
}

/// Gives what tests in the stream have found so far: pump-down, standing pressure, highest current of the start.
///
/// In every state, also when rimewise_monitor_readings has none; everything else in `readings` is not measured.
/// `readings->size` must be set before the call. Errors: WRONG_SIZE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_monitor_found(
    monitor: *const RimewiseMonitor,
    readings: *mut RimewiseReadings,
) -> RimewiseStatus {
    // SAFETY: the contract of the header.
    unsafe {
        let Some(monitor) = monitor.cast::<Monitor>().as_ref() else {
            return Status::NullPointer;
        };
        let size = match input_size(readings) {
            Ok(size) => size,
            Err(status) => return status,
        };
        give(readings, size, Some(&monitor.found()));
    }
    Status::Ok
}
