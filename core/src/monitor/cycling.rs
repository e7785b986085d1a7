//! Starts that fail and runs that are too short, one after the other.

use super::event::{EventKind, Events};

/// Longest run that counts as short, ms: three minutes (common practice; a hermetic wants longer to return its oil).
const SHORT_MS: u32 = 180_000;
/// Longest stop between short runs, ms.
const BETWEEN_MS: u32 = 600_000;
/// Short runs in a row that are told.
const ENOUGH: u8 = 3;
/// Longest time between failed starts of one series, ms.
const SERIES_MS: u32 = 900_000;

/// The counts.
#[derive(Clone, Copy, Debug)]
pub(super) struct Cycling {
    failed: u8,
    failed_at: u32,
    short: u8,
    short_at: u32,
    short_sum_ms: u32,
}

impl Cycling {
    pub(super) const fn new() -> Self {
        Self { failed: 0, failed_at: 0, short: 0, short_at: 0, short_sum_ms: 0 }
    }

    /// Counts a failed start; two in a series are the overload that opens and closes.
    pub(super) fn failed(&mut self, now: (u32, u64), events: &mut Events) {
        let between = now.0.wrapping_sub(self.failed_at);
        self.failed = if self.failed > 0 && between <= SERIES_MS { self.failed.saturating_add(1) } else { 1 };
        self.failed_at = now.0;
        self.short = 0;
        if self.failed >= 2 {
            let values = [Some(f32::from(self.failed)), Some(between as f32 * 0.001), None];
            events.add(EventKind::OverloadCycling, now.1, values);
        }
    }

    /// Counts an ordinary run that has ended.
    pub(super) fn ran(&mut self, run_ms: u32, now: (u32, u64), events: &mut Events) {
        self.failed = 0;
        if run_ms > SHORT_MS {
            self.short = 0;
            return;
        }
        if self.short > 0 && now.0.wrapping_sub(self.short_at) > BETWEEN_MS + run_ms {
            self.short = 0;
        }
        if self.short == 0 {
            self.short_sum_ms = 0;
        }
        self.short = self.short.saturating_add(1);
        self.short_at = now.0;
        self.short_sum_ms = self.short_sum_ms.saturating_add(run_ms);
        if self.short == ENOUGH {
            let seconds = self.short_sum_ms as f32 * (0.001 / f32::from(ENOUGH));
            events.add(EventKind::ShortCycling, now.1, [Some(f32::from(ENOUGH)), Some(seconds), None]);
        }
    }
}
