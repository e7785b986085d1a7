//! The rule for acting: when a cause counts as decided, and when a machine counts as cleared.

use super::outcome::CauseProbability;
use super::screen::fade;
use crate::cause::Cause;
use crate::machine::Nominal;
use crate::readings::{Readings, Visit};
use crate::symptom::{
    CONDENSER_EXHAUST, CURRENT, DISCHARGE_LINE, DISCHARGE_PRESSURE, Deviation, EVAPORATOR_INLET,
    EVAPORATOR_OUTLET, EVAPORATOR_PRESSURE, LIQUID_LINE, NEAR_DESIGN_K, SUCTION_LINE, SUCTION_PRESSURE,
    SUPPLY_AIR,
};

/// Probability from which a cause is decided.
///
/// Set for at most 2 % of faulty machines misdiagnosed and 2 % of healthy ones alarmed where all readings are there:
/// 1.4 % and 0.5 % of 8,000 visits to the simulated machines that constants may be set on (the setting half of
/// `tests/GRADES.md`, which grades another 1,000 of them and the others). With fewer readings more is wrong; the
/// probability says so.
pub const DECIDE_AT: f32 = 0.7;
/// Probability of `none` from which a machine is cleared.
///
/// Stricter, because a missed fault comes back: 1.7 % of the faulty machines there are cleared.
pub const CLEAR_AT: f32 = 0.85;
/// Probability beyond [`DECIDE_AT`] that a fault takes of whose main channels none was read; it goes with the square of the
/// share not read.
///
/// Few readings leave more to what is usual, which the probability weighs as one machine of a kind: of 4,000 visits to the
/// setting half (seeds 7 and 11), with all readings, without a high side, and with six, 0.9, 1.1 and 3.2 % of the faulty ones
/// were misdiagnosed without it.
const FEWER: f32 = 0.16;
/// The channels that most visits can have.
const MAIN: [usize; 9] = [
    SUCTION_PRESSURE,
    DISCHARGE_PRESSURE,
    EVAPORATOR_OUTLET,
    SUCTION_LINE,
    DISCHARGE_LINE,
    LIQUID_LINE,
    SUPPLY_AIR,
    CONDENSER_EXHAUST,
    CURRENT,
];
/// Below this the readings fit no explanation, and nothing is decided.
pub const FITS_AT_LEAST: f32 = 0.01;

/// Probability from which on something is said to be told wrongly, and nothing is decided beside it.
pub(super) const TOLD_WRONGLY: f32 = 0.2;

/// What speaks against acting on a visit as a whole.
pub(super) struct Doubts {
    /// How probable readings as odd as these are.
    pub(super) fits: f32,
    /// Probability that the visit was told wrongly.
    pub(super) told_wrongly: f32,
    /// How far the machine is from having settled, 0 to 1.
    pub(super) unsettled: f32,
    /// Whether a reading is missing without which nobody acts on the leading cause.
    pub(super) unasked: bool,
    /// How far the machine is from where its suction tells a weak compressor by itself, 0 to 1.
    pub(super) off_design: f32,
    /// The share of the main channels that was not read.
    pub(super) unread: f32,
}

/// Probability beyond [`DECIDE_AT`] that a weak compressor takes far from the design point, without a pump-down.
///
/// A warm space lets the suction rise by itself, how much hangs on the metering device: a test of two minutes comes before
/// a compressor is condemned on that, unless hardly anything else is left.
const CONDEMN_BEYOND: f32 = 0.25;
/// The share of the main channels that was not read.
pub(super) fn unread(deviation: &Deviation) -> f32 {
    let unread = MAIN.iter().filter(|channel| !deviation.uses(**channel)).count();
    unread as f32 / MAIN.len() as f32
}

/// Kelvin of space temperature, beyond where any machine runs, over which that comes in.
const OFF_DESIGN_K: f32 = 8.0;

/// How far the machine is from where its suction tells a weak compressor by itself; all the way where nobody read the
/// space.
pub(super) fn off_design(nominal: &Nominal, readings: &Readings) -> f32 {
    if readings.pump_down_kpa.is_some() {
        return 0.0;
    }
    readings.space_c.map_or(1.0, |_| {
        let off_k = (nominal.space_k.mean - nominal.design_space_k).abs();
        fade((off_k - NEAR_DESIGN_K) / OFF_DESIGN_K)
    })
}

/// Whether a reading is missing without which nobody acts on a cause.
///
/// A weak compressor lets its suction rise: without any reading of the low side, or a pump-down, none is condemned. Gas
/// that cannot condense raises the head like much else: where nobody knows how high the head should be and the machine
/// was never stopped to equalise, that comes first.
pub(super) fn unasked(leading: Cause, visit: &Visit<'_>, readings: &Readings, deviation: &Deviation) -> bool {
    match leading {
        Cause::WeakCompressor => {
            let low_side = [SUCTION_PRESSURE, EVAPORATOR_PRESSURE, EVAPORATOR_INLET];
            !low_side.into_iter().any(|channel| deviation.uses(channel)) && readings.pump_down_kpa.is_none()
        }
        Cause::NonCondensables => {
            let design = &visit.system.design;
            let known = design.condenser_td_k.is_some() || design.discharge_pressure_kpa.is_some();
            !known && visit.record.is_empty() && readings.standing_pressure_kpa.is_none()
        }
        _ => false,
    }
}

/// Whether acting on the leading entry is justified; never where the visit as a whole is in doubt.
pub(super) fn decided(causes: &[CauseProbability; Cause::COUNT], doubts: &Doubts) -> bool {
    let leading = causes[0];
    let needed = match leading.cause {
        Cause::None => CLEAR_AT,
        cause => {
            let beyond =
                if cause == Cause::WeakCompressor { CONDEMN_BEYOND * doubts.off_design } else { 0.0 };
            DECIDE_AT + beyond.max(FEWER * doubts.unread * doubts.unread)
        }
    };
    !doubts.unasked
        && doubts.told_wrongly < TOLD_WRONGLY
        && doubts.fits >= FITS_AT_LEAST
        && leading.probability * (1.0 - doubts.unsettled) >= needed
}
