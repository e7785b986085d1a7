//! The windings of a single-phase motor against each other and against the plate.
//!
//! An open internal overload reads open from common to both windings and finite between start and run: it may
//! close again once the compressor is cool, which can take hours, and nothing is condemned before.

use super::ohmmeter::Ohmmeter;
use super::temperature::{COPPER_IEC_60034_C, refer};
use crate::estimate::Estimate;
use crate::normal::{combine, positive, usable};

/// Resistances read at the terminals, ohm; positive infinity is open, `None` not measured.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Reading {
    /// Common to run.
    pub run_ohm: Option<f32>,
    /// Common to start.
    pub start_ohm: Option<f32>,
    /// Run to start.
    pub run_to_start_ohm: Option<f32>,
}

/// How the three resistances stand to each other.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Continuity {
    /// No reading is open, and what can be compared agrees.
    Closed,
    /// The internal overload is open, or the connection to common: wait until cool before condemning.
    OverloadOpen,
    /// The run winding is open.
    RunOpen,
    /// The start winding is open.
    StartOpen,
    /// More than one circuit is open.
    AllOpen,
    /// The readings contradict each other: measured wrongly, or terminals taken for others.
    Inconsistent {
        /// Run to start minus the sum of both windings, ohm; `None` where the pattern of open readings contradicts.
        residual_ohm: Option<Estimate>,
    },
}

/// Combined uncertainties by which readings may differ before they contradict each other.
pub const COVERAGE: f32 = 3.0;
/// Spread of windings between motors of one type, as a fraction, k = 1 (common practice: sheets state 7-10 %).
pub const MANUFACTURE: f32 = 0.035;

/// Compares the three resistances with each other: open circuits first, then R(S-R) = R(C-S) + R(C-R).
///
/// `None` where nothing was measured, or a reading is negative or not a number. Source: common practice.
pub fn continuity(reading: &Reading, meter: &Ohmmeter) -> Option<Continuity> {
    let all = [reading.run_ohm, reading.start_ohm, reading.run_to_start_ohm];
    if all.iter().all(Option::is_none) || all.iter().flatten().any(|r| r.is_nan() || *r < 0.0) {
        return None;
    }
    let [run, start, both] = all.map(|r| r.map(f32::is_infinite));
    Some(match (run, start, both) {
        (Some(true), Some(true), Some(false) | None) => Continuity::OverloadOpen,
        (Some(true), Some(true), Some(true)) => Continuity::AllOpen,
        (Some(true), Some(false), Some(true) | None) => Continuity::RunOpen,
        (Some(false), Some(true), Some(true) | None) => Continuity::StartOpen,
        (Some(true), None, Some(false)) | (None, Some(true), Some(false)) => Continuity::OverloadOpen,
        (Some(true), None, _) => Continuity::RunOpen,
        (None, Some(true), _) => Continuity::StartOpen,
        (None | Some(false), None, Some(true)) | (None, Some(false), Some(true)) => Continuity::AllOpen,
        (Some(true), Some(false), Some(false))
        | (Some(false), Some(true), Some(false))
        | (Some(false), Some(false), Some(true)) => Continuity::Inconsistent { residual_ohm: None },
        _ => match residual(reading, meter) {
            Some(r) if libm::fabsf(r.value) > COVERAGE * r.u => {
                Continuity::Inconsistent { residual_ohm: Some(r) }
            }
            _ => Continuity::Closed,
        },
    })
}

/// Computes run to start minus the sum of both windings, ohm; zero but for the meter in a sound motor.
///
/// `None` unless all three are measured and finite.
pub fn residual(reading: &Reading, meter: &Ohmmeter) -> Option<Estimate> {
    let run = meter.resistance(reading.run_ohm?)?;
    let start = meter.resistance(reading.start_ohm?)?;
    let both = meter.resistance(reading.run_to_start_ohm?)?;
    Estimate::new(both.value - run.value - start.value, combine(&[run.u, start.u, both.u]))
}

/// How one winding stands to its plate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum AgainstPlate {
    /// Within what manufacture, temperature and meter allow.
    Good,
    /// Low enough for shorted turns.
    ShortedTurns {
        /// The percent of turns missing, as resistance follows the number of turns, with the uncertainty that none is.
        percent: Estimate,
    },
    /// Higher than any plausible temperature explains: a poor connection, or another motor's plate.
    HighResistance {
        /// Resistance beyond the plate's, referred to the measured temperature, ohm.
        excess_ohm: Estimate,
    },
}

/// Holds one winding against its plate at the temperature it has now.
///
/// `plate_reference_c` is the temperature the plate's resistance refers to. Copper changes by 0.4 % a kelvin, so an
/// unknown temperature hides a short of a few percent of turns: `winding_c` carries that in its uncertainty. `None`
/// where an input is not finite, the plate not positive or a temperature below absolute sense.
pub fn against_plate(
    measured_ohm: Estimate,
    winding_c: Estimate,
    plate_ohm: f32,
    plate_reference_c: f32,
) -> Option<AgainstPlate> {
    let plate = Estimate::new(plate_ohm, 0.0).filter(|p| positive(p.value))?;
    let now = refer(plate, Estimate::new(plate_reference_c, 0.0)?, winding_c.value, COPPER_IEC_60034_C)?;
    let base = winding_c.value + COPPER_IEC_60034_C;
    if !usable(measured_ohm) || measured_ohm.value < 0.0 || !usable(winding_c) || !positive(now.value) {
        return None;
    }
    let deviation = measured_ohm.value / now.value - 1.0;
    // The spread a healthy winding would show, so that a dead short is not excused by a small share.
    let u = combine(&[measured_ohm.u / now.value, MANUFACTURE, winding_c.u / base]);
    let limit = COVERAGE * u;
    Some(if deviation < -limit {
        AgainstPlate::ShortedTurns { percent: Estimate::new(-100.0 * deviation, 100.0 * u)? }
    } else if deviation > limit {
        AgainstPlate::HighResistance { excess_ohm: Estimate::new(deviation * now.value, u * now.value)? }
    } else {
        AgainstPlate::Good
    })
}

/// Compares how far two windings of one motor lie from their plates, which needs no temperature.
///
/// Both windings share a temperature, so their ratio shows a short that heat would hide. Returns the run winding's
/// share of its plate over the start winding's, with its uncertainty; 1 in a sound motor. `None` where an input is
/// not finite or not positive.
pub fn run_over_start(
    run_ohm: Estimate,
    start_ohm: Estimate,
    plate_run_ohm: f32,
    plate_start_ohm: f32,
) -> Option<Estimate> {
    if !usable(run_ohm) || !usable(start_ohm) {
        return None;
    }
    if ![run_ohm.value, start_ohm.value, plate_run_ohm, plate_start_ohm].into_iter().all(positive) {
        return None;
    }
    let ratio = (run_ohm.value / plate_run_ohm) / (start_ohm.value / plate_start_ohm);
    let parts = [run_ohm.u / run_ohm.value, start_ohm.u / start_ohm.value, MANUFACTURE, MANUFACTURE];
    Estimate::new(ratio, ratio * combine(&parts))
}
