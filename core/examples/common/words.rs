//! The names of the library in a technician's words.

use rimewise::cause::Cause;
use rimewise::measurement::Measurement;
use rimewise::motor::finding::{Finding, FindingKind};

/// A cause in a technician's words.
pub(crate) fn words(cause: Cause) -> &'static str {
    match cause {
        Cause::None => "a sound refrigerant circuit",
        Cause::Undercharge => "undercharge",
        Cause::Overcharge => "overcharge",
        Cause::LiquidLineRestriction => "liquid-line restriction",
        Cause::MeteringUnderfeed => "metering device underfeeds",
        Cause::FloodBack => "liquid floods back",
        Cause::WeakCompressor => "weak compressor",
        Cause::CondenserAirflow => "low condenser airflow",
        Cause::EvaporatorAirflow => "low evaporator airflow",
        Cause::NonCondensables => "non-condensable gas",
    }
}

/// A measurement in words: its name without the unit, or what the trade says where that would read oddly.
pub(crate) fn reading(measurement: Measurement) -> String {
    let name = match measurement {
        Measurement::PumpDown => "pump-down pressure",
        Measurement::PumpDownRise => "rise after the pump-down",
        Measurement::PumpDownValve => "pump-down valve",
        Measurement::PumpDownEndedBy => "what ended the pump-down",
        Measurement::Space => "space air",
        Measurement::Ambient => "ambient air",
        Measurement::CondenserExhaust => "condenser exhaust air",
        Measurement::WindingToFrame => "winding to frame",
        Measurement::FrostOnCompressor => "frost on the compressor",
        Measurement::CoilIced => "ice on the coil",
        other => other.name(),
    };
    let bare = ["_kpa_per_min", "_kpa", "_megohm", "_ohm", "_uf", "_c", "_k", "_a", "_v", "_w"]
        .iter()
        .find_map(|unit| name.strip_suffix(unit))
        .unwrap_or(name);
    bare.replace('_', " ")
}

/// A finding of the electrical checks in words, with its value and what it was held against.
pub(crate) fn finding_words(finding: &Finding) -> String {
    let number = |v: f32| format!("{v:.2} {}", finding.unit).trim().to_owned();
    let name = finding.finding.name().replace('_', " ");
    let text = match (finding.finding, finding.value, finding.limit) {
        (_, None, _) => String::new(),
        (FindingKind::WindingsGood, Some(off), Some(limit)) => {
            format!(": they agree to {}, held against {}", number(off.abs()), number(limit))
        }
        (_, Some(value), Some(limit)) => {
            format!(": {}, held against {}", number(value), number(limit))
        }
        (_, Some(value), None) => format!(": {}", number(value)),
    };
    format!("{name}{text}")
}
