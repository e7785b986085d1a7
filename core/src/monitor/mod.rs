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
//! being followed is dropped. Everything inside works on whole numbers of 1/256 kPa, K and V and 1/1024 A: the same
//! bits on every target, and cheap where there is no floating-point unit.

mod average;
mod block;
mod cycling;
mod event;
mod filter;
mod fixed;
mod hunting;
mod off_time;
mod power;
mod pump_down;
mod running;
mod sample;
mod settings;
mod start;
mod state;
mod steady;
mod window;

pub use event::{Event, EventKind, Events, MOST_EVENTS};
pub use sample::{CHANNELS, Sample, SampleProblem};
pub use settings::Settings;
pub use state::State;
pub use steady::SteadyReadings;

use crate::invalid::Invalid;
use crate::quantity::Pressure;
use crate::readings::{PumpDownEnd, Readings};
use crate::refrigerant::Refrigerant;
use average::Averages;
use block::Block;
use cycling::Cycling;
use filter::Filter;
use fixed::{fixed, number};
use hunting::Hunting;
use off_time::{OffTime, Standing};
use power::{Power, Pressures};
use pump_down::{PumpDown, PumpDownResult, Rise};
use sample::{
    AMBIENT, CURRENT, DISCHARGE, DISCHARGE_LINE, EVAPORATOR_OUTLET, LIQUID, SPACE, SUCTION, SUCTION_LINE,
    SUPPLY_AIR, VOLTAGE, whole,
};
use settings::Plate;
use start::{Now, Start};
use window::{LOW, Window};

/// Longest time between two samples that still belong together, ms.
pub const GAP_MS: u32 = 30_000;
/// Time after a start that is the start, ms.
const STARTING_MS: u32 = 60_000;
/// Stop after which a cold compressor has probably taken up refrigerant, ms (common practice).
const LONG_STOP_MS: u32 = 1_200_000;
/// Blocks in a row that must show current rising while pressures fall.
const RISES_BLOCKS: u8 = 4;
/// Time between samples up to which they are frequent, and from which they are rare, ms.
const FREQUENT_MS: u64 = 5_000;
const RARE_MS: u64 = 12_000;
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
    off_time: OffTime,
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
            off_time: OffTime::new(),
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
            (Power::Off, _) if self.off_time.defrost => State::Defrost,
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
        let (mut raw, mut middle) = ([None; CHANNELS], [None; CHANNELS]);
        pushed.unusable = whole(sample, &mut raw);
        if pushed.unusable != 0 {
            pushed.problem = Some(SampleProblem::SomeUnusable);
        }
        if raw.iter().all(Option::is_none) {
            pushed.problem = Some(SampleProblem::NothingMeasured);
            return pushed;
        }
        let last = [CURRENT, VOLTAGE].map(|channel| self.filter.last_three(channel, &raw));
        self.filter.push(&raw, &mut middle);
        self.take(refrigerant, &raw, &mut middle, last, before_ms, &mut pushed.events);
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
        self.off_time = OffTime::new();
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

    fn take(
        &mut self,
        refrigerant: Option<&Refrigerant<'_>>,
        raw: &[Option<i32>; CHANNELS],
        middle: &mut [Option<i32>; CHANNELS],
        [amps, volts]: [Option<[i32; 3]>; 2],
        before_ms: u64,
        events: &mut Events,
    ) {
        let now = (self.last_ms as u32, self.last_ms);
        let low = middle[SUCTION];
        let high = middle[DISCHARGE].or(middle[LIQUID]);
        let mut started_on = self.running_since(raw, before_ms);
        let judged = match (amps, low, high) {
            (Some([.., newest]), ..)
                if self.power == Power::Off
                    && volts.is_some_and(|volts| power::starts_at_once(newest, volts, &self.plate)) =>
            {
                started_on = self.last_ms;
                middle[CURRENT] = Some(newest);
                Power::On
            }
            (Some(amps), ..) => {
                power::from_current(self.power, amps, self.start.is_coming_up(now.0), &self.plate)
            }
            (None, Some(low), Some(high)) if raw[CURRENT].is_none() => {
                let raw_low = raw[SUCTION].unwrap_or(low);
                let raw_high = raw[DISCHARGE].or(raw[LIQUID]).unwrap_or(high);
                let hot = middle[DISCHARGE_LINE].zip(middle[AMBIENT]).map(|(pipe, air)| pipe - air);
                self.pressures.judge(self.power, (low, high), (raw_low, raw_high), hot, self.hunting.swings())
            }
            _ => self.power,
        };
        // A sample that fills or judges a block costs enough; where samples are rarer more of them count.
        let since = self.last_ms.wrapping_sub(before_ms);
        let frequent = since < FREQUENT_MS;
        let filling = since < RARE_MS && self.block.fills(now.0);
        let busy = (filling && frequent) || (since < RARE_MS && self.due);
        let at = Now {
            time_ms: now.1,
            now: now.0,
            current: middle[CURRENT],
            raw_current: raw[CURRENT],
            volts: middle[VOLTAGE],
            pressures: low.zip(high),
            superheat: if busy { None } else { self.superheat(refrigerant, middle) },
            filling: filling || (frequent && self.due),
            unsettled: self.unsettled,
        };
        match (self.power, judged) {
            (Power::Unknown, Power::On | Power::Off) => {
                self.power = judged;
                self.anew(now.0);
            }
            (Power::Off, Power::On) => self.started(started_on, raw, middle, &at, events),
            (Power::On, Power::Off) => self.stopped(before_ms, low, events),
            _ => {}
        }
        match self.power {
            Power::Unknown => return,
            Power::On => self.on(&at, low, high, now, events),
            Power::Off => self.off(refrigerant.filter(|_| !busy), low, middle, now, events),
        }
        if matches!(self.pump_down, PumpDown::Holding(_)) {
            // Only the rise is followed.
            return;
        }
        // A full block is put away with one sample and judged with the next: no sample costs both.
        if core::mem::take(&mut self.due) {
            self.judge(now.1, events);
        }
        if let Some(means) = self.block.push(middle, now.0) {
            self.window.push(&means.of, means.length_ms);
            self.averages.push(&means.of);
            self.due = true;
        }
    }

    /// Judges the block that was put away last.
    fn judge(&mut self, time_ms: u64, events: &mut Events) {
        match self.power {
            Power::On => self.judge_running(time_ms, events),
            Power::Off if matches!(self.pump_down, PumpDown::None) => {
                let off_ms = self.since_known.then(|| self.elapsed());
                let standing = &mut self.found_standing;
                self.off_time.block(&self.window, &self.averages, off_ms, time_ms, standing, events);
            }
            _ => {}
        }
    }

    /// Finds the first sample of a run that the middle of three shows one sample late.
    fn running_since(&self, raw: &[Option<i32>; CHANNELS], before_ms: u64) -> u64 {
        // The middle of three turns on with the second sample that is on: the first was the one before.
        if raw[CURRENT].is_some() { before_ms } else { self.last_ms }
    }

    /// Finds the superheat, 1/256 K, while a start is followed.
    fn superheat(
        &self,
        refrigerant: Option<&Refrigerant<'_>>,
        middle: &[Option<i32>; CHANNELS],
    ) -> Option<i32> {
        if self.power != Power::On || !self.start.is_open() {
            return None;
        }
        let line = middle[SUCTION_LINE].or(middle[EVAPORATOR_OUTLET])?;
        Some(line - dew(refrigerant?, middle[SUCTION]?)?)
    }

    /// Finds the temperature of the coil of a stopped machine, 1/256 degC, and whether a clamp shows it.
    ///
    /// While it is being warmed, its pressure tells sooner than a clamp; between bubble and dew a blend's dew
    /// temperature lies above the coil by up to its glide. Once it is dry, only the clamp tells that it cools.
    fn coil(
        &self,
        refrigerant: Option<&Refrigerant<'_>>,
        middle: &[Option<i32>; CHANNELS],
    ) -> Option<(i32, bool)> {
        let clamp = middle[EVAPORATOR_OUTLET].or(middle[SUPPLY_AIR]);
        if self.off_time.defrost && self.off_time.by_clamp {
            return Some((clamp?, true));
        }
        let saturated = || {
            let (refrigerant, low) = refrigerant.zip(middle[SUCTION])?;
            Some(dew(refrigerant, low)? - fixed(refrigerant.glide().kelvins(), 8))
        };
        Some((saturated().max(clamp)?, clamp.is_some()))
    }

    fn started(
        &mut self,
        time_ms: u64,
        raw: &[Option<i32>; CHANNELS],
        middle: &[Option<i32>; CHANNELS],
        at: &Now,
        events: &mut Events,
    ) {
        let since = time_ms as u32;
        let off_ms = since.wrapping_sub(self.since);
        let minutes = self.since_known.then(|| off_ms as f32 * (1.0 / 60_000.0));
        self.off_time.end((at.now, at.time_ms), events);
        if let PumpDown::Holding(rise) = &mut self.pump_down {
            rise.tell(at.time_ms, &mut self.found_pump_down, events);
        }
        self.pump_down = PumpDown::None;
        events.add(EventKind::Start, time_ms, [minutes, None, None]);
        if self.since_known && off_ms >= LONG_STOP_MS {
            // Refrigerant moves to the coldest place: a compressor no warmer than the air around it is one.
            if let (Some(body), Some(ambient)) = (middle[DISCHARGE_LINE], middle[AMBIENT])
                && body <= ambient + (3 << 8)
            {
                events.add(EventKind::MigrationLikely, time_ms, [minutes, Some(number(body, 8)), None]);
            }
        }
        (self.power, self.since_known, self.since, self.starting) = (Power::On, true, since, true);
        self.running = State::Unsteady;
        self.unsettled = true;
        self.tripped = false;
        // The sample before was the first of the run; its current is the smaller of two, the middle, or this one.
        let peak = raw[CURRENT].map(|current| current.max(middle[CURRENT].unwrap_or(0)));
        self.start.begin(since, peak, at);
        self.anew(at.now);
    }

    fn stopped(&mut self, time_ms: u64, low: Option<i32>, events: &mut Events) {
        let now = (time_ms as u32, time_ms);
        let run_ms = now.0.wrapping_sub(self.since);
        let minutes = self.since_known.then(|| run_ms as f32 * (1.0 / 60_000.0));
        events.add(EventKind::Stop, time_ms, [minutes, None, None]);
        self.tripped = self.since_known && self.start.failed(&self.plate, time_ms, run_ms, events);
        if self.tripped {
            self.cycling.failed(now, events);
        } else if let PumpDown::Pumping(pumping) = &mut self.pump_down {
            if let Some(low) = low {
                pumping.push(low, now.0);
            }
            pumping.end(now, &mut self.found_pump_down, events);
        } else if self.since_known {
            self.cycling.ran(run_ms, now, events);
        }
        if let PumpDown::Pumping(pumping) = &self.pump_down {
            // The rise counts from here, whatever was reached before.
            self.pump_down = PumpDown::Holding(Rise::new(pumping.smooth(), now.0));
        }
        self.start.end();
        (self.power, self.since_known, self.since) = (Power::Off, true, now.0);
        self.off_time = OffTime::new();
        self.anew(self.last_ms as u32);
    }

    fn on(&mut self, at: &Now, low: Option<i32>, high: Option<i32>, now: (u32, u64), events: &mut Events) {
        self.start.push(&self.plate, at, events);
        if let Some(peak) = self.start.peak(&self.plate) {
            self.found_start = peak;
        }
        if self.starting && self.elapsed() >= STARTING_MS {
            // What belongs to the start is not part of the statistics of running.
            self.starting = false;
            self.anew(now.0);
        }
        let Some(low) = low else { return };
        if let PumpDown::Pumping(pumping) = &mut self.pump_down {
            if pumping.push(low, now.0) {
                pumping.end(now, &mut self.found_pump_down, events);
                self.pump_down = PumpDown::None;
                self.running = State::Unsteady;
                self.anew(now.0);
            }
        } else if !self.starting {
            let ran_ms = if self.since_known { self.elapsed() } else { u32::MAX };
            let swings = self.hunting.swings();
            self.pump_down = PumpDown::look(&self.window, (low, high), ran_ms, swings, now, events);
            if self.pump_down.is_pumping() {
                self.start.end();
                self.anew(now.0);
            } else {
                self.hunting.push(low, now, events);
            }
        }
    }

    fn off(
        &mut self,
        refrigerant: Option<&Refrigerant<'_>>,
        low: Option<i32>,
        middle: &[Option<i32>; CHANNELS],
        now: (u32, u64),
        events: &mut Events,
    ) {
        if let PumpDown::Holding(rise) = &mut self.pump_down {
            if let Some(low) = low
                && rise.push(low, now, &mut self.found_pump_down, events)
            {
                self.pump_down = PumpDown::None;
                self.anew(now.0);
            }
            return;
        }
        if let (Some((coil, by_clamp)), Some(space)) = (self.coil(refrigerant, middle), middle[SPACE]) {
            self.off_time.sample(coil, by_clamp, space, now, events);
        }
    }

    /// Judges the running state with every block after the first minute.
    fn judge_running(&mut self, time_ms: u64, events: &mut Events) {
        if self.starting || self.pump_down.is_pumping() {
            self.window = Window::new();
            self.averages = Averages::new();
            return;
        }
        let before = self.running;
        let trends = self.window.trends();
        if let Some(mut state) = running::judge(&trends, self.plate.regulator, before) {
            if self.hunting.hunts() {
                state = State::Unsteady;
            }
            self.running = state;
            self.unsettled = !self.plate.regulator && running::unsettled(&trends);
            let mean = |channel: usize, places| Some(number((*trends.get(channel)?)?.mean, places));
            match state {
                State::Steady if before != State::Steady => {
                    let values = [mean(LOW, 8), mean(window::HIGH, 8), mean(window::AMPS, 10)];
                    events.add(EventKind::Steady, time_ms, values);
                }
                State::PullingDown if before != State::PullingDown => {
                    let slope = trends[LOW].map(|low| number(low.slope, 8) * (1.0 / 16.0));
                    events.add(EventKind::PullingDown, time_ms, [mean(LOW, 8), slope, None]);
                }
                _ => {}
            }
        }
        match running::current_rises(&trends) {
            Some((amps, low)) => {
                self.rises = self.rises.saturating_add(1);
                if self.rises == RISES_BLOCKS {
                    let volts = self.averages.whole(VOLTAGE).map(|volts| number(volts, 8));
                    events.add(EventKind::CurrentRises, time_ms, [Some(amps), Some(low), volts]);
                }
            }
            None if self.rises < RISES_BLOCKS => self.rises = 0,
            None => {}
        }
    }

    /// Gives what was found by tests in the stream: pump-down, standing pressure, highest current of the start.
    pub fn found(&self) -> Readings {
        let pump_down = &self.found_pump_down;
        let standing = &self.found_standing;
        let mut found = Readings::default();
        if pump_down.lowest_kpa > 0.0 {
            found.pump_down_kpa = Some(pump_down.lowest_kpa);
            found.pump_down_rise_kpa_per_min = pump_down.rise;
            found.pump_down_valve = self.plate.valve;
            // Stopped while the pressure still fell, by whomever: an upper bound.
            let by = if pump_down.at_limit { PumpDownEnd::Limit } else { PumpDownEnd::Technician };
            found.pump_down_ended_by = Some(by);
        }
        if standing.kpa > 0.0 {
            found.standing_pressure_kpa = Some(standing.kpa);
            found.standing_temperature_c = standing.celsius;
        }
        if self.found_start > 0 {
            found.start_current_a = Some(number(self.found_start, 10));
        }
        found
    }

    /// Gives the averaged readings while the machine is steady or pulls down smoothly, with those of [`Self::found`].
    ///
    /// `None` in every other state and until one minute was averaged.
    pub fn readings(&self) -> Option<SteadyReadings> {
        if !matches!(self.state(), State::Steady | State::PullingDown) {
            return None;
        }
        let mut result = SteadyReadings { readings: self.found(), ..SteadyReadings::default() };
        let mut any = false;
        for (channel, noise) in result.noise.iter_mut().enumerate() {
            let Some((mean, u)) = self.averages.mean(channel) else { continue };
            any = true;
            *noise = Some(u);
            if let Some(reading) = result.readings.number_mut(channel) {
                *reading = Some(mean);
            }
        }
        if self.since_known {
            result.readings.minutes_running = Some(self.elapsed() as f32 * (1.0 / 60_000.0));
        }
        result.readings.running = Some(true);
        any.then_some(result)
    }
}

/// Finds the dew temperature at a whole-number pressure, 1/256 degC.
fn dew(refrigerant: &Refrigerant<'_>, low: i32) -> Option<i32> {
    // 1/256 kPa in pascal, and 273.15 K in 1/256 K.
    let dew = refrigerant.dew_temperature(Pressure::from_pascals(low as f32 * 3.906_25)).ok()?;
    Some(fixed(dew.kelvins(), 8) - 69_926)
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
