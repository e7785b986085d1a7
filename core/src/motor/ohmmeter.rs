//! What an ohmmeter and its leads add to a winding's resistance.

use crate::estimate::Estimate;
use crate::normal::{combine, positive, usable};

/// Standard uncertainties (k = 1) of an ohmmeter, and the resistance of its leads.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ohmmeter {
    /// Share of the reading, as a fraction.
    pub relative: f32,
    /// Share that every reading has, ohm.
    pub absolute_ohm: f32,
    /// Resistance of both leads and their contacts, subtracted from every reading, ohm.
    pub leads_ohm: Estimate,
}

impl Ohmmeter {
    /// A usual hand meter, 0.5 % + 0.05 ohm as limits, whose leads were shorted and nulled.
    ///
    /// A limit over the root of three is a standard uncertainty (JCGM 100:2008, 4.3.7); contacts then leave about
    /// 0.02 ohm (common practice).
    pub const USUAL: Self =
        Self { relative: 0.003, absolute_ohm: 0.03, leads_ohm: Estimate { value: 0.0, u: 0.02 } };

    /// Turns a reading into a resistance with its uncertainty, ohm.
    ///
    /// Leads are subtracted, and what falls below zero reads zero. `None` where the reading is negative, open or
    /// not a number, or the meter's own figures are not finite.
    pub fn resistance(&self, reading_ohm: f32) -> Option<Estimate> {
        if !reading_ohm.is_finite() || reading_ohm < 0.0 || !usable(self.leads_ohm) {
            return None;
        }
        let u = combine(&[self.relative * reading_ohm, self.absolute_ohm, self.leads_ohm.u]);
        Estimate::new((reading_ohm - self.leads_ohm.value).max(0.0), u)
    }
}

/// Tells the relative standard uncertainty of a resistance, as a fraction; `None` where there is nothing to relate to.
///
/// A run winding well under an ohm needs its leads measured and subtracted: 0.2 ohm of leads on 0.4 ohm hides any
/// short between turns. Above 0.05 a judgement of shorted turns means little.
pub fn relative_uncertainty(resistance_ohm: Estimate) -> Option<f32> {
    if !usable(resistance_ohm) || !positive(resistance_ohm.value) {
        return None;
    }
    Some(resistance_ohm.u / resistance_ohm.value).filter(|u| u.is_finite())
}
