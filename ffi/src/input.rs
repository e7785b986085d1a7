//! What goes in: the machine, the readings, the observations and the instruments' uncertainties.

use crate::boundary::{self, Sized4};
use crate::field;
use crate::status::RimewiseStatus;
use core::mem::size_of;
use rimewise::readings::{
    Observations, PumpDownEnd, PumpDownValve, Readings, SightGlass, StartNoise, Uncertainty,
};
use rimewise::system::{CompressorPlate, Design, Duty, Metering, System};

/// In every integer of the inputs: not known, not measured, not observed.
pub const RIMEWISE_NOT_KNOWN: i32 = -1;

/// What is known of the machine; its refrigerant is an argument of its own.
///
/// NaN and RIMEWISE_NOT_KNOWN are normal. `design_...` is the point the machine was designed for, as far as its maker
/// tells; what is left out falls back to what is usual for the duty and metering, with its wide spread.
/// `compressor_...` is what the compressor's plate and data sheet say.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct RimewiseSystem {
    /// The size of this struct, which rimewise_system_clear sets.
    pub size: u32,
    /// A RimewiseMetering; not known: the diagnosis allows for each kind.
    pub metering: i32,
    /// 1 where a liquid receiver stands behind the condenser, else 0; not known: usual for the metering.
    pub receiver: i32,
    /// 1 where a regulator holds the compressor's inlet pressure down, else 0; not known: 0.
    pub suction_pressure_regulator: i32,
    /// A RimewiseDuty.
    pub duty: i32,
    /// Nameplate charge, kg.
    pub charge_kg: f32,
    /// Tolerance of the run capacitor's plate value, percent; 6 unless given.
    pub run_capacitor_tolerance_percent: f32,
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
    pub compressor_run_winding_ohm: f32,
    /// Resistance of the start winding (common to start), ohm.
    pub compressor_start_winding_ohm: f32,
    /// Temperature the winding resistances refer to, degC.
    pub compressor_winding_reference_c: f32,
    /// Rated run capacitor, microfarad.
    pub compressor_run_capacitor_uf: f32,
    /// Rated start capacitor, microfarad.
    pub compressor_start_capacitor_uf: f32,
}

/// The numbers read on the visit. Pressures are absolute, kPa; temperatures degC.
///
/// NaN: not measured. INFINITY in a resistance or a capacitance: the meter reads open.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct RimewiseReadings {
    /// The size of this struct, which rimewise_readings_clear sets.
    pub size: u32,
    /// 1 where the compressor runs while the pressures are read, else 0; not known: it runs.
    pub running: i32,
    /// A RimewisePumpDownValve: which valve the pump-down was made against.
    pub pump_down_valve: i32,
    /// A RimewisePumpDownEnd: what ended the pump-down.
    pub pump_down_ended_by: i32,
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
    pub winding_run_ohm: f32,
    /// Resistance common to start, ohm.
    pub winding_start_ohm: f32,
    /// Resistance run to start, ohm.
    pub winding_run_to_start_ohm: f32,
    /// Insulation resistance winding to frame, megohm.
    pub winding_to_frame_megohm: f32,
    /// Run capacitor, microfarad.
    pub run_capacitor_uf: f32,
    /// Start capacitor, microfarad.
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
    pub terminal_12_ohm: f32,
    /// Resistance between unmarked terminals 2 and 3, ohm.
    pub terminal_23_ohm: f32,
    /// Resistance between unmarked terminals 1 and 3, ohm.
    pub terminal_13_ohm: f32,
    /// The three line-to-line voltages, V; all NaN where they were not measured.
    pub line_voltages_v: [f32; 3],
    /// The three line currents, A; all NaN where they were not measured.
    pub line_currents_a: [f32; 3],
}

/// What was seen and heard on the visit.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct RimewiseObservations {
    /// The size of this struct, which rimewise_observations_clear sets.
    pub size: u32,
    /// A RimewiseStartNoise: how the noise behaves after the start.
    pub start_noise: i32,
    /// 1 where frost or sweat covers the compressor body, else 0.
    pub frost_on_compressor: i32,
    /// A RimewiseSightGlass: what the sight glass shows.
    pub sight_glass: i32,
    /// 1 where the evaporator coil is iced over, else 0.
    pub coil_iced: i32,
}

/// Standard uncertainties (k = 1) of the instruments; NaN takes the usual value.
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

/// One integer code out of the caller's struct, with the field it stands in.
fn choice<T>(
    code: i32,
    from_code: impl Fn(i32) -> Option<T>,
    section: &str,
    name: &str,
) -> Result<Option<T>, i32> {
    if code == RIMEWISE_NOT_KNOWN {
        return Ok(None);
    }
    match from_code(code) {
        Some(value) => Ok(Some(value)),
        None => Err(field::number(section, name)),
    }
}

/// One integer code that may be not known, outside a struct.
pub(crate) fn choice_or_none<T>(code: i32, from_code: impl Fn(i32) -> Option<T>) -> Result<Option<T>, ()> {
    if code == RIMEWISE_NOT_KNOWN { Ok(None) } else { from_code(code).map(Some).ok_or(()) }
}

/// One flag out of the caller's struct.
fn flag(code: i32, section: &str, name: &str) -> Result<Option<bool>, i32> {
    let from_code = |code| match code {
        0 => Some(false),
        1 => Some(true),
        _ => None,
    };
    choice(code, from_code, section, name)
}

/// One number out of the caller's struct.
fn number(value: f32) -> Option<f32> {
    if value.is_nan() { None } else { Some(value) }
}

/// Three numbers that are measured together.
fn three(values: [f32; 3]) -> Option<[f32; 3]> {
    if values.iter().all(|v| v.is_nan()) { None } else { Some(values) }
}

impl RimewiseSystem {
    /// A machine of which nothing is known.
    pub(crate) const BLANK: Self = Self {
        size: size_of::<Self>() as u32,
        metering: RIMEWISE_NOT_KNOWN,
        receiver: RIMEWISE_NOT_KNOWN,
        suction_pressure_regulator: RIMEWISE_NOT_KNOWN,
        duty: RIMEWISE_NOT_KNOWN,
        charge_kg: f32::NAN,
        run_capacitor_tolerance_percent: f32::NAN,
        design_space_c: f32::NAN,
        design_ambient_c: f32::NAN,
        design_evaporator_td_k: f32::NAN,
        design_condenser_td_k: f32::NAN,
        design_suction_superheat_k: f32::NAN,
        design_subcooling_k: f32::NAN,
        design_suction_pressure_kpa: f32::NAN,
        design_discharge_pressure_kpa: f32::NAN,
        compressor_rated_load_a: f32::NAN,
        compressor_locked_rotor_a: f32::NAN,
        compressor_rated_v: f32::NAN,
        compressor_phases: f32::NAN,
        compressor_hz: f32::NAN,
        compressor_run_winding_ohm: f32::NAN,
        compressor_start_winding_ohm: f32::NAN,
        compressor_winding_reference_c: f32::NAN,
        compressor_run_capacitor_uf: f32::NAN,
        compressor_start_capacitor_uf: f32::NAN,
    };

    /// Converts to the core's type; the error is the number of the field with an unknown code.
    pub fn to_core(&self) -> Result<System, i32> {
        Ok(System {
            metering: choice(self.metering, Metering::from_code, "system", "metering")?,
            receiver: flag(self.receiver, "system", "receiver")?,
            suction_pressure_regulator: flag(
                self.suction_pressure_regulator,
                "system",
                "suction_pressure_regulator",
            )?,
            duty: choice(self.duty, Duty::from_code, "system", "duty")?,
            charge_kg: number(self.charge_kg),
            run_capacitor_tolerance_percent: number(self.run_capacitor_tolerance_percent),
            design: Design {
                space_c: number(self.design_space_c),
                ambient_c: number(self.design_ambient_c),
                evaporator_td_k: number(self.design_evaporator_td_k),
                condenser_td_k: number(self.design_condenser_td_k),
                suction_superheat_k: number(self.design_suction_superheat_k),
                subcooling_k: number(self.design_subcooling_k),
                suction_pressure_kpa: number(self.design_suction_pressure_kpa),
                discharge_pressure_kpa: number(self.design_discharge_pressure_kpa),
            },
            compressor: CompressorPlate {
                rated_load_a: number(self.compressor_rated_load_a),
                locked_rotor_a: number(self.compressor_locked_rotor_a),
                rated_v: number(self.compressor_rated_v),
                phases: number(self.compressor_phases),
                hz: number(self.compressor_hz),
                run_winding_ohm: number(self.compressor_run_winding_ohm),
                start_winding_ohm: number(self.compressor_start_winding_ohm),
                winding_reference_c: number(self.compressor_winding_reference_c),
                run_capacitor_uf: number(self.compressor_run_capacitor_uf),
                start_capacitor_uf: number(self.compressor_start_capacitor_uf),
                ..CompressorPlate::default()
            },
        })
    }
}

impl RimewiseReadings {
    /// Readings of which nothing was measured.
    pub(crate) const BLANK: Self = Self {
        size: size_of::<Self>() as u32,
        running: RIMEWISE_NOT_KNOWN,
        pump_down_valve: RIMEWISE_NOT_KNOWN,
        pump_down_ended_by: RIMEWISE_NOT_KNOWN,
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
        pump_down_kpa: f32::NAN,
        pump_down_rise_kpa_per_min: f32::NAN,
        standing_pressure_kpa: f32::NAN,
        standing_temperature_c: f32::NAN,
        winding_run_ohm: f32::NAN,
        winding_start_ohm: f32::NAN,
        winding_run_to_start_ohm: f32::NAN,
        winding_to_frame_megohm: f32::NAN,
        run_capacitor_uf: f32::NAN,
        start_capacitor_uf: f32::NAN,
        minutes_running: f32::NAN,
        start_current_a: f32::NAN,
        power_w: f32::NAN,
        space_wet_bulb_c: f32::NAN,
        winding_c: f32::NAN,
        insulation_test_v: f32::NAN,
        terminal_12_ohm: f32::NAN,
        terminal_23_ohm: f32::NAN,
        terminal_13_ohm: f32::NAN,
        line_voltages_v: [f32::NAN; 3],
        line_currents_a: [f32::NAN; 3],
    };

    /// Converts to the core's type; the error is the number of the field with an unknown code.
    pub fn to_core(&self) -> Result<Readings, i32> {
        Ok(Readings {
            suction_pressure_kpa: number(self.suction_pressure_kpa),
            evaporator_pressure_kpa: number(self.evaporator_pressure_kpa),
            discharge_pressure_kpa: number(self.discharge_pressure_kpa),
            liquid_pressure_kpa: number(self.liquid_pressure_kpa),
            evaporator_outlet_c: number(self.evaporator_outlet_c),
            suction_line_c: number(self.suction_line_c),
            discharge_line_c: number(self.discharge_line_c),
            liquid_line_c: number(self.liquid_line_c),
            drier_outlet_c: number(self.drier_outlet_c),
            space_c: number(self.space_c),
            supply_air_c: number(self.supply_air_c),
            ambient_c: number(self.ambient_c),
            condenser_exhaust_c: number(self.condenser_exhaust_c),
            current_a: number(self.current_a),
            voltage_v: number(self.voltage_v),
            pump_down_kpa: number(self.pump_down_kpa),
            pump_down_rise_kpa_per_min: number(self.pump_down_rise_kpa_per_min),
            standing_pressure_kpa: number(self.standing_pressure_kpa),
            standing_temperature_c: number(self.standing_temperature_c),
            winding_run_ohm: number(self.winding_run_ohm),
            winding_start_ohm: number(self.winding_start_ohm),
            winding_run_to_start_ohm: number(self.winding_run_to_start_ohm),
            winding_to_frame_megohm: number(self.winding_to_frame_megohm),
            run_capacitor_uf: number(self.run_capacitor_uf),
            start_capacitor_uf: number(self.start_capacitor_uf),
            minutes_running: number(self.minutes_running),
            start_current_a: number(self.start_current_a),
            power_w: number(self.power_w),
            space_wet_bulb_c: number(self.space_wet_bulb_c),
            winding_c: number(self.winding_c),
            insulation_test_v: number(self.insulation_test_v),
            terminal_12_ohm: number(self.terminal_12_ohm),
            terminal_23_ohm: number(self.terminal_23_ohm),
            terminal_13_ohm: number(self.terminal_13_ohm),
            running: flag(self.running, "readings", "running")?,
            pump_down_valve: choice(
                self.pump_down_valve,
                PumpDownValve::from_code,
                "readings",
                "pump_down_valve",
            )?,
            pump_down_ended_by: choice(
                self.pump_down_ended_by,
                PumpDownEnd::from_code,
                "readings",
                "pump_down_ended_by",
            )?,
            line_voltages_v: three(self.line_voltages_v),
            line_currents_a: three(self.line_currents_a),
            ..Readings::default()
        })
    }
}

impl RimewiseObservations {
    /// Observations of which nothing was looked at.
    pub(crate) const BLANK: Self = Self {
        size: size_of::<Self>() as u32,
        start_noise: RIMEWISE_NOT_KNOWN,
        frost_on_compressor: RIMEWISE_NOT_KNOWN,
        sight_glass: RIMEWISE_NOT_KNOWN,
        coil_iced: RIMEWISE_NOT_KNOWN,
    };

    /// Converts to the core's type; the error is the number of the field with an unknown code.
    pub fn to_core(&self) -> Result<Observations, i32> {
        let section = "observations";
        Ok(Observations {
            start_noise: choice(self.start_noise, StartNoise::from_code, section, "start_noise")?,
            frost_on_compressor: flag(self.frost_on_compressor, section, "frost_on_compressor")?,
            sight_glass: choice(self.sight_glass, SightGlass::from_code, section, "sight_glass")?,
            coil_iced: flag(self.coil_iced, section, "coil_iced")?,
            ..Observations::default()
        })
    }
}

impl RimewiseUncertainty {
    /// Instruments of the usual uncertainty.
    pub(crate) const BLANK: Self = Self {
        size: size_of::<Self>() as u32,
        pressure_percent: f32::NAN,
        pressure_span_kpa: f32::NAN,
        line_temperature_k: f32::NAN,
        air_temperature_k: f32::NAN,
        current_percent: f32::NAN,
    };

    /// Converts to the core's type.
    pub fn to_core(&self) -> Uncertainty {
        Uncertainty {
            pressure_percent: number(self.pressure_percent),
            pressure_span_kpa: number(self.pressure_span_kpa),
            line_temperature_k: number(self.line_temperature_k),
            air_temperature_k: number(self.air_temperature_k),
            current_percent: number(self.current_percent),
        }
    }
}

/// One optional number into the caller's struct.
fn absent(value: Option<f32>) -> f32 {
    value.unwrap_or(f32::NAN)
}

/// One optional flag into the caller's struct.
fn flag_code(value: Option<bool>) -> i32 {
    value.map_or(RIMEWISE_NOT_KNOWN, i32::from)
}

impl From<&Readings> for RimewiseReadings {
    fn from(from: &Readings) -> Self {
        Self {
            size: size_of::<Self>() as u32,
            running: flag_code(from.running),
            pump_down_valve: from.pump_down_valve.map_or(RIMEWISE_NOT_KNOWN, PumpDownValve::code),
            pump_down_ended_by: from.pump_down_ended_by.map_or(RIMEWISE_NOT_KNOWN, PumpDownEnd::code),
            suction_pressure_kpa: absent(from.suction_pressure_kpa),
            evaporator_pressure_kpa: absent(from.evaporator_pressure_kpa),
            discharge_pressure_kpa: absent(from.discharge_pressure_kpa),
            liquid_pressure_kpa: absent(from.liquid_pressure_kpa),
            evaporator_outlet_c: absent(from.evaporator_outlet_c),
            suction_line_c: absent(from.suction_line_c),
            discharge_line_c: absent(from.discharge_line_c),
            liquid_line_c: absent(from.liquid_line_c),
            drier_outlet_c: absent(from.drier_outlet_c),
            space_c: absent(from.space_c),
            supply_air_c: absent(from.supply_air_c),
            ambient_c: absent(from.ambient_c),
            condenser_exhaust_c: absent(from.condenser_exhaust_c),
            current_a: absent(from.current_a),
            voltage_v: absent(from.voltage_v),
            pump_down_kpa: absent(from.pump_down_kpa),
            pump_down_rise_kpa_per_min: absent(from.pump_down_rise_kpa_per_min),
            standing_pressure_kpa: absent(from.standing_pressure_kpa),
            standing_temperature_c: absent(from.standing_temperature_c),
            winding_run_ohm: absent(from.winding_run_ohm),
            winding_start_ohm: absent(from.winding_start_ohm),
            winding_run_to_start_ohm: absent(from.winding_run_to_start_ohm),
            winding_to_frame_megohm: absent(from.winding_to_frame_megohm),
            run_capacitor_uf: absent(from.run_capacitor_uf),
            start_capacitor_uf: absent(from.start_capacitor_uf),
            minutes_running: absent(from.minutes_running),
            start_current_a: absent(from.start_current_a),
            power_w: absent(from.power_w),
            space_wet_bulb_c: absent(from.space_wet_bulb_c),
            winding_c: absent(from.winding_c),
            insulation_test_v: absent(from.insulation_test_v),
            terminal_12_ohm: absent(from.terminal_12_ohm),
            terminal_23_ohm: absent(from.terminal_23_ohm),
            terminal_13_ohm: absent(from.terminal_13_ohm),
            line_voltages_v: from.line_voltages_v.unwrap_or([f32::NAN; 3]),
            line_currents_a: from.line_currents_a.unwrap_or([f32::NAN; 3]),
        }
    }
}

impl From<&Uncertainty> for RimewiseUncertainty {
    fn from(from: &Uncertainty) -> Self {
        Self {
            size: size_of::<Self>() as u32,
            pressure_percent: absent(from.pressure_percent),
            pressure_span_kpa: absent(from.pressure_span_kpa),
            line_temperature_k: absent(from.line_temperature_k),
            air_temperature_k: absent(from.air_temperature_k),
            current_percent: absent(from.current_percent),
        }
    }
}

// SAFETY: all four are repr(C), begin with their size, and hold 4-byte numbers only.
unsafe impl Sized4 for RimewiseSystem {
    const FIRST: u32 = 100;
}
// SAFETY: as above.
unsafe impl Sized4 for RimewiseReadings {
    const FIRST: u32 = 176;
}
// SAFETY: as above.
unsafe impl Sized4 for RimewiseObservations {
    const FIRST: u32 = 20;
}
// SAFETY: as above.
unsafe impl Sized4 for RimewiseUncertainty {
    const FIRST: u32 = 24;
}

/// Makes a system of which nothing is known.
///
/// `size` is sizeof(*system), which is also stored in the struct. Errors: WRONG_SIZE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_system_clear(system: *mut RimewiseSystem, size: u32) -> RimewiseStatus {
    // SAFETY: the contract of the header.
    unsafe { boundary::clear(system, size, RimewiseSystem::BLANK) }
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
    unsafe { boundary::clear(readings, size, RimewiseReadings::BLANK) }
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
    unsafe { boundary::clear(observations, size, RimewiseObservations::BLANK) }
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
    unsafe { boundary::clear(uncertainty, size, RimewiseUncertainty::BLANK) }
}
