//! The monitor: watches a machine run, sample by sample, in fixed memory and without a clock of its own.
//!
//! ```
//! use rimewise::monitor::{Monitor, Sample, Settings, State};
//!
//! let settings = Settings { rated_load_a: Some(3.1), ..Settings::default() };
//! let mut monitor = Monitor::new(&settings)?;
//! for second in 0..10 {
//!     let current_a = Some(if second < 5 { 0.0 } else { 2.6 });
//!     let answer = monitor.push(None, &Sample { time_ms: second * 1000, current_a, ..Sample::default() });
//!     for event in answer.events.as_slice() {
//!         println!("{} {}", event.time_ms, event.kind.name());
//!     }
//! }
//! assert_eq!(monitor.state(), State::Starting);
//! # Ok::<(), rimewise::invalid::Invalid>(())
//! ```
//!
//! Samples may come at any spacing from 0.1 s to 10 s and with gaps; a gap of more than [`GAP_MS`] is told and what was
//! being followed is dropped. A sample need not hold everything: with a current, starts and stops are told with the
//! second sample that shows them at the latest; without one, from two pressures that move apart or together, which a
//! stop against a closed valve does not make them do. What cannot be used is named in [`Pushed`] and never an error.
//!
//! While the machine holds still or pulls down smoothly, [`Monitor::readings`] gives averages for a visit, and
//! [`SteadyReadings::uncertainty`] what is left of the instruments' uncertainty. [`Monitor::found`] gives, at any time,
//! what tests in the stream have found: lowest pressure and rise of a pump-down, standing pressure, starting current.
//!
//! Everything inside works on whole numbers of 1/256 kPa, K and V and 1/1024 A: the same
//! bits on every target, and cheap where there is no floating-point unit.

mod average;
mod cycling;
mod event;
mod filter;
mod fixed_point;
mod hunting;
mod operating_state;
mod operation;
mod power;
mod pump_down;
mod readings;
mod sample;
mod settings;
mod standstill;
mod start;
mod trend;

pub use event::{Event, EventKind, Events, MOST_EVENTS};
pub use operating_state::State;
pub use readings::SteadyReadings;
pub use sample::{CHANNELS, Sample, SampleProblem};
pub use settings::Settings;

use crate::invalid::Invalid;
use crate::refrigerant::Refrigerant;
use average::Averages;
use cycling::Cycling;
use filter::{Filter, Filtered};
use hunting::Hunting;
use power::{Power, Pressures};
use pump_down::{PumpDown, PumpDownResult};
use sample::whole;
use settings::Plate;
use standstill::{Standing, Standstill};
use start::Start;
use trend::{Block, Window};

/// Longest time between two samples that still belong together, ms.
pub const GAP_MS: u32 = 30_000;
/// Samples behind the clock, in order among themselves, after which the clock is taken to have been set back.
const CLOCK_SET_BACK: u8 = 3;

/// What one sample brought.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pushed {
    /// What happened.
    pub events: Events,
    /// Why the sample could not be used, whole or in part.
    pub problem: Option<SampleProblem>,
    /// The channels that could not be used: bit n is number n of [`Sample::FIELDS`].
    pub unusable: u16,
}

/// Watches one machine; plain data of at most one kibibyte.
#[derive(Clone, Copy, Debug)]
pub struct Monitor {
    plate: Plate,
    begun: bool,
    last_ms: u64,
    refused_ms: u64,
    refused: u8,
    power: Power,
    /// Whether the moment of the last start or stop was seen.
    since_known: bool,
    starting: bool,
    since: u32,
    running: State,
    tripped: bool,
    rises: u8,
    unsettled: bool,
    due: bool,
    filter: Filter,
    pressures: Pressures,
    block: Block,
    window: Window,
    averages: Averages,
    start: Start,
    pump_down: PumpDown,
    hunting: Hunting,
    standstill: Standstill,
    cycling: Cycling,
    found_pump_down: PumpDownResult,
    found_standing: Standing,
    found_start: i32,
}

impl Monitor {
    /// Makes a monitor that has seen nothing yet.
    ///
    /// Errors: a setting that no plate can show, with its name.
    pub fn new(settings: &Settings) -> Result<Self, Invalid> {
        Ok(Self {
            plate: settings.whole()?,
            begun: false,
            last_ms: 0,
            refused_ms: 0,
            refused: 0,
            power: Power::Unknown,
            since_known: false,
            starting: false,
            since: 0,
            running: State::Unknown,
            tripped: false,
            rises: 0,
            unsettled: false,
            due: false,
            filter: Filter::new(),
            pressures: Pressures::new(),
            block: Block::new(0),
            window: Window::new(),
            averages: Averages::new(),
            start: Start::new(),
            pump_down: PumpDown::None,
            hunting: Hunting::new(0, 0),
            standstill: Standstill::new(),
            cycling: Cycling::new(),
            found_pump_down: PumpDownResult::default(),
            found_standing: Standing::default(),
            found_start: 0,
        })
    }

    /// Tells what the machine does, after the last sample.
    pub fn state(&self) -> State {
        match (self.power, &self.pump_down) {
            (Power::Unknown, _) => State::Unknown,
            (Power::On, PumpDown::Pumping(_)) => State::PumpingDown,
            (Power::On, _) if self.starting => State::Starting,
            (Power::On, _) => self.running,
            (Power::Off, PumpDown::Holding(_)) => State::Holding,
            (Power::Off, _) if self.standstill.defrost => State::Defrost,
            (Power::Off, _) if self.tripped => State::Stopped,
            (Power::Off, _) => State::Off,
        }
    }

    /// Tells how long ago the compressor started or stopped, ms, `None` where that was not seen.
    pub fn since_ms(&self) -> Option<u32> {
        (self.since_known && self.power != Power::Unknown).then(|| self.elapsed())
    }

    fn elapsed(&self) -> u32 {
        (self.last_ms as u32).wrapping_sub(self.since)
    }

    /// Takes one sample and tells what happened.
    ///
    /// The refrigerant gives superheat, without which liquid on start cannot be told. A sample whose time or content
    /// cannot be used is refused with its problem and changes nothing but the time.
    pub fn push(&mut self, refrigerant: Option<&Refrigerant<'_>>, sample: &Sample) -> Pushed {
        // One place for the answer from the beginning: nothing is copied.
        let mut pushed = Pushed { events: Events::default(), problem: None, unusable: 0 };
        pushed.problem = self.clock(sample.time_ms, &mut pushed.events);
        if pushed.problem.is_some() {
            return pushed;
        }
        let before_ms = core::mem::replace(&mut self.last_ms, sample.time_ms);
        let mut seen = Filtered::new(before_ms);
        pushed.unusable = whole(sample, &mut seen.raw);
        if pushed.unusable != 0 {
            pushed.problem = Some(SampleProblem::SomeUnusable);
        }
        if seen.raw.iter().all(Option::is_none) {
            pushed.problem = Some(SampleProblem::NothingMeasured);
            return pushed;
        }
        self.filter.push(&mut seen);
        self.follow(refrigerant, &mut seen, &mut pushed.events);
        pushed
    }

    /// Checks the time of a sample and notices gaps.
    fn clock(&mut self, time_ms: u64, events: &mut Events) -> Option<SampleProblem> {
        if !self.begun {
            self.begun = true;
            self.last_ms = time_ms;
            self.forget(time_ms);
            return None;
        }
        if time_ms == self.last_ms {
            return Some(SampleProblem::RepeatedTime);
        }
        if time_ms < self.last_ms {
            let in_order = self.refused > 0 && time_ms > self.refused_ms;
            self.refused = if in_order { self.refused + 1 } else { 1 };
            self.refused_ms = time_ms;
            if self.refused < CLOCK_SET_BACK {
                return Some(SampleProblem::BackwardTime);
            }
            // One wrong time far ahead must not silence the monitor for ever.
            events.add(EventKind::Gap, time_ms, [None; 3]);
            self.forget(time_ms);
        } else if time_ms - self.last_ms > u64::from(GAP_MS) {
            let seconds = (time_ms - self.last_ms) as f32 * 0.001;
            events.add(EventKind::Gap, time_ms, [Some(seconds), None, None]);
            self.forget(time_ms);
        }
        self.refused = 0;
        None
    }

    /// Forgets what was being followed; results already found stay.
    fn forget(&mut self, time_ms: u64) {
        let now = time_ms as u32;
        self.filter = Filter::new();
        self.pressures = Pressures::new();
        self.power = Power::Unknown;
        self.since_known = false;
        self.starting = false;
        self.since = now;
        self.tripped = false;
        self.running = State::Unsteady;
        self.start.end();
        self.pump_down = PumpDown::None;
        self.standstill = Standstill::new();
        self.cycling = Cycling::new();
        self.anew(now);
    }

    /// Begins the statistics anew.
    fn anew(&mut self, now: u32) {
        self.block = Block::new(now);
        self.window = Window::new();
        self.averages = Averages::new();
        self.hunting = Hunting::new(0, now);
        self.rises = 0;
        self.due = false;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_monitor_fits_in_one_kibibyte() {
        let size = size_of::<Monitor>();
        assert!(size <= 1024, "{size} bytes");
    }
}
