//! The explanations that are kept to plan with: a few of every cause, which carry that cause's whole weight.
//!
//! Early in a visit hundreds of explanations weigh about alike. Those kept stand for the others of their cause, so that no
//! cause drops out of the plan because its weight is spread.

use super::hypothesis::Hypothesis;
use super::tally::Sum;
use crate::cause::Cause;
use crate::decision::{Action, Prices, WAYS};
use crate::exponential::exponential;

/// Explanations kept of one cause alone.
const SINGLE: usize = 2;
/// Pairs of causes kept.
const PAIRS: usize = 6;
/// Explanations kept in all.
pub(crate) const KEPT: usize = Cause::COUNT * SINGLE + PAIRS;
/// The class of every pair, behind those of the causes.
const PAIR: usize = Cause::COUNT;
/// Explanations that a plan tells apart by what would have to be done: each cause, each pair kept.
pub(crate) const STATES: usize = Cause::COUNT + PAIRS;

/// The heaviest explanations of every class, each with the logarithm of its weight.
#[derive(Clone, Debug)]
pub(crate) struct Kept {
    list: heapless::Vec<(f32, Hypothesis), KEPT>,
    class: [Sum; Cause::COUNT + 1],
}

/// One explanation with its share of all weight.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Share<'a> {
    /// Its share, 0 to 1.
    pub(crate) share: f32,
    /// Its state, see [`STATES`].
    pub(crate) state: usize,
    /// Its cause, the first of a pair.
    pub(crate) cause: Cause,
    /// The explanation.
    pub(crate) hypothesis: &'a Hypothesis,
}

impl Share<'_> {
    /// What is wrong with the machine.
    pub(crate) fn faults(&self) -> [Option<Cause>; 2] {
        let mut faults = [None; 2];
        for (slot, cause) in faults.iter_mut().zip(self.hypothesis.each_cause()) {
            *slot = Some(cause);
        }
        faults
    }
}

fn class(hypothesis: &Hypothesis) -> usize {
    let mut causes = hypothesis.each_cause();
    match (causes.next(), causes.next()) {
        (_, Some(_)) => PAIR,
        (first, None) => first.map_or(0, Cause::index),
    }
}

impl Kept {
    pub(crate) const NEW: Self = Self { list: heapless::Vec::new(), class: [Sum::new(); Cause::COUNT + 1] };

    /// Forgets all.
    pub(crate) fn clear(&mut self) {
        self.list.clear();
        // Not of `NEW`, the whole of which would lie in flash for it.
        self.class = [Sum::new(); Cause::COUNT + 1];
    }

    /// Adds an explanation with the logarithm of its weight.
    pub(crate) fn add(&mut self, ln: f32, hypothesis: &Hypothesis) {
        let class_of_it = class(hypothesis);
        if let Some(sum) = self.class.get_mut(class_of_it) {
            sum.add(ln);
        }
        let room = if class_of_it == PAIR { PAIRS } else { SINGLE };
        let mut alike = 0;
        let mut lightest: Option<&mut (f32, Hypothesis)> = None;
        for one in self.list.iter_mut().filter(|(_, h)| class(h) == class_of_it) {
            alike += 1;
            if lightest.as_ref().is_none_or(|l| one.0 < l.0) {
                lightest = Some(one);
            }
        }
        if alike >= room {
            if let Some(lightest) = lightest.filter(|l| l.0 < ln) {
                *lightest = (ln, *hypothesis);
            }
            return;
        }
        // The rooms of all classes together are the room of the list.
        let _ = self.list.push((ln, *hypothesis));
    }

    /// Every explanation kept with its share; the shares of a class sum to that of all its explanations.
    pub(crate) fn shares(&self) -> Shares<'_> {
        let mut here = [Sum::new(); Cause::COUNT + 1];
        for (ln, hypothesis) in &self.list {
            if let Some(sum) = here.get_mut(class(hypothesis)) {
                sum.add(*ln);
            }
        }
        let (here, class_ln) = (here.map(|sum| sum.ln()), self.class.map(|sum| sum.ln()));
        let mut all = Sum::new();
        for (class, here) in class_ln.iter().zip(&here) {
            // A class of which nothing is kept carries nothing.
            if *here > NOTHING {
                all.add(*class);
            }
        }
        let all = all.ln();
        let mut pairs = 0;
        let mut shares = Shares::new();
        for (ln, hypothesis) in &self.list {
            let class = class(hypothesis);
            let of = |lns: &[f32; Cause::COUNT + 1]| lns.get(class).copied().unwrap_or(NOTHING);
            let share = exponential((ln - of(&here) + of(&class_ln) - all).clamp(-80.0, 0.0));
            let state = if class == PAIR {
                pairs += 1;
                Cause::COUNT + pairs - 1
            } else {
                class
            };
            let cause = hypothesis.each_cause().next().unwrap_or(Cause::None);
            // As long as the list it is made of; collecting into it could panic.
            shares.push(Share { share, state, cause, hypothesis }).ok();
        }
        shares
    }
}

/// What every way to go on costs in every state, hours of work.
pub(crate) fn costs(shares: &[Share<'_>], prices: &Prices) -> Costing {
    let mut costs = [[0.0; WAYS]; STATES];
    let hour = prices.hour.max(1.0e-6);
    for share in shares {
        if let Some(row) = costs.get_mut(share.state) {
            for (slot, way) in row.iter_mut().zip(Action::WAYS) {
                *slot = way.cost(prices, share.faults()) / hour;
            }
        }
    }
    costs
}

/// What every way to go on costs in every state, hours of work; one row a state.
pub(crate) type Costing = [[f32; WAYS]; STATES];
/// All that is kept, with its shares.
pub(crate) type Shares<'a> = heapless::Vec<Share<'a>, KEPT>;

/// The logarithm of no weight at all.
const NOTHING: f32 = -1.0e29;
