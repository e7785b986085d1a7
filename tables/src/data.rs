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

/// How the parameters of a pair without published ones were estimated.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Estimate {
    /// Taken over from a pair of like molecules whose parameters are published.
    Homologue,
    /// Fitted to published bubble and dew points of blends.
    Fitted,
    /// Means of the components' reducing temperatures and volumes.
    CombiningRule,
}

impl Estimate {
    /// Names the estimate as reports print it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Homologue => "homologue",
            Self::Fitted => "fitted",
            Self::CombiningRule => "combining rule",
        }
    }
}

/// Pairs of like molecules without published parameters, and what stands for them.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Family {
    /// The pairs.
    pub pairs: Vec<[String; 2]>,
    /// The pair whose published parameters stand for them, in the same order of like molecules.
    #[serde(default)]
    pub homologue: Option<[String; 2]>,
    /// Name of the fit whose gamma_T (with beta 1 and gamma_v 1) stands for them; its value is in `fitted.json`.
    #[serde(default)]
    pub fit: Option<String>,
    /// Value of gamma_T from which the fit starts and towards which it leans.
    #[serde(default)]
    pub start: Option<f64>,
    /// Blends whose published points the fit is made to.
    #[serde(default)]
    pub fitted_to: Vec<String>,
    /// Why these molecules are like those.
    pub why: String,
}

/// What the fit of pairs found; written by the program.
#[derive(Clone, Debug, Default, Deserialize, serde::Serialize)]
#[serde(deny_unknown_fields)]
pub struct FitResult {
    /// What wrote the file.
    pub written_by: String,
    /// gamma_T by the name of the fit.
    pub gamma_t: BTreeMap<String, f64>,
    /// Bubble and dew errors at one atmosphere, K, of blends predicted without their own published points.
    pub left_out: BTreeMap<String, [f64; 2]>,
}

/// A bubble and a dew point that somebody else publishes, at one standard atmosphere.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PublishedPoint {
    /// Designation.
    pub refrigerant: String,
    /// Bubble temperature (boiling point of a pure fluid or an azeotrope), degC.
    pub bubble_c: f64,
    /// Dew temperature, degC; none for a pure fluid or an azeotrope with one boiling point.
    #[serde(default)]
    pub dew_c: Option<f64>,
    /// Half of the last printed digit, K.
    pub rounding_k: f64,
    /// Key of the source.
    pub source: String,
}

/// All published points.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Published {
    /// What each key of a source means.
    pub sources: BTreeMap<String, String>,
    /// The points.
    pub points: Vec<PublishedPoint>,
    /// What is known of differences beyond 0.5 K, by designation.
    pub reasons: BTreeMap<String, String>,
    /// Refrigerants whose first point is known to be wrong.
    pub set_aside: Vec<String>,
}

/// A substance's effect on climate and ozone: values with the keys of their sources.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Substances {
    /// GWP over 100 years, fifth assessment report.
    pub gwp_ar5: Option<(f64, String)>,
    /// GWP over 100 years, sixth assessment report.
    pub gwp_ar6: Option<(f64, String)>,
    /// Ozone depletion potential.
    pub odp: Option<(f64, String)>,
    /// Atmospheric life, years.
    pub life_years: Option<(f64, String)>,
}

/// Effects on climate and ozone of pure substances.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Environment {
    /// What each key of a source means.
    pub sources: BTreeMap<String, String>,
    /// The substances by designation.
    pub substances: BTreeMap<String, Substances>,
}

/// Uncertainty of vapor pressures.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct VaporPressure {
    /// Where the values come from.
    pub source: String,
    /// Twice the standard uncertainty, %, by designation.
    pub percent: BTreeMap<String, f64>,
    /// What models of mixtures state whose pairs were fitted to measured equilibria one by one.
    pub mixtures: MixtureStatement,
}

/// What models of mixtures state of their saturation pressures.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MixtureStatement {
    /// Twice the standard uncertainty, %.
    pub percent: f64,
    /// Keys of the sources of the pairs that it is stated for.
    pub pairs_from: Vec<String>,
    /// Where the value comes from.
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
    /// Pairs without published parameters that have something better than the combining rule.
    pub estimated: Vec<Family>,
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
    /// Factor on gamma_T of every estimated pair: 1 but for a blend that measured points tune.
    pub tuning: f64,
    /// What the fit of estimated pairs found.
    pub fitted: FitResult,
    /// Bubble and dew points that others publish.
    pub published: Published,
    /// Effects on climate and ozone.
    pub environment: Environment,
    /// Uncertainty of vapor pressures.
    pub vapor_pressure: VaporPressure,
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
            tuning: 1.0,
            fitted: read(&data.join("fitted.json"))?,
            published: read(&data.join("published.json"))?,
            environment: read(&data.join("environment.json"))?,
            vapor_pressure: read(&data.join("vapor_pressure.json"))?,
        })
    }
    /// Finds a pure fluid by its designation.
    pub fn fluid(&self, designation: &str) -> Option<&Fluid> {
        self.fluids.iter().find(|f| f.designation == designation)
    }
}
