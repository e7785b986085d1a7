//! What is known of the machine before anything is measured: its kind, its plate, its design point.

use crate::field::{choice, section};

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

choice! {
    /// How a compressor compresses.
    CompressorKind {
        /// A piston.
        Reciprocating = 1 "reciprocating",
        /// A rolling piston or vane.
        Rotary = 2 "rotary",
        /// A scroll, which must not be pulled into vacuum.
        Scroll = 3 "scroll",
    }
}

choice! {
    /// Whether a compressor's speed is fixed.
    Drive {
        /// It runs at the speed of the supply.
        FixedSpeed = 1 "fixed_speed",
        /// An inverter sets its speed.
        VariableSpeed = 2 "variable_speed",
    }
}

choice! {
    /// What starts a single-phase motor.
    StartGear {
        /// A relay that the motor's current pulls in.
        CurrentRelay = 1 "current_relay",
        /// A relay that the start winding's voltage pulls in.
        PotentialRelay = 2 "potential_relay",
        /// A resistor that switches the start winding off by warming up (positive temperature coefficient).
        Ptc = 3 "ptc",
        /// An electronic switch.
        SolidState = 4 "solid_state",
        /// None: a motor on three phases, or one with a run capacitor alone.
        None = 5 "none",
    }
}

section! {
    /// The point the machine was designed for, as far as its maker tells; what is left out falls back to what is
    /// usual for the duty and metering, with its wide spread.
    Design at "system.design" {
        /// Space air temperature, degC.
        space_c: Temperature = 320,
        /// Air temperature onto the condenser, degC.
        ambient_c: Temperature = 321,
        /// Space air minus evaporating dew temperature, K.
        evaporator_td_k: Difference = 322,
        /// Condensing temperature (mean of bubble and dew) minus ambient, K.
        condenser_td_k: Difference = 323,
        /// Superheat at the compressor inlet, K.
        suction_superheat_k: Difference = 324,
        /// Subcooling at the condenser outlet, K.
        subcooling_k: Difference = 325,
        /// The maker's target suction pressure, kPa absolute; goes before `evaporator_td_k`.
        suction_pressure_kpa: Pressure = 326,
        /// The maker's target discharge pressure, kPa absolute; goes before `condenser_td_k`.
        discharge_pressure_kpa: Pressure = 327,
    }
}

section! {
    /// What the compressor's plate and data sheet say.
    CompressorPlate at "system.compressor" {
        /// Rated-load current, A; a machine at its design point usually runs below it.
        rated_load_a: Current = 340,
        /// Locked-rotor current at rated voltage, A.
        locked_rotor_a: Current = 341,
        /// Rated voltage, V.
        rated_v: Voltage = 342,
        /// Number of phases, 1 or 3.
        phases: Phases = 343,
        /// Supply frequency, Hz.
        hz: Frequency = 344,
        /// Resistance of the run winding (common to run), ohm.
        run_winding_ohm: Resistance = 345,
        /// Resistance of the start winding (common to start), ohm.
        start_winding_ohm: Resistance = 346,
        /// Temperature the winding resistances refer to, degC.
        winding_reference_c: Temperature = 347,
        /// Rated run capacitor, microfarad.
        run_capacitor_uf: Capacitance = 348,
        /// Rated start capacitor, microfarad.
        start_capacitor_uf: Capacitance = 349,
    }
    others {
        /// How the compressor compresses.
        kind: CompressorKind = 350,
        /// Whether its speed is fixed.
        drive: Drive = 351,
        /// What starts a single-phase motor.
        start_gear: StartGear = 352,
    }
}

section! {
    /// What is known of the machine; its refrigerant is an argument of its own.
    System at "system" {
        /// Nameplate charge, kg.
        charge_kg: Mass = 305,
        /// Tolerance of the run capacitor's plate value, percent; 6 unless given.
        run_capacitor_tolerance_percent: Percent = 306,
    }
    others {
        /// The metering device; not known: the diagnosis allows for each kind's spread.
        metering: Metering = 301,
        /// Whether a liquid receiver stands behind the condenser; not known: usual for the metering.
        receiver: bool = 302,
        /// Whether a regulator holds the compressor's inlet pressure down; not known: no.
        suction_pressure_regulator: bool = 303,
        /// What the machine is for.
        duty: Duty = 304,
    }
    besides {
        /// The design point.
        design: Design,
        /// The compressor's plate.
        compressor: CompressorPlate,
    }
}
