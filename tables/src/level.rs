//! Saturation levels: where a fit has its nodes and a measurement its points.

use crate::saturation::{Kind, Specification};
use crate::substance::{Saturated, Substance};
use libm::{exp, log};

/// Saturation on both sides of one pressure.
#[derive(Clone, Copy, Debug)]
pub struct Level {
    /// Saturated vapor.
    pub dew: Saturated,
    /// Saturated liquid.
    pub bubble: Saturated,
    /// Enthalpy of evaporation, J/kg.
    pub latent_heat: f64,
    /// Entropy of evaporation, J/(kg K).
    pub latent_entropy: f64,
}

/// Finds the saturation level whose dew (or bubble) temperature is given.
pub fn level(substance: &Substance, kind: Kind, t: f64) -> Option<Level> {
    let one = substance.saturated(kind, Specification::Temperature(t))?;
    let other = if kind == Kind::Dew { Kind::Bubble } else { Kind::Dew };
    let two = substance.saturated(other, Specification::Pressure(one.p)).or_else(|| {
        // Colder than the traced branch, or above its highest pressure: the latent values of the same temperature do.
        substance.saturated(other, Specification::Temperature(t))
    })?;
    let (dew, bubble) = if kind == Kind::Dew { (one, two) } else { (two, one) };
    let (v, l) = (substance.state(dew.t, dew.rho), substance.state(bubble.t, bubble.rho));
    Some(Level { dew, bubble, latent_heat: v.h - l.h, latent_entropy: v.s - l.s })
}

/// Temperatures crowding towards the critical point.
pub fn crowded(low: f64, high: f64, critical: f64, count: usize, offset: f64) -> Vec<f64> {
    let (a, b) = (log(critical - high), log(critical - low));
    (0..count)
        .map(|k| critical - exp(a + (b - a) * (k as f64 + offset) / (count as f64 - 1.0 + 2.0 * offset)))
        .collect()
}
