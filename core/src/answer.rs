//! One visit, end to end: the readings in, the report out.

use crate::caution;
use crate::check::check;
use crate::cycle::Cycle;
use crate::diagnosis::{self, Workspace};
use crate::invalid::Invalid;
use crate::motor;
use crate::readings::Visit;
use crate::refrigerant::Refrigerant;
use crate::report::Report;
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
    quote(&mut report.warnings, &visit.readings);
    let current = report.expected.current_a;
    report.electrical = motor::examine(&visit.system, &visit.readings, &visit.uncertainty, current);
    let safety = refrigerant.and_then(Refrigerant::safety_class);
    let glide_k = refrigerant.map(|r| r.glide().kelvins());
    let mut suggested: Vec<_, 8> = Vec::new();
    for next in &report.diagnosis.next {
        let _ = suggested.push(next.measurement);
    }
    report.cautions = caution::cautions(safety, glide_k, visit, &suggested);
    Ok(())
}

/// A machine settles within about a quarter of an hour (California's field procedure for charging by superheat,
/// RA3.2, asks for 15 minutes).
const SETTLED_MINUTES: f32 = 15.0;
