//! Counts over many cases.

use super::answer::Answer;
use super::outcome::{Class, Outcome, Truth};
use serde_json::{Value, json};

/// Ten bins of probability: sum of probability, hits, count.
pub type Bins = [(f64, u32, u32); 10];

/// Counts of outcomes and the sums that go with them.
#[derive(Clone, Debug, Default)]
pub struct Tally {
    /// Faulty cases: correct, misdiagnosed, missed, no response.
    pub faulty: [u32; 4],
    /// Healthy cases: cleared, false alarm, no response.
    pub healthy: [u32; 3],
    /// Minor faults: cleared, right cause named, wrong cause named, no response.
    pub minor: [u32; 4],
    /// Cases without a single right answer.
    pub open: u32,
    /// Answers that were errors.
    pub errors: u32,
    /// Cases with the truth among the first two, of how many.
    pub first_two: (u32, u32),
    /// Pairs with both found, first right, of how many.
    pub pairs: (u32, u32, u32),
    /// Sum of log probabilities of the truth, and how many.
    pub log_probability: (f64, u32),
    /// Leading cause's probability against whether it holds: sum of probability, hits, count in ten bins.
    pub leading: Bins,
    /// Every cause's probability against whether it is there.
    pub every: Bins,
}

fn bin(p: f64) -> usize {
    ((p * 10.0) as usize).min(9)
}

/// Mean distance of a bin's mean probability from the share that holds, weighed by count.
pub fn expected_error(bins: &Bins) -> f64 {
    let n: u32 = bins.iter().map(|b| b.2).sum();
    bins.iter().map(|b| (b.0 - f64::from(b.1)).abs()).sum::<f64>() / f64::from(n.max(1))
}

impl Tally {
    /// Adds a case.
    pub fn add(&mut self, truth: &Truth, answer: &Result<Answer, String>) {
        let class = truth.class();
        if class == Class::Open {
            self.open += 1;
            return;
        }
        let Ok(a) = answer else {
            self.errors += 1;
            match class {
                Class::Faulty => self.faulty[3] += 1,
                Class::Healthy => self.healthy[2] += 1,
                _ => self.minor[3] += 1,
            }
            return;
        };
        let outcome = truth.outcome(a).unwrap_or(Outcome::NoResponse);
        match class {
            Class::Faulty => {
                self.faulty[match outcome {
                    Outcome::Correct => 0,
                    Outcome::Misdiagnosed | Outcome::FalseAlarm => 1,
                    Outcome::Missed => 2,
                    Outcome::NoResponse => 3,
                }] += 1;
            }
            Class::Healthy => {
                self.healthy[match outcome {
                    Outcome::Correct => 0,
                    Outcome::NoResponse => 2,
                    _ => 1,
                }] += 1;
            }
            _ => {
                self.minor[match outcome {
                    Outcome::Correct => 0,
                    Outcome::NoResponse => 3,
                    _ if truth.drawn.contains(&a.leading) => 1,
                    _ => 2,
                }] += 1;
            }
        }
        let first_two = a.order.iter().take(2).any(|i| truth.holds(*i));
        self.first_two.0 += u32::from(first_two);
        self.first_two.1 += 1;
        if truth.present.len() == 2 {
            let named: Vec<usize> = a.order.iter().copied().filter(|i| *i != 0).take(2).collect();
            let both = truth.present.iter().all(|p| named.contains(p));
            self.pairs.0 += u32::from(both);
            self.pairs.1 += u32::from(named.first().is_some_and(|n| truth.present.contains(n)));
            self.pairs.2 += 1;
        }
        self.log_probability.0 += truth.log_probability(a);
        self.log_probability.1 += 1;
        let p = a.probability[a.leading];
        let b = &mut self.leading[bin(p)];
        b.0 += p;
        b.1 += u32::from(truth.holds(a.leading));
        b.2 += 1;
        for (i, p) in a.probability.iter().enumerate() {
            let there = if i == 0 { truth.present.is_empty() } else { truth.present.contains(&i) };
            let b = &mut self.every[bin(*p)];
            b.0 += p;
            b.1 += u32::from(there);
            b.2 += 1;
        }
    }

    /// Number of faulty cases.
    pub fn faulty_total(&self) -> u32 {
        self.faulty.iter().sum()
    }

    /// Shares of faulty cases: correct, misdiagnosed, missed, no response.
    pub fn faulty_shares(&self) -> [f64; 4] {
        let n = f64::from(self.faulty_total().max(1));
        self.faulty.map(|c| f64::from(c) / n)
    }

    /// Shares of healthy cases: cleared, false alarm, no response.
    pub fn healthy_shares(&self) -> [f64; 3] {
        let n = f64::from(self.healthy.iter().sum::<u32>().max(1));
        self.healthy.map(|c| f64::from(c) / n)
    }

    /// Expected calibration error of the leading cause's probability.
    pub fn calibration_error(&self) -> f64 {
        expected_error(&self.leading)
    }

    /// Expected calibration error over every cause's probability.
    pub fn calibration_error_every(&self) -> f64 {
        expected_error(&self.every)
    }

    /// Share of cases with the truth among the first two.
    pub fn first_two_share(&self) -> f64 {
        f64::from(self.first_two.0) / f64::from(self.first_two.1.max(1))
    }

    /// Mean log probability of the truth, nats.
    pub fn mean_log_probability(&self) -> f64 {
        self.log_probability.0 / f64::from(self.log_probability.1.max(1))
    }

    /// The figures as JSON, shares to four digits.
    pub fn json(&self) -> Value {
        let r = |x: f64| libm::round(x * 1e4) / 1e4;
        let f = self.faulty_shares();
        let h = self.healthy_shares();
        json!({
            "faulty": self.faulty_total(),
            "correct": r(f[0]), "misdiagnosed": r(f[1]), "missed": r(f[2]), "no_response": r(f[3]),
            "healthy": self.healthy.iter().sum::<u32>(),
            "cleared": r(h[0]), "false_alarm": r(h[1]), "healthy_no_response": r(h[2]),
            "minor": self.minor.iter().sum::<u32>(),
            "minor_cleared": self.minor[0], "minor_named": self.minor[1], "minor_wrong": self.minor[2],
            "first_two": r(self.first_two_share()),
            "pairs": self.pairs.2, "pairs_both": r(f64::from(self.pairs.0) / f64::from(self.pairs.2.max(1))),
            "pairs_first": r(f64::from(self.pairs.1) / f64::from(self.pairs.2.max(1))),
            "calibration_error": r(self.calibration_error()),
            "calibration_error_every_cause": r(self.calibration_error_every()),
            "mean_log_probability": r(self.mean_log_probability()),
            "errors": self.errors, "open": self.open,
        })
    }
}
