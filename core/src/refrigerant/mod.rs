//! Refrigerants: saturation, vapor and liquid properties from compact tables compiled from equations of state.
//!
//! A [`Refrigerant`] is plain data. Naming one static of [`data`] links that table only; [`find`] links all of them.
//!
//! ```
//! use rimewise::quantity::{Pressure, Temperature};
//! use rimewise::refrigerant::data::R134A;
//!
//! let suction = Pressure::from_kilopascals(200.0);
//! let dew = R134A.dew_temperature(suction)?;
//! let superheat = Temperature::from_celsius(0.0) - dew;
//! assert!((superheat.kelvins() - 10.1).abs() < 0.1);
//! # Ok::<(), rimewise::refrigerant::PropertyError>(())
//! ```

pub(crate) mod approximate;
mod batch;
mod composition;
mod curve;
pub mod data;
mod dome;
mod environment;
mod error;
mod find;
mod inverse;
mod limit;
mod liquid;
mod polynomial;
mod potential;
mod probe;
mod response;
mod safety;
mod saturation;
mod state;
pub mod table;
mod vapor;

pub use batch::{Outcome, States};
pub use composition::{Component, Composition};
pub use dome::Found;
pub use environment::GwpReport;
pub use error::{PropertyError, TableError};
pub use find::find;
pub(crate) use potential::logarithm;
pub use response::Response;
pub use safety::SafetyClass;
pub use state::{MARGIN, MAX_SUBCOOLING, MAX_SUPERHEAT, Phase, State};

use crate::quantity::{Pressure, Temperature, TemperatureDifference};
use table::{Parts, at, number};

/// One refrigerant: a pure fluid or a blend of fixed composition, with everything its table tells.
///
/// Enthalpy and entropy count from the reference state of the International Institute of Refrigeration: 200 kJ/kg and
/// 1 kJ/(kg K) for saturated liquid at 0 degC.
#[derive(Clone, Copy, Debug)]
pub struct Refrigerant<'a> {
    parts: Parts<'a>,
}

impl<'a> Refrigerant<'a> {
    /// Loads a table from bytes, in flash or read from a file, after checking all of it.
    ///
    /// Errors: not a table, an unknown version, a wrong length (truncated or padded), a checksum that does not match,
    /// or content that does not fit together or answers as no fluid does. The table stays in the bytes; nothing is
    /// copied.
    pub fn from_bytes(bytes: &'a [u8]) -> Result<Self, TableError> {
        let parts = table::split(bytes)?;
        let [_, _, _, _, _, _, _, _, a, b, c, d, ..] = *parts.fixed;
        if table::checksum(bytes.get(at::FLAGS..).unwrap_or_default()) != u32::from_le_bytes([a, b, c, d]) {
            return Err(TableError::Checksum);
        }
        table::verify(&parts)?;
        let refrigerant = Self { parts };
        probe::probe(&refrigerant)?;
        Ok(refrigerant)
    }

    /// Makes a refrigerant of a table that the compiler of this crate wrote; used while compiling only.
    pub(crate) const fn built_in(bytes: &'a [u8]) -> Self {
        match table::split(bytes) {
            Ok(parts) => Self { parts },
            Err(_) => panic!("a committed table does not have this library's format: regenerate the tables"),
        }
    }

    #[inline(always)]
    fn number(&self, offset: usize) -> f32 {
        number(self.parts.fixed, offset)
    }
    fn kelvins(&self, offset: usize) -> Temperature {
        Temperature::from_kelvins(self.number(offset))
    }
    fn pascals(&self, offset: usize) -> Pressure {
        Pressure::from_pascals(self.number(offset))
    }

    /// Reads the designation, such as `R404A`.
    pub fn designation(&self) -> &'a str {
        self.parts.designation
    }
    /// Reads the safety class of ASHRAE Standard 34; none where no source gives one.
    pub fn safety_class(&self) -> Option<SafetyClass> {
        SafetyClass::from_number(self.parts.fixed[at::SAFETY])
    }
    /// Reads the molar mass in g/mol.
    pub fn molar_mass(&self) -> f32 {
        self.number(at::MOLAR_MASS)
    }
    /// Reads the critical temperature.
    pub fn critical_temperature(&self) -> Temperature {
        self.kelvins(at::CRITICAL_TEMPERATURE)
    }
    /// Reads the critical pressure.
    pub fn critical_pressure(&self) -> Pressure {
        self.pascals(at::CRITICAL_PRESSURE)
    }
    /// Tells whether a binary pair of the blend had no published parameters and was estimated.
    pub fn estimated_pair(&self) -> bool {
        self.parts.fixed[at::FLAGS] & 1 != 0
    }
    /// Reads the standard uncertainty of this refrigerant's saturation temperatures.
    ///
    /// That of the model behind the table: the published uncertainty of the equations of state and what the binary pairs
    /// of a blend leave open. The error of the table against its equations is some thousandths of a kelvin and not in it,
    /// nor is the tolerance of a blend's composition. Source: `tables/PUBLISHED.md`.
    pub fn saturation_uncertainty(&self) -> TemperatureDifference {
        TemperatureDifference::from_kelvins(self.number(at::SATURATION_UNCERTAINTY))
    }
    /// Reads the bubble temperature at one standard atmosphere.
    ///
    /// A fluid whose triple point lies above one atmosphere (carbon dioxide) gives the table's lowest temperature.
    pub fn normal_boiling_point(&self) -> Temperature {
        self.kelvins(at::NORMAL_BOILING)
    }
    /// Reads the glide, dew less bubble temperature, at one standard atmosphere; 0 for a pure fluid.
    pub fn glide(&self) -> TemperatureDifference {
        TemperatureDifference::from_kelvins(self.number(at::GLIDE))
    }
    /// Reads the range of saturation temperatures the table covers.
    pub fn temperature_range(&self) -> (Temperature, Temperature) {
        (self.kelvins(at::T_MIN), self.kelvins(at::T_MAX))
    }
    /// Reads the range of pressures that the dew curve covers.
    pub fn dew_pressure_range(&self) -> (Pressure, Pressure) {
        (self.pascals(at::DEW_P_MIN), self.pascals(at::DEW_P_MAX))
    }
    /// Reads the range of pressures that the bubble curve covers.
    pub fn bubble_pressure_range(&self) -> (Pressure, Pressure) {
        (self.pascals(at::BUBBLE_P_MIN), self.pascals(at::BUBBLE_P_MAX))
    }
    /// Reads the range of pressures that both saturation curves cover.
    pub fn pressure_range(&self) -> (Pressure, Pressure) {
        let min = self.number(at::DEW_P_MIN).max(self.number(at::BUBBLE_P_MIN));
        let max = self.number(at::DEW_P_MAX).min(self.number(at::BUBBLE_P_MAX));
        (Pressure::from_pascals(min), Pressure::from_pascals(max))
    }
}
