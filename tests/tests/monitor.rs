//! The monitor on generated streams: its figures, its recorded streams, and streams that are not as they should be.
//!
//! The streams come from a transient model that shares no code with the monitor; there is no published set of
//! recorded streams with known faults to hold it against. The effective sample count is checked against its own
//! definition in the monitor's unit tests.

use rimewise::monitor::{Event, EventKind, Monitor, Sample, SampleProblem, Settings, State};
use rimewise_tests::stream::fleet::Half;
use rimewise_tests::stream::grade::{Grades, watch};
use rimewise_tests::stream::recorded;
use rimewise_tests::stream::scenario::{STORIES, Story, Stream, stream};
use std::path::PathBuf;

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("..")
}

/// Whether the committed files are written instead of compared.
fn writes() -> bool {
    std::env::var_os("RIMEWISE_WRITE").is_some()
}

/// All numbers in a text, in their order.
fn numbers(text: &str) -> Vec<f64> {
    text.split(|c: char| !(c.is_ascii_digit() || c == '.' || c == '-'))
        .filter_map(|word| word.trim_end_matches('.').parse().ok())
        .collect()
}

/// Compares two texts number by number; the model's exponentials differ in their last bits between platforms.
fn agree(name: &str, committed: &str, now: &str, within: f64) {
    let (committed, now) = (numbers(committed), numbers(now));
    assert_eq!(committed.len(), now.len(), "{name} has other figures: run {}", recorded::COMMAND);
    for (committed, now) in committed.iter().zip(&now) {
        let near = (committed - now).abs() <= within * committed.abs().max(1.0);
        assert!(near, "{name}: {committed} is now {now}: run {}", recorded::COMMAND);
    }
}

#[test]
fn the_recorded_streams_are_what_the_model_writes() {
    for (name, text) in recorded::all() {
        let path = root().join("core/examples/data").join(name);
        if writes() {
            std::fs::write(&path, &text).unwrap();
        }
        agree(name, &std::fs::read_to_string(&path).unwrap(), &text, 2e-3);
    }
}

/// Grades streams of the stories given, which take turns, on two threads.
fn grades(half: Half, stories: &'static [Story], streams: usize, first_seed: u64) -> Grades {
    let part = move |odd: usize| {
        let mut grades = Grades::default();
        for number in (0..streams).filter(|number| (number / stories.len()) % 2 == odd) {
            grades.take(&stream(half, stories[number % stories.len()], first_seed + number as u64));
        }
        grades
    };
    let other = std::thread::spawn(move || part(1));
    let mut all = part(0);
    all.merge(&other.join().unwrap());
    all
}

#[test]
fn the_figures_on_machines_not_used_in_setting_constants_are_those_written_down() {
    let grades = grades(Half::Grading, &STORIES, 500, 0);
    let starts = self::grades(Half::Grading, &[Story::LiquidOnStart, Story::TightCompressor], 300, 10_000);
    let text = format!(
        "# The monitor on generated streams\n\n\
         Written by `{}`; do not edit.\n\n\
         500 streams of machines whose kinds, sizes and seeds were not used in setting the monitor's constants, \
         fourteen stories taking turns: {}. Noise remembers itself for seconds to tens of seconds, samples come \
         every 0.5 to 3 s with jitter and losses, one value in 5,000 is a spike or NaN. The model shares no code \
         with the monitor; both share the definition of a state, which the truth applies to values without noise. \
         The instruments' offsets and lags count as errors of the monitor.\n\n\
         | what | figure | wanted |\n|---|---|---|\n{}\n\
         300 more starts of such machines, half with liquid, half with a compressor that stays high:\n\n\
         | what | figure | wanted |\n|---|---|---|\n{}\n{}",
        recorded::COMMAND,
        STORIES.iter().map(|story| format!("{story:?}")).collect::<Vec<_>>().join(", "),
        grades.table(),
        starts.told_apart(),
        include_str!("../src/stream/missed.md"),
    );
    let path = root().join("tests/MONITOR.md");
    if writes() {
        std::fs::write(&path, &text).unwrap();
    }
    agree("tests/MONITOR.md", &std::fs::read_to_string(&path).unwrap(), &text, 0.02);

    assert!(grades.state.share() >= 0.97, "{}", grades.state.share());
    for switches in [grades.switches, grades.switches_pressures] {
        assert_eq!(switches.right, switches.all);
    }
    assert_eq!(grades.false_switches, 0);
    for [right, wrong, not_told] in [grades.liquid, grades.tight, starts.liquid, starts.tight] {
        let all = (right + wrong + not_told) as f64;
        assert!(right as f64 >= 0.9 * all && wrong as f64 <= 0.03 * all);
    }
    let [all, found, lowest, ..] = grades.pump_down;
    assert_eq!((found, lowest), (all, all));
    for rises in [grades.large_rise, grades.no_rise] {
        assert_eq!(rises.right, rises.all);
    }
}

/// Pushes samples and checks what holds for every one of them.
fn push_all(stream: &Stream, samples: &[Sample]) -> (Vec<Event>, Monitor) {
    let mut monitor = Monitor::new(&stream.settings).unwrap();
    let mut events = vec![];
    for sample in samples {
        let pushed = monitor.push(Some(stream.refrigerant), sample);
        for event in pushed.events.as_slice() {
            assert!(event.values.iter().flatten().all(|value| value.is_finite()), "{event:?}");
        }
        events.extend_from_slice(pushed.events.as_slice());
        if let Some(steady) = monitor.readings() {
            assert!(steady.readings.numbers().iter().flatten().all(|value| value.is_finite()));
            assert!(steady.noise.iter().flatten().all(|value| value.is_finite() && *value >= 0.0));
        }
    }
    (events, monitor)
}

fn kinds(events: &[Event]) -> Vec<EventKind> {
    events.iter().map(|event| event.kind).collect()
}

#[test]
fn the_events_of_a_prefix_are_the_first_events() {
    for (number, story) in STORIES.into_iter().enumerate() {
        let stream = stream(Half::Setting, story, number as u64);
        let (all, _) = push_all(&stream, &stream.samples);
        for length in [0, 1, 2, 3, 7, 60, stream.samples.len() / 2] {
            let (some, _) = push_all(&stream, &stream.samples[..length]);
            assert_eq!(some, all[..some.len()]);
        }
    }
}

#[test]
fn a_gap_is_told_and_nothing_is_made_up_across_it() {
    for (number, story) in STORIES.into_iter().enumerate() {
        let stream = stream(Half::Setting, story, 14 + number as u64);
        let cut = stream.samples.len() / 2;
        let mut samples = stream.samples.clone();
        for sample in &mut samples[cut..] {
            sample.time_ms += 600_000;
        }
        let (events, _) = push_all(&stream, &samples);
        let gap = events.iter().position(|event| event.kind == EventKind::Gap).unwrap();
        assert!((595.0..620.0).contains(&events[gap].values[0].unwrap()));
        assert_eq!(kinds(&events).iter().filter(|kind| **kind == EventKind::Gap).count(), 1);
        // What is told next is not a start or stop in the gap.
        let after = &events[gap + 1..];
        let first_switch = after.iter().find(|e| matches!(e.kind, EventKind::Start | EventKind::Stop));
        assert!(first_switch.is_none_or(|event| event.time_ms >= samples[cut].time_ms));
        // Nor a duration that reaches back over it.
        if let Some(Event { kind: EventKind::Stop, values: [Some(minutes), ..], time_ms }) = first_switch {
            assert!(f64::from(*minutes) * 60_000.0 <= (time_ms - samples[cut].time_ms) as f64 + 1.0);
        }
    }
}

#[test]
fn a_time_that_repeats_or_runs_backwards_is_refused_and_changes_nothing() {
    let stream = stream(Half::Setting, Story::Cycling, 0);
    let (expected, _) = push_all(&stream, &stream.samples);
    let mut monitor = Monitor::new(&stream.settings).unwrap();
    let mut events = vec![];
    for (index, sample) in stream.samples.iter().enumerate() {
        let pushed = monitor.push(Some(stream.refrigerant), sample);
        events.extend_from_slice(pushed.events.as_slice());
        let wrong = Sample { suction_pressure_kpa: Some(3.0), current_a: Some(0.0), ..*sample };
        let again = monitor.push(Some(stream.refrigerant), &wrong);
        assert_eq!(again.problem, Some(SampleProblem::RepeatedTime));
        assert!(again.events.is_empty());
        if index % 7 == 3 {
            let before = Sample { time_ms: sample.time_ms - 500_000, ..wrong };
            let pushed = monitor.push(Some(stream.refrigerant), &before);
            assert_eq!(pushed.problem, Some(SampleProblem::BackwardTime));
            assert!(pushed.events.is_empty());
        }
    }
    assert_eq!(events, expected);
}

#[test]
fn a_clock_that_was_set_back_is_followed_from_the_third_sample() {
    let stream = stream(Half::Setting, Story::Cycling, 0);
    let mut monitor = Monitor::new(&stream.settings).unwrap();
    let far = Sample { time_ms: u64::MAX, ..stream.samples[0] };
    monitor.push(Some(stream.refrigerant), &far);
    let problems: Vec<_> = stream.samples[..5]
        .iter()
        .map(|sample| monitor.push(Some(stream.refrigerant), sample).problem)
        .collect();
    let back = Some(SampleProblem::BackwardTime);
    assert_eq!(problems[..3], [back, back, None]);
    let (_, states, _) = watch(&stream);
    for sample in &stream.samples[5..] {
        monitor.push(Some(stream.refrigerant), sample);
    }
    assert_eq!(monitor.state(), *states.last().unwrap());
}

#[test]
fn one_spike_or_nan_makes_no_event() {
    for (number, story) in STORIES.into_iter().enumerate() {
        let stream = stream(Half::Setting, story, 28 + number as u64);
        let (expected, _) = push_all(&stream, &stream.samples);
        let told = |events: &[Event]| -> Vec<EventKind> {
            let mut told = kinds(events);
            // A value that drifts across a limit may do so a block earlier or later.
            told.retain(|kind| {
                !matches!(kind, EventKind::Steady | EventKind::PullingDown | EventKind::CleanStart)
            });
            told.sort();
            told
        };
        let mut place = 17;
        for wrong in [f32::NAN, f32::INFINITY, -40.0, 0.0, 2.5, 900.0, 15_000.0, 1e30] {
            for channel in [0usize, 2, 4, 5, 13, 14] {
                place = (place * 31 + 7 * channel + 13) % (stream.samples.len() - 8) + 3;
                // Beside a switch the one sample may be all there is of it.
                let near =
                    |times: &[u64]| times.iter().any(|t| stream.samples[place].time_ms.abs_diff(*t) < 20_000);
                if near(&stream.starts) || near(&stream.stops) {
                    continue;
                }
                let mut samples = stream.samples.clone();
                if let Some(field) = samples[place].number_mut(channel)
                    && field.is_some()
                {
                    *field = Some(wrong);
                }
                let (events, _) = push_all(&stream, &samples);
                assert_eq!(
                    told(&events),
                    told(&expected),
                    "{story:?}: {wrong} in channel {channel} of sample {place}"
                );
            }
        }
    }
}

#[test]
fn one_spike_beside_a_switch_makes_no_start_or_stop_that_never_was() {
    let mut tried = 0;
    for (number, story) in STORIES.into_iter().enumerate() {
        let stream = stream(Half::Setting, story, 56 + number as u64);
        let told = |events: &[Event], kind: EventKind| events.iter().filter(|e| e.kind == kind).count();
        let (expected, _) = push_all(&stream, &stream.samples);
        for time in stream.starts.iter().chain(&stream.stops) {
            let switch = stream.samples.partition_point(|sample| sample.time_ms < *time);
            for place in switch.saturating_sub(5)..(switch + 6).min(stream.samples.len()) {
                for (channel, wrong) in
                    [(13, f32::NAN), (13, 0.0), (13, 2.5), (13, 30.0), (13, 900.0), (14, 100.0), (0, 1e30)]
                {
                    let mut samples = stream.samples[..(place + 60).min(stream.samples.len())].to_vec();
                    let Some(field) = samples[place].number_mut(channel) else { continue };
                    if field.is_none() {
                        continue;
                    }
                    *field = Some(wrong);
                    let (events, _) = push_all(&stream, &samples);
                    for kind in [EventKind::Start, EventKind::Stop] {
                        let (now, at_most) = (told(&events, kind), told(&expected, kind));
                        assert!(now <= at_most, "{story:?}: {wrong} in channel {channel} of sample {place}");
                    }
                    tried += 1;
                }
            }
        }
    }
    assert!(tried > 2000, "{tried}");
}

#[test]
fn a_start_of_which_one_sample_was_seen_is_told_where_its_supply_sagged() {
    let settings = Settings { locked_rotor_a: Some(36.6), rated_v: Some(230.0), ..Settings::default() };
    let sample = |second: u64, current_a: f32, voltage_v: Option<f32>| Sample {
        time_ms: 1000 * second,
        current_a: Some(current_a),
        voltage_v,
        ..Sample::default()
    };
    let told = |amps: f32, sagged: Option<f32>| {
        let mut monitor = Monitor::new(&settings).unwrap();
        let mut events = vec![];
        for second in (0..60).step_by(3) {
            let one = second == 30;
            let volts = if one { sagged } else { Some(228.0) };
            let pushed = monitor.push(None, &sample(second, if one { amps } else { 0.01 }, volts));
            events.extend_from_slice(pushed.events.as_slice());
        }
        events.iter().map(|event| (event.kind, event.time_ms)).collect::<Vec<_>>()
    };
    let failed = [(EventKind::Start, 30_000), (EventKind::Stop, 33_000), (EventKind::FailedStart, 33_000)];
    assert_eq!(told(31.7, Some(217.0)), failed);
    // A spike moves one channel, or both to what no start shows.
    for (amps, volts) in
        [(31.7, Some(227.0)), (31.7, None), (900.0, Some(217.0)), (3.0, Some(217.0)), (0.01, Some(100.0))]
    {
        assert_eq!(told(amps, volts), [], "{amps} A at {volts:?} V");
    }
}

#[test]
fn what_cannot_be_used_is_named() {
    let stream = stream(Half::Setting, Story::Cycling, 0);
    let mut monitor = Monitor::new(&stream.settings).unwrap();
    let empty = monitor.push(None, &Sample { time_ms: 1, ..Sample::default() });
    assert_eq!(empty.problem, Some(SampleProblem::NothingMeasured));
    let bad = Sample { time_ms: 2, current_a: Some(f32::NAN), space_c: Some(2.0), ..Sample::default() };
    let pushed = monitor.push(None, &bad);
    assert_eq!(pushed.problem, Some(SampleProblem::SomeUnusable));
    assert_eq!(pushed.unusable, 1 << 13);
    assert_eq!(Sample::FIELDS[13].name, "current_a");
    let error = Monitor::new(&Settings { rated_v: Some(-1.0), ..stream.settings }).unwrap_err();
    assert_eq!(error.field, "rated_v");
}

#[test]
fn any_numbers_at_all_make_no_panic_and_no_nan() {
    let stream = stream(Half::Setting, Story::Cycling, 0);
    let mut random = rimewise_tests::stream::random::Random::new(99);
    for _ in 0..40 {
        let mut time_ms = (random.even() * 1e18) as u64;
        let samples: Vec<Sample> = (0..2000)
            .map(|_| {
                time_ms = match (random.even() * 12.0) as u32 {
                    0 => time_ms.wrapping_sub((random.even() * 1e6) as u64),
                    1 => time_ms.wrapping_add((random.even() * 1e18) as u64),
                    2 => time_ms,
                    _ => time_ms.wrapping_add((random.even() * 8000.0) as u64),
                };
                let mut sample = Sample { time_ms, ..Sample::default() };
                for channel in 0..Sample::FIELDS.len() {
                    let value = match (random.even() * 8.0) as u32 {
                        0 => None,
                        1 => Some(f32::from_bits((random.even() * f64::from(u32::MAX)) as u32)),
                        2 => Some(20_000.0),
                        3 => Some(0.001),
                        _ => Some((random.even() * 300.0) as f32),
                    };
                    if let Some(field) = sample.number_mut(channel) {
                        *field = value;
                    }
                }
                sample
            })
            .collect();
        push_all(&stream, &samples);
    }
}

/// Runs a stream with its noise and without, and gives (error of each average) / (its stated uncertainty).
fn errors_over_noise(stream: &Stream) -> Vec<f64> {
    let mut noisy = Monitor::new(&stream.settings).unwrap();
    let mut quiet = Monitor::new(&stream.settings).unwrap();
    let mut errors = vec![];
    for (index, (sample, without)) in stream.samples.iter().zip(&stream.quiet).enumerate() {
        noisy.push(Some(stream.refrigerant), sample);
        quiet.push(Some(stream.refrigerant), without);
        if index % 240 != 0 {
            continue;
        }
        let (Some(noisy), Some(quiet)) = (noisy.readings(), quiet.readings()) else { continue };
        // The same blocks only: where both began to average at the same time.
        for (channel, noise) in noisy.noise.iter().enumerate() {
            let (with, without) = (noisy.readings.numbers()[channel], quiet.readings.numbers()[channel]);
            if let (Some(noise), Some(with), Some(without)) = (noise, with, without) {
                errors.push(f64::from(with - without) / f64::from(*noise));
            }
        }
    }
    errors
}

#[test]
fn averages_lie_where_their_uncertainty_says() {
    let mut errors = vec![];
    for number in 0..40 {
        let story = [Story::Cycling, Story::PullDown, Story::TightCompressor][number % 3];
        errors.extend(errors_over_noise(&stream(Half::Grading, story, 500 + number as u64)));
    }
    errors.sort_by(|a, b| a.abs().total_cmp(&b.abs()));
    assert!(errors.len() > 500, "{}", errors.len());
    let within = |z: f64| errors.iter().filter(|e| e.abs() < z).count() as f64 / errors.len() as f64;
    // A normal distribution has 20 %, 68 % and 95 % there; the noise of eight blocks is known to a third or so, hence
    // longer tails and a fuller middle.
    assert!(within(0.25) > 0.15 && within(0.25) < 0.50, "{}", within(0.25));
    assert!(within(1.0) > 0.68 && within(1.0) < 0.90, "{}", within(1.0));
    assert!(within(2.0) > 0.93, "{}", within(2.0));
}

#[test]
fn averaged_readings_go_to_the_diagnosis_with_their_uncertainty() {
    let mut answered = 0;
    for number in 0..14 {
        let stream = stream(Half::Setting, Story::Cycling, 14 * number);
        let mut monitor = Monitor::new(&stream.settings).unwrap();
        let mut last = None;
        for sample in &stream.samples {
            monitor.push(Some(stream.refrigerant), sample);
            assert_eq!(
                monitor.readings().is_some_and(|steady| steady.readings.suction_pressure_kpa.is_some()),
                monitor.readings().is_some()
            );
            assert!(
                monitor.readings().is_none() || matches!(monitor.state(), State::Steady | State::PullingDown)
            );
            last = monitor.readings().or(last);
        }
        let Some(steady) = last else { continue };
        let of_one = rimewise::readings::Uncertainty { pressure_percent: Some(2.0), ..Default::default() };
        let uncertainty = steady.uncertainty(&of_one);
        // The calibration stays; the noise that is left comes on top.
        assert!(uncertainty.pressure_percent.unwrap() >= 1.8);
        let visit = rimewise::readings::Visit {
            system: stream.system,
            readings: steady.readings,
            uncertainty,
            ..Default::default()
        };
        let report = rimewise::diagnose(Some(stream.refrigerant), &visit).unwrap();
        assert!(report.diagnosis.causes.iter().all(|cause| cause.probability.is_finite()));
        answered += 1;
    }
    assert!(answered >= 10, "{answered}");
}
