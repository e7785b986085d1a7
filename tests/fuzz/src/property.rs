//! Every property function of a refrigerant, built in or loaded.

use crate::bytes::Bytes;
use rimewise::quantity::{Enthalpy, Entropy, Pressure, Temperature};
use rimewise::refrigerant::{MARGIN, MAX_SUBCOOLING, MAX_SUPERHEAT, Refrigerant, data};
use std::fmt::Debug;

/// Any refrigerant at any state.
pub fn target(bytes: &[u8]) {
    let bytes = &mut Bytes(bytes);
    let refrigerant = data::ALL[bytes.below(data::ALL.len())];
    while !bytes.is_empty() {
        let (low, high) = refrigerant.pressure_range();
        let pressure = bytes.number(0.9 * low.pascals(), 1.1 * high.pascals());
        let temperature = bytes.number(150.0, 500.0);
        let other = bytes.number(-1.0e6, 1.0e6);
        at(refrigerant, pressure, temperature, other, BACK_K);
    }
}

/// How far a temperature may be from where it came from, over its pressure; the curves' worst error is 0.005 K each way.
const BACK_K: f32 = 0.02;

/// Checks everything at one pressure in Pa, temperature in K, and enthalpy or entropy.
pub fn at(refrigerant: &Refrigerant<'_>, pressure: f32, temperature: f32, other: f32, back_k: f32) {
    let (p, t) = (Pressure::from_pascals(pressure), Temperature::from_kelvins(temperature));
    let name = refrigerant.designation();
    let dew = number(refrigerant.dew_temperature(p).map(|t| t.kelvins()), name, pressure, temperature);
    let bubble = number(refrigerant.bubble_temperature(p).map(|t| t.kelvins()), name, pressure, temperature);
    if let (Some(dew), Some(bubble)) = (dew, bubble) {
        // Both curves are fits with 0.005 K of room each; they meet towards the critical point.
        assert!(dew >= bubble - 0.01, "{name} at {pressure} Pa: dew {dew} below bubble {bubble} K");
        assert!(dew > 0.0 && bubble > 0.0, "{name} at {pressure} Pa: {bubble} and {dew} K");
    }
    let dew = number(refrigerant.dew_pressure(t).map(|p| p.pascals()), name, pressure, temperature);
    let bubble = number(refrigerant.bubble_pressure(t).map(|p| p.pascals()), name, pressure, temperature);
    for (p, back) in [
        (dew, dew.map(|p| refrigerant.dew_temperature(Pressure::from_pascals(p)))),
        (bubble, bubble.map(|p| refrigerant.bubble_temperature(Pressure::from_pascals(p)))),
    ] {
        let Some(p) = p else { continue };
        assert!(p > 0.0, "{name} at {temperature} K: {p} Pa");
        // The ends of the table may round to the other side.
        if let Some(Ok(back)) = back {
            let off = (back.kelvins() - temperature).abs();
            assert!(off < back_k, "{name}: {temperature} K is {p} Pa is {} K", back.kelvins());
        }
    }
    plain(refrigerant.phase(p, t), name, pressure, temperature);
    let dew = refrigerant.dew_temperature(p).ok().map(|dew| temperature - dew.kelvins());
    let bubble = refrigerant.bubble_temperature(p).ok().map(|bubble| bubble.kelvins() - temperature);
    // How far from saturation a state is answered, with what rounding adds.
    let far = |off: Option<f32>, most: f32| {
        !off.is_some_and(|off| off > -MARGIN.kelvins() - 0.01 && off < most + 0.01)
    };
    for (answer, too_far) in [
        (refrigerant.vapor(p, t), far(dew, MAX_SUPERHEAT.kelvins())),
        (refrigerant.liquid(p, t), far(bubble, MAX_SUBCOOLING.kelvins())),
    ] {
        if let Some(state) = plain(answer, name, pressure, temperature) {
            let density = state.density.kg_per_m3();
            assert!(density > 0.0, "{name} at {pressure} Pa and {temperature} K: density {density}");
            assert!(
                !too_far,
                "{name} at {pressure} Pa and {temperature} K has a state in a phase it is far from"
            );
        }
    }
    let vapor = plain(refrigerant.saturated_vapor(p), name, pressure, temperature);
    let liquid = plain(refrigerant.saturated_liquid(p), name, pressure, temperature);
    if let (Some(vapor), Some(liquid)) = (vapor, liquid) {
        let (light, heavy) = (vapor.density.kg_per_m3(), liquid.density.kg_per_m3());
        assert!(light > 0.0 && light < heavy, "{name} at {pressure} Pa: vapor {light}, liquid {heavy} kg/m3");
    }
    let (h, s) = (Enthalpy::from_joules_per_kg(other), Entropy::from_joules_per_kg_k(other));
    plain(refrigerant.vapor_temperature_at_enthalpy(p, h), name, pressure, other);
    plain(refrigerant.vapor_temperature_at_entropy(p, s), name, pressure, other);
}

fn number<E: Debug>(answer: Result<f32, E>, name: &str, a: f32, b: f32) -> Option<f32> {
    plain(answer, name, a, b)
}

/// The answer, after looking whether all of its numbers are some; an error's are to be read by people too.
fn plain<T: Debug, E: Debug>(answer: Result<T, E>, name: &str, a: f32, b: f32) -> Option<T> {
    crate::assert_finite(&format!("{name} at {a}, {b}"), &answer);
    answer.ok()
}
