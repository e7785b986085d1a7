//! How far a refrigerant's saturation temperature may be from the world: the error of the model, not of the fit to it.
//!
//! A pure fluid's comes from the uncertainty of its equation's vapor pressure. A blend's adds what its binary pairs leave
//! open: the spread of all blends whose pairs are published about their published boiling and dew points, or the
//! blend's own difference where that is larger. A blend with estimated pairs is held to what was predicted of it without
//! its own published point, or, having none, to the spread of all such predictions.

use crate::data::{Library, PublishedPoint};
use crate::fit::boiling;
use crate::mixture::Mixture;
use crate::saturation::{Kind, Specification};
use crate::substance::Substance;
use std::collections::BTreeMap;

/// Share of the critical temperature at which a vapor pressure's uncertainty is turned into kelvins.
const AT_SHARE: f64 = 0.8;

/// Bubble and dew error of one blend against one published point, K.
#[derive(Clone, Debug)]
pub struct Difference {
    /// The published point.
    pub point: PublishedPoint,
    /// Ours less the published bubble point.
    pub bubble: f64,
    /// Ours less the published dew point.
    pub dew: Option<f64>,
    /// Whether the point is known to be wrong and counts for nothing.
    pub set_aside: bool,
}

/// Root mean square.
fn rms(values: &[f64]) -> f64 {
    libm::sqrt(values.iter().map(|e| e * e).sum::<f64>() / values.len().max(1) as f64)
}

impl Difference {
    fn errors(&self) -> Vec<f64> {
        [Some(self.bubble), self.dew].into_iter().flatten().collect()
    }
    /// Root mean square of the differences less what rounding may do, K.
    fn beyond_rounding(&self) -> f64 {
        (rms(&self.errors()) - self.point.rounding_k).max(0.0)
    }
    /// Root mean square of what lies between two sources, K.
    fn distance(&self, other: &Self) -> f64 {
        let both = [self.errors(), other.errors()];
        rms(&both[0].iter().zip(&both[1]).map(|(a, b)| a - b).collect::<Vec<_>>())
    }
}

/// What the published points say of the models of blends.
#[derive(Clone, Debug)]
pub struct Evidence {
    /// Differences of every refrigerant that others publish points of.
    pub differences: BTreeMap<String, Vec<Difference>>,
    /// Standard deviation of blends with published pairs, K, by the median (so that a few wrong points do not count).
    pub published_k: f64,
    /// The same of blends with estimated pairs, predicted without their own points.
    pub estimated_k: f64,
}

/// Median of absolute values; 0 of none.
pub fn median(values: &[f64]) -> f64 {
    let mut sorted: Vec<f64> = values.iter().map(|v| v.abs()).collect();
    sorted.sort_by(f64::total_cmp);
    match (sorted.len(), sorted.get(sorted.len() / 2)) {
        (_, None) => 0.0,
        (n, Some(high)) if n % 2 == 1 => *high,
        (n, Some(high)) => 0.5 * (high + sorted[n / 2 - 1]),
    }
}

/// A standard deviation from the median of absolute deviations, for the normal distribution.
fn deviation(values: &[f64]) -> f64 {
    1.4826 * median(values)
}

/// Tells whether a blend of the library has estimated pairs.
fn estimated(library: &Library, designation: &str) -> bool {
    library.blends.iter().find(|b| b.designation == designation).is_some_and(|blend| {
        let names: Vec<&str> = blend.mass_percent.keys().map(String::as_str).collect();
        Mixture::blend(library, &names).is_ok_and(|m| !m.estimated.is_empty())
    })
}

impl Evidence {
    /// Holds every blend against its published points.
    pub fn gather(library: &Library) -> Result<Self, String> {
        let mut differences: BTreeMap<String, Vec<Difference>> = BTreeMap::new();
        let (mut published, mut left_out) = (Vec::new(), Vec::new());
        for point in &library.published.points {
            let name = &point.refrigerant;
            let [bubble, dew] = if let Some(blend) = library.blends.iter().find(|b| b.designation == *name) {
                boiling(library, blend)?
            } else if let Some(fluid) = library.fluid(name) {
                let substance = Substance::pure(fluid)?;
                let p = Specification::Pressure(101_325.0);
                match substance.saturated(Kind::Dew, p) {
                    Some(found) => [found.t, found.t],
                    None => continue,
                }
            } else {
                continue;
            };
            let first = !differences.contains_key(name);
            let aside = first && library.published.set_aside.contains(name);
            let difference = Difference {
                bubble: bubble - 273.15 - point.bubble_c,
                dew: point.dew_c.map(|c| dew - 273.15 - c),
                point: point.clone(),
                set_aside: aside,
            };
            let blend = library.blends.iter().any(|b| b.designation == *name);
            if blend && first && !aside && !estimated(library, name) && point.rounding_k < 0.4 {
                published.push(difference.bubble);
                published.extend(difference.dew);
            }
            differences.entry(name.clone()).or_default().push(difference);
        }
        for (name, errors) in &library.fitted.left_out {
            if !library.published.set_aside.contains(name) {
                left_out.extend(errors);
            }
        }
        Ok(Self { differences, published_k: deviation(&published), estimated_k: deviation(&left_out) })
    }

    /// Finds the standard uncertainty of a substance's saturation temperatures, K.
    pub fn saturation_k(&self, library: &Library, substance: &Substance) -> Result<f64, String> {
        let mut pure = 0.0f64;
        for (name, _) in &substance.components {
            let percent = library
                .vapor_pressure
                .percent
                .get(name)
                .ok_or_else(|| format!("{name}: no uncertainty of its vapor pressure"))?;
            pure = pure.max(percent / 100.0 / 2.0);
        }
        let t = (AT_SHARE * substance.t_critical).clamp(substance.t_min + 0.5, substance.t_max - 0.5);
        let pressure = |t: f64| {
            substance
                .saturated(Kind::Dew, Specification::Temperature(t))
                .map(|s| s.p)
                .ok_or_else(|| format!("{}: no dew point at {t:.1} K", substance.designation))
        };
        let steepness = libm::log(pressure(t + 0.25)? / pressure(t - 0.25)?) / 0.5;
        let pure_k = pure / steepness;
        if substance.is_pure() {
            return Ok(pure_k);
        }
        let name = &substance.designation;
        let counted: Vec<&Difference> =
            self.differences.get(name).into_iter().flatten().filter(|d| !d.set_aside).collect();
        let own = counted.iter().map(|d| d.beyond_rounding()).min_by(f64::total_cmp);
        let statement = &library.vapor_pressure.mixtures;
        let stated = substance.mixture.pair_sources.iter().all(|s| statement.pairs_from.contains(s));
        let floor = if stated { statement.percent / 100.0 / 2.0 / steepness } else { self.published_k };
        let pairs_k = if substance.mixture.estimated.is_empty() {
            own.map_or(floor, |own| own.max(floor))
        } else {
            // Where two sources differ, ours may be off by as much as lies between them.
            let between = counted.split_first().map_or(0.0, |(first, others)| {
                others.iter().map(|other| 0.5 * first.distance(other)).fold(0.0, f64::max)
            });
            let left_out = library.fitted.left_out.get(name).map(|e| rms(e));
            let left_out = left_out.filter(|_| !library.published.set_aside.contains(name));
            left_out.map_or(self.estimated_k, |own| own.max(between).max(self.published_k))
        };
        Ok(libm::hypot(pure_k, pairs_k))
    }
}
