//! Evidence that stands beside the channels: the pump-down, the standing pressure, what was recovered, a space that stays
//! warm, and what was seen and heard.

use super::call::Weighed;
use super::hypothesis::Hypothesis;
use super::warm_space::WarmSpace;
use crate::cause::Cause;
use crate::charge::standing::{self, Circuit, Standing};
use crate::compressor::pump_down::{self, Conditions, PumpDown};
use crate::measurement::Measurement;
use crate::normal::density;
use crate::readings::{CondenserFace, Fan, FrostLine, Observations, SightGlass, StartNoise};

/// Flow losses at which the pump-down's likelihood is computed; between them it is interpolated.
const LOSSES: [f32; 8] = [0.0, 0.1, 0.2, 0.3, 0.4, 0.55, 0.7, 0.95];

/// The kinds of evidence, in the order of [`Factors::ln_each`]; what is seen and heard follows.
const PUMP_DOWN: usize = 0;
const STANDING: usize = 1;
const RECOVERED: usize = 2;
const SPACE: usize = 3;
const LOOKS: usize = 4;

/// What is not read but weighed with the readings.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Factors {
    pump_down: Option<[f32; LOSSES.len()]>,
    standing: Option<(Standing, Circuit)>,
    /// ln of the recovered mass over the plate's charge.
    recovered: Option<f32>,
    space: Option<WarmSpace>,
    /// The outcome of each look of [`LOOK`].
    looks: [Option<u8>; LOOK.len()],
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

/// One thing to look at: how often each of its first two outcomes is seen with each cause, in the order of [`Cause`]; the
/// third is what is left.
struct Look {
    at: Measurement,
    seen: [[f32; Cause::COUNT]; 2],
    /// Whether there is a third outcome.
    third: bool,
}

impl Look {
    /// How often an outcome is seen under a hypothesis.
    fn chance(&self, hypothesis: &Hypothesis, outcome: usize) -> f32 {
        let [first, second] = &self.seen;
        match outcome {
            0 => hypothesis.most(first),
            1 if !self.third => 1.0 - hypothesis.most(first),
            1 => hypothesis.most(second),
            _ => (1.0 - hypothesis.most(first) - hypothesis.most(second)).max(LEAST_SEEN),
        }
    }
}

/// A third outcome is never rarer.
const LEAST_SEEN: f32 = 0.02;
const NEVER: [f32; Cause::COUNT] = [0.0; Cause::COUNT];

/// All looks. How often each is seen or heard with each cause: judged from common practice, no published statistics are
/// known. A number near its neighbours says little, as it should.
///
/// A shortage that costs 5 % has let vapour into the liquid line; a restriction shows in the glass only where that stands
/// behind it and the liquid flashes (common practice has it either way).
const LOOK: [Look; 10] = [
    // Fades, stays, none.
    Look {
        at: Measurement::StartNoise,
        seen: [
            [0.12, 0.10, 0.30, 0.08, 0.08, 0.45, 0.12, 0.10, 0.20, 0.10],
            [0.06, 0.08, 0.12, 0.08, 0.08, 0.20, 0.30, 0.15, 0.10, 0.18],
        ],
        third: true,
    },
    Look {
        at: Measurement::FrostOnCompressor,
        seen: [[0.06, 0.03, 0.20, 0.03, 0.03, 0.60, 0.06, 0.08, 0.30, 0.06], NEVER],
        third: false,
    },
    // Bubbles, clear.
    Look {
        at: Measurement::SightGlass,
        seen: [[0.08, 0.85, 0.05, 0.45, 0.07, 0.25, 0.08, 0.07, 0.08, 0.10], NEVER],
        third: false,
    },
    Look {
        at: Measurement::CoilIced,
        seen: [[0.07, 0.20, 0.08, 0.20, 0.20, 0.12, 0.06, 0.07, 0.50, 0.07], NEVER],
        third: false,
    },
    // Stands, is slow, turns.
    Look {
        at: Measurement::CondenserFan,
        seen: [
            [0.005, 0.005, 0.005, 0.005, 0.005, 0.005, 0.005, 0.30, 0.005, 0.005],
            [0.02, 0.02, 0.02, 0.02, 0.02, 0.02, 0.02, 0.20, 0.02, 0.02],
        ],
        third: true,
    },
    Look {
        at: Measurement::EvaporatorFan,
        seen: [
            [0.005, 0.005, 0.005, 0.005, 0.005, 0.005, 0.005, 0.005, 0.30, 0.005],
            [0.02, 0.02, 0.02, 0.02, 0.02, 0.02, 0.02, 0.02, 0.15, 0.02],
        ],
        third: true,
    },
    // Blocked, dirty, clean.
    Look {
        at: Measurement::CondenserFace,
        seen: [
            [0.01, 0.01, 0.01, 0.01, 0.01, 0.01, 0.01, 0.30, 0.01, 0.01],
            [0.30, 0.30, 0.30, 0.30, 0.30, 0.30, 0.30, 0.45, 0.30, 0.30],
        ],
        third: true,
    },
    // On part of the coil, nowhere, on all of it.
    Look {
        at: Measurement::FrostLine,
        seen: [
            [0.12, 0.60, 0.05, 0.55, 0.55, 0.04, 0.25, 0.20, 0.10, 0.15],
            [0.15, 0.25, 0.12, 0.25, 0.25, 0.08, 0.45, 0.20, 0.08, 0.18],
        ],
        third: true,
    },
    Look {
        at: Measurement::OilTraces,
        seen: [[0.05, 0.40, 0.05, 0.06, 0.06, 0.05, 0.06, 0.05, 0.05, 0.08], NEVER],
        third: false,
    },
    Look {
        at: Measurement::LeakFound,
        seen: [[0.02, 0.60, 0.03, 0.03, 0.03, 0.03, 0.03, 0.03, 0.03, 0.10], NEVER],
        third: false,
    },
];

/// The outcome that was seen at each look; nothing where nobody looked.
fn outcome(look: Measurement, seen: &Observations) -> Option<u8> {
    let yes = |seen: bool| u8::from(!seen);
    let fan = |fan: Fan| match fan {
        Fan::Stands => 0,
        Fan::Slow => 1,
        Fan::Turns => 2,
    };
    match look {
        Measurement::StartNoise => seen.start_noise.map(|noise| match noise {
            StartNoise::Fades => 0,
            StartNoise::Stays => 1,
            StartNoise::None => 2,
        }),
        Measurement::FrostOnCompressor => seen.frost_on_compressor.map(yes),
        Measurement::SightGlass => match seen.sight_glass {
            Some(SightGlass::Bubbles) => Some(0),
            Some(SightGlass::Clear) => Some(1),
            Some(SightGlass::NoneFitted) | None => None,
        },
        Measurement::CoilIced => seen.coil_iced.map(yes),
        Measurement::CondenserFan => seen.condenser_fan.map(fan),
        Measurement::EvaporatorFan => seen.evaporator_fan.map(fan),
        Measurement::CondenserFace => seen.condenser_face.map(|face| match face {
            CondenserFace::Blocked => 0,
            CondenserFace::Dirty => 1,
            CondenserFace::Clean => 2,
        }),
        Measurement::FrostLine => seen.frost_line.map(|line| match line {
            FrostLine::PartOfCoil => 0,
            FrostLine::None => 1,
            FrostLine::WholeCoil => 2,
        }),
        Measurement::OilTraces => seen.oil_traces.map(yes),
        Measurement::LeakFound => seen.leak_found.map(yes),
        _ => None,
    }
}

/// Standard deviation of the logarithm of a recovered mass: what stays in the oil and in the hoses (judged).
const RECOVERED_SPREAD: f32 = 0.08;
/// Probability that a recovered mass says nothing: not all came out, the plate is another machine's (judged), over this
/// width of its logarithm.
const RECOVERED_SPOILT: f32 = 0.08;
const RECOVERED_WIDTH: f32 = 3.0;

impl Factors {
    /// The number of kinds.
    pub(crate) const COUNT: usize = LOOKS + LOOK.len();
    /// Their names.
    pub(crate) const MEASUREMENT: [Measurement; Self::COUNT] = {
        let mut all = [Measurement::PumpDown; Self::COUNT];
        all[STANDING] = Measurement::StandingPressure;
        all[RECOVERED] = Measurement::Recovered;
        all[SPACE] = Measurement::Space;
        let mut i = 0;
        while i < LOOK.len() {
            all[LOOKS + i] = LOOK[i].at;
            i += 1;
        }
        all
    };

    pub(crate) fn new(beside: Beside, seen: &Observations) -> Self {
        let mut looks = [None; LOOK.len()];
        for (slot, look) in looks.iter_mut().zip(&LOOK) {
            *slot = outcome(look.at, seen);
        }
        Self {
            pump_down: beside.pump_down.map(|(seen, conditions)| {
                LOSSES.map(|loss| pump_down::ln_likelihood(&seen, &conditions, loss))
            }),
            standing: beside.standing,
            recovered: beside.recovered,
            space: beside.space,
            looks,
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
        for (given, look) in given.iter_mut().skip(LOOKS).zip(&self.looks) {
            *given = look.is_some();
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
        if let Some(table) = &self.pump_down {
            ln[PUMP_DOWN] = interpolate(table, hypothesis.severity(Cause::WeakCompressor));
        }
        if let Some((standing, circuit)) = &self.standing {
            let excess = hypothesis.severity(Cause::NonCondensables);
            ln[STANDING] = standing::ln_likelihood(standing, *circuit, charge_left(hypothesis), excess);
        }
        if let Some(recovered) = self.recovered {
            let should = libm::logf(charge_left(hypothesis));
            let fits = density(recovered, should, RECOVERED_SPREAD);
            ln[RECOVERED] = libm::logf((1.0 - RECOVERED_SPOILT) * fits + RECOVERED_SPOILT / RECOVERED_WIDTH);
        }
        if let Some(space) = &self.space {
            ln[SPACE] = space.ln(hypothesis);
        }
        for ((slot, look), outcome) in ln.iter_mut().skip(LOOKS).zip(&LOOK).zip(self.looks) {
            if let Some(outcome) = outcome {
                *slot = libm::logf(look.chance(hypothesis, usize::from(outcome)));
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

/// How probable each outcome of a look not yet taken is under a hypothesis, for what to look at next.
pub(crate) fn outcomes(kind: usize, hypothesis: &Hypothesis) -> Option<[f32; 3]> {
    let look = LOOK.get(kind.checked_sub(LOOKS)?)?;
    let third = if look.third { look.chance(hypothesis, 2) } else { 0.0 };
    Some([look.chance(hypothesis, 0), look.chance(hypothesis, 1), third])
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
