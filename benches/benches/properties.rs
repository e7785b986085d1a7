//! Times of property calls; reported, never asserted.
// The functions that criterion makes have no documentation.
#![allow(missing_docs)]

use criterion::{Criterion, Throughput, black_box, criterion_group, criterion_main};
use rimewise::refrigerant::{Outcome, States};
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

/// Times of 1024 vapor states and dew temperatures in one call each, and one by one.
fn batches(c: &mut Criterion) {
    const COUNT: usize = 1024;
    let r = bench_r404a();
    let mut group = c.benchmark_group("batch");
    group.throughput(Throughput::Elements(COUNT as u64));
    let pascals: Vec<f32> = (0..COUNT).map(|i| 2e5 + 1.2e3 * i as f32).collect();
    let mut dew = vec![0.0; COUNT];
    let mut outcome = vec![Outcome::Answered; COUNT];
    r.dew_temperatures(&pascals, &mut dew, &mut outcome);
    let kelvins: Vec<f32> = dew.iter().enumerate().map(|(i, t)| t + (i % 60) as f32).collect();
    let (mut density, mut enthalpy, mut entropy) = (vec![0.0; COUNT], vec![0.0; COUNT], vec![0.0; COUNT]);
    group.bench_function("dew temperatures", |b| {
        b.iter(|| r.dew_temperatures(black_box(&pascals), &mut dew, &mut outcome));
    });
    group.bench_function("vapor states", |b| {
        b.iter(|| {
            r.vapor_states(
                black_box(&pascals),
                black_box(&kelvins),
                States {
                    density_kg_m3: &mut density,
                    enthalpy_j_kg: &mut enthalpy,
                    entropy_j_kg_k: &mut entropy,
                    outcome: &mut outcome,
                },
            );
        });
    });
    group.bench_function("vapor states one by one", |b| {
        let mut out = [0.0; 3];
        b.iter(|| {
            for (p, t) in pascals.iter().zip(&kelvins) {
                bench_vapor(black_box(r), *p, *t, &mut out);
                black_box(&out);
            }
        });
    });
    group.finish();
}

criterion_group!(benches, properties, batches);
criterion_main!(benches);
