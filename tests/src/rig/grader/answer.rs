//! What the library answers, reduced to what is graded.

use super::said::{self, Verdict};
use serde_json::Value;

/// Every cause's word in the order that breaks ties, `none` first.
pub const WORDS: [&str; 10] = [
    "none",
    "undercharge",
    "overcharge",
    "liquid_line_restriction",
    "metering_underfeed",
    "flood_back",
    "weak_compressor",
    "condenser_airflow",
    "evaporator_airflow",
    "non_condensables",
];

/// The place of a cause's word in [`WORDS`].
pub fn index(word: &str) -> Option<usize> {
    WORDS.iter().position(|w| *w == word)
}

/// One answer.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// Probability of each cause, in the order of [`WORDS`].
    pub probability: [f64; 10],
    /// Causes in the order the answer lists them.
    pub order: Vec<usize>,
    /// The leading cause.
    pub leading: usize,
    /// Whether the answer says it may be acted on.
    pub decided: bool,
    /// How well the best explanation fits.
    pub fits: f64,
    /// The most specific statement.
    pub verdict: Verdict,
    /// Probability of a restriction or underfeed.
    pub liquid_feed: f64,
    /// State of the compressor question.
    pub compressor: String,
}

/// Reads a report; the error line when it is one, or when it is not a report at all.
pub fn read(line: &str) -> Result<Answer, String> {
    let v: Value = serde_json::from_str(line).map_err(|e| format!("no JSON: {e}"))?;
    if v["status"] != "ok" {
        return Err(format!(
            "{}: {}",
            v["field"].as_str().unwrap_or(""),
            v["error"].as_str().unwrap_or(line)
        ));
    }
    let causes = v["causes"].as_array().ok_or("no causes")?;
    let mut probability = [0.0; 10];
    let mut order = Vec::new();
    for c in causes {
        let i = c["cause"].as_str().and_then(index).ok_or("an unknown cause")?;
        let p = c["probability"].as_f64().ok_or("a cause without probability")?;
        if !(0.0..=1.0 + 1e-6).contains(&p) || order.contains(&i) {
            return Err(format!("probability {p} of {}", WORDS[i]));
        }
        probability[i] = p;
        order.push(i);
    }
    if order.len() != 10 {
        return Err(format!("{} causes instead of 10", order.len()));
    }
    let leading = v["leading"].as_str().and_then(index).ok_or("no leading cause")?;
    let decided = v["decided"].as_bool().ok_or("no decided")?;
    Ok(Answer {
        probability,
        order,
        leading,
        decided,
        fits: v["fits"].as_f64().unwrap_or(f64::NAN),
        verdict: said::verdict(&v),
        liquid_feed: said::family(&v, said::LIQUID_FEED[0]),
        compressor: said::compressor(&v).0,
    })
}
