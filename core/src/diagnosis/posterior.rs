//! The probability of every cause, singly and in pairs, with severity integrated out.

use super::evidence::Factors;
use super::hypothesis::{Hypothesis, Step, Unlisted, pairs, singles};
use super::kept::Kept;
use super::likelihood::{Heard, LN_WRONG, LN_WRONG_CONDITION, LN_WRONG_DENSITY, Least, likelihood};
use super::screen::{Promising, Screen, Screened, fade};
use super::signature::{Ladder, Node};
use super::tally::{Mean, MeanSeverity, Sum, Tally};
use super::union::Unions;
use crate::cause::Cause;
use crate::measurement::Measurement;
use crate::student_t::ln_student;
use crate::symptom::{CHANNELS, CONDITION, CONDITIONS, Deviation, READING, Vector};
use crate::triangular::Factor;
use core::cell::Cell;

/// The posterior, and the same with each channel and each other piece of evidence left out.
#[derive(Clone, Debug)]
pub(crate) struct Posterior {
    tally: Tally,
    pub(super) unions: Unions,
    clean: Tally,
    /// By packed channel.
    without_channel: [Tally; CHANNELS],
    without_factor: [Tally; Factors::COUNT],
    wrong_condition: [Sum; CONDITIONS],
    severity: [MeanSeverity; Cause::COUNT],
    unlisted: [Sum; Unlisted::COUNT],
    best_ln: f32,
    /// ln det of the covariance alone, which bounds every hypothesis's from below.
    ln_least_det: f32,
    /// Squared distance of the readings from what explains them, over all explanations that are listed.
    distance: Mean,
    /// How far nothing condenses or is pumped: 1 in a limit state.
    still: Mean,
    /// The explanations to plan with.
    pub(crate) kept: Kept,
}

/// Capacity over healthy below which a machine comes to a stand, and at which it does: then the condenser may hold gas alone,
/// and the liquid line too.
const STILL_BELOW: f32 = 0.4;
const STILL_AT: f32 = 0.1;
/// Nats below the heaviest at which a hypothesis adds nothing to what a single reading says.
const WORD_NATS: f32 = 10.0;
/// Nats below the heaviest hypothesis at which one is forgotten.
const FORGOTTEN_NATS: f32 = 14.0;
/// Nats below the best explanation from which on a pair is weighed, by a distance under the largest shifts' spread; over
/// the nats above that it fades in.
const SCREEN_NATS: f32 = 1.0;
const FADE_NATS: f32 = 1.5;

/// Solves what two causes do together beyond the sum of what each does alone.
pub(crate) type Solve<'a> = dyn Fn([(Cause, &Node); 2]) -> Option<Vector> + 'a;
/// Calls its argument with everything that is weighed and is none of the ten causes.
pub(crate) type EachUnlisted<'a> = dyn Fn(&mut dyn FnMut(&Hypothesis, &[Step<'_>])) + 'a;

impl Posterior {
    pub(crate) const NEW: Self = Self {
        tally: Tally::NEW,
        unions: Unions::new(false),
        clean: Tally::NEW,
        without_channel: [Tally::NEW; CHANNELS],
        without_factor: [Tally::NEW; Factors::COUNT],
        wrong_condition: [Sum::new(); CONDITIONS],
        severity: [MeanSeverity::NEW; Cause::COUNT],
        unlisted: [Sum::new(); Unlisted::COUNT],
        best_ln: -1.0e30,
        ln_least_det: 0.0,
        distance: Mean::new(),
        still: Mean::new(),
        kept: Kept::NEW,
    };

    /// Sums all hypotheses.
    pub(crate) fn weigh(
        &mut self,
        deviation: &Deviation,
        ladders: &[Ladder; Cause::COUNT - 1],
        factors: &Factors,
        [factor, full]: &mut [Factor; 2],
        screened: &mut Screened,
        together: &Solve<'_>,
        unlisted: &EachUnlisted<'_>,
    ) {
        self.clear();
        if deviation.invert(factor, &[0.0; CHANNELS], core::iter::empty()) {
            self.ln_least_det = factor.ln_det;
        }
        singles(ladders, &mut |hypothesis, steps| self.add(deviation, factors, full, hypothesis, steps));
        unlisted(&mut |hypothesis, steps| self.add(deviation, factors, full, hypothesis, steps));
        // Most pairs lie far from the readings. A factor under a spread that no pair's own exceeds by much tells
        // them cheaply.
        let Some(screen) = Screen::new(deviation, ladders, factor, self.ln_least_det, screened) else {
            return;
        };
        // What two causes do together is only worth solving where their sum may explain the readings best.
        let mut promising = Promising::new(self.best_ln);
        let mut place = 0;
        pairs(ladders, &|_| None, &mut |hypothesis, _| {
            let others = factors.ln_call(hypothesis) + factors.ln_each(hypothesis).iter().sum::<f32>();
            if let Some(slot) = screened.others.get_mut(place) {
                *slot = others;
            }
            place += 1;
            let ln = screen.ln_sum(factor, deviation, screened, hypothesis);
            promising.see(hypothesis.causes, ln + others);
        });
        let solved = Cell::new(false);
        let together = |nodes: [(Cause, &Node); 2]| {
            let share = promising.share(nodes.map(|(cause, _)| Some(cause)));
            let beyond = if share > 0.0 { together(nodes) } else { None };
            solved.set(beyond.is_some());
            Some((share, beyond?))
        };
        // The same pairs come in the same order.
        let mut others = screened.others.iter();
        pairs(ladders, &together, &mut |hypothesis, steps| {
            let others = others.next().copied().unwrap_or(0.0);
            let ln = if solved.get() {
                screen.ln(factor, deviation, &hypothesis.shift)
            } else {
                screen.ln_sum(factor, deviation, screened, hypothesis)
            };
            let share = fade((ln + others - self.best_ln + SCREEN_NATS) / FADE_NATS);
            if share > 0.0 {
                let ln_prior = hypothesis.ln_prior + libm::logf(share);
                self.add(deviation, factors, full, &Hypothesis { ln_prior, ..*hypothesis }, steps);
            }
        });
    }

    fn clear(&mut self) {
        self.tally = Tally::NEW;
        self.unions.clear();
        self.clean = Tally::NEW;
        for tally in self.without_channel.iter_mut().chain(&mut self.without_factor) {
            *tally = Tally::NEW;
        }
        self.wrong_condition = [Sum::new(); CONDITIONS];
        self.severity = [MeanSeverity::NEW; Cause::COUNT];
        self.unlisted = [Sum::new(); Unlisted::COUNT];
        self.best_ln = -1.0e30;
        self.distance = Mean::new();
        self.still = Mean::new();
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
        let others = factors.ln_each(hypothesis);
        let sum: f32 = factors.ln_call(hypothesis) + others.iter().sum::<f32>();
        // Most hypotheses lie so far from the readings that a bound on their weight tells it.
        let square =
            deviation.at_least(&hypothesis.shift, &hypothesis.spread(), steps.iter().map(Step::deviation));
        let without_worst = sum - others.iter().fold(0.0f32, |least, other| least.min(*other));
        let bare = hypothesis.ln_prior + without_worst;
        let bound = ln_student(square, deviation.size(), self.ln_least_det) + bare;
        if bound < self.tally.top() - FORGOTTEN_NATS {
            return self.add_severity(hypothesis, bound);
        }
        let likelihood = match likelihood(deviation, factor, hypothesis, steps, &self.least(deviation, bare))
        {
            Some(Heard::Yes(likelihood)) => likelihood,
            Some(Heard::No(ln)) => return self.add_severity(hypothesis, hypothesis.ln_prior + ln + sum),
            None => return,
        };
        let ln = hypothesis.ln_prior + likelihood.ln_all + sum;
        self.tally.add(hypothesis, ln);
        self.unions.add(hypothesis, ln);
        self.clean.add_within(WORD_NATS, hypothesis, hypothesis.ln_prior + likelihood.ln_clean + sum);
        let channels = self.without_channel.iter_mut().zip(likelihood.ln_without);
        for (tally, without) in channels.take(deviation.size()) {
            tally.add_within(WORD_NATS, hypothesis, hypothesis.ln_prior + without + sum);
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
        self.best_ln = self.best_ln.max(likelihood.ln_clean + sum);
        self.distance.add(likelihood.square, ln);
        self.still.add(fade((STILL_BELOW - hypothesis.impact) / (STILL_BELOW - STILL_AT)), ln);
        self.add_severity(hypothesis, ln);
        self.kept.add(ln, hypothesis);
    }

    fn add_severity(&mut self, hypothesis: &Hypothesis, ln: f32) {
        for (cause, severity) in hypothesis.causes.iter().zip(hypothesis.severities) {
            if let Some(mean) = cause.and_then(|cause| self.severity.get_mut(cause.index())) {
                mean.add(severity, hypothesis.presence, ln);
            }
        }
    }

    /// What the likelihood of a hypothesis must come to if it is to count beside those that were added, where everything
    /// else of it comes to no more than `bare`.
    fn least(&self, deviation: &Deviation, bare: f32) -> Least {
        let channels = self.without_channel.iter().take(deviation.size());
        Least {
            all: self.tally.top() - FORGOTTEN_NATS - bare,
            clean: self.clean.top() - WORD_NATS - bare,
            without: channels.map(Tally::top).fold(f32::INFINITY, f32::min) - WORD_NATS - bare,
        }
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
    /// Squared distance of the readings from what explains them.
    pub(crate) fn distance(&self) -> f32 {
        self.distance.mean()
    }
    /// How far nothing condenses or is pumped, 0 to 1.
    pub(crate) fn still(&self) -> f32 {
        self.still.mean()
    }
    /// Every reading used with the probability that it is grossly wrong.
    pub(crate) fn each_wrong(&self, deviation: &Deviation) -> impl Iterator<Item = (Measurement, f32)> {
        let all = self.tally.ln();
        let channels = deviation.channels().filter_map(|channel| READING.get(channel));
        // Where a reading is wrong, the others are what tells.
        let wrong = self.without_channel.iter().map(|tally| tally.ln() + LN_WRONG + LN_WRONG_DENSITY);
        channels
            .zip(wrong)
            .chain(CONDITION.iter().zip(self.wrong_condition.iter().map(Sum::ln)))
            .map(move |(reading, ln)| (*reading, libm::expf((ln - all).max(-80.0).min(0.0))))
    }
    /// The probability that a reading is grossly wrong.
    pub(crate) fn wrong(&self, deviation: &Deviation, reading: Measurement) -> f32 {
        self.each_wrong(deviation).find(|(named, _)| *named == reading).map_or(0.0, |(_, wrong)| wrong)
    }
}
