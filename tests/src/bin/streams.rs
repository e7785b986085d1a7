//! Writes generated streams for the monitor on emulated meters, and what core makes of them on this machine.
//!
//! `streams FOLDER [STREAMS]` writes into the folder
//! * `streams.bin`: the streams as `tests/firmware/monitor.c` reads them;
//! * `digests.txt`: a digest of the states, events and averages of each stream, taken from core and not through the C
//!   API.

use rimewise::monitor::{CHANNELS, Monitor, Pushed, Sample};
use rimewise_tests::stream::fleet::Half;
use rimewise_tests::stream::scenario::{STORIES, Stream, stream};
use std::process::ExitCode;
use std::{env, fs, io};

/// Samples after which the averages are looked at.
const EVERY: usize = 50;

fn main() -> ExitCode {
    let args: Vec<String> = env::args().skip(1).collect();
    let Some(folder) = args.first() else {
        eprintln!("streams FOLDER [STREAMS]");
        return ExitCode::from(2);
    };
    let count = args.get(1).and_then(|n| n.parse().ok()).unwrap_or(STORIES.len());
    match write(folder, count) {
        Ok(()) => ExitCode::SUCCESS,
        Err(why) => {
            eprintln!("streams: {why}");
            ExitCode::FAILURE
        }
    }
}

fn write(folder: &str, count: usize) -> io::Result<()> {
    fs::create_dir_all(folder)?;
    let (mut bytes, mut digests) = (vec![], String::new());
    for number in 0..count {
        // The streams that the grades are taken from.
        let stream = stream(Half::Grading, STORIES[number % STORIES.len()], number as u64);
        image(&stream, &mut bytes);
        digests += &format!("{number} {:08x}\n", digest(&stream));
    }
    fs::write(format!("{folder}/streams.bin"), bytes)?;
    fs::write(format!("{folder}/digests.txt"), digests)
}

/// Lays a stream out: designation, number of samples, plate, then each sample's time and channels.
fn image(stream: &Stream, bytes: &mut Vec<u8>) {
    let mut designation = [0; 12];
    let name = stream.refrigerant.designation().as_bytes();
    designation[..name.len()].copy_from_slice(name);
    bytes.extend(designation);
    let plate = &stream.settings;
    bytes.extend((stream.samples.len() as u32).to_le_bytes());
    bytes.extend(u32::from(plate.suction_pressure_regulator == Some(true)).to_le_bytes());
    for value in [plate.rated_load_a, plate.locked_rotor_a, plate.rated_v] {
        bytes.extend(value.unwrap_or(f32::NAN).to_le_bytes());
    }
    for sample in &stream.samples {
        bytes.extend((sample.time_ms as u32).to_le_bytes());
        for value in sample.numbers() {
            bytes.extend(value.unwrap_or(f32::NAN).to_le_bytes());
        }
    }
}

/// The digest of one stream; the hash is FNV-1a (Fowler, Noll and Vo; from memory).
struct Digest(u32);

impl Digest {
    fn word(&mut self, value: u32) {
        for byte in value.to_le_bytes() {
            self.0 = (self.0 ^ u32::from(byte)).wrapping_mul(0x0100_0193);
        }
    }
    fn number(&mut self, value: Option<f32>) {
        self.word(u32::from(value.is_some()));
        self.word(value.unwrap_or(0.0).to_bits());
    }
    fn pushed(&mut self, pushed: &Pushed) {
        for event in pushed.events.as_slice() {
            self.word(event.kind.code() as u32);
            self.word(event.time_ms as u32);
            event.values.into_iter().for_each(|value| self.number(value));
        }
    }
}

fn digest(stream: &Stream) -> u32 {
    let mut digest = Digest(0x811C_9DC5);
    let Ok(mut monitor) = Monitor::new(&stream.settings) else { return 0 };
    for (index, sample) in stream.samples.iter().enumerate() {
        // What is not a number is not measured in C.
        let mut sample = Sample { ..*sample };
        for channel in 0..CHANNELS {
            if let Some(value) = sample.number_mut(channel) {
                *value = value.filter(|value| !value.is_nan());
            }
        }
        let pushed = monitor.push(Some(stream.refrigerant), &sample);
        digest.pushed(&pushed);
        digest.word(monitor.state().code() as u32);
        if index % EVERY == 0
            && let Some(steady) = monitor.readings()
        {
            let uncertainty = steady.uncertainty(&Default::default());
            steady.readings.numbers().into_iter().take(CHANNELS).for_each(|value| digest.number(value));
            digest.number(uncertainty.pressure_percent);
            digest.number(uncertainty.line_temperature_k);
        }
    }
    digest.0
}
