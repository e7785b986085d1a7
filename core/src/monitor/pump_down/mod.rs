//! The pump-down against a closed valve, recognised from the pressures alone, and the rise after it.

use super::event::{EventKind, Events};
use super::fixed::{number, share};
use super::window::{HIGH, LOW, Window};

/// Blocks back to which the suction pressure is compared: one minute.
const BACK: usize = 5;
/// Share of the highest suction pressure of that minute below which a valve was closed, 1/256.
const CLOSED: i32 = 166;
/// The same in the first three minutes of a run, in which suction falls by itself, and where it swings already.
const CLOSED_EARLY: i32 = 115;
/// Length of that early part, ms.
const EARLY_MS: u32 = 180_000;
/// Share of the recent discharge pressure that a closed valve does not let it exceed, 1/256.
const NOT_RISING: i32 = 259;
/// Longest time over which the rise is measured, ms.
const RISE_MS: u32 = 120_000;
/// Shortest time over which it is measured, ms.
const RISE_LEAST_MS: u32 = 15_000;
/// Rise that is measured well enough before that time has passed, 1/256 kPa.
const RISE_ENOUGH: i32 = 30 << 8;
/// Time after the stop that is left out: the valves of the compressor close, ms.
const RISE_SKIP_MS: u32 = 2_000;
/// Rise of pressure in a second that no leak makes, 1/256 kPa.
const JUMP: i32 = 6 << 8;

/// How far a pump-down has come.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Phase {
    /// None.
    None,
    /// The compressor runs against the closed valve.
    Pumping,
    /// It has stopped and the valve is closed.
    Holding,
}

/// What is followed of a pump-down.
#[derive(Clone, Copy, Debug)]
pub(super) struct PumpDown {
    pub(super) phase: Phase,
    rise_told: bool,
    jumps: u8,
    since: u32,
    smooth: i32,
    lowest: i32,
    before: i32,
    earlier: i32,
    earlier_at: u32,
    last: i32,
    count: i32,
    sum_t: i32,
    sum_tt: i64,
    sum_p: i32,
    sum_tp: i64,
}

/// The result that is given to the diagnosis.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct PumpDownResult {
    /// Lowest pressure, kPa; 0 is none.
    pub(super) lowest_kpa: f32,
    /// Rise, kPa/min.
    pub(super) rise: Option<f32>,
    /// Whether the pressure fell no further when the compressor stopped.
    pub(super) at_limit: bool,
}

impl PumpDown {
    pub(super) const fn new() -> Self {
        Self {
            phase: Phase::None,
            rise_told: false,
            jumps: 0,
            since: 0,
            smooth: 0,
            lowest: 0,
            before: 0,
            earlier: 0,
            earlier_at: 0,
            last: 0,
            count: 0,
            sum_t: 0,
            sum_tt: 0,
            sum_p: 0,
            sum_tp: 0,
        }
    }

    /// Looks whether a valve was closed, while the compressor runs after its first minute.
    pub(super) fn look(
        &mut self,
        window: &Window,
        (low, high): (i32, Option<i32>),
        ran_ms: u32,
        swings: bool,
        now: (u32, u64),
        events: &mut Events,
    ) {
        let recent = |channel| window.row(channel).iter().take(BACK).copied().max();
        let Some(highest) = recent(LOW) else { return };
        let closed = if ran_ms < EARLY_MS || swings { CLOSED_EARLY } else { CLOSED };
        let rising = match (high, recent(HIGH)) {
            (Some(high), Some(recent)) => high > share(recent, NOT_RISING),
            _ => false,
        };
        if low >= share(highest, closed) || rising {
            return;
        }
        *self = Self {
            phase: Phase::Pumping,
            since: now.0,
            smooth: low,
            lowest: low,
            before: low,
            earlier: low,
            earlier_at: now.0,
            last: low,
            ..Self::new()
        };
        events.add(EventKind::PumpDown, now.1, [Some(number(low, 8)), None, None]);
    }

    /// Follows the pressure down; tells whether the valve was opened again.
    pub(super) fn pump(&mut self, low: i32, now: u32) -> bool {
        self.smooth += (low - self.smooth + 1) >> 1;
        // Not smoothed: a pressure that still falls when the compressor stops would be told too high.
        self.lowest = self.lowest.min(low);
        if now.wrapping_sub(self.earlier_at) >= 10_000 {
            self.earlier_at = now;
            (self.before, self.earlier) = (self.earlier, self.smooth);
        }
        // It creeps up by itself when discharge pressure rises; it jumps when the valve is opened.
        self.smooth > self.before + self.before / 4 + (8 << 8)
    }

    /// Ends the pumping: tells the lowest pressure and whether it fell no further.
    pub(super) fn lowest(&mut self, now: (u32, u64), result: &mut PumpDownResult, events: &mut Events) {
        // Against the pressure of ten to twenty seconds ago.
        let fell = self.before - self.smooth;
        let at_limit = fell <= 256.max(self.smooth / 32);
        let lowest_kpa = number(self.lowest.max(1), 8);
        *result = PumpDownResult { lowest_kpa, rise: None, at_limit };
        let seconds = now.0.wrapping_sub(self.since) as f32 * 0.001;
        let values = [Some(lowest_kpa), Some(seconds), Some(if at_limit { 1.0 } else { 0.0 })];
        events.add(EventKind::PumpDownLowest, now.1, values);
    }

    /// Begins to measure the rise, when the compressor has stopped.
    pub(super) fn hold(&mut self, since: u32) {
        // The rise counts from here, whatever was reached before.
        let smooth = self.smooth;
        *self = Self {
            phase: Phase::Holding,
            since,
            lowest: smooth,
            smooth,
            last: smooth,
            earlier_at: since,
            ..Self::new()
        };
    }

    /// Follows the rise; tells whether the valve was opened again.
    pub(super) fn rise(
        &mut self,
        low: i32,
        now: (u32, u64),
        result: &mut PumpDownResult,
        events: &mut Events,
    ) -> bool {
        let elapsed = now.0.wrapping_sub(self.since);
        let seconds = (now.0.wrapping_sub(self.earlier_at) / 1000).min(30) as i32;
        if elapsed < RISE_SKIP_MS {
            (self.last, self.earlier_at) = (low, now.0);
            return false;
        }
        // A leak is slow and changes its rate slowly; a valve that opens is neither.
        if (low - self.last).abs() > JUMP * (seconds + 1) {
            self.jumps += 1;
            if self.jumps >= 3 {
                self.tell(now, result, events);
                return true;
            }
            return false;
        }
        self.jumps = 0;
        (self.last, self.earlier_at) = (low, now.0);
        if self.rise_told {
            return false;
        }
        let t = (elapsed >> 6) as i32;
        let p = (low - self.lowest).clamp(-(100 << 8), 1000 << 8);
        self.count += 1;
        self.sum_t = self.sum_t.saturating_add(t);
        self.sum_tt += i64::from(t) * i64::from(t);
        self.sum_p = self.sum_p.saturating_add(p);
        self.sum_tp += i64::from(t) * i64::from(p);
        if elapsed >= RISE_MS || (elapsed >= RISE_LEAST_MS && p > RISE_ENOUGH) {
            self.tell(now, result, events);
        }
        false
    }

    /// Tells the rise, where it was followed for long enough.
    pub(super) fn tell(&mut self, now: (u32, u64), result: &mut PumpDownResult, events: &mut Events) {
        let elapsed = now.0.wrapping_sub(self.since);
        if self.rise_told || elapsed < RISE_LEAST_MS || self.count < 4 {
            return;
        }
        self.rise_told = true;
        let n = self.count as f32;
        let (t, p) = (self.sum_t as f32 / n, self.sum_p as f32 / n);
        let spread = self.sum_tt as f32 / n - t * t;
        let common = self.sum_tp as f32 / n - t * p;
        if spread <= 0.0 {
            return;
        }
        // Units of 64 ms and 1/256 kPa.
        let rise = common / spread * (60_000.0 / (64.0 * 256.0));
        result.rise = Some(rise);
        let seconds = Some(elapsed as f32 * 0.001);
        events.add(EventKind::PumpDownRise, now.1, [Some(rise), seconds, None]);
    }
}
