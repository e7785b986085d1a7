//! Plays a visit step by step: asks for the complaint, then for the one next step, until the plan has its answer.

use crate::common::Options;
use crate::common::words::reading;
use crate::leave_behind;
use crate::page::{self, Page};
use rimewise::field::{Choices, Section, Shape};
use rimewise::json::{OwnedVisit, read_visit};
use rimewise::plan::{Context, Step, StepKind, Subject};
use rimewise::readings::{Access, Call, Measurement, Observations, Readings};
use rimewise::report::Report;
use rimewise::system::System;
use serde_json::{Map, Value, json};
use std::io::{BufRead, Write};

/// What a line of the person on site says.
enum Said {
    Text(String),
    /// It cannot be told or taken.
    Cannot,
    /// End here.
    Quit,
}

/// One visit being played.
struct Play<'a, I, O> {
    options: &'a Options,
    input: I,
    output: O,
    visit: Map<String, Value>,
    /// What was asked for by a name of its own and cannot be told.
    skipped: Vec<&'static str>,
    done: Vec<String>,
    minutes: f32,
}

/// Plays one visit; the error is that of writing.
pub(crate) fn ask(options: &Options, input: impl BufRead, output: impl Write) -> std::io::Result<()> {
    let mut play = Play {
        options,
        input,
        output,
        visit: Map::new(),
        skipped: Vec::new(),
        done: Vec::new(),
        minutes: 0.0,
    };
    play.say("A visit, step by step. \"-\" for what cannot be told or taken, \"?\" for why, \"all\" for the whole report, \
              \"end\" to end.")?;
    if play.opening()? {
        play.steps()?;
    }
    play.close()
}

impl<I: BufRead, O: Write> Play<'_, I, O> {
    fn say(&mut self, text: &str) -> std::io::Result<()> {
        writeln!(self.output, "{text}")
    }

    /// Reads what the person on site says; the end of the input ends the visit.
    fn hear(&mut self, prompt: &str) -> std::io::Result<Said> {
        write!(self.output, "{prompt}\n> ")?;
        self.output.flush()?;
        let mut line = String::new();
        if self.input.read_line(&mut line)? == 0 {
            writeln!(self.output)?;
            return Ok(Said::Quit);
        }
        Ok(match line.trim() {
            "" | "-" => Said::Cannot,
            "end" | "quit" | "q" => Said::Quit,
            text => Said::Text(text.to_owned()),
        })
    }

    fn section(&mut self, name: &str) -> &mut Map<String, Value> {
        let entry = self.visit.entry(name).or_insert_with(|| json!({}));
        if !entry.is_object() {
            *entry = json!({});
        }
        entry.as_object_mut().expect("an object was put there")
    }

    /// What every visit begins with: complaint, history, ports, tools; false where the person ends it.
    fn opening(&mut self) -> std::io::Result<bool> {
        for (field, prompt) in
            [("complaint", "What is the complaint?"), ("history", "What was done to it before?")]
        {
            let list = names(shape::<Call>(field));
            match self.hear(&format!("{prompt} (any of: {list})"))? {
                Said::Quit => return Ok(false),
                Said::Cannot => {}
                Said::Text(text) => {
                    let value = listed(&text);
                    self.put("", field, value)?;
                }
            }
        }
        let ports = "suction_port, high_side_port, liquid_port, suction_service_valve, liquid_line_valve";
        match self.hear(&format!("Which ports and valves are there? (any of: {ports}; none)"))? {
            Said::Quit => return Ok(false),
            Said::Cannot => {}
            Said::Text(text) => {
                for port in ports.split(", ") {
                    let fitted = text.split([',', ' ']).any(|word| word == port);
                    self.section("access").insert(port.to_owned(), json!(fitted));
                }
            }
        }
        let tools = names(shape::<Access>("tools"));
        match self.hear(&format!("Which tools are at hand? (any of: {tools}; \"-\" for all)"))? {
            Said::Quit => return Ok(false),
            Said::Cannot => {}
            Said::Text(text) => {
                let value = listed(&text);
                self.put("access", "tools", value)?;
            }
        }
        for (section, field, prompt) in [
            ("system", "charge_kg", "The charge on the plate, kg?"),
            ("compressor", "rated_load_a", "The compressor's rated current on the plate, A?"),
        ] {
            match self.hear(prompt)? {
                Said::Quit => return Ok(false),
                Said::Cannot => {}
                Said::Text(text) => match text.replace(',', ".").parse::<f32>() {
                    Ok(number) => self.put(section, field, json!(number))?,
                    Err(_) => self.say("That is no number; left out.")?,
                },
            }
        }
        Ok(true)
    }

    /// Writes a field, and takes it back with a word where the visit then cannot be read.
    fn put(&mut self, section: &str, field: &str, value: Value) -> std::io::Result<()> {
        let before = self.visit.clone();
        match section {
            "" => {
                self.visit.insert(field.to_owned(), value);
            }
            "compressor" => {
                let system = self.section("system");
                let plate = system.entry("compressor").or_insert_with(|| json!({}));
                if let Some(plate) = plate.as_object_mut() {
                    plate.insert(field.to_owned(), value);
                }
            }
            _ => {
                self.section(section).insert(field.to_owned(), value);
            }
        }
        if let Err(error) = self.answered() {
            self.visit = before;
            self.say(&format!("That cannot be: {}", crate::stream::printable(&error)))?;
        }
        Ok(())
    }

    /// The visit as it stands, with its report.
    fn answered(&self) -> Result<(OwnedVisit, Report), String> {
        let visit = read_visit(&Value::Object(self.visit.clone()).to_string()).map_err(|e| e.to_string())?;
        let report = rimewise::diagnose(visit.refrigerant, &visit.visit()).map_err(|e| e.to_string())?;
        Ok((visit, report))
    }

    /// Step by step until nothing is left to ask.
    fn steps(&mut self) -> std::io::Result<()> {
        loop {
            let Ok((visit, report)) = self.answered() else { return Ok(()) };
            let Some(step) = self.open_step(&report) else { return self.after(&visit, &report) };
            self.say("")?;
            self.say(&format!("{}  {}", page::compressor(&report), page::verdict(&report)))?;
            for alarm in &report.alarms {
                self.say(&format!("!! {}", alarm.text()))?;
            }
            for line in page::step_lines(&report, &step) {
                self.say(line.trim_start())?;
            }
            let prompt = prompt(&step, self.options);
            let said = loop {
                match self.hear(&prompt)? {
                    Said::Text(text) if text == "?" => {
                        for then in &report.plan.then {
                            let way = page::way(then.kind, then.subject);
                            self.say(&format!(
                                "  {} ({}): {way}",
                                then.outcome,
                                page::percent(then.probability)
                            ))?;
                        }
                        for caution in page::cautions_of_step(&report) {
                            self.say(&format!("  - {}", caution.text()))?;
                        }
                    }
                    Said::Text(text) if text == "all" => {
                        let text = Page::new(&self.options.units, &visit, &report, true).write();
                        self.say(&text)?;
                    }
                    other => break other,
                }
            };
            match said {
                Said::Quit => return Ok(()),
                Said::Cannot => self.cannot(&step),
                Said::Text(text) => self.take(&step, &text)?,
            }
        }
    }

    /// The step of the plan, where it is one that can be asked for.
    fn open_step(&self, report: &Report) -> Option<Step> {
        let step = report.plan.step;
        let asks = matches!(step.kind, StepKind::Look | StepKind::Measure | StepKind::Act | StepKind::Wait);
        let left = |step: &Step| !self.skipped.contains(&step.subject.name());
        if asks && left(&step) {
            return Some(step);
        }
        // What was passed over by its own name leaves room for what comes behind it.
        let behind = asks.then(|| report.diagnosis.next.first()).flatten()?;
        let kind = if behind.measurement.section() == Some("observations") {
            StepKind::Look
        } else {
            StepKind::Measure
        };
        let subject = Subject::Measurement(behind.measurement);
        let next = Step {
            kind,
            subject,
            minutes: behind.minutes,
            changes: 0.0,
            effort: Some(behind.effort),
            hose: None,
        };
        left(&next).then_some(next)
    }

    fn cannot(&mut self, step: &Step) {
        let name = step.subject.name();
        self.skipped.push(name);
        if matches!(step.subject, Subject::Measurement(_) | Subject::Action(_)) {
            let list = self.section("access").entry("cannot").or_insert_with(|| json!([]));
            if let Some(list) = list.as_array_mut() {
                list.push(json!(name));
            }
        }
    }

    /// Enters what was said.
    fn take(&mut self, step: &Step, text: &str) -> std::io::Result<()> {
        let name = step.subject.name();
        self.minutes += step.minutes;
        match step.subject {
            Subject::Context(Context::Refrigerant) => self.put("system", "refrigerant", json!(text)),
            Subject::Context(_) => self.put("system", name, json!(text)),
            Subject::Measurement(measurement) => self.enter(measurement, text),
            Subject::Action(_) if name == "leak_search" => self.enter(Measurement::LeakFound, text),
            Subject::Action(_) if name == "recover_and_weigh" => self.enter(Measurement::Recovered, text),
            Subject::Action(_) if name == "start_test" => self.enter(Measurement::StartSound, text),
            Subject::Action(_) if name == "stop_and_equalise" => {
                let mut two = text.split_whitespace();
                match (two.next(), two.next()) {
                    (Some(pressure), Some(temperature)) => {
                        self.enter(Measurement::StandingTemperature, temperature)?;
                        self.enter(Measurement::StandingPressure, pressure)
                    }
                    _ => self.say("Two numbers, please: pressure and temperature."),
                }
            }
            _ => {
                self.done.push(format!("{} ({:.0} min)", name.replace('_', " "), step.minutes));
                match name {
                    "defrost_and_reread" => self.put("observations", "coil_iced", json!(false))?,
                    "clean_and_reread" => self.put("observations", "condenser_face", json!("clean"))?,
                    _ => self.put("readings", "minutes_running", json!(20.0))?,
                }
                self.again()
            }
        }
    }

    fn enter(&mut self, measurement: Measurement, text: &str) -> std::io::Result<()> {
        let section = measurement.section().unwrap_or("readings");
        let value = match section {
            "observations" => observation(text),
            _ => match text.replace(',', ".").parse::<f32>() {
                Ok(number) => json!(into(measurement, number, self.options)),
                Err(_) if text == "open" => json!("open"),
                Err(_) => return self.say("That is no number."),
            },
        };
        self.put(section, measurement.name(), value)
    }

    /// Moves the readings to those from before and takes each again.
    fn again(&mut self) -> std::io::Result<()> {
        let readings = self.section("readings").clone();
        self.visit.insert("before".to_owned(), json!({ "readings": readings }));
        let names: Vec<String> = readings.keys().cloned().collect();
        self.say("Read again what was read before; \"-\" for what did not change.")?;
        for name in names {
            let Some(measurement) = Measurement::from_name(&name).filter(|m| runs(*m)) else { continue };
            match self.hear(&format!("{} [{}]", reading(measurement), unit(measurement, self.options)))? {
                Said::Text(text) => self.enter(measurement, &text)?,
                Said::Cannot => {}
                Said::Quit => return Ok(()),
            }
        }
        Ok(())
    }

    /// The answer, and readings after the repair where there are any.
    fn after(&mut self, visit: &OwnedVisit, report: &Report) -> std::io::Result<()> {
        self.say("")?;
        let text = Page::new(&self.options.units, visit, report, self.options.all).write();
        self.say(&text)?;
        if self.visit.contains_key("before") {
            return Ok(());
        }
        match self.hear("Say what was done to read again after it, or \"end\".")? {
            Said::Text(text) => {
                self.done.push(text);
                self.again()
            }
            _ => Ok(()),
        }
    }

    /// Says what came of it and leaves the page behind.
    fn close(&mut self) -> std::io::Result<()> {
        let Ok((visit, report)) = self.answered() else { return Ok(()) };
        if let Some(change) = report.plan.change {
            self.say(page::changed(change))?;
        }
        self.say(&format!("{}  {}", page::compressor(&report), page::verdict(&report)))?;
        self.say(&format!("{:.0} minutes of looking and measuring.", self.minutes))?;
        if let Some(path) = &self.options.report {
            leave_behind::write(path, &self.options.units, &visit, &report, &self.done)?;
        }
        Ok(())
    }
}

/// Whether a reading is taken again after a change.
fn runs(measurement: Measurement) -> bool {
    let name = measurement.name();
    measurement.section() == Some("readings")
        && (name.ends_with("_c") || name.ends_with("_kpa") || name.ends_with("_a"))
        && !name.starts_with("standing")
        && !name.starts_with("pump_down")
        && !name.starts_with("winding")
}

fn shape<S: Section>(field: &str) -> Option<Shape> {
    S::ENTRIES.iter().find(|entry| entry.name == field).map(|entry| entry.shape)
}

fn names(shape: Option<Shape>) -> String {
    let of = |choices: &Choices| choices.list.iter().map(|member| member.name).collect::<Vec<_>>().join(", ");
    match shape {
        Some(Shape::Choice(choices) | Shape::Set(choices)) => of(choices),
        Some(Shape::Flag) => "yes, no".to_owned(),
        _ => String::new(),
    }
}

fn listed(text: &str) -> Value {
    let words = text.split([',', ' ']).map(str::trim).filter(|word| !word.is_empty() && *word != "none");
    Value::Array(words.map(|word| json!(word)).collect())
}

fn observation(text: &str) -> Value {
    match text {
        "yes" | "y" | "true" => json!(true),
        "no" | "n" | "false" => json!(false),
        other => json!(other),
    }
}

/// What a reading is asked in.
fn unit(measurement: Measurement, options: &Options) -> &'static str {
    let name = measurement.name();
    match name {
        _ if name.ends_with("_kpa") => options.units.pressure_unit(),
        _ if name.ends_with("_c") => {
            if options.units.us {
                "degF"
            } else {
                "degC"
            }
        }
        _ if name.ends_with("_a") => "A",
        _ if name.ends_with("_v") => "V",
        _ if name.ends_with("_megohm") => "megohm, or open",
        _ if name.ends_with("_ohm") => "ohm, or open",
        _ if name.ends_with("_uf") => "uF, or open",
        _ if name.ends_with("_kg") => "kg",
        _ if name.ends_with("_w") => "W",
        _ => "",
    }
}

/// The contract's number from one in the person's unit.
fn into(measurement: Measurement, number: f32, options: &Options) -> f32 {
    let name = measurement.name();
    if name.ends_with("_kpa") {
        options.units.kilopascals(number)
    } else if name.ends_with("_c") && options.units.us {
        (number - 32.0) / 1.8
    } else {
        number
    }
}

fn prompt(step: &Step, options: &Options) -> String {
    match step.subject {
        Subject::Measurement(measurement) => {
            let answers = match measurement.section() {
                Some("observations") => names(shape::<Observations>(measurement.name())),
                _ => match shape::<Readings>(measurement.name()) {
                    Some(Shape::Number(_)) => unit(measurement, options).to_owned(),
                    shape => names(shape),
                },
            };
            format!("{} [{answers}]", reading(measurement))
        }
        Subject::Context(context) => {
            let answers = match context {
                Context::Refrigerant => "such as R290".to_owned(),
                other => names(shape::<System>(other.name())),
            };
            format!("{} [{answers}]", context.name())
        }
        Subject::Action(action) => match action.name() {
            "leak_search" => "leak found? [yes, no]".to_owned(),
            "start_test" => format!("what is heard? [{}]", names(shape::<Observations>("start_sound"))),
            "recover_and_weigh" => "what came out? [kg]".to_owned(),
            "stop_and_equalise" => {
                let temperature = if options.units.us { "degF" } else { "degC" };
                format!(
                    "standing pressure and temperature? [{} {temperature}]",
                    options.units.pressure_unit()
                )
            }
            _ => "done? [yes]".to_owned(),
        },
        other => other.name().replace('_', " "),
    }
}
