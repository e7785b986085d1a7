//! Everything that can be measured, seen or derived: one row each, one name and number for every interface.

use crate::field::{Choice, Choices, Member, Texts, c_text, choice, section};
use crate::readings::{
    CondenserFace, Fan, FrostLine, PumpDownEnd, PumpDownValve, SightGlass, StartNoise, StartSound,
};

choice! {
    /// The effort a measurement takes.
    Effort {
        /// Look, listen, or read an air thermometer.
        Look = 1 "look",
        /// Put a clamp on a pipe.
        Clamp = 2 "clamp",
        /// Put an electrical meter on terminals.
        Meter = 3 "meter",
        /// Attach a gauge or turn a valve at a fitted port.
        Valve = 4 "valve",
        /// Open the refrigerant circuit, or fit a port that is not there.
        OpensSystem = 5 "opens_system",
    }
}

/// Declares every reading, observation and derived quantity; the structs of readings and observations follow from it.
macro_rules! measurements {
    (
        numbers { $( $(#[doc = $doc:literal])* $variant:ident = $code:literal, $effort:ident: $name:ident: $kind:ident, )* }
        threes { $( $(#[doc = $tdoc:literal])* $tvariant:ident = $tcode:literal, $teffort:ident: $tname:ident: $tkind:ident, )* }
        others { $( $(#[doc = $odoc:literal])* $ovariant:ident = $ocode:literal, $oeffort:ident: $oname:ident: $otype:ty, )* }
        observations { $( $(#[doc = $sdoc:literal])* $svariant:ident = $scode:literal, $seffort:ident: $sname:ident: $stype:ty, )* }
        derived { $( $dvariant:ident = $dcode:literal, $deffort:ident: $dname:ident, )* }
    ) => {
        section! {
            /// What was read on the visit. Pressures are absolute, kPa; temperatures degC.
            Readings at "readings" { $( $(#[doc = $doc])* $name: $kind = $code, )* }
            threes { $( $(#[doc = $tdoc])* $tname: $tkind = $tcode, )* }
            others { $( $(#[doc = $odoc])* $oname: $otype = $ocode, )* }
        }

        section! {
            /// What was seen and heard on the visit.
            Observations at "observations" {}
            others { $( $(#[doc = $sdoc])* $sname: $stype = $scode, )* }
        }

        /// A reading, an observation, or a quantity derived from them.
        ///
        /// Readings have numbers from 1, observations from 100, derived quantities from 200. The name of a reading is
        /// the name of its input field; the name of a derived quantity is its key in the report.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        #[repr(i32)]
        pub enum Measurement {
            $( $(#[doc = $doc])* $variant = $code, )*
            $( $(#[doc = $tdoc])* $tvariant = $tcode, )*
            $( $(#[doc = $odoc])* $ovariant = $ocode, )*
            $( $(#[doc = $sdoc])* $svariant = $scode, )*
            $(
                #[doc = concat!("The derived quantity `", stringify!($dname), "`.")]
                $dvariant = $dcode,
            )*
        }

        impl Measurement {
            /// All of them in the order of their declaration.
            pub const ALL: &'static [Self] = &[
                $( Self::$variant, )* $( Self::$tvariant, )* $( Self::$ovariant, )* $( Self::$svariant, )*
                $( Self::$dvariant, )*
            ];
            /// The name in every interface.
            pub const fn name(self) -> &'static str {
                match self {
                    $( Self::$variant => stringify!($name), )*
                    $( Self::$tvariant => stringify!($tname), )*
                    $( Self::$ovariant => stringify!($oname), )*
                    $( Self::$svariant => stringify!($sname), )*
                    $( Self::$dvariant => stringify!($dname), )*
                }
            }
            /// The effort it takes; that of a derived quantity is the effort of its last reading.
            pub const fn effort(self) -> Effort {
                match self {
                    $( Self::$variant => Effort::$effort, )*
                    $( Self::$tvariant => Effort::$teffort, )*
                    $( Self::$ovariant => Effort::$oeffort, )*
                    $( Self::$svariant => Effort::$seffort, )*
                    $( Self::$dvariant => Effort::$deffort, )*
                }
            }
            /// The permanent number at the boundary.
            pub const fn code(self) -> i32 {
                self as i32
            }
            /// Finds the one of a number, or nothing where the number is unknown.
            pub const fn from_code(code: i32) -> Option<Self> {
                match code {
                    $( $code => Some(Self::$variant), )*
                    $( $tcode => Some(Self::$tvariant), )*
                    $( $ocode => Some(Self::$ovariant), )*
                    $( $scode => Some(Self::$svariant), )*
                    $( $dcode => Some(Self::$dvariant), )*
                    _ => None,
                }
            }
            /// Finds the one of a name, or nothing where the name is unknown.
            pub fn from_name(name: &str) -> Option<Self> {
                Self::ALL.iter().copied().find(|m| m.name() == name)
            }
            /// The part of a visit it is entered in: `readings` or `observations`; nothing for what is derived.
            pub const fn section(self) -> Option<&'static str> {
                match self.code() {
                    1..=99 => Some("readings"),
                    100..=199 => Some("observations"),
                    _ => None,
                }
            }
        }

        impl Choice for Measurement {
            const CHOICES: &'static Choices = &Choices {
                name: "Measurement",
                doc: "A reading, an observation, or a quantity derived from them.\n\nReadings have numbers from 1, \
                    observations from 100, derived quantities from 200. The name of a reading is the name of its \
                    input field; the name of a derived quantity is its key in the report.",
                list: &[
                    $( Member { code: $code, name: stringify!($name), variant: stringify!($variant), doc: concat!($($doc, "\n"),*) }, )*
                    $( Member { code: $tcode, name: stringify!($tname), variant: stringify!($tvariant), doc: concat!($($tdoc, "\n"),*) }, )*
                    $( Member { code: $ocode, name: stringify!($oname), variant: stringify!($ovariant), doc: concat!($($odoc, "\n"),*) }, )*
                    $( Member { code: $scode, name: stringify!($sname), variant: stringify!($svariant), doc: concat!($($sdoc, "\n"),*) }, )*
                    $( Member {
                        code: $dcode,
                        name: stringify!($dname),
                        variant: stringify!($dvariant),
                        doc: concat!("The derived quantity `", stringify!($dname), "`."),
                    }, )*
                ],
            };
            const C_NAMES: &'static Texts = &[
                $( ($code, c_text!(stringify!($name))), )* $( ($tcode, c_text!(stringify!($tname))), )*
                $( ($ocode, c_text!(stringify!($oname))), )* $( ($scode, c_text!(stringify!($sname))), )*
                $( ($dcode, c_text!(stringify!($dname))), )*
            ];
            fn code(self) -> i32 {
                Self::code(self)
            }
            fn from_code(code: i32) -> Option<Self> {
                Self::from_code(code)
            }
        }
    };
}

measurements! {
    numbers {
        /// Pressure at the compressor's suction, kPa absolute.
        SuctionPressure = 1, Valve: suction_pressure_kpa: Pressure,
        /// Pressure at the evaporator outlet, kPa absolute.
        EvaporatorPressure = 2, Valve: evaporator_pressure_kpa: Pressure,
        /// Pressure at the compressor's discharge, kPa absolute.
        DischargePressure = 3, Valve: discharge_pressure_kpa: Pressure,
        /// Pressure at the condenser or receiver outlet, kPa absolute.
        LiquidPressure = 4, Valve: liquid_pressure_kpa: Pressure,
        /// Pipe temperature at the evaporator outlet, degC.
        EvaporatorOutlet = 5, Clamp: evaporator_outlet_c: Temperature,
        /// Pipe temperature at the compressor inlet, degC.
        SuctionLine = 6, Clamp: suction_line_c: Temperature,
        /// Pipe temperature at the compressor outlet, degC.
        DischargeLine = 7, Clamp: discharge_line_c: Temperature,
        /// Pipe temperature of the liquid line ahead of the drier, degC.
        LiquidLine = 8, Clamp: liquid_line_c: Temperature,
        /// Pipe temperature behind the drier, degC.
        DrierOutlet = 9, Clamp: drier_outlet_c: Temperature,
        /// Air temperature of the cooled space, onto the evaporator, degC.
        Space = 10, Look: space_c: Temperature,
        /// Air temperature off the evaporator, degC.
        SupplyAir = 11, Look: supply_air_c: Temperature,
        /// Air temperature onto the condenser, degC.
        Ambient = 12, Look: ambient_c: Temperature,
        /// Air temperature off the condenser, degC.
        CondenserExhaust = 13, Look: condenser_exhaust_c: Temperature,
        /// Compressor current, A.
        Current = 14, Meter: current_a: Current,
        /// Supply voltage while running, V.
        Voltage = 15, Meter: voltage_v: Voltage,
        /// Lowest suction pressure reached against a closed valve, kPa absolute.
        PumpDown = 16, Valve: pump_down_kpa: Pressure,
        /// Rise of that pressure after the compressor stopped, kPa/min.
        PumpDownRise = 17, Valve: pump_down_rise_kpa_per_min: PressureRise,
        /// Pressure of the stopped, equalised machine, kPa absolute.
        StandingPressure = 18, Valve: standing_pressure_kpa: Pressure,
        /// The one temperature of the stopped, equalised machine, degC.
        StandingTemperature = 19, Clamp: standing_temperature_c: Temperature,
        /// Resistance common to run, ohm.
        WindingRun = 20, Meter: winding_run_ohm: Resistance,
        /// Resistance common to start, ohm.
        WindingStart = 21, Meter: winding_start_ohm: Resistance,
        /// Resistance run to start, ohm.
        WindingRunToStart = 22, Meter: winding_run_to_start_ohm: Resistance,
        /// Insulation resistance winding to frame, megohm.
        WindingToFrame = 23, Meter: winding_to_frame_megohm: Insulation,
        /// Run capacitor, microfarad.
        RunCapacitor = 24, Meter: run_capacitor_uf: Capacitance,
        /// Start capacitor, microfarad.
        StartCapacitor = 25, Meter: start_capacitor_uf: Capacitance,
        /// Time since the compressor started, minutes.
        MinutesRunning = 26, Look: minutes_running: Minutes,
        /// Highest current in the first moment after the start, A.
        StartCurrent = 27, Meter: start_current_a: Current,
        /// Compressor power, W.
        Power = 28, Meter: power_w: Power,
        /// Wet-bulb temperature of the cooled space, degC.
        SpaceWetBulb = 29, Look: space_wet_bulb_c: Temperature,
        /// Temperature of the windings when their resistances were measured, degC.
        WindingTemperature = 30, Clamp: winding_c: Temperature,
        /// Test voltage of the insulation measurement, V.
        InsulationTest = 31, Meter: insulation_test_v: Voltage,
        /// Resistance between unmarked terminals 1 and 2, ohm.
        Terminal12 = 32, Meter: terminal_12_ohm: Resistance,
        /// Resistance between unmarked terminals 2 and 3, ohm.
        Terminal23 = 33, Meter: terminal_23_ohm: Resistance,
        /// Resistance between unmarked terminals 1 and 3, ohm.
        Terminal13 = 34, Meter: terminal_13_ohm: Resistance,
        /// Pipe temperature just behind the metering device, degC; stands for the evaporating temperature of a
        /// machine without a port.
        EvaporatorInlet = 40, Clamp: evaporator_inlet_c: Temperature,
        /// Pipe temperature at a return bend in the middle of the condenser, degC; stands for the condensing
        /// temperature of a machine without a port.
        CondenserMiddle = 41, Clamp: condenser_middle_c: Temperature,
        /// Refrigerant that came out into the recovery cylinder, kg.
        Recovered = 42, OpensSystem: recovered_kg: Mass,
        /// Refrigerant put in on this visit before these readings, kg.
        Added = 43, OpensSystem: added_kg: Mass,
        /// Starts of the compressor an hour.
        StartsPerHour = 44, Look: starts_per_hour: PerHour,
        /// Time that the machine has been running with hardly a stop, hours.
        HoursRunning = 45, Look: hours_running: Hours,
    }
    threes {
        /// The three line-to-line voltages, V.
        LineVoltages = 38, Meter: line_voltages_v: Voltage,
        /// The three line currents, A.
        LineCurrents = 39, Meter: line_currents_a: Current,
    }
    others {
        /// Whether the compressor runs while the pressures are read; not said: it runs.
        Running = 35, Look: running: bool,
        /// Which valve the pump-down was made against.
        PumpDownValve = 36, Look: pump_down_valve: PumpDownValve,
        /// What ended the pump-down.
        PumpDownEndedBy = 37, Look: pump_down_ended_by: PumpDownEnd,
    }
    observations {
        /// How the noise behaves after the start.
        StartNoise = 100, Look: start_noise: StartNoise,
        /// Whether frost or sweat covers the compressor body.
        FrostOnCompressor = 101, Look: frost_on_compressor: bool,
        /// What the sight glass shows.
        SightGlass = 102, Look: sight_glass: SightGlass,
        /// Whether the evaporator coil is iced over.
        CoilIced = 103, Look: coil_iced: bool,
        /// Whether the condenser's fan turns.
        CondenserFan = 104, Look: condenser_fan: Fan,
        /// Whether the evaporator's fan turns.
        EvaporatorFan = 105, Look: evaporator_fan: Fan,
        /// What the condenser's face looks like.
        CondenserFace = 106, Look: condenser_face: CondenserFace,
        /// How far frost or sweat covers the evaporator.
        FrostLine = 107, Look: frost_line: FrostLine,
        /// Whether oil stands at joints, fins or floor.
        OilTraces = 108, Look: oil_traces: bool,
        /// Whether a leak was found.
        LeakFound = 109, Look: leak_found: bool,
        /// Whether thermostat and controls call for cooling.
        CallsForCooling = 110, Look: calls_for_cooling: bool,
        /// Whether the door closes and its gasket seals.
        DoorCloses = 111, Look: door_closes: bool,
        /// What is heard when the compressor is switched on.
        StartSound = 112, Look: start_sound: StartSound,
    }
    derived {
        SuctionSaturation = 200, Valve: suction_saturation_c,
        Superheat = 201, Clamp: superheat_k,
        CompressorSuperheat = 202, Clamp: compressor_superheat_k,
        Subcooling = 203, Clamp: subcooling_k,
        PressureRatio = 204, Valve: pressure_ratio,
        EvaporatorSaturation = 205, Valve: evaporator_saturation_c,
        Condensing = 206, Valve: condensing_c,
        EvaporatorDifference = 207, Valve: evaporator_td_k,
        CondenserDifference = 208, Valve: condenser_td_k,
        DischargeSuperheat = 209, Clamp: discharge_superheat_k,
        LiquidTemperatureDrop = 210, Clamp: drier_drop_k,
        SupplyAirDrop = 211, Look: supply_air_drop_k,
        ExhaustAirRise = 212, Look: exhaust_air_rise_k,
    }
}
