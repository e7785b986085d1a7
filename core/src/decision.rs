//! What each way to go on is expected to cost, given the probabilities of the causes.
//!
//! Costs come from the people who bear them. Where one is missing that matters, nothing is recommended.

use crate::cause::Cause;
use crate::field::section;

section! {
    /// What things cost, in one currency of the caller's choice; `None` is not known.
    Costs at "costs" {
        /// Coming out once more.
        visit: Money = 540,
        /// An hour of work.
        hour: Money = 541,
        /// A new compressor, fitted.
        compressor: Money = 542,
        /// A new machine, installed.
        machine: Money = 543,
        /// What is lost each day that the machine does not do its work.
        loss_a_day: Money = 544,
        /// Days that the loss is reckoned over.
        horizon_days: Days = 545,
        /// The next test, its time and parts.
        test: Money = 546,
        /// What is lost when the machine is left with its fault: the goods at risk times the chance that they spoil.
        product_at_risk: Money = 547,
    }
    besides {
        /// The repair of each cause in the order of [`Cause`]; that of `none` is not looked at. A weak compressor's is
        /// its replacement, see `compressor`.
        repair: [Option<f32>; Cause::COUNT],
    }
}

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
}

/// A way to go on with its expected cost.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Alternative {
    /// The way.
    pub action: Action,
    /// The expected cost; `None` where a cost it needs is not known.
    pub expected_cost: Option<f32>,
}

/// All ways to go on, and the cheapest where every cost that matters is known.
#[derive(Clone, Debug, PartialEq)]
pub struct Decision {
    /// Every way: leave, test, a repair for each cause, a new compressor.
    pub alternatives: heapless::Vec<Alternative, 12>,
    /// The cheapest way; `None` where a cost that matters is missing, or the probabilities are not usable.
    pub recommended: Option<Action>,
}

/// Probability below which a cause's missing repair cost does not keep a recommendation back.
const IGNORED: f32 = 0.02;

/// Weighs every way to go on by its expected cost.
///
/// `probabilities` in the order of [`Cause`]; they are scaled to sum to one, as entries of a report count pairs
/// twice. A repair that was not the cause leaves the fault: one more visit and the product at risk. `test_settles` is
/// the chance, 0 to 1, that the next test settles the cause; once settled, the cheaper of its repair and leaving it
/// is taken. Costs are finite and not negative; others count as not known. Nothing is recommended unless the visit,
/// the test, the product, the compressor and the repair of every cause of 2 % or more are known.
pub fn weigh(probabilities: &[f32; Cause::COUNT], costs: &Costs, test_settles: f32) -> Decision {
    let mut alternatives: heapless::Vec<Alternative, 12> = heapless::Vec::new();
    let Some(p) = scaled(probabilities) else {
        return Decision { alternatives, recommended: None };
    };
    let mut add = |action, expected_cost: Option<f32>| {
        let expected_cost = expected_cost.filter(|c| c.is_finite());
        // Room for all eleven ways.
        let _ = alternatives.push(Alternative { action, expected_cost });
        expected_cost
    };
    let chance = |cause: Cause| p.get(cause.index()).copied().unwrap_or(0.0);
    let faulty = 1.0 - chance(Cause::None);
    let failing = sum(known(costs.visit), known(costs.product_at_risk));

    let leave = add(Action::Leave, failing.map(|failing| faulty * failing));
    let mut complete = leave.is_some();
    let mut cheapest = leave.map(|cost| (Action::Leave, cost));
    // Expected cost once the cause is known: its repair or living with it, whichever is cheaper.
    let mut settled = Some(0.0_f32);
    for cause in Cause::ALL.iter().copied().filter(|c| *c != Cause::None) {
        let (action, own, matters) = if cause == Cause::WeakCompressor {
            (Action::ReplaceCompressor, known(costs.compressor), true)
        } else {
            let own = costs.repair.get(cause.index()).copied().flatten();
            (Action::Repair(cause), known(own), chance(cause) >= IGNORED)
        };
        let other_fault = (faulty - chance(cause)).max(0.0);
        let cost = add(action, sum(own, failing.map(|failing| other_fault * failing)));
        complete &= cost.is_some() || !matters;
        cheapest = match (cheapest, cost) {
            (Some((_, least)), Some(cost)) if cost < least => Some((action, cost)),
            (kept, _) => kept,
        };
        let then = match (own, failing) {
            (Some(own), Some(failing)) => Some(own.min(failing)),
            (None, failing) if !matters => failing,
            _ => None,
        };
        settled = sum(settled, then.map(|then| chance(cause) * then));
    }
    let settles = if test_settles.is_nan() { 0.0 } else { test_settles.clamp(0.0, 1.0) };
    let after = match (settled, cheapest) {
        (Some(settled), Some((_, without))) => Some(settles * settled + (1.0 - settles) * without),
        _ => None,
    };
    let test = add(Action::Test, sum(known(costs.test), after));
    complete &= test.is_some();
    let recommended = match (cheapest, test) {
        (Some((_, least)), Some(test)) if complete && test < least => Some(Action::Test),
        (Some((action, _)), Some(_)) if complete => Some(action),
        _ => None,
    };
    Decision { alternatives, recommended }
}

/// A cost that can be reckoned with.
fn known(cost: Option<f32>) -> Option<f32> {
    cost.filter(|c| c.is_finite() && *c >= 0.0)
}

/// The sum of two costs, where both are known.
fn sum(a: Option<f32>, b: Option<f32>) -> Option<f32> {
    Some(a? + b?).filter(|s| s.is_finite())
}

/// The probabilities scaled to sum to one; nothing where one is not 0 to 1, or all are zero.
fn scaled(probabilities: &[f32; Cause::COUNT]) -> Option<[f32; Cause::COUNT]> {
    let total: f32 = probabilities.iter().sum();
    let usable = probabilities.iter().all(|p| (0.0..=1.0).contains(p)) && total > 1.0e-6;
    usable.then(|| probabilities.map(|p| p / total))
}
