//! The recorded streams that the examples play: generated ones, thinned, as text with the machine in their head.

use super::csv;
use super::fleet::Half;
use super::scenario::{Story, Stream, stream};
use rimewise::monitor::Sample;

/// The command that writes the recorded streams and the figures.
pub const COMMAND: &str = "RIMEWISE_WRITE=1 cargo test -p rimewise-tests --test monitor";

/// The names of the recorded streams and their text.
pub fn all() -> Vec<(&'static str, String)> {
    let one = |name, story, seed, seconds| (name, text(&stream(Half::Setting, story, seed), seconds));
    vec![
        one("liquid_on_start.csv", Story::LiquidOnStart, 72, 900),
        one("pump_down.csv", Story::PumpDownSuction, 47, 960),
        one("locked_rotor.csv", Story::LockedRotor, 106, 420),
    ]
}

fn text(stream: &Stream, seconds: u64) -> String {
    let first = stream.samples.first().map_or(0, |sample| sample.time_ms);
    let mut last = None;
    let samples: Vec<Sample> = stream
        .samples
        .iter()
        .map(|sample| Sample { time_ms: sample.time_ms - first, ..*sample })
        .take_while(|sample| sample.time_ms <= seconds * 1000)
        .filter(|sample| {
            let due = last.is_none_or(|last| sample.time_ms >= last + 1500);
            if due {
                last = Some(sample.time_ms);
            }
            due
        })
        .collect();
    format!(
        "# Written by `{COMMAND}`; an invented machine, simulated.\n# {{\"system\":{}}}\n{}",
        system(stream),
        csv::write(&samples)
    )
}

fn system(stream: &Stream) -> String {
    let system = &stream.system;
    let (design, plate) = (&system.design, &system.compressor);
    let number = |value: Option<f32>| format!("{:.1}", value.unwrap_or(0.0));
    format!(
        "{{\"refrigerant\":\"{}\",\"metering\":\"{}\",\"receiver\":{},\"duty\":\"{}\",\"design\":{{\"space_c\":{},\
         \"ambient_c\":{},\"evaporator_td_k\":{},\"condenser_td_k\":{}}},\"compressor\":{{\"rated_load_a\":{},\
         \"locked_rotor_a\":{},\"rated_v\":{}}}}}",
        stream.refrigerant.designation(),
        system.metering.map_or("", |metering| metering.name()),
        system.receiver.unwrap_or(false),
        system.duty.map_or("", |duty| duty.name()),
        number(design.space_c),
        number(design.ambient_c),
        number(design.evaporator_td_k),
        number(design.condenser_td_k),
        number(plate.rated_load_a),
        number(plate.locked_rotor_a),
        number(plate.rated_v),
    )
}
