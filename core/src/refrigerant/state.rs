//! States of vapor and liquid: density, enthalpy and entropy from pressure and temperature.

use super::potential::{Place, Solved};
use super::table::at;
use super::{PropertyError, Refrigerant, liquid, vapor};
use crate::quantity::{Density, Enthalpy, Entropy, Pressure, Temperature, TemperatureDifference};

/// Kelvin that a vapor or liquid state may lie beyond its saturation curve and still be answered.
///
/// The potentials go on smoothly there; a reading exactly on the curve with its rounding stays answerable.
pub const MARGIN: TemperatureDifference = TemperatureDifference::from_kelvins(2.0);
/// Highest superheat answered; accuracy is stated to 120 K, beyond that the potential goes on smoothly.
pub const MAX_SUPERHEAT: TemperatureDifference = TemperatureDifference::from_kelvins(160.0);
/// Highest subcooling answered; accuracy is stated to 40 K, beyond that the potential goes on smoothly.
pub const MAX_SUBCOOLING: TemperatureDifference = TemperatureDifference::from_kelvins(60.0);

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

impl Refrigerant<'_> {
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
        self.check_vapor(pressure, temperature)?;
        Ok(self.vapor_state(pressure.pascals(), temperature.kelvins()))
    }
    /// Tells why there is no vapor to answer at a pressure and a temperature.
    #[inline(always)]
    pub(super) fn check_vapor(
        &self,
        pressure: Pressure,
        temperature: Temperature,
    ) -> Result<(), PropertyError> {
        let dew = self.dew_temperature(pressure)?;
        if within(temperature - dew, MAX_SUPERHEAT) {
            return Ok(());
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
        if within(subcooling, MAX_SUBCOOLING) && temperature >= min {
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

    /// Finds both ends of saturation at a pressure: dew temperature and vapor, bubble temperature and liquid.
    ///
    /// Errors: a pressure outside the table, above the critical point, or not a number.
    pub(crate) fn saturated(
        &self,
        pressure: Pressure,
    ) -> Result<(Temperature, State, Temperature, State), PropertyError> {
        let dew = self.dew_temperature(pressure)?;
        let bubble = self.bubble_temperature(pressure)?;
        let pa = pressure.pascals();
        Ok((dew, self.vapor_state(pa, dew.kelvins()), bubble, self.liquid_state(pa, bubble.kelvins())))
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

    fn vapor_state(&self, p: f32, temperature: f32) -> State {
        let rt = self.number(at::GAS_CONSTANT) * temperature;
        let place = Place::of(self.parts.fixed, temperature);
        let reduced_pressure = p / (self.number(at::RHO_REDUCING) * rt);
        self.state(vapor::solve(self.parts.fixed, place, reduced_pressure), rt)
    }

    fn liquid_state(&self, p: f32, temperature: f32) -> State {
        let rt = self.number(at::GAS_CONSTANT) * temperature;
        let place = Place::of(self.parts.fixed, temperature);
        let reduced_pressure = p / (self.number(at::RHO_REDUCING) * rt);
        self.state(liquid::solve(self.parts.fixed, place, reduced_pressure), rt)
    }

    pub(super) fn state(&self, solved: Solved, rt: f32) -> State {
        State {
            density: Density::from_kg_per_m3(solved.d * self.number(at::RHO_REDUCING)),
            enthalpy: Enthalpy::from_joules_per_kg(rt * solved.enthalpy),
            entropy: Entropy::from_joules_per_kg_k(self.number(at::GAS_CONSTANT) * solved.entropy),
        }
    }
}

/// Tells whether a distance from saturation lies between the margin on the other side and the farthest.
#[inline(always)]
fn within(distance: TemperatureDifference, farthest: TemperatureDifference) -> bool {
    let (margin, farthest) = (MARGIN.kelvins(), farthest.kelvins());
    (distance.kelvins() - 0.5 * (farthest - margin)).abs() <= 0.5 * (farthest + margin)
}
