//! What this machine would show if it were healthy, here and now.

use crate::estimate::{Collector, RimewiseEstimate};
use rimewise::expected::Expected;

/// A bit of the valid mask of RimewiseExpected.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(u32)]
pub enum RimewiseExpectedValid {
    /// `suction_saturation_c` is there.
    SuctionSaturationC = 1,
    /// `condensing_c` is there.
    CondensingC = 2,
    /// `suction_pressure_kpa` is there.
    SuctionPressureKpa = 4,
    /// `discharge_pressure_kpa` is there.
    DischargePressureKpa = 8,
    /// `superheat_k` is there.
    SuperheatK = 16,
    /// `compressor_superheat_k` is there.
    CompressorSuperheatK = 32,
    /// `subcooling_k` is there.
    SubcoolingK = 64,
    /// `pressure_ratio` is there.
    PressureRatio = 128,
    /// `evaporator_outlet_c` is there.
    EvaporatorOutletC = 256,
    /// `suction_line_c` is there.
    SuctionLineC = 512,
    /// `discharge_line_c` is there.
    DischargeLineC = 1024,
    /// `liquid_line_c` is there.
    LiquidLineC = 2048,
    /// `drier_outlet_c` is there.
    DrierOutletC = 4096,
    /// `supply_air_c` is there.
    SupplyAirC = 8192,
    /// `condenser_exhaust_c` is there.
    CondenserExhaustC = 16384,
    /// `current_a` is there.
    CurrentA = 32768,
    /// `pump_down_kpa` is there.
    PumpDownKpa = 65536,
}

/// What this machine would show if it were healthy, here and now.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
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
}

impl From<&Expected> for RimewiseExpected {
    fn from(expected: &Expected) -> Self {
        let mut all = Collector::new();
        let mut value = Self {
            valid: 0,
            suction_saturation_c: all.take(expected.suction_saturation_c),
            condensing_c: all.take(expected.condensing_c),
            suction_pressure_kpa: all.take(expected.suction_pressure_kpa),
            discharge_pressure_kpa: all.take(expected.discharge_pressure_kpa),
            superheat_k: all.take(expected.superheat_k),
            compressor_superheat_k: all.take(expected.compressor_superheat_k),
            subcooling_k: all.take(expected.subcooling_k),
            pressure_ratio: all.take(expected.pressure_ratio),
            evaporator_outlet_c: all.take(expected.evaporator_outlet_c),
            suction_line_c: all.take(expected.suction_line_c),
            discharge_line_c: all.take(expected.discharge_line_c),
            liquid_line_c: all.take(expected.liquid_line_c),
            drier_outlet_c: all.take(expected.drier_outlet_c),
            supply_air_c: all.take(expected.supply_air_c),
            condenser_exhaust_c: all.take(expected.condenser_exhaust_c),
            current_a: all.take(expected.current_a),
            pump_down_kpa: all.take(expected.pump_down_kpa),
        };
        value.valid = all.valid;
        value
    }
}
