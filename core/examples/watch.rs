//! Watches a recorded stream: the events as they come, and the report at the end.
//!
//! `watch` plays a built-in stream; `watch FILE` or `watch -` reads one. `--json` writes JSON Lines.
//!
//! A recorded stream is CSV. Lines that begin with `#` come first: one of them may hold the visit as JSON (`# {...}`),
//! which tells what is known of the machine. Then comes a line of column names: `time_s` (seconds, on any clock) and
//! any of the readings of a sample, with their units in their names (`suction_pressure_kpa` absolute, `space_c`,
//! `current_a`, ...). An empty cell was not measured.

#[allow(dead_code)]
mod common;

use common::words::{finding_words, reading, words};
use common::{Input, arguments};
use rimewise::cause::Cause;
use rimewise::json::{OwnedVisit, read_visit, write_report};
use rimewise::monitor::{CHANNELS, Event, Monitor, Sample, SampleProblem, Settings, SteadyReadings};
use rimewise::readings::Readings;
use rimewise::text::Language;
use std::process::ExitCode;

/// An invented freezer that starts with liquid in its compressor.
const BUILT_IN: &str = include_str!("data/liquid_on_start.csv");

fn main() -> ExitCode {
    let options = match arguments(std::env::args().skip(1)) {
        Ok(options) => options,
        Err(message) => {
            let failed = fail(&message);
            eprintln!("usage: watch [FILE | -] [--json]");
            return failed;
        }
    };
    let input = match &options.input {
        Input::BuiltIn => Ok(BUILT_IN.as_bytes().to_vec()),
        given => given.read(),
    };
    let stream = input.and_then(|bytes| {
        let text = std::str::from_utf8(&bytes).map_err(|_| "the stream is not UTF-8".to_owned())?;
        Stream::read(text)
    });
    match stream.and_then(|stream| stream.watch(options.json)) {
        Ok(()) => ExitCode::SUCCESS,
        Err(message) => fail(&message),
    }
}

fn fail(message: &str) -> ExitCode {
    eprintln!("watch: {message}");
    ExitCode::from(2)
}

/// A recorded stream.
struct Stream {
    visit: OwnedVisit,
    samples: Vec<Sample>,
}

impl Stream {
    fn read(text: &str) -> Result<Self, String> {
        let mut visit = read_visit("{}").map_err(|error| error.to_string())?;
        let mut columns: Option<Vec<Option<usize>>> = None;
        let mut samples = Vec::new();
        // A spreadsheet may begin its text with a byte order mark.
        for (index, line) in text.trim_start_matches('\u{feff}').lines().enumerate() {
            let number = index + 1;
            let line = line.trim();
            if let Some(comment) = line.strip_prefix('#') {
                if comment.trim_start().starts_with('{') {
                    visit = read_visit(comment.trim()).map_err(|error| format!("line {number}: {error}"))?;
                }
            } else if let Some(columns) = &columns {
                if !line.is_empty() {
                    samples.push(sample(columns, line).map_err(|error| format!("line {number}: {error}"))?);
                }
            } else if !line.is_empty() {
                columns = Some(header(line).map_err(|error| format!("line {number}: {error}"))?);
            }
        }
        if samples.is_empty() {
            return Err("the stream holds no samples".to_owned());
        }
        Ok(Self { visit, samples })
    }

    fn watch(&self, json: bool) -> Result<(), String> {
        let visit = self.visit.visit();
        let settings = Settings::of(&visit.system);
        let mut monitor = Monitor::new(&settings).map_err(|error| error.to_string())?;
        let mut averaged = None;
        for sample in &self.samples {
            let pushed = monitor.push(self.visit.refrigerant, sample);
            if let Some(problem) = pushed.problem {
                refused(sample.time_ms, problem, pushed.unusable, json);
            }
            for event in pushed.events.as_slice() {
                if !common::print(&if json { event_json(event) } else { event_text(event) }) {
                    return Ok(());
                }
            }
            averaged = monitor.readings().or(averaged);
        }
        // Tests that ended after the last steady minute count as well.
        let found = monitor.found();
        let mut averaged = averaged.unwrap_or_default();
        let into = &mut averaged.readings;
        into.pump_down_kpa = found.pump_down_kpa.or(into.pump_down_kpa);
        into.pump_down_rise_kpa_per_min =
            found.pump_down_rise_kpa_per_min.or(into.pump_down_rise_kpa_per_min);
        into.pump_down_ended_by = found.pump_down_ended_by.or(into.pump_down_ended_by);
        into.start_current_a = found.start_current_a.or(into.start_current_a);
        into.standing_pressure_kpa = found.standing_pressure_kpa.or(into.standing_pressure_kpa);
        into.standing_temperature_c = found.standing_temperature_c.or(into.standing_temperature_c);
        self.report(&averaged, json)
    }

    fn report(&self, averaged: &SteadyReadings, json: bool) -> Result<(), String> {
        let mut visit = self.visit.visit();
        visit.readings = averaged.readings;
        visit.uncertainty = averaged.uncertainty(&visit.uncertainty);
        let report = rimewise::diagnose(self.visit.refrigerant, &visit).map_err(|error| error.to_string())?;
        if json {
            common::print(&write_report(&report, Language::English));
            return Ok(());
        }
        let shown = Readings::FIELDS.iter().zip(averaged.readings.numbers());
        if averaged.noise.iter().any(Option::is_some) {
            common::print(
                "\nAveraged readings, with the noise that is left in them (one standard uncertainty)",
            );
            for ((field, value), noise) in shown.clone().zip(averaged.noise) {
                if let (Some(value), Some(noise)) = (value, noise) {
                    common::print(&format!("  {:<28} {value:9.2} +- {noise:.2}", field.name));
                }
            }
        } else {
            common::print("\nNothing averaged: it never held still or pulled down smoothly for a minute.");
        }
        let tests: Vec<String> = shown
            .skip(CHANNELS)
            .filter_map(|(field, value)| Some(format!("  {:<28} {:9.2}", field.name, value?)))
            .collect();
        if !tests.is_empty() {
            common::print(&format!("\nFound in the stream\n{}", tests.join("\n")));
        }
        if averaged.readings == Readings::default() {
            common::print("\nThere is nothing to diagnose.");
            return Ok(());
        }
        let verdict = match (report.diagnosis.decided, report.diagnosis.leading) {
            (true, Cause::None) => "CLEARED",
            (true, _) => "DECIDED",
            (false, _) => "NOT DECIDED, most probable",
        };
        common::print(&format!("\n{verdict}: {}", words(report.diagnosis.leading)));
        for cause in report.diagnosis.causes.iter().filter(|cause| cause.probability >= 0.05) {
            common::print(&format!("  {:4.0} %  {}", 100.0 * cause.probability, words(cause.cause)));
        }
        for next in report.diagnosis.next.iter().take(3) {
            common::print(&format!(
                "  measure next: {} ({:.2} bit, effort: {})",
                reading(next.measurement),
                next.information_bits,
                next.effort.name().replace('_', " ")
            ));
        }
        for finding in &report.electrical {
            common::print(&format!("  electrical: {}", finding_words(finding)));
        }
        for caution in &report.cautions {
            common::print(&format!(
                "  caution, {}: {}",
                caution.step.name().replace('_', " "),
                caution.text()
            ));
        }
        Ok(())
    }
}

/// Reads the line of column names: the channel of each column, `None` for the time.
fn header(line: &str) -> Result<Vec<Option<usize>>, String> {
    let mut columns = Vec::new();
    for name in line.split(',').map(str::trim) {
        let column = match Sample::FIELDS.iter().position(|field| field.name == name) {
            None if name == "time_s" => None,
            None => {
                let names: Vec<&str> = Sample::FIELDS.iter().map(|field| field.name).collect();
                let names = names.join(",");
                return Err(format!("{name} is no column of a stream; its columns are time_s,{names}"));
            }
            channel => channel,
        };
        if columns.contains(&column) {
            return Err(format!("{name} is there twice"));
        }
        columns.push(column);
    }
    if columns.contains(&None) { Ok(columns) } else { Err("there is no column time_s".to_owned()) }
}

/// Reads one line of values.
fn sample(columns: &[Option<usize>], line: &str) -> Result<Sample, String> {
    let cells: Vec<&str> = line.split(',').map(str::trim).collect();
    if cells.len() != columns.len() {
        return Err(format!("the columns are {}, the values {}", columns.len(), cells.len()));
    }
    let mut sample = Sample::default();
    for (cell, column) in cells.into_iter().zip(columns) {
        match column {
            None => {
                let seconds = cell.parse::<f64>().ok().filter(|seconds| (0.0..1e15).contains(seconds));
                let seconds = seconds.ok_or_else(|| format!("time_s: {cell} is not a time"))?;
                sample.time_ms = (seconds * 1000.0 + 0.5) as u64;
            }
            Some(_) if cell.is_empty() => {}
            Some(channel) => {
                let name = Sample::FIELDS.get(*channel).map_or("", |field| field.name);
                let value = cell.parse::<f32>().map_err(|_| format!("{name}: {cell} is not a number"))?;
                if let Some(field) = sample.number_mut(*channel) {
                    *field = Some(value);
                }
            }
        }
    }
    Ok(sample)
}

/// Says what of a sample could not be used.
fn refused(time_ms: u64, problem: SampleProblem, unusable: u16, json: bool) {
    let names: Vec<&str> = Sample::FIELDS
        .iter()
        .enumerate()
        .filter(|(channel, _)| unusable >> channel & 1 == 1)
        .map(|(_, field)| field.name)
        .collect();
    common::print(&if json {
        let list: Vec<String> = names.iter().map(|name| format!("\"{name}\"")).collect();
        let fields = list.join(",");
        format!(
            "{{\"time_s\":{},\"problem\":\"{}\",\"fields\":[{fields}]}}",
            time_ms as f64 / 1000.0,
            problem.name()
        )
    } else {
        format!("{}  ! {} {}", clock(time_ms), problem.name().replace('_', " "), names.join(", "))
            .trim_end()
            .to_owned()
    });
}

fn clock(time_ms: u64) -> String {
    let seconds = time_ms / 1000;
    format!("{:>3}:{:02}", seconds / 60, seconds % 60)
}

fn figures(event: &Event) -> impl Iterator<Item = (&'static str, f32)> {
    let names = event.kind.value_names();
    names.into_iter().zip(event.values).filter_map(|(name, value)| Some((name, value?)))
}

fn event_text(event: &Event) -> String {
    // Counts and answers are whole.
    let digits = |value: f32| if value.fract() == 0.0 { 0 } else { 2 };
    let list: Vec<String> =
        figures(event).map(|(name, value)| format!("{name} {value:.*}", digits(value))).collect();
    format!("{}  {:<20} {}", clock(event.time_ms), event.kind.name().replace('_', " "), list.join(", "))
        .trim_end()
        .to_owned()
}

fn event_json(event: &Event) -> String {
    let list: String = figures(event).map(|(name, value)| format!(",\"{name}\":{value}")).collect();
    format!("{{\"time_s\":{},\"event\":\"{}\"{list}}}", event.time_ms as f64 / 1000.0, event.kind.name())
}
