//! The data files: equations of state, binary pairs, blends, each with the paper it came from.

use crate::ideal::Ideal;
use crate::term::Residual;
use serde::Deserialize;
use std::collections::BTreeMap;
use std::path::Path;

/// A temperature and a molar density.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Reducing {
    /// Temperature, K.
    pub t_k: f64,
    /// Molar density, mol/m3.
    pub rho_mol_m3: f64,
}

/// A critical point.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Critical {
    /// Temperature, K.
    pub t_k: f64,
    /// Pressure, Pa.
    pub p_pa: f64,
    /// Molar density, mol/m3.
    pub rho_mol_m3: f64,
}

/// The published limits of an equation.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Limits {
    /// Lowest temperature, K.
    pub t_min_k: f64,
    /// Highest temperature, K.
    pub t_max_k: f64,
    /// Highest pressure, Pa.
    pub p_max_pa: f64,
}

/// An ancillary saturation pressure: p = p_r exp(T_r/T sum n (1 - T/T_r)^t).
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Ancillary {
    /// Reducing temperature, K.
    pub t_k: f64,
    /// Reducing pressure, Pa.
    pub p_pa: f64,
    /// n and t of each term.
    pub terms: Vec<[f64; 2]>,
}

impl Ancillary {
    /// Evaluates the pressure at a temperature.
    pub fn pressure(&self, t: f64) -> f64 {
        let theta = 1.0 - t / self.t_k;
        let sum: f64 = self.terms.iter().map(|[n, e]| n * libm::pow(theta, *e)).sum();
        self.p_pa * libm::exp(self.t_k / t * sum)
    }
}

/// One equation of state: a pure fluid, or a blend taken as one (pseudo-pure).
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Fluid {
    /// Designation, such as `R134a`.
    pub designation: String,
    /// Common names.
    #[serde(default)]
    pub names: Vec<String>,
    /// The paper the equation comes from.
    pub source: String,
    /// Safety class of ASHRAE Standard 34.
    #[serde(default)]
    pub safety_class: Option<String>,
    /// Molar mass, g/mol.
    pub molar_mass_g_mol: f64,
    /// Gas constant the equation was made with, J/(mol K).
    pub gas_constant: f64,
    /// Reducing point.
    pub reducing: Reducing,
    /// Critical point.
    pub critical: Critical,
    /// Published limits.
    pub limits: Limits,
    /// Acentric factor.
    pub acentric: f64,
    /// Bubble pressure of a pseudo-pure equation.
    #[serde(default)]
    pub bubble_pressure: Option<Ancillary>,
    /// Dew pressure of a pseudo-pure equation.
    #[serde(default)]
    pub dew_pressure: Option<Ancillary>,
    /// Ideal-gas part.
    pub ideal: Ideal,
    /// Residual part.
    pub residual: Residual,
}

/// The parameters of a binary pair.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Pair {
    /// The two designations; the order matters to the beta parameters.
    pub pair: [String; 2],
    /// xi (K) and zeta (m3/mol) of Lemmon and Jacobsen.
    #[serde(default)]
    pub lemmon: Option<[f64; 2]>,
    /// beta_T, gamma_T, beta_v, gamma_v of the GERG form.
    #[serde(default)]
    pub gerg: Option<[f64; 4]>,
    /// Weight and name of the departure function.
    #[serde(default)]
    pub departure: Option<(f64, String)>,
    /// Key of the source.
    pub source: String,
}

/// A departure function and its source.
#[derive(Clone, Debug, Deserialize)]
pub struct Departure {
    /// Key of the source.
    pub source: String,
    /// Its terms.
    #[serde(flatten)]
    pub residual: Residual,
}

/// All binary pairs.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Pairs {
    /// The papers by key.
    pub sources: BTreeMap<String, String>,
    /// Departure functions by name.
    pub departures: BTreeMap<String, Departure>,
    /// The pairs.
    pub pairs: Vec<Pair>,
}

/// A blend: its designation and its composition.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Blend {
    /// Designation, such as `R404A`.
    pub designation: String,
    /// Mass percent by component, in the order of the standard.
    pub mass_percent: serde_json::Map<String, serde_json::Value>,
    /// Safety class of ASHRAE Standard 34.
    #[serde(default)]
    pub safety_class: Option<String>,
    /// Where the class comes from.
    #[serde(default)]
    pub class_source: Option<String>,
    /// Where the composition comes from.
    #[serde(default)]
    pub composition_source: Option<String>,
}

/// Everything the compiler reads.
#[derive(Clone, Debug)]
pub struct Library {
    /// Pure fluids, in the order of their designations.
    pub fluids: Vec<Fluid>,
    /// Pseudo-pure equations.
    pub pseudo_pure: Vec<Fluid>,
    /// Binary pairs.
    pub pairs: Pairs,
    /// Blends.
    pub blends: Vec<Blend>,
}

fn read<T: for<'d> Deserialize<'d>>(path: &Path) -> Result<T, String> {
    let text = std::fs::read_to_string(path).map_err(|e| format!("{}: {e}", path.display()))?;
    serde_json::from_str(&text).map_err(|e| format!("{}: {e}", path.display()))
}

fn folder(path: &Path) -> Result<Vec<Fluid>, String> {
    let mut files: Vec<_> = std::fs::read_dir(path)
        .map_err(|e| format!("{}: {e}", path.display()))?
        .filter_map(|entry| entry.ok().map(|e| e.path()))
        .filter(|p| p.extension().is_some_and(|e| e == "json"))
        .collect();
    files.sort();
    files.iter().map(|p| read(p)).collect()
}

impl Library {
    /// Reads the data folder.
    pub fn read(data: &Path) -> Result<Self, String> {
        Ok(Self {
            fluids: folder(&data.join("fluids"))?,
            pseudo_pure: folder(&data.join("pseudo_pure"))?,
            pairs: read(&data.join("pairs.json"))?,
            blends: read(&data.join("blends.json"))?,
        })
    }
    /// Finds a pure fluid by its designation.
    pub fn fluid(&self, designation: &str) -> Option<&Fluid> {
        self.fluids.iter().find(|f| f.designation == designation)
    }
}
