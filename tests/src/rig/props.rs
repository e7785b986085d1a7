//! Refrigerant properties as the rig sees them: enthalpy and pressure in, everything else out.
//!
//! The crate's own tables are sampled once a refrigerant on a grid of pressure and enthalpy and interpolated with
//! cubics, so that a state costs one look-up and its derivatives are continuous.

use libm::{exp, log};

/// Nodes over the logarithm of pressure.
pub(super) const NP: usize = 120;
/// Vapour nodes over enthalpy above saturated vapour.
pub(super) const NH: usize = 36;
/// Liquid nodes over enthalpy below saturated liquid.
pub(super) const NL: usize = 16;

/// Transport figures of a refrigerant near 25 degC, rounded, from memory: enough for film coefficients.
#[derive(Clone, Copy, Debug)]
pub struct Transport {
    /// Liquid thermal conductivity, W/(m K).
    pub k_liquid: f64,
    /// Liquid viscosity, Pa s.
    pub mu_liquid: f64,
    /// Vapour thermal conductivity, W/(m K).
    pub k_vapor: f64,
    /// Vapour viscosity, Pa s.
    pub mu_vapor: f64,
    /// Molar mass, g/mol.
    pub molar_mass: f64,
}

/// Start and spacing of a refrigerant's grid.
#[derive(Clone, Copy, Debug)]
pub(super) struct Grid {
    /// ln of the lowest pressure.
    pub l0: f64,
    /// Spacing in ln pressure.
    pub dl: f64,
    /// Spacing in vapour enthalpy.
    pub dh_vapor: f64,
    /// Spacing in liquid enthalpy.
    pub dh_liquid: f64,
}

/// What is known at one pressure.
#[derive(Clone, Debug)]
pub(super) struct Node {
    /// Bubble and dew temperature, liquid and vapour enthalpy.
    pub sat: [f64; 4],
    /// Temperature, ln specific volume, entropy.
    pub vapor: [[f64; 3]; NH],
    /// Temperature, ln specific volume.
    pub liquid: [[f64; 2]; NL],
}

/// One refrigerant, sampled.
#[derive(Clone, Debug)]
pub struct Fluid {
    /// Designation.
    pub name: &'static str,
    l0: f64,
    dl: f64,
    dh_vapor: f64,
    dh_liquid: f64,
    nodes: Vec<Node>,
    /// ln bubble pressure over a uniform grid of saturated-liquid enthalpy.
    inverse: Vec<f64>,
    inverse_h0: f64,
    inverse_dh: f64,
    /// Lowest and highest pressure of the grid, Pa.
    pub range: (f64, f64),
    /// Critical pressure, Pa.
    pub critical_pressure: f64,
    /// Transport figures.
    pub transport: Transport,
}

/// Saturation at one pressure, with the weights that look-ups at this pressure reuse.
#[derive(Clone, Copy, Debug)]
pub struct Sat {
    /// Pressure, Pa.
    pub p: f64,
    /// Bubble temperature, K.
    pub t_bubble: f64,
    /// Dew temperature, K.
    pub t_dew: f64,
    /// Saturated liquid enthalpy, J/kg.
    pub h_liquid: f64,
    /// Saturated vapour enthalpy, J/kg.
    pub h_vapor: f64,
    /// Saturated liquid specific volume, m3/kg.
    pub v_liquid: f64,
    /// Saturated vapour specific volume, m3/kg.
    pub v_vapor: f64,
    i: usize,
    w: [f64; 4],
}

/// A state at given pressure and enthalpy.
#[derive(Clone, Copy, Debug)]
pub struct State {
    /// Temperature, K.
    pub t: f64,
    /// Specific volume without slip, m3/kg.
    pub v: f64,
    /// Quality; below 0 liquid, above 1 vapour.
    pub x: f64,
    /// Temperature change per enthalpy change, K kg/J.
    pub dt_dh: f64,
}

fn weights(t: f64) -> [f64; 4] {
    let (t2, t3) = (t * t, t * t * t);
    [
        0.5 * (-t + 2.0 * t2 - t3),
        0.5 * (2.0 - 5.0 * t2 + 3.0 * t3),
        0.5 * (t + 4.0 * t2 - 3.0 * t3),
        0.5 * (t3 - t2),
    ]
}

fn slopes(t: f64) -> [f64; 4] {
    let t2 = t * t;
    [
        0.5 * (-1.0 + 4.0 * t - 3.0 * t2),
        0.5 * (-10.0 * t + 9.0 * t2),
        0.5 * (1.0 + 8.0 * t - 9.0 * t2),
        0.5 * (3.0 * t2 - 2.0 * t),
    ]
}

/// Value at node `i - 1 + k`, with the first and last interval continued as a parabola.
fn ghost(get: impl Fn(usize) -> f64, n: usize, i: usize, k: usize) -> f64 {
    let j = i as isize - 1 + k as isize;
    if j < 0 {
        3.0 * get(0) - 3.0 * get(1) + get(2)
    } else if j as usize >= n {
        3.0 * get(n - 1) - 3.0 * get(n - 2) + get(n - 3)
    } else {
        get(j as usize)
    }
}

fn locate(x: f64, n: usize) -> (usize, f64) {
    let i = (x.max(0.0) as usize).min(n - 2);
    (i, x - i as f64)
}

impl Fluid {
    /// Saturation at a pressure, Pa.
    pub fn sat(&self, p: f64) -> Sat {
        let p = p.clamp(self.range.0 * 0.5, self.range.1 * 1.15);
        let x = (log(p) - self.l0) / self.dl;
        let i = locate(x, NP).0.clamp(1, NP - 3);
        let t = x - i as f64;
        let w = weights(t);
        let mut s = [0.0; 6];
        for k in 0..4 {
            let node = &self.nodes[i - 1 + k];
            for (a, b) in s.iter_mut().zip(node.sat.iter()) {
                *a += w[k] * b;
            }
            s[4] += w[k] * node.liquid[0][1];
            s[5] += w[k] * node.vapor[0][1];
        }
        Sat {
            p,
            t_bubble: s[0],
            t_dew: s[1],
            h_liquid: s[2],
            h_vapor: s[3],
            v_liquid: exp(s[4]),
            v_vapor: exp(s[5]),
            i,
            w,
        }
    }

    fn vapor3(&self, sat: &Sat, h: f64) -> ([f64; 3], f64) {
        let x = (h - sat.h_vapor) / self.dh_vapor;
        let (j, _) = locate(x, NH);
        // Past the last node the last cubic would run away: continue it as a line there.
        let t = (x - j as f64).min(1.0);
        let over = x - j as f64 - t;
        let (wh, dh) = (weights(t), slopes(t));
        let mut out = [0.0; 3];
        let mut der = [0.0; 3];
        for k in 0..4 {
            let node = &self.nodes[sat.i - 1 + k];
            for q in 0..4 {
                for c in 0..3 {
                    let f = ghost(|n| node.vapor[n][c], NH, j, q);
                    out[c] += sat.w[k] * wh[q] * f;
                    der[c] += sat.w[k] * dh[q] * f;
                }
            }
        }
        for c in 0..3 {
            out[c] += over * der[c];
        }
        (out, der[0] / self.dh_vapor)
    }

    fn liquid2(&self, sat: &Sat, h: f64) -> ([f64; 2], f64) {
        let x = (sat.h_liquid - h) / self.dh_liquid;
        let (j, _) = locate(x, NL);
        let t = (x - j as f64).min(1.0);
        let over = x - j as f64 - t;
        let (wh, dh) = (weights(t), slopes(t));
        let mut out = [0.0; 2];
        let mut der = [0.0; 2];
        for k in 0..4 {
            let node = &self.nodes[sat.i - 1 + k];
            for q in 0..4 {
                for c in 0..2 {
                    let f = ghost(|n| node.liquid[n][c], NL, j, q);
                    out[c] += sat.w[k] * wh[q] * f;
                    der[c] += sat.w[k] * dh[q] * f;
                }
            }
        }
        for c in 0..2 {
            out[c] += over * der[c];
        }
        (out, -der[0] / self.dh_liquid)
    }

    /// State at a saturation's pressure and an enthalpy, J/kg.
    pub fn state(&self, sat: &Sat, h: f64) -> State {
        let latent = sat.h_vapor - sat.h_liquid;
        let x = (h - sat.h_liquid) / latent;
        if x >= 1.0 {
            let (f, d) = self.vapor3(sat, h);
            State { t: f[0], v: exp(f[1]), x, dt_dh: d }
        } else if x <= 0.0 {
            let (f, d) = self.liquid2(sat, h);
            State { t: f[0], v: exp(f[1]), x, dt_dh: d }
        } else {
            let glide = sat.t_dew - sat.t_bubble;
            State {
                t: sat.t_bubble + x * glide,
                v: sat.v_liquid + x * (sat.v_vapor - sat.v_liquid),
                x,
                dt_dh: glide / latent,
            }
        }
    }

    /// Temperature at pressure and enthalpy, K.
    pub fn temperature(&self, p: f64, h: f64) -> f64 {
        self.state(&self.sat(p), h).t
    }

    /// Entropy of vapour, J/(kg K); below saturation, that of saturated vapour less the latent share.
    pub fn entropy(&self, sat: &Sat, h: f64) -> f64 {
        if h >= sat.h_vapor {
            self.vapor3(sat, h).0[2]
        } else {
            self.vapor3(sat, sat.h_vapor).0[2] - (sat.h_vapor - h) / (0.5 * (sat.t_dew + sat.t_bubble))
        }
    }

    /// Enthalpy at a pressure and entropy of vapour.
    pub fn enthalpy_at_entropy(&self, sat: &Sat, s: f64) -> f64 {
        let mut h = sat.h_vapor + (s - self.vapor3(sat, sat.h_vapor).0[2]) * sat.t_dew;
        for _ in 0..6 {
            let t =
                if h >= sat.h_vapor { self.vapor3(sat, h).0[0] } else { 0.5 * (sat.t_dew + sat.t_bubble) };
            h += (s - self.entropy(sat, h)) * t;
        }
        h
    }

    /// Enthalpy of vapour at a pressure and temperature, at or above dew.
    pub fn vapor_enthalpy(&self, p: f64, t: f64) -> f64 {
        let sat = self.sat(p);
        let mut h = sat.h_vapor + (t - sat.t_dew) * 1000.0;
        for _ in 0..8 {
            let (f, d) = self.vapor3(&sat, h.max(sat.h_vapor));
            h = h.max(sat.h_vapor) + (t - f[0]) / d;
        }
        h
    }

    /// Enthalpy of liquid at a pressure and temperature, at or below bubble.
    pub fn liquid_enthalpy(&self, p: f64, t: f64) -> f64 {
        let sat = self.sat(p);
        let mut h = sat.h_liquid + (t - sat.t_bubble) * 1500.0;
        for _ in 0..8 {
            let (f, d) = self.liquid2(&sat, h.min(sat.h_liquid));
            h = h.min(sat.h_liquid) + (t - f[0]) / d;
        }
        h
    }

    /// Pressure at which liquid of this enthalpy starts to boil, Pa.
    pub fn flash_pressure(&self, h: f64) -> f64 {
        let n = self.inverse.len();
        let (j, t) = locate((h - self.inverse_h0) / self.inverse_dh, n);
        let w = weights(t);
        let mut l = 0.0;
        for q in 0..4 {
            l += w[q] * ghost(|k| self.inverse[k], n, j, q);
        }
        exp(l)
    }

    /// Dew pressure at a temperature, Pa.
    pub fn dew_pressure(&self, t: f64) -> f64 {
        self.pressure_at(t, |s| s.t_dew)
    }

    /// Bubble pressure at a temperature, Pa.
    pub fn bubble_pressure(&self, t: f64) -> f64 {
        self.pressure_at(t, |s| s.t_bubble)
    }

    /// Pressure whose mean of bubble and dew temperature is `t`, Pa.
    pub fn mean_pressure(&self, t: f64) -> f64 {
        self.pressure_at(t, |s| 0.5 * (s.t_dew + s.t_bubble))
    }

    fn pressure_at(&self, t: f64, f: impl Fn(&Sat) -> f64) -> f64 {
        let (mut lo, mut hi) = (0usize, NP - 1);
        let at = |i: usize| exp(self.l0 + i as f64 * self.dl);
        while hi - lo > 1 {
            let mid = (lo + hi) / 2;
            if f(&self.sat(at(mid))) < t { lo = mid } else { hi = mid }
        }
        let mut a = self.l0 + lo as f64 * self.dl;
        for _ in 0..5 {
            let e = 1e-4;
            let y = f(&self.sat(exp(a)));
            let g = (f(&self.sat(exp(a + e))) - y) / e;
            a += (t - y) / g;
        }
        exp(a)
    }

    /// Puts sampled nodes together.
    pub(super) fn new(
        name: &'static str,
        grid: Grid,
        nodes: Vec<Node>,
        critical_pressure: f64,
        transport: Transport,
    ) -> Fluid {
        let Grid { l0, dl, dh_vapor, dh_liquid } = grid;
        let range = (exp(l0), exp(l0 + dl * (NP - 1) as f64));
        let mut fluid = Fluid {
            name,
            l0,
            dl,
            dh_vapor,
            dh_liquid,
            nodes,
            inverse: Vec::new(),
            inverse_h0: 0.0,
            inverse_dh: 1.0,
            range,
            critical_pressure,
            transport,
        };
        let n = 240;
        let (h0, h1) = (fluid.sat(range.0).h_liquid, fluid.sat(range.1).h_liquid);
        fluid.inverse_h0 = h0;
        fluid.inverse_dh = (h1 - h0) / (n - 1) as f64;
        for k in 0..n {
            let h = h0 + fluid.inverse_dh * k as f64;
            let l = super::math::root(l0 - 0.01, l0 + dl * (NP - 1) as f64 + 0.01, |l| {
                fluid.sat(exp(l)).h_liquid - h
            });
            fluid.inverse.push(l.unwrap_or(l0));
        }
        fluid
    }
}
