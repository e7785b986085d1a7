//! What is seen and heard under each cause: one labelled table an observation, for the diagnosis and for the plan.
//!
//! All chances are judged from common practice; no published statistics of what technicians see are known. A number near
//! its neighbours says little, as it should.

use super::hypothesis::Hypothesis;
use crate::cause::Cause;
use crate::measurement::Measurement;
use crate::readings::{CondenserFace, Fan, FrostLine, Observations, SightGlass, StartNoise};

/// How often one outcome is seen under each cause.
struct Chances {
    none: f32,
    undercharge: f32,
    overcharge: f32,
    restriction: f32,
    underfeed: f32,
    flood_back: f32,
    weak: f32,
    condenser: f32,
    evaporator: f32,
    gas: f32,
}

impl Chances {
    /// The same chance under every cause, to name the exceptions of.
    const fn all(chance: f32) -> Self {
        Self {
            none: chance,
            undercharge: chance,
            overcharge: chance,
            restriction: chance,
            underfeed: chance,
            flood_back: chance,
            weak: chance,
            condenser: chance,
            evaporator: chance,
            gas: chance,
        }
    }
    /// In the order of [`Cause`].
    const fn table(self) -> [f32; Cause::COUNT] {
        [
            self.none,
            self.undercharge,
            self.overcharge,
            self.restriction,
            self.underfeed,
            self.flood_back,
            self.weak,
            self.condenser,
            self.evaporator,
            self.gas,
        ]
    }
}

/// One observation: up to two outcomes that speak, and the rest.
pub(crate) struct Observation {
    pub(crate) measurement: Measurement,
    /// The names of the outcomes; the last is the rest.
    pub(crate) outcomes: [&'static str; OUTCOMES],
    first: [f32; Cause::COUNT],
    second: [f32; Cause::COUNT],
    /// The number of the outcome that was seen; nothing where it was not looked at.
    seen: fn(&Observations) -> Option<usize>,
}

/// Outcomes of an observation.
pub(crate) const OUTCOMES: usize = 3;
/// The least chance of the rest.
const REST_AT_LEAST: f32 = 0.05;
/// No second outcome.
const NO: [f32; Cause::COUNT] = Chances::all(0.0).table();

impl Observation {
    /// How probable each outcome is under a hypothesis.
    pub(crate) fn chances(&self, hypothesis: &Hypothesis) -> [f32; OUTCOMES] {
        let (first, second) = (hypothesis.most(&self.first), hypothesis.most(&self.second));
        [first, second, (1.0 - first - second).max(REST_AT_LEAST)]
    }
    /// The number of the outcome that was seen.
    pub(crate) fn seen(&self, observations: &Observations) -> Option<usize> {
        (self.seen)(observations)
    }
}

/// Yes or no as the first outcome or the rest.
fn yes_or_no(seen: Option<bool>) -> Option<usize> {
    seen.map(|yes| if yes { 0 } else { REST })
}
/// The number of the rest.
const REST: usize = OUTCOMES - 1;

fn fan(seen: Option<Fan>) -> Option<usize> {
    seen.map(|fan| match fan {
        Fan::Stands => 0,
        Fan::Slow => 1,
        Fan::Turns => REST,
    })
}

/// Number of observations.
pub(crate) const OBSERVATIONS: usize = 12;

/// Every observation that speaks of the causes.
pub(crate) const OBSERVED: [Observation; OBSERVATIONS] = [
    Observation {
        measurement: Measurement::StartNoise,
        outcomes: ["fades", "stays", "none"],
        // Liquid on the start knocks until it is boiled off; a worn compressor goes on.
        first: Chances {
            undercharge: 0.10,
            overcharge: 0.30,
            restriction: 0.08,
            underfeed: 0.08,
            flood_back: 0.45,
            condenser: 0.10,
            evaporator: 0.20,
            gas: 0.10,
            ..Chances::all(0.12)
        }
        .table(),
        second: Chances {
            none: 0.06,
            overcharge: 0.12,
            flood_back: 0.20,
            weak: 0.30,
            condenser: 0.15,
            evaporator: 0.10,
            gas: 0.18,
            ..Chances::all(0.08)
        }
        .table(),
        seen: |seen| {
            seen.start_noise.map(|noise| match noise {
                StartNoise::Fades => 0,
                StartNoise::Stays => 1,
                StartNoise::None => REST,
            })
        },
    },
    Observation {
        measurement: Measurement::FrostOnCompressor,
        outcomes: ["frost", "", "no frost"],
        first: Chances {
            undercharge: 0.03,
            overcharge: 0.20,
            restriction: 0.03,
            underfeed: 0.03,
            flood_back: 0.60,
            condenser: 0.08,
            evaporator: 0.30,
            ..Chances::all(0.06)
        }
        .table(),
        second: NO,
        seen: |seen| yes_or_no(seen.frost_on_compressor),
    },
    Observation {
        measurement: Measurement::SightGlass,
        outcomes: ["bubbles", "", "clear"],
        // A shortage that costs 5 % has let vapour into the liquid line; a restriction shows in the glass only where that
        // stands behind it and the liquid flashes (common practice has it either way).
        first: Chances {
            undercharge: 0.85,
            overcharge: 0.05,
            restriction: 0.45,
            underfeed: 0.07,
            flood_back: 0.25,
            condenser: 0.07,
            gas: 0.10,
            ..Chances::all(0.08)
        }
        .table(),
        second: NO,
        seen: |seen| match seen.sight_glass {
            Some(SightGlass::Bubbles) => Some(0),
            Some(SightGlass::Clear) => Some(REST),
            Some(SightGlass::NoneFitted) | None => None,
        },
    },
    Observation {
        measurement: Measurement::CoilIced,
        outcomes: ["iced", "", "free"],
        first: Chances {
            undercharge: 0.20,
            overcharge: 0.08,
            restriction: 0.20,
            underfeed: 0.20,
            flood_back: 0.12,
            weak: 0.06,
            evaporator: 0.50,
            ..Chances::all(0.07)
        }
        .table(),
        second: NO,
        seen: |seen| yes_or_no(seen.coil_iced),
    },
    Observation {
        measurement: Measurement::CondenserFan,
        outcomes: ["stands", "slow", "turns"],
        first: Chances { condenser: 0.22, ..Chances::all(0.01) }.table(),
        second: Chances { condenser: 0.13, ..Chances::all(0.03) }.table(),
        seen: |seen| fan(seen.condenser_fan),
    },
    Observation {
        measurement: Measurement::EvaporatorFan,
        outcomes: ["stands", "slow", "turns"],
        first: Chances { evaporator: 0.22, ..Chances::all(0.01) }.table(),
        second: Chances { evaporator: 0.15, ..Chances::all(0.03) }.table(),
        seen: |seen| fan(seen.evaporator_fan),
    },
    Observation {
        measurement: Measurement::CondenserFace,
        outcomes: ["blocked", "dirty", "clean"],
        // Some dirt is on many condensers, whatever is wrong with the machine.
        first: Chances { condenser: 0.40, ..Chances::all(0.03) }.table(),
        second: Chances { condenser: 0.32, ..Chances::all(0.20) }.table(),
        seen: |seen| {
            seen.condenser_face.map(|face| match face {
                CondenserFace::Blocked => 0,
                CondenserFace::Dirty => 1,
                CondenserFace::Clean => REST,
            })
        },
    },
    Observation {
        measurement: Measurement::FrostLine,
        outcomes: ["part of the coil", "none", "whole coil"],
        // A coil that is not fed to its end frosts only where it is; one that hardly boils shows nothing.
        first: Chances {
            none: 0.10,
            undercharge: 0.62,
            restriction: 0.60,
            underfeed: 0.60,
            ..Chances::all(0.12)
        }
        .table(),
        second: Chances {
            none: 0.04,
            undercharge: 0.12,
            restriction: 0.14,
            underfeed: 0.10,
            weak: 0.22,
            ..Chances::all(0.06)
        }
        .table(),
        seen: |seen| {
            seen.frost_line.map(|frost| match frost {
                FrostLine::PartOfCoil => 0,
                FrostLine::None => 1,
                FrostLine::WholeCoil => REST,
            })
        },
    },
    Observation {
        measurement: Measurement::OilTraces,
        outcomes: ["oil", "", "dry"],
        // Oil comes out with the refrigerant where a joint leaks.
        first: Chances { undercharge: 0.45, gas: 0.08, ..Chances::all(0.05) }.table(),
        second: NO,
        seen: |seen| yes_or_no(seen.oil_traces),
    },
    Observation {
        measurement: Measurement::LeakFound,
        outcomes: ["found", "", "none found"],
        first: Chances { undercharge: 0.65, gas: 0.06, ..Chances::all(0.03) }.table(),
        second: NO,
        seen: |seen| yes_or_no(seen.leak_found),
    },
    Observation {
        measurement: Measurement::CallsForCooling,
        outcomes: ["does not call", "", "calls"],
        // A machine with a fault runs because its control calls.
        first: Chances { none: 0.10, ..Chances::all(0.02) }.table(),
        second: NO,
        seen: |seen| yes_or_no(seen.calls_for_cooling.map(|calls| !calls)),
    },
    Observation {
        measurement: Measurement::DoorCloses,
        outcomes: ["does not close", "", "closes"],
        // Warm, moist air that comes in by the door makes a sound machine look weak, and ices its coil.
        first: Chances { none: 0.12, evaporator: 0.10, ..Chances::all(0.05) }.table(),
        second: NO,
        seen: |seen| yes_or_no(seen.door_closes.map(|closes| !closes)),
    },
];
