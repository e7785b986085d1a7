//! What goes in. Written by `cargo run -p rimewise-schema`; do not edit.

use crate::boundary::{Input, Slot, Take};
use crate::report::RIMEWISE_CAUSES_MAX;
use core::mem::size_of;
use rimewise::field::{Section, Value};

/// What is known of the machine; its refrigerant is an argument of its own.
///
/// NaN and RIMEWISE_NOT_KNOWN are normal.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct RimewiseSystem {
    /// The size of this struct, which rimewise_system_clear sets.
    pub size: u32,
    /// Nameplate charge, kg.
    pub charge_kg: f32,
    /// Tolerance of the run capacitor's plate value, percent; 6 unless given.
    pub run_capacitor_tolerance_percent: f32,
    /// The metering device; not known: the diagnosis allows for each kind's spread.
    /// A RimewiseMetering.
    pub metering: i32,
    /// Whether a liquid receiver stands behind the condenser; not known: usual for the metering.
    /// 1 or 0.
    pub receiver: i32,
    /// Whether a regulator holds the compressor's inlet pressure down; not known: no.
    /// 1 or 0.
    pub suction_pressure_regulator: i32,
    /// What the machine is for.
    /// A RimewiseDuty.
    pub duty: i32,
    /// Space air temperature, degC.
    pub design_space_c: f32,
    /// Air temperature onto the condenser, degC.
    pub design_ambient_c: f32,
    /// Space air minus evaporating dew temperature, K.
    pub design_evaporator_td_k: f32,
    /// Condensing temperature (mean of bubble and dew) minus ambient, K.
    pub design_condenser_td_k: f32,
    /// Superheat at the compressor inlet, K.
    pub design_suction_superheat_k: f32,
    /// Subcooling at the condenser outlet, K.
    pub design_subcooling_k: f32,
    /// The maker's target suction pressure, kPa absolute; goes before `evaporator_td_k`.
    pub design_suction_pressure_kpa: f32,
    /// The maker's target discharge pressure, kPa absolute; goes before `condenser_td_k`.
    pub design_discharge_pressure_kpa: f32,
    /// Rated-load current, A; a machine at its design point usually runs below it.
    pub compressor_rated_load_a: f32,
    /// Locked-rotor current at rated voltage, A.
    pub compressor_locked_rotor_a: f32,
    /// Rated voltage, V.
    pub compressor_rated_v: f32,
    /// Number of phases, 1 or 3.
    pub compressor_phases: f32,
    /// Supply frequency, Hz.
    pub compressor_hz: f32,
    /// Resistance of the run winding (common to run), ohm.
    /// INFINITY: the meter reads open.
    pub compressor_run_winding_ohm: f32,
    /// Resistance of the start winding (common to start), ohm.
    /// INFINITY: the meter reads open.
    pub compressor_start_winding_ohm: f32,
    /// Temperature the winding resistances refer to, degC.
    pub compressor_winding_reference_c: f32,
    /// Rated run capacitor, microfarad.
    /// INFINITY: the meter reads open.
    pub compressor_run_capacitor_uf: f32,
    /// Rated start capacitor, microfarad.
    /// INFINITY: the meter reads open.
    pub compressor_start_capacitor_uf: f32,
    /// How the compressor compresses.
    /// A RimewiseCompressorKind.
    pub compressor_kind: i32,
    /// Whether its speed is fixed.
    /// A RimewiseDrive.
    pub compressor_drive: i32,
    /// What starts a single-phase motor.
    /// A RimewiseStartGear.
    pub compressor_start_gear: i32,
}

// SAFETY: repr(C), its size and the words of its slots, see the assertion below.
unsafe impl Input for RimewiseSystem {
    const FIRST: u32 = 112;
    type Core = rimewise::system::System;
    const SLOTS: &'static [Slot] = &[
        Slot { code: 305, part: 0, position: 0, take: Take::Number },
        Slot { code: 306, part: 0, position: 1, take: Take::Number },
        Slot { code: 301, part: 0, position: 2, take: Take::Code },
        Slot { code: 302, part: 0, position: 3, take: Take::Flag },
        Slot { code: 303, part: 0, position: 4, take: Take::Flag },
        Slot { code: 304, part: 0, position: 5, take: Take::Code },
        Slot { code: 320, part: 1, position: 0, take: Take::Number },
        Slot { code: 321, part: 1, position: 1, take: Take::Number },
        Slot { code: 322, part: 1, position: 2, take: Take::Number },
        Slot { code: 323, part: 1, position: 3, take: Take::Number },
        Slot { code: 324, part: 1, position: 4, take: Take::Number },
        Slot { code: 325, part: 1, position: 5, take: Take::Number },
        Slot { code: 326, part: 1, position: 6, take: Take::Number },
        Slot { code: 327, part: 1, position: 7, take: Take::Number },
        Slot { code: 340, part: 2, position: 0, take: Take::Number },
        Slot { code: 341, part: 2, position: 1, take: Take::Number },
        Slot { code: 342, part: 2, position: 2, take: Take::Number },
        Slot { code: 343, part: 2, position: 3, take: Take::Number },
        Slot { code: 344, part: 2, position: 4, take: Take::Number },
        Slot { code: 345, part: 2, position: 5, take: Take::Number },
        Slot { code: 346, part: 2, position: 6, take: Take::Number },
        Slot { code: 347, part: 2, position: 7, take: Take::Number },
        Slot { code: 348, part: 2, position: 8, take: Take::Number },
        Slot { code: 349, part: 2, position: 9, take: Take::Number },
        Slot { code: 350, part: 2, position: 10, take: Take::Code },
        Slot { code: 351, part: 2, position: 11, take: Take::Code },
        Slot { code: 352, part: 2, position: 12, take: Take::Code },
    ];
    fn get(core: &Self::Core, slot: &Slot) -> Option<Value> {
        match slot.part { 0 => core.get(slot.position.into()), 1 => core.design.get(slot.position.into()), _ => core.compressor.get(slot.position.into()) }
    }
    fn set(core: &mut Self::Core, slot: &Slot, value: Option<Value>) -> bool {
        match slot.part { 0 => core.set(slot.position.into(), value), 1 => core.design.set(slot.position.into(), value), _ => core.compressor.set(slot.position.into(), value) }
    }
}

const _: () = assert!(size_of::<RimewiseSystem>() == 112);

/// What was read on the visit. Pressures are absolute, kPa; temperatures degC.
///
/// NaN and RIMEWISE_NOT_KNOWN are normal.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct RimewiseReadings {
    /// The size of this struct, which rimewise_readings_clear sets.
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
    /// Compressor current, A.
    pub current_a: f32,
    /// Supply voltage while running, V.
    pub voltage_v: f32,
    /// Lowest suction pressure reached against a closed valve, kPa absolute.
    pub pump_down_kpa: f32,
    /// Rise of that pressure after the compressor stopped, kPa/min.
    pub pump_down_rise_kpa_per_min: f32,
    /// Pressure of the stopped, equalised machine, kPa absolute.
    pub standing_pressure_kpa: f32,
    /// The one temperature of the stopped, equalised machine, degC.
    pub standing_temperature_c: f32,
    /// Resistance common to run, ohm.
    /// INFINITY: the meter reads open.
    pub winding_run_ohm: f32,
    /// Resistance common to start, ohm.
    /// INFINITY: the meter reads open.
    pub winding_start_ohm: f32,
    /// Resistance run to start, ohm.
    /// INFINITY: the meter reads open.
    pub winding_run_to_start_ohm: f32,
    /// Insulation resistance winding to frame, megohm.
    /// INFINITY: the meter reads open.
    pub winding_to_frame_megohm: f32,
    /// Run capacitor, microfarad.
    /// INFINITY: the meter reads open.
    pub run_capacitor_uf: f32,
    /// Start capacitor, microfarad.
    /// INFINITY: the meter reads open.
    pub start_capacitor_uf: f32,
    /// Time since the compressor started, minutes.
    pub minutes_running: f32,
    /// Highest current in the first moment after the start, A.
    pub start_current_a: f32,
    /// Compressor power, W.
    pub power_w: f32,
    /// Wet-bulb temperature of the cooled space, degC.
    pub space_wet_bulb_c: f32,
    /// Temperature of the windings when their resistances were measured, degC.
    pub winding_c: f32,
    /// Test voltage of the insulation measurement, V.
    pub insulation_test_v: f32,
    /// Resistance between unmarked terminals 1 and 2, ohm.
    /// INFINITY: the meter reads open.
    pub terminal_12_ohm: f32,
    /// Resistance between unmarked terminals 2 and 3, ohm.
    /// INFINITY: the meter reads open.
    pub terminal_23_ohm: f32,
    /// Resistance between unmarked terminals 1 and 3, ohm.
    /// INFINITY: the meter reads open.
    pub terminal_13_ohm: f32,
    /// Pipe temperature just behind the metering device, degC; stands for the evaporating temperature of a
    /// machine without a port.
    pub evaporator_inlet_c: f32,
    /// Pipe temperature at a return bend in the middle of the condenser, degC; stands for the condensing
    /// temperature of a machine without a port.
    pub condenser_middle_c: f32,
    /// Refrigerant that came out into the recovery cylinder, kg.
    pub recovered_kg: f32,
    /// Refrigerant put in on this visit before these readings, kg.
    pub added_kg: f32,
    /// Starts of the compressor an hour.
    pub starts_per_hour: f32,
    /// Time that the machine has been running with hardly a stop, hours.
    pub hours_running: f32,
    /// The three line-to-line voltages, V.
    /// All NaN where they are not known.
    pub line_voltages_v: [f32; 3],
    /// The three line currents, A.
    /// All NaN where they are not known.
    pub line_currents_a: [f32; 3],
    /// Whether the compressor runs while the pressures are read; not said: it runs.
    /// 1 or 0.
    pub running: i32,
    /// Which valve the pump-down was made against.
    /// A RimewisePumpDownValve.
    pub pump_down_valve: i32,
    /// What ended the pump-down.
    /// A RimewisePumpDownEnd.
    pub pump_down_ended_by: i32,
}

// SAFETY: repr(C), its size and the words of its slots, see the assertion below.
unsafe impl Input for RimewiseReadings {
    const FIRST: u32 = 200;
    type Core = rimewise::readings::Readings;
    const SLOTS: &'static [Slot] = &[
        Slot { code: 1, part: 0, position: 0, take: Take::Number },
        Slot { code: 2, part: 0, position: 1, take: Take::Number },
        Slot { code: 3, part: 0, position: 2, take: Take::Number },
        Slot { code: 4, part: 0, position: 3, take: Take::Number },
        Slot { code: 5, part: 0, position: 4, take: Take::Number },
        Slot { code: 6, part: 0, position: 5, take: Take::Number },
        Slot { code: 7, part: 0, position: 6, take: Take::Number },
        Slot { code: 8, part: 0, position: 7, take: Take::Number },
        Slot { code: 9, part: 0, position: 8, take: Take::Number },
        Slot { code: 10, part: 0, position: 9, take: Take::Number },
        Slot { code: 11, part: 0, position: 10, take: Take::Number },
        Slot { code: 12, part: 0, position: 11, take: Take::Number },
        Slot { code: 13, part: 0, position: 12, take: Take::Number },
        Slot { code: 14, part: 0, position: 13, take: Take::Number },
        Slot { code: 15, part: 0, position: 14, take: Take::Number },
        Slot { code: 16, part: 0, position: 15, take: Take::Number },
        Slot { code: 17, part: 0, position: 16, take: Take::Number },
        Slot { code: 18, part: 0, position: 17, take: Take::Number },
        Slot { code: 19, part: 0, position: 18, take: Take::Number },
        Slot { code: 20, part: 0, position: 19, take: Take::Number },
        Slot { code: 21, part: 0, position: 20, take: Take::Number },
        Slot { code: 22, part: 0, position: 21, take: Take::Number },
        Slot { code: 23, part: 0, position: 22, take: Take::Number },
        Slot { code: 24, part: 0, position: 23, take: Take::Number },
        Slot { code: 25, part: 0, position: 24, take: Take::Number },
        Slot { code: 26, part: 0, position: 25, take: Take::Number },
        Slot { code: 27, part: 0, position: 26, take: Take::Number },
        Slot { code: 28, part: 0, position: 27, take: Take::Number },
        Slot { code: 29, part: 0, position: 28, take: Take::Number },
        Slot { code: 30, part: 0, position: 29, take: Take::Number },
        Slot { code: 31, part: 0, position: 30, take: Take::Number },
        Slot { code: 32, part: 0, position: 31, take: Take::Number },
        Slot { code: 33, part: 0, position: 32, take: Take::Number },
        Slot { code: 34, part: 0, position: 33, take: Take::Number },
        Slot { code: 40, part: 0, position: 34, take: Take::Number },
        Slot { code: 41, part: 0, position: 35, take: Take::Number },
        Slot { code: 42, part: 0, position: 36, take: Take::Number },
        Slot { code: 43, part: 0, position: 37, take: Take::Number },
        Slot { code: 44, part: 0, position: 38, take: Take::Number },
        Slot { code: 45, part: 0, position: 39, take: Take::Number },
        Slot { code: 38, part: 0, position: 40, take: Take::Three },
        Slot { code: 39, part: 0, position: 41, take: Take::Three },
        Slot { code: 35, part: 0, position: 42, take: Take::Flag },
        Slot { code: 36, part: 0, position: 43, take: Take::Code },
        Slot { code: 37, part: 0, position: 44, take: Take::Code },
    ];
    fn get(core: &Self::Core, slot: &Slot) -> Option<Value> {
        core.get(slot.position.into())
    }
    fn set(core: &mut Self::Core, slot: &Slot, value: Option<Value>) -> bool {
        core.set(slot.position.into(), value)
    }
}

const _: () = assert!(size_of::<RimewiseReadings>() == 200);

/// What was seen and heard on the visit.
///
/// NaN and RIMEWISE_NOT_KNOWN are normal.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct RimewiseObservations {
    /// The size of this struct, which rimewise_observations_clear sets.
    pub size: u32,
    /// How the noise behaves after the start.
    /// A RimewiseStartNoise.
    pub start_noise: i32,
    /// Whether frost or sweat covers the compressor body.
    /// 1 or 0.
    pub frost_on_compressor: i32,
    /// What the sight glass shows.
    /// A RimewiseSightGlass.
    pub sight_glass: i32,
    /// Whether the evaporator coil is iced over.
    /// 1 or 0.
    pub coil_iced: i32,
    /// Whether the condenser's fan turns.
    /// A RimewiseFan.
    pub condenser_fan: i32,
    /// Whether the evaporator's fan turns.
    /// A RimewiseFan.
    pub evaporator_fan: i32,
    /// What the condenser's face looks like.
    /// A RimewiseCondenserFace.
    pub condenser_face: i32,
    /// How far frost or sweat covers the evaporator.
    /// A RimewiseFrostLine.
    pub frost_line: i32,
    /// Whether oil stands at joints, fins or floor.
    /// 1 or 0.
    pub oil_traces: i32,
    /// Whether a leak was found.
    /// 1 or 0.
    pub leak_found: i32,
    /// Whether thermostat and controls call for cooling.
    /// 1 or 0.
    pub calls_for_cooling: i32,
    /// Whether the door closes and its gasket seals.
    /// 1 or 0.
    pub door_closes: i32,
    /// What is heard when the compressor is switched on.
    /// A RimewiseStartSound.
    pub start_sound: i32,
}

// SAFETY: repr(C), its size and the words of its slots, see the assertion below.
unsafe impl Input for RimewiseObservations {
    const FIRST: u32 = 56;
    type Core = rimewise::readings::Observations;
    const SLOTS: &'static [Slot] = &[
        Slot { code: 100, part: 0, position: 0, take: Take::Code },
        Slot { code: 101, part: 0, position: 1, take: Take::Flag },
        Slot { code: 102, part: 0, position: 2, take: Take::Code },
        Slot { code: 103, part: 0, position: 3, take: Take::Flag },
        Slot { code: 104, part: 0, position: 4, take: Take::Code },
        Slot { code: 105, part: 0, position: 5, take: Take::Code },
        Slot { code: 106, part: 0, position: 6, take: Take::Code },
        Slot { code: 107, part: 0, position: 7, take: Take::Code },
        Slot { code: 108, part: 0, position: 8, take: Take::Flag },
        Slot { code: 109, part: 0, position: 9, take: Take::Flag },
        Slot { code: 110, part: 0, position: 10, take: Take::Flag },
        Slot { code: 111, part: 0, position: 11, take: Take::Flag },
        Slot { code: 112, part: 0, position: 12, take: Take::Code },
    ];
    fn get(core: &Self::Core, slot: &Slot) -> Option<Value> {
        core.get(slot.position.into())
    }
    fn set(core: &mut Self::Core, slot: &Slot, value: Option<Value>) -> bool {
        core.set(slot.position.into(), value)
    }
}

const _: () = assert!(size_of::<RimewiseObservations>() == 56);

/// Standard uncertainties (k = 1) of the instruments; what is left out takes its usual value.
///
/// NaN and RIMEWISE_NOT_KNOWN are normal.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct RimewiseUncertainty {
    /// The size of this struct, which rimewise_uncertainty_clear sets.
    pub size: u32,
    /// Pressure, percent of reading; 1 % and 2 kPa unless given.
    pub pressure_percent: f32,
    /// Span of the gauge, kPa; given, `pressure_percent` is of this span.
    pub pressure_span_kpa: f32,
    /// Pipe temperature, K; 0.7 K unless given, beside the clamp's bias.
    pub line_temperature_k: f32,
    /// Air temperature, K; 0.5 K unless given.
    pub air_temperature_k: f32,
    /// Current, percent of reading; 1.5 % unless given.
    pub current_percent: f32,
}

// SAFETY: repr(C), its size and the words of its slots, see the assertion below.
unsafe impl Input for RimewiseUncertainty {
    const FIRST: u32 = 24;
    type Core = rimewise::readings::Uncertainty;
    const SLOTS: &'static [Slot] = &[
        Slot { code: 360, part: 0, position: 0, take: Take::Number },
        Slot { code: 361, part: 0, position: 1, take: Take::Number },
        Slot { code: 362, part: 0, position: 2, take: Take::Number },
        Slot { code: 363, part: 0, position: 3, take: Take::Number },
        Slot { code: 364, part: 0, position: 4, take: Take::Number },
    ];
    fn get(core: &Self::Core, slot: &Slot) -> Option<Value> {
        core.get(slot.position.into())
    }
    fn set(core: &mut Self::Core, slot: &Slot, value: Option<Value>) -> bool {
        core.set(slot.position.into(), value)
    }
}

const _: () = assert!(size_of::<RimewiseUncertainty>() == 24);

/// Why the technician was called, and what was done before.
///
/// NaN and RIMEWISE_NOT_KNOWN are normal.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct RimewiseCall {
    /// The size of this struct, which rimewise_call_clear sets.
    pub size: u32,
    /// How long it has been so, hours.
    pub complaint_hours: f32,
    /// What the customer complains of.
    /// Bit n stands for the RimewiseComplaint with the number n.
    pub complaint: i32,
    /// What is known to have been done before.
    /// Bit n stands for the RimewiseHistory with the number n.
    pub history: i32,
}

// SAFETY: repr(C), its size and the words of its slots, see the assertion below.
unsafe impl Input for RimewiseCall {
    const FIRST: u32 = 16;
    type Core = rimewise::readings::Call;
    const SLOTS: &'static [Slot] = &[
        Slot { code: 521, part: 0, position: 0, take: Take::Number },
        Slot { code: 520, part: 0, position: 1, take: Take::Bits },
        Slot { code: 522, part: 0, position: 2, take: Take::Bits },
    ];
    fn get(core: &Self::Core, slot: &Slot) -> Option<Value> {
        core.get(slot.position.into())
    }
    fn set(core: &mut Self::Core, slot: &Slot, value: Option<Value>) -> bool {
        core.set(slot.position.into(), value)
    }
}

const _: () = assert!(size_of::<RimewiseCall>() == 16);

/// What this machine lets be reached, and what is at hand.
///
/// NaN and RIMEWISE_NOT_KNOWN are normal.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct RimewiseAccess {
    /// The size of this struct, which rimewise_access_clear sets.
    pub size: u32,
    /// Whether there is a port on the suction side.
    /// 1 or 0.
    pub suction_port: i32,
    /// Whether there is a port on the high side.
    /// 1 or 0.
    pub high_side_port: i32,
    /// Whether there is a port on the liquid line.
    /// 1 or 0.
    pub liquid_port: i32,
    /// Whether the compressor has a suction service valve.
    /// 1 or 0.
    pub suction_service_valve: i32,
    /// Whether there is a valve in the liquid line.
    /// 1 or 0.
    pub liquid_line_valve: i32,
    /// The tools at hand; what is absent from the list is not at hand, no list says nothing.
    /// Bit n stands for the RimewiseTool with the number n.
    pub tools: i32,
}

// SAFETY: repr(C), its size and the words of its slots, see the assertion below.
unsafe impl Input for RimewiseAccess {
    const FIRST: u32 = 28;
    type Core = rimewise::readings::Access;
    const SLOTS: &'static [Slot] = &[
        Slot { code: 500, part: 0, position: 0, take: Take::Flag },
        Slot { code: 501, part: 0, position: 1, take: Take::Flag },
        Slot { code: 502, part: 0, position: 2, take: Take::Flag },
        Slot { code: 503, part: 0, position: 3, take: Take::Flag },
        Slot { code: 504, part: 0, position: 4, take: Take::Flag },
        Slot { code: 505, part: 0, position: 5, take: Take::Bits },
    ];
    fn get(core: &Self::Core, slot: &Slot) -> Option<Value> {
        core.get(slot.position.into())
    }
    fn set(core: &mut Self::Core, slot: &Slot, value: Option<Value>) -> bool {
        core.set(slot.position.into(), value)
    }
}

const _: () = assert!(size_of::<RimewiseAccess>() == 28);

/// What things cost, in one currency of the caller's choice; null is not known.
///
/// NaN and RIMEWISE_NOT_KNOWN are normal.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct RimewiseCosts {
    /// The size of this struct, which rimewise_costs_clear sets.
    pub size: u32,
    /// Coming out once more.
    pub visit: f32,
    /// An hour of work.
    pub hour: f32,
    /// A new compressor, fitted.
    pub compressor: f32,
    /// A new machine, installed.
    pub machine: f32,
    /// What is lost each day that the machine does not do its work.
    pub loss_a_day: f32,
    /// Days that the loss is reckoned over.
    pub horizon_days: f32,
    /// The next test, its time and parts.
    pub test: f32,
    /// What is lost at once when the machine is left with its fault: the goods at risk times the chance that they
    /// spoil.
    pub product_at_risk: f32,
    /// The repair of each cause, by the number of its RimewiseCause; that of none is not looked at.
    pub repair: [f32; RIMEWISE_CAUSES_MAX],
}

// SAFETY: repr(C), its size and the words of its slots, see the assertion below.
unsafe impl Input for RimewiseCosts {
    const FIRST: u32 = 100;
    type Core = rimewise::decision::Costs;
    const SLOTS: &'static [Slot] = &[
        Slot { code: 540, part: 0, position: 0, take: Take::Number },
        Slot { code: 541, part: 0, position: 1, take: Take::Number },
        Slot { code: 542, part: 0, position: 2, take: Take::Number },
        Slot { code: 543, part: 0, position: 3, take: Take::Number },
        Slot { code: 544, part: 0, position: 4, take: Take::Number },
        Slot { code: 545, part: 0, position: 5, take: Take::Number },
        Slot { code: 546, part: 0, position: 6, take: Take::Number },
        Slot { code: 547, part: 0, position: 7, take: Take::Number },
        Slot { code: 548, part: 1, position: 0, take: Take::Number },
        Slot { code: 548, part: 1, position: 1, take: Take::Number },
        Slot { code: 548, part: 1, position: 2, take: Take::Number },
        Slot { code: 548, part: 1, position: 3, take: Take::Number },
        Slot { code: 548, part: 1, position: 4, take: Take::Number },
        Slot { code: 548, part: 1, position: 5, take: Take::Number },
        Slot { code: 548, part: 1, position: 6, take: Take::Number },
        Slot { code: 548, part: 1, position: 7, take: Take::Number },
        Slot { code: 548, part: 1, position: 8, take: Take::Number },
        Slot { code: 548, part: 1, position: 9, take: Take::Number },
        Slot { code: 548, part: 1, position: 10, take: Take::Number },
        Slot { code: 548, part: 1, position: 11, take: Take::Number },
        Slot { code: 548, part: 1, position: 12, take: Take::Number },
        Slot { code: 548, part: 1, position: 13, take: Take::Number },
        Slot { code: 548, part: 1, position: 14, take: Take::Number },
        Slot { code: 548, part: 1, position: 15, take: Take::Number },
    ];
    fn get(core: &Self::Core, slot: &Slot) -> Option<Value> {
        if slot.part == 0 { core.get(slot.position.into()) } else { core.repair.get(usize::from(slot.position)).copied().flatten().map(Value::Number) }
    }
    fn set(core: &mut Self::Core, slot: &Slot, value: Option<Value>) -> bool {
        if slot.part == 0 { core.set(slot.position.into(), value) } else { crate::decision::set_repair(core, slot.position, value) }
    }
}

const _: () = assert!(size_of::<RimewiseCosts>() == 100);

/// What is known of the machine; all of it optional, all of it from the compressor's plate or the technician.
///
/// NaN and RIMEWISE_NOT_KNOWN are normal.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct RimewiseMonitorSettings {
    /// The size of this struct, which rimewise_monitor_settings_clear sets.
    pub size: u32,
    /// Rated-load current of the plate, A.
    pub rated_load_a: f32,
    /// Locked-rotor current of the plate at rated voltage, A.
    pub locked_rotor_a: f32,
    /// Rated voltage of the plate, V.
    pub rated_v: f32,
    /// Whether a regulator holds the compressor's inlet pressure down; not known: no.
    /// 1 or 0.
    pub suction_pressure_regulator: i32,
    /// Which valve a pump-down will be made against.
    /// A RimewisePumpDownValve.
    pub pump_down_valve: i32,
}

// SAFETY: repr(C), its size and the words of its slots, see the assertion below.
unsafe impl Input for RimewiseMonitorSettings {
    const FIRST: u32 = 24;
    type Core = rimewise::monitor::Settings;
    const SLOTS: &'static [Slot] = &[
        Slot { code: 380, part: 0, position: 0, take: Take::Number },
        Slot { code: 381, part: 0, position: 1, take: Take::Number },
        Slot { code: 382, part: 0, position: 2, take: Take::Number },
        Slot { code: 383, part: 0, position: 3, take: Take::Flag },
        Slot { code: 384, part: 0, position: 4, take: Take::Code },
    ];
    fn get(core: &Self::Core, slot: &Slot) -> Option<Value> {
        core.get(slot.position.into())
    }
    fn set(core: &mut Self::Core, slot: &Slot, value: Option<Value>) -> bool {
        core.set(slot.position.into(), value)
    }
}

const _: () = assert!(size_of::<RimewiseMonitorSettings>() == 24);

/// What was measured at one moment, under the names of the readings; not measured is null.
///
/// A value that arrives more slowly than the others is best repeated with its latest value: superheat is only
/// known at a sample that holds both its pressure and its temperature.
///
/// NaN and RIMEWISE_NOT_KNOWN are normal.
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

// SAFETY: repr(C), its size and the words of its slots, see the assertion below.
unsafe impl Input for RimewiseSample {
    const FIRST: u32 = 64;
    type Core = rimewise::monitor::Sample;
    const SLOTS: &'static [Slot] = &[
        Slot { code: 1, part: 0, position: 0, take: Take::Number },
        Slot { code: 2, part: 0, position: 1, take: Take::Number },
        Slot { code: 3, part: 0, position: 2, take: Take::Number },
        Slot { code: 4, part: 0, position: 3, take: Take::Number },
        Slot { code: 5, part: 0, position: 4, take: Take::Number },
        Slot { code: 6, part: 0, position: 5, take: Take::Number },
        Slot { code: 7, part: 0, position: 6, take: Take::Number },
        Slot { code: 8, part: 0, position: 7, take: Take::Number },
        Slot { code: 9, part: 0, position: 8, take: Take::Number },
        Slot { code: 10, part: 0, position: 9, take: Take::Number },
        Slot { code: 11, part: 0, position: 10, take: Take::Number },
        Slot { code: 12, part: 0, position: 11, take: Take::Number },
        Slot { code: 13, part: 0, position: 12, take: Take::Number },
        Slot { code: 14, part: 0, position: 13, take: Take::Number },
        Slot { code: 15, part: 0, position: 14, take: Take::Number },
    ];
    fn get(core: &Self::Core, slot: &Slot) -> Option<Value> {
        core.get(slot.position.into())
    }
    fn set(core: &mut Self::Core, slot: &Slot, value: Option<Value>) -> bool {
        core.set(slot.position.into(), value)
    }
}

const _: () = assert!(size_of::<RimewiseSample>() == 64);
