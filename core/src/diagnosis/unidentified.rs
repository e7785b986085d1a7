//! Something wrong that no listed cause explains.
//!
//! Whatever it is, the machine still runs its cycle: its readings move together in the ways in which the listed causes
//! move them, singly, against each other and all at once, and each of them by itself a little.

use super::hypothesis::{Hypothesis, Step, Unlisted};
use super::signature::Ladder;
use crate::cause::Cause;
use crate::symptom::{CHANNELS, CURRENT, POWER, Vector};
use heapless::Vec;

/// Prior probability that something is wrong which is none of the listed causes (judged: load, door, controls, a
/// blocked drain, a wrong part; most calls end with a listed one).
const UNIDENTIFIED: f32 = 0.03;
/// Standard deviation along each cause's movement, in movements of its middle severity.
const AS_FAR_AS: f32 = 1.5;
/// Standard deviation of every channel by itself: kelvin, and percent of current and power.
const BY_ITSELF: Vector = {
    let mut all = [3.0; CHANNELS];
    all[CURRENT] = 8.0;
    all[POWER] = 8.0;
    all
};

/// The ways in which something unknown moves the readings: one for each cause that has a balance.
pub(crate) type Something<'a> = Vec<Step<'a>, { Cause::COUNT }>;

/// Collects the movements of all causes at their middle severities.
pub(crate) fn something<'a>(ladders: &'a [Ladder; Cause::COUNT - 1], healthy: &'a Vector) -> Something<'a> {
    let mut all = Vec::new();
    for node in ladders.iter().filter_map(|ladder| ladder.get(1)) {
        if all.push(Step::part(healthy, &node.shift, AS_FAR_AS)).is_err() {
            break;
        }
    }
    all
}

/// Calls `each` with it.
pub(crate) fn each(something: &[Step<'_>], each: &mut dyn FnMut(&Hypothesis, &[Step<'_>])) {
    let ln_prior = libm::logf(UNIDENTIFIED);
    let hypothesis = Hypothesis::unlisted(Unlisted::Unidentified, [0.0; CHANNELS], ln_prior);
    each(&Hypothesis { loose: BY_ITSELF, ..hypothesis }, something);
}
