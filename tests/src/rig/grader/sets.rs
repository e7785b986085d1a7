//! What of a visit is shown to the library: sets of readings, one left out, one grossly wrong.

use crate::rig::math::Rng;
use serde_json::{Map, Value, json};

/// A set of readings.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Set {
    /// Everything the technician has.
    All,
    /// Everything but the high-side pressures.
    NoHighSide,
    /// Two pressures, suction and liquid line clamps, space and ambient.
    Six,
    /// Suction pressure and suction line clamp, space and ambient.
    SuctionSide,
    /// Everything, without the pump-down test.
    NoPumpDown,
    /// Everything, with one reading grossly wrong.
    OneWrong,
    /// Everything, with a record of the same machine when it was good.
    WithRecord,
    /// Everything, with a record of the same machine on the very same day without its fault: no one has it, but it
    /// bounds what could be gained by knowing the machine better.
    SameDay,
}

/// Every set with its name.
pub const SETS: [(Set, &str); 8] = [
    (Set::All, "all readings"),
    (Set::NoHighSide, "no high-side pressure"),
    (Set::Six, "two pressures, two clamps, space, ambient"),
    (Set::SuctionSide, "suction side only"),
    (Set::NoPumpDown, "all but the pump-down"),
    (Set::OneWrong, "all, one reading grossly wrong"),
    (Set::WithRecord, "all, and a record of the machine when good"),
    (Set::SameDay, "all, and what it would show this day if good"),
];

const SIX: [&str; 6] = [
    "suction_pressure_kpa",
    "discharge_pressure_kpa",
    "suction_line_c",
    "liquid_line_c",
    "space_c",
    "ambient_c",
];

const SUCTION: [&str; 4] = ["suction_pressure_kpa", "suction_line_c", "space_c", "ambient_c"];

/// Channels whose effect is measured one by one.
pub const CHANNELS: [&str; 14] = [
    "suction_pressure_kpa",
    "discharge_pressure_kpa",
    "liquid_pressure_kpa",
    "evaporator_outlet_c",
    "suction_line_c",
    "discharge_line_c",
    "liquid_line_c",
    "drier_outlet_c",
    "supply_air_c",
    "condenser_exhaust_c",
    "current_a",
    "space_wet_bulb_c",
    "pump_down",
    "observations",
];

fn keep(visit: &mut Value, wanted: &[&str]) {
    if let Some(r) = visit["readings"].as_object() {
        let kept: Map<String, Value> = r
            .iter()
            .filter(|(k, _)| wanted.contains(&k.as_str()))
            .map(|(k, v)| (k.clone(), v.clone()))
            .collect();
        visit["readings"] = Value::Object(kept);
    }
    drop_key(visit, "observations");
}

fn drop_key(visit: &mut Value, key: &str) {
    if let Some(v) = visit.as_object_mut() {
        v.shift_remove(key);
    }
}

/// True when the visit holds this channel.
pub fn has(visit: &Value, channel: &str) -> bool {
    match channel {
        "pump_down" => visit["readings"].get("pump_down_kpa").is_some(),
        "observations" => visit.get("observations").is_some(),
        _ => visit["readings"].get(channel).is_some(),
    }
}

/// Takes one channel out of a visit.
pub fn without(visit: &Value, channel: &str) -> Value {
    let mut v = visit.clone();
    if channel == "observations" {
        drop_key(&mut v, "observations");
    } else if let Some(r) = v["readings"].as_object_mut() {
        if channel == "pump_down" {
            r.retain(|k, _| !k.starts_with("pump_down"));
        } else {
            r.shift_remove(channel);
            // Voltage only tells something about current.
            if channel == "current_a" {
                r.shift_remove("voltage_v");
            }
        }
    }
    v
}

/// Puts one channel of `from` into `base`.
pub fn with(base: &Value, from: &Value, channel: &str) -> Value {
    let mut v = base.clone();
    if channel == "observations" {
        v["observations"] = from["observations"].clone();
    } else if let Some(r) = from["readings"].as_object() {
        for (k, x) in r {
            let wanted = match channel {
                "pump_down" => k.starts_with("pump_down"),
                "current_a" => k == "current_a" || k == "voltage_v",
                _ => k == channel,
            };
            if wanted {
                v["readings"][k.as_str()] = x.clone();
            }
        }
    }
    v
}

/// A visit as a set shows it.
pub fn show(visit: &Value, truth: &Value, set: Set) -> Value {
    let mut v = visit.clone();
    match set {
        Set::All => {}
        Set::NoHighSide => {
            v = without(&without(&v, "discharge_pressure_kpa"), "liquid_pressure_kpa");
        }
        Set::Six => keep(&mut v, &SIX),
        Set::SuctionSide => keep(&mut v, &SUCTION),
        Set::NoPumpDown => v = without(&v, "pump_down"),
        Set::OneWrong => {
            let mut rng = Rng::new(77, truth["index"].as_u64().unwrap_or(0));
            if let Some(r) = v["readings"].as_object_mut() {
                let keys: Vec<String> = r
                    .iter()
                    .filter(|(k, x)| x.is_number() && !k.starts_with("pump_down") && *k != "voltage_v")
                    .map(|(k, _)| k.clone())
                    .collect();
                let key = keys[rng.below(keys.len())].clone();
                let x = r[&key].as_f64().unwrap_or(0.0);
                let up = rng.chance(0.5);
                // A gauge off by a third, a clamp on the wrong pipe, a meter on the wrong range.
                let y = if key.ends_with("_kpa") || key.ends_with("_a") {
                    if up { x * 1.3 } else { x / 1.3 }
                } else {
                    let d = rng.between(8.0, 16.0);
                    if up { x + d } else { x - d }
                };
                r.insert(key, json!(libm::round(y * 100.0) / 100.0));
            }
        }
        Set::WithRecord => v["system"]["record"] = json!([{ "readings": truth["record"] }]),
        Set::SameDay => {
            let mut rng = Rng::new(78, truth["index"].as_u64().unwrap_or(0));
            let mut good = Map::new();
            for key in truth["record"].as_object().into_iter().flat_map(Map::keys) {
                if let Some(x) = truth["healthy"][key.as_str()].as_f64() {
                    // The usual instruments: gauges and meters in percent, air and pipe thermometers in kelvin.
                    let noise = rng.normal();
                    let read = match key.as_str() {
                        k if k.ends_with("_kpa") => x * (1.0 + 0.01 * noise),
                        k if k.ends_with("_a") || k.ends_with("_v") => x * (1.0 + 0.015 * noise),
                        "space_c"
                        | "ambient_c"
                        | "supply_air_c"
                        | "condenser_exhaust_c"
                        | "space_wet_bulb_c" => x + 0.5 * noise,
                        _ => x + 0.7 * noise,
                    };
                    good.insert(key.clone(), json!(libm::round(read * 100.0) / 100.0));
                }
            }
            v["system"]["record"] = json!([{ "readings": good }]);
        }
    }
    v
}
