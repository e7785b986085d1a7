//! Physical quantities in the units people hold in their hands.
//!
//! Every type keeps one SI value as `f32`. A [`Temperature`] is a point on the scale and a
//! [`TemperatureDifference`] a distance on it; the types keep them apart, so that 10 degF of superheat can never
//! be read as -12 degC. A gauge pressure needs the local [`Atmosphere`], which follows altitude.

use core::ops::{Add, Neg, Sub};

/// Declares a quantity of one SI value with its comparison traits.
macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Default)]
        pub struct $name(f32);
    };
}

quantity!(
    /// An absolute pressure, kept in pascal.
    Pressure
);
quantity!(
    /// A point on the thermodynamic temperature scale, kept in kelvin.
    Temperature
);
quantity!(
    /// A distance between two temperatures, kept in kelvin.
    TemperatureDifference
);
quantity!(
    /// A specific enthalpy, kept in J/kg (IIR reference state: 200 kJ/kg for saturated liquid at 0 degC).
    Enthalpy
);
quantity!(
    /// A specific entropy, kept in J/(kg K) (IIR reference state: 1 kJ/(kg K) for saturated liquid at 0 degC).
    Entropy
);
quantity!(
    /// A mass density, kept in kg/m3.
    Density
);

/// Pascal in one pound-force per square inch (exact pound and inch, standard gravity; 7 digits).
const PA_PER_PSI: f32 = 6894.757;
/// Absolute zero in degrees Celsius, with the sign turned (exact by definition).
const ZERO_CELSIUS_K: f32 = 273.15;
/// Absolute zero in degrees Fahrenheit, with the sign turned (exact by definition).
const ZERO_FAHRENHEIT_R: f32 = 459.67;
/// Kelvin in one degree Fahrenheit of difference.
const K_PER_F: f32 = 5.0 / 9.0;

impl Pressure {
    /// Makes a pressure from pascal, absolute.
    pub const fn from_pascals(pa: f32) -> Self {
        Self(pa)
    }
    /// Makes a pressure from kilopascal, absolute.
    pub const fn from_kilopascals(kpa: f32) -> Self {
        Self(kpa * 1000.0)
    }
    /// Makes a pressure from bar, absolute.
    pub const fn from_bar(bar: f32) -> Self {
        Self(bar * 100_000.0)
    }
    /// Makes a pressure from pounds per square inch, absolute (psia).
    pub const fn from_psi(psi: f32) -> Self {
        Self(psi * PA_PER_PSI)
    }
    /// Makes a pressure from a gauge reading in kilopascal at the local atmosphere.
    pub fn from_kilopascals_gauge(kpa: f32, atmosphere: Atmosphere) -> Self {
        Self(kpa * 1000.0 + atmosphere.pressure().0)
    }
    /// Makes a pressure from a gauge reading in bar at the local atmosphere.
    pub fn from_bar_gauge(bar: f32, atmosphere: Atmosphere) -> Self {
        Self(bar * 100_000.0 + atmosphere.pressure().0)
    }
    /// Makes a pressure from a gauge reading in pounds per square inch (psig) at the local atmosphere.
    pub fn from_psi_gauge(psi: f32, atmosphere: Atmosphere) -> Self {
        Self(psi * PA_PER_PSI + atmosphere.pressure().0)
    }
    /// Reads the pressure in pascal, absolute.
    pub const fn pascals(self) -> f32 {
        self.0
    }
    /// Reads the pressure in kilopascal, absolute.
    pub const fn kilopascals(self) -> f32 {
        self.0 / 1000.0
    }
    /// Reads the pressure in bar, absolute.
    pub const fn bar(self) -> f32 {
        self.0 / 100_000.0
    }
    /// Reads the pressure in pounds per square inch, absolute (psia).
    pub const fn psi(self) -> f32 {
        self.0 / PA_PER_PSI
    }
    /// Reads the pressure in kilopascal above the local atmosphere; negative under vacuum.
    pub fn kilopascals_gauge(self, atmosphere: Atmosphere) -> f32 {
        (self.0 - atmosphere.pressure().0) / 1000.0
    }
    /// Reads the pressure in bar above the local atmosphere; negative under vacuum.
    pub fn bar_gauge(self, atmosphere: Atmosphere) -> f32 {
        (self.0 - atmosphere.pressure().0) / 100_000.0
    }
    /// Reads the pressure in pounds per square inch above the local atmosphere (psig); negative under vacuum.
    pub fn psi_gauge(self, atmosphere: Atmosphere) -> f32 {
        (self.0 - atmosphere.pressure().0) / PA_PER_PSI
    }
}

/// The pressure of the surrounding air, against which a gauge reads.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Atmosphere(Pressure);

impl Atmosphere {
    /// The standard atmosphere at sea level, 101,325 Pa.
    pub const SEA_LEVEL: Self = Self(Pressure(101_325.0));

    /// Makes the standard atmosphere at an altitude in metres above sea level.
    ///
    /// Altitudes outside -500 m to 11,000 m (the troposphere) are held at the nearer end; NaN reads as sea level.
    /// Source: ICAO Doc 7488, manual of the standard atmosphere: p = 101325 (1 - 0.0065 h / 288.15)^5.25588.
    pub fn at_altitude_m(altitude_m: f32) -> Self {
        if altitude_m.is_nan() {
            return Self::SEA_LEVEL;
        }
        let h = altitude_m.clamp(-500.0, 11_000.0);
        Self(Pressure(101_325.0 * libm::powf(1.0 - 0.0065 * h / 288.15, 5.255_88)))
    }
    /// Makes an atmosphere from a barometer's station pressure (not reduced to sea level).
    pub const fn from_pressure(pressure: Pressure) -> Self {
        Self(pressure)
    }
    /// Reads the absolute pressure of the air.
    pub const fn pressure(self) -> Pressure {
        self.0
    }
}

impl Default for Atmosphere {
    fn default() -> Self {
        Self::SEA_LEVEL
    }
}

impl Temperature {
    /// Makes a temperature from kelvin.
    pub const fn from_kelvins(k: f32) -> Self {
        Self(k)
    }
    /// Makes a temperature from degrees Celsius.
    pub const fn from_celsius(c: f32) -> Self {
        Self(c + ZERO_CELSIUS_K)
    }
    /// Makes a temperature from degrees Fahrenheit.
    pub const fn from_fahrenheit(f: f32) -> Self {
        Self((f + ZERO_FAHRENHEIT_R) * K_PER_F)
    }
    /// Reads the temperature in kelvin.
    pub const fn kelvins(self) -> f32 {
        self.0
    }
    /// Reads the temperature in degrees Celsius.
    pub const fn celsius(self) -> f32 {
        self.0 - ZERO_CELSIUS_K
    }
    /// Reads the temperature in degrees Fahrenheit.
    pub const fn fahrenheit(self) -> f32 {
        self.0 / K_PER_F - ZERO_FAHRENHEIT_R
    }
}

impl TemperatureDifference {
    /// Makes a difference from kelvin (equally degrees Celsius of difference).
    pub const fn from_kelvins(k: f32) -> Self {
        Self(k)
    }
    /// Makes a difference from degrees Fahrenheit of difference.
    pub const fn from_fahrenheit(f: f32) -> Self {
        Self(f * K_PER_F)
    }
    /// Reads the difference in kelvin (equally degrees Celsius of difference).
    pub const fn kelvins(self) -> f32 {
        self.0
    }
    /// Reads the difference in degrees Fahrenheit of difference.
    pub const fn fahrenheit(self) -> f32 {
        self.0 / K_PER_F
    }
}

impl Sub for Temperature {
    type Output = TemperatureDifference;
    fn sub(self, other: Self) -> TemperatureDifference {
        TemperatureDifference(self.0 - other.0)
    }
}
impl Add<TemperatureDifference> for Temperature {
    type Output = Self;
    fn add(self, difference: TemperatureDifference) -> Self {
        Self(self.0 + difference.0)
    }
}
impl Sub<TemperatureDifference> for Temperature {
    type Output = Self;
    fn sub(self, difference: TemperatureDifference) -> Self {
        Self(self.0 - difference.0)
    }
}
impl Add for TemperatureDifference {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}
impl Sub for TemperatureDifference {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0 - other.0)
    }
}
impl Neg for TemperatureDifference {
    type Output = Self;
    fn neg(self) -> Self {
        Self(-self.0)
    }
}

impl Enthalpy {
    /// Makes an enthalpy from J/kg.
    pub const fn from_joules_per_kg(value: f32) -> Self {
        Self(value)
    }
    /// Reads the enthalpy in J/kg.
    pub const fn joules_per_kg(self) -> f32 {
        self.0
    }
    /// Reads the enthalpy in kJ/kg.
    pub const fn kilojoules_per_kg(self) -> f32 {
        self.0 / 1000.0
    }
}

impl Entropy {
    /// Makes an entropy from J/(kg K).
    pub const fn from_joules_per_kg_k(value: f32) -> Self {
        Self(value)
    }
    /// Reads the entropy in J/(kg K).
    pub const fn joules_per_kg_k(self) -> f32 {
        self.0
    }
    /// Reads the entropy in kJ/(kg K).
    pub const fn kilojoules_per_kg_k(self) -> f32 {
        self.0 / 1000.0
    }
}

impl Density {
    /// Makes a density from kg/m3.
    pub const fn from_kg_per_m3(value: f32) -> Self {
        Self(value)
    }
    /// Reads the density in kg/m3.
    pub const fn kg_per_m3(self) -> f32 {
        self.0
    }
}

/// Standard atmosphere, kPa.
pub(crate) const ATMOSPHERE_KPA: f32 = 101.325;

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    #[test]
    fn the_standard_atmosphere_matches_icao_doc_7488() {
        // ICAO Doc 7488, table 1: 1,600 m 83,523 Pa; 3,000 m 70,108 Pa (from memory, 5 digits).
        assert_relative_eq!(
            Atmosphere::at_altitude_m(1600.0).pressure().pascals(),
            83_523.0,
            max_relative = 2e-4
        );
        assert_relative_eq!(
            Atmosphere::at_altitude_m(3000.0).pressure().pascals(),
            70_108.0,
            max_relative = 2e-4
        );
        assert_eq!(Atmosphere::at_altitude_m(f32::NAN), Atmosphere::SEA_LEVEL);
    }

    #[test]
    fn scales_agree_at_their_fixed_points() {
        assert_relative_eq!(Temperature::from_fahrenheit(32.0).celsius(), 0.0, epsilon = 1e-4);
        assert_relative_eq!(Temperature::from_fahrenheit(-40.0).celsius(), -40.0, epsilon = 1e-4);
        assert_relative_eq!(TemperatureDifference::from_fahrenheit(18.0).kelvins(), 10.0, epsilon = 1e-5);
        assert_relative_eq!(Pressure::from_psi(14.695_95).kilopascals(), 101.325, epsilon = 1e-3);
    }

    #[test]
    fn a_gauge_reads_zero_in_the_open_air_at_any_altitude() {
        for altitude in [0.0, 500.0, 1600.0, 3000.0] {
            let air = Atmosphere::at_altitude_m(altitude);
            assert_eq!(Pressure::from_psi_gauge(0.0, air), air.pressure());
            assert_eq!(air.pressure().bar_gauge(air), 0.0);
        }
    }
}
