//! A space that stays warm: how warm a machine that lost capacity lets it get, and how warm one may be that did not.
//!
//! At its design point a machine runs about two thirds of the time. One that has less capacity left than the load takes
//! lets the space warm until load and capacity meet again; the load goes with the difference to the surroundings. Any
//! machine may be found warm for a while: just started, just loaded, the door open, a defrost.

use super::hypothesis::Hypothesis;
use crate::machine::Nominal;
use crate::normal::density;
use crate::readings::{Call, Complaint, Readings};

/// Share of its capacity that a machine needs at its design point (common practice: machines are sized to run two thirds
/// of the time).
const NEEDED: f32 = 0.65;
/// Standard deviation of a settled space about what it should be, K, and its growth with what is missing.
const SETTLED_K: f32 = 3.0;
const SETTLED_SHARE: f32 = 0.3;
/// Probability that a space is on its way down, where nothing is told; after a complaint that it is not cold; and at
/// least.
const ON_ITS_WAY: f32 = 0.5;
const ON_ITS_WAY_COMPLAINED: f32 = 0.2;
const ON_ITS_WAY_AT_LEAST: f32 = 0.03;
/// Hours in which a space on its way down gets there (judged: some hours from warm).
const HOURS_DOWN: f32 = 5.0;
/// Hours of complaint that count as hours of running: it ran all that time or would have.
const COMPLAINT_COUNTS: f32 = 0.5;

/// A space's temperature beside what it should be.
#[derive(Clone, Copy, Debug)]
pub(crate) struct WarmSpace {
    above_k: f32,
    /// How far the surroundings are above what the space should be.
    room_k: f32,
    on_its_way: f32,
}

impl WarmSpace {
    /// Reads the space; nothing where it was not read or nobody said what it should be.
    pub(super) fn new(nominal: &Nominal, readings: &Readings, told: bool, call: &Call) -> Option<Self> {
        readings.space_c.filter(|_| told)?;
        let complains = |of: &[Complaint]| {
            of.iter().any(|complaint| call.complaint.is_some_and(|told| told.has(*complaint)))
        };
        let not_cold = complains(&[Complaint::NotCold, Complaint::NeverStops]);
        let ran = readings.hours_running.or(readings.minutes_running.map(|minutes| minutes / 60.0));
        let complained = call.complaint_hours.filter(|_| not_cold).map(|hours| COMPLAINT_COUNTS * hours);
        let hours = match (ran, complained) {
            (Some(ran), Some(complained)) => Some(ran.max(complained)),
            (one, other) => one.or(other),
        };
        let start = if not_cold { ON_ITS_WAY_COMPLAINED } else { ON_ITS_WAY };
        let on_its_way = match hours {
            Some(hours) => {
                start.max(ON_ITS_WAY) * libm::expf(-(hours / HOURS_DOWN).max(0.0).min(40.0))
                    + ON_ITS_WAY_AT_LEAST
            }
            None => start,
        };
        Some(Self {
            above_k: nominal.space_k.mean - nominal.design_space_k,
            room_k: (nominal.ambient_k.mean - nominal.design_space_k).max(10.0),
            on_its_way,
        })
    }

    /// ln of the density of the space's temperature under a hypothesis.
    pub(super) fn ln(&self, hypothesis: &Hypothesis) -> f32 {
        // What is missing shows over a few percent of capacity, not all at once.
        let missing = crate::machine::positive(1.0 - hypothesis.impact / NEEDED, 0.1).min(1.0);
        let above_k = self.room_k * missing;
        // Below what it should be nobody asks why.
        let settled = density(self.above_k.max(0.0), above_k, SETTLED_K + SETTLED_SHARE * above_k);
        let way = self.on_its_way.min(1.0);
        libm::logf((1.0 - way) * settled + way / self.room_k)
    }
}
