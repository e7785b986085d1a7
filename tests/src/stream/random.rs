//! Pseudo-random numbers that are the same on every machine.

/// A generator of 64 bits of state (splitmix64: Steele, Lea and Flood, OOPSLA 2014, from memory).
#[derive(Clone, Debug)]
pub struct Random(u64);

impl Random {
    /// Makes the generator of a seed.
    pub fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) ^ 0x1F83_D9AB_FB41_BD6B)
    }
    fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }
    /// Draws evenly from 0 to 1.
    pub fn even(&mut self) -> f64 {
        (self.bits() >> 11) as f64 / (1u64 << 53) as f64
    }
    /// Draws evenly between two numbers.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.even()
    }
    /// Draws from the standard normal distribution.
    pub fn normal(&mut self) -> f64 {
        let (u, v) = (self.even().max(1e-300), self.even());
        (-2.0 * u.ln()).sqrt() * (std::f64::consts::TAU * v).cos()
    }
    /// Tells whether something of a probability happens.
    pub fn happens(&mut self, probability: f64) -> bool {
        self.even() < probability
    }
    /// Draws one of several.
    pub fn pick<T: Copy>(&mut self, of: &[T]) -> T {
        of[(self.even() * of.len() as f64) as usize]
    }
}

/// Noise that remembers itself for a time: a first-order autoregression in continuous time.
#[derive(Clone, Debug)]
pub struct Wander {
    spread: f64,
    seconds: f64,
    value: f64,
}

impl Wander {
    /// Makes the noise of a standard deviation and a memory in seconds.
    pub fn new(spread: f64, seconds: f64, random: &mut Random) -> Self {
        Self { spread, seconds, value: spread * random.normal() }
    }
    /// Moves on by a time and gives the value.
    pub fn step(&mut self, seconds: f64, random: &mut Random) -> f64 {
        let keep = (-seconds / self.seconds).exp();
        self.value = keep * self.value + self.spread * (1.0 - keep * keep).sqrt() * random.normal();
        self.value
    }
}
