//! What this machine would show if it were healthy, as numbers to stand beside the readings.

use crate::estimate::Estimate;
use crate::measurement::Measurement;

/// What this machine would show if it were healthy, here and now.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Expected {
    /// Saturation (dew) temperature at the compressor's suction, degC.
    pub suction_saturation_c: Option<Estimate>,
    /// Condensing temperature (mean of bubble and dew), degC.
    pub condensing_c: Option<Estimate>,
    /// Suction pressure, kPa absolute.
    pub suction_pressure_kpa: Option<Estimate>,
    /// Discharge pressure, kPa absolute.
    pub discharge_pressure_kpa: Option<Estimate>,
    /// Superheat at the evaporator outlet, K.
    pub superheat_k: Option<Estimate>,
    /// Superheat at the compressor inlet, K.
    pub compressor_superheat_k: Option<Estimate>,
    /// Subcooling, K.
    pub subcooling_k: Option<Estimate>,
    /// Discharge pressure over suction pressure.
    pub pressure_ratio: Option<Estimate>,
    /// Pipe temperature at the evaporator outlet, degC.
    pub evaporator_outlet_c: Option<Estimate>,
    /// Pipe temperature at the compressor inlet, degC.
    pub suction_line_c: Option<Estimate>,
    /// Pipe temperature at the compressor outlet, degC.
    pub discharge_line_c: Option<Estimate>,
    /// Pipe temperature of the liquid line, degC.
    pub liquid_line_c: Option<Estimate>,
    /// Pipe temperature behind the drier, degC.
    pub drier_outlet_c: Option<Estimate>,
    /// Air temperature off the evaporator, degC.
    pub supply_air_c: Option<Estimate>,
    /// Air temperature off the condenser, degC.
    pub condenser_exhaust_c: Option<Estimate>,
    /// Compressor current, A.
    pub current_a: Option<Estimate>,
    /// Lowest pump-down pressure of a compressor in good order, kPa absolute.
    pub pump_down_kpa: Option<Estimate>,
}

impl Expected {
    /// Nothing expected.
    pub const NONE: Self = Self {
        suction_saturation_c: None,
        condensing_c: None,
        suction_pressure_kpa: None,
        discharge_pressure_kpa: None,
        superheat_k: None,
        compressor_superheat_k: None,
        subcooling_k: None,
        pressure_ratio: None,
        evaporator_outlet_c: None,
        suction_line_c: None,
        discharge_line_c: None,
        liquid_line_c: None,
        drier_outlet_c: None,
        supply_air_c: None,
        condenser_exhaust_c: None,
        current_a: None,
        pump_down_kpa: None,
    };

    /// Every quantity with its name, in the order of the report.
    pub fn quantities(&self) -> [(Measurement, Option<Estimate>); 17] {
        [
            (Measurement::SuctionSaturation, self.suction_saturation_c),
            (Measurement::Condensing, self.condensing_c),
            (Measurement::SuctionPressure, self.suction_pressure_kpa),
            (Measurement::DischargePressure, self.discharge_pressure_kpa),
            (Measurement::Superheat, self.superheat_k),
            (Measurement::CompressorSuperheat, self.compressor_superheat_k),
            (Measurement::Subcooling, self.subcooling_k),
            (Measurement::PressureRatio, self.pressure_ratio),
            (Measurement::EvaporatorOutlet, self.evaporator_outlet_c),
            (Measurement::SuctionLine, self.suction_line_c),
            (Measurement::DischargeLine, self.discharge_line_c),
            (Measurement::LiquidLine, self.liquid_line_c),
            (Measurement::DrierOutlet, self.drier_outlet_c),
            (Measurement::SupplyAir, self.supply_air_c),
            (Measurement::CondenserExhaust, self.condenser_exhaust_c),
            (Measurement::Current, self.current_a),
            (Measurement::PumpDown, self.pump_down_kpa),
        ]
    }
}
