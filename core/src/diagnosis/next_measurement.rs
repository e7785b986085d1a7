//! What each measurement not yet taken would tell: its expected information on the cause.
//!
//! For every hypothesis that still carries weight the posterior predictive of a channel is normal; over all of them
//! it is a mixture, and the information is the entropy of the mixture over causes before minus the expected one
//! after, summed on a grid.

use super::cause::Cause;
use super::evidence::{Factors, outcomes};
use super::posterior::{Hypothesis, Judge, hypotheses};
use super::signature::Ladder;
use super::symptom::{CHANNELS, Matrix, READING, Vector};
use crate::compressor::pump_down::{self, Conditions};
use crate::measurement::Measurement;

/// Hypotheses kept; the rest carry too little weight to matter for what to measure next.
const KEPT: usize = 24;
/// Grid points over the predictive.
const GRID: u8 = 20;
/// Candidates: every channel, then every other kind of evidence.
pub(crate) const CANDIDATES: usize = CHANNELS + Factors::COUNT;

/// Information in bits on all causes together, and on each cause being there or not.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Information {
    pub(crate) all: f32,
    pub(crate) each: [f32; Cause::COUNT],
}

/// One hypothesis that carries weight.
#[derive(Clone, Copy)]
struct Weighed {
    ln: f32,
    class: usize,
    loss: f32,
    hypothesis: Hypothesis,
}

/// The hypotheses with the most weight, normalised.
struct Kept {
    list: heapless::Vec<Weighed, KEPT>,
}

impl Kept {
    fn new(judge: &Judge, ladders: &[Ladder; Cause::COUNT - 1], factors: &Factors) -> Self {
        let mut list: heapless::Vec<Weighed, KEPT> = heapless::Vec::new();
        hypotheses(ladders, |hypothesis| {
            let Some(likelihood) = judge.likelihood(&hypothesis.shift) else { return };
            let others: f32 = factors.ln_each(hypothesis).iter().sum();
            let ln = hypothesis.ln_prior + likelihood.ln_all + others;
            // A pair stands with its first cause: the list stays one of causes.
            let class = hypothesis.causes[0].or(hypothesis.causes[1]).map_or(0, Cause::index);
            let new = Weighed { ln, class, loss: hypothesis.loss(), hypothesis: *hypothesis };
            if let Err(new) = list.push(new) {
                // Full: the lightest makes room.
                if let Some(lightest) = list.iter_mut().min_by(|a, b| a.ln.total_cmp(&b.ln))
                    && lightest.ln < new.ln
                {
                    *lightest = new;
                }
            }
        });
        let top = list.iter().map(|w| w.ln).fold(-1.0e30, f32::max);
        let sum: f32 = list.iter().map(|w| libm::expf((w.ln - top).max(-80.0))).sum();
        for weighed in &mut list {
            weighed.ln = libm::expf((weighed.ln - top).max(-80.0)) / sum;
        }
        Self { list }
    }
}

/// Computes the information of every candidate that was not measured; zero for the others.
pub(crate) fn information(
    judge: &Judge,
    covariance: &Matrix,
    noise: &Vector,
    ladders: &[Ladder; Cause::COUNT - 1],
    factors: &Factors,
    conditions: Option<Conditions>,
) -> [Information; CANDIDATES] {
    let kept = Kept::new(judge, ladders, factors);
    let mut result = [Information::default(); CANDIDATES];
    // Mean and standard deviation of each open channel under each hypothesis.
    let mut predictive = [[(0.0f32, 1.0f32); KEPT]; CHANNELS];
    for (k, weighed) in kept.list.iter().enumerate() {
        let shift = &weighed.hypothesis.shift;
        let Some((factor, residual)) = judge.factor(shift) else { continue };
        let white = factor.whiten(&residual);
        let square: f32 = white.iter().map(|w| w * w).sum();
        // The Student predictive is wider where the readings sit far out.
        let widen = (8.0 + square) / (8.0 + judge.channels() as f32);
        for i in 0..CHANNELS {
            if judge.given()[i] {
                continue;
            }
            let mut cross = [0.0; CHANNELS];
            for (j, cross) in cross.iter_mut().enumerate() {
                if judge.given()[j] {
                    *cross = covariance[i][j];
                }
            }
            let white_cross = factor.whiten(&cross);
            let (mut mean, mut variance) =
                (shift[i], covariance[i][i] + noise[i] + 0.01 * shift[i] * shift[i]);
            for (c, w) in white_cross.iter().zip(&white) {
                mean += c * w;
                variance -= c * c;
            }
            if let Some(slot) = predictive[i].get_mut(k) {
                *slot = (mean, libm::sqrtf((variance * widen).max(0.05)));
            }
        }
    }
    for i in 0..CHANNELS {
        if !judge.given()[i] {
            result[i] = continuous(&kept, &predictive[i]);
        }
    }
    let given = factors.given();
    if let Some(conditions) = conditions.filter(|_| !given[0]) {
        let mut limits = [(0.0f32, 1.0f32); KEPT];
        for (slot, weighed) in limits.iter_mut().zip(&kept.list) {
            if let Some(limit) = pump_down::limit_kpa(&conditions, weighed.loss) {
                *slot = (libm::logf(limit.value), (limit.u / limit.value).max(0.05));
            }
        }
        result[CHANNELS] = continuous(&kept, &limits);
    }
    for kind in 2..Factors::COUNT {
        if !given[kind]
            && let Some(slot) = result.get_mut(CHANNELS + kind)
        {
            *slot = discrete(&kept, |hypothesis| outcomes(kind, hypothesis));
        }
    }
    result
}

/// The name of a candidate.
pub(crate) fn measurement(candidate: usize) -> Option<Measurement> {
    match READING.get(candidate) {
        Some(reading) => Some(*reading),
        None => Factors::MEASUREMENT.get(candidate - CHANNELS).copied(),
    }
}

/// Adds one outcome's part: joint[c] is the probability of cause c and this outcome together.
fn tally(result: &mut Information, before: &[f32; Cause::COUNT], joint: &[f32; Cause::COUNT]) {
    let whole: f32 = joint.iter().sum();
    if !(whole > 1.0e-9) {
        return;
    }
    for ((each, joint), before) in result.each.iter_mut().zip(joint).zip(before) {
        if *joint > 1.0e-9 && *before > 1.0e-6 {
            let word = joint * libm::log2f(joint / (before * whole));
            result.all += word;
            *each += word;
            let (not, not_before) = ((whole - joint).max(0.0), 1.0 - before);
            if not > 1.0e-9 && not_before > 1.0e-6 {
                *each += not * libm::log2f(not / (not_before * whole));
            }
        }
    }
}

fn prior(kept: &Kept) -> [f32; Cause::COUNT] {
    let mut before = [0.0; Cause::COUNT];
    for weighed in &kept.list {
        if let Some(slot) = before.get_mut(weighed.class) {
            *slot += weighed.ln;
        }
    }
    before
}

fn continuous(kept: &Kept, predictive: &[(f32, f32); KEPT]) -> Information {
    let before = prior(kept);
    let live = || kept.list.iter().zip(predictive).filter(|(w, _)| w.ln > 1.0e-3);
    let (mut low, mut high) = (f32::INFINITY, f32::NEG_INFINITY);
    for (_, (mean, sd)) in live() {
        low = low.min(mean - 2.5 * sd);
        high = high.max(mean + 2.5 * sd);
    }
    let mut result = Information::default();
    let step = (high - low) / f32::from(GRID);
    if !(step > 0.0 && step.is_finite()) {
        return result;
    }
    let mut mass = 0.0;
    for point in 0..GRID {
        let x = low + (f32::from(point) + 0.5) * step;
        let mut joint = [0.0; Cause::COUNT];
        for (weighed, (mean, sd)) in live() {
            let z = (x - mean) / sd;
            let density = libm::expf(-0.5 * (z * z).min(80.0)) / (2.506_628 * sd);
            if let Some(slot) = joint.get_mut(weighed.class) {
                *slot += weighed.ln * density * step;
            }
        }
        mass += joint.iter().sum::<f32>();
        tally(&mut result, &before, &joint);
    }
    // A narrow predictive between coarse points would count for more or less than it is.
    if mass > 0.1 {
        result.all /= mass;
        result.each = result.each.map(|bits| bits / mass);
    }
    result
}

fn discrete(kept: &Kept, outcomes: impl Fn(&Hypothesis) -> Option<[f32; 3]>) -> Information {
    let before = prior(kept);
    let mut joints = [[0.0; Cause::COUNT]; 3];
    for weighed in &kept.list {
        let Some(chances) = outcomes(&weighed.hypothesis) else { return Information::default() };
        for (joint, chance) in joints.iter_mut().zip(chances) {
            if let Some(slot) = joint.get_mut(weighed.class) {
                *slot += weighed.ln * chance;
            }
        }
    }
    let mut result = Information::default();
    for joint in &joints {
        tally(&mut result, &before, joint);
    }
    result
}
