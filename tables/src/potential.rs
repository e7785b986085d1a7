//! Fits the potentials of a table to a substance, each phase's as a whole.

use crate::level::{Level, crowded, level};
use crate::linear::minimax;
use crate::saturation::{Kind, Specification};
use crate::substance::{BELOW_CRITICAL, Substance};
use libm::{exp, log};
use rimewise::refrigerant::table::{
    GUESS_ROWS, GUESS_TERMS, IDEAL_TERMS, LIQUID_ROWS, LIQUID_TERMS, START_TERMS, VAPOR_ROWS, VAPOR_TERMS,
};

/// Relative error of the liquid's stiffness, dp/drho, that weighs as much as the error allowed of a property.
///
/// Pressure hardly moves along saturated liquid, so that density, enthalpy and entropy alone leave its slope open; the
/// solution for density at a pressure needs it.
const STIFFNESS_ERROR: f64 = 0.5;

/// The fitted potentials.
#[derive(Clone, Debug)]
pub struct Potentials {
    /// Middle of the temperatures, K.
    pub t_center: f64,
    /// Middle of the inverse reduced temperature.
    pub tau_center: f64,
    /// Middle of the liquid's reduced density.
    pub liquid_center: f64,
    /// The vapor's row that does not depend on density.
    pub ideal: [f64; IDEAL_TERMS],
    /// The vapor's other rows.
    pub vapor: [f64; VAPOR_TERMS],
    /// Liquid.
    pub liquid: [f64; LIQUID_TERMS],
    /// Start of the liquid density.
    pub start: [f64; START_TERMS],
    /// Guess of the vapor's temperature from enthalpy: middle and polynomial.
    pub enthalpy_guess: (f64, [f64; GUESS_TERMS]),
    /// Guess of the vapor's temperature from entropy: middle and polynomial.
    pub entropy_guess: (f64, [f64; GUESS_TERMS]),
}

/// The temperatures that the potentials count from.
#[derive(Clone, Copy)]
struct Centers {
    /// K.
    middle: f64,
    /// Middle of the inverse reduced temperature.
    tau: f64,
}

impl Centers {
    fn tau(self, t: f64) -> f64 {
        self.middle / t
    }
    fn place(self, t: f64) -> f64 {
        self.tau(t) - self.tau
    }
}

/// What a basis function gives at a point.
struct Term {
    value: f64,
    /// Derivative in density.
    slope: f64,
    /// Second derivative in density.
    bend: f64,
    /// Derivative in t.
    warm: f64,
}

/// Evaluates the products of a power of x, from the first power on, and the powers of t up to the row's degree.
fn basis(degrees: &[usize], t: f64, x: f64) -> Vec<Term> {
    let mut out = Vec::new();
    for (power, degree) in degrees.iter().enumerate() {
        let power = power as i32;
        let value = whole_power(x, power);
        let slope = f64::from(power) * whole_power(x, power - 1);
        let bend = f64::from(power * (power - 1)) * whole_power(x, power - 2);
        for j in 0..=*degree as i32 {
            let u = whole_power(t, j);
            let u_t = f64::from(j) * whole_power(t, j - 1);
            out.push(Term { value: value * u, slope: slope * u, bend: bend * u, warm: value * u_t });
        }
    }
    out
}

/// A state to fit: the saturation level it belongs to, its temperature and density, and its weight.
struct Point<'s> {
    substance: &'s Substance,
    level: Level,
    t: f64,
    rho: f64,
    weight: f64,
}

/// One row per property: the first-order errors at fixed pressure and temperature, in units of the error allowed.
#[derive(Default)]
struct Fit {
    rows: Vec<Vec<f64>>,
    target: Vec<f64>,
}

impl Fit {
    /// Adds density, enthalpy and entropy of a point; `known` is what of the potential and d times its slope is not fitted.
    fn add(&mut self, centers: Centers, point: &Point<'_>, known: [f64; 2], basis: &[Term]) {
        let Point { substance, level, t, rho, weight } = point;
        let (tr, rho_r) = substance.reducing();
        let delta = rho / rho_r;
        let r = substance.mixture.residual(&substance.z, tr / t, delta);
        let gas = substance.mixture.gas_constant / substance.molar_mass;
        // dp/drho over R T, and the density derivatives of h/(R T) and s/R times density.
        let slope = 1.0 + 2.0 * r.d + r.dd;
        let h_slope = r.d + r.dd + r.dt;
        let s_slope = -1.0 - r.d + r.dt;
        let (uh, us) = (gas * t / (1e-3 * level.latent_heat), gas / (1e-3 * level.latent_entropy));
        // From (A, d A_d, tau A_t): relative density error, enthalpy and entropy errors at fixed p, T.
        let errors = |a: f64, d: f64, t: f64| {
            let density = -d / slope;
            [
                weight * density / 1e-3,
                weight * uh * (d + t + h_slope * density),
                weight * us * (t - a + s_slope * density),
            ]
        };
        let columns: Vec<[f64; 3]> =
            basis.iter().map(|b| errors(b.value, delta * b.slope, centers.tau(*t) * b.warm)).collect();
        let [q, q_tau] = substance.ideal_target(*t);
        let wanted = errors(log(delta) + q + r.a - known[0], 1.0 + r.d - known[1], q_tau + r.t);
        for k in 0..3 {
            self.rows.push(columns.iter().map(|c| c[k]).collect());
            self.target.push(wanted[k]);
        }
    }

    /// Adds the stiffness of a point whose potential is fitted whole.
    fn stiffen(&mut self, point: &Point<'_>, basis: &[Term]) {
        let (tr, rho_r) = point.substance.reducing();
        let delta = point.rho / rho_r;
        let r = point.substance.mixture.residual(&point.substance.z, tr / point.t, delta);
        let allowed = STIFFNESS_ERROR * (1.0 + 2.0 * r.d + r.dd);
        self.rows.push(basis.iter().map(|b| delta * (2.0 * b.slope + delta * b.bend) / allowed).collect());
        self.target.push(1.0 / STIFFNESS_ERROR);
    }

    fn solve(&self) -> Vec<f64> {
        minimax(&self.rows, &self.target, 16)
    }
}

/// Fits the temperature over enthalpy (0) or entropy (1) and dew temperature.
fn guess(vapors: &[[f64; 4]], which: usize) -> (f64, [f64; GUESS_TERMS]) {
    let low = vapors.iter().map(|v| v[which]).fold(f64::INFINITY, f64::min);
    let high = vapors.iter().map(|v| v[which]).fold(f64::NEG_INFINITY, f64::max);
    let middle = 0.5 * (low + high);
    let rows: Vec<Vec<f64>> = vapors
        .iter()
        .map(|v| basis(&GUESS_ROWS, v[2], v[which] - middle).iter().map(|b| b.value).collect())
        .collect();
    let target: Vec<f64> = vapors.iter().map(|v| v[3]).collect();
    (middle, fixed(&minimax(&rows, &target, 10)))
}

/// Orders coefficients given row by row as the format has them: power by power of t, from the highest down.
fn by_power(degrees: &[usize], rows: &[f64]) -> Vec<f64> {
    let starts: Vec<usize> =
        degrees.iter().scan(0, |at, degree| Some(std::mem::replace(at, *at + degree + 1))).collect();
    let highest = degrees.iter().max().copied().unwrap_or(0);
    let mut out = Vec::new();
    for power in (0..=highest).rev() {
        for (start, degree) in starts.iter().zip(degrees) {
            if power <= *degree {
                out.push(rows[start + power]);
            }
        }
    }
    out
}

/// Raises to a whole power; a negative one, which only ever meets a factor 0, gives 1.
fn whole_power(x: f64, n: i32) -> f64 {
    (0..n).fold(1.0, |p, _| p * x)
}

/// Makes an array of a fit's coefficients.
fn fixed<const N: usize>(v: &[f64]) -> [f64; N] {
    core::array::from_fn(|i| v.get(i).copied().unwrap_or(0.0))
}

/// Fits the potentials of both phases.
pub fn potentials(substance: &Substance) -> Result<Potentials, String> {
    let (_, rho_r) = substance.reducing();
    let hottest = substance.t_max + 130.0;
    let t_center = libm::sqrt(substance.t_min * hottest);
    let tau_center = 0.5 * (t_center / substance.t_min + t_center / hottest);
    let centers = Centers { middle: t_center, tau: tau_center };
    let critical = substance.t_max + BELOW_CRITICAL;
    let temperatures = crowded(substance.t_min, substance.t_max, critical, 26, 0.0);

    let vapor_rows: Vec<usize> = [IDEAL_TERMS - 1].into_iter().chain(VAPOR_ROWS).collect();
    let (mut vapor, mut liquid) = (Fit::default(), Fit::default());
    let (mut start_rows, mut start_target) = (Vec::new(), Vec::new());
    // h/(R M), s/R + ln(share of the highest pressure), T_dew/M - 1, T/M.
    let mut vapors: Vec<[f64; 4]> = Vec::new();
    let gas = substance.mixture.gas_constant / substance.molar_mass;
    let highest = substance
        .saturated(Kind::Dew, Specification::Temperature(substance.t_max))
        .ok_or("no dew point at the highest temperature")?
        .p;
    let densest = substance
        .saturated(Kind::Bubble, Specification::Temperature(substance.t_min))
        .ok_or("no liquid at the lowest temperature")?
        .rho
        / rho_r;
    let liquid_center = 0.5 * (densest + 1.5);
    for t_sat in temperatures {
        let near = if critical - t_sat < 7.9 { 0.3 } else { 1.0 };
        let dew =
            level(substance, Kind::Dew, t_sat).ok_or_else(|| format!("no dew level at {t_sat:.2} K"))?;
        let mut rho = dew.dew.rho;
        for step in 0..17 {
            let superheat = 8.0 * (exp(log(1.0 + 140.0 / 8.0) * f64::from(step) / 16.0) - 1.0);
            let t = dew.dew.t + superheat;
            let Some(found) = substance.density(t, dew.dew.p, rho) else { break };
            rho = found;
            let state = substance.state(t, rho);
            vapors.push([
                state.h / (gas * t_center),
                state.s / gas + log(dew.dew.p / highest),
                dew.dew.t / t_center - 1.0,
                t / t_center,
            ]);
            let range = if superheat > 121.0 {
                0.1
            } else if superheat > 81.0 {
                0.5
            } else {
                1.0
            };
            let limit = if t > substance.t_limit { 0.05 } else { 1.0 };
            let point = Point { substance, level: dew, t, rho, weight: near * range * limit };
            let d = rho / rho_r;
            vapor.add(centers, &point, [log(d), 1.0], &basis(&vapor_rows, centers.place(t), d));
        }
        let bubble = level(substance, Kind::Bubble, t_sat)
            .ok_or_else(|| format!("no bubble level at {t_sat:.2} K"))?;
        let mut rho = bubble.bubble.rho;
        start_rows.push((0..START_TERMS as i32).map(|j| whole_power(centers.place(t_sat), j)).collect());
        start_target.push(rho / rho_r);
        for step in 0..12 {
            let subcooling = 8.0 * (exp(log(1.0 + 60.0 / 8.0) * f64::from(step) / 11.0) - 1.0);
            let t = bubble.bubble.t - subcooling;
            if t < substance.t_min - 1.0 {
                break;
            }
            let Some(found) = substance.density(t, bubble.bubble.p, rho) else { break };
            rho = found;
            let range = if subcooling > 41.0 { 0.3 } else { 1.0 };
            let point = Point { substance, level: bubble, t, rho, weight: near * range };
            let basis = basis(&LIQUID_ROWS, centers.place(t), rho / rho_r - liquid_center);
            liquid.add(centers, &point, [0.0; 2], &basis);
            liquid.stiffen(&point, &basis);
        }
    }
    let vapor = vapor.solve();
    Ok(Potentials {
        t_center,
        tau_center,
        liquid_center,
        ideal: fixed(&vapor[..IDEAL_TERMS]),
        vapor: fixed(&by_power(&VAPOR_ROWS, &vapor[IDEAL_TERMS..])),
        liquid: fixed(&by_power(&LIQUID_ROWS, &liquid.solve())),
        start: fixed(&minimax(&start_rows, &start_target, 1)),
        enthalpy_guess: guess(&vapors, 0),
        entropy_guess: guess(&vapors, 1),
    })
}
