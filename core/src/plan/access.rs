//! What can be taken on this visit, and at which effort.

use super::requirement::{Port, Requirement, State, requirement};
use crate::charge::composition;
use crate::measurement::{Effort, Measurement};
use crate::readings::{Action, Doable, Visit};
use crate::refrigerant::Refrigerant;
use crate::system::{CompressorKind, Metering};

/// What is known of the way to the machine.
#[derive(Clone, Copy)]
pub(super) struct Reach<'a> {
    pub(super) visit: &'a Visit<'a>,
    /// Nothing where it is not known; it then counts as flammable.
    pub(super) refrigerant: Option<&'a Refrigerant<'a>>,
    /// Whether the motor may run and does.
    pub(super) runs: bool,
}

impl Reach<'_> {
    /// The effort that something takes; nothing where it cannot or must not be taken, or was.
    pub(super) fn effort(&self, what: Doable) -> Option<Effort> {
        let need = requirement(what)?;
        // A capillary machine has no sight glass (common practice).
        let fitted = what != Doable::Measurement(Measurement::SightGlass)
            || self.visit.system.metering != Some(Metering::Capillary);
        let free = fitted
            && self.is_allowed(what)
            && self.has_tools(&need)
            && (self.runs || need.state == State::Either);
        if !free || self.is_told(what) {
            return None;
        }
        self.through(need.port, need.effort)
    }

    fn is_allowed(&self, what: Doable) -> bool {
        let same = |other: &Doable| *other == what || Some(*other) == alias(what);
        !self.visit.cannot.iter().any(same)
    }

    fn has_tools(&self, need: &Requirement) -> bool {
        self.visit.access.tools.is_none_or(|tools| need.tools.iter().all(|tool| tools.has(*tool)))
    }

    /// Whether the visit holds it already; what was told as not fitted counts as told.
    pub(super) fn is_told(&self, what: Doable) -> bool {
        let measurement = match (what, alias(what)) {
            (Doable::Measurement(measurement), _) | (_, Some(Doable::Measurement(measurement))) => {
                measurement
            }
            _ => return false,
        };
        let code = measurement.code();
        self.visit.readings.holds(code) || self.visit.observations.holds(code)
    }

    /// The effort through a port; nothing where there is none or the test must not be made.
    fn through(&self, port: Port, effort: Effort) -> Option<Effort> {
        let access = &self.visit.access;
        let system = &self.visit.system;
        let fitted = |port: Option<bool>| port != Some(false);
        match port {
            Port::None => Some(effort),
            Port::Suction => fitted(access.suction_port).then_some(effort),
            // Beside the suction pressure it tells nothing but behind a regulator.
            Port::Evaporator => (system.suction_pressure_regulator == Some(true)).then_some(effort),
            // A small machine with a capillary hardly ever has a port on the high side (common practice).
            Port::HighSide => match access.high_side_port {
                Some(true) => Some(effort),
                None if system.metering != Some(Metering::Capillary) => Some(effort),
                _ => None,
            },
            Port::Liquid => match access.liquid_port {
                Some(true) => Some(effort),
                None if system.receiver == Some(true) => Some(effort),
                _ => None,
            },
            // Without any port one has to be pierced in, which opens the circuit.
            Port::Any => match (access.suction_port, access.high_side_port, access.liquid_port) {
                (Some(false), Some(false) | None, Some(false) | None) => Some(Effort::OpensSystem),
                _ => Some(effort),
            },
            Port::PumpDown => self.pump_down(effort),
        }
    }

    /// The effort of a pump-down: never into vacuum with a scroll or a flammable refrigerant, never without a port.
    fn pump_down(&self, effort: Effort) -> Option<Effort> {
        let access = &self.visit.access;
        let scroll = self.visit.system.compressor.kind == Some(CompressorKind::Scroll);
        if scroll || self.is_flammable() || access.suction_port == Some(false) {
            return None;
        }
        match (access.suction_service_valve, access.liquid_line_valve) {
            (Some(true), _) | (_, Some(true)) => Some(effort),
            (Some(false), Some(false)) => None,
            // A valve that nobody saw would have to be fitted.
            _ => Some(Effort::OpensSystem),
        }
    }

    fn is_flammable(&self) -> bool {
        let class = self.refrigerant.and_then(Refrigerant::safety_class);
        composition::handling(None, class).flammable
    }
}

/// The action behind a reading that only an action gives, and the reverse.
pub(super) fn alias(what: Doable) -> Option<Doable> {
    Some(match what {
        Doable::Measurement(Measurement::StandingPressure) => Doable::Action(Action::StopAndEqualise),
        Doable::Measurement(Measurement::LeakFound) => Doable::Action(Action::LeakSearch),
        Doable::Measurement(Measurement::Recovered) => Doable::Action(Action::RecoverAndWeigh),
        Doable::Measurement(Measurement::StartSound) => Doable::Action(Action::StartTest),
        Doable::Action(Action::StopAndEqualise) => Doable::Measurement(Measurement::StandingPressure),
        Doable::Action(Action::LeakSearch) => Doable::Measurement(Measurement::LeakFound),
        Doable::Action(Action::RecoverAndWeigh) => Doable::Measurement(Measurement::Recovered),
        Doable::Action(Action::StartTest) => Doable::Measurement(Measurement::StartSound),
        _ => return None,
    })
}
