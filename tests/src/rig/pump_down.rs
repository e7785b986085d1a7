//! The pump-down test: what a compressor pulls against a closed valve, and what comes back.

use super::compressor::{Kind, Wear};
use super::machine::{Day, Machine, Point};
use super::math::{Rng, root};
use libm::{log, pow};

/// What the gauge showed.
#[derive(Clone, Copy, Debug)]
pub struct PumpDown {
    /// Lowest suction pressure, Pa.
    pub lowest: f64,
    /// Rise after the stop, Pa/min.
    pub rise: f64,
    /// Valve that was closed.
    pub valve: &'static str,
    /// What ended it.
    pub ended_by: &'static str,
}

/// Nothing here pulls deeper than this, Pa: oil gives off what it holds.
const LOWEST: f64 = 2_000.0;

/// Gas constant of the refrigerant times the temperature at which it is drawn in, J/kg.
fn rt(machine: &Machine, day: &Day) -> f64 {
    8314.5 / machine.fluid.transport.molar_mass * (day.ambient + 12.0)
}

/// The lowest pressure a compressor holds against a head when nothing flows to it, Pa: what it draws in is what comes
/// back. `None` where it draws in less than comes back at any pressure.
pub fn limit(machine: &Machine, day: &Day, wear: Wear, head: f64) -> Option<f64> {
    let c = &machine.compressor;
    // A scroll has no dead volume: its leak alone bounds what it pulls.
    let clearance = match c.kind {
        Kind::Reciprocating { clearance } | Kind::Rotary { clearance } => clearance,
        Kind::Scroll { .. } => 0.0,
    };
    let fluid = &machine.fluid;
    let sat = fluid.sat(head);
    let hot = fluid.state(&sat, sat.h_vapor + 40_000.0);
    let rt = rt(machine, day);
    // Volume flow left at a suction pressure, less what leaks back at that pressure.
    let leak_full =
        (c.leak + wear.valve_leak) * 0.02 * c.swept * pow(head / 1.3e6, 0.5) * pow(0.015 / hot.v, 0.5)
            / hot.v;
    let net = |ps: f64| {
        let re_expand = clearance * (pow(head / ps, 1.0 / 1.12) - 1.0);
        let swept = c.swept
            * 0.97
            * (1.0 - re_expand).max(0.0)
            * c.volumetric.min(1.05)
            * (1.0 - wear.stroke_lost)
            * ps
            / rt;
        // Worn rings also blow by while compressing.
        let rings = wear.stroke_lost * 0.25 * c.swept * ps / rt
            + wear.stroke_lost * 0.12 * leak_full / (c.leak + wear.valve_leak);
        swept - leak_full - rings
    };
    if net(LOWEST) > 0.0 {
        return Some(LOWEST);
    }
    Some(libm::exp(root(log(LOWEST), log(head * 0.9), |l| net(libm::exp(l)))?))
}

/// Pumps down against a closed suction service valve or liquid-line valve.
pub fn run(machine: &Machine, point: &Point, day: &Day, wear: Wear, rng: &mut Rng) -> Option<PumpDown> {
    let Kind::Reciprocating { .. } = machine.compressor.kind else { return None };
    let c = &machine.compressor;
    let fluid = &machine.fluid;
    // Without flow the high side settles toward what the room condenses at.
    let head = fluid.mean_pressure(day.ambient + 2.0) * 0.5 + 0.5 * point.p_discharge;
    let sat = fluid.sat(head);
    let hot = fluid.state(&sat, sat.h_vapor + 40_000.0);
    let rt = rt(machine, day);
    let leak_full =
        (c.leak + wear.valve_leak) * 0.02 * c.swept * pow(head / 1.3e6, 0.5) * pow(0.015 / hot.v, 0.5)
            / hot.v;
    let limit = limit(machine, day, wear, head)?;
    // Refrigerant keeps leaving the oil while it pulls: a few kilopascal over the dry figure, more in the cold.
    let oil = rng.between(2_000.0, 14_000.0);
    let liquid_valve = machine.spec.receiver && rng.chance(0.5);
    let boiling = if liquid_valve { rng.between(0.0, 25_000.0) } else { 0.0 };
    let mut lowest = limit + oil + boiling;
    let mut ended_by = "limit";
    let flammable = fluid.name == "R290";
    let stop = if flammable {
        // Never into vacuum with a flammable refrigerant: stopped by hand above the atmosphere.
        Some(("technician", rng.between(105_000.0, 125_000.0)))
    } else if machine.spec.receiver && rng.chance(0.35) {
        Some(("low_pressure_control", rng.between(110_000.0, 150_000.0)))
    } else if rng.chance(0.25) {
        Some(("technician", rng.between(98_000.0, 115_000.0)))
    } else {
        None
    };
    if let Some((by, at)) = stop.filter(|(_, at)| *at > lowest) {
        lowest = at;
        ended_by = by;
    }
    // After the stop the leak fills shell and line behind the valve; a line valve leaves the whole low side.
    let volume = c.volume
        + machine.volumes[2] * if liquid_valve { 1.0 } else { 0.15 }
        + if liquid_valve { 0.4 * machine.volumes[4] } else { 0.0 };
    // At rest reeds seat better than when they are beaten: a third of the running leak.
    let rest = leak_full * 0.33 + wear.stroke_lost * 0.1 * leak_full / (c.leak + wear.valve_leak);
    let degas = rng.between(200.0, 2_500.0) + if liquid_valve { rng.between(0.0, 12_000.0) } else { 0.0 };
    let rise = (rest * rt / volume * 60.0).min(0.5 * head) * 0.25 + degas;
    Some(PumpDown {
        lowest,
        rise,
        valve: if liquid_valve { "liquid_line" } else { "suction_service" },
        ended_by,
    })
}
