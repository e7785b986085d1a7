//! The pump-down against a closed valve, recognised from the pressures alone, and the rise after it.

mod pumping;
mod rise;

pub(super) use pumping::Pumping;
pub(super) use rise::Rise;

use super::event::{EventKind, Events};
use super::fixed_point::{number, share};
use super::trend::{HIGH, LOW, Window};

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

/// How far a pump-down has come, with what is followed of it.
#[derive(Clone, Copy, Debug)]
pub(super) enum PumpDown {
    /// There is none.
    None,
    /// The compressor runs against the closed valve.
    Pumping(Pumping),
    /// It has stopped and the valve is closed.
    Holding(Rise),
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
    /// Tells whether the compressor runs against a closed valve.
    pub(super) fn is_pumping(&self) -> bool {
        matches!(self, Self::Pumping(_))
    }

    /// Looks whether a valve was closed, while the compressor runs after its first minute.
    pub(super) fn look(
        window: &Window,
        (low, high): (i32, Option<i32>),
        ran_ms: u32,
        swings: bool,
        now: (u32, u64),
        events: &mut Events,
    ) -> Self {
        let recent = |channel| window.row(channel).iter().take(BACK).copied().max();
        let Some(highest) = recent(LOW) else { return Self::None };
        let closed = if ran_ms < EARLY_MS || swings { CLOSED_EARLY } else { CLOSED };
        let rising = match (high, recent(HIGH)) {
            (Some(high), Some(recent)) => high > share(recent, NOT_RISING),
            _ => false,
        };
        if low >= share(highest, closed) || rising {
            return Self::None;
        }
        events.add(EventKind::PumpDown, now.1, [Some(number(low, 8)), None, None]);
        Self::Pumping(Pumping::new(low, now.0))
    }
}
