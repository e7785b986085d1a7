//! What to do, in the trade's words: one short sentence a step.

use super::step::{Context, Step, StepKind, Subject};
use crate::cause::Cause;
use crate::measurement::{Effort, Measurement};
use crate::motor::finding::FindingKind;
use crate::readings::Action;

impl Step {
    /// Says what to do, as one short sentence.
    pub const fn text(&self) -> &'static str {
        match (self.kind, self.subject) {
            (StepKind::ReplaceMachine, _) => "Replace the machine: it costs less than mending this one.",
            (StepKind::Leave, Subject::Machine) => {
                "Not decided, and nothing that can be taken here would decide it: replace nothing on this."
            }
            (StepKind::Leave, _) => "Leave the refrigerant circuit alone.",
            (StepKind::Repair, Subject::Measurement(found)) => mend(found),
            (_, Subject::Measurement(measurement)) => match self.effort {
                Some(Effort::OpensSystem) if matches!(measurement, Measurement::PumpDown) => {
                    "Fit a suction service valve, then pump down against it and read the limit; the circuit is opened."
                }
                _ => measure(measurement),
            },
            (_, Subject::Action(action)) => act(action),
            (_, Subject::Context(context)) => ask(context),
            (_, Subject::Cause(cause)) => remedy(cause),
            (_, Subject::Finding(finding)) => electrical(finding),
            (_, Subject::Machine) => "Look at the machine as a whole.",
        }
    }
}

const fn measure(measurement: Measurement) -> &'static str {
    use Measurement as M;
    match measurement {
        M::SuctionPressure => "Put the low-side gauge on and read the suction pressure.",
        M::EvaporatorPressure => "Read the pressure at the evaporator's outlet.",
        M::DischargePressure => "Put the high-side gauge on and read the discharge pressure.",
        M::LiquidPressure => "Read the pressure on the liquid line.",
        M::EvaporatorOutlet => "Clamp on the pipe at the evaporator's outlet, insulated.",
        M::SuctionLine => "Clamp on the suction line, a hand's breadth ahead of the compressor, insulated.",
        M::DischargeLine => "Clamp on the discharge line, a hand's breadth behind the compressor.",
        M::LiquidLine => "Clamp on the liquid line ahead of the drier.",
        M::DrierOutlet => "Clamp on the pipe behind the drier.",
        M::EvaporatorInlet => {
            "Clamp on the pipe just behind the metering device: it stands for the evaporating temperature."
        }
        M::CondenserMiddle => {
            "Clamp on a return bend in the middle of the condenser: it stands for the condensing temperature."
        }
        M::Space => "Read the air onto the evaporator.",
        M::SupplyAir => "Read the air off the evaporator.",
        M::Ambient => "Read the air onto the condenser, out of its exhaust.",
        M::CondenserExhaust => "Read the air off the condenser.",
        M::Current => "Clamp the current of one lead of the compressor.",
        M::Power => "Read the compressor's power.",
        M::Voltage => "Read the voltage at the compressor's supply.",
        M::PumpDown => {
            "Close the valve, let the compressor pull down to its limit, read the pressure and its rise."
        }
        M::WindingRun => "Switch off, lock out, read the run winding: common to run.",
        M::WindingStart => "Switch off, lock out, read the start winding: common to start.",
        M::WindingRunToStart => "Switch off, lock out, read run to start.",
        M::WindingToFrame => "Switch off, lock out, test the windings' insulation to the frame.",
        M::RunCapacitor => "Switch off, discharge the run capacitor through a resistor, read it.",
        M::StartCapacitor => "Switch off, discharge the start capacitor through a resistor, read it.",
        M::StartNoise => "Stop the machine, let it start again, and listen to the first minutes.",
        M::FrostOnCompressor => "Look whether frost or sweat covers the compressor.",
        M::SightGlass => "Look into the sight glass; none fitted is an answer.",
        M::CoilIced => "Look whether the coil is iced over.",
        M::CondenserFan => "Look whether the condenser's fan turns as it should.",
        M::EvaporatorFan => "Look whether the evaporator's fan turns as it should.",
        M::CondenserFace => "Look at the condenser's face: clean, dirty, blocked.",
        M::FrostLine => "Look how far frost or sweat covers the evaporator.",
        M::OilTraces => "Look for oil at joints, fins and floor.",
        M::CallsForCooling => "Look whether thermostat and controls call for cooling.",
        M::DoorCloses => "Look whether the door closes and its gasket seals.",
        _ => "Read it.",
    }
}

const fn mend(found: Measurement) -> &'static str {
    match found {
        Measurement::CallsForCooling => {
            "The controls do not call for cooling: find out why before anything else."
        }
        Measurement::DoorCloses => "Mend door and gasket, let the space pull down, and read again.",
        _ => "Mend what was found.",
    }
}

const fn act(action: Action) -> &'static str {
    match action {
        Action::StopAndEqualise => {
            "Switch off, let the pressures meet and the machine take one temperature; read both."
        }
        Action::DefrostAndReread => "Defrost the coil, let the machine settle, and read again.",
        Action::CleanAndReread => "Clean the condenser, let the machine settle, and read again.",
        Action::LeakSearch => "Search for a leak at joints, valves and coil.",
        Action::RecoverAndWeigh => {
            "Recover the whole charge and weigh what comes out; the circuit is opened."
        }
        Action::StartTest => {
            "Switch on with the terminal cover in place, stand aside, and listen to the start."
        }
        Action::LetItSettle => "Let it settle, then read again.",
    }
}

const fn ask(context: Context) -> &'static str {
    match context {
        Context::Refrigerant => "Read the refrigerant off the plate: without it no pressure tells anything.",
        Context::Metering => "Look how it meters: capillary, orifice, thermostatic or electronic valve.",
        Context::Duty => "Say what it is for: freezer, cooler, air conditioning.",
    }
}

const fn remedy(cause: Cause) -> &'static str {
    match cause {
        Cause::None => "Leave the refrigerant circuit alone.",
        Cause::Undercharge => "Recover, find the leak and mend it, evacuate, charge by weight.",
        Cause::Overcharge => "Recover, evacuate, charge by weight.",
        Cause::LiquidLineRestriction => "Recover, replace the drier, evacuate, charge by weight.",
        Cause::MeteringUnderfeed => {
            "Recover, replace the metering device and the drier, evacuate, charge by weight."
        }
        Cause::FloodBack => {
            "Set the valve's superheat and see to its bulb; with a capillary, replace it and charge by weight."
        }
        Cause::WeakCompressor => "Replace the compressor and the drier, evacuate, charge by weight.",
        Cause::CondenserAirflow => {
            "Bring the condenser's air back: clean the face, see to the fan and its way."
        }
        Cause::EvaporatorAirflow => {
            "Bring the evaporator's air back: defrost or clean the coil, see to the fan and the defrost."
        }
        Cause::NonCondensables => "Recover, evacuate to a deep vacuum that holds, charge by weight.",
    }
}

const fn electrical(finding: FindingKind) -> &'static str {
    use FindingKind as F;
    match finding {
        F::RunCapacitorLow | F::RunCapacitorHigh | F::RunCapacitorOpen => {
            "Replace the run capacitor by one of the plate's value."
        }
        F::StartCapacitorLow | F::StartCapacitorHigh | F::StartCapacitorOpen => {
            "Replace the start capacitor by one of the plate's value."
        }
        F::LowVoltage | F::HighVoltage | F::VoltageUnbalance | F::SinglePhasing => {
            "Have the supply put right before the motor runs."
        }
        F::NoSupply => "Find where the supply ends: controls, contactor, fuse.",
        F::StartGearFailed => "Replace the relay or other start gear.",
        F::HighResistanceConnection | F::CurrentUnbalance => "Find the poor connection and make it good.",
        F::OverloadOpen => "Let the motor cool until its protector closes, then read the windings again.",
        _ => "The motor must not run: replace the compressor.",
    }
}
