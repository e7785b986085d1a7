//! Property tables against the printed values of the ASHRAE Handbook - Fundamentals (HoF) 2021.

use rimewise::quantity::{Pressure, Temperature};
use rimewise::refrigerant::{Refrigerant, State, find};

fn refrigerant(name: &str) -> &'static Refrigerant<'static> {
    find(name).unwrap_or_else(|| panic!("{name} is built in"))
}

fn near(what: &str, found: f32, printed: f32, within: f32) {
    assert!((found - printed).abs() <= within, "{what}: {found}, printed {printed}, allowed {within}");
}

/// Chapter 29, table 5: normal boiling point degC, critical temperature degC, critical pressure kPa.
///
/// R-744 has a triple point above one atmosphere. The critical point of a blend depends on the mixture model: for
/// R-410A the multi-fluid model lies 0.013 K and 1.4 kPa below the printed one; for R-404A both the multi-fluid model of these tables and the published pseudo-pure equation (E. W. Lemmon, Int. J.
/// Thermophys. 24 (2003) 991: 345.27 K, 3734.8 kPa) lie 0.07 K and 6 kPa above the printed 72.046 degC, 3728.9 kPa.
#[test]
fn boiling_and_critical_points_of_table_5() {
    // The last two are what ours is known to differ by, kelvin and kPa, with the reason above: a difference that
    // changes fails too.
    for (name, boiling, critical, pressure, within, kpa_within, k_off, kpa_off) in [
        ("R134a", Some(-26.074), 101.06, 4059.3, 0.001, 0.1, 0.0, 0.0),
        ("R22", Some(-40.81), 96.145, 4990.0, 0.001, 0.5, 0.0, 0.0),
        ("R290", Some(-42.11), 96.74, 4251.2, 0.001, 0.1, 0.0, 0.0),
        ("R404A", Some(-46.222), 72.046, 3728.9, 0.002, 0.5, 0.074, 6.0),
        ("R507A", Some(-46.741), 70.617, 3705.0, 0.002, 0.5, 0.0, 0.0),
        ("R410A", Some(-51.446), 71.358, 4902.6, 0.002, 0.5, -0.013, -1.4),
        ("R744", None, 30.978, 7377.3, 0.001, 0.1, 0.0, 0.0),
    ] {
        let r = refrigerant(name);
        if let Some(boiling) = boiling {
            near(&format!("{name} boiling"), r.normal_boiling_point().celsius(), boiling, 0.005);
        }
        near(&format!("{name} critical"), r.critical_temperature().celsius(), critical + k_off, within);
        near(
            &format!("{name} critical pressure"),
            r.critical_pressure().kilopascals(),
            pressure + kpa_off,
            kpa_within,
        );
    }
}

/// The standard cycle between two pressures: saturated vapor, isentropic, saturated liquid.
struct Cycle {
    evaporating: Pressure,
    condensing: Pressure,
    inlet: State,
    outlet: State,
    liquid: State,
    discharge: Temperature,
}

impl Cycle {
    fn between(r: &Refrigerant<'_>, evaporating: Pressure, condensing: Pressure) -> Self {
        let inlet = r.saturated_vapor(evaporating).expect("vapor");
        let discharge = r.vapor_temperature_at_entropy(condensing, inlet.entropy).expect("discharge");
        Self {
            evaporating,
            condensing,
            inlet,
            outlet: r.vapor(condensing, discharge).expect("discharge state"),
            liquid: r.saturated_liquid(condensing).expect("liquid"),
            discharge,
        }
    }
    fn effect(&self) -> f32 {
        self.inlet.enthalpy.kilojoules_per_kg() - self.liquid.enthalpy.kilojoules_per_kg()
    }
    fn work(&self) -> f32 {
        self.outlet.enthalpy.kilojoules_per_kg() - self.inlet.enthalpy.kilojoules_per_kg()
    }
}

/// Finds the pressure at which the mean of bubble and dew is a temperature.
fn at_mean(r: &Refrigerant<'_>, t: Temperature) -> Pressure {
    let mut low = r.dew_pressure(t).expect("dew").pascals();
    let mut high = r.bubble_pressure(t).expect("bubble").pascals();
    for _ in 0..40 {
        let middle = Pressure::from_pascals(0.5 * (low + high));
        let mean = 0.5
            * (r.dew_temperature(middle).expect("dew").kelvins()
                + r.bubble_temperature(middle).expect("bubble").kelvins());
        if mean < t.kelvins() {
            low = middle.pascals();
        } else {
            high = middle.pascals();
        }
    }
    Pressure::from_pascals(0.5 * (low + high))
}

/// Chapter 29, table 8: 20 degF evaporating, 30 degC condensing; MPa, MPa, kJ/kg, COP, degC.
///
/// Allowed: one unit of the last printed digit, 1.5 for temperature and refrigerating effect, and 0.004 of COP, a
/// quotient of small differences. R-404A's printed pressure and COP are 0.2 % below those of the published mixture
/// model (which these tables hold; an independent implementation gives the same to nine digits) and of the published
/// pseudo-pure equation (0.4870 MPa): the handbook took another model. R-744's condensing state lies within 2 K of
/// its critical point, where the tables end; the table compiler checks it on the equation of state.
#[test]
fn standard_cycles_of_table_8() {
    // The last two are what ours is known to differ by, MPa and COP, with the reason above.
    for (name, evaporating, condensing, effect, cop, discharge, mpa_off, cop_off) in [
        ("R134a", 0.228, 0.770, 153.0, 6.063, 34.8, 0.0, 0.0),
        ("R22", 0.399, 1.192, 165.9, 6.105, 47.8, 0.0, 0.0),
        ("R290", 0.385, 1.079, 288.6, 5.987, 34.9, 0.0, 0.0),
        ("R404A", 0.486, 1.421, 118.8, 5.598, 34.6, 0.0011, 0.0129),
        ("R507A", 0.503, 1.460, 114.9, 5.564, 34.2, 0.0, 0.0),
        ("R410A", 0.643, 1.886, 170.9, 5.780, 46.6, 0.0, 0.0),
        ("R32", 0.653, 1.928, 258.6, 5.924, 59.7, 0.0, 0.0),
    ] {
        let r = refrigerant(name);
        let c = Cycle::between(
            r,
            at_mean(r, Temperature::from_fahrenheit(20.0)),
            at_mean(r, Temperature::from_celsius(30.0)),
        );
        near(&format!("{name} evaporating"), c.evaporating.kilopascals() / 1e3, evaporating + mpa_off, 0.001);
        near(&format!("{name} condensing"), c.condensing.kilopascals() / 1e3, condensing + mpa_off, 0.001);
        near(&format!("{name} effect"), c.effect(), effect, 0.15);
        near(&format!("{name} COP"), c.effect() / c.work(), cop + cop_off, 0.004);
        near(&format!("{name} discharge"), c.discharge.celsius(), discharge, 0.15);
    }
}

/// Chapter 2, example 2: R-134a, -20 to 30 degC, 50 kW.
#[test]
fn the_cycle_of_example_2() {
    let r = refrigerant("R134a");
    let p = |c| r.dew_pressure(Temperature::from_celsius(c)).expect("pressure");
    let c = Cycle::between(r, p(-20.0), p(30.0));
    near("evaporating", c.evaporating.kilopascals(), 132.73, 0.02);
    near("condensing", c.condensing.kilopascals(), 770.20, 0.05);
    near("h1", c.inlet.enthalpy.kilojoules_per_kg(), 386.55, 0.1);
    near("h2", c.outlet.enthalpy.kilojoules_per_kg(), 423.07, 0.15);
    near("h3", c.liquid.enthalpy.kilojoules_per_kg(), 241.72, 0.05);
    near("discharge", c.discharge.celsius(), 37.8, 0.06);
    near("COP", c.effect() / c.work(), 3.97, 0.005);
    near("mass flow", 50.0 / c.effect(), 0.345, 0.0005);
}

/// Chapter 2, example 5: a measured R-22 machine; its superheats and subcoolings from pressure and temperature.
#[test]
fn superheat_and_subcooling_of_example_5() {
    let r = refrigerant("R22");
    let over = |kpa, c| {
        let dew = r.dew_temperature(Pressure::from_kilopascals(kpa)).expect("dew");
        (Temperature::from_celsius(c) - dew).kelvins()
    };
    let under = |kpa, c| {
        let bubble = r.bubble_temperature(Pressure::from_kilopascals(kpa)).expect("bubble");
        (bubble - Temperature::from_celsius(c)).kelvins()
    };
    near("superheat at the evaporator", over(310.0, -10.0), 3.8, 0.15);
    near("superheat at the compressor", over(304.0, -4.0), 10.3, 0.15);
    near("subcooling at the condenser", under(1410.0, 34.0), 2.6, 0.15);
    near("subcooling at the valve", under(1405.0, 33.0), 3.5, 0.15);
}

/// Safety classes and molar masses of HoF 2021, chapter 29.
#[test]
fn classes_and_molar_masses() {
    for (name, class, molar_mass) in [
        ("R134a", "A1", 102.03),
        ("R22", "A1", 86.47),
        ("R32", "A2L", 52.02),
        ("R290", "A3", 44.10),
        ("R717", "B2L", 17.03),
        ("R744", "A1", 44.01),
        ("R404A", "A1", 97.60),
        ("R410A", "A1", 72.59),
        ("R448A", "A1", 86.3),
        ("R452A", "A1", 103.5),
        ("R454B", "A2L", 62.6),
        ("R507A", "A1", 98.86),
    ] {
        let r = refrigerant(name);
        assert_eq!(r.safety_class().map(|c| c.name()), Some(class), "{name}");
        near(name, r.molar_mass(), molar_mass, 0.06);
    }
}
