//! Measures a table, through the library's own code, against the equation of state at points between the fit's.

use crate::dome;
use crate::level::{crowded, level};
use crate::saturation::{Kind, Specification};
use crate::substance::{BELOW_CRITICAL, Substance};
use rimewise::quantity::{Enthalpy, Entropy, Pressure, Temperature};
use rimewise::refrigerant::{PropertyError, Refrigerant, State};

/// Worst errors of density (relative), enthalpy and entropy (of the latent values), all in percent.
#[derive(Clone, Copy, Debug, Default)]
pub struct Caloric {
    /// Density, % of itself.
    pub density: f64,
    /// Enthalpy, % of latent heat.
    pub enthalpy: f64,
    /// Entropy, % of latent entropy.
    pub entropy: f64,
    /// Number of points compared.
    pub points: usize,
    /// Points that the equation or the table did not answer.
    pub missing: usize,
}

impl Caloric {
    /// The worst of the three.
    pub fn worst(&self) -> f64 {
        self.density.max(self.enthalpy).max(self.entropy)
    }
}

/// The measured errors of one table.
#[derive(Clone, Copy, Debug, Default)]
pub struct Errors {
    /// Worst error of dew temperature, K.
    pub dew: f64,
    /// Worst error of bubble temperature, K.
    pub bubble: f64,
    /// Worst jump of a saturation temperature where two pieces meet, K.
    pub jump: f64,
    /// Worst relative error of a saturation pressure from temperature.
    pub pressure: f64,
    /// Vapor, 0 to 80 K superheat, up to 8 K below critical.
    pub vapor: Caloric,
    /// Vapor, 80 to 120 K superheat.
    pub hot_vapor: Caloric,
    /// Liquid, 0 to 40 K subcooling, up to 8 K below critical.
    pub liquid: Caloric,
    /// Vapor and liquid, the last 8 K to 2 K below critical.
    pub near_critical: Caloric,
    /// Vapor temperature from the table's own enthalpy or entropy, 0 to 120 K superheat up to 8 K below critical, K.
    pub round_trip: f64,
    /// Temperature from the equation's enthalpy or entropy, against the equation: vapor, liquid, between, K.
    pub inverse: [f64; 3],
    /// Quality from the equation's enthalpy, against the model.
    pub quality: f64,
    /// Heat capacity at constant pressure of vapor and of liquid, and speed of sound of vapor, %.
    pub response: [f64; 3],
    /// Places of those that were not answered.
    pub unanswered: usize,
    /// Points of saturation that the table did not answer.
    pub missing: usize,
}

/// Measures a table.
pub fn measure(substance: &Substance, table: &Refrigerant<'_>) -> Errors {
    let mut errors = Errors::default();
    saturation(substance, table, &mut errors);
    let critical = substance.t_max + BELOW_CRITICAL;
    for t_sat in crowded(substance.t_min, critical - 8.0, critical, 23, 0.0) {
        for superheat in [0.0, 0.4, 1.0, 2.5, 5.0, 9.0, 14.0, 22.0, 33.0, 47.0, 63.0, 80.0] {
            vapor(substance, table, t_sat, superheat, &mut errors.vapor);
        }
        for superheat in [90.0, 105.0, 120.0] {
            vapor(substance, table, t_sat, superheat, &mut errors.hot_vapor);
        }
        for subcooling in [0.0, 0.4, 1.0, 2.5, 5.0, 9.0, 14.0, 22.0, 31.0, 40.0] {
            liquid(substance, table, t_sat, subcooling, &mut errors.liquid);
        }
    }
    errors.round_trip = round_trip(substance, table);
    for t_sat in crowded(substance.t_min, critical - 8.1, critical, 17, 0.3) {
        single_phase(substance, table, t_sat, &mut errors);
    }
    between(substance, table, &mut errors);
    for below in [7.0, 5.0, 3.5, 2.2] {
        for distance in [0.0, 1.0, 4.0, 15.0, 40.0] {
            vapor(substance, table, critical - below, distance, &mut errors.near_critical);
            liquid(substance, table, critical - below, distance, &mut errors.near_critical);
        }
    }
    errors
}

fn saturation(substance: &Substance, table: &Refrigerant<'_>, errors: &mut Errors) {
    const COUNT: usize = 157;
    for kind in [Kind::Dew, Kind::Bubble] {
        for k in 0..COUNT {
            let t = substance.t_min + (substance.t_max - substance.t_min) * (k as f64 + 0.5) / COUNT as f64;
            let Some(point) = substance.saturated(kind, Specification::Temperature(t)) else {
                errors.missing += 1;
                continue;
            };
            let p = Pressure::from_pascals(point.p as f32);
            let at = Temperature::from_kelvins(t as f32);
            let (found, back, slot) = match kind {
                Kind::Dew => (table.dew_temperature(p), table.dew_pressure(at), &mut errors.dew),
                Kind::Bubble => (table.bubble_temperature(p), table.bubble_pressure(at), &mut errors.bubble),
            };
            match (found, back) {
                (Ok(found), Ok(back)) => {
                    *slot = slot.max((f64::from(found.kelvins()) - t).abs());
                    errors.pressure = errors.pressure.max((f64::from(back.pascals()) / point.p - 1.0).abs());
                }
                _ => errors.missing += 1,
            }
        }
    }
    jumps(table, errors);
}

/// Measures the jump of temperature over one rounding of pressure, wherever two pieces of a curve may meet.
fn jumps(table: &Refrigerant<'_>, errors: &mut Errors) {
    for (range, read) in [
        (table.dew_pressure_range(), (&|p| table.dew_temperature(p)) as &dyn Fn(Pressure) -> _),
        (table.bubble_pressure_range(), &|p| table.bubble_temperature(p)),
    ] {
        let (low, high) = (range.0.pascals(), range.1.pascals());
        // Pieces end at the highest pressure times powers of two and their sixteenths, less a few roundings.
        for octave in 1..40 {
            for part in 16..32u8 {
                let edge = high * f32::from(part) / 16.0 / libm::exp2f(octave as f32);
                if edge <= low {
                    break;
                }
                let mut p = f32::from_bits(edge.to_bits() - 8);
                for _ in 0..24 {
                    let next = f32::from_bits(p.to_bits() + 1);
                    let (a, b) = (read(Pressure::from_pascals(p)), read(Pressure::from_pascals(next)));
                    if let (Ok(a), Ok(b)) = (a, b) {
                        errors.jump = errors.jump.max(f64::from((b - a).kelvins()).abs());
                    }
                    p = next;
                }
            }
        }
    }
}

fn vapor(substance: &Substance, table: &Refrigerant<'_>, t_sat: f64, superheat: f64, into: &mut Caloric) {
    let Some(level) = level(substance, Kind::Dew, t_sat) else {
        into.missing += 1;
        return;
    };
    let t = level.dew.t + superheat;
    if t > substance.t_limit {
        return;
    }
    let mut rho = level.dew.rho;
    // In steps, so that the density root stays the vapor's.
    for step in 1..=4 {
        match substance.density(level.dew.t + superheat * f64::from(step) / 4.0, level.dew.p, rho) {
            Some(found) => rho = found,
            None => {
                into.missing += 1;
                return;
            }
        }
    }
    let found =
        table.vapor(Pressure::from_pascals(level.dew.p as f32), Temperature::from_kelvins(t as f32)).ok();
    compare(substance, t, rho, found, level.latent_heat, level.latent_entropy, into);
}

/// Measures temperature from the equation's enthalpy and entropy, heat capacities and speed of sound in both phases.
fn single_phase(substance: &Substance, table: &Refrigerant<'_>, t_sat: f64, errors: &mut Errors) {
    const VAPOR: [f64; 12] = [0.1, 0.7, 1.8, 3.5, 6.0, 10.0, 16.0, 24.0, 34.0, 46.0, 61.0, 79.0];
    const LIQUID: [f64; 9] = [0.1, 0.7, 1.8, 4.0, 8.0, 13.0, 19.0, 28.0, 39.0];
    for (kind, distances) in [(Kind::Dew, &VAPOR[..]), (Kind::Bubble, &LIQUID[..])] {
        let Some(saturated) = substance.saturated(kind, Specification::Temperature(t_sat)) else { continue };
        let p = Pressure::from_pascals(saturated.p as f32);
        let mut rho = saturated.rho;
        for distance in distances {
            let vapor = kind == Kind::Dew;
            let t = if vapor { saturated.t + distance } else { saturated.t - distance };
            if t > substance.t_limit || t < substance.t_min {
                break;
            }
            let Some(found) = substance.density(t, saturated.p, rho) else { break };
            rho = found;
            let exact = substance.state(t, rho);
            let at = Temperature::from_kelvins(t as f32);
            let by_h = table.at_enthalpy(p, Enthalpy::from_joules_per_kg(exact.h as f32));
            let by_s = table.at_entropy(p, Entropy::from_joules_per_kg_k(exact.s as f32));
            let response = if vapor { table.vapor_response(p, at) } else { table.liquid_response(p, at) };
            let (Ok(by_h), Ok(by_s), Ok(response)) = (by_h, by_s, response) else {
                errors.unanswered += 1;
                continue;
            };
            let which = usize::from(!vapor);
            for found in [by_h, by_s] {
                let off = (f64::from(found.temperature.kelvins()) - t).abs();
                errors.inverse[which] = errors.inverse[which].max(off);
            }
            let percent = |found: f32, exact: f64| 100.0 * (f64::from(found) / exact - 1.0).abs();
            errors.response[which] =
                errors.response[which].max(percent(response.heat_capacity_j_kg_k, exact.cp));
            if let Some(speed) = response.speed_of_sound_m_s {
                errors.response[2] = errors.response[2].max(percent(speed, exact.w));
            }
        }
    }
}

/// Measures temperature and quality between bubble and dew, at pressures between those of the fit.
fn between(substance: &Substance, table: &Refrigerant<'_>, errors: &mut Errors) {
    let lines = match (substance.boundary(), substance.is_pure()) {
        (Some(_), false) => dome::lines(substance, 9, 0.37).unwrap_or_default(),
        _ => Vec::new(),
    };
    for line in lines {
        let p = Pressure::from_pascals(line.p as f32);
        for state in line.states {
            let by_h = table.at_enthalpy(p, Enthalpy::from_joules_per_kg(state.h as f32));
            let by_s = table.at_entropy(p, Entropy::from_joules_per_kg_k(state.s as f32));
            if let (Err(PropertyError::Glide { .. }), Err(PropertyError::Glide { .. })) = (by_h, by_s) {
                continue;
            }
            let (Ok(by_h), Ok(by_s)) = (by_h, by_s) else {
                errors.unanswered += 1;
                continue;
            };
            for found in [by_h, by_s] {
                let off = (f64::from(found.temperature.kelvins()) - state.t).abs();
                errors.inverse[2] = errors.inverse[2].max(off);
                let quality = found.quality.map_or(1.0, |q| (f64::from(q) - state.quality).abs());
                errors.quality = errors.quality.max(quality);
            }
        }
    }
}

/// Measures how well temperature comes back from the table's own enthalpy and entropy.
fn round_trip(substance: &Substance, table: &Refrigerant<'_>) -> f64 {
    let critical = substance.t_max + BELOW_CRITICAL;
    let mut worst = 0.0f64;
    for dew in crowded(substance.t_min, critical - 8.0, critical, 23, 0.5) {
        let Ok(p) = table.dew_pressure(Temperature::from_kelvins(dew as f32)) else { continue };
        for superheat in [0.0, 1.0, 4.0, 11.0, 27.0, 52.0, 80.0, 120.0] {
            let t = Temperature::from_kelvins((dew + superheat) as f32);
            let back = table.vapor(p, t).and_then(|state| {
                let h = table.vapor_temperature_at_enthalpy(p, state.enthalpy)?;
                let s = table.vapor_temperature_at_entropy(p, state.entropy)?;
                Ok((h - t).kelvins().abs().max((s - t).kelvins().abs()))
            });
            worst = worst.max(back.map_or(f64::INFINITY, f64::from));
        }
    }
    worst
}

fn liquid(substance: &Substance, table: &Refrigerant<'_>, t_sat: f64, subcooling: f64, into: &mut Caloric) {
    let Some(level) = level(substance, Kind::Bubble, t_sat) else {
        into.missing += 1;
        return;
    };
    let t = level.bubble.t - subcooling;
    if t < substance.t_min {
        return;
    }
    let mut rho = level.bubble.rho;
    for step in 1..=4 {
        match substance.density(level.bubble.t - subcooling * f64::from(step) / 4.0, level.bubble.p, rho) {
            Some(found) => rho = found,
            None => {
                into.missing += 1;
                return;
            }
        }
    }
    let p = Pressure::from_pascals(level.bubble.p as f32);
    let found = table.liquid(p, Temperature::from_kelvins((t as f32).max(substance.t_min as f32))).ok();
    compare(substance, t, rho, found, level.latent_heat, level.latent_entropy, into);
}

fn compare(
    substance: &Substance,
    t: f64,
    rho: f64,
    found: Option<State>,
    latent_heat: f64,
    latent_entropy: f64,
    into: &mut Caloric,
) {
    let Some(found) = found else {
        into.missing += 1;
        return;
    };
    let exact = substance.state(t, rho);
    let worst = |slot: &mut f64, error: f64| *slot = slot.max(100.0 * error.abs());
    worst(&mut into.density, f64::from(found.density.kg_per_m3()) / exact.density - 1.0);
    worst(&mut into.enthalpy, (f64::from(found.enthalpy.joules_per_kg()) - exact.h) / latent_heat);
    worst(&mut into.entropy, (f64::from(found.entropy.joules_per_kg_k()) - exact.s) / latent_entropy);
    into.points += 1;
}
