//! The rise of pressure after a pump-down, by the least-squares line through means of six seconds.
//!
//! What a gauge shows over seconds has much in common, so the line goes through means and its uncertainty is that of
//! correlated ones. It is measured for two minutes, and for up to five where that leaves it uncertain: a small leak is
//! lost in a gauge's scatter of two minutes. A rise within its uncertainty is told as none.

use super::PumpDownResult;
use crate::monitor::event::{EventKind, Events};

/// Length of a mean, ms.
const MEAN_MS: u32 = 6_000;
/// Fewest means of a rise.
const FEWEST: i32 = 3;
/// Time over which the rise is measured, and longest time where that leaves it uncertain, ms.
const ENOUGH_MS: u32 = 120_000;
const LONGEST_MS: u32 = 300_000;
/// Rise that is measured well enough before that time has passed, 1/256 kPa.
const ENOUGH: i32 = 30 << 8;
/// Time after the stop that is left out: the valves of the compressor close, ms.
const SKIP_MS: u32 = 2_000;
/// Rise of pressure in a second that no leak makes, 1/256 kPa, and samples in a row that show it.
const JUMP: i32 = 6 << 8;
const JUMPS: u8 = 3;
/// Rise over its standard uncertainty from which it is known well enough: 10 % is then 2.5 of them.
const WELL_KNOWN: f32 = 25.0;
/// Rise over its standard uncertainty up to which the scatter of the gauge may be all there is of it.
const SHOWN: f32 = 3.0;
/// Part by which the variance of a line through means with half in common exceeds that through independent ones:
/// (1 + r) / (1 - r) of the correlation r of neighbours. Half is what six seconds leave of noise that lasts five.
const IN_COMMON: f32 = 3.0;

/// What is followed of the rise.
#[derive(Clone, Copy, Debug)]
pub(in crate::monitor) struct Rise {
    since: u32,
    from: i32,
    last: i32,
    last_at: u32,
    told: bool,
    jumps: u8,
    /// Means in the sums.
    means: u8,
    /// Samples of the mean that is being made, and their sum.
    samples: u8,
    sum: i32,
    /// Times since the stop of the beginning of that mean and of the mean that waits, in 64 ms; 0 is none.
    began: u16,
    waiting_at: u16,
    waiting: i32,
    sum_t: i32,
    sum_tt: i32,
    sum_p: i32,
    sum_tp: i64,
    sum_pp: i64,
}

/// The line through the means.
struct Line {
    /// kPa/min.
    slope: f32,
    /// Its standard uncertainty from the scatter about it, kPa/min.
    u: f32,
    /// Length since the stop, s.
    seconds: f32,
}

impl Rise {
    /// Begins to measure, when the compressor has stopped at a pressure.
    pub(in crate::monitor) const fn new(from: i32, since: u32) -> Self {
        Self {
            since,
            from,
            last: from,
            last_at: since,
            told: false,
            jumps: 0,
            means: 0,
            samples: 0,
            sum: 0,
            began: 0,
            waiting_at: 0,
            waiting: 0,
            sum_t: 0,
            sum_tt: 0,
            sum_p: 0,
            sum_tp: 0,
            sum_pp: 0,
        }
    }

    /// Follows the rise; tells whether the valve was opened again.
    pub(in crate::monitor) fn push(
        &mut self,
        low: i32,
        now: (u32, u64),
        result: &mut PumpDownResult,
        events: &mut Events,
    ) -> bool {
        let elapsed = now.0.wrapping_sub(self.since);
        let seconds = (now.0.wrapping_sub(self.last_at) / 1000).min(30) as i32;
        if elapsed < SKIP_MS {
            (self.last, self.last_at) = (low, now.0);
            return false;
        }
        // A leak is slow and changes its rate slowly; a valve that opens is neither.
        if (low - self.last).abs() > JUMP * (seconds + 1) {
            self.jumps += 1;
            if self.jumps >= JUMPS {
                self.tell(now.1, result, events);
                return true;
            }
            return false;
        }
        self.jumps = 0;
        (self.last, self.last_at) = (low, now.0);
        if !self.told && self.mean((low - self.from).clamp(-(100 << 8), 1000 << 8), elapsed) {
            self.judge(elapsed, now.1, result, events);
        }
        false
    }

    /// Puts a pressure into the mean that is being made; tells whether another mean has come into the sums.
    ///
    /// A mean waits until the next is full: the last one may have seen the valve being opened.
    fn mean(&mut self, p: i32, elapsed: u32) -> bool {
        // Told after five minutes at the latest: fits.
        let t = (elapsed >> 6).min(u32::from(u16::MAX)) as u16;
        if self.samples == 0 {
            self.began = t;
        }
        self.samples = self.samples.saturating_add(1);
        self.sum += p;
        if u32::from(t - self.began.min(t)) << 6 < MEAN_MS && self.samples < u8::MAX {
            return false;
        }
        let full = (self.sum.checked_div(i32::from(self.samples)).unwrap_or(p), self.began.midpoint(t));
        let (p, at) = (self.waiting, self.waiting_at);
        (self.waiting, self.waiting_at) = full;
        (self.samples, self.sum) = (0, 0);
        if at == 0 {
            return false;
        }
        let t = i32::from(at);
        self.means = self.means.saturating_add(1);
        self.sum_t += t;
        self.sum_tt = self.sum_tt.saturating_add(t * t);
        self.sum_p += p;
        self.sum_tp += i64::from(t) * i64::from(p);
        self.sum_pp += i64::from(p) * i64::from(p);
        true
    }

    /// Tells the rise once it is known well enough, or will hardly be known better.
    fn judge(&mut self, elapsed: u32, time_ms: u64, result: &mut PumpDownResult, events: &mut Events) {
        let large = self.waiting > ENOUGH;
        if !large && elapsed < ENOUGH_MS {
            return;
        }
        let Some(line) = self.line() else { return };
        if large || elapsed >= LONGEST_MS || line.slope > WELL_KNOWN * line.u {
            self.tell_line(&line, time_ms, result, events);
        }
    }

    /// Tells the rise, where it was followed for long enough.
    pub(in crate::monitor) fn tell(
        &mut self,
        time_ms: u64,
        result: &mut PumpDownResult,
        events: &mut Events,
    ) {
        if !self.told
            && let Some(line) = self.line()
        {
            self.tell_line(&line, time_ms, result, events);
        }
    }

    fn tell_line(&mut self, line: &Line, time_ms: u64, result: &mut PumpDownResult, events: &mut Events) {
        self.told = true;
        let rise = if line.slope > SHOWN * line.u { line.slope } else { 0.0 };
        result.rise = Some(rise);
        events.add(EventKind::PumpDownRise, time_ms, [Some(rise), Some(line.seconds), Some(line.u)]);
    }

    /// Fits the line, `None` while there are too few means.
    fn line(&self) -> Option<Line> {
        let n = i32::from(self.means);
        if n < FEWEST {
            return None;
        }
        let about = |a: i32, b: i32, ab: i64| (i64::from(n) * ab - i64::from(a) * i64::from(b)) as f32;
        let tt = about(self.sum_t, self.sum_t, i64::from(self.sum_tt));
        let tp = about(self.sum_t, self.sum_p, self.sum_tp);
        let pp = about(self.sum_p, self.sum_p, self.sum_pp);
        if tt <= 0.0 {
            return None;
        }
        let slope = tp / tt;
        let variance = (pp - slope * tp).max(0.0) / (tt * (n - 2) as f32);
        // From units of 64 ms and 1/256 kPa.
        let unit = 60_000.0 / (64.0 * 256.0);
        // The last mean in the sums ends where the one that waits begins.
        let seconds = (f32::from(self.waiting_at) * 0.064 - 0.0005 * MEAN_MS as f32).max(0.0);
        Some(Line { slope: slope * unit, u: libm::sqrtf(variance * IN_COMMON) * unit, seconds })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Follows a rise of some kPa/min with a scatter of 0.3 kPa, opens the valve after some seconds, and gives the
    /// figures of the event and whether the valve was seen.
    fn told(kpa_per_min: f64, opened_s: u32) -> (Option<[Option<f32>; 3]>, bool) {
        let (mut rise, mut result, mut events) =
            (Rise::new(30 << 8, 0), PumpDownResult::default(), Events::default());
        let mut opened = false;
        for second in 1..opened_s + 4 {
            // A wave of seven seconds, as a gauge wanders.
            let wander = 0.3 * libm::sin(f64::from(second) * 0.9);
            let mut kpa = 30.0 + kpa_per_min * f64::from(second) / 60.0 + wander;
            if second >= opened_s {
                kpa += 40.0 * f64::from(second - opened_s + 1);
            }
            let now = (1000 * second, u64::from(1000 * second));
            opened |= rise.push(libm::round(kpa * 256.0) as i32, now, &mut result, &mut events);
        }
        (events.as_slice().first().map(|event| event.values), opened)
    }

    #[test]
    fn a_rise_is_told_with_its_uncertainty() {
        for kpa_per_min in [1.0f64, 3.0, 12.0] {
            let (values, opened) = told(kpa_per_min, 400);
            let [Some(rise), Some(seconds), Some(u)] = values.unwrap() else { panic!("{values:?}") };
            assert!((f64::from(rise) - kpa_per_min).abs() < f64::from(2.0 * u), "{rise} +- {u}");
            assert!(u > 0.01 && u < 0.2, "{u}");
            assert!((100.0..=300.0).contains(&seconds));
            assert!(opened);
        }
    }

    #[test]
    fn a_rise_within_its_uncertainty_is_none() {
        assert_eq!(told(0.0, 200).0.unwrap()[0], Some(0.0));
    }

    #[test]
    fn the_opened_valve_is_no_rise() {
        for opened_s in [47, 50, 53, 90] {
            let (values, opened) = told(3.0, opened_s);
            let rise = values.unwrap()[0].unwrap();
            assert!(opened && (rise - 3.0).abs() < 0.6, "{rise} after {opened_s} s");
        }
        // Opened at once: nothing was measured.
        assert_eq!(told(3.0, 10).0, None);
    }
}
