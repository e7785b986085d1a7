//! What an outcome is worth: by how much it lowers the cost of what would be done, and what that then is.

use super::kept::{Costing, STATES, Share};
use super::observed::OUTCOMES;
use crate::cause::Cause;
use crate::decision::{Action, WAYS};
use crate::refrigerant::logarithm;

/// What would be done after one outcome.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Follow {
    /// The outcome's probability.
    pub(crate) probability: f32,
    /// The cheapest way after it.
    pub(crate) way: Action,
    /// The probability, after it, of what that way is meant for.
    pub(crate) sure: f32,
}

/// What one measurement, look or action would tell.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Information {
    /// Information on all causes together, bits.
    pub(crate) all: f32,
    /// Information on each cause being there or not, bits.
    pub(crate) each: [f32; Cause::COUNT],
    /// What it saves on average because something better is done after it, hours of work.
    pub(crate) value: f32,
    /// The probability that something else is done after it than without it.
    pub(crate) changes: f32,
    /// What would be done after each outcome.
    pub(crate) then: [Follow; OUTCOMES],
}

impl Information {
    pub(crate) const NONE: Self = Self {
        all: 0.0,
        each: [0.0; Cause::COUNT],
        value: 0.0,
        changes: 0.0,
        then: [Follow { probability: 0.0, way: Action::Leave, sure: 0.0 }; OUTCOMES],
    };
}

/// Where the visit stands: what would be done now, and what knowing everything would save.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Outlook {
    /// The cheapest way as things stand.
    pub(crate) way: Action,
    /// What it costs on average, hours of work.
    pub(crate) cost: f32,
    /// What knowing the cause would save on average, hours of work.
    pub(crate) stake: f32,
    /// What is not known of the causes, bits.
    pub(crate) open: f32,
}

impl Outlook {
    pub(crate) const NONE: Self = Self { way: Action::Leave, cost: 0.0, stake: 0.0, open: 0.0 };

    pub(crate) fn new(shares: &[Share<'_>], costing: &Costing) -> Self {
        let (mut states, mut causes) = ([0.0; STATES], [0.0; Cause::COUNT]);
        for share in shares {
            add(&mut states, share.state, share.share);
            add(&mut causes, share.cause.index(), share.share);
        }
        let (way, cost) = cheapest(costing, &states);
        let known: f32 = costing.iter().zip(&states).map(|(row, weight)| least(row) * weight).sum();
        let open = causes.iter().filter(|p| **p > 1.0e-6).map(|p| -p * libm::log2f(*p)).sum();
        Self { way, cost, stake: (cost - known).max(0.0), open }
    }
}

fn add(list: &mut [f32], position: usize, what: f32) {
    if let Some(slot) = list.get_mut(position) {
        *slot += what;
    }
}

/// What the cheapest way costs in one state.
fn least(row: &[f32; WAYS]) -> f32 {
    row.iter().copied().fold(f32::INFINITY, f32::min)
}

/// The cheapest way over states with these weights, and what it costs.
fn cheapest(costing: &Costing, weights: &[f32; STATES]) -> (Action, f32) {
    let mut costs = [0.0; WAYS];
    for (row, weight) in costing.iter().zip(weights) {
        for (sum, cost) in costs.iter_mut().zip(row) {
            *sum += cost * weight;
        }
    }
    let mut best = (Action::Leave, f32::INFINITY);
    for (cost, way) in costs.iter().zip(Action::WAYS) {
        if *cost < best.1 {
            best = (way, *cost);
        }
    }
    best
}

/// The logarithm to base 2 of a positive number, good to 5e-7: it is taken hundreds of times a candidate.
fn log2(x: f32) -> f32 {
    logarithm(x) * core::f32::consts::LOG2_E
}

/// Whether a way is meant for the cause at a position of [`Cause`].
fn is_meant(way: Action, cause: usize) -> bool {
    match way {
        Action::Leave | Action::Test => cause == Cause::None.index(),
        Action::Repair(meant) => cause == meant.index(),
        Action::ReplaceCompressor => cause == Cause::WeakCompressor.index(),
        Action::ReplaceMachine => cause != Cause::None.index(),
    }
}

/// Adds up what the outcomes of one measurement tell.
pub(crate) struct Appraisal<'a> {
    costing: &'a Costing,
    outlook: &'a Outlook,
    before: [f32; Cause::COUNT],
    /// The cause of every state.
    cause_of: [usize; STATES],
    grouped: [[f32; STATES]; OUTCOMES],
    cost: f32,
    mass: f32,
    result: Information,
}

impl<'a> Appraisal<'a> {
    pub(crate) fn new(shares: &[Share<'_>], costing: &'a Costing, outlook: &'a Outlook) -> Self {
        let (mut before, mut cause_of) = ([0.0; Cause::COUNT], [0; STATES]);
        for share in shares {
            add(&mut before, share.cause.index(), share.share);
            if let Some(slot) = cause_of.get_mut(share.state) {
                *slot = share.cause.index();
            }
        }
        Self {
            costing,
            outlook,
            before,
            cause_of,
            grouped: [[0.0; STATES]; OUTCOMES],
            cost: 0.0,
            mass: 0.0,
            result: Information::NONE,
        }
    }

    /// Adds one outcome: `joint` is the probability of every state and this outcome together, `group` what it is called.
    pub(crate) fn outcome(&mut self, joint: &[f32; STATES], group: usize) {
        let whole: f32 = joint.iter().sum();
        if !(whole > 1.0e-9) {
            return;
        }
        self.mass += whole;
        if let Some(grouped) = self.grouped.get_mut(group) {
            for (slot, joint) in grouped.iter_mut().zip(joint) {
                *slot += joint;
            }
        }
        let (way, cost) = cheapest(self.costing, joint);
        self.cost += cost;
        if way != self.outlook.way {
            self.result.changes += whole;
        }
        let mut causes = [0.0; Cause::COUNT];
        for (joint, cause) in joint.iter().zip(self.cause_of) {
            add(&mut causes, cause, *joint);
        }
        for ((each, joint), before) in self.result.each.iter_mut().zip(&causes).zip(&self.before) {
            if *joint > 1.0e-9 && *before > 1.0e-6 {
                let bits = joint * log2(joint / (before * whole));
                self.result.all += bits;
                *each += bits;
                let (not, not_before) = ((whole - joint).max(0.0), 1.0 - before);
                if not > 1.0e-9 && not_before > 1.0e-6 {
                    *each += not * log2(not / (not_before * whole));
                }
            }
        }
    }

    /// What all outcomes together tell.
    pub(crate) fn finish(mut self) -> Information {
        // A narrow predictive between coarse points would count for more or less than it is.
        if self.mass > 0.1 {
            self.result.all /= self.mass;
            self.result.each = self.result.each.map(|bits| bits / self.mass);
            self.result.changes /= self.mass;
            self.result.value = (self.outlook.cost - self.cost / self.mass).max(0.0);
            for (follow, joint) in self.result.then.iter_mut().zip(&self.grouped) {
                let whole = joint.iter().sum::<f32>();
                let way = cheapest(self.costing, joint).0;
                let meant = joint.iter().zip(self.cause_of).filter(|(_, cause)| is_meant(way, *cause));
                let sure = meant.map(|(joint, _)| joint).sum::<f32>() / whole.max(1.0e-9);
                *follow = Follow { probability: whole / self.mass, way, sure };
            }
        }
        self.result
    }
}
