//! A healthy machine that holds another refrigerant than the one named.
//!
//! Its pressures, read as those of the refrigerant named, stand for temperatures that it does not have: too hot reads
//! like gas that cannot condense or too large a charge, too cold like a shortage. None of the ten causes is there.

use super::hypothesis::{Hypothesis, Step, Unlisted};
use crate::expectation::Today;
use crate::refrigerant::approximate::Approximate;
use crate::refrigerant::data::common::COMMON;
use crate::symptom::{
    CHANNELS, CONDENSER_MIDDLE, DISCHARGE_LINE, DISCHARGE_PRESSURE, DRIER_OUTLET, EVAPORATOR_INLET,
    EVAPORATOR_OUTLET, EVAPORATOR_PRESSURE, LIQUID_LINE, LIQUID_PRESSURE, SUCTION_LINE, SUCTION_PRESSURE,
    Vector,
};

/// Prior probability that the machine holds another refrigerant than the one named (judged: plates get lost, and
/// machines are refilled with what replaces the first charge).
const ANOTHER: f32 = 0.01;
/// Standard deviation of the discharge temperature, K: other gases heat otherwise when they are compressed.
const LOOSE: Vector = {
    let mut loose = [0.0; CHANNELS];
    loose[DISCHARGE_LINE] = 8.0;
    loose
};

/// Calls `each` with every common refrigerant but the one named.
pub(crate) fn each(today: &Today<'_>, condensing_pa: f32, each: &mut dyn FnMut(&Hypothesis, &[Step<'_>])) {
    let ln_prior = libm::logf(ANOTHER / COMMON.len() as f32);
    let step = Step::whole(&Hypothesis::HEALTHY.shift, &LOOSE);
    for other in COMMON.iter().filter(|other| other.designation != today.fluid.0.designation()) {
        if let Some(shift) = shift(today, other, condensing_pa) {
            each(&Hypothesis::unlisted(Unlisted::Refrigerant, shift, ln_prior), &[step]);
        }
    }
}

/// How far the channels of a healthy machine seem to be moved where its pressures are another refrigerant's; `None`
/// outside the table of the refrigerant named.
fn shift(today: &Today<'_>, other: &Approximate, condensing_pa: f32) -> Option<Vector> {
    let (named, readings, design) = (today.fluid, &today.readings, &today.visit.system.design);
    // How much warmer a pressure reads than it is: dew points on the low side, the mean of bubble and dew on the high.
    let warmer = |kpa: Option<f32>, low: bool| {
        let Some(pa) = kpa.map(|kpa| kpa * 1000.0) else { return Some(0.0) };
        let read = if low { named.dew_k(pa)? } else { named.middle_k(pa)? };
        Some(read - if low { other.dew_k(pa) } else { other.middle_k(pa) })
    };
    // A sheet that gives pressures was read with the wrong name too.
    let low = warmer(design.suction_pressure_kpa, true)?;
    let high = warmer(design.discharge_pressure_kpa, false)?;
    // Liquid leaves below the bubble point, which a wide glide brings further below the mean.
    let glide = (other.dew_k(condensing_pa) - other.middle_k(condensing_pa))
        - (named.dew_k(condensing_pa)? - named.middle_k(condensing_pa)?);
    let mut shift = [0.0; CHANNELS];
    shift[SUCTION_PRESSURE] = warmer(readings.suction_pressure_kpa, true)? - low;
    shift[EVAPORATOR_PRESSURE] = warmer(readings.evaporator_pressure_kpa, true)? - low;
    shift[DISCHARGE_PRESSURE] = warmer(readings.discharge_pressure_kpa, false)? - high;
    shift[LIQUID_PRESSURE] = warmer(readings.liquid_pressure_kpa, false)? - high;
    shift[EVAPORATOR_OUTLET] = -low;
    shift[SUCTION_LINE] = -low;
    shift[EVAPORATOR_INLET] = -low;
    shift[DISCHARGE_LINE] = -high;
    shift[CONDENSER_MIDDLE] = -high;
    shift[LIQUID_LINE] = -high - glide;
    shift[DRIER_OUTLET] = -high - glide;
    Some(shift)
}
