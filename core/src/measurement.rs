//! The name of everything that can be measured, seen or derived, one for every interface.

use crate::field::choice;

choice! {
    /// The effort a measurement takes.
    Effort {
        /// Look, listen, or read an air thermometer.
        Look = 1 "look",
        /// Put a clamp on a pipe.
        Clamp = 2 "clamp",
        /// Put an electrical meter on terminals.
        Meter = 3 "meter",
        /// Attach a gauge or turn a valve at a fitted port.
        Valve = 4 "valve",
        /// Open the refrigerant circuit, or fit a port that is not there.
        OpensSystem = 5 "opens_system",
    }
}

choice! {
    /// A reading, an observation, or a quantity derived from them.
    ///
    /// Readings have numbers from 1, observations from 100, derived quantities from 200. The name of a reading is the
    /// name of its input field; the name of a derived quantity is its key in the report.
    Measurement {
        /// The reading `suction_pressure_kpa`.
        SuctionPressure = 1 "suction_pressure_kpa",
        /// The reading `evaporator_pressure_kpa`.
        EvaporatorPressure = 2 "evaporator_pressure_kpa",
        /// The reading `discharge_pressure_kpa`.
        DischargePressure = 3 "discharge_pressure_kpa",
        /// The reading `liquid_pressure_kpa`.
        LiquidPressure = 4 "liquid_pressure_kpa",
        /// The reading `evaporator_outlet_c`.
        EvaporatorOutlet = 5 "evaporator_outlet_c",
        /// The reading `suction_line_c`.
        SuctionLine = 6 "suction_line_c",
        /// The reading `discharge_line_c`.
        DischargeLine = 7 "discharge_line_c",
        /// The reading `liquid_line_c`.
        LiquidLine = 8 "liquid_line_c",
        /// The reading `drier_outlet_c`.
        DrierOutlet = 9 "drier_outlet_c",
        /// The reading `space_c`.
        Space = 10 "space_c",
        /// The reading `supply_air_c`.
        SupplyAir = 11 "supply_air_c",
        /// The reading `ambient_c`.
        Ambient = 12 "ambient_c",
        /// The reading `condenser_exhaust_c`.
        CondenserExhaust = 13 "condenser_exhaust_c",
        /// The reading `current_a`.
        Current = 14 "current_a",
        /// The reading `voltage_v`.
        Voltage = 15 "voltage_v",
        /// The reading `pump_down_kpa`.
        PumpDown = 16 "pump_down_kpa",
        /// The reading `pump_down_rise_kpa_per_min`.
        PumpDownRise = 17 "pump_down_rise_kpa_per_min",
        /// The reading `standing_pressure_kpa`.
        StandingPressure = 18 "standing_pressure_kpa",
        /// The reading `standing_temperature_c`.
        StandingTemperature = 19 "standing_temperature_c",
        /// The reading `winding_run_ohm`.
        WindingRun = 20 "winding_run_ohm",
        /// The reading `winding_start_ohm`.
        WindingStart = 21 "winding_start_ohm",
        /// The reading `winding_run_to_start_ohm`.
        WindingRunToStart = 22 "winding_run_to_start_ohm",
        /// The reading `winding_to_frame_megohm`.
        WindingToFrame = 23 "winding_to_frame_megohm",
        /// The reading `run_capacitor_uf`.
        RunCapacitor = 24 "run_capacitor_uf",
        /// The reading `start_capacitor_uf`.
        StartCapacitor = 25 "start_capacitor_uf",
        /// The reading `minutes_running`.
        MinutesRunning = 26 "minutes_running",
        /// The reading `start_current_a`.
        StartCurrent = 27 "start_current_a",
        /// The reading `power_w`.
        Power = 28 "power_w",
        /// The reading `space_wet_bulb_c`.
        SpaceWetBulb = 29 "space_wet_bulb_c",
        /// The reading `winding_c`.
        WindingTemperature = 30 "winding_c",
        /// The reading `insulation_test_v`.
        InsulationTest = 31 "insulation_test_v",
        /// The reading `terminal_12_ohm`.
        Terminal12 = 32 "terminal_12_ohm",
        /// The reading `terminal_23_ohm`.
        Terminal23 = 33 "terminal_23_ohm",
        /// The reading `terminal_13_ohm`.
        Terminal13 = 34 "terminal_13_ohm",
        /// The reading `running`.
        Running = 35 "running",
        /// The reading `pump_down_valve`.
        PumpDownValve = 36 "pump_down_valve",
        /// The reading `pump_down_ended_by`.
        PumpDownEndedBy = 37 "pump_down_ended_by",
        /// The reading `line_voltages_v`.
        LineVoltages = 38 "line_voltages_v",
        /// The reading `line_currents_a`.
        LineCurrents = 39 "line_currents_a",
        /// The observation `start_noise`.
        StartNoise = 100 "start_noise",
        /// The observation `frost_on_compressor`.
        FrostOnCompressor = 101 "frost_on_compressor",
        /// The observation `sight_glass`.
        SightGlass = 102 "sight_glass",
        /// The observation `coil_iced`.
        CoilIced = 103 "coil_iced",
        /// The derived quantity `suction_saturation_c`.
        SuctionSaturation = 200 "suction_saturation_c",
        /// The derived quantity `superheat_k`.
        Superheat = 201 "superheat_k",
        /// The derived quantity `compressor_superheat_k`.
        CompressorSuperheat = 202 "compressor_superheat_k",
        /// The derived quantity `subcooling_k`.
        Subcooling = 203 "subcooling_k",
        /// The derived quantity `pressure_ratio`.
        PressureRatio = 204 "pressure_ratio",
        /// The derived quantity `evaporator_saturation_c`.
        EvaporatorSaturation = 205 "evaporator_saturation_c",
        /// The derived quantity `condensing_c`.
        Condensing = 206 "condensing_c",
        /// The derived quantity `evaporator_td_k`.
        EvaporatorDifference = 207 "evaporator_td_k",
        /// The derived quantity `condenser_td_k`.
        CondenserDifference = 208 "condenser_td_k",
        /// The derived quantity `discharge_superheat_k`.
        DischargeSuperheat = 209 "discharge_superheat_k",
        /// The derived quantity `drier_drop_k`.
        LiquidTemperatureDrop = 210 "drier_drop_k",
        /// The derived quantity `supply_air_drop_k`.
        SupplyAirDrop = 211 "supply_air_drop_k",
        /// The derived quantity `exhaust_air_rise_k`.
        ExhaustAirRise = 212 "exhaust_air_rise_k",
    }
}

impl Measurement {
    /// The effort this measurement takes; that of a derived quantity is the effort of its last reading.
    pub const fn effort(self) -> Effort {
        match self {
            Self::SuctionPressure
            | Self::EvaporatorPressure
            | Self::DischargePressure
            | Self::LiquidPressure
            | Self::PumpDown
            | Self::PumpDownRise
            | Self::StandingPressure
            | Self::SuctionSaturation
            | Self::PressureRatio
            | Self::EvaporatorSaturation
            | Self::Condensing
            | Self::EvaporatorDifference
            | Self::CondenserDifference => Effort::Valve,
            Self::EvaporatorOutlet
            | Self::SuctionLine
            | Self::DischargeLine
            | Self::LiquidLine
            | Self::DrierOutlet
            | Self::StandingTemperature
            | Self::WindingTemperature
            | Self::Superheat
            | Self::CompressorSuperheat
            | Self::Subcooling
            | Self::DischargeSuperheat
            | Self::LiquidTemperatureDrop => Effort::Clamp,
            Self::Space
            | Self::SupplyAir
            | Self::Ambient
            | Self::CondenserExhaust
            | Self::MinutesRunning
            | Self::SpaceWetBulb
            | Self::Running
            | Self::PumpDownValve
            | Self::PumpDownEndedBy
            | Self::StartNoise
            | Self::FrostOnCompressor
            | Self::SightGlass
            | Self::CoilIced
            | Self::SupplyAirDrop
            | Self::ExhaustAirRise => Effort::Look,
            Self::Current
            | Self::Voltage
            | Self::WindingRun
            | Self::WindingStart
            | Self::WindingRunToStart
            | Self::WindingToFrame
            | Self::RunCapacitor
            | Self::StartCapacitor
            | Self::StartCurrent
            | Self::Power
            | Self::InsulationTest
            | Self::Terminal12
            | Self::Terminal23
            | Self::Terminal13
            | Self::LineVoltages
            | Self::LineCurrents => Effort::Meter,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::readings::Readings;

    #[test]
    fn every_number_of_the_readings_is_a_measurement_of_the_same_name_and_place() {
        for (index, field) in Readings::FIELDS.iter().enumerate() {
            let measurement = Measurement::from_name(field.name);
            assert_eq!(measurement.map(Measurement::code), Some(index as i32 + 1), "{}", field.name);
        }
    }
}
