//! Property questions, one JSON object a line.

use super::read::{FieldError, number, object, read_refrigerant, unknown, wrong_type};
use super::tree::Tree;
use super::write::{Line, write_error};
use crate::field::Kind;
use crate::quantity::{Pressure, Temperature};
use crate::refrigerant::{self, Phase, PropertyError, Refrigerant};

/// Answers one property question with one line of JSON: values, or an error that names its field.
pub fn answer_property(line: &str) -> String {
    answer(line).unwrap_or_else(|error| write_error(&error))
}

fn answer(line: &str) -> Result<String, FieldError> {
    let tree = Tree::read(line)?;
    let (mut fluid, mut pressure, mut temperature, mut list) = (None, None, None, false);
    for (name, value) in object("", tree)? {
        match name.as_str() {
            "refrigerant" => fluid = read_refrigerant("refrigerant", value)?,
            "pressure_kpa" => pressure = number("pressure_kpa", Kind::Pressure, value)?,
            "temperature_c" => temperature = number("temperature_c", Kind::Temperature, value)?,
            "list" => match value {
                Tree::Bool(wanted) => list = wanted,
                Tree::Null => {}
                other => return Err(wrong_type("list", "true or false", &other)),
            },
            _ => return Err(unknown(&name, &["refrigerant", "pressure_kpa", "temperature_c", "list"])),
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

fn state(fluid: &Refrigerant<'_>, p: Pressure, t: Temperature) -> Result<String, FieldError> {
    let phase = fluid.phase(p, t).map_err(by_error)?;
    let mut out = Line::ok();
    out.name("phase");
    let state = match phase {
        Phase::TwoPhase => {
            out.text("two_phase");
            return Ok(out.end());
        }
        Phase::Vapor => {
            out.text("vapor");
            fluid.vapor(p, t).map_err(by_error)?
        }
        Phase::Liquid => {
            out.text("liquid");
            fluid.liquid(p, t).map_err(by_error)?
        }
    };
    out.number("density_kg_m3", state.density.kg_per_m3());
    out.number("enthalpy_kj_kg", state.enthalpy.kilojoules_per_kg());
    out.number("entropy_kj_kg_k", state.entropy.kilojoules_per_kg_k());
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
    out.end()
}

fn about(field: &'static str) -> impl Fn(PropertyError) -> FieldError {
    move |error| FieldError { field: field.to_owned(), error: error.to_string() }
}

fn by_error(error: PropertyError) -> FieldError {
    let field = match error {
        PropertyError::Pressure { .. } => "pressure_kpa",
        _ => "temperature_c",
    };
    about(field)(error)
}
