//! The error of an input that no machine can show, with the field it is about.

use core::fmt;

/// Why a field cannot be used.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Problem {
    /// The number is NaN or infinite where it must not be.
    NotFinite,
    /// The number lies outside what a machine can show.
    OutOfRange {
        /// The lowest value that can be.
        min: f32,
        /// The highest value that can be.
        max: f32,
    },
    /// The pressure lies outside the refrigerant's table.
    OutsideTable {
        /// The lowest pressure of the table, kPa absolute.
        min_kpa: f32,
        /// The highest pressure of the table, kPa absolute.
        max_kpa: f32,
    },
    /// The suction pressure lies above the discharge pressure by more than the instruments allow, while running.
    AboveDischarge,
    /// The number of phases is neither 1 nor 3.
    PhasesUnknown,
}

/// An input that no machine can show: the field and the problem.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Invalid {
    /// The section of the visit, such as `readings` or `system.design`.
    pub section: &'static str,
    /// The field in that section.
    pub field: &'static str,
    /// The position in `system.record`, for a field of a record.
    pub record: Option<usize>,
    /// What is wrong with it.
    pub problem: Problem,
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotFinite => write!(f, "is not a finite number"),
            Self::OutOfRange { min, max } if *max == f32::INFINITY => write!(f, "must be at least {min}"),
            Self::OutOfRange { min, max } => write!(f, "must lie between {min} and {max}"),
            Self::OutsideTable { min_kpa, max_kpa } => {
                write!(
                    f,
                    "must lie between {min_kpa} and {max_kpa} kPa absolute, the range of this refrigerant's table"
                )
            }
            Self::AboveDischarge => {
                write!(
                    f,
                    "is above the discharge pressure of a running machine by more than the gauges' uncertainty: \
                     are the two swapped, or is it stopped?"
                )
            }
            Self::PhasesUnknown => write!(f, "must be 1 or 3"),
        }
    }
}

impl fmt::Display for Invalid {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.record {
            Some(n) => write!(f, "system.record[{n}].{}.{} {}", self.section, self.field, self.problem),
            None => write!(f, "{}.{} {}", self.section, self.field, self.problem),
        }
    }
}

impl core::error::Error for Invalid {}
