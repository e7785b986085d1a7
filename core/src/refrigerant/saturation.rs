//! Saturation: dew and bubble temperature from pressure, and back.

use super::curve::Curve;
use super::limit::between;
use super::table::{at, short};
use super::{PropertyError, Refrigerant};
use crate::quantity::{Pressure, Temperature};

impl<'a> Refrigerant<'a> {
    #[inline(always)]
    fn dew(&self) -> Curve<'a> {
        Curve {
            pieces: self.parts.dew,
            scale: self.number(at::DEW_SCALE),
            octaves: short(self.parts.fixed, at::DEW_OCTAVES),
            last: short(self.parts.fixed, at::DEW_LAST),
        }
    }
    #[inline(always)]
    fn bubble(&self) -> Curve<'a> {
        Curve {
            pieces: self.parts.bubble,
            scale: self.number(at::BUBBLE_SCALE),
            octaves: short(self.parts.fixed, at::BUBBLE_OCTAVES),
            last: short(self.parts.fixed, at::BUBBLE_LAST),
        }
    }

    /// Finds the dew temperature at a pressure: where the last liquid has evaporated.
    ///
    /// Errors: a pressure outside the table, above the critical point, or not a number.
    #[inline]
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
            return Ok(Pressure::from_pascals(between(self.number(min), p, self.number(max))));
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
}
