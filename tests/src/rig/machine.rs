//! A machine: what its sheet says, the parts sized to that, and what a unit, a day and a fault change.

use super::compressor::{Around, Compressor, Kind, Wear};
use super::exchanger::{AirSide, Coil, Film, Inlet, Role, Slip};
use super::math::root;
use super::metering::{self, Capillary, ElectronicValve, ThermostaticValve};
use super::motor::Motor;
use super::props::Fluid;
use super::{air, solve};
use libm::log;

/// Metering device of a type, before sizing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Device {
    /// Capillary tube of a bore, m.
    Capillary {
        /// Bore, m.
        bore: f64,
    },
    /// Short orifice.
    Orifice,
    /// Thermostatic valve with a share of its full opening in reserve at design.
    Thermostatic {
        /// Opening at design, share of full.
        opening: f64,
    },
    /// Electronic valve.
    Electronic {
        /// Opening at design, share of full.
        opening: f64,
    },
}

/// One coil's build.
#[derive(Clone, Copy, Debug)]
pub struct CoilSpec {
    /// Tube bore, m.
    pub bore: f64,
    /// Circuits.
    pub circuits: f64,
    /// Outside conductance per metre of tube, W/(m K).
    pub outside: f64,
    /// Air temperature change at design if it were all sensible, K.
    pub air_change: f64,
    /// Exponent of air flow in the outside conductance.
    pub air_exponent: f64,
    /// Air share that misses the fins.
    pub bypass: f64,
    /// Film law.
    pub film: Film,
    /// Slip law.
    pub slip: Slip,
    /// Friction multiplier.
    pub friction: f64,
}

/// Motor data of a type in per-unit.
#[derive(Clone, Copy, Debug)]
pub struct MotorSpec {
    /// Volts.
    pub voltage: f64,
    /// Phases.
    pub phases: f64,
    /// Mains frequency, Hz.
    pub hz: f64,
    /// Equivalent circuit r1, r2, x, xm, rc.
    pub circuit: [f64; 5],
}

/// A machine type.
#[derive(Clone, Debug)]
pub struct Spec {
    /// Name.
    pub name: &'static str,
    /// Refrigerant designation.
    pub refrigerant: &'static str,
    /// Duty in the visit's words.
    pub duty: &'static str,
    /// Metering device.
    pub device: Device,
    /// Receiver fitted.
    pub receiver: bool,
    /// Suction pressure regulator: evaporating temperature at the compressor it holds down to, degC.
    pub regulator: Option<f64>,
    /// Space and ambient at design, degC.
    pub space: f64,
    /// Ambient at design, degC.
    pub ambient: f64,
    /// Relative humidity of the space.
    pub humidity: f64,
    /// Evaporating dew temperature at the evaporator outlet, degC.
    pub evaporating: f64,
    /// Condensing mean temperature, degC.
    pub condensing: f64,
    /// Superheat at the evaporator outlet, K.
    pub superheat: f64,
    /// Superheat at the compressor, K.
    pub suction_superheat: f64,
    /// Subcooling at the condenser outlet, K.
    pub subcooling: f64,
    /// Capacity, W.
    pub capacity: f64,
    /// Evaporator.
    pub evaporator: CoilSpec,
    /// Condenser.
    pub condenser: CoilSpec,
    /// Compressor kind.
    pub compressor: Kind,
    /// Indicated efficiency.
    pub indicated: f64,
    /// Shell to room over power, 1/K.
    pub shell: f64,
    /// Motor.
    pub motor: MotorSpec,
    /// Suction line pressure drop, K of saturation.
    pub suction_drop: f64,
    /// Volumes in litres per kilowatt: discharge line, liquid line, suction line, accumulator, receiver.
    pub volumes: [f64; 5],
    /// Evaporator and condenser fans over capacity.
    pub fans: [f64; 2],
    /// Ambient range of visits, degC.
    pub ambient_range: (f64, f64),
    /// Space above design in visits, up to, K.
    pub pull_down: f64,
}

/// Sized metering device.
#[derive(Clone, Copy, Debug)]
pub enum Metering {
    /// Capillary.
    Capillary(Capillary),
    /// Orifice with its area, m2.
    Orifice {
        /// Area, m2.
        area: f64,
    },
    /// Thermostatic valve with its full area, m2, and design opening.
    Thermostatic {
        /// Static characteristic.
        valve: ThermostaticValve,
        /// Full area, m2.
        area: f64,
        /// Opening at design.
        opening: f64,
    },
    /// Electronic valve with its full area, m2, and design opening.
    Electronic {
        /// Static characteristic.
        valve: ElectronicValve,
        /// Full area, m2.
        area: f64,
        /// Opening at design.
        opening: f64,
    },
}

/// Holds the compressor's inlet pressure down.
#[derive(Clone, Copy, Debug)]
pub struct Regulator {
    /// Outlet pressure at which it is closed, Pa.
    pub set: f64,
    /// From closed to wide open, Pa.
    pub range: f64,
    /// Loss coefficient wide open, Pa kg/m3 per (kg/s)2.
    pub k: f64,
}

/// A machine, sized.
#[derive(Clone, Debug)]
pub struct Machine {
    /// Its type.
    pub spec: Spec,
    /// Its refrigerant.
    pub fluid: std::sync::Arc<Fluid>,
    /// Evaporator.
    pub evaporator: Coil,
    /// Condenser.
    pub condenser: Coil,
    /// Compressor.
    pub compressor: Compressor,
    /// Metering device.
    pub metering: Metering,
    /// Share of equilibrium flashing in the metering device.
    pub lag: f64,
    /// Loss coefficient of the clean drier.
    pub drier: f64,
    /// Loss coefficient of the liquid line.
    pub liquid_line: f64,
    /// Loss coefficient of the suction line.
    pub suction_line: f64,
    /// Regulator, when fitted.
    pub regulator: Option<Regulator>,
    /// Suction line to the room, W/K.
    pub suction_gain: f64,
    /// Suction line to the capillary, W/K.
    pub exchanger: f64,
    /// Liquid line to the room, W/K.
    pub liquid_loss: f64,
    /// Discharge line to the room, W/K.
    pub discharge_loss: f64,
    /// Volumes, m3: discharge line, liquid line, suction line, accumulator, receiver.
    pub volumes: [f64; 5],
    /// Charge, kg.
    pub charge: f64,
    /// Fan powers, W: evaporator, condenser.
    pub fans: [f64; 2],
    /// The solution at design.
    pub design: [f64; 5],
}

/// What a day brings.
#[derive(Clone, Copy, Debug)]
pub struct Day {
    /// Space temperature, K.
    pub space: f64,
    /// Space humidity ratio.
    pub humidity: f64,
    /// Ambient temperature, K.
    pub ambient: f64,
    /// Supply voltage, V.
    pub voltage: f64,
}

/// What is wrong, in the machine's own terms. `Default` is nothing.
#[derive(Clone, Copy, Debug)]
pub struct Faults {
    /// Charge over proper charge.
    pub charge: f64,
    /// Open share of the drier.
    pub drier: f64,
    /// Area of the metering device over its own.
    pub metering: f64,
    /// Opening of a valve cannot fall below this multiple of its design opening.
    pub stuck: f64,
    /// Compressor damage.
    pub wear: Wear,
    /// Condenser air flow and cleanness.
    pub condenser: (f64, f64),
    /// Evaporator air flow and cleanness.
    pub evaporator: (f64, f64),
    /// Partial pressure of gas that does not condense, Pa at the design ambient.
    pub gas: f64,
}

impl Default for Faults {
    fn default() -> Self {
        Faults {
            charge: 1.0,
            drier: 1.0,
            metering: 1.0,
            stuck: 0.0,
            wear: Wear::default(),
            condenser: (1.0, 1.0),
            evaporator: (1.0, 1.0),
            gas: 0.0,
        }
    }
}

/// Everything about one operating point.
#[derive(Clone, Copy, Debug, Default)]
pub struct Point {
    /// Residuals of the equations.
    pub residual: [f64; 5],
    /// Mass flow, kg/s.
    pub flow: f64,
    /// Compressor inlet, Pa.
    pub p_suction: f64,
    /// Evaporator outlet, Pa.
    pub p_evaporator: f64,
    /// Evaporator inlet, Pa.
    pub p_inlet: f64,
    /// Compressor outlet, Pa.
    pub p_discharge: f64,
    /// Condenser or receiver outlet, Pa.
    pub p_liquid: f64,
    /// After the drier, Pa.
    pub p_drier: f64,
    /// Evaporator outlet enthalpy.
    pub h_evaporator: f64,
    /// Compressor inlet enthalpy.
    pub h_suction: f64,
    /// Compressor outlet enthalpy.
    pub h_discharge: f64,
    /// Condenser outlet enthalpy.
    pub h_condenser: f64,
    /// Liquid line enthalpy ahead of the drier.
    pub h_liquid: f64,
    /// Evaporator outlet, K.
    pub t_evaporator: f64,
    /// Compressor inlet, K.
    pub t_suction: f64,
    /// Compressor outlet, K.
    pub t_discharge: f64,
    /// Ahead of the drier, K.
    pub t_liquid: f64,
    /// Condenser outlet, K.
    pub t_condenser: f64,
    /// After the drier, K.
    pub t_drier: f64,
    /// Leaving evaporator air, fan heat included, K.
    pub t_supply: f64,
    /// Leaving condenser air, K.
    pub t_exhaust: f64,
    /// Compressor shell, K.
    pub t_shell: f64,
    /// Cooling, W.
    pub capacity: f64,
    /// Compressor power, W.
    pub power: f64,
    /// Compressor current, A.
    pub current: f64,
    /// Cooling over all power.
    pub cop: f64,
    /// Inventory, kg.
    pub charge: f64,
    /// Heat rejected by the condenser, W.
    pub rejected: f64,
    /// Other heat to the room, W (suction gain counts negative).
    pub other: f64,
    /// Quality at the compressor inlet.
    pub x_suction: f64,
    /// Quality at the evaporator outlet.
    pub x_evaporator: f64,
    /// Quality ahead of the drier.
    pub x_liquid: f64,
    /// Receiver level, 0 to 1.
    pub level: f64,
    /// Valve opening, share of full.
    pub opening: f64,
    /// Share of swept gas lost back.
    pub leak_share: f64,
    /// Flow the metering device passes between these states over the compressor's.
    pub metering_ratio: f64,
}

impl Machine {
    /// Sizes a type's parts so that it runs exactly at its sheet.
    pub fn size(spec: &Spec, fluid: std::sync::Arc<Fluid>) -> Machine {
        let f = &*fluid;
        let k = 273.15;
        let t_e = spec.evaporating + k;
        let p_eo = f.dew_pressure(t_e);
        let p_suc = f.dew_pressure(t_e - spec.suction_drop);
        let p_dis = f.mean_pressure(spec.condensing + k);
        let h_suc = f.vapor_enthalpy(p_suc, f.sat(p_suc).t_dew + spec.suction_superheat);
        let h_eo = f.vapor_enthalpy(p_eo, t_e + spec.superheat);
        let ambient = spec.ambient + k;
        let room = Around { room: ambient, voltage: spec.motor.voltage, wear: Wear::default() };
        let capillary = matches!(spec.device, Device::Capillary { .. });

        // Condenser pressure drop first guessed, then marched.
        let mut p_co = p_dis * 0.99;
        let liquid_line_cooling = 0.5;
        let mut m = 0.0;
        let mut h_co = 0.0;
        let (mut h_liq, mut q_hx) = (0.0, 0.0);
        let mut compressor = Compressor {
            kind: spec.compressor,
            swept: 1e-4,
            indicated: spec.indicated,
            friction: 0.0,
            leak: 0.08,
            shell: 0.0,
            to_suction: 0.0,
            from_discharge: 0.0,
            oil: 0.0,
            volume: 0.0,
            volumetric: 1.0,
            motor: Motor {
                rated_shaft: 1.0,
                rated_voltage: spec.motor.voltage,
                phases: spec.motor.phases,
                r1: spec.motor.circuit[0],
                r2: spec.motor.circuit[1],
                x: spec.motor.circuit[2],
                xm: spec.motor.circuit[3],
                rc: spec.motor.circuit[4],
            },
        };
        let coil = |c: &CoilSpec, role: Role, heat: f64| Coil {
            role,
            bore: c.bore,
            circuits: c.circuits,
            length: 10.0,
            outside: c.outside,
            air_flow: heat / (c.air_change * air::CP),
            air_exponent: c.air_exponent,
            bypass: c.bypass,
            film: c.film,
            slip: c.slip,
            friction: c.friction,
            segments: 48,
        };
        let mut condenser = coil(&spec.condenser, Role::Condenser, spec.capacity);
        let mut evaporator = coil(&spec.evaporator, Role::Evaporator, spec.capacity);
        evaporator.air_flow = spec.capacity / (spec.evaporator.air_change * air::CP);
        let clean = |t: f64, w: f64| AirSide { t, w, flow: 1.0, clean: 1.0 };
        let w_space = air::humidity(spec.space + k, spec.humidity);
        let suction_gain_share = if capillary { 0.25 } else { 1.0 };
        for _ in 0..4 {
            let sat_co = f.sat(p_co);
            h_co = f.liquid_enthalpy(p_co, sat_co.t_bubble - spec.subcooling);
            h_liq = f.liquid_enthalpy(p_co, sat_co.t_bubble - spec.subcooling - liquid_line_cooling);
            q_hx = (1.0 - suction_gain_share) * (h_suc - h_eo);
            m = spec.capacity / (h_eo - (h_liq - q_hx));
            // Compressor: friction, shell and motor follow the power they give.
            let mut shaft = m * 0.45 * (f.sat(p_suc).h_vapor - f.sat(p_suc).h_liquid);
            for _ in 0..5 {
                compressor.motor.rated_shaft = shaft / 0.85;
                compressor.friction = 0.06 * shaft;
                compressor.shell = spec.shell * shaft;
                compressor.to_suction = 0.004 * shaft;
                compressor.from_discharge = 0.0015 * shaft;
                compressor.oil = 0.12 + 0.35e-3 * shaft;
                compressor.volume = 0.5e-3 + 2.0e-6 * shaft;
                let v = f.state(&f.sat(p_suc), h_suc).v;
                let r = root(log(m * v * 0.9), log(m * v * 4.0), |l| {
                    let mut c = compressor;
                    c.swept = libm::exp(l);
                    c.run(f, (p_suc, h_suc), p_dis, room).map_or(1.0, |r| log(r.flow / m))
                });
                compressor.swept =
                    libm::exp(r.unwrap_or_else(|| panic!("{}: compressor cannot be sized", spec.name)));
                if let Some(r) = compressor.run(f, (p_suc, h_suc), p_dis, room) {
                    shaft = r.power * 0.82;
                }
            }
            let run = compressor
                .run(f, (p_suc, h_suc), p_dis, room)
                .unwrap_or_else(|| panic!("{}: compressor does not run at design", spec.name));
            let discharge_loss = 0.0;
            let h_in = run.h_out - discharge_loss;
            condenser.air_flow = m * (h_in - h_co) / (spec.condenser.air_change * air::CP);
            let around = clean(ambient, air::humidity(ambient, 0.4));
            let r = root(log(0.2), log(400.0), |l| {
                let mut c = condenser.clone();
                c.length = libm::exp(l);
                c.march(f, Inlet { m, p: p_dis, h: h_in, gas: 0.0 }, around, false).h_out - h_co
            });
            condenser.length =
                libm::exp(r.unwrap_or_else(|| panic!("{}: condenser cannot be sized", spec.name)));
            p_co = condenser.march(f, Inlet { m, p: p_dis, h: h_in, gas: 0.0 }, around, false).p_out;
        }
        // Evaporator: length for the outlet superheat, inlet pressure for the outlet pressure.
        let h_ei = h_liq - q_hx;
        let around = clean(spec.space + k, w_space);
        let mut p_ei = p_eo * 1.02;
        let template = evaporator.clone();
        let inlet_for = |length: f64, from: f64| {
            let mut c = template.clone();
            c.length = length;
            let mut p = from;
            for _ in 0..8 {
                let out = c.march(f, Inlet { m, p, h: h_ei, gas: 0.0 }, around, false);
                p += (p_eo - out.p_out) * 0.9;
                p = p.clamp(p_eo, p_eo * 2.0);
            }
            p
        };
        let excess = |l: f64| {
            let length = libm::exp(l);
            let p = inlet_for(length, p_eo * 1.02);
            let mut c = template.clone();
            c.length = length;
            c.march(f, Inlet { m, p, h: h_ei, gas: 0.0 }, around, false).h_out - h_eo
        };
        // A much longer tube falls short again by its own pressure drop: the first crossing is meant.
        let mut end = log(0.6);
        while excess(end) < 0.0 && end < log(300.0) {
            end += 0.1;
        }
        let r = root(end - 0.1, end, excess);
        evaporator.length =
            libm::exp(r.unwrap_or_else(|| panic!("{}: evaporator cannot be sized", spec.name)));
        p_ei = inlet_for(evaporator.length, p_ei);

        let v_liq = f.sat(p_co).v_liquid;
        let liquid_line = 6_000.0 / (m * m * v_liq);
        let drier = 8_000.0 / (m * m * v_liq);
        let p_drier = metering::after_restriction(f, m, p_co - 6_000.0, h_liq, drier);
        let lag = if matches!(spec.device, Device::Orifice) { 0.3 } else { 0.15 };
        let g = metering::flux(f, p_drier, h_liq, p_ei, lag);
        let metering = match spec.device {
            Device::Capillary { bore } => {
                let cap = |length: f64| Capillary { bore, length, soldered: (0.25, 0.85), delay: 12_000.0 };
                let r = root(log(0.1), log(60.0), |l| {
                    let length = libm::exp(l);
                    log(cap(length).length_for(f, m, (p_drier, h_liq), p_ei, q_hx, 1.0) / length)
                });
                Metering::Capillary(cap(libm::exp(
                    r.unwrap_or_else(|| panic!("{}: capillary cannot be sized", spec.name)),
                )))
            }
            Device::Orifice => Metering::Orifice { area: m / g },
            Device::Thermostatic { opening } => {
                let bulb = 0.9;
                let full = (f.dew_pressure(t_e + spec.superheat) - p_eo) * bulb;
                // Static superheat is about 60 % of the working superheat at this opening.
                let spring = 0.6 * full;
                let stroke = (full - spring) / opening;
                let area = m / (g * opening);
                Metering::Thermostatic {
                    valve: ThermostaticValve { spring, stroke, closed: 0.03, bulb },
                    area,
                    opening,
                }
            }
            Device::Electronic { opening } => {
                let droop = 0.8;
                let set = spec.superheat - (opening - 0.5) * droop;
                Metering::Electronic {
                    valve: ElectronicValve { set, droop, closed: 0.05 },
                    area: m / (g * opening),
                    opening,
                }
            }
        };
        let v_suc = f.state(&f.sat(p_eo), h_eo).v;
        let drop = p_eo - p_suc;
        let (regulator, line_share) = match spec.regulator {
            None => (None, 1.0),
            Some(t) => {
                // Half of the drop at design is the regulator's.
                let set = f.dew_pressure(t + k);
                let range = (set - p_suc) * 0.8;
                let opening = ((set - p_suc) / range).min(1.0);
                (Some(Regulator { set, range, k: 0.5 * drop / (m * m * v_suc) * opening * opening }), 0.5)
            }
        };
        let suction_line = line_share * drop / (m * m * v_suc);
        let kw = spec.capacity / 1000.0 * 1e-3;
        let mut machine = Machine {
            spec: spec.clone(),
            fluid: fluid.clone(),
            evaporator,
            condenser,
            compressor,
            metering,
            lag,
            drier,
            liquid_line,
            suction_line,
            regulator,
            suction_gain: 0.0,
            exchanger: 0.0,
            liquid_loss: 0.0,
            discharge_loss: 0.0,
            volumes: spec.volumes.map(|v| v * kw),
            charge: 1.0,
            fans: [spec.fans[0] * spec.capacity, spec.fans[1] * spec.capacity],
            design: [
                log(p_ei),
                log(p_dis),
                log(p_suc),
                h_suc / 1e5,
                if spec.receiver { 0.35 } else { q_hx / 1e5 },
            ],
        };
        // Heat exchange of the lines: room first, then the solder.
        let t_liq = f.temperature(p_co, h_liq);
        let t_co = f.temperature(p_co, h_co);
        machine.liquid_loss = m * (h_co - h_liq) / (0.5 * (t_co + t_liq) - ambient).max(1.0);
        let t_mean = 0.5 * (f.temperature(p_eo, h_eo) + f.temperature(p_suc, h_suc));
        machine.suction_gain = suction_gain_share * (h_suc - h_eo) * m / (ambient - t_mean);
        if capillary {
            machine.exchanger = 0.75 * (h_suc - h_eo) * m / (t_liq - t_mean);
        }
        let day = machine.design_day();
        // The exact marches of the lines: liquid line first, then room and solder together.
        if let Some(loss) = root(machine.liquid_loss * 0.2, machine.liquid_loss * 5.0, |u| {
            let mut c = machine.clone();
            c.liquid_loss = u;
            c.evaluate(&c.design, &day, &Faults::default()).map_or(f64::NAN, |p| p.h_liquid - h_liq)
        }) {
            machine.liquid_loss = loss;
        }
        for _ in 0..30 {
            let at = |gain: f64, solder: f64| {
                let mut c = machine.clone();
                c.suction_gain = gain;
                c.exchanger = solder;
                c.evaluate(&c.design, &day, &Faults::default()).map(|p| (p.residual[2], p.residual[4]))
            };
            let (g, s) = (machine.suction_gain, machine.exchanger);
            let Some((r, t)) = at(g, s) else { break };
            if capillary {
                let (Some((rg, tg)), Some((rs, ts))) = (at(g * 1.001, s), at(g, s * 1.001)) else { break };
                let (a, b, c, d) = (
                    (rg - r) / (0.001 * g),
                    (rs - r) / (0.001 * s),
                    (tg - t) / (0.001 * g),
                    (ts - t) / (0.001 * s),
                );
                let det = a * d - b * c;
                machine.suction_gain = (g - (d * r - b * t) / det).clamp(g * 0.5, g * 2.0);
                machine.exchanger = (s - (a * t - c * r) / det).clamp(s * 0.5, s * 2.0);
            } else {
                let Some((rg, _)) = at(g * 1.001, s) else { break };
                machine.suction_gain = (g - r * 0.001 * g / (rg - r)).clamp(g * 0.5, g * 2.0);
            }
        }
        if let Some(p) = machine.evaluate(&machine.design, &day, &Faults::default()) {
            machine.charge = p.charge;
        }
        if let Ok(x) = solve::newton(&machine, &machine.design, &day, &Faults::default()) {
            machine.design = x;
        }
        machine
    }

    /// The day of the sheet.
    pub fn design_day(&self) -> Day {
        let s = &self.spec;
        Day {
            space: s.space + 273.15,
            humidity: air::humidity(s.space + 273.15, s.humidity),
            ambient: s.ambient + 273.15,
            voltage: s.motor.voltage,
        }
    }

    /// Unknowns in use: four, and a fifth for a receiver's level or the solder's heat.
    pub fn unknowns(&self) -> usize {
        if self.spec.receiver || self.exchanger > 0.0 { 5 } else { 4 }
    }
}
