//! A weigh-in: what to let out of the cylinder so that the machine ends at its nameplate charge.

use crate::estimate::Estimate;
use crate::normal::{combine, positive, usable};

/// What a weigh-in starts from, kg.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WeighIn {
    /// The nameplate charge, with what lines beyond the plate's length add.
    pub nameplate_kg: f32,
    /// What is still in the machine; zero after recovery and evacuation.
    pub residual_kg: Estimate,
    /// What the hoses hold when they are valved off at the end, which the scale counts but the machine never gets.
    pub left_in_hoses_kg: Estimate,
    /// Standard uncertainty of the scale over the charge.
    pub scale_u_kg: f32,
}

/// What to do at the scale.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Plan {
    /// Let this much out of the cylinder by the scale.
    Charge {
        /// The reading the scale should fall by, kg; its uncertainty is that of the charge in the machine.
        by_scale_kg: Estimate,
        /// That uncertainty over the nameplate charge, as a fraction.
        relative_u: f32,
    },
    /// Nothing to add: the machine holds its nameplate charge or more.
    Recover {
        /// What the machine holds beyond its nameplate, kg.
        excess_kg: Estimate,
    },
}

/// Plans a weigh-in.
///
/// Scale = nameplate - residual + left in hoses. A residual that was not weighed makes the result as uncertain as it
/// is; recover, evacuate and weigh in all of it where that is more than a few percent. `None` where an input is not
/// finite, or negative, or the nameplate not positive.
pub fn plan(start: &WeighIn) -> Option<Plan> {
    let WeighIn { nameplate_kg, residual_kg, left_in_hoses_kg, scale_u_kg } = *start;
    if !usable(residual_kg)
        || !usable(left_in_hoses_kg)
        || residual_kg.value < 0.0
        || left_in_hoses_kg.value < 0.0
    {
        return None;
    }
    if !positive(nameplate_kg) || !scale_u_kg.is_finite() || scale_u_kg < 0.0 {
        return None;
    }
    let u = combine(&[residual_kg.u, left_in_hoses_kg.u, scale_u_kg]);
    let missing = nameplate_kg - residual_kg.value;
    if missing <= 0.0 {
        return Some(Plan::Recover { excess_kg: Estimate::new(-missing, residual_kg.u)? });
    }
    let relative_u = Some(u / nameplate_kg).filter(|r| r.is_finite())?;
    Some(Plan::Charge { by_scale_kg: Estimate::new(missing + left_in_hoses_kg.value, u)?, relative_u })
}
