//! What a diagnosis says: the causes with their probabilities, the readings' words, what is left to do.

use crate::cause::Cause;
use crate::measurement::{Effort, Measurement};
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

/// The probability of families of causes that readings often cannot part, pairs counted once.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Families {
    /// A restriction in the liquid line or a metering device that passes too little.
    pub liquid_feed: f32,
}

/// The probability that each job mends what is wrong, as the union of the causes it mends, pairs counted once.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Jobs {
    /// Clean the condenser, mend its fan.
    pub condenser_air: f32,
    /// Defrost or clean the evaporator, mend its fan.
    pub evaporator_air: f32,
    /// Recover, mend the leak or replace drier and capillary, evacuate, charge by weight.
    pub open_circuit: f32,
    /// Set, clean or replace the expansion valve.
    pub metering_valve: f32,
    /// Replace the compressor.
    pub compressor: f32,
    /// Nothing needs mending.
    pub none: f32,
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
    /// The families' probabilities.
    pub families: Families,
    /// The jobs' probabilities.
    pub jobs: Jobs,
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

/// Nothing weighed.
const NO_FAMILIES: Families = Families { liquid_feed: 0.0 };
const NO_JOBS: Jobs = Jobs {
    condenser_air: 0.0,
    evaporator_air: 0.0,
    open_circuit: 0.0,
    metering_valve: 0.0,
    compressor: 0.0,
    none: 0.0,
};

impl Diagnosis {
    /// Nothing weighed, nothing decided.
    pub const UNWEIGHED: Self = Self {
        causes: UNWEIGHED,
        decided: false,
        leading: Cause::None,
        fits: None,
        unidentified: 0.0,
        families: NO_FAMILIES,
        jobs: NO_JOBS,
        evidence: Vec::new(),
        next: Vec::new(),
        ruled_out: Vec::new(),
        still_open: Vec::new(),
    };

    /// Empties the diagnosis in place.
    pub(crate) fn clear(&mut self) {
        self.causes = UNWEIGHED;
        self.decided = false;
        self.leading = Cause::None;
        self.fits = None;
        self.unidentified = 0.0;
        self.families = NO_FAMILIES;
        self.jobs = NO_JOBS;
        self.evidence.clear();
        self.next.clear();
        self.ruled_out.clear();
        self.still_open.clear();
    }
}
