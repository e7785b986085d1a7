//! Fits the pairs that have no published parameters to published bubble and dew points at one atmosphere.
//!
//! One gamma_T a family of pairs, found by damped Gauss-Newton steps on all families at once. It leans towards where it
//! starts, and a point far off the rest counts less (Huber 1964), for published points of old blends disagree by a kelvin
//! and more. Every blend with estimated pairs is then predicted from a fit made without it.

use crate::data::{Blend, FitResult, Library, PublishedPoint};
use crate::linear::least_squares;
use crate::mixture::Mixture;
use crate::saturation::{Kind, at_pressure};
use crate::substance::mole_fractions;
use std::collections::BTreeMap;

/// One standard atmosphere, Pa.
const ATMOSPHERE: f64 = 101_325.0;
/// How far gamma_T may be from its start before the lean costs as much as one point a kelvin off.
///
/// The spread of the published gamma_T in `pairs.json` about their mean.
const LEAN: f64 = 0.05;
/// Residual, K, beyond which a point counts less; judged.
const HUBER_K: f64 = 0.4;
/// Step of gamma_T for differences.
const STEP: f64 = 1e-4;

/// Finds bubble and dew temperature, K, of a blend at one atmosphere by the library's pairs.
pub fn boiling(library: &Library, blend: &Blend) -> Result<[f64; 2], String> {
    let names: Vec<&str> = blend.mass_percent.keys().map(String::as_str).collect();
    let mixture = Mixture::blend(library, &names)?;
    let z = mole_fractions(blend, &mixture)?.0;
    let (bubble, dew) = at_pressure(&mixture, &z, ATMOSPHERE)
        .ok_or_else(|| format!("{}: no boiling point found", blend.designation))?;
    Ok([bubble.t, dew.t])
}

/// A measured point of saturation.
#[derive(Clone, Copy, Debug)]
pub struct Measured {
    /// The curve it lies on.
    pub kind: Kind,
    /// Pressure, Pa.
    pub p: f64,
    /// Temperature, K.
    pub t: f64,
}

/// Tunes the estimated pairs of a blend, all by one factor, to measured points; tells what is left, K (root mean square).
///
/// Errors: no estimated pair to tune, no saturation found at a pressure.
pub fn tune(library: &mut Library, blend: &Blend, measured: &[Measured]) -> Result<f64, String> {
    let names: Vec<&str> = blend.mass_percent.keys().map(String::as_str).collect();
    if Mixture::blend(library, &names)?.estimated.is_empty() {
        return Err(format!("{}: every pair has published parameters, nothing to tune", blend.designation));
    }
    let errors = |library: &Library| -> Result<Vec<f64>, String> {
        let mixture = Mixture::blend(library, &names)?;
        let z = mole_fractions(blend, &mixture)?.0;
        let one = |m: &Measured| {
            let (bubble, dew) = at_pressure(&mixture, &z, m.p)?;
            Some(if m.kind == Kind::Dew { dew.t - m.t } else { bubble.t - m.t })
        };
        let missing = || format!("{}: no saturation at a measured pressure", blend.designation);
        measured.iter().map(|m| one(m).ok_or_else(missing)).collect()
    };
    for _ in 0..10 {
        let here = errors(library)?;
        library.tuning += STEP;
        let there = errors(library)?;
        library.tuning -= STEP;
        let slopes: Vec<f64> = there.iter().zip(&here).map(|(t, h)| (t - h) / STEP).collect();
        let square: f64 = slopes.iter().map(|s| s * s).sum();
        let step = -slopes.iter().zip(&here).map(|(s, h)| s * h).sum::<f64>() / square.max(1e-12);
        library.tuning = (library.tuning + step.clamp(-0.02, 0.02)).clamp(0.8, 1.2);
        if step.abs() < 1e-7 {
            break;
        }
    }
    let left = errors(library)?;
    Ok(libm::sqrt(left.iter().map(|e| e * e).sum::<f64>() / left.len().max(1) as f64))
}

/// The published point of the standard for a blend: the first of its rows.
fn standard<'l>(library: &'l Library, designation: &str) -> Option<&'l PublishedPoint> {
    library.published.points.iter().find(|p| p.refrigerant == designation && p.dew_c.is_some())
}

/// The errors of a blend at one atmosphere, K: bubble, dew.
fn errors(library: &Library, designation: &str) -> Result<[f64; 2], String> {
    let missing = || format!("{designation}: no published bubble and dew point");
    let blend = library.blends.iter().find(|b| b.designation == designation).ok_or_else(missing)?;
    let point = standard(library, designation).ok_or_else(missing)?;
    let dew_c = point.dew_c.ok_or_else(missing)?;
    let [bubble, dew] = boiling(library, blend)?;
    Ok([bubble - 273.15 - point.bubble_c, dew - 273.15 - dew_c])
}

/// The families that are fitted: name, start, blends.
fn families(library: &Library) -> Vec<(String, f64, Vec<String>)> {
    let families = library.pairs.estimated.iter();
    families.filter_map(|f| Some((f.fit.clone()?, f.start.unwrap_or(1.0), f.fitted_to.clone()))).collect()
}

/// Fits every family without one blend, and leaves the values in the library.
fn fit_without(library: &mut Library, left_out: Option<&str>) -> Result<(), String> {
    let families = families(library);
    let mut blends: Vec<String> = families.iter().flat_map(|f| f.2.clone()).collect();
    blends.sort();
    blends.dedup();
    blends.retain(|b| Some(b.as_str()) != left_out);
    for (name, start, _) in &families {
        library.fitted.gamma_t.insert(name.clone(), *start);
    }
    let all = |library: &Library| -> Result<Vec<f64>, String> {
        let each = blends.iter().map(|b| errors(library, b)).collect::<Result<Vec<_>, _>>()?;
        Ok(each.concat())
    };
    for _ in 0..12 {
        let here = all(library)?;
        let mut columns = Vec::new();
        for (name, _, _) in &families {
            let before = library.fitted.gamma_t[name];
            library.fitted.gamma_t.insert(name.clone(), before + STEP);
            let there = all(library)?;
            library.fitted.gamma_t.insert(name.clone(), before);
            columns.push(there.iter().zip(&here).map(|(t, h)| (t - h) / STEP).collect::<Vec<_>>());
        }
        let mut rows: Vec<Vec<f64>> =
            (0..here.len()).map(|i| columns.iter().map(|c| c[i]).collect()).collect();
        let mut target: Vec<f64> = here.iter().map(|e| -e).collect();
        let mut weight: Vec<f64> = here.iter().map(|e| libm::sqrt((HUBER_K / e.abs()).min(1.0))).collect();
        for (k, (name, start, _)) in families.iter().enumerate() {
            let mut row = vec![0.0; families.len()];
            row[k] = 1.0 / LEAN;
            rows.push(row);
            target.push((start - library.fitted.gamma_t[name]) / LEAN);
            weight.push(1.0);
        }
        let step = least_squares(&rows, &target, &weight);
        for ((name, _, _), step) in families.iter().zip(&step) {
            if let Some(value) = library.fitted.gamma_t.get_mut(name) {
                *value += step.clamp(-0.02, 0.02);
            }
        }
        if step.iter().all(|s| s.abs() < 1e-7) {
            break;
        }
    }
    Ok(())
}

/// Fits all families, and predicts every blend with estimated pairs without its own published point.
pub fn fit(library: &Library) -> Result<FitResult, String> {
    let mut library = library.clone();
    library.fitted.gamma_t.clear();
    let mut left_out = BTreeMap::new();
    let fitted_to: Vec<String> = families(&library).into_iter().flat_map(|f| f.2).collect();
    fit_without(&mut library, None)?;
    let mut gamma_t = library.fitted.gamma_t.clone();
    gamma_t.values_mut().for_each(|v| *v = libm::round(*v * 1e5) / 1e5);
    library.fitted.gamma_t = gamma_t.clone();
    let complete = library.clone();
    for blend in &complete.blends {
        let names: Vec<&str> = blend.mass_percent.keys().map(String::as_str).collect();
        let designation = &blend.designation;
        if Mixture::blend(&complete, &names)?.estimated.is_empty()
            || standard(&complete, designation).is_none()
        {
            continue;
        }
        let found = if fitted_to.contains(designation) {
            fit_without(&mut library, Some(designation))?;
            errors(&library, designation)?
        } else {
            errors(&complete, designation)?
        };
        left_out.insert(designation.clone(), found.map(|e| libm::round(e * 100.0) / 100.0));
    }
    let written_by = "cargo run --release -p rimewise-tables -- fit".to_string();
    Ok(FitResult { written_by, gamma_t, left_out })
}
