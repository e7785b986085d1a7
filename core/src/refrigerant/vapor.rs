//! The vapor's potential, solved at a pressure and a temperature.

use super::limit::at_least;
use super::polynomial::{value, with_curvature, with_slope};
use super::potential::{Fixed, Place, STEPS, Solved, logarithm};
use super::table::{Guess, at, number};

/// Relative step of density after which the next Newton step would not be seen.
const STEP_ENOUGH: f32 = 3e-3;
/// dp/d(density) over R T below which there is no vapor to find: the margin below saturation may reach beyond it.
const SPINODAL: f32 = 0.02;

/// Finds where the solution for density starts: the inverse virial series to the second power as a fraction.
#[inline(always)]
fn first_density([b1, b2, ..]: [f32; 5], p: f32) -> f32 {
    let k2 = 2.0 * b2;
    p / at_least(0.3, 1.0 + p * (b1 + p * (k2 - b1 * b1)))
}

/// Finds the Newton step of density, and the slope dp/d(density) over R T that it was made with.
#[inline(always)]
fn density_step([b1, b2, b3, b4, b5]: [f32; 5], p: f32, d: f32) -> (f32, f32) {
    let (k2, k3, k4, k5) = (2.0 * b2, 3.0 * b3, 4.0 * b4, 5.0 * b5);
    let (z, slope) = with_slope!(d; k5, k4, k3, k2, b1, 1.0);
    let (found, slope) = (d * z, z + d * slope);
    ((p - found) / slope, slope)
}

/// Solves the density for the coefficients of its powers and the reduced pressure p/(rho_reducing R T).
///
/// The pressure is concave in density up to the spinodal, so Newton from below climbs to the vapor root without
/// passing it.
#[inline(always)]
fn density(b: [f32; 5], p: f32) -> f32 {
    let mut d = first_density(b, p);
    let mut steps = STEPS;
    loop {
        let (step, slope) = density_step(b, p, d);
        if slope < SPINODAL {
            return d;
        }
        d += step;
        steps -= 1;
        if step.abs() <= STEP_ENOUGH * d || steps == 0 {
            return d;
        }
    }
}

/// Finds the coefficients of the powers of density at a temperature, and their derivatives but the last's.
#[inline(always)]
fn rows(fixed: &Fixed, t: f32) -> ([f32; 5], [f32; 4]) {
    let (b1, c1) = with_slope!(t; fixed[at::VAPOR] 0, 1, 3, 5, 8, 12);
    let (b2, c2) = with_slope!(t; fixed[at::VAPOR] 2, 4, 6, 9, 13);
    let (b3, c3) = with_slope!(t; fixed[at::VAPOR] 7, 10, 14);
    let (b4, c4) = with_slope!(t; fixed[at::VAPOR] 11, 15);
    ([b1, b2, b3, b4, number(fixed, at::VAPOR + 4 * 16)], [c1, c2, c3, c4])
}

/// Finds enthalpy and entropy at a solved density.
#[inline(always)]
fn finish(
    fixed: &Fixed,
    Place { tau, t }: Place,
    reduced_pressure: f32,
    ([b1, b2, b3, b4, b5], [c1, c2, c3, c4]): ([f32; 5], [f32; 4]),
    d: f32,
) -> Solved {
    let (b0, c0) = with_slope!(t; fixed[at::IDEAL] 7, 6, 5, 4, 3, 2, 1, 0);
    let a = value!(d; b5, b4, b3, b2, b1, b0) + logarithm(d);
    let energy = tau * value!(d; c4, c3, c2, c1, c0);
    Solved { d, enthalpy: reduced_pressure / d + energy, entropy: energy - a }
}

/// Solves the vapor at a place and reduced pressure.
#[inline(always)]
pub(super) fn solve(fixed: &Fixed, place: Place, reduced_pressure: f32) -> Solved {
    let rows = rows(fixed, place.t);
    finish(fixed, place, reduced_pressure, rows, density(rows.0, reduced_pressure))
}

/// Vapors solved side by side.
pub(super) const LANES: usize = 16;

/// Vapors solved side by side, one array a quantity.
pub(super) struct SolvedLanes {
    /// Reduced density.
    pub(super) d: [f32; LANES],
    /// h/(R T).
    pub(super) enthalpy: [f32; LANES],
    /// s/R.
    pub(super) entropy: [f32; LANES],
}

/// Solves vapors side by side, each with the bits that [`solve`] gives it.
///
/// Plain loops over arrays, which compilers turn into vector instructions; a lane that is done is left as it is. The
/// bounds are constants, so that no index is checked.
#[inline(always)]
#[allow(clippy::needless_range_loop)]
pub(super) fn solve_lanes(
    fixed: &Fixed,
    tau: &[f32; LANES],
    t: &[f32; LANES],
    pressures: &[f32; LANES],
) -> SolvedLanes {
    let (mut b, mut c) = ([[0.0; LANES]; 5], [[0.0; LANES]; 4]);
    let mut d = [0.0; LANES];
    for i in 0..LANES {
        let ([b1, b2, b3, b4, b5], [c1, c2, c3, c4]) = rows(fixed, t[i]);
        [b[0][i], b[1][i], b[2][i], b[3][i], b[4][i]] = [b1, b2, b3, b4, b5];
        [c[0][i], c[1][i], c[2][i], c[3][i]] = [c1, c2, c3, c4];
        d[i] = first_density([b1, b2, b3, b4, b5], pressures[i]);
    }
    let mut live = [u32::MAX; LANES];
    for _ in 0..STEPS {
        let mut any = 0;
        for i in 0..LANES {
            let row = [b[0][i], b[1][i], b[2][i], b[3][i], b[4][i]];
            let (step, slope) = density_step(row, pressures[i], d[i]);
            let go = live[i] & mask(!(slope < SPINODAL));
            let next = d[i] + step;
            d[i] = f32::from_bits((next.to_bits() & go) | (d[i].to_bits() & !go));
            live[i] = go & mask(!(step.abs() <= STEP_ENOUGH * d[i]));
            any |= live[i];
        }
        if any == 0 {
            break;
        }
    }
    let mut out = SolvedLanes { d, enthalpy: [0.0; LANES], entropy: [0.0; LANES] };
    for i in 0..LANES {
        let place = Place { tau: tau[i], t: t[i] };
        let rows = ([b[0][i], b[1][i], b[2][i], b[3][i], b[4][i]], [c[0][i], c[1][i], c[2][i], c[3][i]]);
        let solved = finish(fixed, place, pressures[i], rows, d[i]);
        out.enthalpy[i] = solved.enthalpy;
        out.entropy[i] = solved.entropy;
    }
    out
}

/// All bits where it holds, none where it does not.
#[inline(always)]
fn mask(holds: bool) -> u32 {
    u32::from(holds).wrapping_neg()
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

/// Solves the vapor at a place and reduced pressure with its heat capacity.
#[inline(always)]
pub(super) fn heated(fixed: &Fixed, Place { tau, t }: Place, reduced_pressure: f32) -> Heated {
    let (b1, c1, e1) = with_curvature!(t; fixed[at::VAPOR] 0, 1, 3, 5, 8, 12);
    let (b2, c2, e2) = with_curvature!(t; fixed[at::VAPOR] 2, 4, 6, 9, 13);
    let (b3, c3, e3) = with_curvature!(t; fixed[at::VAPOR] 7, 10, 14);
    let (b4, c4) = with_slope!(t; fixed[at::VAPOR] 11, 15);
    let b5 = number(fixed, at::VAPOR + 4 * 16);
    let d = density([b1, b2, b3, b4, b5], reduced_pressure);
    let (b0, c0, e0) = with_curvature!(t; fixed[at::IDEAL] 7, 6, 5, 4, 3, 2, 1, 0);
    let a = value!(d; b5, b4, b3, b2, b1, b0);
    // d^2 A_dd, the derivative in t and its own in d, half the second derivative in t.
    let bend = d * d * value!(d; 20.0 * b5, 12.0 * b4, 6.0 * b3, 2.0 * b2);
    let (slope, mixed) = with_slope!(d; c4, c3, c2, c1, c0);
    let half = value!(d; e3, e2, e1, e0);
    let z = reduced_pressure / d;
    let energy = tau * slope;
    let turn = z - tau * d * mixed;
    let stiffness = 2.0 * z - 1.0 + bend;
    Heated {
        enthalpy: z + energy,
        entropy: energy - a,
        d,
        capacity: turn * turn / at_least(0.02, stiffness) - 2.0 * tau * tau * half,
    }
}

/// Guesses a vapor's temperature over the middle temperature from x (enthalpy or entropy) and y (dew temperature).
#[inline(always)]
pub(super) fn guess(part: &Guess, x: f32, y: f32) -> f32 {
    let x = x - number(part, 0);
    let row0 = value!(y; part[4] 4, 3, 2, 1, 0);
    let row1 = value!(y; part[4] 8, 7, 6, 5);
    let row2 = value!(y; part[4] 11, 10, 9);
    let row3 = value!(y; part[4] 13, 12);
    value!(x; row3, row2, row1, row0)
}
