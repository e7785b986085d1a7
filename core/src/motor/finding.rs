//! What the motor and supply readings show.

use crate::field::choice;

choice! {
    /// One finding of the electrical checks.
    FindingKind {
        /// The windings agree with each other and with the plate.
        WindingsGood = 1 "windings_good",
        /// A winding is open.
        OpenWinding = 2 "open_winding",
        /// The internal overload is open; it may close again once the compressor is cool.
        OverloadOpen = 3 "overload_open",
        /// A winding reads low enough for shorted turns.
        ShortedTurns = 4 "shorted_turns",
        /// A winding leaks to the frame.
        WindingToFrame = 5 "winding_to_frame",
        /// The three winding resistances contradict each other.
        WindingsInconsistent = 6 "windings_inconsistent",
        /// The run capacitor is within its tolerance.
        RunCapacitorGood = 7 "run_capacitor_good",
        /// The run capacitor is below its tolerance.
        RunCapacitorLow = 8 "run_capacitor_low",
        /// The run capacitor is above its tolerance.
        RunCapacitorHigh = 9 "run_capacitor_high",
        /// The run capacitor is open.
        RunCapacitorOpen = 10 "run_capacitor_open",
        /// The start capacitor is within its tolerance.
        StartCapacitorGood = 11 "start_capacitor_good",
        /// The start capacitor is below its tolerance.
        StartCapacitorLow = 12 "start_capacitor_low",
        /// The start capacitor is above its tolerance.
        StartCapacitorHigh = 13 "start_capacitor_high",
        /// The start capacitor is open.
        StartCapacitorOpen = 14 "start_capacitor_open",
        /// The supply voltage is low.
        LowVoltage = 15 "low_voltage",
        /// The supply voltage is high.
        HighVoltage = 16 "high_voltage",
        /// The three line voltages differ too much.
        VoltageUnbalance = 17 "voltage_unbalance",
        /// The current is above its rated load.
        CurrentAboveRated = 18 "current_above_rated",
        /// The current is below what the pressures ask for.
        CurrentBelowExpected = 19 "current_below_expected",
        /// The current is what the pressures ask for.
        CurrentNormal = 20 "current_normal",
        /// The current stays near the locked-rotor current.
        LockedRotor = 21 "locked_rotor",
        /// A winding reads higher than any plausible temperature explains, as a poor connection does.
        HighResistanceConnection = 22 "high_resistance_connection",
        /// The three line currents differ too much.
        CurrentUnbalance = 23 "current_unbalance",
        /// The windings are sound against the frame; said where nothing else of the windings was measured.
        InsulationGood = 24 "insulation_good",
        /// The insulation is between the limits: warm, dry, measure again before anything is condemned.
        InsulationDoubtful = 25 "insulation_doubtful",
        /// Start and run of unmarked terminals are too close for this meter to tell apart.
        TerminalsAmbiguous = 26 "terminals_ambiguous",
        /// The inrush is about the locked-rotor current, as at any start across the line.
        StartCurrentUsual = 27 "start_current_usual",
        /// The inrush is far below the locked-rotor current.
        StartCurrentLow = 28 "start_current_low",
        /// The inrush is above the locked-rotor current by more than its tolerance.
        StartCurrentHigh = 29 "start_current_high",
    }
}

/// A finding with the value it rests on and the limit it was held against.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Finding {
    /// What was found.
    pub finding: FindingKind,
    /// The value, in `unit`; `None` where a meter read open.
    pub value: Option<f32>,
    /// The limit, in `unit`; `None` where there is none.
    pub limit: Option<f32>,
    /// The unit of both, such as `uF` or `ohm`.
    pub unit: &'static str,
}
