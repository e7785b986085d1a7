//! Saturation properties of a refrigerant on a grid, read once from its table.

use rimewise::quantity::Temperature;
use rimewise::refrigerant::{Refrigerant, find};

/// Coldest grid point where the table reaches so far, and the warmest at which the grid may begin, degC.
const COLDEST: (f64, f64) = (-70.0, -45.0);
/// Distance of grid points, K.
const STEP: f64 = 1.0;

/// Saturation of one refrigerant.
#[derive(Clone, Debug)]
pub struct Fluid {
    /// Designation.
    pub name: &'static str,
    /// The refrigerant's table, which the monitor reads too.
    pub table: &'static Refrigerant<'static>,
    coldest: f64,
    log_p: Vec<f64>,
    vapor_density: Vec<f64>,
    liquid_density: Vec<f64>,
    latent: Vec<f64>,
}

impl Fluid {
    /// Reads a refrigerant, `None` where this build has no such table.
    pub fn new(name: &'static str) -> Option<Self> {
        let table = find(name)?;
        let mut fluid = Self {
            name,
            table,
            coldest: COLDEST.0,
            log_p: vec![],
            vapor_density: vec![],
            liquid_density: vec![],
            latent: vec![],
        };
        // The liquid of a blend with much glide is colder than its dew point: the grid begins where both are known.
        let known = |celsius: f64| {
            let p = table.dew_pressure(Temperature::from_celsius(celsius as f32));
            p.is_ok_and(|p| table.saturated_liquid(p).is_ok())
        };
        while !known(fluid.coldest) {
            fluid.coldest += STEP;
            if fluid.coldest > COLDEST.1 {
                return None;
            }
        }
        let mut celsius = fluid.coldest;
        while let Ok(p) = table.dew_pressure(Temperature::from_celsius(celsius as f32)) {
            let (Ok(vapor), Ok(liquid)) = (table.saturated_vapor(p), table.saturated_liquid(p)) else {
                break;
            };
            fluid.log_p.push(f64::from(p.pascals()).ln());
            fluid.vapor_density.push(f64::from(vapor.density.kg_per_m3()));
            fluid.liquid_density.push(f64::from(liquid.density.kg_per_m3()));
            fluid.latent.push(f64::from(vapor.enthalpy.joules_per_kg() - liquid.enthalpy.joules_per_kg()));
            celsius += STEP;
            if celsius > 75.0 {
                break;
            }
        }
        (fluid.log_p.len() > 60).then_some(fluid)
    }

    fn at(values: &[f64], place: f64) -> f64 {
        let place = place.clamp(0.0, (values.len() - 2) as f64 + 0.999);
        let index = place as usize;
        values[index] + (values[index + 1] - values[index]) * (place - index as f64)
    }

    /// Finds the dew pressure at a temperature, Pa.
    pub fn pressure(&self, celsius: f64) -> f64 {
        let place = (celsius - self.coldest) / STEP;
        if place < 0.0 {
            // Below the grid the logarithm goes on straight over temperature.
            return (self.log_p[0] + place * (self.log_p[1] - self.log_p[0])).exp();
        }
        Self::at(&self.log_p, place).exp()
    }

    /// Finds the dew temperature at a pressure, degC.
    pub fn temperature(&self, pascals: f64) -> f64 {
        let log = pascals.max(100.0).ln();
        let first = self.log_p[0];
        if log <= first {
            return self.coldest + STEP * (log - first) / (self.log_p[1] - first);
        }
        let above = self.log_p.partition_point(|p| *p < log).clamp(1, self.log_p.len() - 1);
        let (low, high) = (self.log_p[above - 1], self.log_p[above]);
        self.coldest + STEP * (above as f64 - 1.0 + (log - low) / (high - low))
    }

    /// Finds the density of vapor at a pressure, kg/m3; in proportion to pressure below the grid.
    pub fn vapor_density(&self, pascals: f64, celsius: f64) -> f64 {
        let place = (celsius - self.coldest) / STEP;
        if place < 0.0 {
            return self.vapor_density[0] * pascals / self.log_p[0].exp();
        }
        Self::at(&self.vapor_density, place)
    }
    /// Finds the density of saturated liquid, kg/m3.
    pub fn liquid_density(&self, celsius: f64) -> f64 {
        Self::at(&self.liquid_density, (celsius - self.coldest) / STEP)
    }
    /// Finds the latent heat, J/kg.
    pub fn latent(&self, celsius: f64) -> f64 {
        Self::at(&self.latent, (celsius - self.coldest) / STEP)
    }
}
