//! Writes the plan of a visit.

use super::line::{Name, Object, object};
use crate::estimate::Estimate;
use crate::measurement::Effort;
use crate::plan::{Change, Plan, StepKind};
use crate::text::Language;

object! {
    /// The next step of a visit.
    PlanStep {
        /// What kind of step it is.
        kind: Name<StepKind>,
        /// What it is about: a measurement, an observation, a cause, an action, an electrical finding, or what the plate
        /// tells.
        name: &'static str,
        /// What it takes, minutes (judged).
        minutes: f32,
        /// The probability that its outcome changes what is done, 0 to 1.
        changes: f32,
        /// The effort; null for what is no measurement.
        effort: Option<Name<Effort>>,
        /// What a hose takes from the charge, where one goes on, g.
        hose_takes_g: Option<f32>,
        /// The same over the nameplate charge, percent.
        hose_takes_percent: Option<f32>,
        /// The same in words, in the language asked for.
        text: &'static str,
    }
}

object! {
    /// What follows on one outcome of the step.
    PlanThen {
        /// The outcome.
        outcome: &'static str,
        /// Its probability, 0 to 1.
        probability: f32,
        /// What is then the best way to go on.
        kind: Name<StepKind>,
        /// What that is about.
        name: &'static str,
    }
}

object! {
    /// A way to go on with what it is expected to cost.
    PlanWay {
        /// What kind of way it is.
        kind: Name<StepKind>,
        /// What it is about.
        name: &'static str,
        /// The expected cost, in the visit's currency.
        expected_cost: f32,
    }
}

object! {
    /// What to do next, and what the ways to go on cost.
    PlanOfVisit {
        /// The next step.
        step: PlanStep,
        /// What follows on each outcome of the step.
        then: Vec<PlanThen>,
        /// The ways to go on, the cheapest first; empty where no costs were told.
        ways: Vec<PlanWay>,
        /// The probability of a weak compressor above which replacing it pays.
        replace_above: Option<f32>,
        /// What to let out of the cylinder by the scale after an evacuation, where the step ends with a charge by weight.
        weigh_in_kg: Option<Estimate>,
        /// What was changed on this visit and whether it helped; null without readings from before.
        change: Option<Name<Change>>,
    }
}

/// The objects of a plan.
pub(super) const OBJECTS: &[Object] = &[PlanStep::TABLE, PlanThen::TABLE, PlanWay::TABLE, PlanOfVisit::TABLE];

impl PlanOfVisit {
    pub(super) fn of(plan: &Plan, language: Language) -> Self {
        let step = &plan.step;
        let then = plan.then.iter().map(|then| PlanThen {
            outcome: then.outcome,
            probability: then.probability,
            kind: Name(then.kind),
            name: then.subject.name(),
        });
        let ways = plan.ways.iter().map(|way| PlanWay {
            kind: Name(way.kind),
            name: way.subject.name(),
            expected_cost: way.expected_cost,
        });
        Self {
            step: PlanStep {
                kind: Name(step.kind),
                name: step.subject.name(),
                minutes: step.minutes,
                changes: step.changes,
                effort: step.effort.map(Name),
                hose_takes_g: step.hose.map(|hose| hose.grams),
                hose_takes_percent: step.hose.and_then(|hose| hose.percent),
                text: step.text_in(language),
            },
            then: then.collect(),
            ways: ways.collect(),
            replace_above: plan.replace_above,
            weigh_in_kg: plan.weigh_in_kg,
            change: plan.change.map(Name),
        }
    }
}
