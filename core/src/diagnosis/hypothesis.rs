//! Every explanation that is weighed: healthy, each cause at several severities, each pair of causes.

use super::signature::{Ladder, Node, USUAL};
use crate::cause::Cause;
use crate::normal::below;
use crate::symptom::{CHANNELS, DISCHARGE_PRESSURE, DRIER_OUTLET, LIQUID_LINE, Vector};

/// A cause is present from this cost of capacity or COP.
const PRESENT_FROM: f32 = 0.05;
/// Spread, as a natural logarithm, of what a fault costs on one machine about what the model says of the kind (judged).
///
/// Overcharge and flood-back cost the small difference of two large effects (more subcooling against higher head, a
/// fuller evaporator against wet suction gas), which the model knows less well.
fn cost_spread(cause: Cause) -> f32 {
    match cause {
        Cause::Overcharge | Cause::FloodBack => 0.9,
        _ => 0.4,
    }
}
/// Presence below which a node is only weighed as too mild to count; above it, what counts grows from nothing.
const NEGLIGIBLE: f32 = 0.02;
/// Prior probability of a machine without a cause: a technician was called, so a cause is likely (judged).
const PRIOR_NONE: f32 = 0.35;
/// Prior probability of two causes at once (judged).
const PRIOR_PAIR: f32 = 0.15;
/// Prior weight of a severity too mild to count, against one that counts.
const MILD_WEIGHT: f32 = 0.25;
/// Prior weight of each state beyond the usual severities, against one of those (judged: a machine that hardly cools at
/// all is what many calls are about, and it is one of many states).
const BEYOND_WEIGHT: f32 = 0.4;
/// Probability that a restriction shows no drop between the clamps before and behind the drier (judged).
const SHOWS_NO_DROP: f32 = 0.1;
/// Probability that gas that cannot condense acts by blanketing the surface rather than by its pressure (judged).
const BLANKETS: f32 = 0.2;

/// Standard deviation of a cause's signature as a fraction of itself.
pub(crate) const SIGNATURE_FRACTION: f32 = 0.10;

/// The most, beside the middle severities, that two causes do together beyond their sum.
const MOST_TOGETHER: f32 = 2.0;

/// What a visit may show that is none of the ten causes: it was told wrongly.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Unlisted {
    /// The machine holds another refrigerant than the one named.
    Refrigerant,
    /// Space and ambient temperature stand in each other's place.
    SpaceAndAmbient,
    /// The clamps at the evaporator's outlet and on the suction line do.
    OutletAndSuctionLine,
    /// Gauge pressures stand for absolute ones.
    Gauge,
    /// Something is wrong that is no listed cause: the visit is told rightly.
    Unidentified,
}

impl Unlisted {
    pub(crate) const COUNT: usize = Self::Unidentified as usize + 1;
}

/// What one node stands for: up to two causes, and how probable it is that they cost enough to count.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Hypothesis {
    pub(crate) causes: [Option<Cause>; 2],
    /// What it is where it is no cause.
    pub(crate) unlisted: Option<Unlisted>,
    pub(crate) severities: [f32; 2],
    /// Probability that the causes count; what is left counts as healthy.
    pub(crate) presence: f32,
    pub(crate) ln_prior: f32,
    pub(crate) shift: Vector,
    /// Standard deviation of its movement beside a share of it, channel by channel.
    pub(crate) loose: Vector,
    /// Capacity or COP over that of a machine in good order.
    pub(crate) impact: f32,
}

/// Standard deviation of a severity anywhere in a step, as a share of the step: 1 / sqrt(12).
const ANYWHERE: f32 = 0.288_675;
/// The same for a node of a pair, which stands for half the step below it and half of the longer one above it: the
/// steps grow by some 1.7 each.
const ABOUT: f32 = 1.35 * ANYWHERE;

/// The severities that a node stands for: a step of the channels' movement, and the share of it that is one standard
/// deviation.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Step<'a> {
    from: &'a Vector,
    to: &'a Vector,
    share: f32,
}

impl<'a> Step<'a> {
    /// A step of which the whole is one standard deviation.
    pub(crate) fn whole(from: &'a Vector, to: &'a Vector) -> Self {
        Self { from, to, share: 1.0 }
    }
    /// A step of which a part is one standard deviation.
    pub(crate) fn part(from: &'a Vector, to: &'a Vector, share: f32) -> Self {
        Self { from, to, share }
    }
    /// One standard deviation of the severity, as movement of the channels.
    pub(crate) fn deviation(&self) -> Vector {
        let mut moves = [0.0; CHANNELS];
        for ((moves, from), to) in moves.iter_mut().zip(self.from).zip(self.to) {
            *moves = self.share * (to - from);
        }
        moves
    }
}

impl Hypothesis {
    pub(crate) const HEALTHY: Self = Self {
        causes: [None, None],
        unlisted: None,
        severities: [0.0; 2],
        presence: 0.0,
        ln_prior: 0.0,
        shift: [0.0; CHANNELS],
        loose: [0.0; CHANNELS],
        impact: 1.0,
    };

    /// Something that is none of the ten causes.
    pub(crate) fn unlisted(what: Unlisted, shift: Vector, ln_prior: f32) -> Self {
        Self { unlisted: Some(what), ln_prior, shift, ..Self::HEALTHY }
    }
    /// Standard deviation of its movement, channel by channel: what is told wrongly moves no machine.
    pub(crate) fn spread(&self) -> Vector {
        if self.unlisted.is_some() {
            return self.loose;
        }
        let mut spread = self.loose;
        for (spread, shift) in spread.iter_mut().zip(&self.shift) {
            *spread += SIGNATURE_FRACTION * shift.abs();
        }
        spread
    }
    /// The causes that are more probably there than too mild to count, or none.
    pub(crate) fn each_cause(&self) -> impl Iterator<Item = Cause> + '_ {
        let there = self.presence >= 0.5;
        let none = (!there).then_some(Cause::None);
        self.causes.iter().copied().flatten().filter(move |_| there).chain(none)
    }
    /// The largest of a table's entries for the causes, as far as they count.
    pub(crate) fn most(&self, table: &[f32; Cause::COUNT]) -> f32 {
        let of = |cause: Cause| table.get(cause.index()).copied().unwrap_or(0.0);
        let most = self.causes.iter().copied().flatten().map(of).fold(0.0, f32::max);
        self.presence * most + (1.0 - self.presence) * of(Cause::None)
    }
    /// The severity of a cause; 0 where it is not there.
    pub(crate) fn severity(&self, cause: Cause) -> f32 {
        let named = |(c, _): &(&Option<Cause>, f32)| *c == &Some(cause);
        self.causes.iter().zip(self.severities).filter(named).map(|(_, severity)| severity).sum()
    }
}

/// How probable it is that a node's cause costs enough to count.
fn presence(cause: Cause, node: &Node) -> f32 {
    let cost = (1.0 - node.impact).max(1.0e-3);
    counting(below(libm::logf(cost / PRESENT_FROM) / cost_spread(cause)))
}

/// What of a presence counts: nothing up to [`NEGLIGIBLE`], all of the whole.
fn counting(presence: f32) -> f32 {
    ((presence - NEGLIGIBLE) / (1.0 - NEGLIGIBLE)).max(0.0)
}

/// Calls `each` with healthy and every cause: at two severities a step where its balances were solved, at one beyond.
pub(crate) fn singles(ladders: &[Ladder; Cause::COUNT - 1], each: &mut dyn FnMut(&Hypothesis, &[Step<'_>])) {
    each(&Hypothesis { ln_prior: libm::logf(PRIOR_NONE), ..Hypothesis::HEALTHY }, &[]);
    let single = libm::logf((1.0 - PRIOR_NONE - PRIOR_PAIR) / 9.0);
    for (cause, ladder) in Cause::ALL.iter().skip(1).zip(ladders) {
        let mut weights = 0.0;
        for pass in 0..2 {
            let mut before = Node::HEALTHY;
            for (place, node) in ladder.iter().enumerate() {
                let (parts, mass): (&[f32], f32) =
                    if place < USUAL { (&[0.5, 1.0], 1.0) } else { (&[1.0], BEYOND_WEIGHT) };
                for part in parts {
                    let here = Node::between(&before, node, *part);
                    let presence = presence(*cause, &here);
                    let weight = mass * (presence + MILD_WEIGHT * (1.0 - presence));
                    if pass == 0 {
                        weights += weight;
                        continue;
                    }
                    let hypothesis = Hypothesis {
                        causes: [Some(*cause), None],
                        unlisted: None,
                        severities: [here.severity, 0.0],
                        presence: mass * presence / weight,
                        ln_prior: single + libm::logf(weight / weights),
                        shift: here.shift,
                        loose: here.loose,
                        impact: here.impact,
                    };
                    let share = if place < USUAL { 0.5 * ANYWHERE } else { ANYWHERE };
                    let step = Step { from: &before.shift, to: &node.shift, share };
                    each_way(&hypothesis, |hypothesis| each(hypothesis, &[step]));
                }
                before = *node;
            }
        }
    }
}

/// Calls `each` with the ways in which one cause at one severity can show itself.
///
/// A restriction shows a temperature drop at the drier only where it sits there and the liquid flashes in it; one
/// behind the clamp, or one that leaves the liquid subcooled, does not. Gas that cannot condense adds its own pressure
/// or blankets the surface, and then the liquid is as much warmer as the pressure tells; which of the two it does more
/// is not known.
fn each_way(hypothesis: &Hypothesis, mut each: impl FnMut(&Hypothesis)) {
    let mut shift = hypothesis.shift;
    let (other, probability) = match hypothesis.causes[0] {
        Some(Cause::LiquidLineRestriction) => (shift[LIQUID_LINE], SHOWS_NO_DROP),
        Some(Cause::NonCondensables) => (shift[DISCHARGE_PRESSURE], BLANKETS),
        _ => return each(hypothesis),
    };
    each(&Hypothesis { ln_prior: hypothesis.ln_prior + libm::logf(1.0 - probability), ..*hypothesis });
    if hypothesis.causes[0] == Some(Cause::NonCondensables) {
        shift[LIQUID_LINE] = other;
    }
    shift[DRIER_OUTLET] = other;
    each(&Hypothesis { ln_prior: hypothesis.ln_prior + libm::logf(probability), shift, ..*hypothesis });
}

/// Whether one machine cannot have both: too little and too much of the same.
fn opposite(one: Cause, other: Cause) -> bool {
    matches!(
        (one, other),
        (Cause::Undercharge, Cause::Overcharge) | (Cause::MeteringUnderfeed, Cause::FloodBack)
    )
}

/// Each usual node of a ladder behind the movement below it: beside a limit state no second cause shows.
fn climbing(ladder: &Ladder) -> impl Iterator<Item = (&Vector, &Node)> {
    let below = ladder.iter().map(|node| &node.shift);
    core::iter::once(&Node::HEALTHY.shift).chain(below).zip(ladder).take(USUAL)
}

/// Tells what two causes do together beyond the sum of what each does alone, where it is known, and the share of it that
/// counts.
pub(crate) type Together<'a> = dyn Fn([(Cause, &Node); 2]) -> Option<(f32, Vector)> + 'a;

/// Calls `each` with every pair of causes at every two nodes of their ladders.
///
/// A pair of which one is too mild to count is a single cause, which has its own hypotheses.
///
/// The sum of what both do alone, and of what they do together beyond that: `together` knows it of the middle
/// severities, and it goes with the reach of both.
pub(crate) fn pairs(
    ladders: &[Ladder; Cause::COUNT - 1],
    together: &Together<'_>,
    each: &mut dyn FnMut(&Hypothesis, &[Step<'_>]),
) {
    let pair = libm::logf(PRIOR_PAIR / (34.0 * 9.0));
    let mut presences = [[0.0; USUAL]; Cause::COUNT - 1];
    for ((presences, ladder), cause) in presences.iter_mut().zip(ladders).zip(Cause::ALL.iter().skip(1)) {
        for (slot, node) in presences.iter_mut().zip(ladder) {
            *slot = presence(*cause, node);
        }
    }
    let named = || Cause::ALL.iter().skip(1).zip(ladders).zip(&presences);
    for (i, ((first, one), here)) in named().enumerate() {
        for ((second, two), there) in named().skip(i + 1) {
            if opposite(*first, *second) {
                continue;
            }
            let middle = one.get(1).zip(two.get(1));
            let beyond = middle.and_then(|(a, b)| {
                let (share, beyond) = together([(*first, a), (*second, b)])?;
                Some((beyond, share / (a.reach() * b.reach()).max(1.0e-3), share))
            });
            for ((from_a, a), here) in climbing(one).zip(here) {
                for ((from_b, b), there) in climbing(two).zip(there) {
                    let both = counting(here * there);
                    if both <= 0.0 {
                        continue;
                    }
                    let mut shift = a.shift;
                    for (shift, b) in shift.iter_mut().zip(&b.shift) {
                        *shift += b;
                    }
                    if let Some((beyond, whole, share)) = &beyond {
                        let part = (a.reach() * b.reach() * whole).min(share * MOST_TOGETHER);
                        for (shift, beyond) in shift.iter_mut().zip(beyond) {
                            *shift += part * beyond;
                        }
                    }
                    let hypothesis = Hypothesis {
                        causes: [Some(*first), Some(*second)],
                        unlisted: None,
                        severities: [a.severity, b.severity],
                        presence: 1.0,
                        ln_prior: pair + libm::logf(both),
                        shift,
                        loose: [0.0; CHANNELS],
                        impact: a.impact * b.impact,
                    };
                    let step = |from, to| Step { from, to, share: ABOUT };
                    each(&hypothesis, &[step(from_a, &a.shift), step(from_b, &b.shift)]);
                }
            }
        }
    }
}
