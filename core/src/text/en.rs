//! English.

use super::{Phrase, StepPhrase, ValueType, table};
use crate::alarm::AlarmCode;
use crate::cause::Cause;
use crate::caution::{CautionCode, Step};
use crate::field::Unit;
use crate::invalid::ErrorCode;
use crate::measurement::{Effort, Measurement};
use crate::motor::finding::FindingKind;
use crate::plan::Context;
use crate::readings::Action;
use crate::warning::WarningKind;

table! { CAUSE: Cause {
    None "nothing that counts",
    Undercharge "undercharge",
    Overcharge "overcharge",
    LiquidLineRestriction "restriction in the liquid line",
    MeteringUnderfeed "the metering device passes too little",
    FloodBack "the metering device passes too much and liquid returns",
    WeakCompressor "weak compressor",
    CondenserAirflow "too little air over the condenser",
    EvaporatorAirflow "too little air over the evaporator",
    NonCondensables "air or nitrogen in the circuit",
} }

table! { WARNING_KIND: WarningKind {
    ReadsLikeGauge "reads like a gauge pressure",
    ContradictsOthers "contradicts the other readings: check it",
    NotSettled "too short after the start for a settled reading: wait before acting on this",
    RefrigerantUnknown "not given: pressures are not interpreted",
    OutsideModel "outside the machine model at today's air temperatures, so nothing is weighed: check both",
    RecordUnused "says too little about this machine to be used as its record",
    TwoCausesAlike "one of two causes that explain the readings about equally well",
    NotRunning "the machine is stopped: running readings are not judged",
    ReadsLikeTheOther "reads as if it and another reading were swapped: check both",
    ReadsLikeAnother "the readings would suit another refrigerant: check the plate and what was charged",
} }

table! { ERROR_CODE: ErrorCode {
    NotFinite "is not a finite number",
    OutOfRange "must lie between {min} and {max}{unit}",
    OutsideTable "must lie between {min} and {max}{unit}, the range of this refrigerant's table",
    AboveDischarge "is above the discharge pressure of a running machine by more than the gauges' uncertainty: \
        the two may be swapped, or the machine stopped",
    PhasesUnknown "must be 1 or 3",
    UnknownCode "is a number that stands for nothing here",
    NotJson "is not JSON: {given}{known}",
    Duplicate "is given twice",
    UnknownField "is not a field known here{known}",
    WrongType "must be {known}, not {given}",
    WrongLength "must be {known}, not of {given}",
    UnknownName "\"{given}\" is none of: {known}",
    UnknownRefrigerant "\"{given}\" is not a refrigerant known here{known}",
    UnknownMeasurement "\"{given}\" is no reading, observation or action known here",
    TooLarge "is outside what a 32-bit number holds",
    Missing "is missing",
    NotUsable "cannot be used with the others that are given here",
    TwoPhase "is liquid and vapor together with the pressure; pressure and temperature do not fix the state",
    OtherPhase "leads to the other phase",
    Transcritical "is above the critical point, where there is no saturation; the highest is {max}{unit}",
    NearCritical "is too close to the critical point of {max}{unit} to be known well enough",
    BetweenBubbleAndDew "lies between the bubble point of {min} and the dew point of {max}{unit}, where this table has none",
    TooLong "is longer than any visit: {given}",
    NotWritten "is answered and could not be written: {given}",
} }

table! { PHRASE: Phrase {
    AtLeast "must be at least {min}{unit}",
    Nearest "; the nearest is \"{known}\"",
    KnownAre "; known are {known}",
    OneOf "one of: {known}",
    InField ", in {known}",
} }

table! { VALUE_TYPE: ValueType {
    Null "null",
    Boolean "true or false",
    Number "a number",
    String "a string",
    Array "an array",
    Object "an object",
    NumberOrOpen "a number or \"open\"",
    ThreeNumbers "an array of three numbers",
    Name "a name",
    Names "an array of names",
    Designation "a designation",
} }

table! { UNIT: Unit {
    None "",
    Ohm "ohm",
    Megohm "megohm",
    Uf "uF",
    V "V",
    A "A",
    Percent "%",
    Kpa "kPa absolute",
    KpaSpan "kPa",
    KpaPerMin "kPa/min",
    C "degC",
    K "K",
    W "W",
    Hz "Hz",
    Kg "kg",
    Minutes "minutes",
    Hours "hours",
    PerHour "an hour",
    Days "days",
} }

table! { EFFORT: Effort {
    Look "look or listen",
    Clamp "put a clamp on a pipe",
    Meter "put a meter on terminals",
    Valve "attach a gauge or turn a valve",
    OpensSystem "open the circuit",
} }

table! { STEP: Step {
    Look "looking and clamping",
    Gauges "attaching and removing gauges",
    Electrical "measuring at electrical terminals",
    PumpDown "closing valves for the pump-down",
    Charging "adding or removing refrigerant",
    OpensSystem "opening the circuit",
} }

table! { FINDING_KIND: FindingKind {
    WindingsGood "the windings agree with each other and with the plate",
    OpenWinding "a winding is open",
    OverloadOpen "the internal overload is open: let the compressor cool and measure again",
    ShortedTurns "a winding reads low enough for shorted turns",
    WindingToFrame "a winding leaks to the frame",
    WindingsInconsistent "the three winding resistances contradict each other",
    RunCapacitorGood "the run capacitor is within its tolerance",
    RunCapacitorLow "the run capacitor is below its tolerance",
    RunCapacitorHigh "the run capacitor is above its tolerance",
    RunCapacitorOpen "the run capacitor is open",
    StartCapacitorGood "the start capacitor is within its tolerance",
    StartCapacitorLow "the start capacitor is below its tolerance",
    StartCapacitorHigh "the start capacitor is above its tolerance",
    StartCapacitorOpen "the start capacitor is open",
    LowVoltage "the supply voltage is low",
    HighVoltage "the supply voltage is high",
    VoltageUnbalance "the three line voltages differ too much",
    CurrentAboveRated "the current is above its rated load",
    CurrentBelowExpected "the current is below what the pressures ask for",
    CurrentNormal "the current is what the pressures ask for",
    LockedRotor "the current stays near the locked-rotor current: switch off",
    HighResistanceConnection "a winding reads higher than any plausible temperature explains, as a poor connection does",
    CurrentUnbalance "the three line currents differ too much",
    InsulationGood "the windings are sound against the frame",
    InsulationDoubtful "the insulation is between the limits: warm, dry, measure again before anything is condemned",
    TerminalsAmbiguous "start and run are too close for this meter to tell apart",
    StartCurrentUsual "the inrush is about the locked-rotor current, as at any start across the line",
    StartCurrentLow "the inrush is far below the locked-rotor current",
    StartCurrentHigh "the inrush is above the locked-rotor current by more than its tolerance",
    SinglePhasing "one of three phases is missing: a fuse, a contact or a conductor is open",
    StartGearFailed "the relay or other start gear does not bring the start winding in",
    NoSupply "there is no supply at the motor: controls, contactor or fuse",
} }

table! { CAUTION_CODE: CautionCode {
    Pressure "The circuit is under pressure: wear eye protection, use hoses and gauges rated for this refrigerant.",
    ColdBurn "Escaping liquid refrigerant freezes skin and eyes: wear gloves and eye protection, purge slowly.",
    Flammable "The refrigerant can burn: no ignition source, ventilate, detector on, tools made for it; only with \
        the training local code asks for.",
    Toxic "The refrigerant is of the higher toxicity class, or its class is not known: ventilate, have \
        breathing protection at hand, follow local code.",
    Asphyxiation "Refrigerant vapour displaces air, lowest places first: ventilate before and during the work.",
    Capacitor "A capacitor holds its charge after switching off: discharge it through a resistor and check before \
        touching.",
    LiveTerminals "Mains voltage: switch off, lock out, check for absence of voltage; live measurements only by people \
        qualified under local rules.",
    TerminalVenting "A damaged terminal can blow out with oil and refrigerant: terminal cover on before power, measure at \
        the far end of the leads, stand aside.",
    RecoveryLaw "Refrigerant is recovered, never vented; opening the circuit needs the licence that local law asks \
        for.",
    NoVacuumEnergise "Never energise or insulation-test a hermetic motor while the system is under vacuum.",
    NoVacuumPumpDown "Not every compressor may be pulled into vacuum: never a scroll, never with a flammable refrigerant; \
        follow its maker's limit and stop there.",
    AirInCircuit "Never let air in and never run the compressor on air: oil, air and heat can explode; pressure-test \
        with dry nitrogen only.",
    BlendChargeLiquid "This blend is charged as liquid by weight, throttled into the suction side: vapour leaves the \
        cylinder with another composition.",
    KeepSafetyControls "Never bypass a pressure control or another safety device to get a reading.",
    HotSurface "Discharge line and shell burn skin: let them cool or wear gloves for the clamp.",
} }

table! { ALARM_CODE: AlarmCode {
    SwitchOff "Switch the compressor off now and leave it off until the reason is found: every minute damages the motor.",
    DoNotEnergise "Do not energise the motor and do not reset its protection: lock it out; a damaged terminal can blow out.",
    DischargeTooHot "The discharge line is so hot that oil breaks down at the valves: find the reason before the machine \
        runs on.",
    HeadPressureHigh "The head pressure is above what is usual for this refrigerant: look at the condenser's air first, \
        keep clear of the high side, never bypass its control.",
    CompressionRatioHigh "The compression ratio is above what one stage takes: the compressor overheats; raise the suction \
        pressure or lower the head pressure before it runs on.",
    LiquidReturning "Liquid refrigerant returns to the compressor: it washes out oil and breaks valves; find the reason \
        before the machine runs on.",
    VacuumWithFlammable "The circuit with its flammable refrigerant is below the atmosphere: a leak draws air in, and the \
        mixture can explode; stop there, no ignition source, ventilate.",
} }

table! { STEP_PHRASE: StepPhrase {
    ReplaceMachine "Replace the machine: it costs less than mending this one.",
    NotDecided "Not decided, and nothing that can be taken here would decide it: replace nothing on this.",
    LeaveAlone "Leave the refrigerant circuit alone.",
    FitValve "Fit a suction service valve, then pump down against it and read the limit; the circuit is opened.",
    LookAtMachine "Look at the machine as a whole.",
    ReadIt "Read it.",
    MendControls "The controls do not call for cooling: find out why before anything else.",
    MendDoor "Mend door and gasket, let the space pull down, and read again.",
    MendFound "Mend what was found.",
    ReplaceMotor "The motor must not run: replace the compressor.",
} }

table! { MEASURE: Measurement {
    SuctionPressure "Put the low-side gauge on and read the suction pressure.",
    EvaporatorPressure "Read the pressure at the evaporator's outlet.",
    DischargePressure "Put the high-side gauge on and read the discharge pressure.",
    LiquidPressure "Read the pressure on the liquid line.",
    EvaporatorOutlet "Clamp on the pipe at the evaporator's outlet, insulated.",
    SuctionLine "Clamp on the suction line, a hand's breadth ahead of the compressor, insulated.",
    DischargeLine "Clamp on the discharge line, a hand's breadth behind the compressor.",
    LiquidLine "Clamp on the liquid line ahead of the drier.",
    DrierOutlet "Clamp on the pipe behind the drier.",
    EvaporatorInlet "Clamp on the pipe just behind the metering device: it stands for the evaporating temperature.",
    CondenserMiddle "Clamp on a return bend in the middle of the condenser: it stands for the condensing temperature.",
    Space "Read the air onto the evaporator.",
    SupplyAir "Read the air off the evaporator.",
    Ambient "Read the air onto the condenser, out of its exhaust.",
    CondenserExhaust "Read the air off the condenser.",
    Current "Clamp the current of one lead of the compressor.",
    Power "Read the compressor's power.",
    Voltage "Read the voltage at the compressor's supply.",
    PumpDown "Close the valve, let the compressor pull down to its limit, read the pressure and its rise.",
    WindingRun "Switch off, lock out, read the run winding: common to run.",
    WindingStart "Switch off, lock out, read the start winding: common to start.",
    WindingRunToStart "Switch off, lock out, read run to start.",
    WindingToFrame "Switch off, lock out, test the windings' insulation to the frame.",
    RunCapacitor "Switch off, discharge the run capacitor through a resistor, read it.",
    StartCapacitor "Switch off, discharge the start capacitor through a resistor, read it.",
    StartNoise "Stop the machine, let it start again, and listen to the first minutes.",
    FrostOnCompressor "Look whether frost or sweat covers the compressor.",
    SightGlass "Look into the sight glass; none fitted is an answer.",
    CoilIced "Look whether the coil is iced over.",
    CondenserFan "Look whether the condenser's fan turns as it should.",
    EvaporatorFan "Look whether the evaporator's fan turns as it should.",
    CondenserFace "Look at the condenser's face: clean, dirty, blocked.",
    FrostLine "Look how far frost or sweat covers the evaporator.",
    OilTraces "Look for oil at joints, fins and floor.",
    CallsForCooling "Look whether thermostat and controls call for cooling.",
    DoorCloses "Look whether the door closes and its gasket seals.",
} }

table! { ACT: Action {
    StopAndEqualise "Switch off, let the pressures meet and the machine take one temperature; read both.",
    DefrostAndReread "Defrost the coil, let the machine settle, and read again.",
    CleanAndReread "Clean the condenser, let the machine settle, and read again.",
    LeakSearch "Search for a leak at joints, valves and coil.",
    RecoverAndWeigh "Recover the whole charge and weigh what comes out; the circuit is opened.",
    StartTest "Switch on with the terminal cover in place, stand aside, and listen to the start.",
    LetItSettle "Let it settle, then read again.",
} }

table! { ASK: Context {
    Refrigerant "Read the refrigerant off the plate: without it no pressure tells anything.",
    Metering "Look how it meters: capillary, orifice, thermostatic or electronic valve.",
    Duty "Say what it is for: freezer, cooler, air conditioning.",
} }

table! { REMEDY: Cause {
    None "Leave the refrigerant circuit alone.",
    Undercharge "Recover, find the leak and mend it, evacuate, charge by weight.",
    Overcharge "Recover, evacuate, charge by weight.",
    LiquidLineRestriction "Recover, replace the drier, evacuate, charge by weight.",
    MeteringUnderfeed "Recover, replace the metering device and the drier, evacuate, charge by weight.",
    FloodBack "Set the valve's superheat and see to its bulb; with a capillary, replace it and charge by weight.",
    WeakCompressor "Replace the compressor and the drier, evacuate, charge by weight.",
    CondenserAirflow "Bring the condenser's air back: clean the face, see to the fan and its way.",
    EvaporatorAirflow "Bring the evaporator's air back: defrost or clean the coil, see to the fan and the defrost.",
    NonCondensables "Recover, evacuate to a deep vacuum that holds, charge by weight.",
} }

table! { MEND: FindingKind {
    RunCapacitorLow "Replace the run capacitor by one of the plate's value.",
    RunCapacitorHigh "Replace the run capacitor by one of the plate's value.",
    RunCapacitorOpen "Replace the run capacitor by one of the plate's value.",
    StartCapacitorLow "Replace the start capacitor by one of the plate's value.",
    StartCapacitorHigh "Replace the start capacitor by one of the plate's value.",
    StartCapacitorOpen "Replace the start capacitor by one of the plate's value.",
    LowVoltage "Have the supply put right before the motor runs.",
    HighVoltage "Have the supply put right before the motor runs.",
    VoltageUnbalance "Have the supply put right before the motor runs.",
    SinglePhasing "Have the supply put right before the motor runs.",
    NoSupply "Find where the supply ends: controls, contactor, fuse.",
    StartGearFailed "Replace the relay or other start gear.",
    HighResistanceConnection "Find the poor connection and make it good.",
    CurrentUnbalance "Find the poor connection and make it good.",
    OverloadOpen "Let the motor cool until its protector closes, then read the windings again.",
} }
