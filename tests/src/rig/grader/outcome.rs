//! The five outcomes of Yuill and Braun (2012 to 2014) at a fault impact ratio of 0.95.

use super::answer::{Answer, index};
use crate::rig::visit::COUNTS;
use serde_json::Value;

/// What is really so, reduced to what is graded.
#[derive(Clone, Debug)]
pub struct Truth {
    /// Type of machine.
    pub kind: String,
    /// `setting` or `grading`.
    pub half: String,
    /// Air conditioner.
    pub air_conditioner: bool,
    /// All causes put in, by their place in the word list.
    pub drawn: Vec<usize>,
    /// Those that cost 5 % or more alone.
    pub present: Vec<usize>,
    /// Capacity or COP over healthy, the smaller.
    pub impact: f64,
}

/// What kind of case it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Class {
    /// Nothing wrong.
    Healthy,
    /// Something wrong that costs less than 5 %.
    Minor,
    /// One cause that costs 5 % or more, or two.
    Faulty,
    /// Two causes that cost 5 % together but not alone: no single right answer, left out.
    Open,
}

/// The five outcomes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// The decided cause is there; or a machine without one is cleared.
    Correct,
    /// A cause was decided on a machine without a fault that counts.
    FalseAlarm,
    /// A wrong cause was decided.
    Misdiagnosed,
    /// A faulty machine was cleared.
    Missed,
    /// Nothing was decided.
    NoResponse,
}

impl Truth {
    /// Reads a case's truth.
    pub fn read(v: &Value) -> Truth {
        let mut drawn = Vec::new();
        let mut present = Vec::new();
        for c in v["causes"].as_array().into_iter().flatten() {
            if let Some(i) = c["cause"].as_str().and_then(index) {
                drawn.push(i);
                if c["present"] == true {
                    present.push(i);
                }
            }
        }
        let kind = v["type"].as_str().unwrap_or("").to_string();
        Truth {
            air_conditioner: kind.starts_with("split"),
            kind,
            half: v["half"].as_str().unwrap_or("").to_string(),
            drawn,
            present,
            impact: v["impact"].as_f64().unwrap_or(1.0),
        }
    }

    /// Kind of case.
    pub fn class(&self) -> Class {
        if self.drawn.is_empty() {
            Class::Healthy
        } else if !self.present.is_empty() {
            Class::Faulty
        } else if self.drawn.len() == 2 && self.impact < COUNTS {
            Class::Open
        } else {
            Class::Minor
        }
    }

    /// True when naming this cause (or none) is right.
    pub fn holds(&self, cause: usize) -> bool {
        match self.class() {
            Class::Faulty => self.drawn.contains(&cause),
            _ => cause == 0,
        }
    }

    /// The outcome of an answer; none for open cases.
    pub fn outcome(&self, answer: &Answer) -> Option<Outcome> {
        let class = self.class();
        if class == Class::Open {
            return None;
        }
        Some(if !answer.decided {
            Outcome::NoResponse
        } else if self.holds(answer.leading) {
            Outcome::Correct
        } else if class == Class::Faulty {
            if answer.leading == 0 { Outcome::Missed } else { Outcome::Misdiagnosed }
        } else {
            Outcome::FalseAlarm
        })
    }

    /// Log probability of what is so: the mean over the causes that count, or of none.
    pub fn log_probability(&self, answer: &Answer) -> f64 {
        let ln = |i: usize| libm::log(answer.probability[i].max(1e-6));
        if self.present.is_empty() {
            ln(0)
        } else {
            self.present.iter().map(|i| ln(*i)).sum::<f64>() / self.present.len() as f64
        }
    }
}
