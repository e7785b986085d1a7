//! One visit, end to end: the readings in, the report out.

use crate::caution;
use crate::check::check;
use crate::cycle::Cycle;
use crate::diagnosis::cause::Cause;
use crate::diagnosis::{self, Diagnosis};
use crate::invalid::Invalid;
use crate::motor;
use crate::readings::Visit;
use crate::refrigerant::Refrigerant;
use crate::report::{CauseProbability, Expected, Report, Warning, WarningKind};
use heapless::Vec;

/// Diagnoses one visit.
///
/// The refrigerant may be unknown; pressures then say nothing, and the electrical checks and cautions remain.
/// Everything in the visit is optional; what is missing widens the answer and never makes it an error.
///
/// # Errors
/// The first field that no machine can show: out of range, outside the refrigerant's table, or a suction pressure
/// above the discharge pressure of a running machine.
pub fn diagnose(refrigerant: Option<&Refrigerant<'_>>, visit: &Visit<'_>) -> Result<Report, Invalid> {
    check(refrigerant, visit)?;
    let mut warnings = Vec::new();
    let cycle = Cycle::from_readings(refrigerant, &visit.system, &visit.readings, &visit.uncertainty);
    let found = match refrigerant {
        None => {
            warn(&mut warnings, "system", "refrigerant", WarningKind::RefrigerantUnknown);
            None
        }
        Some(refrigerant) => {
            if visit.readings.running == Some(false) {
                warn(&mut warnings, "readings", "running", WarningKind::NotRunning);
            }
            if visit.readings.minutes_running.is_some_and(|m| m < SETTLED_MINUTES) {
                warn(&mut warnings, "readings", "minutes_running", WarningKind::NotSettled);
            }
            let found = diagnosis::weigh(refrigerant, visit, &mut warnings);
            if found.is_none() {
                warn(&mut warnings, "system", "design", WarningKind::OutsideModel);
            }
            found
        }
    };
    let found = found.unwrap_or_else(nothing_weighed);
    let electrical =
        motor::examine(&visit.system, &visit.readings, &visit.uncertainty, found.expected.current_a);
    let safety = refrigerant.and_then(Refrigerant::safety_class);
    let glide_k = refrigerant.map(|r| r.glide().kelvins());
    let suggested: Vec<_, 8> = found.next.iter().map(|next| next.measurement).collect();
    Ok(Report {
        cycle,
        cautions: caution::cautions(safety, glide_k, visit, &suggested),
        expected: found.expected,
        causes: found.causes,
        decided: found.decided,
        leading: found.leading,
        fits: found.fits,
        evidence: found.evidence,
        next: found.next,
        ruled_out: found.ruled_out,
        still_open: found.still_open,
        warnings,
        electrical,
    })
}

/// A machine settles within about a quarter of an hour (California's field procedure for charging by superheat,
/// RA3.2, asks for 15 minutes).
const SETTLED_MINUTES: f32 = 15.0;

fn warn(warnings: &mut Vec<Warning, 16>, section: &'static str, field: &'static str, kind: WarningKind) {
    let _ = warnings.push(Warning { section, field, kind });
}

/// The answer where nothing could be weighed: the priors, undecided.
fn nothing_weighed() -> Diagnosis {
    let mut causes =
        [CauseProbability { cause: Cause::None, probability: 0.4, severity: None }; Cause::COUNT];
    for (slot, cause) in causes.iter_mut().zip(Cause::ALL).skip(1) {
        *slot = CauseProbability { cause: *cause, probability: 0.6 / 9.0, severity: Some(0.0) };
    }
    Diagnosis {
        expected: Expected::default(),
        causes,
        decided: false,
        leading: Cause::None,
        fits: None,
        evidence: Vec::new(),
        next: Vec::new(),
        ruled_out: Vec::new(),
        still_open: Vec::new(),
    }
}
