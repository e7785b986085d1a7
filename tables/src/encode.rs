//! Writes a substance and its fit as the bytes of a table.

use crate::curve::Curve;
use crate::dome::{Dome, USABLE_K};
use crate::environment::Impact;
use crate::potential::Potentials;
use crate::saturation::{Kind, Specification};
use crate::substance::Substance;
use rimewise::refrigerant::SafetyClass;
use rimewise::refrigerant::table::{FIXED, MAGIC, UNKNOWN, VERSION, at, checksum};

/// Writes a u16 at an offset.
fn put_short(bytes: &mut [u8], offset: usize, v: u16) {
    bytes[offset..offset + 2].copy_from_slice(&v.to_le_bytes());
}

/// Makes the bytes of a table; the bubble curve is none where one curve serves as both.
pub fn table(
    substance: &Substance,
    dew: &Curve,
    bubble: Option<&Curve>,
    potentials: &Potentials,
    dome: Option<&Dome>,
    saturation_k: f64,
    impact: &Impact,
) -> Result<Vec<u8>, String> {
    let mut bytes = vec![0u8; FIXED];
    let (_, rho_r) = substance.reducing();
    let wet = bubble.unwrap_or(dew);
    let one_atmosphere = |kind| substance.saturated(kind, Specification::Pressure(101_325.0)).map(|s| s.t);
    let boiling = one_atmosphere(Kind::Bubble);
    let glide = match (one_atmosphere(Kind::Dew), boiling, bubble) {
        (Some(dew), Some(bubble), Some(_)) => dew - bubble,
        _ => 0.0,
    };
    let class = match &substance.safety_class {
        None => 0,
        Some(name) => SafetyClass::from_name(name).ok_or_else(|| format!("no safety class {name}"))? as u8,
    };
    let short = |v: usize| u16::try_from(v).map_err(|_| format!("{}: table too long", substance.designation));
    bytes[..4].copy_from_slice(&MAGIC);
    put_short(&mut bytes, at::VERSION, VERSION);
    let one_byte =
        |v: usize| u8::try_from(v).map_err(|_| format!("{}: too many pieces", substance.designation));
    for (curve, octaves, last) in
        [(dew, at::DEW_OCTAVES, at::DEW_LAST), (wet, at::BUBBLE_OCTAVES, at::BUBBLE_LAST)]
    {
        let words = curve.index_words().ok_or_else(|| format!("{}: cut too fine", substance.designation))?;
        put_short(&mut bytes, octaves, words[0]);
        put_short(&mut bytes, last, words[1]);
    }
    bytes[at::DEW_PIECES] = one_byte(dew.pieces.len())?;
    bytes[at::BUBBLE_PIECES] = one_byte(bubble.map_or(0, |b| b.pieces.len()))?;
    bytes[at::FLAGS] = u8::from(!substance.mixture.estimated.is_empty())
        | if bubble.is_none() { 2 } else { 0 }
        | if dome.is_none_or(|d| d.worst_k > USABLE_K) { 4 } else { 0 };
    bytes[at::SAFETY] = class;
    bytes[at::COMPONENTS] = substance.components.len() as u8;
    let mut put = |offset: usize, values: &[f64]| {
        for (i, v) in values.iter().enumerate() {
            bytes[offset + 4 * i..offset + 4 * i + 4].copy_from_slice(&(*v as f32).to_le_bytes());
        }
    };
    put(at::MOLAR_MASS, &[substance.molar_mass * 1e3]);
    put(at::CRITICAL_TEMPERATURE, &[substance.t_critical]);
    put(at::CRITICAL_PRESSURE, &[substance.p_critical]);
    put(at::NORMAL_BOILING, &[boiling.unwrap_or(substance.t_min)]);
    put(at::GLIDE, &[glide]);
    put(at::T_MIN, &[substance.t_min]);
    put(at::T_MAX, &[substance.t_max]);
    put(at::DEW_P_MIN, &[dew.range.0, dew.range.1, wet.range.0, wet.range.1]);
    put(at::GAS_CONSTANT, &[substance.mixture.gas_constant / substance.molar_mass]);
    put(at::T_CENTER, &[potentials.t_center]);
    put(at::TAU_CENTER, &[potentials.tau_center]);
    put(at::RHO_REDUCING, &[rho_r * substance.molar_mass]);
    put(at::LIQUID_CENTER, &[potentials.liquid_center]);
    put(at::DEW_SCALE, &[f64::from(dew.scale), f64::from(wet.scale)]);
    put(at::SATURATION_UNCERTAINTY, &[saturation_k]);
    for (offset, value) in [
        (at::GWP_AR5, impact.gwp_ar5),
        (at::GWP_AR6, impact.gwp_ar6),
        (at::ODP, impact.odp),
        (at::LIFE, impact.life_years),
    ] {
        put(offset, &[value.unwrap_or(f64::from(UNKNOWN))]);
    }
    if let Some(dome) = dome {
        put(at::DOME_TEMPERATURE, &dome.temperature);
        put(at::DOME_QUALITY, &dome.quality);
    }
    put(at::IDEAL, &potentials.ideal);
    put(at::VAPOR, &potentials.vapor);
    put(at::LIQUID, &potentials.liquid);
    put(at::START, &potentials.start);
    for (offset, (middle, terms)) in
        [(at::ENTHALPY_GUESS, &potentials.enthalpy_guess), (at::ENTROPY_GUESS, &potentials.entropy_guess)]
    {
        put(offset, &[*middle]);
        put(offset + 4, terms);
    }
    for piece in dew.pieces.iter().chain(bubble.iter().flat_map(|b| &b.pieces)) {
        piece.low.iter().for_each(|v| bytes.extend(v.to_le_bytes()));
        piece.high.iter().for_each(|v| bytes.extend(v.to_le_bytes()));
    }
    let text = |bytes: &mut Vec<u8>, text: &str| {
        bytes.push(text.len() as u8);
        bytes.extend(text.as_bytes());
    };
    text(&mut bytes, &substance.designation);
    for (name, fraction) in &substance.components {
        text(&mut bytes, name);
        bytes.extend((*fraction as f32).to_le_bytes());
    }
    let length = short(bytes.len())?;
    bytes[at::LENGTH..at::LENGTH + 2].copy_from_slice(&length.to_le_bytes());
    let sum = checksum(&bytes[at::FLAGS..]);
    bytes[at::CHECKSUM..at::CHECKSUM + 4].copy_from_slice(&sum.to_le_bytes());
    Ok(bytes)
}
