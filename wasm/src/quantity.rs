//! Units: what a figure read in any of them is in the contract's.

use rimewise::quantity::{Atmosphere, Pressure, Temperature, TemperatureDifference};
use wasm_bindgen::prelude::wasm_bindgen;

/// Turns a pressure into kPa absolute; the unit is 0 kPa, 1 bar, 2 psi.
#[wasm_bindgen(js_name = pressureToKpa)]
pub fn pressure_to_kpa(value: f32, unit: u8, gauge: bool, altitude_m: f32) -> f32 {
    let air = Atmosphere::at_altitude_m(altitude_m);
    let pressure = match (unit, gauge) {
        (0, false) => Pressure::from_kilopascals(value),
        (0, true) => Pressure::from_kilopascals_gauge(value, air),
        (1, false) => Pressure::from_bar(value),
        (1, true) => Pressure::from_bar_gauge(value, air),
        (_, false) => Pressure::from_psi(value),
        (_, true) => Pressure::from_psi_gauge(value, air),
    };
    pressure.kilopascals()
}

/// Turns kPa absolute into a pressure; the unit is 0 kPa, 1 bar, 2 psi.
#[wasm_bindgen(js_name = pressureFromKpa)]
pub fn pressure_from_kpa(kpa: f32, unit: u8, gauge: bool, altitude_m: f32) -> f32 {
    let air = Atmosphere::at_altitude_m(altitude_m);
    let pressure = Pressure::from_kilopascals(kpa);
    match (unit, gauge) {
        (0, false) => pressure.kilopascals(),
        (0, true) => pressure.kilopascals_gauge(air),
        (1, false) => pressure.bar(),
        (1, true) => pressure.bar_gauge(air),
        (_, false) => pressure.psi(),
        (_, true) => pressure.psi_gauge(air),
    }
}

/// Reads the pressure of the standard atmosphere at an altitude (m), kPa.
#[wasm_bindgen(js_name = atmosphereKpa)]
pub fn atmosphere_kpa(altitude_m: f32) -> f32 {
    Atmosphere::at_altitude_m(altitude_m).pressure().kilopascals()
}

/// Turns degF into degC.
#[wasm_bindgen(js_name = celsiusFromFahrenheit)]
pub fn celsius_from_fahrenheit(value: f32) -> f32 {
    Temperature::from_fahrenheit(value).celsius()
}

/// Turns degC into degF.
#[wasm_bindgen(js_name = fahrenheitFromCelsius)]
pub fn fahrenheit_from_celsius(value: f32) -> f32 {
    Temperature::from_celsius(value).fahrenheit()
}

/// Turns a difference in degF into K.
#[wasm_bindgen(js_name = kelvinsFromFahrenheit)]
pub fn kelvins_from_fahrenheit(value: f32) -> f32 {
    TemperatureDifference::from_fahrenheit(value).kelvins()
}

/// Turns a difference in K into degF.
#[wasm_bindgen(js_name = fahrenheitFromKelvins)]
pub fn fahrenheit_from_kelvins(value: f32) -> f32 {
    TemperatureDifference::from_kelvins(value).fahrenheit()
}
