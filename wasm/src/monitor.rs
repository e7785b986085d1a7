//! The monitor: samples in, events out. Numbers come in as an array in the order of their names, not measured is NaN.

use crate::answer::{Answer, number};
use rimewise::field::Field;
use rimewise::monitor::{self, Sample, Settings};
use rimewise::readings::{PumpDownValve, Readings, Uncertainty};
use rimewise::refrigerant::{Refrigerant, find};
use rimewise::text::Language;
use std::fmt::Write;
use wasm_bindgen::prelude::wasm_bindgen;

/// Lists the names of a sample's numbers in their order, separated by commas.
#[wasm_bindgen(js_name = sampleFields)]
pub fn sample_fields() -> String {
    let mut names = String::new();
    for field in Sample::FIELDS {
        names.push_str(field.name);
        names.push(',');
    }
    names.pop();
    names
}

/// Watches one machine.
#[wasm_bindgen]
#[derive(Debug)]
pub struct Watch {
    monitor: monitor::Monitor,
    refrigerant: Option<&'static Refrigerant<'static>>,
}

fn known(value: f32) -> Option<f32> {
    (!value.is_nan()).then_some(value)
}

/// Writes the numbers that are there as an object.
fn numbers(fields: &[Field], values: &[Option<f32>]) -> String {
    let mut text = String::from("{");
    for (field, value) in fields.iter().zip(values) {
        let Some(value) = value else { continue };
        if text.len() > 1 {
            text.push(',');
        }
        let _ = write!(text, "\"{}\":", field.name);
        number(&mut text, *value);
    }
    text.push('}');
    text
}

/// Writes readings as an object of the contract.
fn readings(values: &Readings) -> String {
    let mut text = numbers(Readings::FIELDS, &values.numbers());
    let mut add = |name: &str, choice: &str| {
        text.pop();
        let comma = if text.len() > 1 { "," } else { "" };
        let _ = write!(text, "{comma}\"{name}\":\"{choice}\"}}");
    };
    if let Some(valve) = values.pump_down_valve {
        add("pump_down_valve", valve.name());
    }
    if let Some(end) = values.pump_down_ended_by {
        add("pump_down_ended_by", end.name());
    }
    text
}

#[wasm_bindgen]
impl Watch {
    /// Starts watching. `plate` is rated load, locked rotor, rated voltage; an empty name is none given.
    ///
    /// # Errors
    /// One line of JSON that names the setting.
    #[wasm_bindgen(constructor)]
    pub fn new(
        refrigerant: &str,
        plate: &[f32],
        suction_pressure_regulator: bool,
        pump_down_valve: &str,
    ) -> Result<Watch, String> {
        let at = |n: usize| plate.get(n).copied().and_then(known);
        let settings = Settings {
            rated_load_a: at(0),
            locked_rotor_a: at(1),
            rated_v: at(2),
            suction_pressure_regulator: Some(suction_pressure_regulator),
            pump_down_valve: match pump_down_valve {
                "" => None,
                name => Some(
                    PumpDownValve::from_name(name)
                        .ok_or_else(|| Answer::error("pump_down_valve", "is not a valve known here"))?,
                ),
            },
        };
        let refrigerant =
            match refrigerant {
                "" => None,
                name => Some(find(name).ok_or_else(|| {
                    Answer::error("refrigerant", "is not a designation there is a table for")
                })?),
            };
        let monitor = monitor::Monitor::new(&settings).map_err(|invalid| {
            Answer::error(invalid.field, &invalid.reason(Language::English).to_string())
        })?;
        Ok(Self { monitor, refrigerant })
    }

    /// Takes one sample; gives what happened.
    pub fn push(&mut self, time_ms: f64, values: &[f32]) -> String {
        let mut sample = Sample { time_ms: time_ms as u64, ..Sample::default() };
        for (n, value) in values.iter().enumerate() {
            if let Some(place) = sample.number_mut(n) {
                *place = known(*value);
            }
        }
        let pushed = self.monitor.push(self.refrigerant, &sample);
        let mut events = String::from("[");
        for event in pushed.events.as_slice() {
            if events.len() > 1 {
                events.push(',');
            }
            let _ = write!(
                events,
                "{{\"event\":\"{}\",\"time_ms\":{},\"values\":{{",
                event.kind.name(),
                event.time_ms
            );
            let mut first = true;
            for (name, value) in event.kind.value_names().iter().zip(event.values) {
                let (false, Some(value)) = (name.is_empty(), value) else { continue };
                let _ = write!(events, "{}\"{name}\":", if first { "" } else { "," });
                number(&mut events, value);
                first = false;
            }
            events.push_str("}}");
        }
        events.push(']');
        let mut unusable = String::from("[");
        for (n, field) in Sample::FIELDS.iter().enumerate() {
            if pushed.unusable & (1 << n) != 0 {
                let _ = write!(unusable, "{}\"{}\"", if unusable.len() > 1 { "," } else { "" }, field.name);
            }
        }
        unusable.push(']');
        let answer = Answer::ok()
            .text("state", self.monitor.state().name())
            .json("events", &events)
            .json("unusable", &unusable);
        match pushed.problem {
            Some(problem) => answer.text("problem", problem.name()),
            None => answer.json("problem", "null"),
        }
        .end()
    }

    /// Names what the machine does, after the last sample.
    pub fn state(&self) -> String {
        self.monitor.state().name().to_owned()
    }

    /// Tells how long ago the compressor started or stopped, ms; NaN where that was not seen.
    #[wasm_bindgen(js_name = sinceMs)]
    pub fn since_ms(&self) -> f64 {
        self.monitor.since_ms().map_or(f64::NAN, f64::from)
    }

    /// Gives what was found by tests in the stream.
    pub fn found(&self) -> String {
        Answer::ok().json("readings", &readings(&self.monitor.found())).end()
    }

    /// Gives the averaged readings with the noise left in each and their uncertainty; null while there are none.
    pub fn readings(&self) -> String {
        match self.monitor.readings() {
            None => Answer::ok().json("readings", "null"),
            Some(steady) => {
                let uncertainty = steady.uncertainty(&Uncertainty::default());
                Answer::ok()
                    .json("readings", &readings(&steady.readings))
                    .json("noise", &numbers(Sample::FIELDS, &steady.noise))
                    .json("uncertainty", &numbers(Uncertainty::FIELDS, &uncertainty.numbers()))
            }
        }
        .end()
    }
}
