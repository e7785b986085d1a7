//! The most specific statement about a machine that the stated error rates allow.
//!
//! In the order of what it says: a motor, supply or start gear that keeps the machine from running; one cause; what else
//! is electrical; a family of causes that readings cannot part; the job that mends all that is left; a healthy machine;
//! something that no listed cause explains. Nothing of a running machine is stated beside a warning that doubts the
//! whole visit. The compressor is answered on its own.

mod compressor;
mod job;
mod stopped;

pub use compressor::{CLEARED_BELOW, CONDEMNED_FROM, CompressorAnswer, CompressorState};
pub use job::{Families, Family, FamilyProbability, Job, JobProbability, Jobs};
pub(crate) use job::{families, jobs};
pub use stopped::needs_running;

use crate::alarm::Alarms;
use crate::cause::Cause;
use crate::cycle::Cycle;
use crate::diagnosis::{Diagnosis, FITS_AT_LEAST};
use crate::expected::Expected;
use crate::field::choice;
use crate::motor::Findings;
use crate::motor::finding::{Finding, FindingKind, Rank};
use crate::readings::Visit;
use crate::warning::{WarningKind, Warnings};

choice! {
    /// How specific a verdict is.
    Level {
        /// Nothing can be stated.
        Undecided = 0 "undecided",
        /// One of the ten causes.
        Cause = 1 "cause",
        /// A family of causes.
        Family = 2 "family",
        /// A job that mends several causes.
        Job = 3 "job",
        /// A finding of the motor, the supply or the start gear.
        Electrical = 4 "electrical",
        /// Nothing that counts is wrong.
        Healthy = 5 "healthy",
        /// Something is wrong that no listed cause explains.
        Unidentified = 6 "unidentified",
    }
}

/// What is stated.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Statement {
    /// Nothing can be stated.
    Undecided,
    /// One of the ten causes.
    Cause(Cause),
    /// A family of causes.
    Family(Family),
    /// A job that mends several causes.
    Job(Job),
    /// A finding of the motor, the supply or the start gear.
    Electrical(FindingKind),
    /// Nothing that counts is wrong.
    Healthy,
    /// Something is wrong that no listed cause explains.
    Unidentified,
}

impl Statement {
    /// How specific it is.
    pub const fn level(self) -> Level {
        match self {
            Self::Undecided => Level::Undecided,
            Self::Cause(_) => Level::Cause,
            Self::Family(_) => Level::Family,
            Self::Job(_) => Level::Job,
            Self::Electrical(_) => Level::Electrical,
            Self::Healthy => Level::Healthy,
            Self::Unidentified => Level::Unidentified,
        }
    }
    /// The name of the cause, family, job or finding; `None` where there is none to name.
    pub const fn name(self) -> Option<&'static str> {
        match self {
            Self::Cause(cause) => Some(cause.name()),
            Self::Family(family) => Some(family.name()),
            Self::Job(job) => Some(job.name()),
            Self::Electrical(finding) => Some(finding.name()),
            Self::Undecided | Self::Healthy | Self::Unidentified => None,
        }
    }
}

/// A statement with its probability.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Verdict {
    /// What is stated.
    pub statement: Statement,
    /// Its probability, 0 to 1; of `undecided`, that of the likeliest cause.
    pub probability: f32,
}

impl Verdict {
    /// Nothing stated.
    pub const UNDECIDED: Self = Self { statement: Statement::Undecided, probability: 0.0 };
}

/// Probability from which a finding is the verdict (judged: the rig has no electrical faults to set it on).
pub const ELECTRICAL_AT: f32 = 0.8;
/// Probability from which a family is stated.
pub const FAMILY_AT: f32 = 0.8;
/// Probability from which a job is stated.
pub const JOB_AT: f32 = 0.85;
/// Probability from which something unidentified is stated.
pub const UNIDENTIFIED_AT: f32 = 0.7;

/// What the verdict rests on.
pub(crate) struct Evidence<'a> {
    pub(crate) visit: &'a Visit<'a>,
    pub(crate) cycle: &'a Cycle,
    pub(crate) expected: &'a Expected,
    pub(crate) diagnosis: &'a Diagnosis,
    pub(crate) findings: &'a Findings,
    pub(crate) alarms: &'a Alarms,
    /// Whether the machine runs, or nobody said that it does not.
    pub(crate) running: bool,
    /// Whether a warning doubts the visit as a whole.
    pub(crate) doubted: bool,
}

/// Whether a warning doubts the visit as a whole.
pub(crate) fn doubted(warnings: &Warnings) -> bool {
    warnings.iter().any(|w| {
        matches!(
            w.kind,
            WarningKind::NotSettled
                | WarningKind::ReadsLikeGauge
                | WarningKind::ReadsLikeAnother
                | WarningKind::ReadsLikeTheOther
                | WarningKind::OutsideModel
                | WarningKind::RefrigerantUnknown
        )
    })
}

/// Whether a cause that leads may be decided here: nothing beside a doubt, of a stopped machine only what stands still
/// shows, and no clearance beside an alarm, a bad part or a motor that does not start.
pub(crate) fn may_be_decided(evidence: &Evidence<'_>) -> bool {
    let stopped_shows =
        matches!(evidence.diagnosis.leading, Cause::Undercharge | Cause::Overcharge | Cause::NonCondensables);
    let clears = evidence.diagnosis.leading == Cause::None;
    !evidence.doubted && (evidence.running || stopped_shows) && !(clears && something_is_wrong(evidence))
}

/// Whether an alarm or a finding says that something is wrong, whatever the readings of the cycle say.
fn something_is_wrong(evidence: &Evidence<'_>) -> bool {
    !evidence.alarms.is_empty()
        || evidence.findings.iter().any(|f| f.finding.rank() >= Rank::Part && f.probability >= 0.5)
}

/// The weightiest finding from a rank on that is sure enough to be the verdict.
fn finding(findings: &Findings, from: Rank) -> Option<&Finding> {
    findings.iter().filter(|f| f.finding.rank() >= from && f.probability >= ELECTRICAL_AT).reduce(
        |best, next| {
            let better = next.finding.rank() > best.finding.rank()
                || (next.finding.rank() == best.finding.rank() && next.probability > best.probability);
            if better { next } else { best }
        },
    )
}

/// The probability that something is wrong which no listed cause explains.
fn unidentified(diagnosis: &Diagnosis) -> f32 {
    diagnosis.fits.map_or(0.0, |fits| (1.0 - fits / FITS_AT_LEAST).max(0.0))
}

/// States what the error rates allow; `decided` of the diagnosis is already held against [`may_be_decided`].
pub(crate) fn verdict(evidence: &Evidence<'_>, families: &Families, jobs: &Jobs) -> Verdict {
    let diagnosis = evidence.diagnosis;
    let electrical = |from| {
        finding(evidence.findings, from)
            .map(|f| Verdict { statement: Statement::Electrical(f.finding), probability: f.probability })
    };
    let cause = || {
        let probability = diagnosis.causes[0].probability;
        let statement = match diagnosis.leading {
            Cause::None => Statement::Healthy,
            cause => Statement::Cause(cause),
        };
        diagnosis.decided.then_some(Verdict { statement, probability })
    };
    let running = evidence.running && !evidence.doubted;
    let fits = diagnosis.fits.is_some_and(|fits| fits >= FITS_AT_LEAST);
    let family = || {
        let family = families.iter().max_by(|a, b| a.probability.total_cmp(&b.probability))?;
        let statement = Statement::Family(family.family);
        let probability = family.probability;
        (running && fits && probability >= FAMILY_AT).then_some(Verdict { statement, probability })
    };
    let job = || {
        let job = jobs.iter().find(|j| !matches!(j.job, Job::None | Job::Electrical))?;
        let (statement, probability) = (Statement::Job(job.job), job.probability);
        let stands = fits || job.job == Job::Compressor;
        (running && stands && probability >= JOB_AT).then_some(Verdict { statement, probability })
    };
    let unidentified = || {
        let (statement, probability) = (Statement::Unidentified, unidentified(diagnosis));
        (running && probability >= UNIDENTIFIED_AT).then_some(Verdict { statement, probability })
    };
    electrical(Rank::Stops)
        .or_else(cause)
        .or_else(|| electrical(Rank::Part))
        .or_else(family)
        .or_else(job)
        .or_else(unidentified)
        .unwrap_or(Verdict { statement: Statement::Undecided, probability: diagnosis.causes[0].probability })
}

/// Answers the question of the compressor.
pub(crate) fn compressor(evidence: &Evidence<'_>) -> CompressorAnswer {
    compressor::answer(evidence)
}
