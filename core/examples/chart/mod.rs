//! A pressure-temperature chart as text, in the reader's units and range.

use rimewise::quantity::{Atmosphere, Pressure, Temperature};
use rimewise::refrigerant::{Refrigerant, find};
use std::fmt::Write as _;

/// How to call it.
pub(crate) const USAGE: &str = "usage: properties chart REFRIGERANT [--from T] [--to T] [--step T] \
     [--units psi,F | bar,C | kPa,C] [--absolute] [--altitude METRES]";
/// Lines a chart has at most.
const LONGEST: f32 = 1000.0;

/// A unit of pressure with its name and its reading, gauge (against the air) and absolute.
struct PressureUnit {
    name: &'static str,
    digits: usize,
    gauge: fn(Pressure, Atmosphere) -> f32,
    absolute: fn(Pressure) -> f32,
}

const UNITS: [PressureUnit; 3] = [
    PressureUnit { name: "psi", digits: 1, gauge: Pressure::psi_gauge, absolute: Pressure::psi },
    PressureUnit { name: "bar", digits: 2, gauge: Pressure::bar_gauge, absolute: Pressure::bar },
    PressureUnit {
        name: "kPa",
        digits: 0,
        gauge: Pressure::kilopascals_gauge,
        absolute: Pressure::kilopascals,
    },
];

/// Writes the chart that the words after `chart` ask for; the error is a message for people.
pub(crate) fn chart(words: &[String]) -> Result<String, String> {
    let mut name = None;
    let mut numbers: [Option<f32>; 3] = [None; 3];
    let mut unit = &UNITS[1];
    let mut fahrenheit = false;
    let mut absolute = false;
    let mut air = Atmosphere::SEA_LEVEL;
    let mut words = words.iter();
    while let Some(word) = words.next() {
        let mut number = |what: &str| {
            let value = words.next().and_then(|w| w.parse::<f32>().ok()).filter(|v| v.is_finite());
            value.ok_or_else(|| format!("{what} takes a number"))
        };
        match word.as_str() {
            "--from" => numbers[0] = Some(number("--from")?),
            "--to" => numbers[1] = Some(number("--to")?),
            "--step" => numbers[2] = Some(number("--step")?),
            "--altitude" => {
                let metres = number("--altitude")?;
                if !(-500.0..=11_000.0).contains(&metres) {
                    return Err("--altitude takes metres, -500 to 11000".to_owned());
                }
                air = Atmosphere::at_altitude_m(metres);
            }
            "--absolute" => absolute = true,
            "--units" => {
                let value = words.next().map_or("", String::as_str);
                let (pressure, temperature) = value.split_once(',').unwrap_or((value, ""));
                unit = UNITS.iter().find(|u| u.name.eq_ignore_ascii_case(pressure)).ok_or_else(|| {
                    format!("--units takes psi, bar or kPa before the comma, not `{pressure}`")
                })?;
                fahrenheit = match temperature {
                    "F" | "f" => true,
                    "C" | "c" => false,
                    other => return Err(format!("--units takes C or F after the comma, not `{other}`")),
                };
            }
            other if other.starts_with("--") => return Err(format!("{other} is not an option")),
            other if name.is_none() => name = Some(other),
            other => return Err(format!("one refrigerant at a time, {other} is a second one")),
        }
    }
    let name = name.ok_or("a chart needs a refrigerant")?;
    let refrigerant = find(name).ok_or_else(|| format!("no refrigerant `{name}`"))?;
    let defaults = if fahrenheit { [-40.0, 140.0, 5.0] } else { [-40.0, 60.0, 5.0] };
    let [from, to, step] = [0, 1, 2].map(|i| numbers[i].unwrap_or(defaults[i]));
    if step <= 0.0 || from > to || (to - from) / step > LONGEST {
        return Err(format!(
            "--from {from} --to {to} --step {step}: from must not be above to, 1 to {LONGEST} steps"
        ));
    }
    let scale = Scale { unit, fahrenheit, absolute, air };
    Ok(write(refrigerant, from, to, step, &scale))
}

/// The units of one chart.
struct Scale<'u> {
    unit: &'u PressureUnit,
    fahrenheit: bool,
    absolute: bool,
    air: Atmosphere,
}

fn write(refrigerant: &Refrigerant<'_>, from: f32, to: f32, step: f32, scale: &Scale<'_>) -> String {
    let read = |p: Pressure| {
        if scale.absolute { (scale.unit.absolute)(p) } else { (scale.unit.gauge)(p, scale.air) }
    };
    let kind = if scale.absolute { "absolute" } else { "gauge" };
    let degree = if scale.fahrenheit { "degF" } else { "degC" };
    let mut text = refrigerant.designation().to_owned();
    if let Some(class) = refrigerant.safety_class() {
        let _ = write!(text, ", safety class {}", class.name());
    }
    if refrigerant.estimated_pair() {
        text.push_str(", mixture partly estimated");
    }
    let glides = refrigerant.glide().kelvins() > 0.0;
    let _ = writeln!(text, "; pressure {} {kind}", scale.unit.name);
    if !scale.absolute {
        let _ = writeln!(
            text,
            "air pressure {:.1} kPa; below zero is vacuum",
            scale.air.pressure().kilopascals()
        );
    }
    let _ = match glides {
        true => writeln!(text, "{degree:>8} {:>10} {:>10}", "bubble", "dew"),
        false => writeln!(text, "{degree:>8} {:>10}", "saturated"),
    };
    let count = ((to - from) / step + 1e-3) as u32;
    for k in 0..=count {
        let at = from + step * k as f32;
        let t =
            if scale.fahrenheit { Temperature::from_fahrenheit(at) } else { Temperature::from_celsius(at) };
        let column = |p: Result<Pressure, _>| match p {
            Ok(p) => format!("{:>10.*}", scale.unit.digits, read(p)),
            Err(_) => format!("{:>10}", "-"),
        };
        let _ = write!(text, "{at:>8.1} {}", column(refrigerant.bubble_pressure(t)));
        if glides {
            let _ = write!(text, " {}", column(refrigerant.dew_pressure(t)));
        }
        text.push('\n');
    }
    let (low, high) = refrigerant.temperature_range();
    let _ = writeln!(
        text,
        "table from {:.1} to {:.1} degC; critical point {:.2} degC, {:.0} kPa absolute",
        low.celsius(),
        high.celsius(),
        refrigerant.critical_temperature().celsius(),
        refrigerant.critical_pressure().kilopascals()
    );
    text
}
