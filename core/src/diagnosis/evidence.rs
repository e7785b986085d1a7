//! Evidence that stands beside the channels: the pump-down, the standing pressure, what came out into the recovery
//! cylinder, and what was seen and heard.

use super::hypothesis::Hypothesis;
use super::observed::{OBSERVATIONS, OBSERVED, OUTCOMES};
use crate::cause::Cause;
use crate::charge::standing::{self, Standing};
use crate::compressor::pump_down::{self, Conditions, PumpDown};
use crate::measurement::Measurement;
use crate::readings::Observations;

/// Flow losses at which the pump-down's likelihood is computed; between them it is interpolated.
const LOSSES: [f32; 7] = [0.0, 0.1, 0.2, 0.3, 0.4, 0.55, 0.7];

/// The kinds of evidence, in the order of [`Factors::ln_each`]; the observations follow in the order of [`OBSERVED`].
pub(crate) const PUMP_DOWN: usize = 0;
pub(crate) const STANDING: usize = 1;
pub(crate) const RECOVERED: usize = 2;
pub(crate) const FIRST_OBSERVATION: usize = 3;

/// Log-likelihoods of everything beside the channels.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Factors {
    pump_down: Option<[f32; LOSSES.len()]>,
    standing: Option<[f32; Cause::COUNT]>,
    /// What came out over the nameplate charge.
    recovered: Option<f32>,
    observations: Observations,
    /// What complaint and history say.
    called: Option<[f32; Cause::COUNT]>,
}

/// Standard deviation of what comes out over the nameplate charge: scale, oil, and what the last pull leaves (judged).
pub(crate) const RECOVERED_U: f32 = 0.05;
/// Probability that the weighing says nothing of the kind: a hose not emptied, a wrong plate (judged).
const SPOILT: f32 = 0.04;
/// Share of the charge over which such a weighing may lie.
const SPOILT_WIDTH: f32 = 1.5;

/// What should come out of a machine over its nameplate charge.
pub(crate) fn holds(hypothesis: &Hypothesis) -> f32 {
    let of = |(cause, severity): (&Option<Cause>, f32)| match cause {
        Some(Cause::Undercharge) => -severity,
        Some(Cause::Overcharge) => severity,
        _ => 0.0,
    };
    1.0 + hypothesis.causes.iter().zip(hypothesis.severities).map(of).sum::<f32>()
}

/// Standard deviation of what comes out of a machine over its nameplate charge: a hypothesis stands for severities about
/// its own, some fifth of it either way.
pub(crate) fn holds_u(hypothesis: &Hypothesis) -> f32 {
    let about = 0.2 * (1.0 - holds(hypothesis));
    libm::sqrtf(RECOVERED_U * RECOVERED_U + about * about)
}

impl Factors {
    /// The number of kinds.
    pub(crate) const COUNT: usize = FIRST_OBSERVATION + OBSERVATIONS;
    /// Their names.
    pub(crate) const MEASUREMENT: [Measurement; Self::COUNT] = {
        let mut names = [Measurement::PumpDown; Self::COUNT];
        names[STANDING] = Measurement::StandingPressure;
        names[RECOVERED] = Measurement::Recovered;
        let mut n = 0;
        while n < OBSERVATIONS {
            names[FIRST_OBSERVATION + n] = OBSERVED[n].measurement;
            n += 1;
        }
        names
    };

    pub(crate) fn new(
        pump_down: Option<(PumpDown, Conditions)>,
        standing: Option<Standing>,
        recovered: Option<f32>,
        observations: Observations,
        called: Option<[f32; Cause::COUNT]>,
    ) -> Self {
        Self {
            pump_down: pump_down.map(|(seen, conditions)| {
                LOSSES.map(|loss| pump_down::ln_likelihood(&seen, &conditions, loss))
            }),
            standing: standing.map(|standing| standing::evidence(&standing)),
            recovered,
            observations,
            called,
        }
    }

    /// Which kinds were given.
    pub(crate) fn given(&self) -> [bool; Self::COUNT] {
        let mut given = [false; Self::COUNT];
        given[PUMP_DOWN] = self.pump_down.is_some();
        given[STANDING] = self.standing.is_some();
        given[RECOVERED] = self.recovered.is_some();
        for (slot, observed) in given.iter_mut().skip(FIRST_OBSERVATION).zip(&OBSERVED) {
            *slot = observed.seen(&self.observations).is_some();
        }
        given
    }

    /// The log-likelihood of each kind under a hypothesis; zero where it was not given. What complaint and history say
    /// stands last: they are no reading.
    pub(crate) fn ln_each(&self, hypothesis: &Hypothesis) -> [f32; Self::COUNT + 1] {
        let mut ln = [0.0; Self::COUNT + 1];
        if let Some(table) = &self.pump_down {
            ln[PUMP_DOWN] = interpolate(table, hypothesis.loss());
        }
        if let Some(table) = &self.standing {
            // Whichever of two causes explains it better.
            ln[STANDING] = hypothesis
                .each_cause()
                .map(|cause| table.get(cause.index()).copied().unwrap_or(0.0))
                .fold(-1.0e30, f32::max);
        }
        if let Some(recovered) = self.recovered {
            let density = crate::normal::density(recovered, holds(hypothesis), holds_u(hypothesis));
            ln[RECOVERED] = libm::logf((1.0 - SPOILT) * density + SPOILT / SPOILT_WIDTH);
        }
        for (slot, observed) in ln.iter_mut().skip(FIRST_OBSERVATION).zip(&OBSERVED) {
            if let Some(outcome) = observed.seen(&self.observations) {
                let chance = observed.chances(hypothesis).get(outcome).copied().unwrap_or(1.0);
                *slot = libm::logf(chance.max(1.0e-3));
            }
        }
        if let Some(table) = &self.called {
            let of = |cause: Cause| table.get(cause.index()).copied().unwrap_or(0.0);
            ln[Self::COUNT] = hypothesis.each_cause().map(of).sum();
        }
        ln
    }
}

/// How probable each outcome of a kind of evidence not yet there is under a hypothesis, with the outcomes' names.
pub(crate) fn outcomes(kind: usize, hypothesis: &Hypothesis) -> Option<[f32; OUTCOMES]> {
    if kind == STANDING {
        return Some(stands(hypothesis));
    }
    kind.checked_sub(FIRST_OBSERVATION).and_then(|n| OBSERVED.get(n)).map(|o| o.chances(hypothesis))
}

/// The names of the outcomes of a kind of evidence.
pub(crate) fn outcome_names(kind: usize) -> [&'static str; OUTCOMES] {
    if kind == STANDING {
        return ["above saturation", "below saturation", "at saturation"];
    }
    let observed = kind.checked_sub(FIRST_OBSERVATION).and_then(|n| OBSERVED.get(n));
    observed.map_or([LOWER, HIGHER, EXPECTED], |o| o.outcomes)
}

/// The names of what a number can turn out to be.
pub(crate) const LOWER: &str = "lower than expected";
pub(crate) const HIGHER: &str = "higher than expected";
pub(crate) const EXPECTED: &str = "as expected";

/// How a stopped, equalised machine stands to its saturation pressure: above, below, at it (judged, as the test itself
/// weighs them).
fn stands(hypothesis: &Hypothesis) -> [f32; OUTCOMES] {
    let has = |cause| hypothesis.each_cause().any(|c| c == cause);
    let above = if has(Cause::NonCondensables) { 0.75 } else { 0.03 };
    let below = if has(Cause::Undercharge) { 0.35 } else { 0.04 };
    [above, below, 1.0 - above - below]
}

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
