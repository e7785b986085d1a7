//! What has to be done: the families of causes that readings cannot part, and the jobs that mend several causes at once.

use crate::cause::Cause;
use crate::field::choice;

choice! {
    /// Causes that let the same machine run, so that readings often cannot part them.
    Family {
        /// A restriction in the liquid line, or a metering device that passes too little.
        LiquidFeed = 1 "liquid_feed",
    }
}

impl Family {
    /// The causes of the family.
    pub const fn causes(self) -> &'static [Cause] {
        match self {
            Self::LiquidFeed => &[Cause::LiquidLineRestriction, Cause::MeteringUnderfeed],
        }
    }
}

choice! {
    /// A piece of work that mends several causes alike.
    Job {
        /// Nothing needs mending.
        None = 0 "none",
        /// Clean the condenser, mend its fan.
        CondenserAir = 1 "condenser_air",
        /// Defrost or clean the evaporator, mend its fan.
        EvaporatorAir = 2 "evaporator_air",
        /// Recover, find the leak or replace drier and capillary, evacuate, charge by weight.
        OpenCircuit = 3 "open_circuit",
        /// Set, clean or replace the expansion valve.
        MeteringValve = 4 "metering_valve",
        /// Replace the compressor.
        Compressor = 5 "compressor",
        /// Mend the supply, the start gear or a capacitor.
        Electrical = 6 "electrical",
    }
}

/// What an open circuit mends wherever the metering is: charge, gas, restriction, and then the metering device.
const CIRCUIT: [Cause; 6] = [
    Cause::Undercharge,
    Cause::Overcharge,
    Cause::LiquidLineRestriction,
    Cause::NonCondensables,
    Cause::MeteringUnderfeed,
    Cause::FloodBack,
];

impl Job {
    /// The causes that the job mends; a capillary or an orifice is mended in the open circuit, a valve by itself.
    pub const fn causes(self, valve: bool) -> &'static [Cause] {
        match self {
            Self::None => &[Cause::None],
            Self::CondenserAir => &[Cause::CondenserAirflow],
            Self::EvaporatorAir => &[Cause::EvaporatorAirflow],
            Self::OpenCircuit if valve => CIRCUIT.split_at(4).0,
            Self::OpenCircuit => &CIRCUIT,
            Self::MeteringValve if valve => CIRCUIT.split_at(4).1,
            Self::Compressor => &[Cause::WeakCompressor],
            Self::MeteringValve | Self::Electrical => &[],
        }
    }
}
