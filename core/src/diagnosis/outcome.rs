//! What a diagnosis says: the causes with their probabilities, the readings' words, what is left to do.

use super::rule_out::RULED_OUT_BELOW;
use crate::cause::Cause;
use crate::job::{Family, Job};
use crate::measurement::{Effort, Measurement};
use crate::sort::sort_by;
use heapless::Vec;

/// The probability and the mean severity of one cause.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CauseProbability {
    /// The cause.
    pub cause: Cause,
    /// Its probability, from every single cause and every pair that holds it, 0 to 1.
    pub probability: f32,
    /// The fraction lost or added where the cause is present; `None` for none.
    pub severity: Option<f32>,
}

/// One reading's word for or against one cause.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Evidence {
    /// The cause.
    pub cause: Cause,
    /// The reading.
    pub reading: Measurement,
    /// Log-odds of the cause with all readings minus with this one left out, nats; positive speaks for it.
    pub weight_nats: f32,
}

/// A measurement not yet taken and what it would tell.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NextMeasurement {
    /// What to measure.
    pub measurement: Measurement,
    /// The information expected on the cause, bits.
    pub information_bits: f32,
    /// The effort it takes.
    pub effort: Effort,
    /// What it takes, minutes (judged).
    pub minutes: f32,
}

/// A cause and the measurements that rule it out, or would.
#[derive(Clone, Debug, PartialEq)]
pub struct CauseAndMeasurements {
    /// The cause.
    pub cause: Cause,
    /// The measurements, the strongest first.
    pub measurements: Vec<Measurement, 3>,
}

/// The probability of each family of causes that readings often cannot part, pairs counted once.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FamilyShares(pub(super) [f32; Family::ALL.len()]);

/// The probability of each job as the union of the causes it mends, pairs counted once.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct JobShares(pub(super) [f32; Job::ALL.len()]);

/// Probabilities before anything is read: a single cause, and a pair of causes.
const SINGLE: f32 = 0.5 / 9.0;
const PAIR: f32 = 0.15 / 36.0;
/// One cause alone or in one of the eight pairs that hold it.
const ONE: f32 = SINGLE + 8.0 * PAIR;

impl FamilyShares {
    /// What stands where nothing could be weighed: two causes, and the fifteen pairs that hold one of them.
    const UNWEIGHED: Self = Self([2.0 * SINGLE + 15.0 * PAIR]);
    pub(super) const NONE: Self = Self([0.0; Family::ALL.len()]);

    /// The probability that one of the family's causes is there, 0 to 1.
    pub fn of(&self, family: Family) -> f32 {
        Family::ALL.iter().zip(self.0).find(|(f, _)| **f == family).map_or(0.0, |(_, share)| share)
    }
}

impl JobShares {
    /// What stands where nothing could be weighed, in the order of [`Job`]; an open circuit mends six causes, and all pairs
    /// but the three that hold none of them.
    const UNWEIGHED: Self = Self([0.35, ONE, ONE, 6.0 * SINGLE + 33.0 * PAIR, 0.0, ONE, 0.0]);
    pub(super) const NONE: Self = Self([0.0; Job::ALL.len()]);

    /// The probability that the job mends what is wrong, 0 to 1; of `electrical`, which the readings of the cycle do not
    /// show, 0.
    pub fn of(&self, job: Job) -> f32 {
        Job::ALL.iter().zip(self.0).find(|(j, _)| **j == job).map_or(0.0, |(_, share)| share)
    }
}

/// What the readings say of the ten causes.
#[derive(Clone, Debug, PartialEq)]
pub struct Diagnosis {
    /// All ten causes, most probable first.
    pub causes: [CauseProbability; Cause::COUNT],
    /// Whether acting on `leading` is justified by the rule's stated error rates.
    pub decided: bool,
    /// The most probable cause, `none` included.
    pub leading: Cause,
    /// How probable readings as odd as these are under the best explanation; `None` where nothing could be judged.
    ///
    /// Lowered by the probability that the visit was told wrongly: another refrigerant, readings in each other's place.
    pub fits: Option<f32>,
    /// Probability that something is wrong which none of the causes explains.
    pub unidentified: f32,
    /// How far nothing condenses or is pumped, 0 to 1.
    pub(crate) still: f32,
    /// The families' probabilities.
    pub families: FamilyShares,
    /// The jobs' probabilities.
    pub jobs: JobShares,
    /// The readings' words for and against the leading causes, the strongest first.
    pub evidence: Vec<Evidence, 48>,
    /// What can still be measured, the best for its minutes first.
    pub next: Vec<NextMeasurement, 8>,
    /// Causes with a probability below 0.02 and what excludes them.
    pub ruled_out: Vec<CauseAndMeasurements, 10>,
    /// The other causes and what would close them.
    pub still_open: Vec<CauseAndMeasurements, 10>,
}

/// The prior, which stands where nothing could be weighed.
const UNWEIGHED: [CauseProbability; Cause::COUNT] = {
    const fn other(cause: Cause) -> CauseProbability {
        CauseProbability { cause, probability: 0.8 / 9.0, severity: Some(0.0) }
    }
    [
        CauseProbability { cause: Cause::None, probability: 0.35, severity: None },
        other(Cause::Undercharge),
        other(Cause::Overcharge),
        other(Cause::LiquidLineRestriction),
        other(Cause::MeteringUnderfeed),
        other(Cause::FloodBack),
        other(Cause::WeakCompressor),
        other(Cause::CondenserAirflow),
        other(Cause::EvaporatorAirflow),
        other(Cause::NonCondensables),
    ]
};

impl Diagnosis {
    /// Nothing weighed, nothing decided.
    pub const UNWEIGHED: Self = Self {
        causes: UNWEIGHED,
        decided: false,
        leading: Cause::None,
        fits: None,
        unidentified: 0.0,
        still: 0.0,
        families: FamilyShares::UNWEIGHED,
        jobs: JobShares::UNWEIGHED,
        evidence: Vec::new(),
        next: Vec::new(),
        ruled_out: Vec::new(),
        still_open: Vec::new(),
    };

    /// Takes from a machine without a fault what a fault of its motor, start gear or supply leaves of it: what is wrong
    /// there is none of the ten causes, but it is something.
    pub(crate) fn beside_electrical(&mut self, probability: f32) {
        let Some(none) = self.causes.iter_mut().find(|entry| entry.cause == Cause::None) else { return };
        none.probability *= 1.0 - probability.max(0.0).min(1.0);
        let excluded = none.probability < RULED_OUT_BELOW;
        sort_by(&mut self.causes, |a, b| b.probability.total_cmp(&a.probability).then(a.cause.cmp(&b.cause)));
        let leading = self.causes[0].cause;
        if leading != self.leading {
            // What was decided was that nothing counts; what leads now was only next to it.
            self.decided = false;
            self.leading = leading;
            if let Some(at) = self.ruled_out.iter().position(|entry| entry.cause == leading) {
                // Both lists have room for every cause.
                self.still_open.push(self.ruled_out.swap_remove(at)).ok();
            }
        }
        if excluded && self.leading != Cause::None && self.still_open.iter().any(|e| e.cause == Cause::None) {
            self.still_open.retain(|entry| entry.cause != Cause::None);
            let excluded = CauseAndMeasurements { cause: Cause::None, measurements: Vec::new() };
            // Both lists have room for every cause.
            self.ruled_out.push(excluded).ok();
        }
    }

    /// Empties the diagnosis in place.
    pub(crate) fn clear(&mut self) {
        self.causes = UNWEIGHED;
        self.decided = false;
        self.leading = Cause::None;
        self.fits = None;
        self.unidentified = 0.0;
        self.still = 0.0;
        self.families = FamilyShares::UNWEIGHED;
        self.jobs = JobShares::UNWEIGHED;
        self.evidence.clear();
        self.next.clear();
        self.ruled_out.clear();
        self.still_open.clear();
    }
}
