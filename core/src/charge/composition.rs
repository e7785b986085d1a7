//! How a blend keeps its composition: charged as liquid, leaked as vapour.

use crate::refrigerant::{Refrigerant, SafetyClass};

/// Glide below which vapour and liquid of a blend differ too little to matter at the cylinder, K (common practice).
pub const NEAR_AZEOTROPIC_K: f32 = 1.0;
/// Glide from which a leak of vapour changes what is left enough to matter, K (common practice).
pub const SHIFTS_K: f32 = 3.0;

/// How a refrigerant is charged.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ChargeAs {
    /// As vapour or liquid; liquid throttled into the suction side of a stopped or running machine.
    EitherPhase,
    /// As liquid only, throttled so that no liquid reaches the compressor: vapour has another composition.
    LiquidOnly,
}

/// What to watch when a refrigerant is charged or has leaked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Handling {
    /// The phase to charge in.
    pub charge_as: ChargeAs,
    /// Whether a partial leak may have changed what is left: recover and weigh in new rather than top up.
    pub leak_shifts_composition: bool,
    /// Whether what leaks or fills the hoses can burn; unknown counts as yes.
    pub flammable: bool,
    /// Whether it is of the higher toxicity class; unknown counts as yes.
    pub toxic: bool,
}

/// Tells how to handle a refrigerant from its glide and safety class.
///
/// `glide_k` is dew less bubble temperature; `None` where an unknown glide, or NaN, must count as large, as does an
/// unknown safety class as flammable and toxic. A blend's class already covers the worst composition that a leak can
/// leave (ASHRAE Standard 34).
pub fn handling(glide_k: Option<f32>, safety_class: Option<SafetyClass>) -> Handling {
    // Azeotropes may show a slightly negative glide from rounding.
    let glide = glide_k.filter(|k| !k.is_nan()).map_or(f32::INFINITY, libm::fabsf);
    Handling {
        charge_as: if glide > NEAR_AZEOTROPIC_K { ChargeAs::LiquidOnly } else { ChargeAs::EitherPhase },
        leak_shifts_composition: glide > SHIFTS_K,
        flammable: safety_class.is_none_or(SafetyClass::is_flammable),
        toxic: safety_class.is_none_or(SafetyClass::is_higher_toxicity),
    }
}

/// Tells how to handle a refrigerant of the tables.
pub fn handling_of(refrigerant: &Refrigerant<'_>) -> Handling {
    handling(Some(refrigerant.glide().kelvins()), refrigerant.safety_class())
}
