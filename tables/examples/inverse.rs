use rimewise::quantity::*;
use rimewise::refrigerant::Refrigerant;
use rimewise_tables::{data::Library, level::*, saturation::Kind, substance::*};
use std::path::Path;
fn main() {
    let library = Library::read(&Path::new(env!("CARGO_MANIFEST_DIR")).join("data")).unwrap();
    let mut subs: Vec<Substance> = library.fluids.iter().map(|f| Substance::pure(f).unwrap()).collect();
    if std::env::args().count() < 2 {
        subs.extend(library.blends.iter().map(|b| Substance::blend(&library, b).unwrap()));
    }
    for s in &subs {
        let id = rimewise_tables::output::identifier(&s.designation);
        let b = std::fs::read(format!("core/src/refrigerant/data/{id}.table")).unwrap();
        let r = Refrigerant::from_bytes(&b).unwrap();
        let critical = s.t_max + BELOW_CRITICAL;
        let mut w = [[0.0f64; 4]; 3];
        for (band, range) in [(0, (s.t_min, critical - 8.0)), (1, (critical - 8.0, s.t_max - 0.1))] {
            for t in crowded(range.0, range.1, critical, 15, 0.2) {
                let Some(l) = level(s, Kind::Dew, t) else { continue };
                let mut rho = l.dew.rho;
                for sh in [
                    0.0f64, 0.5, 1.5, 3.0, 5.0, 8.0, 12.0, 17.0, 23.0, 30.0, 40.0, 50.0, 65.0, 80.0, 100.0,
                    120.0,
                ] {
                    let t = l.dew.t + sh;
                    if t > s.t_limit {
                        break;
                    }
                    let Some(f) = s.density(t, l.dew.p, rho) else { break };
                    rho = f;
                    let st = s.state(t, rho);
                    let p = Pressure::from_pascals(l.dew.p as f32);
                    let a = r.vapor_temperature_at_enthalpy(p, Enthalpy::from_joules_per_kg(st.h as f32));
                    let c = r.vapor_temperature_at_entropy(p, Entropy::from_joules_per_kg_k(st.s as f32));
                    let cp = r.vapor_response(p, Temperature::from_kelvins(t as f32));
                    let k = if sh > 80.0 { 2 } else { band };
                    if band == 1 && sh > 80.0 {
                        continue;
                    }
                    w[k][0] = w[k][0].max(a.map_or(99.0, |a| (f64::from(a.kelvins()) - t).abs()));
                    w[k][1] = w[k][1].max(c.map_or(99.0, |a| (f64::from(a.kelvins()) - t).abs()));
                    w[k][2] =
                        w[k][2].max(cp.map_or(99.0, |x| {
                            (f64::from(x.heat_capacity_j_kg_k) / st.cp - 1.0).abs() * 100.0
                        }));
                    w[k][3] = w[k][3].max(cp.map_or(99.0, |x| {
                        (f64::from(x.speed_of_sound_m_s.unwrap_or(0.0)) / st.w - 1.0).abs() * 100.0
                    }));
                }
            }
        }
        // liquid
        let mut l4 = [[0.0f64; 4]; 2];
        for (band, range) in [(0, (s.t_min, critical - 8.0)), (1, (critical - 8.0, s.t_max - 0.1))] {
            for t in crowded(range.0, range.1, critical, 15, 0.2) {
                let Some(l) = level(s, Kind::Bubble, t) else { continue };
                let mut rho = l.bubble.rho;
                for sc in [0.0f64, 1.0, 3.0, 6.0, 10.0, 15.0, 20.0, 30.0, 40.0] {
                    let t = l.bubble.t - sc;
                    if t < s.t_min {
                        break;
                    }
                    let Some(f) = s.density(t, l.bubble.p, rho) else { break };
                    rho = f;
                    let st = s.state(t, rho);
                    let p = Pressure::from_pascals(l.bubble.p as f32);
                    let cp = r.liquid_response(p, Temperature::from_kelvins((t as f32).max(s.t_min as f32)));
                    let found =
                        r.liquid(p, Temperature::from_kelvins((t as f32).max(s.t_min as f32))).unwrap();
                    l4[band][0] =
                        l4[band][0].max(((f64::from(found.enthalpy.joules_per_kg()) - st.h) / st.cp).abs());
                    l4[band][1] = l4[band][1]
                        .max(((f64::from(found.entropy.joules_per_kg_k()) - st.s) / st.cp * t).abs());
                    l4[band][2] =
                        l4[band][2].max(cp.map_or(99.0, |x| {
                            (f64::from(x.heat_capacity_j_kg_k) / st.cp - 1.0).abs() * 100.0
                        }));
                    l4[band][3] = l4[band][3].max(cp.map_or(99.0, |x| {
                        (f64::from(x.speed_of_sound_m_s.unwrap_or(0.0)) / st.w - 1.0).abs() * 100.0
                    }));
                }
            }
        }
        println!("{} {:.3?} {:.3?} {:.3?} L {:.3?} {:.3?}", s.designation, w[0], w[1], w[2], l4[0], l4[1]);
    }
}
