//! A rating carried from the map's suction superheat to another one.
//!
//! Dabiri, A. E. and Rice, C. K. (1981), "A compressor simulation model with corrections for the level of suction
//! gas superheat", ASHRAE Transactions 87(2): the mass flow follows the suction density, but by less than in
//! proportion, as the gas is warmed on its way to the cylinder; the power follows flow times isentropic work.

use crate::estimate::Estimate;
use crate::normal::positive;

/// Share of the change of suction density that reaches the cylinder (Dabiri and Rice 1981).
pub const DENSITY_SHARE: f32 = 0.75;
/// Standard uncertainty of that share between compressors: 0 to 1 bound it, most lie 0.6-0.9 (from memory).
const SHARE_SPREAD: f32 = 0.15;

/// Computes the factor on the map's mass flow from the suction density over the map's suction density.
///
/// 1 + 0.75 (ratio - 1). `None` unless the ratio is finite and positive, and within 0.5 to 2, beyond which a
/// linear correction says nothing.
pub fn mass_flow_factor(density_ratio: f32) -> Option<Estimate> {
    if !(0.5..=2.0).contains(&density_ratio) {
        return None;
    }
    let change = density_ratio - 1.0;
    Estimate::new(1.0 + DENSITY_SHARE * change, SHARE_SPREAD * libm::fabsf(change))
}

/// Computes the factor on the map's power from the mass flow's factor and the ratio of isentropic works.
///
/// The isentropic efficiency is taken as unchanged. `isentropic_work_ratio` is the enthalpy rise from the new suction
/// state to the discharge pressure at constant entropy, over that from the map's. `None` where an input is not
/// finite or not positive.
pub fn power_factor(mass_flow_factor: Estimate, isentropic_work_ratio: f32) -> Option<Estimate> {
    if !positive(mass_flow_factor.value)
        || !mass_flow_factor.u.is_finite()
        || !positive(isentropic_work_ratio)
    {
        return None;
    }
    Estimate::new(
        mass_flow_factor.value * isentropic_work_ratio,
        libm::fabsf(mass_flow_factor.u) * isentropic_work_ratio,
    )
}
