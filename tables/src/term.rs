//! Terms of a residual Helmholtz energy, with their first and second derivatives.

use libm::{exp, log, pow};
use serde::Deserialize;

/// A function of (tau, delta) with its derivatives, each scaled by its own variables: `d` is delta dA/d delta,
/// `dt` is delta tau d2A/(d delta d tau), and so on.
#[derive(Clone, Copy, Debug, Default)]
pub struct Derivatives {
    /// The value.
    pub a: f64,
    /// delta A_delta.
    pub d: f64,
    /// tau A_tau.
    pub t: f64,
    /// delta^2 A_delta,delta.
    pub dd: f64,
    /// delta tau A_delta,tau.
    pub dt: f64,
    /// tau^2 A_tau,tau.
    pub tt: f64,
}

impl Derivatives {
    /// Adds a multiple of another function.
    pub fn add(&mut self, factor: f64, other: &Self) {
        self.a += factor * other.a;
        self.d += factor * other.d;
        self.t += factor * other.t;
        self.dd += factor * other.dd;
        self.dt += factor * other.dt;
        self.tt += factor * other.tt;
    }
    /// Adds a term u whose logarithm's scaled derivatives are `ld`, `lt` and whose own are `ldd`, `ltt`.
    fn add_product(&mut self, u: f64, ld: f64, lt: f64, ldd: f64, ltt: f64) {
        self.a += u;
        self.d += u * ld;
        self.t += u * lt;
        self.dd += u * (ld * ld - ld + ldd);
        self.dt += u * ld * lt;
        self.tt += u * (lt * lt - lt + ltt);
    }
}

/// The residual terms of one equation or departure function, by kind; each row holds a term's numbers.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Residual {
    /// n, t, d, l: n tau^t delta^d exp(-delta^l), without the exponential for l = 0.
    power: Vec<[f64; 4]>,
    /// n, t, d, g, l: n tau^t delta^d exp(-g delta^l).
    exponential: Vec<[f64; 5]>,
    /// n, t, d, l, m: n tau^t delta^d exp(-delta^l) exp(-tau^m), each without its exponential for 0.
    double: Vec<[f64; 5]>,
    /// n, t, d, eta, epsilon, beta, gamma: n tau^t delta^d exp(-eta (delta-epsilon)^2 - beta (tau-gamma)^2).
    gaussian: Vec<[f64; 7]>,
    /// n, t, d, eta, epsilon, beta, gamma: n tau^t delta^d exp(-eta (delta-epsilon)^2 - beta (delta-gamma)).
    gerg: Vec<[f64; 7]>,
    /// n, t, d, eta, beta, gamma, epsilon, b: n tau^t delta^d exp(eta (delta-epsilon)^2 + 1/(beta (tau-gamma)^2 + b)).
    gao: Vec<[f64; 8]>,
    /// n, a, b, beta, A, B, C, D: the critical-region terms of Span and Wagner.
    critical: Vec<[f64; 8]>,
}

impl Residual {
    /// Evaluates the sum of the terms.
    pub fn evaluate(&self, tau: f64, delta: f64) -> Derivatives {
        let mut sum = Derivatives::default();
        let (lt, ld) = (log(tau), log(delta));
        for [n, t, d, l] in &self.power {
            if *l == 0.0 {
                sum.add_product(n * exp(t * lt + d * ld), *d, *t, 0.0, 0.0);
            } else {
                let x = pow(delta, *l);
                sum.add_product(n * exp(t * lt + d * ld - x), d - l * x, *t, -l * l * x, 0.0);
            }
        }
        for [n, t, d, g, l] in &self.exponential {
            let x = if *l == 0.0 { 0.0 } else { g * pow(delta, *l) };
            sum.add_product(n * exp(t * lt + d * ld - x), d - l * x, *t, -l * l * x, 0.0);
        }
        for [n, t, d, l, m] in &self.double {
            let x = if *l == 0.0 { 0.0 } else { pow(delta, *l) };
            let y = if *m == 0.0 { 0.0 } else { pow(tau, *m) };
            sum.add_product(n * exp(t * lt + d * ld - x - y), d - l * x, t - m * y, -l * l * x, -m * m * y);
        }
        for [n, t, d, eta, epsilon, beta, gamma] in &self.gaussian {
            let (x, y) = (delta - epsilon, tau - gamma);
            let u = n * exp(t * lt + d * ld - eta * x * x - beta * y * y);
            sum.add_product(
                u,
                d - 2.0 * eta * delta * x,
                t - 2.0 * beta * tau * y,
                -2.0 * eta * delta * (delta + x),
                -2.0 * beta * tau * (tau + y),
            );
        }
        for [n, t, d, eta, epsilon, beta, gamma] in &self.gerg {
            let x = delta - epsilon;
            let u = n * exp(t * lt + d * ld - eta * x * x - beta * (delta - gamma));
            sum.add_product(
                u,
                d - delta * (2.0 * eta * x + beta),
                *t,
                -delta * (2.0 * eta * (delta + x) + beta),
                0.0,
            );
        }
        for [n, t, d, eta, beta, gamma, epsilon, b] in &self.gao {
            let (x, y) = (delta - epsilon, tau - gamma);
            let w = beta * y * y + b;
            let u = n * exp(t * lt + d * ld + eta * x * x + 1.0 / w);
            let slope = -2.0 * beta * (tau + y) / (w * w) + 8.0 * beta * beta * y * y * tau / (w * w * w);
            sum.add_product(
                u,
                d + 2.0 * eta * delta * x,
                t - 2.0 * beta * y * tau / (w * w),
                2.0 * eta * delta * (delta + x),
                tau * slope,
            );
        }
        for term in &self.critical {
            critical(term, tau, delta, &mut sum);
        }
        sum
    }
}

/// Adds one critical-region term. Source: R. Span, W. Wagner, J. Phys. Chem. Ref. Data 25 (1996) 1509, table 32.
fn critical(term: &[f64; 8], tau: f64, delta: f64, sum: &mut Derivatives) {
    let [n, a, b, beta, ca, cb, cc, cd] = *term;
    let mut x = delta - 1.0;
    if x.abs() < 1e-9 {
        x = 1e-9;
    }
    let y = tau - 1.0;
    let q = x * x;
    let half = 0.5 / beta;
    let qh = pow(q, half - 1.0);
    let theta = -y + ca * qh * q;
    let qa = pow(q, a - 1.0);
    let big = theta * theta + cb * qa * q;
    let big_d = x * (ca * theta * (2.0 / beta) * qh + 2.0 * cb * a * qa);
    let big_dd = big_d / x
        + 4.0 * cb * a * (a - 1.0) * qa
        + 2.0 * ca * ca / (beta * beta) * qh * qh * q
        + ca * theta * (4.0 / beta) * (half - 1.0) * qh;
    let p0 = pow(big, b);
    let p1 = b * p0 / big;
    let p2 = (b - 1.0) * p1 / big;
    let (f, fd, fdd) = (p0, p1 * big_d, p1 * big_dd + p2 * big_d * big_d);
    let (ft, ftt) = (-2.0 * theta * p1, 2.0 * p1 + 4.0 * theta * theta * p2);
    let fdt = -ca * (2.0 / beta) * p1 * x * qh - 2.0 * theta * p2 * big_d;
    let psi = exp(-cc * q - cd * y * y);
    let (gd, gdd) = (-2.0 * cc * x * psi, (2.0 * cc * q - 1.0) * 2.0 * cc * psi);
    let (gt, gtt) = (-2.0 * cd * y * psi, (2.0 * cd * y * y - 1.0) * 2.0 * cd * psi);
    let gdt = 4.0 * cc * cd * x * y * psi;
    sum.a += n * f * delta * psi;
    sum.d += n * delta * (f * (psi + delta * gd) + fd * delta * psi);
    sum.t += n * tau * delta * (ft * psi + f * gt);
    sum.dd += n
        * delta
        * delta
        * (f * (2.0 * gd + delta * gdd) + 2.0 * fd * (psi + delta * gd) + fdd * delta * psi);
    sum.tt += n * tau * tau * delta * (ftt * psi + 2.0 * ft * gt + f * gtt);
    sum.dt += n
        * delta
        * tau
        * (f * (gt + delta * gdt) + delta * fd * gt + ft * (psi + delta * gd) + fdt * delta * psi);
}
