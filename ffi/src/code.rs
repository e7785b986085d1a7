//! The codes of core and their texts. Written by `cargo run -p rimewise-header`; do not edit.

use crate::boundary::put;
use crate::status::{RimewiseStatus, RimewiseStatus as Status};
use core::ffi::c_char;

/// What makes the machine behave as it does, in the order that breaks ties.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewiseCause {
    /// Nothing that costs 5 % or more of capacity or COP.
    None = 0,
    /// Less refrigerant than the machine needs.
    Undercharge = 1,
    /// More refrigerant than the machine needs.
    Overcharge = 2,
    /// A restriction in the liquid line: drier, strainer, kinked pipe.
    LiquidLineRestriction = 3,
    /// The metering device passes too little.
    MeteringUnderfeed = 4,
    /// The metering device passes too much and liquid returns to the compressor.
    FloodBack = 5,
    /// The compressor pumps less than it should.
    WeakCompressor = 6,
    /// Too little air over the condenser.
    CondenserAirflow = 7,
    /// Too little air over the evaporator.
    EvaporatorAirflow = 8,
    /// Air or nitrogen in the refrigerant circuit.
    NonCondensables = 9,
}

/// Gives the name of a RimewiseCause as text that lives as long as the program.
///
/// Errors: UNKNOWN_CODE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_cause_text(code: i32, text: *mut *const c_char) -> RimewiseStatus {
    match rimewise::cause::Cause::from_code(code) {
        // SAFETY: the contract of the header.
        Some(known) => unsafe { put(text, known.c_name().as_ptr()) },
        None => Status::UnknownCode,
    }
}

/// What can hurt.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewiseCautionCode {
    /// The circuit is under pressure.
    Pressure = 1,
    /// Escaping liquid refrigerant burns by cold.
    ColdBurn = 2,
    /// The refrigerant can burn.
    Flammable = 3,
    /// The refrigerant is toxic.
    Toxic = 4,
    /// Refrigerant vapour displaces air.
    Asphyxiation = 5,
    /// A capacitor holds its charge.
    Capacitor = 6,
    /// Terminals are live.
    LiveTerminals = 7,
    /// A damaged terminal can blow out of the shell.
    TerminalVenting = 8,
    /// Law asks for recovery and for a licence.
    RecoveryLaw = 9,
    /// A motor must not be energised or insulation-tested under vacuum.
    NoVacuumEnergise = 10,
    /// Not every compressor may be pumped down into vacuum.
    NoVacuumPumpDown = 11,
    /// Air must never be compressed with oil and refrigerant.
    AirInCircuit = 12,
    /// A zeotropic blend is charged as liquid.
    BlendChargeLiquid = 13,
    /// A pressure control is never bypassed to get a reading.
    KeepSafetyControls = 14,
    /// Pipes and shell are hot.
    HotSurface = 15,
}

/// Gives the name of a RimewiseCautionCode as text that lives as long as the program.
///
/// Errors: UNKNOWN_CODE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_caution_code_text(code: i32, text: *mut *const c_char) -> RimewiseStatus {
    match rimewise::caution::CautionCode::from_code(code) {
        // SAFETY: the contract of the header.
        Some(known) => unsafe { put(text, known.c_name().as_ptr()) },
        None => Status::UnknownCode,
    }
}

/// The step a caution belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewiseStep {
    /// Looking and clamping.
    Look = 1,
    /// Attaching and removing gauges.
    Gauges = 2,
    /// Measuring at electrical terminals.
    Electrical = 3,
    /// Closing valves for the pump-down test.
    PumpDown = 4,
    /// Adding or removing refrigerant.
    Charging = 5,
    /// Opening the refrigerant circuit.
    OpensSystem = 6,
}

/// Gives the name of a RimewiseStep as text that lives as long as the program.
///
/// Errors: UNKNOWN_CODE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_step_text(code: i32, text: *mut *const c_char) -> RimewiseStatus {
    match rimewise::caution::Step::from_code(code) {
        // SAFETY: the contract of the header.
        Some(known) => unsafe { put(text, known.c_name().as_ptr()) },
        None => Status::UnknownCode,
    }
}

/// The temperature scale a map's coefficients were made for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewiseCompressorScale {
    /// Degrees Celsius.
    Celsius = 1,
    /// Degrees Fahrenheit.
    Fahrenheit = 2,
}

/// Gives the name of a RimewiseCompressorScale as text that lives as long as the program.
///
/// Errors: UNKNOWN_CODE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_compressor_scale_text(
    code: i32,
    text: *mut *const c_char,
) -> RimewiseStatus {
    match rimewise::compressor::rating::Scale::from_code(code) {
        // SAFETY: the contract of the header.
        Some(known) => unsafe { put(text, known.c_name().as_ptr()) },
        None => Status::UnknownCode,
    }
}

/// The effort a measurement takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewiseEffort {
    /// Look, listen, or read an air thermometer.
    Look = 1,
    /// Put a clamp on a pipe.
    Clamp = 2,
    /// Put an electrical meter on terminals.
    Meter = 3,
    /// Attach a gauge or turn a valve at a fitted port.
    Valve = 4,
    /// Open the refrigerant circuit, or fit a port that is not there.
    OpensSystem = 5,
}

/// Gives the name of a RimewiseEffort as text that lives as long as the program.
///
/// Errors: UNKNOWN_CODE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_effort_text(code: i32, text: *mut *const c_char) -> RimewiseStatus {
    match rimewise::measurement::Effort::from_code(code) {
        // SAFETY: the contract of the header.
        Some(known) => unsafe { put(text, known.c_name().as_ptr()) },
        None => Status::UnknownCode,
    }
}

/// A reading, an observation, or a quantity derived from them.
///
/// Readings have numbers from 1, observations from 100, derived quantities from 200. The name of a reading is the
/// name of its input field; the name of a derived quantity is its key in the report.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewiseMeasurement {
    /// The reading `suction_pressure_kpa`.
    SuctionPressure = 1,
    /// The reading `evaporator_pressure_kpa`.
    EvaporatorPressure = 2,
    /// The reading `discharge_pressure_kpa`.
    DischargePressure = 3,
    /// The reading `liquid_pressure_kpa`.
    LiquidPressure = 4,
    /// The reading `evaporator_outlet_c`.
    EvaporatorOutlet = 5,
    /// The reading `suction_line_c`.
    SuctionLine = 6,
    /// The reading `discharge_line_c`.
    DischargeLine = 7,
    /// The reading `liquid_line_c`.
    LiquidLine = 8,
    /// The reading `drier_outlet_c`.
    DrierOutlet = 9,
    /// The reading `space_c`.
    Space = 10,
    /// The reading `supply_air_c`.
    SupplyAir = 11,
    /// The reading `ambient_c`.
    Ambient = 12,
    /// The reading `condenser_exhaust_c`.
    CondenserExhaust = 13,
    /// The reading `current_a`.
    Current = 14,
    /// The reading `voltage_v`.
    Voltage = 15,
    /// The reading `pump_down_kpa`.
    PumpDown = 16,
    /// The reading `pump_down_rise_kpa_per_min`.
    PumpDownRise = 17,
    /// The reading `standing_pressure_kpa`.
    StandingPressure = 18,
    /// The reading `standing_temperature_c`.
    StandingTemperature = 19,
    /// The reading `winding_run_ohm`.
    WindingRun = 20,
    /// The reading `winding_start_ohm`.
    WindingStart = 21,
    /// The reading `winding_run_to_start_ohm`.
    WindingRunToStart = 22,
    /// The reading `winding_to_frame_megohm`.
    WindingToFrame = 23,
    /// The reading `run_capacitor_uf`.
    RunCapacitor = 24,
    /// The reading `start_capacitor_uf`.
    StartCapacitor = 25,
    /// The reading `minutes_running`.
    MinutesRunning = 26,
    /// The reading `start_current_a`.
    StartCurrent = 27,
    /// The reading `power_w`.
    Power = 28,
    /// The reading `space_wet_bulb_c`.
    SpaceWetBulb = 29,
    /// The reading `winding_c`.
    WindingTemperature = 30,
    /// The reading `insulation_test_v`.
    InsulationTest = 31,
    /// The reading `terminal_12_ohm`.
    Terminal12 = 32,
    /// The reading `terminal_23_ohm`.
    Terminal23 = 33,
    /// The reading `terminal_13_ohm`.
    Terminal13 = 34,
    /// The reading `running`.
    Running = 35,
    /// The reading `pump_down_valve`.
    PumpDownValve = 36,
    /// The reading `pump_down_ended_by`.
    PumpDownEndedBy = 37,
    /// The reading `line_voltages_v`.
    LineVoltages = 38,
    /// The reading `line_currents_a`.
    LineCurrents = 39,
    /// The observation `start_noise`.
    StartNoise = 100,
    /// The observation `frost_on_compressor`.
    FrostOnCompressor = 101,
    /// The observation `sight_glass`.
    SightGlass = 102,
    /// The observation `coil_iced`.
    CoilIced = 103,
    /// The derived quantity `suction_saturation_c`.
    SuctionSaturation = 200,
    /// The derived quantity `superheat_k`.
    Superheat = 201,
    /// The derived quantity `compressor_superheat_k`.
    CompressorSuperheat = 202,
    /// The derived quantity `subcooling_k`.
    Subcooling = 203,
    /// The derived quantity `pressure_ratio`.
    PressureRatio = 204,
    /// The derived quantity `evaporator_saturation_c`.
    EvaporatorSaturation = 205,
    /// The derived quantity `condensing_c`.
    Condensing = 206,
    /// The derived quantity `evaporator_td_k`.
    EvaporatorDifference = 207,
    /// The derived quantity `condenser_td_k`.
    CondenserDifference = 208,
    /// The derived quantity `discharge_superheat_k`.
    DischargeSuperheat = 209,
    /// The derived quantity `drier_drop_k`.
    LiquidTemperatureDrop = 210,
    /// The derived quantity `supply_air_drop_k`.
    SupplyAirDrop = 211,
    /// The derived quantity `exhaust_air_rise_k`.
    ExhaustAirRise = 212,
}

/// Gives the name of a RimewiseMeasurement as text that lives as long as the program.
///
/// Errors: UNKNOWN_CODE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_measurement_text(code: i32, text: *mut *const c_char) -> RimewiseStatus {
    match rimewise::measurement::Measurement::from_code(code) {
        // SAFETY: the contract of the header.
        Some(known) => unsafe { put(text, known.c_name().as_ptr()) },
        None => Status::UnknownCode,
    }
}

/// What happened.
///
/// Each kind has up to three figures of its own, with their units in their names.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewiseMonitorEventKind {
    /// The compressor started.
    /// Figures: minutes_off.
    Start = 1,
    /// The compressor stopped.
    /// Figures: minutes_running.
    Stop = 2,
    /// The current of the start has come down to that of a running motor.
    /// Figures: start_current_a, seconds, of_locked_rotor.
    Inrush = 3,
    /// The motor did not come up and its supply was cut.
    /// Figures: start_current_a, seconds, of_locked_rotor.
    FailedStart = 4,
    /// Starts fail one after the other: the overload opens and closes again.
    /// Figures: failed_starts, seconds_between.
    OverloadCycling = 5,
    /// The compressor turns, and its current stays as high as with the start winding or start capacitor still in.
    /// Figures: current_a, seconds, of_rated_load.
    StartGearStaysIn = 6,
    /// It started after a long stop with a cold compressor: refrigerant has probably moved into its oil.
    /// Figures: minutes_off, discharge_line_c.
    MigrationLikely = 7,
    /// Superheat was collapsed and current high after the start, and both recovered together.
    /// Figures: lowest_superheat_k, current_over_recovered, seconds.
    LiquidOnStart = 8,
    /// Current is above the plate's rated load and stays there, with no liquid to explain it.
    /// Figures: current_a, of_rated_load, minutes_running.
    StaysHigh = 9,
    /// The start showed neither liquid nor a current that stays high.
    /// Figures: current_a, of_rated_load, minutes_running.
    CleanStart = 10,
    /// The start was unusual, but what was measured does not tell in which way.
    /// Figures: current_a, of_rated_load, minutes_running.
    StartNotTold = 11,
    /// It is now pulling down.
    /// Figures: suction_pressure_kpa, kpa_per_min.
    PullingDown = 12,
    /// It is now steady.
    /// Figures: suction_pressure_kpa, discharge_pressure_kpa, current_a.
    Steady = 13,
    /// The suction pressure swings regularly: the valve hunts.
    /// Figures: period_s, swing_kpa.
    Hunting = 14,
    /// A valve was closed and the compressor pumps down.
    /// Figures: suction_pressure_kpa.
    PumpDown = 15,
    /// The pump-down has ended, with the lowest pressure it reached.
    /// Figures: pump_down_kpa, seconds, at_limit.
    PumpDownLowest = 16,
    /// The rise of pressure after the pump-down was measured; 0 is none beyond the gauge's scatter.
    /// Figures: pump_down_rise_kpa_per_min, seconds, u_kpa_per_min.
    PumpDownRise = 17,
    /// The compressor makes short runs one after the other.
    /// Figures: short_runs, seconds_running.
    ShortCycling = 18,
    /// The pressures of the stopped machine have become equal.
    /// Figures: suction_pressure_kpa, minutes_off.
    Equalized = 19,
    /// The pressure of the stopped machine has come to rest.
    /// Figures: standing_pressure_kpa, standing_temperature_c.
    StandingPressure = 20,
    /// Current rises while both pressures fall.
    /// Figures: current_percent_per_min, suction_percent_per_min, voltage_v.
    CurrentRises = 21,
    /// The coil of the stopped machine is being heated.
    /// Figures: coil_c.
    DefrostBegins = 22,
    /// The coil is no longer heated.
    /// Figures: warmest_coil_c, minutes.
    DefrostEnds = 23,
    /// Samples were missing for so long that nothing is known across the gap.
    /// Figures: seconds.
    Gap = 24,
}

/// Gives the name of a RimewiseMonitorEventKind as text that lives as long as the program.
///
/// Errors: UNKNOWN_CODE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_monitor_event_kind_text(
    code: i32,
    text: *mut *const c_char,
) -> RimewiseStatus {
    match rimewise::monitor::EventKind::from_code(code) {
        // SAFETY: the contract of the header.
        Some(known) => unsafe { put(text, known.c_name().as_ptr()) },
        None => Status::UnknownCode,
    }
}

/// Why a sample could not be used, whole or in part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewiseMonitorSampleProblem {
    /// The time is that of the sample before: nothing was used.
    RepeatedTime = 1,
    /// The time lies before that of a sample already taken: nothing was used.
    BackwardTime = 2,
    /// No channel holds a number that a machine can show: nothing but the time was used.
    NothingMeasured = 3,
    /// Some channels hold what no machine can show; they were left out and the others used.
    SomeUnusable = 4,
}

/// Gives the name of a RimewiseMonitorSampleProblem as text that lives as long as the program.
///
/// Errors: UNKNOWN_CODE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_monitor_sample_problem_text(
    code: i32,
    text: *mut *const c_char,
) -> RimewiseStatus {
    match rimewise::monitor::SampleProblem::from_code(code) {
        // SAFETY: the contract of the header.
        Some(known) => unsafe { put(text, known.c_name().as_ptr()) },
        None => Status::UnknownCode,
    }
}

/// What the machine does at the moment.
///
/// The three running states are statements about the last two minutes (at least one, and none of the first minute
/// after a start): steady when nothing measured drifts or scatters beyond its limit, pulling down when the suction
/// pressure falls smoothly, unsteady otherwise.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewiseMonitorState {
    /// Not enough was seen yet, or a gap has just ended.
    Unknown = 0,
    /// The compressor is off in the ordinary cycle.
    Off = 1,
    /// The compressor was started less than one minute ago, whether or not it turns.
    Starting = 2,
    /// It runs and the suction pressure falls smoothly.
    PullingDown = 3,
    /// It runs and holds still.
    Steady = 4,
    /// It runs and does neither: not settled yet, hunting, or taking up a load.
    Unsteady = 5,
    /// It pumps down against a closed valve.
    PumpingDown = 6,
    /// It stands after a pump-down, and no pressure shows yet that the valve was opened.
    Holding = 7,
    /// It stands and its coil is being heated.
    Defrost = 8,
    /// It stands because its overload opened, or a start failed.
    Stopped = 9,
}

/// Gives the name of a RimewiseMonitorState as text that lives as long as the program.
///
/// Errors: UNKNOWN_CODE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_monitor_state_text(code: i32, text: *mut *const c_char) -> RimewiseStatus {
    match rimewise::monitor::State::from_code(code) {
        // SAFETY: the contract of the header.
        Some(known) => unsafe { put(text, known.c_name().as_ptr()) },
        None => Status::UnknownCode,
    }
}

/// One finding of the electrical checks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewiseFindingKind {
    /// The windings agree with each other and with the plate.
    WindingsGood = 1,
    /// A winding is open.
    OpenWinding = 2,
    /// The internal overload is open; it may close again once the compressor is cool.
    OverloadOpen = 3,
    /// A winding reads low enough for shorted turns.
    ShortedTurns = 4,
    /// A winding leaks to the frame.
    WindingToFrame = 5,
    /// The three winding resistances contradict each other.
    WindingsInconsistent = 6,
    /// The run capacitor is within its tolerance.
    RunCapacitorGood = 7,
    /// The run capacitor is below its tolerance.
    RunCapacitorLow = 8,
    /// The run capacitor is above its tolerance.
    RunCapacitorHigh = 9,
    /// The run capacitor is open.
    RunCapacitorOpen = 10,
    /// The start capacitor is within its tolerance.
    StartCapacitorGood = 11,
    /// The start capacitor is below its tolerance.
    StartCapacitorLow = 12,
    /// The start capacitor is above its tolerance.
    StartCapacitorHigh = 13,
    /// The start capacitor is open.
    StartCapacitorOpen = 14,
    /// The supply voltage is low.
    LowVoltage = 15,
    /// The supply voltage is high.
    HighVoltage = 16,
    /// The three line voltages differ too much.
    VoltageUnbalance = 17,
    /// The current is above its rated load.
    CurrentAboveRated = 18,
    /// The current is below what the pressures ask for.
    CurrentBelowExpected = 19,
    /// The current is what the pressures ask for.
    CurrentNormal = 20,
    /// The current stays near the locked-rotor current.
    LockedRotor = 21,
    /// A winding reads higher than any plausible temperature explains, as a poor connection does.
    HighResistanceConnection = 22,
    /// The three line currents differ too much.
    CurrentUnbalance = 23,
    /// The windings are sound against the frame; said where nothing else of the windings was measured.
    InsulationGood = 24,
    /// The insulation is between the limits: warm, dry, measure again before anything is condemned.
    InsulationDoubtful = 25,
    /// Start and run of unmarked terminals are too close for this meter to tell apart.
    TerminalsAmbiguous = 26,
    /// The inrush is about the locked-rotor current, as at any start across the line.
    StartCurrentUsual = 27,
    /// The inrush is far below the locked-rotor current.
    StartCurrentLow = 28,
    /// The inrush is above the locked-rotor current by more than its tolerance.
    StartCurrentHigh = 29,
}

/// Gives the name of a RimewiseFindingKind as text that lives as long as the program.
///
/// Errors: UNKNOWN_CODE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_finding_kind_text(code: i32, text: *mut *const c_char) -> RimewiseStatus {
    match rimewise::motor::finding::FindingKind::from_code(code) {
        // SAFETY: the contract of the header.
        Some(known) => unsafe { put(text, known.c_name().as_ptr()) },
        None => Status::UnknownCode,
    }
}

/// Which valve was closed for the pump-down test.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewisePumpDownValve {
    /// The compressor's suction service valve: only the compressor itself is pumped down.
    SuctionService = 1,
    /// A liquid-line valve: the whole low side is pumped down, and a rise may be boiling refrigerant or oil.
    LiquidLine = 2,
}

/// Gives the name of a RimewisePumpDownValve as text that lives as long as the program.
///
/// Errors: UNKNOWN_CODE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_pump_down_valve_text(
    code: i32,
    text: *mut *const c_char,
) -> RimewiseStatus {
    match rimewise::readings::PumpDownValve::from_code(code) {
        // SAFETY: the contract of the header.
        Some(known) => unsafe { put(text, known.c_name().as_ptr()) },
        None => Status::UnknownCode,
    }
}

/// What ended the pump-down test.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewisePumpDownEnd {
    /// The pressure fell no further: a measurement of what the compressor can pull.
    Limit = 1,
    /// The low-pressure control stopped it: only an upper bound.
    LowPressureControl = 2,
    /// The technician stopped it: only an upper bound.
    Technician = 3,
}

/// Gives the name of a RimewisePumpDownEnd as text that lives as long as the program.
///
/// Errors: UNKNOWN_CODE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_pump_down_end_text(code: i32, text: *mut *const c_char) -> RimewiseStatus {
    match rimewise::readings::PumpDownEnd::from_code(code) {
        // SAFETY: the contract of the header.
        Some(known) => unsafe { put(text, known.c_name().as_ptr()) },
        None => Status::UnknownCode,
    }
}

/// How the noise behaves from the moment the compressor starts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewiseStartNoise {
    /// No unusual noise.
    None = 0,
    /// Loud at first, then fading within minutes.
    Fades = 1,
    /// Loud and staying so.
    Stays = 2,
}

/// Gives the name of a RimewiseStartNoise as text that lives as long as the program.
///
/// Errors: UNKNOWN_CODE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_start_noise_text(code: i32, text: *mut *const c_char) -> RimewiseStatus {
    match rimewise::readings::StartNoise::from_code(code) {
        // SAFETY: the contract of the header.
        Some(known) => unsafe { put(text, known.c_name().as_ptr()) },
        None => Status::UnknownCode,
    }
}

/// What the liquid line's sight glass shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewiseSightGlass {
    /// Clear liquid.
    Clear = 1,
    /// Bubbles or flash gas.
    Bubbles = 2,
    /// There is none.
    NoneFitted = 3,
}

/// Gives the name of a RimewiseSightGlass as text that lives as long as the program.
///
/// Errors: UNKNOWN_CODE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_sight_glass_text(code: i32, text: *mut *const c_char) -> RimewiseStatus {
    match rimewise::readings::SightGlass::from_code(code) {
        // SAFETY: the contract of the header.
        Some(known) => unsafe { put(text, known.c_name().as_ptr()) },
        None => Status::UnknownCode,
    }
}

/// The device that meters liquid into the evaporator.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewiseMetering {
    /// A capillary tube, with or without a suction-liquid exchanger.
    Capillary = 1,
    /// A fixed orifice or piston.
    Orifice = 2,
    /// A thermostatic expansion valve.
    ThermostaticValve = 3,
    /// An electronic expansion valve.
    ElectronicValve = 4,
}

/// Gives the name of a RimewiseMetering as text that lives as long as the program.
///
/// Errors: UNKNOWN_CODE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_metering_text(code: i32, text: *mut *const c_char) -> RimewiseStatus {
    match rimewise::system::Metering::from_code(code) {
        // SAFETY: the contract of the header.
        Some(known) => unsafe { put(text, known.c_name().as_ptr()) },
        None => Status::UnknownCode,
    }
}

/// What the machine is for, which fixes what is usual where its maker's data is missing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewiseDuty {
    /// Holds frozen goods, space near -20 degC.
    Freezer = 1,
    /// Holds chilled goods, space near +3 degC.
    Cooler = 2,
    /// Cools rooms for people, space near 26 degC.
    AirConditioning = 3,
}

/// Gives the name of a RimewiseDuty as text that lives as long as the program.
///
/// Errors: UNKNOWN_CODE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_duty_text(code: i32, text: *mut *const c_char) -> RimewiseStatus {
    match rimewise::system::Duty::from_code(code) {
        // SAFETY: the contract of the header.
        Some(known) => unsafe { put(text, known.c_name().as_ptr()) },
        None => Status::UnknownCode,
    }
}

/// What is suspicious about an input that is answered all the same.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewiseWarningKind {
    /// The pressure fits far better after adding one atmosphere.
    ReadsLikeGauge = 1,
    /// The reading contradicts the others.
    ContradictsOthers = 2,
    /// The machine has run too short a time to have settled.
    NotSettled = 5,
    /// The refrigerant is not known, so pressures say nothing.
    RefrigerantUnknown = 6,
    /// The point lies outside what the machine model can follow.
    OutsideModel = 7,
    /// The record cannot be used.
    RecordUnused = 8,
    /// Two causes explain the readings about equally well; each is named by a warning of its own.
    TwoCausesAlike = 9,
    /// The machine is said to be stopped.
    NotRunning = 10,
    /// Two readings stand where the other one belongs; each is named by a warning of its own.
    ReadsLikeTheOther = 11,
    /// The readings would suit another refrigerant than the one named.
    ReadsLikeAnother = 12,
}

/// Gives the name of a RimewiseWarningKind as text that lives as long as the program.
///
/// Errors: UNKNOWN_CODE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_warning_kind_text(code: i32, text: *mut *const c_char) -> RimewiseStatus {
    match rimewise::warning::WarningKind::from_code(code) {
        // SAFETY: the contract of the header.
        Some(known) => unsafe { put(text, known.c_name().as_ptr()) },
        None => Status::UnknownCode,
    }
}
