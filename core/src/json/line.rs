//! What every line of an answer is made of: values that write themselves, and tables of what they hold.

use crate::cycle::Cycle;
use crate::estimate::Estimate;
use crate::expected::Expected;
use crate::field::Choice;
use crate::measurement::Measurement;
use crate::schema;
use serde::ser::{Serialize, SerializeMap, Serializer};
use std::io;

/// A value of an answer that says in the words of TypeScript what it is.
pub trait Shaped: Serialize {
    /// The type, such as `number | null`.
    fn shape() -> String;
}

/// An object of an answer as a table.
#[derive(Clone, Copy, Debug)]
pub struct Object {
    /// Its name.
    pub name: &'static str,
    /// What it is, in a sentence or two.
    pub doc: &'static str,
    /// Each member: its name, what it is, and its type.
    pub members: &'static [ObjectMember],
}

/// A member of an object: its name, what it is, and what gives its type.
pub type ObjectMember = (&'static str, &'static str, fn() -> String);

/// Declares an object of an answer: a struct that writes itself, with its table.
macro_rules! object {
    (
        $(#[doc = $doc:literal])* $name:ident {
            $( $(#[doc = $member_doc:literal])* $member:ident: $type:ty, )*
        }
    ) => {
        $(#[doc = $doc])*
        #[derive(Debug)]
        pub(super) struct $name {
            $( $(#[doc = $member_doc])* pub(super) $member: $type, )*
        }

        impl serde::Serialize for $name {
            fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
                use serde::ser::SerializeStruct;
                let mut out = to.serialize_struct(stringify!($name), [$( stringify!($member) ),*].len())?;
                $( out.serialize_field(stringify!($member), &self.$member)?; )*
                out.end()
            }
        }

        impl $crate::json::line::Shaped for $name {
            fn shape() -> String {
                stringify!($name).to_owned()
            }
        }

        impl $name {
            /// The object as a table.
            pub(super) const TABLE: $crate::json::line::Object = $crate::json::line::Object {
                name: stringify!($name),
                doc: concat!($($doc, "\n"),*),
                members: &[$( (
                    stringify!($member),
                    concat!($($member_doc, "\n"),*),
                    <$type as $crate::json::line::Shaped>::shape,
                ) ),*],
            };
        }
    };
}

pub(super) use object;

/// Writes a value as one line of JSON.
pub(super) fn line(value: &impl Serialize) -> String {
    let mut bytes = Vec::new();
    let written = value.serialize(&mut serde_json::Serializer::with_formatter(&mut bytes, Shortest));
    // Nothing that is written here can fail: names are texts, and what is not finite is null.
    debug_assert!(written.is_ok());
    String::from_utf8(bytes).unwrap_or_default()
}

/// Writes a number as the shortest decimal that reads back as the same binary32, without an exponent.
struct Shortest;

impl serde_json::ser::Formatter for Shortest {
    fn write_f32<W: ?Sized + io::Write>(&mut self, to: &mut W, value: f32) -> io::Result<()> {
        write!(to, "{value}")
    }
}

/// Writes shapes of the plain types.
macro_rules! shapes {
    ($( $type:ty: $shape:literal, )*) => {
        $( impl Shaped for $type {
            fn shape() -> String {
                $shape.to_owned()
            }
        } )*
    };
}

shapes! {
    f32: "number",
    u8: "number",
    u64: "number",
    bool: "boolean",
    &str: "string",
    String: "string",
}

impl<T: Shaped> Shaped for Option<T> {
    fn shape() -> String {
        format!("{} | null", T::shape())
    }
}

impl<T: Shaped> Shaped for Vec<T> {
    fn shape() -> String {
        let one = T::shape();
        if one.contains(' ') { format!("({one})[]") } else { format!("{one}[]") }
    }
}

/// The status of every answer that is no error.
#[derive(Debug)]
pub(super) struct Answered;

impl Serialize for Answered {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str("ok")
    }
}

impl Shaped for Answered {
    fn shape() -> String {
        "\"ok\"".to_owned()
    }
}

/// A member of a choice, written by its name.
#[derive(Debug)]
pub(super) struct Name<C>(pub(super) C);

impl<C: Choice> Serialize for Name<C> {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(C::CHOICES.of_code(self.0.code()).map_or("", |member| member.name))
    }
}

impl<C: Choice> Shaped for Name<C> {
    fn shape() -> String {
        let named = schema::CHOICES.iter().find(|named| core::ptr::eq(named.choices, C::CHOICES));
        named.map_or(C::CHOICES.name, |named| named.name).to_owned()
    }
}

impl Serialize for Estimate {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let mut out = to.serialize_map(Some(2))?;
        out.serialize_entry("value", &self.value)?;
        out.serialize_entry("u", &self.u)?;
        out.end()
    }
}

impl Shaped for Estimate {
    fn shape() -> String {
        "Estimate".to_owned()
    }
}

/// Writes quantities under their names.
fn quantities<S: Serializer>(all: &[(Measurement, Option<Estimate>)], to: S) -> Result<S::Ok, S::Error> {
    to.collect_map(all.iter().map(|(quantity, estimate)| (quantity.name(), estimate)))
}

impl Serialize for Cycle {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        quantities(&self.quantities(), to)
    }
}

impl Shaped for Cycle {
    fn shape() -> String {
        Self::TABLE.name.to_owned()
    }
}

impl Serialize for Expected {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        quantities(&self.quantities(), to)
    }
}

impl Shaped for Expected {
    fn shape() -> String {
        Self::TABLE.name.to_owned()
    }
}
