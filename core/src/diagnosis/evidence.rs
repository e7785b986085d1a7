//! Evidence that stands beside the channels: the pump-down, the standing pressure, what was recovered, a space that stays
//! warm, and what was seen and heard.

use super::call::Weighed;
use super::hypothesis::Hypothesis;
use super::observed::{OBSERVATIONS, OBSERVED, OUTCOMES};
use super::warm_space::WarmSpace;
use crate::cause::Cause;
use crate::charge::standing::{self, Circuit, Standing};
use crate::compressor::pump_down::{self, Conditions, PumpDown};
use crate::measurement::Measurement;
use crate::normal::density;
use crate::readings::Observations;

/// Flow losses at which the pump-down's likelihood is computed; between them it is interpolated.
const LOSSES: [f32; 8] = [0.0, 0.1, 0.2, 0.3, 0.4, 0.55, 0.7, 0.95];

/// The kinds of evidence, in the order of [`Factors::ln_each`]; the observations follow in the
/// order of [`OBSERVED`].
pub(crate) const PUMP_DOWN: usize = 0;
pub(crate) const STANDING: usize = 1;
pub(crate) const RECOVERED: usize = 2;
const SPACE: usize = 3;
pub(crate) const FIRST_OBSERVATION: usize = 4;

/// What is not read but weighed with the readings.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Factors {
    pump_down: Option<[f32; LOSSES.len()]>,
    standing: Option<(Standing, Circuit)>,
    /// ln of the recovered mass over the plate's charge.
    recovered: Option<f32>,
    space: Option<WarmSpace>,
    observations: Observations,
    call: Weighed,
}

/// What was measured and told beside the channels.
pub(crate) struct Beside {
    pub(crate) pump_down: Option<(PumpDown, Conditions)>,
    pub(crate) standing: Option<(Standing, Circuit)>,
    pub(crate) recovered: Option<f32>,
    pub(crate) space: Option<WarmSpace>,
    pub(crate) call: Weighed,
}

/// Standard deviation of the logarithm of a recovered mass: what stays in the oil and in the hoses (judged).
const RECOVERED_SPREAD: f32 = 0.08;
/// A hypothesis stands for severities about its own, some fifth of it either way: its nodes lie so far apart.
const ABOUT: f32 = 0.2;
/// Probability that a recovered mass says nothing: not all came out, the plate is another machine's (judged), over this
/// width of its logarithm.
const RECOVERED_SPOILT: f32 = 0.03;
const RECOVERED_WIDTH: f32 = 3.0;

/// Standard deviation of the logarithm of what comes out of a machine over its plate's charge.
pub(crate) fn recovered_spread(hypothesis: &Hypothesis) -> f32 {
    let left = charge_left(hypothesis).max(0.05);
    let about = ABOUT * (1.0 - left) / left;
    libm::sqrtf(RECOVERED_SPREAD * RECOVERED_SPREAD + about * about)
}

impl Factors {
    /// The number of kinds.
    pub(crate) const COUNT: usize = FIRST_OBSERVATION + OBSERVATIONS;
    /// Their names.
    pub(crate) const MEASUREMENT: [Measurement; Self::COUNT] = {
        let mut all = [Measurement::PumpDown; Self::COUNT];
        all[STANDING] = Measurement::StandingPressure;
        all[RECOVERED] = Measurement::Recovered;
        all[SPACE] = Measurement::Space;
        let mut i = 0;
        while i < OBSERVATIONS {
            all[FIRST_OBSERVATION + i] = OBSERVED[i].measurement;
            i += 1;
        }
        all
    };

    pub(crate) fn new(beside: Beside, seen: &Observations) -> Self {
        Self {
            pump_down: beside.pump_down.map(|(seen, conditions)| {
                LOSSES.map(|loss| pump_down::ln_likelihood(&seen, &conditions, loss))
            }),
            standing: beside.standing,
            recovered: beside.recovered,
            space: beside.space,
            observations: *seen,
            call: beside.call,
        }
    }

    /// Which kinds were given.
    pub(crate) fn given(&self) -> [bool; Self::COUNT] {
        let mut given = [false; Self::COUNT];
        given[PUMP_DOWN] = self.pump_down.is_some();
        given[STANDING] = self.standing.is_some();
        given[RECOVERED] = self.recovered.is_some();
        given[SPACE] = self.space.is_some();
        for (given, observed) in given.iter_mut().skip(FIRST_OBSERVATION).zip(&OBSERVED) {
            *given = observed.seen(&self.observations).is_some();
        }
        given
    }

    /// The weight of a hypothesis before anything was read, as a natural logarithm.
    pub(crate) fn ln_call(&self, hypothesis: &Hypothesis) -> f32 {
        self.call.ln(hypothesis)
    }

    /// The log-likelihood of each kind under a hypothesis; zero where it was not given.
    pub(crate) fn ln_each(&self, hypothesis: &Hypothesis) -> [f32; Self::COUNT] {
        let mut ln = [0.0; Self::COUNT];
        let each = self.ln_measured(hypothesis).into_iter().chain(self.ln_seen(hypothesis));
        for (slot, each) in ln.iter_mut().zip(each) {
            *slot = each;
        }
        ln
    }

    /// What hangs on how severe the causes are, in sum.
    pub(crate) fn ln_of_severity(&self, hypothesis: &Hypothesis) -> f32 {
        self.ln_measured(hypothesis).iter().sum()
    }
    /// What hangs on the causes and their presence alone, in sum, with what the call says.
    pub(crate) fn ln_of_causes(&self, hypothesis: &Hypothesis) -> f32 {
        self.ln_call(hypothesis) + self.ln_seen(hypothesis).iter().sum::<f32>()
    }

    fn ln_measured(&self, hypothesis: &Hypothesis) -> [f32; FIRST_OBSERVATION] {
        let mut ln = [0.0; FIRST_OBSERVATION];
        if let Some(table) = &self.pump_down {
            ln[PUMP_DOWN] = interpolate(table, hypothesis.severity(Cause::WeakCompressor));
        }
        if let Some((standing, circuit)) = &self.standing {
            let excess = hypothesis.severity(Cause::NonCondensables);
            ln[STANDING] = standing::ln_likelihood(standing, *circuit, charge_left(hypothesis), excess);
        }
        if let Some(recovered) = self.recovered {
            let should = libm::logf(charge_left(hypothesis));
            let fits = density(recovered, should, recovered_spread(hypothesis));
            ln[RECOVERED] = libm::logf((1.0 - RECOVERED_SPOILT) * fits + RECOVERED_SPOILT / RECOVERED_WIDTH);
        }
        if let Some(space) = &self.space {
            ln[SPACE] = space.ln(hypothesis);
        }
        ln
    }

    fn ln_seen(&self, hypothesis: &Hypothesis) -> [f32; OBSERVATIONS] {
        let mut ln = [0.0; OBSERVATIONS];
        for (slot, observed) in ln.iter_mut().zip(&OBSERVED) {
            if let Some(outcome) = observed.seen(&self.observations) {
                let chance = observed.chances(hypothesis).get(outcome).copied().unwrap_or(1.0);
                *slot = libm::logf(chance.max(1.0e-3));
            }
        }
        ln
    }
}

/// The charge over what it should be, under a hypothesis.
pub(crate) fn charge_left(hypothesis: &Hypothesis) -> f32 {
    let lost = hypothesis.severity(Cause::Undercharge) - hypothesis.severity(Cause::Overcharge);
    (1.0 - lost).max(0.01)
}

/// How probable each outcome of an observation not yet made is under a hypothesis.
pub(crate) fn outcomes(kind: usize, hypothesis: &Hypothesis) -> Option<[f32; OUTCOMES]> {
    kind.checked_sub(FIRST_OBSERVATION).and_then(|n| OBSERVED.get(n)).map(|o| o.chances(hypothesis))
}

/// The names of the outcomes of a kind of evidence.
pub(crate) fn outcome_names(kind: usize) -> [&'static str; OUTCOMES] {
    if kind == STANDING {
        return ["below saturation", "above saturation", "at saturation"];
    }
    let observed = kind.checked_sub(FIRST_OBSERVATION).and_then(|n| OBSERVED.get(n));
    observed.map_or([LOWER, HIGHER, EXPECTED], |o| o.outcomes)
}

/// The names of what a number can turn out to be.
pub(crate) const LOWER: &str = "lower than expected";
pub(crate) const HIGHER: &str = "higher than expected";
pub(crate) const EXPECTED: &str = "as expected";

fn interpolate(table: &[f32; LOSSES.len()], loss: f32) -> f32 {
    let mut before = (LOSSES[0], table[0]);
    for (at, ln) in LOSSES.iter().zip(table) {
        if loss <= *at {
            let span = (at - before.0).max(1.0e-6);
            return before.1 + (ln - before.1) * ((loss - before.0) / span).max(0.0);
        }
        before = (*at, *ln);
    }
    before.1
}
