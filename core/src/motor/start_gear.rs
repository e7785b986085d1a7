//! Relay or other start gear of a single-phase motor, from the current in the start winding's lead.

/// What the start gear does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StartGear {
    /// It brings the start winding in and drops it out again.
    Works,
    /// It fails to drop out: the start winding and its capacitor overheat.
    StaysIn,
    /// It never brings the start winding in: the motor hums at its locked-rotor current.
    NeverEngages,
}

/// Fraction of the starting current above which the lead still carries it after the start.
const STILL_IN: f32 = 0.25;

/// Judges the start gear from the current through the start capacitor's or relay's own lead, A.
///
/// `during_a` is the highest in the first second, `after_a` the current three seconds later, both without the run
/// capacitor's share, and `noise_a` what the clamp shows on a dead lead (0.1-0.3 A is usual). `None` where a value
/// is negative or not a finite number.
pub fn judge(during_a: f32, after_a: f32, noise_a: f32) -> Option<StartGear> {
    if [during_a, after_a, noise_a].iter().any(|a| !a.is_finite() || *a < 0.0) {
        return None;
    }
    Some(if during_a <= noise_a && after_a <= noise_a {
        StartGear::NeverEngages
    } else if after_a > noise_a && after_a > STILL_IN * during_a {
        StartGear::StaysIn
    } else {
        StartGear::Works
    })
}
