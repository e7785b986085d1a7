//! What is known of the machine before anything is measured: its kind, its plate, its design point.

use crate::field::{choice, optional_numbers};

choice! {
    /// The device that meters liquid into the evaporator.
    Metering {
        /// A capillary tube, with or without a suction-liquid exchanger.
        Capillary = 1 "capillary",
        /// A fixed orifice or piston.
        Orifice = 2 "orifice",
        /// A thermostatic expansion valve.
        ThermostaticValve = 3 "thermostatic_valve",
        /// An electronic expansion valve.
        ElectronicValve = 4 "electronic_valve",
    }
}

choice! {
    /// What the machine is for, which fixes what is usual where its maker's data is missing.
    Duty {
        /// Holds frozen goods, space near -20 degC.
        Freezer = 1 "freezer",
        /// Holds chilled goods, space near +3 degC.
        Cooler = 2 "cooler",
        /// Cools rooms for people, space near 26 degC.
        AirConditioning = 3 "air_conditioning",
    }
}

optional_numbers! {
    /// The point the machine was designed for, as far as its maker tells; what is left out falls back to what is
    /// usual for the duty and metering, with its wide spread.
    Design {
        /// Space air temperature, degC.
        space_c: Temperature,
        /// Air temperature onto the condenser, degC.
        ambient_c: Temperature,
        /// Space air minus evaporating dew temperature, K.
        evaporator_td_k: Difference,
        /// Condensing temperature (mean of bubble and dew) minus ambient, K.
        condenser_td_k: Difference,
        /// Superheat at the compressor inlet, K.
        suction_superheat_k: Difference,
        /// Subcooling at the condenser outlet, K.
        subcooling_k: Difference,
        /// The maker's target suction pressure, kPa absolute; goes before `evaporator_td_k`.
        suction_pressure_kpa: Pressure,
        /// The maker's target discharge pressure, kPa absolute; goes before `condenser_td_k`.
        discharge_pressure_kpa: Pressure,
    }
}

optional_numbers! {
    /// What the compressor's plate and data sheet say.
    CompressorPlate {
        /// Rated-load current, A; a machine at its design point usually runs below it.
        rated_load_a: Current,
        /// Locked-rotor current at rated voltage, A.
        locked_rotor_a: Current,
        /// Rated voltage, V.
        rated_v: Voltage,
        /// Number of phases, 1 or 3.
        phases: Phases,
        /// Supply frequency, Hz.
        hz: Frequency,
        /// Resistance of the run winding (common to run), ohm.
        run_winding_ohm: Resistance,
        /// Resistance of the start winding (common to start), ohm.
        start_winding_ohm: Resistance,
        /// Temperature the winding resistances refer to, degC.
        winding_reference_c: Temperature,
        /// Rated run capacitor, microfarad.
        run_capacitor_uf: Capacitance,
        /// Rated start capacitor, microfarad.
        start_capacitor_uf: Capacitance,
    }
}

/// What is known of the machine; its refrigerant is an argument of its own.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct System {
    /// The metering device; not known: the diagnosis allows for each kind's spread.
    pub metering: Option<Metering>,
    /// Whether a liquid receiver stands behind the condenser; not known: usual for the metering.
    pub receiver: Option<bool>,
    /// Whether a regulator holds the compressor's inlet pressure down; not known: no.
    pub suction_pressure_regulator: Option<bool>,
    /// What the machine is for.
    pub duty: Option<Duty>,
    /// The design point.
    pub design: Design,
    /// The compressor's plate.
    pub compressor: CompressorPlate,
    /// Nameplate charge, kg.
    pub charge_kg: Option<f32>,
    /// Tolerance of the run capacitor's plate value, percent; 6 unless given.
    pub run_capacitor_tolerance_percent: Option<f32>,
}
