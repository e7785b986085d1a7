//! Cautions that belong to a step of the work.

use crate::field::choice;

choice! {
    /// What can hurt.
    CautionCode {
        /// The circuit is under pressure.
        Pressure = 1 "pressure",
        /// Escaping liquid refrigerant burns by cold.
        ColdBurn = 2 "cold_burn",
        /// The refrigerant can burn.
        Flammable = 3 "flammable",
        /// The refrigerant is toxic.
        Toxic = 4 "toxic",
        /// Refrigerant vapour displaces air.
        Asphyxiation = 5 "asphyxiation",
        /// A capacitor holds its charge.
        Capacitor = 6 "capacitor",
        /// Terminals are live.
        LiveTerminals = 7 "live_terminals",
        /// A damaged terminal can blow out of the shell.
        TerminalVenting = 8 "terminal_venting",
        /// Law asks for recovery and for a licence.
        RecoveryLaw = 9 "recovery_law",
        /// A motor must not be energised or insulation-tested under vacuum.
        NoVacuumEnergise = 10 "no_vacuum_energise",
        /// Not every compressor may be pumped down into vacuum.
        NoVacuumPumpDown = 11 "no_vacuum_pump_down",
        /// Air must never be compressed with oil and refrigerant.
        AirInCircuit = 12 "air_in_circuit",
        /// A zeotropic blend is charged as liquid.
        BlendChargeLiquid = 13 "blend_charge_liquid",
        /// A pressure control is never bypassed to get a reading.
        KeepSafetyControls = 14 "keep_safety_controls",
        /// Pipes and shell are hot.
        HotSurface = 15 "hot_surface",
    }
}

choice! {
    /// The step a caution belongs to.
    Step {
        /// Looking and clamping.
        Look = 1 "look",
        /// Attaching and removing gauges.
        Gauges = 2 "gauges",
        /// Measuring at electrical terminals.
        Electrical = 3 "electrical",
        /// Closing valves for the pump-down test.
        PumpDown = 4 "pump_down",
        /// Adding or removing refrigerant.
        Charging = 5 "charging",
        /// Opening the refrigerant circuit.
        OpensSystem = 6 "opens_system",
    }
}

/// One caution at the step it belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Caution {
    /// What can hurt.
    pub code: CautionCode,
    /// The step it belongs to.
    pub step: Step,
}
