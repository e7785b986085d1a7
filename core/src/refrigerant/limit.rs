//! Limits of numbers: f32's own clamp may panic, and its max and min are function calls on some targets.

/// Takes the larger of two numbers; the second where it is not a number.
#[inline(always)]
pub(super) fn at_least(limit: f32, x: f32) -> f32 {
    if x < limit { limit } else { x }
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
