//! Saturation of a few common refrigerants by three numbers a curve, where whole tables would be too much to link.

use crate::compile::Compiled;
use crate::linear::least_squares;
use rimewise::quantity::{Pressure, Temperature};
use rimewise::refrigerant::Refrigerant;
use std::fmt::Write as _;

/// What small machines hold, one of each group whose pressures lie within a kelvin or two of each other (common
/// practice).
const COMMON: [&str; 12] = [
    "R22", "R134a", "R290", "R404A", "R407C", "R410A", "R448A", "R452A", "R454B", "R454C", "R600a", "R1234yf",
];
/// The range of the fit, degC: what evaporators and condensers of small machines reach.
const RANGE_C: [f64; 2] = [-45.0, 60.0];

/// Writes the numbers as a module of the library's source.
pub fn module(all: &[Compiled]) -> Result<String, String> {
    let mut rows = String::new();
    for name in COMMON {
        let compiled = all
            .iter()
            .find(|c| c.substance.designation == name)
            .ok_or_else(|| format!("{name}: not among the refrigerants"))?;
        let table = Refrigerant::from_bytes(&compiled.bytes).map_err(|e| format!("{name}: {e}"))?;
        let (dew, dew_error) =
            fit(|k| table.dew_pressure(k).ok()).ok_or_else(|| format!("{name}: no dew curve"))?;
        let (bubble, bubble_error) =
            fit(|k| table.bubble_pressure(k).ok()).ok_or_else(|| format!("{name}: no bubble curve"))?;
        let _ = writeln!(rows, "    // Worst {:.2} K.", dew_error.max(bubble_error));
        let _ = writeln!(rows, "    Approximate::new(\"{name}\", {}, {}),", numbers(&dew), numbers(&bubble));
    }
    Ok(format!(
        "//! Saturation of common refrigerants from {} to {} degC. Written by `cargo run --release -p \
         rimewise-tables`; do not edit.\n\n\
         use crate::refrigerant::approximate::Approximate;\n\n\
         /// One of each group whose pressures lie close to each other.\n\
         #[rustfmt::skip]\n\
         pub(crate) static COMMON: [Approximate; {}] = [\n{rows}];\n",
        RANGE_C[0],
        RANGE_C[1],
        COMMON.len()
    ))
}

fn numbers(all: &[f64; 3]) -> String {
    format!("[{:.4}, {:.3}, {:.3}]", all[0], all[1], all[2])
}

/// Fits `T = b / (a - ln p) + c` (Antoine 1888) and tells its worst error, K.
///
/// Multiplied out, `T ln p = a T + c ln p - (b + a c)` is linear in `a`, `c` and the rest.
fn fit(pressure: impl Fn(Temperature) -> Option<Pressure>) -> Option<([f64; 3], f64)> {
    let mut points = Vec::new();
    for i in 0..=55 {
        let celsius = RANGE_C[0] + (RANGE_C[1] - RANGE_C[0]) * f64::from(i) / 55.0;
        let pa = f64::from(pressure(Temperature::from_celsius(celsius as f32))?.pascals());
        points.push((celsius + 273.15, libm::log(pa)));
    }
    let rows: Vec<Vec<f64>> = points.iter().map(|(k, ln)| vec![*k, *ln, 1.0]).collect();
    let target: Vec<f64> = points.iter().map(|(k, ln)| k * ln).collect();
    let [a, c, rest] = least_squares(&rows, &target, &vec![1.0; rows.len()])[..] else { return None };
    let b = -(rest + a * c);
    let worst = points.iter().map(|(k, ln)| (b / (a - ln) + c - k).abs()).fold(0.0, f64::max);
    Some(([a, b, c], worst))
}
