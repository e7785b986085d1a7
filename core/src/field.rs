//! What every optional number of a visit has in common: its name, its unit's kind and the range a machine can show.

/// What kind of value a field holds, which fixes the range that a real machine can show.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// An absolute pressure, kPa.
    Pressure,
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
    /// A percentage that is a standard uncertainty or a tolerance.
    Percent,
    /// A standard uncertainty of a temperature, K.
    Spread,
}

impl Kind {
    /// The lowest and the highest value that a machine can show, in the field's own unit.
    pub const fn range(self) -> (f32, f32) {
        match self {
            Self::Pressure => (0.001, 20_000.0),
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
            Self::Percent => (0.0, 100.0),
            Self::Spread => (0.0, 50.0),
        }
    }

    /// Whether a meter can read open here, which the contract writes `"open"` and core positive infinity.
    pub const fn takes_open(self) -> bool {
        matches!(self, Self::Resistance | Self::Insulation | Self::Capacitance)
    }
}

/// One optional number of a visit: its name in every interface, and its kind.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Field {
    /// The name, unit included, the same in Rust, C, JavaScript and JSON.
    pub name: &'static str,
    /// The kind, which fixes the unit and the range.
    pub kind: Kind,
}

/// Declares a struct of optional numbers, with the table of its fields.
macro_rules! optional_numbers {
    (
        $(#[$doc:meta])* $name:ident {
            $( $(#[$field_doc:meta])* $field:ident: $kind:ident, )*
        }
        $( others { $( $(#[$other_doc:meta])* $other:ident: $type:ty, )* } )?
    ) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, Default, PartialEq)]
        pub struct $name {
            $( $(#[$field_doc])* pub $field: Option<f32>, )*
            $( $( $(#[$other_doc])* pub $other: $type, )* )?
        }

        impl $name {
            /// The optional numbers of this struct in their permanent order.
            pub const FIELDS: &'static [$crate::field::Field] = &[
                $( $crate::field::Field { name: stringify!($field), kind: $crate::field::Kind::$kind } ),*
            ];

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
    };
}

/// A text as C holds it, ended by NUL.
///
/// A static of its own, because a linker keeps literals that end in NUL all together or not at all: an image that prints
/// one list of names would hold every sentence.
macro_rules! c_text {
    ($text:literal) => {
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

/// Declares a choice with its permanent numbers and its names in every interface.
macro_rules! choice {
    (
        $(#[$doc:meta])* $name:ident { $( $(#[$variant_doc:meta])* $variant:ident = $number:literal $text:literal, )* }
    ) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        #[repr(i32)]
        pub enum $name { $( $(#[$variant_doc])* $variant = $number, )* }

        impl $name {
            /// All choices in the order of their numbers.
            pub const ALL: &'static [Self] = &[$( Self::$variant ),*];

            /// The name in every interface.
            pub const fn name(self) -> &'static str {
                match self { $( Self::$variant => $text ),* }
            }
            /// The name as C holds it, ended by NUL.
            pub const fn c_name(self) -> &'static core::ffi::CStr {
                match self {
                    $( Self::$variant => crate::field::c_text!($text) ),*
                }
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
    };
}

pub(crate) use {c_text, choice, optional_numbers};
