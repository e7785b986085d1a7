//! The motor, its capacitors and its supply.

use crate::boundary::put;
use crate::diagnose::{refuse, visit};
use crate::estimate::RimewiseEstimate;
use crate::generated::inputs::{RimewiseReadings, RimewiseSystem, RimewiseUncertainty};
use crate::invalid::RimewiseInvalid;
use crate::report::{RIMEWISE_ELECTRICAL_MAX, RimewiseFinding};
use crate::status::{RimewiseStatus, RimewiseStatus as Status};
use rimewise::estimate::Estimate;
use rimewise::motor::ohmmeter::Ohmmeter;
use rimewise::motor::terminals::{self, Identification};
use rimewise::motor::{balance, capacitor, insulation, temperature};
use rimewise::readings::Visit;

/// What three resistances tell about unmarked terminals.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewiseIdentification {
    /// All three terminals are told apart, and the resistances agree.
    Identified = 1,
    /// Two of the terminals are too close for this meter; the assignment is the likelier one.
    Ambiguous = 2,
    /// The largest resistance is not the sum of the others within what the meter allows.
    Inconsistent = 3,
    /// One or more of the three reads open.
    Open = 4,
}

/// The terminals of a single-phase motor by the number a technician gave them.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct RimewiseTerminals {
    /// A RimewiseIdentification.
    pub identification: i32,
    /// The common terminal, 1 to 3; 0 where the terminals could not be told.
    pub common: u32,
    /// The start terminal, likewise.
    pub start: u32,
    /// The run terminal, likewise.
    pub run: u32,
    /// Number of open readings.
    pub open_count: u32,
    /// Resistance of the run winding, common to run, ohm; 0 where the terminals could not be told.
    pub run_ohm: RimewiseEstimate,
    /// Resistance of the start winding, common to start, ohm; 0 where the terminals could not be told.
    pub start_ohm: RimewiseEstimate,
    /// The largest resistance minus the sum of the others, ohm; 0 where one reads open.
    pub residual_ohm: RimewiseEstimate,
}

/// Writes a number, or says that an input was out of range.
unsafe fn put_or_range(out: *mut f32, value: Option<f32>) -> Status {
    match value {
        // SAFETY: as the caller's.
        Some(value) => unsafe { put(out, value) },
        None => Status::OutOfRange,
    }
}

/// Lists what the motor and supply readings show, without a refrigerant or a diagnosis.
///
/// The plate stands for the current that today's pressures ask for; rimewise_diagnose knows better. `system` and
/// `uncertainty` NULL: nothing known, usual instruments. `findings` has room for RIMEWISE_ELECTRICAL_MAX entries, of
/// which `count` are written. `invalid` NULL: the field at fault is not wanted. Errors: INVALID_INPUT, UNKNOWN_CODE
/// (both write `invalid`), WRONG_SIZE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_motor_examine(
    system: *const RimewiseSystem,
    readings: *const RimewiseReadings,
    uncertainty: *const RimewiseUncertainty,
    findings: *mut RimewiseFinding,
    count: *mut u32,
    invalid: *mut RimewiseInvalid,
) -> RimewiseStatus {
    if findings.is_null() || count.is_null() {
        return Status::NullPointer;
    }
    // SAFETY: the contract of the header.
    unsafe {
        let mut given = Visit::default();
        if let Err(status) = visit(&mut given, system, readings, uncertainty, invalid) {
            return status;
        }
        if let Err(at_fault) = rimewise::check(None, &given) {
            return refuse(invalid, at_fault.into(), Status::InvalidInput);
        }
        let found = rimewise::motor::examine(&given.system, &given.readings, &given.uncertainty, None);
        let mut written = 0;
        for (position, finding) in found.iter().take(RIMEWISE_ELECTRICAL_MAX).enumerate() {
            put(findings.add(position), RimewiseFinding::from(finding));
            written += 1;
        }
        put(count, written)
    }
}

/// Computes the unbalance of three values, percent: the largest distance from their mean over the mean.
///
/// Errors: OUT_OF_RANGE where a value is not finite or negative, or the mean is zero.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_unbalance(a: f32, b: f32, c: f32, percent: *mut f32) -> RimewiseStatus {
    // SAFETY: the contract of the header.
    unsafe { put_or_range(percent, balance::unbalance_percent([a, b, c])) }
}

/// Computes the fraction of its rating that a three-phase motor may carry at a voltage unbalance, percent.
///
/// Errors: OUT_OF_RANGE where the unbalance is not finite, negative, or too large for any load.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_derating(unbalance_percent: f32, fraction: *mut f32) -> RimewiseStatus {
    // SAFETY: the contract of the header.
    unsafe { put_or_range(fraction, balance::derating(unbalance_percent)) }
}

/// Computes a running capacitor's capacitance, microfarad, from its current and voltage.
///
/// Each with its standard uncertainty (0 for none), at the supply frequency `hz`. Errors: OUT_OF_RANGE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_capacitance(
    current_a: f32,
    current_u_a: f32,
    voltage_v: f32,
    voltage_u_v: f32,
    hz: f32,
    capacitance_uf: *mut RimewiseEstimate,
) -> RimewiseStatus {
    let current = Estimate { value: current_a, u: current_u_a };
    let voltage = Estimate { value: voltage_v, u: voltage_u_v };
    // SAFETY: the contract of the header.
    unsafe { RimewiseEstimate::put(capacitance_uf, capacitor::from_amps_and_volts(current, voltage, hz)) }
}

/// Refers a winding's resistance from its temperature to another.
///
/// `resistance_ohm` and `from_c` with their standard uncertainties; `constant_c` is the metal's: 234.5 degC for copper,
/// 225 degC for aluminium (IEC 60034-1). Errors: OUT_OF_RANGE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_winding_referred(
    resistance_ohm: f32,
    resistance_u_ohm: f32,
    from_c: f32,
    from_u_k: f32,
    to_c: f32,
    constant_c: f32,
    referred_ohm: *mut RimewiseEstimate,
) -> RimewiseStatus {
    let resistance = Estimate { value: resistance_ohm, u: resistance_u_ohm };
    let from = Estimate { value: from_c, u: from_u_k };
    // SAFETY: the contract of the header.
    unsafe { RimewiseEstimate::put(referred_ohm, temperature::refer(resistance, from, to_c, constant_c)) }
}

/// Refers an insulation resistance from the winding's temperature to 40 degC, megohm.
///
/// Errors: OUT_OF_RANGE where an input is not finite or the resistance negative.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_insulation_at_40c(
    resistance_megohm: f32,
    winding_c: f32,
    referred_megohm: *mut f32,
) -> RimewiseStatus {
    // SAFETY: the contract of the header.
    unsafe { put_or_range(referred_megohm, insulation::referred_to_40c(resistance_megohm, winding_c)) }
}

/// Tells common, start and run from the resistances between three unmarked terminals, ohm.
///
/// INFINITY is an open reading. A usual hand meter with nulled leads is taken. Motors whose windings differ by less
/// than the meter can tell are ambiguous, never guessed. Errors: OUT_OF_RANGE where a reading is NaN or negative.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_identify_terminals(
    terminal_12_ohm: f32,
    terminal_23_ohm: f32,
    terminal_13_ohm: f32,
    terminals: *mut RimewiseTerminals,
) -> RimewiseStatus {
    let found = terminals::identify(terminal_12_ohm, terminal_23_ohm, terminal_13_ohm, &Ohmmeter::USUAL);
    let told = |identification, t: terminals::Terminals| RimewiseTerminals {
        identification,
        common: t.common.into(),
        start: t.start.into(),
        run: t.run.into(),
        open_count: 0,
        run_ohm: t.run_ohm.into(),
        start_ohm: t.start_ohm.into(),
        residual_ohm: t.residual_ohm.into(),
    };
    let blank = RimewiseTerminals::default();
    let value = match found {
        None => return Status::OutOfRange,
        Some(Identification::Identified(t)) => told(RimewiseIdentification::Identified as i32, t),
        Some(Identification::Ambiguous(t)) => told(RimewiseIdentification::Ambiguous as i32, t),
        Some(Identification::Inconsistent { residual_ohm }) => RimewiseTerminals {
            identification: RimewiseIdentification::Inconsistent as i32,
            residual_ohm: residual_ohm.into(),
            ..blank
        },
        Some(Identification::Open { open }) => RimewiseTerminals {
            identification: RimewiseIdentification::Open as i32,
            open_count: open.into(),
            ..blank
        },
    };
    // SAFETY: the contract of the header.
    unsafe { put(terminals, value) }
}
