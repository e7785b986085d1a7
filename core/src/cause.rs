//! The ten causes a visit is judged by.

use crate::field::choice;

choice! {
    /// What makes the machine behave as it does, in the order that breaks ties.
    Cause {
        /// Nothing that costs 5 % or more of capacity or COP.
        None = 0 "none",
        /// Less refrigerant than the machine needs.
        Undercharge = 1 "undercharge",
        /// More refrigerant than the machine needs.
        Overcharge = 2 "overcharge",
        /// A restriction in the liquid line: drier, strainer, kinked pipe.
        LiquidLineRestriction = 3 "liquid_line_restriction",
        /// The metering device passes too little.
        MeteringUnderfeed = 4 "metering_underfeed",
        /// The metering device passes too much and liquid returns to the compressor.
        FloodBack = 5 "flood_back",
        /// The compressor pumps less than it should.
        WeakCompressor = 6 "weak_compressor",
        /// Too little air over the condenser.
        CondenserAirflow = 7 "condenser_airflow",
        /// Too little air over the evaporator.
        EvaporatorAirflow = 8 "evaporator_airflow",
        /// Air or nitrogen in the refrigerant circuit.
        NonCondensables = 9 "non_condensables",
    }
}

impl Cause {
    /// The number of causes, `none` included.
    pub const COUNT: usize = Self::ALL.len();

    /// The position of the cause in a list of all causes.
    pub const fn index(self) -> usize {
        self as usize
    }
}
