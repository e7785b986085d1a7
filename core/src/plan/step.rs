//! One step of a visit, what follows on its outcomes, and the ways to go on with what they cost.

use crate::cause::Cause;
use crate::decision;
use crate::field::choice;
use crate::measurement::{Effort, Measurement};
use crate::motor::finding::FindingKind;
use crate::readings::{Action, Doable};

choice! {
    /// What kind of step it is.
    StepKind {
        /// Leave the machine as it is.
        Leave = 0 "leave",
        /// Look or listen.
        Look = 1 "look",
        /// Take a reading.
        Measure = 2 "measure",
        /// Do something to the machine and read again.
        Act = 3 "act",
        /// Repair.
        Repair = 4 "repair",
        /// Replace the compressor.
        ReplaceCompressor = 5 "replace_compressor",
        /// Replace the machine.
        ReplaceMachine = 6 "replace_machine",
        /// Wait.
        Wait = 7 "wait",
    }
}

choice! {
    /// What the plate or the owner tells of the machine.
    Context {
        /// Which refrigerant it holds.
        Refrigerant = 1 "refrigerant",
        /// How it meters.
        Metering = 2 "metering",
        /// What it is for.
        Duty = 3 "duty",
    }
}

/// What a step is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Subject {
    /// The machine as a whole.
    Machine,
    /// A reading or an observation.
    Measurement(Measurement),
    /// An action.
    Action(Action),
    /// Something that the plate or the owner tells.
    Context(Context),
    /// A cause: the remedy of it.
    Cause(Cause),
    /// An electrical finding: the remedy of it.
    Finding(FindingKind),
}

impl Subject {
    /// The name in every interface.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Measurement(measurement) => measurement.name(),
            Self::Action(action) => action.name(),
            Self::Context(context) => context.name(),
            Self::Cause(cause) => cause.name(),
            Self::Finding(finding) => finding.name(),
            Self::Machine => "machine",
        }
    }
}

impl From<Doable> for Subject {
    fn from(doable: Doable) -> Self {
        match doable {
            Doable::Measurement(measurement) => Self::Measurement(measurement),
            Doable::Action(action) => Self::Action(action),
        }
    }
}

/// What a hose takes out of the charge when it is put on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HoseTakes {
    /// Refrigerant that the hose holds, g.
    pub grams: f32,
    /// The same over the nameplate charge, percent; `None` where that is not known.
    pub percent: Option<f32>,
}

/// One step of a visit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Step {
    /// What kind of step it is.
    pub kind: StepKind,
    /// What it is about.
    pub subject: Subject,
    /// What it takes, minutes (judged).
    pub minutes: f32,
    /// The probability that its outcome changes what is done, 0 to 1.
    pub changes: f32,
    /// The effort; `None` for what is no measurement.
    pub effort: Option<Effort>,
    /// What a hose takes from the charge, where one goes on.
    pub hose: Option<HoseTakes>,
}

impl Step {
    /// Nothing to do, and nothing known to do it on.
    pub const NONE: Self = Self {
        kind: StepKind::Leave,
        subject: Subject::Machine,
        minutes: 0.0,
        changes: 0.0,
        effort: None,
        hose: None,
    };
}

/// What follows on one outcome of the step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Then {
    /// The outcome.
    pub outcome: &'static str,
    /// Its probability, 0 to 1.
    pub probability: f32,
    /// What is then the best way to go on.
    pub kind: StepKind,
    /// What that is about.
    pub subject: Subject,
}

/// A way to go on with what it is expected to cost.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Way {
    /// What kind of way it is.
    pub kind: StepKind,
    /// What it is about.
    pub subject: Subject,
    /// The expected cost, in the visit's currency.
    pub expected_cost: f32,
}

/// A way to go on as a kind of step and what it is about.
pub(super) fn way(way: decision::Action) -> (StepKind, Subject) {
    match way {
        decision::Action::Leave | decision::Action::Test => (StepKind::Leave, Subject::Cause(Cause::None)),
        decision::Action::Repair(cause) => (StepKind::Repair, Subject::Cause(cause)),
        decision::Action::ReplaceCompressor => {
            (StepKind::ReplaceCompressor, Subject::Cause(Cause::WeakCompressor))
        }
        decision::Action::ReplaceMachine => (StepKind::ReplaceMachine, Subject::Machine),
    }
}
