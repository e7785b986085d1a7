//! What everything not yet taken would tell, for whoever plans with it.

use super::evidence::{EXPECTED, HIGHER, LOWER, outcome_names};
use super::next_measurement::{CANDIDATES, measurement};
use super::observed::OUTCOMES;
use super::value::{Information, Outlook};
use crate::measurement::Measurement;
use crate::symptom::CHANNELS;

/// What everything not yet taken would tell, and where the visit stands.
#[derive(Clone, Copy)]
pub(crate) struct Candidates<'a> {
    pub(super) information: &'a [Information; CANDIDATES],
    pub(super) outlook: &'a Outlook,
}

impl<'a> Candidates<'a> {
    /// Every candidate by its number, its reading, and what it would tell.
    pub(crate) fn iter(&self) -> impl Iterator<Item = (usize, Measurement, &'a Information)> {
        let numbered = self.information.iter().enumerate();
        numbered.filter_map(|(n, information)| Some((n, measurement(n)?, information)))
    }
    /// Where the visit stands.
    pub(crate) fn outlook(&self) -> &'a Outlook {
        self.outlook
    }
    /// The names of a candidate's outcomes.
    pub(crate) fn outcome_names(&self, candidate: usize) -> [&'static str; OUTCOMES] {
        candidate.checked_sub(CHANNELS).map_or([LOWER, HIGHER, EXPECTED], outcome_names)
    }
}
