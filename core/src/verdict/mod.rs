//! The most specific statement about a machine that the stated error rates allow.
//!
//! In the order of what it says: a motor, supply or start gear that keeps the machine from running; one cause; what else
//! is electrical; a family of causes that readings cannot part; the job that mends all that is left; a healthy machine;
//! something that no listed cause explains. Nothing of a running machine is stated beside a warning that doubts the
//! whole visit. The compressor is answered on its own.

mod compressor;
mod job;
mod stopped;

pub use crate::job::{Family, Job};
pub use compressor::{CLEARED_BELOW, CONDEMNED_FROM, CompressorAnswer, CompressorState};
pub use job::{Families, FamilyProbability, JobProbability, Jobs};
pub(crate) use job::{families, jobs};
pub use stopped::{needs_running, runs};

use crate::alarm::{AlarmCode, Alarms};
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

/// Probability from which a finding is the verdict (judged: the simulated machines have no electrical faults to set it
/// on, and what a meter says is wrong about one time in thirty).
pub const ELECTRICAL_AT: f32 = 0.8;
/// Probability from which a family is stated.
///
/// Of 4,000 visits to the simulated machines that constants may be set on (the setting half, seeds 7 and 11), where no
/// cause is decided, with all readings, without a high side, and with six readings: right for 10, 11 and 18 % of the faulty
/// ones, wrong for 0.1, 0.1 and 0.3 %, and said of 1.4, 1.6 and 0.7 % of those without a fault.
pub const FAMILY_AT: f32 = 0.75;
/// Share of a family of liquid feed and of lost charge together that the family must have to be stated where hardly anything
/// is pumped (judged: an empty machine and a blocked one pull down alike, and who takes the one for the other leaves a
/// leak open).
const NOT_EMPTY: f32 = 0.9;
/// Probability from which a job is stated.
///
/// Of the same visits, where neither a cause nor a family is stated: right for 1 to 3 % of the faulty ones, wrong for 0.05,
/// 0.14 and 0.14 %, and said of 0.05, 0.3 and 0.2 % of those without a fault that counts.
pub const JOB_AT: f32 = 0.75;
/// Probability from which something unidentified is stated (judged: the simulated machines have listed causes only).
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
    // A machine that is built to run with a hot discharge line is not wrong by doing so: the alarm stands beside it.
    let built_hot = evidence
        .expected
        .discharge_line_c
        .zip(evidence.visit.readings.discharge_line_c)
        .is_some_and(|(expected, read)| read < expected.value + expected.u);
    evidence.alarms.iter().any(|a| !(built_hot && a.code == AlarmCode::DischargeTooHot))
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

/// A job and the probability that it may be stated with; `None` where its one cause should be stated or nothing.
///
/// What is known of a job of one cause is what is known of the cause, which was not decided: only a compressor that was
/// seen to compress nothing, or whose motor is at fault, is more than its cause. Gas that cannot condense is not decided
/// by running readings, and so is no reason to open a circuit by them either.
fn stated(evidence: &Evidence<'_>, job: &JobProbability) -> Option<(Job, f32)> {
    let gas = evidence.diagnosis.causes.iter().find(|c| c.cause == Cause::NonCondensables);
    let probability = match job.job {
        Job::OpenCircuit => (job.probability - gas.map_or(0.0, |c| c.probability)).max(0.0),
        Job::MeteringValve => job.probability,
        Job::Compressor => compressor::beyond_the_cause(evidence),
        Job::None | Job::CondenserAir | Job::EvaporatorAir | Job::Electrical => return None,
    };
    Some((job.job, probability))
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
        let empty = diagnosis.causes.iter().find(|c| c.cause == Cause::Undercharge);
        let lost = empty.map_or(0.0, |c| c.probability);
        let fed = probability >= NOT_EMPTY * diagnosis.still * (probability + lost);
        (running && fits && fed && probability >= FAMILY_AT).then_some(Verdict { statement, probability })
    };
    let job = || {
        let (job, probability) =
            jobs.iter().filter_map(|j| stated(evidence, j)).max_by(|a, b| a.1.total_cmp(&b.1))?;
        let statement = Statement::Job(job);
        let stands = fits || job == Job::Compressor;
        (running && stands && probability >= JOB_AT).then_some(Verdict { statement, probability })
    };
    let unidentified = || {
        let (statement, probability) = (Statement::Unidentified, diagnosis.unidentified);
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

/// The probability that something of the motor, its start gear or its supply is at fault.
pub(crate) fn electrical_fault(findings: &Findings) -> f32 {
    // A finding begins at its limit with one half: counted from there, nothing jumps where it appears.
    let counts = |f: &Finding| (2.0 * f.probability - 1.0).max(0.0);
    findings.iter().filter(|f| f.finding.rank() >= Rank::Part).map(counts).fold(0.0, f32::max)
}

/// Answers the question of the compressor.
pub(crate) fn compressor(evidence: &Evidence<'_>) -> CompressorAnswer {
    compressor::answer(evidence)
}
