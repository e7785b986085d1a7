//! What a refrigerant does to the climate and the ozone layer.

use super::Refrigerant;
use super::table::at;

/// The assessment report of the Intergovernmental Panel on Climate Change that a warming potential is taken from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[repr(u8)]
pub enum GwpReport {
    /// The fifth, 2013.
    Fifth = 5,
    /// The sixth, 2021.
    Sixth = 6,
}

impl Refrigerant<'_> {
    /// Reads the global warming potential over 100 years, carbon dioxide = 1; none where no source gives one.
    ///
    /// Of a blend, the mass-weighted mean of its components, none when one of them has none. Sources:
    /// `tables/data/environment.json`.
    pub fn global_warming_potential(&self, report: GwpReport) -> Option<f32> {
        self.known(match report {
            GwpReport::Fifth => at::GWP_AR5,
            GwpReport::Sixth => at::GWP_AR6,
        })
    }
    /// Reads the ozone depletion potential, R-11 = 1; none where no source gives one.
    ///
    /// As stipulated under the Montreal Protocol; of a blend the mass-weighted mean of its components. Sources:
    /// `tables/data/environment.json`.
    pub fn ozone_depletion_potential(&self) -> Option<f32> {
        self.known(at::ODP)
    }
    /// Reads the atmospheric life of a pure refrigerant in years; none of a blend or where no source gives one.
    ///
    /// Source: IPCC (2021), sixth assessment report, table 7.SM.7.
    pub fn atmospheric_life_years(&self) -> Option<f32> {
        self.known(at::LIFE)
    }

    /// Reads a number that is negative where it is not known.
    fn known(&self, offset: usize) -> Option<f32> {
        let value = self.number(offset);
        if value >= 0.0 { Some(value) } else { None }
    }
}
