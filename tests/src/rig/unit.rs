//! What makes one unit differ from its sheet, drawn once a visit and hidden from whoever diagnoses it.

use super::machine::{Machine, Metering};
use super::math::Rng;

/// A unit of a type: the nominal machine with its parts a little off.
pub fn vary(nominal: &Machine, rng: &mut Rng) -> Machine {
    let mut m = nominal.clone();
    let mut near = |spread: f64| 1.0 + rng.normal() * spread;
    m.evaporator.outside *= near(0.10);
    m.condenser.outside *= near(0.10);
    m.evaporator.air_flow *= near(0.04);
    m.condenser.air_flow *= near(0.04);
    m.compressor.volumetric *= near(0.05);
    m.compressor.indicated = (m.compressor.indicated * near(0.05)).min(0.97);
    m.compressor.shell *= near(0.15);
    m.compressor.to_suction *= near(0.15);
    m.compressor.leak *= near(0.3);
    m.charge *= near(0.03);
    m.drier *= near(0.2);
    m.suction_line *= near(0.1);
    m.suction_gain *= near(0.2);
    m.exchanger *= near(0.1);
    m.liquid_loss *= near(0.3);
    match &mut m.metering {
        Metering::Capillary(c) => {
            // Flow of a capillary goes with its bore to the power 2.5: 1 % of bore is 2.5 % of flow.
            c.bore *= near(0.01);
        }
        Metering::Orifice { area } => *area *= near(0.025),
        Metering::Thermostatic { valve, area, .. } => {
            *area *= near(0.06);
            // Superheat settings are left where the last hand left them.
            valve.spring *= near(0.12);
        }
        Metering::Electronic { valve, area, .. } => {
            *area *= near(0.05);
            valve.set += 0.5 * (near(1.0) - 1.0);
        }
    }
    if let Some(r) = &mut m.regulator {
        r.set *= near(0.02);
    }
    m
}
