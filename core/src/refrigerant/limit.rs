//! Limits of numbers: f32's own clamp may panic, and its max and min are function calls on some targets.

/// Takes the larger of two numbers; the limit where the other is not a number.
#[inline(always)]
pub(super) fn at_least(limit: f32, x: f32) -> f32 {
    if x > limit { x } else { limit }
}

/// Holds a number between two.
#[inline(always)]
pub(super) fn between(low: f32, x: f32, high: f32) -> f32 {
    if x < low {
        low
    } else if x > high {
        high
    } else {
        x
    }
}
