//! Notices space and ambient temperatures that stand where the other one belongs.
//!
//! No law forbids a freezer at 28 degC whose condenser stands at -18 degC, and an airflow fault explains such a visit.
//! Two fields filled in the wrong way round explain it better.

use crate::machine::Nominal;
use crate::readings::Readings;
use crate::report::{Warning, WarningKind};
use heapless::Vec;

/// Kelvin by which a machine's ambient must be designed above its space for the two to be told apart.
const APART_K: f32 = 15.0;
/// Kelvin about the design space temperature in which the ambient reading looks like that of the space.
const LIKE_SPACE_K: f32 = 6.0;
/// Kelvin about the design ambient temperature in which the space reading looks like that of the ambient.
const LIKE_AMBIENT_K: f32 = 15.0;

/// Warns of both readings where each looks like the other; tells whether so.
pub(crate) fn notice(nominal: &Nominal, readings: &Readings, warnings: &mut Vec<Warning, 16>) -> bool {
    let swapped = readings.space_c.is_some()
        && readings.ambient_c.is_some()
        && nominal.design_ambient_k - nominal.design_space_k > APART_K
        && (nominal.ambient_k.mean - nominal.design_space_k).abs() < LIKE_SPACE_K
        && (nominal.space_k.mean - nominal.design_ambient_k).abs() < LIKE_AMBIENT_K;
    if swapped {
        for field in ["space_c", "ambient_c"] {
            let kind = WarningKind::ReadsLikeTheOther;
            let _ = warnings.push(Warning { section: "readings", field, kind });
        }
    }
    swapped
}
