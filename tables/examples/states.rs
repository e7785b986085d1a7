//! Prints states of every refrigerant by this crate's equations of state, for comparison with another implementation.
//!
//! JSON Lines: one object a refrigerant with its components, mole fractions and gas constant; `states` holds
//! [T, molar density, p, residual h/(R T), residual s/R] at 50 random places, `saturation` holds
//! [T, then for bubble and dew: pressure, bulk density, incipient molar densities] at 50 random temperatures up to 2 K
//! below critical.

use rimewise_tables::data::Library;
use rimewise_tables::saturation::{Kind, Specification};
use rimewise_tables::substance::Substance;
use std::path::Path;

/// States of each kind, a refrigerant.
const STATES: usize = 50;

/// A multiplicative congruential generator (Lehmer, 2^31 - 1, 48271), so that every run asks the same.
struct Random(u64);

impl Random {
    fn next(&mut self) -> f64 {
        self.0 = self.0 * 48_271 % 2_147_483_647;
        self.0 as f64 / 2_147_483_647.0
    }
}

fn main() -> Result<(), String> {
    let library = Library::read(&Path::new(env!("CARGO_MANIFEST_DIR")).join("data"))?;
    let mut random = Random(20_260_101);
    for fluid in &library.fluids {
        print(&Substance::pure(fluid)?, &mut random)?;
    }
    for blend in &library.blends {
        print(&Substance::blend(&library, blend)?, &mut random)?;
    }
    Ok(())
}

fn print(s: &Substance, random: &mut Random) -> Result<(), String> {
    let mut states = Vec::new();
    while states.len() < STATES {
        let (t, rho) = match states.len() % 3 {
            0 => {
                let t = s.t_min + (s.t_max - s.t_min) * random.next();
                let dew = s.saturated(Kind::Dew, Specification::Temperature(t)).ok_or("no dew point")?;
                (t, dew.rho * (0.02 + 0.97 * random.next()))
            }
            1 => {
                let t = s.t_min + (s.t_max - s.t_min) * random.next();
                let bubble =
                    s.saturated(Kind::Bubble, Specification::Temperature(t)).ok_or("no bubble point")?;
                (t, bubble.rho * (1.001 + 0.05 * random.next()))
            }
            _ => {
                let t =
                    s.t_critical + 3.0 + (s.t_limit - s.t_critical - 3.0).clamp(5.0, 100.0) * random.next();
                (t, s.reducing().1 * (0.02 + 1.4 * random.next()))
            }
        };
        let (tr, rho_r) = s.reducing();
        let r = s.mixture.residual(&s.z, tr / t, rho / rho_r);
        let p = rho * s.mixture.gas_constant * t * (1.0 + r.d);
        states.push(format!("[{t:?},{rho:?},{p:?},{:?},{:?}]", r.t + r.d, r.t - r.a));
    }
    let mut curve = Vec::new();
    for _ in 0..STATES {
        let t = s.t_min + (s.t_max - s.t_min) * random.next();
        let boundary = s.boundary().ok_or("no phase boundary")?;
        let mut row = format!("[{t:?}");
        for branch in [&boundary.bubble, &boundary.dew] {
            let point = branch
                .at(&s.mixture, &s.z, Specification::Temperature(t))
                .ok_or_else(|| format!("{}: no saturation at {t}", s.designation))?;
            row += &format!(",[{:?},{:?},{:?}]", point.p, point.bulk, point.incipient);
        }
        curve.push(row + "]");
    }
    let quoted: Vec<String> = s.components.iter().map(|(n, _)| format!("\"{n}\"")).collect();
    let estimated: Vec<String> = s
        .mixture
        .estimated
        .iter()
        .map(|p| format!("[\"{}\",\"{}\",{:?}]", p.pair[0], p.pair[1], p.gerg))
        .collect();
    println!(
        "{{\"refrigerant\":\"{}\",\"components\":[{}],\"mole_fractions\":{:?},\"gas_constant\":{:?},\"t_critical\":{:?},\"estimated\":[{}],\"states\":[{}],\"saturation\":[{}]}}",
        s.designation,
        quoted.join(","),
        s.z,
        s.mixture.gas_constant,
        s.t_critical,
        estimated.join(","),
        states.join(","),
        curve.join(",")
    );
    Ok(())
}
