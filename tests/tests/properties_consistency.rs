//! Properties that hold for every refrigerant, whatever its numbers are.

use rimewise::quantity::{Enthalpy, Entropy, Pressure, Temperature, TemperatureDifference};
use rimewise::refrigerant::data::ALL;
use rimewise::refrigerant::{Phase, PropertyError, Refrigerant, State};

fn kelvins(k: f32) -> TemperatureDifference {
    TemperatureDifference::from_kelvins(k)
}

/// Pressures spread evenly in their logarithm over both curves, but for the given share of the range at the top.
fn pressures(r: &Refrigerant<'_>, count: u32, below_critical: f32) -> Vec<Pressure> {
    let (low, _) = r.pressure_range();
    let (_, t_max) = r.temperature_range();
    let high = r.dew_pressure(t_max - kelvins(below_critical)).expect("inside the range");
    let (a, b) = (libm::log(f64::from(low.pascals()) * 1.001), libm::log(f64::from(high.pascals())));
    (0..count)
        .map(|k| {
            Pressure::from_pascals(libm::exp(a + (b - a) * (f64::from(k) + 0.37) / f64::from(count)) as f32)
        })
        .collect()
}

#[test]
fn at_least_150_refrigerants_have_a_critical_temperature_from_250_k() {
    let counted = ALL.iter().filter(|r| r.critical_temperature().kelvins() >= 250.0).count();
    assert!(counted >= 150, "{counted}");
}

#[test]
fn every_composition_sums_to_one() {
    for r in ALL {
        let total: f32 = r.composition().map(|c| c.mass_fraction).sum();
        assert!((total - 1.0).abs() < 1e-5, "{}: {total}", r.designation());
    }
}

/// Along pure saturation dp/dT = (s'' - s')/(v'' - v').
#[test]
fn pure_saturation_follows_clausius_and_clapeyron() {
    let mut worst = (0.0, "");
    for r in ALL.iter().filter(|r| r.composition().count() == 1) {
        for p in pressures(r, 40, 6.0) {
            let t = r.dew_temperature(p).expect("dew");
            let (min, _) = r.temperature_range();
            if (t - min).kelvins() < 1.0 {
                continue;
            }
            let (v, l) = (r.saturated_vapor(p).expect("vapor"), r.saturated_liquid(p).expect("liquid"));
            let ds = v.entropy.joules_per_kg_k() - l.entropy.joules_per_kg_k();
            let dv = 1.0 / v.density.kg_per_m3() - 1.0 / l.density.kg_per_m3();
            let high = r.dew_pressure(t + kelvins(0.5)).expect("above");
            let low = r.dew_pressure(t - kelvins(0.5)).expect("below");
            let slope = high.pascals() - low.pascals();
            let error = (slope * dv / ds - 1.0).abs();
            if error > worst.0 {
                worst = (error, r.designation());
            }
        }
    }
    println!("worst {:.5} ({})", worst.0, worst.1);
    assert!(worst.0 < 0.005, "{worst:?}");
}

/// The Maxwell relation (ds/dp)_T = -(dv/dT)_p, by differences over 2 K and 4 % of pressure.
///
/// Both come from one potential; what is left is the differences' own error.
#[test]
fn entropy_and_density_obey_maxwell() {
    let mut worst = [(0.0, ""); 2];
    let mut compared = [0; 2];
    for r in ALL {
        let (t_min, _) = r.temperature_range();
        for p in pressures(r, 12, 30.0) {
            let dew = r.dew_temperature(p).expect("dew");
            let bubble = r.bubble_temperature(p).expect("bubble");
            for (index, distance) in [(0usize, 8.0), (0, 25.0), (0, 70.0), (1, -12.0), (1, -30.0)] {
                let base = if index == 0 { dew } else { bubble };
                let t = base + kelvins(distance);
                if index == 1 && (t - t_min).kelvins() < 3.0 {
                    continue;
                }
                let state = |p: Pressure, t: Temperature| {
                    if index == 0 { r.vapor(p, t) } else { r.liquid(p, t) }.expect("single phase")
                };
                // A liquid's entropy moves little with pressure: wider steps.
                let (dt, share) = if index == 0 { (1.0, 0.02) } else { (1.0, 0.15) };
                let (up, down) = (
                    Pressure::from_pascals(p.pascals() * (1.0 + share)),
                    Pressure::from_pascals(p.pascals() * (1.0 - share)),
                );
                let (a, b) = (state(up, t).entropy, state(down, t).entropy);
                let ds = f64::from(a.joules_per_kg_k()) - f64::from(b.joules_per_kg_k());
                // Below this an entropy difference is mostly the rounding of binary32.
                if ds.abs() < 0.3 {
                    continue;
                }
                let dp = f64::from(up.pascals()) - f64::from(down.pascals());
                let v = |t| 1.0 / f64::from(state(p, t).density.kg_per_m3());
                let (warm, cold) = (t + kelvins(dt), t - kelvins(dt));
                let dv = (v(warm) - v(cold)) / f64::from((warm - cold).kelvins());
                let error = (ds / dp / -dv - 1.0).abs();
                compared[index] += 1;
                if error > worst[index].0 {
                    worst[index] = (error, r.designation());
                }
            }
        }
    }
    println!("worst vapor {:?}, liquid {:?}; compared {compared:?}", worst[0], worst[1]);
    assert!(compared[0] > 5000 && compared[1] > 1000, "{compared:?}");
    assert!(worst[0].0 < 0.01 && worst[1].0 < 0.01, "{worst:?}");
}

#[test]
fn saturation_rises_and_dew_is_never_above_bubble_pressure() {
    for r in ALL {
        let (low, high) = r.temperature_range();
        let mut last = (0.0, 0.0);
        for k in 0..=400 {
            let t = low + kelvins((high - low).kelvins() * k as f32 / 400.0);
            let t = if t > high { high } else { t };
            let dew = r.dew_pressure(t).expect("dew").pascals();
            let bubble = r.bubble_pressure(t).expect("bubble").pascals();
            assert!(dew > last.0 && bubble > last.1, "{} at {} K", r.designation(), t.kelvins());
            // The two curves of an azeotrope touch: each is good to 0.005 K.
            assert!(dew <= bubble * 1.0003, "{} at {} K: {dew} {bubble}", r.designation(), t.kelvins());
            last = (dew, bubble);
        }
    }
}

#[test]
fn pressure_and_temperature_are_inverses_on_both_curves() {
    for r in ALL {
        let (low, high) = r.temperature_range();
        for k in 0..200 {
            let t = low + kelvins((high - low).kelvins() * (k as f32 + 0.3) / 200.0);
            let dew = r.dew_temperature(r.dew_pressure(t).expect("dew")).expect("back");
            let bubble = r.bubble_temperature(r.bubble_pressure(t).expect("bubble")).expect("back");
            for back in [dew, bubble] {
                assert!(
                    (back - t).kelvins().abs() < 3e-4,
                    "{}: {} {}",
                    r.designation(),
                    back.kelvins(),
                    t.kelvins()
                );
            }
        }
    }
}

#[test]
fn temperature_comes_back_from_enthalpy_and_entropy() {
    for r in ALL {
        for p in pressures(r, 20, 6.0) {
            let dew = r.dew_temperature(p).expect("dew");
            for superheat in [0.0, 3.0, 12.0, 40.0, 90.0, 150.0] {
                let t = dew + kelvins(superheat);
                let state = r.vapor(p, t).expect("vapor");
                let h = r.vapor_temperature_at_enthalpy(p, state.enthalpy).expect("from enthalpy");
                let s = r.vapor_temperature_at_entropy(p, state.entropy).expect("from entropy");
                for back in [h, s] {
                    assert!(
                        (back - t).kelvins().abs() < 0.02,
                        "{} at {} Pa, {} K: {}",
                        r.designation(),
                        p.pascals(),
                        t.kelvins(),
                        back.kelvins()
                    );
                }
            }
        }
    }
}

/// Checks that states run from dense to thin as enthalpy and entropy rise, without a step back.
fn rises(r: &Refrigerant<'_>, p: Pressure, states: impl Iterator<Item = State>) {
    let states: Vec<State> = states.collect();
    for pair in states.windows(2) {
        let (cold, warm) = (pair[0], pair[1]);
        assert!(
            warm.enthalpy > cold.enthalpy && warm.entropy > cold.entropy && warm.density < cold.density,
            "{} at {} Pa: {cold:?} {warm:?}",
            r.designation(),
            p.pascals()
        );
    }
}

#[test]
fn enthalpy_and_entropy_rise_with_temperature_on_an_isobar() {
    for r in ALL {
        // From the margin beyond saturation on, where near the critical point no such phase may be left to find.
        for p in pressures(r, 12, 0.5).into_iter().chain([r.pressure_range().1]) {
            let dew = r.dew_temperature(p).expect("dew");
            rises(r, p, (0..82).map(|k| r.vapor(p, dew + kelvins(1.97 * k as f32 - 1.99)).expect("vapor")));
            let bubble = r.bubble_temperature(p).expect("bubble");
            let coldest = (bubble - r.temperature_range().0).kelvins().min(59.99);
            let steps = (coldest + 1.99) as u32;
            rises(
                r,
                p,
                (0..steps).map(|k| r.liquid(p, bubble + kelvins(k as f32 - coldest)).expect("liquid")),
            );
        }
    }
}

#[test]
fn the_phase_is_told_and_the_wrong_one_is_refused() {
    for r in ALL {
        let (low, high) = r.pressure_range();
        let p = Pressure::from_pascals(libm::sqrtf(low.pascals() * high.pascals()));
        let (dew, bubble) = (r.dew_temperature(p).expect("dew"), r.bubble_temperature(p).expect("bubble"));
        assert_eq!(r.phase(p, dew + kelvins(1.0)), Ok(Phase::Vapor));
        assert_eq!(r.phase(p, bubble - kelvins(1.0)), Ok(Phase::Liquid));
        let middle = bubble + kelvins(0.5 * (dew - bubble).kelvins());
        assert_eq!(r.phase(p, middle), Ok(Phase::TwoPhase), "{}", r.designation());
        assert_eq!(
            r.vapor(p, bubble - kelvins(5.0)),
            Err(PropertyError::OtherPhase { phase: Phase::Liquid }),
            "{}",
            r.designation()
        );
        assert_eq!(r.liquid(p, dew + kelvins(5.0)), Err(PropertyError::OtherPhase { phase: Phase::Vapor }));
    }
}

#[test]
fn outside_the_table_the_error_says_the_range() {
    for r in ALL {
        let (low, high) = r.dew_pressure_range();
        let below = Pressure::from_pascals(low.pascals() * 0.9);
        assert_eq!(r.dew_temperature(below), Err(PropertyError::Pressure { min: low, max: high }));
        let above = Pressure::from_pascals(r.critical_pressure().pascals() * 1.02);
        assert!(
            matches!(r.dew_temperature(above), Err(PropertyError::Transcritical { .. })),
            "{}",
            r.designation()
        );
        assert!(matches!(
            r.dew_pressure(r.critical_temperature() + kelvins(1.0)),
            Err(PropertyError::Transcritical { .. })
        ));
        let nan = Pressure::from_pascals(f32::NAN);
        assert_eq!(r.dew_temperature(nan), Err(PropertyError::NotANumber));
        let p = Pressure::from_pascals(libm::sqrtf(low.pascals() * high.pascals()));
        for (h, wanted_low) in [(-1e9, true), (1e9, false), (f32::NEG_INFINITY, true), (f32::INFINITY, false)]
        {
            let one = r.vapor_temperature_at_enthalpy(p, Enthalpy::from_joules_per_kg(h));
            let two = r.vapor_temperature_at_entropy(p, Entropy::from_joules_per_kg_k(h / 100.0));
            for answer in [one, two] {
                match answer {
                    Err(PropertyError::TwoPhase) => assert!(wanted_low, "{} {h}", r.designation()),
                    Err(PropertyError::Temperature { .. }) => assert!(!wanted_low, "{} {h}", r.designation()),
                    other => panic!("{} {h}: {other:?}", r.designation()),
                }
            }
        }
    }
}
