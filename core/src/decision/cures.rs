//! Which fault a remedy takes away besides the one it is meant for.

use super::Action;
use crate::cause::Cause;

/// A remedy that opens the circuit ends with a charge by weight, so the charge and what is in it come right.
const CHARGED_BY_WEIGHT: f32 = 1.0;
/// A shortage comes back where the leak was not looked for (judged).
const LEAK_NOT_LOOKED_FOR: f32 = 0.3;
/// A new drier goes in with most work on an open circuit, and most restrictions sit in the drier (judged).
const NEW_DRIER: f32 = 0.7;

/// The chance that a way to go on takes a fault away, 0 to 1.
pub(crate) fn cures(way: Action, fault: Cause) -> f32 {
    let meant = match way {
        Action::Leave | Action::Test => return 0.0,
        Action::ReplaceMachine => return 1.0,
        Action::Repair(cause) => cause,
        Action::ReplaceCompressor => Cause::WeakCompressor,
    };
    if meant == fault {
        return 1.0;
    }
    match (opens(meant), fault) {
        (true, Cause::Overcharge | Cause::NonCondensables) => CHARGED_BY_WEIGHT,
        (true, Cause::Undercharge) => LEAK_NOT_LOOKED_FOR,
        (true, Cause::LiquidLineRestriction)
            if meant != Cause::Overcharge && meant != Cause::NonCondensables =>
        {
            NEW_DRIER
        }
        _ => 0.0,
    }
}

impl Action {
    /// Whether the way opens the circuit and ends with a charge by weight.
    pub(crate) const fn opens_the_circuit(self) -> bool {
        match self {
            Self::Leave | Self::Test | Self::ReplaceMachine => false,
            Self::Repair(cause) => opens(cause),
            Self::ReplaceCompressor => true,
        }
    }
}

/// Whether the remedy of a cause opens the circuit: recover, mend, evacuate, charge by weight.
const fn opens(cause: Cause) -> bool {
    !matches!(cause, Cause::None | Cause::CondenserAirflow | Cause::EvaporatorAirflow)
}
