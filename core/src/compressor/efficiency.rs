//! Efficiencies of a running compressor, from an energy balance over its shell.
//!
//! Power in = flow times enthalpy rise + heat lost from the shell. With flow and power known, all of it follows; with
//! one of them, the other follows once the lost share is assumed.

use crate::estimate::Estimate;
use crate::normal::{combine, positive, usable};

/// Share of its power that a small hermetic loses from its shell, in still air (common practice: 0.05-0.25).
pub const USUAL_LOSS: Estimate = Estimate { value: 0.12, u: 0.08 };

/// Specific enthalpies around a compressor, kJ/kg on any one reference state.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Enthalpies {
    /// At the inlet.
    pub suction: Estimate,
    /// At the outlet.
    pub discharge: Estimate,
    /// At the discharge pressure with the entropy of the inlet.
    pub isentropic: Estimate,
}

impl Enthalpies {
    /// Enthalpy rise, and rise at constant entropy, kJ/kg, each with its uncertainty.
    fn rises(&self) -> Option<(Estimate, Estimate)> {
        let rise = |end: Estimate| {
            let rise = Estimate::new(end.value - self.suction.value, combine(&[end.u, self.suction.u]))?;
            (usable(end) && usable(self.suction) && positive(rise.value)).then_some(rise)
        };
        Some((rise(self.discharge)?, rise(self.isentropic)?))
    }
}

/// Quotient of two estimates with independent uncertainties.
fn quotient(above: Estimate, below: Estimate) -> Option<Estimate> {
    if !usable(above) || !usable(below) || !positive(above.value) || !positive(below.value) {
        return None;
    }
    let value = above.value / below.value;
    Estimate::new(value, value * combine(&[above.u / above.value, below.u / below.value]))
}

/// Product of two estimates with independent uncertainties.
fn product(a: Estimate, b: Estimate) -> Option<Estimate> {
    if !usable(a) || !usable(b) {
        return None;
    }
    Estimate::new(a.value * b.value, combine(&[a.u * b.value, a.value * b.u]))
}

/// Computes the share of the power that is not found in the gas, lost from the shell.
///
/// `mass_flow_kg_s`, `power_kw`. Negative where the gas carries more than the power: a reading is wrong, or the
/// suction gas is wet. `None` where an input is not finite, or not positive.
pub fn shell_loss(mass_flow_kg_s: Estimate, power_kw: Estimate, around: &Enthalpies) -> Option<Estimate> {
    let (rise, _) = around.rises()?;
    let share = quotient(product(mass_flow_kg_s, rise)?, power_kw)?;
    Estimate::new(1.0 - share.value, share.u)
}

/// Computes the overall isentropic efficiency: flow times isentropic work over electrical power.
///
/// `mass_flow_kg_s`, `power_kw`. 0.45-0.70 is usual for small hermetics (common practice). `None` where an input is
/// not finite, or not positive.
pub fn overall_isentropic(
    mass_flow_kg_s: Estimate,
    power_kw: Estimate,
    around: &Enthalpies,
) -> Option<Estimate> {
    let (_, ideal) = around.rises()?;
    quotient(product(mass_flow_kg_s, ideal)?, power_kw)
}

/// Computes the efficiency that needs neither flow nor power: isentropic over actual enthalpy rise.
///
/// It reads high by the share that the shell loses. `None` where an input is not finite, or not positive.
pub fn of_discharge_temperature(around: &Enthalpies) -> Option<Estimate> {
    let (rise, ideal) = around.rises()?;
    quotient(ideal, rise)
}

/// Computes the mass flow from the power and an assumed share lost from the shell, kg/s.
///
/// `power_kw`; `loss` as a fraction, [`USUAL_LOSS`] where nothing is known. `None` where an input is not finite, the
/// power not positive, or the loss not below 0.9.
pub fn mass_flow_from_power(power_kw: Estimate, around: &Enthalpies, loss: Estimate) -> Option<Estimate> {
    let (rise, _) = around.rises()?;
    if !usable(loss) || loss.value >= 0.9 {
        return None;
    }
    let kept = Estimate::new(1.0 - loss.value, loss.u)?;
    quotient(product(power_kw, kept)?, rise)
}

/// Computes the volumetric efficiency: flow over suction density and swept volume flow.
///
/// `mass_flow_kg_s`, `suction_density_kg_m3`, `swept_m3_s`. `None` where an input is not finite, or not positive.
pub fn volumetric(
    mass_flow_kg_s: Estimate,
    suction_density_kg_m3: Estimate,
    swept_m3_s: f32,
) -> Option<Estimate> {
    let swept = Estimate::new(swept_m3_s, 0.0)?;
    quotient(mass_flow_kg_s, product(suction_density_kg_m3, swept)?)
}
