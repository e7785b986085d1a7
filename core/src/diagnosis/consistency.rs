//! What no machine in any condition shows: readings that contradict each other whatever is wrong.
//!
//! A cause bends what a machine does; it does not make liquid hotter than its boiling point, gas colder than its dew
//! point, or heat flow uphill. Such readings point at the readings themselves or at the refrigerant.

use crate::cycle::Cycle;
use crate::estimate::Estimate;
use crate::measurement::Measurement;
use crate::readings::Readings;
use crate::student_t::tail;

/// Kelvin by which real machines blur these limits: pressure drops between the ports, uneven air, gas pockets.
const BLUR_K: f32 = 1.0;

/// How probable the worst contradiction is, as the tail of a Student distribution; 1 where there is none.
///
/// `wrong` gives the probability that a reading is grossly wrong: it then contradicts nothing. `still` is how far nothing
/// condenses or is pumped: a condenser that holds gas alone stands below its air's saturation.
pub(crate) fn probability(
    cycle: &Cycle,
    readings: &Readings,
    wrong: &dyn Fn(Measurement) -> f32,
    still: f32,
) -> f32 {
    use Measurement::*;
    let air = |c: Option<f32>, from: Option<Estimate>, sign: f32| {
        let (c, from) = (c?, from?);
        Estimate::new(sign * (from.value - c), from.u)
    };
    // Each of these is zero or positive in every machine, whatever its condition.
    let limits = [
        (cycle.superheat_k, [EvaporatorOutlet, SuctionPressure]),
        (cycle.compressor_superheat_k, [SuctionLine, SuctionPressure]),
        (cycle.subcooling_k, [LiquidLine, DischargePressure]),
        (cycle.discharge_superheat_k, [DischargeLine, DischargePressure]),
        (cycle.evaporator_td_k, [Space, SuctionPressure]),
        (cycle.condenser_td_k, [Ambient, DischargePressure]),
        (air(readings.condenser_exhaust_c, cycle.condensing_c, 1.0), [CondenserExhaust, DischargePressure]),
        (air(readings.supply_air_c, cycle.suction_saturation_c, -1.0), [SupplyAir, SuctionPressure]),
    ];
    limits
        .into_iter()
        .filter_map(|(limit, from)| Some((limit?, from)))
        .map(|(e, from)| {
            let z = -(e.value + BLUR_K) / libm::sqrtf(e.u * e.u + BLUR_K * BLUR_K);
            if z <= 0.0 {
                return 1.0;
            }
            let right = from.into_iter().map(|reading| 1.0 - wrong(reading)).fold(1.0, core::ops::Mul::mul);
            let moves = if from.contains(&DischargePressure) { 1.0 - still } else { 1.0 };
            1.0 - right * moves * (1.0 - tail(z * z, 1))
        })
        .fold(1.0, f32::min)
}
