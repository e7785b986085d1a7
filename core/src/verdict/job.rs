//! How probable each family and each job is, with what the motor's findings and the compressor's own question add.

use crate::cause::Cause;
use crate::diagnosis::Diagnosis;
use crate::job::{Family, Job};
use crate::motor::Findings;
use crate::motor::finding::Rank;
use crate::sort::sort_by;
use crate::system::{Metering, System};

/// A family with the probability that one of its causes is there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FamilyProbability {
    /// The family.
    pub family: Family,
    /// The probability of the union, 0 to 1.
    pub probability: f32,
}

/// A job with the probability that it mends something.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct JobProbability {
    /// The job.
    pub job: Job,
    /// The probability of the union of what it mends, 0 to 1.
    pub probability: f32,
    /// The causes it mends on this machine; none of the ten for `electrical`.
    pub causes: &'static [Cause],
}

/// The families of one visit.
pub type Families = heapless::Vec<FamilyProbability, 2>;
/// The jobs of one visit, the most probable first.
pub type Jobs = heapless::Vec<JobProbability, { Job::ALL.len() }>;

/// Weighs the families of causes.
pub(crate) fn families(diagnosis: &Diagnosis) -> Families {
    let mut families = Families::new();
    for family in Family::ALL.iter().copied() {
        // Room for every family.
        families.push(FamilyProbability { family, probability: diagnosis.families.of(family) }).ok();
    }
    families
}

/// Weighs the jobs; `compressor` is the probability that the compressor or its motor is at fault.
///
/// What no listed cause explains is no job's, so that the jobs need not sum to one.
pub(crate) fn jobs(system: &System, diagnosis: &Diagnosis, findings: &Findings, compressor: f32) -> Jobs {
    let valve = matches!(system.metering, Some(Metering::ThermostaticValve | Metering::ElectronicValve));
    let electrical = findings
        .iter()
        .filter(|f| f.finding.rank() >= Rank::Part)
        .map(|f| f.weight() * (1.0 - f.inside_the_shell()))
        .fold(0.0, f32::max);
    // What the compressor's own question adds to what the causes say of it takes from a machine without a fault.
    let weak = diagnosis.jobs.of(Job::Compressor).min(0.999);
    let sound = (1.0 - electrical) * ((1.0 - compressor) / (1.0 - weak)).min(1.0);
    let mut jobs = Jobs::new();
    for job in Job::ALL.iter().copied() {
        let probability = match job {
            Job::Compressor => compressor,
            Job::Electrical => electrical,
            Job::None => diagnosis.jobs.of(job) * sound,
            _ => diagnosis.jobs.of(job),
        };
        // Room for every job.
        jobs.push(JobProbability { job, probability, causes: job.causes(valve) }).ok();
    }
    sort_by(&mut jobs, |a, b| b.probability.total_cmp(&a.probability).then(a.job.cmp(&b.job)));
    jobs
}
