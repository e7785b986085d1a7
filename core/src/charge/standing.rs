//! The standing-pressure test of a stopped, equalised machine at one known temperature.
//!
//! With liquid left the pressure sits on the saturation curve; a zeotrope stands between dew and bubble. Above the
//! bubble curve there is another gas with the refrigerant, or another refrigerant. Below the dew curve no liquid is
//! left: mostly a lost charge, but a small charge in a large circuit may be all vapour when warm (common practice).

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
/// Width of the logarithm of pressure over which a spoilt test may lie.
const SPOILT_WIDTH: f32 = 2.0;
/// Probability that a sound charge is all vapour at rest: small circuits on a warm day.
const DRY_SOUND: f32 = 0.03;
/// The same for an undercharge that shows in running.
const DRY_UNDERCHARGED: f32 = 0.35;
/// Width of the logarithm of pressure below dew over which a dry circuit may stand.
const DRY_WIDTH: f32 = 1.5;
/// Partial pressures of a gas that shows in running, over the refrigerant's, as it stands spread over the circuit.
const GAS_SHARES: [f32; 6] = [0.03, 0.06, 0.10, 0.16, 0.25, 0.40];
/// Spread of the logarithm of pressure between those shares.
const GAS_SPREAD: f32 = 0.02;

/// Density of the logarithm of pressure with liquid left: even between dew and bubble, blurred by the instruments.
fn wet(p: f32, dew: f32, bubble: f32, spread: f32) -> f32 {
    if bubble - dew > 0.2 * spread {
        (below((p - dew) / spread) - below((p - bubble) / spread)).max(0.0) / (bubble - dew)
    } else {
        density(p, 0.5 * (dew + bubble), spread)
    }
}

/// Density of the logarithm of pressure with no liquid left: even over a width below dew.
fn dry(p: f32, dew: f32, spread: f32) -> f32 {
    (below((dew - p) / spread) - below((dew - DRY_WIDTH - p) / spread)).max(0.0) / DRY_WIDTH
}

/// Computes the natural log-likelihood of a standing pressure under each cause, in the order of [`Cause`].
///
/// Non-condensables lie above the bubble curve, an undercharge may lie below the dew curve, and every other cause
/// leaves the refrigerant on its curve. All zero, which is no evidence, where an input cannot be used.
pub fn evidence(standing: &Standing) -> [f32; Cause::COUNT] {
    let Some((p, dew, bubble, spread)) = standing.logarithms() else {
        return [0.0; Cause::COUNT];
    };
    let blend = |dry_share: f32| {
        let kept = (1.0 - dry_share) * wet(p, dew, bubble, spread) + dry_share * dry(p, dew, spread);
        (1.0 - SPOILT) * kept + SPOILT / SPOILT_WIDTH
    };
    let gas = {
        let blurred = combine(&[spread, GAS_SPREAD]);
        let one = |share: &f32| {
            let rise = libm::log1pf(*share);
            wet(p, dew + rise, bubble + rise, blurred)
        };
        let mean = GAS_SHARES.iter().map(one).sum::<f32>() / GAS_SHARES.len() as f32;
        (1.0 - SPOILT) * mean + SPOILT / SPOILT_WIDTH
    };
    let mut all = [ln(blend(DRY_SOUND)); Cause::COUNT];
    if let Some(undercharge) = all.get_mut(Cause::Undercharge.index()) {
        *undercharge = ln(blend(DRY_UNDERCHARGED));
    }
    if let Some(overcharge) = all.get_mut(Cause::Overcharge.index()) {
        *overcharge = ln(blend(0.0));
    }
    if let Some(non_condensables) = all.get_mut(Cause::NonCondensables.index()) {
        *non_condensables = ln(gas);
    }
    all
}
