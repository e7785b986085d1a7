//! The refrigerant's properties as plain SI numbers, for the model's inner loop.

use crate::quantity::{Enthalpy, Entropy, Pressure, Temperature};
use crate::refrigerant::{Refrigerant, State};

/// A refrigerant read in pascal, kelvin, J/kg and kg/m3; `None` outside its table.
#[derive(Clone, Copy)]
pub(crate) struct Fluid<'a>(pub(crate) &'a Refrigerant<'a>);

/// Both ends of saturation at one pressure.
#[derive(Clone, Copy)]
pub(crate) struct Saturation {
    pub(crate) bubble_k: f32,
    pub(crate) dew_k: f32,
    pub(crate) h_liquid: f32,
    pub(crate) h_vapor: f32,
    pub(crate) rho_liquid: f32,
    pub(crate) rho_vapor: f32,
}

impl Saturation {
    pub(crate) fn middle_k(&self) -> f32 {
        0.5 * (self.bubble_k + self.dew_k)
    }
    pub(crate) fn latent(&self) -> f32 {
        self.h_vapor - self.h_liquid
    }
}

impl Fluid<'_> {
    pub(crate) fn dew_k(self, pa: f32) -> Option<f32> {
        self.0.dew_temperature(Pressure::from_pascals(pa)).ok().map(Temperature::kelvins)
    }
    pub(crate) fn bubble_k(self, pa: f32) -> Option<f32> {
        self.0.bubble_temperature(Pressure::from_pascals(pa)).ok().map(Temperature::kelvins)
    }
    pub(crate) fn middle_k(self, pa: f32) -> Option<f32> {
        Some(0.5 * (self.dew_k(pa)? + self.bubble_k(pa)?))
    }
    pub(crate) fn dew_pa(self, k: f32) -> Option<f32> {
        self.0.dew_pressure(Temperature::from_kelvins(k)).ok().map(Pressure::pascals)
    }
    pub(crate) fn bubble_pa(self, k: f32) -> Option<f32> {
        self.0.bubble_pressure(Temperature::from_kelvins(k)).ok().map(Pressure::pascals)
    }
    /// The pressure whose mean of bubble and dew temperature is given.
    pub(crate) fn middle_pa(self, k: f32) -> Option<f32> {
        let (mut low, mut high) = (self.dew_pa(k)?, self.bubble_pa(k)?);
        for _ in 0..12 {
            let p = 0.5 * (low + high);
            if self.middle_k(p)? < k { low = p } else { high = p }
        }
        Some(0.5 * (low + high))
    }
    pub(crate) fn saturation(self, pa: f32) -> Option<Saturation> {
        let p = Pressure::from_pascals(pa);
        let vapor = self.0.saturated_vapor(p).ok()?;
        let liquid = self.0.saturated_liquid(p).ok()?;
        Some(Saturation {
            bubble_k: self.bubble_k(pa)?,
            dew_k: self.dew_k(pa)?,
            h_liquid: liquid.enthalpy.joules_per_kg(),
            h_vapor: vapor.enthalpy.joules_per_kg(),
            rho_liquid: liquid.density.kg_per_m3(),
            rho_vapor: vapor.density.kg_per_m3(),
        })
    }
    pub(crate) fn vapor(self, pa: f32, k: f32) -> Option<State> {
        self.0.vapor(Pressure::from_pascals(pa), Temperature::from_kelvins(k)).ok()
    }
    pub(crate) fn liquid_h(self, pa: f32, k: f32) -> Option<f32> {
        let state = self.0.liquid(Pressure::from_pascals(pa), Temperature::from_kelvins(k)).ok()?;
        Some(state.enthalpy.joules_per_kg())
    }
    pub(crate) fn vapor_k_at_h(self, pa: f32, h: f32) -> Option<f32> {
        let p = Pressure::from_pascals(pa);
        self.0
            .vapor_temperature_at_enthalpy(p, Enthalpy::from_joules_per_kg(h))
            .ok()
            .map(Temperature::kelvins)
    }
    pub(crate) fn vapor_k_at_s(self, pa: f32, s: f32) -> Option<f32> {
        let p = Pressure::from_pascals(pa);
        self.0
            .vapor_temperature_at_entropy(p, Entropy::from_joules_per_kg_k(s))
            .ok()
            .map(Temperature::kelvins)
    }
}
