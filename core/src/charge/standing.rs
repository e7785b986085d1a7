//! The standing-pressure test of a stopped, equalised machine at one known temperature.
//!
//! With liquid left the pressure sits on the saturation curve; a zeotrope stands between dew and bubble. Above the
//! bubble curve there is another gas with the refrigerant, or another refrigerant. Below the dew curve no liquid is
//! left, and the pressure goes with what charge is left: the emptier, the lower. A small charge in a large circuit may
//! be all vapour when warm though nothing is lost (common practice: capillary machines).

use crate::cause::Cause;
use crate::estimate::Estimate;
use crate::normal::{below, combine, density, ln, positive, usable};
use crate::quantity::{Pressure, Temperature};
use crate::refrigerant::Refrigerant;

/// A standing pressure beside the saturation pressures of its temperature, kPa absolute.
///
/// Each uncertainty is standard (k = 1). That of the thermometer belongs to bubble and dew together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Standing {
    /// The pressure read.
    pub pressure_kpa: Estimate,
    /// Bubble pressure at the standing temperature, with the thermometer's share.
    pub bubble_kpa: Estimate,
    /// Dew pressure at the standing temperature, with the thermometer's share.
    pub dew_kpa: Estimate,
}

impl Standing {
    /// Looks up bubble and dew pressure at the standing temperature.
    ///
    /// `pressure_kpa` absolute and `temperature_c` with their standard uncertainties. `None` where an input is not
    /// finite or the temperature lies outside the refrigerant's table.
    pub fn at(
        refrigerant: &Refrigerant<'_>,
        pressure_kpa: Estimate,
        temperature_c: Estimate,
    ) -> Option<Self> {
        if !usable(pressure_kpa) || !positive(pressure_kpa.value) || !usable(temperature_c) {
            return None;
        }
        let at = Temperature::from_celsius(temperature_c.value);
        // The slope from the curve itself, over half a kelvin inside the table.
        let near = Temperature::from_celsius(temperature_c.value - 0.5);
        let estimate = |p: Pressure, p_near: Option<Pressure>| {
            let slope = p_near.map_or(0.03 * p.kilopascals(), |n| 2.0 * (p.kilopascals() - n.kilopascals()));
            Estimate::new(p.kilopascals(), libm::fabsf(slope) * temperature_c.u)
        };
        Some(Self {
            pressure_kpa,
            bubble_kpa: estimate(
                refrigerant.bubble_pressure(at).ok()?,
                refrigerant.bubble_pressure(near).ok(),
            )?,
            dew_kpa: estimate(refrigerant.dew_pressure(at).ok()?, refrigerant.dew_pressure(near).ok())?,
        })
    }

    /// Logarithms of pressure, dew and bubble, and the relative uncertainty of the pressure against a curve.
    fn logarithms(&self) -> Option<(f32, f32, f32, f32)> {
        let (p, bubble, dew) = (self.pressure_kpa, self.bubble_kpa, self.dew_kpa);
        if !usable(p)
            || !usable(bubble)
            || !usable(dew)
            || ![p.value, bubble.value, dew.value].into_iter().all(positive)
        {
            return None;
        }
        // Bubble lies at or above dew; a table's rounding may cross them on an azeotrope.
        let (low, high) = (dew.value.min(bubble.value), bubble.value.max(dew.value));
        let spread = combine(&[p.u / p.value, bubble.u / bubble.value, UNEVEN]);
        spread.is_finite().then(|| (libm::logf(p.value), libm::logf(low), libm::logf(high), spread))
    }
}

/// What the temperature of a real machine leaves uncertain: it is not one temperature, and the coldest spot with
/// liquid sets the pressure; half a kelvin at 3 % a kelvin.
const UNEVEN: f32 = 0.015;
/// Combined uncertainties by which a pressure may miss a curve before it is said to.
const COVERAGE: f32 = 2.0;

/// What a standing pressure says by itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// On the curve, or between dew and bubble: this refrigerant, with liquid left, as far as a pressure can tell.
    Consistent,
    /// Above the bubble curve: non-condensables, or another refrigerant.
    AboveBubble,
    /// Below the dew curve: no liquid left, or another refrigerant.
    BelowDew,
}

/// Judges a standing pressure; also answers which refrigerants a point is consistent with, one by one.
///
/// `None` where an input is not finite and positive.
pub fn judge(standing: &Standing) -> Option<Verdict> {
    let (p, dew, bubble, spread) = standing.logarithms()?;
    Some(if p > bubble + COVERAGE * spread {
        Verdict::AboveBubble
    } else if p < dew - COVERAGE * spread {
        Verdict::BelowDew
    } else {
        Verdict::Consistent
    })
}

/// Probability that the test says nothing of the kind: not equalised, not at one temperature, another refrigerant.
const SPOILT: f32 = 0.04;
/// Spread of the logarithm of pressure of most spoilt tests: a warm corner, a port that had not yet equalised.
const SPOILT_SPREAD: f32 = 0.35;
/// The share of them that may lie anywhere over this width of it.
const SPOILT_ANYWHERE: f32 = 0.1;
const SPOILT_WIDTH: f32 = 3.0;
/// Partial pressures of a gas that shows in running, over the refrigerant's, as it stands spread over the circuit.
const GAS_SHARES: [f32; 6] = [0.03, 0.06, 0.10, 0.16, 0.25, 0.40];
/// Spread of the logarithm of pressure between those shares.
const GAS_SPREAD: f32 = 0.02;
/// The same as a share of the rise, where one rise is meant.
const RISE_SPREAD: f32 = 0.3;
/// Rise of the standing pressure, as a share, for each share by which the gas raises the running discharge pressure: the
/// condenser holds it alone while running, about a third of the room, at nearly twice the pressure (judged).
const RISE_OF_EXCESS: f32 = 0.7;
/// Charges left over which an undercharge is averaged.
const LEFT: [f32; 5] = [0.7, 0.5, 0.3, 0.15, 0.05];

/// How much refrigerant a circuit holds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Circuit {
    /// ln of the charge over what would just fill the circuit with saturated vapour when warm.
    ln_full: f32,
    /// Its standard deviation between machines of a kind.
    spread: f32,
}

impl Circuit {
    /// A circuit with a receiver or a valve: some litres of liquid (judged).
    pub(crate) const LARGE: Self = Self { ln_full: 1.386, spread: 0.5 };
    /// One without a receiver behind an orifice (judged).
    pub(crate) const MIDDLING: Self = Self { ln_full: 0.916, spread: 0.5 };
    /// A capillary machine, whose charge just fills its evaporator: a third of them stand below saturation in a warm
    /// room (judged from common practice).
    pub(crate) const SMALL: Self = Self { ln_full: 0.18, spread: 0.4 };
}

/// Density of the logarithm of pressure with liquid left: even between dew and bubble, blurred by the instruments.
fn wet(p: f32, dew: f32, bubble: f32, spread: f32) -> f32 {
    if bubble - dew > 0.2 * spread {
        (below((p - dew) / spread) - below((p - bubble) / spread)).max(0.0) / (bubble - dew)
    } else {
        density(p, 0.5 * (dew + bubble), spread)
    }
}

/// Computes the natural log-likelihood of a standing pressure: what is left of the right charge, and by how much, as a
/// share, gas that cannot condense raises the running discharge pressure. Zero where an input cannot be used.
pub(crate) fn ln_likelihood(standing: &Standing, circuit: Circuit, left: f32, excess: f32) -> f32 {
    let Some((p, dew, bubble, spread)) = standing.logarithms() else { return 0.0 };
    let rise = libm::log1pf(RISE_OF_EXCESS * excess.max(0.0));
    let spread = combine(&[spread, RISE_SPREAD * rise, if excess > 0.0 { GAS_SPREAD } else { 0.0 }]);
    ln(weighed(at(p - rise, dew, bubble, spread, circuit, left), p, dew))
}

/// Mean and standard deviation of the logarithm of a standing pressure over the curve's, where a part of the right charge
/// is left and gas that cannot condense raises the running discharge pressure by a share.
pub(crate) fn predicted(circuit: Circuit, left: f32, excess: f32) -> (f32, f32) {
    let full = circuit.ln_full + libm::logf(left.max(0.01));
    // The smaller of the curve and of what the charge gives, the mean of a normal distribution cut at zero.
    let dry = below(-full / circuit.spread);
    let mean = full * dry - circuit.spread * circuit.spread * density(full, 0.0, circuit.spread);
    let rise = libm::log1pf(RISE_OF_EXCESS * excess.max(0.0));
    (mean + rise, combine(&[2.0 * UNEVEN, circuit.spread * libm::sqrtf(dry), RISE_SPREAD * rise]))
}

/// Density of the logarithm of pressure where a part of the right charge is left, in a test that was not spoilt.
fn at(p: f32, dew: f32, bubble: f32, spread: f32, circuit: Circuit, left: f32) -> f32 {
    let full = circuit.ln_full + libm::logf(left.max(0.01));
    // With no liquid left the pressure goes with the charge; at the curve it ends.
    let dry = density(p - dew, full, combine(&[spread, circuit.spread])) * below((dew - p) / spread);
    below(full / circuit.spread) * wet(p, dew, bubble, spread) + dry
}

/// A density with the chance that the test was spoilt.
fn weighed(sound: f32, p: f32, dew: f32) -> f32 {
    let spoilt = (1.0 - SPOILT_ANYWHERE) * density(p, dew, SPOILT_SPREAD) + SPOILT_ANYWHERE / SPOILT_WIDTH;
    (1.0 - SPOILT) * sound + SPOILT * spoilt
}

/// Computes the natural log-likelihood of a standing pressure under each cause, in the order of [`Cause`].
///
/// Of a machine that holds liquid when it stands, its severity not known. Non-condensables lie above the bubble curve,
/// an undercharge may lie below the dew curve, and every other cause leaves the refrigerant on its curve. All zero,
/// which is no evidence, where an input cannot be used.
pub fn evidence(standing: &Standing) -> [f32; Cause::COUNT] {
    let Some((p, dew, bubble, spread)) = standing.logarithms() else {
        return [0.0; Cause::COUNT];
    };
    let circuit = Circuit::LARGE;
    let gas = {
        let blurred = combine(&[spread, GAS_SPREAD]);
        let one = |share: &f32| at(p - libm::log1pf(*share), dew, bubble, blurred, circuit, 1.0);
        GAS_SHARES.iter().map(one).sum::<f32>() / GAS_SHARES.len() as f32
    };
    let lost =
        LEFT.iter().map(|left| at(p, dew, bubble, spread, circuit, *left)).sum::<f32>() / LEFT.len() as f32;
    let mut all = [ln(weighed(at(p, dew, bubble, spread, circuit, 1.0), p, dew)); Cause::COUNT];
    for (cause, density) in [(Cause::Undercharge, lost), (Cause::NonCondensables, gas)] {
        if let Some(slot) = all.get_mut(cause.index()) {
            *slot = ln(weighed(density, p, dew));
        }
    }
    all
}
