//! Units that people hold in their hands, gauge pressures and altitude.

use crate::boundary::{finite, put, put_result};
use crate::status::{RimewiseStatus, RimewiseStatus as Status};
use rimewise::quantity::{Atmosphere, Pressure, Temperature, TemperatureDifference};

/// A unit of pressure. The gauge units are above the local atmosphere.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewisePressureUnit {
    /// Pascal, absolute.
    Pa = 1,
    /// Kilopascal, absolute.
    Kpa = 2,
    /// Bar, absolute.
    Bar = 3,
    /// Pound per square inch, absolute (psia).
    Psi = 4,
    /// Kilopascal above the local atmosphere.
    KpaGauge = 5,
    /// Bar above the local atmosphere.
    BarGauge = 6,
    /// Pound per square inch above the local atmosphere (psig).
    PsiGauge = 7,
}

/// A unit of temperature or of a temperature difference.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewiseTemperatureUnit {
    /// Degree Celsius; for a difference the same as kelvin.
    C = 1,
    /// Degree Fahrenheit.
    F = 2,
    /// Kelvin.
    K = 3,
}

/// Finds the pressure of the standard atmosphere at an altitude.
///
/// `altitude_m` in metres above sea level, held at the nearer end of -500 m to 11,000 m. Writes `pressure_kpa`,
/// absolute. Errors: NOT_FINITE. Source: ICAO Doc 7488, manual of the standard atmosphere.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_atmosphere_at_altitude(
    altitude_m: f32,
    pressure_kpa: *mut f32,
) -> RimewiseStatus {
    let kpa = finite(altitude_m).map(|m| Atmosphere::at_altitude_m(m).pressure().kilopascals());
    // SAFETY: the contract of the header.
    unsafe { put_result(pressure_kpa, kpa) }
}

/// Converts a pressure from a unit into kPa absolute.
///
/// `unit` is a RimewisePressureUnit. `atmosphere_kpa` is the local atmosphere, from
/// rimewise_atmosphere_at_altitude or a barometer (station pressure), and is not used for the absolute units.
/// Errors: UNKNOWN_CODE, NOT_FINITE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_pressure_to_kpa(
    value: f32,
    unit: i32,
    atmosphere_kpa: f32,
    pressure_kpa: *mut f32,
) -> RimewiseStatus {
    let atmosphere = Atmosphere::from_pressure(Pressure::from_kilopascals(atmosphere_kpa));
    let kpa = match unit {
        1 => Pressure::from_pascals(value).kilopascals(),
        2 => value,
        3 => Pressure::from_bar(value).kilopascals(),
        4 => Pressure::from_psi(value).kilopascals(),
        5 => Pressure::from_kilopascals_gauge(value, atmosphere).kilopascals(),
        6 => Pressure::from_bar_gauge(value, atmosphere).kilopascals(),
        7 => Pressure::from_psi_gauge(value, atmosphere).kilopascals(),
        _ => return Status::UnknownCode,
    };
    // SAFETY: the contract of the header.
    unsafe { put_result(pressure_kpa, finite(kpa)) }
}

/// Converts a pressure from kPa absolute into a unit.
///
/// `unit` and `atmosphere_kpa` as in rimewise_pressure_to_kpa. A gauge value is negative under vacuum.
/// Errors: UNKNOWN_CODE, NOT_FINITE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_pressure_from_kpa(
    pressure_kpa: f32,
    unit: i32,
    atmosphere_kpa: f32,
    value: *mut f32,
) -> RimewiseStatus {
    let atmosphere = Atmosphere::from_pressure(Pressure::from_kilopascals(atmosphere_kpa));
    let pressure = Pressure::from_kilopascals(pressure_kpa);
    let converted = match unit {
        1 => pressure.pascals(),
        2 => pressure_kpa,
        3 => pressure.bar(),
        4 => pressure.psi(),
        5 => pressure.kilopascals_gauge(atmosphere),
        6 => pressure.bar_gauge(atmosphere),
        7 => pressure.psi_gauge(atmosphere),
        _ => return Status::UnknownCode,
    };
    // SAFETY: the contract of the header.
    unsafe { put_result(value, finite(converted)) }
}

/// Converts a temperature from a unit into degC.
///
/// `unit` is a RimewiseTemperatureUnit. Errors: UNKNOWN_CODE, NOT_FINITE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_temperature_to_c(
    value: f32,
    unit: i32,
    temperature_c: *mut f32,
) -> RimewiseStatus {
    let c = match unit {
        1 => value,
        2 => Temperature::from_fahrenheit(value).celsius(),
        3 => Temperature::from_kelvins(value).celsius(),
        _ => return Status::UnknownCode,
    };
    // SAFETY: the contract of the header.
    unsafe { put_result(temperature_c, finite(c)) }
}

/// Converts a temperature from degC into a unit.
///
/// `unit` is a RimewiseTemperatureUnit. Errors: UNKNOWN_CODE, NOT_FINITE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_temperature_from_c(
    temperature_c: f32,
    unit: i32,
    value: *mut f32,
) -> RimewiseStatus {
    let converted = match unit {
        1 => temperature_c,
        2 => Temperature::from_celsius(temperature_c).fahrenheit(),
        3 => Temperature::from_celsius(temperature_c).kelvins(),
        _ => return Status::UnknownCode,
    };
    // SAFETY: the contract of the header.
    unsafe { put_result(value, finite(converted)) }
}

/// Converts a temperature difference from K into a unit: 10 K are 18 degF of difference.
///
/// `unit` is a RimewiseTemperatureUnit. Errors: UNKNOWN_CODE, NOT_FINITE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_difference_from_k(
    difference_k: f32,
    unit: i32,
    value: *mut f32,
) -> RimewiseStatus {
    let converted = match unit {
        1 | 3 => difference_k,
        2 => TemperatureDifference::from_kelvins(difference_k).fahrenheit(),
        _ => return Status::UnknownCode,
    };
    match finite(converted) {
        // SAFETY: the contract of the header.
        Ok(converted) => unsafe { put(value, converted) },
        Err(status) => status,
    }
}

/// Converts a temperature difference from a unit into K.
///
/// `unit` is a RimewiseTemperatureUnit. Errors: UNKNOWN_CODE, NOT_FINITE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_difference_to_k(
    value: f32,
    unit: i32,
    difference_k: *mut f32,
) -> RimewiseStatus {
    let kelvins = match unit {
        1 | 3 => value,
        2 => TemperatureDifference::from_fahrenheit(value).kelvins(),
        _ => return Status::UnknownCode,
    };
    // SAFETY: the contract of the header.
    unsafe { put_result(difference_k, finite(kelvins)) }
}
