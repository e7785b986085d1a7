//! Compressors: reciprocating in a suction-gas shell, scroll, and rotary in a discharge-gas shell.
//!
//! The shell is a heat balance of its own between motor, gas and room, so the suction gas that reaches the
//! cylinder is warmer than the pipe, and what the room takes is not compressed into the discharge line.

use super::math::{clamp_smooth, pos};
use super::motor::Motor;
use super::props::Fluid;
use libm::{pow, sqrt};

/// How it compresses.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Kind {
    /// Pistons, suction gas around the motor. `clearance` is dead over swept volume.
    Reciprocating {
        /// Dead volume over swept volume.
        clearance: f64,
    },
    /// Scrolls with a fixed built-in volume ratio, suction gas around the motor.
    Scroll {
        /// Built-in volume ratio.
        volume_ratio: f64,
    },
    /// Rolling piston, discharge gas around the motor.
    Rotary {
        /// Dead volume over swept volume.
        clearance: f64,
    },
}

/// A compressor as built.
#[derive(Clone, Copy, Debug)]
pub struct Compressor {
    /// How it compresses.
    pub kind: Kind,
    /// Swept volume per second at synchronous speed, m3/s.
    pub swept: f64,
    /// Indicated efficiency at moderate pressure ratio.
    pub indicated: f64,
    /// Friction power at synchronous speed, W.
    pub friction: f64,
    /// Leak area over swept volume rate (healthy), dimensionless scale of the leak's flow.
    pub leak: f64,
    /// Shell to room, W/K.
    pub shell: f64,
    /// Shell to suction gas, W/K.
    pub to_suction: f64,
    /// Discharge gas to shell, W/K.
    pub from_discharge: f64,
    /// Oil, kg.
    pub oil: f64,
    /// Free volume of the shell, m3.
    pub volume: f64,
    /// Multiplies the volumetric efficiency (unit-to-unit).
    pub volumetric: f64,
    /// Its motor.
    pub motor: Motor,
}

/// Damage to a compressor.
#[derive(Clone, Copy, Debug, Default)]
pub struct Wear {
    /// Leak from discharge to suction, same scale as [`Compressor::leak`].
    pub valve_leak: f64,
    /// Share of each stroke lost inside the cylinder.
    pub stroke_lost: f64,
}

/// What a compressor runs in.
#[derive(Clone, Copy, Debug)]
pub struct Around {
    /// Room temperature, K.
    pub room: f64,
    /// Supply voltage, V.
    pub voltage: f64,
    /// Its damage.
    pub wear: Wear,
}

/// A compressor at work.
#[derive(Clone, Copy, Debug)]
pub struct Compressed {
    /// Flow delivered, kg/s.
    pub flow: f64,
    /// Enthalpy leaving, J/kg.
    pub h_out: f64,
    /// Electrical power, W.
    pub power: f64,
    /// Line current, A.
    pub current: f64,
    /// Heat to the room, W.
    pub shell_heat: f64,
    /// Shell temperature, K.
    pub t_shell: f64,
    /// Refrigerant in shell and oil, kg.
    pub charge: f64,
    /// Gas lost back per swept mass, for the report of what a fault did.
    pub leak_share: f64,
}

impl Compressor {
    /// Leak flow, kg/s: choked or unchoked gas through a gap, scaled by the machine's size.
    fn leak_flow(&self, leak: f64, p_d: f64, v_d: f64, p_s: f64) -> f64 {
        let r = (p_s / p_d).min(0.999);
        // Nozzle form with the critical ratio near 0.58 rounded off.
        let head = clamp_smooth(1.0 - r, 0.0, 0.42, 0.02);
        // 0.02 of the swept volume rate as a sonic-like volume flow makes `leak` of order one.
        leak * 0.02 * self.swept * sqrt(head / 0.42) * sqrt(p_d / 1.3e6) * sqrt(0.015 / v_d) / v_d
    }

    /// Runs it between suction pressure and enthalpy and discharge pressure; `None` when the motor stalls.
    pub fn run(&self, fluid: &Fluid, (p_s, h_s): (f64, f64), p_d: f64, around: Around) -> Option<Compressed> {
        let Around { room, voltage, wear } = around;
        let suction = fluid.sat(p_s);
        let discharge = fluid.sat(p_d);
        let inlet = fluid.state(&suction, h_s);
        let rotary = matches!(self.kind, Kind::Rotary { .. });
        let mut h_cyl = h_s + if rotary { 3000.0 } else { 15_000.0 };
        let mut slip = 0.03;
        let mut h_dis = h_s + 60_000.0;
        let mut out = None;
        for _ in 0..14 {
            let sat = suction;
            let cyl = fluid.state(&sat, h_cyl);
            let s = fluid.entropy(&sat, h_cyl);
            // Wet gas boils against the cylinder; only what is left of it takes stroke volume.
            let v_cyl = cyl.v.max(sat.v_vapor * 0.55);
            let ratio = p_d / p_s;
            let h_is = fluid.enthalpy_at_entropy(&discharge, s);
            let v_is = fluid.state(&discharge, h_is).v;
            let ideal = (h_is - h_cyl).max(500.0);
            let (eta_v, work) = match self.kind {
                Kind::Reciprocating { clearance } | Kind::Rotary { clearance } => {
                    let expand = 1.0 - clearance * pos(v_cyl / v_is - 1.0, 0.05);
                    // Valves throttle, more so when the stroke is short of gas at high ratio.
                    let eta = self.indicated * (1.0 - 0.006 * pos(ratio - 4.0, 1.0) - 0.05 / ratio);
                    (expand, ideal / eta)
                }
                Kind::Scroll { volume_ratio } => {
                    // Isentropic to the built-in volume, then a rush in or out at constant volume.
                    let k = libm::log(ratio) / libm::log((v_cyl / v_is).max(1.05));
                    let p_i = p_s * pow(volume_ratio, k);
                    let w_i = k / (k - 1.0) * p_s * v_cyl * (pow(volume_ratio, k - 1.0) - 1.0);
                    let w = w_i + (p_d - p_i) * v_cyl / volume_ratio;
                    (0.985 - 0.008 * (ratio - 3.0), w.max(ideal * 0.9) / self.indicated)
                }
            };
            let eta_v = max0(eta_v * self.volumetric) * (1.0 - wear.stroke_lost);
            let swept_mass = self.swept * (1.0 - slip) * eta_v / v_cyl;
            let hot = fluid.state(&discharge, h_dis.max(discharge.h_vapor));
            let leak = self.leak_flow(self.leak + wear.valve_leak, p_d, hot.v, p_s);
            let net = pos(swept_mass - leak, swept_mass * 0.01).max(1e-9);
            // Half-lost strokes are still half compressed.
            let gross = swept_mass / (1.0 - 0.55 * wear.stroke_lost);
            let indicated = gross * work;
            let shaft = indicated + self.friction * (1.0 - slip) * (0.7 + 0.3 * p_d / 1.5e6);
            let run = self.motor.run(shaft, voltage)?;
            slip = run.slip;
            // Shell balance: motor and friction losses, hot gas, room and suction gas.
            let losses = run.power - indicated;
            let t_dis = hot.t;
            let t_in = inlet.t;
            let ua_s = self.to_suction;
            let mut t_shell = (losses + self.from_discharge * t_dis + ua_s * t_in + self.shell * room)
                / (self.from_discharge + ua_s + self.shell);
            if rotary {
                // Discharge gas fills the shell: the shell sits close to it.
                t_shell = 0.15 * room + 0.85 * t_dis;
            }
            let shell_heat = self.shell * (t_shell - room);
            let to_gas = ua_s * (t_shell - t_in);
            // The leak comes back hot and is drawn in again with the fresh gas.
            let target = (net * h_s + leak * h_dis.max(h_s) + to_gas) / (net + leak);
            h_cyl = 0.5 * h_cyl + 0.5 * target.min(h_s + 160_000.0);
            h_dis = h_s + (run.power - shell_heat) / net;
            h_dis = h_dis.min(h_s + 260_000.0);
            let oil_p = if rotary { p_d } else { p_s };
            let full = fluid.dew_pressure(t_shell.clamp(210.0, fluid.sat(fluid.range.1).t_dew - 1.0));
            let part = (oil_p / full).min(0.98);
            let dissolved = self.oil * 0.45 * part / (1.0 - 0.45 * part);
            let gas = self.volume / if rotary { hot.v } else { cyl.v };
            out = Some(Compressed {
                flow: net,
                h_out: h_s + (run.power - shell_heat) / net,
                power: run.power,
                current: run.current,
                shell_heat,
                t_shell,
                charge: dissolved + gas,
                leak_share: leak / swept_mass,
            });
        }
        out
    }
}

fn max0(x: f64) -> f64 {
    0.02 + pos(x - 0.02, 0.01)
}
