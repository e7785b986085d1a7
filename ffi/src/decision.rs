//! What each way to go on is expected to cost.

use crate::boundary::{Sized4, read, writable, write_sized};
use crate::status::{RimewiseStatus, RimewiseStatus as Status};
use core::mem::size_of;
use rimewise::cause::Cause;
use rimewise::decision::{self, Action, Costs};

/// Most ways to go on in a decision.
pub const RIMEWISE_ALTERNATIVES_MAX: usize = 12;
/// The bit of RimewiseDecision.valid that says a way is recommended.
pub const RIMEWISE_DECISION_RECOMMENDED: u32 = 1;
/// The bit of RimewiseAlternative.valid that says `expected_cost` is there.
pub const RIMEWISE_ALTERNATIVE_COST: u32 = 1;

/// A way to go on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewiseAction {
    /// Leave the machine as it is.
    Leave = 1,
    /// Make one more test, then do what is best.
    Test = 2,
    /// Repair the cause that stands beside it.
    Repair = 3,
    /// Replace the compressor.
    ReplaceCompressor = 4,
    /// Replace the machine.
    ReplaceMachine = 5,
}

/// What things cost, in one currency of the caller's choice; NaN is not known.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct RimewiseCosts {
    /// The size of this struct; set it before the call.
    pub size: u32,
    /// Coming out once more.
    pub visit: f32,
    /// The next test, its time and parts.
    pub test: f32,
    /// The repair of each cause, by the number of RimewiseCause; that of none is not looked at.
    pub repair: [f32; 10],
    /// A new compressor, fitted.
    pub compressor: f32,
    /// What is lost when the machine is left with its fault: the goods at risk times the chance that they spoil.
    pub product_at_risk: f32,
}

/// A way to go on with its expected cost.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct RimewiseAlternative {
    /// A RimewiseAction.
    pub action: i32,
    /// The RimewiseCause that is repaired; 0 for the other actions.
    pub cause: i32,
    /// RIMEWISE_ALTERNATIVE_COST where `expected_cost` is there; a cost that it needs may be missing.
    pub valid: u32,
    /// The expected cost.
    pub expected_cost: f32,
}

/// All ways to go on, and the cheapest.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct RimewiseDecision {
    /// The size of this struct; set it before the call.
    pub size: u32,
    /// RIMEWISE_DECISION_RECOMMENDED where a way is recommended.
    pub valid: u32,
    /// The recommended RimewiseAction; 0 where no cost is known.
    pub recommended: i32,
    /// The RimewiseCause whose repair is recommended; 0 for the other actions.
    pub recommended_cause: i32,
    /// Number of entries of `alternatives`.
    pub alternative_count: u32,
    /// Every way to go on.
    pub alternatives: [RimewiseAlternative; RIMEWISE_ALTERNATIVES_MAX],
}

// SAFETY: both are repr(C), begin with their size, and hold 4-byte numbers only.
unsafe impl Sized4 for RimewiseCosts {
    const FIRST: u32 = size_of::<Self>() as u32;
}
// SAFETY: as above.
unsafe impl Sized4 for RimewiseDecision {
    const FIRST: u32 = size_of::<Self>() as u32;
}

const UNKNOWN: RimewiseCosts = RimewiseCosts {
    size: 0,
    visit: f32::NAN,
    test: f32::NAN,
    repair: [f32::NAN; 10],
    compressor: f32::NAN,
    product_at_risk: f32::NAN,
};

const fn action(action: Action) -> (i32, i32) {
    match action {
        Action::Leave => (RimewiseAction::Leave as i32, 0),
        Action::Test => (RimewiseAction::Test as i32, 0),
        Action::Repair(cause) => (RimewiseAction::Repair as i32, cause.code()),
        Action::ReplaceCompressor => (RimewiseAction::ReplaceCompressor as i32, 0),
        Action::ReplaceMachine => (RimewiseAction::ReplaceMachine as i32, 0),
    }
}

/// Weighs every way to go on by its expected cost.
///
/// `probabilities` are ten numbers in the order of RimewiseCause, such as those of a report; they are scaled to sum to
/// one. `test_settles` is the chance, 0 to 1, that the next test settles the cause. A cost that is not known stands in its
/// usual ratio to those that are; nothing is recommended where none is. Errors: WRONG_SIZE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_decide(
    probabilities: *const f32,
    costs: *const RimewiseCosts,
    test_settles: f32,
    decision: *mut RimewiseDecision,
) -> RimewiseStatus {
    if probabilities.is_null() {
        return Status::NullPointer;
    }
    // SAFETY: the contract of the header.
    unsafe {
        let costs = match read(costs, UNKNOWN) {
            Ok(costs) => costs,
            Err(status) => return status,
        };
        let size = match writable(decision) {
            Ok(size) => size,
            Err(status) => return status,
        };
        let known = |cost: f32| if cost.is_nan() { None } else { Some(cost) };
        let costs = Costs {
            visit: known(costs.visit),
            test: known(costs.test),
            repair: costs.repair.map(known),
            compressor: known(costs.compressor),
            product_at_risk: known(costs.product_at_risk),
            ..Costs::default()
        };
        let mut chances = [0.0; Cause::COUNT];
        for (position, chance) in chances.iter_mut().enumerate() {
            *chance = probabilities.add(position).read_unaligned();
        }
        let found = decision::weigh(&chances, &costs, test_settles);
        let (recommended, recommended_cause) = found.recommended.map_or((0, 0), action);
        let mut value = RimewiseDecision {
            size: 0,
            valid: u32::from(found.recommended.is_some()) * RIMEWISE_DECISION_RECOMMENDED,
            recommended,
            recommended_cause,
            alternative_count: 0,
            alternatives: [RimewiseAlternative::default(); RIMEWISE_ALTERNATIVES_MAX],
        };
        for (place, way) in value.alternatives.iter_mut().zip(&found.alternatives) {
            let (action, cause) = action(way.action);
            *place = RimewiseAlternative {
                action,
                cause,
                valid: u32::from(way.expected_cost.is_some()) * RIMEWISE_ALTERNATIVE_COST,
                expected_cost: way.expected_cost.unwrap_or(0.0),
            };
            value.alternative_count += 1;
        }
        write_sized(decision, size, &value);
    }
    Status::Ok
}
