//! The status that every fallible function returns.

use crate::text::{RimewiseTexts, c_text};
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

/// What a RimewiseStatus says, in English.
#[unsafe(no_mangle)]
#[allow(non_upper_case_globals)]
pub static rimewise_status_en: RimewiseTexts = RimewiseTexts(&[
    (RimewiseStatus::Ok as i32, c_text!("done")),
    (RimewiseStatus::NullPointer as i32, c_text!("a pointer is NULL")),
    (RimewiseStatus::WrongSize as i32, c_text!("the size of a struct is not one this library knows")),
    (RimewiseStatus::UnknownCode as i32, c_text!("an integer holds an unknown code")),
    (RimewiseStatus::NotFinite as i32, c_text!("a number is not finite")),
    (RimewiseStatus::OutOfRange as i32, c_text!("a number or count is out of range")),
    (RimewiseStatus::ShortBuffer as i32, c_text!("the buffer is too short")),
    (RimewiseStatus::UnknownDesignation as i32, c_text!("no refrigerant has this designation")),
    (RimewiseStatus::InvalidInput as i32, c_text!("a value that no machine can show")),
    (RimewiseStatus::NotYet as i32, c_text!("more must be seen first")),
    (RimewiseStatus::PressureOutsideTable as i32, c_text!("the pressure is outside the refrigerant's table")),
    (
        RimewiseStatus::TemperatureOutsideTable as i32,
        c_text!("the temperature is outside the refrigerant's table"),
    ),
    (
        RimewiseStatus::TwoPhase as i32,
        c_text!("liquid and vapor together: pressure and temperature do not fix the state"),
    ),
    (RimewiseStatus::OtherPhase as i32, c_text!("the state is in the other phase")),
    (RimewiseStatus::Transcritical as i32, c_text!("above the critical point there is no saturation")),
    (RimewiseStatus::NotATable as i32, c_text!("not a refrigerant table")),
    (RimewiseStatus::TableVersion as i32, c_text!("unknown format version of a refrigerant table")),
    (RimewiseStatus::TableLength as i32, c_text!("the refrigerant table is truncated or padded")),
    (RimewiseStatus::TableChecksum as i32, c_text!("the refrigerant table was altered")),
    (RimewiseStatus::TableContent as i32, c_text!("the parts of the refrigerant table do not fit together")),
]);

/// What a RimewiseStatus says, in Spanish.
#[unsafe(no_mangle)]
#[allow(non_upper_case_globals)]
pub static rimewise_status_es: RimewiseTexts = RimewiseTexts(&[
    (RimewiseStatus::Ok as i32, c_text!("hecho")),
    (RimewiseStatus::NullPointer as i32, c_text!("un puntero es NULL")),
    (
        RimewiseStatus::WrongSize as i32,
        c_text!("el tamaño de una estructura no es uno que esta biblioteca conozca"),
    ),
    (RimewiseStatus::UnknownCode as i32, c_text!("un entero contiene un código desconocido")),
    (RimewiseStatus::NotFinite as i32, c_text!("un número no es finito")),
    (RimewiseStatus::OutOfRange as i32, c_text!("un número o una cantidad está fuera de rango")),
    (RimewiseStatus::ShortBuffer as i32, c_text!("el búfer es demasiado corto")),
    (RimewiseStatus::UnknownDesignation as i32, c_text!("ningún refrigerante tiene esta designación")),
    (RimewiseStatus::InvalidInput as i32, c_text!("un valor que ninguna máquina puede mostrar")),
    (RimewiseStatus::NotYet as i32, c_text!("hay que ver más antes")),
    (
        RimewiseStatus::PressureOutsideTable as i32,
        c_text!("la presión está fuera de la tabla del refrigerante"),
    ),
    (
        RimewiseStatus::TemperatureOutsideTable as i32,
        c_text!("la temperatura está fuera de la tabla del refrigerante"),
    ),
    (
        RimewiseStatus::TwoPhase as i32,
        c_text!("líquido y vapor a la vez: presión y temperatura no fijan el estado"),
    ),
    (RimewiseStatus::OtherPhase as i32, c_text!("el estado está en la otra fase")),
    (RimewiseStatus::Transcritical as i32, c_text!("por encima del punto crítico no hay saturación")),
    (RimewiseStatus::NotATable as i32, c_text!("no es una tabla de refrigerante")),
    (
        RimewiseStatus::TableVersion as i32,
        c_text!("versión de formato desconocida de una tabla de refrigerante"),
    ),
    (RimewiseStatus::TableLength as i32, c_text!("la tabla de refrigerante está cortada o le sobra algo")),
    (RimewiseStatus::TableChecksum as i32, c_text!("la tabla de refrigerante fue alterada")),
    (RimewiseStatus::TableContent as i32, c_text!("las partes de la tabla de refrigerante no concuerdan")),
]);

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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_status_has_a_sentence_in_both_languages() {
        let numbers = |texts: &RimewiseTexts| texts.0.iter().map(|(code, _)| *code).collect::<Vec<_>>();
        let (english, spanish) = (numbers(&rimewise_status_en), numbers(&rimewise_status_es));
        assert_eq!(english, spanish);
        assert!(english.is_sorted() && english.len() == 20);
        for ((_, english), (_, spanish)) in rimewise_status_en.0.iter().zip(rimewise_status_es.0) {
            assert!(english != spanish && !english.is_empty());
        }
    }
}
