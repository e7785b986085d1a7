//! The error of an input that cannot be used: its code, the field it is about, and the numbers that go with it.

use crate::field::{Unit, choice};
use crate::text::{Language, Sentence};
use core::fmt;

choice! {
    /// Why an input cannot be used.
    ErrorCode {
        /// The number is NaN or infinite where it must not be.
        NotFinite = 1 "not_finite",
        /// The number lies outside what a machine can show.
        OutOfRange = 2 "out_of_range",
        /// The number lies outside the refrigerant's table.
        OutsideTable = 3 "outside_table",
        /// The suction pressure lies above the discharge pressure of a running machine.
        AboveDischarge = 4 "above_discharge",
        /// The number of phases is neither 1 nor 3.
        PhasesUnknown = 5 "phases_unknown",
        /// The integer is not a code that this library knows.
        UnknownCode = 6 "unknown_code",
        // 7 is retired.
        /// The text is not JSON.
        NotJson = 20 "not_json",
        /// The name is given twice.
        Duplicate = 21 "duplicate",
        /// There is no such field.
        UnknownField = 22 "unknown_field",
        /// The value is of another type than the field's.
        WrongType = 23 "wrong_type",
        /// The list has another length than it must have.
        WrongLength = 24 "wrong_length",
        /// The name is none of those that the field takes.
        UnknownName = 25 "unknown_name",
        /// There is no refrigerant of this name here.
        UnknownRefrigerant = 26 "unknown_refrigerant",
        /// There is no reading, observation or action of this name.
        UnknownMeasurement = 27 "unknown_measurement",
        /// The number is too large for this library.
        TooLarge = 28 "too_large",
        /// The field is missing, and nothing can be answered without it.
        Missing = 29 "missing",
        /// The numbers together are none that this question can be answered for.
        NotUsable = 30 "not_usable",
        /// The state is liquid and vapor together, and pressure and temperature do not fix it.
        TwoPhase = 31 "two_phase",
        /// The state lies in the other phase.
        OtherPhase = 32 "other_phase",
        /// The state lies above the critical point, where there is no saturation.
        Transcritical = 33 "transcritical",
        /// The state lies so close to the critical point that the table does not know it well enough.
        NearCritical = 34 "near_critical",
        /// The state lies between bubble and dew of a blend whose temperatures there the table does not have.
        BetweenBubbleAndDew = 35 "between_bubble_and_dew",
        /// The text, or one of its lists, is longer or deeper than any visit.
        TooLong = 36 "too_long",
        /// The answer was found and could not be written where it was wanted.
        NotWritten = 37 "not_written",
    }
}

/// The numbers that go with an error.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Facts {
    /// What is wrong.
    pub code: ErrorCode,
    /// The value that was given, where it is a number.
    pub value: Option<f32>,
    /// The lowest value that can be, where there is one.
    pub min: Option<f32>,
    /// The highest value that can be, where there is one.
    pub max: Option<f32>,
    /// The unit of all three.
    pub unit: Unit,
}

impl Facts {
    /// An error without numbers.
    pub const fn of(code: ErrorCode) -> Self {
        Self { code, value: None, min: None, max: None, unit: Unit::None }
    }
    /// The limit that the value broke, where it broke one.
    pub fn limit(&self) -> Option<f32> {
        match (self.value, self.min, self.max) {
            (Some(value), Some(min), _) if value < min => Some(min),
            (Some(value), _, Some(max)) if value > max => Some(max),
            _ => None,
        }
    }
}

/// Why a field cannot be used.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Problem {
    /// The number is NaN or infinite where it must not be.
    NotFinite,
    /// The number lies outside what a machine can show.
    OutOfRange {
        /// The value.
        value: f32,
        /// The lowest value that can be.
        min: f32,
        /// The highest value that can be.
        max: f32,
    },
    /// The pressure lies outside the refrigerant's table.
    OutsideTable {
        /// The pressure, kPa absolute.
        kpa: f32,
        /// The lowest pressure of the table, kPa absolute.
        min_kpa: f32,
        /// The highest pressure of the table, kPa absolute.
        max_kpa: f32,
    },
    /// The suction pressure lies above the discharge pressure by more than the instruments allow, while running.
    AboveDischarge {
        /// The suction pressure, kPa absolute.
        kpa: f32,
        /// The highest suction pressure that the discharge pressure and the instruments allow, kPa absolute.
        max_kpa: f32,
    },
    /// The number of phases is neither 1 nor 3.
    PhasesUnknown {
        /// The number.
        phases: f32,
    },
}

impl Problem {
    /// The code and the numbers of the problem; the unit is that of the field.
    pub const fn facts(self, unit: Unit) -> Facts {
        match self {
            Self::NotFinite => Facts { unit, ..Facts::of(ErrorCode::NotFinite) },
            Self::OutOfRange { value, min, max } => {
                let max = if max == f32::INFINITY { None } else { Some(max) };
                Facts { code: ErrorCode::OutOfRange, value: Some(value), min: Some(min), max, unit }
            }
            Self::OutsideTable { kpa, min_kpa, max_kpa } => Facts {
                code: ErrorCode::OutsideTable,
                value: Some(kpa),
                min: Some(min_kpa),
                max: Some(max_kpa),
                unit: Unit::Kpa,
            },
            Self::AboveDischarge { kpa, max_kpa } => Facts {
                code: ErrorCode::AboveDischarge,
                value: Some(kpa),
                min: None,
                max: Some(max_kpa),
                unit: Unit::Kpa,
            },
            Self::PhasesUnknown { phases } => {
                Facts { value: Some(phases), ..Facts::of(ErrorCode::PhasesUnknown) }
            }
        }
    }
}

/// An input that no machine can show: the field and the problem.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Invalid {
    /// The section of the visit, such as `readings` or `system.design`.
    pub section: &'static str,
    /// The field in that section.
    pub field: &'static str,
    /// The unit of the field.
    pub unit: Unit,
    /// The position in `system.record`, for a field of a record.
    pub record: Option<usize>,
    /// What is wrong with it.
    pub problem: Problem,
}

impl Invalid {
    /// A field of a visit that cannot be used.
    pub const fn new(section: &'static str, field: &'static str, unit: Unit, problem: Problem) -> Self {
        Self { section, field, unit, record: None, problem }
    }
    /// The code and the numbers of the error.
    pub const fn facts(&self) -> Facts {
        self.problem.facts(self.unit)
    }
    /// Gives what is wrong in words, without the field's path.
    pub const fn reason(&self, language: Language) -> Sentence<'static> {
        Sentence::of(self.facts(), language)
    }
}

impl fmt::Display for Invalid {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Some(n) = self.record {
            write!(f, "system.record[{n}].")?;
        }
        if !self.section.is_empty() {
            write!(f, "{}.", self.section)?;
        }
        write!(f, "{} {}", self.field, self.reason(Language::English))
    }
}

impl core::error::Error for Invalid {}

#[cfg(test)]
mod tests {
    extern crate std;
    use super::*;
    use std::string::ToString;

    #[test]
    fn limits_stand_with_the_unit_of_the_field() {
        let problem = Problem::OutOfRange { value: 3.0e4, min: 0.001, max: 20_000.0 };
        let invalid = Invalid::new("readings", "suction_pressure_kpa", Unit::Kpa, problem);
        let text = invalid.to_string();
        assert!(text.starts_with("readings.suction_pressure_kpa "), "{text}");
        assert!(text.ends_with(" 0.001 and 20000 kPa absolute"), "{text}");
        assert_eq!(invalid.facts().limit(), Some(20_000.0));
        let below = Problem::OutOfRange { value: -1.0, min: 0.0, max: f32::INFINITY }.facts(Unit::Ohm);
        assert_eq!((below.limit(), below.max), (Some(0.0), None));
    }
}
