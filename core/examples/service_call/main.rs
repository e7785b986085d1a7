//! A service call: from what was measured to what is wrong, how sure that is, and the one next step.
//!
//! `service_call` answers a built-in visit; `service_call FILE` reads one visit as JSON, or visits as JSON Lines, and
//! `service_call -` answers standard input line by line. `--ask` plays a visit step by step, from the complaint on.
//! `--json` writes JSON Lines, each with the number of its line where they come from standard input; `--all` writes
//! everything for people; `--gauge` reads and writes gauge pressures, `--us` psig and degF beside degC, both at the
//! altitude given with `--altitude METRES`; `--report FILE.txt` or `FILE.html` leaves one page behind.
//!
//! Ends with 0; with 2 where the input cannot be read, with 3 where a visit was refused, with 4 where the answers cannot be
//! written.

mod ask;
#[path = "../common/mod.rs"]
mod common;
mod leave_behind;
mod page;
mod stream;

use common::{Input, Options, arguments, lines};
use page::Page;
use rimewise::invalid::ErrorCode;
use rimewise::json::{FieldError, answer_visit, read_visit, write_error};
use std::io::BufReader;
use std::process::ExitCode;
use stream::Ended;

/// An invented freezer: a tired compressor on a warm day, with its pump-down test done.
const BUILT_IN: &str = include_str!("../data/tired_freezer.json");

fn main() -> ExitCode {
    let options = match arguments(std::env::args().skip(1)) {
        Ok(options) => options,
        Err(message) => {
            eprintln!("service_call: {message}");
            eprintln!(
                "usage: service_call [FILE | -] [--ask] [--json] [--all] [--gauge] [--us] [--altitude METRES] \
                 [--report FILE.txt | FILE.html]"
            );
            return ExitCode::from(2);
        }
    };
    let ended = if options.ask {
        let stdin = std::io::stdin();
        ask::ask(&options, stdin.lock(), std::io::stdout()).map_or(Ended::Unwritten, |()| Ended::Well)
    } else if options.json && options.input == Input::Standard {
        let mut input = BufReader::new(std::io::stdin());
        stream::stream(&mut input, &mut std::io::stdout())
    } else {
        whole(&options)
    };
    ExitCode::from(match ended {
        Ended::Well => 0,
        Ended::Unread => 2,
        Ended::Refused => 3,
        Ended::Unwritten => 4,
    })
}

/// Answers an input that is read as a whole.
fn whole(options: &Options) -> Ended {
    let input = match &options.input {
        Input::BuiltIn => Ok(BUILT_IN.as_bytes().to_vec()),
        given => given.read(),
    };
    let input = match input {
        Ok(input) => input,
        Err(message) => {
            eprintln!("service_call: {message}");
            return Ended::Unread;
        }
    };
    let lines = lines(&input);
    if lines.is_empty() {
        eprintln!("service_call: the input holds no visit");
    }
    let mut ended = Ended::Well;
    for line in lines {
        let answer = line.and_then(|line| {
            stream::cheap(line.as_bytes())?;
            if options.json { Ok(answer_visit(&line)) } else { for_people(&line, options) }
        });
        let text = match answer {
            Ok(text) => text,
            Err(error) => {
                ended = Ended::Refused;
                if options.json {
                    write_error(&error)
                } else {
                    format!("This visit is refused: {}.", stream::printable(&error.to_string()))
                }
            }
        };
        if text.starts_with("{\"status\":\"error\"") {
            ended = Ended::Refused;
        }
        if !common::print(&text) {
            return Ended::Unwritten;
        }
    }
    ended
}

fn for_people(line: &str, options: &Options) -> Result<String, FieldError> {
    let visit = read_visit(line)?;
    let report = rimewise::diagnose(visit.refrigerant, &visit.visit())?;
    if let Some(path) = &options.report {
        leave_behind::write(path, &options.units, &visit, &report, &[])
            .map_err(|error| FieldError::of_text(ErrorCode::NotWritten, &format!("{path}: {error}")))?;
    }
    Ok(Page::new(&options.units, &visit, &report, options.all).write())
}
