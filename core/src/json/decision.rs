//! What each way to go on is expected to cost: one JSON object in, one line out.

use super::line::{Answered, Name, Object, line, object};
use super::read::{FieldError, number, object as members, read_costs, unknown};
use super::tree::Tree;
use crate::cause::Cause;
use crate::decision::{self, Action, Costs};
use crate::field::Kind;
use crate::plan::StepKind;

object! {
    /// A way to go on.
    Way {
        /// What kind of way it is: `leave`, `test`, `repair`, `replace_compressor`, `replace_machine`.
        action: &'static str,
        /// The cause that is repaired.
        cause: Option<Name<Cause>>,
    }
}

object! {
    /// A way to go on with its expected cost.
    Alternative {
        /// What kind of way it is: `leave`, `test`, `repair`, `replace_compressor`, `replace_machine`.
        action: &'static str,
        /// The cause that is repaired.
        cause: Option<Name<Cause>>,
        /// The expected cost; null where it is not known.
        expected_cost: Option<f32>,
    }
}

object! {
    /// All ways to go on with their expected costs, and the cheapest where a cost is known.
    Decision {
        /// Always `ok`.
        status: Answered,
        /// Every way.
        alternatives: Vec<Alternative>,
        /// The cheapest way; null where none can be recommended.
        recommended: Option<Way>,
    }
}

/// The objects of a decision.
pub(super) const OBJECTS: &[Object] = &[Way::TABLE, Alternative::TABLE, Decision::TABLE];

/// Weighs every way to go on: `{"probabilities": {cause: number}, "costs": {...}, "test_settles": number}`.
///
/// A probability that is left out is 0; `test_settles` is the chance that the next test settles the cause, 0 unless given.
pub fn answer_decision(question: &str) -> String {
    ask(question).unwrap_or_else(|error| super::write_error(&error))
}

fn ask(question: &str) -> Result<String, FieldError> {
    let (mut chances, mut costs, mut settles) = ([0.0; Cause::COUNT], Costs::default(), 0.0);
    for (name, value) in members("", Tree::read(question)?)? {
        match name.as_str() {
            "probabilities" => {
                for (cause, value) in members("probabilities", value)? {
                    let path = format!("probabilities.{cause}");
                    let place = Cause::from_name(&cause).and_then(|cause| chances.get_mut(cause.index()));
                    let Some(place) = place else {
                        let names: Vec<&str> = Cause::ALL.iter().map(|cause| cause.name()).collect();
                        return Err(unknown(&path, &names));
                    };
                    *place = number(&path, Kind::Percent, value)?.unwrap_or(0.0);
                }
            }
            "costs" => read_costs(value, &mut costs)?,
            "test_settles" => settles = number("test_settles", Kind::Percent, value)?.unwrap_or(0.0),
            _ => return Err(unknown(&name, &["probabilities", "costs", "test_settles"])),
        }
    }
    let decided = decision::weigh(&chances, &costs, settles);
    let alternatives = decided.alternatives.iter().map(|alternative| {
        let Way { action, cause } = way(alternative.action);
        Alternative { action, cause, expected_cost: alternative.expected_cost }
    });
    Ok(line(&Decision {
        status: Answered,
        alternatives: alternatives.collect(),
        recommended: decided.recommended.map(way),
    }))
}

fn way(action: Action) -> Way {
    let (action, cause) = match action {
        Action::Leave => (StepKind::Leave.name(), None),
        Action::Test => ("test", None),
        Action::Repair(cause) => (StepKind::Repair.name(), Some(cause)),
        Action::ReplaceCompressor => (StepKind::ReplaceCompressor.name(), Some(Cause::WeakCompressor)),
        Action::ReplaceMachine => (StepKind::ReplaceMachine.name(), None),
    };
    Way { action, cause: cause.map(Name) }
}
