//! Cautions that belong to a step of the work.

use crate::charge::composition::{self, ChargeAs};
use crate::field::choice;
use crate::measurement::{Effort, Measurement};
use crate::readings::{Readings, Visit};
use crate::refrigerant::SafetyClass;
use crate::text::{Language, Told};

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

/// The cautions of one visit, in the order of the steps.
pub type Cautions = heapless::Vec<Caution, 24>;

impl Caution {
    /// Reads the caution as a short English sentence for the person on site.
    pub fn text(self) -> &'static str {
        self.code.text(Language::English)
    }
}

/// Lists what to take care of on this visit, each at the step it belongs to.
///
/// A safety class of `None` has no source and is taken as flammable and toxic; a `glide_k` of `None` as zeotropic.
/// `next` holds the measurements suggested. Steps count as taken when a reading of them is in the visit. What
/// repair follows is not known yet, so charging and opening are covered whenever the circuit was measured. Local
/// codes and licensed practice go before all of it.
pub fn cautions(
    safety_class: Option<SafetyClass>,
    glide_k: Option<f32>,
    visit: &Visit,
    next: &[Measurement],
) -> Cautions {
    use CautionCode as Code;
    let handling = composition::handling(glide_k, safety_class);
    let (flammable, toxic) = (handling.flammable, handling.toxic);
    let zeotropic = handling.charge_as == ChargeAs::LiquidOnly;
    let touches =
        |test: &dyn Fn(Measurement) -> bool| next.iter().any(|m| test(*m)) || taken(visit).any(test);
    let pump_down = |m| matches!(m, Measurement::PumpDown | Measurement::PumpDownRise);
    let capacitor = |m| matches!(m, Measurement::RunCapacitor | Measurement::StartCapacitor);
    let winding = |m: Measurement| {
        let after =
            m.code() >= Measurement::WindingRun.code() && m.code() <= Measurement::WindingToFrame.code();
        after || matches!(m, Measurement::Terminal12 | Measurement::Terminal23 | Measurement::Terminal13)
    };
    let gauges = touches(&|m| m.effort() == Effort::Valve);
    let pumps = touches(&pump_down);
    let electrical = touches(&|m| m.effort() == Effort::Meter);
    let pipes = touches(&|m| m.effort() == Effort::Clamp);

    let mut list = Cautions::new();
    let mut add = |when: bool, step: Step, code: CautionCode| {
        if when {
            // The list holds every caution of every step.
            let _ = list.push(Caution { code, step });
        }
    };
    add(pipes || touches(&|m| m == Measurement::DischargeLine), Step::Look, Code::HotSurface);
    if gauges {
        add(true, Step::Gauges, Code::Pressure);
        add(true, Step::Gauges, Code::ColdBurn);
        add(flammable, Step::Gauges, Code::Flammable);
        add(toxic, Step::Gauges, Code::Toxic);
    }
    if electrical {
        let three_phase = visit.system.compressor.phases == Some(3.0);
        add(true, Step::Electrical, Code::LiveTerminals);
        add(true, Step::Electrical, Code::TerminalVenting);
        add(!three_phase || touches(&capacitor), Step::Electrical, Code::Capacitor);
        add(touches(&winding), Step::Electrical, Code::NoVacuumEnergise);
        // A spark at the terminals meets what has leaked.
        add(flammable, Step::Electrical, Code::Flammable);
    }
    if pumps {
        add(true, Step::PumpDown, Code::KeepSafetyControls);
        add(true, Step::PumpDown, Code::NoVacuumPumpDown);
        add(true, Step::PumpDown, Code::AirInCircuit);
    }
    if gauges || pipes {
        add(true, Step::Charging, Code::RecoveryLaw);
        add(zeotropic, Step::Charging, Code::BlendChargeLiquid);
        add(flammable, Step::Charging, Code::Flammable);
        add(toxic, Step::Charging, Code::Toxic);
        add(true, Step::OpensSystem, Code::RecoveryLaw);
        add(true, Step::OpensSystem, Code::Pressure);
        add(flammable, Step::OpensSystem, Code::Flammable);
        add(toxic, Step::OpensSystem, Code::Toxic);
        add(true, Step::OpensSystem, Code::Asphyxiation);
        add(true, Step::OpensSystem, Code::AirInCircuit);
    }
    list
}

impl Step {
    /// The step that a measurement belongs to.
    pub fn of(measurement: Measurement) -> Self {
        match measurement {
            Measurement::PumpDown | Measurement::PumpDownRise => Self::PumpDown,
            other => match other.effort() {
                Effort::Look | Effort::Clamp => Self::Look,
                Effort::Meter => Self::Electrical,
                Effort::Valve => Self::Gauges,
                Effort::OpensSystem => Self::OpensSystem,
            },
        }
    }
}

/// Puts the cautions of the step that comes next before the others, each in its order.
pub fn put_first(cautions: &mut Cautions, next: Step) {
    let mut ordered = Cautions::new();
    let (first, others) =
        (cautions.iter().filter(|c| c.step == next), cautions.iter().filter(|c| c.step != next));
    for caution in first.chain(others) {
        // As long as the list it is made of.
        ordered.push(*caution).ok();
    }
    *cautions = ordered;
}

/// The measurements that a visit holds.
fn taken<'v>(visit: &'v Visit<'_>) -> impl Iterator<Item = Measurement> + 'v {
    let numbers = visit.readings.numbers().into_iter().zip(Readings::FIELDS);
    let read = numbers.filter_map(|(number, field)| number.and_then(|_| Measurement::from_code(field.code)));
    let lines = [
        visit.readings.line_voltages_v.map(|_| Measurement::LineVoltages),
        visit.readings.line_currents_a.map(|_| Measurement::LineCurrents),
    ];
    read.chain(lines.into_iter().flatten())
}
