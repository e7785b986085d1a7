//! How each cause, at each of a few severities, would move the channels away from healthy.

use super::limit::{BEYOND, End, FURTHER, LOOSE, parts_left};
use crate::cause::Cause;
use crate::expectation::{Balance, Expectation};
use crate::machine::{Fault, Fluid, Nominal, Run, Unknowns, solve};
use crate::symptom::{self, CHANNELS, Vector};

/// The nodes of each cause: the usual severities, whose balances are solved, and the states toward its limit.
pub(crate) const SEVERITIES: usize = USUAL + BEYOND;
/// The usual severities.
pub(super) const USUAL: usize = 3;

/// One cause at one severity.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Node {
    /// Fraction lost or added; 0 where the model found no balance.
    pub(crate) severity: f32,
    /// Movement of every channel.
    pub(crate) shift: Vector,
    /// Standard deviation of that movement beside a share of it.
    pub(crate) loose: Vector,
    /// The smaller of capacity and COP over their healthy values.
    pub(crate) impact: f32,
    /// Where the machine balances.
    at: Unknowns,
}

impl Node {
    pub(crate) const HEALTHY: Self =
        Self { severity: 0.0, shift: [0.0; CHANNELS], loose: [0.0; CHANNELS], impact: 1.0, at: [0.0; 4] };

    /// Part of the way from one node to another.
    pub(crate) fn between(a: &Self, b: &Self, part: f32) -> Self {
        Self {
            severity: a.severity + part * (b.severity - a.severity),
            shift: way(&a.shift, &b.shift, part),
            loose: way(&a.loose, &b.loose, part),
            impact: a.impact + part * (b.impact - a.impact),
            at: b.at,
        }
    }

    /// How far the node moves the temperatures, in all.
    pub(crate) fn reach(&self) -> f32 {
        self.shift.iter().take(symptom::CURRENT).map(|shift| shift.abs()).sum()
    }
}

/// Part of the way from one vector to another.
pub(super) fn way(a: &Vector, b: &Vector, part: f32) -> Vector {
    let mut between = [0.0; CHANNELS];
    for ((between, a), b) in between.iter_mut().zip(a).zip(b) {
        *between = a + part * (b - a);
    }
    between
}

/// The nodes of one cause, from mild to its limit; empty where it has none on this machine.
pub(crate) type Ladder = heapless::Vec<Node, SEVERITIES>;

/// The severities that span a cost of some 3 % to some 40 % on most machines of the kind.
fn severities(cause: Cause, nominal: &Nominal) -> [f32; USUAL] {
    match cause {
        Cause::None => [0.0; USUAL],
        Cause::Undercharge if nominal.receiver => [0.30, 0.45, 0.66],
        Cause::Undercharge => [0.08, 0.21, 0.42],
        Cause::Overcharge if nominal.receiver => [0.45, 0.70, 1.00],
        Cause::Overcharge => [0.15, 0.38, 0.80],
        Cause::LiquidLineRestriction => [0.72, 0.84, 0.92],
        Cause::MeteringUnderfeed if nominal.valve() => [0.28, 0.44, 0.60],
        Cause::MeteringUnderfeed => [0.12, 0.28, 0.54],
        Cause::FloodBack => [0.20, 0.50, 1.20],
        Cause::WeakCompressor => [0.10, 0.24, 0.50],
        Cause::CondenserAirflow => [0.25, 0.48, 0.70],
        Cause::EvaporatorAirflow => [0.28, 0.55, 0.80],
        Cause::NonCondensables => [0.07, 0.18, 0.40],
    }
}

/// Whether a cause adds something rather than taking it away.
fn adds(cause: Cause) -> bool {
    matches!(cause, Cause::Overcharge | Cause::FloodBack | Cause::NonCondensables)
}

/// Share of a limit state's looseness where a part of the capacity is left: what the surroundings do to each pipe, and what
/// a motor draws that has little to do, shows as the flow goes.
fn loosened(capacity: f32) -> f32 {
    let lost = crate::machine::positive(1.0 - capacity, 0.02).min(1.0);
    lost * lost
}

/// Standard deviation of what a liquid line gives to its surroundings, as a share of it: lines are long and short, lagged and
/// bare (judged).
const DRIFT_SPREAD: f32 = 0.7;

/// A node's looseness with that of its liquid line.
fn drifting(mut loose: Vector, run: &Run) -> Vector {
    let drift = DRIFT_SPREAD * run.liquid_drift_k.abs();
    for channel in [symptom::LIQUID_LINE, symptom::DRIER_OUTLET] {
        if let Some(loose) = loose.get_mut(channel) {
            *loose += drift;
        }
    }
    loose
}

/// Solves one cause's ladder, each severity from the one before, up to its limit state.
pub(crate) fn climb(
    nodes: &mut Ladder,
    fluid: Fluid<'_>,
    nominal: &Nominal,
    healthy: &Expectation,
    cause: Cause,
) {
    nodes.clear();
    let healthy = &healthy.balance;
    let base = symptom::predicted(fluid, &healthy.run);
    let (mut x, mut slopes) = (healthy.at, healthy.jacobian);
    let usual = severities(cause, nominal);
    let mut last = Node { at: healthy.at, ..Node::HEALTHY };
    for severity in usual {
        let attempt = |from: &_, severity, slopes: Option<&_>| {
            solve(&healthy.machine, fluid, Fault::new(cause, severity), from, slopes)
        };
        // Where one step is too long, half of it first.
        let found = attempt(&x, severity, Some(&slopes)).or_else(|| {
            let half = attempt(&x, 0.5 * (last.severity + severity), None)?;
            attempt(&half.0, severity, None)
        });
        let Some((at, run, found_slopes)) = found else { break };
        slopes = found_slopes;
        let mut shift = [0.0; CHANNELS];
        let moved = symptom::predicted(fluid, &run);
        for ((shift, moved), base) in shift.iter_mut().zip(moved).zip(base) {
            *shift = moved - base;
        }
        let capacity = run.capacity / healthy.run.capacity;
        let impact = capacity.min(run.cop / healthy.run.cop);
        let loose = LOOSE.map(|loose| loosened(capacity) * loose);
        last = Node { severity, shift, loose: drifting(loose, &run), impact, at };
        if nodes.push(last).is_err() {
            return;
        }
        x = at;
    }
    // A cause that has no balance at all only takes its closed form where that needs none.
    if nodes.is_empty() && adds(cause) {
        return;
    }
    let end = End { fluid, healthy, base: &base, shift: &last.shift, impact: last.impact };
    let unsolved = usual.into_iter().skip(nodes.len());
    let left = |severity: f32| {
        if adds(cause) {
            1.0 - (severity / last.severity.max(1.0e-3) - 1.0) / FURTHER
        } else {
            (1.0 - severity) / (1.0 - last.severity)
        }
    };
    let severest = usual.last().map_or(1.0, |severity| left(*severity));
    for left in unsolved.map(left).chain(parts_left(cause).map(|part| part * severest)) {
        let left = left.max(0.0).min(1.0);
        let (shift, impact) = end.beyond(cause, left);
        let severity = if adds(cause) {
            last.severity * (1.0 + FURTHER * (1.0 - left))
        } else {
            1.0 - left * (1.0 - last.severity)
        };
        let mut loose = last.loose;
        for (loose, most) in loose.iter_mut().zip(LOOSE) {
            *loose = most + left * left * (*loose - most);
        }
        if nodes.push(Node { severity, shift, loose, impact, at: last.at }).is_err() {
            return;
        }
    }
}

/// What two nodes of different causes do together beyond the sum of what each does alone.
///
/// Nothing where the model finds no balance.
pub(crate) fn together(fluid: Fluid<'_>, healthy: &Balance, nodes: [(Cause, &Node); 2]) -> Option<Vector> {
    let [(one, a), (two, b)] = nodes;
    let fault = Fault::two((one, a.severity), (two, b.severity));
    let mut x = [0.0; 4];
    for (((x, a), b), healthy) in x.iter_mut().zip(a.at).zip(b.at).zip(healthy.at) {
        *x = a + b - healthy;
    }
    let (_, run, _) = solve(&healthy.machine, fluid, fault, &x, Some(&healthy.jacobian))?;
    let moved = symptom::predicted(fluid, &run);
    let base = symptom::predicted(fluid, &healthy.run);
    let mut beyond = [0.0; CHANNELS];
    for ((((beyond, moved), base), a), b) in
        beyond.iter_mut().zip(moved).zip(base).zip(&a.shift).zip(&b.shift)
    {
        *beyond = moved - base - a - b;
    }
    Some(beyond)
}
