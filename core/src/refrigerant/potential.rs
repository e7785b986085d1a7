//! Vapor and liquid: one reduced Helmholtz potential for each, from which density, enthalpy and entropy follow.
//!
//! a(T, rho)/(R T) = ln d + Q(x) + A(t, d), with d the reduced density, tau = M/T with M the middle of the
//! temperatures, x = (tau - 1)/(tau + 1), and t = tau less its middle. x keeps both T = 0 and T = infinity at the same
//! distance, so that a short polynomial Q serves the ideal gas with the reference state in it, and tau d/dtau is
//! (1 - x^2)/2 d/dx. A is a polynomial whose rows are powers of d and whose columns are powers of t; the vapor's
//! rows start at d, as virial coefficients do, the liquid's are centred on the middle of its densities. All three
//! properties come from derivatives of one function, so the Maxwell relations hold by construction.

use super::table::{FIXED, at, number};

/// The fixed part of a table.
type Fixed = [u8; FIXED];

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

// The schemes of Horner are written out by macros: a loop over coefficients stays a loop where a compiler saves space,
// and then takes three times the instructions and more space too. `fixed[part] 2, 1, 0` reads coefficients by their
// places in a part of the table.

/// Evaluates a polynomial, coefficients from the highest power down.
macro_rules! value {
    ($x:expr; $fixed:ident[$part:expr] $($index:literal),+) => {
        value!($x; $(number($fixed, $part + 4 * $index)),+)
    };
    ($x:expr; $top:expr $(, $c:expr)*) => {{
        let mut v = $top;
        $(v = v * $x + $c;)*
        v
    }};
}

/// Evaluates a polynomial and its derivative, coefficients from the highest power down.
macro_rules! with_slope {
    ($x:expr; $fixed:ident[$part:expr] $($index:literal),+) => {
        with_slope!($x; $(number($fixed, $part + 4 * $index)),+)
    };
    ($x:expr; $top:expr, $next:expr $(, $c:expr)*) => {{
        #[allow(unused_mut)]
        let (mut s, mut v) = ($top, $top * $x + $next);
        $(
            s = s * $x + v;
            v = v * $x + $c;
        )*
        (v, s)
    }};
}

/// Evaluates a polynomial, its derivative and half its second derivative, coefficients from the highest power down.
macro_rules! with_curvature {
    ($x:expr; $fixed:ident[$part:expr] $($index:literal),+) => {
        with_curvature!($x; $(number($fixed, $part + 4 * $index)),+)
    };
    ($x:expr; $top:expr, $next:expr, $third:expr $(, $c:expr)*) => {{
        #[allow(unused_mut)]
        let mut h = $top;
        let mut s = h * $x + $next;
        #[allow(unused_mut)]
        let mut v = s * $x + $third;
        s += h * $x;
        $(
            h = h * $x + s;
            s = s * $x + v;
            v = v * $x + $c;
        )*
        (v, s, h)
    }};
}

/// Evaluates the ideal-gas polynomial at tau: Q and tau dQ/dtau.
#[inline(always)]
pub(super) fn ideal(fixed: &Fixed, tau: f32) -> (f32, f32) {
    let x = (tau - 1.0) / (tau + 1.0);
    let (value, slope) = with_slope!(x; fixed[at::IDEAL] 7, 6, 5, 4, 3, 2, 1, 0);
    (value, 0.5 * (1.0 - x * x) * slope)
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
/// Newton steps taken at most.
const STEPS: u32 = 8;

/// Solves the vapor's density for the coefficients of the powers of density and the reduced pressure.
///
/// The pressure is concave in density up to the spinodal, so Newton from below climbs to the vapor root without
/// passing it. The start is the inverse virial series to the second power as a fraction.
#[inline(always)]
fn vapor_density([b1, b2, b3, b4, b5]: [f32; 5], p: f32) -> f32 {
    let (k2, k3, k4, k5) = (2.0 * b2, 3.0 * b3, 4.0 * b4, 5.0 * b5);
    let mut d = p / at_least(0.3, 1.0 + p * (b1 + p * (k2 - b1 * b1)));
    let mut steps = STEPS;
    loop {
        let (z, slope) = with_slope!(d; k5, k4, k3, k2, b1, 1.0);
        let step = (p - d * z) / at_least(0.02, z + d * slope);
        d += step;
        steps -= 1;
        if step.abs() <= STEP_ENOUGH * d || steps == 0 {
            return d;
        }
    }
}

/// Solves the vapor at t and reduced pressure p/(rho_reducing R T).
#[inline(always)]
pub(super) fn vapor(fixed: &Fixed, t: f32, reduced_pressure: f32) -> Solved {
    let (b1, c1) = with_slope!(t; fixed[at::VAPOR] 0, 1, 3, 7, 12);
    let (b2, c2) = with_slope!(t; fixed[at::VAPOR] 2, 4, 8, 13);
    let (b3, c3) = with_slope!(t; fixed[at::VAPOR] 5, 9, 14);
    let (b4, c4) = with_slope!(t; fixed[at::VAPOR] 6, 10, 15);
    let (b5, c5) = with_slope!(t; fixed[at::VAPOR] 11, 16);
    let d = vapor_density([b1, b2, b3, b4, b5], reduced_pressure);
    Solved {
        d,
        z: reduced_pressure / d,
        a: d * value!(d; b5, b4, b3, b2, b1),
        a_t: d * value!(d; c5, c4, c3, c2, c1),
    }
}

/// A vapor state with its heat capacity, for solving from enthalpy or entropy.
#[derive(Clone, Copy, Debug)]
pub(super) struct Heated {
    /// h/(R T).
    pub(super) enthalpy: f32,
    /// s/R + ln d.
    pub(super) entropy: f32,
    /// Reduced density.
    pub(super) d: f32,
    /// cp/R.
    pub(super) capacity: f32,
}

/// Solves the vapor at tau, t and reduced pressure with its heat capacity.
#[inline(always)]
pub(super) fn heated(fixed: &Fixed, tau: f32, t: f32, reduced_pressure: f32) -> Heated {
    let (b1, c1, e1) = with_curvature!(t; fixed[at::VAPOR] 0, 1, 3, 7, 12);
    let (b2, c2, e2) = with_curvature!(t; fixed[at::VAPOR] 2, 4, 8, 13);
    let (b3, c3, e3) = with_curvature!(t; fixed[at::VAPOR] 5, 9, 14);
    let (b4, c4, e4) = with_curvature!(t; fixed[at::VAPOR] 6, 10, 15);
    let (b5, c5) = with_slope!(t; fixed[at::VAPOR] 11, 16);
    let d = vapor_density([b1, b2, b3, b4, b5], reduced_pressure);
    let a = d * value!(d; b5, b4, b3, b2, b1);
    // d^2 A_dd, A_t, d A_td, A_tt.
    let bend = d * d * value!(d; 20.0 * b5, 12.0 * b4, 6.0 * b3, 2.0 * b2);
    let (inner, slope) = with_slope!(d; c5, c4, c3, c2, c1);
    let a_t = d * inner;
    let mixed = d * (inner + d * slope);
    let a_tt = 2.0 * d * value!(d; e4, e3, e2, e1);
    let z = reduced_pressure / d;
    let x = (tau - 1.0) / (tau + 1.0);
    let w = 0.5 * (1.0 - x * x);
    let (q, q_x, half) = with_curvature!(x; fixed[at::IDEAL] 7, 6, 5, 4, 3, 2, 1, 0);
    let energy = w * q_x + tau * a_t;
    let turn = z - tau * mixed;
    let stiffness = 2.0 * z - 1.0 + bend;
    Heated {
        enthalpy: z + energy,
        entropy: energy - q - a,
        d,
        capacity: turn * turn / at_least(0.02, stiffness)
            - w * (2.0 * w * half - (1.0 + x) * q_x)
            - tau * tau * a_tt,
    }
}

/// Guesses a vapor's temperature over the middle temperature from x (enthalpy or entropy) and y (dew temperature).
///
/// `part` is where the guess lies in the table: the middle of x, then the polynomial.
#[inline(always)]
pub(super) fn guess(fixed: &Fixed, part: usize, x: f32, y: f32) -> f32 {
    let x = x - number(fixed, part);
    let row0 = value!(y; fixed[part + 4] 4, 3, 2, 1, 0);
    let row1 = value!(y; fixed[part + 4] 8, 7, 6, 5);
    let row2 = value!(y; fixed[part + 4] 11, 10, 9);
    let row3 = value!(y; fixed[part + 4] 13, 12);
    value!(x; row3, row2, row1, row0)
}

/// Solves the liquid at t and reduced pressure, from its own start near saturation.
#[inline(always)]
pub(super) fn liquid(fixed: &Fixed, t: f32, reduced_pressure: f32) -> Solved {
    let (b0, c0) = with_slope!(t; fixed[at::LIQUID] 0, 1, 3, 6, 10, 15);
    let (b1, c1) = with_slope!(t; fixed[at::LIQUID] 2, 4, 7, 11, 16);
    let (b2, c2) = with_slope!(t; fixed[at::LIQUID] 5, 8, 12, 17);
    let (b3, c3) = with_slope!(t; fixed[at::LIQUID] 9, 13, 18);
    let (b4, c4) = with_slope!(t; fixed[at::LIQUID] 14, 19);
    let (k2, k3, k4) = (2.0 * b2, 3.0 * b3, 4.0 * b4);
    let center = number(fixed, at::LIQUID_CENTER);
    let mut e = value!(t; fixed[at::START] 4, 3, 2, 1, 0) - center;
    let mut steps = STEPS;
    loop {
        let (slope, curvature) = with_slope!(e; k4, k3, k2, b1);
        let d = e + center;
        let df = d * slope;
        let step = (reduced_pressure - d * (1.0 + df)) / at_least(0.2, 1.0 + 2.0 * df + d * d * curvature);
        e += step;
        steps -= 1;
        if step.abs() <= LIQUID_STEP_ENOUGH * d || steps == 0 {
            break;
        }
    }
    let d = e + center;
    Solved {
        d,
        z: reduced_pressure / d,
        a: value!(e; b4, b3, b2, b1, b0),
        a_t: value!(e; c4, c3, c2, c1, c0),
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
