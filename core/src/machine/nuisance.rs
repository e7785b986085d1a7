//! What is not known of a machine: one standard normal number each, with what it stands for.
//!
//! The spreads are what is usual between machines of one kind (common practice and the spread of published
//! component data), all together at 0.85 of that: the probabilities of every type of the rig's setting half came nearer
//! the truth for it. They are not fitted to any one machine.

use super::design::Nominal;
use crate::system::Metering;

/// The directions in which one machine of a kind differs from another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(usize)]
pub(crate) enum Nuisance {
    EvaporatorUa,
    CondenserUa,
    Pumping,
    Isentropic,
    Charge,
    MeteringConstant,
    RatedCurrent,
    EvaporatorAir,
    CondenserAir,
    EvaporatorSuperheat,
    ShellLoss,
    BaseEfficiency,
    Clearance,
    ValveOversize,
    ValveRange,
    CapillaryCoefficient,
    CondenserCharge,
    EvaporatorCharge,
    LineCharge,
    ReceiverContents,
    ReceiverRoom,
    PowerFactor,
    SensibleShare,
    Space,
    Ambient,
    WetBulb,
    Voltage,
    DesignEvaporator,
    DesignCondenser,
    DesignSuperheat,
    DesignSubcooling,
    ExchangeShare,
    ExchangeSize,
    DryRegion,
    LiquidRegion,
    CleanDrier,
    RegulatorSetting,
    SuctionDrop,
}

impl Nuisance {
    /// How many there are.
    pub(crate) const COUNT: usize = Self::SuctionDrop as usize + 1;

    /// Whether the direction is what the machine was designed for rather than how this one was built or has aged.
    pub(crate) fn of_the_design(which: usize) -> bool {
        [Self::DesignEvaporator, Self::DesignCondenser, Self::DesignSuperheat, Self::DesignSubcooling]
            .iter()
            .any(|nuisance| *nuisance as usize == which)
    }

    /// Whether a machine of this kind has the part that the direction is about.
    pub(crate) fn acts(which: usize, nominal: &Nominal) -> bool {
        let is = |all: &[Self]| all.iter().any(|nuisance| *nuisance as usize == which);
        let valve = nominal.valve();
        let capillary = nominal.metering == Metering::Capillary;
        !(is(&[Self::ValveOversize, Self::ValveRange]) && !valve
            || is(&[Self::CapillaryCoefficient]) && valve
            || is(&[Self::ExchangeShare]) && !capillary
            || is(&[Self::ReceiverContents, Self::ReceiverRoom]) && !nominal.receiver
            || is(&[Self::RegulatorSetting]) && !nominal.regulator
            || is(&[Self::WetBulb]) && nominal.air_conditioning <= 0.0)
    }
}

/// One value for each direction, in standard deviations from the mean.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Other {
    by: [f32; Nuisance::COUNT],
}

impl Other {
    /// The mean machine.
    pub(crate) const NONE: Self = Self { by: [0.0; Nuisance::COUNT] };

    /// A machine that differs in one direction.
    pub(crate) fn new(which: usize, by: f32) -> Self {
        let mut other = Self::NONE;
        if let Some(slot) = other.by.get_mut(which) {
            *slot = by;
        }
        other
    }
    /// A machine that differs in every direction.
    #[cfg(test)]
    pub(crate) fn all(by: [f32; Nuisance::COUNT]) -> Self {
        Self { by }
    }
    /// The deviation in one direction.
    pub(crate) fn of(&self, nuisance: Nuisance) -> f32 {
        self.by[nuisance as usize]
    }
}
