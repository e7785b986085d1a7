//! A valve that hunts: the suction pressure swings up and down at one period.

use super::event::{EventKind, Events};
use super::fixed_point::number;

/// Half periods that count as a swing of a valve, ms.
const HALF_PERIOD_MS: (u32, u32) = (8_000, 240_000);
/// Half periods in a row that make it hunting.
const ENOUGH: u8 = 4;

/// The last turns of the suction pressure.
#[derive(Clone, Copy, Debug)]
pub(super) struct Hunting {
    rising: bool,
    extreme: i32,
    extreme_at: u32,
    turn: i32,
    turn_at: u32,
    half_ms: u32,
    swing: i32,
    turns: u8,
    told: bool,
}

impl Hunting {
    pub(super) const fn new(low: i32, now: u32) -> Self {
        Self {
            rising: false,
            extreme: low,
            extreme_at: now,
            turn: low,
            turn_at: now,
            half_ms: 0,
            swing: 0,
            turns: 0,
            told: false,
        }
    }

    /// Tells whether it hunts at the moment.
    pub(super) fn hunts(&self) -> bool {
        self.told
    }

    /// Tells whether it has swung at all lately.
    pub(super) fn swings(&self) -> bool {
        self.turns > 0
    }

    /// Follows the suction pressure.
    pub(super) fn push(&mut self, low: i32, now: (u32, u64), events: &mut Events) {
        if self.extreme == 0 {
            *self = Self::new(low, now.0);
        }
        // A turn counts when the pressure has come back by 3 % and 1 kPa: more than a gauge scatters.
        let back = low / 32 + 256;
        let further = if self.rising { low > self.extreme } else { low < self.extreme };
        if further {
            (self.extreme, self.extreme_at) = (low, now.0);
        } else if (low - self.extreme).abs() > back {
            self.turned(low, now, events);
        }
        let quiet = now.0.wrapping_sub(self.extreme_at);
        if self.turns > 0 && quiet > self.half_ms.saturating_mul(2).max(HALF_PERIOD_MS.0 * 4) {
            (self.turns, self.told) = (0, false);
        }
    }

    fn turned(&mut self, low: i32, now: (u32, u64), events: &mut Events) {
        let half = self.extreme_at.wrapping_sub(self.turn_at);
        let swing = (self.extreme - self.turn).abs();
        let alike = self.turns == 0
            || (half < self.half_ms.saturating_mul(2)
                && half > self.half_ms / 2
                && swing < self.swing.saturating_mul(3)
                && swing > self.swing / 3);
        let a_swing = half >= HALF_PERIOD_MS.0 && half <= HALF_PERIOD_MS.1;
        if a_swing && alike {
            if self.turns == 0 {
                (self.half_ms, self.swing) = (half, swing);
            } else {
                self.half_ms = (self.half_ms * 3).saturating_add(half) / 4;
                self.swing = (self.swing.saturating_mul(3)).saturating_add(swing) / 4;
            }
            self.turns = self.turns.saturating_add(1);
        } else if a_swing {
            (self.half_ms, self.swing, self.turns, self.told) = (half, swing, 1, false);
        } else {
            (self.turns, self.told) = (0, false);
        }
        (self.turn, self.turn_at) = (self.extreme, self.extreme_at);
        (self.extreme, self.extreme_at) = (low, now.0);
        self.rising = !self.rising;
        if self.turns >= ENOUGH && !self.told {
            self.told = true;
            let period = self.half_ms as f32 * 0.002;
            events.add(EventKind::Hunting, now.1, [Some(period), Some(number(self.swing, 8)), None]);
        }
    }
}
