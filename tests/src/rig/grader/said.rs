//! What a report says beyond its ten causes: verdict, families, the compressor question, alarms and the next step.
//!
//! Where a report has none of these fields yet, its causes, `leading` and `decided` stand in for them, so that every
//! judge runs on reports of either kind.

use serde_json::Value;

/// The two causes that one family holds: behind both the same machine runs.
pub const LIQUID_FEED: [&str; 2] = ["liquid_line_restriction", "metering_underfeed"];

/// How sure an error rate of one in fifty makes a clearing.
const CLEARED_BELOW: f64 = 0.02;

/// The most specific statement of a report.
#[derive(Clone, Debug, PartialEq)]
pub struct Verdict {
    /// `cause`, `family`, `job`, `electrical`, `healthy`, `unidentified` or `undecided`.
    pub level: String,
    /// What of that level; empty for the last three.
    pub name: String,
    /// Its probability; NaN where the report has none.
    pub probability: f64,
    /// The causes that it holds: itself, the family's members, those that the job mends.
    pub causes: Vec<String>,
}

impl Verdict {
    /// A decided cause, or a machine cleared.
    pub fn of_cause(name: &str, probability: f64) -> Verdict {
        let healthy = name == "none";
        Verdict {
            level: if healthy { "healthy" } else { "cause" }.into(),
            name: if healthy { String::new() } else { name.into() },
            probability,
            causes: if healthy { Vec::new() } else { vec![name.into()] },
        }
    }

    /// Nothing decided.
    pub fn undecided(probability: f64) -> Verdict {
        Verdict { level: "undecided".into(), name: String::new(), probability, causes: Vec::new() }
    }
}

/// The causes that one job mends, where the report does not say.
fn mended_by(job: &str) -> &'static [&'static str] {
    match job {
        "condenser_air" => &["condenser_airflow"],
        "evaporator_air" => &["evaporator_airflow"],
        "open_circuit" => &[
            "undercharge",
            "overcharge",
            "liquid_line_restriction",
            "metering_underfeed",
            "flood_back",
            "non_condensables",
        ],
        "metering_valve" => &["metering_underfeed", "flood_back"],
        "compressor" => &["weak_compressor"],
        _ => &[],
    }
}

/// The report's probability of a cause; 0 where it lists none.
pub fn cause(report: &Value, name: &str) -> f64 {
    named(&report["causes"], "cause", name).unwrap_or(0.0)
}

fn named(list: &Value, key: &str, name: &str) -> Option<f64> {
    list.as_array()?.iter().find(|e| e[key] == name)?["probability"].as_f64()
}

/// The probability of the family that a cause belongs to, the cause itself where it belongs to none.
///
/// Without `families` the sum of the members stands in, an upper bound of their union.
pub fn family(report: &Value, name: &str) -> f64 {
    if !LIQUID_FEED.contains(&name) {
        return cause(report, name);
    }
    named(&report["families"], "name", "liquid_feed")
        .unwrap_or_else(|| LIQUID_FEED.iter().map(|c| cause(report, c)).sum::<f64>().min(1.0))
}

/// The verdict; from `decided` and `leading` where the report has none.
pub fn verdict(report: &Value) -> Verdict {
    let said = &report["verdict"];
    if let Some(level) = said["level"].as_str() {
        let name = said["name"].as_str().unwrap_or("");
        let told = |list: &str| -> Option<Vec<String>> {
            let entry = report[list].as_array()?.iter().find(|e| e["name"] == name)?;
            let causes = entry["causes"].as_array()?;
            Some(causes.iter().filter_map(|c| c.as_str().map(str::to_string)).collect())
        };
        let fixed = |causes: &[&str]| causes.iter().map(|c| c.to_string()).collect();
        let causes = match level {
            "cause" => vec![name.to_string()],
            "family" => told("families").unwrap_or_else(|| fixed(&LIQUID_FEED)),
            "job" => told("jobs").unwrap_or_else(|| fixed(mended_by(name))),
            _ => Vec::new(),
        };
        return Verdict {
            level: level.into(),
            name: name.into(),
            probability: said["probability"].as_f64().unwrap_or(f64::NAN),
            causes,
        };
    }
    let leading = report["leading"].as_str().unwrap_or("");
    let probability = cause(report, leading);
    if report["decided"] == true {
        Verdict::of_cause(leading, probability)
    } else {
        Verdict::undecided(probability)
    }
}

/// State of the compressor question; from the weak compressor's probability where the report has none.
pub fn compressor(report: &Value) -> (String, f64) {
    let said = &report["compressor"];
    if let (Some(state), Some(p)) = (said["state"].as_str(), said["probability"].as_f64()) {
        return (state.into(), p);
    }
    let p = cause(report, "weak_compressor");
    let decided = report["decided"] == true;
    let state = if decided && report["leading"] == "weak_compressor" {
        "failed"
    } else if decided && p < CLEARED_BELOW {
        "cleared"
    } else {
        "open"
    };
    (state.into(), p)
}

/// The codes of the alarms, most urgent first.
pub fn alarms(report: &Value) -> Vec<String> {
    let list = report["alarms"].as_array();
    list.into_iter().flatten().filter_map(|a| a["code"].as_str().map(str::to_string)).collect()
}

/// Kind and name of the next step; the first of `next` where there is no plan.
pub fn first_step(report: &Value) -> Option<(String, String)> {
    let step = &report["plan"]["step"];
    if let Some(kind) = step["kind"].as_str() {
        return Some((kind.into(), step["name"].as_str().unwrap_or("").into()));
    }
    let name = report["next"].as_array()?.first()?["measurement"].as_str()?;
    Some(("measure".into(), name.into()))
}

/// Every probability a report states, with its name.
pub fn probabilities(report: &Value) -> Vec<(String, f64)> {
    let mut out = Vec::new();
    for (list, key, prefix) in
        [("causes", "cause", ""), ("families", "name", "family "), ("jobs", "name", "job ")]
    {
        for entry in report[list].as_array().into_iter().flatten() {
            if let (Some(name), Some(p)) = (entry[key].as_str(), entry["probability"].as_f64()) {
                out.push((format!("{prefix}{name}"), p));
            }
        }
    }
    if let Some(p) = report["compressor"]["probability"].as_f64() {
        out.push(("compressor".into(), p));
    }
    out
}
