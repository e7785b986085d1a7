//! What this machine would show if it were healthy, as numbers to stand beside the readings.

use crate::field::quantities;

quantities! {
    /// What this machine would show if it were healthy, here and now.
    Expected {
        /// Saturation (dew) temperature at the compressor's suction, degC.
        suction_saturation_c: SuctionSaturation,
        /// Condensing temperature (mean of bubble and dew), degC.
        condensing_c: Condensing,
        /// Suction pressure, kPa absolute.
        suction_pressure_kpa: SuctionPressure,
        /// Discharge pressure, kPa absolute.
        discharge_pressure_kpa: DischargePressure,
        /// Superheat at the evaporator outlet, K.
        superheat_k: Superheat,
        /// Superheat at the compressor inlet, K.
        compressor_superheat_k: CompressorSuperheat,
        /// Subcooling, K.
        subcooling_k: Subcooling,
        /// Discharge pressure over suction pressure.
        pressure_ratio: PressureRatio,
        /// Pipe temperature at the evaporator outlet, degC.
        evaporator_outlet_c: EvaporatorOutlet,
        /// Pipe temperature at the compressor inlet, degC.
        suction_line_c: SuctionLine,
        /// Pipe temperature at the compressor outlet, degC.
        discharge_line_c: DischargeLine,
        /// Pipe temperature of the liquid line, degC.
        liquid_line_c: LiquidLine,
        /// Pipe temperature behind the drier, degC.
        drier_outlet_c: DrierOutlet,
        /// Air temperature off the evaporator, degC.
        supply_air_c: SupplyAir,
        /// Air temperature off the condenser, degC.
        condenser_exhaust_c: CondenserExhaust,
        /// Compressor current, A.
        current_a: Current,
        /// Lowest pump-down pressure of a compressor in good order, kPa absolute.
        pump_down_kpa: PumpDown,
    }
}
