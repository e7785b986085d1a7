//! What a stopped machine shows: its pressures become equal and come to rest, its coil is defrosted.

use super::Monitor;
use super::average::Averages;
use super::event::{EventKind, Events};
use super::fixed_point::{fixed, number, share};
use super::sample::{CHANNELS, EVAPORATOR_OUTLET, SUCTION, SUPPLY_AIR};
use super::trend::{FULL, HIGH, LOW, Window, share_of};
use crate::quantity::Pressure;
use crate::refrigerant::Refrigerant;

/// Blocks in a row with equal pressures that make them equal: one minute.
const EQUAL_BLOCKS: u8 = 5;
/// Drift per minute below which a standing pressure rests, as a share.
const REST: u32 = share_of(0.002);
/// Scatter below which it rests, as a share.
const REST_SCATTER: u32 = share_of(0.01);
/// Largest distance between temperatures that are taken as one, 1/256 K.
const ONE_TEMPERATURE: i32 = 2 << 8;
/// Warmth of the coil over its space that only a heater gives it, 1/256 K.
const HEATED: i32 = 3 << 8;
/// Further warming that shows that the heater is on, 1/256 K.
const WARMS: i32 = 128;
/// Fall of the coil below its warmest that ends a defrost, 1/256 K.
const COOLS: i32 = 200;
/// Samples in a row that show the heating.
const SHOWN: u8 = 4;

/// What is followed while the compressor stands.
#[derive(Clone, Copy, Debug)]
pub(super) struct Standstill {
    equal: u8,
    standing_told: bool,
    heated: u8,
    pub(super) defrost: bool,
    pub(super) by_clamp: bool,
    defrost_at: u32,
    warmest: i32,
}

/// The standing pressure that is given to the diagnosis.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Standing {
    /// The pressure, kPa; 0 is none.
    pub(super) kpa: f32,
    /// The one temperature of the machine, degC.
    pub(super) celsius: Option<f32>,
}

impl Standstill {
    pub(super) const fn new() -> Self {
        Self {
            equal: 0,
            standing_told: false,
            heated: 0,
            defrost: false,
            by_clamp: false,
            defrost_at: 0,
            warmest: 0,
        }
    }

    /// Takes a block: equal pressures, and whether they rest.
    pub(super) fn block(
        &mut self,
        window: &Window,
        averages: &Averages,
        off_ms: Option<u32>,
        time_ms: u64,
        standing: &mut Standing,
        events: &mut Events,
    ) {
        let low = window.row(LOW).first().copied();
        let high = window.row(HIGH).first().copied();
        if let (Some(low), Some(high)) = (low, high) {
            if (high - low).abs() > share(high, 8) + (5 << 8) {
                self.equal = 0;
                return;
            }
            let before = self.equal;
            self.equal = (self.equal + 1).min(EQUAL_BLOCKS);
            if before + 1 == EQUAL_BLOCKS {
                let minutes = off_ms.map(|ms| ms as f32 * (1.0 / 60_000.0));
                events.add(EventKind::Equalized, time_ms, [Some(number(low, 8)), minutes, None]);
            }
            if self.equal < EQUAL_BLOCKS {
                return;
            }
        }
        // A suction gauge alone shows what it stands at as well, once it has come to rest.
        if self.standing_told || window.row(LOW).len() < FULL {
            return;
        }
        let Some(trend) = window.trend(LOW) else { return };
        if trend.level_within(REST) && trend.quiet_within(REST_SCATTER) {
            self.standing_told = true;
            *standing = Standing { kpa: number(trend.mean, 8), celsius: one_temperature(averages) };
            events.add(EventKind::StandingPressure, time_ms, [Some(standing.kpa), standing.celsius, None]);
        }
    }

    /// Takes the coil and its space. Only a heater makes the coil of a stopped machine the warmer one, and ever more so.
    ///
    /// `by_clamp` tells that a clamp shows the coil too: it alone then tells the end.
    pub(super) fn sample(
        &mut self,
        coil: i32,
        by_clamp: bool,
        space: i32,
        now: (u32, u64),
        events: &mut Events,
    ) {
        if self.defrost {
            // The clamp that tells the end may begin below what told the beginning.
            self.warmest = if self.heated == SHOWN { coil } else { self.warmest.max(coil) };
            self.heated = 0;
            if coil < self.warmest - COOLS {
                self.end(now, events);
            }
            return;
        }
        if coil <= space + HEATED {
            self.heated = 0;
            return;
        }
        if self.heated == 0 {
            self.warmest = coil;
        }
        self.heated = (self.heated + 1).min(SHOWN);
        if self.heated == SHOWN && coil > self.warmest + WARMS {
            (self.defrost, self.by_clamp, self.defrost_at, self.warmest) = (true, by_clamp, now.0, coil);
            events.add(EventKind::DefrostBegins, now.1, [Some(number(coil, 8)), None, None]);
        }
    }

    /// Ends a defrost, where there is one.
    pub(super) fn end(&mut self, now: (u32, u64), events: &mut Events) {
        if self.defrost {
            self.defrost = false;
            // It has to warm from here once more to be a new one.
            self.heated = 0;
            let minutes = now.0.wrapping_sub(self.defrost_at) as f32 * (1.0 / 60_000.0);
            let warmest = Some(number(self.warmest, 8));
            events.add(EventKind::DefrostEnds, now.1, [warmest, Some(minutes), None]);
        }
    }
}

/// Finds the one temperature of the machine: the mean of all its temperatures, where at least two agree.
fn one_temperature(averages: &Averages) -> Option<f32> {
    let (mut low, mut high, mut sum, mut count) = (i32::MAX, i32::MIN, 0, 0);
    for channel in EVAPORATOR_OUTLET..=SUPPLY_AIR + 2 {
        if let Some(value) = averages.whole(channel) {
            (low, high) = (low.min(value), high.max(value));
            sum += value;
            count += 1;
        }
    }
    if count < 2 || high - low > ONE_TEMPERATURE {
        return None;
    }
    Some(number(sum.checked_div(count)?, 8))
}

impl Monitor {
    /// Finds the temperature of the coil of a stopped machine, 1/256 degC, and whether a clamp shows it.
    ///
    /// While it is being warmed, its pressure tells sooner than a clamp; between bubble and dew a blend's dew
    /// temperature lies above the coil by up to its glide. Once it is dry, only the clamp tells that it cools.
    pub(super) fn coil(
        &self,
        refrigerant: Option<&Refrigerant<'_>>,
        middle: &[Option<i32>; CHANNELS],
    ) -> Option<(i32, bool)> {
        let clamp = middle[EVAPORATOR_OUTLET].or(middle[SUPPLY_AIR]);
        if self.standstill.defrost && self.standstill.by_clamp {
            return Some((clamp?, true));
        }
        let saturated = || {
            let (refrigerant, low) = refrigerant.zip(middle[SUCTION])?;
            Some(dew(refrigerant, low)? - fixed(refrigerant.glide().kelvins(), 8))
        };
        Some((saturated().max(clamp)?, clamp.is_some()))
    }
}

/// Finds the dew temperature at a whole-number pressure, 1/256 degC.
pub(super) fn dew(refrigerant: &Refrigerant<'_>, low: i32) -> Option<i32> {
    // 1/256 kPa in pascal, and 273.15 K in 1/256 K.
    let dew = refrigerant.dew_temperature(Pressure::from_pascals(low as f32 * 3.906_25)).ok()?;
    Some(fixed(dew.kelvins(), 8) - 69_926)
}
