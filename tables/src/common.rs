//! Saturation of a few common refrigerants by three numbers a curve, where whole tables would be too much to link.

use crate::compile::Compiled;
use crate::linear::least_squares;
use rimewise::quantity::Temperature;
use rimewise::refrigerant::Refrigerant;
use std::fmt::Write as _;

/// What small machines hold, one of each group whose pressures lie within two or three kelvin of each other (common
/// practice).
const COMMON: [&str; 9] = ["R22", "R134a", "R290", "R404A", "R407C", "R410A", "R448A", "R454C", "R600a"];
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
        let mut points = [Vec::new(), Vec::new()];
        for i in 0..=55 {
            let dew = Temperature::from_celsius(
                (RANGE_C[0] + (RANGE_C[1] - RANGE_C[0]) * f64::from(i) / 55.0) as f32,
            );
            let pressure = table.dew_pressure(dew).map_err(|e| format!("{name}: {e}"))?;
            let bubble = table.bubble_temperature(pressure).map_err(|e| format!("{name}: {e}"))?;
            let (dew, bubble) = (f64::from(dew.kelvins()), f64::from(bubble.kelvins()));
            let ln = libm::log(f64::from(pressure.pascals()));
            points[0].push((dew, ln));
            points[1].push((0.5 * (dew + bubble), ln));
        }
        let [(dew, dew_error), (middle, middle_error)] = points.map(|points| fit(&points));
        let _ = writeln!(rows, "    // Worst {:.2} K.", dew_error.max(middle_error));
        let _ = writeln!(rows, "    Approximate::new(\"{name}\", {}, {}),", numbers(&dew), numbers(&middle));
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
    // As many digits as the f32 keeps.
    let [a, b, c] = all.map(|x| (libm::round(x * 1e4) / 1e4) as f32);
    format!("[{a:?}, {b:?}, {c:?}]")
}

/// Fits `T = b / (a - ln p) + c` (Antoine 1888) and tells its worst error, K.
///
/// Multiplied out, `T ln p = a T + c ln p - (b + a c)` is linear in `a`, `c` and the rest.
fn fit(points: &[(f64, f64)]) -> ([f64; 3], f64) {
    let rows: Vec<Vec<f64>> = points.iter().map(|(k, ln)| vec![*k, *ln, 1.0]).collect();
    let target: Vec<f64> = points.iter().map(|(k, ln)| k * ln).collect();
    let found = least_squares(&rows, &target, &vec![1.0; rows.len()]);
    let (a, c, rest) = (found[0], found[1], found[2]);
    let b = -(rest + a * c);
    let worst = points.iter().map(|(k, ln)| (b / (a - ln) + c - k).abs()).fold(0.0, f64::max);
    ([a, b, c], worst)
}
