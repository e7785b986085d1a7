//! One cause followed from nothing to total, with the box as warm as such a machine really leaves it.

use super::fault::{Cause, MIDDLE};
use super::machine::{Day, Faults, Machine, Metering, Point};
use super::solve::{self, Rejected};
use libm::pow;

/// Severity of a cause on its way from nothing, 0, to total, 1.
///
/// What closes (tube, drier, air) is even in the logarithm of what stays open: blockages bite late.
pub fn severity(cause: Cause, machine: &Machine, way: f64) -> f64 {
    let closing = |last: f64| 1.0 - pow(last, way);
    match cause {
        Cause::Undercharge => 0.98 * way,
        Cause::Overcharge => 1.2 * way,
        Cause::LiquidLineRestriction => closing(1e-3),
        Cause::MeteringUnderfeed => closing(2e-3),
        Cause::FloodBack => match machine.metering {
            Metering::Capillary(_) | Metering::Orifice { .. } => 3.0 * way,
            Metering::Thermostatic { opening, .. } | Metering::Electronic { opening, .. } => {
                (1.0 / opening - 1.0) * 1.5 * way
            }
        },
        Cause::WeakCompressor => 1.9 * way,
        // A fan that stands leaves what warm air draws through the coil by itself, a face that is shut half of that.
        Cause::CondenserAirflow | Cause::EvaporatorAirflow => closing(0.04),
        Cause::NonCondensables => 1.2 * way,
    }
}

/// Faults of one cause at a place of its way.
pub fn faults(cause: Cause, machine: &Machine, leak_share: f64, way: f64) -> Faults {
    let mut f = Faults::default();
    cause.apply(severity(cause, machine, way), MIDDLE, machine, leak_share, &mut f);
    f
}

/// Share of the capacity at the sheet that the box needs there.
fn load_share(machine: &Machine) -> f64 {
    if machine.spec.duty == "air_conditioning" { 0.75 } else { 0.6 }
}

/// Warmth of what surrounds the box beyond the air at the condenser, K: sun and people on rooms.
pub fn sun(machine: &Machine) -> f64 {
    if machine.spec.duty == "air_conditioning" { 5.0 } else { 0.0 }
}

/// Heat that leaks into the box at a space temperature, W.
pub fn load(machine: &Machine, day: &Day, space: f64) -> f64 {
    let s = &machine.spec;
    let design = s.ambient - s.space + sun(machine);
    load_share(machine) * s.capacity * (day.ambient + sun(machine) - space) / design
}

/// The state of a machine that has run long enough for the box to settle: at its set point, or where what leaks in is
/// what it still takes out.
#[derive(Clone, Copy, Debug)]
pub struct Settled {
    /// The solution.
    pub x: [f64; 5],
    /// The day with the space where it settled.
    pub day: Day,
    /// The operating point.
    pub point: Point,
}

/// Follows a settled machine to other faults; the space goes along.
pub fn settle(
    machine: &Machine,
    from: (&Settled, &Faults),
    day: &Day,
    faults: &Faults,
) -> Result<Settled, Rejected> {
    let at = |space: f64, start: &Settled, before: &Faults| -> Result<Settled, Rejected> {
        let there = Day { space, humidity: day.humidity, ..*day };
        let x = solve::follow(machine, &start.x, (&start.day, before), (&there, faults))?;
        let point = machine.evaluate(&x, &there, faults).ok_or(Rejected::BeyondTables)?;
        Ok(Settled { x, day: there, point })
    };
    let short = |s: &Settled| s.point.capacity - load(machine, day, s.day.space);
    let first = at(from.0.day.space, from.0, from.1)?;
    let set_point = day.space;
    // Warmer takes out more and lets in less: one crossing.
    let (mut cold, mut here) = (set_point, first);
    if short(&here) >= 0.0 && here.day.space <= set_point + 1e-9 {
        return Ok(here);
    }
    let mut warm = day.ambient + sun(machine);
    let mut slope = load_share(machine) * machine.spec.capacity
        / (machine.spec.ambient - machine.spec.space + sun(machine));
    for _ in 0..14 {
        let gap = short(&here);
        if gap.abs() < 2e-3 * machine.spec.capacity {
            break;
        }
        if gap < 0.0 {
            cold = cold.max(here.day.space);
        } else {
            warm = warm.min(here.day.space);
        }
        let mut next = here.day.space - gap / (slope * 1.5);
        if !(next > cold && next < warm) {
            next = 0.5 * (cold + warm);
        }
        if next <= set_point {
            next = set_point;
        }
        let there = at(next, &here, faults)?;
        let (a, b) = (here.day.space, there.day.space);
        if (b - a).abs() < 0.02 {
            here = there;
            break;
        }
        slope = ((short(&there) - gap) / (b - a) / 1.5).max(slope * 0.3);
        here = there;
        if here.day.space <= set_point + 1e-9 && short(&here) >= 0.0 {
            break;
        }
    }
    Ok(here)
}

/// One place of a way.
#[derive(Clone, Copy, Debug)]
pub struct Step {
    /// Place on the way.
    pub way: f64,
    /// The machine there.
    pub at: Settled,
}

/// Follows one cause as far as the steady balances hold; the reason where they end before the total.
pub fn follow(
    machine: &Machine,
    leak_share: f64,
    cause: Cause,
    start: &Settled,
    steps: usize,
) -> (Vec<Step>, Option<Rejected>) {
    let set_day = start.day;
    let mut out = vec![Step { way: 0.0, at: *start }];
    let mut before = Faults::default();
    for k in 1..=steps {
        let way = k as f64 / steps as f64;
        let next = faults(cause, machine, leak_share, way);
        let Some(last) = out.last() else { break };
        match settle(machine, (&last.at, &before), &set_day, &next) {
            Ok(at) => out.push(Step { way, at }),
            Err(why) => return (out, Some(why)),
        }
        before = next;
    }
    (out, None)
}

/// Shares of the last balanced flow at which the way to rest is looked at.
const LEFT: [f64; 5] = [0.7, 0.45, 0.25, 0.1, 0.0];

/// One cause from nothing to total, with what clamps show; the steps stand in the order of getting worse.
///
/// The way ends where the steady balances hold to the end, at rest where they do not, or where a control or protector
/// would stop the machine for good: what a technician reads is the moment before.
pub fn way(machine: &Machine, leak_share: f64, cause: Cause, start: &Settled, steps: usize) -> Vec<Step> {
    let design = machine.evaluate(&machine.design, &machine.design_day(), &Faults::default());
    let (mut out, _) = follow(machine, leak_share, cause, start, steps);
    if let Some(end) = out.last().copied() {
        let worst = faults(cause, machine, leak_share, end.way);
        if let Some(rest) = super::limit::rest(machine, cause, &end.at, &worst) {
            for left in LEFT {
                let way = 1.0 - (1.0 - end.way) * left;
                out.push(Step { way, at: super::limit::toward_rest(&end.at, &rest, left) });
            }
        }
    }
    if let Some(design) = design {
        for step in &mut out {
            step.at.point = super::limit::clamped(&design, &step.at.day, &step.at.point);
        }
    }
    out
}
