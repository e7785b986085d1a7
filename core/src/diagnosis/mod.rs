//! From readings to the probability of each cause.
//!
//! `symptom` turns readings into channels, `signature` says how each cause moves them, `posterior` weighs every
//! cause and pair of causes, `evidence` adds what is no channel, `next_measurement` and `rule_out` say what is left
//! to do, and `decided` holds the rule for acting.

pub mod cause;
mod decided;
mod evidence;
mod gauge;
mod next_measurement;
mod posterior;
mod rule_out;
mod signature;
pub(crate) mod student;
pub(crate) mod symptom;

pub use decided::{CLEAR_AT, DECIDE_AT, FITS_AT_LEAST};

use crate::charge::standing::Standing;
use crate::compressor::pump_down::{Conditions, PumpDown};
use crate::estimate::Estimate;
use crate::expectation::Expectation;
use crate::machine::{Fluid, Nominal};
use crate::measurement::Measurement;
use crate::readings::{Readings, Visit};
use crate::refrigerant::Refrigerant;
use crate::report::{CauseAndMeasurements, CauseProbability, Evidence, Expected, NextMeasurement};
use crate::report::{Warning, WarningKind};
use cause::Cause;
use evidence::Factors;
use heapless::Vec;
use next_measurement::{CANDIDATES, information, measurement};
use posterior::{Judge, Posterior};
use signature::Ladder;
#[cfg(test)]
pub(crate) use signature::ladder;
use symptom::{CHANNELS, Measured, READING};

/// The diagnosis part of a report.
pub(crate) struct Diagnosis {
    pub(crate) expected: Expected,
    pub(crate) causes: [CauseProbability; Cause::COUNT],
    pub(crate) decided: bool,
    pub(crate) leading: Cause,
    pub(crate) fits: Option<f32>,
    pub(crate) evidence: Vec<Evidence, 48>,
    pub(crate) next: Vec<NextMeasurement, 8>,
    pub(crate) ruled_out: Vec<CauseAndMeasurements, 10>,
    pub(crate) still_open: Vec<CauseAndMeasurements, 10>,
}

/// Today's visit beside the nominal machine.
pub(crate) struct Today<'a> {
    fluid: Fluid<'a>,
    nominal: Nominal,
    visit: &'a Visit<'a>,
    /// The readings that count: those of a running machine.
    readings: Readings,
}

impl Today<'_> {
    /// Reads the channels of some readings with today's conditions and instruments.
    fn measured(&self, readings: &Readings) -> Measured {
        Measured::new(self.fluid, &self.nominal, &self.visit.system, readings, &self.visit.uncertainty)
    }
}

/// Bits below which a measurement is not worth naming.
const WORTH_NAMING_BITS: f32 = 0.02;
/// Nats below which a reading's word is not worth naming.
const WORTH_NAMING_NATS: f32 = 0.15;
/// Probability from which a reading is said to contradict the others.
const CONTRADICTS: f32 = 0.5;

/// Weighs a visit; `None` where the refrigerant's table or the model has no place for this machine.
pub(crate) fn weigh(
    refrigerant: &Refrigerant<'_>,
    visit: &Visit<'_>,
    warnings: &mut Vec<Warning, 16>,
) -> Option<Diagnosis> {
    let fluid = Fluid(refrigerant);
    let system = &visit.system;
    // A stopped machine shows nothing of its cycle; the standing pressure and what was seen remain.
    let running = visit.readings.running != Some(false);
    let readings = if running { visit.readings } else { stopped(&visit.readings) };
    let nominal = Nominal::new(fluid, system, &readings, &visit.uncertainty)?;
    let mut healthy = Expectation::new(fluid, &nominal)?;
    if !visit.record.is_empty() && !healthy.learn(fluid, system, visit.record, &visit.uncertainty, &nominal) {
        let _ =
            warnings.push(Warning { section: "system", field: "record", kind: WarningKind::RecordUnused });
    }
    let today = Today { fluid, nominal, visit, readings };
    let measured = today.measured(&readings);
    let mut ladders: [Ladder; Cause::COUNT - 1] = core::array::from_fn(|_| Ladder::new());
    for (ladder, cause) in ladders.iter_mut().zip(Cause::ALL.iter().skip(1)) {
        *ladder = signature::ladder(fluid, &nominal, &healthy, *cause);
    }
    let expected_now = healthy.expected(fluid, system);
    let conditions = conditions(&expected_now, &readings);
    let factors = factors(refrigerant, visit, conditions);

    let mut in_use = [true; CHANNELS];
    let mut judge = Judge::new(&healthy.mean, &healthy.covariance, &measured, &in_use);
    let mut posterior = Posterior::new(&judge, &ladders, &factors);
    // A reading that is more probably wrong than right says so, and the others are weighed without it.
    let suspect = (0..CHANNELS).max_by(|a, b| posterior.wrong[*a].total_cmp(&posterior.wrong[*b]))?;
    if posterior.wrong[suspect] > CONTRADICTS && judge.channels() >= 4 {
        in_use[suspect] = false;
        judge = Judge::new(&healthy.mean, &healthy.covariance, &measured, &in_use);
        posterior = Posterior::new(&judge, &ladders, &factors);
        let field = READING[suspect].name();
        let _ = warnings.push(Warning { section: "readings", field, kind: WarningKind::ContradictsOthers });
    }

    gauge::notice(&today, &healthy, &ladders, &factors, warnings);
    let noise = candidate_noise(&measured, visit);
    let information = information(&judge, &healthy.covariance, &noise, &ladders, &factors, conditions);
    let (ruled_out, still_open) = rule_out::split(&posterior, &information);
    let fits = student::tail(posterior.best_square, judge.channels());
    let causes = sorted(&posterior);
    let leading = causes[0].cause;
    Some(Diagnosis {
        expected: Expected {
            pump_down_kpa: conditions.and_then(|c| {
                crate::compressor::pump_down::expected_kpa(&c, visit.uncertainty.pressure_kpa(20.0))
            }),
            ..expected_now
        },
        causes,
        decided: decided::decided(&causes, fits),
        leading,
        fits: Some(fits),
        evidence: words(&posterior, &judge, &factors, &causes),
        next: next(&information, decided::decided(&causes, fits)),
        ruled_out,
        still_open,
    })
}

/// The readings of a stopped machine: without those that only a running machine shows.
fn stopped(readings: &Readings) -> Readings {
    Readings {
        suction_pressure_kpa: None,
        evaporator_pressure_kpa: None,
        discharge_pressure_kpa: None,
        liquid_pressure_kpa: None,
        evaporator_outlet_c: None,
        suction_line_c: None,
        discharge_line_c: None,
        liquid_line_c: None,
        drier_outlet_c: None,
        supply_air_c: None,
        condenser_exhaust_c: None,
        current_a: None,
        power_w: None,
        ..*readings
    }
}

/// What the pump-down works against: the discharge pressure as read, else as expected.
fn conditions(expected: &Expected, readings: &Readings) -> Option<Conditions> {
    let running_discharge_kpa = expected.discharge_pressure_kpa?.value;
    Some(Conditions {
        discharge_kpa: readings.discharge_pressure_kpa.unwrap_or(running_discharge_kpa),
        running_suction_kpa: expected.suction_pressure_kpa?.value,
        running_discharge_kpa,
    })
}

fn factors(refrigerant: &Refrigerant<'_>, visit: &Visit<'_>, conditions: Option<Conditions>) -> Factors {
    let readings = &visit.readings;
    let pump_down = readings.pump_down_kpa.zip(conditions).map(|(lowest_kpa, conditions)| {
        let seen = PumpDown {
            lowest_kpa,
            rise_kpa_per_min: readings.pump_down_rise_kpa_per_min,
            valve: readings.pump_down_valve,
            ended_by: readings.pump_down_ended_by,
        };
        (seen, conditions)
    });
    let standing = || {
        let kpa = readings.standing_pressure_kpa?;
        let pressure = Estimate::new(kpa, visit.uncertainty.pressure_kpa(kpa))?;
        let temperature = Estimate::new(readings.standing_temperature_c?, visit.uncertainty.line_k())?;
        Standing::at(refrigerant, pressure, temperature)
    };
    Factors::new(pump_down, standing(), visit.observations)
}

/// Variance of the instrument on every channel, for those not yet measured what is usual.
fn candidate_noise(measured: &Measured, visit: &Visit<'_>) -> symptom::Vector {
    let u = &visit.uncertainty;
    let line = u.line_k() * u.line_k() + 0.1;
    let air = u.air_k() * u.air_k();
    let current = 100.0 * u.current_fraction();
    let mut noise = measured.variance;
    for (i, noise) in noise.iter_mut().enumerate() {
        if !measured.given.get(i).copied().unwrap_or(false) {
            *noise = match i {
                symptom::SUCTION_PRESSURE
                | symptom::EVAPORATOR_PRESSURE
                | symptom::DISCHARGE_PRESSURE
                | symptom::LIQUID_PRESSURE => 0.25,
                symptom::SUPPLY_AIR | symptom::CONDENSER_EXHAUST => air,
                symptom::CURRENT | symptom::POWER => current * current,
                _ => line,
            };
        }
    }
    noise
}

/// All causes, most probable first; the order of [`Cause`] breaks ties.
fn sorted(posterior: &Posterior) -> [CauseProbability; Cause::COUNT] {
    let mut causes =
        [CauseProbability { cause: Cause::None, probability: 0.0, severity: None }; Cause::COUNT];
    for ((slot, cause), (probability, severity)) in
        causes.iter_mut().zip(Cause::ALL).zip(posterior.probability.iter().zip(posterior.severity))
    {
        let severity = (*cause != Cause::None).then_some(severity);
        *slot = CauseProbability { cause: *cause, probability: *probability, severity };
    }
    causes.sort_unstable_by(|a, b| b.probability.total_cmp(&a.probability).then(a.cause.cmp(&b.cause)));
    causes
}

/// What the readings say for and against the three leading causes, the strongest first for each.
fn words(
    posterior: &Posterior,
    judge: &Judge,
    factors: &Factors,
    causes: &[CauseProbability; Cause::COUNT],
) -> Vec<Evidence, 48> {
    let mut all = Vec::new();
    for entry in causes.iter().take(3) {
        let mut words: Vec<(Measurement, f32), { CHANNELS + Factors::COUNT }> = Vec::new();
        let channels = READING.iter().zip(&posterior.without_channel).zip(judge.given());
        let given = factors.given();
        let others = Factors::MEASUREMENT.iter().zip(&posterior.without_factor).zip(&given);
        for ((name, word), given) in channels.chain(others) {
            let nats = word.get(entry.cause.index()).copied().unwrap_or(0.0);
            if *given && nats.abs() >= WORTH_NAMING_NATS {
                let _ = words.push((*name, nats));
            }
        }
        words.sort_unstable_by(|a, b| b.1.abs().total_cmp(&a.1.abs()));
        for (reading, weight_nats) in words {
            let _ = all.push(Evidence { cause: entry.cause, reading, weight_nats });
        }
    }
    all
}

/// The most telling measurements; where nothing is decided the best one is always named.
fn next(information: &[next_measurement::Information; CANDIDATES], decided: bool) -> Vec<NextMeasurement, 8> {
    let mut ranked: Vec<(usize, f32), CANDIDATES> = Vec::new();
    for (candidate, bits) in information.iter().enumerate() {
        let _ = ranked.push((candidate, bits.all));
    }
    ranked.sort_unstable_by(|a, b| b.1.total_cmp(&a.1));
    let mut list = Vec::new();
    for (place, (candidate, bits)) in ranked.iter().enumerate() {
        let worth = *bits >= WORTH_NAMING_BITS || (!decided && place == 0 && *bits > 0.0);
        if let Some(measurement) = measurement(*candidate).filter(|_| worth) {
            let _ = list.push(NextMeasurement {
                measurement,
                information_bits: *bits,
                effort: measurement.effort(),
            });
        }
    }
    list
}
