//! What each measurement not yet taken would tell: its expected information on the cause.
//!
//! For every hypothesis that still carries weight the posterior predictive of a channel is normal; over all of them
//! it is a mixture, and the information is the entropy of the mixture over causes before minus the expected one
//! after, summed on a grid.

use super::evidence::{Factors, charge_left, outcomes};
use super::hypothesis::Hypothesis;
use super::likelihood::{square, whiten};
use super::posterior::KEPT;
use crate::cause::Cause;
use crate::charge::standing::{self, Circuit};
use crate::compressor::pump_down::{self, Conditions};
use crate::measurement::Measurement;
use crate::symptom::{CHANNELS, Deviation, Matrix, READING, Vector};
use crate::triangular::Factor;

/// Grid points over the predictive.
const GRID: u8 = 20;
/// Candidates: every channel, then every other kind of evidence.
pub(crate) const CANDIDATES: usize = CHANNELS + Factors::COUNT;

/// Information in bits on all causes together, and on each cause being there or not.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Information {
    pub(crate) all: f32,
    pub(crate) each: [f32; Cause::COUNT],
}

impl Information {
    pub(crate) const NONE: Self = Self { all: 0.0, each: [0.0; Cause::COUNT] };
}

/// Mean and standard deviation of one reading under each hypothesis kept.
pub(crate) type Predictive = [(f32, f32); KEPT];

/// The hypotheses that carry weight, with their share of it.
#[derive(Clone, Copy)]
struct Kept<'a> {
    list: &'a [(f32, Hypothesis)],
    top: f32,
    sum: f32,
}

impl<'a> Kept<'a> {
    fn new(list: &'a [(f32, Hypothesis)]) -> Self {
        let top = list.iter().map(|(ln, _)| *ln).fold(-1.0e30, f32::max);
        let sum = list.iter().map(|(ln, _)| libm::expf((ln - top).max(-80.0))).sum();
        Self { list, top, sum }
    }
    /// Share, class and hypothesis; a pair stands with its first cause, so that the classes stay those of causes.
    fn each(&self) -> impl Iterator<Item = (f32, usize, &'a Hypothesis)> + '_ {
        self.list.iter().map(|(ln, hypothesis)| {
            let class = hypothesis.each_cause().next().map_or(0, Cause::index);
            (libm::expf((ln - self.top).max(-80.0)) / self.sum, class, hypothesis)
        })
    }
}

/// What the information is computed from.
pub(crate) struct Known<'a> {
    pub(crate) deviation: &'a Deviation,
    /// Covariance of all channels, without instruments, and the instruments' variances.
    pub(crate) covariance: &'a Matrix,
    pub(crate) noise: &'a Vector,
    pub(crate) factors: &'a Factors,
    pub(crate) conditions: Option<Conditions>,
    pub(crate) circuit: Option<Circuit>,
    pub(crate) kept: &'a [(f32, Hypothesis)],
}

/// Computes the information of every candidate that was not measured; zero for the others.
pub(crate) fn information(
    known: &Known<'_>,
    factor: &mut Factor,
    predictive: &mut [Predictive; CHANNELS],
    result: &mut [Information; CANDIDATES],
) {
    *result = [Information::NONE; CANDIDATES];
    let kept = Kept::new(known.kept);
    predict(known, factor, predictive);
    for i in 0..CHANNELS {
        if !known.deviation.uses(i) {
            result[i] = continuous(kept, &predictive[i]);
        }
    }
    let given = known.factors.given();
    if let Some(conditions) = known.conditions.filter(|_| !given[0]) {
        let mut limits = [(0.0f32, 1.0f32); KEPT];
        for (slot, (_, _, hypothesis)) in limits.iter_mut().zip(kept.each()) {
            if let Some(limit) =
                pump_down::limit_kpa(&conditions, hypothesis.severity(Cause::WeakCompressor).min(0.95))
            {
                *slot = (libm::logf(limit.value), (limit.u / limit.value).max(0.05));
            }
        }
        result[CHANNELS] = continuous(kept, &limits);
    }
    if let Some(circuit) = known.circuit.filter(|_| !given[1]) {
        let mut stands = [(0.0f32, 1.0f32); KEPT];
        for (slot, (_, _, hypothesis)) in stands.iter_mut().zip(kept.each()) {
            let excess = hypothesis.severity(Cause::NonCondensables);
            *slot = standing::predicted(circuit, charge_left(hypothesis), excess);
        }
        result[CHANNELS + 1] = continuous(kept, &stands);
    }
    for kind in 2..Factors::COUNT {
        if !given[kind]
            && let Some(slot) = result.get_mut(CHANNELS + kind)
        {
            *slot = discrete(kept, |hypothesis| outcomes(kind, hypothesis));
        }
    }
}

/// The posterior predictive of every open channel under each hypothesis.
fn predict(known: &Known<'_>, factor: &mut Factor, predictive: &mut [Predictive; CHANNELS]) {
    let deviation = known.deviation;
    for (k, (_, hypothesis)) in known.kept.iter().enumerate() {
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

fn prior(kept: Kept<'_>) -> [f32; Cause::COUNT] {
    let mut before = [0.0; Cause::COUNT];
    for (share, class, _) in kept.each() {
        if let Some(slot) = before.get_mut(class) {
            *slot += share;
        }
    }
    before
}

fn continuous(kept: Kept<'_>, predictive: &Predictive) -> Information {
    let before = prior(kept);
    let mut live: heapless::Vec<(f32, usize, f32, f32), KEPT> = heapless::Vec::new();
    let (mut low, mut high) = (f32::INFINITY, f32::NEG_INFINITY);
    for ((share, class, _), (mean, sd)) in kept.each().zip(predictive) {
        if share > 1.0e-3 {
            low = low.min(mean - 2.5 * sd);
            high = high.max(mean + 2.5 * sd);
            let _ = live.push((share / (2.506_628 * sd), class, *mean, 1.0 / sd));
        }
    }
    let mut result = Information::NONE;
    let step = (high - low) / f32::from(GRID);
    if !(step > 0.0 && step.is_finite()) {
        return result;
    }
    let mut mass = 0.0;
    for point in 0..GRID {
        let x = low + (f32::from(point) + 0.5) * step;
        let mut joint = [0.0; Cause::COUNT];
        for (height, class, mean, precision) in &live {
            let z = (x - mean) * precision;
            if let Some(slot) = joint.get_mut(*class).filter(|_| z * z < 40.0) {
                *slot += height * libm::expf(-0.5 * z * z) * step;
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

fn discrete(kept: Kept<'_>, outcomes: impl Fn(&Hypothesis) -> Option<[f32; 3]>) -> Information {
    let before = prior(kept);
    let mut joints = [[0.0; Cause::COUNT]; 3];
    for (share, class, hypothesis) in kept.each() {
        let Some(chances) = outcomes(hypothesis) else { return Information::NONE };
        for (joint, chance) in joints.iter_mut().zip(chances) {
            if let Some(slot) = joint.get_mut(class) {
                *slot += share * chance;
            }
        }
    }
    let mut result = Information::NONE;
    for joint in &joints {
        tally(&mut result, &before, joint);
    }
    result
}
