//! Healthy visits that are told wrongly: what is decided then is decided on nothing.

use super::answer::Answer;
use serde_json::{Value, json};
use std::fmt::Write;

/// A way to tell a visit wrongly.
#[derive(Clone, Copy, Debug)]
pub enum Mistake {
    /// None.
    Not,
    /// A machine of the first refrigerant is said to hold the second.
    Refrigerant(&'static str, &'static str),
    /// Two readings stand in each other's field.
    Exchanged(&'static str, &'static str),
    /// Gauge pressures are given as absolute ones.
    Gauge,
}

/// Every mistake with its name.
pub const MISTAKES: [(Mistake, &str); 22] = [
    (Mistake::Not, "told as it is"),
    (Mistake::Refrigerant("R134a", "R404A"), "R134a, said to be R404A"),
    (Mistake::Refrigerant("R134a", "R22"), "R134a, said to be R22"),
    (Mistake::Refrigerant("R134a", "R290"), "R134a, said to be R290"),
    (Mistake::Refrigerant("R290", "R134a"), "R290, said to be R134a"),
    (Mistake::Refrigerant("R290", "R22"), "R290, said to be R22"),
    (Mistake::Refrigerant("R290", "R404A"), "R290, said to be R404A"),
    (Mistake::Refrigerant("R404A", "R134a"), "R404A, said to be R134a"),
    (Mistake::Refrigerant("R404A", "R22"), "R404A, said to be R22"),
    (Mistake::Refrigerant("R404A", "R448A"), "R404A, said to be R448A"),
    (Mistake::Refrigerant("R410A", "R22"), "R410A, said to be R22"),
    (Mistake::Refrigerant("R410A", "R407C"), "R410A, said to be R407C"),
    (Mistake::Refrigerant("R410A", "R454B"), "R410A, said to be R454B"),
    (Mistake::Refrigerant("R448A", "R134a"), "R448A, said to be R134a"),
    (Mistake::Refrigerant("R448A", "R22"), "R448A, said to be R22"),
    (Mistake::Refrigerant("R448A", "R404A"), "R448A, said to be R404A"),
    (Mistake::Exchanged("space_c", "ambient_c"), "space and ambient exchanged"),
    (
        Mistake::Exchanged("evaporator_outlet_c", "suction_line_c"),
        "evaporator outlet and suction line exchanged",
    ),
    (Mistake::Exchanged("liquid_line_c", "discharge_line_c"), "liquid and discharge line exchanged"),
    (Mistake::Exchanged("supply_air_c", "condenser_exhaust_c"), "supply and exhaust air exchanged"),
    (
        Mistake::Exchanged("discharge_pressure_kpa", "liquid_pressure_kpa"),
        "discharge and liquid pressure exchanged",
    ),
    (Mistake::Gauge, "gauge pressures given as absolute"),
];

/// Standard atmosphere, kPa.
const ATMOSPHERE_KPA: f64 = 101.325;

/// The visit told wrongly; none where the mistake does not apply to it.
pub fn tell(visit: &Value, mistake: Mistake) -> Option<Value> {
    let mut told = visit.clone();
    match mistake {
        Mistake::Not => {}
        Mistake::Refrigerant(is, said) => {
            if visit["system"]["refrigerant"] != is {
                return None;
            }
            told["system"]["refrigerant"] = json!(said);
        }
        Mistake::Exchanged(one, other) => {
            let (a, b) = (visit["readings"].get(one)?, visit["readings"].get(other)?);
            told["readings"][one] = b.clone();
            told["readings"][other] = a.clone();
        }
        Mistake::Gauge => {
            for (field, value) in told["readings"].as_object_mut()? {
                if field.ends_with("_pressure_kpa")
                    && let Some(absolute) = value.as_f64()
                {
                    *value = json!((absolute - ATMOSPHERE_KPA).max(1.0));
                }
            }
        }
    }
    Some(told)
}

/// What was said about visits told wrongly.
#[derive(Clone, Debug, Default)]
pub struct Mistaken {
    fault: u32,
    cleared: u32,
    open: u32,
    refused: u32,
    fits: Vec<f64>,
}

impl Mistaken {
    /// Counts one answer.
    pub fn add(&mut self, answer: &Result<Answer, String>) {
        match answer {
            Err(_) => self.refused += 1,
            Ok(a) => {
                match (a.decided, a.leading) {
                    (false, _) => self.open += 1,
                    (true, 0) => self.cleared += 1,
                    (true, _) => self.fault += 1,
                }
                // Outside the machine model nothing is weighed, and nothing fits.
                self.fits.push(if a.fits.is_finite() { a.fits } else { 0.0 });
            }
        }
    }
    fn count(&self) -> u32 {
        self.fault + self.cleared + self.open + self.refused
    }
    fn median_fits(&self) -> f64 {
        let mut fits = self.fits.clone();
        fits.sort_by(f64::total_cmp);
        fits.get(fits.len() / 2).copied().unwrap_or(0.0)
    }
}

/// The counts as JSON.
pub fn json(all: &[(String, Mistaken)]) -> Value {
    let mut out = json!({});
    for (name, m) in all.iter().filter(|(_, m)| m.count() > 0) {
        out[name] = json!({ "fault": m.fault, "cleared": m.cleared, "open": m.open, "refused": m.refused });
    }
    out
}

/// The counts as a section.
pub fn markdown(all: &[(String, Mistaken)]) -> String {
    let mut text = String::from(
        "\n### Healthy visits told wrongly, all readings\n\nA fault decided here is decided on nothing. Refused: answered with an error that names a field.\n\n| | visits | fault decided | cleared | not decided | refused | median fits |\n|---|---|---|---|---|---|---|\n",
    );
    for (name, m) in all.iter().filter(|(_, m)| m.count() > 0) {
        let _ = writeln!(
            text,
            "| {name} | {} | {} | {} | {} | {} | {:.3} |",
            m.count(),
            m.fault,
            m.cleared,
            m.open,
            m.refused,
            m.median_fits()
        );
    }
    text
}
