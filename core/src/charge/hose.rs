//! What a hose holds, and what of it is lost or returned when it is valved off.

use crate::normal::positive;
use crate::quantity::{Pressure, Temperature};
use crate::refrigerant::{Phase, PropertyError, Refrigerant};

/// A charging hose by its inside measures.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hose {
    /// Length, m.
    pub length_m: f32,
    /// Inside diameter, mm; 4 to 5 for the usual quarter-inch hose, 8 to 9 for three-eighths (common practice).
    pub inner_diameter_mm: f32,
}

impl Hose {
    /// Computes the volume inside, m3.
    ///
    /// `None` unless length and diameter are finite and positive.
    pub fn volume_m3(&self) -> Option<f32> {
        let radius_m = 0.0005 * self.inner_diameter_mm;
        if !positive(self.length_m) || !positive(self.inner_diameter_mm) {
            return None;
        }
        Some(core::f32::consts::PI * radius_m * radius_m * self.length_m).filter(|v| v.is_finite())
    }
}

/// What a hose holds: the mass and the phase it is in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Contents {
    /// The mass, kg.
    pub mass_kg: f32,
    /// The phase.
    pub phase: Phase,
}

/// Computes the mass of a volume at a density, kg.
///
/// `volume_m3`, `density_kg_m3`. `None` unless both are finite and positive.
pub fn mass_kg(volume_m3: f32, density_kg_m3: f32) -> Option<f32> {
    if !positive(volume_m3) || !positive(density_kg_m3) {
        return None;
    }
    Some(volume_m3 * density_kg_m3).filter(|m| m.is_finite())
}

/// Why the contents of a hose cannot be told.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum NoContents {
    /// The hose has no positive length and diameter.
    Hose,
    /// The state has no density: outside the table, or between liquid and vapour, where the fill cannot be told.
    State(PropertyError),
}

/// Computes what a hose holds at its own pressure and temperature: vapour above dew, liquid below bubble.
///
/// A hose takes the temperature of the air around it within minutes. Errors: measures that are not positive, a
/// state outside the refrigerant's table, or one between bubble and dew, where anything between both is possible.
pub fn contents(
    hose: &Hose,
    refrigerant: &Refrigerant<'_>,
    pressure: Pressure,
    temperature: Temperature,
) -> Result<Contents, NoContents> {
    let volume = hose.volume_m3().ok_or(NoContents::Hose)?;
    let phase = refrigerant.phase(pressure, temperature).map_err(NoContents::State)?;
    let state = match phase {
        Phase::Vapor => refrigerant.vapor(pressure, temperature),
        Phase::Liquid => refrigerant.liquid(pressure, temperature),
        Phase::TwoPhase => Err(PropertyError::TwoPhase),
    }
    .map_err(NoContents::State)?;
    let mass_kg = mass_kg(volume, state.density.kg_per_m3()).ok_or(NoContents::Hose)?;
    Ok(Contents { mass_kg, phase })
}

/// What becomes of a hose's contents.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ValvedOff {
    /// What the system takes back, kg.
    pub returned_kg: f32,
    /// What stays in the hose and is recovered with it, kg.
    pub left_kg: f32,
}

/// Computes what the system takes back when the hose is emptied into it before it is taken off, kg.
///
/// `filled_kg` is what it holds while charging, `emptied_kg` what it holds at the end, as a rule vapour at suction
/// pressure after the hose was opened to the running compressor's suction. Never released: what is left is
/// recovered. `None` unless both are finite and not negative, and the end not above the start.
pub fn valved_off(filled_kg: f32, emptied_kg: f32) -> Option<ValvedOff> {
    if !filled_kg.is_finite() || !emptied_kg.is_finite() || emptied_kg < 0.0 || emptied_kg > filled_kg {
        return None;
    }
    Some(ValvedOff { returned_kg: filled_kg - emptied_kg, left_kg: emptied_kg })
}
