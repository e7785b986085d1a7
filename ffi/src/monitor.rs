//! The monitor: a stream of samples in, events out, and averaged readings once the machine is steady.

use crate::boundary::{self, Sized4, put, read, read_or, writable, write_sized};
use crate::diagnose::refuse;
use crate::field;
use crate::input::{RIMEWISE_NOT_KNOWN, RimewiseReadings, RimewiseUncertainty, choice_or_none};
use crate::invalid::RimewiseInvalid;
use crate::refrigerant::RimewiseRefrigerant;
use crate::status::{RimewiseStatus, RimewiseStatus as Status};
use core::mem::{align_of, size_of};
use rimewise::monitor::{Event, MOST_EVENTS, Monitor, Sample, Settings};
use rimewise::readings::PumpDownValve;

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

/// What the monitor is told about the machine it watches; all of it optional.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct RimewiseMonitorSettings {
    /// The size of this struct, which rimewise_monitor_settings_clear sets.
    pub size: u32,
    /// 1 where a regulator holds the compressor's inlet pressure down, else 0; not known: 0.
    pub suction_pressure_regulator: i32,
    /// A RimewisePumpDownValve: against which a pump-down will be made.
    pub pump_down_valve: i32,
    /// Rated-load current of the plate, A.
    pub rated_load_a: f32,
    /// Locked-rotor current of the plate at rated voltage, A.
    pub locked_rotor_a: f32,
    /// Rated voltage of the plate, V.
    pub rated_v: f32,
}

/// What was measured at one moment; NaN: not measured.
///
/// A value that arrives more slowly than the others is best repeated with its latest value.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct RimewiseSample {
    /// The size of this struct, which rimewise_sample_clear sets.
    pub size: u32,
    /// Pressure at the compressor's suction, kPa absolute.
    pub suction_pressure_kpa: f32,
    /// Pressure at the evaporator outlet, kPa absolute.
    pub evaporator_pressure_kpa: f32,
    /// Pressure at the compressor's discharge, kPa absolute.
    pub discharge_pressure_kpa: f32,
    /// Pressure at the condenser or receiver outlet, kPa absolute.
    pub liquid_pressure_kpa: f32,
    /// Pipe temperature at the evaporator outlet, degC.
    pub evaporator_outlet_c: f32,
    /// Pipe temperature at the compressor inlet, degC.
    pub suction_line_c: f32,
    /// Pipe temperature at the compressor outlet, degC.
    pub discharge_line_c: f32,
    /// Pipe temperature of the liquid line ahead of the drier, degC.
    pub liquid_line_c: f32,
    /// Pipe temperature behind the drier, degC.
    pub drier_outlet_c: f32,
    /// Air temperature of the cooled space, onto the evaporator, degC.
    pub space_c: f32,
    /// Air temperature off the evaporator, degC.
    pub supply_air_c: f32,
    /// Air temperature onto the condenser, degC.
    pub ambient_c: f32,
    /// Air temperature off the condenser, degC.
    pub condenser_exhaust_c: f32,
    /// Compressor current, A, without fans and heaters.
    pub current_a: f32,
    /// Supply voltage, V.
    pub voltage_v: f32,
}

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

// SAFETY: all three are repr(C), begin with their size, and hold 4-byte numbers only.
unsafe impl Sized4 for RimewiseMonitorSettings {
    const FIRST: u32 = size_of::<Self>() as u32;
}
// SAFETY: as above.
unsafe impl Sized4 for RimewiseSample {
    const FIRST: u32 = size_of::<Self>() as u32;
}
// SAFETY: as above.
unsafe impl Sized4 for RimewiseMonitorEvents {
    const FIRST: u32 = size_of::<Self>() as u32;
}

const NO_SETTINGS: RimewiseMonitorSettings = RimewiseMonitorSettings {
    size: size_of::<RimewiseMonitorSettings>() as u32,
    suction_pressure_regulator: RIMEWISE_NOT_KNOWN,
    pump_down_valve: RIMEWISE_NOT_KNOWN,
    rated_load_a: f32::NAN,
    locked_rotor_a: f32::NAN,
    rated_v: f32::NAN,
};

const NO_SAMPLE: RimewiseSample = RimewiseSample {
    size: size_of::<RimewiseSample>() as u32,
    suction_pressure_kpa: f32::NAN,
    evaporator_pressure_kpa: f32::NAN,
    discharge_pressure_kpa: f32::NAN,
    liquid_pressure_kpa: f32::NAN,
    evaporator_outlet_c: f32::NAN,
    suction_line_c: f32::NAN,
    discharge_line_c: f32::NAN,
    liquid_line_c: f32::NAN,
    drier_outlet_c: f32::NAN,
    space_c: f32::NAN,
    supply_air_c: f32::NAN,
    ambient_c: f32::NAN,
    condenser_exhaust_c: f32::NAN,
    current_a: f32::NAN,
    voltage_v: f32::NAN,
};

fn number(value: f32) -> Option<f32> {
    // By its bits: comparing numbers costs a call where there is no floating-point unit.
    if value.to_bits() << 1 > 0xFF00_0000 { None } else { Some(value) }
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
    unsafe { boundary::clear(settings, size, NO_SETTINGS) }
}

/// Makes a sample of which nothing was measured.
///
/// `size` is sizeof(*sample), which is also stored in the struct. Errors: WRONG_SIZE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_sample_clear(sample: *mut RimewiseSample, size: u32) -> RimewiseStatus {
    // SAFETY: the contract of the header.
    unsafe { boundary::clear(sample, size, NO_SAMPLE) }
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
        let settings = match read_or(settings, NO_SETTINGS) {
            Ok(settings) => settings,
            Err(status) => return status,
        };
        let unknown = |name| {
            let at_fault = RimewiseInvalid::unknown_code(field::number("settings", name));
            refuse(invalid, at_fault, Status::UnknownCode)
        };
        let regulator = match settings.suction_pressure_regulator {
            RIMEWISE_NOT_KNOWN | 0 => false,
            1 => true,
            _ => return unknown("suction_pressure_regulator"),
        };
        let Ok(pump_down_valve) = choice_or_none(settings.pump_down_valve, PumpDownValve::from_code) else {
            return unknown("pump_down_valve");
        };
        let settings = Settings {
            rated_load_a: number(settings.rated_load_a),
            locked_rotor_a: number(settings.locked_rotor_a),
            rated_v: number(settings.rated_v),
            suction_pressure_regulator: regulator,
            pump_down_valve,
        };
        match Monitor::new(&settings) {
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
        let sample = match read(sample, NO_SAMPLE) {
            Ok(sample) => sample,
            Err(status) => return status,
        };
        // All fields were there from the first release on.
        if let Err(status) = writable(events) {
            return status;
        }
        let sample = Sample {
            time_ms,
            suction_pressure_kpa: number(sample.suction_pressure_kpa),
            evaporator_pressure_kpa: number(sample.evaporator_pressure_kpa),
            discharge_pressure_kpa: number(sample.discharge_pressure_kpa),
            liquid_pressure_kpa: number(sample.liquid_pressure_kpa),
            evaporator_outlet_c: number(sample.evaporator_outlet_c),
            suction_line_c: number(sample.suction_line_c),
            discharge_line_c: number(sample.discharge_line_c),
            liquid_line_c: number(sample.liquid_line_c),
            drier_outlet_c: number(sample.drier_outlet_c),
            space_c: number(sample.space_c),
            supply_air_c: number(sample.supply_air_c),
            ambient_c: number(sample.ambient_c),
            condenser_exhaust_c: number(sample.condenser_exhaust_c),
            current_a: number(sample.current_a),
            voltage_v: number(sample.voltage_v),
        };
        let pushed = monitor.push(refrigerant.as_ref().map(|r| &r.0), &sample);
        // In place, which a small meter feels at every sample.
        (&raw mut (*events).problem).write_unaligned(pushed.problem.map_or(0, |problem| problem.code()));
        (&raw mut (*events).unusable).write_unaligned(pushed.unusable.into());
        (&raw mut (*events).count).write_unaligned(pushed.events.as_slice().len() as u32);
        let mut place = (&raw mut (*events).events).cast::<RimewiseMonitorEvent>();
        place.cast::<u8>().write_bytes(0, size_of::<[RimewiseMonitorEvent; RIMEWISE_MONITOR_EVENTS_MAX]>());
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
        let of_one = match read_or(of_one, RimewiseUncertainty::BLANK) {
            Ok(of_one) => of_one.to_core(),
            Err(status) => return status,
        };
        let (readings_size, uncertainty_size) = match (writable(readings), writable(uncertainty)) {
            (Ok(readings), Ok(uncertainty)) => (readings, uncertainty),
            (Err(status), _) | (_, Err(status)) => return status,
        };
        let Some(steady) = monitor.readings() else {
            return Status::NotYet;
        };
        write_sized(readings, readings_size, &RimewiseReadings::from(&steady.readings));
        let of_averages = steady.uncertainty(&of_one);
        write_sized(uncertainty, uncertainty_size, &RimewiseUncertainty::from(&of_averages));
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
        let size = match writable(readings) {
            Ok(size) => size,
            Err(status) => return status,
        };
        write_sized(readings, size, &RimewiseReadings::from(&monitor.found()));
    }
    Status::Ok
}
