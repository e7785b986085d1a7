//! What the examples share: their arguments, their lines of input, and units for people.

#[allow(dead_code)]
pub(crate) mod words;

use rimewise::estimate::Estimate;
use rimewise::invalid::ErrorCode;
use rimewise::json::FieldError;
use rimewise::quantity::{Atmosphere, Pressure, Temperature};
use std::io::{Read, Write};

/// Where the input comes from.
#[derive(Debug, PartialEq, Eq)]
pub(crate) enum Input {
    /// The example's own.
    BuiltIn,
    /// Standard input.
    Standard,
    /// A file.
    File(String),
}

impl Input {
    /// Reads all of it.
    pub(crate) fn read(&self) -> Result<Vec<u8>, String> {
        match self {
            Self::BuiltIn => Ok(Vec::new()),
            Self::Standard => {
                let mut bytes = Vec::new();
                std::io::stdin().read_to_end(&mut bytes).map_err(|e| format!("standard input: {e}"))?;
                Ok(bytes)
            }
            Self::File(path) => std::fs::read(path).map_err(|e| format!("{path}: {e}")),
        }
    }
}

/// What the command line asks for.
#[derive(Debug)]
pub(crate) struct Options {
    /// Where the input comes from.
    pub(crate) input: Input,
    /// Whether to write JSON Lines.
    pub(crate) json: bool,
    /// The units for people.
    pub(crate) units: Units,
    /// Whether to play a visit step by step.
    pub(crate) ask: bool,
    /// Whether to print everything.
    pub(crate) all: bool,
    /// Where to leave a page behind.
    pub(crate) report: Option<String>,
}

/// Reads the command line; the error is a message for people.
pub(crate) fn arguments(args: impl Iterator<Item = String>) -> Result<Options, String> {
    let mut options = Options {
        input: Input::BuiltIn,
        json: false,
        units: Units { us: false, gauge: false, atmosphere: Atmosphere::SEA_LEVEL },
        ask: false,
        all: false,
        report: None,
    };
    let mut args = args;
    while let Some(arg) = args.next() {
        match arg.as_str() {
            "--json" => options.json = true,
            "--us" => options.units.us = true,
            "--gauge" => options.units.gauge = true,
            "--ask" => options.ask = true,
            "--all" => options.all = true,
            "--report" => {
                let path = args.next().filter(|p| p.ends_with(".txt") || p.ends_with(".html"));
                options.report = Some(path.ok_or("--report takes FILE.txt or FILE.html")?);
            }
            "--altitude" => {
                let metres = args.next().and_then(|m| m.parse::<f32>().ok());
                let metres = metres.filter(|m| (-500.0..=11_000.0).contains(m));
                let metres = metres.ok_or("--altitude takes metres, -500 to 11000")?;
                options.units.atmosphere = Atmosphere::at_altitude_m(metres);
            }
            other if other.starts_with("--") => return Err(format!("{other} is not an option")),
            path if options.input == Input::BuiltIn => {
                options.input = if path == "-" { Input::Standard } else { Input::File(path.to_owned()) };
            }
            other => return Err(format!("one input at a time, {other} is a second one")),
        }
    }
    Ok(options)
}

/// Splits the input into visits or questions: the whole of it where it is one JSON value, else its lines.
///
/// A byte order mark in front is skipped. Text that opens an object over several lines and holds no whole one in any
/// line is one value with a mistake in it, and gives one error, not one a line.
pub(crate) fn lines(input: &[u8]) -> Vec<Result<String, FieldError>> {
    let unreadable = |error: &str| Err(FieldError::of_text(ErrorCode::NotJson, error));
    let input = input.strip_prefix(b"\xef\xbb\xbf").unwrap_or(input);
    if input.starts_with(b"\xff\xfe") || input.starts_with(b"\xfe\xff") {
        return vec![unreadable("it is UTF-16, save it as UTF-8")];
    }
    if let Ok(whole) = std::str::from_utf8(input)
        && (is_json(whole) || is_one_broken_object(whole))
    {
        return vec![Ok(whole.to_owned())];
    }
    input
        .split(|byte| *byte == b'\n')
        .filter(|line| !line.trim_ascii().is_empty())
        .map(|line| match std::str::from_utf8(line) {
            Ok(line) => Ok(line.to_owned()),
            Err(_) => unreadable("not UTF-8"),
        })
        .collect()
}

fn is_json(text: &str) -> bool {
    serde_json::from_str::<serde::de::IgnoredAny>(text).is_ok()
}

fn is_one_broken_object(text: &str) -> bool {
    let mut lines = text.lines().map(str::trim).filter(|line| !line.is_empty());
    lines.next() == Some("{") && !lines.any(|line| line.starts_with('{') && is_json(line))
}

/// Prints a line; false where nobody reads any more.
pub(crate) fn print(text: &str) -> bool {
    writeln!(std::io::stdout(), "{text}").is_ok()
}

/// Units for people: bar and degC, with psi (gauge) and degF beside them where wanted.
#[derive(Debug)]
pub(crate) struct Units {
    /// Whether psi and degF stand beside.
    pub(crate) us: bool,
    /// Whether pressures are gauge pressures.
    pub(crate) gauge: bool,
    /// The air a gauge reads against.
    pub(crate) atmosphere: Atmosphere,
}

#[allow(dead_code)]
impl Units {
    /// What a pressure is written in.
    pub(crate) fn pressure_unit(&self) -> &'static str {
        match (self.us, self.gauge) {
            (true, _) => "psig",
            (false, true) => "bar gauge",
            (false, false) => "bar",
        }
    }
    /// A number in [`Self::pressure_unit`] from kPa absolute.
    pub(crate) fn pressure_number(&self, kpa: f32) -> f32 {
        let p = Pressure::from_kilopascals(kpa);
        match (self.us, self.gauge) {
            (true, _) => p.psi_gauge(self.atmosphere),
            (false, true) => p.bar() - self.atmosphere.pressure().bar(),
            (false, false) => p.bar(),
        }
    }
    /// kPa absolute from a number in [`Self::pressure_unit`].
    pub(crate) fn kilopascals(&self, number: f32) -> f32 {
        let air = self.atmosphere.pressure().kilopascals();
        match (self.us, self.gauge) {
            (true, _) => number * 6.894_757 + air,
            (false, true) => 100.0 * number + air,
            (false, false) => 100.0 * number,
        }
    }
    /// A pressure, from kPa absolute.
    pub(crate) fn pressure(&self, kpa: f32) -> String {
        let decimals = if self.us { 1 } else { 2 };
        format!("{:.decimals$} {}", self.pressure_number(kpa), self.pressure_unit())
    }
    /// A pressure with its uncertainty.
    pub(crate) fn pressure_pm(&self, e: Estimate) -> String {
        let (decimals, u) =
            if self.us { (1, Pressure::from_kilopascals(e.u).psi()) } else { (2, e.u / 100.0) };
        format!("{:.decimals$} +- {u:.decimals$} {}", self.pressure_number(e.value), self.pressure_unit())
    }
    /// A temperature, from degC.
    pub(crate) fn temperature(&self, c: f32) -> String {
        if self.us {
            format!("{c:.1} degC ({:.1} degF)", Temperature::from_celsius(c).fahrenheit())
        } else {
            format!("{c:.1} degC")
        }
    }
    /// A temperature with its uncertainty.
    pub(crate) fn temperature_pm(&self, e: Estimate) -> String {
        let us = if self.us {
            let f = Temperature::from_celsius(e.value).fahrenheit();
            format!(" ({f:.1} +- {:.1} degF)", 1.8 * e.u)
        } else {
            String::new()
        };
        format!("{:.1} +- {:.1} degC{us}", e.value, e.u)
    }
    /// A temperature difference with its uncertainty.
    pub(crate) fn difference_pm(&self, e: Estimate) -> String {
        let us =
            if self.us { format!(" ({:.1} +- {:.1} degF)", 1.8 * e.value, 1.8 * e.u) } else { String::new() };
        format!("{:.1} +- {:.1} K{us}", e.value, e.u)
    }
}
