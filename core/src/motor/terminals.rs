//! Which of three unmarked terminals is common, start and run, from the three resistances between them.
//!
//! The two windings meet at common, so the resistance between start and run is the sum of the other two and the
//! largest; the start winding has the higher resistance (common practice).

use super::ohmmeter::Ohmmeter;
use crate::estimate::Estimate;
use crate::normal::{below, combine};
use crate::readings::Readings;
use crate::system::System;

/// The terminals of a single-phase motor by the number a technician gave them, 1 to 3.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Terminals {
    /// The common terminal.
    pub common: u8,
    /// The start terminal.
    pub start: u8,
    /// The run terminal.
    pub run: u8,
    /// Resistance of the run winding, common to run, ohm.
    pub run_ohm: Estimate,
    /// Resistance of the start winding, common to start, ohm.
    pub start_ohm: Estimate,
    /// Resistance start to run minus the sum of the two windings, ohm; zero but for the meter.
    pub residual_ohm: Estimate,
    /// The probability of this assignment, 0 to 1.
    pub probability: f32,
}

/// What three resistances tell about unmarked terminals.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Identification {
    /// All three terminals are told apart, and the resistances agree.
    Identified(Terminals),
    /// Two of the terminals are too close for this meter; the assignment is the likelier one.
    Ambiguous(Terminals),
    /// The largest resistance is not the sum of the others within what the meter allows, ohm.
    Inconsistent {
        /// The largest resistance minus the sum of the others, ohm.
        residual_ohm: Estimate,
    },
    /// One or more of the three reads open: see the windings' own check.
    Open {
        /// The number of open readings, 1 to 3.
        open: u8,
    },
}

/// Which terminal is which, with the probability that it is so.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TerminalsFound {
    /// The common terminal, 1 to 3.
    pub common: u8,
    /// The run terminal.
    pub run: u8,
    /// The start terminal.
    pub start: u8,
    /// The probability of this assignment, 0 to 1.
    pub probability: f32,
}

/// Tells which of a visit's unmarked terminals is which; `None` where they were not all measured, one reads open, or
/// they contradict each other, and for a motor on three phases, whose terminals are alike.
pub fn found(system: &System, readings: &Readings) -> Option<TerminalsFound> {
    let (a, b, c) = (readings.terminal_12_ohm?, readings.terminal_23_ohm?, readings.terminal_13_ohm?);
    if system.compressor.phases == Some(3.0) {
        return None;
    }
    match identify(a, b, c, &Ohmmeter::USUAL)? {
        Identification::Identified(t) | Identification::Ambiguous(t) => {
            Some(TerminalsFound { common: t.common, run: t.run, start: t.start, probability: t.probability })
        }
        Identification::Inconsistent { .. } | Identification::Open { .. } => None,
    }
}

/// Probability of the assignment above which the terminals count as identified.
const SURE: f32 = 0.99;
/// Combined uncertainties by which the sum may miss before the readings contradict each other.
const CONSISTENT: f32 = 4.0;

/// Tells common, start and run from the resistances between terminals 1-2, 2-3 and 1-3, ohm.
///
/// Positive infinity is an open reading. `None` where a reading is negative or not a number. The meter's lead
/// resistance should be subtracted: uncorrected, it shows in the residual. Motors whose windings differ by less
/// than the meter can tell are ambiguous, never guessed.
pub fn identify(
    terminal_12_ohm: f32,
    terminal_23_ohm: f32,
    terminal_13_ohm: f32,
    meter: &Ohmmeter,
) -> Option<Identification> {
    let readings = [terminal_12_ohm, terminal_23_ohm, terminal_13_ohm];
    if readings.iter().any(|r| r.is_nan() || *r < 0.0) {
        return None;
    }
    let open = readings.iter().filter(|r| r.is_infinite()).count() as u8;
    if open > 0 {
        return Some(Identification::Open { open });
    }
    // Each pair with the terminal it leaves out: that one is common when the pair is start to run.
    let [a, b, c] = [
        (meter.resistance(terminal_12_ohm)?, 3_u8),
        (meter.resistance(terminal_23_ohm)?, 1_u8),
        (meter.resistance(terminal_13_ohm)?, 2_u8),
    ];
    let (largest, first, second) = if a.0.value >= b.0.value && a.0.value >= c.0.value {
        (a, b, c)
    } else if b.0.value >= c.0.value {
        (b, a, c)
    } else {
        (c, a, b)
    };
    // The lower of the two is the run winding; it runs from common to the terminal its own pair does not leave out.
    let (run, start) = if first.0.value <= second.0.value { (first, second) } else { (second, first) };
    let residual = Estimate::new(
        largest.0.value - run.0.value - start.0.value,
        combine(&[largest.0.u, run.0.u, start.0.u]),
    )?;
    if libm::fabsf(residual.value) > CONSISTENT * residual.u {
        return Some(Identification::Inconsistent { residual_ohm: residual });
    }
    let apart = combine(&[run.0.u, start.0.u]);
    let order = if apart > 0.0 { below((start.0.value - run.0.value) / apart) } else { 0.0 };
    // The rival for common: the next pair as the sum in the place of the largest, by the odds of both residuals.
    let misses = |sum: Estimate, part: Estimate| {
        let z = (sum.value - part.value - run.0.value) / residual.u;
        0.5 * z * z
    };
    let odds = misses(largest.0, start.0) - misses(start.0, largest.0);
    let common = 1.0 / (1.0 + libm::expf(odds.min(80.0)));
    let terminals = Terminals {
        common: largest.1,
        start: run.1,
        run: start.1,
        run_ohm: run.0,
        start_ohm: start.0,
        residual_ohm: residual,
        probability: order * common,
    };
    Some(if terminals.probability >= SURE {
        Identification::Identified(terminals)
    } else {
        Identification::Ambiguous(terminals)
    })
}
