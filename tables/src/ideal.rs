//! The ideal-gas part of an equation of state.

use libm::{exp, log, pow};
use serde::Deserialize;

/// The reduced ideal-gas Helmholtz energy less the logarithm of the reduced density.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Ideal {
    /// Constant and coefficient of tau.
    lead: [f64; 2],
    /// Coefficient of ln tau.
    log_tau: f64,
    /// Coefficient of tau ln tau.
    #[serde(default)]
    tau_log_tau: f64,
    /// n and t: n tau^t.
    power: Vec<[f64; 2]>,
    /// n and theta: n ln(1 - exp(-theta tau)).
    einstein: Vec<[f64; 2]>,
}

impl Ideal {
    /// Evaluates the function, tau times its first and tau^2 times its second derivative.
    pub fn evaluate(&self, tau: f64) -> [f64; 3] {
        let l = log(tau);
        let mut a = self.lead[0] + self.lead[1] * tau + self.log_tau * l + self.tau_log_tau * tau * l;
        let mut t = self.lead[1] * tau + self.log_tau + self.tau_log_tau * tau * (l + 1.0);
        let mut tt = -self.log_tau + self.tau_log_tau * tau;
        for [n, e] in &self.power {
            let u = n * pow(tau, *e);
            a += u;
            t += e * u;
            tt += e * (e - 1.0) * u;
        }
        for [n, theta] in &self.einstein {
            let x = theta * tau;
            let e = exp(-x);
            a += n * log(1.0 - e);
            t += n * x * e / (1.0 - e);
            tt -= n * x * x * e / ((1.0 - e) * (1.0 - e));
        }
        [a, t, tt]
    }
}
