//! What is dangerous for the machine or the people beside it, apart from any diagnosis.
//!
//! An alarm needs no cause: one reading beyond its limit raises it, so that it stands where nothing is decided and where
//! the machine model has no answer.

use crate::cycle::Cycle;
use crate::expected::Expected;
use crate::field::choice;
use crate::measurement::Measurement;
use crate::motor::Findings;
use crate::motor::finding::{Finding, FindingKind};
use crate::quantity::ATMOSPHERE_KPA;
use crate::quantity::{Pressure, Temperature};
use crate::readings::{Readings, StartSound, Visit};
use crate::refrigerant::{Refrigerant, SafetyClass};
use crate::system::CompressorKind;
use crate::text::{Language, Told};

choice! {
    /// What an alarm is about, the most urgent first.
    AlarmCode {
        /// Switch the compressor off.
        SwitchOff = 1 "switch_off",
        /// Do not energise the motor.
        DoNotEnergise = 2 "do_not_energise",
        /// The discharge line is too hot.
        DischargeTooHot = 3 "discharge_too_hot",
        /// The head pressure is above what is usual for the refrigerant.
        HeadPressureHigh = 4 "head_pressure_high",
        /// The compression ratio is above what one stage takes.
        CompressionRatioHigh = 5 "compression_ratio_high",
        /// Liquid refrigerant returns to the compressor.
        LiquidReturning = 6 "liquid_returning",
        /// A circuit with a flammable refrigerant is under vacuum and can draw in air.
        VacuumWithFlammable = 7 "vacuum_with_flammable",
    }
}

/// One alarm with the reading it rests on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Alarm {
    /// What it is about.
    pub code: AlarmCode,
    /// The reading, observation or derived quantity.
    pub field: Measurement,
    /// Its value, in `unit`; `None` where a meter read open or it is no number.
    pub value: Option<f32>,
    /// The limit, in `unit`; `None` where there is none.
    pub limit: Option<f32>,
    /// The unit of both.
    pub unit: &'static str,
}

impl Alarm {
    /// Reads the alarm as a short English sentence for the person on site.
    pub fn text(&self) -> &'static str {
        self.code.text(Language::English)
    }
}

/// The alarms of one visit, the most urgent first.
pub type Alarms = heapless::Vec<Alarm, 12>;

/// Discharge line above which oil breaks down at the valves, degC, some 15 cm from the shell (common practice: 225 degF;
/// the valves themselves are then some 30 K hotter).
pub const DISCHARGE_LIMIT_C: f32 = 107.0;
/// Condensing temperature above which the head pressure is unusual for any refrigerant, degC (judged: high-pressure
/// controls open at some 60 to 67 degC, and a clean condenser on a hot day stays below 58 degC).
pub const CONDENSING_LIMIT_C: f32 = 60.0;
/// The same below the critical temperature, K, for refrigerants that are critical near there (judged).
const BELOW_CRITICAL_K: f32 = 12.0;
/// Compression ratio that one stage of a piston compressor takes (judged: the rating point for low temperature,
/// -23.3/54.4 degC, asks 12.8 of R-134a; some makers allow 15 to small hermetics).
pub const RATIO_LIMIT_RECIPROCATING: f32 = 15.0;
/// The same of a rotary or scroll compressor, whose gaskets of oil leak sooner (judged).
pub const RATIO_LIMIT_ROTARY: f32 = 12.0;
/// Standard uncertainties by which a reading must pass a limit that it is not to pass by chance.
const COVERAGE: f32 = 2.0;
/// Discharge superheat below which the suction gas was wet, K (judged: isentropic compression of saturated vapour leaves
/// about 5 K with R-134a, R-290 and R-404A and 17 K with R-22 and R-410A, ASHRAE Fundamentals 2021, chapter 29, table 8,
/// and a real compressor adds 10 to 20 K).
const WET_DISCHARGE_K: f32 = 10.0;
/// Discharge superheat above which the suction gas was dry whatever a clamp on the suction line says, K.
///
/// Of 4,000 visits to the simulated machines that constants may be set on, with a superheat that cannot be told from zero
/// and a discharge below this: 0.1 % of those without any fault, 58 % of those with flood-back.
const DRY_DISCHARGE_K: f32 = 20.0;
/// Fraction of the rated load at which overload protection must open (common practice: 125 % of the rated load for
/// time-delay fuses and breakers, 140 % for overload relays).
const OVERLOAD: f32 = 1.25;
/// Voltage unbalance above which a motor must not run, percent (NEMA MG 1, 14.36).
const UNBALANCE_LIMIT_PERCENT: f32 = 5.0;
/// Probability from which a finding raises an alarm: a false one costs less than a burnt motor.
const LIKELY: f32 = 0.5;

/// Lists what is dangerous on this visit, the most urgent first.
///
/// `cycle` as read, `expected` of a healthy machine as far as it is known. Of a machine that is said to be stopped only
/// what stands still is judged.
pub fn alarms(
    refrigerant: Option<&Refrigerant<'_>>,
    visit: &Visit<'_>,
    cycle: &Cycle,
    expected: &Expected,
    findings: &Findings,
) -> Alarms {
    let running = visit.readings.running != Some(false);
    let mut list = Alarms::new();
    if running {
        for finding in findings {
            if let Some(alarm) = switch_off(visit, finding) {
                add(&mut list, alarm);
            }
        }
    }
    if visit.observations.start_sound == Some(StartSound::HumsAndTrips) {
        // The windings carry the locked-rotor current as long as it hums.
        add(&mut list, seen(AlarmCode::SwitchOff, Measurement::StartSound));
    }
    for finding in findings {
        if let Some(alarm) = do_not_energise(visit, finding, running) {
            add(&mut list, alarm);
        }
    }
    if running {
        let limits = [
            discharge_too_hot(&visit.readings),
            head_pressure_high(refrigerant, &visit.readings),
            compression_ratio_high(visit, cycle),
            liquid_returning(visit, cycle),
        ];
        for alarm in limits.into_iter().flatten() {
            add(&mut list, alarm);
        }
    }
    if let Some(alarm) = refrigerant.and_then(|r| vacuum_with_flammable(r, visit, expected, running)) {
        add(&mut list, alarm);
    }
    list
}

/// Adds an alarm; a list that is full holds the more urgent ones already.
fn add(list: &mut Alarms, alarm: Alarm) {
    list.push(alarm).ok();
}

/// An alarm by what was seen or heard.
const fn seen(code: AlarmCode, field: Measurement) -> Alarm {
    Alarm { code, field, value: None, limit: None, unit: "" }
}

/// An alarm by a number beyond its limit.
const fn beyond(code: AlarmCode, field: Measurement, value: f32, limit: f32, unit: &'static str) -> Alarm {
    Alarm { code, field, value: Some(value), limit: Some(limit), unit }
}

/// An alarm by a finding, with its numbers.
fn found(code: AlarmCode, visit: &Visit<'_>, finding: &Finding) -> Alarm {
    let Finding { value, limit, unit, .. } = *finding;
    Alarm { code, field: reading(visit, finding), value, limit, unit }
}

/// What a motor does not survive for long.
fn switch_off(visit: &Visit<'_>, finding: &Finding) -> Option<Alarm> {
    use FindingKind as Kind;
    if finding.probability < LIKELY {
        return None;
    }
    let above = |limit: f32| finding.value.is_some_and(|value| value > limit);
    let rated = visit.system.compressor.rated_load_a;
    let switch_off = match finding.finding {
        Kind::SinglePhasing | Kind::LockedRotor => true,
        Kind::VoltageUnbalance => above(UNBALANCE_LIMIT_PERCENT),
        Kind::CurrentAboveRated => rated.is_some_and(|rated| above(OVERLOAD * rated)),
        // Windings are measured with the power off, unless the visit says that the machine runs all the same.
        _ => finding.forbids_power() && visit.readings.running == Some(true),
    };
    switch_off.then(|| {
        let alarm = found(AlarmCode::SwitchOff, visit, finding);
        // The limit that was passed here, where it is not that of the finding.
        match finding.finding {
            Kind::VoltageUnbalance => Alarm { limit: Some(UNBALANCE_LIMIT_PERCENT), ..alarm },
            Kind::CurrentAboveRated => Alarm { limit: rated.map(|rated| OVERLOAD * rated), ..alarm },
            _ => alarm,
        }
    })
}

/// What makes power on the motor dangerous.
fn do_not_energise(visit: &Visit<'_>, finding: &Finding, running: bool) -> Option<Alarm> {
    let standing = !running
        && match finding.finding {
            FindingKind::SinglePhasing => true,
            FindingKind::VoltageUnbalance => finding.value.is_some_and(|v| v > UNBALANCE_LIMIT_PERCENT),
            _ => false,
        };
    (finding.probability >= LIKELY && (finding.forbids_power() || standing))
        .then(|| found(AlarmCode::DoNotEnergise, visit, finding))
}

/// The reading that a finding rests on.
fn reading(visit: &Visit<'_>, finding: &Finding) -> Measurement {
    use crate::motor::finding::Winding;
    let readings = &visit.readings;
    match finding.finding {
        FindingKind::WindingToFrame => Measurement::WindingToFrame,
        FindingKind::CurrentAboveRated | FindingKind::LockedRotor if readings.current_a.is_some() => {
            Measurement::Current
        }
        FindingKind::CurrentAboveRated | FindingKind::LockedRotor if readings.line_currents_a.is_some() => {
            Measurement::LineCurrents
        }
        FindingKind::SinglePhasing if finding.unit == "A" => Measurement::LineCurrents,
        FindingKind::SinglePhasing | FindingKind::VoltageUnbalance => Measurement::LineVoltages,
        FindingKind::LockedRotor => Measurement::StartSound,
        _ if readings.winding_run_ohm.is_none() && readings.terminal_12_ohm.is_some() => {
            match finding.winding {
                Some(Winding::Line3) => Measurement::Terminal23,
                _ => Measurement::Terminal12,
            }
        }
        _ if finding.winding == Some(Winding::Start) && readings.winding_start_ohm.is_some() => {
            Measurement::WindingStart
        }
        _ if readings.winding_run_ohm.is_some() => Measurement::WindingRun,
        _ if readings.winding_start_ohm.is_some() => Measurement::WindingStart,
        _ if readings.winding_run_to_start_ohm.is_some() => Measurement::WindingRunToStart,
        _ => Measurement::StartSound,
    }
}

fn discharge_too_hot(readings: &Readings) -> Option<Alarm> {
    let value = readings.discharge_line_c?;
    (value > DISCHARGE_LIMIT_C).then(|| {
        let field = Measurement::DischargeLine;
        beyond(AlarmCode::DischargeTooHot, field, value, DISCHARGE_LIMIT_C, "degC")
    })
}

/// The condensing temperature that is unusual for a refrigerant, degC.
fn condensing_limit_c(refrigerant: &Refrigerant<'_>) -> f32 {
    CONDENSING_LIMIT_C.min(refrigerant.critical_temperature().celsius() - BELOW_CRITICAL_K)
}

/// The head pressure against the pressure of the condensing limit, which needs no saturation at the reading itself: above
/// the table or the critical point it is high all the same. A machine without a port shows it at its condenser's middle.
fn head_pressure_high(refrigerant: Option<&Refrigerant<'_>>, readings: &Readings) -> Option<Alarm> {
    let code = AlarmCode::HeadPressureHigh;
    let limit_c = refrigerant.map_or(CONDENSING_LIMIT_C, condensing_limit_c);
    let read = [
        (Measurement::DischargePressure, readings.discharge_pressure_kpa),
        (Measurement::LiquidPressure, readings.liquid_pressure_kpa),
    ];
    if let Some((refrigerant, (field, value))) =
        refrigerant.zip(read.into_iter().find_map(|(field, value)| value.map(|value| (field, value))))
    {
        let limit = pressure_at(refrigerant, limit_c)?;
        return (value > limit).then(|| beyond(code, field, value, limit, "kPa absolute"));
    }
    let value = readings.condenser_middle_c?;
    (value > limit_c).then(|| beyond(code, Measurement::CondenserMiddle, value, limit_c, "degC"))
}

/// The mean of bubble and dew pressure at a temperature, kPa.
fn pressure_at(refrigerant: &Refrigerant<'_>, celsius: f32) -> Option<f32> {
    let at = Temperature::from_celsius(celsius);
    let bubble = refrigerant.bubble_pressure(at).ok().map(Pressure::kilopascals)?;
    let dew = refrigerant.dew_pressure(at).ok().map(Pressure::kilopascals)?;
    Some(0.5 * (bubble + dew))
}

fn compression_ratio_high(visit: &Visit<'_>, cycle: &Cycle) -> Option<Alarm> {
    let ratio = cycle.pressure_ratio?;
    let limit = match visit.system.compressor.kind {
        Some(CompressorKind::Rotary | CompressorKind::Scroll) => RATIO_LIMIT_ROTARY,
        Some(CompressorKind::Reciprocating) | None => RATIO_LIMIT_RECIPROCATING,
    };
    (ratio.value > limit)
        .then(|| beyond(AlarmCode::CompressionRatioHigh, Measurement::PressureRatio, ratio.value, limit, ""))
}

/// Wet suction gas: a superheat that cannot be told from zero, unless the discharge says that it was dry; or a discharge
/// that is hardly superheated beside frost on the compressor.
fn liquid_returning(visit: &Visit<'_>, cycle: &Cycle) -> Option<Alarm> {
    let code = AlarmCode::LiquidReturning;
    let discharge = cycle.discharge_superheat_k;
    let wet = discharge.is_some_and(|d| d.value < WET_DISCHARGE_K);
    let dry = discharge.is_some_and(|d| d.value > DRY_DISCHARGE_K);
    let frost = visit.observations.frost_on_compressor == Some(true);
    if let Some(superheat) = cycle.compressor_superheat_k {
        let limit = superheat.u;
        if superheat.value < limit && (!dry || frost) {
            return Some(beyond(code, Measurement::CompressorSuperheat, superheat.value, limit, "K"));
        }
        // A suction line that is plainly superheated brings no liquid.
        if superheat.value > WET_DISCHARGE_K {
            return None;
        }
    }
    let discharge = discharge.filter(|_| wet && frost)?;
    Some(beyond(code, Measurement::DischargeSuperheat, discharge.value, WET_DISCHARGE_K, "K"))
}

/// A pump-down or a running suction below the atmosphere, unless a healthy machine with this refrigerant runs there.
///
/// The limit is the atmosphere at sea level less the gauge's uncertainty; a class that has no source counts as flammable.
fn vacuum_with_flammable(
    refrigerant: &Refrigerant<'_>,
    visit: &Visit<'_>,
    expected: &Expected,
    running: bool,
) -> Option<Alarm> {
    if !refrigerant.safety_class().is_none_or(SafetyClass::is_flammable) {
        return None;
    }
    let below = |field: Measurement, kpa: Option<f32>| {
        let kpa = kpa?;
        let limit = ATMOSPHERE_KPA - COVERAGE * visit.uncertainty.pressure_kpa(kpa);
        (kpa < limit).then(|| beyond(AlarmCode::VacuumWithFlammable, field, kpa, limit, "kPa absolute"))
    };
    // Without an expectation the boiling point at 10 K below the space tells whether vacuum is usual.
    let usual = match (expected.suction_pressure_kpa, visit.readings.space_c) {
        (Some(suction), _) => suction.value - suction.u < ATMOSPHERE_KPA,
        (None, Some(space)) => pressure_at(refrigerant, space - 10.0).is_none_or(|p| p < ATMOSPHERE_KPA),
        (None, None) => false,
    };
    let suction = || {
        below(Measurement::SuctionPressure, visit.readings.suction_pressure_kpa.filter(|_| running && !usual))
    };
    below(Measurement::PumpDown, visit.readings.pump_down_kpa).or_else(suction)
}
