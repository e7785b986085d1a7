//! From readings to the probability of each cause.
//!
//! `signature` says how each cause moves the channels (`symptom`) up to its end (`limit`), `hypothesis` lists every cause and pair of causes,
//! `likelihood` says how well each explains the readings, `evidence` adds what is no channel, `posterior` sums it all
//! (`tally`, `union`; `screen` passes over the pairs that lie far off), `next_measurement` and `rule_out` say what is left to do,
//! and `decided` holds the rule for acting. `another_refrigerant`,
//! `exchanged`, `gauge` and `consistency` notice what was told wrongly, `unidentified` what no listed cause explains.

mod another_refrigerant;
mod call;
mod candidates;
mod consistency;
mod decided;
#[cfg(test)]
mod drawn;
mod evidence;
mod exchanged;
mod gauge;
mod hypothesis;
mod kept;
mod likelihood;
mod limit;
mod next_measurement;
mod observed;
mod outcome;
mod posterior;
mod rule_out;
mod scratch;
mod screen;
mod signature;
mod tally;
mod unidentified;
mod union;
mod value;
mod warm_space;

pub(crate) use candidates::Candidates;
pub use decided::{CLEAR_AT, DECIDE_AT, FITS_AT_LEAST};
pub use outcome::{
    CauseAndMeasurements, CauseProbability, Diagnosis, Evidence, FamilyShares, JobShares, NextMeasurement,
};
pub(crate) use signature::climb;
pub(crate) use value::Information;

use crate::cause::Cause;
use crate::charge::standing::{Circuit, Standing};
use crate::compressor::pump_down::{Conditions, PumpDown};
use crate::cycle::Cycle;
use crate::decision::Prices;
use crate::estimate::Estimate;
use crate::expectation::{Expectation, Today};
use crate::expected::Expected;
use crate::machine::{Fluid, Memo, Nominal};
use crate::readings::SETTLED_MINUTES;
use crate::readings::{Readings, Visit};
use crate::refrigerant::Refrigerant;
use crate::sort::sort_by;
use crate::symptom::{self, Deviation, Measured};
use crate::system::Metering;
use crate::triangular::Factor;
use crate::warning::{WarningKind, Warnings, warn};
use call::Weighed;
use decided::{Doubts, TOLD_WRONGLY};
use evidence::{Beside, Factors};
use heapless::Vec;
use hypothesis::{Hypothesis, Step, Unlisted};
use next_measurement::{CANDIDATES, Known};
use posterior::{Posterior, Room};
use scratch::Scratch;
use signature::{Ladder, Node};
use union::Unions;
use value::Outlook;
use warm_space::WarmSpace;

/// The memory that one diagnosis works in, so that the stack stays small; its contents mean nothing between calls.
#[derive(Clone, Debug)]
pub struct Workspace {
    healthy: Expectation,
    ladders: [Ladder; Cause::COUNT - 1],
    deviation: Deviation,
    factors: [Factor; 2],
    posterior: Posterior,
    scratch: Scratch,
    information: [Information; CANDIDATES],
    outlook: Outlook,
}

impl Workspace {
    /// Makes an empty workspace.
    pub const fn new() -> Self {
        Self {
            healthy: Expectation::NEW,
            ladders: [const { Ladder::new() }; Cause::COUNT - 1],
            deviation: Deviation::NEW,
            factors: [Factor::NEW; 2],
            posterior: Posterior::NEW,
            scratch: Scratch::NEW,
            information: [Information::NONE; CANDIDATES],
            outlook: Outlook::NONE,
        }
    }
    /// Forgets what a former visit left to plan with.
    pub(crate) fn clear(&mut self) {
        self.information = [Information::NONE; CANDIDATES];
        self.outlook = Outlook::NONE;
    }
    /// What everything not yet taken would tell.
    pub(crate) fn candidates(&self) -> Candidates<'_> {
        Candidates { information: &self.information, outlook: &self.outlook }
    }
}

impl Default for Workspace {
    fn default() -> Self {
        Self::new()
    }
}

/// Nats below which a reading's word is not worth naming.
const WORTH_NAMING_NATS: f32 = 0.15;
/// Probability from which a reading is said to contradict the others.
const CONTRADICTS: f32 = 0.5;
/// Channels from which on one can contradict the others.
const ENOUGH_CHANNELS: usize = 4;
/// Ratio of probabilities below which two causes are said to explain the readings alike.
const ALIKE: f32 = 2.0;
/// Probability that the first of the two should have.
const LIKELY: f32 = 0.2;

/// Weighs a visit; `None` where the refrigerant's table or the model has no place for this machine.
pub(crate) fn weigh(
    work: &mut Workspace,
    refrigerant: &Refrigerant<'_>,
    visit: &Visit<'_>,
    diagnosis: &mut Diagnosis,
    expected: &mut Expected,
    warnings: &mut Warnings,
) -> Option<()> {
    let Workspace {
        healthy,
        ladders,
        deviation,
        factors: scratch,
        posterior,
        scratch: overlaid,
        information,
        outlook,
    } = work;
    let memo = Memo::new();
    let fluid = Fluid::new(refrigerant, &memo);
    let system = &visit.system;
    // A stopped machine shows nothing of its cycle; the standing pressure and what was seen remain.
    let running = visit.readings.running != Some(false);
    let readings = if running { visit.readings } else { stopped(&visit.readings) };
    let nominal = Nominal::new(fluid, system, &readings, &visit.uncertainty)?;
    let today = Today { fluid, nominal, visit, readings };
    healthy.set(fluid, &nominal, &readings)?;
    let measured = today.measured(&readings);
    healthy.lean(&nominal, &measured);
    if !visit.record.is_empty() && !healthy.learn(&today, deviation, scratch) {
        warn(warnings, "system", "record", WarningKind::RecordUnused);
    }
    for (ladder, cause) in ladders.iter_mut().zip(Cause::ALL.iter().skip(1)) {
        climb(ladder, fluid, &nominal, healthy, *cause);
    }
    healthy.expect(fluid, system, expected);
    let conditions = conditions(expected, &readings);
    expected.pump_down_kpa = conditions
        .and_then(|c| crate::compressor::pump_down::expected_kpa(&c, visit.uncertainty.pressure_kpa(20.0)));
    let circuit = circuit(&nominal);
    let factors = factors(refrigerant, &today, conditions, circuit);

    let balance = &healthy.balance;
    let together = |nodes: [(Cause, &Node); 2]| signature::together(fluid, balance, nodes);
    let condensing_pa = readings.discharge_pressure_kpa.map_or(balance.run.condensing_pa, |kpa| kpa * 1000.0);
    let something = unidentified::something(ladders, &Hypothesis::HEALTHY.shift);
    let unlisted = |each: &mut dyn FnMut(&Hypothesis, &[Step<'_>])| {
        another_refrigerant::each(&today, condensing_pa, each);
        exchanged::each(&nominal, &healthy.conditions, &measured, each);
        gauge::each(&today, &measured, &something, each);
        unidentified::each(&something, each);
    };
    deviation.set(&healthy.mean, &healthy.covariance, &measured);
    deviation.doubt(&healthy.conditions);
    posterior.unions = Unions::new(nominal.valve());
    let room = Room { factors: scratch, screened: overlaid.screened()? };
    posterior.weigh(deviation, ladders, &factors, room, &together, &unlisted);
    contradictions(posterior, deviation, warnings);
    let told_wrongly = wrongly_told(posterior, &readings, warnings);
    let noise = candidate_noise(&measured, visit);
    let shares = posterior.kept.shares();
    let costing = kept::costs(&shares, &Prices::complete(&visit.costs));
    *outlook = Outlook::new(&shares, &costing);
    let known = Known {
        deviation,
        covariance: &healthy.covariance,
        noise: &noise,
        factors: &factors,
        conditions,
        circuit: Some(circuit),
        shares: &shares,
        costing: &costing,
        outlook,
    };
    let [scratch_factor, _] = scratch;
    next_measurement::information(&known, scratch_factor, overlaid.predictive()?, information);

    let cycle = Cycle::from_readings(Some(refrigerant), system, &readings, &visit.uncertainty);
    let wrong = |reading| posterior.wrong(deviation, reading);
    let mut fits = crate::student_t::tail(posterior.distance(), deviation.size())
        .min(consistency::probability(&cycle, &readings, &wrong, posterior.still()));
    diagnosis.still = posterior.still();
    diagnosis.unidentified = posterior.unlisted(Unlisted::Unidentified);
    // What a visit told wrongly explains better, or something else, none of the causes explains.
    fits *= (1.0 - told_wrongly - diagnosis.unidentified).max(0.0);
    sort(posterior, &mut diagnosis.causes);
    diagnosis.families = posterior.unions.families();
    diagnosis.jobs = posterior.unions.jobs();
    diagnosis.leading = diagnosis.causes[0].cause;
    let unsettled = unsettled(readings.minutes_running);
    let off_design = decided::off_design(&nominal, &readings);
    let unasked = decided::unasked(diagnosis.leading, visit, &readings, deviation);
    let unread = decided::unread(deviation);
    let wet = decided::wet(&cycle);
    let doubts = Doubts { fits, told_wrongly, unsettled, unasked, off_design, unread, wet };
    diagnosis.decided = decided::decided(&diagnosis.causes, &doubts);
    diagnosis.fits = Some(fits);
    words(posterior, deviation, &factors, &diagnosis.causes, &mut diagnosis.evidence);
    let (out, open) = (&mut diagnosis.ruled_out, &mut diagnosis.still_open);
    rule_out::split(posterior, diagnosis.leading, deviation, &factors, information, out, open);
    if !diagnosis.decided {
        name_alike(&diagnosis.causes, warnings);
    }
    Some(())
}

/// Warns of every reading that is more probably grossly wrong than right, where enough others are there to tell.
fn contradictions(posterior: &Posterior, deviation: &Deviation, warnings: &mut Warnings) {
    if deviation.size() < ENOUGH_CHANNELS {
        return;
    }
    for (reading, wrong) in posterior.each_wrong(deviation) {
        if wrong > CONTRADICTS {
            warn(warnings, "readings", reading.name(), WarningKind::ContradictsOthers);
        }
    }
}

/// How far a machine is from having settled, 0 to 1; settled where nobody said.
fn unsettled(minutes: Option<f32>) -> f32 {
    minutes.map_or(0.0, |minutes| 1.0 / (1.0 + libm::expf((minutes - SETTLED_MINUTES).max(-40.0).min(40.0))))
}

/// Names the two likeliest causes where they explain the readings about equally well.
fn name_alike(causes: &[CauseProbability], warnings: &mut Warnings) {
    if let [first, second, ..] = causes
        && first.probability > LIKELY
        && first.probability < ALIKE * second.probability
        && first.cause != Cause::None
        && second.cause != Cause::None
    {
        for alike in [first, second] {
            let kind = WarningKind::TwoCausesAlike;
            warn(warnings, "causes", alike.cause.name(), kind);
        }
    }
}

/// Warns of what was probably told wrongly; gives the probability that anything was.
fn wrongly_told(posterior: &Posterior, readings: &Readings, warnings: &mut Warnings) -> f32 {
    let refrigerant = posterior.unlisted(Unlisted::Refrigerant);
    if refrigerant > TOLD_WRONGLY {
        let kind = WarningKind::ReadsLikeAnother;
        warn(warnings, "system", "refrigerant", kind);
    }
    let space = posterior.unlisted(Unlisted::SpaceAndAmbient);
    if space > TOLD_WRONGLY {
        exchanged::warn(["space_c", "ambient_c"], warnings);
    }
    let outlet = posterior.unlisted(Unlisted::OutletAndSuctionLine);
    if outlet > TOLD_WRONGLY {
        exchanged::warn(["evaporator_outlet_c", "suction_line_c"], warnings);
    }
    let gauge = posterior.unlisted(Unlisted::Gauge);
    if gauge > TOLD_WRONGLY {
        gauge::warn(readings, warnings);
    }
    (refrigerant + space + outlet + gauge).min(1.0)
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
        evaporator_inlet_c: None,
        condenser_middle_c: None,
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

fn factors(
    refrigerant: &Refrigerant<'_>,
    today: &Today<'_>,
    conditions: Option<Conditions>,
    circuit: Circuit,
) -> Factors {
    let (visit, readings) = (today.visit, &today.readings);
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
        Some((Standing::at(refrigerant, pressure, temperature)?, circuit))
    };
    let recovered = || {
        let plate = visit.system.charge_kg.filter(|kg| *kg > 0.0)?;
        // What was put in on this visit was not there before.
        let held = readings.recovered_kg? - readings.added_kg.unwrap_or(0.0);
        (held > 0.0).then(|| libm::logf(held / plate))
    };
    let told = visit.system.duty.is_some() || visit.system.design.space_c.is_some();
    let running = readings.running != Some(false);
    let space = WarmSpace::new(&today.nominal, readings, told && running, &visit.call);
    let beside = Beside {
        pump_down,
        standing: standing(),
        recovered: recovered(),
        space,
        call: Weighed::new(&visit.call),
    };
    Factors::new(beside, &visit.observations)
}

/// How much refrigerant a circuit of this kind holds.
fn circuit(nominal: &Nominal) -> Circuit {
    if nominal.receiver || nominal.valve() {
        Circuit::LARGE
    } else if nominal.metering == Metering::Capillary {
        Circuit::SMALL
    } else {
        Circuit::MIDDLING
    }
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
fn sort(posterior: &Posterior, causes: &mut [CauseProbability; Cause::COUNT]) {
    for (slot, cause) in causes.iter_mut().zip(Cause::ALL) {
        let severity = (*cause != Cause::None).then(|| posterior.severity(*cause));
        *slot = CauseProbability { cause: *cause, probability: posterior.probability(*cause), severity };
    }
    sort_by(causes, |a, b| b.probability.total_cmp(&a.probability).then(a.cause.cmp(&b.cause)));
}

/// What the readings say for and against the three leading causes, the strongest first for each.
fn words(
    posterior: &Posterior,
    deviation: &Deviation,
    factors: &Factors,
    causes: &[CauseProbability; Cause::COUNT],
    all: &mut Vec<Evidence, 48>,
) {
    for entry in causes.iter().take(3) {
        let mut words = rule_out::words(posterior, deviation, factors, entry.cause);
        words.retain(|(_, nats)| nats.abs() >= WORTH_NAMING_NATS);
        sort_by(&mut words, |a, b| b.1.abs().total_cmp(&a.1.abs()));
        for (reading, weight_nats) in &words {
            let evidence = Evidence { cause: entry.cause, reading: *reading, weight_nats: *weight_nats };
            let _ = all.push(evidence);
        }
    }
}
