//! Property questions, one JSON object a line.

use super::read::{FieldError, number, object, read_refrigerant, unknown, wrong_type};
use super::tree::Tree;
use super::write::{Line, write_error};
use crate::field::Kind;
use crate::quantity::{Enthalpy, Entropy, Pressure, Temperature};
use crate::refrigerant::{self, GwpReport, Phase, PropertyError, Refrigerant};

/// Answers one property question with one line of JSON: values, or an error that names its field.
pub fn answer_property(line: &str) -> String {
    answer(line).unwrap_or_else(|error| write_error(&error))
}

/// The fields of a question.
const FIELDS: [&str; 6] =
    ["refrigerant", "pressure_kpa", "temperature_c", "enthalpy_kj_kg", "entropy_kj_kg_k", "list"];

fn answer(line: &str) -> Result<String, FieldError> {
    let tree = Tree::read(line)?;
    let (mut fluid, mut pressure, mut temperature, mut list) = (None, None, None, false);
    let (mut enthalpy, mut entropy) = (None, None);
    for (name, value) in object("", tree)? {
        match name.as_str() {
            "refrigerant" => fluid = read_refrigerant("refrigerant", value)?,
            "pressure_kpa" => pressure = number("pressure_kpa", Kind::Pressure, value)?,
            "temperature_c" => temperature = number("temperature_c", Kind::Temperature, value)?,
            // Only an open reading would make a kind of its own matter here.
            "enthalpy_kj_kg" => enthalpy = number("enthalpy_kj_kg", Kind::Temperature, value)?,
            "entropy_kj_kg_k" => entropy = number("entropy_kj_kg_k", Kind::Temperature, value)?,
            "list" => match value {
                Tree::Bool(wanted) => list = wanted,
                Tree::Null => {}
                other => return Err(wrong_type("list", "true or false", &other)),
            },
            _ => return Err(unknown(&name, &FIELDS)),
        }
    }
    if list {
        let mut out = Line::ok();
        out.name("refrigerants");
        out.list(refrigerant::data::ALL.iter(), |out, r| out.text(r.designation()));
        return Ok(out.end());
    }
    let Some(fluid) = fluid else {
        return Err(FieldError { field: "refrigerant".to_owned(), error: "is missing".to_owned() });
    };
    let pressure = pressure.map(Pressure::from_kilopascals);
    let temperature = temperature.map(Temperature::from_celsius);
    if enthalpy.is_some() || entropy.is_some() {
        return from_heat(fluid, pressure, temperature, enthalpy, entropy);
    }
    match (pressure, temperature) {
        (None, None) => Ok(identity(fluid)),
        (Some(p), None) => {
            let mut out = Line::ok();
            out.number("bubble_c", fluid.bubble_temperature(p).map_err(about("pressure_kpa"))?.celsius());
            out.number("dew_c", fluid.dew_temperature(p).map_err(about("pressure_kpa"))?.celsius());
            Ok(out.end())
        }
        (None, Some(t)) => {
            let mut out = Line::ok();
            let at = about("temperature_c");
            out.number("bubble_kpa", fluid.bubble_pressure(t).map_err(&at)?.kilopascals());
            out.number("dew_kpa", fluid.dew_pressure(t).map_err(&at)?.kilopascals());
            Ok(out.end())
        }
        (Some(p), Some(t)) => state(fluid, p, t),
    }
}

/// Answers with phase, temperature and quality at a pressure and either an enthalpy or an entropy.
fn from_heat(
    fluid: &Refrigerant<'_>,
    pressure: Option<Pressure>,
    temperature: Option<Temperature>,
    enthalpy: Option<f32>,
    entropy: Option<f32>,
) -> Result<String, FieldError> {
    let plain = |field: &str, error: &str| FieldError { field: field.to_owned(), error: error.to_owned() };
    let Some(p) = pressure else { return Err(plain("pressure_kpa", "is missing")) };
    if temperature.is_some() {
        return Err(plain("temperature_c", "is given beside an enthalpy or entropy"));
    }
    let found = match (enthalpy, entropy) {
        (Some(h), None) => fluid
            .at_enthalpy(p, Enthalpy::from_joules_per_kg(1000.0 * h))
            .map_err(|error| by_error(error, "enthalpy_kj_kg"))?,
        (None, Some(s)) => fluid
            .at_entropy(p, Entropy::from_joules_per_kg_k(1000.0 * s))
            .map_err(|error| by_error(error, "entropy_kj_kg_k"))?,
        _ => return Err(plain("entropy_kj_kg_k", "is given beside an enthalpy")),
    };
    let mut out = Line::ok();
    out.name("phase");
    out.text(found.phase.name());
    out.number("temperature_c", found.temperature.celsius());
    optional(&mut out, "quality", found.quality);
    Ok(out.end())
}

fn state(fluid: &Refrigerant<'_>, p: Pressure, t: Temperature) -> Result<String, FieldError> {
    let phase = fluid.phase(p, t).map_err(|error| by_error(error, "temperature_c"))?;
    let mut out = Line::ok();
    out.name("phase");
    let state = match phase {
        Phase::TwoPhase => {
            out.text("two_phase");
            return Ok(out.end());
        }
        Phase::Vapor => {
            out.text("vapor");
            fluid.vapor(p, t).map_err(|error| by_error(error, "temperature_c"))?
        }
        Phase::Liquid => {
            out.text("liquid");
            fluid.liquid(p, t).map_err(|error| by_error(error, "temperature_c"))?
        }
    };
    out.number("density_kg_m3", state.density.kg_per_m3());
    out.number("enthalpy_kj_kg", state.enthalpy.kilojoules_per_kg());
    out.number("entropy_kj_kg_k", state.entropy.kilojoules_per_kg_k());
    // Near the critical point there is a state but no heat capacity worth telling.
    let response =
        if phase == Phase::Vapor { fluid.vapor_response(p, t) } else { fluid.liquid_response(p, t) }.ok();
    optional(&mut out, "heat_capacity_kj_kg_k", response.map(|r| r.heat_capacity_j_kg_k / 1000.0));
    optional(&mut out, "speed_of_sound_m_s", response.and_then(|r| r.speed_of_sound_m_s));
    Ok(out.end())
}

fn identity(fluid: &Refrigerant<'_>) -> String {
    let mut out = Line::ok();
    out.name("designation");
    out.text(fluid.designation());
    out.name("composition");
    out.list(fluid.composition(), |out, part| {
        out.open();
        out.name("component");
        out.text(part.name);
        // Compositions are published to a tenth of a mass percent or so; the fraction's binary32 rounding is not shown.
        let hundredths = libm::roundf(part.mass_fraction * 1.0e4);
        out.number("mass_percent", hundredths / 100.0);
        out.close();
    });
    out.name("safety_class");
    match fluid.safety_class() {
        Some(class) => out.text(class.name()),
        None => out.null(),
    }
    out.number("critical_c", fluid.critical_temperature().celsius());
    out.number("critical_kpa", fluid.critical_pressure().kilopascals());
    out.number("molar_mass_g_mol", fluid.molar_mass());
    out.name("estimated_pair");
    out.boolean(fluid.estimated_pair());
    out.number("saturation_uncertainty_k", fluid.saturation_uncertainty().kelvins());
    optional(&mut out, "gwp_ar5", fluid.global_warming_potential(GwpReport::Fifth));
    optional(&mut out, "gwp_ar6", fluid.global_warming_potential(GwpReport::Sixth));
    optional(&mut out, "odp", fluid.ozone_depletion_potential());
    optional(&mut out, "atmospheric_life_years", fluid.atmospheric_life_years());
    out.end()
}

/// Writes a number, or null where there is none.
fn optional(out: &mut Line, name: &'static str, value: Option<f32>) {
    match value {
        Some(value) => out.number(name, value),
        None => {
            out.name(name);
            out.null();
        }
    }
}

fn about(field: &'static str) -> impl Fn(PropertyError) -> FieldError {
    move |error| FieldError { field: field.to_owned(), error: error.to_string() }
}

fn by_error(error: PropertyError, other: &'static str) -> FieldError {
    let field = match error {
        PropertyError::Pressure { .. } | PropertyError::Transcritical { .. } => "pressure_kpa",
        _ => other,
    };
    about(field)(error)
}
