//! Between bubble and dew at constant pressure: flashes of the model, and the polynomials of a table fitted to them.
//!
//! The unknowns of a flash at a pressure and a vapor fraction are the logarithms of both phases' molar densities by
//! component and of temperature; the equations are equal fugacity of every component, both phases' pressure, and the
//! balance of matter. It is led from the bubble point to the dew point by the vapor fraction.

use crate::level::crowded;
use crate::linear::{least_squares, solve};
use crate::mixture::Mixture;
use crate::saturation::{Kind, Specification, pressure};
use crate::substance::{BELOW_CRITICAL, Substance};
use libm::{exp, log};
use rimewise::refrigerant::table::{DOME_QUALITY_TERMS, DOME_TEMPERATURE_TERMS};

/// Distance from the critical temperature up to which the dome is fitted, K.
const FITTED_BELOW_CRITICAL: f64 = 8.0;
/// Vapor fractions, by moles, of the flashes between bubble and dew.
const FRACTIONS: [f64; 13] = [0.02, 0.05, 0.1, 0.18, 0.27, 0.36, 0.45, 0.55, 0.65, 0.75, 0.85, 0.93, 0.98];
/// Worst error of temperature with which the polynomials may be used, K.
pub const USABLE_K: f64 = 0.05;

/// A state between bubble and dew.
#[derive(Clone, Copy, Debug)]
pub struct Wet {
    /// Temperature, K.
    pub t: f64,
    /// Mass fraction of vapor.
    pub quality: f64,
    /// Enthalpy on the reference state of the substance, J/kg.
    pub h: f64,
    /// Entropy on the reference state of the substance, J/(kg K).
    pub s: f64,
}

/// The states between bubble and dew at one pressure.
#[derive(Clone, Debug)]
pub struct Line {
    /// Pressure, Pa.
    pub p: f64,
    /// Saturated liquid.
    pub bubble: Wet,
    /// Saturated vapor.
    pub dew: Wet,
    /// States between them.
    pub states: Vec<Wet>,
}

/// The fitted shape of a dome.
#[derive(Clone, Copy, Debug)]
pub struct Dome {
    /// Rise of temperature.
    pub temperature: [f64; DOME_TEMPERATURE_TERMS],
    /// Quality.
    pub quality: [f64; DOME_QUALITY_TERMS],
    /// Worst error of temperature, K.
    pub worst_k: f64,
    /// Worst error of quality.
    pub worst_quality: f64,
}

/// Molar enthalpy and entropy of a phase without reference state, J/mol and J/(mol K).
fn molar(mixture: &Mixture, x: &[f64], t: f64, rho: f64) -> (f64, f64) {
    let (tr, rho_r) = mixture.reducing(x);
    let r = mixture.residual(x, tr / t, rho / rho_r);
    let ideal = mixture.ideal(x, t);
    let gas = mixture.gas_constant;
    (gas * t * (1.0 + ideal[1] + r.t + r.d), gas * (ideal[1] + r.t - ideal[0] - log(rho) - r.a))
}

/// The equations of a flash.
fn residual(substance: &Substance, p: f64, fraction: f64, y: &[f64]) -> Vec<f64> {
    let (mixture, z) = (&substance.mixture, &substance.z);
    let n = z.len();
    let liquid: Vec<f64> = y[..n].iter().map(|v| exp(*v)).collect();
    let vapor: Vec<f64> = y[n..2 * n].iter().map(|v| exp(*v)).collect();
    let t = exp(y[2 * n]);
    let (el, ev) = (mixture.expand(t, &liquid), mixture.expand(t, &vapor));
    let (total_l, total_v) = (liquid.iter().sum::<f64>(), vapor.iter().sum::<f64>());
    let target = p / (mixture.gas_constant * t);
    let mut out: Vec<f64> = (0..n).map(|i| y[i] + el.gradient[i] - y[n + i] - ev.gradient[i]).collect();
    out.push((pressure(&liquid, &el).0 - target) / total_v);
    out.push((pressure(&vapor, &ev).0 - target) / total_v);
    for i in 0..n - 1 {
        let mean = (1.0 - fraction) * liquid[i] / total_l + fraction * vapor[i] / total_v;
        out.push(mean / z[i] - 1.0);
    }
    out
}

/// Solves a flash from a guess.
fn flash(substance: &Substance, p: f64, fraction: f64, guess: &[f64]) -> Option<Vec<f64>> {
    let mut y = guess.to_vec();
    for _ in 0..40 {
        let here = residual(substance, p, fraction, &y);
        if here.iter().any(|v| !v.is_finite()) {
            return None;
        }
        let mut jacobian = vec![vec![0.0; y.len()]; y.len()];
        for k in 0..y.len() {
            let mut there = y.clone();
            there[k] += 1e-6;
            for (row, (a, b)) in residual(substance, p, fraction, &there).iter().zip(&here).enumerate() {
                jacobian[row][k] = (a - b) / 1e-6;
            }
        }
        let step = solve(jacobian, here)?;
        let longest = step.iter().fold(0.0f64, |m, s| m.max(s.abs()));
        let damping = if longest > 0.3 { 0.3 / longest } else { 1.0 };
        y.iter_mut().zip(&step).for_each(|(y, s)| *y -= damping * s);
        if longest < 1e-9 {
            return Some(y);
        }
    }
    None
}

/// Follows the dome at one pressure from bubble to dew.
pub fn line(substance: &Substance, p: f64) -> Option<Line> {
    let mixture = &substance.mixture;
    let n = substance.z.len();
    let boundary = substance.boundary()?;
    let bubble = boundary.bubble.at(mixture, &substance.z, Specification::Pressure(p))?;
    let masses: Vec<f64> = mixture.fluids.iter().map(|f| f.molar_mass_g_mol * 1e-3).collect();
    let mut y: Vec<f64> = substance.z.iter().map(|z| log(z * bubble.bulk)).collect();
    y.extend(bubble.incipient.iter().map(|w| log(*w)));
    y.push(log(bubble.t));
    let mut states = Vec::new();
    for fraction in FRACTIONS {
        y = flash(substance, p, fraction, &y)?;
        let t = exp(y[2 * n]);
        let mut sums = [0.0f64; 3];
        let mut quality = 0.0;
        for (share, part) in [(1.0 - fraction, &y[..n]), (fraction, &y[n..2 * n])] {
            let densities: Vec<f64> = part.iter().map(|v| exp(*v)).collect();
            let total: f64 = densities.iter().sum();
            let x: Vec<f64> = densities.iter().map(|d| d / total).collect();
            let mass = share * x.iter().zip(&masses).map(|(x, m)| x * m).sum::<f64>();
            let (h, s) = molar(mixture, &x, t, total);
            sums[0] += mass;
            sums[1] += share * h;
            sums[2] += share * s;
            quality = mass;
        }
        let (h, s) = substance.on_reference(sums[1] / sums[0], sums[2] / sums[0]);
        states.push(Wet { t, quality: quality / sums[0], h, s });
    }
    let end = |kind, quality| {
        let found = substance.saturated(kind, Specification::Pressure(p))?;
        let state = substance.state(found.t, found.rho);
        Some(Wet { t: found.t, quality, h: state.h, s: state.s })
    };
    Some(Line { p, bubble: end(Kind::Bubble, 0.0)?, dew: end(Kind::Dew, 1.0)?, states })
}

/// The products of powers of the share and of the dew temperature, three of the latter to each of the former.
fn basis(share: f64, y: f64, powers: usize) -> Vec<f64> {
    let bump = share * (1.0 - share);
    (0..powers)
        .flat_map(|i| (0..3).map(move |k| bump * libm::pow(share, i as f64) * libm::pow(y, k as f64)))
        .collect()
}

/// The lines at pressures from the lowest temperature to 8 K below critical.
pub fn lines(substance: &Substance, count: usize, offset: f64) -> Result<Vec<Line>, String> {
    let critical = substance.t_max + BELOW_CRITICAL;
    let lowest = [Kind::Dew, Kind::Bubble]
        .iter()
        .filter_map(|kind| substance.saturated(*kind, Specification::Temperature(substance.t_min)))
        .map(|s| s.p)
        .fold(0.0f64, f64::max);
    let coldest = substance
        .saturated(Kind::Dew, Specification::Pressure(lowest * 1.0001))
        .ok_or_else(|| format!("{}: no dew point at the lowest bubble pressure", substance.designation))?
        .t;
    crowded(coldest, critical - FITTED_BELOW_CRITICAL, critical, count, offset)
        .into_iter()
        .map(|t| {
            let missing =
                || format!("{}: no states between bubble and dew at {t:.1} K", substance.designation);
            let p = substance.saturated(Kind::Dew, Specification::Temperature(t)).ok_or_else(missing)?.p;
            line(substance, p).ok_or_else(missing)
        })
        .collect()
}

/// Fits the shape of a blend's dome.
pub fn dome(substance: &Substance, t_center: f64) -> Result<Dome, String> {
    let lines = lines(substance, 12, 0.0)?;
    let (mut rows_t, mut rows_q, mut rise, mut quality, mut weight_t, mut weight_q) =
        (Vec::new(), Vec::new(), Vec::new(), Vec::new(), Vec::new(), Vec::new());
    for line in &lines {
        let glide = line.dew.t - line.bubble.t;
        let y = line.dew.t / t_center - 1.0;
        for state in &line.states {
            let share = (state.h - line.bubble.h) / (line.dew.h - line.bubble.h);
            rows_t.push(basis(share, y, DOME_TEMPERATURE_TERMS / 3));
            // In kelvins: where there is no glide the shape does not matter.
            rise.push((state.t - line.bubble.t) / if glide.abs() > 1e-9 { glide } else { 1.0 } - share);
            weight_t.push(glide.abs() + 1e-6);
            rows_q.push(basis(share, y, DOME_QUALITY_TERMS / 3));
            quality.push(state.quality - share);
            weight_q.push(1.0);
        }
    }
    let t = least_squares(&rows_t, &rise, &weight_t);
    let q = least_squares(&rows_q, &quality, &weight_q);
    let (mut worst_k, mut worst_quality) = (0.0f64, 0.0f64);
    let dot = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| a * b).sum::<f64>();
    for (((row, rise), weight), (row_q, quality)) in
        rows_t.iter().zip(&rise).zip(&weight_t).zip(rows_q.iter().zip(&quality))
    {
        worst_k = worst_k.max(((dot(row, &t) - rise) * weight).abs());
        worst_quality = worst_quality.max((dot(row_q, &q) - quality).abs());
    }
    Ok(Dome {
        temperature: std::array::from_fn(|i| t[i]),
        quality: std::array::from_fn(|i| q[i]),
        worst_k,
        worst_quality,
    })
}
