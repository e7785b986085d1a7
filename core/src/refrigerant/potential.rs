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

/// Evaluates a polynomial and its derivative, coefficients from the constant up.
#[inline(always)]
pub(super) fn polynomial(coefficients: &[f32], x: f32) -> (f32, f32) {
    let (mut value, mut slope) = (0.0, 0.0);
    for c in coefficients.iter().rev() {
        slope = slope * x + value;
        value = value * x + c;
    }
    (value, slope)
}

/// Evaluates the rows at one t: the value and the t-derivative of each row's coefficient.
#[inline(always)]
fn rows<const N: usize>(degrees: &[usize; N], coefficients: &[f32], t: f32) -> [(f32, f32); N] {
    let mut out = [(0.0, 0.0); N];
    let mut rest = coefficients;
    for (row, degree) in out.iter_mut().zip(degrees) {
        if let Some((these, after)) = rest.split_at_checked(degree + 1) {
            *row = polynomial(these, t);
            rest = after;
        }
    }
    out
}

/// The residual part of a solved state: what enthalpy and entropy need.
#[derive(Clone, Copy, Debug)]
pub(super) struct Solved {
    /// Reduced density.
    pub(super) d: f32,
    /// A.
    pub(super) a: f32,
    /// d dA/dd.
    pub(super) a_d: f32,
    /// dA/dt.
    pub(super) a_t: f32,
}

/// Solves the vapor's density at t and reduced pressure p/(rho_reducing R T).
///
/// The pressure is concave in density up to the spinodal, so Newton from the ideal gas climbs to the vapor root
/// without passing it.
#[inline]
pub(super) fn vapor(coefficients: &[f32; VAPOR_TERMS], t: f32, reduced_pressure: f32) -> Solved {
    let b = rows(&VAPOR_ROWS, coefficients, t);
    let [(b1, c1), (b2, c2), (b3, c3), (b4, c4), (b5, c5)] = b;
    let mut d = reduced_pressure;
    for _ in 0..6 {
        // Z d and its derivative: d + sum k B_k d^(k+1).
        let z = 1.0 + d * (b1 + d * (2.0 * b2 + d * (3.0 * b3 + d * (4.0 * b4 + d * (5.0 * b5)))));
        let f = 1.0 + d * (2.0 * b1 + d * (6.0 * b2 + d * (12.0 * b3 + d * (20.0 * b4 + d * (30.0 * b5)))));
        d += (reduced_pressure - d * z) / f.max(0.02);
    }
    Solved {
        d,
        a: d * (b1 + d * (b2 + d * (b3 + d * (b4 + d * b5)))),
        a_d: d * (b1 + d * (2.0 * b2 + d * (3.0 * b3 + d * (4.0 * b4 + d * (5.0 * b5))))),
        a_t: d * (c1 + d * (c2 + d * (c3 + d * (c4 + d * c5)))),
    }
}

/// Solves the liquid's density at t and reduced pressure, starting from a density near saturation.
#[inline]
pub(super) fn liquid(
    coefficients: &[f32; LIQUID_TERMS],
    center: f32,
    start: f32,
    t: f32,
    reduced_pressure: f32,
) -> Solved {
    let b = rows(&LIQUID_ROWS, coefficients, t);
    let [(b0, c0), (b1, c1), (b2, c2), (b3, c3), (b4, c4)] = b;
    let mut d = start;
    for _ in 0..4 {
        let e = d - center;
        let first = b1 + e * (2.0 * b2 + e * (3.0 * b3 + e * (4.0 * b4)));
        let second = 2.0 * b2 + e * (6.0 * b3 + e * (12.0 * b4));
        let z = 1.0 + d * first;
        let f = 1.0 + d * (2.0 * first + d * second);
        d += (reduced_pressure - d * z) / f.max(0.2);
    }
    let e = d - center;
    Solved {
        d,
        a: b0 + e * (b1 + e * (b2 + e * (b3 + e * b4))),
        a_d: d * (b1 + e * (2.0 * b2 + e * (3.0 * b3 + e * (4.0 * b4)))),
        a_t: c0 + e * (c1 + e * (c2 + e * (c3 + e * c4))),
    }
}

/// Natural logarithm of a positive normal number, to about 1e-7.
///
/// Source: the series of artanh, ln m = 2 artanh((m-1)/(m+1)), after taking out the exponent.
#[inline]
pub(super) fn logarithm(x: f32) -> f32 {
    let bits = x.to_bits();
    // Brings the mantissa into [sqrt(1/2), sqrt(2)).
    let shifted = bits.wrapping_sub(0x3F35_04F3);
    let exponent = (shifted as i32) >> 23;
    let m = f32::from_bits((shifted & 0x007F_FFFF).wrapping_add(0x3F35_04F3));
    let s = (m - 1.0) / (m + 1.0);
    let s2 = s * s;
    let series = s * (2.0 + s2 * (2.0 / 3.0 + s2 * (2.0 / 5.0 + s2 * (2.0 / 7.0))));
    exponent as f32 * core::f32::consts::LN_2 + series
}
