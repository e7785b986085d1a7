//! Finds the operating point: Newton's method with a bounded step, led from the design point by continuation.

use super::machine::{Day, Faults, Machine, Point};
use super::math;

/// Why no operating point was given.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Rejected {
    /// The equations were not brought to balance.
    NotConverged,
    /// A state left the property tables.
    BeyondTables,
}

const LIMIT: [f64; 5] = [0.2, 0.12, 0.2, 0.12, 0.3];
const TOLERANCE: f64 = 2e-8;

fn norm(p: &Point, n: usize) -> f64 {
    p.residual[..n].iter().map(|r| r * r).sum::<f64>()
}

/// Balances the machine from a starting point near the solution.
pub fn newton(machine: &Machine, start: &[f64; 5], day: &Day, faults: &Faults) -> Result<[f64; 5], Rejected> {
    let n = machine.unknowns();
    let mut x = *start;
    let mut here = machine.residuals(&x, day, faults).ok_or(Rejected::BeyondTables)?;
    let mut error = norm(&here, n);
    for _ in 0..40 {
        if here.residual[..n].iter().all(|r| r.abs() < TOLERANCE) {
            return Ok(x);
        }
        let mut jacobian = [[0.0; 5]; 5];
        for c in 0..n {
            let mut y = x;
            let e = 2e-6;
            y[c] += e;
            let beside = machine.residuals(&y, day, faults).ok_or(Rejected::BeyondTables)?;
            for r in 0..n {
                jacobian[r][c] = (beside.residual[r] - here.residual[r]) / e;
            }
        }
        let mut dx = [0.0; 5];
        for r in 0..n {
            dx[r] = -here.residual[r];
        }
        math::solve(n, &mut jacobian, &mut dx).ok_or(Rejected::NotConverged)?;
        let mut scale = 1.0f64;
        for c in 0..n {
            if dx[c].abs() > LIMIT[c] {
                scale = scale.min(LIMIT[c] / dx[c].abs());
            }
        }
        let mut moved = false;
        for _ in 0..12 {
            let mut y = x;
            for c in 0..n {
                y[c] += scale * dx[c];
            }
            if let Some(there) = machine.residuals(&y, day, faults) {
                let e = norm(&there, n);
                if e < error * (1.0 - 0.1 * scale) {
                    x = y;
                    here = there;
                    error = e;
                    moved = true;
                    break;
                }
            }
            scale *= 0.5;
        }
        if !moved {
            return if error < 1e-12 { Ok(x) } else { Err(Rejected::NotConverged) };
        }
    }
    if error < 1e-12 { Ok(x) } else { Err(Rejected::NotConverged) }
}

fn mix(a: f64, b: f64, t: f64) -> f64 {
    a + (b - a) * t
}

fn day_between(a: &Day, b: &Day, t: f64) -> Day {
    Day {
        space: mix(a.space, b.space, t),
        humidity: mix(a.humidity, b.humidity, t),
        ambient: mix(a.ambient, b.ambient, t),
        voltage: mix(a.voltage, b.voltage, t),
    }
}

fn faults_between(a: &Faults, b: &Faults, t: f64) -> Faults {
    let mut f = *b;
    f.charge = mix(a.charge, b.charge, t);
    f.drier = mix(a.drier, b.drier, t);
    f.metering = mix(a.metering, b.metering, t);
    f.stuck = mix(a.stuck, b.stuck, t);
    f.wear.valve_leak = mix(a.wear.valve_leak, b.wear.valve_leak, t);
    f.wear.stroke_lost = mix(a.wear.stroke_lost, b.wear.stroke_lost, t);
    f.condenser = (mix(a.condenser.0, b.condenser.0, t), mix(a.condenser.1, b.condenser.1, t));
    f.evaporator = (mix(a.evaporator.0, b.evaporator.0, t), mix(a.evaporator.1, b.evaporator.1, t));
    f.gas = mix(a.gas, b.gas, t);
    f
}

/// Follows the operating point from one day and state of repair to another.
pub fn follow(
    machine: &Machine,
    start: &[f64; 5],
    from: (&Day, &Faults),
    to: (&Day, &Faults),
) -> Result<[f64; 5], Rejected> {
    let (mut at, mut stride) = (0.0, 0.5);
    let mut x = *start;
    let mut before: Option<([f64; 5], f64)> = None;
    let mut last = Rejected::NotConverged;
    while at < 1.0 {
        let next = f64::min(at + stride, 1.0);
        let day = day_between(from.0, to.0, next);
        let faults = faults_between(from.1, to.1, next);
        // A line through the last two solutions leads on.
        let mut guess = x;
        if let Some((old, t)) = before {
            for c in 0..5 {
                guess[c] += (x[c] - old[c]) / (at - t) * (next - at);
            }
        }
        let found = newton(machine, &guess, &day, &faults).or_else(|_| newton(machine, &x, &day, &faults));
        match found {
            Ok(y) => {
                before = Some((x, at));
                x = y;
                at = next;
                stride *= 1.6;
            }
            Err(why) => {
                last = why;
                stride = (next - at) * 0.4;
                if stride < 0.01 {
                    return Err(last);
                }
            }
        }
    }
    let _ = last;
    Ok(x)
}
