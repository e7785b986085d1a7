//! The plan of a visit, as C sees it.

use crate::boundary::write_member;
use crate::estimate::RimewiseEstimate;
use core::mem::{offset_of, size_of};
use rimewise::measurement::Effort;
use rimewise::plan::{Change, Plan, Subject};

/// Room for outcomes of a step.
pub const RIMEWISE_THEN_MAX: usize = 8;
/// Room for ways to go on.
pub const RIMEWISE_WAYS_MAX: usize = 24;
/// The bit of RimewisePlan.valid that says `replace_above` is there.
pub const RIMEWISE_PLAN_REPLACE_ABOVE: u32 = 1;
/// The bit of RimewisePlan.valid that says `weigh_in_kg` is there.
pub const RIMEWISE_PLAN_WEIGH_IN: u32 = 2;
/// The bit of RimewisePlan.valid that says `hose_takes_g` is there.
pub const RIMEWISE_PLAN_HOSE: u32 = 4;
/// The bit of RimewisePlan.valid that says `hose_takes_percent` is there.
pub const RIMEWISE_PLAN_HOSE_PERCENT: u32 = 8;

/// What a step or a way is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewiseSubject {
    /// The machine as a whole.
    Machine = 0,
    /// A RimewiseMeasurement.
    Measurement = 1,
    /// A RimewiseAction.
    Action = 2,
    /// A RimewisePlanContext.
    Context = 3,
    /// A RimewiseCause.
    Cause = 4,
    /// A RimewiseFindingKind.
    Finding = 5,
}

/// A step, what follows on an outcome, or a way to go on: what kind it is and what it is about.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct RimewisePlanEntry {
    /// A RimewiseStepKind.
    pub kind: i32,
    /// A RimewiseSubject, which says what `name` is.
    pub about: i32,
    /// The number of what it is about; 0 for the machine.
    pub name: i32,
    /// Of an outcome its probability, of a way its expected cost, of the step the probability that it changes what is done.
    pub number: f32,
}

/// What to do next, and what the ways to go on cost.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct RimewisePlan {
    /// RIMEWISE_PLAN_... bits of the numbers that are there.
    pub valid: u32,
    /// The next step.
    pub step: RimewisePlanEntry,
    /// What the step takes, minutes.
    pub minutes: f32,
    /// The RimewiseEffort of the step; 0 for what is no measurement.
    pub effort: i32,
    /// What a hose takes from the charge, g.
    pub hose_takes_g: f32,
    /// The same over the nameplate charge, percent.
    pub hose_takes_percent: f32,
    /// The probability of a weak compressor above which replacing it pays.
    pub replace_above: f32,
    /// What to let out of the cylinder by the scale after an evacuation, kg.
    pub weigh_in_kg: RimewiseEstimate,
    /// A RimewiseChange: whether what was changed on this visit helped; 0 without readings from before.
    pub change: i32,
    /// Number of entries of `then`.
    pub then_count: u32,
    /// What follows on each outcome of the step.
    pub then: [RimewisePlanEntry; RIMEWISE_THEN_MAX],
    /// Number of entries of `ways`.
    pub way_count: u32,
    /// The ways to go on, the cheapest first.
    pub ways: [RimewisePlanEntry; RIMEWISE_WAYS_MAX],
}

fn subject(subject: Subject) -> (i32, i32) {
    let (about, name) = match subject {
        Subject::Machine => (RimewiseSubject::Machine, 0),
        Subject::Measurement(measurement) => (RimewiseSubject::Measurement, measurement.code()),
        Subject::Action(action) => (RimewiseSubject::Action, action.code()),
        Subject::Context(context) => (RimewiseSubject::Context, context.code()),
        Subject::Cause(cause) => (RimewiseSubject::Cause, cause.code()),
        Subject::Finding(finding) => (RimewiseSubject::Finding, finding.code()),
    };
    (about as i32, name)
}

impl RimewisePlan {
    /// Writes a plan straight into the caller's memory.
    ///
    /// # Safety
    /// There is room for all of it at `at`.
    pub(crate) unsafe fn write(from: &Plan, at: *mut u8) {
        let entry = |kind: i32, about: Subject, number: f32| {
            let (about, name) = subject(about);
            RimewisePlanEntry { kind, about, name, number }
        };
        let step = &from.step;
        let percent = step.hose.and_then(|hose| hose.percent);
        let valid = (u32::from(from.replace_above.is_some()) * RIMEWISE_PLAN_REPLACE_ABOVE)
            | (u32::from(from.weigh_in_kg.is_some()) * RIMEWISE_PLAN_WEIGH_IN)
            | (u32::from(step.hose.is_some()) * RIMEWISE_PLAN_HOSE)
            | (u32::from(percent.is_some()) * RIMEWISE_PLAN_HOSE_PERCENT);
        let size = size_of::<Self>();
        let weigh_in = from.weigh_in_kg.map_or_else(RimewiseEstimate::default, RimewiseEstimate::from);
        // SAFETY: as the caller's.
        unsafe {
            write_member(at, size, offset_of!(Self, valid), valid);
            let of_step = entry(step.kind.code(), step.subject, step.changes);
            write_member(at, size, offset_of!(Self, step), of_step);
            write_member(at, size, offset_of!(Self, minutes), step.minutes);
            write_member(at, size, offset_of!(Self, effort), step.effort.map_or(0, Effort::code));
            write_member(at, size, offset_of!(Self, hose_takes_g), step.hose.map_or(0.0, |hose| hose.grams));
            write_member(at, size, offset_of!(Self, hose_takes_percent), percent.unwrap_or(0.0));
            write_member(at, size, offset_of!(Self, replace_above), from.replace_above.unwrap_or(0.0));
            write_member(at, size, offset_of!(Self, weigh_in_kg), weigh_in);
            write_member(at, size, offset_of!(Self, change), from.change.map_or(0, Change::code));
            write_member(at, size, offset_of!(Self, then_count), from.then.len() as u32);
            write_member(at, size, offset_of!(Self, way_count), from.ways.len() as u32);
            let entry_at = |first: usize, n: usize| first + n * size_of::<RimewisePlanEntry>();
            for n in 0..RIMEWISE_THEN_MAX {
                let then = from.then.get(n).map(|t| entry(t.kind.code(), t.subject, t.probability));
                write_member(at, size, entry_at(offset_of!(Self, then), n), then.unwrap_or_default());
            }
            for n in 0..RIMEWISE_WAYS_MAX {
                let way = from.ways.get(n).map(|w| entry(w.kind.code(), w.subject, w.expected_cost));
                write_member(at, size, entry_at(offset_of!(Self, ways), n), way.unwrap_or_default());
            }
        }
    }
}
