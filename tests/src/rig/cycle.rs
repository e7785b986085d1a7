//! Once round the machine: from guessed states to the mismatch of each balance.

use super::air;
use super::compressor::Around;
use super::exchanger::{AirSide, Inlet};
use super::machine::{Day, Faults, Machine, Metering, Point};
use super::math::{clamp_smooth, decay_mean, max_smooth, pos, step};
use super::metering;
use libm::{exp, log};

/// Vapour share or liquid excess at the condenser outlet that goes with a receiver's fill coordinate.
fn outlet_of_fill(z: f64) -> f64 {
    0.25 * pos(-z, 0.02) - 0.25 * pos(z - 1.0, 0.02) - 0.004 * z
}

impl Machine {
    /// Goes round once. `x`: ln evaporator inlet pressure, ln discharge pressure, ln suction pressure (Pa), suction
    /// enthalpy (100 kJ/kg), receiver fill or solder heat (100 kJ/kg). `None` outside what the parts can do.
    pub fn evaluate(&self, x: &[f64; 5], day: &Day, faults: &Faults) -> Option<Point> {
        self.round(x, day, faults, true)
    }

    /// The same without the leaving air, for the solver.
    pub fn residuals(&self, x: &[f64; 5], day: &Day, faults: &Faults) -> Option<Point> {
        self.round(x, day, faults, false)
    }

    fn round(&self, x: &[f64; 5], day: &Day, faults: &Faults, want_air: bool) -> Option<Point> {
        let f = &*self.fluid;
        let (p_inlet, p_dis, p_suc) = (exp(x[0]), exp(x[1]), exp(x[2]));
        let h_suc = x[3] * 1e5;
        let (lo, hi) = f.range;
        if !(p_inlet > lo && p_suc > lo * 0.8 && p_dis < hi && p_dis > p_inlet * 1.02 && p_suc < p_dis * 0.9)
        {
            return None;
        }
        let run = self.compressor.run(
            f,
            (p_suc, h_suc),
            p_dis,
            Around { room: day.ambient, voltage: day.voltage, wear: faults.wear },
        )?;
        let m = run.flow;
        let gas = faults.gas * day.ambient / (self.spec.ambient + 273.15);
        let p_ref = p_dis - gas;
        if p_ref < p_inlet || p_ref < lo {
            return None;
        }
        let around =
            AirSide { t: day.ambient, w: 0.008, flow: faults.condenser.0, clean: faults.condenser.1 };
        let cond =
            self.condenser.march(f, Inlet { m, p: p_ref, h: run.h_out, gas: gas / p_dis }, around, want_air);
        let p_co = cond.p_out + gas;
        let sat_co_ref = f.sat(cond.p_out);
        let latent = sat_co_ref.h_vapor - sat_co_ref.h_liquid;
        let outlet = (cond.h_out - sat_co_ref.h_liquid) / latent;
        // Liquid line: to the room, then its friction and the drier's.
        let sat_co = f.sat(p_co);
        let st_co = f.state(&sat_co, cond.h_out);
        let line =
            self.liquid_loss * (day.ambient - st_co.t) * decay_mean(self.liquid_loss * st_co.dt_dh / m);
        let h_liq = cond.h_out + line / m;
        let p_line = metering::after_restriction(f, m, p_co, h_liq, self.liquid_line);
        let p_drier =
            metering::after_restriction(f, m, p_line, h_liq, self.drier / (faults.drier * faults.drier));
        let sat_line = f.sat(p_line);
        let st_line = f.state(&sat_line, h_liq);
        let st_drier = f.state(&f.sat(p_drier), h_liq);
        let solder = self.exchanger > 0.0;
        let q = if solder { x[4] * 1e5 } else { 0.0 };
        let h_inlet = h_liq - q;

        let around =
            AirSide { t: day.space, w: day.humidity, flow: faults.evaporator.0, clean: faults.evaporator.1 };
        let evap = self.evaporator.march(f, Inlet { m, p: p_inlet, h: h_inlet, gas: 0.0 }, around, want_air);
        let p_eo = evap.p_out;
        let sat_eo = f.sat(p_eo);
        let st_eo = f.state(&sat_eo, evap.h_out);
        // Superheat carried on below zero, for controls that would otherwise lose sight of it.
        let superheat = if st_eo.x >= 1.0 { st_eo.t - sat_eo.t_dew } else { (st_eo.x - 1.0) * 150.0 };

        let mut opening = 1.0;
        let metering_residual = match self.metering {
            Metering::Capillary(c) => {
                if !(p_drier > p_inlet) {
                    return None;
                }
                let length = c.length_for(f, m, (p_drier, h_liq), p_inlet, q, faults.metering);
                log(length.max(1e-4) / c.length)
            }
            Metering::Orifice { area } => log(area
                * faults.metering
                * metering::flux(f, p_drier.max(p_inlet * 1.001), h_liq, p_inlet, self.lag)
                / m),
            Metering::Thermostatic { valve, area, opening: at_design } => {
                opening = valve.opening(f, sat_eo.t_dew + superheat, p_eo);
                opening = max_smooth(opening, faults.stuck * at_design, 0.004);
                let g = metering::flux(f, p_drier.max(p_inlet * 1.001), h_liq, p_inlet, self.lag);
                log(area * opening * faults.metering * g / m)
            }
            Metering::Electronic { valve, area, opening: at_design } => {
                opening = max_smooth(valve.opening(superheat), faults.stuck * at_design, 0.004);
                let g = metering::flux(f, p_drier.max(p_inlet * 1.001), h_liq, p_inlet, self.lag);
                log(area * opening * faults.metering * g / m)
            }
        };

        // Suction line: friction, regulator, then heat from the solder and the room along the way.
        let mut drop = self.suction_line * m * m * st_eo.v;
        if let Some(r) = self.regulator {
            let open = clamp_smooth((r.set - p_suc) / r.range, 0.0, 1.0, 0.015).max(0.01);
            drop += r.k * m * m * st_eo.v / (open * open);
        }
        let sat_suc = f.sat(p_suc);
        let n = 10;
        let (mut h, mut solder_heat, mut gain) = (evap.h_out, 0.0, 0.0);
        let (t_in, mut line_charge) = (st_eo.t, 0.0);
        for i in 0..n {
            let along = (i as f64 + 0.5) / n as f64;
            let st = f.state(&sat_suc, h);
            let slope =
                if st.x < 1.0 { st.dt_dh + (1e-3 - st.dt_dh) * step(st.x, 0.97, 1.0) } else { st.dt_dh };
            let mut dq = 0.0;
            if solder {
                let hot = st_line.t - 0.35 * (st_line.t - t_in) * (1.0 - along);
                let ua = self.exchanger / n as f64;
                let s = ua * (hot - st.t) * decay_mean(ua * slope / m);
                solder_heat += s;
                dq += s;
            }
            let ua = self.suction_gain / n as f64;
            let a = ua * (day.ambient - st.t) * decay_mean(ua * slope / m);
            gain += a;
            dq += a;
            line_charge += self.volumes[2] / n as f64 / st.v;
            h += dq / m;
        }
        let st_suc = f.state(&sat_suc, h_suc);
        // On capillary machines the accumulator sits at the evaporator outlet, on others ahead of the compressor.
        let wetness = if solder { 1.0 - st_eo.x } else { 1.0 - st_suc.x };
        let caught = 0.6 * step(wetness, 0.0, 0.10);
        let accumulator = self.volumes[3]
            * (caught / sat_suc.v_liquid + (1.0 - caught) / st_suc.v.min(sat_suc.v_vapor * 1.5));
        let mut receiver = 0.0;
        let mut level = 0.0;
        let mut fill_residual = 0.0;
        if self.spec.receiver {
            let z = x[4];
            level = clamp_smooth(z, 0.0, 1.0, 0.02);
            receiver = self.volumes[4] * (level / sat_co_ref.v_liquid + (1.0 - level) / sat_co_ref.v_vapor);
            fill_residual = outlet - outlet_of_fill(z);
        }
        let hot = f.state(&f.sat(p_dis), run.h_out);
        let liquid_density = self.condenser.slip.density(f, &sat_line, &st_line);
        let charge = run.charge
            + self.volumes[0] / hot.v
            + cond.charge
            + receiver
            + self.volumes[1] * liquid_density
            + evap.charge
            + line_charge
            + accumulator;
        let fifth = if solder { (solder_heat / m - q) / 1e5 } else { fill_residual };
        let t_supply = evap.air_out + self.fans[0] / (self.evaporator.air_flow * around.flow * air::CP);
        let capacity = m * (evap.h_out - h_inlet);
        Some(Point {
            residual: [
                metering_residual,
                (p_suc + drop - p_eo) / p_eo,
                (h - h_suc) / 1e5,
                charge / (self.charge * faults.charge) - 1.0,
                fifth,
            ],
            flow: m,
            p_suction: p_suc,
            p_evaporator: p_eo,
            p_inlet,
            p_discharge: p_dis,
            p_liquid: p_co,
            p_drier,
            h_evaporator: evap.h_out,
            h_suction: h_suc,
            h_discharge: run.h_out,
            h_condenser: cond.h_out,
            h_liquid: h_liq,
            t_evaporator: st_eo.t,
            t_suction: st_suc.t,
            t_discharge: hot.t,
            t_liquid: st_line.t,
            t_condenser: st_co.t,
            t_drier: st_drier.t,
            t_supply,
            t_exhaust: cond.air_out + self.fans[1] / (self.condenser.air_flow * faults.condenser.0 * air::CP),
            t_shell: run.t_shell,
            capacity,
            power: run.power,
            current: run.current,
            cop: capacity / (run.power + self.fans[0] + self.fans[1]),
            charge,
            rejected: -cond.heat,
            other: run.shell_heat - line - gain,
            x_suction: st_suc.x,
            x_evaporator: st_eo.x,
            x_liquid: st_line.x,
            level,
            opening,
            leak_share: run.leak_share,
            metering_ratio: exp(metering_residual),
        })
    }
}
