//! What happened, with its time and its figures.

use crate::field::choice;

choice! {
    /// What happened.
    ///
    /// Each kind has up to three figures of its own, with their units in their names.
    EventKind {
        /// The compressor started.
        Start = 1 "start",
        /// The compressor stopped.
        Stop = 2 "stop",
        /// The current of the start has come down to that of a running motor.
        Inrush = 3 "inrush",
        /// The motor did not come up and its supply was cut.
        FailedStart = 4 "failed_start",
        /// Starts fail one after the other: the overload opens and closes again.
        OverloadCycling = 5 "overload_cycling",
        /// The compressor turns, and its current stays as high as with the start winding or start capacitor still in.
        StartGearStaysIn = 6 "start_gear_stays_in",
        /// It started after a long stop with a cold compressor: refrigerant has probably moved into its oil.
        MigrationLikely = 7 "migration_likely",
        /// Superheat was collapsed and current high after the start, and both recovered together.
        LiquidOnStart = 8 "liquid_on_start",
        /// Current is above the plate's rated load and stays there, with no liquid to explain it.
        StaysHigh = 9 "stays_high",
        /// The start showed neither liquid nor a current that stays high.
        CleanStart = 10 "clean_start",
        /// The start was unusual, but what was measured does not tell in which way.
        StartNotTold = 11 "start_not_told",
        /// It is now pulling down.
        PullingDown = 12 "pulling_down",
        /// It is now steady.
        Steady = 13 "steady",
        /// The suction pressure swings regularly: the valve hunts.
        Hunting = 14 "hunting",
        /// A valve was closed and the compressor pumps down.
        PumpDown = 15 "pump_down",
        /// The pump-down has ended, with the lowest pressure it reached.
        PumpDownLowest = 16 "pump_down_lowest",
        /// The rise of pressure after the pump-down was measured; 0 is none beyond the gauge's scatter.
        PumpDownRise = 17 "pump_down_rise",
        /// The compressor makes short runs one after the other.
        ShortCycling = 18 "short_cycling",
        /// The pressures of the stopped machine have become equal.
        Equalized = 19 "equalized",
        /// The pressure of the stopped machine has come to rest.
        StandingPressure = 20 "standing_pressure",
        /// Current rises while both pressures fall.
        CurrentRises = 21 "current_rises",
        /// The coil of the stopped machine is being heated.
        DefrostBegins = 22 "defrost_begins",
        /// The coil is no longer heated.
        DefrostEnds = 23 "defrost_ends",
        /// Samples were missing for so long that nothing is known across the gap.
        Gap = 24 "gap",
    }
}

impl EventKind {
    /// Names the figures of such an event, units included; an empty name is a figure it does not have.
    pub const fn value_names(self) -> [&'static str; 3] {
        match self {
            Self::Start => ["minutes_off", "", ""],
            Self::Stop => ["minutes_running", "", ""],
            Self::Inrush => ["start_current_a", "seconds", "of_locked_rotor"],
            Self::FailedStart => ["start_current_a", "seconds", "of_locked_rotor"],
            Self::OverloadCycling => ["failed_starts", "seconds_between", ""],
            Self::StartGearStaysIn => ["current_a", "seconds", "of_rated_load"],
            Self::MigrationLikely => ["minutes_off", "discharge_line_c", ""],
            Self::LiquidOnStart => ["lowest_superheat_k", "current_over_recovered", "seconds"],
            Self::StaysHigh => ["current_a", "of_rated_load", "minutes_running"],
            Self::CleanStart | Self::StartNotTold => ["current_a", "of_rated_load", "minutes_running"],
            Self::PullingDown => ["suction_pressure_kpa", "kpa_per_min", ""],
            Self::Steady => ["suction_pressure_kpa", "discharge_pressure_kpa", "current_a"],
            Self::Hunting => ["period_s", "swing_kpa", ""],
            Self::PumpDown => ["suction_pressure_kpa", "", ""],
            Self::PumpDownLowest => ["pump_down_kpa", "seconds", "at_limit"],
            Self::PumpDownRise => ["pump_down_rise_kpa_per_min", "seconds", "u_kpa_per_min"],
            Self::ShortCycling => ["short_runs", "seconds_running", ""],
            Self::Equalized => ["suction_pressure_kpa", "minutes_off", ""],
            Self::StandingPressure => ["standing_pressure_kpa", "standing_temperature_c", ""],
            Self::CurrentRises => ["current_percent_per_min", "suction_percent_per_min", "voltage_v"],
            Self::DefrostBegins => ["coil_c", "", ""],
            Self::DefrostEnds => ["warmest_coil_c", "minutes", ""],
            Self::Gap => ["seconds", "", ""],
        }
    }
}

/// Something that happened.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Event {
    /// What happened.
    pub kind: EventKind,
    /// When, on the clock of the samples, ms; a start or stop carries the time of the first sample that shows it.
    pub time_ms: u64,
    /// Its figures, named by [`EventKind::value_names`]; `None` where it could not be measured.
    pub values: [Option<f32>; 3],
}

/// The most events that one sample can bring.
pub const MOST_EVENTS: usize = 8;

/// The events of one sample, in the order in which they happened.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Events {
    items: [Event; MOST_EVENTS],
    length: usize,
}

impl Default for Events {
    fn default() -> Self {
        // One constant to copy: made place by place it costs a small meter three times as much.
        const NOTHING: Events = Events {
            items: [Event { kind: EventKind::Gap, time_ms: 0, values: [None; 3] }; MOST_EVENTS],
            length: 0,
        };
        NOTHING
    }
}

impl Events {
    /// Views the events.
    pub fn as_slice(&self) -> &[Event] {
        self.items.get(..self.length).unwrap_or_default()
    }
    /// Tells whether nothing happened.
    pub fn is_empty(&self) -> bool {
        self.length == 0
    }

    pub(super) fn add(&mut self, kind: EventKind, time_ms: u64, values: [Option<f32>; 3]) {
        if let Some(item) = self.items.get_mut(self.length) {
            *item = Event { kind, time_ms, values };
            self.length += 1;
        }
    }
}
