//! A compact steady-state model of the machine: what it shows here and now, healthy or with a fault.
//!
//! Everything is normalised so that the refrigerant mass flow at the design point is 1; the constants of compressor,
//! exchangers, metering device and charge are then fixed by the design point alone. Four unknowns (evaporating and
//! condensing pressure, superheat and subcooling, the last two extended into the wet region) close four balances:
//! compressor flow = metering flow, evaporator heat, condenser heat, and charge.

mod calibrate;
pub(crate) mod design;
#[cfg(test)]
mod directions;
mod fluid;
mod moist_air;
mod newton;
pub(crate) mod nuisance;
mod run;

pub(crate) use calibrate::Machine;
pub(crate) use design::Nominal;
pub(crate) use fluid::{Fluid, Memo};
pub(crate) use newton::{Jacobian, eliminate, jacobian, solve};
pub(crate) use run::{Fault, Run, Unknowns};

/// The positive part of x, rounded over a width w so that it has a slope everywhere.
pub(crate) fn positive(x: f32, w: f32) -> f32 {
    0.5 * (x + libm::sqrtf(x * x + w * w))
}
