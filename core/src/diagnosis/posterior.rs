//! The probability of every cause, singly and in pairs, with severity integrated out.

use super::evidence::Factors;
use super::hypothesis::{Hypothesis, Step, Together, Unlisted, pairs, singles};
use super::kept::Kept;
use super::likelihood::{LN_WRONG, LN_WRONG_CONDITION, LN_WRONG_DENSITY, likelihood};
use super::screen::{Promising, Screen};
use super::signature::{Ladder, Node};
use super::tally::{MeanSeverity, Sum, Tally};
use crate::cause::Cause;
use crate::symptom::{CHANNELS, CONDITION, CONDITIONS, Deviation, READING};
use crate::triangular::Factor;

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
    unlisted: [Sum; Unlisted::COUNT],
    best_ln: f32,
    /// Squared distance of the hypothesis that explains the readings best.
    pub(crate) best_square: f32,
    /// The explanations to plan with.
    pub(crate) kept: Kept,
}

/// Nats below the best explanation at which a pair is passed over, by a distance under the largest shifts' spread.
const SCREEN_NATS: f32 = 1.0;

/// Calls its argument with everything that is weighed and is none of the ten causes.
pub(crate) type EachUnlisted<'a> = dyn Fn(&mut dyn FnMut(&Hypothesis, &[Step<'_>])) + 'a;

impl Posterior {
    pub(crate) const NEW: Self = Self {
        tally: Tally::NEW,
        clean: Tally::NEW,
        without_channel: [Tally::NEW; CHANNELS],
        without_factor: [Tally::NEW; Factors::COUNT],
        wrong: [Sum::new(); CHANNELS],
        wrong_condition: [Sum::new(); CONDITIONS],
        severity: [MeanSeverity::NEW; Cause::COUNT],
        unlisted: [Sum::new(); Unlisted::COUNT],
        best_ln: -1.0e30,
        best_square: 0.0,
        kept: Kept::NEW,
    };

    /// Sums all hypotheses.
    pub(crate) fn weigh(
        &mut self,
        deviation: &Deviation,
        ladders: &[Ladder; Cause::COUNT - 1],
        factors: &Factors,
        [factor, full]: &mut [Factor; 2],
        together: &Together<'_>,
        unlisted: &EachUnlisted<'_>,
    ) {
        self.clear();
        singles(ladders, &mut |hypothesis, steps| self.add(deviation, factors, full, hypothesis, steps));
        unlisted(&mut |hypothesis, steps| self.add(deviation, factors, full, hypothesis, steps));
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
        self.unlisted = [Sum::new(); Unlisted::COUNT];
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
        let Some(likelihood) = likelihood(deviation, factor, hypothesis, steps) else { return };
        let others = factors.ln_each(hypothesis);
        let sum: f32 = others.iter().sum();
        let ln = hypothesis.ln_prior + likelihood.ln_all + sum;
        self.tally.add(hypothesis, ln);
        self.clean.add(hypothesis, hypothesis.ln_prior + likelihood.ln_clean + sum);
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
        if let Some(what) = hypothesis.unlisted {
            if let Some(sum) = self.unlisted.get_mut(what as usize) {
                sum.add(ln);
            }
            return;
        }
        if likelihood.ln_clean + sum > self.best_ln {
            self.best_ln = likelihood.ln_clean + sum;
            self.best_square = likelihood.square;
        }
        for (cause, severity) in hypothesis.causes.iter().zip(hypothesis.severities) {
            if let Some(mean) = cause.and_then(|cause| self.severity.get_mut(cause.index())) {
                mean.add(severity, hypothesis.presence, ln);
            }
        }
        self.kept.add(ln, hypothesis);
    }

    /// The probability that a cause is present; for `none`, that nothing is.
    pub(crate) fn probability(&self, cause: Cause) -> f32 {
        self.tally.probability(cause)
    }
    /// The probability of something that is none of the ten causes.
    pub(crate) fn unlisted(&self, what: Unlisted) -> f32 {
        let ln = self.unlisted.get(what as usize).map_or(-1.0e30, Sum::ln);
        libm::expf((ln - self.tally.ln()).max(-80.0)).min(1.0)
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
        let all = self.tally.ln();
        let channels = deviation.channels().map(Suspect::Channel).zip(&self.wrong);
        let conditions = (0..CONDITIONS).map(Suspect::Condition).zip(&self.wrong_condition);
        channels
            .chain(conditions)
            .map(|(suspect, sum)| (suspect, libm::expf((sum.ln() - all).max(-80.0).min(0.0))))
            .max_by(|a, b| a.1.total_cmp(&b.1))
            .filter(|(_, probability)| *probability > CONTRADICTS && deviation.size() >= ENOUGH_CHANNELS)
            .map(|(suspect, _)| suspect)
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
