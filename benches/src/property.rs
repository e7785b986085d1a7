//! Property calls under C names, so that a counting program can call each by itself.

use rimewise::quantity::{Enthalpy, Entropy, Pressure, Temperature};
use rimewise::refrigerant::Refrigerant;
use rimewise::refrigerant::data::R404A;

/// The refrigerant counted.
#[unsafe(no_mangle)]
#[inline(never)]
pub extern "C" fn bench_r404a() -> &'static Refrigerant<'static> {
    &R404A
}

/// Does nothing with a pressure: what it costs to count a call.
#[unsafe(no_mangle)]
#[inline(never)]
pub extern "C" fn bench_nothing(_: &Refrigerant<'static>, p: f32) -> f32 {
    p
}

/// Does nothing with a pressure, given another number: what it costs to count a call.
#[unsafe(no_mangle)]
#[inline(never)]
pub extern "C" fn bench_nothing_more(_: &Refrigerant<'static>, p: f32, _: f32) -> f32 {
    p
}

/// Does nothing with a pressure and a temperature but to write three numbers: what it costs to count a state.
#[unsafe(no_mangle)]
#[inline(never)]
pub extern "C" fn bench_nothing_written(
    _: &Refrigerant<'static>,
    p: f32,
    t: f32,
    out: &mut [f32; 3],
) -> bool {
    *out = [p, t, p];
    true
}

/// Dew temperature, K, from pressure, Pa; 0 where there is none.
#[unsafe(no_mangle)]
#[inline(never)]
pub extern "C" fn bench_dew_temperature(r: &Refrigerant<'static>, p: f32) -> f32 {
    r.dew_temperature(Pressure::from_pascals(p)).map_or(0.0, |t| t.kelvins())
}

/// Dew pressure, Pa, from temperature, K; 0 where there is none.
#[unsafe(no_mangle)]
#[inline(never)]
pub extern "C" fn bench_dew_pressure(r: &Refrigerant<'static>, t: f32) -> f32 {
    r.dew_pressure(Temperature::from_kelvins(t)).map_or(0.0, |p| p.pascals())
}

/// Density, enthalpy and entropy of vapor, from pressure, Pa, and temperature, K; tells whether there are.
#[unsafe(no_mangle)]
#[inline(never)]
pub extern "C" fn bench_vapor(r: &Refrigerant<'static>, p: f32, t: f32, out: &mut [f32; 3]) -> bool {
    match r.vapor(Pressure::from_pascals(p), Temperature::from_kelvins(t)) {
        Ok(s) => {
            *out = [s.density.kg_per_m3(), s.enthalpy.joules_per_kg(), s.entropy.joules_per_kg_k()];
            true
        }
        Err(_) => false,
    }
}

/// Density, enthalpy and entropy of liquid, from pressure, Pa, and temperature, K; tells whether there are.
#[unsafe(no_mangle)]
#[inline(never)]
pub extern "C" fn bench_liquid(r: &Refrigerant<'static>, p: f32, t: f32, out: &mut [f32; 3]) -> bool {
    match r.liquid(Pressure::from_pascals(p), Temperature::from_kelvins(t)) {
        Ok(s) => {
            *out = [s.density.kg_per_m3(), s.enthalpy.joules_per_kg(), s.entropy.joules_per_kg_k()];
            true
        }
        Err(_) => false,
    }
}

/// Vapor temperature, K, from pressure, Pa, and enthalpy, J/kg; 0 where there is none.
#[unsafe(no_mangle)]
#[inline(never)]
pub extern "C" fn bench_temperature_at_enthalpy(r: &Refrigerant<'static>, p: f32, h: f32) -> f32 {
    r.vapor_temperature_at_enthalpy(Pressure::from_pascals(p), Enthalpy::from_joules_per_kg(h))
        .map_or(0.0, |t| t.kelvins())
}

/// Vapor temperature, K, from pressure, Pa, and entropy, J/(kg K); 0 where there is none.
#[unsafe(no_mangle)]
#[inline(never)]
pub extern "C" fn bench_temperature_at_entropy(r: &Refrigerant<'static>, p: f32, s: f32) -> f32 {
    r.vapor_temperature_at_entropy(Pressure::from_pascals(p), Entropy::from_joules_per_kg_k(s))
        .map_or(0.0, |t| t.kelvins())
}
