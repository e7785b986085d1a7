//! The pump-down test: how low a compressor pulls its suction against a closed valve, and whether it holds.
//!
//! Two things are told apart. A compressor that cannot pull stops high: its valves or rings pass back what it
//! moves. A compressor that pulls low and leaks back after it stops has a leak that its speed outruns. Behind a
//! liquid-line valve a rise may just be refrigerant boiling from oil or from the evaporator, and says nothing.

use crate::cause::Cause;
use crate::estimate::Estimate;
use crate::normal::{below, combine, density, ln, positive};
use crate::readings::{PumpDownEnd, PumpDownValve};

/// What was seen at a pump-down test.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PumpDown {
    /// Lowest suction pressure reached, kPa absolute.
    pub lowest_kpa: f32,
    /// Rise after the compressor stopped, kPa/min; `None` where it was not watched.
    pub rise_kpa_per_min: Option<f32>,
    /// The valve that was closed; not said: taken as a liquid-line valve, which claims less.
    pub valve: Option<PumpDownValve>,
    /// What ended the test; not said: most likely the limit, and weighed with that doubt.
    pub ended_by: Option<PumpDownEnd>,
}

/// What the compressor worked against, which sets how low it can pull.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Conditions {
    /// Discharge pressure at the end of the test, kPa absolute; the running one where it was not read again.
    pub discharge_kpa: f32,
    /// Suction pressure of this machine running in good order, kPa absolute.
    pub running_suction_kpa: f32,
    /// Discharge pressure of this machine running in good order, kPa absolute.
    pub running_discharge_kpa: f32,
}

/// Clearance volume over swept volume (common practice: 0.02-0.05 for small reciprocating compressors).
const CLEARANCE: f32 = 0.03;
/// Exponent of re-expansion from the clearance volume.
const EXPONENT: f32 = 1.1;
/// Flow that a compressor in good order loses past rings and valves, as a fraction.
const GOOD_LOSS: f32 = 0.03;
/// Standard deviation of the logarithm of the limit: clearance .03 +- .012, valve lift, oil giving off refrigerant; two
/// of it reach from the usual limit to atmospheric pressure, which practice still calls good order.
const LIMIT_SPREAD: f32 = 0.55;
/// The same behind a liquid-line valve, where the evaporator's oil and last liquid keep boiling.
const LIMIT_SPREAD_LIQUID_LINE: f32 = 0.70;
/// Probability that a test says nothing: a valve that did not close, a gauge before the wrong port.
const SPOILT: f32 = 0.04;
/// The same where nobody said what ended the test: it may have been stopped on the way down.
const UNSAID: f32 = 0.25;
/// Width of the logarithm of pressure over which a spoilt test may end anywhere.
const SPOILT_WIDTH: f32 = 3.0;
/// Severities over which a weak compressor is averaged, fraction of flow lost.
const SEVERITIES: [f32; 6] = [0.1, 0.2, 0.3, 0.4, 0.55, 0.7];

/// Computes the lowest suction pressure a compressor can reach, kPa absolute, and its uncertainty.
///
/// At the limit, what re-expands from the clearance volume and what leaks back fill the whole stroke:
/// p (1 + C - C (d/p)^(1/n)) = s e p0 d/d0, where the right side is the leak that takes the fraction s of the flow
/// in running order (suction p0, discharge d0, volumetric efficiency e) at the present discharge pressure d.
/// `flow_loss` is 0 to 0.95 beyond what is normal. `None` where an input is not finite and positive, or the suction
/// is not below the discharge. Source: clearance volumetric efficiency as in any text on reciprocating compressors;
/// the leak's term is our own.
pub fn limit_kpa(conditions: &Conditions, flow_loss: f32) -> Option<Estimate> {
    let Conditions { discharge_kpa: d, running_suction_kpa: p0, running_discharge_kpa: d0 } = *conditions;
    if ![d, p0, d0].into_iter().all(positive) || !(0.0..=0.95).contains(&flow_loss) || p0 >= d0 {
        return None;
    }
    let filled = |p: f32, d: f32| p * (1.0 + CLEARANCE - CLEARANCE * libm::powf(d / p, 1.0 / EXPONENT));
    let loss = GOOD_LOSS + (1.0 - GOOD_LOSS) * flow_loss;
    let leak = loss * (filled(p0, d0) * (d / d0)).max(0.0);
    // p = (leak + C d^(1/n) p^(1 - 1/n))/(1 + C): the small exponent takes eleven twelfths of the error each time.
    let expansion = CLEARANCE * libm::powf(d, 1.0 / EXPONENT);
    let mut limit = d;
    for _ in 0..6 {
        limit = (leak + expansion * libm::powf(limit, 1.0 - 1.0 / EXPONENT)) / (1.0 + CLEARANCE);
    }
    Estimate::new(limit, LIMIT_SPREAD * limit)
}

/// Computes the natural logarithm of how probable an observation is for a compressor that lost a fraction of flow.
///
/// A test ended by its limit is a measurement; one ended by the low-pressure control or the technician says only
/// that the compressor can pull at least that low. A rise counts behind the suction service valve alone. Zero, which
/// is no evidence, where the observation or the conditions cannot be used.
pub fn ln_likelihood(observation: &PumpDown, conditions: &Conditions, flow_loss: f32) -> f32 {
    let Some(limit) = limit_kpa(conditions, flow_loss).filter(|_| positive(observation.lowest_kpa)) else {
        return 0.0;
    };
    let suction_service = observation.valve == Some(PumpDownValve::SuctionService);
    let spread = if suction_service { LIMIT_SPREAD } else { LIMIT_SPREAD_LIQUID_LINE };
    let (seen, expected) = (libm::logf(observation.lowest_kpa), libm::logf(limit.value));
    let pulled = match observation.ended_by {
        Some(PumpDownEnd::LowPressureControl | PumpDownEnd::Technician) => {
            (1.0 - SPOILT) * below((seen - expected) / spread) + SPOILT
        }
        Some(PumpDownEnd::Limit) => (1.0 - SPOILT) * density(seen, expected, spread) + SPOILT / SPOILT_WIDTH,
        None => (1.0 - UNSAID) * density(seen, expected, spread) + UNSAID / SPOILT_WIDTH,
    };
    let held = match observation.rise_kpa_per_min {
        Some(rise) if suction_service && rise.is_finite() => rise_density(rise, flow_loss),
        _ => 1.0,
    };
    ln(pulled) + ln(held)
}

/// Rise that parts a compressor that holds from one that leaks back, kPa/min (common practice: "holds" on a gauge
/// is less than one mark a minute).
const HOLDS_BELOW: f32 = 2.0;

/// Probability of the rise seen: a compressor in good order mostly holds or creeps, a leaking one comes back, unless
/// its leak is one that closes when it stops (a discharge valve alone, shut off by the suction valve).
fn rise_density(rise_kpa_per_min: f32, flow_loss: f32) -> f32 {
    // Chances of holding, creeping (up to 20 kPa/min) and coming back fast: our own figures. Oil gives off refrigerant,
    // so that a good one may creep as well; a weak one hardly ever holds, so that practice's own sign of
    // good order, to atmospheric pressure and holds, counts five to one.
    let good = [0.58, 0.34, 0.08];
    let weak = [0.02, 0.38, 0.60];
    // From one to the other over the first tenth of flow lost: even that, flowing back into a shell of a few
    // litres, raises its pressure by kilopascals a second while its valves do not seat.
    let share = (flow_loss / 0.1).clamp(0.0, 1.0);
    // A gauge is read to its marks: near a limit between two bands a rise is partly the one and partly the other.
    let ln_rise = libm::logf(rise_kpa_per_min.max(LEAST_RISE));
    let over = |limit: f32| 1.0 / (1.0 + libm::expf((libm::logf(limit) - ln_rise) / BAND_TURNS));
    let (creeps, fast) = (over(HOLDS_BELOW), over(10.0 * HOLDS_BELOW));
    let shares = [1.0 - creeps, creeps - fast, fast];
    let chance =
        |bands: [f32; 3]| shares.iter().zip(bands).map(|(share, chance)| share * chance).sum::<f32>();
    (1.0 - share) * chance(good) + share * chance(weak)
}

/// A rise that no gauge tells from none, kPa/min.
const LEAST_RISE: f32 = 0.05;
/// Width of the logarithm of a rise over which one band turns into the next.
const BAND_TURNS: f32 = 0.3;

/// Computes the natural log-likelihood of the observation under each cause, in the order of [`Cause`].
///
/// Every cause but a weak compressor leaves the compressor as good as it was; a weak one is averaged over its
/// severity. All zero, which is no evidence, where the observation or the conditions cannot be used.
pub fn evidence(observation: &PumpDown, conditions: &Conditions) -> [f32; Cause::COUNT] {
    let good = ln_likelihood(observation, conditions, 0.0);
    let mean = SEVERITIES.iter().map(|s| libm::expf(ln_likelihood(observation, conditions, *s))).sum::<f32>()
        / SEVERITIES.len() as f32;
    let mut all = [good; Cause::COUNT];
    if let Some(weak) = all.get_mut(Cause::WeakCompressor.index()) {
        *weak = ln(mean);
    }
    all
}

/// What a pump-down test says by itself, in a technician's words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// It pulls low and holds.
    PullsAndHolds,
    /// It pulls low and leaks back after it stops.
    PullsAndLeaksBack,
    /// It cannot pull as low as a compressor in good order.
    CannotPull,
    /// It reached what it was stopped at; how much lower it can pull is not known.
    ReachedStop,
    /// The pressure rises, but behind a liquid-line valve that may be refrigerant boiling.
    RiseUnclear,
}

/// Judges a pump-down test by itself; the probability of a weak compressor is [`evidence`]'s.
///
/// A compressor cannot pull when its limit lies above the good one by twice the spread, with the gauge's own
/// uncertainty. `None` where the observation or the conditions cannot be used.
pub fn judge(observation: &PumpDown, conditions: &Conditions, gauge_u_kpa: f32) -> Option<Verdict> {
    let good = limit_kpa(conditions, 0.0)?;
    if !positive(observation.lowest_kpa) || !gauge_u_kpa.is_finite() || gauge_u_kpa < 0.0 {
        return None;
    }
    let stopped =
        matches!(observation.ended_by, Some(PumpDownEnd::LowPressureControl | PumpDownEnd::Technician));
    let highest = good.value * libm::expf(2.0 * LIMIT_SPREAD);
    let rises = observation.rise_kpa_per_min.is_some_and(|r| r.is_finite() && r >= HOLDS_BELOW);
    let suction_service = observation.valve == Some(PumpDownValve::SuctionService);
    Some(if observation.lowest_kpa > highest + 2.0 * gauge_u_kpa {
        if stopped { Verdict::ReachedStop } else { Verdict::CannotPull }
    } else if rises {
        if suction_service { Verdict::PullsAndLeaksBack } else { Verdict::RiseUnclear }
    } else {
        Verdict::PullsAndHolds
    })
}

/// Computes what a report expects of a pump-down: the limit of a compressor in good order, kPa absolute.
///
/// The gauge's uncertainty stands beside the compressor's. `None` where an input is not finite or the conditions cannot be used.
pub fn expected_kpa(conditions: &Conditions, gauge_u_kpa: f32) -> Option<Estimate> {
    let good = limit_kpa(conditions, 0.0)?;
    Estimate::new(good.value, combine(&[good.u, gauge_u_kpa]))
}
