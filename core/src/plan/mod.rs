//! The one next step of a visit, what follows on its outcomes, and the ways to go on with what they cost.
//!
//! `requirement` says what everything takes, `access` what of it can be taken here, `hose` what a gauge takes from the
//! charge, `rank` puts readings, looks and actions in one order of worth for minutes, `motor` goes before them where the
//! machine does not run, `text` says it in words.

mod access;
mod answer;
pub mod change;
mod hose;
mod motor;
mod rank;
mod requirement;
pub mod step;
mod text;

use crate::cause::Cause;
use crate::charge::weigh_in::{self, WeighIn};
use crate::decision;
use crate::diagnosis::{Candidates, Diagnosis, FITS_AT_LEAST, NextMeasurement};
use crate::estimate::Estimate;
use crate::expected::Expected;
use crate::measurement::{Effort, Measurement};
use crate::readings::SETTLED_MINUTES;
use crate::readings::{Action, CondenserFace, Doable, Visit};
use crate::refrigerant::Refrigerant;
use access::Reach;
pub(crate) use answer::answer;
pub use change::Change;
use heapless::Vec;
use rank::{Ranked, by_rule, rank};
use requirement::minutes;
pub use step::{Context, HoseTakes, Step, StepKind, Subject, Then, Way};

/// What to do next on a visit.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// The next step.
    pub step: Step,
    /// What follows on each outcome of the step.
    pub then: Vec<Then, 3>,
    /// The ways to go on with what they are expected to cost, the cheapest first; empty where no costs were told.
    pub ways: Vec<Way, 12>,
    /// The probability of a weak compressor above which replacing it pays.
    pub replace_above: Option<f32>,
    /// What to let out of the cylinder by the scale after an evacuation, kg, where the step ends with a charge by weight.
    pub weigh_in_kg: Option<Estimate>,
    /// What was changed on this visit and whether it helped; `None` without readings from before.
    pub change: Option<Change>,
}

impl Plan {
    /// No plan.
    pub const NONE: Self = Self {
        step: Step::NONE,
        then: Vec::new(),
        ways: Vec::new(),
        replace_above: None,
        weigh_in_kg: None,
        change: None,
    };
}

/// What a plan is made from.
pub(crate) struct Basis<'a> {
    pub(crate) visit: &'a Visit<'a>,
    /// Nothing where it is not known.
    pub(crate) refrigerant: Option<&'a Refrigerant<'a>>,
    /// What everything not yet taken would tell.
    pub(crate) candidates: Candidates<'a>,
    pub(crate) expected: &'a Expected,
    /// Whether the motor must not be switched on.
    pub(crate) must_not_run: bool,
    /// Whether the head pressure is above what is usual for the refrigerant.
    pub(crate) head_pressure_high: bool,
    /// What the verdict says has to be done; nothing where there is none.
    pub(crate) answer: Option<(StepKind, Subject)>,
}

/// Probability of low condenser airflow from which a dirty face is cleaned before anything else is believed (judged).
const DIRT_COUNTS: f32 = 0.15;

/// Plans the visit on, and lists in `diagnosis.next` what can still be measured, the best for its minutes first.
pub(crate) fn plan(basis: &Basis<'_>, diagnosis: &mut Diagnosis, plan: &mut Plan) {
    *plan = Plan::NONE;
    let readings = &basis.visit.readings;
    let off = readings.running == Some(false) || motor::emptied(readings);
    let runs = !basis.must_not_run && !off && !motor::stands(basis.visit);
    let reach = Reach { visit: basis.visit, refrigerant: basis.refrigerant, runs };
    let mut ranked = Vec::new();
    rank(&reach, &basis.candidates, basis.expected, &mut ranked);
    next(&ranked, diagnosis);
    plan.change = basis.visit.before.and_then(|before| {
        let (after, uncertainty) = (&basis.visit.readings, &basis.visit.uncertainty);
        change::judge(before, after, uncertainty, basis.expected, diagnosis)
    });
    price(basis, diagnosis, plan);
    let by_hand = motor_first(basis, &reach).or_else(|| conditions_first(&reach));
    let answered = basis.answer.is_some();
    let air = || air_first(basis, &reach, diagnosis);
    let settle = || if answered { None } else { settle_first(&reach) };
    let step = by_hand.or_else(air).or_else(settle).or_else(|| {
        let best = ranked.iter().find(|r| if answered { r.pays() } else { r.helps() });
        if let Some(best) = best {
            let behind = ranked.iter().find(|r| r.candidate != best.candidate && r.helps());
            follow(best, behind, &basis.candidates, plan);
        }
        best.map(Ranked::step)
    });
    let step = step.unwrap_or_else(|| go_on(basis, &reach, diagnosis, plan));
    plan.weigh_in_kg = weigh_in(basis, &step);
    plan.step = step;
}

/// Lists the measurements, the best for its minutes first.
fn next(ranked: &[Ranked], diagnosis: &mut Diagnosis) {
    diagnosis.next.clear();
    for one in ranked.iter().take(diagnosis.next.capacity()) {
        let entry = NextMeasurement {
            measurement: one.measurement,
            information_bits: one.information.all,
            effort: one.effort,
            minutes: one.minutes,
        };
        // No more are taken than there is room for.
        let _ = diagnosis.next.push(entry);
    }
    // What cannot be taken closes nothing.
    for open in &mut diagnosis.still_open {
        open.measurements.retain(|m| ranked.iter().any(|one| one.measurement == *m));
    }
}

/// Probability of what a way is meant for from which it follows on an outcome; below it the visit goes on (judged).
const FOLLOWS: f32 = 0.5;

/// What follows on each outcome of a measurement: a way to go on, or what is taken behind it where nothing is likely yet.
fn follow(best: &Ranked, behind: Option<&Ranked>, candidates: &Candidates<'_>, plan: &mut Plan) {
    let names = candidates.outcome_names(best.candidate);
    for (outcome, follow) in names.into_iter().zip(best.information.then) {
        if !outcome.is_empty() && follow.probability >= 0.01 {
            let (kind, subject) = match behind {
                Some(behind) if follow.sure < FOLLOWS => {
                    let step = behind.step();
                    (step.kind, step.subject)
                }
                None if follow.sure < FOLLOWS => (StepKind::Leave, Subject::Machine),
                _ => step::way(follow.way),
            };
            let then = Then { outcome, probability: follow.probability, kind, subject };
            // As many as there are names.
            let _ = plan.then.push(then);
        }
    }
}

/// The ways to go on by what they cost.
fn price(basis: &Basis<'_>, diagnosis: &Diagnosis, plan: &mut Plan) {
    let weighed = decision::weigh(&probabilities(diagnosis), &basis.visit.costs, 0.0);
    plan.replace_above = weighed.replace_above;
    for alternative in &weighed.alternatives {
        if let Some(expected_cost) = alternative.expected_cost
            && alternative.action != decision::Action::Test
        {
            let (kind, subject) = step::way(alternative.action);
            // Room for every way.
            let _ = plan.ways.push(Way { kind, subject, expected_cost });
        }
    }
    crate::sort::sort_by(&mut plan.ways, |a, b| a.expected_cost.total_cmp(&b.expected_cost));
}

fn probabilities(diagnosis: &Diagnosis) -> [f32; Cause::COUNT] {
    let mut all = [0.0; Cause::COUNT];
    for entry in &diagnosis.causes {
        if let Some(slot) = all.get_mut(entry.cause.index()) {
            *slot = entry.probability;
        }
    }
    all
}

/// A motor that must not run, or a machine that stands, goes before everything else.
fn motor_first(basis: &Basis<'_>, reach: &Reach<'_>) -> Option<Step> {
    let electrical = |(_, subject): &(StepKind, Subject)| matches!(subject, Subject::Finding(_));
    let replace = |(kind, _): &(StepKind, Subject)| *kind == StepKind::ReplaceCompressor;
    let stops = basis.must_not_run || motor::stands(basis.visit);
    if let Some((kind, subject)) = basis.answer.filter(|a| stops && (electrical(a) || replace(a))) {
        return Some(done(kind, subject));
    }
    if !motor::stands(basis.visit) {
        return None;
    }
    if basis.visit.observations.calls_for_cooling == Some(false) {
        return Some(done(StepKind::Repair, Subject::Measurement(Measurement::CallsForCooling)));
    }
    let plate = &basis.visit.system.compressor;
    let readings = &basis.visit.readings;
    let unmarked = readings.terminal_12_ohm.is_some();
    motor::ORDER.iter().find_map(|what| {
        let wanted = match what {
            Doable::Measurement(Measurement::RunCapacitor) => plate.run_capacitor_uf.is_some(),
            Doable::Measurement(Measurement::StartCapacitor) => plate.start_capacitor_uf.is_some(),
            Doable::Measurement(
                Measurement::WindingRun | Measurement::WindingStart | Measurement::WindingRunToStart,
            ) => !unmarked,
            Doable::Action(Action::StartTest) => !basis.must_not_run,
            _ => true,
        };
        if wanted { by_rule(reach, *what) } else { None }
    })
}

/// What everything else is held against: the refrigerant, the two air temperatures, the kind of machine.
fn conditions_first(reach: &Reach<'_>) -> Option<Step> {
    let visit = reach.visit;
    let ask = |context| Step {
        kind: StepKind::Look,
        subject: Subject::Context(context),
        minutes: 1.0,
        changes: 1.0,
        effort: Some(Effort::Look),
        hose: None,
    };
    if reach.refrigerant.is_none() {
        return Some(ask(Context::Refrigerant));
    }
    // Who cannot tell the kind of machine reads on without it.
    if reach.runs && !motor::shows_running(&visit.readings) {
        if visit.system.duty.is_none() {
            return Some(ask(Context::Duty));
        }
        if visit.system.metering.is_none() {
            return Some(ask(Context::Metering));
        }
    }
    let air = [Measurement::Space, Measurement::Ambient];
    air.into_iter().find_map(|air| by_rule(reach, Doable::Measurement(air)))
}

/// Air that does not pass is put right before anything else is believed: a coil under ice, a dirty face, and what nobody
/// has looked at yet behind a head pressure that is too high.
fn air_first(basis: &Basis<'_>, reach: &Reach<'_>, diagnosis: &Diagnosis) -> Option<Step> {
    let observations = &reach.visit.observations;
    if observations.coil_iced == Some(true)
        && let Some(step) = by_rule(reach, Doable::Action(Action::DefrostAndReread))
    {
        return Some(step);
    }
    let airflow = diagnosis
        .causes
        .iter()
        .find(|c| c.cause == Cause::CondenserAirflow)
        .is_some_and(|c| c.probability >= DIRT_COUNTS);
    let dirty = matches!(observations.condenser_face, Some(CondenserFace::Blocked | CondenserFace::Dirty));
    if dirty
        && airflow
        && let Some(step) = by_rule(reach, Doable::Action(Action::CleanAndReread))
    {
        return Some(step);
    }
    if basis.head_pressure_high && airflow {
        let looks = [Measurement::CondenserFan, Measurement::CondenserFace];
        return looks.into_iter().find_map(|look| by_rule(reach, Doable::Measurement(look)));
    }
    None
}

/// What has to settle before a reading can be believed: a door that stands open, the first minutes.
fn settle_first(reach: &Reach<'_>) -> Option<Step> {
    let visit = reach.visit;
    if visit.observations.door_closes == Some(false) {
        return Some(done(StepKind::Repair, Subject::Measurement(Measurement::DoorCloses)));
    }
    let minutes = visit.readings.minutes_running.filter(|m| *m < SETTLED_MINUTES)?;
    let step = by_rule(reach, Doable::Action(Action::LetItSettle))?;
    reach.runs.then_some(Step { kind: StepKind::Wait, minutes: SETTLED_MINUTES - minutes, ..step })
}

/// Probability below which no remedy is proposed on the chance, however little it costs (judged).
const LIKELY: f32 = 0.3;

/// Nothing that is left is worth its minutes: what the verdict asks for, else the cheapest way.
///
/// Where that opens the circuit and nothing is stated yet, the recovery comes first and is weighed: it is part of the work
/// anyway.
fn go_on(basis: &Basis<'_>, reach: &Reach<'_>, diagnosis: &Diagnosis, plan: &Plan) -> Step {
    let cheapest = plan.ways.first().map(|way| way.kind);
    let (kind, subject) = match (basis.answer, cheapest) {
        // Mending is decided against only by what the machine's people told it costs.
        (Some((StepKind::ReplaceCompressor, _)), Some(StepKind::ReplaceMachine)) => {
            step::way(decision::Action::ReplaceMachine)
        }
        (Some(answer), _) => answer,
        // Readings that nothing explains ask for no repair.
        (None, _) if diagnosis.fits.is_some_and(|fits| fits < FITS_AT_LEAST) => {
            (StepKind::Leave, Subject::Machine)
        }
        (None, _) => {
            let p = probabilities(diagnosis);
            match decision::cheapest_of_likely(&p, &basis.visit.costs, LIKELY) {
                // Nothing is cleared by that.
                decision::Action::Leave => (StepKind::Leave, Subject::Machine),
                way => {
                    let charge = basis.visit.system.charge_kg.filter(|_| way.opens_the_circuit());
                    let weigh = charge.and_then(|_| by_rule(reach, Doable::Action(Action::RecoverAndWeigh)));
                    if let Some(weigh) = weigh {
                        return weigh;
                    }
                    step::way(way)
                }
            }
        }
    };
    done(kind, subject)
}

/// A step that ends the search.
fn done(kind: StepKind, subject: Subject) -> Step {
    let minutes = match subject {
        Subject::Cause(cause) => remedy_minutes(cause),
        Subject::Finding(_) | Subject::Measurement(_) => 20.0,
        Subject::Action(action) => minutes(Doable::Action(action)),
        Subject::Context(_) => 1.0,
        Subject::Machine if matches!(kind, StepKind::Leave) => 0.0,
        Subject::Machine => 240.0,
    };
    Step { kind, subject, minutes, changes: 0.0, effort: None, hose: None }
}

/// Minutes that a remedy takes (judged).
const fn remedy_minutes(cause: Cause) -> f32 {
    match cause {
        Cause::None => 0.0,
        Cause::CondenserAirflow => 30.0,
        Cause::EvaporatorAirflow => 45.0,
        Cause::WeakCompressor => 240.0,
        Cause::Overcharge | Cause::NonCondensables => 90.0,
        Cause::Undercharge | Cause::LiquidLineRestriction | Cause::MeteringUnderfeed | Cause::FloodBack => {
            150.0
        }
    }
}

/// What to let out of the cylinder after an evacuation: the nameplate charge and what the hose keeps as vapour.
fn weigh_in(basis: &Basis<'_>, step: &Step) -> Option<Estimate> {
    let opens = match (step.kind, step.subject) {
        (StepKind::ReplaceCompressor, _) => true,
        (StepKind::Repair, Subject::Cause(cause)) => decision::Action::remedy(cause).opens_the_circuit(),
        _ => false,
    };
    let nameplate_kg = basis.visit.system.charge_kg.filter(|_| opens)?;
    let hose = basis
        .refrigerant
        .and_then(|r| hose::takes(requirement::Port::Suction, r, basis.visit, basis.expected));
    let left_kg = hose.map_or(0.0, |hose| hose.grams / 1000.0);
    let start = WeighIn {
        nameplate_kg,
        residual_kg: Estimate { value: 0.0, u: 0.0 },
        left_in_hoses_kg: Estimate { value: left_kg, u: 0.5 * left_kg },
        scale_u_kg: SCALE_U_KG,
    };
    match weigh_in::plan(&start)? {
        weigh_in::Plan::Charge { by_scale_kg, .. } => Some(by_scale_kg),
        weigh_in::Plan::Recover { .. } => None,
    }
}

/// Standard uncertainty of a charging scale, kg (judged: they count in grams).
const SCALE_U_KG: f32 = 0.001;
