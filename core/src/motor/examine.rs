//! One pass over everything electrical that a visit holds, into a list of findings.

mod lines;
mod parts;
mod start;
mod windings;

use super::finding::{Finding, FindingKind};
use crate::estimate::Estimate;
use crate::readings::{Readings, Uncertainty, Visit};
use crate::system::System;

/// The findings of one visit.
pub type Findings = heapless::Vec<Finding, 16>;

/// Lists what the motor and supply readings show; empty when nothing was measured.
///
/// `expected_current` is what a machine in good order would draw at today's pressures, A; without it the plate
/// stands in with its wide uncertainty. Currents are not judged while the machine is said to be stopped. What the
/// plate does not state is not judged, except where the readings contradict each other.
pub fn examine(
    system: &System,
    readings: &Readings,
    uncertainty: &Uncertainty,
    expected_current: Option<Estimate>,
) -> Findings {
    let mut found = Findings::new();
    let plate = &system.compressor;
    if plate.phases == Some(3.0) {
        windings::three(&mut found, readings);
    } else {
        windings::two(&mut found, plate, readings);
    }
    parts::frame(&mut found, readings);
    // Windings that agree with the plate and leak to the frame are no good ones.
    if found.iter().any(|f| f.finding == FindingKind::WindingToFrame) {
        found.retain(|f| f.finding != FindingKind::WindingsGood);
    }
    parts::capacitors(&mut found, system, readings);
    lines::voltage(&mut found, plate, readings);
    start::inrush(&mut found, plate, readings);
    if readings.running != Some(false) {
        lines::running_current(&mut found, plate, readings, uncertainty, expected_current);
    }
    found
}

/// Adds why a motor does not start, by what was heard and by what the other findings leave open.
pub(crate) fn examine_start(visit: &Visit<'_>, found: &mut Findings) {
    start::heard(found, visit);
}

/// Adds a finding; a list that is full keeps what came first.
///
/// It has room for the longest list that the checks can make: two windings and their connections, the frame, two
/// capacitors, two of the supply, the inrush, two of the running current, and two of a motor that does not start.
fn add(found: &mut Findings, finding: Finding) {
    debug_assert!(!found.is_full(), "more findings than the checks can make");
    found.push(finding).ok();
}
