//! Temperature and quality across the dome, heat capacities and the speed of sound, environment, batches.
//!
//! The figures of single states are CoolProp 8.0's, an independent code for the same equations.

use rimewise::quantity::{Enthalpy, Entropy, Pressure, Temperature};
use rimewise::refrigerant::data::{ALL, R13I1, R22, R134A, R227EA, R404A, R438A, R744};
use rimewise::refrigerant::{GwpReport, Outcome, Phase, PropertyError, Refrigerant, States, find};

fn refrigerant(name: &str) -> &'static Refrigerant<'static> {
    find(name).unwrap_or_else(|| panic!("{name} is built in"))
}

fn kpa(p: f32) -> Pressure {
    Pressure::from_kilopascals(p)
}

fn celsius(t: f32) -> Temperature {
    Temperature::from_celsius(t)
}

/// kPa, degC, cp and cv J/(kg K), speed of sound m/s; allowed what `tables/ERRORS.md` has as worst.
#[test]
fn heat_capacities_and_sound_of_vapor() {
    for (name, p, t, cp, cv, sound, percent) in [
        ("R134a", 200.0, 0.0, 850.68, 737.66, 150.586, 0.8),
        ("R134a", 800.0, 60.0, 1008.32, 857.74, 156.772, 0.8),
        ("R290", 300.0, 10.0, 1684.05, 1439.63, 234.799, 1.8),
        ("R22", 1500.0, 80.0, 843.23, 658.57, 179.164, 0.9),
        ("R32", 1000.0, 40.0, 1062.28, 780.62, 231.443, 2.6),
        ("R744", 3000.0, 20.0, 1205.23, 752.29, 239.926, 2.6),
        ("R600a", 100.0, 20.0, 1670.68, 1508.68, 209.456, 1.5),
        ("R1234yf", 600.0, 40.0, 1011.88, 879.62, 141.533, 0.4),
    ] {
        let found = refrigerant(name).vapor_response(kpa(p), celsius(t)).expect("vapor");
        let off = |found: f32, other: f32| 100.0 * (found / other - 1.0).abs();
        assert!(off(found.heat_capacity_j_kg_k, cp) < percent, "{name} {t}: {found:?}");
        assert!(off(found.heat_capacity_constant_volume_j_kg_k, cv) < percent, "{name} {t}: {found:?}");
        let speed = found.speed_of_sound_m_s.expect("a vapor has one");
        assert!(off(speed, sound) < 0.5, "{name} {t}: {speed}");
    }
}

#[test]
fn heat_capacities_of_liquid() {
    for (name, p, t, cp, percent) in [
        ("R134a", 1000.0, 20.0, 1400.64, 0.8),
        ("R290", 1200.0, 20.0, 2656.42, 0.5),
        ("R22", 1500.0, 20.0, 1228.99, 0.2),
        ("R32", 2500.0, 20.0, 1860.23, 0.4),
        ("R744", 3500.0, -10.0, 2268.88, 0.3),
        ("R600a", 500.0, 10.0, 2335.88, 0.2),
        ("R1234yf", 1000.0, 20.0, 1366.53, 0.5),
    ] {
        let found = refrigerant(name).liquid_response(kpa(p), celsius(t)).expect("liquid");
        let off = 100.0 * (found.heat_capacity_j_kg_k / cp - 1.0).abs();
        assert!(off < percent, "{name}: {found:?}, {off} %");
        assert_eq!(found.speed_of_sound_m_s, None, "{name}");
    }
}

/// kPa, quality, h kJ/kg, s kJ/(kg K), degC.
#[test]
fn a_pure_fluid_boils_at_one_temperature() {
    for (name, p, quality, h, s, t) in [
        ("R134a", 200.0, 0.25, 238.102, 1.146_05, -10.076),
        ("R290", 300.0, 0.5, 362.065, 1.630_58, -14.176),
        ("R744", 2500.0, 0.3, 251.086, 1.201_9, -12.013),
        ("R717", 250.0, 0.2, 399.095, 1.774_39, -13.646),
    ] {
        let r = refrigerant(name);
        let by_h = r.at_enthalpy(kpa(p), Enthalpy::from_joules_per_kg(h * 1e3)).expect("wet");
        let by_s = r.at_entropy(kpa(p), Entropy::from_joules_per_kg_k(s * 1e3)).expect("wet");
        for found in [by_h, by_s] {
            assert_eq!(found.phase, Phase::TwoPhase, "{name}");
            assert!((found.temperature.celsius() - t).abs() < 0.005, "{name}: {found:?}");
            let found_quality = found.quality.expect("between");
            assert!((found_quality - quality).abs() < 0.001, "{name}: {found_quality}");
        }
    }
}

/// kPa, share of the evaporation's enthalpy, degC; the blend's own bubble and dew point in the first and last row.
#[test]
fn a_blend_warms_along_its_glide_as_its_phases_change() {
    for (name, p, rows) in [
        ("R407C", 400.0, [(0.245_33, -8.880), (0.493_96, -7.264), (0.745_75, -5.584)]),
        ("R448A", 300.0, [(0.245_01, -19.779), (0.493_03, -18.312), (0.744_71, -16.569)]),
        ("R454C", 400.0, [(0.247_10, -9.210), (0.497_42, -6.926), (0.749_01, -4.758)]),
    ] {
        let r = refrigerant(name);
        let (liquid, vapor) = (r.saturated_liquid(kpa(p)).expect("l"), r.saturated_vapor(kpa(p)).expect("v"));
        let (low, high) = (liquid.enthalpy.joules_per_kg(), vapor.enthalpy.joules_per_kg());
        for (share, t) in rows {
            let h = Enthalpy::from_joules_per_kg(low + share * (high - low));
            let found = r.at_enthalpy(kpa(p), h).expect("wet");
            assert!((found.temperature.celsius() - t).abs() < 0.03, "{name} {share}: {found:?}");
        }
    }
}

/// Enthalpy and entropy of one state lead to one temperature, on every side of the dome of every refrigerant.
#[test]
fn both_inverses_return_to_where_the_state_was() {
    for r in ALL {
        let (low, high) = r.pressure_range();
        for share in [0.1f32, 0.35, 0.6] {
            let p = Pressure::from_pascals(low.pascals() * libm::powf(high.pascals() / low.pascals(), share));
            let (bubble, dew) =
                (r.bubble_temperature(p).expect("bubble"), r.dew_temperature(p).expect("dew"));
            for over in [0.5f32, 3.0, 20.0, 75.0] {
                let t = Temperature::from_kelvins(dew.kelvins() + over);
                let state = r.vapor(p, t).expect("vapor");
                let h = r.at_enthalpy(p, state.enthalpy).expect("from h");
                let s = r.at_entropy(p, state.entropy).expect("from s");
                for found in [h, s] {
                    assert_eq!((found.phase, found.quality), (Phase::Vapor, None), "{}", r.designation());
                    let off = (found.temperature.kelvins() - t.kelvins()).abs();
                    assert!(off < 0.02, "{} {p:?} +{over}: {off}", r.designation());
                }
            }
            for under in [0.5f32, 3.0, 15.0] {
                let t = Temperature::from_kelvins(bubble.kelvins() - under);
                let Ok(state) = r.liquid(p, t) else { continue };
                let h = r.at_enthalpy(p, state.enthalpy).expect("from h");
                let s = r.at_entropy(p, state.entropy).expect("from s");
                for found in [h, s] {
                    assert_eq!((found.phase, found.quality), (Phase::Liquid, None), "{}", r.designation());
                    let off = (found.temperature.kelvins() - t.kelvins()).abs();
                    assert!(off < 0.02, "{} {p:?} -{under}: {off}", r.designation());
                }
            }
        }
    }
}

/// Across a blend's dome neither temperature nor quality ever falls as heat is added, and by entropy they are the same.
#[test]
fn nothing_falls_across_the_dome() {
    let mut refused = 0;
    for r in ALL {
        let (low, high) = r.pressure_range();
        let p = Pressure::from_pascals(libm::sqrtf(low.pascals() * high.pascals()));
        let (liquid, vapor) = (r.saturated_liquid(p).expect("l"), r.saturated_vapor(p).expect("v"));
        let (bubble, dew) = (r.bubble_temperature(p).expect("bubble"), r.dew_temperature(p).expect("dew"));
        let (a, b) = (liquid.enthalpy.joules_per_kg(), vapor.enthalpy.joules_per_kg());
        let mut before = (bubble.kelvins() - 0.01, -1e-3);
        for step in 0..=40u8 {
            let share = f32::from(step) / 40.0;
            let found = match r.at_enthalpy(p, Enthalpy::from_joules_per_kg(a + share * (b - a))) {
                Ok(found) => found,
                Err(PropertyError::Glide { .. }) => {
                    refused += 1;
                    break;
                }
                other => panic!("{}: {other:?}", r.designation()),
            };
            let now = (found.temperature.kelvins(), found.quality.unwrap_or(share));
            assert!(now.0 >= before.0 - 0.02, "{} {share}: {now:?} after {before:?}", r.designation());
            assert!(now.1 > before.1, "{} {share}: {now:?} after {before:?}", r.designation());
            assert!(now.0 <= dew.kelvins().max(bubble.kelvins()) + 0.02, "{}", r.designation());
            before = now;
        }
    }
    // Where the polynomials are off by more than 0.05 K nothing is said.
    assert_eq!(refused, 9, "blends whose dome is refused");
}

/// Heavy molecules condense when they are compressed from saturation: R227ea from 0 degC to the pressure of 40 degC.
#[test]
fn an_entropy_below_saturation_is_told() {
    let r = &R227EA;
    let inlet = r.saturated_vapor(r.dew_pressure(celsius(0.0)).expect("p")).expect("vapor");
    let p = r.dew_pressure(celsius(40.0)).expect("p");
    let found = r.at_entropy(p, inlet.entropy).expect("wet");
    assert_eq!(found.phase, Phase::TwoPhase);
    // Saturated, by CoolProp 8.0 as well.
    assert!((found.temperature.celsius() - 40.0).abs() < 0.01, "{found:?}");
    let quality = found.quality.expect("between");
    assert!((quality - R227EA_QUALITY).abs() < 0.003, "{quality}");
}

/// CoolProp 8.0: R227ea saturated at 0 degC, isentropic to the saturation pressure of 40 degC.
const R227EA_QUALITY: f32 = 0.9075;

#[test]
fn the_critical_region_is_told_as_such() {
    let h = Enthalpy::from_joules_per_kg(400e3);
    let above = R744.at_enthalpy(Pressure::from_bar(90.0), h);
    assert!(matches!(above, Err(PropertyError::Transcritical { .. })), "{above:?}");
    assert!(matches!(
        R744.phase(Pressure::from_bar(90.0), celsius(40.0)),
        Err(PropertyError::Transcritical { .. })
    ));
    let near = R744.dew_pressure(celsius(26.0)).expect("p");
    let response = R744.vapor_response(near, celsius(40.0));
    assert!(matches!(response, Err(PropertyError::NearCritical { .. })), "{response:?}");
    assert_eq!(
        R134A.at_enthalpy(kpa(300.0), Enthalpy::from_joules_per_kg(f32::NAN)),
        Err(PropertyError::NotANumber)
    );
    assert!(matches!(
        R134A.at_enthalpy(kpa(300.0), Enthalpy::from_joules_per_kg(-1e6)),
        Err(PropertyError::Temperature { .. })
    ));
}

/// GWP and ODP of ASHRAE Handbook - Fundamentals (2021), chapter 29, tables 3A, 3B and 4; sixth report and life of IPCC
/// (2021), table 7.SM.7.
#[test]
fn climate_and_ozone() {
    let gwp = |r: &Refrigerant<'_>, report| r.global_warming_potential(report);
    assert_eq!(gwp(&R134A, GwpReport::Fifth), Some(1300.0));
    assert_eq!(gwp(&R134A, GwpReport::Sixth), Some(1530.0));
    assert_eq!(R134A.atmospheric_life_years(), Some(14.0));
    assert_eq!(R134A.ozone_depletion_potential(), Some(0.0));
    assert_eq!(R22.ozone_depletion_potential(), Some(0.055));
    let blend = gwp(&R404A, GwpReport::Fifth).expect("a GWP");
    assert!((blend - 3940.0).abs() < 5.0, "{blend}");
    assert_eq!(R404A.atmospheric_life_years(), None);
    assert_eq!(R13I1.ozone_depletion_potential(), None);
    assert_eq!(gwp(&R13I1, GwpReport::Sixth), None);
    for r in ALL {
        for value in [
            gwp(r, GwpReport::Fifth),
            gwp(r, GwpReport::Sixth),
            r.ozone_depletion_potential(),
            r.atmospheric_life_years(),
        ] {
            assert!(value.is_none_or(|v| (0.0..6e4).contains(&v)), "{}: {value:?}", r.designation());
        }
    }
}

/// The model's error, not the fit's: every refrigerant states one, and estimated pairs cost something.
#[test]
fn every_refrigerant_states_how_sure_its_saturation_is() {
    for r in ALL {
        let u = r.saturation_uncertainty().kelvins();
        assert!(u > 0.004 && u < 10.0, "{}: {u}", r.designation());
        if r.estimated_pair() {
            assert!(u > 0.2, "{}: {u}", r.designation());
        }
    }
    assert!(R134A.saturation_uncertainty().kelvins() < 0.05);
    assert!(R404A.saturation_uncertainty().kelvins() < 0.15);
    let u = R438A.saturation_uncertainty().kelvins();
    assert!(u > 0.3 && u < 0.6, "{u}");
}

/// A batch gives the bits of the scalar calls, and a bad element spoils only itself.
#[test]
fn a_batch_is_the_scalar_calls() {
    for r in ALL {
        let (low, high) = r.dew_pressure_range();
        let mut pascals = Vec::new();
        let mut kelvins = Vec::new();
        for i in 0..53u16 {
            let share = f32::from(i) / 52.0;
            let p = low.pascals()
                * libm::powf(high.pascals() / low.pascals(), share)
                * if i % 9 == 8 { 1.1 } else { 1.0 };
            let dew = r.dew_temperature(Pressure::from_pascals(p)).map_or(300.0, |t| t.kelvins());
            pascals.push(if i % 17 == 5 { f32::NAN } else { p });
            kelvins.push(dew + f32::from(i % 13) * 15.0 - if i % 11 == 3 { 30.0 } else { 1.0 });
        }
        let n = pascals.len();
        let mut numbers = vec![vec![7.0f32; n]; 3];
        let [density, enthalpy, entropy] = &mut numbers[..] else { panic!("three") };
        let mut outcome = vec![Outcome::Answered; n];
        r.vapor_states(
            &pascals,
            &kelvins,
            States {
                density_kg_m3: density,
                enthalpy_j_kg: enthalpy,
                entropy_j_kg_k: entropy,
                outcome: &mut outcome,
            },
        );
        for i in 0..n {
            let one = r.vapor(Pressure::from_pascals(pascals[i]), Temperature::from_kelvins(kelvins[i]));
            let many = [numbers[0][i], numbers[1][i], numbers[2][i]].map(f32::to_bits);
            match one {
                Ok(state) => {
                    let bits = [
                        state.density.kg_per_m3(),
                        state.enthalpy.joules_per_kg(),
                        state.entropy.joules_per_kg_k(),
                    ];
                    assert_eq!(many, bits.map(f32::to_bits), "{} {i}", r.designation());
                    assert_eq!(outcome[i], Outcome::Answered);
                }
                Err(error) => {
                    assert_eq!(many, [0, 0, 0], "{} {i}", r.designation());
                    assert_eq!(outcome[i], Outcome::from(error), "{} {i}", r.designation());
                }
            }
        }
        let mut dew = vec![7.0f32; n];
        r.dew_temperatures(&pascals, &mut dew, &mut outcome);
        for i in 0..n {
            let one = r.dew_temperature(Pressure::from_pascals(pascals[i]));
            assert_eq!(dew[i].to_bits(), one.map_or(0.0, |t| t.kelvins()).to_bits());
            assert_eq!(outcome[i], one.err().map_or(Outcome::Answered, Outcome::from));
        }
    }
}
