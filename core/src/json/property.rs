//! Property questions, one JSON object a line.

use super::line::{Answered, Object, line, object};
use super::read::{FieldError, number, object as members, read_refrigerant, unknown, wrong_type};
use super::tree::Tree;
use crate::field::{Kind, Unit};
use crate::invalid::{ErrorCode, Facts};
use crate::quantity::{Enthalpy, Entropy, Pressure, Temperature};
use crate::refrigerant::{self, GwpReport, Phase, PropertyError, Refrigerant};
use crate::text::ValueType;

object! {
    /// Bubble and dew temperature at a pressure.
    SaturationTemperatures {
        /// Always `ok`.
        status: Answered,
        /// Bubble temperature, degC.
        bubble_c: f32,
        /// Dew temperature, degC.
        dew_c: f32,
    }
}

object! {
    /// Bubble and dew pressure at a temperature.
    SaturationPressures {
        /// Always `ok`.
        status: Answered,
        /// Bubble pressure, kPa absolute.
        bubble_kpa: f32,
        /// Dew pressure, kPa absolute.
        dew_kpa: f32,
    }
}

object! {
    /// The state at a pressure and a temperature, outside the two-phase region.
    SinglePhaseState {
        /// Always `ok`.
        status: Answered,
        /// The phase.
        phase: &'static str,
        /// Density, kg/m3.
        density_kg_m3: f32,
        /// Specific enthalpy, kJ/kg, IIR reference state.
        enthalpy_kj_kg: f32,
        /// Specific entropy, kJ/(kg K), IIR reference state.
        entropy_kj_kg_k: f32,
        /// Isobaric heat capacity, kJ/(kg K); null near the critical point.
        heat_capacity_kj_kg_k: Option<f32>,
        /// Speed of sound, m/s; null where it is not known.
        speed_of_sound_m_s: Option<f32>,
    }
}

object! {
    /// The state at a pressure and an enthalpy or an entropy.
    HeatState {
        /// Always `ok`.
        status: Answered,
        /// The phase.
        phase: &'static str,
        /// The temperature, degC.
        temperature_c: f32,
        /// The share of vapor by mass between bubble and dew; null outside.
        quality: Option<f32>,
    }
}

object! {
    /// A pressure and a temperature between bubble and dew: they do not fix the state.
    TwoPhaseState {
        /// Always `ok`.
        status: Answered,
        /// The phase.
        phase: &'static str,
    }
}

object! {
    /// A component of a refrigerant.
    Component {
        /// Its designation.
        component: String,
        /// Its share by mass, percent.
        mass_percent: f32,
    }
}

object! {
    /// What is known of a refrigerant.
    RefrigerantFacts {
        /// Always `ok`.
        status: Answered,
        /// The designation as the library writes it.
        designation: String,
        /// Components by mass.
        composition: Vec<Component>,
        /// ASHRAE 34 safety class; null where no source is at hand, and cautions then assume flammable and toxic.
        safety_class: Option<&'static str>,
        /// Critical temperature, degC.
        critical_c: f32,
        /// Critical pressure, kPa absolute.
        critical_kpa: f32,
        /// Molar mass, g/mol.
        molar_mass_g_mol: f32,
        /// Whether a pair of components has only estimated mixing parameters.
        estimated_pair: bool,
        /// Standard uncertainty of the saturation temperature by the model itself, K.
        saturation_uncertainty_k: f32,
        /// Global warming potential over 100 years, by the fifth assessment report; null where there is no source.
        gwp_ar5: Option<f32>,
        /// The same by the sixth assessment report.
        gwp_ar6: Option<f32>,
        /// Ozone depletion potential; null where there is no source.
        odp: Option<f32>,
        /// Life in the atmosphere, years; null where there is no source.
        atmospheric_life_years: Option<f32>,
    }
}

object! {
    /// Every refrigerant there is a table for.
    RefrigerantList {
        /// Always `ok`.
        status: Answered,
        /// The designations.
        refrigerants: Vec<&'static str>,
    }
}

/// The objects of the answers to property questions.
pub(super) const OBJECTS: &[Object] = &[
    SaturationTemperatures::TABLE,
    SaturationPressures::TABLE,
    SinglePhaseState::TABLE,
    HeatState::TABLE,
    TwoPhaseState::TABLE,
    Component::TABLE,
    RefrigerantFacts::TABLE,
    RefrigerantList::TABLE,
];

/// Answers one property question with one line of JSON: values, or an error that names its field.
pub fn answer_property(question: &str) -> String {
    ask(question).unwrap_or_else(|error| super::write_error(&error))
}

/// The fields of a question.
const FIELDS: [&str; 6] =
    ["refrigerant", "pressure_kpa", "temperature_c", "enthalpy_kj_kg", "entropy_kj_kg_k", "list"];

fn ask(question: &str) -> Result<String, FieldError> {
    let tree = Tree::read(question)?;
    let (mut fluid, mut pressure, mut temperature, mut list) = (None, None, None, false);
    let (mut enthalpy, mut entropy) = (None, None);
    for (name, value) in members("", tree)? {
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
                other => return Err(wrong_type("list", ValueType::Boolean, &other)),
            },
            _ => return Err(unknown(&name, &FIELDS)),
        }
    }
    if list {
        let refrigerants = refrigerant::data::ALL.iter().map(|r| r.designation()).collect();
        return Ok(line(&RefrigerantList { status: Answered, refrigerants }));
    }
    let Some(fluid) = fluid else {
        return Err(FieldError::of("refrigerant", ErrorCode::Missing));
    };
    let pressure = pressure.map(Pressure::from_kilopascals);
    let temperature = temperature.map(Temperature::from_celsius);
    if enthalpy.is_some() || entropy.is_some() {
        return from_heat(fluid, pressure, temperature, enthalpy, entropy);
    }
    Ok(match (pressure, temperature) {
        (None, None) => line(&identity(fluid)),
        (Some(p), None) => {
            let at = |error| refused(error, Some(p), None);
            line(&SaturationTemperatures {
                status: Answered,
                bubble_c: fluid.bubble_temperature(p).map_err(at)?.celsius(),
                dew_c: fluid.dew_temperature(p).map_err(at)?.celsius(),
            })
        }
        (None, Some(t)) => {
            let at = |error| refused(error, None, Some(t));
            line(&SaturationPressures {
                status: Answered,
                bubble_kpa: fluid.bubble_pressure(t).map_err(at)?.kilopascals(),
                dew_kpa: fluid.dew_pressure(t).map_err(at)?.kilopascals(),
            })
        }
        (Some(p), Some(t)) => {
            let at = |error| refused(error, Some(p), Some(t));
            let phase = fluid.phase(p, t).map_err(at)?;
            let state = match phase {
                Phase::TwoPhase => {
                    return Ok(line(&TwoPhaseState { status: Answered, phase: phase.name() }));
                }
                Phase::Vapor => fluid.vapor(p, t),
                Phase::Liquid => fluid.liquid(p, t),
            };
            let state = state.map_err(at)?;
            // Near the critical point there is a state but no heat capacity worth telling.
            let response =
                if phase == Phase::Vapor { fluid.vapor_response(p, t) } else { fluid.liquid_response(p, t) }
                    .ok();
            line(&SinglePhaseState {
                status: Answered,
                phase: phase.name(),
                density_kg_m3: state.density.kg_per_m3(),
                enthalpy_kj_kg: state.enthalpy.kilojoules_per_kg(),
                entropy_kj_kg_k: state.entropy.kilojoules_per_kg_k(),
                heat_capacity_kj_kg_k: response.map(|r| r.heat_capacity_j_kg_k / 1000.0),
                speed_of_sound_m_s: response.and_then(|r| r.speed_of_sound_m_s),
            })
        }
    })
}

/// Answers with phase, temperature and quality at a pressure and either an enthalpy or an entropy.
fn from_heat(
    fluid: &Refrigerant<'_>,
    pressure: Option<Pressure>,
    temperature: Option<Temperature>,
    enthalpy: Option<f32>,
    entropy: Option<f32>,
) -> Result<String, FieldError> {
    let Some(p) = pressure else { return Err(FieldError::of("pressure_kpa", ErrorCode::Missing)) };
    if temperature.is_some() {
        return Err(FieldError::of("temperature_c", ErrorCode::NotUsable));
    }
    let about = |field: &'static str| {
        move |error| {
            let refused = refused(error, Some(p), None);
            let pressure =
                matches!(error, PropertyError::Pressure { .. } | PropertyError::Transcritical { .. });
            if pressure { refused } else { FieldError { field: field.to_owned(), ..refused } }
        }
    };
    let found = match (enthalpy, entropy) {
        (Some(h), None) => {
            fluid.at_enthalpy(p, Enthalpy::from_joules_per_kg(1000.0 * h)).map_err(about("enthalpy_kj_kg"))?
        }
        (None, Some(s)) => fluid
            .at_entropy(p, Entropy::from_joules_per_kg_k(1000.0 * s))
            .map_err(about("entropy_kj_kg_k"))?,
        _ => return Err(FieldError::of("entropy_kj_kg_k", ErrorCode::NotUsable)),
    };
    Ok(line(&HeatState {
        status: Answered,
        phase: found.phase.name(),
        temperature_c: found.temperature.celsius(),
        quality: found.quality,
    }))
}

fn identity(fluid: &Refrigerant<'_>) -> RefrigerantFacts {
    let composition = fluid.composition().map(|part| {
        // Compositions are published to a tenth of a mass percent or so; the fraction's binary32 rounding is not shown.
        let hundredths = libm::roundf(part.mass_fraction * 1.0e4);
        Component { component: part.name.to_owned(), mass_percent: hundredths / 100.0 }
    });
    RefrigerantFacts {
        status: Answered,
        designation: fluid.designation().to_owned(),
        composition: composition.collect(),
        safety_class: fluid.safety_class().map(|class| class.name()),
        critical_c: fluid.critical_temperature().celsius(),
        critical_kpa: fluid.critical_pressure().kilopascals(),
        molar_mass_g_mol: fluid.molar_mass(),
        estimated_pair: fluid.estimated_pair(),
        saturation_uncertainty_k: fluid.saturation_uncertainty().kelvins(),
        gwp_ar5: fluid.global_warming_potential(GwpReport::Fifth),
        gwp_ar6: fluid.global_warming_potential(GwpReport::Sixth),
        odp: fluid.ozone_depletion_potential(),
        atmospheric_life_years: fluid.atmospheric_life_years(),
    }
}

/// The error of a question about a state, with the field that it is about: where both were given, the one that lies
/// outside.
pub(super) fn refused(error: PropertyError, p: Option<Pressure>, t: Option<Temperature>) -> FieldError {
    let (kpa, celsius) = (p.map(Pressure::kilopascals), t.map(Temperature::celsius));
    let at_pressure = |facts| FieldError::with("pressure_kpa", facts);
    let at_temperature = |facts| FieldError::with("temperature_c", facts);
    let either = |facts| if t.is_some() { at_temperature(facts) } else { at_pressure(facts) };
    match error {
        PropertyError::Pressure { min, max } => at_pressure(Facts {
            code: ErrorCode::OutsideTable,
            value: kpa,
            min: Some(min.kilopascals()),
            max: Some(max.kilopascals()),
            unit: Unit::Kpa,
        }),
        PropertyError::Temperature { min, max } => at_temperature(Facts {
            code: ErrorCode::OutsideTable,
            value: celsius,
            min: Some(min.celsius()),
            max: Some(max.celsius()),
            unit: Unit::C,
        }),
        PropertyError::Transcritical { critical_temperature, critical_pressure } => match (kpa, celsius) {
            (Some(kpa), None) => at_pressure(Facts {
                code: ErrorCode::Transcritical,
                value: Some(kpa),
                min: None,
                max: Some(critical_pressure.kilopascals()),
                unit: Unit::Kpa,
            }),
            _ => at_temperature(Facts {
                code: ErrorCode::Transcritical,
                value: celsius,
                min: None,
                max: Some(critical_temperature.celsius()),
                unit: Unit::C,
            }),
        },
        PropertyError::NearCritical { critical_temperature } => either(Facts {
            code: ErrorCode::NearCritical,
            value: celsius,
            min: None,
            max: Some(critical_temperature.celsius()),
            unit: Unit::C,
        }),
        PropertyError::Glide { bubble, dew } => either(Facts {
            code: ErrorCode::BetweenBubbleAndDew,
            value: celsius,
            min: Some(bubble.celsius()),
            max: Some(dew.celsius()),
            unit: Unit::C,
        }),
        PropertyError::TwoPhase => either(Facts::of(ErrorCode::TwoPhase)),
        PropertyError::OtherPhase { .. } => either(Facts::of(ErrorCode::OtherPhase)),
        PropertyError::NotANumber => either(Facts::of(ErrorCode::NotFinite)),
    }
}
