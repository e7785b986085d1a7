//! What has to be done: the families of causes that readings cannot part, and the jobs that mend several causes at once.

use crate::cause::Cause;
use crate::diagnosis::Diagnosis;
use crate::field::choice;
use crate::motor::Findings;
use crate::motor::finding::Rank;
use crate::sort::sort_by;
use crate::system::{Metering, System};

choice! {
    /// Causes that let the same machine run, so that readings often cannot part them.
    Family {
        /// A restriction in the liquid line, or a metering device that passes too little.
        LiquidFeed = 1 "liquid_feed",
    }
}

impl Family {
    /// The causes of the family.
    pub const fn causes(self) -> &'static [Cause] {
        match self {
            Self::LiquidFeed => &[Cause::LiquidLineRestriction, Cause::MeteringUnderfeed],
        }
    }
}

choice! {
    /// A piece of work that mends several causes alike.
    Job {
        /// Nothing needs mending.
        None = 0 "none",
        /// Clean the condenser, mend its fan.
        CondenserAir = 1 "condenser_air",
        /// Defrost or clean the evaporator, mend its fan.
        EvaporatorAir = 2 "evaporator_air",
        /// Recover, find the leak or replace drier and capillary, evacuate, charge by weight.
        OpenCircuit = 3 "open_circuit",
        /// Set, clean or replace the expansion valve.
        MeteringValve = 4 "metering_valve",
        /// Replace the compressor.
        Compressor = 5 "compressor",
        /// Mend the supply, the start gear or a capacitor.
        Electrical = 6 "electrical",
    }
}

/// What an open circuit mends wherever the metering is: charge, gas, restriction, and then the metering device.
const CIRCUIT: [Cause; 6] = [
    Cause::Undercharge,
    Cause::Overcharge,
    Cause::LiquidLineRestriction,
    Cause::NonCondensables,
    Cause::MeteringUnderfeed,
    Cause::FloodBack,
];

impl Job {
    /// The causes that the job mends; a capillary or an orifice is mended in the open circuit, a valve by itself.
    pub const fn causes(self, valve: bool) -> &'static [Cause] {
        match self {
            Self::None => &[Cause::None],
            Self::CondenserAir => &[Cause::CondenserAirflow],
            Self::EvaporatorAir => &[Cause::EvaporatorAirflow],
            Self::OpenCircuit if valve => CIRCUIT.split_at(4).0,
            Self::OpenCircuit => &CIRCUIT,
            Self::MeteringValve if valve => CIRCUIT.split_at(4).1,
            Self::Compressor => &[Cause::WeakCompressor],
            Self::MeteringValve | Self::Electrical => &[],
        }
    }
}

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

/// The probability that one of several causes is there.
///
/// The probabilities of the causes count a pair of them twice; how many pairs there are at all follows from their sum.
/// Taking all of them off the union keeps it from being called more probable than it is.
fn union(diagnosis: &Diagnosis, causes: &[Cause]) -> f32 {
    let of = |wanted: &dyn Fn(Cause) -> bool| {
        diagnosis
            .causes
            .iter()
            .filter(|c| wanted(c.cause))
            .map(|c| c.probability)
            .fold((0.0, 0.0_f32), |(sum, most), p| (sum + p, most.max(p)))
    };
    let (sum, most) = of(&|cause| causes.contains(&cause));
    if causes.len() < 2 {
        return most;
    }
    let (all, _) = of(&|cause| cause != Cause::None);
    let (none, _) = of(&|cause| cause == Cause::None);
    let pairs = (all - (1.0 - none)).max(0.0);
    (sum - pairs).max(most).min(1.0 - none).max(0.0)
}

/// Weighs the families of causes.
pub(crate) fn families(diagnosis: &Diagnosis) -> Families {
    let mut families = Families::new();
    for family in Family::ALL.iter().copied() {
        // Room for every family.
        families.push(FamilyProbability { family, probability: union(diagnosis, family.causes()) }).ok();
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
        .map(|f| f.probability * (1.0 - f.inside_the_shell()))
        .fold(0.0, f32::max);
    // What the compressor's own question adds to what the causes say of it takes from a machine without a fault.
    let weak = union(diagnosis, Job::Compressor.causes(valve)).min(0.999);
    let sound = (1.0 - electrical) * ((1.0 - compressor) / (1.0 - weak)).min(1.0);
    let mut jobs = Jobs::new();
    for job in Job::ALL.iter().copied() {
        let causes = job.causes(valve);
        let probability = match job {
            Job::Compressor => compressor,
            Job::Electrical => electrical,
            Job::None => union(diagnosis, causes) * sound,
            _ => union(diagnosis, causes),
        };
        // Room for every job.
        jobs.push(JobProbability { job, probability, causes }).ok();
    }
    sort_by(&mut jobs, |a, b| b.probability.total_cmp(&a.probability).then(a.job.cmp(&b.job)));
    jobs
}
