//! A finned coil, marched segment by segment along its tube.
//!
//! Every segment sees its own share of the face air, has its own film coefficient, pressure drop, dry or wet
//! outside and refrigerant inventory. Nothing is split into zones beforehand: where boiling ends or subcooling
//! starts comes out of the march.

use super::air;
use super::math::{decay_mean, max_smooth, pos, step};
use super::props::{Fluid, Sat, State};
use libm::{exp, pow, sqrt};

/// Which side of the machine a coil is on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Role {
    /// Takes heat in.
    Evaporator,
    /// Gives heat off.
    Condenser,
}

/// Two-phase film coefficient laws.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Film {
    /// Boiling: Gungor and Winterton 1987. Condensing: Shah 1979.
    Local,
    /// Boiling: Pierre's mean coefficient. Condensing: equivalent Reynolds number of Akers et al. 1959.
    Mean,
}

/// Film coefficient parts that one march shares.
struct Films {
    liquid: f64,
    vapor: f64,
    g: f64,
    latent: f64,
    spread: f64,
    shah: f64,
    pierre: f64,
    akers: f64,
    root_ratio: f64,
}

/// Slip between vapour and liquid, for the inventory.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Slip {
    /// Zivi 1964: slip ratio is the cube root of the density ratio.
    Zivi,
    /// Rigot 1973: slip ratio 2.
    Rigot,
    /// Lockhart and Martinelli's parameter as fitted by Wallis.
    Wallis,
}

impl Slip {
    /// Share of the cross-section that vapour fills.
    pub fn void(self, fluid: &Fluid, sat: &Sat, x: f64) -> f64 {
        if x <= 0.0 {
            return 0.0;
        }
        if x >= 1.0 {
            return 1.0;
        }
        // The laws start and end infinitely steep; the ends are drawn as straight lines.
        if x < 0.01 {
            return x / 0.01 * self.void_inside(fluid, sat, 0.01);
        }
        if x > 0.97 {
            let a = self.void_inside(fluid, sat, 0.97);
            return a + (1.0 - a) * (x - 0.97) / 0.03;
        }
        self.void_inside(fluid, sat, x)
    }

    fn void_inside(self, fluid: &Fluid, sat: &Sat, x: f64) -> f64 {
        let ratio = sat.v_liquid / sat.v_vapor;
        let wet = (1.0 - x) / x;
        match self {
            Slip::Zivi => 1.0 / (1.0 + wet * pow(ratio, 2.0 / 3.0)),
            Slip::Rigot => 1.0 / (1.0 + wet * ratio * 2.0),
            Slip::Wallis => {
                let mu = fluid.transport.mu_liquid / fluid.transport.mu_vapor;
                let xtt = pow(wet, 0.9) * sqrt(ratio) * pow(mu, 0.1);
                pow(1.0 + pow(xtt, 0.8), -0.378)
            }
        }
    }

    /// Mean density of the content, kg/m3.
    pub fn density(self, fluid: &Fluid, sat: &Sat, state: &State) -> f64 {
        if state.x <= 0.0 || state.x >= 1.0 {
            return 1.0 / state.v;
        }
        let a = self.void(fluid, sat, state.x);
        a / sat.v_vapor + (1.0 - a) / sat.v_liquid
    }
}

/// A coil as built.
#[derive(Clone, Debug)]
pub struct Coil {
    /// Side of the machine.
    pub role: Role,
    /// Tube bore, m.
    pub bore: f64,
    /// Parallel circuits.
    pub circuits: f64,
    /// Tube length of one circuit, m.
    pub length: f64,
    /// Outside conductance per metre of tube at design air flow, W/(m K).
    pub outside: f64,
    /// Dry air mass flow at design, kg/s.
    pub air_flow: f64,
    /// Outside conductance goes with air flow to this power.
    pub air_exponent: f64,
    /// Share of the air that misses the fins.
    pub bypass: f64,
    /// Film law.
    pub film: Film,
    /// Slip law.
    pub slip: Slip,
    /// Multiplies the friction of a smooth tube (bends, headers, oil).
    pub friction: f64,
    /// Number of segments.
    pub segments: usize,
}

/// What the air does around a coil.
#[derive(Clone, Copy, Debug)]
pub struct AirSide {
    /// Entering temperature, K.
    pub t: f64,
    /// Entering humidity ratio.
    pub w: f64,
    /// Air flow over design air flow.
    pub flow: f64,
    /// Outside conductance over what this air flow gives on a clean coil.
    pub clean: f64,
}

/// What enters a coil.
#[derive(Clone, Copy, Debug)]
pub struct Inlet {
    /// Flow, kg/s.
    pub m: f64,
    /// Pressure, Pa.
    pub p: f64,
    /// Enthalpy, J/kg.
    pub h: f64,
    /// Mole fraction of gas that does not condense.
    pub gas: f64,
}

/// Result of a march.
#[derive(Clone, Copy, Debug)]
pub struct Marched {
    /// Outlet pressure, Pa.
    pub p_out: f64,
    /// Outlet enthalpy, J/kg.
    pub h_out: f64,
    /// Heat into the refrigerant, W (negative in a condenser).
    pub heat: f64,
    /// Refrigerant inventory, kg.
    pub charge: f64,
    /// Leaving air temperature, bypass mixed in, K.
    pub air_out: f64,
    /// Heat taken from the air by its own temperature and humidity change, W: the air side of the balance.
    pub air_heat: f64,
    /// Share of the tube that holds two phases.
    pub wet_share: f64,
}

fn single_phase(k: f64, mu: f64, cp: f64, g: f64, d: f64) -> f64 {
    let re = g * d / mu;
    let pr = cp * mu / k;
    let nu = 0.023 * pow(re, 0.8) * pow(pr, 0.35);
    k / d * max_smooth(nu, 4.36, 0.5)
}

impl Coil {
    /// What of the film coefficients stays the same along one march.
    fn films(&self, fluid: &Fluid, sat: &Sat, g: f64) -> Films {
        let tr = &fluid.transport;
        let c = 0.5 * (sat.t_bubble + sat.t_dew) - 298.0;
        // Liquid thins and conducts less as it warms: some 1 % and 0.45 % a kelvin.
        let mu_l = tr.mu_liquid * exp(-0.011 * c);
        let k_l = tr.k_liquid * exp(-0.0045 * c);
        let light = tr.molar_mass < 60.0;
        let (cp_l, cp_v) = if light { (2550.0, 1900.0) } else { (1420.0, 1000.0) };
        let prandtl = cp_l * mu_l / k_l;
        let latent = sat.h_vapor - sat.h_liquid;
        Films {
            liquid: single_phase(k_l, mu_l, cp_l, g, self.bore),
            vapor: single_phase(tr.k_vapor, tr.mu_vapor, cp_v, g, self.bore),
            g,
            latent,
            spread: pow(sat.v_vapor / sat.v_liquid, 0.41),
            shah: 3.8 / pow(sat.p / fluid.critical_pressure, 0.38),
            pierre: 0.0009 * k_l / self.bore
                * (g * self.bore / mu_l)
                * sqrt(0.8 * latent / (9.81 * self.length)),
            akers: 0.026 * k_l / self.bore * pow(prandtl, 1.0 / 3.0) * pow(g * self.bore / mu_l, 0.8),
            root_ratio: sqrt(sat.v_vapor / sat.v_liquid),
        }
    }

    /// Film coefficient, W/(m2 K).
    fn film(&self, films: &Films, x: f64, flux: f64, gas: f64) -> f64 {
        if x <= -0.02 {
            return films.liquid;
        }
        if x >= 1.02 {
            return films.vapor;
        }
        let quality = x;
        let x = x.clamp(0.003, 0.997);
        let two = match (self.role, self.film) {
            (Role::Evaporator, Film::Local) => {
                let bo = (flux.abs() / (films.g * films.latent)).max(1e-6);
                let dry = films.liquid * pow((1.0 - x).max(0.02), 0.8);
                let wet = x / (1.0 - x);
                dry * (1.0 + 3000.0 * pow(bo, 0.86) + 1.12 * sqrt(wet * sqrt(wet)) * films.spread)
            }
            (Role::Evaporator, Film::Mean) => films.pierre,
            (Role::Condenser, Film::Local) => {
                films.liquid * (pow(1.0 - x, 0.8) + films.shah * pow(x, 0.76) * pow(1.0 - x, 0.04))
            }
            (Role::Condenser, Film::Mean) => films.akers * pow(1.0 - x + x * films.root_ratio, 0.8),
        };
        // A gas that does not condense gathers where little vapour is left and has to be diffused through.
        let two = if gas > 0.0 {
            let here = gas / (gas + (1.0 - gas) * (x + 0.05));
            two / (1.0 + 3.0 * here)
        } else {
            two
        };
        let (wet_lo, wet_hi) = if self.role == Role::Evaporator { (0.88, 1.01) } else { (0.985, 1.015) };
        let to_vapor = step(quality, wet_lo, wet_hi);
        let from_liquid = step(quality, -0.02, 0.04);
        let two = from_liquid * two + (1.0 - from_liquid) * films.liquid;
        (1.0 - to_vapor) * two + to_vapor * films.vapor
    }

    /// Friction pressure gradient, Pa/m.
    fn gradient(&self, fluid: &Fluid, st: &State, g: f64) -> f64 {
        let tr = &fluid.transport;
        let x = st.x.clamp(0.0, 1.0);
        let mu = 1.0 / (x / tr.mu_vapor + (1.0 - x) / tr.mu_liquid);
        let re = g * self.bore / mu;
        self.friction * 0.3164 / sqrt(sqrt(re)) * g * g * st.v / (2.0 * self.bore)
    }

    /// Marches from inlet to outlet. The leaving air is worked out only when wanted.
    pub fn march(&self, fluid: &Fluid, inlet: Inlet, around: AirSide, want_air: bool) -> Marched {
        let Inlet { m, p: p_in, h: h_in, gas } = inlet;
        let n = self.segments;
        let nf = n as f64;
        let dz = self.length / nf;
        let section = core::f64::consts::PI * self.bore * self.bore / 4.0;
        let g = m / (section * self.circuits);
        let inside_area = core::f64::consts::PI * self.bore * dz * self.circuits;
        let conductance =
            self.outside * dz * self.circuits * pow(around.flow, self.air_exponent) * around.clean;
        let air_kg = self.air_flow * around.flow * (1.0 - self.bypass) / nf;
        let c_air = air_kg * air::CP;
        let h_air = air::enthalpy(around.t, around.w);
        let evaporator = self.role == Role::Evaporator;
        let (mut p, mut h) = (p_in, h_in);
        let films = self.films(fluid, &fluid.sat(p_in), g);
        let dry_reach = exp(-conductance / c_air);
        let (mut heat, mut charge, mut wet_share) = (0.0, 0.0, 0.0);
        let (mut air_t, mut air_heat) = (0.0, 0.0);
        for _ in 0..n {
            let sat = fluid.sat(p);
            let st = fluid.state(&sat, h);
            let dt = around.t - st.t;
            let film = self.film(&films, st.x, dt * conductance / inside_area * 0.7, gas);
            // dT/dh jumps where a phase ends; let it run over across a narrow band of quality.
            let latent = sat.h_vapor - sat.h_liquid;
            let two = (sat.t_dew - sat.t_bubble) / latent;
            let dt_dh = if st.x > 0.98 && st.x < 1.0 {
                let v = fluid.state(&sat, sat.h_vapor).dt_dh;
                two + (v - two) * step(st.x, 0.98, 1.0)
            } else if st.x > 0.0 && st.x < 0.02 {
                let l = fluid.state(&sat, sat.h_liquid).dt_dh;
                l + (two - l) * step(st.x, 0.0, 0.02)
            } else {
                st.dt_dh
            };
            let inner = 1.0 / (film * inside_area);
            let ua = 1.0 / (inner + 1.0 / conductance);
            let reach = c_air * (1.0 - exp(-ua / c_air));
            let dry = reach * dt * decay_mean(reach * dt_dh / m);
            let (mut q, mut t_out) = (dry, around.t - dry / c_air);
            if evaporator {
                let (h_sat, cs) = air::saturated_enthalpy_and_slope(st.t);
                let uh = 1.0 / (cs * inner + air::CP / conductance);
                let reach_h = air_kg * (1.0 - exp(-uh / air_kg));
                let drive = h_air - h_sat;
                let wet = reach_h * drive * decay_mean(reach_h * cs * dt_dh / m);
                if wet > dry && want_air {
                    // Air leaves along the line to its effective surface (Braun, Klein and Mitchell 1989).
                    let h_leaving = h_air - wet / air_kg;
                    let h_surface = h_air - (h_air - h_leaving) / (1.0 - dry_reach);
                    let t_surface = air::temperature_of_saturated(h_surface);
                    t_out = t_surface + (around.t - t_surface) * dry_reach;
                    t_out = t_out.max(around.t - dry.max(wet) / c_air);
                }
                q = max_smooth(wet, dry, 1e-4 * (reach * 10.0));
            }
            air_heat += q;
            air_t += t_out / nf;
            heat += q;
            if st.x > 0.0 && st.x < 1.0 {
                wet_share += 1.0 / nf;
            }
            charge += section * dz * self.circuits * self.slip.density(fluid, &sat, &st);
            p -= self.gradient(fluid, &st, g) * dz;
            h += q / m;
        }
        let p = p_in * 0.05 + pos(p - p_in * 0.05, p_in * 0.01);
        Marched {
            p_out: p,
            h_out: h,
            heat,
            charge,
            air_out: self.bypass * around.t + (1.0 - self.bypass) * air_t,
            air_heat,
            wet_share,
        }
    }
}
