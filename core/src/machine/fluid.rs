//! The refrigerant's properties as plain SI numbers, for the model's inner loop.

use core::cell::Cell;

use crate::quantity::{Enthalpy, Entropy, Pressure, Temperature};
use crate::refrigerant::{Refrigerant, State};

/// A refrigerant read in pascal, kelvin, J/kg and kg/m3; `None` outside its table.
#[derive(Clone, Copy)]
pub(crate) struct Fluid<'a>(pub(crate) &'a Refrigerant<'a>, &'a Memo);

/// Saturation states kept: about as many as the trials around one balance ask for again.
const KEPT: usize = 16;
/// Mean temperatures kept.
const KEPT_MIDDLES: usize = 8;

/// What was read from one refrigerant's table a short while ago: a model in its balance asks for the same pressures again
/// and again.
pub(crate) struct Memo {
    /// By pressure, each at the place that its bits say.
    saturations: [Cell<(f32, Saturation)>; KEPT],
    /// The pressures of mean temperatures, likewise.
    middles: [Cell<(f32, f32)>; KEPT_MIDDLES],
}

impl Memo {
    /// Nothing read yet: nothing equals what is not a number.
    pub(crate) fn new() -> Self {
        Self {
            saturations: core::array::from_fn(|_| Cell::new((f32::NAN, Saturation::NONE))),
            middles: core::array::from_fn(|_| Cell::new((f32::NAN, 0.0))),
        }
    }

    fn saturation(&self, pa: f32) -> Option<&Cell<(f32, Saturation)>> {
        self.saturations.get(place(pa) % KEPT)
    }
    fn middle(&self, k: f32) -> Option<&Cell<(f32, f32)>> {
        self.middles.get(place(k) % KEPT_MIDDLES)
    }
}

/// Where a number is kept: neighbours differ in the low bits, others in the high ones.
fn place(number: f32) -> usize {
    let bits = number.to_bits();
    (bits ^ (bits >> 7) ^ (bits >> 15)) as usize
}

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
    const NONE: Self =
        Self { bubble_k: 0.0, dew_k: 0.0, h_liquid: 0.0, h_vapor: 0.0, rho_liquid: 0.0, rho_vapor: 0.0 };

    pub(crate) fn middle_k(&self) -> f32 {
        0.5 * (self.bubble_k + self.dew_k)
    }
    pub(crate) fn latent(&self) -> f32 {
        self.h_vapor - self.h_liquid
    }
}

impl<'a> Fluid<'a> {
    /// Reads a refrigerant; the memo is of this refrigerant alone.
    pub(crate) fn new(refrigerant: &'a Refrigerant<'a>, memo: &'a Memo) -> Self {
        Self(refrigerant, memo)
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
        let place = self.1.middle(k)?;
        let (known_k, known_pa) = place.get();
        if known_k == k {
            return Some(known_pa);
        }
        let (mut low, mut high) = (self.dew_pa(k)?, self.bubble_pa(k)?);
        for _ in 0..12 {
            let p = 0.5 * (low + high);
            if self.middle_k(p)? < k { low = p } else { high = p }
        }
        let pa = 0.5 * (low + high);
        place.set((k, pa));
        Some(pa)
    }
    pub(crate) fn saturation(self, pa: f32) -> Option<Saturation> {
        let place = self.1.saturation(pa)?;
        let (known_pa, known) = place.get();
        if known_pa == pa {
            return Some(known);
        }
        let (vapor_k, vapor, liquid_k, liquid) = self.0.saturated(Pressure::from_pascals(pa)).ok()?;
        let read = Saturation {
            bubble_k: liquid_k.kelvins(),
            dew_k: vapor_k.kelvins(),
            h_liquid: liquid.enthalpy.joules_per_kg(),
            h_vapor: vapor.enthalpy.joules_per_kg(),
            rho_liquid: liquid.density.kg_per_m3(),
            rho_vapor: vapor.density.kg_per_m3(),
        };
        place.set((pa, read));
        Some(read)
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
