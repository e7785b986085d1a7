//! The nine causes as changes of parts, and how severe each has to be on each type to matter.

use super::machine::{Faults, Machine, Metering};
use super::solve;

/// A cause, in the order that breaks ties.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Cause {
    /// Too little refrigerant.
    Undercharge,
    /// Too much refrigerant.
    Overcharge,
    /// Drier or liquid line partly blocked.
    LiquidLineRestriction,
    /// Metering device passes too little.
    MeteringUnderfeed,
    /// Metering device passes too much.
    FloodBack,
    /// Compressor pumps too little.
    WeakCompressor,
    /// Too little condenser air.
    CondenserAirflow,
    /// Too little evaporator air.
    EvaporatorAirflow,
    /// Air or another gas that does not condense.
    NonCondensables,
}

/// Every cause.
pub const CAUSES: [Cause; 9] = [
    Cause::Undercharge,
    Cause::Overcharge,
    Cause::LiquidLineRestriction,
    Cause::MeteringUnderfeed,
    Cause::FloodBack,
    Cause::WeakCompressor,
    Cause::CondenserAirflow,
    Cause::EvaporatorAirflow,
    Cause::NonCondensables,
];

/// Which way a cause comes about: the same severity acts differently.
#[derive(Clone, Copy, Debug)]
pub struct Manner {
    /// Weak compressor: share lost through leaking valves that recirculate hot gas, the rest within the stroke.
    pub recirculated: f64,
    /// Airflow: 1 for dirt or ice on the fins, 0 for a slow fan.
    pub dirt: f64,
}

/// The manner that severities are scaled with.
pub const MIDDLE: Manner = Manner { recirculated: 0.5, dirt: 0.5 };

impl Cause {
    /// The cause's word in a visit's report.
    pub fn word(self) -> &'static str {
        match self {
            Cause::Undercharge => "undercharge",
            Cause::Overcharge => "overcharge",
            Cause::LiquidLineRestriction => "liquid_line_restriction",
            Cause::MeteringUnderfeed => "metering_underfeed",
            Cause::FloodBack => "flood_back",
            Cause::WeakCompressor => "weak_compressor",
            Cause::CondenserAirflow => "condenser_airflow",
            Cause::EvaporatorAirflow => "evaporator_airflow",
            Cause::NonCondensables => "non_condensables",
        }
    }

    /// Adds this cause at a severity to what is already wrong.
    pub fn apply(
        self,
        severity: f64,
        manner: Manner,
        machine: &Machine,
        leak_share: f64,
        faults: &mut Faults,
    ) {
        match self {
            Cause::Undercharge => faults.charge *= 1.0 - severity,
            Cause::Overcharge => faults.charge *= 1.0 + severity,
            Cause::LiquidLineRestriction => faults.drier *= 1.0 - severity,
            Cause::MeteringUnderfeed => faults.metering *= 1.0 - severity,
            Cause::FloodBack => match machine.metering {
                Metering::Capillary(_) | Metering::Orifice { .. } => faults.metering *= 1.0 + severity,
                _ => faults.stuck = 1.0 + severity,
            },
            Cause::WeakCompressor => {
                faults.wear.valve_leak =
                    severity * manner.recirculated * machine.compressor.leak / leak_share;
                faults.wear.stroke_lost = severity * (1.0 - manner.recirculated);
            }
            Cause::CondenserAirflow => {
                faults.condenser = (1.0 - severity, 1.0 - 0.3 * manner.dirt * severity);
            }
            Cause::EvaporatorAirflow => {
                faults.evaporator = (1.0 - severity, 1.0 - 0.3 * manner.dirt * severity);
            }
            Cause::NonCondensables => faults.gas = severity * libm::exp(machine.design[1]),
        }
    }

    /// The severest this rig goes, by metering device.
    fn most(self, machine: &Machine) -> f64 {
        match self {
            Cause::Undercharge => 0.75,
            Cause::Overcharge => {
                if machine.spec.receiver {
                    1.2
                } else {
                    0.9
                }
            }
            Cause::LiquidLineRestriction => 0.975,
            Cause::MeteringUnderfeed => 0.9,
            Cause::FloodBack => match machine.metering {
                Metering::Capillary(_) | Metering::Orifice { .. } => 1.5,
                Metering::Thermostatic { opening, .. } | Metering::Electronic { opening, .. } => {
                    1.6 / opening - 1.0
                }
            },
            Cause::WeakCompressor => 0.6,
            Cause::CondenserAirflow | Cause::EvaporatorAirflow => 0.9,
            Cause::NonCondensables => 0.45,
        }
    }
}

/// Impact ratios the five severities aim at.
pub const AIMS: [f64; 5] = [0.97, 0.92, 0.85, 0.75, 0.63];

/// One step of a sweep: severity, capacity ratio, COP ratio.
#[derive(Clone, Copy, Debug)]
pub struct Swept {
    /// Severity.
    pub severity: f64,
    /// Capacity over healthy.
    pub capacity: f64,
    /// COP over healthy.
    pub cop: f64,
    /// The solution.
    pub x: [f64; 5],
}

/// Raises one cause step by step on the nominal machine at its design point.
pub fn sweep(machine: &Machine, cause: Cause, steps: usize, stop: f64) -> Vec<Swept> {
    let day = machine.design_day();
    let good = Faults::default();
    let Some(healthy) = machine.evaluate(&machine.design, &day, &good) else { return Vec::new() };
    let mut out = vec![Swept { severity: 0.0, capacity: 1.0, cop: 1.0, x: machine.design }];
    let mut before = good;
    let mut x = machine.design;
    for k in 1..=steps {
        // Even in the square root of what stays open: blockages bite late.
        let t = k as f64 / steps as f64;
        let t = if cause == Cause::LiquidLineRestriction { 1.0 - (1.0 - t) * (1.0 - t) } else { t };
        let severity = cause.most(machine) * t;
        let mut faults = good;
        cause.apply(severity, MIDDLE, machine, healthy.leak_share, &mut faults);
        let Ok(y) = solve::follow(machine, &x, (&day, &before), (&day, &faults)) else { break };
        let Some(p) = machine.evaluate(&y, &day, &faults) else { break };
        out.push(Swept { severity, capacity: p.capacity / healthy.capacity, cop: p.cop / healthy.cop, x: y });
        if (p.capacity / healthy.capacity).min(p.cop / healthy.cop) < stop {
            break;
        }
        x = y;
        before = faults;
    }
    out
}

/// The five severities of a cause on a type, aimed at [`AIMS`] as far as the cause can go there.
pub fn ladder(machine: &Machine, cause: Cause) -> [f64; 5] {
    let swept = sweep(machine, cause, 24, 0.6);
    let impact: Vec<(f64, f64)> = swept.iter().map(|s| (s.severity, s.capacity.min(s.cop))).collect();
    let lowest = impact.iter().map(|i| i.1).fold(1.0, f64::min);
    let mut out = [0.0; 5];
    for (k, aim) in AIMS.iter().enumerate() {
        // Where a cause cannot cost that much, its severities share out what it can.
        let aim = if lowest > AIMS[4] { 1.0 - (1.0 - aim) / (1.0 - AIMS[4]) * (1.0 - lowest) } else { *aim };
        out[k] = impact.last().map_or(0.0, |l| l.0);
        for w in impact.windows(2) {
            if w[1].1 <= aim {
                let r = (w[0].1 - aim) / (w[0].1 - w[1].1).max(1e-9);
                out[k] = w[0].0 + r.clamp(0.0, 1.0) * (w[1].0 - w[0].0);
                break;
            }
        }
    }
    out
}
