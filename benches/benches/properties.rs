//! Times of property calls; reported, never asserted.
// The functions that criterion makes have no documentation.
#![allow(missing_docs)]

use criterion::{Criterion, black_box, criterion_group, criterion_main};
use rimewise_benches::property::{
    bench_dew_pressure, bench_dew_temperature, bench_liquid, bench_r404a, bench_temperature_at_enthalpy,
    bench_temperature_at_entropy, bench_vapor,
};

fn properties(c: &mut Criterion) {
    let r = bench_r404a();
    let mut out = [0.0; 3];
    c.bench_function("dew temperature", |b| b.iter(|| bench_dew_temperature(black_box(r), black_box(4e5))));
    c.bench_function("dew pressure", |b| b.iter(|| bench_dew_pressure(black_box(r), black_box(240.0))));
    c.bench_function("vapor h, s, density", |b| {
        b.iter(|| bench_vapor(black_box(r), black_box(4e5), black_box(280.0), &mut out));
    });
    c.bench_function("liquid h, s, density", |b| {
        b.iter(|| bench_liquid(black_box(r), black_box(4e5), black_box(230.0), &mut out));
    });
    c.bench_function("vapor temperature at enthalpy", |b| {
        b.iter(|| bench_temperature_at_enthalpy(black_box(r), black_box(4e5), black_box(377e3)));
    });
    c.bench_function("vapor temperature at entropy", |b| {
        b.iter(|| bench_temperature_at_entropy(black_box(r), black_box(4e5), black_box(1679.0)));
    });
}

criterion_group!(benches, properties);
criterion_main!(benches);
