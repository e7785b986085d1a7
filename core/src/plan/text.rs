//! What to do, in the trade's words: one short sentence a step.

use super::step::{Step, StepKind, Subject};
use crate::measurement::{Effort, Measurement};
use crate::text::{ACT, ASK, Language, MEASURE, MEND, REMEDY, StepPhrase, Told, advice};

impl Step {
    /// Says what to do, as one short English sentence.
    pub fn text(&self) -> &'static str {
        self.text_in(Language::English)
    }

    /// Says what to do, as one short sentence in a language.
    pub fn text_in(&self, language: Language) -> &'static str {
        use Measurement as M;
        let (phrase, advised) = match (self.kind, self.subject) {
            (StepKind::ReplaceMachine, _) => (StepPhrase::ReplaceMachine, None),
            (StepKind::Leave, Subject::Machine) => (StepPhrase::NotDecided, None),
            (StepKind::Leave, _) => (StepPhrase::LeaveAlone, None),
            (StepKind::Repair, Subject::Measurement(M::CallsForCooling)) => (StepPhrase::MendControls, None),
            (StepKind::Repair, Subject::Measurement(M::DoorCloses)) => (StepPhrase::MendDoor, None),
            (StepKind::Repair, Subject::Measurement(_)) => (StepPhrase::MendFound, None),
            (_, Subject::Measurement(M::PumpDown)) if self.effort == Some(Effort::OpensSystem) => {
                (StepPhrase::FitValve, None)
            }
            (_, Subject::Measurement(what)) => (StepPhrase::ReadIt, Some((MEASURE, what.code()))),
            (_, Subject::Action(what)) => (StepPhrase::ReadIt, Some((ACT, what.code()))),
            (_, Subject::Context(what)) => (StepPhrase::LookAtMachine, Some((ASK, what.code()))),
            (_, Subject::Cause(what)) => (StepPhrase::LeaveAlone, Some((REMEDY, what.code()))),
            (_, Subject::Finding(what)) => (StepPhrase::ReplaceMotor, Some((MEND, what.code()))),
            (_, Subject::Machine) => (StepPhrase::LookAtMachine, None),
        };
        let advised = advised.and_then(|(table, code)| advice(table, code, language));
        advised.unwrap_or_else(|| phrase.text(language))
    }
}
