//! Reads a visit strictly: an unknown field, a wrong type or an unknown name is an error that names the field.

use super::tree::Tree;
use crate::field::{Field, Kind};
use crate::invalid::Invalid;
use crate::readings::{Observations, PumpDownEnd, PumpDownValve, Readings, SightGlass, StartNoise};
use crate::readings::{Uncertainty, Visit};
use crate::refrigerant::{self, Refrigerant};
use crate::system::{CompressorPlate, Design, Duty, Metering, System};

/// An error about one field of the input.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FieldError {
    /// The path of the field, such as `readings.suction_pressure_kpa`; empty where the input is not JSON.
    pub field: String,
    /// What is wrong with it.
    pub error: String,
}

impl core::fmt::Display for FieldError {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        if self.field.is_empty() {
            write!(f, "the text {}", self.error)
        } else {
            write!(f, "{} {}", self.field, self.error)
        }
    }
}

impl core::error::Error for FieldError {}

impl From<Invalid> for FieldError {
    fn from(invalid: Invalid) -> Self {
        let path = match invalid.record {
            Some(n) => format!("system.record[{n}].{}.{}", invalid.section, invalid.field),
            None => format!("{}.{}", invalid.section, invalid.field),
        };
        Self { field: path, error: invalid.reason().to_string() }
    }
}

/// A visit as read from JSON, which owns its record.
#[derive(Clone, Debug)]
pub struct OwnedVisit {
    /// The refrigerant, where it is known.
    pub refrigerant: Option<&'static Refrigerant<'static>>,
    /// The readings of this machine when it was good.
    pub record: Vec<Readings>,
    visit: Visit<'static>,
}

impl OwnedVisit {
    /// The visit, with its record borrowed from here.
    pub fn visit(&self) -> Visit<'_> {
        Visit { record: &self.record, ..self.visit }
    }
}

type Members = Vec<(String, Tree)>;

/// Reads one visit from one JSON object.
///
/// # Errors
/// The first field that is unknown, of a wrong type, or names what is not known here.
pub fn read_visit(line: &str) -> Result<OwnedVisit, FieldError> {
    let tree = Tree::read(line)?;
    let mut owned = OwnedVisit { refrigerant: None, record: Vec::new(), visit: Visit::default() };
    for (name, value) in object("", tree)? {
        match name.as_str() {
            "system" => read_system(value, &mut owned)?,
            "readings" => owned.visit.readings = read_readings("readings", value)?,
            "observations" => owned.visit.observations = read_observations(value)?,
            "uncertainty" => read_uncertainty(value, &mut owned.visit.uncertainty)?,
            _ => return Err(unknown(&name, &["system", "readings", "observations", "uncertainty"])),
        }
    }
    Ok(owned)
}

fn read_system(value: Tree, owned: &mut OwnedVisit) -> Result<(), FieldError> {
    const NAMES: [&str; 10] = [
        "refrigerant",
        "metering",
        "receiver",
        "suction_pressure_regulator",
        "duty",
        "design",
        "compressor",
        "record",
        "charge_kg",
        "run_capacitor_tolerance_percent",
    ];
    let system: &mut System = &mut owned.visit.system;
    for (name, value) in object("system", value)? {
        let path = format!("system.{name}");
        match name.as_str() {
            "refrigerant" => owned.refrigerant = read_refrigerant(&path, value)?,
            "metering" => system.metering = choice(&path, value, Metering::ALL, Metering::name)?,
            "duty" => system.duty = choice(&path, value, Duty::ALL, Duty::name)?,
            "receiver" => system.receiver = boolean(&path, value)?,
            "suction_pressure_regulator" => system.suction_pressure_regulator = boolean(&path, value)?,
            "charge_kg" => system.charge_kg = number(&path, Kind::Mass, value)?,
            "run_capacitor_tolerance_percent" => {
                system.run_capacitor_tolerance_percent = number(&path, Kind::Percent, value)?;
            }
            "design" => {
                for (name, value) in object(&path, value)? {
                    let path = format!("{path}.{name}");
                    let slot = position(Design::FIELDS, &name).and_then(|n| system.design.number_mut(n));
                    numbered(&path, Design::FIELDS, &name, value, slot)?;
                }
            }
            "compressor" => {
                for (name, value) in object(&path, value)? {
                    let path = format!("{path}.{name}");
                    let slot = position(CompressorPlate::FIELDS, &name)
                        .and_then(|n| system.compressor.number_mut(n));
                    numbered(&path, CompressorPlate::FIELDS, &name, value, slot)?;
                }
            }
            "record" => {
                let entries = match value {
                    Tree::List(entries) => entries,
                    Tree::Null => Vec::new(),
                    other => return Err(wrong_type(&path, "an array", &other)),
                };
                for (n, entry) in entries.into_iter().enumerate() {
                    let path = format!("{path}[{n}]");
                    let mut readings = Readings::default();
                    for (name, value) in object(&path, entry)? {
                        if name != "readings" {
                            return Err(unknown(&format!("{path}.{name}"), &["readings"]));
                        }
                        readings = read_readings(&format!("{path}.readings"), value)?;
                    }
                    owned.record.push(readings);
                }
            }
            _ => return Err(unknown(&path, &NAMES)),
        }
    }
    Ok(())
}

fn read_readings(path: &str, value: Tree) -> Result<Readings, FieldError> {
    let mut readings = Readings::default();
    for (name, value) in object(path, value)? {
        let path = format!("{path}.{name}");
        match name.as_str() {
            "running" => readings.running = boolean(&path, value)?,
            "pump_down_valve" => {
                readings.pump_down_valve = choice(&path, value, PumpDownValve::ALL, PumpDownValve::name)?;
            }
            "pump_down_ended_by" => {
                readings.pump_down_ended_by = choice(&path, value, PumpDownEnd::ALL, PumpDownEnd::name)?;
            }
            "line_voltages_v" => readings.line_voltages_v = triple(&path, Kind::Voltage, value)?,
            "line_currents_a" => readings.line_currents_a = triple(&path, Kind::Current, value)?,
            _ => {
                let slot = position(Readings::FIELDS, &name).and_then(|n| readings.number_mut(n));
                if slot.is_none() {
                    let others = [
                        "running",
                        "pump_down_valve",
                        "pump_down_ended_by",
                        "line_voltages_v",
                        "line_currents_a",
                    ];
                    let names: Vec<&str> = Readings::FIELDS.iter().map(|f| f.name).chain(others).collect();
                    return Err(unknown(&path, &names));
                }
                numbered(&path, Readings::FIELDS, &name, value, slot)?;
            }
        }
    }
    Ok(readings)
}

fn read_observations(value: Tree) -> Result<Observations, FieldError> {
    let mut seen = Observations::default();
    for (name, value) in object("observations", value)? {
        let path = format!("observations.{name}");
        match name.as_str() {
            "start_noise" => seen.start_noise = choice(&path, value, StartNoise::ALL, StartNoise::name)?,
            "frost_on_compressor" => seen.frost_on_compressor = boolean(&path, value)?,
            "sight_glass" => seen.sight_glass = choice(&path, value, SightGlass::ALL, SightGlass::name)?,
            "coil_iced" => seen.coil_iced = boolean(&path, value)?,
            _ => {
                return Err(unknown(
                    &path,
                    &["start_noise", "frost_on_compressor", "sight_glass", "coil_iced"],
                ));
            }
        }
    }
    Ok(seen)
}

fn read_uncertainty(value: Tree, uncertainty: &mut Uncertainty) -> Result<(), FieldError> {
    for (name, value) in object("uncertainty", value)? {
        let path = format!("uncertainty.{name}");
        let slot = position(Uncertainty::FIELDS, &name).and_then(|n| uncertainty.number_mut(n));
        numbered(&path, Uncertainty::FIELDS, &name, value, slot)?;
    }
    Ok(())
}

/// Reads a refrigerant's designation as people write it.
pub(super) fn read_refrigerant(
    path: &str,
    value: Tree,
) -> Result<Option<&'static Refrigerant<'static>>, FieldError> {
    match value {
        Tree::Null => Ok(None),
        Tree::Text(text) => refrigerant::find(&text).map(Some).ok_or_else(|| {
            let known: Vec<&str> = refrigerant::data::ALL.iter().map(|r| r.designation()).collect();
            let error = format!("\"{text}\" is not a refrigerant known here{}", alike(&text, &known));
            FieldError { field: path.to_owned(), error }
        }),
        other => Err(wrong_type(path, "a designation", &other)),
    }
}

fn position(fields: &[Field], name: &str) -> Option<usize> {
    fields.iter().position(|field| field.name == name)
}

fn numbered(
    path: &str,
    fields: &'static [Field],
    name: &str,
    value: Tree,
    slot: Option<&mut Option<f32>>,
) -> Result<(), FieldError> {
    let kind = fields.iter().find(|field| field.name == name).map(|field| field.kind);
    match (slot, kind) {
        (Some(slot), Some(kind)) => {
            *slot = number(path, kind, value)?;
            Ok(())
        }
        _ => Err(unknown(path, &fields.iter().map(|f| f.name).collect::<Vec<_>>())),
    }
}

pub(super) fn object(path: &str, value: Tree) -> Result<Members, FieldError> {
    match value {
        Tree::Object(members) => Ok(members),
        // A whole section may be missing, and then null stands for it.
        Tree::Null if !path.is_empty() => Ok(Vec::new()),
        other => Err(wrong_type(path, "an object", &other)),
    }
}

pub(super) fn number(path: &str, kind: Kind, value: Tree) -> Result<Option<f32>, FieldError> {
    match value {
        Tree::Null => Ok(None),
        Tree::Number(value) => {
            let rounded = value as f32;
            if rounded.is_finite() {
                Ok(Some(rounded))
            } else {
                let error = "is outside what a 32-bit number holds".to_owned();
                Err(FieldError { field: path.to_owned(), error })
            }
        }
        Tree::Text(text) if kind.takes_open() && text == "open" => Ok(Some(f32::INFINITY)),
        other if kind.takes_open() => Err(wrong_type(path, "a number or \"open\"", &other)),
        other => Err(wrong_type(path, "a number", &other)),
    }
}

fn triple(path: &str, kind: Kind, value: Tree) -> Result<Option<[f32; 3]>, FieldError> {
    let items = match value {
        Tree::Null => return Ok(None),
        Tree::List(items) => items,
        other => return Err(wrong_type(path, "an array of three numbers", &other)),
    };
    let mut numbers = Vec::new();
    for item in items {
        match number(path, kind, item)? {
            Some(n) => numbers.push(n),
            None => return Err(wrong_type(path, "an array of three numbers", &Tree::Null)),
        }
    }
    match <[f32; 3]>::try_from(numbers) {
        Ok(three) => Ok(Some(three)),
        Err(others) => Err(FieldError {
            field: path.to_owned(),
            error: format!("must be an array of three numbers, not of {}", others.len()),
        }),
    }
}

fn boolean(path: &str, value: Tree) -> Result<Option<bool>, FieldError> {
    match value {
        Tree::Null => Ok(None),
        Tree::Bool(value) => Ok(Some(value)),
        other => Err(wrong_type(path, "true or false", &other)),
    }
}

fn choice<T: Copy>(
    path: &str,
    value: Tree,
    all: &[T],
    name: impl Fn(T) -> &'static str,
) -> Result<Option<T>, FieldError> {
    let list = || all.iter().map(|c| name(*c)).collect::<Vec<_>>().join(", ");
    match value {
        Tree::Null => Ok(None),
        Tree::Text(text) => all.iter().copied().find(|c| name(*c) == text).map(Some).ok_or_else(|| {
            FieldError { field: path.to_owned(), error: format!("\"{text}\" is none of: {}", list()) }
        }),
        other => Err(wrong_type(path, &format!("one of: {}", list()), &other)),
    }
}

pub(super) fn wrong_type(path: &str, expected: &str, got: &Tree) -> FieldError {
    FieldError { field: path.to_owned(), error: format!("must be {expected}, not {}", got.kind()) }
}

pub(super) fn unknown(path: &str, known: &[&str]) -> FieldError {
    let name = path.rsplit('.').next().unwrap_or(path);
    FieldError { field: path.to_owned(), error: format!("is not a field known here{}", nearest(name, known)) }
}

/// Says which designations begin as this one does, such as R407A for R407, else which one is nearest.
fn alike(text: &str, known: &[&str]) -> String {
    const LISTED: usize = 12;
    let bare = text.chars().filter(char::is_ascii_alphanumeric).collect::<String>().to_ascii_uppercase();
    let bare = if bare.starts_with(|c: char| c.is_ascii_digit()) { format!("R{bare}") } else { bare };
    // Only a letter may follow: R40 is not a beginning of R407.
    let goes_on = |k: &&&str| {
        k.to_ascii_uppercase()
            .strip_prefix(&bare)
            .is_some_and(|rest| rest.starts_with(|c: char| c.is_ascii_alphabetic()))
    };
    let longer: Vec<&str> = known.iter().filter(goes_on).take(LISTED).copied().collect();
    if bare.len() < 3 || longer.is_empty() {
        nearest(&bare, known)
    } else {
        format!("; known are {}", longer.join(", "))
    }
}

/// Says which known name is nearest, where one is near.
fn nearest(name: &str, known: &[&str]) -> String {
    let best = known.iter().map(|k| (edits(&name.to_ascii_lowercase(), &k.to_ascii_lowercase()), *k)).min();
    match best {
        Some((edits, near)) if edits <= 1.max(name.chars().count() / 3) => {
            format!("; the nearest is \"{near}\"")
        }
        _ => String::new(),
    }
}

/// The number of single-character edits between two words (Levenshtein 1966).
fn edits(a: &str, b: &str) -> usize {
    let b: Vec<char> = b.chars().collect();
    let mut row: Vec<usize> = (0..=b.len()).collect();
    for (i, from) in a.chars().enumerate() {
        let mut diagonal = i;
        row[0] = i + 1;
        for (j, to) in b.iter().enumerate() {
            let change = diagonal + usize::from(from != *to);
            diagonal = row[j + 1];
            row[j + 1] = change.min(row[j] + 1).min(diagonal + 1);
        }
    }
    row[b.len()]
}

#[cfg(test)]
mod tests {
    use super::*;

    fn says(text: &str) -> String {
        match read_refrigerant("refrigerant", Tree::Text(text.to_owned())) {
            Ok(found) => panic!("{text} is {found:?}"),
            Err(error) => error.error,
        }
    }

    #[test]
    fn a_designation_without_its_letter_is_answered_with_those_that_have_one() {
        assert!(says("R-507").ends_with("; known are R507A"), "{}", says("R-507"));
        assert!(says("407").contains("; known are R407A, R407B"), "{}", says("407"));
        assert!(says("R44A").ends_with("; the nearest is \"R404A\""), "{}", says("R44A"));
        assert!(says("R999").ends_with("known here"), "{}", says("R999"));
    }

    #[test]
    fn a_mistake_deep_in_the_text_names_its_place() {
        let error = |text: &str| read_visit(text).map(|_| ()).unwrap_err().to_string();
        assert_eq!(
            error(r#"{"readings":{"current_a":2,"current_a":2}}"#),
            "readings.current_a is given twice"
        );
        assert!(error(r#"{"readings":{"current_a":NaN}}"#).ends_with(", in readings.current_a"));
        assert_eq!(
            error(r#"{"readings":{"current_a":1e999}}"#),
            "readings.current_a is outside what a 32-bit number holds"
        );
        assert_eq!(error("[]"), "the text must be an object, not an array");
    }
}
