//! Saturation from three numbers a curve, good to a few tenths of a kelvin: enough to tell one refrigerant from another
//! without linking its table.

/// Saturation of one refrigerant by Antoine's equation (1888), `T = b / (a - ln p) + c`.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Approximate {
    pub(crate) designation: &'static str,
    dew: [f32; 3],
    middle: [f32; 3],
}

impl Approximate {
    pub(crate) const fn new(designation: &'static str, dew: [f32; 3], middle: [f32; 3]) -> Self {
        Self { designation, dew, middle }
    }
    pub(crate) fn dew_k(&self, pa: f32) -> f32 {
        antoine(self.dew, pa)
    }
    /// The mean of bubble and dew.
    pub(crate) fn middle_k(&self, pa: f32) -> f32 {
        antoine(self.middle, pa)
    }
}

/// No pressure of a refrigeration machine comes near the pole; the floor keeps what is no pressure finite.
fn antoine([a, b, c]: [f32; 3], pa: f32) -> f32 {
    b / (a - libm::logf(pa.max(1.0))).max(1.0) + c
}

#[cfg(test)]
mod tests {
    use super::super::data::common::COMMON;
    use super::super::find;
    use crate::quantity::Temperature;

    #[test]
    fn it_keeps_to_the_table() {
        for approximate in &COMMON {
            let table = find(approximate.designation).unwrap();
            for celsius in (-45..=60).step_by(5) {
                let dew_k = Temperature::from_celsius(celsius as f32);
                let pressure = table.dew_pressure(dew_k).unwrap();
                let bubble_k = table.bubble_temperature(pressure).unwrap().kelvins();
                let dew_k = dew_k.kelvins();
                let pa = pressure.pascals();
                for (found, table_k) in
                    [(approximate.dew_k(pa), dew_k), (approximate.middle_k(pa), 0.5 * (dew_k + bubble_k))]
                {
                    assert!((found - table_k).abs() < 0.4, "{} {celsius} degC: {found}", table.designation());
                }
            }
        }
    }
}
