//! How each cause, at each of a few severities, would move the channels away from healthy.

use crate::cause::Cause;
use crate::expectation::{Balance, Expectation};
use crate::machine::{Fault, Fluid, Nominal, Unknowns, solve};
use crate::symptom::{self, CHANNELS, Vector};

/// The severities solved for each cause: the usual ones, and one beyond them on machines on which those cost little.
pub(crate) const SEVERITIES: usize = USUAL + 1;
const USUAL: usize = 3;

/// One cause at one severity.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Node {
    /// Fraction lost or added; 0 where the model found no balance.
    pub(crate) severity: f32,
    /// Movement of every channel.
    pub(crate) shift: Vector,
    /// The smaller of capacity and COP over their healthy values.
    pub(crate) impact: f32,
    /// Where the machine balances.
    at: Unknowns,
}

impl Node {
    pub(crate) const HEALTHY: Self =
        Self { severity: 0.0, shift: [0.0; CHANNELS], impact: 1.0, at: [0.0; 4] };

    /// Part of the way from one node to another.
    pub(crate) fn between(a: &Self, b: &Self, part: f32) -> Self {
        let mut shift = [0.0; CHANNELS];
        for ((shift, a), b) in shift.iter_mut().zip(&a.shift).zip(&b.shift) {
            *shift = a + part * (b - a);
        }
        Self {
            severity: a.severity + part * (b.severity - a.severity),
            shift,
            impact: a.impact + part * (b.impact - a.impact),
            at: b.at,
        }
    }

    /// How far the node moves the temperatures, in all.
    pub(crate) fn reach(&self) -> f32 {
        self.shift.iter().take(symptom::CURRENT).map(|shift| shift.abs()).sum()
    }
}

/// The nodes of one cause, from mild to severe; shorter where the severest have no balance.
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

/// Capacity or COP, over healthy, that the severest node of a cause should come down to.
const FAR_ENOUGH: f32 = 0.75;

/// A severity beyond the usual ones: a quarter less is left of what is lost, a third more is added.
fn further(cause: Cause, severity: f32) -> f32 {
    let adds = matches!(cause, Cause::Overcharge | Cause::FloodBack | Cause::NonCondensables);
    if adds { 1.33 * severity } else { 1.0 - 0.75 * (1.0 - severity) }
}

/// Solves one cause's ladder, each severity from the one before.
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
    let mut reached = 0.0;
    let usual = severities(cause, nominal);
    let beyond = usual.last().map(|last| further(cause, *last));
    for severity in usual.into_iter().chain(beyond) {
        if nodes.len() >= USUAL && nodes.last().is_some_and(|last| last.impact < FAR_ENOUGH) {
            break;
        }
        let attempt = |from: &_, severity, slopes: Option<&_>| {
            solve(&healthy.machine, fluid, Fault::new(cause, severity), from, slopes)
        };
        // Where one step is too long, half of it first; where there is no balance so far out (the pressure control would
        // have stopped the machine), the half ends the ladder.
        let found = attempt(&x, severity, Some(&slopes)).map(|found| (severity, found)).or_else(|| {
            let half_way = 0.5 * (reached + severity);
            let half = attempt(&x, half_way, None)?;
            Some(attempt(&half.0, severity, None).map_or((half_way, half), |whole| (severity, whole)))
        });
        let Some((found_at, (at, run, found_slopes))) = found else { break };
        let last = found_at < severity;
        let severity = found_at;
        slopes = found_slopes;
        let mut shift = [0.0; CHANNELS];
        let moved = symptom::predicted(fluid, &run);
        for ((shift, moved), base) in shift.iter_mut().zip(moved).zip(base) {
            *shift = moved - base;
        }
        let impact = (run.capacity / healthy.run.capacity).min(run.cop / healthy.run.cop);
        if nodes.push(Node { severity, shift, impact, at }).is_err() || last {
            break;
        }
        (x, reached) = (at, severity);
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
