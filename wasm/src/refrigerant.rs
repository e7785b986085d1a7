//! Refrigerant properties that the line contract does not ask for: saturated states, ranges, inverse functions.
//! Each answers one line of JSON, an answer or an error that names its argument.

use crate::answer::Answer;
use rimewise::quantity::{Enthalpy, Entropy, Pressure};
use rimewise::refrigerant::{PropertyError, Refrigerant, State, find};
use wasm_bindgen::prelude::wasm_bindgen;

/// Asks a refrigerant by its designation; the field is the argument an error is about.
pub(crate) fn with(
    name: &str,
    field: &str,
    ask: impl FnOnce(&'static Refrigerant<'static>) -> Result<Answer, PropertyError>,
) -> String {
    match find(name) {
        None => Answer::error("refrigerant", "is not a designation there is a table for"),
        Some(refrigerant) => match ask(refrigerant) {
            Ok(answer) => answer.end(),
            Err(error) => Answer::error(field, &error.to_string()),
        },
    }
}

fn state(answer: Answer, names: [&str; 3], state: &State) -> Answer {
    let [density, enthalpy, entropy] = names;
    answer
        .number(density, state.density.kg_per_m3())
        .number(enthalpy, state.enthalpy.kilojoules_per_kg())
        .number(entropy, state.entropy.kilojoules_per_kg_k())
}

/// Finds both saturated states at a pressure, kPa absolute.
#[wasm_bindgen]
pub fn saturation(name: &str, pressure_kpa: f32) -> String {
    with(name, "pressure_kpa", |fluid| {
        let p = Pressure::from_kilopascals(pressure_kpa);
        let answer = Answer::ok()
            .number("bubble_c", fluid.bubble_temperature(p)?.celsius())
            .number("dew_c", fluid.dew_temperature(p)?.celsius());
        let answer = state(
            answer,
            ["liquid_density_kg_m3", "liquid_enthalpy_kj_kg", "liquid_entropy_kj_kg_k"],
            &fluid.saturated_liquid(p)?,
        );
        Ok(state(
            answer,
            ["vapor_density_kg_m3", "vapor_enthalpy_kj_kg", "vapor_entropy_kj_kg_k"],
            &fluid.saturated_vapor(p)?,
        ))
    })
}

/// Reads what the table of a refrigerant covers.
#[wasm_bindgen(js_name = tableRange)]
pub fn table_range(name: &str) -> String {
    with(name, "refrigerant", |fluid| {
        let (t_min, t_max) = fluid.temperature_range();
        let (p_min, p_max) = fluid.pressure_range();
        Ok(Answer::ok()
            .number("min_c", t_min.celsius())
            .number("max_c", t_max.celsius())
            .number("min_kpa", p_min.kilopascals())
            .number("max_kpa", p_max.kilopascals())
            .number("normal_boiling_c", fluid.normal_boiling_point().celsius())
            .number("glide_k", fluid.glide().kelvins()))
    })
}

/// Finds the temperature of superheated vapor from its pressure, kPa absolute, and its entropy, kJ/(kg K).
#[wasm_bindgen(js_name = vaporAtEntropy)]
pub fn vapor_at_entropy(name: &str, pressure_kpa: f32, entropy_kj_kg_k: f32) -> String {
    with(name, "entropy_kj_kg_k", |fluid| {
        let s = Entropy::from_joules_per_kg_k(entropy_kj_kg_k * 1000.0);
        let t = fluid.vapor_temperature_at_entropy(Pressure::from_kilopascals(pressure_kpa), s)?;
        Ok(Answer::ok().number("temperature_c", t.celsius()))
    })
}

/// Finds the temperature of superheated vapor from its pressure, kPa absolute, and its enthalpy, kJ/kg.
#[wasm_bindgen(js_name = vaporAtEnthalpy)]
pub fn vapor_at_enthalpy(name: &str, pressure_kpa: f32, enthalpy_kj_kg: f32) -> String {
    with(name, "enthalpy_kj_kg", |fluid| {
        let h = Enthalpy::from_joules_per_kg(enthalpy_kj_kg * 1000.0);
        let t = fluid.vapor_temperature_at_enthalpy(Pressure::from_kilopascals(pressure_kpa), h)?;
        Ok(Answer::ok().number("temperature_c", t.celsius()))
    })
}
