//! The compressor runs against the closed valve: how low it comes, and whether it could come lower.

use super::PumpDownResult;
use crate::monitor::event::{EventKind, Events};
use crate::monitor::fixed_point::number;

/// Time between the pressures that tell whether it still falls, ms.
const BEFORE_MS: u32 = 10_000;

/// What is followed while the compressor pumps down.
#[derive(Clone, Copy, Debug)]
pub(in crate::monitor) struct Pumping {
    since: u32,
    smooth: i32,
    lowest: i32,
    before: i32,
    earlier: i32,
    earlier_at: u32,
}

impl Pumping {
    pub(super) const fn new(low: i32, now: u32) -> Self {
        Self { since: now, smooth: low, lowest: low, before: low, earlier: low, earlier_at: now }
    }

    /// The pressure of the last two or three samples, 1/256 kPa.
    pub(in crate::monitor) fn smooth(&self) -> i32 {
        self.smooth
    }

    /// Follows the pressure down; tells whether the valve was opened again.
    pub(in crate::monitor) fn push(&mut self, low: i32, now: u32) -> bool {
        self.smooth += (low - self.smooth + 1) >> 1;
        // Not smoothed: a pressure that still falls when the compressor stops would be told too high.
        self.lowest = self.lowest.min(low);
        if now.wrapping_sub(self.earlier_at) >= BEFORE_MS {
            self.earlier_at = now;
            (self.before, self.earlier) = (self.earlier, self.smooth);
        }
        // It creeps up by itself when discharge pressure rises; it jumps when the valve is opened.
        self.smooth > self.before + self.before / 4 + (8 << 8)
    }

    /// Ends the pumping: tells the lowest pressure and whether it fell no further.
    pub(in crate::monitor) fn end(&self, now: (u32, u64), result: &mut PumpDownResult, events: &mut Events) {
        // Against the pressure of ten to twenty seconds ago.
        let fell = self.before - self.smooth;
        let at_limit = fell <= 256.max(self.smooth / 32);
        let lowest_kpa = number(self.lowest.max(1), 8);
        *result = PumpDownResult { lowest_kpa, rise: None, at_limit };
        let seconds = now.0.wrapping_sub(self.since) as f32 * 0.001;
        let values = [Some(lowest_kpa), Some(seconds), Some(if at_limit { 1.0 } else { 0.0 })];
        events.add(EventKind::PumpDownLowest, now.1, values);
    }
}
