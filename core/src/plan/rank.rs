//! Everything that can still be taken, in the order of its worth for its minutes.

use super::access::{Reach, alias};
use super::hose::{self, SPOILS_PERCENT};
use super::requirement::{minutes, requirement};
use super::step::{HoseTakes, Step, StepKind, Subject};
use crate::diagnosis::{Candidates, Information};
use crate::expected::Expected;
use crate::measurement::{Effort, Measurement};
use crate::readings::Doable;
use crate::sort::sort_by;
use crate::system::System;
use heapless::Vec;

/// Most candidates of a ranking.
pub(super) const RANKED: usize = 32;

/// One candidate with what it is worth.
#[derive(Clone, Copy, Debug)]
pub(super) struct Ranked {
    pub(super) what: Doable,
    /// Its reading's name, as it is entered.
    pub(super) measurement: Measurement,
    pub(super) candidate: usize,
    pub(super) effort: Effort,
    pub(super) minutes: f32,
    pub(super) hose: Option<HoseTakes>,
    pub(super) information: Information,
    /// What it saves, hours of work, with what it begins and the next one finishes.
    pub(super) worth: f32,
    /// Whether it comes after all others: it opens the circuit or spoils the charge.
    last: bool,
}

/// Share of what knowing everything would save that goes with the share of the open question that is answered: what one
/// reading begins, the next one finishes (judged).
const BEGINS: f32 = 0.3;
/// Bits below which a candidate is not worth a look.
const LEAST_BITS: f32 = 0.02;

/// Ranks what can be taken in the caller's list, which is not small; nothing where it would tell nothing.
pub(super) fn rank(
    reach: &Reach<'_>,
    candidates: &Candidates<'_>,
    expected: &Expected,
    all: &mut Vec<Ranked, RANKED>,
) {
    all.clear();
    for (candidate, measurement, information) in candidates.iter() {
        if information.all < LEAST_BITS || !can_be_used(measurement, &reach.visit.system) {
            continue;
        }
        let reading = Doable::Measurement(measurement);
        let what = alias(reading).unwrap_or(reading);
        let Some(effort) = reach.effort(what) else { continue };
        let port = requirement(what).map(|row| row.port);
        let hose =
            port.zip(reach.refrigerant).and_then(|(port, r)| hose::takes(port, r, reach.visit, expected));
        let outlook = candidates.outlook();
        let begun = if outlook.open > 0.0 { (information.all / outlook.open).min(1.0) } else { 0.0 };
        let spoils = hose.and_then(|h| h.percent).is_some_and(|p| p > SPOILS_PERCENT);
        let ranked = Ranked {
            what,
            measurement,
            candidate,
            effort,
            minutes: minutes(what),
            hose,
            information: *information,
            worth: information.value + BEGINS * outlook.stake * begun,
            last: effort == Effort::OpensSystem || spoils,
        };
        // The ranking has room for every candidate.
        let _ = all.push(ranked);
    }
    let an_hour = |r: &Ranked| r.worth / r.minutes;
    sort_by(all, |a, b| a.last.cmp(&b.last).then(an_hour(b).total_cmp(&an_hour(a))));
}

impl Ranked {
    /// The step that takes it.
    pub(super) fn step(&self) -> Step {
        Step {
            kind: kind(self.what),
            subject: Subject::from(self.what),
            minutes: self.minutes,
            changes: self.information.changes,
            effort: Some(self.effort),
            hose: self.hose,
        }
    }
    /// Whether it is worth its minutes to a visit that has its answer.
    pub(super) fn pays(&self) -> bool {
        self.information.value > self.minutes / MINUTES && self.information.changes >= LIKELY_CHANGE
    }
    /// Whether it is worth taking where there is no answer yet: what opens the circuit or spoils the charge has to pay.
    pub(super) fn helps(&self) -> bool {
        let hours = self.minutes / MINUTES;
        self.worth > if self.last { hours } else { LEAST_SHARE * hours }
    }
}

/// Probability of a change below which a visit that has its answer asks for nothing more (judged).
const LIKELY_CHANGE: f32 = 0.05;
/// Minutes of an hour.
const MINUTES: f32 = 60.0;
/// Share of its own time that a step has to be worth where there is no answer yet (judged: coming again costs more than
/// staying).
const LEAST_SHARE: f32 = 0.1;

/// Whether a reading has what it is held against.
fn can_be_used(measurement: Measurement, system: &System) -> bool {
    match measurement {
        Measurement::Current => system.compressor.rated_load_a.is_some(),
        Measurement::Power => system.compressor.rated_load_a.is_some() && system.compressor.rated_v.is_some(),
        Measurement::Recovered => system.charge_kg.is_some(),
        _ => true,
    }
}

/// The step that takes what is asked by rule; nothing where it cannot be taken or is told.
pub(super) fn by_rule(reach: &Reach<'_>, what: Doable) -> Option<Step> {
    let effort = reach.effort(what)?;
    Some(Step {
        kind: kind(what),
        subject: Subject::from(what),
        minutes: minutes(what),
        changes: 0.0,
        effort: Some(effort),
        hose: None,
    })
}

fn kind(what: Doable) -> StepKind {
    match what {
        Doable::Action(_) => StepKind::Act,
        Doable::Measurement(m) if m.section() == Some("observations") => StepKind::Look,
        Doable::Measurement(_) => StepKind::Measure,
    }
}
