//! What each reading, look and action needs: minutes, a tool, a port, and the state of the machine.

use crate::measurement::{Effort, Measurement};
use crate::readings::{Action, Doable, Tool};

/// Where a hose has to go on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Port {
    /// Nowhere.
    None,
    /// On the suction side.
    Suction,
    /// At the evaporator's outlet, which only a machine with a suction pressure regulator has beside that.
    Evaporator,
    /// On the high side.
    HighSide,
    /// On the liquid line.
    Liquid,
    /// Wherever there is one.
    Any,
    /// On the suction side, with a valve to close.
    PumpDown,
}

/// In which state the machine has to be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum State {
    /// Running.
    Running,
    /// Either.
    Either,
}

/// What it takes.
#[derive(Clone, Copy, Debug)]
pub(super) struct Requirement {
    /// Minutes with access and putting away (judged).
    pub(super) minutes: f32,
    pub(super) tools: &'static [Tool],
    pub(super) port: Port,
    pub(super) state: State,
    pub(super) effort: Effort,
}

const fn row(minutes: f32, effort: Effort, tools: &'static [Tool], port: Port, state: State) -> Requirement {
    Requirement { minutes, tools, port, state, effort }
}

const GAUGES: &[Tool] = &[Tool::Gauges];
const CLAMP: &[Tool] = &[Tool::PipeClamp];
const AIR: &[Tool] = &[Tool::AirThermometer];
const METER: &[Tool] = &[Tool::Multimeter];
const NOTHING: &[Tool] = &[];

/// The table: common practice for tools and ports, judged minutes. Nothing for what nobody is asked for by itself.
pub(super) fn requirement(what: Doable) -> Option<Requirement> {
    use Effort::{Clamp, Look, Meter, OpensSystem, Valve};
    use Measurement as M;
    use State::{Either, Running};
    Some(match what {
        Doable::Measurement(measurement) => match measurement {
            M::SuctionPressure => row(4.0, Valve, GAUGES, Port::Suction, Running),
            M::EvaporatorPressure => row(4.0, Valve, GAUGES, Port::Evaporator, Running),
            M::DischargePressure => row(4.0, Valve, GAUGES, Port::HighSide, Running),
            M::LiquidPressure => row(4.0, Valve, GAUGES, Port::Liquid, Running),
            M::EvaporatorOutlet | M::EvaporatorInlet => row(4.0, Clamp, CLAMP, Port::None, Running),
            M::SuctionLine | M::DischargeLine | M::LiquidLine | M::DrierOutlet | M::CondenserMiddle => {
                row(2.0, Clamp, CLAMP, Port::None, Running)
            }
            M::Space | M::Ambient => row(1.0, Look, AIR, Port::None, Either),
            M::SupplyAir | M::CondenserExhaust => row(2.0, Look, AIR, Port::None, Running),
            M::Current => row(3.0, Meter, &[Tool::CurrentClamp], Port::None, Running),
            // A wattmeter with its leads; no list of tools here names one.
            M::Power => row(6.0, Meter, &[Tool::CurrentClamp, Tool::Multimeter], Port::None, Running),
            M::Voltage => row(3.0, Meter, METER, Port::None, Either),
            M::PumpDown => row(10.0, Valve, GAUGES, Port::PumpDown, Running),
            M::WindingRun | M::WindingStart | M::WindingRunToStart => {
                row(4.0, Meter, METER, Port::None, Either)
            }
            M::WindingToFrame => row(4.0, Meter, &[Tool::InsulationTester], Port::None, Either),
            M::RunCapacitor | M::StartCapacitor => {
                row(5.0, Meter, &[Tool::CapacitorMeter], Port::None, Either)
            }
            // Stop, wait, start and listen.
            M::StartNoise => row(6.0, Look, NOTHING, Port::None, Running),
            M::FrostOnCompressor | M::SightGlass | M::CondenserFan => {
                row(1.0, Look, NOTHING, Port::None, Running)
            }
            M::CondenserFace | M::CallsForCooling | M::DoorCloses => {
                row(1.0, Look, NOTHING, Port::None, Either)
            }
            // A cover comes off.
            M::EvaporatorFan | M::FrostLine => row(2.0, Look, NOTHING, Port::None, Running),
            M::CoilIced | M::OilTraces => row(2.0, Look, NOTHING, Port::None, Either),
            _ => return None,
        },
        Doable::Action(action) => match action {
            Action::StopAndEqualise => row(25.0, Valve, GAUGES, Port::Any, Either),
            Action::DefrostAndReread => row(45.0, Look, NOTHING, Port::None, Either),
            Action::CleanAndReread => row(35.0, Look, NOTHING, Port::None, Either),
            Action::LeakSearch => row(30.0, Look, NOTHING, Port::None, Either),
            Action::RecoverAndWeigh => {
                row(45.0, OpensSystem, &[Tool::Gauges, Tool::RecoveryUnit, Tool::Scale], Port::Any, Either)
            }
            Action::StartTest => row(3.0, Look, NOTHING, Port::None, Either),
            Action::LetItSettle => row(15.0, Look, NOTHING, Port::None, Either),
        },
    })
}

/// Minutes that a step takes; an unlisted one counts as a short look.
pub(super) fn minutes(what: Doable) -> f32 {
    requirement(what).map_or(1.0, |row| row.minutes)
}
