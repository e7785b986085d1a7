//! What can go wrong when a property is asked for or a table is loaded.

use super::Phase;
use crate::quantity::{Pressure, Temperature};
use core::fmt;

/// Why a property has no value at the asked state.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum PropertyError {
    /// The pressure lies outside what the table of this refrigerant covers.
    Pressure {
        /// Lowest pressure of the table.
        min: Pressure,
        /// Highest pressure of the table.
        max: Pressure,
    },
    /// The temperature lies outside what the table covers (at this pressure, where one was given).
    Temperature {
        /// Lowest temperature covered.
        min: Temperature,
        /// Highest temperature covered.
        max: Temperature,
    },
    /// The state lies between bubble and dew: pressure and temperature alone do not fix it.
    TwoPhase,
    /// The state lies in the other phase than the one asked for.
    OtherPhase {
        /// The phase the state is in.
        phase: Phase,
    },
    /// The state lies above the critical point, where there is no saturation and the tables end.
    Transcritical {
        /// The critical temperature.
        critical_temperature: Temperature,
        /// The critical pressure.
        critical_pressure: Pressure,
    },
    /// The state lies so close to the critical point that the table does not know it well enough.
    NearCritical {
        /// The critical temperature.
        critical_temperature: Temperature,
    },
    /// The state lies between bubble and dew of a blend whose temperatures there the table does not have.
    Glide {
        /// The bubble temperature at this pressure.
        bubble: Temperature,
        /// The dew temperature at this pressure.
        dew: Temperature,
    },
    /// An input is not a number.
    NotANumber,
}

impl fmt::Display for PropertyError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::Pressure { min, max } => write!(
                f,
                "pressure outside the table: {:.1} to {:.1} kPa absolute",
                min.kilopascals(),
                max.kilopascals()
            ),
            Self::Temperature { min, max } => {
                write!(f, "temperature outside the table: {:.1} to {:.1} degC", min.celsius(), max.celsius())
            }
            Self::TwoPhase => {
                f.write_str("the state is liquid and vapor together; pressure and temperature do not fix it")
            }
            Self::OtherPhase { phase } => write!(f, "the state is in the other phase ({})", phase.name()),
            Self::Transcritical { critical_temperature, critical_pressure } => write!(
                f,
                "transcritical: above the critical point of {:.2} degC and {:.0} kPa there is no saturation",
                critical_temperature.celsius(),
                critical_pressure.kilopascals()
            ),
            Self::NearCritical { critical_temperature } => write!(
                f,
                "too close to the critical temperature of {:.2} degC for an answer",
                critical_temperature.celsius()
            ),
            Self::Glide { bubble, dew } => write!(
                f,
                "between {:.2} degC (bubble) and {:.2} degC (dew), where the table of this blend has no temperatures",
                bubble.celsius(),
                dew.celsius()
            ),
            Self::NotANumber => f.write_str("the input is not a number"),
        }
    }
}

impl core::error::Error for PropertyError {}

/// Why bytes are not a table this version can use.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum TableError {
    /// The bytes do not begin as a refrigerant table begins.
    NotATable,
    /// The table was written in a format version this library does not know.
    Version {
        /// The version found.
        found: u16,
    },
    /// The length the table states is not the length of the bytes.
    Length {
        /// The length stated in the table, in bytes.
        stated: usize,
        /// The length of the bytes given.
        given: usize,
    },
    /// The checksum does not match: the table was altered.
    Checksum,
    /// The parts of the table do not fit together, or a number in it is not finite.
    Content,
}

impl fmt::Display for TableError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::NotATable => f.write_str("not a refrigerant table"),
            Self::Version { found } => write!(f, "table format version {found} is not known"),
            Self::Length { stated, given } => {
                write!(f, "table truncated or padded: it states {stated} bytes, {given} were given")
            }
            Self::Checksum => f.write_str("table altered: its checksum does not match"),
            Self::Content => f.write_str("table content does not fit together"),
        }
    }
}

impl core::error::Error for TableError {}
