//! Evidence that stands beside the channels: the pump-down, the standing pressure, and what was seen and heard.

use super::hypothesis::Hypothesis;
use crate::cause::Cause;
use crate::charge::standing::{self, Circuit, Standing};
use crate::compressor::pump_down::{self, Conditions, PumpDown};
use crate::measurement::Measurement;
use crate::readings::{Observations, SightGlass, StartNoise};

/// Flow losses at which the pump-down's likelihood is computed; between them it is interpolated.
const LOSSES: [f32; 8] = [0.0, 0.1, 0.2, 0.3, 0.4, 0.55, 0.7, 0.95];

/// The kinds of evidence, in the order of [`Factors::ln_each`].
const PUMP_DOWN: usize = 0;
const STANDING: usize = 1;
const START_NOISE: usize = 2;
const FROST: usize = 3;
const GLASS: usize = 4;
const ICED: usize = 5;

/// Log-likelihoods of everything beside the channels.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Factors {
    pump_down: Option<[f32; LOSSES.len()]>,
    standing: Option<(Standing, Circuit)>,
    observations: Observations,
}

/// How often each is seen or heard with each cause, in the order of [`Cause`]: judged from common practice, no
/// published statistics are known. A number near its neighbours says little, as it should.
const FROST_SEEN: [f32; Cause::COUNT] = [0.06, 0.03, 0.20, 0.03, 0.03, 0.60, 0.06, 0.08, 0.30, 0.06];
/// A shortage that costs 5 % has let vapour into the liquid line; a restriction shows in the glass only where that stands
/// behind it and the liquid flashes (common practice has it either way).
const BUBBLES_SEEN: [f32; Cause::COUNT] = [0.08, 0.85, 0.05, 0.45, 0.07, 0.25, 0.08, 0.07, 0.08, 0.10];
const ICE_SEEN: [f32; Cause::COUNT] = [0.07, 0.20, 0.08, 0.20, 0.20, 0.12, 0.06, 0.07, 0.50, 0.07];
const NOISE_FADES: [f32; Cause::COUNT] = [0.12, 0.10, 0.30, 0.08, 0.08, 0.45, 0.12, 0.10, 0.20, 0.10];
const NOISE_STAYS: [f32; Cause::COUNT] = [0.06, 0.08, 0.12, 0.08, 0.08, 0.20, 0.30, 0.15, 0.10, 0.18];

impl Factors {
    /// The number of kinds.
    pub(crate) const COUNT: usize = 6;
    /// Their names.
    pub(crate) const MEASUREMENT: [Measurement; Self::COUNT] = [
        Measurement::PumpDown,
        Measurement::StandingPressure,
        Measurement::StartNoise,
        Measurement::FrostOnCompressor,
        Measurement::SightGlass,
        Measurement::CoilIced,
    ];

    pub(crate) fn new(
        pump_down: Option<(PumpDown, Conditions)>,
        standing: Option<(Standing, Circuit)>,
        observations: Observations,
    ) -> Self {
        Self {
            pump_down: pump_down.map(|(seen, conditions)| {
                LOSSES.map(|loss| pump_down::ln_likelihood(&seen, &conditions, loss))
            }),
            standing,
            observations,
        }
    }

    /// Which kinds were given.
    pub(crate) fn given(&self) -> [bool; Self::COUNT] {
        let seen = &self.observations;
        [
            self.pump_down.is_some(),
            self.standing.is_some(),
            seen.start_noise.is_some(),
            seen.frost_on_compressor.is_some(),
            seen.sight_glass.is_some_and(|g| g != SightGlass::NoneFitted),
            seen.coil_iced.is_some(),
        ]
    }

    /// The log-likelihood of each kind under a hypothesis; zero where it was not given.
    pub(crate) fn ln_each(&self, hypothesis: &Hypothesis) -> [f32; Self::COUNT] {
        let mut ln = [0.0; Self::COUNT];
        if let Some(table) = &self.pump_down {
            ln[PUMP_DOWN] = interpolate(table, hypothesis.severity(Cause::WeakCompressor));
        }
        if let Some((standing, circuit)) = &self.standing {
            let lost = hypothesis.severity(Cause::Undercharge) - hypothesis.severity(Cause::Overcharge);
            let excess = hypothesis.severity(Cause::NonCondensables);
            ln[STANDING] = standing::ln_likelihood(standing, *circuit, 1.0 - lost, excess);
        }
        let seen = &self.observations;
        if let Some(noise) = seen.start_noise {
            let (fades, stays) = (hypothesis.most(&NOISE_FADES), hypothesis.most(&NOISE_STAYS));
            ln[START_NOISE] = libm::logf(match noise {
                StartNoise::Fades => fades,
                StartNoise::Stays => stays,
                StartNoise::None => (1.0 - fades - stays).max(0.1),
            });
        }
        let binary = |seen: Option<bool>, table: &[f32; Cause::COUNT]| match seen {
            Some(true) => libm::logf(hypothesis.most(table)),
            Some(false) => libm::logf(1.0 - hypothesis.most(table)),
            None => 0.0,
        };
        ln[FROST] = binary(seen.frost_on_compressor, &FROST_SEEN);
        ln[GLASS] = binary(
            match seen.sight_glass {
                Some(SightGlass::Bubbles) => Some(true),
                Some(SightGlass::Clear) => Some(false),
                Some(SightGlass::NoneFitted) | None => None,
            },
            &BUBBLES_SEEN,
        );
        ln[ICED] = binary(seen.coil_iced, &ICE_SEEN);
        ln
    }
}

/// How probable each outcome of an observation not yet made is under a hypothesis, for what to look at next.
pub(crate) fn outcomes(kind: usize, hypothesis: &Hypothesis) -> Option<[f32; 3]> {
    let binary = |table: &[f32; Cause::COUNT]| {
        let p = hypothesis.most(table);
        [p, 1.0 - p, 0.0]
    };
    match kind {
        START_NOISE => {
            let (fades, stays) = (hypothesis.most(&NOISE_FADES), hypothesis.most(&NOISE_STAYS));
            Some([fades, stays, (1.0 - fades - stays).max(0.1)])
        }
        FROST => Some(binary(&FROST_SEEN)),
        GLASS => Some(binary(&BUBBLES_SEEN)),
        ICED => Some(binary(&ICE_SEEN)),
        _ => None,
    }
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
