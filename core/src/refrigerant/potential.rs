//! Vapor and liquid: one reduced Helmholtz potential for each, from which density, enthalpy and entropy follow.
//!
//! a(T, rho)/(R T) = ln d + Q(x) + A(t, d), with d the reduced density, tau = M/T with M the middle of the
//! temperatures, x = (tau - 1)/(tau + 1), and t = tau less its middle. x keeps both T = 0 and T = infinity at the same
//! distance, so that a short polynomial Q serves the ideal gas with the reference state in it, and tau d/dtau is
//! (1 - x^2)/2 d/dx. A is a polynomial whose rows are powers of d and whose columns are powers of t; the vapor's
//! rows start at d, as virial coefficients do, the liquid's are centred on the middle of its densities. All three
//! properties come from derivatives of one function, so the Maxwell relations hold by construction.

/// Coefficients of the ideal-gas polynomial.
pub const IDEAL_TERMS: usize = 8;
/// Degrees in t of the rows d^1, d^2, ... of the vapor.
pub const VAPOR_ROWS: [usize; 5] = [4, 3, 2, 2, 1];
/// Coefficients of the vapor.
pub const VAPOR_TERMS: usize = 17;
/// Degrees in t of the rows of the liquid, from power 0 on.
pub const LIQUID_ROWS: [usize; 5] = [5, 4, 3, 2, 1];
/// Coefficients of the liquid.
pub const LIQUID_TERMS: usize = 20;
/// Coefficients of the polynomial that starts the liquid density.
pub const START_TERMS: usize = 5;

/// Degrees in the dew temperature of the rows of a polynomial that guesses a vapor's temperature.
pub const GUESS_ROWS: [usize; 4] = [4, 3, 2, 1];
/// Coefficients of a polynomial that guesses a vapor's temperature.
pub const GUESS_TERMS: usize = 14;

/// Takes the larger of two numbers; f32's own is a function call on some targets.
#[inline(always)]
fn at_least(limit: f32, x: f32) -> f32 {
    if x < limit { limit } else { x }
}

/// Evaluates a polynomial, coefficients from the constant up.
#[inline(always)]
fn value<const N: usize>(c: &[f32; N], x: f32) -> f32 {
    let mut terms = c.iter().rev();
    let mut v = terms.next().copied().unwrap_or(0.0);
    for c in terms {
        v = v * x + c;
    }
    v
}

/// Evaluates a polynomial and its derivative.
#[inline(always)]
fn with_slope<const N: usize>(c: &[f32; N], x: f32) -> (f32, f32) {
    let mut terms = c.iter().rev();
    let mut v = terms.next().copied().unwrap_or(0.0);
    let Some(next) = terms.next() else { return (v, 0.0) };
    let mut slope = v;
    v = v * x + next;
    for c in terms {
        slope = slope * x + v;
        v = v * x + c;
    }
    (v, slope)
}

/// Evaluates a polynomial, its derivative and its second derivative.
#[inline(always)]
fn with_curvature<const N: usize>(c: &[f32; N], x: f32) -> (f32, f32, f32) {
    let mut terms = c.iter().rev();
    let mut v = terms.next().copied().unwrap_or(0.0);
    let Some(next) = terms.next() else { return (v, 0.0, 0.0) };
    let mut slope = v;
    v = v * x + next;
    let Some(next) = terms.next() else { return (v, slope, 0.0) };
    let mut half = slope;
    slope = slope * x + v;
    v = v * x + next;
    for c in terms {
        half = half * x + slope;
        slope = slope * x + v;
        v = v * x + c;
    }
    (v, slope, 2.0 * half)
}

/// Evaluates the ideal-gas polynomial at tau: Q and tau dQ/dtau.
#[inline(always)]
pub(super) fn ideal(c: &[f32; IDEAL_TERMS], tau: f32) -> (f32, f32) {
    let x = (tau - 1.0) / (tau + 1.0);
    let (q, slope) = with_slope(c, x);
    (q, 0.5 * (1.0 - x * x) * slope)
}

/// Evaluates Q, tau dQ/dtau and tau^2 d2Q/dtau2.
#[inline(always)]
fn ideal_with_curvature(c: &[f32; IDEAL_TERMS], tau: f32) -> (f32, f32, f32) {
    let x = (tau - 1.0) / (tau + 1.0);
    let w = 0.5 * (1.0 - x * x);
    let (q, slope, curvature) = with_curvature(c, x);
    (q, w * slope, w * (w * curvature - (1.0 + x) * slope))
}

/// The residual part of a solved state: what enthalpy and entropy need.
#[derive(Clone, Copy, Debug)]
pub(super) struct Solved {
    /// Reduced density.
    pub(super) d: f32,
    /// A.
    pub(super) a: f32,
    /// Compressibility factor: 1 + d dA/dd, and at the solution the reduced pressure over the reduced density.
    pub(super) z: f32,
    /// dA/dt.
    pub(super) a_t: f32,
}

/// Relative step of the vapor's density after which the next Newton step would not be seen.
const STEP_ENOUGH: f32 = 3e-3;
/// The same for the liquid, whose enthalpy follows density more steeply.
const LIQUID_STEP_ENOUGH: f32 = 5e-4;

/// Solves the vapor's density for the coefficients of the powers of density and the reduced pressure.
///
/// The pressure is concave in density up to the spinodal, so Newton from below climbs to the vapor root without
/// passing it. The start is the inverse virial series to the second power as a fraction.
#[inline(always)]
fn vapor_density(b: &[f32; 5], reduced_pressure: f32) -> f32 {
    let [b1, b2, b3, b4, b5] = *b;
    let (k2, k3, k4, k5) = (2.0 * b2, 3.0 * b3, 4.0 * b4, 5.0 * b5);
    let p = reduced_pressure;
    let mut d = p / at_least(0.3, 1.0 + p * (b1 + p * (k2 - b1 * b1)));
    for _ in 0..8 {
        // Z and d Z' by one scheme of Horner.
        let (mut z, mut s) = (k5, k5);
        z = z * d + k4;
        s = s * d + z;
        z = z * d + k3;
        s = s * d + z;
        z = z * d + k2;
        s = s * d + z;
        z = z * d + b1;
        s = s * d + z;
        z = z * d + 1.0;
        let step = (p - d * z) / at_least(0.02, z + d * s);
        d += step;
        if step.abs() <= STEP_ENOUGH * d {
            break;
        }
    }
    d
}

/// Solves the vapor's density at t and reduced pressure p/(rho_reducing R T).
#[inline(always)]
pub(super) fn vapor(coefficients: &[f32; VAPOR_TERMS], t: f32, reduced_pressure: f32) -> Solved {
    let [q4, q3, r3, q2, r2, u2, v2, q1, r1, u1, v1, w1, q0, r0, u0, v0, w0] = *coefficients;
    let (b1, c1) = with_slope(&[q0, q1, q2, q3, q4], t);
    let (b2, c2) = with_slope(&[r0, r1, r2, r3], t);
    let (b3, c3) = with_slope(&[u0, u1, u2], t);
    let (b4, c4) = with_slope(&[v0, v1, v2], t);
    let (b5, c5) = with_slope(&[w0, w1], t);
    let d = vapor_density(&[b1, b2, b3, b4, b5], reduced_pressure);
    Solved {
        d,
        z: reduced_pressure / d,
        a: d * value(&[b1, b2, b3, b4, b5], d),
        a_t: d * value(&[c1, c2, c3, c4, c5], d),
    }
}

/// A vapor state with its heat capacity, for solving from enthalpy or entropy.
#[derive(Clone, Copy, Debug)]
pub(super) struct Heated {
    /// h/(R T).
    pub(super) enthalpy: f32,
    /// s/R.
    pub(super) entropy: f32,
    /// cp/R.
    pub(super) capacity: f32,
}

/// Solves the vapor at tau, t and reduced pressure with its heat capacity.
#[inline(always)]
pub(super) fn heated(
    ideal: &[f32; IDEAL_TERMS],
    coefficients: &[f32; VAPOR_TERMS],
    tau: f32,
    t: f32,
    reduced_pressure: f32,
) -> Heated {
    let [q4, q3, r3, q2, r2, u2, v2, q1, r1, u1, v1, w1, q0, r0, u0, v0, w0] = *coefficients;
    let (b1, c1, e1) = with_curvature(&[q0, q1, q2, q3, q4], t);
    let (b2, c2, e2) = with_curvature(&[r0, r1, r2, r3], t);
    let (b3, c3, e3) = with_curvature(&[u0, u1, u2], t);
    let (b4, c4, e4) = with_curvature(&[v0, v1, v2], t);
    let (b5, c5) = with_slope(&[w0, w1], t);
    let d = vapor_density(&[b1, b2, b3, b4, b5], reduced_pressure);
    let a = d * value(&[b1, b2, b3, b4, b5], d);
    // d^2 A_dd, d A_td.
    let bend = d * d * value(&[2.0 * b2, 6.0 * b3, 12.0 * b4, 20.0 * b5], d);
    let a_t = d * value(&[c1, c2, c3, c4, c5], d);
    let mixed = d * value(&[c1, 2.0 * c2, 3.0 * c3, 4.0 * c4, 5.0 * c5], d);
    let a_tt = d * value(&[e1, e2, e3, e4], d);
    let z = reduced_pressure / d;
    let (q, q_tau, q_tau2) = ideal_with_curvature(ideal, tau);
    let energy = q_tau + tau * a_t;
    let turn = z - tau * mixed;
    let stiffness = 2.0 * z - 1.0 + bend;
    Heated {
        enthalpy: z + energy,
        entropy: energy - q - a - logarithm(d),
        capacity: turn * turn / at_least(0.02, stiffness) - q_tau2 - tau * tau * a_tt,
    }
}

/// Guesses a vapor's temperature over the middle temperature from x (enthalpy or entropy) and y (dew temperature).
#[inline(always)]
pub(super) fn guess(c: &[f32; GUESS_TERMS], x: f32, y: f32) -> f32 {
    let [q0, q1, q2, q3, q4, r0, r1, r2, r3, u0, u1, u2, v0, v1] = *c;
    let rows = [
        value(&[q0, q1, q2, q3, q4], y),
        value(&[r0, r1, r2, r3], y),
        value(&[u0, u1, u2], y),
        value(&[v0, v1], y),
    ];
    value(&rows, x)
}

/// Solves the liquid's density at t and reduced pressure, from its own start near saturation.
#[inline(always)]
pub(super) fn liquid(
    coefficients: &[f32; LIQUID_TERMS],
    start: &[f32; START_TERMS],
    center: f32,
    t: f32,
    reduced_pressure: f32,
) -> Solved {
    let [p5, p4, q4, p3, q3, r3, p2, q2, r2, u2, p1, q1, r1, u1, v1, p0, q0, r0, u0, v0] = *coefficients;
    let (b0, c0) = with_slope(&[p0, p1, p2, p3, p4, p5], t);
    let (b1, c1) = with_slope(&[q0, q1, q2, q3, q4], t);
    let (b2, c2) = with_slope(&[r0, r1, r2, r3], t);
    let (b3, c3) = with_slope(&[u0, u1, u2], t);
    let (b4, c4) = with_slope(&[v0, v1], t);
    let (k2, k3, k4) = (2.0 * b2, 3.0 * b3, 4.0 * b4);
    let mut e = value(start, t) - center;
    for _ in 0..8 {
        // A_d and A_dd by one scheme of Horner.
        let (mut f, mut g) = (k4, k4);
        f = f * e + k3;
        g = g * e + f;
        f = f * e + k2;
        g = g * e + f;
        f = f * e + b1;
        let d = e + center;
        let df = d * f;
        let step = (reduced_pressure - d * (1.0 + df)) / at_least(0.2, 1.0 + 2.0 * df + d * d * g);
        e += step;
        if step.abs() <= LIQUID_STEP_ENOUGH * d {
            break;
        }
    }
    let d = e + center;
    Solved {
        d,
        z: reduced_pressure / d,
        a: value(&[b0, b1, b2, b3, b4], e),
        a_t: value(&[c0, c1, c2, c3, c4], e),
    }
}

/// Natural logarithm of a positive normal number, to 3e-7.
///
/// Source: the series of artanh, ln m = 2 artanh((m-1)/(m+1)), after taking out the exponent; the last
/// coefficient, 2/5 in the series, takes over the terms after it.
#[inline(always)]
pub(super) fn logarithm(x: f32) -> f32 {
    let bits = x.to_bits();
    // Brings the mantissa into [sqrt(1/2), sqrt(2)).
    let shifted = bits.wrapping_sub(0x3F35_04F3);
    let exponent = (shifted as i32) >> 23;
    let m = f32::from_bits((shifted & 0x007F_FFFF).wrapping_add(0x3F35_04F3));
    let s = (m - 1.0) / (m + 1.0);
    let s2 = s * s;
    let series = s * (2.0 + s2 * (2.0 / 3.0 + s2 * 0.41));
    exponent as f32 * core::f32::consts::LN_2 + series
}
