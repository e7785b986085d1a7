//! A mixture (or pure fluid) by the multi-fluid model, at any composition.
//!
//! a_r(tau, delta, x) = sum x_i a_i + sum x_i x_j F_ij a_ij, tau = T_r(x)/T, delta = rho/rho_r(x); T_r and 1/rho_r by
//! the quadratic form of GERG with beta and gamma parameters. Source: O. Kunz, W. Wagner, J. Chem. Eng. Data 57 (2012)
//! 3032. Lemmon and Jacobsen's xi and zeta are turned into gamma parameters with beta = 1.

use crate::data::{Estimate, Fluid, Library, Pair};
use crate::term::{Derivatives, Residual};
use libm::{cbrt, log, sqrt};

/// Gas constant of mixtures, J/(mol K): CODATA 2018, exact. Pure fluids keep that of their equation.
pub const GAS_CONSTANT: f64 = 8.314_462_618_153_24;

/// A binary pair in the model.
#[derive(Clone, Debug)]
struct Binary {
    i: usize,
    j: usize,
    beta_t: f64,
    beta_v: f64,
    /// gamma_T sqrt(T_i T_j), K.
    t: f64,
    /// gamma_v (v_i^(1/3) + v_j^(1/3))^3 / 8, m3/mol.
    v: f64,
    departure: Option<(f64, Residual)>,
}

/// A pair without published parameters, as the model takes it.
#[derive(Clone, Debug)]
pub struct EstimatedPair {
    /// The two designations; beta_T and beta_v belong to the first.
    pub pair: [String; 2],
    /// How it was estimated.
    pub estimate: Estimate,
    /// beta_T, gamma_T, beta_v, gamma_v of the GERG form.
    pub gerg: [f64; 4],
}

/// The model of a set of components.
#[derive(Clone, Debug)]
pub struct Mixture {
    /// The components.
    pub fluids: Vec<Fluid>,
    /// Gas constant, J/(mol K).
    pub gas_constant: f64,
    /// The pairs without published parameters.
    pub estimated: Vec<EstimatedPair>,
    /// Source keys of the pairs with published parameters.
    pub pair_sources: Vec<String>,
    binaries: Vec<Binary>,
}

/// A function of composition with its derivatives, all mole fractions taken as independent.
struct Quadratic {
    value: f64,
    gradient: Vec<f64>,
    hessian: Vec<Vec<f64>>,
}

/// Everything about the residual energy at one temperature and set of molar densities: Phi = rho a_r.
///
/// Index n (the number of components) is the temperature.
#[derive(Clone, Debug)]
pub struct Expansion {
    /// Phi, mol/m3.
    pub phi: f64,
    /// First derivatives by the molar densities and by temperature.
    pub gradient: Vec<f64>,
    /// Second derivatives.
    pub hessian: Vec<Vec<f64>>,
}

impl Mixture {
    /// Makes the model of one pure fluid or pseudo-pure equation.
    pub fn pure(fluid: &Fluid) -> Self {
        Self {
            fluids: vec![fluid.clone()],
            gas_constant: fluid.gas_constant,
            estimated: Vec::new(),
            pair_sources: Vec::new(),
            binaries: Vec::new(),
        }
    }

    /// Makes the model of a blend of fluids by their designations.
    ///
    /// A pair without published parameters is named in `estimated`: it takes those of its homologue or of its fit, or
    /// else linear reducing temperatures and volumes (xi = zeta = 0), and no departure function.
    pub fn blend(library: &Library, designations: &[&str]) -> Result<Self, String> {
        let fluids = designations
            .iter()
            .map(|d| library.fluid(d).cloned().ok_or_else(|| format!("no equation of state for {d}")))
            .collect::<Result<Vec<_>, _>>()?;
        let mut mixture = Self {
            gas_constant: if fluids.len() == 1 { fluids[0].gas_constant } else { GAS_CONSTANT },
            fluids,
            estimated: Vec::new(),
            pair_sources: Vec::new(),
            binaries: Vec::new(),
        };
        for i in 0..designations.len() {
            for j in i + 1..designations.len() {
                mixture.add_pair(library, i, j)?;
            }
        }
        mixture.pair_sources.sort();
        mixture.pair_sources.dedup();
        Ok(mixture)
    }

    fn add_pair(&mut self, library: &Library, i: usize, j: usize) -> Result<(), String> {
        let (a, b) = (&self.fluids[i], &self.fluids[j]);
        let (ti, tj) = (a.reducing.t_k, b.reducing.t_k);
        let (vi, vj) = (1.0 / a.reducing.rho_mol_m3, 1.0 / b.reducing.rho_mol_m3);
        let third = cbrt(vi) + cbrt(vj);
        let mean_v = third * third * third / 8.0;
        let found = published(library, &a.designation, &b.designation);
        let linear = |xi: f64, zeta: f64| Binary {
            i,
            j,
            beta_t: 1.0,
            beta_v: 1.0,
            t: 0.5 * (ti + tj + xi),
            v: 0.5 * (vi + vj + zeta),
            departure: None,
        };
        let gerg = |i: usize, j: usize, [beta_t, gamma_t, beta_v, gamma_v]: [f64; 4]| Binary {
            i,
            j,
            beta_t,
            beta_v,
            t: gamma_t * sqrt(ti * tj),
            v: gamma_v * mean_v,
            departure: None,
        };
        let mut binary = match found {
            None => {
                let (mut binary, mut pair) = match estimate(library, &a.designation, &b.designation)? {
                    Some(pair) => {
                        let (i, j) = if pair.pair[0] == a.designation { (i, j) } else { (j, i) };
                        (gerg(i, j, pair.gerg), pair)
                    }
                    None => {
                        let binary = linear(0.0, 0.0);
                        let same = [1.0, binary.t / sqrt(ti * tj), 1.0, binary.v / mean_v];
                        let pair = [a.designation.clone(), b.designation.clone()];
                        (binary, EstimatedPair { pair, estimate: Estimate::CombiningRule, gerg: same })
                    }
                };
                binary.t *= library.tuning;
                pair.gerg[1] *= library.tuning;
                self.estimated.push(pair);
                binary
            }
            Some(pair) => match (&pair.lemmon, &pair.gerg) {
                (Some([xi, zeta]), None) => linear(*xi, *zeta),
                (None, Some(parameters)) => {
                    // The published order decides which component beta belongs to.
                    let (i, j) = if pair.pair[0] == a.designation { (i, j) } else { (j, i) };
                    gerg(i, j, *parameters)
                }
                _ => return Err(format!("pair {:?}: give lemmon or gerg parameters", pair.pair)),
            },
        };
        if let Some(pair) = found {
            self.pair_sources.push(pair.source.clone());
            if let Some((weight, name)) = &pair.departure {
                let function = library
                    .pairs
                    .departures
                    .get(name)
                    .ok_or_else(|| format!("no departure function {name}"))?;
                binary.departure = Some((*weight, function.residual.clone()));
            }
        }
        self.binaries.push(binary);
        Ok(())
    }

    /// Number of components.
    pub fn len(&self) -> usize {
        self.fluids.len()
    }
    /// Tells whether the model has no component.
    pub fn is_empty(&self) -> bool {
        self.fluids.is_empty()
    }

    /// Sums a GERG quadratic form: sum x_i^2 y_i + sum 2 x_i x_j beta y_ij (x_i + x_j)/(beta^2 x_i + x_j).
    fn quadratic(
        &self,
        x: &[f64],
        own: impl Fn(&Fluid) -> f64,
        pair: impl Fn(&Binary) -> (f64, f64),
    ) -> Quadratic {
        let n = x.len();
        let mut q = Quadratic { value: 0.0, gradient: vec![0.0; n], hessian: vec![vec![0.0; n]; n] };
        for (i, fluid) in self.fluids.iter().enumerate() {
            let y = own(fluid);
            q.value += x[i] * x[i] * y;
            q.gradient[i] += 2.0 * x[i] * y;
            q.hessian[i][i] += 2.0 * y;
        }
        for binary in &self.binaries {
            let (i, j) = (binary.i, binary.j);
            let (beta, y) = pair(binary);
            let (u, w, b2) = (x[i], x[j], beta * beta);
            let c = 2.0 * beta * y;
            // f = u w s / m with s = u + w, m = b2 u + w.
            let (s, m) = (u + w, b2 * u + w);
            if m <= 0.0 {
                continue;
            }
            let f = u * w * s / m;
            let (nu, nw) = (w * (2.0 * u + w), u * (u + 2.0 * w));
            let fu = (nu - f * b2) / m;
            let fw = (nw - f) / m;
            let fuu = (2.0 * w - 2.0 * fu * b2) / m;
            let fww = (2.0 * u - 2.0 * fw) / m;
            let fuw = (2.0 * u + 2.0 * w - fu - fw * b2) / m;
            q.value += c * f;
            q.gradient[i] += c * fu;
            q.gradient[j] += c * fw;
            q.hessian[i][i] += c * fuu;
            q.hessian[j][j] += c * fww;
            q.hessian[i][j] += c * fuw;
            q.hessian[j][i] += c * fuw;
        }
        q
    }

    fn reducing_t(&self, x: &[f64]) -> Quadratic {
        self.quadratic(x, |f| f.reducing.t_k, |b| (b.beta_t, b.t))
    }
    fn reducing_v(&self, x: &[f64]) -> Quadratic {
        self.quadratic(x, |f| 1.0 / f.reducing.rho_mol_m3, |b| (b.beta_v, b.v))
    }
    /// Finds the reducing temperature (K) and density (mol/m3) at a composition.
    pub fn reducing(&self, x: &[f64]) -> (f64, f64) {
        (self.reducing_t(x).value, 1.0 / self.reducing_v(x).value)
    }

    /// Evaluates the residual energy at fixed composition.
    pub fn residual(&self, x: &[f64], tau: f64, delta: f64) -> Derivatives {
        let mut sum = Derivatives::default();
        for (x, fluid) in x.iter().zip(&self.fluids) {
            sum.add(*x, &fluid.residual.evaluate(tau, delta));
        }
        for binary in &self.binaries {
            if let Some((weight, function)) = &binary.departure {
                sum.add(weight * x[binary.i] * x[binary.j], &function.evaluate(tau, delta));
            }
        }
        sum
    }

    /// Evaluates the ideal-gas energy less ln(rho / 1 mol/m3): value, T-scaled first and second derivatives by 1/T.
    pub fn ideal(&self, x: &[f64], t: f64) -> [f64; 3] {
        let mut sum = [0.0; 3];
        for (x, fluid) in x.iter().zip(&self.fluids) {
            if *x <= 0.0 {
                continue;
            }
            let part = fluid.ideal.evaluate(fluid.reducing.t_k / t);
            let scale = x * fluid.gas_constant / self.gas_constant;
            sum[0] += scale * part[0] + x * (log(*x) - log(fluid.reducing.rho_mol_m3));
            sum[1] += scale * part[1];
            sum[2] += scale * part[2];
        }
        sum
    }

    /// Expands the residual energy in molar densities and temperature, to second order.
    pub fn expand(&self, t: f64, rho: &[f64]) -> Expansion {
        let n = rho.len();
        let total: f64 = rho.iter().sum();
        let x: Vec<f64> = rho.iter().map(|r| r / total).collect();
        let (qt, qv) = (self.reducing_t(&x), self.reducing_v(&x));
        let (tau, delta) = (qt.value / t, total * qv.value);
        // Gradients and Hessians of tau and delta by the molar densities and by temperature (index n).
        let by_density = |q: &Quadratic| {
            let mean: f64 = x.iter().zip(&q.gradient).map(|(x, g)| x * g).sum();
            let row: Vec<f64> = q.hessian.iter().map(|h| x.iter().zip(h).map(|(x, h)| x * h).sum()).collect();
            let both: f64 = x.iter().zip(&row).map(|(x, r)| x * r).sum();
            let first: Vec<f64> = q.gradient.iter().map(|g| (g - mean) / total).collect();
            let second: Vec<Vec<f64>> = (0..n)
                .map(|i| {
                    (0..n)
                        .map(|j| {
                            (q.hessian[i][j] - row[i] - row[j] + both
                                - (q.gradient[i] + q.gradient[j] - 2.0 * mean))
                                / (total * total)
                        })
                        .collect()
                })
                .collect();
            (first, second)
        };
        let (t1, t2) = by_density(&qt);
        let (v1, v2) = by_density(&qv);
        let mut ta = vec![0.0; n + 1];
        let mut de = vec![0.0; n + 1];
        let mut tah = vec![vec![0.0; n + 1]; n + 1];
        let mut deh = vec![vec![0.0; n + 1]; n + 1];
        for i in 0..n {
            ta[i] = t1[i] / t;
            de[i] = qv.value + total * v1[i];
            tah[i][n] = -ta[i] / t;
            tah[n][i] = tah[i][n];
            for j in 0..n {
                tah[i][j] = t2[i][j] / t;
                deh[i][j] = v1[i] + v1[j] + total * v2[i][j];
            }
        }
        ta[n] = -tau / t;
        tah[n][n] = 2.0 * tau / (t * t);
        // The energy and its derivatives by tau, delta (unscaled here) and by each mole fraction.
        let unscale = |d: &Derivatives| {
            [d.a, d.t / tau, d.d / delta, d.tt / (tau * tau), d.dt / (tau * delta), d.dd / (delta * delta)]
        };
        let mut all = [0.0; 6];
        let mut ax = vec![[0.0; 6]; n];
        let mut axx = vec![vec![0.0; n]; n];
        for (k, fluid) in self.fluids.iter().enumerate() {
            let a = unscale(&fluid.residual.evaluate(tau, delta));
            for m in 0..6 {
                all[m] += x[k] * a[m];
                ax[k][m] += a[m];
            }
        }
        for binary in &self.binaries {
            if let Some((weight, function)) = &binary.departure {
                let (i, j) = (binary.i, binary.j);
                let a = unscale(&function.evaluate(tau, delta));
                for m in 0..6 {
                    all[m] += weight * x[i] * x[j] * a[m];
                    ax[i][m] += weight * x[j] * a[m];
                    ax[j][m] += weight * x[i] * a[m];
                }
                axx[i][j] += weight * a[0];
                axx[j][i] += weight * a[0];
            }
        }
        let [a, at, ad, att, atd, add] = all;
        // dx_k/drho_i = (k == i) - x_k, over the total; second derivative likewise.
        let weighted = |m: usize| -> f64 { x.iter().zip(&ax).map(|(x, row)| x * row[m]).sum() };
        let (m0, m1, m2) = (weighted(0), weighted(1), weighted(2));
        let xrow: Vec<f64> = axx.iter().map(|h| x.iter().zip(h).map(|(x, h)| x * h).sum()).collect();
        let xboth: f64 = x.iter().zip(&xrow).map(|(x, r)| x * r).sum();
        // First derivative by rho_i through x, of A, A_tau and A_delta.
        let through = |i: usize, m: usize, mean: f64| if i < n { (ax[i][m] - mean) / total } else { 0.0 };
        let mut g = vec![0.0; n + 1];
        let mut h = vec![vec![0.0; n + 1]; n + 1];
        for i in 0..=n {
            g[i] = at * ta[i] + ad * de[i] + through(i, 0, m0);
        }
        for i in 0..=n {
            for j in 0..=n {
                let mut sum = att * ta[i] * ta[j]
                    + add * de[i] * de[j]
                    + atd * (ta[i] * de[j] + ta[j] * de[i])
                    + at * tah[i][j]
                    + ad * deh[i][j]
                    + ta[i] * through(j, 1, m1)
                    + ta[j] * through(i, 1, m1)
                    + de[i] * through(j, 2, m2)
                    + de[j] * through(i, 2, m2);
                if i < n && j < n {
                    sum += (axx[i][j] - xrow[i] - xrow[j] + xboth) / (total * total);
                    sum -= (ax[i][0] + ax[j][0] - 2.0 * m0) / (total * total);
                }
                h[i][j] = sum;
            }
        }
        let mut gradient = vec![0.0; n + 1];
        let mut hessian = vec![vec![0.0; n + 1]; n + 1];
        for i in 0..=n {
            gradient[i] = total * g[i] + if i < n { a } else { 0.0 };
            for j in 0..=n {
                hessian[i][j] =
                    total * h[i][j] + if i < n { g[j] } else { 0.0 } + if j < n { g[i] } else { 0.0 };
            }
        }
        Expansion { phi: total * a, gradient, hessian }
    }
}

/// Finds the published parameters of a pair, in either order.
fn published<'l>(library: &'l Library, a: &str, b: &str) -> Option<&'l Pair> {
    let of = |p: &&Pair| (p.pair[0] == a && p.pair[1] == b) || (p.pair[1] == a && p.pair[0] == b);
    library.pairs.pairs.iter().find(of)
}

/// Finds what stands for a pair without published parameters; none where only the combining rule does.
fn estimate(library: &Library, a: &str, b: &str) -> Result<Option<EstimatedPair>, String> {
    for family in &library.pairs.estimated {
        for pair in &family.pairs {
            if !((pair[0] == a && pair[1] == b) || (pair[1] == a && pair[0] == b)) {
                continue;
            }
            let pair = pair.clone();
            return match (&family.homologue, &family.fit) {
                (Some([like_a, like_b]), None) => {
                    let like = published(library, like_a, like_b)
                        .ok_or_else(|| format!("no published pair {like_a} + {like_b}"))?;
                    let [beta_t, gamma_t, beta_v, gamma_v] =
                        like.gerg.ok_or_else(|| format!("{like_a} + {like_b}: not in the GERG form"))?;
                    let gerg = if like.pair[0] == *like_a {
                        [beta_t, gamma_t, beta_v, gamma_v]
                    } else {
                        [1.0 / beta_t, gamma_t, 1.0 / beta_v, gamma_v]
                    };
                    Ok(Some(EstimatedPair { pair, estimate: Estimate::Homologue, gerg }))
                }
                (None, Some(name)) => {
                    let gamma = library.fitted.gamma_t.get(name).copied().or(family.start);
                    let gamma = gamma.ok_or_else(|| format!("no fit {name}"))?;
                    let gerg = [1.0, gamma, 1.0, 1.0];
                    Ok(Some(EstimatedPair { pair, estimate: Estimate::Fitted, gerg }))
                }
                _ => Err(format!("{a} + {b}: give a homologue or a fit")),
            };
        }
    }
    Ok(None)
}
