//! The liquid's potential, solved at a pressure and a temperature.

use super::limit::at_least;
use super::polynomial::{value, with_slope};
use super::potential::{Fixed, Place, STEPS, Solved};
use super::table::{at, number};

/// Relative step of density after which the next Newton step would not be seen; enthalpy follows density steeply.
const STEP_ENOUGH: f32 = 5e-4;

/// Solves the liquid at a place and reduced pressure p/(rho_reducing R T), from its own start near saturation.
#[inline(always)]
pub(super) fn solve(fixed: &Fixed, Place { tau, t }: Place, reduced_pressure: f32) -> Solved {
    let (b0, c0) = with_slope!(t; fixed[at::LIQUID] 0, 1, 3, 6, 9, 13);
    let (b1, c1) = with_slope!(t; fixed[at::LIQUID] 2, 4, 7, 10, 14);
    let (b2, c2) = with_slope!(t; fixed[at::LIQUID] 5, 8, 11, 15);
    let (b3, c3) = with_slope!(t; fixed[at::LIQUID] 12, 16);
    let b4 = number(fixed, at::LIQUID + 4 * 17);
    let b5 = number(fixed, at::LIQUID + 4 * 18);
    let (k2, k3, k4, k5) = (2.0 * b2, 3.0 * b3, 4.0 * b4, 5.0 * b5);
    let center = number(fixed, at::LIQUID_CENTER);
    let mut e = value!(t; fixed[at::START] 4, 3, 2, 1, 0) - center;
    let mut steps = STEPS;
    loop {
        let (slope, curvature) = with_slope!(e; k5, k4, k3, k2, b1);
        let d = e + center;
        let z = d * slope;
        let step = (reduced_pressure - d * z) / at_least(0.2, 2.0 * z + d * d * curvature);
        e += step;
        steps -= 1;
        if step.abs() <= STEP_ENOUGH * d || steps == 0 {
            break;
        }
    }
    let d = e + center;
    let energy = tau * value!(e; c3, c2, c1, c0);
    Solved { d, enthalpy: reduced_pressure / d + energy, entropy: energy - value!(e; b5, b4, b3, b2, b1, b0) }
}
