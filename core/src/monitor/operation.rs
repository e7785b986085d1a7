//! One sample after the other: whether the compressor is on, what its start, run or stop shows, and the block it fills.

use super::Monitor;
use super::event::{EventKind, Events};
use super::filter::Filtered;
use super::fixed_point::number;
use super::operating_state::State;
use super::power::{self, Power};
use super::pump_down::{PumpDown, Rise};
use super::sample::{AMBIENT, CURRENT, DISCHARGE_LINE, SPACE, VOLTAGE};
use super::standstill::Standstill;
use super::start::Now;
use crate::refrigerant::Refrigerant;

/// Time after a start that is the start, ms.
const STARTING_MS: u32 = 60_000;
/// Stop after which a cold compressor has probably taken up refrigerant, ms (common practice).
const LONG_STOP_MS: u32 = 1_200_000;
/// Time between samples up to which they are frequent, and from which they are rare, ms.
const FREQUENT_MS: u64 = 5_000;
const RARE_MS: u64 = 12_000;

impl Monitor {
    /// Follows the machine by one sample.
    pub(super) fn follow(
        &mut self,
        refrigerant: Option<&Refrigerant<'_>>,
        seen: &mut Filtered,
        events: &mut Events,
    ) {
        let now = (self.last_ms as u32, self.last_ms);
        let (judged, since) = self.judge_power(seen);
        let (low, high) = (seen.low(), seen.high());
        // A sample that fills or judges a block costs enough; where samples are rarer more of them count.
        let waited = self.last_ms.wrapping_sub(seen.before_ms);
        let frequent = waited < FREQUENT_MS;
        let filling = waited < RARE_MS && self.block.fills(now.0);
        let busy = (filling && frequent) || (waited < RARE_MS && self.due);
        let at = Now {
            time_ms: now.1,
            now: now.0,
            current: seen.middle[CURRENT],
            raw_current: seen.raw[CURRENT],
            volts: seen.middle[VOLTAGE],
            pressures: low.zip(high),
            superheat: if busy { None } else { self.superheat(refrigerant, &seen.middle) },
            filling: filling || (frequent && self.due),
            unsettled: self.unsettled,
        };
        match (self.power, judged) {
            (Power::Unknown, Power::On | Power::Off) => {
                self.power = judged;
                self.anew(now.0);
            }
            (Power::Off, Power::On) => self.started(since, seen, &at, events),
            (Power::On, Power::Off) => self.stopped(seen.before_ms, low, events),
            _ => {}
        }
        match self.power {
            Power::Unknown => return,
            Power::On => self.on(&at, low, high, now, events),
            Power::Off => self.off(refrigerant.filter(|_| !busy), seen, now, events),
        }
        if matches!(self.pump_down, PumpDown::Holding(_)) {
            // Only the rise is followed.
            return;
        }
        // A full block is put away with one sample and judged with the next: no sample costs both.
        if core::mem::take(&mut self.due) {
            self.judge_block(now.1, events);
        }
        if let Some(means) = self.block.push(&seen.middle, seen.step, now.0) {
            self.window.push(&means);
            self.averages.push(&means.of);
            self.due = true;
        }
    }

    /// Judges the compressor's supply, and since when it is so where it is on now.
    fn judge_power(&mut self, seen: &mut Filtered) -> (Power, u64) {
        let (amps, volts) = (seen.amps, seen.volts);
        if let Some([.., newest]) = amps
            && self.power == Power::Off
            && volts.is_some_and(|volts| power::starts_at_once(newest, volts, &self.plate))
        {
            seen.middle[CURRENT] = Some(newest);
            return (Power::On, self.last_ms);
        }
        let power = match (amps, seen.low(), seen.high()) {
            (Some(amps), ..) => {
                let coming_up = self.start.is_coming_up(self.last_ms as u32);
                power::from_current(self.power, amps, coming_up, &self.plate)
            }
            (None, Some(low), Some(high)) if seen.raw[CURRENT].is_none() => {
                let raw = (seen.raw_low().unwrap_or(low), seen.raw_high().unwrap_or(high));
                let hot = seen.middle[DISCHARGE_LINE].zip(seen.middle[AMBIENT]).map(|(pipe, air)| pipe - air);
                self.pressures.judge(self.power, (low, high), raw, hot, self.hunting.swings())
            }
            _ => self.power,
        };
        // Two currents in a row show a start: its first sample was the one before.
        (power, if seen.raw[CURRENT].is_some() { seen.before_ms } else { self.last_ms })
    }

    fn started(&mut self, time_ms: u64, seen: &Filtered, at: &Now, events: &mut Events) {
        let since = time_ms as u32;
        let off_ms = since.wrapping_sub(self.since);
        let minutes = self.since_known.then(|| off_ms as f32 * (1.0 / 60_000.0));
        self.standstill.end((at.now, at.time_ms), events);
        if let PumpDown::Holding(rise) = &mut self.pump_down {
            rise.tell(at.time_ms, &mut self.found_pump_down, events);
        }
        self.pump_down = PumpDown::None;
        events.add(EventKind::Start, time_ms, [minutes, None, None]);
        if self.since_known && off_ms >= LONG_STOP_MS {
            // Refrigerant moves to the coldest place: a compressor no warmer than the air around it is one.
            if let (Some(body), Some(ambient)) = (seen.middle[DISCHARGE_LINE], seen.middle[AMBIENT])
                && body <= ambient + (3 << 8)
            {
                events.add(EventKind::MigrationLikely, time_ms, [minutes, Some(number(body, 8)), None]);
            }
        }
        (self.power, self.since_known, self.since, self.starting) = (Power::On, true, since, true);
        self.running = State::Unsteady;
        self.unsettled = true;
        self.tripped = false;
        // Of two samples the smaller current is surely of the run, and so is that of this one.
        let peak = seen.raw[CURRENT].map(|current| current.max(seen.middle[CURRENT].unwrap_or(0)));
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
            self.found_start = self.start.peak(&self.plate).unwrap_or(self.found_start);
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
        self.standstill = Standstill::new();
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
        seen: &Filtered,
        now: (u32, u64),
        events: &mut Events,
    ) {
        if let PumpDown::Holding(rise) = &mut self.pump_down {
            if let Some(low) = seen.low()
                && rise.push(low, now, &mut self.found_pump_down, events)
            {
                self.pump_down = PumpDown::None;
                self.anew(now.0);
            }
            return;
        }
        if let (Some((coil, by_clamp)), Some(space)) =
            (self.coil(refrigerant, &seen.middle), seen.middle[SPACE])
        {
            self.standstill.sample(coil, by_clamp, space, now, events);
        }
    }
}
