//! The edge list: every public function is run over numbers that no instrument should give, and answers no NaN.
//!
//! A function is registered by its file and name. The last check reads the sources: a public function that is not
//! registered, or a registered one that is gone, fails.

use rimewise::cause::Cause;
use rimewise::caution::{self, Caution, CautionCode, Step};
use rimewise::charge::composition;
use rimewise::charge::hose::{self, Hose};
use rimewise::charge::indicator::{self, Blinds, State};
use rimewise::charge::standing::{self, Standing};
use rimewise::charge::weigh_in::{self, WeighIn};
use rimewise::compressor::pump_down::{self, Conditions, PumpDown};
use rimewise::compressor::rating::{self, Map, Polynomial, Quantity, Scale};
use rimewise::compressor::{current, start};
use rimewise::decision::{self, Costs};
use rimewise::estimate::Estimate;
use rimewise::measurement::Measurement;
use rimewise::motor::capacitor::{self, Tolerance};
use rimewise::motor::finding::FindingKind;
use rimewise::motor::ohmmeter::{self, Ohmmeter};
use rimewise::motor::windings::{self, Reading};
use rimewise::motor::{balance, insulation, supply, temperature, terminals};
use rimewise::quantity::{Enthalpy, Entropy, Pressure, Temperature};
use rimewise::readings::{PumpDownEnd, PumpDownValve, Readings, Uncertainty, Visit};
use rimewise::refrigerant::data::{R134A, R407C, R744};
use rimewise::refrigerant::{GwpReport, Outcome, Phase, Refrigerant, SafetyClass, States, table};
use rimewise::system::System;
use std::collections::BTreeSet;
use std::fmt::Debug;
use std::path::Path;

/// Numbers that break careless code, then a few that let a function get past its first check.
const EDGES: [f32; 26] = [
    f32::NAN,
    f32::INFINITY,
    f32::NEG_INFINITY,
    0.0,
    -0.0,
    f32::MIN_POSITIVE,
    1.0e-45,
    -1.0e-45,
    f32::MAX,
    f32::MIN,
    1.0e30,
    -1.0e30,
    1.0e-30,
    1.0,
    -1.0,
    0.5,
    0.03,
    3.0,
    -20.0,
    25.0,
    -273.15,
    -235.0,
    230.0,
    298.15,
    1320.0,
    665_381.0,
];

/// How many at the end of the list are numbers that some instrument gives.
const SANE: usize = 13;

/// Runs functions over the edge list and remembers which.
#[derive(Default)]
struct Cover {
    names: BTreeSet<&'static str>,
    faults: Vec<String>,
}

impl Cover {
    /// Runs a function of `N` numbers: over every combination up to three, else over many drawn ones.
    fn run<const N: usize, R: Debug>(&mut self, name: &'static str, function: impl Fn([f32; N]) -> R) {
        self.names.insert(name);
        let count = EDGES.len().pow(N.min(3) as u32);
        let rounds = if N <= 3 { count } else { 40_000 };
        let mut random = 0x2545_F491_4F6C_DD1D_u64;
        for round in 0..rounds {
            let mut rest = round;
            let numbers: [f32; N] = std::array::from_fn(|_| {
                if N > 3 {
                    random ^= random << 13;
                    random ^= random >> 7;
                    random ^= random << 17;
                    rest = (random >> 33) as usize;
                }
                // Among many numbers one edge in three is enough: all others sane, it gets past the first check.
                let sane = N > 3 && rest / 1024 % 3 != 0;
                let from = if sane { EDGES.len() - SANE } else { 0 };
                let index = from + rest % (EDGES.len() - from);
                rest /= EDGES.len();
                EDGES[index]
            });
            let answer = format!("{:?}", function(numbers));
            if (answer.contains("NaN") || answer.contains("inf")) && self.faults.len() < 20 {
                self.faults.push(format!("{name}{numbers:?} answers {answer}"));
            }
        }
    }
}

fn e(value: f32, u: f32) -> Estimate {
    Estimate { value, u }
}

/// An edge, or not measured.
fn maybe(x: f32) -> Option<f32> {
    (x != 3.0).then_some(x)
}

#[test]
fn no_public_function_answers_nan_on_any_number() {
    let mut cover = Cover::default();
    compressors(&mut cover);
    motors(&mut cover);
    charges(&mut cover);
    visits(&mut cover);
    refrigerants(&mut cover);
    assert!(cover.faults.is_empty(), "{:#?}", cover.faults);
    let sources = public_functions();
    let ours: BTreeSet<String> = cover.names.iter().map(|n| (*n).to_owned()).collect();
    let missing: Vec<_> = sources.difference(&ours).collect();
    let gone: Vec<_> = ours.difference(&sources).collect();
    assert!(missing.is_empty(), "public functions that the edge list does not run: {missing:#?}");
    assert!(gone.is_empty(), "registered, but not in the sources: {gone:#?}");
}

fn compressors(cover: &mut Cover) {
    cover.run("compressor/current::expected_from_plate", |[a]| current::expected_from_plate(a));
    cover.run("compressor/current::at_voltage", |[a, u, v, p]| current::at_voltage(e(a, u), v, p));
    cover.run("compressor/current::compare", |[a, b, c, d]| current::compare(e(a, b), e(c, d)));
    cover.run("compressor/start::locked_rotor_at", |[a, b, c]| start::locked_rotor_at(a, b, c));
    cover.run("compressor/start::inrush", |[a, b]| start::inrush(a, b));
    cover.run("compressor/start::judge", |[a, b, c, d]| start::judge(a, b, c, d));

    let polynomial = |n: [f32; 10]| Polynomial { coefficients: n };
    cover.run("compressor/rating::value", |[a, b, c, d, f, g, h, i, j, k, s, t]| {
        polynomial([a, b, c, d, f, g, h, i, j, k]).value(s, t)
    });
    cover.run("compressor/rating::rate", |[a, b, c, s, d, x, y, spread]| {
        let quantity = polynomial([a, b, c, 0.0, a, b, 0.0, c, 0.0, a]);
        let corners = [(-40.0, 20.0), (15.0, 20.0), (x, y), (-40.0, 60.0)];
        let map = Map {
            scale: if a > b { Scale::Celsius } else { Scale::Fahrenheit },
            mass_flow: Some(quantity),
            power: None,
            current: Some(quantity),
            capacity: None,
            envelope_c: &corners,
            spread,
        };
        (map.rate(Quantity::MassFlow, s, d), map.rate(Quantity::Power, s, d))
    });
    cover.run("compressor/rating::distance_outside", |[a, b, c, d, x, y]| {
        rating::distance_outside(&[(a, b), (c, d), (10.0, 60.0), (-30.0, 55.0)], x, y)
    });

    let conditions =
        |d, s, r| Conditions { discharge_kpa: d, running_suction_kpa: s, running_discharge_kpa: r };
    let seen = |p: f32, rise: f32, choice: f32| PumpDown {
        lowest_kpa: p,
        rise_kpa_per_min: maybe(rise),
        valve: Some(if choice > 1.0 { PumpDownValve::SuctionService } else { PumpDownValve::LiquidLine }),
        ended_by: Some(if choice > 20.0 { PumpDownEnd::Technician } else { PumpDownEnd::Limit }),
    };
    cover
        .run("compressor/pump_down::limit_kpa", |[a, b, c, s]| pump_down::limit_kpa(&conditions(a, b, c), s));
    cover.run("compressor/pump_down::expected_kpa", |[a, b, c, s]| {
        pump_down::expected_kpa(&conditions(a, b, c), s)
    });
    cover.run("compressor/pump_down::ln_likelihood", |[p, r, k, a, b, c, s]| {
        pump_down::ln_likelihood(&seen(p, r, k), &conditions(a, b, c), s)
    });
    cover.run("compressor/pump_down::evidence", |[p, r, k, a, b, c]| {
        pump_down::evidence(&seen(p, r, k), &conditions(a, b, c))
    });
    cover.run("compressor/pump_down::judge", |[p, r, k, a, b, c, u]| {
        pump_down::judge(&seen(p, r, k), &conditions(a, b, c), u)
    });
}

fn motors(cover: &mut Cover) {
    let meter = |r, a, l, u| Ohmmeter { relative: r, absolute_ohm: a, leads_ohm: e(l, u) };
    cover.run("motor/balance::unbalance_percent", balance::unbalance_percent);
    cover.run("motor/balance::derating", |[a]| balance::derating(a));
    cover.run("motor/balance::current_unbalance_explained", |[a]| balance::current_unbalance_explained(a));
    cover.run("motor/supply::judge", |[a, b]| supply::judge(a, b));
    cover.run("motor/temperature::refer", |[a, b, c, d, t, k]| temperature::refer(e(a, b), e(c, d), t, k));
    cover.run("motor/temperature::by_rise_of_resistance", |[a, b, c, d, f, g, k]| {
        temperature::by_rise_of_resistance(e(a, b), e(c, d), e(f, g), k)
    });
    cover.run("motor/ohmmeter::resistance", |[r, a, l, u, x]| meter(r, a, l, u).resistance(x));
    cover.run("motor/ohmmeter::relative_uncertainty", |[a, b]| ohmmeter::relative_uncertainty(e(a, b)));
    cover.run("motor/terminals::identify", |[a, b, c, r, o, l, u]| {
        (terminals::identify(a, b, c, &meter(r, o, l, u)), terminals::identify(a, b, c, &Ohmmeter::USUAL))
    });
    let reading = |a, b, c| Reading { run_ohm: maybe(a), start_ohm: maybe(b), run_to_start_ohm: maybe(c) };
    cover.run("motor/windings::continuity", |[a, b, c, r, o]| {
        windings::continuity(&reading(a, b, c), &meter(r, o, 0.0, 0.0))
    });
    cover.run("motor/windings::residual", |[a, b, c, r, o]| {
        windings::residual(&reading(a, b, c), &meter(r, o, 0.0, 0.0))
    });
    cover.run("motor/windings::against_plate", |[a, b, c, d, p, t]| {
        windings::against_plate(e(a, b), e(c, d), p, t)
    });
    cover.run("motor/windings::run_over_start", |[a, b, c, d, p, q]| {
        windings::run_over_start(e(a, b), e(c, d), p, q)
    });
    cover.run("motor/capacitor::both_sides_percent", |[a]| Tolerance::both_sides_percent(a));
    cover.run("motor/capacitor::from_amps_and_volts", |[a, b, c, d, hz]| {
        capacitor::from_amps_and_volts(e(a, b), e(c, d), hz)
    });
    cover.run("motor/capacitor::reading", |[a]| a.is_finite().then(|| capacitor::reading(a)));
    cover.run("motor/capacitor::judge", |[a, b, c, d, u]| {
        capacitor::judge(e(a, u), b, Tolerance { below: c, above: d })
    });
    cover.run("motor/insulation::referred_to_40c", |[a, b]| insulation::referred_to_40c(a, b));
    cover.run("motor/insulation::judge", |[a, b]| insulation::judge(a, maybe(b)));
}

/// A system and readings with edges in every number, drawn from a seed pair.
fn drawn(seed: [f32; 6]) -> (System, Readings) {
    let mut random =
        seed.iter().fold(0x9E37_79B9_u32, |h, x| (h ^ x.to_bits()).wrapping_mul(0x0100_0193) | 1);
    let mut draw = move || {
        random ^= random << 13;
        random ^= random >> 17;
        random ^= random << 5;
        let index = (random >> 8) as usize % (2 * EDGES.len());
        EDGES.get(index).copied()
    };
    let mut readings = Readings::default();
    for index in 0..Readings::FIELDS.len() {
        *readings.number_mut(index).expect("an index below the number of fields") = draw();
    }
    readings.line_voltages_v = draw().map(|v| [v, seed[0], seed[1]]);
    readings.line_currents_a = draw().map(|a| [a, seed[2], seed[3]]);
    let mut system = System::default();
    let plate = &mut system.compressor;
    for index in 0..rimewise::system::CompressorPlate::FIELDS.len() {
        *plate.number_mut(index).expect("an index below the number of fields") = draw();
    }
    if seed[4] > 1.0 {
        plate.phases = Some(3.0);
    }
    system.run_capacitor_tolerance_percent = draw();
    (system, readings)
}

fn charges(cover: &mut Cover) {
    let standing =
        |p, u, b, v, d, w| Standing { pressure_kpa: e(p, u), bubble_kpa: e(b, v), dew_kpa: e(d, w) };
    cover.run("charge/standing::judge", |[a, b, c, d, f, g]| standing::judge(&standing(a, b, c, d, f, g)));
    cover.run("charge/standing::evidence", |[a, b, c, d, f, g]| {
        standing::evidence(&standing(a, b, c, d, f, g))
    });
    cover.run("charge/standing::at", |[a, b, c, d]| Standing::at(&R407C, e(a, b), e(c, d)));
    let hose = |l, d| Hose { length_m: l, inner_diameter_mm: d };
    cover.run("charge/hose::volume_m3", |[a, b]| hose(a, b).volume_m3());
    cover.run("charge/hose::mass_kg", |[a, b]| hose::mass_kg(a, b));
    cover.run("charge/hose::contents", |[a, b, p, t]| {
        hose::contents(&hose(a, b), &R134A, Pressure::from_pascals(p), Temperature::from_kelvins(t))
    });
    cover.run("charge/hose::valved_off", |[a, b]| hose::valved_off(a, b));
    cover.run("charge/weigh_in::plan", |[a, b, c, d, f, g]| {
        let (residual_kg, left_in_hoses_kg) = (e(b, c), e(d, f));
        weigh_in::plan(&WeighIn { nameplate_kg: a, residual_kg, left_in_hoses_kg, scale_u_kg: g })
    });
    cover.run("charge/indicator::estimate", |[a, b, c, d, f, g, h, i]| {
        let state = |a, b, c, d| State { superheat_k: e(a, b), subcooling_k: e(c, d) };
        let blinds = Blinds { receiver: a > 1000.0, accumulator: b > 1000.0, valve: c > 1.0 };
        indicator::estimate(&state(a, b, c, d), &state(f, g, h, i), blinds)
    });
    cover.run("charge/composition::handling", |[a]| composition::handling(maybe(a), Some(SafetyClass::A2L)));
    cover.run("charge/composition::handling_of", |[]: [f32; 0]| composition::handling_of(&R744));
}

fn visits(cover: &mut Cover) {
    cover.run("motor/examine::examine", |[a, b, c, d, f, g]| {
        let (system, readings) = drawn([a, b, c, d, f, g]);
        let uncertainty = Uncertainty { current_percent: maybe(g), ..Uncertainty::default() };
        rimewise::motor::examine(&system, &readings, &uncertainty, maybe(a).map(|a| e(a, b)))
    });
    cover.run("caution::cautions", |[a, b, c, d, f, g]| {
        let (system, readings) = drawn([a, b, c, d, f, g]);
        let visit = Visit { system, readings, ..Visit::default() };
        caution::cautions(None, maybe(a), &visit, &[Measurement::PumpDown])
    });
    cover
        .run("caution::of", |[]: [f32; 0]| Measurement::ALL.iter().map(|m| Step::of(*m)).collect::<Vec<_>>());
    cover.run("caution::put_first", |[]: [f32; 0]| {
        let mut list = caution::cautions(None, None, &Visit::default(), &[Measurement::PumpDown]);
        let before = list.len();
        caution::put_first(&mut list, Step::OpensSystem);
        assert_eq!(list.len(), before);
        list
    });
    cover.run("motor/terminals::found", |[a, b, c, d, f, g]| {
        let (system, readings) = drawn([a, b, c, d, f, g]);
        terminals::found(&system, &readings)
    });
    cover.run("motor/finding::rank", |[]: [f32; 0]| {
        FindingKind::ALL.iter().map(|kind| kind.rank()).collect::<Vec<_>>()
    });
    let examined = |seed| {
        let (system, readings) = drawn(seed);
        rimewise::motor::examine(&system, &readings, &Uncertainty::default(), None)
    };
    cover.run("motor/finding::is_cold_overload", |seed: [f32; 6]| {
        examined(seed).iter().map(|f| f.is_cold_overload()).collect::<Vec<_>>()
    });
    cover.run("motor/finding::forbids_power", |seed: [f32; 6]| {
        examined(seed).iter().map(|f| f.forbids_power()).collect::<Vec<_>>()
    });
    cover.run("motor/finding::inside_the_shell", |seed: [f32; 6]| {
        examined(seed).iter().map(|f| f.inside_the_shell()).collect::<Vec<_>>()
    });
    cover.run("caution::text", |[]: [f32; 0]| {
        CautionCode::ALL.iter().map(|c| Caution { code: *c, step: Step::Look }.text()).collect::<Vec<_>>()
    });
    cover.run("decision/weigh::weigh", |[a, b, c, d, f, g, h, i]| {
        let mut probabilities = [0.0; Cause::COUNT];
        probabilities[0] = a;
        probabilities[1] = b;
        probabilities[6] = c;
        let mut repair = [maybe(d); Cause::COUNT];
        repair[2] = maybe(f);
        let costs = Costs {
            visit: maybe(g),
            test: maybe(h),
            repair,
            compressor: maybe(f),
            product_at_risk: maybe(d),
            ..Costs::default()
        };
        decision::weigh(&probabilities, &costs, i)
    });
    cover.run("estimate::new", |[a, b]| Estimate::new(a, b));
}

fn refrigerants(cover: &mut Cover) {
    let three: [&Refrigerant<'_>; 3] = [&R134A, &R407C, &R744];
    let (pa, k) = (Pressure::from_pascals, Temperature::from_kelvins);
    cover.run("refrigerant/state::name", |[]: [f32; 0]| {
        [Phase::Vapor, Phase::Liquid, Phase::TwoPhase].map(Phase::name)
    });
    cover.run("refrigerant/mod::from_bytes", |[a, b]| {
        let bytes = [a.to_le_bytes(), b.to_le_bytes()].concat();
        Refrigerant::from_bytes(&bytes).map(|r| r.molar_mass())
    });
    cover.run("refrigerant/mod::designation", |[]: [f32; 0]| three.map(|r| r.designation()));
    cover.run("refrigerant/composition::composition", |[]: [f32; 0]| {
        three.map(|r| r.composition().collect::<Vec<_>>())
    });
    cover.run("refrigerant/mod::safety_class", |[]: [f32; 0]| three.map(Refrigerant::safety_class));
    cover.run("refrigerant/mod::molar_mass", |[]: [f32; 0]| three.map(Refrigerant::molar_mass));
    cover.run("refrigerant/mod::critical_temperature", |[]: [f32; 0]| {
        three.map(Refrigerant::critical_temperature)
    });
    cover.run("refrigerant/mod::critical_pressure", |[]: [f32; 0]| three.map(Refrigerant::critical_pressure));
    cover.run("refrigerant/mod::estimated_pair", |[]: [f32; 0]| three.map(Refrigerant::estimated_pair));
    cover.run("refrigerant/mod::normal_boiling_point", |[]: [f32; 0]| {
        three.map(Refrigerant::normal_boiling_point)
    });
    cover.run("refrigerant/mod::glide", |[]: [f32; 0]| three.map(Refrigerant::glide));
    cover.run("refrigerant/mod::temperature_range", |[]: [f32; 0]| three.map(Refrigerant::temperature_range));
    cover.run("refrigerant/mod::pressure_range", |[]: [f32; 0]| three.map(Refrigerant::pressure_range));
    cover.run("refrigerant/mod::dew_pressure_range", |[]: [f32; 0]| {
        three.map(Refrigerant::dew_pressure_range)
    });
    cover.run("refrigerant/mod::bubble_pressure_range", |[]: [f32; 0]| {
        three.map(Refrigerant::bubble_pressure_range)
    });
    cover.run("refrigerant/saturation::dew_temperature", |[p]| three.map(|r| r.dew_temperature(pa(p))));
    cover.run("refrigerant/saturation::bubble_temperature", |[p]| three.map(|r| r.bubble_temperature(pa(p))));
    cover.run("refrigerant/saturation::dew_pressure", |[t]| three.map(|r| r.dew_pressure(k(t))));
    cover.run("refrigerant/saturation::bubble_pressure", |[t]| three.map(|r| r.bubble_pressure(k(t))));
    cover.run("refrigerant/state::phase", |[p, t]| three.map(|r| r.phase(pa(p), k(t))));
    cover.run("refrigerant/state::vapor", |[p, t]| three.map(|r| r.vapor(pa(p), k(t))));
    cover.run("refrigerant/state::liquid", |[p, t]| three.map(|r| r.liquid(pa(p), k(t))));
    cover.run("refrigerant/state::saturated_vapor", |[p]| three.map(|r| r.saturated_vapor(pa(p))));
    cover.run("refrigerant/state::saturated_liquid", |[p]| three.map(|r| r.saturated_liquid(pa(p))));
    cover.run("refrigerant/inverse::vapor_temperature_at_enthalpy", |[p, h]| {
        three.map(|r| r.vapor_temperature_at_enthalpy(pa(p), Enthalpy::from_joules_per_kg(h)))
    });
    cover.run("refrigerant/inverse::vapor_temperature_at_entropy", |[p, s]| {
        three.map(|r| r.vapor_temperature_at_entropy(pa(p), Entropy::from_joules_per_kg_k(s)))
    });
    cover.run("refrigerant/dome::at_enthalpy", |[p, h]| {
        three.map(|r| r.at_enthalpy(pa(p), Enthalpy::from_joules_per_kg(h)))
    });
    cover.run("refrigerant/dome::at_entropy", |[p, s]| {
        three.map(|r| r.at_entropy(pa(p), Entropy::from_joules_per_kg_k(s)))
    });
    cover.run("refrigerant/response::vapor_response", |[p, t]| three.map(|r| r.vapor_response(pa(p), k(t))));
    cover
        .run("refrigerant/response::liquid_response", |[p, t]| three.map(|r| r.liquid_response(pa(p), k(t))));
    cover.run("refrigerant/mod::saturation_uncertainty", |[]: [f32; 0]| {
        three.map(Refrigerant::saturation_uncertainty)
    });
    cover.run("refrigerant/environment::global_warming_potential", |[]: [f32; 0]| {
        three.map(|r| r.global_warming_potential(GwpReport::Sixth))
    });
    cover.run("refrigerant/environment::ozone_depletion_potential", |[]: [f32; 0]| {
        three.map(Refrigerant::ozone_depletion_potential)
    });
    cover.run("refrigerant/environment::atmospheric_life_years", |[]: [f32; 0]| {
        three.map(Refrigerant::atmospheric_life_years)
    });
    type Many = fn(&Refrigerant<'_>, &[f32], &mut [f32], &mut [Outcome]);
    let many: [(&str, Many); 4] = [
        ("refrigerant/batch::dew_temperatures", |r, x, y, o| r.dew_temperatures(x, y, o)),
        ("refrigerant/batch::bubble_temperatures", |r, x, y, o| r.bubble_temperatures(x, y, o)),
        ("refrigerant/batch::dew_pressures", |r, x, y, o| r.dew_pressures(x, y, o)),
        ("refrigerant/batch::bubble_pressures", |r, x, y, o| r.bubble_pressures(x, y, o)),
    ];
    for (name, call) in many {
        cover.run(name, |[x]| {
            three.map(|r| {
                let (mut out, mut outcome) = ([0.0], [Outcome::Answered]);
                call(r, &[x], &mut out, &mut outcome);
                (out, outcome)
            })
        });
    }
    cover.run("refrigerant/batch::vapor_states", |[p, t]| {
        three.map(|r| {
            let (mut d, mut h, mut s, mut outcome) = ([0.0], [0.0], [0.0], [Outcome::Answered]);
            let states = States {
                density_kg_m3: &mut d,
                enthalpy_j_kg: &mut h,
                entropy_j_kg_k: &mut s,
                outcome: &mut outcome,
            };
            r.vapor_states(&[p], &[t], states);
            (d, h, s, outcome)
        })
    });
    cover.run("refrigerant/safety::from_number", |[a]| SafetyClass::from_number(a as u8));
    cover.run("refrigerant/safety::from_name", |[a]| SafetyClass::from_name(&a.to_string()));
    cover.run("refrigerant/safety::name", |[]: [f32; 0]| SafetyClass::ALL.map(SafetyClass::name));
    cover.run("refrigerant/safety::is_flammable", |[]: [f32; 0]| {
        SafetyClass::ALL.map(SafetyClass::is_flammable)
    });
    cover.run("refrigerant/safety::is_higher_toxicity", |[]: [f32; 0]| {
        SafetyClass::ALL.map(SafetyClass::is_higher_toxicity)
    });
    cover.run("refrigerant/table::checksum", |[a]| table::checksum(&a.to_le_bytes()));
    cover.run("refrigerant/find::find", |[a]| {
        rimewise::refrigerant::find(&a.to_string()).map(|r| r.designation())
    });
}

/// Sources whose public functions are registered here.
///
/// Beside these, `quantity` carries NaN through as any unit must; `field`, `measurement`, `readings` and `system` only
/// name and hold; and what takes a whole visit or a stream (`answer`, `check`, `cycle`, `diagnosis`, `json`,
/// `monitor`) stands behind the check that names the field, and is not run here.
const HERE: [&str; 7] = ["caution", "charge", "compressor", "decision", "estimate", "motor", "refrigerant"];

/// The public functions of the sources, by file and name.
fn public_functions() -> BTreeSet<String> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../core/src");
    let mut found = BTreeSet::new();
    let mut folders = vec![root.clone()];
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(&folder).expect("core's sources lie beside this crate") {
            let path = entry.expect("a readable folder").path();
            if path.is_dir() {
                folders.push(path);
                continue;
            }
            let module = path.strip_prefix(&root).expect("below the root").with_extension("");
            let module = module.to_string_lossy().replace('\\', "/");
            let top = module.split('/').next().unwrap_or_default();
            if path.extension().is_none_or(|x| x != "rs") || !HERE.contains(&top) {
                continue;
            }
            let text = std::fs::read_to_string(&path).expect("a readable file");
            for line in text.lines().take_while(|line| !line.starts_with("#[cfg(test)]")) {
                let line = line.trim_start();
                let rest = line.strip_prefix("pub fn ").or_else(|| line.strip_prefix("pub const fn "));
                if let Some(rest) = rest {
                    let name: String =
                        rest.chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect();
                    found.insert(format!("{module}::{name}"));
                }
            }
        }
    }
    found
}
