//! The report: one plain value that holds the whole answer to a visit, in fixed memory.

use crate::caution::Cautions;
use crate::cycle::Cycle;
use crate::diagnosis::Diagnosis;
use crate::expected::Expected;
use crate::motor::Findings;
use crate::plan::Plan;
use crate::warning::Warnings;

/// The whole answer to one visit.
#[derive(Clone, Debug, PartialEq)]
pub struct Report {
    /// What the readings say the machine does.
    pub cycle: Cycle,
    /// What it would do if healthy.
    pub expected: Expected,
    /// What the readings say of the ten causes.
    pub diagnosis: Diagnosis,
    /// What is suspicious about the input.
    pub warnings: Warnings,
    /// What the motor and supply readings show.
    pub electrical: Findings,
    /// What to do next, and what the ways to go on cost.
    pub plan: Plan,
    /// What to take care of, step by step.
    pub cautions: Cautions,
}

impl Report {
    /// An empty report: nothing weighed, nothing decided.
    pub const EMPTY: Self = Self {
        cycle: Cycle::NONE,
        expected: Expected::NONE,
        diagnosis: Diagnosis::UNWEIGHED,
        warnings: Warnings::new(),
        electrical: Findings::new(),
        plan: Plan::NONE,
        cautions: Cautions::new(),
    };

    /// Empties the report in place.
    pub(crate) fn clear(&mut self) {
        self.cycle = Cycle::NONE;
        self.expected = Expected::NONE;
        self.diagnosis.clear();
        self.warnings.clear();
        self.electrical.clear();
        self.plan = Plan::NONE;
        self.cautions.clear();
    }
}
