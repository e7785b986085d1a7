//! Grades the monitor on generated streams.

use super::fleet::Half;
use super::scenario::{STORIES, Story, Stream, stream};
use rimewise::monitor::{Event, EventKind, Monitor, State};
use std::collections::BTreeMap;
use std::fmt::Write;

/// Seconds after a change of state that are not graded.
const SETTLE_S: f64 = 10.0;

/// Swing of suction pressure, as a share of its mean, from which a valve is graded as hunting.
const SWING: f64 = 0.06;

/// Rise below which nothing rises, kPa/min: a digit of a gauge in ten minutes.
const NO_RISE: f64 = 0.01;

/// An event with the number of the sample that brought it.
pub type Found = (usize, Event);

/// Lets the monitor watch a stream; gives its events and its state after each sample.
pub fn watch(stream: &Stream) -> (Vec<Found>, Vec<State>, Monitor) {
    let mut monitor = match Monitor::new(&stream.settings) {
        Ok(monitor) => monitor,
        Err(error) => panic!("{error}"),
    };
    let (mut events, mut states) = (vec![], vec![]);
    for (index, sample) in stream.samples.iter().enumerate() {
        let pushed = monitor.push(Some(stream.refrigerant), sample);
        events.extend(pushed.events.as_slice().iter().map(|event| (index, *event)));
        states.push(monitor.state());
    }
    (events, states, monitor)
}

/// How often something was right.
#[derive(Clone, Copy, Debug, Default)]
pub struct Count {
    /// Cases that were right.
    pub right: usize,
    /// Cases.
    pub all: usize,
}

impl Count {
    fn add(&mut self, right: bool) {
        self.right += usize::from(right);
        self.all += 1;
    }
    /// The share that was right.
    pub fn share(&self) -> f64 {
        self.right as f64 / self.all.max(1) as f64
    }
}

/// The grades of a set of streams.
#[derive(Clone, Debug, Default)]
pub struct Grades {
    /// Streams graded.
    pub streams: usize,
    /// Samples graded for their state, over all stories, and per story.
    pub state: Count,
    /// Per story.
    pub state_of: BTreeMap<Story, Count>,
    /// Pairs of true and told state that were wrong, with their number of samples.
    pub confused: BTreeMap<(State, State), usize>,
    /// Starts and stops of streams with a current found within two samples.
    pub switches: Count,
    /// The same for streams with pressures only.
    pub switches_pressures: Count,
    /// Starts and stops told that never were.
    pub false_switches: usize,
    /// Starts with liquid: told as liquid, told as staying high, neither.
    pub liquid: [usize; 3],
    /// Starts of a tight compressor: told as staying high, told as liquid, neither.
    pub tight: [usize; 3],
    /// Starts of machines in order told as liquid or staying high.
    pub clean: Count,
    /// Pump-downs: found, lowest within 5 kPa, rise told, rise within 10 %, rise within 10 % or 0.5 kPa/min.
    pub pump_down: [usize; 6],
    /// Rises of 2 kPa/min and more that were told within 10 %.
    pub large_rise: Count,
    /// Smaller rises that were told within 10 %.
    pub small_rise: Count,
    /// Valves that held, so that nothing rose, told as no rise at all.
    pub no_rise: Count,
    /// Largest error of the lowest pressure, kPa, and of the rise, kPa/min.
    pub pump_down_worst: [f64; 2],
    /// Hunting found, with a period within 15 %.
    pub hunting: Count,
    /// Period within 15 %.
    pub hunting_period: Count,
    /// Start gear found where it stays in.
    pub gear: Count,
    /// Failed starts found.
    pub failed: Count,
    /// Short cycling found.
    pub short: Count,
    /// Defrosts found.
    pub defrost: Count,
    /// Growing friction found.
    pub rises: Count,
    /// Standing pressures told that are still so later.
    pub standing: Count,
    /// Events of a fault in streams that do not have it.
    pub false_faults: BTreeMap<(Story, EventKind), usize>,
}

impl Grades {
    /// Grades a number of streams of a half; the stories take turns.
    pub fn of(half: Half, streams: usize) -> Self {
        let mut grades = Self::default();
        for number in 0..streams {
            let story = STORIES[number % STORIES.len()];
            grades.take(&stream(half, story, number as u64));
        }
        grades
    }

    /// Grades one stream.
    pub fn take(&mut self, stream: &Stream) {
        let (events, states, _) = watch(stream);
        self.streams += 1;
        for (told, (truth, since)) in states.iter().zip(&stream.states) {
            if *since >= SETTLE_S {
                self.state.add(told == truth);
                self.state_of.entry(stream.story).or_default().add(told == truth);
                if told != truth {
                    *self.confused.entry((*truth, *told)).or_default() += 1;
                }
            }
        }
        self.take_switches(stream, &events);
        self.take_faults(stream, &events);
        self.take_pump_downs(stream, &events);
        let has = |kind| events.iter().any(|(_, event)| event.kind == kind);
        match stream.story {
            Story::LiquidOnStart | Story::TightCompressor => {
                let (liquid, high) = (has(EventKind::LiquidOnStart), has(EventKind::StaysHigh));
                let liquid_story = stream.story == Story::LiquidOnStart;
                let counts = if liquid_story { &mut self.liquid } else { &mut self.tight };
                let (right, wrong) = if liquid_story { (liquid, high) } else { (high, liquid) };
                counts[if wrong {
                    1
                } else if right {
                    0
                } else {
                    2
                }] += 1;
            }
            Story::Cycling | Story::PullDown => {
                self.clean.add(!has(EventKind::LiquidOnStart) && !has(EventKind::StaysHigh));
            }
            Story::Hunting => {
                let told = events.iter().find(|(_, event)| event.kind == EventKind::Hunting);
                let swing = stream.hunting.map_or(0.0, |(_, share)| share);
                if swing < SWING {
                    return;
                }
                self.hunting.add(told.is_some());
                if let (Some((_, event)), Some((period, _))) = (told, stream.hunting) {
                    let told = f64::from(event.values[0].unwrap_or(0.0));
                    self.hunting_period.add((told / period - 1.0).abs() < 0.15);
                }
            }
            Story::StartGear => self.gear.add(has(EventKind::StartGearStaysIn)),
            Story::LockedRotor => {
                let failed = events.iter().filter(|(_, event)| event.kind == EventKind::FailedStart).count();
                self.failed.add(failed == 3 && has(EventKind::OverloadCycling));
            }
            Story::ShortCycling => self.short.add(has(EventKind::ShortCycling)),
            Story::Defrost => self.defrost.add(has(EventKind::DefrostBegins) && has(EventKind::DefrostEnds)),
            Story::GrowingFriction => self.rises.add(has(EventKind::CurrentRises)),
            Story::Standing => {
                for (index, event) in events.iter().filter(|(_, e)| e.kind == EventKind::StandingPressure) {
                    // What rests is still so before the next start.
                    let next = stream.starts.iter().find(|start| **start > event.time_ms);
                    let until = next.map_or(stream.samples.len(), |start| {
                        stream.samples.partition_point(|sample| sample.time_ms < *start)
                    });
                    let later = (index + 300).min(until.saturating_sub(3));
                    let truth = stream.samples[later].suction_pressure_kpa.unwrap_or(f32::NAN);
                    let told = event.values[0].unwrap_or(0.0);
                    self.standing.add((told - truth).abs() < 0.01 * truth + 2.0);
                }
            }
            _ => {}
        }
    }

    /// Adds the grades of other streams.
    pub fn merge(&mut self, other: &Self) {
        self.streams += other.streams;
        for (mine, theirs) in [
            (&mut self.state, other.state),
            (&mut self.switches, other.switches),
            (&mut self.switches_pressures, other.switches_pressures),
            (&mut self.clean, other.clean),
            (&mut self.large_rise, other.large_rise),
            (&mut self.small_rise, other.small_rise),
            (&mut self.no_rise, other.no_rise),
            (&mut self.hunting, other.hunting),
            (&mut self.hunting_period, other.hunting_period),
            (&mut self.gear, other.gear),
            (&mut self.failed, other.failed),
            (&mut self.short, other.short),
            (&mut self.defrost, other.defrost),
            (&mut self.rises, other.rises),
            (&mut self.standing, other.standing),
        ] {
            mine.right += theirs.right;
            mine.all += theirs.all;
        }
        for (story, count) in &other.state_of {
            let mine = self.state_of.entry(*story).or_default();
            mine.right += count.right;
            mine.all += count.all;
        }
        for (pair, count) in &other.confused {
            *self.confused.entry(*pair).or_default() += count;
        }
        for (pair, count) in &other.false_faults {
            *self.false_faults.entry(*pair).or_default() += count;
        }
        self.false_switches += other.false_switches;
        for (mine, theirs) in self.liquid.iter_mut().zip(other.liquid) {
            *mine += theirs;
        }
        for (mine, theirs) in self.tight.iter_mut().zip(other.tight) {
            *mine += theirs;
        }
        for (mine, theirs) in self.pump_down.iter_mut().zip(other.pump_down) {
            *mine += theirs;
        }
        for (mine, theirs) in self.pump_down_worst.iter_mut().zip(other.pump_down_worst) {
            *mine = mine.max(theirs);
        }
    }

    fn take_switches(&mut self, stream: &Stream, events: &[Found]) {
        let count = if stream.story == Story::PressuresOnly {
            &mut self.switches_pressures
        } else {
            &mut self.switches
        };
        for (kind, truths) in [(EventKind::Start, &stream.starts), (EventKind::Stop, &stream.stops)] {
            let mut told: Vec<usize> =
                events.iter().filter(|(_, event)| event.kind == kind).map(|(index, _)| *index).collect();
            for truth in truths {
                let first = stream.samples.partition_point(|sample| sample.time_ms < *truth);
                // A switch so near the end that two samples do not follow cannot be graded.
                if first + 2 > stream.samples.len() {
                    continue;
                }
                let within = told.iter().position(|index| (first..=first + 1).contains(index));
                let late = told.iter().position(|index| (first..=first + 12).contains(index));
                count.add(within.is_some());
                if let Some(position) = within.or(late) {
                    told.remove(position);
                }
            }
            self.false_switches += told.len();
        }
    }

    fn take_faults(&mut self, stream: &Stream, events: &[Found]) {
        use EventKind as K;
        for (_, event) in events {
            let fault = match event.kind {
                K::LiquidOnStart => stream.liquid,
                K::StaysHigh => {
                    stream.story == Story::TightCompressor || stream.story == Story::GrowingFriction
                }
                K::FailedStart | K::OverloadCycling => {
                    stream.story == Story::LockedRotor || stream.story == Story::StartGear
                }
                K::StartGearStaysIn => stream.story == Story::StartGear,
                K::Hunting => stream.story == Story::Hunting,
                K::PumpDown => !stream.pump_downs.is_empty(),
                K::ShortCycling => stream.story == Story::ShortCycling,
                K::CurrentRises => stream.story == Story::GrowingFriction,
                K::DefrostBegins => stream.story == Story::Defrost,
                K::Gap => false,
                _ => continue,
            };
            if !fault {
                *self.false_faults.entry((stream.story, event.kind)).or_default() += 1;
            }
        }
    }

    fn take_pump_downs(&mut self, stream: &Stream, events: &[Found]) {
        let [all, found, lowest, rises, rise, rise_or_half] = &mut self.pump_down;
        for truth in &stream.pump_downs {
            *all += 1;
            let after = |kind: EventKind| {
                events
                    .iter()
                    .map(|(_, event)| event)
                    .find(|event| event.kind == kind && event.time_ms >= truth.closed_ms)
            };
            if let Some(event) = after(EventKind::PumpDownLowest) {
                *found += 1;
                let error = (f64::from(event.values[0].unwrap_or(0.0)) - truth.lowest_kpa).abs();
                self.pump_down_worst[0] = self.pump_down_worst[0].max(error);
                *lowest += usize::from(error <= 5.0);
            }
            if let Some(event) = after(EventKind::PumpDownRise) {
                *rises += 1;
                // The mean rise over the time that the event names, skipping what it skips.
                let (told, seconds) =
                    (f64::from(event.values[0].unwrap_or(0.0)), f64::from(event.values[1].unwrap_or(0.0)));
                let last = ((seconds * 10.0) as usize).min(truth.after.len() - 1);
                let first = 20.min(last);
                let minutes = (last - first) as f64 / 600.0;
                let true_rise = (truth.after[last] - truth.after[first]) / minutes.max(1e-3);
                let error = (told - true_rise).abs();
                self.pump_down_worst[1] = self.pump_down_worst[1].max(error);
                // Nothing has no 10 %: it is right only where it is told as nothing.
                let none = true_rise < NO_RISE;
                let right = if none { told == 0.0 } else { error <= 0.1 * true_rise };
                *rise += usize::from(right);
                match true_rise {
                    _ if none => self.no_rise.add(right),
                    2.0.. => self.large_rise.add(right),
                    _ => self.small_rise.add(right),
                }
                *rise_or_half += usize::from(error <= (0.1 * true_rise).max(0.5));
            }
        }
    }

    /// Writes the two rows that tell liquid on start from a compressor that stays high.
    pub fn told_apart(&self) -> String {
        let three = |n: &[usize; 3]| {
            let all = (n[0] + n[1] + n[2]).max(1) as f64;
            format!(
                "{:.1} % right, {:.1} % wrong, {:.1} % not told, of {all}",
                100.0 * n[0] as f64 / all,
                100.0 * n[1] as f64 / all,
                100.0 * n[2] as f64 / all
            )
        };
        let wanted = "90 % right, at most 3 % wrong";
        format!(
            "| liquid on start | {} | {wanted} |\n| compressor that stays high | {} | {wanted} |\n",
            three(&self.liquid),
            three(&self.tight)
        )
    }

    /// Writes the grades as a table.
    pub fn table(&self) -> String {
        let mut text = String::new();
        let mut row = |what: &str, figure: String, wanted: &str| {
            let _ = writeln!(text, "| {what} | {figure} | {wanted} |");
        };
        let share = |count: &Count| format!("{:.2} % of {}", 100.0 * count.share(), count.all);
        row("streams", self.streams.to_string(), "500");
        row("state right, from 10 s after a change, samples", share(&self.state), "97 %");
        row("start and stop within 2 samples, current measured", share(&self.switches), "all");
        row("start and stop within 2 samples, pressures only", share(&self.switches_pressures), "all");
        row("starts and stops told that never were", self.false_switches.to_string(), "none");
        text.push_str(&self.told_apart());
        let mut row = |what: &str, figure: String, wanted: &str| {
            let _ = writeln!(text, "| {what} | {figure} | {wanted} |");
        };
        row("machines in order called neither", share(&self.clean), "-");
        let [all, found, lowest, rises, rise, half] = self.pump_down;
        row("pump-downs recognised", format!("{found} of {all}"), "all");
        let worst = self.pump_down_worst;
        row("lowest pressure within 5 kPa", format!("{lowest} of {found}, worst {:.1} kPa", worst[0]), "all");
        row("rise within 10 %", format!("{rise} of {rises}"), "all");
        row("rise within 10 %, where it is 2 kPa/min or more", share(&self.large_rise), "all");
        let of = |count: &Count| format!("{} of {}", count.right, count.all);
        row("rise within 10 %, where it is less", of(&self.small_rise), "all");
        row("no rise at all told as none", of(&self.no_rise), "all");
        row(
            "rise within 10 % or 0.5 kPa/min",
            format!("{half} of {rises}, worst {:.2} kPa/min", worst[1]),
            "-",
        );
        row("hunting found, swings of 6 % and more", share(&self.hunting), "-");
        row("period of hunting within 15 %", share(&self.hunting_period), "-");
        row("start gear that stays in", share(&self.gear), "-");
        row("failed starts, all three, and overload cycling", share(&self.failed), "-");
        row("short cycling", share(&self.short), "-");
        row("defrost, begin and end", share(&self.defrost), "-");
        row("current that rises while pressures fall", share(&self.rises), "-");
        row(
            "standing pressure told and still so up to 300 samples later, 1 % and 2 kPa",
            share(&self.standing),
            "-",
        );
        let faults: usize = self.false_faults.values().sum();
        row("fault events in streams without that fault", faults.to_string(), "-");
        text
    }
}
