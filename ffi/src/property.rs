//! Saturation, vapor and liquid properties.

use crate::boundary::put_result;
use crate::refrigerant::RimewiseRefrigerant;
use crate::status::{RimewiseStatus, RimewiseStatus as Status};
use rimewise::quantity::{Enthalpy, Entropy, Pressure, Temperature};
use rimewise::refrigerant::{PropertyError, Refrigerant, State};

/// The phase of a state.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewisePhase {
    /// Warmer than the dew point.
    Vapor = 1,
    /// Colder than the bubble point.
    Liquid = 2,
    /// From the bubble point to the dew point.
    TwoPhase = 3,
}

/// Density, enthalpy and entropy of one state; enthalpy and entropy are on the IIR reference state.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct RimewiseState {
    /// Mass density, kg/m3.
    pub density_kg_m3: f32,
    /// Specific enthalpy, kJ/kg.
    pub enthalpy_kj_kg: f32,
    /// Specific entropy, kJ/(kg K).
    pub entropy_kj_kg_k: f32,
}

impl From<State> for RimewiseState {
    fn from(state: State) -> Self {
        Self {
            density_kg_m3: state.density.kg_per_m3(),
            enthalpy_kj_kg: state.enthalpy.kilojoules_per_kg(),
            entropy_kj_kg_k: state.entropy.kilojoules_per_kg_k(),
        }
    }
}

/// Asks a refrigerant one question and writes the answer.
#[inline(always)]
unsafe fn ask<T>(
    refrigerant: *const RimewiseRefrigerant,
    out: *mut T,
    question: impl FnOnce(&Refrigerant<'static>) -> Result<T, PropertyError>,
) -> Status {
    // SAFETY: the contract of the header.
    unsafe {
        match refrigerant.as_ref() {
            Some(RimewiseRefrigerant(r)) => put_result(out, question(r)),
            None => Status::NullPointer,
        }
    }
}

/// Finds the dew temperature at a pressure: where the last liquid has evaporated.
///
/// `pressure_kpa` absolute. Writes `temperature_c`. Superheat is a pipe temperature minus this. Errors:
/// PRESSURE_OUTSIDE_TABLE, TRANSCRITICAL, NOT_FINITE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_dew_temperature(
    refrigerant: *const RimewiseRefrigerant,
    pressure_kpa: f32,
    temperature_c: *mut f32,
) -> RimewiseStatus {
    let p = Pressure::from_kilopascals(pressure_kpa);
    // SAFETY: the contract of the header.
    unsafe { ask(refrigerant, temperature_c, |r| r.dew_temperature(p).map(Temperature::celsius)) }
}

/// Finds the bubble temperature at a pressure: where the first bubble forms.
///
/// `pressure_kpa` absolute. Writes `temperature_c`. Subcooling is this minus a pipe temperature. Errors:
/// PRESSURE_OUTSIDE_TABLE, TRANSCRITICAL, NOT_FINITE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_bubble_temperature(
    refrigerant: *const RimewiseRefrigerant,
    pressure_kpa: f32,
    temperature_c: *mut f32,
) -> RimewiseStatus {
    let p = Pressure::from_kilopascals(pressure_kpa);
    // SAFETY: the contract of the header.
    unsafe { ask(refrigerant, temperature_c, |r| r.bubble_temperature(p).map(Temperature::celsius)) }
}

/// Finds the dew pressure at a temperature.
///
/// Writes `pressure_kpa`, absolute. Errors: TEMPERATURE_OUTSIDE_TABLE, TRANSCRITICAL, NOT_FINITE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_dew_pressure(
    refrigerant: *const RimewiseRefrigerant,
    temperature_c: f32,
    pressure_kpa: *mut f32,
) -> RimewiseStatus {
    let t = Temperature::from_celsius(temperature_c);
    // SAFETY: the contract of the header.
    unsafe { ask(refrigerant, pressure_kpa, |r| r.dew_pressure(t).map(Pressure::kilopascals)) }
}

/// Finds the bubble pressure at a temperature.
///
/// Writes `pressure_kpa`, absolute. Errors: TEMPERATURE_OUTSIDE_TABLE, TRANSCRITICAL, NOT_FINITE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_bubble_pressure(
    refrigerant: *const RimewiseRefrigerant,
    temperature_c: f32,
    pressure_kpa: *mut f32,
) -> RimewiseStatus {
    let t = Temperature::from_celsius(temperature_c);
    // SAFETY: the contract of the header.
    unsafe { ask(refrigerant, pressure_kpa, |r| r.bubble_pressure(t).map(Pressure::kilopascals)) }
}

/// Tells the phase at a pressure and a temperature.
///
/// `pressure_kpa` absolute. Writes `phase`, a RimewisePhase. Errors: PRESSURE_OUTSIDE_TABLE, TRANSCRITICAL,
/// NOT_FINITE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_phase(
    refrigerant: *const RimewiseRefrigerant,
    pressure_kpa: f32,
    temperature_c: f32,
    phase: *mut i32,
) -> RimewiseStatus {
    let (p, t) = (Pressure::from_kilopascals(pressure_kpa), Temperature::from_celsius(temperature_c));
    // SAFETY: the contract of the header.
    unsafe { ask(refrigerant, phase, |r| r.phase(p, t).map(|phase| phase as i32)) }
}

/// Finds the properties of vapor at a pressure and a temperature.
///
/// `pressure_kpa` absolute. Answers from 2 K below the dew point to 160 K above it. Errors: PRESSURE_OUTSIDE_TABLE,
/// TEMPERATURE_OUTSIDE_TABLE, TWO_PHASE, OTHER_PHASE, TRANSCRITICAL, NOT_FINITE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_vapor(
    refrigerant: *const RimewiseRefrigerant,
    pressure_kpa: f32,
    temperature_c: f32,
    state: *mut RimewiseState,
) -> RimewiseStatus {
    let (p, t) = (Pressure::from_kilopascals(pressure_kpa), Temperature::from_celsius(temperature_c));
    // SAFETY: the contract of the header.
    unsafe { ask(refrigerant, state, |r| r.vapor(p, t).map(RimewiseState::from)) }
}

/// Finds the properties of liquid at a pressure and a temperature.
///
/// `pressure_kpa` absolute. Answers from 2 K above the bubble point to 60 K below it, not below the table's lowest
/// temperature. Errors: as rimewise_vapor.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_liquid(
    refrigerant: *const RimewiseRefrigerant,
    pressure_kpa: f32,
    temperature_c: f32,
    state: *mut RimewiseState,
) -> RimewiseStatus {
    let (p, t) = (Pressure::from_kilopascals(pressure_kpa), Temperature::from_celsius(temperature_c));
    // SAFETY: the contract of the header.
    unsafe { ask(refrigerant, state, |r| r.liquid(p, t).map(RimewiseState::from)) }
}

/// Finds the properties of saturated vapor at a pressure, at its dew temperature.
///
/// `pressure_kpa` absolute. Errors: PRESSURE_OUTSIDE_TABLE, TRANSCRITICAL, NOT_FINITE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_saturated_vapor(
    refrigerant: *const RimewiseRefrigerant,
    pressure_kpa: f32,
    state: *mut RimewiseState,
) -> RimewiseStatus {
    let p = Pressure::from_kilopascals(pressure_kpa);
    // SAFETY: the contract of the header.
    unsafe { ask(refrigerant, state, |r| r.saturated_vapor(p).map(RimewiseState::from)) }
}

/// Finds the properties of saturated liquid at a pressure, at its bubble temperature.
///
/// `pressure_kpa` absolute. Errors: PRESSURE_OUTSIDE_TABLE, TRANSCRITICAL, NOT_FINITE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_saturated_liquid(
    refrigerant: *const RimewiseRefrigerant,
    pressure_kpa: f32,
    state: *mut RimewiseState,
) -> RimewiseStatus {
    let p = Pressure::from_kilopascals(pressure_kpa);
    // SAFETY: the contract of the header.
    unsafe { ask(refrigerant, state, |r| r.saturated_liquid(p).map(RimewiseState::from)) }
}

/// Finds the temperature of vapor from its pressure and enthalpy.
///
/// `pressure_kpa` absolute. The inverse of rimewise_vapor. Errors: PRESSURE_OUTSIDE_TABLE, TWO_PHASE (an enthalpy
/// below that of vapor), TEMPERATURE_OUTSIDE_TABLE, TRANSCRITICAL, NOT_FINITE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_vapor_temperature_at_enthalpy(
    refrigerant: *const RimewiseRefrigerant,
    pressure_kpa: f32,
    enthalpy_kj_kg: f32,
    temperature_c: *mut f32,
) -> RimewiseStatus {
    let (p, h) =
        (Pressure::from_kilopascals(pressure_kpa), Enthalpy::from_joules_per_kg(enthalpy_kj_kg * 1000.0));
    // SAFETY: the contract of the header.
    unsafe {
        ask(refrigerant, temperature_c, |r| r.vapor_temperature_at_enthalpy(p, h).map(Temperature::celsius))
    }
}

/// Finds the temperature of vapor from its pressure and entropy.
///
/// `pressure_kpa` absolute. With the discharge pressure and the entropy at the compressor's inlet this is the
/// isentropic discharge temperature. Errors: as rimewise_vapor_temperature_at_enthalpy.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_vapor_temperature_at_entropy(
    refrigerant: *const RimewiseRefrigerant,
    pressure_kpa: f32,
    entropy_kj_kg_k: f32,
    temperature_c: *mut f32,
) -> RimewiseStatus {
    let (p, s) =
        (Pressure::from_kilopascals(pressure_kpa), Entropy::from_joules_per_kg_k(entropy_kj_kg_k * 1000.0));
    // SAFETY: the contract of the header.
    unsafe {
        ask(refrigerant, temperature_c, |r| r.vapor_temperature_at_entropy(p, s).map(Temperature::celsius))
    }
}
