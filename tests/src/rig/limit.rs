//! Where the steady balances end: the state that a machine comes to rest in, and the way there.
//!
//! With a tube blocked the compressor pulls the low side down to its own limit and the liquid stays in the condenser;
//! empty, both sides are thin gas; with a broken valve the two pressures meet. Near such a state little flows, and
//! what sets a pressure or a temperature apart from rest goes with the flow: heat rejected over the condenser's
//! conductance, what the cylinder still draws above its limit, the warmth a pipe carries to its clamp. So the way from
//! the last balanced point to rest is a straight line in the flow that is left.

use super::compressor::{Around, Wear};
use super::fault::Cause;
use super::machine::{Day, Faults, Machine, Point};
use super::total::{self, Settled};
use super::{air, pump_down};

/// Conductance of the discharge pipe up to the clamp, a hand's breadth from the shell, over the flow's heat capacity at
/// the sheet's point (judged: the muffler in the suction gas and the pipe lose a few kelvin at full flow).
const DISCHARGE_NTU: f64 = 0.25;
/// The same from the drier's outlet to its clamp (judged).
const DRIER_NTU: f64 = 0.12;
/// Share of the shell's warmth above the room that the discharge pipe's clamp shows without any flow (judged).
const STUB: f64 = 0.4;
/// Standard atmosphere, Pa: a leak ends there.
const ATMOSPHERE: f64 = 101_325.0;

/// What clamps show at little flow: the pipe cools toward its surroundings on the way. Nothing changes at the sheet's
/// own flow, where what the pipe loses is part of the machine as sized.
pub fn clamped(design: &Point, day: &Day, p: &Point) -> Point {
    let mut out = *p;
    let less = (design.flow / p.flow.max(1e-9) - 1.0).max(0.0);
    let shell = p.t_shell.min(day.ambient + 75.0);
    let stub = day.ambient + STUB * (shell - day.ambient).max(0.0);
    // The internal protector keeps the windings, and with them the gas, below what oil stands.
    let hot = p.t_discharge.min(day.ambient + 150.0);
    out.t_discharge = stub + (hot - stub) * libm::exp(-DISCHARGE_NTU * less);
    out.t_drier = day.ambient + (p.t_drier - day.ambient) * libm::exp(-DRIER_NTU * less);
    out
}

/// The state of rest beyond the last balanced point, where physics names one.
pub fn rest(machine: &Machine, cause: Cause, end: &Settled, faults: &Faults) -> Option<Settled> {
    let f = &*machine.fluid;
    let day = Day { space: end.day.ambient + total::sun(machine), ..end.day };
    let p = &end.point;
    let wear = faults.wear;
    let liquid_at_ambient = f.mean_pressure(day.ambient + 0.5);
    let (p_suction, p_discharge, left) = match cause {
        Cause::LiquidLineRestriction | Cause::MeteringUnderfeed => {
            let head = liquid_at_ambient.min(p.p_discharge);
            // A tube that is all but shut still weeps, and the oil keeps giving off gas.
            (pump_down::limit(machine, &day, wear, head)? + 4_000.0, head, 0.0)
        }
        Cause::Undercharge => {
            let volume = machine.volumes.iter().sum::<f64>() + machine.compressor.volume + coils(machine);
            let thin = f.state(&f.sat(ATMOSPHERE), f.vapor_enthalpy(ATMOSPHERE, day.ambient)).v;
            let left = volume / thin / p.charge;
            if left >= 1.0 {
                return None;
            }
            let head = p.p_discharge * left;
            let lowest = pump_down::limit(machine, &day, wear, head)?;
            ((p.p_suction * left).max(lowest), head, left)
        }
        Cause::WeakCompressor => {
            let equal = liquid_at_ambient.min(p.p_discharge).max(p.p_suction);
            (equal * 0.985, equal, 0.0)
        }
        _ => return None,
    };
    let toward = |rest: f64, now: f64| rest + left * (now - rest);
    let t_suction = toward(day.ambient, p.t_suction);
    let sat = f.sat(p_suction);
    let h_suction = f.vapor_enthalpy(p_suction, t_suction.max(sat.t_dew + 0.1));
    let around = Around { room: day.ambient, voltage: day.voltage, wear: Wear { ..wear } };
    // What the motor takes against the two pressures with hardly any gas between them.
    let run = machine.compressor.run(f, (p_suction, h_suction), p_discharge, around);
    let (current, power, shell) =
        run.map_or((p.current, p.power, p.t_shell), |r| (r.current, r.power, r.t_shell));
    let fan = |w: f64, flow: f64| w / (flow * air::CP);
    let point = Point {
        flow: p.flow * left,
        capacity: p.capacity * left,
        p_suction,
        p_evaporator: p_suction,
        p_inlet: p_suction,
        p_discharge,
        p_liquid: p_discharge,
        p_drier: p_discharge,
        t_evaporator: toward(day.space, p.t_evaporator + day.space - end.day.space),
        t_suction,
        t_discharge: toward(day.ambient + STUB * (shell - day.ambient).clamp(0.0, 75.0), p.t_discharge),
        t_liquid: toward(day.ambient, p.t_liquid),
        t_condenser: day.ambient,
        t_drier: day.ambient,
        t_supply: day.space + fan(machine.fans[0], machine.evaporator.air_flow),
        t_exhaust: day.ambient + fan(machine.fans[1], machine.condenser.air_flow),
        t_shell: shell,
        current,
        power,
        x_suction: 1.2,
        x_evaporator: 1.2,
        ..*p
    };
    Some(Settled { point, day, ..*end })
}

/// Inside volume of both coils, m3.
fn coils(machine: &Machine) -> f64 {
    [&machine.evaporator, &machine.condenser]
        .iter()
        .map(|c| core::f64::consts::PI * c.bore * c.bore / 4.0 * c.length * c.circuits)
        .sum()
}

/// A point on the way to rest, where a share of the last balanced flow is left.
pub fn toward_rest(end: &Settled, rest: &Settled, left: f64) -> Settled {
    let mix = |a: f64, b: f64| b + left * (a - b);
    let (p, r) = (&end.point, &rest.point);
    Settled {
        x: end.x,
        day: Day { space: mix(end.day.space, rest.day.space), ..end.day },
        point: Point {
            flow: mix(p.flow, r.flow),
            capacity: mix(p.capacity, r.capacity),
            p_suction: mix(p.p_suction, r.p_suction),
            p_evaporator: mix(p.p_evaporator, r.p_evaporator),
            p_inlet: mix(p.p_inlet, r.p_inlet),
            p_discharge: mix(p.p_discharge, r.p_discharge),
            p_liquid: mix(p.p_liquid, r.p_liquid),
            p_drier: mix(p.p_drier, r.p_drier),
            t_evaporator: mix(p.t_evaporator, r.t_evaporator),
            t_suction: mix(p.t_suction, r.t_suction),
            t_discharge: mix(p.t_discharge, r.t_discharge),
            t_liquid: mix(p.t_liquid, r.t_liquid),
            t_condenser: mix(p.t_condenser, r.t_condenser),
            t_drier: mix(p.t_drier, r.t_drier),
            t_supply: mix(p.t_supply, r.t_supply),
            t_exhaust: mix(p.t_exhaust, r.t_exhaust),
            t_shell: mix(p.t_shell, r.t_shell),
            current: mix(p.current, r.current),
            power: mix(p.power, r.power),
            x_suction: mix(p.x_suction, r.x_suction),
            x_evaporator: mix(p.x_evaporator, r.x_evaporator),
            ..*p
        },
    }
}
