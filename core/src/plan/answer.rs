//! What a verdict asks for.

use super::step::{self, StepKind, Subject};
use crate::cause::Cause;
use crate::decision;
use crate::diagnosis::Diagnosis;
use crate::motor::Findings;
use crate::motor::finding::FindingKind;
use crate::verdict::{Job, Statement};

/// Share of a finding that lies inside the shell from which a new compressor is what mends it (judged).
const INSIDE: f32 = 0.9;

/// What a verdict asks for; nothing where nothing is stated.
pub(crate) fn answer(
    statement: Statement,
    valve: bool,
    diagnosis: &Diagnosis,
    findings: &Findings,
) -> Option<(StepKind, Subject)> {
    let remedy = |cause: Cause| step::way(decision::Action::remedy(cause));
    let likeliest = |of: &[Cause]| {
        let among = diagnosis.causes.iter().find(|entry| of.contains(&entry.cause));
        among.map(|entry| remedy(entry.cause))
    };
    match statement {
        Statement::Undecided => None,
        // Nothing is cleared, and nothing listed is to be mended.
        Statement::Unidentified => Some((StepKind::Leave, Subject::Machine)),
        Statement::Healthy => Some(remedy(Cause::None)),
        Statement::Cause(cause) => Some(remedy(cause)),
        Statement::Family(family) => likeliest(family.causes()),
        Statement::Job(Job::Compressor) => Some(remedy(Cause::WeakCompressor)),
        Statement::Job(job) => likeliest(job.causes(valve)),
        Statement::Electrical(kind) => {
            let inside = findings.iter().find(|f| f.finding == kind).map_or(0.0, |f| f.inside_the_shell());
            Some(match kind {
                _ if inside >= INSIDE => remedy(Cause::WeakCompressor),
                FindingKind::OverloadOpen => (StepKind::Wait, Subject::Finding(kind)),
                _ => (StepKind::Repair, Subject::Finding(kind)),
            })
        }
    }
}
