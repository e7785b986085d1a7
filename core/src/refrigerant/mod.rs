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

mod curve;
pub mod data;
mod error;
mod find;
mod potential;
mod safety;
pub mod table;

pub use error::{PropertyError, TableError};
pub use find::find;
pub use safety::SafetyClass;

use crate::quantity::{Density, Enthalpy, Entropy, Pressure, Temperature, TemperatureDifference};
use curve::Curve;
use table::{Parts, at, number, short};

/// Kelvin that a vapor or liquid state may lie beyond its saturation curve and still be answered.
///
/// The potentials go on smoothly there; a reading exactly on the curve with its rounding stays answerable.
pub const MARGIN: TemperatureDifference = TemperatureDifference::from_kelvins(2.0);
/// Highest superheat answered; accuracy is stated to 120 K, beyond that the potential goes on smoothly.
pub const MAX_SUPERHEAT: TemperatureDifference = TemperatureDifference::from_kelvins(160.0);
/// Highest subcooling answered; accuracy is stated to 40 K, beyond that the potential goes on smoothly.
pub const MAX_SUBCOOLING: TemperatureDifference = TemperatureDifference::from_kelvins(60.0);

/// Step of temperature per superheat and 3 K after which the next Newton step would not be seen.
///
/// Near saturation the heat capacity of vapor changes fastest; the sum grows as that fades.
const STEP_ENOUGH: f32 = 0.05;

/// One refrigerant: a pure fluid or a blend of fixed composition, with everything its table tells.
#[derive(Clone, Copy, Debug)]
pub struct Refrigerant<'a> {
    parts: Parts<'a>,
}

/// One component of a refrigerant.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Component<'a> {
    /// Designation of the component, such as `R32`.
    pub name: &'a str,
    /// Mass fraction of the component, 0 to 1.
    pub mass_fraction: f32,
}

/// The phase of a state.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[repr(u8)]
pub enum Phase {
    /// Warmer than the dew point.
    Vapor = 1,
    /// Colder than the bubble point.
    Liquid = 2,
    /// From the bubble point to the dew point.
    TwoPhase = 3,
}

impl Phase {
    /// Names the phase in lower case.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Vapor => "vapor",
            Self::Liquid => "liquid",
            Self::TwoPhase => "two_phase",
        }
    }
}

/// Density, enthalpy and entropy of one state, on the reference state named at [`Refrigerant`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct State {
    /// Mass density.
    pub density: Density,
    /// Specific enthalpy.
    pub enthalpy: Enthalpy,
    /// Specific entropy.
    pub entropy: Entropy,
}

impl<'a> Refrigerant<'a> {
    /// Loads a table from bytes, in flash or read from a file, after checking all of it.
    ///
    /// Errors: not a table, an unknown version, a wrong length (truncated or padded), a checksum that does not match,
    /// or content that does not fit together. The table stays in the bytes; nothing is copied.
    pub fn from_bytes(bytes: &'a [u8]) -> Result<Self, TableError> {
        let parts = table::split(bytes)?;
        let [_, _, _, _, _, _, _, _, a, b, c, d, ..] = *parts.fixed;
        if table::checksum(bytes.get(at::FLAGS..).unwrap_or_default()) != u32::from_le_bytes([a, b, c, d]) {
            return Err(TableError::Checksum);
        }
        table::verify(&parts)?;
        Ok(Self { parts })
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
    /// Lists the components with their mass fractions; a pure fluid has one.
    pub fn composition(&self) -> Composition<'a> {
        Composition { rest: self.parts.components }
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

    #[inline(always)]
    fn dew(&self) -> Curve<'a> {
        Curve {
            pieces: self.parts.dew,
            scale: self.number(at::DEW_SCALE),
            first: u32::from(self.parts.fixed[at::DEW_FIRST]),
            resolution: u32::from(self.parts.fixed[at::DEW_RESOLUTION]),
            fine: u32::from(short(self.parts.fixed, at::DEW_FINE)),
        }
    }
    #[inline(always)]
    fn bubble(&self) -> Curve<'a> {
        Curve {
            pieces: self.parts.bubble,
            scale: self.number(at::BUBBLE_SCALE),
            first: u32::from(self.parts.fixed[at::BUBBLE_FIRST]),
            resolution: u32::from(self.parts.fixed[at::BUBBLE_RESOLUTION]),
            fine: u32::from(short(self.parts.fixed, at::BUBBLE_FINE)),
        }
    }

    /// Finds the dew temperature at a pressure: where the last liquid has evaporated.
    ///
    /// Errors: a pressure outside the table, above the critical point, or not a number.
    #[inline(always)]
    pub fn dew_temperature(&self, pressure: Pressure) -> Result<Temperature, PropertyError> {
        let p = pressure.pascals();
        // The curve itself ends at the highest pressure.
        if p >= self.number(at::DEW_P_MIN)
            && let Some(t) = self.dew().temperature(p)
        {
            return Ok(Temperature::from_kelvins(t));
        }
        Err(self.pressure_error(p, at::DEW_P_MIN, at::DEW_P_MAX))
    }
    /// Finds the bubble temperature at a pressure: where the first bubble forms.
    ///
    /// Errors: a pressure outside the table, above the critical point, or not a number.
    #[inline]
    pub fn bubble_temperature(&self, pressure: Pressure) -> Result<Temperature, PropertyError> {
        let p = pressure.pascals();
        if p >= self.number(at::BUBBLE_P_MIN)
            && let Some(t) = self.bubble().temperature(p)
        {
            return Ok(Temperature::from_kelvins(t));
        }
        Err(self.pressure_error(p, at::BUBBLE_P_MIN, at::BUBBLE_P_MAX))
    }
    /// Finds the dew pressure at a temperature.
    ///
    /// Errors: a temperature outside the table, above the critical point, or not a number.
    pub fn dew_pressure(&self, temperature: Temperature) -> Result<Pressure, PropertyError> {
        self.saturation_pressure(self.dew(), temperature, at::DEW_P_MIN, at::DEW_P_MAX)
    }
    /// Finds the bubble pressure at a temperature.
    ///
    /// Errors: a temperature outside the table, above the critical point, or not a number.
    pub fn bubble_pressure(&self, temperature: Temperature) -> Result<Pressure, PropertyError> {
        self.saturation_pressure(self.bubble(), temperature, at::BUBBLE_P_MIN, at::BUBBLE_P_MAX)
    }

    fn saturation_pressure(
        &self,
        curve: Curve<'a>,
        temperature: Temperature,
        min: usize,
        max: usize,
    ) -> Result<Pressure, PropertyError> {
        let t = temperature.kelvins();
        if t >= self.number(at::T_MIN)
            && t <= self.number(at::T_MAX)
            && let Some(p) = curve.pressure(t)
        {
            return Ok(Pressure::from_pascals(p.max(self.number(min)).min(self.number(max))));
        }
        Err(if t.is_nan() {
            PropertyError::NotANumber
        } else if t >= self.number(at::CRITICAL_TEMPERATURE) {
            self.transcritical()
        } else {
            PropertyError::Temperature { min: self.kelvins(at::T_MIN), max: self.kelvins(at::T_MAX) }
        })
    }

    fn transcritical(&self) -> PropertyError {
        PropertyError::Transcritical {
            critical_temperature: self.critical_temperature(),
            critical_pressure: self.critical_pressure(),
        }
    }

    #[cold]
    fn pressure_error(&self, p: f32, min: usize, max: usize) -> PropertyError {
        if p.is_nan() {
            PropertyError::NotANumber
        } else if p >= self.number(at::CRITICAL_PRESSURE) {
            self.transcritical()
        } else {
            PropertyError::Pressure { min: self.pascals(min), max: self.pascals(max) }
        }
    }

    /// Tells the phase at a pressure and a temperature.
    ///
    /// Errors: a pressure outside the table, above the critical point, or an input that is not a number.
    pub fn phase(&self, pressure: Pressure, temperature: Temperature) -> Result<Phase, PropertyError> {
        let dew = self.dew_temperature(pressure)?;
        let bubble = self.bubble_temperature(pressure)?;
        if temperature.kelvins().is_nan() {
            Err(PropertyError::NotANumber)
        } else if temperature > dew {
            Ok(Phase::Vapor)
        } else if temperature < bubble {
            Ok(Phase::Liquid)
        } else {
            Ok(Phase::TwoPhase)
        }
    }

    /// Finds the properties of vapor at a pressure and a temperature.
    ///
    /// Answers from 2 K below the dew point ([`MARGIN`]) to 160 K above it ([`MAX_SUPERHEAT`]). Errors: a pressure
    /// outside the table, a state in the two-phase region or in the liquid, a temperature beyond the range.
    pub fn vapor(&self, pressure: Pressure, temperature: Temperature) -> Result<State, PropertyError> {
        let dew = self.dew_temperature(pressure)?;
        let superheat = temperature - dew;
        if superheat >= -MARGIN && superheat <= MAX_SUPERHEAT {
            return Ok(self.vapor_state(pressure.pascals(), temperature.kelvins()));
        }
        Err(self.off_vapor(pressure, temperature, dew))
    }
    /// Finds the properties of liquid at a pressure and a temperature.
    ///
    /// Answers from 2 K above the bubble point ([`MARGIN`]) to 60 K below it ([`MAX_SUBCOOLING`]), not below the
    /// table's lowest temperature. Errors: a pressure outside the table, a state in the two-phase region or in the
    /// vapor, a temperature beyond the range.
    pub fn liquid(&self, pressure: Pressure, temperature: Temperature) -> Result<State, PropertyError> {
        let bubble = self.bubble_temperature(pressure)?;
        let subcooling = bubble - temperature;
        let min = self.kelvins(at::T_MIN);
        if subcooling >= -MARGIN && subcooling <= MAX_SUBCOOLING && temperature >= min {
            return Ok(self.liquid_state(pressure.pascals(), temperature.kelvins()));
        }
        Err(match self.phase(pressure, temperature) {
            Err(error) => error,
            Ok(Phase::Vapor) => PropertyError::OtherPhase { phase: Phase::Vapor },
            Ok(Phase::TwoPhase) => PropertyError::TwoPhase,
            Ok(Phase::Liquid) => {
                let lowest = bubble - MAX_SUBCOOLING;
                PropertyError::Temperature { min: if lowest > min { lowest } else { min }, max: bubble }
            }
        })
    }
    /// Finds the properties of saturated vapor at a pressure, at its dew temperature.
    ///
    /// Errors: a pressure outside the table, above the critical point, or not a number.
    pub fn saturated_vapor(&self, pressure: Pressure) -> Result<State, PropertyError> {
        let dew = self.dew_temperature(pressure)?;
        Ok(self.vapor_state(pressure.pascals(), dew.kelvins()))
    }
    /// Finds the properties of saturated liquid at a pressure, at its bubble temperature.
    ///
    /// Errors: a pressure outside the table, above the critical point, or not a number.
    pub fn saturated_liquid(&self, pressure: Pressure) -> Result<State, PropertyError> {
        let bubble = self.bubble_temperature(pressure)?;
        Ok(self.liquid_state(pressure.pascals(), bubble.kelvins()))
    }

    #[cold]
    fn off_vapor(&self, pressure: Pressure, temperature: Temperature, dew: Temperature) -> PropertyError {
        match self.phase(pressure, temperature) {
            Err(error) => error,
            Ok(Phase::Liquid) => PropertyError::OtherPhase { phase: Phase::Liquid },
            Ok(Phase::TwoPhase) => PropertyError::TwoPhase,
            Ok(Phase::Vapor) => PropertyError::Temperature { min: dew, max: dew + MAX_SUPERHEAT },
        }
    }

    /// Finds the temperature of superheated vapor from its pressure and enthalpy.
    ///
    /// The inverse of [`Self::vapor`], to 0.01 K. Errors: a pressure outside the table, an enthalpy below that of
    /// vapor ([`PropertyError::TwoPhase`]) or above that at the highest superheat, an input that is not a number.
    pub fn vapor_temperature_at_enthalpy(
        &self,
        pressure: Pressure,
        enthalpy: Enthalpy,
    ) -> Result<Temperature, PropertyError> {
        let dew = self.dew_temperature(pressure)?;
        let middle = self.number(at::T_CENTER);
        let gas = self.number(at::GAS_CONSTANT);
        let h = enthalpy.joules_per_kg() / gas;
        let x = h / middle;
        let start = self.guess(at::ENTHALPY_GUESS, x, dew);
        self.heat_to(pressure, dew, h, start, false)
    }
    /// Finds the temperature of superheated vapor from its pressure and entropy.
    ///
    /// With the entropy at a compressor's inlet this is the isentropic discharge temperature, to 0.01 K. Errors: a
    /// pressure outside the table, an entropy below that of vapor ([`PropertyError::TwoPhase`]) or above that at the
    /// highest superheat, an input that is not a number.
    pub fn vapor_temperature_at_entropy(
        &self,
        pressure: Pressure,
        entropy: Entropy,
    ) -> Result<Temperature, PropertyError> {
        let dew = self.dew_temperature(pressure)?;
        let s = entropy.joules_per_kg_k() / self.number(at::GAS_CONSTANT);
        let share = pressure.pascals() * self.number(at::DEW_SCALE);
        let x = s + potential::logarithm(share);
        let start = self.guess(at::ENTROPY_GUESS, x, dew);
        self.heat_to(pressure, dew, s, start, true)
    }

    #[inline(always)]
    fn guess(&self, offset: usize, x: f32, dew: Temperature) -> f32 {
        let middle = self.number(at::T_CENTER);
        middle * potential::guess(self.parts.fixed, offset, x, dew.kelvins() / middle - 1.0)
    }

    /// Newton on temperature at constant pressure, to a target h/R (K) or s/R.
    fn heat_to(
        &self,
        pressure: Pressure,
        dew: Temperature,
        target: f32,
        start: f32,
        by_entropy: bool,
    ) -> Result<Temperature, PropertyError> {
        if target.is_nan() {
            return Err(PropertyError::NotANumber);
        }
        let beyond = PropertyError::Temperature { min: dew, max: dew + MAX_SUPERHEAT };
        if target.is_infinite() || start.is_nan() {
            return Err(if target > 0.0 { beyond } else { PropertyError::TwoPhase });
        }
        let (low, high) = ((dew - MARGIN).kelvins(), (dew + MAX_SUPERHEAT).kelvins());
        let mut t = between(low, start, high);
        for _ in 0..8 {
            let (middle, gas) = (self.number(at::T_CENTER), self.number(at::GAS_CONSTANT));
            let tau = middle / t;
            let reduced_pressure = pressure.pascals() / (self.number(at::RHO_REDUCING) * gas * t);
            let state =
                potential::heated(self.parts.fixed, tau, tau - self.number(at::TAU_CENTER), reduced_pressure);
            let miss = if by_entropy {
                (target - state.entropy + potential::logarithm(state.d)) * t
            } else {
                target - state.enthalpy * t
            };
            let next = t + miss / state.capacity;
            // A target beyond the range steps out of it twice in a row.
            if (t <= low && next < low) || next.is_nan() {
                return Err(PropertyError::TwoPhase);
            }
            if t >= high && next > high {
                return Err(beyond);
            }
            let step = next - t;
            let done = step.abs() <= STEP_ENOUGH * (next - low + 1.0);
            t = between(low, next, high);
            if done {
                break;
            }
        }
        Ok(Temperature::from_kelvins(t))
    }

    fn vapor_state(&self, p: f32, temperature: f32) -> State {
        let rt = self.number(at::GAS_CONSTANT) * temperature;
        let tau = self.number(at::T_CENTER) / temperature;
        let t = tau - self.number(at::TAU_CENTER);
        let reduced_pressure = p / (self.number(at::RHO_REDUCING) * rt);
        let solved = potential::vapor(self.parts.fixed, t, reduced_pressure);
        self.state(solved, rt, tau)
    }

    fn liquid_state(&self, p: f32, temperature: f32) -> State {
        let rt = self.number(at::GAS_CONSTANT) * temperature;
        let tau = self.number(at::T_CENTER) / temperature;
        let t = tau - self.number(at::TAU_CENTER);
        let reduced_pressure = p / (self.number(at::RHO_REDUCING) * rt);
        let solved = potential::liquid(self.parts.fixed, t, reduced_pressure);
        self.state(solved, rt, tau)
    }

    fn state(&self, solved: potential::Solved, rt: f32, tau: f32) -> State {
        let (q, q_tau) = potential::ideal(self.parts.fixed, tau);
        let energy = q_tau + tau * solved.a_t;
        let gas_constant = self.number(at::GAS_CONSTANT);
        State {
            density: Density::from_kg_per_m3(solved.d * self.number(at::RHO_REDUCING)),
            enthalpy: Enthalpy::from_joules_per_kg(rt * (energy + solved.z)),
            entropy: Entropy::from_joules_per_kg_k(
                gas_constant * (energy - q - solved.a - potential::logarithm(solved.d)),
            ),
        }
    }
}

/// Holds a number between two; f32's own clamp may panic, and its max and min are calls on some targets.
#[inline(always)]
fn between(low: f32, x: f32, high: f32) -> f32 {
    if x < low {
        low
    } else if x > high {
        high
    } else {
        x
    }
}

/// Walks over the components of a refrigerant.
#[derive(Clone, Copy, Debug)]
pub struct Composition<'a> {
    rest: &'a [u8],
}

impl<'a> Iterator for Composition<'a> {
    type Item = Component<'a>;
    fn next(&mut self) -> Option<Component<'a>> {
        let (name, mass_fraction, rest) = table::component(self.rest)?;
        self.rest = rest;
        Some(Component { name, mass_fraction })
    }
}
