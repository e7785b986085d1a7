//! Findings of the supply voltage and of the running current.

use super::{Findings, add};
use crate::compressor::current::{self, Current};
use crate::compressor::start;
use crate::estimate::Estimate;
use crate::motor::balance;
use crate::motor::finding::{Finding, FindingKind as Kind, Winding, beyond};
use crate::motor::supply::{self, Supply};
use crate::normal::combine;
use crate::readings::{Readings, Uncertainty};
use crate::system::CompressorPlate;

/// Standard uncertainty of a voltmeter's reading, as a fraction (common practice: 1 % and some digits as limits).
const VOLTMETER: f32 = 0.01;
/// Fraction of the rated voltage below which there is no supply: what is left is stray or comes through another load
/// (judged).
const NO_SUPPLY_BELOW: f32 = 0.5;

/// Supply voltage and its balance.
pub(super) fn voltage(found: &mut Findings, plate: &CompressorPlate, readings: &Readings) {
    if let Some((line, volts)) = readings.line_voltages_v.and_then(balance::missing_by_voltage) {
        let finding = Finding::new(Kind::SinglePhasing, "V").of(Winding::line(line));
        return add(found, finding.held(volts.0, Some(volts.1)).likely(beyond(2.0)));
    }
    let mean = readings.line_voltages_v.map(|v| v.iter().map(|v| v / 3.0).sum::<f32>());
    if let (Some(volts), Some(rated)) = (readings.voltage_v.or(mean), plate.rated_v) {
        let u = (VOLTMETER * rated).max(1.0e-3);
        match supply::judge(volts, rated) {
            Some(Supply::Low { .. }) if volts < NO_SUPPLY_BELOW * rated => {
                let limit = NO_SUPPLY_BELOW * rated;
                add(found, Finding::new(Kind::NoSupply, "V").held(volts, Some(limit)).likely(beyond(3.0)));
            }
            Some(Supply::Low { limit_v }) => {
                let finding = Finding::new(Kind::LowVoltage, "V").held(volts, Some(limit_v));
                add(found, finding.likely(beyond((limit_v - volts) / u)));
            }
            Some(Supply::High { limit_v }) => {
                let finding = Finding::new(Kind::HighVoltage, "V").held(volts, Some(limit_v));
                add(found, finding.likely(beyond((volts - limit_v) / u)));
            }
            Some(Supply::Good) | None => {}
        }
    }
    let limit = balance::VOLTAGE_LIMIT_PERCENT;
    if let Some(percent) =
        readings.line_voltages_v.and_then(balance::unbalance_percent).filter(|p| *p > limit)
    {
        // Three readings of one meter: its own error is common to them, its last digits are not.
        let u = 100.0 * VOLTMETER / 3.0;
        let finding = Finding::new(Kind::VoltageUnbalance, "%").held(percent, Some(limit));
        add(found, finding.likely(beyond((percent - limit) / u)));
    }
}

/// The locked-rotor current at the voltage the motor gets, as well as the visit tells it, A.
pub(super) fn locked_rotor(plate: &CompressorPlate, readings: &Readings) -> Option<Estimate> {
    let locked = plate.locked_rotor_a?;
    match (plate.rated_v, readings.voltage_v) {
        (Some(rated), Some(volts)) => start::locked_rotor_at(locked, rated, volts),
        _ => Estimate::new(locked, 0.1 * locked).filter(|l| l.value > 0.0),
    }
}

/// The running current: a missing phase, the balance, a standing rotor, the plate, and today's pressures.
pub(super) fn running_current(
    found: &mut Findings,
    plate: &CompressorPlate,
    readings: &Readings,
    uncertainty: &Uncertainty,
    expected: Option<Estimate>,
) {
    if let Some((line, amps)) = readings.line_currents_a.and_then(balance::missing_by_current) {
        let finding = Finding::new(Kind::SinglePhasing, "A").of(Winding::line(line));
        return add(found, finding.held(amps.0, Some(amps.1)).likely(beyond(3.0)));
    }
    if let Some(percent) = readings.line_currents_a.and_then(balance::unbalance_percent) {
        let explained = readings
            .line_voltages_v
            .and_then(balance::unbalance_percent)
            .and_then(balance::current_unbalance_explained)
            .map_or(0.0, |(_, high)| high);
        let limit = balance::CURRENT_LIMIT_PERCENT.max(explained);
        if percent > limit {
            let u = (100.0 * uncertainty.current_fraction()).max(0.1);
            let finding = Finding::new(Kind::CurrentUnbalance, "%").held(percent, Some(limit));
            add(found, finding.likely(beyond((percent - limit) / u)));
        }
    }
    let mean = readings.line_currents_a.map(|a| a.iter().map(|a| a / 3.0).sum::<f32>());
    let highest = readings.line_currents_a.map(|a| a.iter().copied().fold(0.0, f32::max));
    let measure =
        |amps: Option<f32>| amps.and_then(|amps| Estimate::new(amps, uncertainty.current_fraction() * amps));
    let Some(highest) = measure(readings.current_a.or(highest)) else { return };
    let new = |kind| Finding::new(kind, "A");
    if let Some(locked) = locked_rotor(plate, readings) {
        let limit = start::STANDS_STILL * locked.value;
        if highest.value >= limit {
            let u = combine(&[highest.u, start::STANDS_STILL * locked.u]).max(1.0e-3);
            let sure = beyond((highest.value - limit) / u);
            return add(found, new(Kind::LockedRotor).held(highest.value, Some(limit)).likely(sure));
        }
    }
    if let Some(rated) = plate.rated_load_a.filter(|r| *r > 0.0) {
        // The plate is a limit of the motor, so only what the clamp may add is allowed above it.
        let limit = rated + 2.0 * highest.u;
        if highest.value > limit {
            let sure = beyond((highest.value - rated) / highest.u.max(1.0e-3));
            return add(found, new(Kind::CurrentAboveRated).held(highest.value, Some(limit)).likely(sure));
        }
    }
    let Some(measured) = measure(readings.current_a.or(mean)) else { return };
    let Some(expected) = expected.or_else(|| plate.rated_load_a.and_then(current::expected_from_plate))
    else {
        return;
    };
    let u = combine(&[measured.u, expected.u]).max(1.0e-3);
    let amps = measured.value;
    add(
        found,
        match current::compare(measured, expected) {
            Some(Current::Below { limit_a }) => {
                let sure = beyond((limit_a - amps) / u + 1.0);
                new(Kind::CurrentBelowExpected).held(amps, Some(limit_a)).likely(sure)
            }
            // Above today's pressures but within the plate: heat, voltage or load, not yet the motor's limit.
            Some(Current::AsExpected) => new(Kind::CurrentNormal).held(amps, Some(expected.value)),
            Some(Current::Above { limit_a }) if plate.rated_load_a.is_none() => {
                let sure = beyond((amps - limit_a) / u + 1.0);
                new(Kind::CurrentAboveRated).held(amps, Some(limit_a)).likely(sure)
            }
            Some(Current::Above { limit_a }) => new(Kind::CurrentNormal).held(amps, Some(limit_a)),
            None => return,
        },
    );
}
