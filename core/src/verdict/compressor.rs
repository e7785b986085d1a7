//! Whether it is the compressor, answered on its own: nobody replaces one for nothing, and nobody leaves a bad one.

use super::Evidence;
use crate::cause::Cause;
use crate::field::choice;
use crate::motor::Findings;
use crate::motor::finding::Finding;
use crate::normal::below;
use crate::quantity::ATMOSPHERE_KPA;

choice! {
    /// What is said of the compressor with its motor.
    CompressorState {
        /// Nothing can be said yet.
        Open = 0 "open",
        /// It is not the compressor.
        Cleared = 1 "cleared",
        /// It pumps less than it should, and still does something.
        Failing = 2 "failing",
        /// It is done: its motor, or so much of its pumping that nothing is left to wait for.
        Failed = 3 "failed",
    }
}

/// What is said of the compressor, with the probability that it or its motor is at fault.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CompressorAnswer {
    /// What is said of it.
    pub state: CompressorState,
    /// The probability that the compressor or its motor is at fault, 0 to 1.
    pub probability: f32,
}

impl CompressorAnswer {
    /// Nothing known.
    pub const OPEN: Self = Self { state: CompressorState::Open, probability: 0.0 };
}

/// Probability of a fault below which the compressor is cleared.
///
/// Of 4,000 visits to the simulated machines that constants may be set on (the setting half, seeds 7 and 11), with all
/// readings, without a high side, and with six readings: 2.3, 2.7 and 2.7 % of the weak ones are cleared, and 57, 56 and
/// 40 % of the sound ones. At 0.02 it would be 3.2, 6.8 and 6.4 % of the weak ones, and 77, 77 and 67 % of the sound.
pub const CLEARED_BELOW: f32 = 0.008;
/// Probability of a fault from which the compressor is condemned, where the rule for acting on a cause allows it.
///
/// Of the same visits 0.03, 0.05 and 0.03 % of the sound ones are condemned, and 34, 21 and 16 % of the weak ones.
pub const CONDEMNED_FROM: f32 = 0.75;
/// Probability of a fault inside the shell from which the motor is condemned (judged).
const MOTOR_CONDEMNED_FROM: f32 = 0.85;
/// Fraction of the flow lost from which a weak compressor counts as failed (judged: half of it no longer pulls most
/// spaces down).
const FAILED_FROM_LOSS: f32 = 0.5;

/// Discharge over suction pressure below which a running compressor compresses nothing (judged: the mildest day leaves
/// an air conditioner some 1.6).
const NO_COMPRESSION: f32 = 1.35;
/// Fraction of the expected current below which the motor has next to nothing to do (judged).
const LITTLE_CURRENT: f32 = 0.8;
/// Fraction of it below which the motor is not running at all: then nothing is said of its valves.
const NO_CURRENT: f32 = 0.1;
/// Minutes after a start within which the pressures may not have parted yet (judged).
const PARTED_AFTER_MINUTES: f32 = 3.0;
/// Probability of broken valves where pressures are nearly equal and the current little (judged: a four-way valve or a
/// bypass that stands open looks alike and is seldom on such machines).
const BROKEN_VALVES: f32 = 0.92;

/// Share of the odds of a weak compressor that a suction in vacuum, or a pump-down into it, leaves (judged: what passes
/// back through bad valves keeps the suction above the atmosphere).
const PROVED_TO_PUMP: f32 = 0.05;

/// Rise after a pump-down above which what the compressor pulled leaks back, kPa/min (judged).
const COMES_BACK_KPA_PER_MIN: f32 = 20.0;
/// Width over which a pressure ratio counts more and more (judged).
const RATIO_SPREAD: f32 = 0.04;
/// The same of a share of the expected current.
const CURRENT_SPREAD: f32 = 0.06;
/// The same of the share below which the motor does not run.
const NO_CURRENT_SPREAD: f32 = 0.05;
/// The same of the minutes since the start.
const PARTED_SPREAD_MINUTES: f32 = 1.0;

/// Answers the question.
pub(super) fn answer(evidence: &Evidence<'_>) -> CompressorAnswer {
    use CompressorState as State;
    let diagnosis = evidence.diagnosis;
    let weak = diagnosis.causes.iter().find(|c| c.cause == Cause::WeakCompressor);
    let (weak_p, loss) = weak.map_or((0.0, 0.0), |w| (w.probability, w.severity.unwrap_or(0.0)));
    let broken = broken_valves(evidence);
    let left = 1.0 - (1.0 - PROVED_TO_PUMP) * pumps(evidence);
    let weak_p = left * weak_p / (1.0 - (1.0 - left) * weak_p).max(1.0e-6);
    let valves = 1.0 - (1.0 - weak_p) * (1.0 - broken);
    let motor = motor(evidence.findings);
    let probability = 1.0 - (1.0 - valves) * (1.0 - motor);
    let weighed = diagnosis.fits.is_some();
    // The rule for acting on a cause asks for more than its probability: a test that was possible and not made, doubts.
    let decided = diagnosis.decided && diagnosis.leading == Cause::WeakCompressor;
    let says_something = !evidence.doubted && evidence.running && weighed;
    let state = if motor >= MOTOR_CONDEMNED_FROM {
        State::Failed
    } else if says_something && valves >= CONDEMNED_FROM && (broken >= CONDEMNED_FROM || decided) {
        if broken >= CONDEMNED_FROM || loss >= FAILED_FROM_LOSS { State::Failed } else { State::Failing }
    } else if says_something && probability < CLEARED_BELOW {
        State::Cleared
    } else {
        State::Open
    };
    CompressorAnswer { state, probability }
}

/// The probability of a fault by what no reading of the cycle is needed for: nothing compressed, or the motor.
pub(super) fn beyond_the_cause(evidence: &Evidence<'_>) -> f32 {
    broken_valves(evidence).max(motor(evidence.findings))
}

/// The probability that the motor inside the shell is at fault.
pub(super) fn motor(findings: &Findings) -> f32 {
    findings.iter().map(Finding::compressor_fault).fold(0.0, f32::max)
}

/// The probability that the compressor turns and compresses nothing, by pressures nearly equal and little current.
fn broken_valves(evidence: &Evidence<'_>) -> f32 {
    let readings = &evidence.visit.readings;
    let (true, Some(ratio), Some(amps)) =
        (evidence.running, evidence.cycle.pressure_ratio, readings.current_a)
    else {
        return 0.0;
    };
    // What a current can be held against: today's expectation, else the usual share of the plate.
    let plate = evidence.visit.system.compressor.rated_load_a;
    let expected = evidence
        .expected
        .current_a
        .or_else(|| plate.and_then(crate::compressor::current::expected_from_plate));
    let Some(share) = expected.map(|expected| amps / expected.value.max(1.0e-3)) else { return 0.0 };
    let parted =
        readings.minutes_running.map_or(1.0, |m| below((m - PARTED_AFTER_MINUTES) / PARTED_SPREAD_MINUTES));
    let equal = below((NO_COMPRESSION - ratio.value) / (ratio.u + RATIO_SPREAD));
    let little = below((LITTLE_CURRENT - share) / CURRENT_SPREAD);
    let some = below((share - NO_CURRENT) / NO_CURRENT_SPREAD);
    BROKEN_VALVES * parted * equal * little * some
}

/// How surely the compressor was seen to pull a vacuum that it would not hold here without reason, 0 to 1.
fn pumps(evidence: &Evidence<'_>) -> f32 {
    let uncertainty = &evidence.visit.uncertainty;
    let readings = &evidence.visit.readings;
    let vacuum = |kpa: Option<f32>| {
        kpa.map_or(0.0, |kpa| below((ATMOSPHERE_KPA - kpa) / uncertainty.pressure_kpa(kpa).max(0.1) - 2.0))
    };
    // Where a healthy machine runs in vacuum, one does not prove anything.
    let unusual = evidence
        .expected
        .suction_pressure_kpa
        .map_or(1.0, |e| below((e.value - ATMOSPHERE_KPA) / e.u.max(0.1) - 1.0));
    let suction = if evidence.running { unusual * vacuum(readings.suction_pressure_kpa) } else { 0.0 };
    // What leaks back quickly was pulled against a leak.
    let holds = readings
        .pump_down_rise_kpa_per_min
        .map_or(1.0, |rise| below((COMES_BACK_KPA_PER_MIN - rise) / (0.25 * COMES_BACK_KPA_PER_MIN)));
    suction.max(holds * vacuum(readings.pump_down_kpa))
}
