//! Machines: kinds for setting the monitor's constants and other kinds for grading, each drawn with its own sizes.

use super::fluid::Fluid;
use super::plant::{Build, Metering};
use super::random::Random;

/// Which half a machine belongs to: none of the kinds, refrigerants with duty, or seeds is in both.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Half {
    /// For setting constants.
    Setting,
    /// For grading, looked at when the constants are set.
    Grading,
}

/// One kind of machine.
struct Kind {
    refrigerant: &'static str,
    metering: Metering,
    regulator: bool,
    space: f64,
    ambient: f64,
    evaporator_difference: f64,
    condenser_difference: f64,
    capacity: (f64, f64),
}

const fn kind(
    refrigerant: &'static str,
    metering: Metering,
    regulator: bool,
    space: f64,
    ambient: f64,
    differences: (f64, f64),
    capacity: (f64, f64),
) -> Kind {
    Kind {
        refrigerant,
        metering,
        regulator,
        space,
        ambient,
        evaporator_difference: differences.0,
        condenser_difference: differences.1,
        capacity,
    }
}

/// Kinds for setting constants.
const SETTING: [Kind; 5] = [
    kind("R134a", Metering::Capillary, false, 3.0, 32.0, (9.0, 12.0), (250.0, 900.0)),
    kind("R404A", Metering::Valve, false, -20.0, 32.0, (7.0, 12.0), (600.0, 2500.0)),
    kind("R290", Metering::Capillary, false, -20.0, 30.0, (8.0, 11.0), (250.0, 900.0)),
    kind("R410A", Metering::Capillary, false, 26.0, 35.0, (17.0, 13.0), (2500.0, 6000.0)),
    kind("R448A", Metering::Valve, true, -20.0, 32.0, (8.0, 13.0), (1200.0, 4000.0)),
];
/// Kinds for grading.
const GRADING: [Kind; 6] = [
    kind("R290", Metering::Capillary, false, 3.0, 32.0, (8.0, 10.0), (200.0, 800.0)),
    kind("R134a", Metering::Capillary, false, -18.0, 27.0, (9.0, 13.0), (150.0, 500.0)),
    kind("R404A", Metering::Valve, false, 2.0, 32.0, (8.0, 11.0), (800.0, 3500.0)),
    kind("R449A", Metering::Valve, true, -21.0, 30.0, (7.0, 12.0), (1000.0, 3500.0)),
    kind("R32", Metering::Valve, false, 26.0, 35.0, (16.0, 12.0), (2500.0, 6000.0)),
    kind("R507A", Metering::Valve, false, -24.0, 30.0, (7.0, 11.0), (700.0, 2500.0)),
];

/// Draws a machine of a half, with a metering device where the script needs one.
pub fn draw(half: Half, random: &mut Random, metering: Option<Metering>) -> Build {
    let kinds: &[Kind] = match half {
        Half::Setting => &SETTING,
        Half::Grading => &GRADING,
    };
    let fitting: Vec<&Kind> = kinds.iter().filter(|k| metering.is_none_or(|m| k.metering == m)).collect();
    let k = random.pick(&fitting);
    let fluid = Fluid::new(k.refrigerant).unwrap_or_else(|| panic!("no table of {}", k.refrigerant));
    let b = |low: f64, high: f64, random: &mut Random| random.between(low, high);
    let capacity = b(k.capacity.0, k.capacity.1, random);
    let size = capacity / 500.0;
    let evaporating = k.space - k.evaporator_difference * b(0.85, 1.2, random);
    let condensing = k.ambient + k.condenser_difference * b(0.85, 1.2, random);
    let (low, high) = (fluid.pressure(evaporating), fluid.pressure(condensing));
    let clearance = b(0.02, 0.045, random);
    let flash = (1400.0 * (condensing - 3.0 - evaporating) / fluid.latent(evaporating)).clamp(0.0, 0.8);
    let flow = capacity / (fluid.latent(evaporating) * (1.0 - flash));
    let exponent = 1.14;
    let filling = 1.0 - clearance * ((high / low).powf(1.0 / exponent) - 1.0);
    // The suction line takes 4 kPa at the design flow.
    let density = fluid.vapor_density(low, evaporating) * 0.93 * (1.0 - 4000.0 / low);
    let difference = k.space - evaporating;
    // Four fifths of the temperature difference lie on the air side.
    let (evaporator_air, evaporator_wall) =
        (capacity / (0.8 * difference), capacity / (0.2 * difference) / 0.85);
    let work =
        exponent / (exponent - 1.0) * low / density * ((high / low).powf((exponent - 1.0) / exponent) - 1.0);
    let design_power = flow * work / 0.62;
    // What condenses and what the hot vapor brings, as the model counts them.
    let rejected = flow * (fluid.latent(condensing) + 900.0 * 40.0);
    let over = condensing - k.ambient;
    let volts = random.pick(&[120.0, 230.0, 230.0, 208.0]);
    // Power factor and efficiency of a small motor together 0.6 to 0.75; magnetising a third of the current.
    let amps_per_watt = 1.0 / (volts * b(0.6, 0.75, random));
    let load_amps = design_power * 1.12 * amps_per_watt;
    let magnetising = load_amps * b(0.4, 0.8, random);
    let design_amps = (load_amps * load_amps + magnetising * magnetising).sqrt();
    let rated = design_amps / b(0.68, 0.84, random);
    // A capillary passes its design flow with some vapor; a valve has liquid to spare ahead of it.
    let spare = if k.metering == Metering::Capillary { 1.25 } else { 1.02 };
    let full_mass = 0.06 * size * b(0.8, 1.2, random);
    Build {
        metering: k.metering,
        regulator: k.regulator.then(|| fluid.pressure(evaporating + b(7.0, 12.0, random))),
        space: k.space,
        ambient: k.ambient,
        evaporating,
        condensing,
        capacity,
        load: b(0.45, 0.7, random),
        space_heat: 30_000.0 * size * b(0.6, 1.8, random),
        swept: flow / (filling * density),
        clearance,
        metering_size: flow / (fluid.liquid_density(condensing) * (high - low)).sqrt() * spare,
        evaporator_air,
        evaporator_wall,
        condenser_air: rejected / (0.8 * over),
        condenser_wall: rejected / (0.2 * over),
        evaporator_heat: 2500.0 * size * b(0.7, 1.5, random),
        condenser_heat: 2000.0 * size * b(0.7, 1.5, random),
        evaporator_volume: 1.2e-3 * size * b(0.7, 1.4, random),
        shell_volume: 1.5e-3 * size.powf(0.7) * b(0.7, 1.5, random),
        high_volume: 1.0e-3 * size * b(0.7, 1.4, random),
        full_mass,
        line_gain: b(0.1, 0.4, random),
        line_lag: b(6.0, 15.0, random),
        valve_superheat: b(5.0, 8.0, random),
        rated,
        locked: rated * b(4.5, 6.5, random),
        volts,
        magnetising,
        design_power,
        amps_per_watt,
        acceleration: b(0.25, 0.7, random),
        liquid_work: b(0.3, 0.9, random),
        clearing: b(25.0, 90.0, random),
        reserve: match k.metering {
            Metering::Capillary => 0.1 * full_mass,
            Metering::Valve => 1.5 * full_mass,
        },
        fluid,
    }
}
