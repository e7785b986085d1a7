//! The temperature of a vapor from its pressure and its enthalpy or entropy.

use super::limit::{at_least, between};
use super::potential::{Place, logarithm};
use super::table::{Guess, at, guess};
use super::{MARGIN, MAX_SUPERHEAT, PropertyError, Refrigerant, vapor};
use crate::quantity::{Enthalpy, Entropy, Pressure, Temperature};

/// How hard a temperature is sought.
#[derive(Clone, Copy)]
pub(super) struct Care {
    /// Step of temperature per superheat and 3 K after which the next Newton step would not be seen.
    ///
    /// Near saturation the heat capacity of vapor changes fastest; the sum grows as that fades.
    step_enough: f32,
    /// Newton steps at most.
    steps: u32,
    /// Whether a result below the dew point is refused.
    saturated: bool,
}

impl Care {
    /// For models of machines: quick, and it goes on a little below the dew point as [`Refrigerant::vapor`] does.
    const QUICK: Self = Self { step_enough: 0.05, steps: 8, saturated: false };
    /// For what is told: near the critical point the heat capacity falls so fast that the first steps are short.
    pub(super) const FULL: Self = Self { step_enough: 0.01, steps: 14, saturated: true };
}

/// How far below the dew point a result may lie by rounding and still be saturated vapor, K.
const ROUNDING: f32 = 0.05;

/// What a vapor's temperature is sought for.
struct Sought<'a> {
    /// h/R, K, or s/R.
    target: f32,
    /// The variable of the guess.
    x: f32,
    guess: &'a Guess,
    by_entropy: bool,
}

impl Refrigerant<'_> {
    /// Finds the temperature of superheated vapor from its pressure and enthalpy.
    ///
    /// The quick inverse of [`Self::vapor`], to 0.01 K from 8 K below the critical temperature down, and like it it goes on to
    /// 2 K below the dew point ([`MARGIN`]). [`Self::at_enthalpy`] stops at the dew point, knows the dome and the liquid, and
    /// is exact near the critical point too. Errors: a pressure outside the table, an enthalpy below that of vapor
    /// ([`PropertyError::TwoPhase`]) or above that at the highest superheat, an input that is not a number.
    pub fn vapor_temperature_at_enthalpy(
        &self,
        pressure: Pressure,
        enthalpy: Enthalpy,
    ) -> Result<Temperature, PropertyError> {
        self.heated_to_enthalpy(pressure, enthalpy, Care::QUICK)
    }
    /// Finds the temperature of superheated vapor from its pressure and entropy.
    ///
    /// With the entropy at a compressor's inlet this is the isentropic discharge temperature. The quick inverse of
    /// [`Self::vapor`], to 0.01 K from 8 K below the critical temperature down, and like it it goes on to 2 K below the dew
    /// point ([`MARGIN`]): heavy molecules may end there when they are compressed. [`Self::at_entropy`] stops at the dew
    /// point and tells the quality below. Errors: a pressure outside the table, an entropy below that of vapor
    /// ([`PropertyError::TwoPhase`]) or above that at the highest superheat, an input that is not a number.
    pub fn vapor_temperature_at_entropy(
        &self,
        pressure: Pressure,
        entropy: Entropy,
    ) -> Result<Temperature, PropertyError> {
        self.heated_to_entropy(pressure, entropy, Care::QUICK)
    }

    pub(super) fn heated_to_enthalpy(
        &self,
        pressure: Pressure,
        enthalpy: Enthalpy,
        care: Care,
    ) -> Result<Temperature, PropertyError> {
        let dew = self.dew_temperature(pressure)?;
        let h = enthalpy.joules_per_kg() / self.number(at::GAS_CONSTANT);
        let sought = Sought {
            target: h,
            x: h / self.number(at::T_CENTER),
            guess: guess(self.parts.fixed, at::ENTHALPY_GUESS),
            by_entropy: false,
        };
        self.heat_to(pressure, dew, sought, care)
    }

    pub(super) fn heated_to_entropy(
        &self,
        pressure: Pressure,
        entropy: Entropy,
        care: Care,
    ) -> Result<Temperature, PropertyError> {
        let dew = self.dew_temperature(pressure)?;
        let s = entropy.joules_per_kg_k() / self.number(at::GAS_CONSTANT);
        let share = pressure.pascals() * self.number(at::DEW_SCALE);
        let sought = Sought {
            target: s,
            x: s + logarithm(share),
            guess: guess(self.parts.fixed, at::ENTROPY_GUESS),
            by_entropy: true,
        };
        self.heat_to(pressure, dew, sought, care)
    }

    /// Newton on temperature at constant pressure.
    fn heat_to(
        &self,
        pressure: Pressure,
        dew: Temperature,
        Sought { target, x, guess, by_entropy }: Sought<'_>,
        Care { step_enough, steps, saturated }: Care,
    ) -> Result<Temperature, PropertyError> {
        let middle = self.number(at::T_CENTER);
        let start = middle * vapor::guess(guess, x, dew.kelvins() / middle - 1.0);
        if target.is_nan() {
            return Err(PropertyError::NotANumber);
        }
        let beyond = PropertyError::Temperature { min: dew, max: dew + MAX_SUPERHEAT };
        if target.is_infinite() || start.is_nan() {
            return Err(if target > 0.0 { beyond } else { PropertyError::TwoPhase });
        }
        // The potential goes on a little below saturation, so that a result there can be told from one at it.
        let (low, high) = ((dew - MARGIN).kelvins(), (dew + MAX_SUPERHEAT).kelvins());
        let coldest = if saturated { dew.kelvins() } else { low };
        let mut t = between(coldest, start, high);
        for _ in 0..steps {
            let gas = self.number(at::GAS_CONSTANT);
            let reduced_pressure = pressure.pascals() / (self.number(at::RHO_REDUCING) * gas * t);
            let place = Place::of(self.parts.fixed, t);
            let state = vapor::heated(self.parts.fixed, place, reduced_pressure);
            let miss = if by_entropy {
                (target - state.entropy + logarithm(state.d)) * t
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
            let done = step.abs() <= step_enough * (next - low + 1.0);
            t = between(low, next, high);
            if done {
                break;
            }
        }
        if saturated && t < dew.kelvins() - ROUNDING {
            return Err(PropertyError::TwoPhase);
        }
        Ok(Temperature::from_kelvins(at_least(coldest, t)))
    }
}
