//! Devices that let liquid down: capillary tube, short orifice, thermostatic and electronic valve, and the drier.
//!
//! Flow follows from integrating the momentum balance of the flashing liquid down to the outlet or to where it
//! chokes, not from a fitted flow equation.

use super::math::{clamp_smooth, pos, step};
use super::props::Fluid;
use libm::{exp, pow, sqrt};

/// Two-phase steps of the integrations.
const STEPS: usize = 24;

/// A capillary tube soldered to the suction line over part of its length.
#[derive(Clone, Copy, Debug)]
pub struct Capillary {
    /// Bore, m.
    pub bore: f64,
    /// Length, m.
    pub length: f64,
    /// Start and end of the soldered stretch, share of the length.
    pub soldered: (f64, f64),
    /// Pressure below saturation at which liquid starts to flash, Pa.
    pub delay: f64,
}

impl Capillary {
    /// Length over which this flow uses up the pressure between inlet and outlet, or chokes, m.
    ///
    /// `q` is the heat given to the suction line per kilogram; `area` the open share of the bore's section.
    pub fn length_for(
        &self,
        fluid: &Fluid,
        m: f64,
        (p_in, h_in): (f64, f64),
        p_out: f64,
        q: f64,
        area: f64,
    ) -> f64 {
        let d = self.bore * sqrt(area);
        let g = m / (core::f64::consts::PI * d * d / 4.0);
        let tr = &fluid.transport;
        let friction = |x: f64| {
            let mu = tr.mu_vapor * x + tr.mu_liquid * (1.0 - x);
            1.1 * 0.3164 / pow(g * d / mu, 0.25)
        };
        let cooled = |z: f64| {
            let (a, b) = self.soldered;
            let s = z / self.length;
            q * (clamp_smooth((s - a) / (b - a), 0.0, 1.0, 0.02) - clamp_smooth(-a / (b - a), 0.0, 1.0, 0.02))
        };
        // Liquid stretch: the solder cools the liquid as it goes, so where it flashes is found by iterating.
        let sat_in = fluid.sat(p_in);
        let st_in = fluid.state(&sat_in, h_in);
        let mut z = 0.0;
        let mut p = p_in;
        if st_in.x < 0.0 {
            let per_pa = 2.0 * d / (friction(0.0) * g * g * st_in.v);
            // Liquid that arrives with bubbles in it has no delay.
            let delay = self.delay * step(-st_in.x, 0.0, 0.03);
            let mut z_flash = 0.0;
            for _ in 0..12 {
                let p_flash = fluid.flash_pressure(h_in - cooled(z_flash)) - delay;
                let target = (p_in - p_flash).max(0.0) * per_pa;
                z_flash = 0.5 * z_flash + 0.5 * target;
            }
            z = z_flash;
            p = p_in - z / per_pa;
            if p <= p_out {
                return (p_in - p_out) * per_pa;
            }
        }
        let ratio = pow(p_out / p, 1.0 / STEPS as f64);
        let volume = |p: f64, z: f64, guess: f64| {
            let sat = fluid.sat(p);
            let h = h_in - cooled(z) - 0.5 * g * g * guess * guess;
            let st = fluid.state(&sat, h);
            (st.v.max(sat.v_liquid), st.x.clamp(0.0, 1.0))
        };
        let (mut v, mut x) = volume(p, z, sat_in.v_liquid);
        for _ in 0..STEPS {
            let p_next = p * ratio;
            let (v1, _) = volume(p_next, z, v);
            let (v_next, x_next) = volume(p_next, z, v1);
            let mean = 0.5 * (v + v_next);
            let f = friction(0.5 * (x + x_next));
            let dz = ((p - p_next) - g * g * (v_next - v)) * 2.0 * d / (f * g * g * mean);
            // Choked: a lower pressure would need negative length. The length so far is the longest.
            if dz <= 0.0 {
                break;
            }
            z += dz;
            p = p_next;
            v = v_next;
            x = x_next;
        }
        z
    }
}

/// Mass flux through a short restriction, kg/(s m2): liquid flashing late, held at what chokes it.
///
/// `lag` is the share of equilibrium vapour that actually forms on the way through.
pub fn flux(fluid: &Fluid, p_in: f64, h: f64, p_out: f64, lag: f64) -> f64 {
    let sat_in = fluid.sat(p_in);
    let st = fluid.state(&sat_in, h);
    let (mut p, mut work, mut v) = (p_in, 0.0, st.v);
    if st.x < 0.0 {
        let p_flash = fluid.flash_pressure(h).min(p_in).max(p_out);
        work = st.v * (p_in - p_flash);
        p = p_flash;
    }
    let mut points = [2.0 * work / (v * v); STEPS + 1];
    if p > p_out * 1.0001 {
        let x_in = st.x.clamp(0.0, 1.0);
        let ratio = pow(p_out / p, 1.0 / STEPS as f64);
        for point in points.iter_mut().skip(1) {
            let next = p * ratio;
            let sat = fluid.sat(next);
            let eq = fluid.state(&sat, h).x.max(0.0);
            let x = x_in + lag * (eq - x_in).max(0.0);
            let vn = sat.v_liquid + x.min(1.0) * (sat.v_vapor - sat.v_liquid);
            work += 0.5 * (v + vn) * (p - next);
            p = next;
            v = vn;
            *point = 2.0 * work / (v * v);
        }
    }
    // The largest along the way, as a mean that leans on the largest so that it moves smoothly between steps.
    let top = points.iter().copied().fold(0.0, f64::max).max(1.0);
    let (mut sum, mut weight) = (0.0, 0.0);
    for y in points {
        let w = exp((y / top - 1.0) / 0.03);
        sum += w * y;
        weight += w;
    }
    sqrt(sum / weight)
}

/// Pressure after a drier or another narrow place of loss coefficient `k` (Pa kg/m3 per (kg/s)2).
pub fn after_restriction(fluid: &Fluid, m: f64, p_in: f64, h: f64, k: f64) -> f64 {
    let n = 16;
    let floor = fluid.range.0 * 1.5;
    let slope = |p: f64| {
        let sat = fluid.sat(p);
        let st = fluid.state(&sat, h);
        k * m * m * st.v / n as f64
    };
    let mut p = p_in;
    for _ in 0..n {
        let half = p - 0.5 * slope(p);
        let half = floor + pos(half - floor, floor * 0.1);
        p -= slope(half);
        p = floor + pos(p - floor, floor * 0.1);
    }
    p
}

/// Opening of a thermostatic valve, share of full: bulb pressure against evaporator pressure and spring.
#[derive(Clone, Copy, Debug)]
pub struct ThermostaticValve {
    /// Spring pressure at which it starts to open, Pa.
    pub spring: f64,
    /// Pressure from closed to wide open, Pa.
    pub stroke: f64,
    /// Share of full opening that leaks through a closed valve.
    pub closed: f64,
    /// Bulb pressure over the refrigerant's own (a weaker or cross charge is below 1).
    pub bulb: f64,
}

impl ThermostaticValve {
    /// Opening for a bulb at `t_bulb` and pressure `p` under the diaphragm.
    pub fn opening(&self, fluid: &Fluid, t_bulb: f64, p: f64) -> f64 {
        let bulb = fluid.dew_pressure(t_bulb.clamp(180.0, 330.0));
        let base = fluid.sat(p).t_dew;
        // The charge's curve is taken through the valve's own evaporating pressure.
        let above = (bulb - fluid.dew_pressure(base)) * self.bulb;
        clamp_smooth((above - self.spring) / self.stroke, self.closed, 1.0, 0.02)
    }
}

/// Opening of an electronic valve that holds superheat: exact within its range, wide open beyond.
#[derive(Clone, Copy, Debug)]
pub struct ElectronicValve {
    /// Superheat it holds, K.
    pub set: f64,
    /// Remaining droop from closed to wide open, K.
    pub droop: f64,
    /// Share of full opening at its lowest step.
    pub closed: f64,
}

impl ElectronicValve {
    /// Opening at a measured superheat, K.
    pub fn opening(&self, superheat: f64) -> f64 {
        clamp_smooth((superheat - self.set) / self.droop + 0.5, self.closed, 1.0, 0.02)
    }
}
