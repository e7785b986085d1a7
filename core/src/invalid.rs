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
                     the two may be swapped, or the machine stopped"
                )
            }
            Self::PhasesUnknown => write!(f, "must be 1 or 3"),
        }
    }
}

impl Invalid {
    /// Gives what is wrong without the field's path, limits with the field's unit.
    pub const fn reason(&self) -> Reason {
        Reason(*self)
    }
}

/// What is wrong with a field, in words.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reason(Invalid);

impl fmt::Display for Reason {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.problem.fmt(f)?;
        match self.0.problem {
            Problem::OutOfRange { .. } => f.write_str(unit(self.0.field)),
            _ => Ok(()),
        }
    }
}

/// The unit that a field's name ends with, as it stands behind a figure.
fn unit(field: &str) -> &'static str {
    const UNITS: [(&str, &str); 15] = [
        ("_kpa_per_min", " kPa/min"),
        ("_span_kpa", " kPa"),
        ("_kpa", " kPa absolute"),
        ("_c", " degC"),
        ("_k", " K"),
        ("_a", " A"),
        ("_v", " V"),
        ("_w", " W"),
        ("_megohm", " megohm"),
        ("_ohm", " ohm"),
        ("_uf", " uF"),
        ("_kg", " kg"),
        ("_percent", " %"),
        ("hz", " Hz"),
        ("minutes_running", " minutes"),
    ];
    UNITS.iter().find(|(end, _)| field.ends_with(end)).map_or("", |(_, unit)| unit)
}

impl fmt::Display for Invalid {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.record {
            Some(n) => write!(f, "system.record[{n}].{}.{} {}", self.section, self.field, self.reason()),
            None => write!(f, "{}.{} {}", self.section, self.field, self.reason()),
        }
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
        let problem = Problem::OutOfRange { min: 0.001, max: 20_000.0 };
        let invalid = Invalid { section: "readings", field: "suction_pressure_kpa", record: None, problem };
        assert_eq!(
            invalid.to_string(),
            "readings.suction_pressure_kpa must lie between 0.001 and 20000 kPa absolute"
        );
        let invalid = Invalid { field: "winding_run_ohm", problem: Problem::NotFinite, ..invalid };
        assert_eq!(invalid.reason().to_string(), "is not a finite number");
    }
}
