//! A JSON value that keeps every member in order and refuses a name given twice.

use super::read::{FieldError, Part};
use crate::invalid::ErrorCode;
use crate::text::{Phrase, ValueType};
use serde::de::{DeserializeSeed, Deserializer, Error, MapAccess, SeqAccess, Visitor};
use std::fmt;

/// What is wrong with a member whose name came before.
const TWICE: &str = "is given twice";
/// How the reader of JSON begins its message about a number beyond binary64.
const TOO_LARGE: &str = "number out of range";

/// A JSON value.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Tree {
    Null,
    Bool(bool),
    Number(f64),
    Text(String),
    List(Vec<Tree>),
    Object(Vec<(String, Tree)>),
}

impl Tree {
    /// Reads one JSON value.
    ///
    /// # Errors
    /// What is not JSON, with an empty field and the place in the text; a name given twice or a number that none can
    /// hold, with its field.
    pub(super) fn read(text: &str) -> Result<Self, FieldError> {
        let mut path = Path::default();
        let mut reader = serde_json::Deserializer::from_str(text);
        let tree = Reader(&mut path).deserialize(&mut reader).and_then(|tree| reader.end().map(|()| tree));
        tree.map_err(|error| {
            let message = error.to_string();
            if message.starts_with(TWICE) {
                FieldError::of(&path.0, ErrorCode::Duplicate)
            } else if message.starts_with(TOO_LARGE) {
                FieldError::of(&path.0, ErrorCode::TooLarge)
            } else {
                FieldError {
                    given: Part::Text(format!("{}:{}", error.line(), error.column()).into()),
                    known: if path.0.is_empty() {
                        Part::Nothing
                    } else {
                        Part::In(Phrase::InField, path.0.as_str().into())
                    },
                    ..FieldError::of("", ErrorCode::NotJson)
                }
            }
        })
    }

    /// What this value is, for an error text.
    pub(super) fn kind(&self) -> ValueType {
        match self {
            Self::Null => ValueType::Null,
            Self::Bool(_) => ValueType::Boolean,
            Self::Number(_) => ValueType::Number,
            Self::Text(_) => ValueType::String,
            Self::List(_) => ValueType::Array,
            Self::Object(_) => ValueType::Object,
        }
    }
}

/// Where in the text a reader is: the names and positions from the outside in.
#[derive(Default)]
struct Path(String);

impl Path {
    /// Steps into a member.
    fn name(&mut self, name: &str) {
        if !self.0.is_empty() {
            self.0.push('.');
        }
        self.0.push_str(name);
    }
}

/// Reads one value and leaves the path where a mistake was found.
struct Reader<'p>(&'p mut Path);

impl<'de> DeserializeSeed<'de> for Reader<'_> {
    type Value = Tree;

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<Tree, D::Error> {
        deserializer.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Reader<'_> {
    type Value = Tree;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a JSON value")
    }
    fn visit_unit<E>(self) -> Result<Tree, E> {
        Ok(Tree::Null)
    }
    fn visit_bool<E>(self, value: bool) -> Result<Tree, E> {
        Ok(Tree::Bool(value))
    }
    fn visit_f64<E>(self, value: f64) -> Result<Tree, E> {
        Ok(Tree::Number(value))
    }
    fn visit_i64<E>(self, value: i64) -> Result<Tree, E> {
        Ok(Tree::Number(value as f64))
    }
    fn visit_u64<E>(self, value: u64) -> Result<Tree, E> {
        Ok(Tree::Number(value as f64))
    }
    fn visit_str<E>(self, value: &str) -> Result<Tree, E> {
        Ok(Tree::Text(value.to_owned()))
    }
    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Tree, A::Error> {
        let outside = self.0.0.len();
        let mut list = Vec::new();
        loop {
            self.0.0.push_str(&format!("[{}]", list.len()));
            let item = items.next_element_seed(Reader(self.0))?;
            self.0.0.truncate(outside);
            match item {
                Some(item) => list.push(item),
                None => return Ok(Tree::List(list)),
            }
        }
    }
    fn visit_map<A: MapAccess<'de>>(self, mut members: A) -> Result<Tree, A::Error> {
        let outside = self.0.0.len();
        let mut object: Vec<(String, Tree)> = Vec::new();
        while let Some(name) = members.next_key::<String>()? {
            self.0.name(&name);
            if object.iter().any(|(known, _)| *known == name) {
                return Err(A::Error::custom(TWICE));
            }
            let value = members.next_value_seed(Reader(self.0))?;
            self.0.0.truncate(outside);
            object.push((name, value));
        }
        Ok(Tree::Object(object))
    }
}
