//! Counts at the verdict's level: cause or family right, and the compressor question on its own.

use super::answer::{Answer, WORDS};
use super::outcome::{Class, Truth};
use super::tally::{Bins, expected_error};
use serde_json::{Value, json};

/// What a verdict is worth against the causes that are there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Spoken {
    /// The cause, or its family.
    Right,
    /// A job that mends it, nothing nearer.
    RightJob,
    /// Another cause, family or job, or something electrical.
    Wrong,
    /// Nothing is wrong.
    Healthy,
    /// Something is wrong that is not listed.
    Unidentified,
    /// Nothing said.
    Undecided,
}

/// Judges an answer's verdict against the causes that hold.
pub fn judge(answer: &Answer, holds: &dyn Fn(usize) -> bool) -> Spoken {
    let v = &answer.verdict;
    let held = |name: &String| WORDS.iter().position(|w| w == name).is_some_and(holds);
    match v.level.as_str() {
        "healthy" => Spoken::Healthy,
        "unidentified" => Spoken::Unidentified,
        "undecided" => Spoken::Undecided,
        level => match (level, v.causes.iter().any(held)) {
            ("job", true) => Spoken::RightJob,
            (_, true) => Spoken::Right,
            _ => Spoken::Wrong,
        },
    }
}

/// Counts of verdicts.
#[derive(Clone, Debug, Default)]
pub struct SpokenTally {
    /// Faulty machines by [`Spoken`].
    pub faulty: [u32; 6],
    /// Healthy machines by [`Spoken`].
    pub healthy: [u32; 6],
    /// Sound compressors: cleared, condemned, open.
    pub sound: [u32; 3],
    /// Weak compressors: cleared, condemned, open.
    pub weak: [u32; 3],
    /// Probability of the leading family against whether it holds.
    pub leading: Bins,
}

impl SpokenTally {
    /// Adds a case.
    pub fn add(&mut self, truth: &Truth, answer: &Result<Answer, String>) {
        let class = truth.class();
        if class == Class::Open {
            return;
        }
        let Ok(a) = answer else {
            match class {
                Class::Faulty => self.faulty[Spoken::Undecided as usize] += 1,
                Class::Healthy => self.healthy[Spoken::Undecided as usize] += 1,
                _ => {}
            }
            return;
        };
        let spoken = judge(a, &|i| i != 0 && truth.holds(i)) as usize;
        match class {
            Class::Faulty => self.faulty[spoken] += 1,
            Class::Healthy => self.healthy[spoken] += 1,
            _ => {}
        }
        let state = match a.compressor.as_str() {
            "cleared" => 0,
            "failed" | "failing" => 1,
            _ => 2,
        };
        if truth.present.contains(&6) {
            self.weak[state] += 1;
        } else if !truth.drawn.contains(&6) {
            self.sound[state] += 1;
        }
        // The likeliest family; restriction and underfeed count as one.
        let mut best = (a.liquid_feed, truth.holds(3) || truth.holds(4));
        for (i, p) in a.probability.iter().enumerate().filter(|(i, _)| *i != 3 && *i != 4) {
            if *p > best.0 {
                best = (*p, truth.holds(i));
            }
        }
        let bin = &mut self.leading[((best.0 * 10.0) as usize).min(9)];
        bin.0 += best.0;
        bin.1 += u32::from(best.1);
        bin.2 += 1;
    }

    /// Shares of the faulty machines by [`Spoken`].
    pub fn faulty_shares(&self) -> [f64; 6] {
        shares(self.faulty)
    }

    /// Shares of the healthy machines by [`Spoken`].
    pub fn healthy_shares(&self) -> [f64; 6] {
        shares(self.healthy)
    }

    /// Share of healthy machines on which something wrong is said, `unidentified` included.
    pub fn false_alarms(&self) -> f64 {
        let h = self.healthy_shares();
        h[Spoken::Right as usize]
            + h[Spoken::RightJob as usize]
            + h[Spoken::Wrong as usize]
            + h[Spoken::Unidentified as usize]
    }

    /// Calibration error of the leading family.
    pub fn calibration_error(&self) -> f64 {
        expected_error(&self.leading)
    }

    /// The figures as JSON.
    pub fn json(&self) -> Value {
        let r = |x: f64| libm::round(x * 1e4) / 1e4;
        let (f, s, w) = (self.faulty_shares(), shares(self.sound), shares(self.weak));
        json!({
            "right": r(f[0]), "right_job": r(f[1]), "wrong": r(f[2]), "called_healthy": r(f[3]),
            "unidentified": r(f[4]), "undecided": r(f[5]),
            "false_alarms": r(self.false_alarms()), "cleared": r(self.healthy_shares()[3]),
            "sound_cleared": r(s[0]), "sound_condemned": r(s[1]),
            "weak_cleared": r(w[0]), "weak_found": r(w[1]),
            "calibration_error": r(self.calibration_error()),
        })
    }

    /// One row of the table.
    pub fn row(&self, name: &str) -> String {
        let (f, s, w) = (self.faulty_shares(), shares(self.sound), shares(self.weak));
        let t = |x: f64| if x == 0.0 { "0".into() } else { format!("{x:.3}") };
        format!(
            "| {name} | {} | {} | {} | {} | {} | {} | {} | {} | {} | {} | {} | {} | {:.3} |\n",
            t(f[0]),
            t(f[1]),
            t(f[2]),
            t(f[3]),
            t(f[4]),
            t(f[5]),
            t(self.false_alarms()),
            t(self.healthy_shares()[3]),
            t(s[0]),
            t(s[1]),
            t(w[0]),
            t(w[1]),
            self.calibration_error()
        )
    }
}

/// Head of the table of [`SpokenTally::row`].
pub const HEAD: &str = "| | right: cause or family | right job only | wrong | called healthy | unidentified | undecided | false alarm | cleared | sound compressor cleared | sound condemned | weak cleared | weak found | calibration error |\n|---|---|---|---|---|---|---|---|---|---|---|---|---|---|\n";

fn shares<const N: usize>(counts: [u32; N]) -> [f64; N] {
    let n = f64::from(counts.iter().sum::<u32>().max(1));
    counts.map(|c| f64::from(c) / n)
}
