//! The compressor's induction motor as its per-phase equivalent circuit, in per-unit of its rated shaft power.

use libm::sqrt;

/// Equivalent circuit.
#[derive(Clone, Copy, Debug)]
pub struct Motor {
    /// Shaft power at per-unit 1, W.
    pub rated_shaft: f64,
    /// Rated voltage, V.
    pub rated_voltage: f64,
    /// Number of phases.
    pub phases: f64,
    /// Stator resistance.
    pub r1: f64,
    /// Rotor resistance.
    pub r2: f64,
    /// Leakage reactance of stator and rotor together.
    pub x: f64,
    /// Magnetising reactance.
    pub xm: f64,
    /// Core loss resistance.
    pub rc: f64,
}

/// A running motor.
#[derive(Clone, Copy, Debug)]
pub struct Running {
    /// Slip, share of synchronous speed.
    pub slip: f64,
    /// Input power, W.
    pub power: f64,
    /// Line current, A.
    pub current: f64,
}

impl Motor {
    /// Runs the motor at a shaft power, W, and voltage, V; `None` when the load stalls it.
    pub fn run(&self, shaft: f64, voltage: f64) -> Option<Running> {
        let v = voltage / self.rated_voltage;
        // Windage and bearings of the motor itself.
        let p = (shaft / self.rated_shaft).max(0.02) + 0.01;
        let a = self.r1 + self.r2;
        let vth = v * self.xm / (self.xm + 0.5 * self.x);
        // p ((a + rm)^2 + x^2) = vth^2 rm; the larger root is the running one.
        let b = 2.0 * a * p - vth * vth;
        let c = p * (a * a + self.x * self.x);
        let disc = b * b - 4.0 * p * c;
        if disc <= 0.0 {
            return None;
        }
        let rm = (-b + sqrt(disc)) / (2.0 * p);
        let slip = self.r2 / (self.r2 + rm);
        // Rotor branch current, then core and magnetising currents beside it.
        let z2 = (a + rm) * (a + rm) + self.x * self.x;
        let (i_re, i_im) = (vth * (a + rm) / z2, -vth * self.x / z2);
        let core = v / self.rc;
        let (re, im) = (i_re + core, i_im - v / self.xm);
        let amps = sqrt(re * re + im * im);
        let base_current = self.rated_shaft / (self.phases_factor() * self.rated_voltage);
        Some(Running { slip, power: v * re * self.rated_shaft, current: amps * base_current })
    }

    fn phases_factor(&self) -> f64 {
        if self.phases > 2.0 { sqrt(3.0) } else { 1.0 }
    }
}
