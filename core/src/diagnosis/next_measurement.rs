//! What each measurement not yet taken would tell: its expected information on the cause, and what it is worth.
//!
//! For every hypothesis that is kept the posterior predictive of a channel is normal; over all of them it is a mixture,
//! and what it tells is summed on a grid of outcomes (`value`).

use super::evidence::{
    FIRST_OBSERVATION, Factors, PUMP_DOWN, RECOVERED, STANDING, charge_left, outcomes, recovered_spread,
};
use super::hypothesis::Hypothesis;
use super::kept::{Costing, KEPT, STATES, Share};
use super::likelihood::{square, whiten};
use super::observed::OUTCOMES;
use super::value::{Appraisal, Information, Outlook};
use crate::cause::Cause;
use crate::charge::standing::{self, Circuit};
use crate::compressor::pump_down::{self, Conditions};
use crate::exponential::exponential;
use crate::measurement::Measurement;
use crate::symptom::{CHANNELS, Deviation, Matrix, READING, Vector};
use crate::triangular::Factor;

/// Grid points over the predictive.
const GRID: u8 = 20;
/// Candidates: every channel, then every other kind of evidence.
pub(crate) const CANDIDATES: usize = CHANNELS + Factors::COUNT;

/// Mean and standard deviation of one reading under each hypothesis kept.
pub(crate) type Predictive = [(f32, f32); KEPT];

/// What the information is computed from.
pub(crate) struct Known<'a> {
    pub(crate) deviation: &'a Deviation,
    /// Covariance of all channels, without instruments, and the instruments' variances.
    pub(crate) covariance: &'a Matrix,
    pub(crate) noise: &'a Vector,
    pub(crate) factors: &'a Factors,
    pub(crate) conditions: Option<Conditions>,
    pub(crate) circuit: Option<Circuit>,
    /// What is kept, with its shares.
    pub(crate) shares: &'a [Share<'a>],
    pub(crate) costing: &'a Costing,
    pub(crate) outlook: &'a Outlook,
}

impl Known<'_> {
    /// The explanations kept.
    fn hypotheses(&self) -> impl Iterator<Item = &Hypothesis> {
        self.shares.iter().map(|share| share.hypothesis)
    }
}

/// Computes what every candidate that was not measured would tell; nothing for the others.
pub(crate) fn information(
    known: &Known<'_>,
    factor: &mut Factor,
    predictive: &mut [Predictive; CHANNELS],
    result: &mut [Information; CANDIDATES],
) {
    *result = [Information::NONE; CANDIDATES];
    predict(known, factor, predictive);
    for i in 0..CHANNELS {
        if !known.deviation.uses(i) {
            // A healthy machine's own spread says what counts as expected.
            let healthy = libm::sqrtf((known.covariance[i][i] + known.noise[i]).max(0.05));
            result[i] = continuous(known, &predictive[i], (0.0, healthy));
        }
    }
    let given = known.factors.given();
    let mut put = |kind: usize, what: Information| {
        if let Some(slot) = result.get_mut(CHANNELS + kind) {
            *slot = what;
        }
    };
    if let Some(conditions) = known.conditions.filter(|_| !given[PUMP_DOWN]) {
        let limit = |loss: f32| {
            pump_down::limit_kpa(&conditions, loss)
                .map(|limit| (libm::logf(limit.value), (limit.u / limit.value).max(0.05)))
        };
        let mut limits = [(0.0f32, 1.0f32); KEPT];
        for (slot, hypothesis) in limits.iter_mut().zip(known.hypotheses()) {
            if let Some(limit) = limit(hypothesis.severity(Cause::WeakCompressor).min(0.95)) {
                *slot = limit;
            }
        }
        put(PUMP_DOWN, continuous(known, &limits, limit(0.0).unwrap_or((0.0, 1.0))));
    }
    if let Some(circuit) = known.circuit.filter(|_| !given[STANDING]) {
        let stands = |hypothesis: &Hypothesis| {
            let excess = hypothesis.severity(Cause::NonCondensables);
            standing::predicted(circuit, charge_left(hypothesis), excess)
        };
        let mut each = [(0.0f32, 1.0f32); KEPT];
        for (slot, hypothesis) in each.iter_mut().zip(known.hypotheses()) {
            *slot = stands(hypothesis);
        }
        put(STANDING, continuous(known, &each, stands(&Hypothesis::HEALTHY)));
    }
    if !given[RECOVERED] {
        let mut held = [(0.0f32, 1.0f32); KEPT];
        for (slot, hypothesis) in held.iter_mut().zip(known.hypotheses()) {
            *slot = (libm::logf(charge_left(hypothesis)), recovered_spread(hypothesis));
        }
        put(RECOVERED, continuous(known, &held, (0.0, recovered_spread(&Hypothesis::HEALTHY))));
    }
    for (kind, given) in given.iter().enumerate().skip(FIRST_OBSERVATION) {
        if !given {
            put(kind, discrete(known, kind));
        }
    }
}

/// The posterior predictive of every open channel under each hypothesis.
fn predict(known: &Known<'_>, factor: &mut Factor, predictive: &mut [Predictive; CHANNELS]) {
    let deviation = known.deviation;
    for (k, hypothesis) in known.hypotheses().enumerate() {
        let shift = &hypothesis.shift;
        // The severity is taken as known here: what lies between two of them adds little to what a reading may show.
        let Some(white) = whiten(deviation, factor, hypothesis, &[]) else { continue };
        // The Student predictive is wider where the readings sit far out.
        let widen = (8.0 + square(&white)) / (8.0 + deviation.size() as f32);
        for i in 0..CHANNELS {
            if deviation.uses(i) {
                continue;
            }
            let cross = factor.whiten(&deviation.packed(&known.covariance[i]));
            let mut mean = shift[i];
            let mut variance = known.covariance[i][i] + known.noise[i] + 0.01 * shift[i] * shift[i];
            for (c, w) in cross.iter().zip(&white) {
                mean += c * w;
                variance -= c * c;
            }
            if let Some(slot) = predictive[i].get_mut(k) {
                *slot = (mean, libm::sqrtf((variance * widen).max(0.05)));
            }
        }
    }
}

/// The name of a candidate.
pub(crate) fn measurement(candidate: usize) -> Option<Measurement> {
    match READING.get(candidate) {
        Some(reading) => Some(*reading),
        None => Factors::MEASUREMENT.get(candidate - CHANNELS).copied(),
    }
}

fn continuous(known: &Known<'_>, predictive: &Predictive, (expected, healthy): (f32, f32)) -> Information {
    let mut live: heapless::Vec<(f32, usize, f32, f32), KEPT> = heapless::Vec::new();
    let (mut low, mut high) = (f32::INFINITY, f32::NEG_INFINITY);
    for (share, (mean, sd)) in known.shares.iter().zip(predictive) {
        if share.share > 1.0e-3 {
            low = low.min(mean - 2.5 * sd);
            high = high.max(mean + 2.5 * sd);
            // The list has room for all that is kept.
            let _ = live.push((share.share / (2.506_628 * sd), share.state, *mean, 1.0 / sd));
        }
    }
    let step = (high - low) / f32::from(GRID);
    if !(step > 0.0 && step.is_finite()) {
        return Information::NONE;
    }
    let mut appraisal = Appraisal::new(known.shares, known.costing, known.outlook);
    for point in 0..GRID {
        let x = low + (f32::from(point) + 0.5) * step;
        let mut joint = [0.0; STATES];
        for (height, state, mean, precision) in &live {
            let z = (x - mean) * precision;
            if let Some(slot) = joint.get_mut(*state).filter(|_| z * z < 40.0) {
                *slot += height * exponential(-0.5 * z * z) * step;
            }
        }
        // In the order of the outcomes' names: lower, higher, as expected.
        let group = if x < expected - healthy {
            0
        } else if x > expected + healthy {
            1
        } else {
            OUTCOMES - 1
        };
        appraisal.outcome(&joint, group);
    }
    appraisal.finish()
}

fn discrete(known: &Known<'_>, kind: usize) -> Information {
    let mut joints = [[0.0; STATES]; OUTCOMES];
    for share in known.shares {
        let Some(chances) = outcomes(kind, share.hypothesis) else { return Information::NONE };
        for (joint, chance) in joints.iter_mut().zip(chances) {
            if let Some(slot) = joint.get_mut(share.state) {
                *slot += share.share * chance;
            }
        }
    }
    let mut appraisal = Appraisal::new(known.shares, known.costing, known.outlook);
    for (group, joint) in joints.iter().enumerate() {
        appraisal.outcome(joint, group);
    }
    appraisal.finish()
}
