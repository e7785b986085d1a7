//! Calculations beside the diagnosis: supply, capacitors, windings, rating maps, charge, costs. An estimate comes in as
//! two numbers and goes out as two; nothing to answer is NaN or null.

use crate::answer::Answer;
use crate::refrigerant::with;
use rimewise::charge::{composition, hose, indicator, standing, weigh_in};
use rimewise::compressor::{pump_down, rating, start};
use rimewise::estimate::Estimate;
use rimewise::motor::{balance, capacitor, insulation, ohmmeter, temperature, terminals};
use rimewise::quantity::{Pressure, Temperature};
use rimewise::readings::{PumpDownEnd, PumpDownValve};
use wasm_bindgen::prelude::wasm_bindgen;

fn or_nan(value: Option<f32>) -> f32 {
    value.unwrap_or(f32::NAN)
}

fn pair(value: Option<Estimate>) -> Vec<f32> {
    value.map_or_else(Vec::new, |estimate| vec![estimate.value, estimate.u])
}

fn estimate(value: f32, u: f32) -> Estimate {
    Estimate { value, u }
}

/// Computes the unbalance of three values, percent.
#[wasm_bindgen(js_name = unbalancePercent)]
pub fn unbalance_percent(a: f32, b: f32, c: f32) -> f32 {
    or_nan(balance::unbalance_percent([a, b, c]))
}

/// Computes the fraction of its rating that a three-phase motor may carry at a voltage unbalance, percent.
#[wasm_bindgen]
pub fn derating(unbalance_percent: f32) -> f32 {
    or_nan(balance::derating(unbalance_percent))
}

/// Computes a capacitance from current (A) and voltage (V), each with its uncertainty, at a frequency, Hz.
#[wasm_bindgen]
pub fn capacitance(current_a: f32, current_u: f32, voltage_v: f32, voltage_u: f32, hz: f32) -> Vec<f32> {
    pair(capacitor::from_amps_and_volts(estimate(current_a, current_u), estimate(voltage_v, voltage_u), hz))
}

/// Refers a winding resistance from one temperature to another; the constant is that of the metal, degC.
#[wasm_bindgen(js_name = windingReferred)]
pub fn winding_referred(
    ohm: f32,
    ohm_u: f32,
    from_c: f32,
    from_u: f32,
    to_c: f32,
    constant_c: f32,
) -> Vec<f32> {
    pair(temperature::refer(estimate(ohm, ohm_u), estimate(from_c, from_u), to_c, constant_c))
}

/// Refers an insulation resistance to 40 degC, megohm.
#[wasm_bindgen(js_name = insulationAt40C)]
pub fn insulation_at_40c(megohm: f32, winding_c: f32) -> f32 {
    or_nan(insulation::referred_to_40c(megohm, winding_c))
}

/// Computes the locked-rotor current at a voltage, A.
#[wasm_bindgen(js_name = lockedRotorAt)]
pub fn locked_rotor_at(locked_rotor_a: f32, rated_v: f32, voltage_v: f32) -> Vec<f32> {
    pair(start::locked_rotor_at(locked_rotor_a, rated_v, voltage_v))
}

/// Judges a start; nothing where an input cannot be used.
#[wasm_bindgen(js_name = startVerdict)]
pub fn start_verdict(
    inrush_a: f32,
    locked_rotor_a: f32,
    seconds_to_drop: f32,
    settled_a: f32,
) -> Option<String> {
    let verdict = match start::judge(inrush_a, locked_rotor_a, seconds_to_drop, settled_a)? {
        start::Start::Good => "good",
        start::Start::Slow => "slow",
        start::Start::LockedRotor => "locked_rotor",
        start::Start::InrushLow => "inrush_low",
    };
    Some(verdict.to_owned())
}

/// Tells common, start and run from the resistances between terminals 1-2, 2-3 and 1-3, ohm; infinity is open.
#[wasm_bindgen(js_name = identifyTerminals)]
pub fn identify_terminals(ohm_12: f32, ohm_23: f32, ohm_13: f32) -> String {
    use terminals::Identification;
    let told = |kind: &str, found: &terminals::Terminals| {
        Answer::ok()
            .text("identification", kind)
            .number("common", f32::from(found.common))
            .number("start", f32::from(found.start))
            .number("run", f32::from(found.run))
    };
    match terminals::identify(ohm_12, ohm_23, ohm_13, &ohmmeter::Ohmmeter::USUAL) {
        None => return Answer::error("terminal_12_ohm", "resistances must not be negative"),
        Some(Identification::Identified(found)) => told("identified", &found),
        Some(Identification::Ambiguous(found)) => told("ambiguous", &found),
        Some(Identification::Inconsistent { .. }) => Answer::ok().text("identification", "inconsistent"),
        Some(Identification::Open { open }) => {
            Answer::ok().text("identification", "open").number("open", f32::from(open))
        }
    }
    .end()
}

/// Judges a pump-down and estimates how low a compressor in good order pulls, kPa absolute.
#[wasm_bindgen(js_name = pumpDown)]
#[allow(clippy::too_many_arguments)] // The boundary has no structs; `js/trade.ts` takes one.
pub fn judge_pump_down(
    lowest_kpa: f32,
    rise_kpa_per_min: f32,
    valve: &str,
    ended_by: &str,
    discharge_kpa: f32,
    running_suction_kpa: f32,
    running_discharge_kpa: f32,
    gauge_u_kpa: f32,
) -> String {
    let conditions = pump_down::Conditions { discharge_kpa, running_suction_kpa, running_discharge_kpa };
    let Some(expected) = pump_down::expected_kpa(&conditions, gauge_u_kpa) else {
        return Answer::error(
            "discharge_kpa",
            "pressures must be positive, and the suction below the discharge",
        );
    };
    let answer = Answer::ok().number("value", expected.value).number("u", expected.u);
    if lowest_kpa.is_nan() {
        return answer.json("verdict", "null").end();
    }
    let observation = pump_down::PumpDown {
        lowest_kpa,
        rise_kpa_per_min: Some(rise_kpa_per_min).filter(|rise| !rise.is_nan()),
        valve: PumpDownValve::from_name(valve),
        ended_by: PumpDownEnd::from_name(ended_by),
    };
    match pump_down::judge(&observation, &conditions, gauge_u_kpa) {
        None => Answer::error("lowest_kpa", "must be positive"),
        Some(verdict) => answer
            .text(
                "verdict",
                match verdict {
                    pump_down::Verdict::PullsAndHolds => "pulls_and_holds",
                    pump_down::Verdict::PullsAndLeaksBack => "pulls_and_leaks_back",
                    pump_down::Verdict::CannotPull => "cannot_pull",
                    pump_down::Verdict::ReachedStop => "reached_stop",
                    pump_down::Verdict::RiseUnclear => "rise_unclear",
                },
            )
            .end(),
    }
}

/// Estimates the charge's deviation from the rated charge. Values are superheat, its u, subcooling, its u, measured and
/// then rated, K.
#[wasm_bindgen(js_name = chargeDeviation)]
pub fn charge_deviation(values: &[f32], receiver: bool, accumulator: bool, valve: bool) -> String {
    let Ok([a, b, c, d, e, f, g, h]) = <[f32; 8]>::try_from(values) else {
        return Answer::error("measured", "must be two states");
    };
    let state = |superheat, superheat_u, subcooling, subcooling_u| indicator::State {
        superheat_k: estimate(superheat, superheat_u),
        subcooling_k: estimate(subcooling, subcooling_u),
    };
    let blinds = indicator::Blinds { receiver, accumulator, valve };
    match indicator::estimate(&state(a, b, c, d), &state(e, f, g, h), blinds) {
        None => Answer::error("rated", "must be finite, with a subcooling above zero"),
        Some(indicator::Charge::Deviation(deviation)) => {
            Answer::ok().number("value", deviation.value).number("u", deviation.u).json("blind", "null").end()
        }
        Some(indicator::Charge::Blind(why)) => Answer::ok()
            .text(
                "blind",
                match why {
                    indicator::Blindness::Receiver => "receiver",
                    indicator::Blindness::Accumulator => "accumulator",
                    indicator::Blindness::NoSubcooling => "no_subcooling",
                    indicator::Blindness::NoSuperheat => "no_superheat",
                },
            )
            .end(),
    }
}

/// Reads a compressor's rating polynomial inside its envelope; an error names the coefficients or the point.
#[wasm_bindgen]
pub fn rate(
    fahrenheit: bool,
    coefficients: &[f32],
    envelope_c: &[f32],
    spread: f32,
    evaporating_c: f32,
    condensing_c: f32,
) -> String {
    let Ok(coefficients) = <[f32; 10]>::try_from(coefficients) else {
        return Answer::error("coefficients", "must be ten");
    };
    let corners: Vec<(f32, f32)> = envelope_c.as_chunks::<2>().0.iter().map(|[x, y]| (*x, *y)).collect();
    let map = rating::Map {
        scale: if fahrenheit { rating::Scale::Fahrenheit } else { rating::Scale::Celsius },
        mass_flow: None,
        power: Some(rating::Polynomial { coefficients }),
        current: None,
        capacity: None,
        envelope_c: &corners,
        spread: if spread.is_nan() { rating::Map::USUAL_SPREAD } else { spread },
    };
    match map.rate(rating::Quantity::Power, evaporating_c, condensing_c) {
        Ok(rated) => Answer::ok().number("value", rated.value).number("u", rated.u).end(),
        Err(error) => {
            let field = match error {
                rating::NoRating::NoEnvelope => "envelope_c",
                rating::NoRating::NotPositive | rating::NoRating::QuantityMissing => "coefficients",
                _ => "evaporating_c",
            };
            Answer::error(field, &error.to_string())
        }
    }
}

/// Judges a standing pressure at the one temperature of a stopped, equalised machine.
#[wasm_bindgen(js_name = standingPressure)]
pub fn standing_pressure(name: &str, kpa: f32, kpa_u: f32, celsius: f32, celsius_u: f32) -> String {
    with(name, "temperature_c", |fluid| {
        // What the test itself cannot use, the table's own error explains.
        let at = Temperature::from_celsius(celsius);
        fluid.bubble_pressure(at)?;
        let test = standing::Standing::at(fluid, estimate(kpa, kpa_u), estimate(celsius, celsius_u));
        let verdict = test.as_ref().and_then(standing::judge).map(|verdict| match verdict {
            standing::Verdict::Consistent => "consistent",
            standing::Verdict::AboveBubble => "above_bubble",
            standing::Verdict::BelowDew => "below_dew",
        });
        let answer = match verdict {
            Some(verdict) => Answer::ok().text("verdict", verdict),
            None => Answer::ok().json("verdict", "null"),
        };
        Ok(answer
            .number("bubble_kpa", test.map_or(f32::NAN, |t| t.bubble_kpa.value))
            .number("dew_kpa", test.map_or(f32::NAN, |t| t.dew_kpa.value)))
    })
}

/// Computes what a charging hose holds at a pressure (kPa absolute) and a temperature (degC).
#[wasm_bindgen(js_name = hoseContents)]
pub fn hose_contents(name: &str, length_m: f32, inner_diameter_mm: f32, kpa: f32, celsius: f32) -> String {
    let hose = hose::Hose { length_m, inner_diameter_mm };
    if hose.volume_m3().is_none() {
        return Answer::error("length_m", "length and diameter must be positive");
    }
    with(name, "pressure_kpa", |fluid| {
        match hose::contents(
            &hose,
            fluid,
            Pressure::from_kilopascals(kpa),
            Temperature::from_celsius(celsius),
        ) {
            Ok(contents) => {
                Ok(Answer::ok().number("mass_kg", contents.mass_kg).text("phase", contents.phase.name()))
            }
            Err(hose::NoContents::State(error)) => Err(error),
            Err(hose::NoContents::Hose) => Ok(Answer::ok().json("mass_kg", "null").json("phase", "null")),
        }
    })
}

/// Plans a weigh-in; all in kg.
#[wasm_bindgen(js_name = weighIn)]
pub fn weigh_in(
    nameplate: f32,
    residual: f32,
    residual_u: f32,
    hoses: f32,
    hoses_u: f32,
    scale_u: f32,
) -> String {
    let start = weigh_in::WeighIn {
        nameplate_kg: nameplate,
        residual_kg: estimate(residual, residual_u),
        left_in_hoses_kg: estimate(hoses, hoses_u),
        scale_u_kg: scale_u,
    };
    match weigh_in::plan(&start) {
        None => {
            Answer::error("nameplate_kg", "masses must be finite and not negative, the nameplate above zero")
        }
        Some(weigh_in::Plan::Charge { by_scale_kg, relative_u }) => Answer::ok()
            .text("plan", "charge")
            .number("value", by_scale_kg.value)
            .number("u", by_scale_kg.u)
            .number("relative_u", relative_u)
            .end(),
        Some(weigh_in::Plan::Recover { excess_kg }) => Answer::ok()
            .text("plan", "recover")
            .number("value", excess_kg.value)
            .number("u", excess_kg.u)
            .end(),
    }
}

/// Tells how to handle a refrigerant when it is charged or has leaked.
#[wasm_bindgen]
pub fn handling(name: &str) -> String {
    with(name, "refrigerant", |fluid| {
        let told = composition::handling_of(fluid);
        Ok(Answer::ok()
            .boolean("charge_as_liquid_only", told.charge_as == composition::ChargeAs::LiquidOnly)
            .boolean("leak_shifts_composition", told.leak_shifts_composition)
            .boolean("flammable", told.flammable)
            .boolean("toxic", told.toxic))
    })
}

/// Weighs every way to go on by its expected cost (a line of JSON in, a line of JSON out).
#[wasm_bindgen]
pub fn weigh(question: &str) -> String {
    rimewise::json::answer_decision(question)
}
