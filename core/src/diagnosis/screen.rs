//! Which pairs of causes are worth the whole sum: most lie far from the readings.

use super::hypothesis::{Hypothesis, SIGNATURE_FRACTION};
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
    /// What the least promising of them promises.
    least: f32,
}

impl Promising {
    /// None yet; only what promises more than this counts.
    pub(super) fn new(least: f32) -> Self {
        Self { pairs: [(least, [None; 2]); SOLVED_PAIRS + 1], least }
    }
    pub(super) fn see(&mut self, causes: [Option<Cause>; 2], promise: f32) {
        if promise <= self.least {
            return;
        }
        let known = self.pairs.iter_mut().find(|pair| pair.1 == causes);
        if let Some(pair) = known {
            pair.0 = pair.0.max(promise);
        } else if let Some(least) = self.pairs.iter_mut().min_by(|a, b| a.0.total_cmp(&b.0))
            && promise > least.0
        {
            *least = (promise, causes);
        }
        self.least = self.pairs.iter().map(|pair| pair.0).fold(f32::INFINITY, f32::min);
    }
    /// The share of its own solution that counts for a pair.
    pub(super) fn share(&self, causes: [Option<Cause>; 2]) -> f32 {
        let least = self.least;
        let own = self.pairs.iter().find(|pair| pair.1 == causes).map_or(least, |pair| pair.0);
        fade((own - least) / FADE_NATS)
    }
}

/// From 0 at 0 to 1 at 1 with level ends.
pub(super) fn fade(x: f32) -> f32 {
    let x = x.max(0.0).min(1.0);
    x * x * (3.0 - 2.0 * x)
}

/// What the pairs' first look is made of.
#[derive(Clone, Debug)]
pub(crate) struct Screened {
    /// Every usual node's movement, packed and whitened by the screen's factor.
    nodes: [[Vector; USUAL]; Cause::COUNT - 1],
    /// What speaks for each pair at its nodes beside the channels, in the order in which the pairs are called.
    pub(super) others: [f32; PAIRS_NODES],
}

/// Pairs at each two of their nodes, at most.
const PAIRS_NODES: usize = (Cause::COUNT - 1) * (Cause::COUNT - 2) / 2 * USUAL * USUAL;

impl Screened {
    pub(super) const NEW: Self =
        Self { nodes: [[[0.0; CHANNELS]; USUAL]; Cause::COUNT - 1], others: [0.0; PAIRS_NODES] };
}

/// A cheap look at a pair.
pub(super) struct Screen<'a> {
    ladders: &'a [Ladder; Cause::COUNT - 1],
    /// ln det of the smallest spread, which bounds every pair's from below.
    ln_least_det: f32,
    /// The readings' own deviation, whitened.
    white: Vector,
}

impl<'a> Screen<'a> {
    /// Factors the covariance with the largest shifts' spread on every channel; two such shifts at most add up. Whitens
    /// every node once, so that a pair costs a difference.
    pub(super) fn new(
        deviation: &Deviation,
        ladders: &'a [Ladder; Cause::COUNT - 1],
        factor: &mut Factor,
        ln_least_det: f32,
        screened: &mut Screened,
    ) -> Option<Self> {
        let mut widest = [0.0f32; CHANNELS];
        for node in ladders.iter().flat_map(|ladder| ladder.iter().take(USUAL)) {
            for (widest, shift) in widest.iter_mut().zip(&node.shift) {
                *widest = widest.max(2.0 * SIGNATURE_FRACTION * shift.abs());
            }
        }
        if !deviation.invert(factor, &widest, core::iter::empty()) {
            return None;
        }
        for (nodes, ladder) in screened.nodes.iter_mut().zip(ladders) {
            for (white, node) in nodes.iter_mut().zip(ladder) {
                *white = factor.whiten(&deviation.packed(&node.shift));
            }
        }
        Some(Self { ladders, ln_least_det, white: deviation.whiten(factor, &[0.0; CHANNELS]) })
    }

    /// An upper bound, near enough, of a node's ln likelihood.
    pub(super) fn ln(&self, factor: &Factor, deviation: &Deviation, shift: &Vector) -> f32 {
        self.ln_of(deviation, square(&deviation.whiten(factor, shift)))
    }

    /// The same of a pair that does no more together than each does alone.
    pub(super) fn ln_sum(
        &self,
        factor: &Factor,
        deviation: &Deviation,
        screened: &Screened,
        pair: &Hypothesis,
    ) -> f32 {
        let node = |cause: Option<Cause>, severity: f32| {
            let at = cause?.index().checked_sub(1)?;
            let place = self.ladders.get(at)?.iter().position(|node| node.severity == severity)?;
            screened.nodes.get(at)?.get(place)
        };
        let ([one, other], [here, there]) = (pair.causes, pair.severities);
        let Some((a, b)) = node(one, here).zip(node(other, there)) else {
            return self.ln(factor, deviation, &pair.shift);
        };
        let mut left = self.white;
        for ((left, a), b) in left.iter_mut().zip(a).zip(b) {
            *left -= a + b;
        }
        self.ln_of(deviation, square(&left))
    }

    fn ln_of(&self, deviation: &Deviation, square: f32) -> f32 {
        ln_student(square, deviation.size(), self.ln_least_det)
    }
}
