//! Reads a visit strictly: an unknown field, a wrong type or an unknown name is an error that names the field.

use super::tree::Tree;
use crate::cause::Cause;
use crate::decision::Costs;
use crate::field::{Choice, Choices, Kind, Section, Shape, Value};
use crate::invalid::{ErrorCode, Facts, Invalid};
use crate::readings::{Access, Call, Doable, Readings, Visit};
use crate::refrigerant::{self, Refrigerant};
use crate::system::{CompressorPlate, Design, System};
use crate::text::{Language, Phrase, Sentence, Told, ValueType};

/// An error about one field of the input.
#[derive(Clone, Debug, PartialEq)]
pub struct FieldError {
    /// The path of the field, such as `readings.suction_pressure_kpa`; empty where the input is not JSON.
    pub field: String,
    /// The code and the numbers of the error.
    pub facts: Facts,
    /// The language that its sentence is wanted in.
    pub language: Language,
    /// What was given instead, where it is no number.
    pub(super) given: Part,
    /// What is known or expected.
    pub(super) known: Part,
}

/// A part of an error's sentence.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Part {
    Nothing,
    Text(Box<str>),
    Type(ValueType),
    In(Phrase, Box<str>),
}

impl Part {
    fn text(&self, language: Language) -> String {
        match self {
            Self::Nothing => String::new(),
            Self::Text(text) => text.to_string(),
            Self::Type(value) => value.text(language).to_owned(),
            Self::In(phrase, text) => phrase.text(language).replace("{known}", text),
        }
    }
}

impl FieldError {
    /// An error that is told by its code alone.
    pub(super) fn of(field: &str, code: ErrorCode) -> Self {
        Self::with(field, Facts::of(code))
    }
    /// An error that is told by its code and its numbers.
    pub(super) fn with(field: &str, facts: Facts) -> Self {
        let (given, known) = (Part::Nothing, Part::Nothing);
        Self { field: field.to_owned(), facts, language: Language::English, given, known }
    }
    /// An error about the whole text, with what is said of it: not JSON, too long, not written.
    pub fn of_text(code: ErrorCode, given: &str) -> Self {
        Self { given: Part::Text(given.into()), ..Self::of("", code) }
    }
    /// The same error with every text that it repeats rewritten, such as shortened.
    pub fn rewritten(mut self, rewrite: impl Fn(&str) -> String) -> Self {
        self.field = rewrite(&self.field);
        for part in [&mut self.given, &mut self.known] {
            if let Part::Text(text) | Part::In(_, text) = part {
                *text = rewrite(text).into();
            }
        }
        self
    }
    /// What is wrong, in words.
    pub fn text(&self) -> String {
        let (given, known) = (self.given.text(self.language), self.known.text(self.language));
        Sentence { facts: self.facts, language: self.language, given: &given, known: &known }.to_string()
    }
}

impl core::fmt::Display for FieldError {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        let field = if self.field.is_empty() { "the text" } else { &self.field };
        write!(f, "{field} {}", self.text())
    }
}

impl core::error::Error for FieldError {}

impl From<Invalid> for FieldError {
    fn from(invalid: Invalid) -> Self {
        let record = invalid.record.map_or(String::new(), |n| format!("system.record[{n}]."));
        let dot = if invalid.section.is_empty() { "" } else { "." };
        Self::with(&format!("{record}{}{dot}{}", invalid.section, invalid.field), invalid.facts())
    }
}

/// A visit as read from JSON, which owns its lists.
#[derive(Clone, Debug)]
pub struct OwnedVisit {
    /// The refrigerant, where it is known.
    pub refrigerant: Option<&'static Refrigerant<'static>>,
    /// The readings of this machine when it was good.
    pub record: Vec<Readings>,
    /// What cannot be taken or done on this visit.
    pub cannot: Vec<Doable>,
    /// The language that sentences are wanted in.
    pub language: Language,
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

/// The member of a visit that says in which language its answer is wanted.
const LANGUAGE: &str = "language";

type Members = Vec<(String, Tree)>;

/// Reads one visit from one JSON object.
///
/// # Errors
/// The first field that is unknown, of a wrong type, or names what is not known here.
pub fn read_visit(line: &str) -> Result<OwnedVisit, FieldError> {
    let tree = Tree::read(line)?;
    let language = read_language(&tree)?;
    read_tree(tree, language).map_err(|error| FieldError { language, ..error })
}

/// Reads the language first, because errors are told in it too.
fn read_language(tree: &Tree) -> Result<Language, FieldError> {
    let Tree::Object(members) = tree else { return Ok(Language::English) };
    let member = members.iter().find(|(name, _)| name == LANGUAGE);
    let read = member.map(|(name, value)| choice(name, value.clone(), Language::CHOICES));
    Ok(read.transpose()?.flatten().and_then(Language::from_code).unwrap_or(Language::English))
}

fn read_tree(tree: Tree, language: Language) -> Result<OwnedVisit, FieldError> {
    let mut owned = OwnedVisit {
        refrigerant: None,
        record: Vec::new(),
        cannot: Vec::new(),
        before: None,
        language,
        visit: Visit::default(),
    };
    let mut call = Call::default();
    read_section(
        &mut call,
        "",
        tree,
        &["system", "readings", "observations", "uncertainty", "access", "costs", "before", LANGUAGE],
        |path, value| {
            let visit = &mut owned.visit;
            match path {
                LANGUAGE => {}
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
                    for (n, entry) in list(path, ValueType::Array, value)?.into_iter().enumerate() {
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
        for (n, item) in list(path, ValueType::Names, value)?.into_iter().enumerate() {
            let path = format!("{path}[{n}]");
            let Tree::Text(name) = item else { return Err(wrong_type(&path, ValueType::Name, &item)) };
            let doable = Doable::from_name(&name).ok_or_else(|| FieldError {
                given: Part::Text(name.into()),
                ..FieldError::of(&path, ErrorCode::UnknownMeasurement)
            })?;
            owned.cannot.push(doable);
        }
        Ok(())
    })?;
    owned.visit.access = access;
    Ok(())
}

pub(super) fn read_costs(value: Tree, costs: &mut Costs) -> Result<(), FieldError> {
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
fn list(path: &str, expected: ValueType, value: Tree) -> Result<Vec<Tree>, FieldError> {
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
            let known = alike(&text, &known);
            FieldError {
                given: Part::Text(text.into()),
                known,
                ..FieldError::of(path, ErrorCode::UnknownRefrigerant)
            }
        }),
        other => Err(wrong_type(path, ValueType::Designation, &other)),
    }
}

pub(super) fn object(path: &str, value: Tree) -> Result<Members, FieldError> {
    match value {
        Tree::Object(members) => Ok(members),
        // A whole section may be missing, and then null stands for it.
        Tree::Null if !path.is_empty() => Ok(Vec::new()),
        other => Err(wrong_type(path, ValueType::Object, &other)),
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
                Err(FieldError::of(path, ErrorCode::TooLarge))
            }
        }
        Tree::Text(text) if kind.takes_open() && text == "open" => Ok(Some(f32::INFINITY)),
        other if kind.takes_open() => Err(wrong_type(path, ValueType::NumberOrOpen, &other)),
        other => Err(wrong_type(path, ValueType::Number, &other)),
    }
}

fn triple(path: &str, kind: Kind, value: Tree) -> Result<Option<[f32; 3]>, FieldError> {
    let items = match value {
        Tree::Null => return Ok(None),
        Tree::List(items) => items,
        other => return Err(wrong_type(path, ValueType::ThreeNumbers, &other)),
    };
    let mut numbers = Vec::new();
    for item in items {
        match number(path, kind, item)? {
            Some(n) => numbers.push(n),
            None => return Err(wrong_type(path, ValueType::ThreeNumbers, &Tree::Null)),
        }
    }
    match <[f32; 3]>::try_from(numbers) {
        Ok(three) => Ok(Some(three)),
        Err(others) => Err(FieldError {
            given: Part::Text(others.len().to_string().into()),
            known: Part::Type(ValueType::ThreeNumbers),
            ..FieldError::of(path, ErrorCode::WrongLength)
        }),
    }
}

fn boolean(path: &str, value: Tree) -> Result<Option<bool>, FieldError> {
    match value {
        Tree::Null => Ok(None),
        Tree::Bool(value) => Ok(Some(value)),
        other => Err(wrong_type(path, ValueType::Boolean, &other)),
    }
}

/// Reads the permanent number of a choice by its name.
fn choice(path: &str, value: Tree, choices: &Choices) -> Result<Option<i32>, FieldError> {
    let list = || choices.list.iter().map(|member| member.name).collect::<Vec<_>>().join(", ");
    match value {
        Tree::Null => Ok(None),
        Tree::Text(text) => {
            choices.of_name(&text).map(|member| Some(member.code)).ok_or_else(|| FieldError {
                given: Part::Text(text.into()),
                known: Part::Text(list().into()),
                ..FieldError::of(path, ErrorCode::UnknownName)
            })
        }
        other => Err(FieldError {
            known: Part::In(Phrase::OneOf, list().into()),
            ..wrong_type(path, ValueType::Name, &other)
        }),
    }
}

/// Reads several of a choice's names as bits.
fn set(path: &str, value: Tree, choices: &Choices) -> Result<Option<u32>, FieldError> {
    if value == Tree::Null {
        return Ok(None);
    }
    let mut bits = 0;
    for (n, item) in list(path, ValueType::Names, value)?.into_iter().enumerate() {
        let path = format!("{path}[{n}]");
        if item == Tree::Null {
            return Err(wrong_type(&path, ValueType::Name, &item));
        }
        let code = choice(&path, item, choices)?;
        bits |= code.and_then(|code| u32::try_from(code).ok()).and_then(|n| 1u32.checked_shl(n)).unwrap_or(0);
    }
    Ok(Some(bits))
}

pub(super) fn wrong_type(path: &str, expected: ValueType, got: &Tree) -> FieldError {
    FieldError {
        given: Part::Type(got.kind()),
        known: Part::Type(expected),
        ..FieldError::of(path, ErrorCode::WrongType)
    }
}

pub(super) fn unknown(path: &str, known: &[&str]) -> FieldError {
    let name = path.rsplit('.').next().unwrap_or(path);
    FieldError { known: nearest(name, known), ..FieldError::of(path, ErrorCode::UnknownField) }
}

/// Says which designations begin as this one does, such as R407A for R407, else which one is nearest.
fn alike(text: &str, known: &[&str]) -> Part {
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
        Part::In(Phrase::KnownAre, longer.join(", ").into())
    }
}

/// Says which known name is nearest, where one is near.
fn nearest(name: &str, known: &[&str]) -> Part {
    let best = known.iter().map(|k| (edits(&name.to_ascii_lowercase(), &k.to_ascii_lowercase()), *k)).min();
    match best {
        Some((edits, near)) if edits <= 1.max(name.chars().count() / 3) => {
            Part::In(Phrase::Nearest, near.into())
        }
        _ => Part::Nothing,
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

    fn known_for(text: &str) -> Part {
        match read_refrigerant("refrigerant", Tree::Text(text.to_owned())) {
            Ok(found) => panic!("{text} is {found:?}"),
            Err(error) => {
                assert_eq!(error.facts.code, ErrorCode::UnknownRefrigerant);
                error.known
            }
        }
    }

    #[test]
    fn a_designation_without_its_letter_is_answered_with_those_that_have_one() {
        let longer = |text: &str, first: &str| matches!(known_for(text), Part::In(Phrase::KnownAre, list) if list.starts_with(first));
        assert!(longer("R-507", "R507A") && longer("407", "R407A, R407B"));
        assert_eq!(known_for("R44A"), Part::In(Phrase::Nearest, "R404A".into()));
        assert_eq!(known_for("R999"), Part::Nothing);
    }

    #[test]
    fn a_mistake_deep_in_the_text_names_its_place() {
        let error = |text: &str| read_visit(text).map(|_| ()).unwrap_err();
        let twice = error(r#"{"readings":{"current_a":2,"current_a":2}}"#);
        assert_eq!((twice.facts.code, twice.field.as_str()), (ErrorCode::Duplicate, "readings.current_a"));
        let no_json = error(r#"{"readings":{"current_a":NaN}}"#);
        assert_eq!((no_json.facts.code, no_json.field.as_str()), (ErrorCode::NotJson, ""));
        assert_eq!(no_json.known, Part::In(Phrase::InField, "readings.current_a".into()));
        let large = error(r#"{"readings":{"current_a":1e999}}"#);
        assert_eq!((large.facts.code, large.field.as_str()), (ErrorCode::TooLarge, "readings.current_a"));
        let list = error("[]");
        assert_eq!((list.facts.code, list.given), (ErrorCode::WrongType, Part::Type(ValueType::Array)));
    }
}
