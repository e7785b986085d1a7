//! The machine types: invented machines of plausible build, each unlike the others on purpose.

use super::compressor::Kind;
use super::exchanger::{Film, Slip};
use super::machine::{CoilSpec, Device, MotorSpec, Spec};

/// Types on which constants may be set.
pub const SETTING: [&str; 4] =
    ["capillary freezer R404A", "capillary cooler R134a", "walk-in cooler R448A", "split orifice R410A"];

/// Types kept for grading.
pub const GRADING: [&str; 4] =
    ["capillary freezer R290", "walk-in freezer R404A", "split valve R410A", "display cooler R290"];

const SMALL: [f64; 5] = [0.075, 0.06, 0.22, 1.7, 13.0];
const MIDDLE: [f64; 5] = [0.05, 0.045, 0.21, 2.2, 20.0];
const LARGE: [f64; 5] = [0.035, 0.03, 0.20, 2.6, 30.0];

fn coil(bore: f64, circuits: f64, outside: f64, air_change: f64, air_exponent: f64, bypass: f64) -> CoilSpec {
    CoilSpec {
        bore,
        circuits,
        outside,
        air_change,
        air_exponent,
        bypass,
        film: Film::Local,
        slip: Slip::Zivi,
        friction: 1.3,
    }
}

/// Every type, in a fixed order.
pub fn specs() -> Vec<Spec> {
    let base = Spec {
        name: "capillary freezer R404A",
        refrigerant: "R404A",
        duty: "freezer",
        device: Device::Capillary { bore: 1.0e-3 },
        receiver: false,
        regulator: None,
        space: -20.0,
        ambient: 32.0,
        humidity: 0.7,
        evaporating: -28.0,
        condensing: 45.0,
        superheat: 4.0,
        suction_superheat: 24.0,
        subcooling: 3.5,
        capacity: 480.0,
        evaporator: coil(8.5e-3, 1.0, 8.0, 4.5, 0.55, 0.12),
        condenser: coil(6.5e-3, 1.0, 9.0, 7.5, 0.55, 0.15),
        compressor: Kind::Reciprocating { clearance: 0.022 },
        indicated: 0.86,
        shell: 0.008,
        motor: MotorSpec { voltage: 230.0, phases: 1.0, hz: 60.0, circuit: SMALL },
        suction_drop: 0.8,
        volumes: [0.10, 0.06, 0.5, 0.15, 0.0],
        fans: [0.05, 0.05],
        ambient_range: (16.0, 40.0),
        pull_down: 25.0,
    };
    vec![
        base.clone(),
        Spec {
            name: "capillary freezer R290",
            refrigerant: "R290",
            device: Device::Capillary { bore: 0.8e-3 },
            space: -21.0,
            ambient: 30.0,
            evaporating: -27.5,
            condensing: 40.5,
            superheat: 3.0,
            suction_superheat: 28.0,
            subcooling: 4.5,
            capacity: 310.0,
            evaporator: CoilSpec {
                film: Film::Mean,
                slip: Slip::Wallis,
                ..coil(7.5e-3, 1.0, 7.0, 3.8, 0.6, 0.1)
            },
            condenser: CoilSpec {
                film: Film::Mean,
                slip: Slip::Wallis,
                ..coil(4.8e-3, 1.0, 7.0, 6.5, 0.5, 0.2)
            },
            compressor: Kind::Reciprocating { clearance: 0.016 },
            indicated: 0.88,
            shell: 0.011,
            suction_drop: 0.5,
            volumes: [0.12, 0.05, 0.6, 0.12, 0.0],
            fans: [0.04, 0.04],
            motor: MotorSpec { voltage: 115.0, phases: 1.0, hz: 60.0, circuit: SMALL },
            ..base.clone()
        },
        Spec {
            name: "capillary cooler R134a",
            refrigerant: "R134a",
            duty: "cooler",
            device: Device::Capillary { bore: 1.1e-3 },
            space: 3.0,
            ambient: 31.0,
            humidity: 0.75,
            evaporating: -7.0,
            condensing: 44.0,
            superheat: 5.5,
            suction_superheat: 21.0,
            subcooling: 5.0,
            capacity: 520.0,
            evaporator: CoilSpec { slip: Slip::Rigot, ..coil(8.0e-3, 1.0, 10.0, 5.5, 0.5, 0.08) },
            condenser: CoilSpec {
                slip: Slip::Rigot,
                film: Film::Mean,
                ..coil(6.5e-3, 1.0, 8.5, 8.0, 0.6, 0.1)
            },
            compressor: Kind::Reciprocating { clearance: 0.028 },
            indicated: 0.85,
            shell: 0.007,
            suction_drop: 0.7,
            volumes: [0.08, 0.06, 0.4, 0.08, 0.0],
            pull_down: 22.0,
            motor: MotorSpec { voltage: 230.0, phases: 1.0, hz: 50.0, circuit: SMALL },
            ..base.clone()
        },
        Spec {
            name: "walk-in freezer R404A",
            device: Device::Thermostatic { opening: 0.68 },
            receiver: true,
            regulator: Some(-21.0),
            space: -18.0,
            ambient: 32.0,
            evaporating: -24.5,
            condensing: 43.0,
            superheat: 5.0,
            suction_superheat: 17.0,
            subcooling: 0.12,
            capacity: 3200.0,
            evaporator: CoilSpec { slip: Slip::Rigot, ..coil(11.5e-3, 5.0, 10.0, 4.0, 0.6, 0.1) },
            condenser: CoilSpec { film: Film::Mean, ..coil(8.5e-3, 3.0, 8.0, 7.0, 0.5, 0.1) },
            compressor: Kind::Reciprocating { clearance: 0.03 },
            indicated: 0.85,
            shell: 0.004,
            suction_drop: 2.0,
            volumes: [0.06, 0.18, 0.5, 0.25, 0.75],
            fans: [0.05, 0.04],
            motor: MotorSpec { voltage: 400.0, phases: 3.0, hz: 50.0, circuit: LARGE },
            ambient_range: (12.0, 42.0),
            ..base.clone()
        },
        Spec {
            name: "walk-in cooler R448A",
            refrigerant: "R448A",
            duty: "cooler",
            device: Device::Thermostatic { opening: 0.74 },
            receiver: true,
            space: 3.0,
            ambient: 33.0,
            humidity: 0.8,
            evaporating: -4.0,
            condensing: 45.0,
            superheat: 6.0,
            suction_superheat: 13.0,
            subcooling: 0.12,
            capacity: 4200.0,
            evaporator: CoilSpec { film: Film::Mean, ..coil(10.5e-3, 5.0, 11.0, 4.5, 0.55, 0.12) },
            condenser: coil(8.5e-3, 3.0, 8.5, 8.5, 0.6, 0.08),
            compressor: Kind::Scroll { volume_ratio: 3.1 },
            indicated: 0.87,
            shell: 0.0035,
            suction_drop: 1.2,
            volumes: [0.05, 0.2, 0.4, 0.0, 0.7],
            fans: [0.05, 0.04],
            motor: MotorSpec { voltage: 230.0, phases: 3.0, hz: 60.0, circuit: LARGE },
            ambient_range: (12.0, 42.0),
            pull_down: 20.0,
            ..base.clone()
        },
        Spec {
            name: "split orifice R410A",
            refrigerant: "R410A",
            duty: "air_conditioning",
            device: Device::Orifice,
            space: 26.7,
            ambient: 35.0,
            humidity: 0.5,
            evaporating: 9.0,
            condensing: 47.5,
            superheat: 5.0,
            suction_superheat: 8.0,
            subcooling: 6.0,
            capacity: 8800.0,
            evaporator: coil(8.5e-3, 5.0, 18.0, 15.0, 0.5, 0.08),
            condenser: coil(8.5e-3, 4.0, 13.0, 9.5, 0.5, 0.05),
            compressor: Kind::Scroll { volume_ratio: 2.6 },
            indicated: 0.88,
            shell: 0.002,
            suction_drop: 1.0,
            volumes: [0.05, 0.12, 0.25, 0.2, 0.0],
            fans: [0.045, 0.03],
            motor: MotorSpec { voltage: 230.0, phases: 1.0, hz: 60.0, circuit: MIDDLE },
            ambient_range: (22.0, 44.0),
            pull_down: 7.0,
            ..base.clone()
        },
        Spec {
            name: "split valve R410A",
            refrigerant: "R410A",
            duty: "air_conditioning",
            device: Device::Thermostatic { opening: 0.7 },
            space: 26.0,
            ambient: 35.0,
            humidity: 0.5,
            evaporating: 7.5,
            condensing: 46.0,
            superheat: 5.0,
            suction_superheat: 7.0,
            subcooling: 5.0,
            capacity: 5200.0,
            evaporator: CoilSpec {
                slip: Slip::Rigot,
                film: Film::Mean,
                ..coil(6.5e-3, 5.0, 15.0, 14.0, 0.6, 0.1)
            },
            condenser: CoilSpec { slip: Slip::Rigot, ..coil(6.5e-3, 4.0, 12.0, 7.5, 0.55, 0.1) },
            compressor: Kind::Rotary { clearance: 0.012 },
            indicated: 0.85,
            shell: 0.0025,
            suction_drop: 0.8,
            volumes: [0.06, 0.10, 0.25, 0.3, 0.0],
            fans: [0.04, 0.03],
            motor: MotorSpec { voltage: 230.0, phases: 1.0, hz: 50.0, circuit: MIDDLE },
            ambient_range: (22.0, 44.0),
            pull_down: 7.0,
            ..base.clone()
        },
        Spec {
            name: "display cooler R290",
            refrigerant: "R290",
            duty: "cooler",
            device: Device::Electronic { opening: 0.6 },
            space: 4.0,
            ambient: 28.0,
            humidity: 0.7,
            evaporating: -4.5,
            condensing: 39.0,
            superheat: 6.0,
            suction_superheat: 16.0,
            subcooling: 4.0,
            capacity: 750.0,
            evaporator: CoilSpec { slip: Slip::Rigot, ..coil(7.5e-3, 2.0, 9.0, 4.8, 0.5, 0.1) },
            condenser: CoilSpec {
                film: Film::Mean,
                slip: Slip::Rigot,
                ..coil(4.8e-3, 2.0, 6.0, 7.0, 0.55, 0.12)
            },
            compressor: Kind::Reciprocating { clearance: 0.02 },
            indicated: 0.87,
            shell: 0.007,
            suction_drop: 0.7,
            volumes: [0.08, 0.1, 0.4, 0.3, 0.0],
            fans: [0.05, 0.04],
            motor: MotorSpec { voltage: 230.0, phases: 1.0, hz: 50.0, circuit: SMALL },
            ambient_range: (16.0, 38.0),
            pull_down: 18.0,
            ..base
        },
    ]
}

/// True when constants may be set on this type.
pub fn is_setting(name: &str) -> bool {
    SETTING.contains(&name)
}

/// Types of the fleet that also run on other refrigerants in the sweeps: type, refrigerant, name.
const CONVERTED: [(&str, &str, &str); 11] = [
    ("capillary freezer R290", "R600a", "capillary freezer R600a"),
    ("capillary freezer R404A", "R452A", "capillary freezer R452A"),
    ("capillary cooler R134a", "R513A", "capillary cooler R513A"),
    ("capillary cooler R134a", "R1234yf", "capillary cooler R1234yf"),
    ("capillary cooler R134a", "R600a", "capillary cooler R600a"),
    ("walk-in freezer R404A", "R452A", "walk-in freezer R452A"),
    ("walk-in cooler R448A", "R22", "walk-in cooler R22"),
    ("split orifice R410A", "R22", "split orifice R22"),
    ("split valve R410A", "R32", "split valve R32"),
    ("split valve R410A", "R454B", "split valve R454B"),
    ("display cooler R290", "R513A", "display cooler R513A"),
];

/// The fleet and its types on other refrigerants: twelve refrigerants in all.
pub fn specs_for_sweeps() -> Vec<Spec> {
    let own = specs();
    let mut out = own.clone();
    for (kind, refrigerant, name) in CONVERTED {
        for s in own.iter().filter(|s| s.name == kind) {
            let mut converted = Spec { name, refrigerant, ..s.clone() };
            if refrigerant == "R600a" {
                // Thin gas: such machines are small and their tubes wide.
                converted.capacity *= 0.4;
                converted.evaporator.bore *= 1.2;
                converted.condenser.bore *= 1.2;
            }
            if kind == "display cooler R290" {
                // Four times the flow by mass needs wider tubes.
                converted.evaporator.bore *= 1.4;
                converted.condenser.bore *= 1.6;
            }
            out.push(converted);
        }
    }
    out
}
