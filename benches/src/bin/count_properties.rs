//! Calls one property function a number of times, for an instruction counter: `count_properties NAME TIMES`.
//!
//! With `time` before the name it prints nanoseconds a call instead.

use rimewise_benches::property::{
    bench_dew_pressure, bench_dew_temperature, bench_liquid, bench_nothing, bench_nothing_more,
    bench_nothing_written, bench_r404a, bench_temperature_at_enthalpy, bench_temperature_at_entropy,
    bench_vapor,
};
use std::hint::black_box;
use std::time::Instant;

/// One call at a pressure near 4 bar; every call is given another pressure.
type Call = fn(f32) -> f32;

#[inline(never)]
fn nothing(p: f32) -> f32 {
    bench_nothing(bench_r404a(), p)
}
#[inline(never)]
fn nothing_more(p: f32) -> f32 {
    bench_nothing_more(bench_r404a(), p, 377_000.0)
}
#[inline(never)]
fn nothing_written(p: f32) -> f32 {
    let mut out = [0.0; 3];
    bench_nothing_written(bench_r404a(), p, 280.0, &mut out);
    black_box(out)[0]
}
#[inline(never)]
fn dew_temperature(p: f32) -> f32 {
    bench_dew_temperature(bench_r404a(), p)
}
#[inline(never)]
fn dew_pressure(p: f32) -> f32 {
    bench_dew_pressure(bench_r404a(), 200.0 + p * 1e-4)
}
#[inline(never)]
fn vapor(p: f32) -> f32 {
    let mut out = [0.0; 3];
    bench_vapor(bench_r404a(), p, 280.0, &mut out);
    black_box(out)[0]
}
#[inline(never)]
fn liquid(p: f32) -> f32 {
    let mut out = [0.0; 3];
    bench_liquid(bench_r404a(), p, 230.0, &mut out);
    black_box(out)[0]
}
#[inline(never)]
fn temperature_at_enthalpy(p: f32) -> f32 {
    bench_temperature_at_enthalpy(bench_r404a(), p, 377_000.0)
}
#[inline(never)]
fn temperature_at_entropy(p: f32) -> f32 {
    bench_temperature_at_entropy(bench_r404a(), p, 1679.0)
}

const CALLS: [(&str, Call); 9] = [
    ("nothing", nothing),
    ("nothing_more", nothing_more),
    ("nothing_written", nothing_written),
    ("dew_temperature", dew_temperature),
    ("dew_pressure", dew_pressure),
    ("vapor", vapor),
    ("liquid", liquid),
    ("temperature_at_enthalpy", temperature_at_enthalpy),
    ("temperature_at_entropy", temperature_at_entropy),
];

fn main() {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let timed = words.first().is_some_and(|w| w == "time");
    let words = &words[usize::from(timed)..];
    let call = words.first().and_then(|name| CALLS.iter().find(|(n, _)| n == name));
    let times = words.get(1).and_then(|t| t.parse::<u32>().ok());
    let (Some((name, call)), Some(times)) = (call, times) else {
        eprintln!("usage: count_properties [time] NAME TIMES");
        std::process::exit(2);
    };
    let call = black_box(*call);
    let start = Instant::now();
    let mut sum = 0.0;
    for i in 0..times {
        sum += call(400_000.0 + (i & 0xFFFF) as f32);
    }
    black_box(sum);
    if timed {
        println!("{name} {:.2}", start.elapsed().as_secs_f64() * 1e9 / f64::from(times));
    }
}
