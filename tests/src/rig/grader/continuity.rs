//! One reading moved while the others stay: every jump of any probability, found by bisection.
//!
//! A jump is a change between two inputs that no instrument could tell apart: 1e-5 K, or a millionth of a pressure or
//! a current. Steep is allowed, a step is not.

use super::report::Answerer;
use super::said;
use serde_json::{Value, json};
use std::fmt::Write;

/// Change of a probability below which nothing is looked at.
pub const LIMIT: f64 = 0.02;
/// Temperatures are swept this far to either side, K.
const REACH_K: f64 = 20.0;
/// Other readings are swept by this share of themselves to either side.
const REACH: f64 = 0.5;
/// Inputs closer than this are one, K.
const SAME_K: f64 = 1e-5;
/// Inputs closer than this share are one.
const SAME: f64 = 1e-6;
/// Answers asked for in one sweep at most: steep slopes would take any number.
const ANSWERS: usize = 400;

/// Where a probability jumps.
#[derive(Clone, Debug)]
pub struct Jump {
    /// Place of the visit in its list.
    pub visit: usize,
    /// The reading moved.
    pub reading: String,
    /// Its value at the jump.
    pub at: f64,
    /// The probability that jumps most there.
    pub what: String,
    /// Its value below.
    pub from: f64,
    /// Its value above.
    pub to: f64,
}

impl Jump {
    /// How far it jumps.
    pub fn size(&self) -> f64 {
        (self.to - self.from).abs()
    }
}

/// What the sweeps found.
#[derive(Clone, Debug, Default)]
pub struct Found {
    /// The jumps above [`LIMIT`].
    pub jumps: Vec<Jump>,
    /// Sweeps made.
    pub sweeps: usize,
    /// Answers asked for.
    pub answers: usize,
    /// Sweeps that ended before every steep place was followed to its end.
    pub cut_short: usize,
}

struct Sweep<'a> {
    visit: &'a Value,
    reading: &'a str,
    answer: Answerer<'a>,
    answers: usize,
}

/// An input and what is said about it; `None` where the visit is refused there.
type Asked = (f64, Option<Vec<(String, f64)>>);

impl Sweep<'_> {
    fn ask(&mut self, x: f64) -> Asked {
        self.answers += 1;
        let mut visit = self.visit.clone();
        visit["readings"][self.reading] = json!(x);
        let report: Value = serde_json::from_str(&(self.answer)(&visit.to_string())).unwrap_or(Value::Null);
        (x, (report["status"] == "ok").then(|| said::probabilities(&report)))
    }
}

/// The largest change between two answers: its name, from and to. Nothing where one of them is no answer.
fn change(a: &Asked, b: &Asked) -> Option<(String, f64, f64)> {
    let (below, above) = (a.1.as_ref()?, b.1.as_ref()?);
    let mut worst: Option<(String, f64, f64)> = None;
    for (name, from) in below {
        // What is not listed on one side stands at zero there.
        let to = above.iter().find(|(n, _)| n == name).map_or(0.0, |(_, p)| *p);
        if worst.as_ref().is_none_or(|w| (to - from).abs() > (w.2 - w.1).abs()) {
            worst = Some((name.clone(), *from, to));
        }
    }
    for (name, to) in above.iter().filter(|(n, _)| !below.iter().any(|(m, _)| m == n)) {
        if worst.as_ref().is_none_or(|w| *to > (w.2 - w.1).abs()) {
            worst = Some((name.clone(), 0.0, *to));
        }
    }
    worst
}

/// The readings of a visit that can be moved.
pub fn movable(visit: &Value) -> Vec<String> {
    let readings = visit["readings"].as_object();
    readings.into_iter().flatten().filter(|(_, v)| v.is_number()).map(|(k, _)| k.clone()).collect()
}

/// Moves one reading of one visit over its reach in `points` steps and bisects wherever a probability moves.
pub fn sweep(visit: &Value, reading: &str, points: usize, answer: Answerer<'_>) -> Found {
    let mut s = Sweep { visit, reading, answer, answers: 0 };
    let mut found = Found { sweeps: 1, ..Found::default() };
    let Some(x) = visit["readings"][reading].as_f64() else { return found };
    let kelvin = reading.ends_with("_c");
    let reach = if kelvin { REACH_K } else { REACH * x.abs() };
    let same = |at: f64| if kelvin { SAME_K } else { SAME * at.abs().max(1e-9) };
    let mut before = s.ask(x - reach);
    for k in 1..=points {
        let next = s.ask(x - reach + 2.0 * reach * k as f64 / points as f64);
        let mut open = vec![(before, next.clone())];
        while let Some((a, b)) = open.pop() {
            let Some((what, from, to)) = change(&a, &b) else { continue };
            if (to - from).abs() <= LIMIT {
                continue;
            }
            if b.0 - a.0 <= same(a.0) {
                found.jumps.push(Jump { visit: 0, reading: reading.into(), at: a.0, what, from, to });
            } else if s.answers >= ANSWERS {
                found.cut_short = 1;
            } else {
                let middle = s.ask(0.5 * (a.0 + b.0));
                open.push((middle.clone(), b));
                open.push((a, middle));
            }
        }
        before = next;
    }
    found.answers = s.answers;
    found
}

/// Sweeps readings of many visits on two threads; `wanted` says which.
pub fn sweeps(
    visits: &[Value],
    points: usize,
    wanted: &(dyn Fn(usize, usize) -> bool + Sync),
    answer: Answerer<'_>,
) -> Found {
    let half = |start: usize| {
        let mut out = Found::default();
        for (i, visit) in visits.iter().enumerate().skip(start).step_by(2) {
            for (_, reading) in movable(visit).iter().enumerate().filter(|(k, _)| wanted(i, *k)) {
                out.take(i, sweep(visit, reading, points, answer));
            }
        }
        out
    };
    std::thread::scope(|s| {
        let other = s.spawn(|| half(1));
        let mut all = half(0);
        if let Ok(odd) = other.join() {
            all.add(odd);
        }
        all.jumps.sort_by(|a, b| b.size().total_cmp(&a.size()));
        all
    })
}

impl Found {
    fn take(&mut self, visit: usize, mut one: Found) {
        one.jumps.iter_mut().for_each(|j| j.visit = visit);
        self.add(one);
    }

    fn add(&mut self, other: Found) {
        self.jumps.extend(other.jumps);
        self.sweeps += other.sweeps;
        self.answers += other.answers;
        self.cut_short += other.cut_short;
    }

    /// The largest jump.
    pub fn worst(&self) -> f64 {
        self.jumps.iter().map(Jump::size).fold(0.0, f64::max)
    }

    /// What was found, as a page.
    pub fn markdown(&self, visits: usize, rows: usize) -> String {
        let mut m = format!(
            "# Continuity\n\nWritten by `cargo run --release -p rimewise-tests --bin grade -- continuity`; do not edit.\n\n\
             Every reading of {visits} visits (`data/continuity_visits.jsonl`, and the calls of `data/hard_calls.jsonl`)\n\
             moved alone, 20 K or a half to either side; wherever a probability of the report moves by more than {LIMIT},\n\
             the place is bisected down to 1e-5 K or a millionth. What still changes there is a jump. Wanted: none.\n\n\
             * sweeps: {}\n* answers asked for: {}\n* sweeps cut short at {ANSWERS} answers: {}\n\
             * jumps above {LIMIT}: {}\n* jumps above 0.2: {}\n* sweeps with a jump: {}\n* the largest: {:.3}\n",
            self.sweeps,
            self.answers,
            self.cut_short,
            self.jumps.len(),
            self.jumps.iter().filter(|j| j.size() > 0.2).count(),
            self.sweeps_with_a_jump(),
            self.worst()
        );
        if !self.jumps.is_empty() {
            let _ = writeln!(
                m,
                "\nThe largest {}:\n\n| visit | reading | at | probability | from | to |\n|---|---|---|---|---|---|",
                rows.min(self.jumps.len())
            );
        }
        for j in self.jumps.iter().take(rows) {
            let _ = writeln!(
                m,
                "| {} | {} | {:.5} | {} | {:.3} | {:.3} |",
                j.visit, j.reading, j.at, j.what, j.from, j.to
            );
        }
        m
    }

    /// Sweeps in which something jumps.
    pub fn sweeps_with_a_jump(&self) -> usize {
        let mut where_: Vec<(usize, &str)> =
            self.jumps.iter().map(|j| (j.visit, j.reading.as_str())).collect();
        where_.sort_unstable();
        where_.dedup();
        where_.len()
    }
}

/// The visits that are swept: the committed ones, then the hard calls.
pub fn visits() -> Vec<Value> {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("data");
    let mut out = Vec::new();
    for file in ["continuity_visits.jsonl", "hard_calls.jsonl"] {
        let text = std::fs::read_to_string(folder.join(file)).unwrap_or_else(|e| panic!("{file}: {e}"));
        for line in text.lines().filter(|l| !l.trim().is_empty()) {
            let mut v: Value = serde_json::from_str(line).unwrap_or_else(|e| panic!("{file}: {e}"));
            out.push(v["visit"].take());
        }
    }
    out
}
