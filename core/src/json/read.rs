//! Reads a visit strictly: an unknown field, a wrong type or an unknown name is an error that names the field.

use super::tree::Tree;
use crate::cause::Cause;
use crate::decision::Costs;
use crate::field::{Choices, Kind, Section, Shape, Value};
use crate::invalid::Invalid;
use crate::readings::{Access, Call, Doable, Readings, Visit};
use crate::refrigerant::{self, Refrigerant};
use crate::system::{CompressorPlate, Design, System};

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

/// A visit as read from JSON, which owns its lists.
#[derive(Clone, Debug, Default)]
pub struct OwnedVisit {
    /// The refrigerant, where it is known.
    pub refrigerant: Option<&'static Refrigerant<'static>>,
    /// The readings of this machine when it was good.
    pub record: Vec<Readings>,
    /// What cannot be taken or done on this visit.
    pub cannot: Vec<Doable>,
    /// What was read on this visit before something was changed.
    pub before: Option<Readings>,
    visit: Visit<'static>,
}

impl OwnedVisit {
    /// The visit, with its lists borrowed from here.
    pub fn visit(&self) -> Visit<'_> {
        Visit { record: &self.record, cannot: &self.cannot, before: self.before.as_ref(), ..self.visit }
    }
}

type Members = Vec<(String, Tree)>;

/// Reads one visit from one JSON object.
///
/// # Errors
/// The first field that is unknown, of a wrong type, or names what is not known here.
pub fn read_visit(line: &str) -> Result<OwnedVisit, FieldError> {
    let tree = Tree::read(line)?;
    let mut owned = OwnedVisit::default();
    let mut call = Call::default();
    read_section(
        &mut call,
        "",
        tree,
        &["system", "readings", "observations", "uncertainty", "access", "costs", "before"],
        |path, value| {
            let visit = &mut owned.visit;
            match path {
                "system" => read_system(value, &mut owned)?,
                "readings" => visit.readings = read_plain(path, value)?,
                "observations" => visit.observations = read_plain(path, value)?,
                "uncertainty" => visit.uncertainty = read_plain(path, value)?,
                "access" => read_access(value, &mut owned)?,
                "before" => owned.before = read_before(path, value)?,
                _ => read_costs(value, &mut visit.costs)?,
            }
            Ok(())
        },
    )?;
    owned.visit.call = call;
    Ok(owned)
}

/// Reads a section that holds nothing but its own fields.
fn read_plain<S: Section>(path: &str, value: Tree) -> Result<S, FieldError> {
    let mut section = S::default();
    read_section(&mut section, path, value, &[], |_, _| Ok(()))?;
    Ok(section)
}

/// Reads the fields of a section from an object; `besides` names what `other` reads, by its path.
fn read_section<S: Section>(
    section: &mut S,
    path: &str,
    value: Tree,
    besides: &[&str],
    mut other: impl FnMut(&str, Tree) -> Result<(), FieldError>,
) -> Result<(), FieldError> {
    for (name, value) in object(path, value)? {
        let path = if path.is_empty() { name.clone() } else { format!("{path}.{name}") };
        if besides.contains(&name.as_str()) {
            other(&path, value)?;
            continue;
        }
        let Some(position) = S::ENTRIES.iter().position(|entry| entry.name == name) else {
            let own = S::ENTRIES.iter().map(|entry| entry.name);
            let names: Vec<&str> = own.chain(besides.iter().copied()).collect();
            return Err(unknown(&path, &names));
        };
        let read =
            S::ENTRIES.get(position).map_or(Ok(None), |entry| field_value(&path, entry.shape, value))?;
        // The shape is the entry's own, so that the section takes it.
        section.set(position, read);
    }
    Ok(())
}

fn field_value(path: &str, shape: Shape, value: Tree) -> Result<Option<Value>, FieldError> {
    Ok(match shape {
        Shape::Number(kind) => number(path, kind, value)?.map(Value::Number),
        Shape::Three(kind) => triple(path, kind, value)?.map(Value::Three),
        Shape::Flag => boolean(path, value)?.map(Value::Flag),
        Shape::Choice(choices) => choice(path, value, choices)?.map(Value::Choice),
        Shape::Set(choices) => set(path, value, choices)?.map(Value::Set),
    })
}

fn read_system(value: Tree, owned: &mut OwnedVisit) -> Result<(), FieldError> {
    let mut system = System::default();
    let (mut design, mut compressor) = (Design::default(), CompressorPlate::default());
    read_section(
        &mut system,
        "system",
        value,
        &["refrigerant", "design", "compressor", "record"],
        |path, value| {
            match path {
                "system.refrigerant" => owned.refrigerant = read_refrigerant(path, value)?,
                "system.design" => design = read_plain(path, value)?,
                "system.compressor" => compressor = read_plain(path, value)?,
                _ => {
                    for (n, entry) in list(path, "an array", value)?.into_iter().enumerate() {
                        let path = format!("{path}[{n}]");
                        let mut readings = Readings::default();
                        for (name, value) in object(&path, entry)? {
                            if name != "readings" {
                                return Err(unknown(&format!("{path}.{name}"), &["readings"]));
                            }
                            readings = read_plain(&format!("{path}.readings"), value)?;
                        }
                        owned.record.push(readings);
                    }
                }
            }
            Ok(())
        },
    )?;
    owned.visit.system = System { design, compressor, ..system };
    Ok(())
}

/// Reads `{"readings": {...}}`; null is nothing.
fn read_before(path: &str, value: Tree) -> Result<Option<Readings>, FieldError> {
    let mut before = None;
    for (name, value) in object(path, value)? {
        let path = format!("{path}.{name}");
        if name != "readings" {
            return Err(unknown(&path, &["readings"]));
        }
        before = Some(read_plain(&path, value)?);
    }
    Ok(before)
}

fn read_access(value: Tree, owned: &mut OwnedVisit) -> Result<(), FieldError> {
    let mut access = Access::default();
    read_section(&mut access, "access", value, &["cannot"], |path, value| {
        for (n, item) in list(path, "an array of names", value)?.into_iter().enumerate() {
            let path = format!("{path}[{n}]");
            let Tree::Text(name) = item else { return Err(wrong_type(&path, "a name", &item)) };
            let doable = Doable::from_name(&name).ok_or_else(|| FieldError {
                field: path,
                error: format!("\"{name}\" is no reading, observation or action known here"),
            })?;
            owned.cannot.push(doable);
        }
        Ok(())
    })?;
    owned.visit.access = access;
    Ok(())
}

fn read_costs(value: Tree, costs: &mut Costs) -> Result<(), FieldError> {
    let mut repair = [None; Cause::COUNT];
    read_section(costs, "costs", value, &["repair"], |path, value| {
        for (name, value) in object(path, value)? {
            let path = format!("{path}.{name}");
            let cause = Cause::from_name(&name).filter(|cause| *cause != Cause::None);
            let Some(slot) = cause.and_then(|cause| repair.get_mut(cause.index())) else {
                let names: Vec<&str> = Cause::ALL.iter().skip(1).map(|cause| cause.name()).collect();
                return Err(unknown(&path, &names));
            };
            *slot = number(&path, Kind::Money, value)?;
        }
        Ok(())
    })?;
    costs.repair = repair;
    Ok(())
}

/// Reads an array; null is an empty one.
fn list(path: &str, expected: &str, value: Tree) -> Result<Vec<Tree>, FieldError> {
    match value {
        Tree::List(items) => Ok(items),
        Tree::Null => Ok(Vec::new()),
        other => Err(wrong_type(path, expected, &other)),
    }
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

/// Reads the permanent number of a choice by its name.
fn choice(path: &str, value: Tree, choices: &Choices) -> Result<Option<i32>, FieldError> {
    let list = || choices.list.iter().map(|(_, name, _)| *name).collect::<Vec<_>>().join(", ");
    match value {
        Tree::Null => Ok(None),
        Tree::Text(text) => {
            let known = choices.list.iter().find(|(_, name, _)| *name == text);
            known.map(|(code, _, _)| Some(*code)).ok_or_else(|| FieldError {
                field: path.to_owned(),
                error: format!("\"{text}\" is none of: {}", list()),
            })
        }
        other => Err(wrong_type(path, &format!("one of: {}", list()), &other)),
    }
}

/// Reads several of a choice's names as bits.
fn set(path: &str, value: Tree, choices: &Choices) -> Result<Option<u32>, FieldError> {
    if value == Tree::Null {
        return Ok(None);
    }
    let mut bits = 0;
    for (n, item) in list(path, "an array of names", value)?.into_iter().enumerate() {
        let path = format!("{path}[{n}]");
        if item == Tree::Null {
            return Err(wrong_type(&path, "a name", &item));
        }
        let code = choice(&path, item, choices)?;
        bits |= code.and_then(|code| u32::try_from(code).ok()).and_then(|n| 1u32.checked_shl(n)).unwrap_or(0);
    }
    Ok(Some(bits))
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
