//! Samples the library's property tables: the one thing the rig takes from the library.

use super::props::{Fluid, Grid, NH, NL, NP, Node, Transport};
use libm::{exp, log};
use rimewise::quantity::{Pressure, Temperature};
use rimewise::refrigerant::{Refrigerant, State};

/// Designation, transport figures near 25 degC and vapour enthalpy span (J/kg) of every refrigerant of the fleet.
const FLUIDS: [(&str, Transport, f64, f64); 5] = [
    (
        "R404A",
        Transport { k_liquid: 0.065, mu_liquid: 1.3e-4, k_vapor: 0.0145, mu_vapor: 1.2e-5, molar_mass: 97.6 },
        120e3,
        5.8e3,
    ),
    (
        "R290",
        Transport { k_liquid: 0.095, mu_liquid: 1.0e-4, k_vapor: 0.018, mu_vapor: 0.82e-5, molar_mass: 44.1 },
        230e3,
        10.4e3,
    ),
    (
        "R134a",
        Transport {
            k_liquid: 0.083,
            mu_liquid: 2.0e-4,
            k_vapor: 0.0135,
            mu_vapor: 1.15e-5,
            molar_mass: 102.0,
        },
        120e3,
        5.8e3,
    ),
    (
        "R448A",
        Transport {
            k_liquid: 0.083,
            mu_liquid: 1.5e-4,
            k_vapor: 0.0135,
            mu_vapor: 1.25e-5,
            molar_mass: 86.3,
        },
        120e3,
        5.8e3,
    ),
    (
        "R410A",
        Transport {
            k_liquid: 0.092,
            mu_liquid: 1.2e-4,
            k_vapor: 0.0155,
            mu_vapor: 1.35e-5,
            molar_mass: 72.6,
        },
        130e3,
        5.8e3,
    ),
];

const fn thermal(k_liquid: f64, mu_liquid: f64, k_vapor: f64, mu_vapor: f64, molar_mass: f64) -> Transport {
    Transport { k_liquid, mu_liquid, k_vapor, mu_vapor, molar_mass }
}

/// The same for the refrigerants of the sweeps alone; transport figures rounded, from memory.
const MORE: [(&str, Transport, f64, f64); 7] = [
    ("R600a", thermal(0.090, 1.5e-4, 0.017, 0.75e-5, 58.1), 230e3, 10.4e3),
    ("R32", thermal(0.127, 1.15e-4, 0.0150, 1.27e-5, 52.0), 110e3, 7.0e3),
    ("R454B", thermal(0.107, 1.2e-4, 0.0150, 1.28e-5, 62.6), 110e3, 6.5e3),
    ("R22", thermal(0.083, 1.66e-4, 0.0110, 1.26e-5, 86.5), 85e3, 5.0e3),
    ("R513A", thermal(0.070, 1.8e-4, 0.0140, 1.18e-5, 108.4), 120e3, 5.8e3),
    ("R1234yf", thermal(0.064, 1.55e-4, 0.0140, 1.2e-5, 114.0), 120e3, 5.6e3),
    ("R452A", thermal(0.066, 1.4e-4, 0.0142, 1.22e-5, 103.5), 120e3, 5.8e3),
];

/// Loads every refrigerant of the fleet.
pub fn load() -> Vec<Fluid> {
    load_from(&FLUIDS)
}

/// Loads every refrigerant of the sweeps.
pub fn load_all() -> Vec<Fluid> {
    let mut all = load();
    all.extend(load_from(&MORE));
    all
}

fn load_from(fluids: &[(&'static str, Transport, f64, f64)]) -> Vec<Fluid> {
    fluids
        .iter()
        .map(|(name, transport, span_vapor, step_liquid)| {
            let refrigerant =
                rimewise::refrigerant::find(name).unwrap_or_else(|| panic!("no refrigerant {name}"));
            sample(name, refrigerant, *transport, *span_vapor, *step_liquid)
        })
        .collect()
}

fn pascals(p: f64) -> Pressure {
    Pressure::from_pascals(p as f32)
}

fn kelvins(t: f64) -> Temperature {
    Temperature::from_kelvins(t as f32)
}

/// Temperature at which a single-phase branch has a given enthalpy, with the state there.
///
/// Newton's method, its last step left unrounded: the tables answer in binary32, the grid wants a little more.
fn invert(h: f64, start: f64, branch: impl Fn(f64) -> Option<State>) -> Option<(f64, State)> {
    let at = |t: f64| branch(t).map(|s| (f64::from(s.enthalpy.joules_per_kg()), s));
    let mut t = start;
    for _ in 0..12 {
        let (y, _) = at(t)?;
        let e = 0.25;
        let (y2, _) = at(t + e).or_else(|| at(t - e).map(|(z, s)| (2.0 * y - z, s)))?;
        let step = (h - y) * e / (y2 - y);
        t += step;
        if step.abs() < 2e-4 {
            let (_, state) = at(t)?;
            return Some((t, state));
        }
    }
    None
}

fn sample(name: &'static str, r: &Refrigerant<'_>, transport: Transport, span: f64, dh_liquid: f64) -> Fluid {
    let critical = f64::from(r.critical_temperature().kelvins());
    let t_low = f64::from(r.temperature_range().0.kelvins()).max(200.0) + 12.0;
    let bound = |t: f64| r.dew_pressure(kelvins(t)).map(|p| f64::from(p.pascals())).ok();
    let low = bound(t_low).unwrap_or_else(|| panic!("{name}: no pressure at {t_low} K"));
    // Enthalpies are good to 8 K below the critical point; the last two kelvin are only there to search in.
    let high = bound(critical - 6.0).unwrap_or_else(|| panic!("{name}: no pressure near the critical point"));
    let l0 = log(low);
    let dl = (log(high) - l0) / (NP - 1) as f64;
    let dh_vapor = span / (NH - 1) as f64;
    let mut nodes = Vec::with_capacity(NP);
    for k in 0..NP {
        let p = pascals(exp(l0 + dl * k as f64).clamp(low, high));
        let known = |what: &str| -> ! { panic!("{name}: no {what} at {} Pa", p.pascals()) };
        let t_bubble =
            r.bubble_temperature(p).map_or_else(|_| known("bubble point"), |t| f64::from(t.kelvins()));
        let t_dew = r.dew_temperature(p).map_or_else(|_| known("dew point"), |t| f64::from(t.kelvins()));
        let vapor = r.saturated_vapor(p).unwrap_or_else(|_| known("vapour"));
        let liquid = r.saturated_liquid(p).unwrap_or_else(|_| known("liquid"));
        let h_vapor = f64::from(vapor.enthalpy.joules_per_kg());
        let h_liquid = f64::from(liquid.enthalpy.joules_per_kg());
        let row = |t: f64, s: &State| {
            [t, -log(f64::from(s.density.kg_per_m3())), f64::from(s.entropy.joules_per_kg_k())]
        };
        let mut node =
            Node { sat: [t_bubble, t_dew, h_liquid, h_vapor], vapor: [[0.0; 3]; NH], liquid: [[0.0; 2]; NL] };
        node.vapor[0] = row(t_dew, &vapor);
        node.liquid[0] = [t_bubble, -log(f64::from(liquid.density.kg_per_m3()))];
        let mut t = t_dew;
        for i in 1..NH {
            let h = h_vapor + dh_vapor * i as f64;
            node.vapor[i] = match invert(h, t + 2.0, |t| r.vapor(p, kelvins(t)).ok()) {
                Some((x, s)) => {
                    t = x;
                    row(x, &s)
                }
                None => known("vapour state"),
            };
        }
        let mut t = t_bubble;
        for i in 1..NL {
            let h = h_liquid - dh_liquid * i as f64;
            node.liquid[i] = match invert(h, t - 2.0, |t| r.liquid(p, kelvins(t)).ok()) {
                Some((x, s)) => {
                    t = x;
                    [x, -log(f64::from(s.density.kg_per_m3()))]
                }
                // Below what the table holds: no machine here subcools that far at such a pressure.
                None => {
                    let (a, b) =
                        (node.liquid[i - 1], if i > 1 { node.liquid[i - 2] } else { node.liquid[0] });
                    if i > 1 { [2.0 * a[0] - b[0], 2.0 * a[1] - b[1]] } else { [a[0] - 4.0, a[1] - 0.008] }
                }
            };
        }
        nodes.push(node);
    }
    let critical_pressure = f64::from(r.critical_pressure().pascals());
    Fluid::new(name, Grid { l0, dl, dh_vapor, dh_liquid }, nodes, critical_pressure, transport)
}
