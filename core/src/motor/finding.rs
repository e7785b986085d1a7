//! What the motor and supply readings show.

use crate::field::choice;
use crate::normal::below;

choice! {
    /// One finding of the electrical checks.
    FindingKind {
        /// The windings agree with each other and with the plate.
        WindingsGood = 1 "windings_good",
        /// A winding is open.
        OpenWinding = 2 "open_winding",
        /// The internal overload is open; it may close again once the compressor is cool. The value is the temperature of
        /// the windings where it is known, the limit the one below which an overload should have closed again.
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
        /// One of three phases is missing: a fuse, a contact or a conductor is open.
        SinglePhasing = 30 "single_phasing",
        /// The relay or other start gear does not bring the start winding in.
        StartGearFailed = 31 "start_gear_failed",
        /// There is no supply at the motor: controls, contactor or fuse.
        NoSupply = 32 "no_supply",
    }
}

choice! {
    /// Which winding or line a finding is about.
    Winding {
        /// The run winding, common to run.
        Run = 1 "run",
        /// The start winding, common to start.
        Start = 2 "start",
        /// What both windings share: the common terminal, its lead, and the internal overload.
        Common = 3 "common",
        /// Line or terminal 1 of a three-phase motor.
        Line1 = 4 "line_1",
        /// Line or terminal 2 of a three-phase motor.
        Line2 = 5 "line_2",
        /// Line or terminal 3 of a three-phase motor.
        Line3 = 6 "line_3",
    }
}

impl Winding {
    /// The line at a position, 0 to 2.
    pub(super) const fn line(position: usize) -> Option<Self> {
        match position {
            0 => Some(Self::Line1),
            1 => Some(Self::Line2),
            2 => Some(Self::Line3),
            _ => None,
        }
    }
}

/// What a finding means for the machine, from nothing to the most serious.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Rank {
    /// Nothing is wrong there.
    Sound,
    /// A sign of something, and no cause by itself.
    Sign,
    /// A part is wrong that the motor can run with for a while.
    Part,
    /// The supply is wrong.
    Supply,
    /// The motor does not run, or must not.
    Stops,
}

impl FindingKind {
    /// What the finding means for the machine.
    pub const fn rank(self) -> Rank {
        match self {
            Self::WindingsGood
            | Self::RunCapacitorGood
            | Self::StartCapacitorGood
            | Self::CurrentNormal
            | Self::InsulationGood
            | Self::StartCurrentUsual => Rank::Sound,
            Self::WindingsInconsistent
            | Self::CurrentAboveRated
            | Self::CurrentBelowExpected
            | Self::InsulationDoubtful
            | Self::TerminalsAmbiguous
            | Self::StartCurrentLow
            | Self::StartCurrentHigh => Rank::Sign,
            Self::RunCapacitorLow
            | Self::RunCapacitorHigh
            | Self::RunCapacitorOpen
            | Self::StartCapacitorLow
            | Self::StartCapacitorHigh
            | Self::StartCapacitorOpen
            | Self::HighResistanceConnection
            | Self::CurrentUnbalance => Rank::Part,
            Self::LowVoltage | Self::HighVoltage | Self::VoltageUnbalance => Rank::Supply,
            Self::OpenWinding
            | Self::OverloadOpen
            | Self::ShortedTurns
            | Self::WindingToFrame
            | Self::LockedRotor
            | Self::SinglePhasing
            | Self::StartGearFailed
            | Self::NoSupply => Rank::Stops,
        }
    }
}

/// A value referred to another temperature than it was measured at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Corrected {
    /// The value at `to_c`, in the finding's unit.
    pub value: f32,
    /// The temperature it was measured at, degC.
    pub from_c: f32,
    /// The temperature it is referred to, degC.
    pub to_c: f32,
}

/// A finding with the value it rests on and the limit it was held against.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Finding {
    /// What was found.
    pub finding: FindingKind,
    /// Which winding or line; `None` where it cannot be told, as a leak to the frame reads alike from every terminal.
    pub winding: Option<Winding>,
    /// The value as read, in `unit`; `None` where a meter read open.
    pub value: Option<f32>,
    /// The limit, in `unit`; `None` where there is none.
    pub limit: Option<f32>,
    /// The unit of both, such as `uF` or `ohm`.
    pub unit: &'static str,
    /// The value referred to the limit's temperature, where that was done.
    pub corrected: Option<Corrected>,
    /// How probable it is that what the finding says is so, 0 to 1.
    pub probability: f32,
}

/// Probability that a meter is read or put on wrongly, which no reading can get below (judged).
const MISREAD: f32 = 0.03;
/// Standard uncertainty of a winding's temperature by the shell, K (judged).
const SHELL_SPREAD_K: f32 = 5.0;
/// Share of doubtful insulations that a new compressor mends (judged: most dry out or warm up).
const DOUBTFUL_INSIDE: f32 = 0.1;
/// Probability that what passed every check is sound (judged): a check does not see everything.
const SOUND: f32 = 0.90;

/// How probable a finding is whose value lies beyond its limit by so many standard uncertainties.
///
/// Limits lie where a sound motor is as rare as a bad one is, so that a value at its limit is one or the other; twice
/// the distance in the argument, as what is bad spreads widely and what is sound does not (judged).
pub(crate) fn beyond(standard_uncertainties: f32) -> f32 {
    (1.0 - MISREAD) * below(2.0 * standard_uncertainties)
}

impl Finding {
    /// Whether it is an internal overload that stays open though the motor is cold: it will not close again.
    pub fn is_cold_overload(&self) -> bool {
        self.finding == FindingKind::OverloadOpen
            && self.value.zip(self.limit).is_some_and(|(winding_c, limit_c)| winding_c < limit_c)
    }

    /// Whether power on the motor would harm it, or somebody.
    pub fn forbids_power(&self) -> bool {
        matches!(
            self.finding,
            FindingKind::OpenWinding | FindingKind::ShortedTurns | FindingKind::WindingToFrame
        ) || self.is_cold_overload()
    }

    /// The share of such findings that a new compressor mends, 0 to 1; the rest is mended outside its shell (judged).
    pub fn inside_the_shell(&self) -> f32 {
        match self.finding {
            // A terminal or lead outside the shell explains a few of them.
            FindingKind::OpenWinding | FindingKind::ShortedTurns | FindingKind::WindingToFrame => 0.97,
            // Mostly it has opened for heat, and closes again; the colder it stays open, the less.
            FindingKind::OverloadOpen => {
                let cold = self
                    .value
                    .zip(self.limit)
                    .map_or(0.0, |(winding_c, limit_c)| below((limit_c - winding_c) / SHELL_SPREAD_K));
                0.1 + 0.85 * cold
            }
            // A rotor also stands for want of starting torque: start gear, supply, pressures that have not equalised.
            FindingKind::LockedRotor => 0.6,
            FindingKind::InsulationDoubtful => DOUBTFUL_INSIDE,
            FindingKind::StartCurrentHigh => 0.2,
            _ => 0.0,
        }
    }

    /// How far a finding counts as a fault, 0 to 1: nothing at its limit, where a list starts to name it, and its
    /// probability once it lies well beyond, so that what is weighed with it does not jump there.
    pub(crate) fn weight(&self) -> f32 {
        let at_limit = 0.5 * (1.0 - MISREAD);
        let by_number = self.value.is_some() && self.limit.is_some();
        if by_number { (2.0 * (self.probability - at_limit)).clamp(0.0, 1.0) } else { self.probability }
    }

    /// The probability that a new compressor mends it: the weight of the finding by its share inside the shell.
    pub(crate) fn compressor_fault(&self) -> f32 {
        let fault = self.weight() * self.inside_the_shell();
        // What leaks to the frame was doubtful before it leaked.
        let doubted = (1.0 - MISREAD) * DOUBTFUL_INSIDE;
        if self.finding == FindingKind::WindingToFrame { fault.max(doubted) } else { fault }
    }

    /// A finding without numbers that is as probable as a sound check is.
    pub(super) fn new(finding: FindingKind, unit: &'static str) -> Self {
        Self { finding, winding: None, value: None, limit: None, unit, corrected: None, probability: SOUND }
    }
    /// With the value it rests on and the limit it was held against; what is not finite was read as open.
    pub(super) fn held(self, value: f32, limit: Option<f32>) -> Self {
        Self { value: Some(value).filter(|x| x.is_finite()), limit: limit.filter(|x| x.is_finite()), ..self }
    }
    /// About this winding.
    pub(super) fn of(self, winding: Option<Winding>) -> Self {
        Self { winding, ..self }
    }
    /// With this probability.
    pub(super) fn likely(self, probability: f32) -> Self {
        Self { probability, ..self }
    }
}
