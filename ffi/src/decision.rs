//! What each way to go on is expected to cost.

use crate::boundary::{Fault, Sized4, input_size, take, writable, write_sized};
use crate::generated::inputs::RimewiseCosts;
use crate::status::{RimewiseStatus, RimewiseStatus as Status};
use rimewise::cause::Cause;
use rimewise::decision::{self, Action, Costs};
use rimewise::field::Value;

/// Most ways to go on in a decision.
pub const RIMEWISE_ALTERNATIVES_MAX: usize = 16;
/// The bit of RimewiseDecision.valid that says a way is recommended.
pub const RIMEWISE_DECISION_RECOMMENDED: u32 = 1;
/// The bit of RimewiseAlternative.valid that says `expected_cost` is there.
pub const RIMEWISE_ALTERNATIVE_COST: u32 = 1;

/// A way to go on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewiseWay {
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

/// A way to go on with its expected cost.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct RimewiseAlternative {
    /// A RimewiseWay.
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
    /// The recommended RimewiseWay; 0 where no cost is known.
    pub recommended: i32,
    /// The RimewiseCause whose repair is recommended; 0 for the other actions.
    pub recommended_cause: i32,
    /// Number of entries of `alternatives`.
    pub alternative_count: u32,
    /// Every way to go on.
    pub alternatives: [RimewiseAlternative; RIMEWISE_ALTERNATIVES_MAX],
}

// SAFETY: repr(C), begins with its size, 4-byte numbers only.
unsafe impl Sized4 for RimewiseDecision {
    const FIRST: u32 = 276;
}

/// Writes the repair of a cause; what is beyond the causes that core knows is not looked at.
pub(crate) fn set_repair(costs: &mut Costs, cause: u8, value: Option<Value>) -> bool {
    if let Some(place) = costs.repair.get_mut(usize::from(cause)) {
        *place = match value {
            Some(Value::Number(cost)) => Some(cost),
            _ => None,
        };
    }
    true
}

const fn action(action: Action) -> (i32, i32) {
    match action {
        Action::Leave => (RimewiseWay::Leave as i32, 0),
        Action::Test => (RimewiseWay::Test as i32, 0),
        Action::Repair(cause) => (RimewiseWay::Repair as i32, cause.code()),
        Action::ReplaceCompressor => (RimewiseWay::ReplaceCompressor as i32, 0),
        Action::ReplaceMachine => (RimewiseWay::ReplaceMachine as i32, 0),
    }
}

/// Weighs every way to go on by its expected cost.
///
/// `probabilities` are `count` numbers by the number of their RimewiseCause, such as those of a report; they are scaled
/// to sum to one, and those of causes past the end are 0. `test_settles` is the chance, 0 to 1, that the next test
/// settles the cause. A cost that is not known stands in its usual ratio to those that are; nothing is recommended where
/// none is. Errors: WRONG_SIZE, OUT_OF_RANGE where `count` is above the library's causes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_decide(
    probabilities: *const f32,
    count: u32,
    costs: *const RimewiseCosts,
    test_settles: f32,
    decision: *mut RimewiseDecision,
) -> RimewiseStatus {
    if probabilities.is_null() {
        return Status::NullPointer;
    }
    // SAFETY: the contract of the header.
    unsafe {
        let size = match (input_size(costs), writable(decision)) {
            (Ok(_), Ok(size)) => size,
            (Err(status), _) | (_, Err(status)) => return status,
        };
        let mut known = Costs::default();
        if let Err(Fault::Status(status)) = take(costs, &mut known) {
            return status;
        }
        if count as usize > Cause::COUNT {
            return Status::OutOfRange;
        }
        let mut chances = [0.0; Cause::COUNT];
        for (position, chance) in chances.iter_mut().enumerate().take(count as usize) {
            *chance = probabilities.add(position).read_unaligned();
        }
        let found = decision::weigh(&chances, &known, test_settles);
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
