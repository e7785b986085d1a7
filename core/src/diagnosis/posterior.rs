//! The probability of every cause, singly and in pairs, with severity integrated out.

use super::cause::Cause;
use super::evidence::Factors;
use super::signature::{Ladder, Node};
use super::student::{Factor, ln_student};
use super::symptom::{CHANNELS, DRIER_OUTLET, LIQUID_LINE, Matrix, Measured, Vector};

/// A cause is present when it leaves less than this of capacity or COP.
pub(crate) const PRESENT_BELOW: f32 = 0.95;
/// Prior probability of a machine without a cause: a technician was called, so a cause is likely (judged).
const PRIOR_NONE: f32 = 0.4;
/// Prior probability of two causes at once (judged).
const PRIOR_PAIR: f32 = 0.12;
/// Prior weight of a severity too mild to count, against one that counts.
const MILD_WEIGHT: f32 = 0.05;
/// Standard deviation of a cause's signature as a fraction of itself.
const SIGNATURE_FRACTION: f32 = 0.10;
/// Probability that a restriction shows no drop between the clamps before and behind the drier (judged).
const SHOWS_NO_DROP: f32 = 0.2;
/// Prior probability that any one reading is grossly wrong.
const WRONG: f32 = 0.005;
/// Density of a grossly wrong reading, per kelvin or per percent of current: anything within some 60.
const LN_WRONG_DENSITY: f32 = -4.1;

/// The healthy prediction, the covariance and what was measured, packed to the channels in use.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Judge {
    /// Measured minus healthy.
    residual: Vector,
    /// Covariance of that, instruments included.
    covariance: Matrix,
    /// The channel at each place.
    at: [u8; CHANNELS],
    size: usize,
}

/// What a node's likelihood consists of; per-channel parts stand packed.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Likelihood {
    /// ln likelihood of all channels, with the chance that one reading is wrong.
    pub(crate) ln_all: f32,
    /// ln likelihood of all channels, no reading wrong.
    pub(crate) ln_clean: f32,
    /// ln likelihood with each channel left out.
    pub(crate) ln_without: Vector,
    /// Squared distance of all channels.
    pub(crate) square: f32,
}

impl Judge {
    pub(crate) const NEW: Self = Self {
        residual: [0.0; CHANNELS],
        covariance: [[0.0; CHANNELS]; CHANNELS],
        at: [0; CHANNELS],
        size: 0,
    };

    /// Packs what was measured, but for one channel that is left aside.
    pub(crate) fn set(
        &mut self,
        mean: &Vector,
        covariance: &Matrix,
        measured: &Measured,
        aside: Option<usize>,
    ) {
        self.size = 0;
        for channel in 0..CHANNELS {
            if measured.given[channel]
                && Some(channel) != aside
                && let (Some(at), Some(residual)) =
                    (self.at.get_mut(self.size), self.residual.get_mut(self.size))
            {
                *at = channel as u8;
                *residual = measured.value[channel] - mean[channel];
                self.size += 1;
            }
        }
        for (row, i) in self.covariance.iter_mut().zip(self.at).take(self.size) {
            let i = usize::from(i);
            for (cell, j) in row.iter_mut().zip(self.at).take(self.size) {
                let j = usize::from(j);
                *cell = covariance.get(i).and_then(|row| row.get(j)).copied().unwrap_or(0.0);
                if i == j {
                    *cell += measured.variance.get(i).copied().unwrap_or(0.0);
                }
            }
        }
    }

    /// The channels in use, in their packed order.
    pub(crate) fn channels(&self) -> impl Iterator<Item = usize> + '_ {
        self.at.iter().take(self.size).map(|at| usize::from(*at))
    }
    pub(crate) fn size(&self) -> usize {
        self.size
    }
    pub(crate) fn uses(&self, channel: usize) -> bool {
        self.channels().any(|c| c == channel)
    }
    /// Packs a vector over all channels.
    pub(crate) fn packed(&self, v: &Vector) -> Vector {
        let mut out = [0.0; CHANNELS];
        for (out, at) in out.iter_mut().zip(self.at).take(self.size) {
            *out = v.get(usize::from(at)).copied().unwrap_or(0.0);
        }
        out
    }

    /// Factors the covariance of a node with this shift; gives the node's whitened residual.
    pub(crate) fn whiten(&self, factor: &mut Factor, shift: &Vector) -> Option<Vector> {
        factor.matrix = self.covariance;
        let shift = self.packed(shift);
        let mut residual = self.residual;
        for i in 0..self.size.min(CHANNELS) {
            let off = SIGNATURE_FRACTION * shift[i];
            factor.matrix[i][i] += off * off;
            residual[i] -= shift[i];
        }
        factor.invert(self.size).then(|| factor.whiten(&residual))
    }

    /// ln likelihood of all channels, no reading wrong.
    pub(crate) fn ln_clean(&self, factor: &mut Factor, shift: &Vector) -> Option<f32> {
        let white = self.whiten(factor, shift)?;
        Some(ln_student(square(&white), self.size, factor.ln_det))
    }

    pub(crate) fn likelihood(&self, factor: &mut Factor, shift: &Vector) -> Option<Likelihood> {
        let white = self.whiten(factor, shift)?;
        let square = square(&white);
        let weighted = factor.back(&white);
        let precision = factor.precision();
        let ln_clean = ln_student(square, self.size, factor.ln_det);
        let mut ln_without = [ln_clean; CHANNELS];
        let mut sum = Sum::new();
        sum.add(ln_clean + libm::log1pf(-WRONG * self.size as f32));
        for i in 0..self.size.min(CHANNELS) {
            let rest = square - weighted[i] * weighted[i] / precision[i];
            let ln_det = factor.ln_det + libm::logf(precision[i]);
            ln_without[i] = ln_student(rest, self.size - 1, ln_det);
            sum.add(ln_without[i] + LN_WRONG + LN_WRONG_DENSITY);
        }
        Some(Likelihood { ln_all: sum.ln(), ln_clean, ln_without, square })
    }
}

/// The squared length of a whitened residual.
pub(crate) fn square(white: &Vector) -> f32 {
    white.iter().map(|w| w * w).sum()
}

/// ln of [`WRONG`].
const LN_WRONG: f32 = -5.298_317;

/// A sum of exponentials kept as its logarithm.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Sum {
    top: f32,
    rest: f32,
}

impl Sum {
    pub(crate) const fn new() -> Self {
        Self { top: -1.0e30, rest: 0.0 }
    }
    pub(crate) fn add(&mut self, ln: f32) {
        if ln > self.top {
            self.rest = self.rest * libm::expf((self.top - ln).max(-80.0)) + 1.0;
            self.top = ln;
        } else if ln > self.top - 18.0 {
            self.rest += libm::expf(ln - self.top);
        }
    }
    pub(crate) fn ln(&self) -> f32 {
        if self.rest > 0.0 { self.top + libm::logf(self.rest) } else { self.top }
    }
}

/// What one node stands for: up to two causes that count, and which one of them costs most.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Hypothesis {
    pub(crate) causes: [Option<Cause>; 2],
    pub(crate) severities: [f32; 2],
    pub(crate) ln_prior: f32,
    pub(crate) shift: Vector,
    /// The causes with their severities, those too mild to count included.
    pub(crate) members: [(Cause, f32); 2],
}

impl Hypothesis {
    /// The causes that count, or none.
    pub(crate) fn each_cause(&self) -> impl Iterator<Item = Cause> + '_ {
        let none = self.causes.iter().all(Option::is_none).then_some(Cause::None);
        self.causes.iter().copied().flatten().chain(none)
    }
    /// The largest of a table's entries for the causes that count.
    pub(crate) fn most(&self, table: &[f32; Cause::COUNT]) -> f32 {
        self.each_cause().map(|cause| table.get(cause.index()).copied().unwrap_or(0.0)).fold(0.0, f32::max)
    }
    /// The fraction of flow that the compressor lost.
    pub(crate) fn loss(&self) -> f32 {
        self.members.iter().filter(|(c, _)| *c == Cause::WeakCompressor).map(|(_, s)| *s).sum()
    }
}

/// Calls `each` with healthy and every cause at six severities.
pub(crate) fn singles(ladders: &[Ladder; Cause::COUNT - 1], mut each: impl FnMut(&Hypothesis)) {
    each(&Hypothesis {
        causes: [None, None],
        severities: [0.0; 2],
        ln_prior: libm::logf(PRIOR_NONE),
        shift: [0.0; CHANNELS],
        members: [(Cause::None, 0.0); 2],
    });
    let single = libm::logf((1.0 - PRIOR_NONE - PRIOR_PAIR) / 9.0);
    for (cause, ladder) in Cause::ALL.iter().skip(1).zip(ladders) {
        let mut weights = 0.0;
        for pass in 0..2 {
            let mut before = Node::HEALTHY;
            for node in ladder {
                for part in [0.5, 1.0] {
                    let here = Node::between(&before, node, part);
                    let counts = here.impact < PRESENT_BELOW;
                    let weight = if counts { 1.0 } else { MILD_WEIGHT };
                    if pass == 0 {
                        weights += weight;
                        continue;
                    }
                    let hypothesis = Hypothesis {
                        causes: [counts.then_some(*cause), None],
                        severities: [here.severity, 0.0],
                        ln_prior: single + libm::logf(weight / weights),
                        shift: here.shift,
                        members: [(*cause, here.severity), (Cause::None, 0.0)],
                    };
                    if *cause == Cause::LiquidLineRestriction {
                        each_restriction(&hypothesis, &mut each);
                    } else {
                        each(&hypothesis);
                    }
                }
                before = *node;
            }
        }
    }
}

/// A restriction shows a temperature drop at the drier only where it sits there and the liquid flashes in it; one
/// behind the clamp, or one that leaves the liquid subcooled, does not. Both are weighed.
fn each_restriction(hypothesis: &Hypothesis, each: &mut impl FnMut(&Hypothesis)) {
    let hidden = SHOWS_NO_DROP;
    let shown = Hypothesis { ln_prior: hypothesis.ln_prior + libm::logf(1.0 - hidden), ..*hypothesis };
    each(&shown);
    let mut shift = hypothesis.shift;
    shift[DRIER_OUTLET] = shift[LIQUID_LINE];
    each(&Hypothesis { ln_prior: hypothesis.ln_prior + libm::logf(hidden), shift, ..*hypothesis });
}

/// Calls `each` with every pair of causes at nine severities.
fn pairs(ladders: &[Ladder; Cause::COUNT - 1], mut each: impl FnMut(&Hypothesis)) {
    let pair = libm::logf(PRIOR_PAIR / (36.0 * 9.0));
    let named = || Cause::ALL.iter().skip(1).zip(ladders);
    for (i, (first, one)) in named().enumerate() {
        for (second, two) in named().skip(i + 1) {
            for a in one {
                for b in two {
                    // A member too mild to count leaves a single cause, which has its own hypotheses.
                    if a.impact >= PRESENT_BELOW || b.impact >= PRESENT_BELOW {
                        continue;
                    }
                    let mut shift = a.shift;
                    for (shift, b) in shift.iter_mut().zip(&b.shift) {
                        *shift += b;
                    }
                    each(&Hypothesis {
                        causes: [Some(*first), Some(*second)],
                        severities: [a.severity, b.severity],
                        ln_prior: pair,
                        shift,
                        members: [(*first, a.severity), (*second, b.severity)],
                    });
                }
            }
        }
    }
}

/// Hypotheses kept for what to measure next; the rest carry too little weight to matter there.
pub(crate) const KEPT: usize = 16;

/// Sums over classes that give ln odds in the end.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Tally {
    with: [Sum; Cause::COUNT],
    all: Sum,
}

impl Tally {
    pub(crate) const NEW: Self = Self { with: [Sum::new(); Cause::COUNT], all: Sum::new() };

    fn add(&mut self, hypothesis: &Hypothesis, ln: f32) {
        self.all.add(ln);
        for cause in hypothesis.each_cause() {
            if let Some(sum) = self.with.get_mut(cause.index()) {
                sum.add(ln);
            }
        }
    }
    fn probability(&self, cause: Cause) -> f32 {
        let with = self.with.get(cause.index()).map_or(-1.0e30, Sum::ln);
        libm::expf((with - self.all.ln()).max(-80.0)).min(1.0)
    }
    fn ln_odds(&self, cause: Cause) -> f32 {
        let p = self.probability(cause).max(1.0e-6).min(1.0 - 1.0e-6);
        libm::logf(p / (1.0 - p))
    }
}

/// A running mean severity whose weights are kept relative to the largest seen.
#[derive(Clone, Copy, Debug)]
struct MeanSeverity {
    weight: f32,
    top: f32,
    mean: f32,
}

impl MeanSeverity {
    const NEW: Self = Self { weight: 0.0, top: -1.0e30, mean: 0.0 };

    fn add(&mut self, severity: f32, ln: f32) {
        if ln > self.top {
            self.weight *= libm::expf((self.top - ln).max(-80.0));
            self.top = ln;
        }
        let weight = libm::expf((ln - self.top).max(-80.0));
        self.weight += weight;
        self.mean += (severity - self.mean) * weight / self.weight;
    }
}

/// The posterior, and the same with each channel and each other piece of evidence left out.
#[derive(Clone, Debug)]
pub(crate) struct Posterior {
    tally: Tally,
    clean: Tally,
    /// By packed channel.
    without_channel: [Tally; CHANNELS],
    without_factor: [Tally; Factors::COUNT],
    wrong: [Sum; CHANNELS],
    severity: [MeanSeverity; Cause::COUNT],
    best_ln: f32,
    /// Squared distance of the hypothesis that explains the readings best.
    pub(crate) best_square: f32,
    /// The heaviest hypotheses with their ln weight.
    pub(crate) kept: heapless::Vec<(f32, Hypothesis), KEPT>,
}

/// Nats below the best explanation at which a pair is passed over, by a distance under the largest shifts' spread.
const SCREEN_NATS: f32 = 9.0;

impl Posterior {
    pub(crate) const NEW: Self = Self {
        tally: Tally::NEW,
        clean: Tally::NEW,
        without_channel: [Tally::NEW; CHANNELS],
        without_factor: [Tally::NEW; Factors::COUNT],
        wrong: [Sum::new(); CHANNELS],
        severity: [MeanSeverity::NEW; Cause::COUNT],
        best_ln: -1.0e30,
        best_square: 0.0,
        kept: heapless::Vec::new(),
    };

    /// Sums all hypotheses.
    pub(crate) fn weigh(
        &mut self,
        judge: &Judge,
        ladders: &[Ladder; Cause::COUNT - 1],
        factors: &Factors,
        [factor, full]: &mut [Factor; 2],
    ) {
        self.clear();
        singles(ladders, |hypothesis| self.add(judge, factors, full, hypothesis));
        // Most pairs lie far from the readings. A factor under a spread that no pair's own exceeds by much tells
        // them cheaply.
        let Some(screen) = judge.screen(ladders, factor) else { return };
        pairs(ladders, |hypothesis| {
            let others: f32 = factors.ln_each(hypothesis).iter().sum();
            if screen.ln(factor, judge, &hypothesis.shift) + others > self.best_ln - SCREEN_NATS {
                self.add(judge, factors, full, hypothesis);
            }
        });
    }

    fn clear(&mut self) {
        self.tally = Tally::NEW;
        self.clean = Tally::NEW;
        for tally in self.without_channel.iter_mut().chain(&mut self.without_factor) {
            *tally = Tally::NEW;
        }
        self.wrong = [Sum::new(); CHANNELS];
        self.severity = [MeanSeverity::NEW; Cause::COUNT];
        self.best_ln = -1.0e30;
        self.best_square = 0.0;
        self.kept.clear();
    }

    fn add(&mut self, judge: &Judge, factors: &Factors, factor: &mut Factor, hypothesis: &Hypothesis) {
        let Some(likelihood) = judge.likelihood(factor, &hypothesis.shift) else { return };
        let others = factors.ln_each(hypothesis);
        let sum: f32 = others.iter().sum();
        let ln = hypothesis.ln_prior + likelihood.ln_all + sum;
        self.tally.add(hypothesis, ln);
        self.clean.add(hypothesis, hypothesis.ln_prior + likelihood.ln_clean + sum);
        if likelihood.ln_clean + sum > self.best_ln {
            self.best_ln = likelihood.ln_clean + sum;
            self.best_square = likelihood.square;
        }
        for ((tally, wrong), without) in
            self.without_channel.iter_mut().zip(&mut self.wrong).zip(likelihood.ln_without).take(judge.size())
        {
            let ln_without = hypothesis.ln_prior + without + sum;
            tally.add(hypothesis, ln_without);
            wrong.add(ln_without + LN_WRONG + LN_WRONG_DENSITY);
        }
        for ((tally, other), given) in self.without_factor.iter_mut().zip(others).zip(factors.given()) {
            if given {
                tally.add(hypothesis, ln - other);
            }
        }
        for (cause, severity) in hypothesis.causes.iter().zip(hypothesis.severities) {
            if let Some(mean) = cause.and_then(|cause| self.severity.get_mut(cause.index())) {
                mean.add(severity, ln);
            }
        }
        if let Err(new) = self.kept.push((ln, *hypothesis)) {
            // Full: the lightest makes room.
            if let Some(lightest) = self.kept.iter_mut().min_by(|a, b| a.0.total_cmp(&b.0))
                && lightest.0 < new.0
            {
                *lightest = new;
            }
        }
    }

    /// The probability that a cause is present; for `none`, that nothing is.
    pub(crate) fn probability(&self, cause: Cause) -> f32 {
        self.tally.probability(cause)
    }
    /// The mean severity of a cause where it is present.
    pub(crate) fn severity(&self, cause: Cause) -> f32 {
        self.severity.get(cause.index()).map_or(0.0, |severity| severity.mean)
    }
    /// What the channel at a packed place adds to the log-odds of a cause.
    pub(crate) fn channel_word(&self, place: usize, cause: Cause) -> f32 {
        // The word of a reading where no reading is wrong.
        self.without_channel.get(place).map_or(0.0, |t| self.clean.ln_odds(cause) - t.ln_odds(cause))
    }
    /// What a piece of other evidence adds to the log-odds of a cause.
    pub(crate) fn factor_word(&self, kind: usize, cause: Cause) -> f32 {
        self.without_factor.get(kind).map_or(0.0, |t| self.tally.ln_odds(cause) - t.ln_odds(cause))
    }
    /// The packed place of the reading that is most probably grossly wrong, and that probability.
    pub(crate) fn suspect(&self, judge: &Judge) -> Option<(usize, f32)> {
        let all = self.tally.all.ln();
        self.wrong
            .iter()
            .take(judge.size())
            .map(|sum| libm::expf((sum.ln() - all).max(-80.0).min(0.0)))
            .enumerate()
            .max_by(|a, b| a.1.total_cmp(&b.1))
    }
}

/// ln of the part of a screened likelihood that all pairs share.
struct Screen {
    ln_least_det: f32,
}

impl Judge {
    /// Factors the covariance with the largest single shift's spread on every channel, for the screen.
    fn screen(&self, ladders: &[Ladder; Cause::COUNT - 1], factor: &mut Factor) -> Option<Screen> {
        // The determinant of the smallest spread bounds every pair's from below.
        factor.matrix = self.covariance;
        if !factor.invert(self.size) {
            return None;
        }
        let ln_least_det = factor.ln_det;
        let mut widest = [0.0f32; CHANNELS];
        for ladder in ladders {
            for node in ladder {
                for (widest, shift) in widest.iter_mut().zip(&node.shift) {
                    *widest = widest.max(shift.abs());
                }
            }
        }
        let widest = self.packed(&widest);
        factor.matrix = self.covariance;
        for i in 0..self.size.min(CHANNELS) {
            // Two such shifts at most add up.
            let off = 2.0 * SIGNATURE_FRACTION * widest[i];
            factor.matrix[i][i] += off * off;
        }
        factor.invert(self.size).then_some(Screen { ln_least_det })
    }
}

impl Screen {
    /// An upper bound, near enough, of a node's ln likelihood.
    fn ln(&self, factor: &Factor, judge: &Judge, shift: &Vector) -> f32 {
        let mut residual = judge.residual;
        for (residual, shift) in residual.iter_mut().zip(judge.packed(shift)) {
            *residual -= shift;
        }
        ln_student(square(&factor.whiten(&residual)), judge.size, self.ln_least_det)
    }
}
