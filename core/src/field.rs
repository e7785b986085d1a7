//! What every field of a visit has in common: its name, its permanent number, its shape, and the range a machine can show.

use core::marker::PhantomData;

/// What kind of value a field holds, which fixes the range that a real machine can show.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// An absolute pressure, kPa.
    Pressure,
    /// The span of a gauge, kPa.
    Span,
    /// A rise of pressure, kPa/min.
    PressureRise,
    /// A temperature, degC.
    Temperature,
    /// A temperature difference of a design, K; never negative.
    Difference,
    /// A current, A.
    Current,
    /// A voltage, V.
    Voltage,
    /// A power, W.
    Power,
    /// A resistance, ohm; positive infinity says that the meter read open.
    Resistance,
    /// An insulation resistance, megohm; positive infinity says that the meter read open.
    Insulation,
    /// A capacitance, microfarad; positive infinity or zero says that the meter read open.
    Capacitance,
    /// A frequency, Hz.
    Frequency,
    /// A number of phases, 1 or 3.
    Phases,
    /// A mass, kg.
    Mass,
    /// A time, minutes.
    Minutes,
    /// A time, hours.
    Hours,
    /// A number of times an hour.
    PerHour,
    /// An amount of money, in the caller's one currency.
    Money,
    /// A time, days.
    Days,
    /// A percentage that is a standard uncertainty or a tolerance.
    Percent,
    /// A standard uncertainty of a temperature, K.
    Spread,
}

impl Kind {
    /// All kinds in the order of their declaration.
    pub const ALL: &'static [Self] = &[
        Self::Pressure,
        Self::Span,
        Self::PressureRise,
        Self::Temperature,
        Self::Difference,
        Self::Current,
        Self::Voltage,
        Self::Power,
        Self::Resistance,
        Self::Insulation,
        Self::Capacitance,
        Self::Frequency,
        Self::Phases,
        Self::Mass,
        Self::Minutes,
        Self::Hours,
        Self::PerHour,
        Self::Money,
        Self::Days,
        Self::Percent,
        Self::Spread,
    ];

    /// The unit that a field of this kind is in.
    pub const fn unit(self) -> Unit {
        match self {
            Self::Pressure => Unit::Kpa,
            Self::Span => Unit::KpaSpan,
            Self::PressureRise => Unit::KpaPerMin,
            Self::Temperature => Unit::C,
            Self::Difference | Self::Spread => Unit::K,
            Self::Current => Unit::A,
            Self::Voltage => Unit::V,
            Self::Power => Unit::W,
            Self::Resistance => Unit::Ohm,
            Self::Insulation => Unit::Megohm,
            Self::Capacitance => Unit::Uf,
            Self::Frequency => Unit::Hz,
            Self::Mass => Unit::Kg,
            Self::Minutes => Unit::Minutes,
            Self::Hours => Unit::Hours,
            Self::PerHour => Unit::PerHour,
            Self::Days => Unit::Days,
            Self::Percent => Unit::Percent,
            Self::Phases | Self::Money => Unit::None,
        }
    }

    /// The lowest and the highest value that a machine can show, in the field's own unit.
    pub const fn range(self) -> (f32, f32) {
        match self {
            Self::Pressure | Self::Span => (0.001, 20_000.0),
            Self::PressureRise => (-1000.0, 10_000.0),
            Self::Temperature => (-120.0, 300.0),
            Self::Difference => (0.0, 150.0),
            Self::Current => (0.0, 5000.0),
            Self::Voltage => (0.0, 1000.0),
            Self::Power => (0.0, 1.0e6),
            Self::Resistance => (0.0, f32::INFINITY),
            Self::Insulation => (0.0, f32::INFINITY),
            Self::Capacitance => (0.0, f32::INFINITY),
            Self::Frequency => (10.0, 400.0),
            Self::Phases => (1.0, 3.0),
            Self::Mass => (0.001, 10_000.0),
            Self::Minutes => (0.0, 1.0e6),
            Self::Hours => (0.0, 1.0e5),
            Self::PerHour => (0.0, 3600.0),
            Self::Money => (0.0, 1.0e9),
            Self::Days => (0.0, 36_500.0),
            Self::Percent => (0.0, 100.0),
            Self::Spread => (0.0, 50.0),
        }
    }

    /// Whether a meter can read open here, which the contract writes `"open"` and core positive infinity.
    pub const fn takes_open(self) -> bool {
        matches!(self, Self::Resistance | Self::Insulation | Self::Capacitance)
    }
}

/// One optional number of a visit: its name in every interface, its permanent number, and its kind.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Field {
    /// The name, unit included, the same in Rust, C, JavaScript and JSON.
    pub name: &'static str,
    /// The permanent number at the boundary, one for every field of a visit.
    pub code: i32,
    /// The kind, which fixes the unit and the range.
    pub kind: Kind,
}

/// What shape the value of a field has, for whoever reads or writes it by name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shape {
    /// A number.
    Number(Kind),
    /// Three numbers, one a phase.
    Three(Kind),
    /// True or false.
    Flag,
    /// One of a few names.
    Choice(&'static Choices),
    /// Any of a few names.
    Set(&'static Choices),
}

/// The names that a choice can take, with their permanent numbers.
#[derive(Debug, PartialEq, Eq)]
pub struct Choices {
    /// The name of the choice itself, as Rust has it.
    pub name: &'static str,
    /// One sentence about it.
    pub doc: &'static str,
    /// What it can be.
    pub list: &'static [Member],
}

/// One of the names that a choice can take.
#[derive(Debug, PartialEq, Eq)]
pub struct Member {
    /// The permanent number at the boundary.
    pub code: i32,
    /// The name in every interface.
    pub name: &'static str,
    /// The name in Rust.
    pub variant: &'static str,
    /// One sentence about it.
    pub doc: &'static str,
}

impl Choices {
    /// Finds the member of a number.
    pub fn of_code(&self, code: i32) -> Option<&'static Member> {
        self.list.iter().find(|member| member.code == code)
    }
    /// Finds the member of a name.
    pub fn of_name(&self, name: &str) -> Option<&'static Member> {
        self.list.iter().find(|member| member.name == name)
    }
}

/// One field of a visit, of whatever shape.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Entry {
    /// The name, unit included, the same in Rust, C, JavaScript and JSON.
    pub name: &'static str,
    /// The permanent number at the boundary, one for every field of a visit.
    pub code: i32,
    /// The shape of its value.
    pub shape: Shape,
    /// What it holds, in a sentence or two.
    pub doc: &'static str,
}

/// The value of a field, of whatever shape.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Value {
    /// A number; positive infinity where a meter reads open.
    Number(f32),
    /// Three numbers, one a phase.
    Three([f32; 3]),
    /// True or false.
    Flag(bool),
    /// The permanent number of a choice.
    Choice(i32),
    /// The permanent numbers of several, one bit each.
    Set(u32),
}

/// A part of a visit, or of what the monitor takes, as a table.
#[derive(Clone, Copy, Debug)]
pub struct Part {
    /// The name of its struct in Rust.
    pub name: &'static str,
    /// Its path in a visit, such as `system.design`.
    pub path: &'static str,
    /// What it holds, in a sentence or two.
    pub doc: &'static str,
    /// Every field, the numbers first.
    pub entries: &'static [Entry],
}

impl Part {
    /// The table of a section.
    pub const fn of<S: Section>() -> Self {
        Self { name: S::NAME, path: S::PATH, doc: S::DOC, entries: S::ENTRIES }
    }
}

/// A part of a visit whose fields can be read and written by their position in [`Section::ENTRIES`].
pub trait Section: Default {
    /// The name of its struct.
    const NAME: &'static str;
    /// What it holds, in a sentence or two.
    const DOC: &'static str;
    /// Its path in a visit, such as `system.design`.
    const PATH: &'static str;
    /// Every field, the numbers first.
    const ENTRIES: &'static [Entry];
    /// Reads a field; nothing where it is not known or there is none at this position.
    fn get(&self, position: usize) -> Option<Value>;
    /// Writes a field, or clears it; false where there is none or the value has another shape.
    fn set(&mut self, position: usize, value: Option<Value>) -> bool;
}

/// Texts by the permanent numbers that they belong to, as C holds them: each ends with NUL.
pub type Texts = [(i32, &'static core::ffi::CStr)];

/// A choice with permanent numbers and names.
pub trait Choice: Copy + 'static {
    /// The names and numbers.
    const CHOICES: &'static Choices;
    /// The names as C holds them.
    const C_NAMES: &'static Texts;
    /// The permanent number at the boundary.
    fn code(self) -> i32;
    /// Finds the choice of a number, or nothing where the number is unknown.
    fn from_code(code: i32) -> Option<Self>;
}

/// Any number of the members of one choice, whose numbers lie below 32.
#[derive(Debug)]
pub struct Set<T> {
    bits: u32,
    of: PhantomData<T>,
}

impl<T> Clone for Set<T> {
    fn clone(&self) -> Self {
        *self
    }
}
impl<T> Copy for Set<T> {}
impl<T> Default for Set<T> {
    fn default() -> Self {
        Self::from_bits(0)
    }
}
impl<T> PartialEq for Set<T> {
    fn eq(&self, other: &Self) -> bool {
        self.bits == other.bits
    }
}
impl<T> Eq for Set<T> {}

impl<T> Set<T> {
    /// Reads a set whose bit n stands for the member with the number n.
    pub const fn from_bits(bits: u32) -> Self {
        Self { bits, of: PhantomData }
    }
    /// Bit n for the member with the number n.
    pub const fn bits(self) -> u32 {
        self.bits
    }
}

impl<T: Choice> Set<T> {
    /// Makes a set of these members.
    pub fn of(members: &[T]) -> Self {
        Self::from_bits(members.iter().fold(0, |bits, member| bits | Self::bit(*member)))
    }
    fn bit(member: T) -> u32 {
        u32::try_from(member.code()).ok().and_then(|n| 1u32.checked_shl(n)).unwrap_or(0)
    }
    /// Whether a member is in it.
    pub fn has(self, member: T) -> bool {
        self.bits & Self::bit(member) != 0
    }
}

/// An optional value of a struct that reads and writes itself as a [`Value`].
pub(crate) trait Slot {
    const SHAPE: Shape;
    fn read(&self) -> Option<Value>;
    fn write(&mut self, value: Option<Value>) -> bool;
}

impl Slot for Option<bool> {
    const SHAPE: Shape = Shape::Flag;
    fn read(&self) -> Option<Value> {
        self.map(Value::Flag)
    }
    fn write(&mut self, value: Option<Value>) -> bool {
        *self = match value {
            None => None,
            Some(Value::Flag(flag)) => Some(flag),
            Some(_) => return false,
        };
        true
    }
}

impl<T: Choice> Slot for Option<T> {
    const SHAPE: Shape = Shape::Choice(T::CHOICES);
    fn read(&self) -> Option<Value> {
        self.map(|choice| Value::Choice(choice.code()))
    }
    fn write(&mut self, value: Option<Value>) -> bool {
        *self = match value {
            None => None,
            Some(Value::Choice(code)) => match T::from_code(code) {
                Some(choice) => Some(choice),
                None => return false,
            },
            Some(_) => return false,
        };
        true
    }
}

impl<T: Choice> Slot for Option<Set<T>> {
    const SHAPE: Shape = Shape::Set(T::CHOICES);
    fn read(&self) -> Option<Value> {
        self.map(|set| Value::Set(set.bits))
    }
    fn write(&mut self, value: Option<Value>) -> bool {
        *self = match value {
            None => None,
            // A bit that stands for nothing is refused, as an unknown number is.
            Some(Value::Set(bits)) if (0..32).all(|n| bits >> n & 1 == 0 || T::from_code(n).is_some()) => {
                Some(Set::from_bits(bits))
            }
            Some(_) => return false,
        };
        true
    }
}

/// Declares a struct of optional numbers and others, with the table of its fields and their permanent numbers.
macro_rules! section {
    (
        $(#[doc = $doc:literal])* $name:ident at $path:literal {
            $( $(#[doc = $field_doc:literal])* $field:ident: $kind:ident = $code:literal, )*
        }
        $( threes { $( $(#[doc = $three_doc:literal])* $three:ident: $three_kind:ident = $three_code:literal, )* } )?
        $( others { $( $(#[doc = $other_doc:literal])* $other:ident: $type:ty = $other_code:literal, )* } )?
        $( besides { $( $(#[doc = $besides_doc:literal])* $besides:ident: $besides_type:ty, )* } )?
    ) => {
        $(#[doc = $doc])*
        #[derive(Clone, Copy, Debug, Default, PartialEq)]
        pub struct $name {
            $( $(#[doc = $field_doc])* pub $field: Option<f32>, )*
            $( $( $(#[doc = $three_doc])* pub $three: Option<[f32; 3]>, )* )?
            $( $( $(#[doc = $other_doc])* pub $other: Option<$type>, )* )?
            $( $( $(#[doc = $besides_doc])* pub $besides: $besides_type, )* )?
        }

        impl $name {
            /// The optional numbers of this struct in the order of their declaration.
            pub const FIELDS: &'static [$crate::field::Field] = &[
                $( $crate::field::Field {
                    name: stringify!($field), code: $code, kind: $crate::field::Kind::$kind,
                } ),*
            ];

            /// Makes it of the optional numbers in the order of [`Self::FIELDS`] and nothing else.
            pub fn of_numbers([$( $field ),*]: [Option<f32>; Self::FIELDS.len()]) -> Self {
                #[allow(clippy::needless_update)]
                Self { $( $field, )* ..Self::default() }
            }

            /// Whether the field of a permanent number is there; false where the number is of no field of it.
            // Not by [`Section::ENTRIES`]: a meter that asks would link the sentence of every field.
            pub fn holds(&self, code: i32) -> bool {
                match code {
                    $( $code => self.$field.is_some(), )*
                    $( $( $three_code => self.$three.is_some(), )* )?
                    $( $( $other_code => self.$other.is_some(), )* )?
                    _ => false,
                }
            }

            /// Reads the optional numbers in the order of [`Self::FIELDS`].
            pub fn numbers(&self) -> [Option<f32>; Self::FIELDS.len()] {
                [$( self.$field ),*]
            }

            /// Gives the optional number at a position of [`Self::FIELDS`] to write to.
            pub fn number_mut(&mut self, index: usize) -> Option<&mut Option<f32>> {
                let all: [&mut Option<f32>; Self::FIELDS.len()] = [$( &mut self.$field ),*];
                all.into_iter().nth(index)
            }
        }

        impl $crate::field::Section for $name {
            const NAME: &'static str = stringify!($name);
            const DOC: &'static str = concat!($($doc, "\n"),*);
            const PATH: &'static str = $path;
            const ENTRIES: &'static [$crate::field::Entry] = &[
                $( $crate::field::Entry {
                    name: stringify!($field),
                    code: $code,
                    shape: $crate::field::Shape::Number($crate::field::Kind::$kind),
                    doc: concat!($($field_doc, "\n"),*),
                }, )*
                $( $( $crate::field::Entry {
                    name: stringify!($three),
                    code: $three_code,
                    shape: $crate::field::Shape::Three($crate::field::Kind::$three_kind),
                    doc: concat!($($three_doc, "\n"),*),
                }, )* )?
                $( $( $crate::field::Entry {
                    name: stringify!($other),
                    code: $other_code,
                    shape: <Option<$type> as $crate::field::Slot>::SHAPE,
                    doc: concat!($($other_doc, "\n"),*),
                }, )* )?
            ];
            fn get(&self, position: usize) -> Option<$crate::field::Value> {
                let mut at = 0usize;
                $( if position == at { return self.$field.map($crate::field::Value::Number); } at += 1; )*
                $( $( if position == at { return self.$three.map($crate::field::Value::Three); } at += 1; )* )?
                $( $( if position == at { return $crate::field::Slot::read(&self.$other); } at += 1; )* )?
                let _ = at;
                None
            }
            fn set(&mut self, position: usize, value: Option<$crate::field::Value>) -> bool {
                let mut at = 0usize;
                $( if position == at {
                    self.$field = match value {
                        None => None,
                        Some($crate::field::Value::Number(number)) => Some(number),
                        Some(_) => return false,
                    };
                    return true;
                } at += 1; )*
                $( $( if position == at {
                    self.$three = match value {
                        None => None,
                        Some($crate::field::Value::Three(three)) => Some(three),
                        Some(_) => return false,
                    };
                    return true;
                } at += 1; )* )?
                $( $( if position == at {
                    return $crate::field::Slot::write(&mut self.$other, value);
                } at += 1; )* )?
                let _ = at;
                false
            }
        }
    };
}

/// A text as C holds it, ended by NUL.
///
/// A static of its own, because a linker keeps literals that end in NUL all together or not at all: an image that prints
/// one list of names would hold every sentence.
macro_rules! c_text {
    ($text:expr) => {
        const {
            static BYTES: [u8; concat!($text, "\0").len()] = {
                let mut bytes = [0; concat!($text, "\0").len()];
                bytes.copy_from_slice(concat!($text, "\0").as_bytes());
                bytes
            };
            match core::ffi::CStr::from_bytes_with_nul(&BYTES) {
                Ok(text) => text,
                Err(_) => c"",
            }
        }
    };
}

/// A quantity of an answer that stands beside its standard uncertainty.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Quantity {
    /// The name, unit included, the same in every interface.
    pub name: &'static str,
    /// What it is, in a sentence.
    pub doc: &'static str,
}

/// The quantities of one part of an answer as a table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Quantities {
    /// The name of its struct in Rust.
    pub name: &'static str,
    /// What they are, in a sentence or two.
    pub doc: &'static str,
    /// Each quantity in the order of the report.
    pub list: &'static [Quantity],
}

/// Declares a struct of optional estimates, each under the name of a measurement.
macro_rules! quantities {
    (
        $(#[doc = $doc:literal])* $name:ident {
            $( $(#[doc = $field_doc:literal])* $field:ident: $measurement:ident, )*
        }
    ) => {
        $(#[doc = $doc])*
        #[derive(Clone, Copy, Debug, Default, PartialEq)]
        pub struct $name {
            $( $(#[doc = $field_doc])* pub $field: Option<$crate::estimate::Estimate>, )*
        }

        impl $name {
            /// None of them known.
            pub const NONE: Self = Self { $( $field: None, )* };
            /// Number of quantities.
            pub const COUNT: usize = Self::TABLE.list.len();
            /// Every quantity as a table, in the order of the report.
            pub const TABLE: $crate::field::Quantities = $crate::field::Quantities {
                name: stringify!($name),
                doc: concat!($($doc, "\n"),*),
                list: &[$( $crate::field::Quantity {
                    name: stringify!($field),
                    doc: concat!($($field_doc, "\n"),*),
                }, )*],
            };

            /// Every quantity with its name, in the order of the report.
            pub fn quantities(
                &self,
            ) -> [($crate::measurement::Measurement, Option<$crate::estimate::Estimate>); Self::COUNT] {
                [$( ($crate::measurement::Measurement::$measurement, self.$field), )*]
            }
        }
    };
}

/// Declares a choice with its permanent numbers and its names in every interface.
macro_rules! choice {
    (
        $(#[doc = $doc:literal])* $name:ident {
            $( $(#[doc = $variant_doc:literal])* $variant:ident = $number:literal $text:literal, )*
        }
    ) => {
        $(#[doc = $doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        #[repr(i32)]
        pub enum $name { $( $(#[doc = $variant_doc])* $variant = $number, )* }

        impl $name {
            /// All choices in the order of their numbers.
            pub const ALL: &'static [Self] = &[$( Self::$variant ),*];

            /// The name in every interface.
            pub const fn name(self) -> &'static str {
                match self { $( Self::$variant => $text ),* }
            }
            /// The permanent number at the boundary.
            pub const fn code(self) -> i32 {
                self as i32
            }
            /// Finds the choice of a number, or nothing where the number is unknown.
            pub const fn from_code(code: i32) -> Option<Self> {
                match code { $( $number => Some(Self::$variant), )* _ => None }
            }
            /// Finds the choice of a name, or nothing where the name is unknown.
            pub fn from_name(name: &str) -> Option<Self> {
                match name { $( $text => Some(Self::$variant), )* _ => None }
            }
        }

        impl $crate::field::Choice for $name {
            const CHOICES: &'static $crate::field::Choices = &$crate::field::Choices {
                name: stringify!($name),
                doc: concat!($($doc, "\n"),*),
                list: &[$( $crate::field::Member {
                    code: $number,
                    name: $text,
                    variant: stringify!($variant),
                    doc: concat!($($variant_doc, "\n"),*),
                } ),*],
            };
            const C_NAMES: &'static $crate::field::Texts =
                &[$( ($number, $crate::field::c_text!($text)) ),*];
            fn code(self) -> i32 {
                Self::code(self)
            }
            fn from_code(code: i32) -> Option<Self> {
                Self::from_code(code)
            }
        }
    };
}

choice! {
    /// The unit of a number.
    Unit {
        /// There is no number, or it has no unit.
        None = 0 "",
        /// Ohm.
        Ohm = 1 "ohm",
        /// Megohm.
        Megohm = 2 "megohm",
        /// Microfarad.
        Uf = 3 "uF",
        /// Volt.
        V = 4 "V",
        /// Ampere.
        A = 5 "A",
        /// Percent.
        Percent = 6 "%",
        /// Kilopascal, absolute.
        Kpa = 7 "kPa absolute",
        /// Kilopascal of span.
        KpaSpan = 8 "kPa",
        /// Kilopascal a minute.
        KpaPerMin = 9 "kPa/min",
        /// Degree Celsius.
        C = 10 "degC",
        /// Kelvin of difference.
        K = 11 "K",
        /// Watt.
        W = 12 "W",
        /// Hertz.
        Hz = 13 "Hz",
        /// Kilogram.
        Kg = 14 "kg",
        /// Minute.
        Minutes = 15 "minutes",
        /// Hour.
        Hours = 16 "hours",
        /// Times an hour.
        PerHour = 17 "an hour",
        /// Day.
        Days = 18 "days",
    }
}

pub(crate) use {c_text, choice, quantities, section};
