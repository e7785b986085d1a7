//! Recorded streams as text: `time_s` and the names of the sample's channels, one line a sample.

use rimewise::monitor::Sample;
use std::fmt::Write;

/// Writes samples, with only the columns that hold anything.
pub fn write(samples: &[Sample]) -> String {
    let measured: Vec<usize> = (0..Sample::FIELDS.len())
        .filter(|&channel| samples.iter().any(|s| s.numbers()[channel].is_some()))
        .collect();
    let mut text = String::from("time_s");
    for &channel in &measured {
        text.push(',');
        text.push_str(Sample::FIELDS[channel].name);
    }
    text.push('\n');
    for sample in samples {
        let _ = write!(text, "{}", sample.time_ms as f64 / 1000.0);
        for &channel in &measured {
            match sample.numbers()[channel] {
                // Three decimals at most, none that say nothing.
                Some(value) if value.is_finite() => {
                    let _ = write!(text, ",{}", (f64::from(value) * 1000.0).round() / 1000.0);
                }
                _ => text.push(','),
            }
        }
        text.push('\n');
    }
    text
}
