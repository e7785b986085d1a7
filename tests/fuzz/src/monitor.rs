//! A stream of samples: states, events and averages, whatever comes.

use crate::bytes::Bytes;
use crate::report;
use rimewise::monitor::{Monitor, Sample, Settings};
use rimewise::refrigerant::data;
use rimewise::system::System;
use rimewise::{Visit, diagnose};

/// A stream from one machine, with gaps, repeats, clocks that run backwards and numbers no machine can show.
pub fn target(bytes: &[u8]) {
    let bytes = &mut Bytes(bytes);
    let refrigerant = (!bytes.once_in(8)).then(|| data::ALL[bytes.below(data::ALL.len())]);
    let mut system = System::default();
    system.compressor.rated_load_a = (!bytes.once_in(4)).then(|| bytes.number(0.5, 20.0));
    system.compressor.locked_rotor_a = bytes.once_in(2).then(|| bytes.number(5.0, 100.0));
    system.compressor.rated_v = bytes.once_in(2).then(|| bytes.number(100.0, 480.0));
    let Ok(mut monitor) = Monitor::new(&Settings::of(&system)) else { return };
    let mut sample = Sample::default();
    let mut time_ms = u64::from(bytes.word());
    // What a machine shows changes from one stretch of samples to the next and little inside one.
    while !bytes.is_empty() {
        for (position, field) in Sample::FIELDS.iter().enumerate() {
            if !bytes.once_in(4) {
                continue;
            }
            let (low, high) = match field.name {
                n if n.ends_with("_kpa") => (20.0, 2500.0),
                n if n.ends_with("_a") => (0.0, 15.0),
                n if n.ends_with("_v") => (180.0, 260.0),
                _ => (-40.0, 90.0),
            };
            let value = (!bytes.once_in(16)).then(|| bytes.number(low, high));
            if let Some(slot) = sample.number_mut(position) {
                *slot = value;
            }
        }
        let step = [1000, 1000, 5000, 100, 10_000, 60_000, 0, u64::MAX - 3000][bytes.below(8)];
        let noise = bytes.within(0.0, 0.01);
        for n in 0..=bytes.byte() {
            time_ms = time_ms.wrapping_add(step);
            let mut noisy = Sample { time_ms, ..sample };
            for position in 0..Sample::FIELDS.len() {
                if let Some(Some(value)) = noisy.number_mut(position) {
                    *value *= 1.0 + if n % 2 == 0 { noise } else { -noise };
                }
            }
            push(&mut monitor, refrigerant, &noisy);
        }
        if let Some(steady) = monitor.readings() {
            let (readings, uncertainty) = (steady.readings, steady.uncertainty(&Default::default()));
            crate::assert_finite("averages", &steady);
            let visit = Visit { readings, uncertainty, system, ..Visit::default() };
            if let Ok(found) = diagnose(refrigerant, &visit) {
                report::check(&rimewise::json::write_report(&found, rimewise::text::Language::English), true);
            }
        }
        crate::assert_finite("what tests found", &monitor.found());
    }
}

fn push(monitor: &mut Monitor, refrigerant: Option<&rimewise::Refrigerant<'_>>, sample: &Sample) {
    // A copy that goes on from here answers the same.
    let mut resumed = *monitor;
    let pushed = monitor.push(refrigerant, sample);
    assert_eq!(resumed.push(refrigerant, sample), pushed, "a resumed stream answers otherwise");
    assert_eq!(resumed.state(), monitor.state());
    crate::assert_finite("events", &pushed);
}
