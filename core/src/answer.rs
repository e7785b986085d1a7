//! One visit, end to end: the readings in, the report out.

use crate::alarm::{self, AlarmCode};
use crate::cause::Cause;
use crate::caution::{self, Step};
use crate::check::check;
use crate::cycle::Cycle;
use crate::diagnosis::{self, Workspace};
use crate::invalid::Invalid;
use crate::motor;
use crate::plan::{self, Basis};
use crate::readings::SETTLED_MINUTES;
use crate::readings::Visit;
use crate::refrigerant::Refrigerant;
use crate::report::Report;
use crate::system::Metering;
use crate::verdict::{self, Statement};
use crate::warning::{WarningKind, quote, warn, warn_beyond};
use heapless::Vec;

/// Diagnoses one visit.
///
/// The refrigerant may be unknown; pressures then say nothing, and the electrical checks and cautions remain.
/// Everything in the visit is optional; what is missing widens the answer and never makes it an error.
/// Workspace and report stand on the stack; where that is scarce, [`diagnose_in`] works in the caller's memory.
///
/// # Errors
/// The first field that no machine can show: out of range, outside the refrigerant's table, or a suction pressure
/// above the discharge pressure of a running machine.
pub fn diagnose(refrigerant: Option<&Refrigerant<'_>>, visit: &Visit<'_>) -> Result<Report, Invalid> {
    let mut report = Report::EMPTY;
    diagnose_in(&mut Workspace::new(), refrigerant, visit, &mut report)?;
    Ok(report)
}

/// Diagnoses one visit in memory that the caller owns.
///
/// As [`diagnose`]; the workspace's contents mean nothing between calls, and the report is written whole.
///
/// # Errors
/// As [`diagnose`]; the report is then left as it was.
pub fn diagnose_in(
    workspace: &mut Workspace,
    refrigerant: Option<&Refrigerant<'_>>,
    visit: &Visit<'_>,
    report: &mut Report,
) -> Result<(), Invalid> {
    check(refrigerant, visit)?;
    report.clear();
    workspace.clear();
    report.cycle = Cycle::from_readings(refrigerant, &visit.system, &visit.readings, &visit.uncertainty);
    match refrigerant {
        None => warn(&mut report.warnings, "system", "refrigerant", WarningKind::RefrigerantUnknown),
        Some(refrigerant) => {
            if visit.readings.running == Some(false) {
                warn(&mut report.warnings, "readings", "running", WarningKind::NotRunning);
            }
            if visit.readings.minutes_running.is_some_and(|m| m < SETTLED_MINUTES) {
                let limit = Some(SETTLED_MINUTES);
                let (list, field) = (&mut report.warnings, "minutes_running");
                warn_beyond(list, "readings", field, WarningKind::NotSettled, limit);
            }
            if diagnosis::weigh(
                workspace,
                refrigerant,
                visit,
                &mut report.diagnosis,
                &mut report.expected,
                &mut report.warnings,
            )
            .is_none()
            {
                warn(&mut report.warnings, "system", "design", WarningKind::OutsideModel);
            }
        }
    }
    conclude(workspace, refrigerant, visit, report);
    Ok(())
}

/// Says what follows from the causes: the verdict, the next step, and what can hurt.
// Never inlined, as `state` below.
#[inline(never)]
fn conclude(
    workspace: &Workspace,
    refrigerant: Option<&Refrigerant<'_>>,
    visit: &Visit<'_>,
    report: &mut Report,
) {
    quote(&mut report.warnings, &visit.readings);
    state(refrigerant, visit, report);
    let valve =
        matches!(visit.system.metering, Some(Metering::ThermostaticValve | Metering::ElectronicValve));
    let basis = Basis {
        visit,
        refrigerant,
        candidates: workspace.candidates(),
        expected: &report.expected,
        must_not_run: report.motor_must_not_run(),
        head_pressure_high: report.alarms.iter().any(|a| a.code == AlarmCode::HeadPressureHigh),
        answer: plan::answer(report.verdict.statement, valve, &report.diagnosis, &report.electrical),
    };
    plan::plan(&basis, &mut report.diagnosis, &mut report.plan);
    if report.motor_must_not_run() {
        ask_only_what_stands_still(report);
    }
    let safety = refrigerant.and_then(Refrigerant::safety_class);
    let glide_k = refrigerant.map(|r| r.glide().kelvins());
    let mut suggested: Vec<_, 8> = Vec::new();
    for next in &report.diagnosis.next {
        // As long as the list it is made of.
        suggested.push(next.measurement).ok();
    }
    report.cautions = caution::cautions(safety, glide_k, visit, &suggested);
    let next = next_step(report);
    caution::put_first(&mut report.cautions, next);
}

/// What stands above the causes: the electrical findings, the alarms, the compressor's own question, and the verdict.
// In a frame of its own, which is not there while the causes are weighed: that is where the stack is deepest.
#[inline(never)]
fn state(refrigerant: Option<&Refrigerant<'_>>, visit: &Visit<'_>, report: &mut Report) {
    let Report { cycle, expected, diagnosis, warnings, electrical, .. } = report;
    *electrical = motor::examine(&visit.system, &visit.readings, &visit.uncertainty, expected.current_a);
    motor::examine_start(visit, electrical);
    diagnosis.beside_electrical(verdict::electrical_fault(electrical));
    report.terminals = motor::terminals::found(&visit.system, &visit.readings);
    report.alarms = alarm::alarms(refrigerant, visit, cycle, expected, electrical);
    let decided = {
        let evidence = verdict::Evidence {
            visit,
            cycle,
            expected,
            diagnosis,
            findings: electrical,
            alarms: &report.alarms,
            running: verdict::runs(visit),
            doubted: verdict::doubted(warnings),
        };
        diagnosis.decided && verdict::may_be_decided(&evidence)
    };
    diagnosis.decided = decided;
    let evidence = verdict::Evidence {
        visit,
        cycle,
        expected,
        diagnosis,
        findings: electrical,
        alarms: &report.alarms,
        running: verdict::runs(visit),
        doubted: verdict::doubted(warnings),
    };
    report.compressor = verdict::compressor(&evidence);
    report.families = verdict::families(diagnosis);
    report.jobs = verdict::jobs(&visit.system, diagnosis, electrical, report.compressor.probability);
    report.verdict = verdict::verdict(&evidence, &report.families, &report.jobs);
}

/// Takes back what only a running machine shows: nobody is sent to measure on a motor that must not run.
fn ask_only_what_stands_still(report: &mut Report) {
    let diagnosis = &mut report.diagnosis;
    diagnosis.next.retain(|next| !verdict::needs_running(next.measurement));
    for open in &mut diagnosis.still_open {
        open.measurements.retain(|measurement| !verdict::needs_running(*measurement));
    }
}

/// The step that the next piece of work belongs to.
fn next_step(report: &Report) -> Step {
    if report.motor_must_not_run() {
        return Step::Electrical;
    }
    match report.verdict.statement {
        Statement::Electrical(_) => Step::Electrical,
        Statement::Cause(Cause::CondenserAirflow | Cause::EvaporatorAirflow) => Step::Look,
        Statement::Cause(_) | Statement::Family(_) | Statement::Job(_) => Step::OpensSystem,
        Statement::Undecided | Statement::Healthy | Statement::Unidentified => {
            report.diagnosis.next.first().map_or(Step::Look, |next| Step::of(next.measurement))
        }
    }
}
