//! The report: one plain value that holds the whole answer to a visit, in fixed memory.

use crate::alarm::{AlarmCode, Alarms};
use crate::caution::Cautions;
use crate::cycle::Cycle;
use crate::diagnosis::Diagnosis;
use crate::expected::Expected;
use crate::motor::Findings;
use crate::motor::terminals::TerminalsFound;
use crate::plan::Plan;
use crate::verdict::{CompressorAnswer, Families, Jobs, Verdict};
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
    /// What the motor and supply readings show, and what was heard at the start.
    pub electrical: Findings,
    /// Which of the motor's unmarked terminals is which; `None` where they were not measured or do not tell.
    pub terminals: Option<TerminalsFound>,
    /// The most specific statement that the error rates allow.
    pub verdict: Verdict,
    /// How probable each family of causes is that readings often cannot part.
    pub families: Families,
    /// How probable each job is, the most probable first.
    pub jobs: Jobs,
    /// Whether it is the compressor.
    pub compressor: CompressorAnswer,
    /// What is dangerous, the most urgent first.
    pub alarms: Alarms,
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
        terminals: None,
        verdict: Verdict::UNDECIDED,
        families: Families::new(),
        jobs: Jobs::new(),
        compressor: CompressorAnswer::OPEN,
        alarms: Alarms::new(),
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
        self.terminals = None;
        self.verdict = Verdict::UNDECIDED;
        self.families.clear();
        self.jobs.clear();
        self.compressor = CompressorAnswer::OPEN;
        self.alarms.clear();
        self.plan = Plan::NONE;
        self.cautions.clear();
    }

    /// Whether an alarm says that the motor must not run: nothing is then asked for that only a running machine shows.
    pub fn motor_must_not_run(&self) -> bool {
        self.alarms.iter().any(|a| matches!(a.code, AlarmCode::SwitchOff | AlarmCode::DoNotEnergise))
    }
}
