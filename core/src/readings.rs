//! What was measured and seen on the visit. Everything is optional: not measured is `None`.

use crate::decision::Costs;
use crate::field::{Set, choice, section};
pub use crate::measurement::{Measurement, Observations, Readings};

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

choice! {
    /// What a fan does.
    Fan {
        /// It turns as it should.
        Turns = 1 "turns",
        /// It turns too slowly.
        Slow = 2 "slow",
        /// It stands still.
        Stands = 3 "stands",
    }
}

choice! {
    /// What the condenser's face looks like.
    CondenserFace {
        /// Clean.
        Clean = 1 "clean",
        /// Dirty, with air still passing.
        Dirty = 2 "dirty",
        /// Blocked.
        Blocked = 3 "blocked",
    }
}

choice! {
    /// How far frost or sweat covers the evaporator.
    FrostLine {
        /// All of it.
        WholeCoil = 1 "whole_coil",
        /// Only the part behind the metering device.
        PartOfCoil = 2 "part_of_coil",
        /// Nowhere.
        None = 3 "none",
    }
}

choice! {
    /// What is heard when the compressor is switched on.
    StartSound {
        /// It starts.
        Starts = 1 "starts",
        /// It hums and its protector opens.
        HumsAndTrips = 2 "hums_and_trips",
        /// Nothing.
        Silent = 3 "silent",
    }
}

choice! {
    /// What the customer complains of.
    Complaint {
        /// The space is not cold enough.
        NotCold = 1 "not_cold",
        /// The compressor never stops.
        NeverStops = 2 "never_stops",
        /// It starts and stops too often.
        ShortCycles = 3 "short_cycles",
        /// It does not start.
        DoesNotStart = 4 "does_not_start",
        /// A breaker, a fuse or a protector trips.
        Trips = 5 "trips",
        /// It is noisy at the start.
        NoisyStart = 6 "noisy_start",
        /// It is noisy while running.
        NoisyRunning = 7 "noisy_running",
        /// The evaporator ices up.
        IcesUp = 8 "ices_up",
        /// Nothing: the visit is for maintenance.
        Maintenance = 9 "maintenance",
    }
}

choice! {
    /// What is known to have been done to the machine before.
    History {
        /// The compressor was replaced.
        CompressorReplaced = 1 "compressor_replaced",
        /// The capillary or valve was replaced.
        MeteringReplaced = 2 "metering_replaced",
        /// The circuit was opened.
        CircuitOpened = 3 "circuit_opened",
        /// Refrigerant was added.
        ChargeAdded = 4 "charge_added",
        /// It leaked before.
        LeakedBefore = 5 "leaked_before",
        /// The coil was cleaned.
        CoilCleaned = 6 "coil_cleaned",
    }
}

choice! {
    /// A tool that is at hand on the visit.
    Tool {
        /// Gauges with hoses.
        Gauges = 1 "gauges",
        /// A pipe clamp thermometer.
        PipeClamp = 2 "pipe_clamp",
        /// An air thermometer.
        AirThermometer = 3 "air_thermometer",
        /// A current clamp.
        CurrentClamp = 4 "current_clamp",
        /// A multimeter.
        Multimeter = 5 "multimeter",
        /// An insulation tester.
        InsulationTester = 6 "insulation_tester",
        /// A capacitance meter.
        CapacitorMeter = 7 "capacitor_meter",
        /// A scale for refrigerant.
        Scale = 8 "scale",
        /// A recovery unit with its cylinder.
        RecoveryUnit = 9 "recovery_unit",
        /// Dry nitrogen with its regulator.
        Nitrogen = 10 "nitrogen",
    }
}

choice! {
    /// What can be done on a visit beside reading and looking.
    Action {
        /// Switch off, let the pressures equalise, and read the standing pressure.
        StopAndEqualise = 1 "stop_and_equalise",
        /// Defrost the evaporator, let it settle, and read again.
        DefrostAndReread = 2 "defrost_and_reread",
        /// Clean the condenser, let it settle, and read again.
        CleanAndReread = 3 "clean_and_reread",
        /// Search for a leak.
        LeakSearch = 4 "leak_search",
        /// Recover the charge and weigh it.
        RecoverAndWeigh = 5 "recover_and_weigh",
        /// Switch on and watch the start.
        StartTest = 6 "start_test",
        /// Let the machine settle and read again.
        LetItSettle = 7 "let_it_settle",
    }
}

section! {
    /// What this machine lets be reached, and what is at hand.
    Access at "access" {}
    others {
        /// Whether there is a port on the suction side.
        suction_port: bool = 500,
        /// Whether there is a port on the high side.
        high_side_port: bool = 501,
        /// Whether there is a port on the liquid line.
        liquid_port: bool = 502,
        /// Whether the compressor has a suction service valve.
        suction_service_valve: bool = 503,
        /// Whether there is a valve in the liquid line.
        liquid_line_valve: bool = 504,
        /// The tools at hand; what is absent from the list is not at hand, no list says nothing.
        tools: Set<Tool> = 505,
    }
}

section! {
    /// Why the technician was called, and what was done before.
    Call at "" {
        /// How long it has been so, hours.
        complaint_hours: Hours = 521,
    }
    others {
        /// What the customer complains of.
        complaint: Set<Complaint> = 520,
        /// What is known to have been done before.
        history: Set<History> = 522,
    }
}

section! {
    /// Standard uncertainties (k = 1) of the instruments; what is left out takes its usual value.
    Uncertainty at "uncertainty" {
        /// Pressure, percent of reading; 1 % and 2 kPa unless given.
        pressure_percent: Percent = 360,
        /// Span of the gauge, kPa; given, `pressure_percent` is of this span.
        pressure_span_kpa: Span = 361,
        /// Pipe temperature, K; 0.7 K unless given, beside the clamp's bias.
        line_temperature_k: Spread = 362,
        /// Air temperature, K; 0.5 K unless given.
        air_temperature_k: Spread = 363,
        /// Current, percent of reading; 1.5 % unless given.
        current_percent: Percent = 364,
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
    /// Why the technician was called, and what was done before.
    pub call: Call,
    /// What this machine lets be reached, and what is at hand.
    pub access: Access,
    /// What cannot be taken or done on this visit.
    pub cannot: &'a [Doable],
    /// What things cost.
    pub costs: Costs,
    /// Readings of this same machine when it was good, if there are any.
    pub record: &'a [Readings],
    /// Readings of this same machine on this visit before something was changed, if there are any.
    pub before: Option<&'a Readings>,
}

/// What can be asked for on a visit: a reading, a look, or an action.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Doable {
    /// A reading or an observation.
    Measurement(Measurement),
    /// An action.
    Action(Action),
}

impl Doable {
    /// The name in every interface.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Measurement(measurement) => measurement.name(),
            Self::Action(action) => action.name(),
        }
    }
    /// Finds what has a name; nothing for a derived quantity, which nobody can be asked to take.
    pub fn from_name(name: &str) -> Option<Self> {
        let measurement = Measurement::from_name(name).filter(|m| m.section().is_some());
        measurement.map(Self::Measurement).or_else(|| Action::from_name(name).map(Self::Action))
    }
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

/// Minutes after which most machines have settled (California's field procedure for charging by superheat, RA3.2, asks for
/// as many).
pub(crate) const SETTLED_MINUTES: f32 = 15.0;
