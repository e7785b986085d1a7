//! The probability of every cause, singly and in pairs, with severity integrated out.

use super::cause::Cause;
use super::evidence::Factors;
use super::hypothesis::{Hypothesis, Step, Together, pairs, singles};
use super::signature::{Ladder, Node};
use crate::student::{Factor, ln_student};
use crate::symptom::{CHANNELS, CONDITION, CONDITIONS, Deviation, READING, Vector};

/// Standard deviation of a cause's signature as a fraction of itself.
pub(crate) const SIGNATURE_FRACTION: f32 = 0.10;
/// Prior probability that any one reading is grossly wrong.
const WRONG: f32 = 0.01;
/// Density of a grossly wrong reading, per kelvin or per percent of current: anything within some 60.
const LN_WRONG_DENSITY: f32 = -4.1;

/// What a node's likelihood consists of; per-channel parts stand packed.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Likelihood {
    /// ln likelihood of all channels, with the chance that one reading is wrong.
    ln_all: f32,
    /// ln likelihood of all channels, no reading wrong.
    ln_clean: f32,
    /// ln likelihood with each channel left out.
    ln_without: Vector,
    /// ln likelihood with each of the day's conditions taken for wrong.
    ln_disregarding: [Option<f32>; CONDITIONS],
    /// Squared distance of all channels.
    square: f32,
}

/// Factors the covariance of a node with this shift and these steps; gives the node's whitened residual.
pub(crate) fn whiten(
    deviation: &Deviation,
    factor: &mut Factor,
    shift: &Vector,
    steps: &[Step<'_>],
) -> Option<Vector> {
    let spread = shift.map(|shift| SIGNATURE_FRACTION * shift);
    let together = steps.iter().map(Step::deviation);
    deviation.invert(factor, &spread, together).then(|| deviation.whiten(factor, shift))
}

/// The squared length of a whitened residual.
pub(crate) fn square(white: &Vector) -> f32 {
    white.iter().map(|w| w * w).sum()
}

/// ln likelihood of all channels, no reading wrong.
pub(crate) fn ln_clean(
    deviation: &Deviation,
    factor: &mut Factor,
    shift: &Vector,
    steps: &[Step<'_>],
) -> Option<f32> {
    let white = whiten(deviation, factor, shift, steps)?;
    Some(ln_student(square(&white), deviation.size(), factor.ln_det))
}

fn likelihood(
    deviation: &Deviation,
    factor: &mut Factor,
    shift: &Vector,
    steps: &[Step<'_>],
) -> Option<Likelihood> {
    let white = whiten(deviation, factor, shift, steps)?;
    let size = deviation.size().min(CHANNELS);
    let square = square(&white);
    let weighted = factor.back(&white);
    let precision = factor.precision();
    let ln_clean = ln_student(square, size, factor.ln_det);
    let mut ln_without = [ln_clean; CHANNELS];
    let mut sum = Sum::new();
    sum.add(ln_clean + libm::log1pf(-WRONG * (size as f32 + 0.25 * CONDITIONS as f32)));
    for i in 0..size {
        let rest = square - weighted[i] * weighted[i] / precision[i];
        let ln_det = factor.ln_det + libm::logf(precision[i]);
        ln_without[i] = ln_student(rest, size - 1, ln_det);
        sum.add(ln_without[i] + LN_WRONG + LN_WRONG_DENSITY);
    }
    let mut ln_disregarding = [None; CONDITIONS];
    for (condition, slot) in ln_disregarding.iter_mut().enumerate() {
        *slot = deviation.ln_disregarding(condition, factor, &white, square);
        if let Some(ln) = *slot {
            sum.add(ln + LN_WRONG_CONDITION);
        }
    }
    Some(Likelihood { ln_all: sum.ln(), ln_clean, ln_without, ln_disregarding, square })
}

/// ln of [`WRONG`].
const LN_WRONG: f32 = -4.605_17;
/// ln of the prior probability that the space or the ambient temperature is grossly wrong, a quarter of that (judged:
/// air is easier to read right than a pipe).
const LN_WRONG_CONDITION: f32 = -5.991_465;

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
        } else if ln > self.top - 12.0 {
            self.rest += libm::expf(ln - self.top);
        }
    }
    pub(crate) fn ln(&self) -> f32 {
        if self.rest > 0.0 { self.top + libm::logf(self.rest) } else { self.top }
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
        let [present, healthy] = hypothesis.ln_shares;
        let named = hypothesis.causes.iter().flatten().map(|cause| (*cause, present));
        for (cause, share) in named.chain([(Cause::None, healthy)]) {
            if let Some(sum) = self.with.get_mut(cause.index()) {
                sum.add(ln + share);
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
    wrong_condition: [Sum; CONDITIONS],
    severity: [MeanSeverity; Cause::COUNT],
    best_ln: f32,
    /// Squared distance of the hypothesis that explains the readings best.
    pub(crate) best_square: f32,
    /// The heaviest hypotheses with their ln weight.
    pub(crate) kept: heapless::Vec<(f32, Hypothesis), KEPT>,
}

/// Nats below the best explanation at which a pair is passed over, by a distance under the largest shifts' spread.
const SCREEN_NATS: f32 = 3.0;

impl Posterior {
    pub(crate) const NEW: Self = Self {
        tally: Tally::NEW,
        clean: Tally::NEW,
        without_channel: [Tally::NEW; CHANNELS],
        without_factor: [Tally::NEW; Factors::COUNT],
        wrong: [Sum::new(); CHANNELS],
        wrong_condition: [Sum::new(); CONDITIONS],
        severity: [MeanSeverity::NEW; Cause::COUNT],
        best_ln: -1.0e30,
        best_square: 0.0,
        kept: heapless::Vec::new(),
    };

    /// Sums all hypotheses.
    pub(crate) fn weigh(
        &mut self,
        deviation: &Deviation,
        ladders: &[Ladder; Cause::COUNT - 1],
        factors: &Factors,
        [factor, full]: &mut [Factor; 2],
        together: &Together<'_>,
    ) {
        self.clear();
        singles(ladders, &mut |hypothesis, steps| self.add(deviation, factors, full, hypothesis, steps));
        // Most pairs lie far from the readings. A factor under a spread that no pair's own exceeds by much tells
        // them cheaply.
        let Some(screen) = Screen::new(deviation, ladders, factor) else { return };
        let promise = |hypothesis: &Hypothesis| {
            let others: f32 = factors.ln_each(hypothesis).iter().sum();
            screen.ln(factor, deviation, &hypothesis.shift) + others
        };
        // What two causes do together is only worth solving where their sum may explain the readings best.
        let mut promising = Promising::new(self.best_ln);
        pairs(ladders, &|_| None, &mut |hypothesis, _| promising.see(hypothesis.causes, promise(hypothesis)));
        let together = |nodes: [(Cause, &Node); 2]| {
            promising.holds(nodes.map(|(cause, _)| Some(cause))).then(|| together(nodes)).flatten()
        };
        pairs(ladders, &together, &mut |hypothesis, steps| {
            if promise(hypothesis) > self.best_ln - SCREEN_NATS {
                self.add(deviation, factors, full, hypothesis, steps);
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
        self.wrong_condition = [Sum::new(); CONDITIONS];
        self.severity = [MeanSeverity::NEW; Cause::COUNT];
        self.best_ln = -1.0e30;
        self.best_square = 0.0;
        self.kept.clear();
    }

    fn add(
        &mut self,
        deviation: &Deviation,
        factors: &Factors,
        factor: &mut Factor,
        hypothesis: &Hypothesis,
        steps: &[Step<'_>],
    ) {
        let Some(likelihood) = likelihood(deviation, factor, &hypothesis.shift, steps) else { return };
        let others = factors.ln_each(hypothesis);
        let sum: f32 = others.iter().sum();
        let ln = hypothesis.ln_prior + likelihood.ln_all + sum;
        self.tally.add(hypothesis, ln);
        self.clean.add(hypothesis, hypothesis.ln_prior + likelihood.ln_clean + sum);
        if likelihood.ln_clean + sum > self.best_ln {
            self.best_ln = likelihood.ln_clean + sum;
            self.best_square = likelihood.square;
        }
        for ((tally, wrong), without) in self
            .without_channel
            .iter_mut()
            .zip(&mut self.wrong)
            .zip(likelihood.ln_without)
            .take(deviation.size())
        {
            let ln_without = hypothesis.ln_prior + without + sum;
            tally.add(hypothesis, ln_without);
            wrong.add(ln_without + LN_WRONG + LN_WRONG_DENSITY);
        }
        for (wrong, ln) in self.wrong_condition.iter_mut().zip(likelihood.ln_disregarding) {
            if let Some(ln) = ln {
                wrong.add(hypothesis.ln_prior + ln + sum + LN_WRONG_CONDITION);
            }
        }
        for ((tally, other), given) in self.without_factor.iter_mut().zip(others).zip(factors.given()) {
            if given {
                tally.add(hypothesis, ln - other);
            }
        }
        for (cause, severity) in hypothesis.causes.iter().zip(hypothesis.severities) {
            if let Some(mean) = cause.and_then(|cause| self.severity.get_mut(cause.index())) {
                mean.add(severity, ln + hypothesis.ln_shares[0]);
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
    /// The reading that is more probably grossly wrong than right, where enough others are there to tell.
    pub(crate) fn doubtful(&self, deviation: &Deviation) -> Option<Suspect> {
        let (suspect, probability) = self.suspect(deviation)?;
        (probability > CONTRADICTS && deviation.size() >= ENOUGH_CHANNELS).then_some(suspect)
    }
    /// The reading that is most probably grossly wrong, and that probability.
    fn suspect(&self, deviation: &Deviation) -> Option<(Suspect, f32)> {
        let all = self.tally.all.ln();
        let channels = deviation.channels().map(Suspect::Channel).zip(&self.wrong);
        let conditions = (0..CONDITIONS).map(Suspect::Condition).zip(&self.wrong_condition);
        channels
            .chain(conditions)
            .map(|(suspect, sum)| (suspect, libm::expf((sum.ln() - all).max(-80.0).min(0.0))))
            .max_by(|a, b| a.1.total_cmp(&b.1))
    }
}

/// Probability from which a reading is said to contradict the others.
const CONTRADICTS: f32 = 0.5;
/// Channels from which on one can contradict the others.
const ENOUGH_CHANNELS: usize = 4;

/// A reading that may be grossly wrong, by its number.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Suspect {
    Channel(usize),
    Condition(usize),
}

impl Suspect {
    /// The reading's field.
    pub(crate) fn field(self) -> Option<&'static str> {
        let reading = match self {
            Self::Channel(channel) => READING.get(channel),
            Self::Condition(condition) => CONDITION.get(condition),
        };
        reading.map(|reading| reading.name())
    }
}

/// Pairs for which what two causes do together is solved, at most: more of them change nothing on the rig.
const SOLVED_PAIRS: usize = 8;

/// The pairs that promise most.
struct Promising {
    pairs: [(f32, [Option<Cause>; 2]); SOLVED_PAIRS],
}

impl Promising {
    /// None yet; only what promises more than this counts.
    fn new(least: f32) -> Self {
        Self { pairs: [(least, [None; 2]); SOLVED_PAIRS] }
    }
    fn see(&mut self, causes: [Option<Cause>; 2], promise: f32) {
        let known = self.pairs.iter_mut().find(|pair| pair.1 == causes);
        if let Some(pair) = known {
            pair.0 = pair.0.max(promise);
        } else if let Some(least) = self.pairs.iter_mut().min_by(|a, b| a.0.total_cmp(&b.0))
            && promise > least.0
        {
            *least = (promise, causes);
        }
    }
    fn holds(&self, causes: [Option<Cause>; 2]) -> bool {
        self.pairs.iter().any(|pair| pair.1 == causes)
    }
}

/// A cheap look at a pair.
struct Screen {
    /// ln det of the smallest spread, which bounds every pair's from below.
    ln_least_det: f32,
}

impl Screen {
    /// Factors the covariance with the largest shifts' spread on every channel; two such shifts at most add up.
    fn new(deviation: &Deviation, ladders: &[Ladder; Cause::COUNT - 1], factor: &mut Factor) -> Option<Self> {
        if !deviation.invert(factor, &[0.0; CHANNELS], core::iter::empty()) {
            return None;
        }
        let ln_least_det = factor.ln_det;
        let mut widest = [0.0f32; CHANNELS];
        for node in ladders.iter().flatten() {
            for (widest, shift) in widest.iter_mut().zip(&node.shift) {
                *widest = widest.max(2.0 * SIGNATURE_FRACTION * shift.abs());
            }
        }
        deviation.invert(factor, &widest, core::iter::empty()).then_some(Self { ln_least_det })
    }

    /// An upper bound, near enough, of a node's ln likelihood.
    fn ln(&self, factor: &Factor, deviation: &Deviation, shift: &Vector) -> f32 {
        ln_student(square(&deviation.whiten(factor, shift)), deviation.size(), self.ln_least_det)
    }
}
