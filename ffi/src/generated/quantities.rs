//! Quantities with their uncertainties. Written by `cargo run -p rimewise-schema`; do not edit.

use crate::estimate::RimewiseEstimate;

/// Room for quantities in RimewiseCycle.
pub const RIMEWISE_CYCLE_ROOM: usize = 24;

/// The quantities of the cycle, each with its standard uncertainty; null where a reading is missing.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct RimewiseCycle {
    /// Which quantities are there, RimewiseCycleValid bits; the others are 0.
    pub valid: u32,
    /// Dew temperature at the compressor's suction pressure, degC.
    pub suction_saturation_c: RimewiseEstimate,
    /// Dew temperature at the evaporator outlet (its own pressure when given), degC.
    pub evaporator_saturation_c: RimewiseEstimate,
    /// Condensing temperature, mean of bubble and dew at the discharge (else liquid) pressure, degC.
    pub condensing_c: RimewiseEstimate,
    /// Superheat at the evaporator outlet, K; signed.
    pub superheat_k: RimewiseEstimate,
    /// Superheat at the compressor inlet, K; signed.
    pub compressor_superheat_k: RimewiseEstimate,
    /// Subcooling, from the liquid pressure, else from discharge with its larger uncertainty, K; signed.
    pub subcooling_k: RimewiseEstimate,
    /// Discharge pressure over suction pressure, both absolute.
    pub pressure_ratio: RimewiseEstimate,
    /// Space air minus evaporating dew temperature, K.
    pub evaporator_td_k: RimewiseEstimate,
    /// Condensing temperature minus ambient, K.
    pub condenser_td_k: RimewiseEstimate,
    /// Discharge line above the dew temperature at the discharge pressure, K.
    pub discharge_superheat_k: RimewiseEstimate,
    /// Liquid line minus drier outlet, K.
    pub drier_drop_k: RimewiseEstimate,
    /// Space air minus supply air, K.
    pub supply_air_drop_k: RimewiseEstimate,
    /// Condenser exhaust minus ambient, K.
    pub exhaust_air_rise_k: RimewiseEstimate,
    /// Room for quantities of later releases.
    pub reserved: [RimewiseEstimate; 11],
}

/// Room for quantities in RimewiseExpected.
pub const RIMEWISE_EXPECTED_ROOM: usize = 24;

/// What this machine would show if it were healthy, here and now.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct RimewiseExpected {
    /// Which quantities are there, RimewiseExpectedValid bits; the others are 0.
    pub valid: u32,
    /// Saturation (dew) temperature at the compressor's suction, degC.
    pub suction_saturation_c: RimewiseEstimate,
    /// Condensing temperature (mean of bubble and dew), degC.
    pub condensing_c: RimewiseEstimate,
    /// Suction pressure, kPa absolute.
    pub suction_pressure_kpa: RimewiseEstimate,
    /// Discharge pressure, kPa absolute.
    pub discharge_pressure_kpa: RimewiseEstimate,
    /// Superheat at the evaporator outlet, K.
    pub superheat_k: RimewiseEstimate,
    /// Superheat at the compressor inlet, K.
    pub compressor_superheat_k: RimewiseEstimate,
    /// Subcooling, K.
    pub subcooling_k: RimewiseEstimate,
    /// Discharge pressure over suction pressure.
    pub pressure_ratio: RimewiseEstimate,
    /// Pipe temperature at the evaporator outlet, degC.
    pub evaporator_outlet_c: RimewiseEstimate,
    /// Pipe temperature at the compressor inlet, degC.
    pub suction_line_c: RimewiseEstimate,
    /// Pipe temperature at the compressor outlet, degC.
    pub discharge_line_c: RimewiseEstimate,
    /// Pipe temperature of the liquid line, degC.
    pub liquid_line_c: RimewiseEstimate,
    /// Pipe temperature behind the drier, degC.
    pub drier_outlet_c: RimewiseEstimate,
    /// Air temperature off the evaporator, degC.
    pub supply_air_c: RimewiseEstimate,
    /// Air temperature off the condenser, degC.
    pub condenser_exhaust_c: RimewiseEstimate,
    /// Compressor current, A.
    pub current_a: RimewiseEstimate,
    /// Lowest pump-down pressure of a compressor in good order, kPa absolute.
    pub pump_down_kpa: RimewiseEstimate,
    /// Room for quantities of later releases.
    pub reserved: [RimewiseEstimate; 7],
}
