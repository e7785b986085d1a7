//! One refrigerant as the compiler sees it: composition, model, saturation boundary and reference state.

use crate::data::{Ancillary, Blend, Fluid, Library};
use crate::mixture::Mixture;
use crate::saturation::{Boundary, Kind, Specification};
use libm::{exp, log};

/// Coldest saturation temperature tabled, K, unless an equation ends above it.
pub const COLDEST: f64 = 200.0;
/// Critical temperature below which a fluid's table begins at half of that, K.
const COLD_FLUID: f64 = 250.0;
/// Distance from the critical temperature at which the tables end, K.
pub const BELOW_CRITICAL: f64 = 2.0;
/// Distance from the critical temperature of a pure fluid's equation, where it is not the stated one, K.
const NEAREST_OWN_CRITICAL: f64 = 1.5;

/// A saturated state of the bulk composition.
#[derive(Clone, Copy, Debug)]
pub struct Saturated {
    /// Temperature, K.
    pub t: f64,
    /// Pressure, Pa.
    pub p: f64,
    /// Molar density, mol/m3.
    pub rho: f64,
}

/// A single-phase state, by mass, on the reference state of the refrigerant.
#[derive(Clone, Copy, Debug)]
pub struct State {
    /// Pressure, Pa.
    pub p: f64,
    /// Density, kg/m3.
    pub density: f64,
    /// Enthalpy, J/kg.
    pub h: f64,
    /// Entropy, J/(kg K).
    pub s: f64,
    /// Isobaric heat capacity, J/(kg K).
    pub cp: f64,
    /// Isochoric heat capacity, J/(kg K).
    pub cv: f64,
    /// Speed of sound, m/s.
    pub w: f64,
}

/// How the saturation boundary is known.
#[derive(Clone, Debug)]
enum Model {
    /// Phase equilibrium of the model itself.
    Equilibrium(Box<Boundary>),
    /// A pseudo-pure equation with its two pressure correlations.
    Ancillary { bubble: Ancillary, dew: Ancillary },
}

/// One refrigerant.
#[derive(Clone, Debug)]
pub struct Substance {
    /// Designation.
    pub designation: String,
    /// Common names.
    pub names: Vec<String>,
    /// Components and mass fractions.
    pub components: Vec<(String, f64)>,
    /// Safety class.
    pub safety_class: Option<String>,
    /// Where the class comes from.
    pub class_source: Option<String>,
    /// The model.
    pub mixture: Mixture,
    /// Mole fractions.
    pub z: Vec<f64>,
    /// Molar mass, kg/mol.
    pub molar_mass: f64,
    /// Critical temperature, K.
    pub t_critical: f64,
    /// Critical pressure, Pa.
    pub p_critical: f64,
    /// Lowest saturation temperature, K.
    pub t_min: f64,
    /// Highest saturation temperature, K.
    pub t_max: f64,
    /// Published upper limit of the equations, K.
    pub t_limit: f64,
    /// Where the reference state is: IIR, or the normal boiling point.
    pub reference: &'static str,
    model: Model,
    reducing: (f64, f64),
    h_offset: f64,
    s_offset: f64,
}

impl Substance {
    /// Makes a pure fluid.
    pub fn pure(fluid: &Fluid) -> Result<Self, String> {
        let mixture = Mixture::pure(fluid);
        let coldest = if fluid.critical.t_k < COLD_FLUID { 0.5 * fluid.critical.t_k } else { COLDEST };
        let t_min = coldest.max(fluid.limits.t_min_k);
        let boundary = Boundary::trace(&mixture, &[1.0], t_min)?;
        // Some old equations do not meet their stated critical point; near their own, saturation bends too sharply.
        let t_max = (fluid.critical.t_k - BELOW_CRITICAL).min(boundary.t_critical - NEAREST_OWN_CRITICAL);
        Self {
            designation: fluid.designation.clone(),
            names: fluid.names.clone(),
            components: vec![(fluid.designation.clone(), 1.0)],
            safety_class: fluid.safety_class.clone(),
            class_source: None,
            molar_mass: fluid.molar_mass_g_mol * 1e-3,
            t_critical: fluid.critical.t_k,
            p_critical: fluid.critical.p_pa,
            t_min,
            t_max,
            t_limit: fluid.limits.t_max_k,
            reducing: mixture.reducing(&[1.0]),
            mixture,
            z: vec![1.0],
            model: Model::Equilibrium(Box::new(boundary)),
            reference: "",
            h_offset: 0.0,
            s_offset: 0.0,
        }
        .with_reference()
    }

    /// Makes a blend by the multi-fluid model.
    pub fn blend(library: &Library, blend: &Blend) -> Result<Self, String> {
        let names: Vec<&str> = blend.mass_percent.keys().map(String::as_str).collect();
        let mixture = Mixture::blend(library, &names)?;
        let (z, molar_mass) = mole_fractions(blend, &mixture)?;
        let percent: Vec<f64> = blend.mass_percent.values().map(|v| v.as_f64().unwrap_or(f64::NAN)).collect();
        // The lower limit of a mixture: the mole-weighted mean of its components' limits.
        let low: f64 = z.iter().zip(&mixture.fluids).map(|(z, f)| z * f.limits.t_min_k).sum();
        let high: f64 = z.iter().zip(&mixture.fluids).map(|(z, f)| z * f.limits.t_max_k).sum();
        let t_min = COLDEST.max(low);
        let boundary = Boundary::trace(&mixture, &z, t_min)?;
        Self {
            designation: blend.designation.clone(),
            names: Vec::new(),
            components: names
                .iter()
                .map(|n| (*n).to_string())
                .zip(percent.iter().map(|p| p / 100.0))
                .collect(),
            safety_class: blend.safety_class.clone(),
            class_source: blend.class_source.clone(),
            molar_mass,
            t_critical: boundary.t_critical,
            p_critical: boundary.p_critical,
            t_min,
            t_max: (boundary.t_critical - BELOW_CRITICAL).min(boundary.regular_to()),
            t_limit: high,
            reducing: mixture.reducing(&z),
            mixture,
            z,
            model: Model::Equilibrium(Box::new(boundary)),
            reference: "",
            h_offset: 0.0,
            s_offset: 0.0,
        }
        .with_reference()
    }

    /// Makes a blend by its pseudo-pure equation, with the composition and class of its entry among the blends.
    pub fn pseudo_pure(fluid: &Fluid, blend: &Blend) -> Result<Self, String> {
        let (Some(bubble), Some(dew)) = (fluid.bubble_pressure.clone(), fluid.dew_pressure.clone()) else {
            return Err(format!(
                "{}: a pseudo-pure equation needs its pressure correlations",
                fluid.designation
            ));
        };
        let mixture = Mixture::pure(fluid);
        Self {
            designation: blend.designation.clone(),
            names: Vec::new(),
            components: blend
                .mass_percent
                .iter()
                .map(|(n, p)| (n.clone(), p.as_f64().unwrap_or(f64::NAN) / 100.0))
                .collect(),
            safety_class: blend.safety_class.clone(),
            class_source: blend.class_source.clone(),
            molar_mass: fluid.molar_mass_g_mol * 1e-3,
            t_critical: fluid.critical.t_k,
            p_critical: fluid.critical.p_pa,
            t_min: COLDEST.max(fluid.limits.t_min_k),
            t_max: fluid.critical.t_k - BELOW_CRITICAL,
            t_limit: fluid.limits.t_max_k,
            reducing: mixture.reducing(&[1.0]),
            mixture,
            z: vec![1.0],
            model: Model::Ancillary { bubble, dew },
            reference: "",
            h_offset: 0.0,
            s_offset: 0.0,
        }
        .with_reference()
    }

    /// Sets the reference state: IIR, or the normal boiling point where there is no liquid at 0 degC.
    fn with_reference(mut self) -> Result<Self, String> {
        let (name, specification, h, s) = if self.t_max > 273.15 && self.t_min < 273.2 {
            ("IIR", Specification::Temperature(273.15), 200e3, 1000.0)
        } else {
            ("normal boiling point", Specification::Pressure(101_325.0), 0.0, 0.0)
        };
        let liquid = self
            .saturated(Kind::Bubble, specification)
            .ok_or("no saturated liquid for the reference state")?;
        let state = self.state(liquid.t, liquid.rho);
        self.h_offset = h - state.h;
        self.s_offset = s - state.s;
        self.reference = name;
        Ok(self)
    }

    /// Tells whether the two curves are one: a single component.
    pub fn is_pure(&self) -> bool {
        self.components.len() == 1
    }
    /// The reducing temperature (K) and density (mol/m3).
    pub fn reducing(&self) -> (f64, f64) {
        self.reducing
    }
    /// The saturation boundary, where the model gives one.
    pub fn boundary(&self) -> Option<&Boundary> {
        match &self.model {
            Model::Equilibrium(boundary) => Some(boundary),
            Model::Ancillary { .. } => None,
        }
    }

    /// Finds a saturated state.
    pub fn saturated(&self, kind: Kind, specification: Specification) -> Option<Saturated> {
        match &self.model {
            Model::Equilibrium(boundary) => {
                let branch = match kind {
                    Kind::Bubble => &boundary.bubble,
                    Kind::Dew => &boundary.dew,
                };
                let point = branch.at(&self.mixture, &self.z, specification)?;
                Some(Saturated { t: point.t, p: point.p, rho: point.bulk })
            }
            Model::Ancillary { bubble, dew } => {
                let curve = if kind == Kind::Bubble { bubble } else { dew };
                let t = match specification {
                    Specification::Temperature(t) => t,
                    Specification::Ratio(_) => return None,
                    Specification::Pressure(p) => {
                        let (mut low, mut high) = (0.5 * curve.t_k, curve.t_k - 1e-6);
                        for _ in 0..60 {
                            let middle = 0.5 * (low + high);
                            if curve.pressure(middle) < p {
                                low = middle;
                            } else {
                                high = middle;
                            }
                        }
                        0.5 * (low + high)
                    }
                };
                let p = curve.pressure(t);
                let guess = match kind {
                    Kind::Dew => p / (self.mixture.gas_constant * t),
                    // The form of Rackett, a little compressed, puts a liquid on the safe side of the root.
                    Kind::Bubble => {
                        self.reducing.1
                            * exp(1.42 * libm::pow((1.0 - t / self.t_critical).max(0.0), 2.0 / 7.0))
                    }
                };
                let rho = self.density(t, p, guess)?;
                Some(Saturated { t, p, rho })
            }
        }
    }

    /// Finds the molar density at a temperature and pressure, from a guess in the same phase.
    pub fn density(&self, t: f64, p: f64, guess: f64) -> Option<f64> {
        let (tr, rho_r) = self.reducing;
        let target = p / (self.mixture.gas_constant * t);
        let mut y = log(guess);
        for _ in 0..60 {
            let rho = exp(y);
            let r = self.mixture.residual(&self.z, tr / t, rho / rho_r);
            let slope = 1.0 + 2.0 * r.d + r.dd;
            if slope <= 0.02 {
                // Between the spinodals: away from the middle, towards the guess's own phase.
                y += if guess > rho_r { 0.03 } else { -0.03 };
                continue;
            }
            let step = ((target / rho - 1.0 - r.d) / slope).clamp(-0.1, 0.1);
            y += step;
            if step.abs() < 1e-13 {
                break;
            }
        }
        let rho = exp(y);
        let r = self.mixture.residual(&self.z, tr / t, rho / rho_r);
        let stable = 1.0 + 2.0 * r.d + r.dd > 1e-4;
        (stable && (rho * (1.0 + r.d) - target).abs() < 1e-8 * target.max(1e-3 * rho)).then_some(rho)
    }

    /// Evaluates the properties at a temperature and molar density.
    pub fn state(&self, t: f64, rho: f64) -> State {
        let (tr, rho_r) = self.reducing;
        let r = self.mixture.residual(&self.z, tr / t, rho / rho_r);
        let ideal = self.mixture.ideal(&self.z, t);
        let gas = self.mixture.gas_constant / self.molar_mass;
        let cv = -(ideal[2] + r.tt);
        let turn = 1.0 + r.d - r.dt;
        let stiffness = 1.0 + 2.0 * r.d + r.dd;
        let cp = cv + turn * turn / stiffness;
        State {
            p: rho * self.mixture.gas_constant * t * (1.0 + r.d),
            density: rho * self.molar_mass,
            h: gas * t * (1.0 + ideal[1] + r.t + r.d) + self.h_offset,
            s: gas * (ideal[1] + r.t - ideal[0] - log(rho) - r.a) + self.s_offset,
            cp: gas * cp,
            cv: gas * cv,
            w: libm::sqrt((gas * t * stiffness * cp / cv).max(0.0)),
        }
    }

    /// Puts an enthalpy and an entropy of the model on the reference state.
    pub fn on_reference(&self, h: f64, s: f64) -> (f64, f64) {
        (h + self.h_offset, s + self.s_offset)
    }

    /// Evaluates the ideal-gas polynomial's target: Q and tau dQ/dtau at a temperature, reference state included.
    ///
    /// a/(R T) = ln(rho/rho_r) + Q + a_r.
    pub fn ideal_target(&self, t: f64) -> [f64; 2] {
        let ideal = self.mixture.ideal(&self.z, t);
        let gas = self.mixture.gas_constant / self.molar_mass;
        let h = self.h_offset / (gas * t);
        [ideal[0] + log(self.reducing.1) + h - self.s_offset / gas, ideal[1] + h]
    }
}

/// Finds the mole fractions of a blend and its molar mass, kg/mol.
pub fn mole_fractions(blend: &Blend, mixture: &Mixture) -> Result<(Vec<f64>, f64), String> {
    let percent: Vec<f64> = blend.mass_percent.values().map(|v| v.as_f64().unwrap_or(f64::NAN)).collect();
    let total: f64 = percent.iter().sum();
    if (total - 100.0).abs() > 1e-6 {
        return Err(format!("{}: the composition sums to {total} %", blend.designation));
    }
    let moles: Vec<f64> =
        percent.iter().zip(&mixture.fluids).map(|(w, f)| w / 100.0 / f.molar_mass_g_mol * 1e3).collect();
    let sum: f64 = moles.iter().sum();
    Ok((moles.iter().map(|m| m / sum).collect(), 1.0 / sum))
}
