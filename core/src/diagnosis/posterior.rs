//! The probability of every cause, singly and in pairs, with severity integrated out.

use super::cause::Cause;
use super::evidence::Factors;
use super::signature::{Ladder, Node};
use super::student::{Factor, ln_student};
use super::symptom::{CHANNELS, DRIER_OUTLET, LIQUID_LINE, Matrix, Vector};

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

/// The healthy prediction, the covariance and what was measured: everything a node is judged by.
pub(crate) struct Judge {
    /// Measured minus healthy; zero where not measured.
    residual: Vector,
    /// Covariance of that, instruments included; unit rows where not measured.
    covariance: Matrix,
    given: [bool; CHANNELS],
    channels: usize,
}

/// What a node's likelihood consists of.
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
    pub(crate) fn new(
        mean: &Vector,
        covariance: &Matrix,
        measured: &super::symptom::Measured,
        use_channel: &[bool; CHANNELS],
    ) -> Self {
        let mut judge = Self {
            residual: [0.0; CHANNELS],
            covariance: *covariance,
            given: [false; CHANNELS],
            channels: 0,
        };
        for i in 0..CHANNELS {
            if measured.given[i] && use_channel[i] {
                judge.given[i] = true;
                judge.channels += 1;
                judge.residual[i] = measured.value[i] - mean[i];
                judge.covariance[i][i] += measured.variance[i];
            }
        }
        for i in 0..CHANNELS {
            if !judge.given[i] {
                for j in 0..CHANNELS {
                    judge.covariance[i][j] = 0.0;
                    judge.covariance[j][i] = 0.0;
                }
                judge.covariance[i][i] = 1.0;
            }
        }
        judge
    }

    pub(crate) fn given(&self) -> &[bool; CHANNELS] {
        &self.given
    }
    pub(crate) fn channels(&self) -> usize {
        self.channels
    }

    /// The covariance's factor for a node with this shift, and the node's residual.
    pub(crate) fn factor(&self, shift: &Vector) -> Option<(Factor, Vector)> {
        let mut covariance = self.covariance;
        let mut residual = self.residual;
        for i in 0..CHANNELS {
            if self.given[i] {
                let off = SIGNATURE_FRACTION * shift[i];
                covariance[i][i] += off * off;
                residual[i] -= shift[i];
            }
        }
        Some((Factor::new(&covariance)?, residual))
    }

    pub(crate) fn likelihood(&self, shift: &Vector) -> Option<Likelihood> {
        let (factor, residual) = self.factor(shift)?;
        let white = factor.whiten(&residual);
        let square: f32 = white.iter().map(|w| w * w).sum();
        let weighted = factor.back(&white);
        let precision = factor.precision();
        let ln_clean = ln_student(square, self.channels, factor.ln_det);
        let mut ln_without = [ln_clean; CHANNELS];
        let mut sum = Sum::new();
        sum.add(ln_clean + libm::log1pf(-WRONG * self.channels as f32));
        for i in 0..CHANNELS {
            if self.given[i] {
                let rest = square - weighted[i] * weighted[i] / precision[i];
                let ln_det = factor.ln_det + libm::logf(precision[i]);
                ln_without[i] = ln_student(rest, self.channels - 1, ln_det);
                sum.add(ln_without[i] + LN_WRONG + LN_WRONG_DENSITY);
            }
        }
        Some(Likelihood { ln_all: sum.ln(), ln_clean, ln_without, square })
    }
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
        } else if ln > self.top - 40.0 {
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

/// Calls `each` with every hypothesis: healthy, every cause at six severities, every pair at nine.
pub(crate) fn hypotheses(ladders: &[Ladder; Cause::COUNT - 1], mut each: impl FnMut(&Hypothesis)) {
    singles(ladders, &mut each);
    pairs(ladders, &mut each);
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

/// The posterior, and the same with each channel and each other piece of evidence left out.
pub(crate) struct Posterior {
    /// Probability that each cause is present; `none` is the rest.
    pub(crate) probability: [f32; Cause::COUNT],
    /// Mean severity where present.
    pub(crate) severity: [f32; Cause::COUNT],
    /// What each channel and each other piece of evidence adds to the log-odds of each cause.
    pub(crate) without_channel: [[f32; Cause::COUNT]; CHANNELS],
    pub(crate) without_factor: [[f32; Cause::COUNT]; Factors::COUNT],
    /// Probability that each channel's reading is grossly wrong.
    pub(crate) wrong: Vector,
    /// Squared distance of the hypothesis that explains the readings best.
    pub(crate) best_square: f32,
}

/// Sums over classes that give ln odds in the end.
#[derive(Clone, Copy)]
struct Tally {
    with: [Sum; Cause::COUNT],
    all: Sum,
}

impl Tally {
    const NEW: Self = Self { with: [Sum::new(); Cause::COUNT], all: Sum::new() };

    fn add(&mut self, hypothesis: &Hypothesis, ln: f32) {
        self.all.add(ln);
        let mut none = true;
        for cause in hypothesis.causes.iter().flatten() {
            none = false;
            if let Some(sum) = self.with.get_mut(cause.index()) {
                sum.add(ln);
            }
        }
        if none {
            self.with[0].add(ln);
        }
    }
    fn probability(&self) -> [f32; Cause::COUNT] {
        let all = self.all.ln();
        self.with.map(|sum| libm::expf((sum.ln() - all).max(-80.0)).min(1.0))
    }
    fn ln_odds(&self) -> [f32; Cause::COUNT] {
        self.probability().map(|p| {
            let p = p.max(1.0e-6).min(1.0 - 1.0e-6);
            libm::logf(p / (1.0 - p))
        })
    }
}

impl Posterior {
    /// Sums all hypotheses.
    pub(crate) fn new(judge: &Judge, ladders: &[Ladder; Cause::COUNT - 1], factors: &Factors) -> Self {
        let mut tally = Tally::NEW;
        let mut clean = Tally::NEW;
        let mut without_channel = [Tally::NEW; CHANNELS];
        let mut without_factor = [Tally::NEW; Factors::COUNT];
        let mut wrong = [Sum::new(); CHANNELS];
        let mut severity = [(0.0f32, -1.0e30f32, 0.0f32); Cause::COUNT];
        let (mut best_ln, mut best_square) = (-1.0e30f32, 0.0);
        hypotheses(ladders, |hypothesis| {
            let Some(likelihood) = judge.likelihood(&hypothesis.shift) else { return };
            let others = factors.ln_each(hypothesis);
            let sum: f32 = others.iter().sum();
            let ln = hypothesis.ln_prior + likelihood.ln_all + sum;
            tally.add(hypothesis, ln);
            clean.add(hypothesis, hypothesis.ln_prior + likelihood.ln_clean + sum);
            if likelihood.ln_clean + sum > best_ln {
                best_ln = likelihood.ln_clean + sum;
                best_square = likelihood.square;
            }
            for (i, without) in likelihood.ln_without.iter().enumerate() {
                if judge.given[i] {
                    let ln_without = hypothesis.ln_prior + without + sum;
                    without_channel[i].add(hypothesis, ln_without);
                    wrong[i].add(ln_without + LN_WRONG + LN_WRONG_DENSITY);
                }
            }
            for (tally, other) in without_factor.iter_mut().zip(others) {
                tally.add(hypothesis, ln - other);
            }
            for (cause, s) in hypothesis.causes.iter().zip(hypothesis.severities) {
                let Some(cause) = cause else { continue };
                if let Some((weight, top, mean)) = severity.get_mut(cause.index()) {
                    // A running mean whose weights are kept relative to the largest seen.
                    if ln > *top {
                        *weight *= libm::expf((*top - ln).max(-80.0));
                        *top = ln;
                    }
                    let w = libm::expf((ln - *top).max(-80.0));
                    *weight += w;
                    *mean += (s - *mean) * w / *weight;
                }
            }
        });
        let all = tally.all.ln();
        let clean_odds = clean.ln_odds();
        let odds = tally.ln_odds();
        // Evidence of a channel is its word when no reading is wrong; evidence of the rest stands beside all.
        let mut channel_word = [[0.0; Cause::COUNT]; CHANNELS];
        for ((word, tally), given) in channel_word.iter_mut().zip(&without_channel).zip(judge.given) {
            if !given {
                continue;
            }
            let without = tally.ln_odds();
            for ((word, with), without) in word.iter_mut().zip(clean_odds).zip(without) {
                *word = with - without;
            }
        }
        let mut factor_word = [[0.0; Cause::COUNT]; Factors::COUNT];
        for (word, tally) in factor_word.iter_mut().zip(&without_factor) {
            let without = tally.ln_odds();
            for ((word, with), without) in word.iter_mut().zip(odds).zip(without) {
                *word = with - without;
            }
        }
        Self {
            probability: tally.probability(),
            severity: severity.map(|(_, _, mean)| mean),
            without_channel: channel_word,
            without_factor: factor_word,
            wrong: wrong.map(|sum| libm::expf((sum.ln() - all).max(-80.0).min(0.0))),
            best_square,
        }
    }
}
