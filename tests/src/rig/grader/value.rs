//! What a verdict is worth in money: against an ideal verdict, and against rules of thumb.
//!
//! The idea is Yuill and Braun's: a diagnosis is worth what acting on it saves. Zero is leaving every machine alone,
//! one is always doing what the truth asks for. All amounts are invented.

use super::answer::{self, Answer, WORDS};
use super::known_fields;
use super::outcome::{Class, Truth};
use super::report::Answerer;
use crate::rig::visit::{Case, Type};
use serde_json::{Value, json};
use std::fmt::Write;

/// Coming once more.
const VISIT: f64 = 90.0;
/// Somebody senior with all instruments, who finds it.
const SENIOR: f64 = 150.0;
/// A day of a machine that does half of its work.
const DAY_AT_HALF: f64 = 20.0;
/// Days until it is found anyhow: soon, and late.
const HORIZONS: [f64; 2] = [60.0, 180.0];
/// Days lost by a wrong repair, and by waiting for somebody senior.
const WRONG_DAYS: f64 = 5.0;
const SENIOR_DAYS: f64 = 2.0;

/// Cost of a repair by the cause's place in [`WORDS`]; none costs nothing.
const REPAIR: [f64; 10] = [0.0, 320.0, 180.0, 350.0, 370.0, 330.0, 650.0, 60.0, 90.0, 280.0];

/// What is done.
#[derive(Clone, Debug, PartialEq)]
enum Way {
    Leave,
    Repair(Vec<usize>),
    Senior,
}

/// Loss of a day at a fault impact ratio.
fn day(truth: &Truth) -> f64 {
    match truth.class() {
        Class::Healthy => 0.0,
        _ => DAY_AT_HALF * ((1.0 - truth.impact) / 0.5).clamp(0.0, 1.5),
    }
}

/// Mending all that is there, one visit.
fn mend(truth: &Truth) -> f64 {
    truth.drawn.iter().map(|i| REPAIR[*i]).sum()
}

fn ideal(truth: &Truth, horizon: f64) -> f64 {
    (day(truth) * horizon).min(mend(truth))
}

fn cost(truth: &Truth, way: &Way, horizon: f64) -> f64 {
    let left = day(truth) * horizon;
    match way {
        Way::Leave => left,
        // Somebody senior leaves what does not pay.
        Way::Senior => SENIOR + day(truth) * SENIOR_DAYS + ideal(truth, horizon),
        Way::Repair(causes) => {
            // A family or a job costs what its dearest repair does.
            let done = causes.iter().map(|i| REPAIR[*i]).fold(0.0, f64::max);
            let rest: f64 = truth.drawn.iter().filter(|i| !causes.contains(i)).map(|i| REPAIR[*i]).sum();
            let hit = truth.drawn.iter().any(|i| causes.contains(i));
            match (hit, rest > 0.0) {
                (true, false) => done,
                // The second cause brings another visit; nobody comes for what costs less than coming.
                (true, true) => done + (VISIT + rest).min(left * 0.5),
                (false, false) => done,
                (false, true) => done + (VISIT + day(truth) * WRONG_DAYS + rest).min(left),
            }
        }
    }
}

/// The costs as a visit tells them.
fn costs(horizon: f64) -> Value {
    let repair: serde_json::Map<String, Value> =
        WORDS.iter().zip(REPAIR).skip(1).map(|(w, c)| (w.to_string(), json!(c))).collect();
    // Nobody knows today's loss: what half of the cooling costs stands for it.
    json!({ "visit": VISIT, "repair": repair, "compressor": REPAIR[6], "loss_a_day": DAY_AT_HALF, "horizon_days": horizon })
}

/// What is done on an answer: what the plan says where it says what to repair or to leave, else what the verdict asks.
fn by_answer(a: &Answer, report: &Value) -> Way {
    let step = &report["plan"]["step"];
    let name = step["name"].as_str().unwrap_or("");
    match (step["kind"].as_str(), answer::index(name)) {
        (Some("repair"), Some(cause)) => return Way::Repair(vec![cause]),
        (Some("replace_compressor"), _) => return Way::Repair(vec![6]),
        (Some("leave"), _) => return Way::Leave,
        _ => {}
    }
    match a.verdict.level.as_str() {
        "healthy" => Way::Leave,
        "cause" | "family" | "job" if !a.verdict.causes.is_empty() => {
            Way::Repair(a.verdict.causes.iter().filter_map(|c| answer::index(c)).collect())
        }
        _ => Way::Senior,
    }
}

/// What rules of thumb look at.
struct Looks {
    evaporator_td: f64,
    condenser_td: f64,
    superheat: f64,
    design_superheat: f64,
    current: f64,
}

fn looks(visit: &Value, kind: &Type) -> Option<Looks> {
    let r = &visit["readings"];
    let d = &visit["system"]["design"];
    let f = &*kind.machine.fluid;
    let dew = f.sat(r["suction_pressure_kpa"].as_f64()? * 1000.0).t_dew - 273.15;
    let head = f.sat(r["discharge_pressure_kpa"].as_f64()? * 1000.0);
    let condensing = 0.5 * (head.t_dew + head.t_bubble) - 273.15;
    Some(Looks {
        evaporator_td: r["space_c"].as_f64()? - dew - d["evaporator_td_k"].as_f64().unwrap_or(9.0),
        condenser_td: condensing - r["ambient_c"].as_f64()? - d["condenser_td_k"].as_f64().unwrap_or(12.0),
        superheat: r["suction_line_c"].as_f64()? - dew,
        design_superheat: d["suction_superheat_k"].as_f64().unwrap_or(15.0),
        current: r["current_a"].as_f64()?
            / visit["system"]["compressor"]["rated_load_a"].as_f64().unwrap_or(f64::NAN),
    })
}

/// Fixed rules; the last six are rules of thumb (common practice, limits judged).
const RULES: [&str; 9] = [
    "always leave",
    "always replace the compressor",
    "always recharge",
    "suction 4 K low: recharge",
    "head 6 K high: clean the condenser",
    "superheat 6 K high: recharge",
    "superheat 6 K low: metering device",
    "suction 4 K high and head not: compressor",
    "current at the plate's: compressor",
];

fn by_rule(rule: usize, l: Option<&Looks>) -> Way {
    let when = |is: bool, cause: usize| if is { Way::Repair(vec![cause]) } else { Way::Leave };
    let Some(l) = l.filter(|_| rule > 2) else {
        return match rule {
            1 => Way::Repair(vec![6]),
            2 => Way::Repair(vec![1]),
            _ => Way::Leave,
        };
    };
    match rule {
        3 => when(l.evaporator_td > 4.0, 1),
        4 => when(l.condenser_td > 6.0, 7),
        5 => when(l.superheat > l.design_superheat + 6.0, 1),
        6 => when(l.superheat < l.design_superheat - 6.0, 5),
        7 => when(l.evaporator_td < -4.0 && l.condenser_td < 0.0, 6),
        _ => when(l.current > 0.95, 6),
    }
}

/// Value of use at either horizon: the library's, then each rule's.
pub type Values = Vec<(String, [f64; 2])>;

/// Grades all readings of one half.
pub fn grade(types: &[Type], cases: &[&Case], answer: Answerer<'_>) -> Values {
    let names = std::iter::once("the library").chain(RULES);
    let mut out: Values = names.map(|n| (n.to_string(), [0.0; 2])).collect();
    for (k, horizon) in HORIZONS.into_iter().enumerate() {
        let (mut best, mut nothing) = (0.0, 0.0);
        let mut sums = vec![0.0; out.len()];
        for case in cases {
            let truth = Truth::read(&case.truth);
            best += ideal(&truth, horizon);
            nothing += cost(&truth, &Way::Leave, horizon);
            let mut visit = case.visit.clone();
            visit["costs"] = costs(horizon);
            let line = answer(&known_fields::accepted(&visit, answer).to_string());
            let report: Value = serde_json::from_str(&line).unwrap_or(Value::Null);
            let way = answer::read(&line).map_or(Way::Senior, |a| by_answer(&a, &report));
            sums[0] += cost(&truth, &way, horizon);
            let kind = types.iter().find(|k| case.truth["type"] == k.machine.spec.name);
            let l = kind.and_then(|k| looks(&case.visit, k));
            for (rule, sum) in sums.iter_mut().skip(1).enumerate() {
                *sum += cost(&truth, &by_rule(rule, l.as_ref()), horizon);
            }
        }
        for ((_, values), sum) in out.iter_mut().zip(sums) {
            values[k] = (nothing - sum) / (nothing - best).max(1e-9);
        }
    }
    out
}

/// The values as JSON.
pub fn to_json(values: &Values) -> Value {
    let r = |v: f64| libm::round(v * 1e3) / 1e3;
    values.iter().map(|(k, v)| (k.clone(), json!({ "60 days": r(v[0]), "180 days": r(v[1]) }))).collect()
}

/// The table.
pub fn markdown(values: &Values) -> String {
    let mut m = format!(
        "\n### Value of use\n\nWhat acting on the answer saves, all readings: 0 is leaving every machine alone, 1 an ideal verdict (the idea is Yuill\nand Braun's). The plan is followed where it says what to repair or leave, else the verdict; undecided calls somebody\nsenior. Invented amounts: another visit {VISIT:.0}, senior {SENIOR:.0}, a day at half of the cooling {DAY_AT_HALF:.0}, {WRONG_DAYS:.0} days lost by a wrong\nrepair; repairs:"
    );
    for (word, cost) in WORDS.iter().zip(REPAIR).skip(1) {
        let _ = write!(m, " {word} {cost:.0},");
    }
    m.pop();
    m.push_str(". The value hangs on how many days it\ntakes until a fault is found anyhow. Wanted: 0.8, and above every rule.\n\n| | 60 days | 180 days |\n|---|---|---|\n");
    for (name, v) in values {
        let _ = writeln!(m, "| {name} | {:.2} | {:.2} |", v[0], v[1]);
    }
    m
}
