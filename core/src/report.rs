//! The report: one plain value that holds the whole answer to a visit, in fixed memory.

use crate::caution::Caution;
use crate::cycle::Cycle;
use crate::diagnosis::cause::Cause;
use crate::estimate::Estimate;
use crate::measurement::{Effort, Measurement};
use crate::motor::finding::Finding;
use heapless::Vec;

/// The probability and the mean severity of one cause.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CauseProbability {
    /// The cause.
    pub cause: Cause,
    /// Its probability, from every single cause and every pair that holds it, 0 to 1.
    pub probability: f32,
    /// The fraction lost or added where the cause is present; `None` for none.
    pub severity: Option<f32>,
}

/// One reading's word for or against one cause.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Evidence {
    /// The cause.
    pub cause: Cause,
    /// The reading.
    pub reading: Measurement,
    /// Log-odds of the cause with all readings minus with this one left out, nats; positive speaks for it.
    pub weight_nats: f32,
}

/// A measurement not yet taken and what it would tell.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NextMeasurement {
    /// What to measure.
    pub measurement: Measurement,
    /// The information expected on the cause, bits.
    pub information_bits: f32,
    /// The effort it takes.
    pub effort: Effort,
}

/// A cause and the measurements that rule it out, or would.
#[derive(Clone, Debug, PartialEq)]
pub struct CauseAndMeasurements {
    /// The cause.
    pub cause: Cause,
    /// The measurements, the strongest first.
    pub measurements: Vec<Measurement, 3>,
}

crate::field::choice! {
    /// What is suspicious about an input that is answered all the same.
    WarningKind {
        /// The pressure fits far better after adding one atmosphere.
        ReadsLikeGauge = 1 "reads like a gauge pressure",
        /// The reading contradicts the others.
        ContradictsOthers = 2 "contradicts the other readings: check it",
        // 3 and 4 are retired.
        /// The machine has run too short a time to have settled.
        NotSettled = 5 "too short after the start for a settled reading: wait before acting on this",
        /// The refrigerant is not known, so pressures say nothing.
        RefrigerantUnknown = 6 "not given: pressures are not interpreted",
        /// The point lies outside what the machine model can follow.
        OutsideModel = 7 "outside the machine model at today's air temperatures, so nothing is weighed: check both",
        /// The record cannot be used.
        RecordUnused = 8 "says too little about this machine to be used as its record",
        /// Two causes explain the readings about equally well; each is named by a warning of its own.
        TwoCausesAlike = 9 "one of two causes that explain the readings about equally well",
        /// The machine is said to be stopped.
        NotRunning = 10 "the machine is stopped: running readings are not judged",
        /// Two readings stand where the other one belongs; each is named by a warning of its own.
        ReadsLikeTheOther = 11 "reads as if it and another reading were swapped: check both",
        /// The readings would suit another refrigerant than the one named.
        ReadsLikeAnother = 12 "the readings would suit another refrigerant: check the plate and what was charged",
    }
}

/// Something suspicious about one field.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Warning {
    /// The section of the visit: `system`, `readings`, ...
    pub section: &'static str,
    /// The field in it.
    pub field: &'static str,
    /// What is suspicious.
    pub kind: WarningKind,
}

/// What this machine would show if it were healthy, here and now.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Expected {
    /// Saturation (dew) temperature at the compressor's suction, degC.
    pub suction_saturation_c: Option<Estimate>,
    /// Condensing temperature (mean of bubble and dew), degC.
    pub condensing_c: Option<Estimate>,
    /// Suction pressure, kPa absolute.
    pub suction_pressure_kpa: Option<Estimate>,
    /// Discharge pressure, kPa absolute.
    pub discharge_pressure_kpa: Option<Estimate>,
    /// Superheat at the evaporator outlet, K.
    pub superheat_k: Option<Estimate>,
    /// Superheat at the compressor inlet, K.
    pub compressor_superheat_k: Option<Estimate>,
    /// Subcooling, K.
    pub subcooling_k: Option<Estimate>,
    /// Discharge pressure over suction pressure.
    pub pressure_ratio: Option<Estimate>,
    /// Pipe temperature at the evaporator outlet, degC.
    pub evaporator_outlet_c: Option<Estimate>,
    /// Pipe temperature at the compressor inlet, degC.
    pub suction_line_c: Option<Estimate>,
    /// Pipe temperature at the compressor outlet, degC.
    pub discharge_line_c: Option<Estimate>,
    /// Pipe temperature of the liquid line, degC.
    pub liquid_line_c: Option<Estimate>,
    /// Pipe temperature behind the drier, degC.
    pub drier_outlet_c: Option<Estimate>,
    /// Air temperature off the evaporator, degC.
    pub supply_air_c: Option<Estimate>,
    /// Air temperature off the condenser, degC.
    pub condenser_exhaust_c: Option<Estimate>,
    /// Compressor current, A.
    pub current_a: Option<Estimate>,
    /// Lowest pump-down pressure of a compressor in good order, kPa absolute.
    pub pump_down_kpa: Option<Estimate>,
}

/// The whole answer to one visit.
#[derive(Clone, Debug, PartialEq)]
pub struct Report {
    /// What the readings say the machine does.
    pub cycle: Cycle,
    /// What it would do if healthy.
    pub expected: Expected,
    /// All ten causes, most probable first.
    pub causes: [CauseProbability; Cause::COUNT],
    /// Whether acting on `leading` is justified by the rule's stated error rates.
    pub decided: bool,
    /// The most probable cause, `none` included.
    pub leading: Cause,
    /// How probable readings as odd as these are under the best explanation; `None` where nothing could be judged.
    ///
    /// Lowered by the probability that the visit was told wrongly: another refrigerant, readings in each other's place.
    pub fits: Option<f32>,
    /// The readings' words for and against the leading causes, the strongest first.
    pub evidence: Vec<Evidence, 48>,
    /// What to measure next, the most telling first.
    pub next: Vec<NextMeasurement, 8>,
    /// Causes with a probability below 0.02 and what excludes them.
    pub ruled_out: Vec<CauseAndMeasurements, 10>,
    /// The other causes and what would close them.
    pub still_open: Vec<CauseAndMeasurements, 10>,
    /// What is suspicious about the input.
    pub warnings: Vec<Warning, 16>,
    /// What the motor and supply readings show.
    pub electrical: Vec<Finding, 16>,
    /// What to take care of, step by step.
    pub cautions: Vec<Caution, 24>,
}

impl Expected {
    /// Nothing expected.
    pub const NONE: Self = Self {
        suction_saturation_c: None,
        condensing_c: None,
        suction_pressure_kpa: None,
        discharge_pressure_kpa: None,
        superheat_k: None,
        compressor_superheat_k: None,
        subcooling_k: None,
        pressure_ratio: None,
        evaporator_outlet_c: None,
        suction_line_c: None,
        discharge_line_c: None,
        liquid_line_c: None,
        drier_outlet_c: None,
        supply_air_c: None,
        condenser_exhaust_c: None,
        current_a: None,
        pump_down_kpa: None,
    };

    /// Every quantity with its name, in the order of the report.
    pub fn quantities(&self) -> [(Measurement, Option<Estimate>); 17] {
        [
            (Measurement::SuctionSaturation, self.suction_saturation_c),
            (Measurement::Condensing, self.condensing_c),
            (Measurement::SuctionPressure, self.suction_pressure_kpa),
            (Measurement::DischargePressure, self.discharge_pressure_kpa),
            (Measurement::Superheat, self.superheat_k),
            (Measurement::CompressorSuperheat, self.compressor_superheat_k),
            (Measurement::Subcooling, self.subcooling_k),
            (Measurement::PressureRatio, self.pressure_ratio),
            (Measurement::EvaporatorOutlet, self.evaporator_outlet_c),
            (Measurement::SuctionLine, self.suction_line_c),
            (Measurement::DischargeLine, self.discharge_line_c),
            (Measurement::LiquidLine, self.liquid_line_c),
            (Measurement::DrierOutlet, self.drier_outlet_c),
            (Measurement::SupplyAir, self.supply_air_c),
            (Measurement::CondenserExhaust, self.condenser_exhaust_c),
            (Measurement::Current, self.current_a),
            (Measurement::PumpDown, self.pump_down_kpa),
        ]
    }
}

/// The prior, which stands where nothing could be weighed.
const UNWEIGHED: [CauseProbability; Cause::COUNT] = {
    const fn other(cause: Cause) -> CauseProbability {
        CauseProbability { cause, probability: 0.8 / 9.0, severity: Some(0.0) }
    }
    [
        CauseProbability { cause: Cause::None, probability: 0.35, severity: None },
        other(Cause::Undercharge),
        other(Cause::Overcharge),
        other(Cause::LiquidLineRestriction),
        other(Cause::MeteringUnderfeed),
        other(Cause::FloodBack),
        other(Cause::WeakCompressor),
        other(Cause::CondenserAirflow),
        other(Cause::EvaporatorAirflow),
        other(Cause::NonCondensables),
    ]
};

impl Report {
    /// An empty report: nothing weighed, nothing decided.
    pub const EMPTY: Self = Self {
        cycle: Cycle::NONE,
        expected: Expected::NONE,
        causes: UNWEIGHED,
        decided: false,
        leading: Cause::None,
        fits: None,
        evidence: Vec::new(),
        next: Vec::new(),
        ruled_out: Vec::new(),
        still_open: Vec::new(),
        warnings: Vec::new(),
        electrical: Vec::new(),
        cautions: Vec::new(),
    };

    /// Empties the report in place.
    pub(crate) fn clear(&mut self) {
        self.cycle = Cycle::NONE;
        self.expected = Expected::NONE;
        self.causes = UNWEIGHED;
        self.decided = false;
        self.leading = Cause::None;
        self.fits = None;
        self.evidence.clear();
        self.next.clear();
        self.ruled_out.clear();
        self.still_open.clear();
        self.warnings.clear();
        self.electrical.clear();
        self.cautions.clear();
    }

    /// Adds a warning.
    pub(crate) fn warn(&mut self, section: &'static str, field: &'static str, kind: WarningKind) {
        // The list holds one of every kind.
        let _ = self.warnings.push(Warning { section, field, kind });
    }
}
