//! The ways to go on, and what each is expected to cost.

use super::costs::{Costs, told};
use super::cures::cures;
use super::usual::{self, Prices};
use crate::cause::Cause;

/// A way to go on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Action {
    /// Leave the machine as it is.
    Leave,
    /// Make one more test, then do what is best.
    Test,
    /// Repair one cause other than the compressor.
    Repair(Cause),
    /// Replace the compressor.
    ReplaceCompressor,
    /// Replace the machine.
    ReplaceMachine,
}

/// Ways to go on without a further test.
pub(crate) const WAYS: usize = 11;

impl Action {
    /// Every way to go on without a further test.
    pub(crate) const WAYS: [Self; WAYS] = [
        Self::Leave,
        Self::Repair(Cause::Undercharge),
        Self::Repair(Cause::Overcharge),
        Self::Repair(Cause::LiquidLineRestriction),
        Self::Repair(Cause::MeteringUnderfeed),
        Self::Repair(Cause::FloodBack),
        Self::ReplaceCompressor,
        Self::Repair(Cause::CondenserAirflow),
        Self::Repair(Cause::EvaporatorAirflow),
        Self::Repair(Cause::NonCondensables),
        Self::ReplaceMachine,
    ];

    /// The remedy of one cause; nothing is done about none.
    pub(crate) const fn remedy(cause: Cause) -> Self {
        match cause {
            Cause::None => Self::Leave,
            Cause::WeakCompressor => Self::ReplaceCompressor,
            other => Self::Repair(other),
        }
    }

    /// What the way itself costs.
    fn own(self, prices: &Prices) -> f32 {
        match self {
            Self::Leave | Self::Test => 0.0,
            Self::Repair(cause) => prices.remedy(cause),
            Self::ReplaceCompressor => prices.remedy(Cause::WeakCompressor),
            Self::ReplaceMachine => prices.machine,
        }
    }

    /// Whether what the way costs by itself was told, the loss for leaving.
    fn is_told(self, costs: &Costs) -> bool {
        let cost = match self {
            Self::Leave => told(costs.loss_a_day).or(told(costs.product_at_risk)),
            Self::Test => told(costs.test),
            Self::Repair(cause) => costs.remedy(cause),
            Self::ReplaceCompressor => costs.remedy(Cause::WeakCompressor),
            Self::ReplaceMachine => told(costs.machine),
        };
        cost.is_some()
    }

    /// What the way costs in all on a machine that has these faults; none at all is a healthy one.
    ///
    /// Left alone, a fault costs its loss over the horizon. After a remedy that does not help, the loss runs until
    /// somebody comes again, who does the right one, replaces the machine, or leaves it, whichever is cheapest.
    pub(crate) fn cost(self, prices: &Prices, faults: [Option<Cause>; 2]) -> f32 {
        let faults = || faults.iter().flatten().copied().filter(|cause| *cause != Cause::None);
        if faults().next().is_none() {
            return self.own(prices);
        }
        if self == Self::Leave {
            return prices.left;
        }
        let (mut cured, mut remedies) = (1.0, 0.0);
        for fault in faults() {
            let cure = cures(self, fault);
            cured *= cure;
            remedies += (1.0 - cure) * prices.remedy(fault);
        }
        let uncured = 1.0 - cured;
        let again = (prices.visit + prices.waited) * uncured + remedies.min(prices.machine * uncured);
        self.own(prices) + again.min(prices.left * uncured)
    }
}

/// A way to go on with its expected cost.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Alternative {
    /// The way.
    pub action: Action,
    /// The expected cost; `None` where what the way costs by itself was not told.
    pub expected_cost: Option<f32>,
}

/// All ways to go on, and the cheapest.
#[derive(Clone, Debug, PartialEq)]
pub struct Decision {
    /// Every way: leave, a repair for each cause, a new compressor, a new machine, test.
    pub alternatives: heapless::Vec<Alternative, 12>,
    /// The cheapest way; `None` where no cost was told, or the probabilities are not usable.
    pub recommended: Option<Action>,
    /// The probability of a weak compressor above which replacing it is the cheapest, the other causes keeping their
    /// proportions; `None` where it never is, or as above.
    pub replace_above: Option<f32>,
}

/// Weighs every way to go on by its expected cost.
///
/// `probabilities` in the order of [`Cause`]; they are scaled to sum to one, as entries of a report count pairs
/// twice. `test_settles` is the chance, 0 to 1, that the next test settles the cause; once settled, the cheapest way
/// for that cause is taken. Costs are finite and not negative; others count as not told and stand in their usual ratio
/// to those that were told. Nothing is recommended where none was.
pub fn weigh(probabilities: &[f32; Cause::COUNT], costs: &Costs, test_settles: f32) -> Decision {
    let mut alternatives: heapless::Vec<Alternative, 12> = heapless::Vec::new();
    let scale = usual::scale(costs);
    let (Some(p), Some(_)) = (scaled(probabilities), scale) else {
        return Decision { alternatives, recommended: None, replace_above: None };
    };
    let prices = Prices::complete(costs);
    let expected = |way: Action| -> f32 {
        p.iter().zip(Cause::ALL).map(|(p, cause)| p * way.cost(&prices, [Some(*cause), None])).sum()
    };
    let mut add = |action: Action, cost: f32| {
        let expected_cost = Some(cost).filter(|c| c.is_finite() && action.is_told(costs));
        // Room for all twelve ways.
        let _ = alternatives.push(Alternative { action, expected_cost });
        cost
    };
    let (mut best, mut least) = (None, f32::INFINITY);
    for way in Action::WAYS {
        let cost = add(way, expected(way));
        if cost < least {
            (best, least) = (Some(way), cost);
        }
    }
    let settled: f32 = p.iter().zip(Cause::ALL).map(|(p, cause)| p * cheapest(&prices, *cause)).sum();
    let settles = if test_settles.is_nan() { 0.0 } else { test_settles.clamp(0.0, 1.0) };
    let price = told(costs.test);
    let test = add(Action::Test, price.unwrap_or(0.0) + settles * settled + (1.0 - settles) * least);
    if price.is_some() && test < least {
        best = Some(Action::Test);
    }
    Decision { alternatives, recommended: best, replace_above: replace_above(&p, &prices) }
}

/// The cheapest of leaving the machine and of the remedies of causes that are at least this probable.
///
/// As [`weigh`] otherwise; leaving it where the probabilities are not usable.
pub(crate) fn cheapest_of_likely(probabilities: &[f32; Cause::COUNT], costs: &Costs, likely: f32) -> Action {
    let Some(p) = scaled(probabilities) else { return Action::Leave };
    let prices = Prices::complete(costs);
    let expected = |way: Action| -> f32 {
        p.iter().zip(Cause::ALL).map(|(p, cause)| p * way.cost(&prices, [Some(*cause), None])).sum()
    };
    let mut best = (Action::Leave, expected(Action::Leave));
    let named = probabilities.iter().zip(Cause::ALL).filter(|(p, _)| **p >= likely);
    for way in named.map(|(_, cause)| Action::remedy(*cause)) {
        let cost = expected(way);
        if cost < best.1 {
            best = (way, cost);
        }
    }
    best.0
}

/// What the cheapest way costs where the cause is known.
fn cheapest(prices: &Prices, cause: Cause) -> f32 {
    Action::WAYS.iter().map(|way| way.cost(prices, [Some(cause), None])).fold(f32::INFINITY, f32::min)
}

/// The probability of a weak compressor above which replacing it is the cheapest way.
///
/// The other causes keep their proportions. Every way's cost is a line over that probability, so that replacing is the
/// cheapest over one interval, which has to reach up to certainty.
fn replace_above(p: &[f32; Cause::COUNT], prices: &Prices) -> Option<f32> {
    let weak = Cause::WeakCompressor;
    let others: f32 = p.iter().zip(Cause::ALL).filter(|(_, c)| **c != weak).map(|(p, _)| p).sum();
    // At the line's two ends: the compressor is weak for certain, or for certain not.
    let ends = |way: Action| {
        let failed = way.cost(prices, [Some(weak), None]);
        if others < 1.0e-6 {
            return (way.cost(prices, [None, None]), failed);
        }
        let rest = p.iter().zip(Cause::ALL).filter(|(_, cause)| **cause != weak);
        let sound: f32 = rest.map(|(p, cause)| p / others * way.cost(prices, [Some(*cause), None])).sum();
        (sound, failed)
    };
    let (sound, failed) = ends(Action::ReplaceCompressor);
    let mut above = 0.0f32;
    for way in Action::WAYS.iter().filter(|way| **way != Action::ReplaceCompressor) {
        let (other_sound, other_failed) = ends(*way);
        let (saves_failed, costs_sound) = (other_failed - failed, sound - other_sound);
        if saves_failed < 0.0 || (saves_failed == 0.0 && costs_sound > 0.0) {
            return None;
        }
        if costs_sound > 0.0 {
            above = above.max(costs_sound / (costs_sound + saves_failed));
        }
    }
    above.is_finite().then_some(above)
}

/// The probabilities scaled to sum to one; nothing where one is not 0 to 1, or all are zero.
fn scaled(probabilities: &[f32; Cause::COUNT]) -> Option<[f32; Cause::COUNT]> {
    let total: f32 = probabilities.iter().sum();
    let usable = probabilities.iter().all(|p| (0.0..=1.0).contains(p)) && total > 1.0e-6;
    usable.then(|| probabilities.map(|p| p / total))
}
