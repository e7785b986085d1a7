//! Phase stability: whether a third phase would form at a point of saturation.
//!
//! Trial phases of other compositions are led to the lowest distance from the tangent plane of the bulk by successive
//! substitution. Source: M. L. Michelsen, Fluid Phase Equilibria 9 (1982) 1-19.

use crate::compile::Compiled;
use crate::mixture::Mixture;
use crate::saturation::Specification;
use crate::substance::Substance;
use libm::{exp, log};
use std::fmt::Write as _;

/// Excess of mole numbers that is rounding.
const ROUNDING: f64 = 1e-6;

/// Finds the density of a trial composition at a temperature and pressure, from a guess.
fn density(mixture: &Mixture, x: &[f64], t: f64, p: f64, guess: f64) -> Option<f64> {
    let (tr, rho_r) = mixture.reducing(x);
    let target = p / (mixture.gas_constant * t);
    let mut y = log(guess);
    for _ in 0..60 {
        let rho = exp(y);
        let r = mixture.residual(x, tr / t, rho / rho_r);
        let slope = 1.0 + 2.0 * r.d + r.dd;
        if slope <= 0.02 {
            y += if guess > rho_r { 0.05 } else { -0.05 };
            continue;
        }
        let step = ((target / rho - 1.0 - r.d) / slope).clamp(-0.2, 0.2);
        y += step;
        if step.abs() < 1e-11 {
            return Some(exp(y));
        }
    }
    None
}

/// Logarithm of mole fraction times density plus the residual part: the fugacity but for a common factor.
fn fugacities(mixture: &Mixture, x: &[f64], t: f64, rho: f64) -> Vec<f64> {
    let densities: Vec<f64> = x.iter().map(|x| x * rho).collect();
    let e = mixture.expand(t, &densities);
    densities.iter().zip(&e.gradient).map(|(d, g)| log(*d) + g).collect()
}

/// Finds by how much the most stable trial phase exceeds the bulk: the sum of its mole numbers less one.
///
/// Positive beyond rounding: the bulk splits. On a saturation curve the incipient phase itself gives zero.
pub fn excess(mixture: &Mixture, z: &[f64], t: f64, p: f64, bulk: f64) -> f64 {
    let n = z.len();
    let wanted = fugacities(mixture, z, t, bulk);
    let mut worst = -1.0f64;
    for start in 0..2 * n {
        let (component, dense) = (start / 2, start % 2 == 0);
        let mut x: Vec<f64> =
            (0..n).map(|i| if i == component { 0.9 } else { 0.1 / (n as f64 - 1.0) }).collect();
        for round in 0..60 {
            let (_, rho_r) = mixture.reducing(&x);
            let guess = if dense { 3.0 * rho_r } else { p / (mixture.gas_constant * t) };
            let Some(rho) = density(mixture, &x, t, p, guess) else { break };
            let found = fugacities(mixture, &x, t, rho);
            let moles: Vec<f64> = (0..n).map(|i| x[i] * exp(wanted[i] - found[i])).collect();
            let sum: f64 = moles.iter().sum();
            if !sum.is_finite() || sum <= 0.0 {
                break;
            }
            let change: f64 = (0..n).map(|i| (moles[i] / sum - x[i]).abs()).sum();
            x = moles.iter().map(|m| m / sum).collect();
            if change < 1e-9 || round == 59 {
                worst = worst.max(sum - 1.0);
                break;
            }
        }
    }
    worst
}

/// Finds the temperature, K, below which a point on either curve of a blend would split into a third phase.
///
/// None where the coldest points of the table are stable, as they are wherever nothing splits.
pub fn splits_below(substance: &Substance) -> Option<f64> {
    let boundary = substance.boundary()?;
    let splits = |t: f64| {
        [&boundary.bubble, &boundary.dew].iter().any(|branch| {
            branch
                .at(&substance.mixture, &substance.z, Specification::Temperature(t))
                .is_some_and(|p| excess(&substance.mixture, &substance.z, t, p.p, p.bulk) > ROUNDING)
        })
    };
    if substance.is_pure() || !splits(substance.t_min) {
        return None;
    }
    let (mut low, mut high) = (substance.t_min, substance.t_max - 20.0);
    while high - low > 0.1 {
        let middle = 0.5 * (low + high);
        if splits(middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
    Some(high)
}

/// The blends of the library that split, with the temperatures below which they do, as text for the report.
pub fn notes(all: &[Compiled]) -> String {
    let mut text = String::from(
        "\n## Third phases\n\n\
         At the coldest points the saturation curves of these blends are not stable: by the model their liquid would \
         part in two. The tables go on with the one liquid. Every other blend is stable against a third phase along \
         both curves (tangent plane distance, checked in the tests).\n\n",
    );
    for c in all {
        if let Some(t) = splits_below(&c.substance) {
            let _ = writeln!(text, "* {}: below {:.1} degC", c.substance.designation, t - 273.15);
        }
    }
    text
}
