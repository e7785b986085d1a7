//! The status that every fallible function returns.

use rimewise::refrigerant::{PropertyError, TableError};

/// What a function returns. Every number is permanent.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewiseStatus {
    /// Done; the results are written.
    Ok = 0,
    /// A pointer is NULL that must not be.
    NullPointer = 1,
    /// The `size` of a struct is not one that this library knows.
    WrongSize = 2,
    /// An integer holds a code that this library does not know.
    UnknownCode = 3,
    /// A number is NaN or infinite where it must not be.
    NotFinite = 4,
    /// A number or a count lies outside what the function takes.
    OutOfRange = 5,
    /// The caller's buffer is too short; the length needed is written all the same.
    ShortBuffer = 6,
    /// No built-in refrigerant has this designation.
    UnknownDesignation = 7,
    /// The visit holds a value that no machine can show; RimewiseInvalid names the field.
    InvalidInput = 8,
    /// There is no answer yet: more must be seen first.
    NotYet = 9,
    /// The pressure lies outside the refrigerant's table.
    PressureOutsideTable = 20,
    /// The temperature lies outside the refrigerant's table.
    TemperatureOutsideTable = 21,
    /// The state is liquid and vapor together; pressure and temperature do not fix it.
    TwoPhase = 22,
    /// The state lies in the other phase.
    OtherPhase = 23,
    /// The state lies above the critical point, where there is no saturation.
    Transcritical = 24,
    /// The bytes are not a refrigerant table.
    NotATable = 30,
    /// The table has a format version that this library does not know.
    TableVersion = 31,
    /// The length that the table states is not the length given.
    TableLength = 32,
    /// The table was altered: its checksum does not match.
    TableChecksum = 33,
    /// The parts of the table do not fit together.
    TableContent = 34,
}

impl RimewiseStatus {
    /// All statuses.
    pub(crate) const ALL: [Self; 20] = [
        Self::Ok,
        Self::NullPointer,
        Self::WrongSize,
        Self::UnknownCode,
        Self::NotFinite,
        Self::OutOfRange,
        Self::ShortBuffer,
        Self::UnknownDesignation,
        Self::InvalidInput,
        Self::NotYet,
        Self::PressureOutsideTable,
        Self::TemperatureOutsideTable,
        Self::TwoPhase,
        Self::OtherPhase,
        Self::Transcritical,
        Self::NotATable,
        Self::TableVersion,
        Self::TableLength,
        Self::TableChecksum,
        Self::TableContent,
    ];

    pub(crate) const fn text(self) -> &'static core::ffi::CStr {
        match self {
            Self::Ok => c"done",
            Self::NullPointer => c"a pointer is NULL",
            Self::WrongSize => c"the size of a struct is not one this library knows",
            Self::UnknownCode => c"an integer holds an unknown code",
            Self::NotFinite => c"a number is not finite",
            Self::OutOfRange => c"a number or count is out of range",
            Self::ShortBuffer => c"the buffer is too short",
            Self::UnknownDesignation => c"no refrigerant has this designation",
            Self::InvalidInput => c"a value that no machine can show",
            Self::NotYet => c"more must be seen first",
            Self::PressureOutsideTable => c"the pressure is outside the refrigerant's table",
            Self::TemperatureOutsideTable => c"the temperature is outside the refrigerant's table",
            Self::TwoPhase => c"liquid and vapor together: pressure and temperature do not fix the state",
            Self::OtherPhase => c"the state is in the other phase",
            Self::Transcritical => c"above the critical point there is no saturation",
            Self::NotATable => c"not a refrigerant table",
            Self::TableVersion => c"unknown format version of a refrigerant table",
            Self::TableLength => c"the refrigerant table is truncated or padded",
            Self::TableChecksum => c"the refrigerant table was altered",
            Self::TableContent => c"the parts of the refrigerant table do not fit together",
        }
    }
}

impl From<PropertyError> for RimewiseStatus {
    fn from(error: PropertyError) -> Self {
        match error {
            PropertyError::Pressure { .. } => Self::PressureOutsideTable,
            PropertyError::Temperature { .. } => Self::TemperatureOutsideTable,
            PropertyError::TwoPhase => Self::TwoPhase,
            PropertyError::OtherPhase { .. } => Self::OtherPhase,
            PropertyError::Transcritical { .. } => Self::Transcritical,
            PropertyError::NotANumber => Self::NotFinite,
            _ => Self::OutOfRange,
        }
    }
}

impl From<TableError> for RimewiseStatus {
    fn from(error: TableError) -> Self {
        match error {
            TableError::NotATable => Self::NotATable,
            TableError::Version { .. } => Self::TableVersion,
            TableError::Length { .. } => Self::TableLength,
            TableError::Checksum => Self::TableChecksum,
            _ => Self::TableContent,
        }
    }
}
