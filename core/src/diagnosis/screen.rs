//! Which pairs of causes are worth the whole sum: most lie far from the readings.

use super::hypothesis::SIGNATURE_FRACTION;
use super::likelihood::square;
use super::signature::{Ladder, USUAL};
use crate::cause::Cause;
use crate::student_t::ln_student;
use crate::symptom::{CHANNELS, Deviation, Vector};
use crate::triangular::Factor;

/// Pairs for which what two causes do together is solved, at most: more of them change little on the rig.
const SOLVED_PAIRS: usize = 8;

/// Nats over which a pair's own solution fades in.
const FADE_NATS: f32 = 1.0;

/// The pairs that promise most, and the next one, from whose promise on what they do together fades in.
pub(super) struct Promising {
    pairs: [(f32, [Option<Cause>; 2]); SOLVED_PAIRS + 1],
}

impl Promising {
    /// None yet; only what promises more than this counts.
    pub(super) fn new(least: f32) -> Self {
        Self { pairs: [(least, [None; 2]); SOLVED_PAIRS + 1] }
    }
    pub(super) fn see(&mut self, causes: [Option<Cause>; 2], promise: f32) {
        let known = self.pairs.iter_mut().find(|pair| pair.1 == causes);
        if let Some(pair) = known {
            pair.0 = pair.0.max(promise);
        } else if let Some(least) = self.pairs.iter_mut().min_by(|a, b| a.0.total_cmp(&b.0))
            && promise > least.0
        {
            *least = (promise, causes);
        }
    }
    /// The share of its own solution that counts for a pair.
    pub(super) fn share(&self, causes: [Option<Cause>; 2]) -> f32 {
        let least = self.pairs.iter().map(|pair| pair.0).fold(f32::INFINITY, f32::min);
        let own = self.pairs.iter().find(|pair| pair.1 == causes).map_or(least, |pair| pair.0);
        fade((own - least) / FADE_NATS)
    }
}

/// From 0 at 0 to 1 at 1 with level ends.
pub(super) fn fade(x: f32) -> f32 {
    let x = x.max(0.0).min(1.0);
    x * x * (3.0 - 2.0 * x)
}

/// A cheap look at a pair.
pub(super) struct Screen {
    /// ln det of the smallest spread, which bounds every pair's from below.
    ln_least_det: f32,
}

impl Screen {
    /// Factors the covariance with the largest shifts' spread on every channel; two such shifts at most add up.
    pub(super) fn new(
        deviation: &Deviation,
        ladders: &[Ladder; Cause::COUNT - 1],
        factor: &mut Factor,
        ln_least_det: f32,
    ) -> Option<Self> {
        let mut widest = [0.0f32; CHANNELS];
        for node in ladders.iter().flat_map(|ladder| ladder.iter().take(USUAL)) {
            for (widest, shift) in widest.iter_mut().zip(&node.shift) {
                *widest = widest.max(2.0 * SIGNATURE_FRACTION * shift.abs());
            }
        }
        deviation.invert(factor, &widest, core::iter::empty()).then_some(Self { ln_least_det })
    }

    /// An upper bound, near enough, of a node's ln likelihood.
    pub(super) fn ln(&self, factor: &Factor, deviation: &Deviation, shift: &Vector) -> f32 {
        ln_student(square(&deviation.whiten(factor, shift)), deviation.size(), self.ln_least_det)
    }
}
