//! A user's own blend: a short text file in, a table and its report out.
//!
//! One fact a line: `name` and a designation, an optional `class` and a safety class, then each component's
//! designation and its mass percent. `#` starts a comment. Points that were measured, `bubble` or `dew` with an absolute
//! pressure in kPa and a temperature in degC, tune the pairs that have no published parameters.
//!
//! ```text
//! name  R404A-LIKE
//! class A1
//! R125  44
//! R143a 52
//! R134a 4
//! bubble 101.325 -46.2
//! ```

use crate::data::{Blend, Library};
use crate::fit::Measured;
use crate::saturation::Kind;
use rimewise::refrigerant::SafetyClass;

/// Longest name a table holds.
const LONGEST_NAME: usize = 32;
/// How far the percentages may be from 100 in sum.
const ROUNDING: f64 = 0.05;

/// Reads a blend from its text.
///
/// Errors name the line: an unknown word, a percentage that is not a positive number, a component given twice, without
/// an equation of state (with the nearest names), no name, fewer than two components, a sum that is not 100 %.
pub fn read(library: &Library, text: &str) -> Result<(Blend, Vec<Measured>), String> {
    let mut name = None;
    let mut class = None;
    let mut parts: Vec<(String, f64)> = Vec::new();
    let mut measured = Vec::new();
    for (index, line) in text.lines().enumerate() {
        let at = |what: String| format!("line {}: {what}", index + 1);
        let line = line.split('#').next().unwrap_or_default().trim();
        if line.is_empty() {
            continue;
        }
        let (word, value) = line
            .split_once(char::is_whitespace)
            .map(|(w, v)| (w, v.trim()))
            .ok_or_else(|| at(format!("`{line}` needs a value after it")))?;
        match word {
            "name" => {
                if name.replace(value.to_string()).is_some() {
                    return Err(at("a second name".to_string()));
                }
                if value.len() > LONGEST_NAME {
                    return Err(at(format!("the name is longer than {LONGEST_NAME} bytes")));
                }
            }
            "class" => {
                SafetyClass::from_name(value).ok_or_else(|| {
                    let all: Vec<&str> = SafetyClass::ALL.iter().map(|c| c.name()).collect();
                    at(format!("no safety class `{value}`; the classes are {}", all.join(", ")))
                })?;
                class = Some(value.to_string());
            }
            "bubble" | "dew" => {
                let numbers: Vec<f64> = value.split_whitespace().filter_map(|n| n.parse().ok()).collect();
                let ([kpa, celsius], 2) =
                    (numbers[..].first_chunk().copied().unwrap_or([f64::NAN; 2]), numbers.len())
                else {
                    return Err(at(format!("`{value}` is not a pressure in kPa and a temperature in degC")));
                };
                if !(1.0..=20_000.0).contains(&kpa) || !(-150.0..=300.0).contains(&celsius) {
                    return Err(at(format!("`{value}` is not a pressure in kPa and a temperature in degC")));
                }
                let kind = if word == "dew" { Kind::Dew } else { Kind::Bubble };
                measured.push(Measured { kind, p: kpa * 1e3, t: celsius + 273.15 });
            }
            component => {
                let designation = find(library, component).map_err(&at)?;
                let percent: f64 = value
                    .trim_end_matches('%')
                    .trim()
                    .parse()
                    .ok()
                    .filter(|p: &f64| p.is_finite() && *p > 0.0)
                    .ok_or_else(|| at(format!("`{value}` is not a positive mass percent")))?;
                if parts.iter().any(|(d, _)| *d == designation) {
                    return Err(at(format!("{designation} is given twice")));
                }
                parts.push((designation, percent));
            }
        }
    }
    let designation = name.ok_or("no line `name ...`")?;
    if parts.len() < 2 {
        return Err("a blend has at least two components".to_string());
    }
    let total: f64 = parts.iter().map(|(_, p)| p).sum();
    if (total - 100.0).abs() > ROUNDING {
        return Err(format!("the composition sums to {total} %, not 100 %"));
    }
    let mass_percent = parts
        .into_iter()
        .map(|(d, p)| (d, serde_json::Value::from(p * 100.0 / total)))
        .collect::<serde_json::Map<_, _>>();
    let blend = Blend {
        designation,
        mass_percent,
        safety_class: class,
        class_source: None,
        composition_source: None,
    };
    Ok((blend, measured))
}

/// Letters and digits in lower case, without a leading r.
fn plain(text: &str) -> String {
    let key: String =
        text.chars().filter(char::is_ascii_alphanumeric).map(|c| c.to_ascii_lowercase()).collect();
    match key.strip_prefix('r') {
        Some(rest) if rest.starts_with(|c: char| c.is_ascii_digit() || c == 'c' || c == 'e') => {
            rest.to_string()
        }
        _ => key,
    }
}

fn find(library: &Library, component: &str) -> Result<String, String> {
    let key = plain(component);
    let named = library
        .fluids
        .iter()
        .find(|f| plain(&f.designation) == key || f.names.iter().any(|n| plain(n) == key));
    if let Some(fluid) = named {
        return Ok(fluid.designation.clone());
    }
    let mut near: Vec<(usize, &str)> = library
        .fluids
        .iter()
        .flat_map(|f| std::iter::once(&f.designation).chain(&f.names))
        .map(|n| (distance(&plain(n), &key), n.as_str()))
        .collect();
    near.sort();
    let near: Vec<&str> = near.iter().take(4).map(|(_, n)| *n).collect();
    Err(format!("no component `{component}`; the nearest names are {}", near.join(", ")))
}

/// Counts the letters to insert, delete or replace to make one word of another (Levenshtein).
fn distance(a: &str, b: &str) -> usize {
    let b: Vec<char> = b.chars().collect();
    let mut row: Vec<usize> = (0..=b.len()).collect();
    for (i, x) in a.chars().enumerate() {
        let mut diagonal = row[0];
        row[0] = i + 1;
        for (j, y) in b.iter().enumerate() {
            let replaced = diagonal + usize::from(x != *y);
            diagonal = row[j + 1];
            row[j + 1] = replaced.min(row[j] + 1).min(diagonal + 1);
        }
    }
    row[b.len()]
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::path::Path;

    fn library() -> Library {
        Library::read(&Path::new(env!("CARGO_MANIFEST_DIR")).join("data")).expect("the data files read")
    }

    #[test]
    fn a_blend_is_read_with_names_as_people_write_them() {
        let (blend, _) =
            read(&library(), "name X\nR-32 50 # half\npropane 20\n600a 30\n").expect("a good file");
        let names: Vec<&String> = blend.mass_percent.keys().collect();
        assert_eq!(names, ["R32", "R290", "R600a"]);
    }

    /// R22 + R124 has no published pair: a bubble point 1 K lower than it gives is met once it is told.
    #[test]
    fn measured_points_tune_the_estimated_pairs() {
        let mut library = library();
        let text = "name X\nR22 60\nR124 40\n";
        let (blend, _) = read(&library, text).expect("a good file");
        let [bubble, _] = crate::fit::boiling(&library, &blend).expect("a boiling point");
        let lower = bubble - 273.15 - 1.0;
        let (blend, measured) =
            read(&library, &format!("{text}bubble 101.325 {lower}\n")).expect("a good file");
        let rms = crate::fit::tune(&mut library, &blend, &measured).expect("pairs to tune");
        assert!(rms < 0.01, "{rms}");
        let [found, _] = crate::fit::boiling(&library, &blend).expect("a boiling point");
        assert!((found - bubble + 1.0).abs() < 0.01, "{found}");
        assert!(read(&library, &format!("{text}bubble -40\n")).is_err());
    }

    #[test]
    fn a_bad_composition_is_refused_by_name() {
        let refused = |text: &str| read(&library(), text).expect_err("a bad file");
        assert!(refused("name X\nR32 50\nR125 49\n").contains("sums to 99 %"));
        let unknown = refused("name X\nR32 50\nR1234yg 50\n");
        assert!(unknown.contains("line 3") && unknown.contains("R1234yf"), "{unknown}");
        assert!(refused("name X\nR32 50\nR32 50\n").contains("twice"));
        assert!(refused("name X\nR32 100\n").contains("two components"));
        assert!(refused("R32 50\nR125 50\n").contains("name"));
        assert!(refused("name X\nR32 fifty\nR125 50\n").contains("positive mass percent"));
        assert!(refused("name X\nR32 -50\nR125 150\n").contains("positive mass percent"));
        assert!(refused("name X\nclass A9\nR32 50\nR125 50\n").contains("A2L"));
    }
}
