//! The first minutes after a start: inrush, start gear, liquid, and what stays.

use super::Monitor;
use super::event::{EventKind, Events};
use super::fixed_point::number;
use super::power::Power;
use super::sample::{CHANNELS, EVAPORATOR_OUTLET, SUCTION, SUCTION_LINE};
use super::settings::Plate;
use super::standstill::dew;
use crate::refrigerant::Refrigerant;

/// Superheat below which the suction line is taken to carry liquid, 1/256 K.
const COLLAPSED: i32 = 9 * 128;
/// Rise of superheat above its lowest that is a recovery, 1/256 K.
const RECOVERED: i32 = 3 * 256;
/// Highest current while superheat was collapsed, over that after it recovered, from which the two go together.
const HIGH_RATIO: f32 = 1.06;
/// Time after the start before superheat is judged: the clamp still shows the stopped machine, ms.
const SETTLE_MS: u32 = 14_000;
/// Least time of collapsed superheat that counts, ms.
const COLLAPSE_MS: u32 = 9_000;
/// Time that superheat must stay recovered, ms.
const RECOVERY_MS: u32 = 15_000;
/// Time after which a start is judged even where nothing has recovered, ms.
const JUDGE_MS: u32 = 360_000;
/// Longest time that a start is left open while the machine pulls down fast, ms.
const LONGEST_MS: u32 = 900_000;
/// Longest run that ends as a failed start, ms.
pub(super) const FAILED_MS: u32 = 60_000;
/// Time that the current of start gear must last, ms: a start winding is cut out within one second (common practice).
const GEAR_MS: u32 = 4_000;

/// How far the judgement of a start has come.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Stage {
    /// No start to judge.
    Idle,
    /// Superheat and current are followed.
    Open,
}

/// What is followed from a start until it is judged.
#[derive(Clone, Copy, Debug)]
pub(super) struct Start {
    stage: Stage,
    inrush_told: bool,
    gear_told: bool,
    since: u32,
    last: u32,
    peak: i32,
    peak_volts: Option<i32>,
    high_ms: u32,
    low_samples: u8,
    pressures: Option<(i32, i32)>,
    moved: bool,
    smooth: i32,
    collapsed_ms: u32,
    collapsed_current: i32,
    lowest: i32,
    recovered_ms: u32,
}

/// The middle values that the judgement needs.
pub(super) struct Now {
    pub(super) time_ms: u64,
    pub(super) now: u32,
    pub(super) current: Option<i32>,
    pub(super) raw_current: Option<i32>,
    pub(super) volts: Option<i32>,
    pub(super) pressures: Option<(i32, i32)>,
    /// Superheat at the compressor inlet, or at the evaporator outlet, 1/256 K.
    pub(super) superheat: Option<i32>,
    /// This sample fills or judges a block, and one of the next does not: what can wait is judged then.
    pub(super) filling: bool,
    /// The suction pressure still falls so fast that the load will be much smaller soon.
    pub(super) unsettled: bool,
}

impl Start {
    pub(super) const fn new() -> Self {
        Self {
            stage: Stage::Idle,
            inrush_told: true,
            gear_told: true,
            since: 0,
            last: 0,
            peak: 0,
            peak_volts: None,
            high_ms: 0,
            low_samples: 0,
            pressures: None,
            moved: false,
            smooth: 0,
            collapsed_ms: 0,
            collapsed_current: 0,
            lowest: i32::MAX,
            recovered_ms: 0,
        }
    }

    /// Begins to follow a start; `peak` is the current of its first sample.
    pub(super) fn begin(&mut self, since: u32, peak: Option<i32>, now: &Now) {
        *self = Self {
            stage: Stage::Open,
            inrush_told: peak.is_none(),
            gear_told: false,
            since,
            last: since,
            peak: peak.unwrap_or(0),
            peak_volts: now.volts,
            pressures: now.pressures,
            smooth: now.current.unwrap_or(0),
            ..Self::new()
        };
    }

    /// Tells whether a start is being followed.
    pub(super) fn is_open(&self) -> bool {
        self.stage == Stage::Open
    }

    /// Tells whether the current may come down, or has just come down, to that of a running motor.
    pub(super) fn is_coming_up(&self, now: u32) -> bool {
        !self.inrush_told && (self.low_samples > 0 || now.wrapping_sub(self.since) < GEAR_MS)
    }

    /// Ends the following, unjudged.
    pub(super) fn end(&mut self) {
        self.stage = Stage::Idle;
        self.inrush_told = true;
    }

    /// The highest current of the last start, come up or failed, 1/1024 A; `None` where no sample fell into its inrush.
    pub(super) fn peak(&self, plate: &Plate) -> Option<i32> {
        (self.inrush_told && self.peak > self.high(plate, self.peak_volts)).then_some(self.peak)
    }

    /// Finds the current above which the start is not over: between that of a running and of a locked motor.
    fn high(&self, plate: &Plate, volts: Option<i32>) -> i32 {
        if plate.rated > 0 {
            plate.rated + plate.rated * 11 / 16
        } else if plate.locked > 0 {
            plate.locked_at(volts) / 3
        } else {
            self.peak / 2
        }
    }

    fn of_locked(&self, plate: &Plate) -> Option<f32> {
        let locked = plate.locked_at(self.peak_volts);
        (locked > 0).then(|| self.peak as f32 / locked as f32)
    }

    /// Follows the start by one sample.
    pub(super) fn push(&mut self, plate: &Plate, at: &Now, events: &mut Events) {
        if self.stage == Stage::Idle {
            return;
        }
        let elapsed = at.now.wrapping_sub(self.since);
        if let (Some((low, high)), Some((low_then, high_then))) = (at.pressures, self.pressures) {
            // A compressor that turns draws suction down and pushes discharge up by more than the gauges scatter.
            self.moved |= low < low_then - low_then / 16 && high > high_then + high_then / 32;
        }
        if let Some(current) = at.current {
            self.inrush(plate, at, current, elapsed, events);
            let step = (current - self.smooth + 4) >> 3;
            self.smooth = if self.inrush_told { self.smooth + step } else { current };
        }
        self.judge(plate, at, elapsed, events);
    }

    fn inrush(&mut self, plate: &Plate, at: &Now, current: i32, elapsed: u32, events: &mut Events) {
        let high = self.high(plate, at.volts);
        // One sample beyond the first may still belong to an inrush that the middle of three would hide.
        let seen = if elapsed < 1500 { at.raw_current.unwrap_or(current).max(current) } else { current };
        if seen > self.peak && (elapsed < 1500 || current > high) {
            self.peak = seen;
            self.peak_volts = at.volts;
        }
        if current > high {
            self.high_ms = elapsed;
        }
        let amps = |current| Some(number(current, 10));
        let locked = plate.locked_at(at.volts);
        let turns = self.moved || (locked > 0 && current < locked / 2);
        if !self.gear_told && current > high && elapsed >= GEAR_MS && turns {
            self.gear_told = true;
            let rated = (plate.rated > 0).then(|| current as f32 / plate.rated as f32);
            let seconds = Some(elapsed as f32 * 0.001);
            events.add(EventKind::StartGearStaysIn, at.time_ms, [amps(current), seconds, rated]);
        }
        self.low_samples = if current > high { 0 } else { self.low_samples.saturating_add(1) };
        if !self.inrush_told && self.low_samples >= 2 {
            self.inrush_told = true;
            if self.peak <= high {
                // Over before the first sample: nothing was seen of it.
                return;
            }
            let seconds = Some(self.high_ms as f32 * 0.001);
            events.add(EventKind::Inrush, at.time_ms, [amps(self.peak), seconds, self.of_locked(plate)]);
        }
    }

    fn judge(&mut self, plate: &Plate, at: &Now, elapsed: u32, events: &mut Events) {
        if elapsed < SETTLE_MS {
            self.last = at.now;
            return;
        }
        let seconds = |ms: u32| Some(ms as f32 * 0.001);
        if let Some(superheat) = at.superheat {
            // Not every sample has it.
            let step = at.now.wrapping_sub(self.last).min(30_000);
            self.last = at.now;
            self.lowest = self.lowest.min(superheat);
            if superheat < COLLAPSED {
                self.collapsed_ms = self.collapsed_ms.saturating_add(step);
                self.recovered_ms = 0;
                self.collapsed_current = self.collapsed_current.max(self.smooth);
            } else if superheat > self.lowest.saturating_add(RECOVERED) {
                self.recovered_ms = self.recovered_ms.saturating_add(step);
            }
            if self.collapsed_ms >= COLLAPSE_MS && self.recovered_ms >= RECOVERY_MS && !at.filling {
                self.stage = Stage::Idle;
                let early = self.collapsed_current;
                let ratio = (self.smooth > 0 && early > 0).then(|| early as f32 / self.smooth as f32);
                let kind = match ratio {
                    Some(ratio) if ratio >= HIGH_RATIO => EventKind::LiquidOnStart,
                    _ => EventKind::StartNotTold,
                };
                let values = [Some(number(self.lowest, 8)), ratio, seconds(self.collapsed_ms)];
                match kind {
                    EventKind::LiquidOnStart => events.add(kind, at.time_ms, values),
                    _ => self.settle(kind, plate, at, elapsed, events),
                }
                return;
            }
        }
        if elapsed < JUDGE_MS || at.filling || (at.unsettled && elapsed < LONGEST_MS) {
            return;
        }
        self.stage = Stage::Idle;
        let kind = if at.current.is_none() || plate.rated <= 0 {
            EventKind::StartNotTold
        } else if self.smooth > plate.rated + plate.rated / 16 {
            EventKind::StaysHigh
        } else if self.smooth > plate.rated || self.collapsed_ms >= COLLAPSE_MS {
            EventKind::StartNotTold
        } else {
            EventKind::CleanStart
        };
        self.settle(kind, plate, at, elapsed, events);
    }

    fn settle(&self, kind: EventKind, plate: &Plate, at: &Now, elapsed: u32, events: &mut Events) {
        let current = (self.smooth > 0).then(|| number(self.smooth, 10));
        let rated = (plate.rated > 0 && self.smooth > 0).then(|| self.smooth as f32 / plate.rated as f32);
        events.add(kind, at.time_ms, [current, rated, Some(elapsed as f32 * (1.0 / 60_000.0))]);
    }

    /// Tells whether a run that ends now was a start that failed, and says so.
    ///
    /// It failed when the current had not come down from that of a start when its supply was cut.
    pub(super) fn failed(&mut self, plate: &Plate, time_ms: u64, ran_ms: u32, events: &mut Events) -> bool {
        let high = self.high(plate, self.peak_volts);
        let failed = ran_ms < FAILED_MS && !self.inrush_told && self.peak > high && self.stage == Stage::Open;
        if failed {
            let values = [Some(number(self.peak, 10)), Some(ran_ms as f32 * 0.001), self.of_locked(plate)];
            events.add(EventKind::FailedStart, time_ms, values);
            // There is no more to see of it.
            self.inrush_told = true;
        }
        failed
    }
}

impl Monitor {
    /// Finds the superheat, 1/256 K, while a start is followed.
    pub(super) fn superheat(
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
}
