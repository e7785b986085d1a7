//! What was measured and seen on the visit. Everything is optional: not measured is `None`.

use crate::field::{choice, optional_numbers};

choice! {
    /// Which valve was closed for the pump-down test.
    PumpDownValve {
        /// The compressor's suction service valve: only the compressor itself is pumped down.
        SuctionService = 1 "suction_service",
        /// A liquid-line valve: the whole low side is pumped down, and a rise may be boiling refrigerant or oil.
        LiquidLine = 2 "liquid_line",
    }
}

choice! {
    /// What ended the pump-down test.
    PumpDownEnd {
        /// The pressure fell no further: a measurement of what the compressor can pull.
        Limit = 1 "limit",
        /// The low-pressure control stopped it: only an upper bound.
        LowPressureControl = 2 "low_pressure_control",
        /// The technician stopped it: only an upper bound.
        Technician = 3 "technician",
    }
}

choice! {
    /// How the noise behaves from the moment the compressor starts.
    StartNoise {
        /// No unusual noise.
        None = 0 "none",
        /// Loud at first, then fading within minutes.
        Fades = 1 "fades",
        /// Loud and staying so.
        Stays = 2 "stays",
    }
}

choice! {
    /// What the liquid line's sight glass shows.
    SightGlass {
        /// Clear liquid.
        Clear = 1 "clear",
        /// Bubbles or flash gas.
        Bubbles = 2 "bubbles",
        /// There is none.
        NoneFitted = 3 "none_fitted",
    }
}

optional_numbers! {
    /// The numbers read on the visit. Pressures are absolute, kPa; temperatures degC.
    Readings {
        /// Pressure at the compressor's suction, kPa absolute.
        suction_pressure_kpa: Pressure,
        /// Pressure at the evaporator outlet, kPa absolute.
        evaporator_pressure_kpa: Pressure,
        /// Pressure at the compressor's discharge, kPa absolute.
        discharge_pressure_kpa: Pressure,
        /// Pressure at the condenser or receiver outlet, kPa absolute.
        liquid_pressure_kpa: Pressure,
        /// Pipe temperature at the evaporator outlet, degC.
        evaporator_outlet_c: Temperature,
        /// Pipe temperature at the compressor inlet, degC.
        suction_line_c: Temperature,
        /// Pipe temperature at the compressor outlet, degC.
        discharge_line_c: Temperature,
        /// Pipe temperature of the liquid line ahead of the drier, degC.
        liquid_line_c: Temperature,
        /// Pipe temperature behind the drier, degC.
        drier_outlet_c: Temperature,
        /// Air temperature of the cooled space, onto the evaporator, degC.
        space_c: Temperature,
        /// Air temperature off the evaporator, degC.
        supply_air_c: Temperature,
        /// Air temperature onto the condenser, degC.
        ambient_c: Temperature,
        /// Air temperature off the condenser, degC.
        condenser_exhaust_c: Temperature,
        /// Compressor current, A.
        current_a: Current,
        /// Supply voltage while running, V.
        voltage_v: Voltage,
        /// Lowest suction pressure reached against a closed valve, kPa absolute.
        pump_down_kpa: Pressure,
        /// Rise of that pressure after the compressor stopped, kPa/min.
        pump_down_rise_kpa_per_min: PressureRise,
        /// Pressure of the stopped, equalised machine, kPa absolute.
        standing_pressure_kpa: Pressure,
        /// The one temperature of the stopped, equalised machine, degC.
        standing_temperature_c: Temperature,
        /// Resistance common to run, ohm.
        winding_run_ohm: Resistance,
        /// Resistance common to start, ohm.
        winding_start_ohm: Resistance,
        /// Resistance run to start, ohm.
        winding_run_to_start_ohm: Resistance,
        /// Insulation resistance winding to frame, megohm.
        winding_to_frame_megohm: Insulation,
        /// Run capacitor, microfarad.
        run_capacitor_uf: Capacitance,
        /// Start capacitor, microfarad.
        start_capacitor_uf: Capacitance,
        /// Time since the compressor started, minutes.
        minutes_running: Minutes,
        /// Highest current in the first moment after the start, A.
        start_current_a: Current,
        /// Compressor power, W.
        power_w: Power,
        /// Wet-bulb temperature of the cooled space, degC.
        space_wet_bulb_c: Temperature,
        /// Temperature of the windings when their resistances were measured, degC.
        winding_c: Temperature,
        /// Test voltage of the insulation measurement, V.
        insulation_test_v: Voltage,
        /// Resistance between unmarked terminals 1 and 2, ohm.
        terminal_12_ohm: Resistance,
        /// Resistance between unmarked terminals 2 and 3, ohm.
        terminal_23_ohm: Resistance,
        /// Resistance between unmarked terminals 1 and 3, ohm.
        terminal_13_ohm: Resistance,
    }
    others {
        /// Whether the compressor runs while the pressures are read; not said: it runs.
        running: Option<bool>,
        /// Which valve the pump-down was made against.
        pump_down_valve: Option<PumpDownValve>,
        /// What ended the pump-down.
        pump_down_ended_by: Option<PumpDownEnd>,
        /// The three line-to-line voltages, V.
        line_voltages_v: Option<[f32; 3]>,
        /// The three line currents, A.
        line_currents_a: Option<[f32; 3]>,
    }
}

/// What was seen and heard on the visit.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Observations {
    /// How the noise behaves after the start.
    pub start_noise: Option<StartNoise>,
    /// Whether frost or sweat covers the compressor body.
    pub frost_on_compressor: Option<bool>,
    /// What the sight glass shows.
    pub sight_glass: Option<SightGlass>,
    /// Whether the evaporator coil is iced over.
    pub coil_iced: Option<bool>,
}

optional_numbers! {
    /// Standard uncertainties (k = 1) of the instruments; what is left out takes its usual value.
    Uncertainty {
        /// Pressure, percent of reading; 1 % and 2 kPa unless given.
        pressure_percent: Percent,
        /// Span of the gauge, kPa; given, `pressure_percent` is of this span.
        pressure_span_kpa: Pressure,
        /// Pipe temperature, K; 0.7 K unless given, beside the clamp's bias.
        line_temperature_k: Spread,
        /// Air temperature, K; 0.5 K unless given.
        air_temperature_k: Spread,
        /// Current, percent of reading; 1.5 % unless given.
        current_percent: Percent,
    }
}

/// One visit: what is known of the machine, what was measured and seen, and how well.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Visit<'a> {
    /// What is known of the machine.
    pub system: crate::system::System,
    /// What was measured.
    pub readings: Readings,
    /// What was seen and heard.
    pub observations: Observations,
    /// How well the instruments measure.
    pub uncertainty: Uncertainty,
    /// Readings of this same machine when it was good, if there are any.
    pub record: &'a [Readings],
}

impl Uncertainty {
    /// The standard uncertainty of a pressure reading, kPa, at a reading in kPa absolute.
    ///
    /// Without a span the percentage is of reading and 2 kPa of resolution and zero error stand beside it; with a
    /// span the percentage is of the span and holds everything (gauges are rated in percent of span).
    pub fn pressure_kpa(&self, reading_kpa: f32) -> f32 {
        let fraction = self.pressure_percent.unwrap_or(1.0) / 100.0;
        match self.pressure_span_kpa {
            Some(span) => fraction * span,
            None => {
                let proportional = fraction * reading_kpa;
                libm::sqrtf(proportional * proportional + 2.0 * 2.0)
            }
        }
    }
    /// The standard uncertainty of a pipe clamp, K, without its bias.
    pub fn line_k(&self) -> f32 {
        self.line_temperature_k.unwrap_or(0.7)
    }
    /// The standard uncertainty of an air temperature, K.
    pub fn air_k(&self) -> f32 {
        self.air_temperature_k.unwrap_or(0.5)
    }
    /// The standard uncertainty of a current as a fraction of the reading.
    pub fn current_fraction(&self) -> f32 {
        self.current_percent.unwrap_or(1.5) / 100.0
    }
}
