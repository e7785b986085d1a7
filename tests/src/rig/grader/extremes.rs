//! Grades of the visits at the ends: what is said of limit states, stopped machines, dead motors and bad supplies.

use super::known_fields;
use super::report::Answerer;
use super::said::{self, Verdict};
use crate::rig::extreme::{Extreme, Group};
use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::fmt::Write;

/// Counts of one row.
#[derive(Clone, Debug, Default)]
pub struct Row {
    /// Visits.
    pub visits: u32,
    /// Right; a right job; wrong; called healthy though it is not; unidentified; undecided; refused.
    pub said: [u32; 7],
    /// Dead machines on which nothing wrong leads, of how many.
    pub dead: (u32, u32),
    /// Sound compressors cleared and condemned, of how many.
    pub sound: [u32; 3],
    /// Bad compressors cleared and found, of how many.
    pub bad: [u32; 3],
    /// Motors that must not run with that alarm, of how many.
    pub alarm: (u32, u32),
}

fn statement(v: &Verdict) -> String {
    if v.name.is_empty() { v.level.clone() } else { format!("{}:{}", v.level, v.name) }
}

impl Row {
    fn add(&mut self, e: &Extreme, report: &Value) {
        self.visits += 1;
        if report["status"] != "ok" {
            self.said[6] += 1;
            return;
        }
        let verdict = said::verdict(report);
        let right = |name: &String| e.truth.right.contains(&format!("cause:{name}"));
        let k = if e.truth.right.contains(&statement(&verdict)) {
            0
        } else {
            match verdict.level.as_str() {
                "job" if verdict.causes.iter().any(right) => 1,
                "job" if verdict.name == "electrical" && e.truth.group == Group::Electrical => 1,
                "job" if verdict.name == "compressor" && !e.truth.sound => 1,
                "healthy" => 3,
                "unidentified" => 4,
                "undecided" => 5,
                _ => 2,
            }
        };
        self.said[k] += 1;
        if e.truth.dead {
            self.dead.0 += u32::from(report["leading"] == "none");
            self.dead.1 += 1;
        }
        let state = said::compressor(report).0;
        let condemned = state == "failed" || state == "failing";
        let counts = if e.truth.sound { &mut self.sound } else { &mut self.bad };
        counts[0] += u32::from(state == "cleared");
        counts[1] += u32::from(condemned);
        counts[2] += 1;
        if e.truth.must_not_run {
            let alarms = said::alarms(report);
            self.alarm.0 += u32::from(alarms.iter().any(|a| a == "do_not_energise" || a == "switch_off"));
            self.alarm.1 += 1;
        }
    }

    fn json(&self) -> Value {
        json!({
            "visits": self.visits, "right": self.said[0], "right_job": self.said[1], "wrong": self.said[2],
            "called_healthy": self.said[3], "unidentified": self.said[4], "undecided": self.said[5], "refused": self.said[6],
            "dead_led_by_none": self.dead.0, "dead": self.dead.1,
            "sound_cleared": self.sound[0], "sound_condemned": self.sound[1], "sound": self.sound[2],
            "bad_cleared": self.bad[0], "bad_found": self.bad[1], "bad": self.bad[2],
            "told_to_stay_off": self.alarm.0, "must_stay_off": self.alarm.1,
        })
    }

    fn line(&self, name: &str) -> String {
        let of = |a: u32, n: u32| if n == 0 { "-".to_string() } else { format!("{a}/{n}") };
        let s = self.said;
        format!(
            "| {name} | {} | {} | {} | {} | {} | {} | {} | {} | {} | {} | {} | {} | {} | {} |\n",
            self.visits,
            s[0],
            s[1],
            s[2],
            s[3],
            s[4],
            s[5],
            s[6],
            of(self.dead.0, self.dead.1),
            of(self.sound[0], self.sound[2]),
            of(self.sound[1], self.sound[2]),
            of(self.bad[0], self.bad[2]),
            of(self.bad[1], self.bad[2]),
            of(self.alarm.0, self.alarm.1),
        )
    }
}

/// Rows by half, then by group and what it is.
pub type Graded = BTreeMap<String, BTreeMap<(Group, String), Row>>;

/// Grades a run.
pub fn grade(run: &[Extreme], answer: Answerer<'_>) -> Graded {
    let mut out = Graded::new();
    for e in run {
        let line = known_fields::accepted(&e.visit, answer).to_string();
        let report: Value = serde_json::from_str(&answer(&line)).unwrap_or(Value::Null);
        let half = out.entry(e.truth.half.clone()).or_default();
        half.entry((e.truth.group, e.truth.what.clone())).or_default().add(e, &report);
    }
    out
}

/// The counts of one half as JSON.
pub fn rows_json(rows: &BTreeMap<(Group, String), Row>) -> Value {
    let mut out = json!({});
    for ((group, what), row) in rows {
        out[group.name()][what] = row.json();
    }
    out
}

/// The counts of one half as a section.
pub fn markdown(rows: &BTreeMap<(Group, String), Row>) -> String {
    let mut m = String::from(
        "\n### At the ends: limit states, stopped machines, motors and supplies\n\nMade and counted apart from all the above. A limit state is a cause grown until little or nothing is cooled, the box as\nwarm as that leaves it after hours; standing pressure is that of a stopped machine at one temperature, everything else\nunknown; motor and supply are read with a meter. Dead: machines that do not cool, and how many of them are led by\nnothing wrong.\n\n| | visits | right | right job | wrong | called healthy | unidentified | undecided | refused | dead led by none | sound compressor cleared | sound condemned | bad cleared | bad found | told to stay off |\n|---|---|---|---|---|---|---|---|---|---|---|---|---|---|---|\n",
    );
    for group in Group::ALL {
        for ((_, what), row) in rows.iter().filter(|(k, _)| k.0 == group) {
            let _ = write!(m, "{}", row.line(&format!("{}: {what}", group.name())));
        }
    }
    m
}
