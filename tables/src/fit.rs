//! Fits the curves and potentials of a table to a substance.

use crate::linear::minimax;
use crate::saturation::{Kind, Specification};
use crate::substance::{Saturated, Substance};
use libm::{cos, exp, log};
use rimewise::refrigerant::table::{
    GUESS_ROWS, GUESS_TERMS, IDEAL_TERMS, LIQUID_ROWS, LIQUID_TERMS, START_TERMS, STEP, VAPOR_ROWS,
    VAPOR_TERMS,
};

/// A piece of a saturation curve, quantised.
#[derive(Clone, Copy, Debug)]
pub struct Piece {
    /// Value and slope at the middle.
    pub low: [f32; 2],
    /// Coefficients 2 to 5 in steps of the format.
    pub high: [i16; 4],
}

/// A fitted saturation curve.
#[derive(Clone, Debug)]
pub struct Curve {
    /// Binary logarithm of the pieces in the last octave.
    pub resolution: u32,
    /// What brings a pressure to a share of the highest, 1/Pa.
    pub scale: f32,
    /// Stored exponent of the first piece.
    pub first: u32,
    /// The pieces.
    pub pieces: Vec<Piece>,
    /// Lowest and highest pressure, Pa.
    pub range: (f64, f64),
}

impl Curve {
    /// Finds what turns the shifted bits of the last octave into the index of a piece.
    pub fn fine_base(&self) -> usize {
        let last = 0.5f32.to_bits() >> 23;
        ((last << self.resolution) - (last - self.first)) as usize
    }
}

/// Multiplies two polynomials.
fn times(a: &[f64], b: &[f64]) -> Vec<f64> {
    let mut c = vec![0.0; a.len() + b.len() - 1];
    for (i, x) in a.iter().enumerate() {
        for (j, y) in b.iter().enumerate() {
            c[i + j] += x * y;
        }
    }
    c
}

/// Fits one curve between two temperatures, one piece per octave of pressure or part of it.
pub fn curve(substance: &Substance, kind: Kind, resolution: u32) -> Result<Curve, String> {
    let end = |t: f64| {
        substance
            .saturated(kind, Specification::Temperature(t))
            .map(|s| s.p)
            .ok_or_else(|| format!("no {kind:?} point at {t:.2} K"))
    };
    let range = (end(substance.t_min)?, end(substance.t_max)?);
    // A few roundings below one, so that the highest pressure itself stays in the last piece.
    let scale = ((1.0 - 4.0 * f64::from(f32::EPSILON)) / range.1) as f32;
    let lowest = range.0 * f64::from(scale);
    let first = (lowest as f32).to_bits() >> 23;
    let half = 0.5f32.to_bits() >> 23;
    if first > half {
        return Err(format!("{kind:?} curve: less than an octave of pressure"));
    }
    // Starts of the pieces as shares of the highest pressure: octaves, then the parts of the last one.
    let mut starts: Vec<f64> = (first..half).map(|e| f64::from(f32::from_bits(e << 23))).collect();
    let parts = 1u32 << resolution;
    starts.extend((0..=parts).map(|k| 0.5 + 0.5 * f64::from(k) / f64::from(parts)));
    let mut pieces = Vec::new();
    for ends in starts.windows(2) {
        let (start, stop) = (ends[0] / f64::from(scale), ends[1] / f64::from(scale));
        let (a, b) = (start.max(range.0), stop.min(range.1));
        if a < b {
            pieces.push(piece(substance, kind, start, stop - start, a, b)?);
        } else {
            return Err(format!("{kind:?} curve: an empty piece"));
        }
    }
    Ok(Curve { resolution, scale, first, pieces, range })
}

fn piece(substance: &Substance, kind: Kind, start: f64, width: f64, a: f64, b: f64) -> Result<Piece, String> {
    const NODES: usize = 18;
    let temperature = |p: f64| {
        substance
            .saturated(kind, Specification::Pressure(p))
            .map(|s| s.t)
            .ok_or_else(|| format!("no {kind:?} point at {p:.1} Pa"))
    };
    let place = |p: f64| 2.0 * (p - start) / width - 1.0;
    let (ua, ub) = (place(a), place(b));
    let (ta, tb) = (temperature(a)?, temperature(b)?);
    let local = |u: f64| (2.0 * u - ua - ub) / (ub - ua);
    // T = line through the ends + (u - ua)(u - ub) (polynomial in the local place).
    let (mut rows, mut target) = (Vec::new(), Vec::new());
    for k in 0..NODES {
        let x = cos(core::f64::consts::PI * (k as f64 + 0.5) / NODES as f64);
        let u = 0.5 * (ua + ub) + 0.5 * (ub - ua) * x;
        let t = temperature(start + 0.5 * (u + 1.0) * width)?;
        let bump = (u - ua) * (u - ub);
        let mut row = Vec::new();
        let mut power = bump;
        for _ in 0..4 {
            row.push(power);
            power *= local(u);
        }
        rows.push(row);
        target.push(t - (ta + (tb - ta) * (u - ua) / (ub - ua)));
    }
    // A short piece at an end of the curve may need coefficients beyond the format: then a lower degree serves it.
    let (scale, shift) = (2.0 / (ub - ua), -(ua + ub) / (ub - ua));
    let mut high = None;
    for terms in (0..=4).rev() {
        let some: Vec<Vec<f64>> = rows.iter().map(|row| row.iter().take(terms).copied().collect()).collect();
        let mut inner = vec![0.0; terms];
        let mut power = vec![1.0];
        let fit = if terms == 0 { Vec::new() } else { minimax(&some, &target, 12) };
        for c in &fit {
            for (i, p) in power.iter().enumerate() {
                inner[i] += c * p;
            }
            power = times(&power, &[shift, scale]);
        }
        let full = if terms == 0 { Vec::new() } else { times(&inner, &times(&[-ua, 1.0], &[-ub, 1.0])) };
        let steps: [f64; 4] =
            core::array::from_fn(|k| libm::round(full.get(k + 2).copied().unwrap_or(0.0) / f64::from(STEP)));
        if steps.iter().all(|s| s.abs() <= 32767.0) {
            high = Some(steps.map(|s| s as i16));
            break;
        }
    }
    let high =
        high.ok_or_else(|| format!("{kind:?} curve: a piece at {start:.0} Pa does not fit the format"))?;
    // The ends are met exactly again after rounding.
    let tail = |u: f64| {
        let c: Vec<f64> = high.iter().map(|h| f64::from(*h) * f64::from(STEP)).collect();
        u * u * (c[0] + u * (c[1] + u * (c[2] + u * c[3])))
    };
    let (ra, rb) = (ta - tail(ua), tb - tail(ub));
    let slope = (rb - ra) / (ub - ua);
    Ok(Piece { low: [(ra - slope * ua) as f32, slope as f32], high })
}

/// The fitted potentials.
#[derive(Clone, Debug)]
pub struct Potentials {
    /// Middle of the temperatures, K.
    pub t_center: f64,
    /// Middle of the inverse reduced temperature.
    pub tau_center: f64,
    /// Middle of the liquid's reduced density.
    pub liquid_center: f64,
    /// Ideal gas.
    pub ideal: [f64; IDEAL_TERMS],
    /// Vapor.
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

/// Saturation on both sides of one pressure.
#[derive(Clone, Copy, Debug)]
pub struct Level {
    /// Saturated vapor.
    pub dew: Saturated,
    /// Saturated liquid.
    pub bubble: Saturated,
    /// Enthalpy of evaporation, J/kg.
    pub latent_heat: f64,
    /// Entropy of evaporation, J/(kg K).
    pub latent_entropy: f64,
}

/// Finds the saturation level whose dew (or bubble) temperature is given.
pub fn level(substance: &Substance, kind: Kind, t: f64) -> Option<Level> {
    let one = substance.saturated(kind, Specification::Temperature(t))?;
    let other = if kind == Kind::Dew { Kind::Bubble } else { Kind::Dew };
    let two = substance.saturated(other, Specification::Pressure(one.p)).or_else(|| {
        // Colder than the traced branch, or above its highest pressure: the latent values of the same temperature do.
        substance.saturated(other, Specification::Temperature(t))
    })?;
    let (dew, bubble) = if kind == Kind::Dew { (one, two) } else { (two, one) };
    let (v, l) = (substance.state(dew.t, dew.rho), substance.state(bubble.t, bubble.rho));
    Some(Level { dew, bubble, latent_heat: v.h - l.h, latent_entropy: v.s - l.s })
}

/// Temperatures crowding towards the critical point.
pub fn crowded(low: f64, high: f64, critical: f64, count: usize, offset: f64) -> Vec<f64> {
    let (a, b) = (log(critical - high), log(critical - low));
    (0..count)
        .map(|k| critical - exp(a + (b - a) * (k as f64 + offset) / (count as f64 - 1.0 + 2.0 * offset)))
        .collect()
}

/// Places a temperature on the scale of the polynomials; the second is tau d/dtau of it.
fn place(t: f64, middle: f64) -> (f64, f64) {
    let x = (middle - t) / (middle + t);
    (x, 0.5 * (1.0 - x * x))
}

/// One row per property: the first-order errors at fixed pressure and temperature, in units of the error allowed.
struct Rows {
    rows: Vec<Vec<f64>>,
    target: Vec<f64>,
}

impl Rows {
    #[expect(clippy::too_many_arguments)]
    fn add(
        &mut self,
        substance: &Substance,
        level: &Level,
        t: f64,
        rho: f64,
        weight: f64,
        center: (f64, f64),
        basis: &dyn Fn(f64, f64) -> Vec<[f64; 3]>,
    ) {
        let (tr, rho_r) = substance.reducing();
        let (tau, delta) = (tr / t, rho / rho_r);
        let r = substance.mixture.residual(&substance.z, tau, delta);
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
        let columns: Vec<[f64; 3]> = basis(center.0 / t - center.1, delta)
            .iter()
            .map(|[a, d, u]| errors(*a, delta * d, center.0 / t * u))
            .collect();
        let wanted = errors(r.a, r.d, r.t);
        for k in 0..3 {
            self.rows.push(columns.iter().map(|c| c[k]).collect());
            self.target.push(wanted[k]);
        }
    }
}

/// Value, density derivative and t derivative of every basis function of a potential.
fn basis(degrees: &[usize], first_power: i32, t: f64, x: f64) -> Vec<[f64; 3]> {
    let mut out = Vec::new();
    for (k, degree) in degrees.iter().enumerate() {
        let power = k as i32 + first_power;
        let value = whole_power(x, power);
        let slope = if power == 0 { 0.0 } else { f64::from(power) * whole_power(x, power - 1) };
        for j in 0..=*degree as i32 {
            let u = whole_power(t, j);
            let u_t = if j == 0 { 0.0 } else { f64::from(j) * whole_power(t, j - 1) };
            out.push([value * u, slope * u, value * u_t]);
        }
    }
    out
}

/// Fits the temperature over enthalpy (0) or entropy (1) and dew temperature.
fn guess(vapors: &[[f64; 4]], which: usize) -> (f64, [f64; GUESS_TERMS]) {
    let low = vapors.iter().map(|v| v[which]).fold(f64::INFINITY, f64::min);
    let high = vapors.iter().map(|v| v[which]).fold(f64::NEG_INFINITY, f64::max);
    let middle = 0.5 * (low + high);
    let rows: Vec<Vec<f64>> = vapors
        .iter()
        .map(|v| basis(&GUESS_ROWS, 0, v[2], v[which] - middle).iter().map(|b| b[0]).collect())
        .collect();
    let target: Vec<f64> = vapors.iter().map(|v| v[3]).collect();
    (middle, fixed(&minimax(&rows, &target, 10)))
}

/// Orders coefficients given row by row as the format has them: column by column from the highest power down.
fn columns(degrees: &[usize], rows: &[f64]) -> Vec<f64> {
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

fn whole_power(x: f64, n: i32) -> f64 {
    (0..n).fold(1.0, |p, _| p * x)
}

fn fixed<const N: usize>(v: &[f64]) -> [f64; N] {
    core::array::from_fn(|i| v.get(i).copied().unwrap_or(0.0))
}

/// Fits the potentials of both phases and of the ideal gas.
pub fn potentials(substance: &Substance) -> Result<Potentials, String> {
    let (_, rho_r) = substance.reducing();
    let hottest = substance.t_max + 130.0;
    let t_center = libm::sqrt(substance.t_min * hottest);
    let tau_center = 0.5 * (t_center / substance.t_min + t_center / hottest);
    let centers = (t_center, tau_center);
    let inverse = |t: f64| t_center / t - tau_center;
    let critical = substance.t_max + crate::substance::BELOW_CRITICAL;
    let temperatures = crowded(substance.t_min, substance.t_max, critical, 26, 0.0);

    let mut ideal = Rows { rows: Vec::new(), target: Vec::new() };
    for k in 0..60 {
        let t = substance.t_min - 3.0 + (hottest + 43.0 - substance.t_min) * f64::from(k) / 59.0;
        let [q, tq] = substance.ideal_target(t);
        let (x, x_tau) = place(t, t_center);
        let columns = basis(&[IDEAL_TERMS - 1], 0, x, 1.0);
        let weight = if t > substance.t_max + 85.0 { 0.3 } else { 1.0 };
        ideal.rows.push(columns.iter().map(|[a, _, _]| weight * a).collect());
        ideal.target.push(weight * q);
        ideal.rows.push(columns.iter().map(|[_, _, t]| weight * x_tau * t).collect());
        ideal.target.push(weight * tq);
    }
    let ideal = minimax(&ideal.rows, &ideal.target, 10);

    let mut vapor = Rows { rows: Vec::new(), target: Vec::new() };
    let mut liquid = Rows { rows: Vec::new(), target: Vec::new() };
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
            vapor.add(substance, &dew, t, rho, near * range * limit, centers, &|t, d| {
                basis(&VAPOR_ROWS, 1, t, d)
            });
        }
        let bubble = level(substance, Kind::Bubble, t_sat)
            .ok_or_else(|| format!("no bubble level at {t_sat:.2} K"))?;
        let mut rho = bubble.bubble.rho;
        start_rows.push(basis(&[START_TERMS - 1], 0, inverse(t_sat), 1.0).iter().map(|b| b[0]).collect());
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
            liquid.add(substance, &bubble, t, rho, near * range, centers, &|t, d| {
                basis(&LIQUID_ROWS, 0, t, d - liquid_center)
            });
        }
    }
    Ok(Potentials {
        t_center,
        tau_center,
        liquid_center,
        ideal: fixed(&ideal),
        vapor: fixed(&columns(&VAPOR_ROWS, &minimax(&vapor.rows, &vapor.target, 16))),
        liquid: fixed(&columns(&LIQUID_ROWS, &minimax(&liquid.rows, &liquid.target, 16))),
        start: fixed(&minimax(&start_rows, &start_target, 1)),
        enthalpy_guess: guess(&vapors, 0),
        entropy_guess: guess(&vapors, 1),
    })
}
