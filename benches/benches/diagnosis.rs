//! Times of a whole visit; reported, never asserted.
// The functions that criterion makes have no documentation.
#![allow(missing_docs)]

use criterion::{Criterion, black_box, criterion_group, criterion_main};
use rimewise::refrigerant::data::R404A;
use rimewise::report::Report;
use rimewise::system::{Duty, Metering, System};
use rimewise::{Readings, Visit, Workspace, check, diagnose_in};

/// An invented freezer with a compressor that has seen better days.
fn visit(readings: Readings) -> Visit<'static> {
    let system =
        System { metering: Some(Metering::Capillary), duty: Some(Duty::Freezer), ..System::default() };
    Visit { system, readings, ..Visit::default() }
}

fn diagnosis(c: &mut Criterion) {
    let four = Readings {
        suction_pressure_kpa: Some(283.0),
        discharge_pressure_kpa: Some(1650.0),
        space_c: Some(-12.0),
        ambient_c: Some(30.0),
        ..Readings::default()
    };
    let ten = Readings {
        evaporator_outlet_c: Some(-14.0),
        suction_line_c: Some(-2.0),
        discharge_line_c: Some(78.0),
        liquid_line_c: Some(33.0),
        supply_air_c: Some(-17.0),
        condenser_exhaust_c: Some(36.0),
        ..four
    };
    let (mut workspace, mut report) = (Workspace::new(), Report::EMPTY);
    for (name, readings) in [("a visit of four readings", four), ("a visit of ten readings", ten)] {
        let visit = visit(readings);
        c.bench_function(name, |b| {
            b.iter(|| {
                let refrigerant = Some(black_box(&R404A));
                diagnose_in(&mut workspace, refrigerant, black_box(&visit), &mut report)
            });
        });
    }
    let visit = visit(ten);
    c.bench_function("the check of a visit", |b| {
        b.iter(|| check(Some(black_box(&R404A)), black_box(&visit)))
    });
}

criterion_group!(benches, diagnosis);
criterion_main!(benches);
