//! Refrigerant properties that the line contract does not ask for: saturated states, ranges, inverse functions.
//! Each answers one line of JSON, an answer or an error that names its argument.

use rimewise::quantity::{Enthalpy, Entropy, Pressure};
use rimewise::refrigerant::{PropertyError, Refrigerant, State, find};
use std::fmt::Write;
use wasm_bindgen::prelude::wasm_bindgen;

fn error(field: &str, error: &str) -> String {
    // Messages of the library hold neither quotes nor backslashes.
    format!("{{\"status\":\"error\",\"field\":\"{field}\",\"error\":\"{error}\"}}")
}

fn answer(numbers: &[(&str, f32)]) -> String {
    let mut text = String::from("{\"status\":\"ok\"");
    for (name, value) in numbers {
        // Writing to a string cannot fail; Display writes the shortest decimal that reads back as the same binary32.
        let _ = if value.is_finite() {
            write!(text, ",\"{name}\":{value}")
        } else {
            write!(text, ",\"{name}\":null")
        };
    }
    text.push('}');
    text
}

fn with(
    name: &str,
    field: &str,
    ask: impl FnOnce(&Refrigerant<'_>) -> Result<String, PropertyError>,
) -> String {
    match find(name) {
        None => error("refrigerant", "is not a designation there is a table for"),
        Some(refrigerant) => ask(refrigerant).unwrap_or_else(|e| error(field, &e.to_string())),
    }
}

fn state(prefix: [&'static str; 3], state: &State) -> [(&'static str, f32); 3] {
    let [density, enthalpy, entropy] = prefix;
    [
        (density, state.density.kg_per_m3()),
        (enthalpy, state.enthalpy.kilojoules_per_kg()),
        (entropy, state.entropy.kilojoules_per_kg_k()),
    ]
}

/// Finds both saturated states at a pressure, kPa absolute.
#[wasm_bindgen]
pub fn saturation(name: &str, pressure_kpa: f32) -> String {
    with(name, "pressure_kpa", |fluid| {
        let p = Pressure::from_kilopascals(pressure_kpa);
        let temperatures = [
            ("bubble_c", fluid.bubble_temperature(p)?.celsius()),
            ("dew_c", fluid.dew_temperature(p)?.celsius()),
        ];
        let liquid = state(
            ["liquid_density_kg_m3", "liquid_enthalpy_kj_kg", "liquid_entropy_kj_kg_k"],
            &fluid.saturated_liquid(p)?,
        );
        let vapor = state(
            ["vapor_density_kg_m3", "vapor_enthalpy_kj_kg", "vapor_entropy_kj_kg_k"],
            &fluid.saturated_vapor(p)?,
        );
        Ok(answer(&[&temperatures[..], &liquid, &vapor].concat()))
    })
}

/// Reads what the table of a refrigerant covers.
#[wasm_bindgen(js_name = tableRange)]
pub fn table_range(name: &str) -> String {
    with(name, "refrigerant", |fluid| {
        let (t_min, t_max) = fluid.temperature_range();
        let (p_min, p_max) = fluid.pressure_range();
        Ok(answer(&[
            ("min_c", t_min.celsius()),
            ("max_c", t_max.celsius()),
            ("min_kpa", p_min.kilopascals()),
            ("max_kpa", p_max.kilopascals()),
            ("normal_boiling_c", fluid.normal_boiling_point().celsius()),
            ("glide_k", fluid.glide().kelvins()),
        ]))
    })
}

/// Finds the temperature of superheated vapor from its pressure, kPa absolute, and its entropy, kJ/(kg K).
#[wasm_bindgen(js_name = vaporAtEntropy)]
pub fn vapor_at_entropy(name: &str, pressure_kpa: f32, entropy_kj_kg_k: f32) -> String {
    with(name, "entropy_kj_kg_k", |fluid| {
        let s = Entropy::from_joules_per_kg_k(entropy_kj_kg_k * 1000.0);
        let t = fluid.vapor_temperature_at_entropy(Pressure::from_kilopascals(pressure_kpa), s)?;
        Ok(answer(&[("temperature_c", t.celsius())]))
    })
}

/// Finds the temperature of superheated vapor from its pressure, kPa absolute, and its enthalpy, kJ/kg.
#[wasm_bindgen(js_name = vaporAtEnthalpy)]
pub fn vapor_at_enthalpy(name: &str, pressure_kpa: f32, enthalpy_kj_kg: f32) -> String {
    with(name, "enthalpy_kj_kg", |fluid| {
        let h = Enthalpy::from_joules_per_kg(enthalpy_kj_kg * 1000.0);
        let t = fluid.vapor_temperature_at_enthalpy(Pressure::from_kilopascals(pressure_kpa), h)?;
        Ok(answer(&[("temperature_c", t.celsius())]))
    })
}
