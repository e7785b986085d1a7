//! Property questions, answered line by line.
//!
//! `properties` answers a few built-in questions; `properties FILE` or `properties -` reads JSON Lines such as
//! `{"refrigerant":"R448A","pressure_kpa":300.0}` and writes one JSON line each. `properties chart R404A --from -40
//! --to 60 --step 5 --units psi,F` prints a pressure-temperature chart.

mod chart;
mod common;

use common::{Input, arguments, lines};
use rimewise::json::{answer_property, write_error};
use std::process::ExitCode;

const BUILT_IN: &str = r#"{"refrigerant":"R448A","pressure_kpa":300.0}
{"refrigerant":"R448A","temperature_c":-10.0}
{"refrigerant":"R448A","pressure_kpa":300.0,"temperature_c":20.0}
{"refrigerant":"R448A","pressure_kpa":300.0,"enthalpy_kj_kg":255.0}
{"refrigerant":"propane"}
{"list":true}
"#;

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    if words.first().is_some_and(|word| word == "chart") {
        return match chart::chart(&words[1..]) {
            Ok(text) => {
                common::print(text.trim_end());
                ExitCode::SUCCESS
            }
            Err(message) => {
                eprintln!("properties: {message}");
                eprintln!("{}", chart::USAGE);
                ExitCode::from(2)
            }
        };
    }
    let options = arguments(std::env::args().skip(1));
    let input = options.and_then(|options| match options.input {
        Input::BuiltIn => Ok(BUILT_IN.as_bytes().to_vec()),
        given => given.read(),
    });
    let input = match input {
        Ok(input) => input,
        Err(message) => {
            eprintln!("properties: {message}");
            eprintln!("usage: properties [FILE | -]");
            return ExitCode::from(2);
        }
    };
    let lines = lines(&input);
    if lines.is_empty() {
        eprintln!("properties: the input holds no question");
    }
    for line in lines {
        let text = line.map_or_else(|error| write_error(&error), |line| answer_property(&line));
        if !common::print(&text) {
            break;
        }
    }
    ExitCode::SUCCESS
}
