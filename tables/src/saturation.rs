//! Bubble and dew points: a bulk phase of fixed composition in equilibrium with the first of the other phase.
//!
//! The unknowns are the logarithms of the incipient phase's molar densities, of the bulk density and of temperature;
//! the equations are equal fugacity of every component, equal pressure, and one specification. Nothing inside needs
//! a density root, so the solver works unchanged into the critical region. A branch is followed from a cold, nearly
//! ideal start towards the critical point in the logarithm of the density ratio, which never turns.

use crate::linear::solve;
use crate::mixture::{Expansion, Mixture};
use libm::{exp, log};

/// Which saturation curve.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// The bulk is liquid.
    Bubble,
    /// The bulk is vapor.
    Dew,
}

/// What fixes the point on the curve.
#[derive(Clone, Copy, Debug)]
pub enum Specification {
    /// Temperature, K.
    Temperature(f64),
    /// Pressure, Pa.
    Pressure(f64),
    /// Natural logarithm of bulk over incipient density: positive on the bubble branch, negative on the dew branch.
    Ratio(f64),
}

/// A point on a saturation curve.
#[derive(Clone, Debug)]
pub struct Point {
    /// Temperature, K.
    pub t: f64,
    /// Pressure, Pa.
    pub p: f64,
    /// Molar density of the bulk, mol/m3.
    pub bulk: f64,
    /// Molar densities of the incipient phase by component, mol/m3.
    pub incipient: Vec<f64>,
}

impl Point {
    /// Logarithm of bulk over incipient density.
    pub fn ratio(&self) -> f64 {
        log(self.bulk / self.incipient.iter().sum::<f64>())
    }
    fn unknowns(&self) -> Vec<f64> {
        let mut y: Vec<f64> = self.incipient.iter().map(|w| log(*w)).collect();
        y.push(log(self.bulk));
        y.push(log(self.t));
        y
    }
    fn from_unknowns(y: &[f64]) -> Self {
        let n = y.len() - 2;
        Self {
            t: exp(y[n + 1]),
            p: f64::NAN,
            bulk: exp(y[n]),
            incipient: y[..n].iter().map(|v| exp(*v)).collect(),
        }
    }
    /// Interpolates (or extrapolates) between two points in their unknowns; 0 gives the first, 1 the second.
    fn between(a: &Self, b: &Self, f: f64) -> Self {
        let (ya, yb) = (a.unknowns(), b.unknowns());
        let y: Vec<f64> = ya.iter().zip(&yb).map(|(a, b)| a + f * (b - a)).collect();
        Self::from_unknowns(&y)
    }
}

/// p/(R T) of an expansion, its derivative by temperature and by each density.
pub(crate) fn pressure(rho: &[f64], e: &Expansion) -> (f64, f64, Vec<f64>) {
    let n = rho.len();
    let total: f64 = rho.iter().sum();
    let value = total - e.phi + (0..n).map(|i| rho[i] * e.gradient[i]).sum::<f64>();
    let by_t = -e.gradient[n] + (0..n).map(|i| rho[i] * e.hessian[i][n]).sum::<f64>();
    let by_rho = (0..n).map(|j| 1.0 + (0..n).map(|i| rho[i] * e.hessian[i][j]).sum::<f64>()).collect();
    (value, by_t, by_rho)
}

/// Solves for the point that meets a specification, from a guess.
pub fn solve_point(
    mixture: &Mixture,
    z: &[f64],
    kind: Kind,
    guess: &Point,
    specification: Specification,
) -> Option<Point> {
    let n = z.len();
    let mut y = guess.unknowns();
    let mut last = f64::INFINITY;
    for iteration in 0..40 {
        let point = Point::from_unknowns(&y);
        let t = point.t;
        let w = &point.incipient;
        let b: Vec<f64> = z.iter().map(|z| z * point.bulk).collect();
        let (ew, eb) = (mixture.expand(t, w), mixture.expand(t, &b));
        let (pw, pw_t, pw_rho) = pressure(w, &ew);
        let (pb, pb_t, pb_rho) = pressure(&b, &eb);
        let mut jacobian = vec![vec![0.0; n + 2]; n + 2];
        let mut residual = vec![0.0; n + 2];
        for i in 0..n {
            residual[i] = y[i] + ew.gradient[i] - log(b[i]) - eb.gradient[i];
            for j in 0..n {
                jacobian[i][j] = ew.hessian[i][j] * w[j] + if i == j { 1.0 } else { 0.0 };
            }
            jacobian[i][n] = -1.0 - (0..n).map(|j| eb.hessian[i][j] * b[j]).sum::<f64>();
            jacobian[i][n + 1] = t * (ew.hessian[i][n] - eb.hessian[i][n]);
        }
        // The pressure balance in units of the vapor's density.
        let vapor = match kind {
            Kind::Bubble => w.iter().sum::<f64>(),
            Kind::Dew => point.bulk,
        };
        residual[n] = (pw - pb) / vapor;
        for j in 0..n {
            jacobian[n][j] = pw_rho[j] * w[j] / vapor;
        }
        jacobian[n][n] = -(0..n).map(|j| pb_rho[j] * b[j]).sum::<f64>() / vapor;
        jacobian[n][n + 1] = t * (pw_t - pb_t) / vapor;
        match specification {
            Specification::Temperature(target) => {
                residual[n + 1] = y[n + 1] - log(target);
                jacobian[n + 1][n + 1] = 1.0;
            }
            Specification::Ratio(target) => {
                let total: f64 = w.iter().sum();
                residual[n + 1] = y[n] - log(total) - target;
                jacobian[n + 1][n] = 1.0;
                for j in 0..n {
                    jacobian[n + 1][j] = -w[j] / total;
                }
            }
            Specification::Pressure(target) => {
                // In units of its own size, not as a logarithm: a trial liquid may have a negative pressure.
                let (p, p_t) = match kind {
                    Kind::Bubble => (pw, pw_t),
                    Kind::Dew => (pb, pb_t),
                };
                let scale = mixture.gas_constant * t / target;
                residual[n + 1] = p * scale - 1.0;
                jacobian[n + 1][n + 1] = scale * (p + t * p_t);
                match kind {
                    Kind::Bubble => {
                        for j in 0..n {
                            jacobian[n + 1][j] = scale * pw_rho[j] * w[j];
                        }
                    }
                    Kind::Dew => {
                        jacobian[n + 1][n] = scale * (0..n).map(|j| pb_rho[j] * b[j]).sum::<f64>();
                    }
                }
            }
        }
        let size = residual.iter().fold(0.0f64, |m, r| m.max(r.abs()));
        if !size.is_finite() {
            return None;
        }
        let step = solve(jacobian, residual)?;
        let longest = step.iter().fold(0.0f64, |m, s| m.max(s.abs()));
        let damping = if longest > 0.4 { 0.4 / longest } else { 1.0 };
        y.iter_mut().zip(&step).for_each(|(y, s)| *y -= damping * s);
        let done = longest < 1e-9 || (longest < 1e-7 && longest > 0.5 * last);
        if done && iteration > 0 {
            let mut point = Point::from_unknowns(&y);
            let w = match kind {
                Kind::Bubble => point.incipient.clone(),
                Kind::Dew => z.iter().map(|z| z * point.bulk).collect(),
            };
            let e = mixture.expand(point.t, &w);
            point.p = pressure(&w, &e).0 * mixture.gas_constant * point.t;
            let right = match kind {
                Kind::Bubble => point.ratio() > 1e-4,
                Kind::Dew => point.ratio() < -1e-4,
            };
            return (right && point.p > 0.0).then_some(point);
        }
        last = longest;
    }
    None
}

/// Finds the density at which the liquid of a composition has no pressure.
fn free_liquid(mixture: &Mixture, x: &[f64], t: f64) -> Option<f64> {
    let (tr, rho_r) = mixture.reducing(x);
    let z = |delta: f64| 1.0 + mixture.residual(x, tr / t, delta).d;
    let mut high = 3.8;
    // The first sign change coming down from a compressed liquid.
    while high > 1.5 {
        let low = high - 0.04;
        if z(high) > 0.0 && z(low) <= 0.0 {
            let (mut a, mut b) = (low, high);
            for _ in 0..50 {
                let middle = 0.5 * (a + b);
                if z(middle) > 0.0 {
                    b = middle;
                } else {
                    a = middle;
                }
            }
            return Some(0.5 * (a + b) * rho_r);
        }
        high = low;
    }
    None
}

/// Finds a first point on each curve, cold enough that the vapor is nearly ideal: bubble, dew.
fn start(mixture: &Mixture, z: &[f64]) -> Option<(Point, Point)> {
    let (tr, _) = mixture.reducing(z);
    for step in 0..12 {
        let t = tr * (0.62 - 0.02 * f64::from(step));
        if let Some(found) = start_at(mixture, z, t) {
            return Some(found);
        }
    }
    None
}

fn start_at(mixture: &Mixture, z: &[f64], t: f64) -> Option<(Point, Point)> {
    let vapor = |x: &[f64]| -> Option<(f64, Vec<f64>)> {
        let rho = free_liquid(mixture, x, t)?;
        let b: Vec<f64> = x.iter().map(|x| x * rho).collect();
        let e = mixture.expand(t, &b);
        Some((rho, b.iter().zip(&e.gradient).map(|(b, g)| b * exp(*g)).collect()))
    };
    let (bulk, incipient) = vapor(z)?;
    let bubble = solve_point(
        mixture,
        z,
        Kind::Bubble,
        &Point { t, p: 0.0, bulk, incipient },
        Specification::Temperature(t),
    )?;
    // The dew liquid by successive substitution against an ideal vapor.
    let mut x = z.to_vec();
    let mut rho = bulk;
    let mut total = 0.0;
    for _ in 0..60 {
        let (r, w) = vapor(&x)?;
        rho = r;
        let raw: Vec<f64> = (0..z.len()).map(|i| x[i] * z[i] / w[i]).collect();
        let sum: f64 = raw.iter().sum();
        x = raw.iter().map(|v| v / sum).collect();
        total = 1.0 / sum;
    }
    let liquid = x.iter().map(|x| x * rho).collect();
    let dew = solve_point(
        mixture,
        z,
        Kind::Dew,
        &Point { t, p: 0.0, bulk: total, incipient: liquid },
        Specification::Temperature(t),
    )?;
    Some((bubble, dew))
}

/// Finds the bubble and the dew point at a pressure (Pa), without following the whole boundary.
pub fn at_pressure(mixture: &Mixture, z: &[f64], pressure: f64) -> Option<(Point, Point)> {
    let (bubble, dew) = start(mixture, z)?;
    let walk = |kind: Kind, first: Point| -> Option<Point> {
        let mut point = first;
        loop {
            let step = log(pressure / point.p).clamp(-0.5, 0.5);
            let target = if step.abs() < 0.5 { pressure } else { point.p * exp(step) };
            point = solve_point(mixture, z, kind, &point, Specification::Pressure(target))?;
            if step.abs() < 0.5 {
                return Some(point);
            }
        }
    };
    Some((walk(Kind::Bubble, bubble)?, walk(Kind::Dew, dew)?))
}

/// One branch of the saturation boundary, followed from `t_min` to the critical point.
#[derive(Clone, Debug)]
pub struct Branch {
    kind: Kind,
    /// Points in the order of falling density ratio, that is from cold to critical.
    pub points: Vec<Point>,
}

impl Branch {
    /// Follows a branch both ways from a first point.
    fn follow(mixture: &Mixture, z: &[f64], kind: Kind, first: Point, t_min: f64) -> Result<Self, String> {
        let sign = if kind == Kind::Bubble { 1.0 } else { -1.0 };
        let mut points = vec![first.clone()];
        // Down in temperature, in equal steps of its logarithm.
        while points[0].t > t_min {
            let mut step = 0.03;
            loop {
                let target = (points[0].t * (1.0 - step)).max(t_min - 1e-9);
                let guess = match points.get(1) {
                    Some(next) => {
                        let f = (log(target) - log(points[0].t)) / (log(next.t) - log(points[0].t));
                        Point::between(&points[0], next, f)
                    }
                    None => Point { t: target, ..points[0].clone() },
                };
                if let Some(p) = solve_point(mixture, z, kind, &guess, Specification::Temperature(target)) {
                    points.insert(0, p);
                    break;
                }
                step *= 0.5;
                if step < 1e-4 {
                    return Err(format!("{kind:?} branch stops at {:.2} K going down", points[0].t));
                }
            }
        }
        // Up to the critical point, in steps of the density ratio.
        loop {
            let last = &points[points.len() - 1];
            let ratio = last.ratio().abs();
            if ratio <= 0.0501 {
                break;
            }
            let mut step = (0.12 * ratio).clamp(0.05, 0.25);
            loop {
                let target = (ratio - step).max(0.05);
                let guess = if points.len() > 1 {
                    let before = &points[points.len() - 2];
                    let f = (sign * target - before.ratio()) / (last.ratio() - before.ratio());
                    Point::between(before, last, f)
                } else {
                    last.clone()
                };
                if let Some(p) = solve_point(mixture, z, kind, &guess, Specification::Ratio(sign * target)) {
                    points.push(p);
                    break;
                }
                step *= 0.5;
                if step < 1e-4 {
                    return Err(format!("{kind:?} branch stops at {:.2} K going up", last.t));
                }
            }
        }
        Ok(Self { kind, points })
    }

    /// Solves for the point at a temperature or pressure, the first met coming from the cold end.
    pub fn at(&self, mixture: &Mixture, z: &[f64], specification: Specification) -> Option<Point> {
        let (target, read): (f64, fn(&Point) -> f64) = match specification {
            Specification::Temperature(t) => (log(t), |p| log(p.t)),
            Specification::Pressure(p) => (log(p), |q| log(q.p)),
            Specification::Ratio(s) => (-s.abs(), |p| -p.ratio().abs()),
        };
        let k = self.points.iter().position(|p| read(p) >= target)?.max(1);
        let (a, b) = (self.points.get(k - 1)?, self.points.get(k)?);
        let f = (target - read(a)) / (read(b) - read(a));
        solve_point(mixture, z, self.kind, &Point::between(a, b, f), specification)
    }
}

/// The saturation boundary of one composition.
#[derive(Clone, Debug)]
pub struct Boundary {
    /// The bubble branch.
    pub bubble: Branch,
    /// The dew branch.
    pub dew: Branch,
    /// Critical temperature, K.
    pub t_critical: f64,
    /// Critical pressure, Pa.
    pub p_critical: f64,
    /// Critical density, mol/m3.
    pub rho_critical: f64,
}

impl Boundary {
    /// Finds the temperature, K, up to which both branches rise steadily.
    ///
    /// Where an equation of state has a second loop near its critical point, a branch turns back and jumps there;
    /// nothing above that is an equilibrium to rely on.
    pub fn regular_to(&self) -> f64 {
        let rises = |branch: &Branch| {
            let turn = branch.points.windows(2).find(|w| w[1].t < w[0].t);
            turn.map_or(f64::INFINITY, |w| w[0].t)
        };
        rises(&self.bubble).min(rises(&self.dew))
    }

    /// Follows both branches from `t_min` to the critical point, and reads that between them.
    pub fn trace(mixture: &Mixture, z: &[f64], t_min: f64) -> Result<Self, String> {
        let (first_bubble, first_dew) = start(mixture, z).ok_or("no cold starting point found")?;
        let bubble = Branch::follow(mixture, z, Kind::Bubble, first_bubble, t_min)?;
        let dew = Branch::follow(mixture, z, Kind::Dew, first_dew, t_min)?;
        // Both branches are one smooth curve in the signed density ratio; the critical point is its zero.
        let mut nodes = Vec::new();
        for ratio in [0.06, 0.12, 0.2, 0.3] {
            for branch in [&bubble, &dew] {
                let sign = if branch.kind == Kind::Bubble { 1.0 } else { -1.0 };
                let p = branch
                    .at(mixture, z, Specification::Ratio(sign * ratio))
                    .ok_or_else(|| format!("{:?} branch: no point at density ratio {ratio}", branch.kind))?;
                nodes.push([p.ratio(), p.t, log(p.p), log(p.bulk)]);
            }
        }
        let zero = |value: usize| -> f64 {
            nodes
                .iter()
                .enumerate()
                .map(|(i, node)| {
                    let others = nodes.iter().enumerate().filter(|(j, _)| *j != i);
                    let share: f64 = others.map(|(_, other)| other[0] / (other[0] - node[0])).product();
                    share * node[value]
                })
                .sum()
        };
        Ok(Self { t_critical: zero(1), p_critical: exp(zero(2)), rho_critical: exp(zero(3)), bubble, dew })
    }
}
