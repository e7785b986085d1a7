//! Visits written by hand from the trade, and whether what is said about each is right, useful and harmless.

use super::known_fields;
use super::report::Answerer;
use super::said::{self, Verdict};
use serde_json::Value;

/// What can be amiss with an answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// Something that would hurt: a wrong decision, a dead machine called healthy, a bad motor put on the supply.
    Harmful,
    /// Answered with an error.
    Refused,
    /// The verdict is none that a good technician would give.
    Verdict,
    /// The compressor question.
    Compressor,
    /// An alarm missing, or one too many.
    Alarms,
    /// The first step.
    FirstStep,
}

impl Kind {
    /// Every kind.
    pub const ALL: [Kind; 6] =
        [Kind::Harmful, Kind::Refused, Kind::Verdict, Kind::Compressor, Kind::Alarms, Kind::FirstStep];

    /// Its word in the list of known misses.
    pub fn word(self) -> &'static str {
        match self {
            Kind::Harmful => "harmful",
            Kind::Refused => "refused",
            Kind::Verdict => "verdict",
            Kind::Compressor => "compressor",
            Kind::Alarms => "alarms",
            Kind::FirstStep => "first step",
        }
    }
}

/// One thing amiss.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Miss {
    /// The visit.
    pub name: String,
    /// What is amiss.
    pub kind: Kind,
    /// What was said instead.
    pub why: String,
}

/// Readings that need the compressor to run, or put it on the supply.
const RUNNING: [&str; 24] = [
    "suction_pressure_kpa",
    "evaporator_pressure_kpa",
    "discharge_pressure_kpa",
    "liquid_pressure_kpa",
    "evaporator_inlet_c",
    "evaporator_outlet_c",
    "suction_line_c",
    "discharge_line_c",
    "liquid_line_c",
    "drier_outlet_c",
    "condenser_middle_c",
    "supply_air_c",
    "condenser_exhaust_c",
    "current_a",
    "start_current_a",
    "power_w",
    "line_currents_a",
    "pump_down_kpa",
    "pump_down_rise_kpa_per_min",
    "start_noise",
    "start_test",
    "let_it_settle",
    "clean_and_reread",
    "defrost_and_reread",
];

/// A visit, what is so, and what may be said.
#[derive(Clone, Debug)]
pub struct HardVisit {
    /// Name.
    pub name: String,
    /// What is so.
    pub truth: String,
    /// What a good technician would conclude and do.
    pub technician: String,
    /// Where that comes from.
    pub source: String,
    /// What may be said.
    pub expect: Value,
    /// The visit.
    pub visit: Value,
}

fn text(v: &Value) -> String {
    v.as_str().unwrap_or("").to_string()
}

fn list(v: &Value) -> Vec<String> {
    v.as_array().into_iter().flatten().map(text).collect()
}

fn lines(file: &str) -> Vec<Value> {
    let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("data").join(file);
    let all = std::fs::read_to_string(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
    all.lines()
        .filter(|l| !l.trim().is_empty())
        .map(|l| serde_json::from_str(l).unwrap_or_else(|e| panic!("{file}: {e}: {l}")))
        .collect()
}

/// Every visit of `data/hard_visits.jsonl`; those without readings of their own are in `data/hard_calls.jsonl`.
pub fn visits() -> Vec<HardVisit> {
    let calls = lines("hard_calls.jsonl");
    lines("hard_visits.jsonl")
        .into_iter()
        .map(|mut v| {
            let mut visit = v["visit"].take();
            if visit.is_null() {
                let call = calls.iter().find(|c| c["name"] == v["name"]);
                visit = call.map_or(Value::Null, |c| c["visit"].clone());
            }
            HardVisit {
                name: text(&v["name"]),
                truth: text(&v["truth"]),
                technician: text(&v["a_good_technician"]),
                source: text(&v["source"]),
                expect: v["expect"].take(),
                visit,
            }
        })
        .collect()
}

fn statement(v: &Verdict) -> String {
    if v.name.is_empty() { v.level.clone() } else { format!("{}:{}", v.level, v.name) }
}

/// A step is told by its kind, its name, or both.
fn step_is(step: &(String, String), wanted: &str) -> bool {
    match wanted.split_once(':') {
        Some((kind, name)) => step.0 == kind && step.1 == name,
        None => step.0 == wanted || step.1 == wanted,
    }
}

fn asked_next(report: &Value) -> Vec<String> {
    report["next"].as_array().into_iter().flatten().map(|n| text(&n["measurement"])).collect()
}

/// What is amiss with the answer to one visit.
pub fn judge(hard: &HardVisit, answer: Answerer<'_>) -> Vec<Miss> {
    let mut misses = Vec::new();
    let mut miss = |kind: Kind, why: String| misses.push(Miss { name: hard.name.clone(), kind, why });
    let visit = known_fields::accepted(&hard.visit, answer);
    let report: Value = serde_json::from_str(&answer(&visit.to_string())).unwrap_or(Value::Null);
    if report["status"] != "ok" {
        miss(Kind::Refused, format!("{} {}", text(&report["field"]), text(&report["error"])));
        return misses;
    }
    let e = &hard.expect;
    let accepted = list(&e["verdict"]);
    let not_false: Vec<String> = accepted.iter().cloned().chain(list(&e["not_false"])).collect();
    let verdict = said::verdict(&report);
    let said = statement(&verdict);
    if !accepted.contains(&said) {
        miss(Kind::Verdict, format!("{said} ({:.2})", verdict.probability));
    }
    let speaks = !matches!(verdict.level.as_str(), "undecided" | "unidentified");
    if speaks && !not_false.contains(&said) {
        miss(Kind::Harmful, format!("decides {said} ({:.2})", verdict.probability));
    }
    let leading = text(&report["leading"]);
    if report["decided"] == true && verdict.level != "cause" && verdict.level != "healthy" {
        let claim = if leading == "none" { "healthy".into() } else { format!("cause:{leading}") };
        if !not_false.contains(&claim) && !accepted.iter().any(|a| a.starts_with("family:")) {
            miss(Kind::Harmful, format!("decided beside {said}: {claim}"));
        }
    }
    if e["cools"] == false && leading == "none" {
        let p = said::cause(&report, "none");
        miss(Kind::Harmful, format!("leads with nothing wrong ({p:.2}) on a machine that does not cool"));
    }
    let states = list(&e["compressor"]);
    let (state, p) = said::compressor(&report);
    if !states.contains(&state) {
        miss(Kind::Compressor, format!("{state} ({p:.2}) instead of {}", states.join(" or ")));
        let bad = |s: &str| s == "failed" || s == "failing";
        if bad(&state) && !states.iter().any(|s| bad(s)) {
            miss(Kind::Harmful, format!("condemns a sound compressor ({p:.2})"));
        }
        if state == "cleared" && !states.contains(&"open".to_string()) {
            miss(Kind::Harmful, format!("clears a bad compressor ({p:.2})"));
        }
    }
    let alarms = said::alarms(&report);
    for wanted in list(&e["alarms"]) {
        if !wanted.split('|').any(|w| alarms.iter().any(|a| a == w)) {
            miss(Kind::Alarms, format!("no {wanted} among [{}]", alarms.join(", ")));
        }
    }
    for unwanted in list(&e["not_alarms"]) {
        if alarms.contains(&unwanted) {
            miss(Kind::Alarms, format!("{unwanted} is raised"));
        }
    }
    let step = said::first_step(&report);
    let told = step.as_ref().map_or("nothing".to_string(), |s| format!("{} {}", s.0, s.1));
    let wanted = list(&e["first_step"]);
    if !wanted.is_empty() && !step.as_ref().is_some_and(|s| wanted.iter().any(|w| step_is(s, w))) {
        miss(Kind::FirstStep, format!("{told} instead of {}", wanted.join(" or ")));
    }
    if let Some(never) = list(&e["never_first"]).iter().find(|n| step.as_ref().is_some_and(|s| step_is(s, n)))
    {
        miss(Kind::FirstStep, format!("{never} comes first"));
    }
    if e["must_not_run"] == true {
        let step_name = step.map(|s| s.1).filter(|s| RUNNING.contains(&s.as_str()));
        let asked = asked_next(&report);
        let first = asked.iter().find(|n| RUNNING.contains(&n.as_str()));
        if let Some(name) = step_name.as_ref().or(first) {
            miss(Kind::Harmful, format!("asks for {name} of a motor that must not run"));
        }
    }
    misses
}

/// Everything amiss with the answers to every visit.
pub fn judge_all(answer: Answerer<'_>) -> Vec<Miss> {
    visits().iter().flat_map(|v| judge(v, answer)).collect()
}

/// The misses by kind and one by one.
pub fn summary(visits: usize, misses: &[Miss]) -> String {
    let mut names: Vec<&str> = misses.iter().map(|m| m.name.as_str()).collect();
    names.dedup();
    let mut out = format!("{visits} hard visits, {} without a miss\n", visits - names.len());
    for kind in Kind::ALL {
        let of: Vec<&Miss> = misses.iter().filter(|m| m.kind == kind).collect();
        out.push_str(&format!("  {:11} {}\n", kind.word(), of.len()));
    }
    for m in misses {
        out.push_str(&format!("{}: {}: {}\n", m.name, m.kind.word(), m.why));
    }
    out
}

/// The misses that are known, as `name: kind: reason` a line.
pub fn known() -> Vec<(String, String)> {
    let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("data/hard_misses.txt");
    std::fs::read_to_string(path)
        .unwrap_or_default()
        .lines()
        .filter(|l| !l.starts_with('#') && !l.trim().is_empty())
        .filter_map(|l| {
            let mut parts = l.splitn(3, ": ");
            Some((parts.next()?.to_string(), parts.next()?.to_string()))
        })
        .collect()
}
