//! What no machine in any condition shows: readings that contradict each other whatever is wrong.
//!
//! A cause bends what a machine does; it does not make liquid hotter than its boiling point, gas colder than its dew
//! point, or heat flow uphill. Such readings point at the readings themselves or at the refrigerant.

use crate::cycle::Cycle;
use crate::estimate::Estimate;
use crate::readings::Readings;
use crate::student_t::tail;

/// Kelvin by which real machines blur these limits: pressure drops between the ports, uneven air, gas pockets.
const BLUR_K: f32 = 1.0;

/// How probable the worst contradiction is, as the tail of a Student distribution; 1 where there is none.
pub(crate) fn probability(cycle: &Cycle, readings: &Readings) -> f32 {
    let air = |c: Option<f32>, from: Option<Estimate>, sign: f32| {
        let (c, from) = (c?, from?);
        Estimate::new(sign * (from.value - c), from.u)
    };
    // Each of these is zero or positive in every machine, whatever its condition.
    let limits = [
        cycle.superheat_k,
        cycle.compressor_superheat_k,
        cycle.subcooling_k,
        cycle.discharge_superheat_k,
        cycle.evaporator_td_k,
        cycle.condenser_td_k,
        air(readings.condenser_exhaust_c, cycle.condensing_c, 1.0),
        air(readings.supply_air_c, cycle.suction_saturation_c, -1.0),
    ];
    limits
        .into_iter()
        .flatten()
        .map(|e| {
            let z = -(e.value + BLUR_K) / libm::sqrtf(e.u * e.u + BLUR_K * BLUR_K);
            if z > 0.0 { tail(z * z, 1) } else { 1.0 }
        })
        .fold(1.0, f32::min)
}
