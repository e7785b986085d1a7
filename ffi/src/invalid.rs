//! The field of a visit that no machine can show, and why.

use crate::field;
use rimewise::invalid::{Invalid, Problem};

/// What is wrong with a field.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewiseProblem {
    /// The number is NaN among numbers that are given, or infinite where a meter cannot read open.
    NotFinite = 1,
    /// The number lies outside `min` to `max`, what a machine can show.
    OutOfRange = 2,
    /// The pressure lies outside `min` to `max` kPa absolute, the refrigerant's table.
    OutsideTable = 3,
    /// The suction pressure lies above the discharge pressure of a running machine.
    AboveDischarge = 4,
    /// The number of phases is neither 1 nor 3.
    PhasesUnknown = 5,
    /// The integer is not a code that this library knows.
    UnknownCode = 6,
    /// Something that this header does not know yet.
    Other = 7,
}

/// Which field of a visit cannot be used, and why.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct RimewiseInvalid {
    /// The size of this struct; set it before the call.
    pub size: u32,
    /// The field, for rimewise_field_text.
    pub field: i32,
    /// The position in `record` of the readings that hold the field; -1 for the visit itself.
    pub record: i32,
    /// A RimewiseProblem.
    pub problem: i32,
    /// The lowest value that can be; 0 where the problem has no range.
    pub min: f32,
    /// The highest value that can be, INFINITY where there is none; 0 where the problem has no range.
    pub max: f32,
}

// SAFETY: repr(C), begins with its size, 4-byte numbers only.
unsafe impl crate::boundary::Sized4 for RimewiseInvalid {
    const FIRST: u32 = 24;
}

impl RimewiseInvalid {
    pub(crate) const fn unknown_code(field: i32) -> Self {
        Self { size: 0, field, record: -1, problem: RimewiseProblem::UnknownCode as i32, min: 0.0, max: 0.0 }
    }
}

impl From<Invalid> for RimewiseInvalid {
    fn from(invalid: Invalid) -> Self {
        let (problem, min, max) = match invalid.problem {
            Problem::NotFinite => (RimewiseProblem::NotFinite, 0.0, 0.0),
            Problem::OutOfRange { min, max } => (RimewiseProblem::OutOfRange, min, max),
            Problem::OutsideTable { min_kpa, max_kpa } => (RimewiseProblem::OutsideTable, min_kpa, max_kpa),
            Problem::AboveDischarge => (RimewiseProblem::AboveDischarge, 0.0, 0.0),
            Problem::PhasesUnknown => (RimewiseProblem::PhasesUnknown, 0.0, 0.0),
            _ => (RimewiseProblem::Other, 0.0, 0.0),
        };
        Self {
            size: 0,
            field: field::number(invalid.section, invalid.field),
            record: invalid.record.map_or(-1, |n| n as i32),
            problem: problem as i32,
            min,
            max,
        }
    }
}
