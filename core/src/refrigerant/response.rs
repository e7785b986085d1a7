//! Heat capacities and the speed of sound: what the second derivatives of the potentials say.

use super::limit::at_least;
use super::polynomial::{value, with_curvature, with_slope};
use super::potential::{Fixed, Place};
use super::table::{at, number};
use super::{PropertyError, Refrigerant};
use crate::quantity::{Pressure, Temperature};

/// How a phase answers heat and pressure at one state.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Response {
    /// Specific heat capacity at constant pressure, J/(kg K).
    pub heat_capacity_j_kg_k: f32,
    /// Specific heat capacity at constant volume, J/(kg K).
    pub heat_capacity_constant_volume_j_kg_k: f32,
    /// Speed of sound, m/s; none of liquid, whose stiffness the table does not have well enough.
    pub speed_of_sound_m_s: Option<f32>,
}

/// Saturation within this of the critical temperature is not answered, K: heat capacities run away there.
const BELOW_CRITICAL: f32 = 8.0;

/// What is needed of a potential A(t, d) besides its first derivatives.
pub(super) struct Curvature {
    /// Derivative of p by density over R T.
    stiffness: f32,
    /// Derivative of p by temperature over rho R.
    turn: f32,
    /// cv/R.
    cv: f32,
}

impl Curvature {
    /// cp/R.
    pub(super) fn capacity(&self) -> f32 {
        self.cv + self.turn * self.turn / at_least(0.02, self.stiffness)
    }
}

impl Refrigerant<'_> {
    /// Finds heat capacities and the speed of sound of vapor at a pressure and a temperature.
    ///
    /// Ranges and errors are those of [`Self::vapor`], and [`PropertyError::NearCritical`] where the dew point is within 8 K
    /// of the critical temperature. `tables/ERRORS.md` has the measured worst error of every refrigerant.
    pub fn vapor_response(
        &self,
        pressure: Pressure,
        temperature: Temperature,
    ) -> Result<Response, PropertyError> {
        let state = self.vapor(pressure, temperature)?;
        self.far_from_critical(self.dew_temperature(pressure)?)?;
        let place = Place::of(self.parts.fixed, temperature.kelvins());
        let c = vapor(self.parts.fixed, place, state.density.kg_per_m3() / self.number(at::RHO_REDUCING));
        let square =
            self.number(at::GAS_CONSTANT) * temperature.kelvins() * c.stiffness * c.capacity() / c.cv;
        Ok(Response { speed_of_sound_m_s: Some(libm::sqrtf(square)), ..self.response(&c) })
    }
    /// Finds heat capacities of liquid at a pressure and a temperature.
    ///
    /// Ranges and errors are those of [`Self::liquid`], and [`PropertyError::NearCritical`] where the bubble point is within
    /// 8 K of the critical temperature. `tables/ERRORS.md` has the measured worst error of every refrigerant.
    pub fn liquid_response(
        &self,
        pressure: Pressure,
        temperature: Temperature,
    ) -> Result<Response, PropertyError> {
        let state = self.liquid(pressure, temperature)?;
        self.far_from_critical(self.bubble_temperature(pressure)?)?;
        let place = Place::of(self.parts.fixed, temperature.kelvins());
        let c = liquid(self.parts.fixed, place, state.density.kg_per_m3() / self.number(at::RHO_REDUCING));
        Ok(self.response(&c))
    }

    fn far_from_critical(&self, saturation: Temperature) -> Result<(), PropertyError> {
        let critical_temperature = self.critical_temperature();
        if saturation.kelvins() > critical_temperature.kelvins() - BELOW_CRITICAL {
            return Err(PropertyError::NearCritical { critical_temperature });
        }
        Ok(())
    }

    fn response(&self, c: &Curvature) -> Response {
        let gas = self.number(at::GAS_CONSTANT);
        Response {
            heat_capacity_j_kg_k: gas * c.capacity(),
            heat_capacity_constant_volume_j_kg_k: gas * c.cv,
            speed_of_sound_m_s: None,
        }
    }
}

/// The vapor's, whose potential is ln d + Q(t) + A(t, d).
fn vapor(fixed: &Fixed, Place { tau, t }: Place, d: f32) -> Curvature {
    let (b1, c1, e1) = with_curvature!(t; fixed[at::VAPOR] 0, 1, 3, 5, 8, 12);
    let (b2, c2, e2) = with_curvature!(t; fixed[at::VAPOR] 2, 4, 6, 9, 13);
    let (b3, c3, e3) = with_curvature!(t; fixed[at::VAPOR] 7, 10, 14);
    let (b4, c4) = with_slope!(t; fixed[at::VAPOR] 11, 15);
    let b5 = number(fixed, at::VAPOR + 4 * 16);
    let (_, _, e0) = with_curvature!(t; fixed[at::IDEAL] 7, 6, 5, 4, 3, 2, 1, 0);
    let z = 1.0 + d * value!(d; 5.0 * b5, 4.0 * b4, 3.0 * b3, 2.0 * b2, b1);
    let bend = d * d * value!(d; 20.0 * b5, 12.0 * b4, 6.0 * b3, 2.0 * b2);
    let mixed = value!(d; 4.0 * c4, 3.0 * c3, 2.0 * c2, c1);
    let half = value!(d; e3, e2, e1, e0);
    Curvature { stiffness: 2.0 * z - 1.0 + bend, turn: z - tau * d * mixed, cv: -2.0 * tau * tau * half }
}

/// The liquid's, whose potential is one polynomial with all of it in.
pub(super) fn liquid(fixed: &Fixed, Place { tau, t }: Place, d: f32) -> Curvature {
    let (_, _, e0) = with_curvature!(t; fixed[at::LIQUID] 0, 1, 3, 6, 9, 13);
    let (b1, c1, e1) = with_curvature!(t; fixed[at::LIQUID] 2, 4, 7, 10, 14);
    let (b2, c2, e2) = with_curvature!(t; fixed[at::LIQUID] 5, 8, 11, 15);
    let (b3, c3) = with_slope!(t; fixed[at::LIQUID] 12, 16);
    let b4 = number(fixed, at::LIQUID + 4 * 17);
    let b5 = number(fixed, at::LIQUID + 4 * 18);
    let e = d - number(fixed, at::LIQUID_CENTER);
    let slope = value!(e; 5.0 * b5, 4.0 * b4, 3.0 * b3, 2.0 * b2, b1);
    let curvature = value!(e; 20.0 * b5, 12.0 * b4, 6.0 * b3, 2.0 * b2);
    let mixed = value!(e; 3.0 * c3, 2.0 * c2, c1);
    let half = value!(e; e2, e1, e0);
    let z = d * slope;
    Curvature {
        stiffness: 2.0 * z + d * d * curvature,
        turn: z - tau * d * mixed,
        cv: -2.0 * tau * tau * half,
    }
}
