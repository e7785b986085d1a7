//! Numbers the rig needs: a seeded generator, small dense solves and smooth versions of kinked functions.
//!
//! Every transcendental comes from `libm`, so that a seed gives the same visits on every machine.

/// A seeded generator (SplitMix64), one stream a visit.
#[derive(Clone, Debug)]
pub struct Rng(u64);

impl Rng {
    /// A stream of its own for each (seed, index) pair.
    pub fn new(seed: u64, index: u64) -> Rng {
        let mut rng =
            Rng(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) ^ index.wrapping_mul(0xD1B5_4A32_D192_ED03));
        rng.draw();
        rng.draw();
        rng
    }

    /// The next 64 bits.
    pub fn draw(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// Uniform in 0 to 1, the upper end excluded.
    pub fn unit(&mut self) -> f64 {
        (self.draw() >> 11) as f64 / 9_007_199_254_740_992.0
    }

    /// Uniform between two bounds.
    pub fn between(&mut self, lo: f64, hi: f64) -> f64 {
        lo + (hi - lo) * self.unit()
    }

    /// True with the given probability.
    pub fn chance(&mut self, probability: f64) -> bool {
        self.unit() < probability
    }

    /// A whole number below `n`.
    pub fn below(&mut self, n: usize) -> usize {
        (self.unit() * n as f64) as usize
    }

    /// Standard normal, cut at three standard deviations so that no hidden parameter is absurd.
    pub fn normal(&mut self) -> f64 {
        loop {
            let u = 1.0 - self.unit();
            let v = self.unit();
            let z = libm::sqrt(-2.0 * libm::log(u)) * libm::cos(core::f64::consts::TAU * v);
            if z.abs() < 3.0 {
                return z;
            }
        }
    }
}

/// `max(x, 0)` with its corner rounded over a width `w`.
pub fn pos(x: f64, w: f64) -> f64 {
    if x > 40.0 * w {
        x
    } else if x < -40.0 * w {
        0.0
    } else {
        w * libm::log1p(libm::exp(x / w))
    }
}

/// `x` held between two bounds, corners rounded over a width `w`.
pub fn clamp_smooth(x: f64, lo: f64, hi: f64, w: f64) -> f64 {
    lo + pos(x - lo, w) - pos(x - hi, w)
}

/// The larger of two, rounded over a width `w`.
pub fn max_smooth(a: f64, b: f64, w: f64) -> f64 {
    b + pos(a - b, w)
}

/// Goes from 0 to 1 between two bounds with a level start and end.
pub fn step(x: f64, lo: f64, hi: f64) -> f64 {
    let t = ((x - lo) / (hi - lo)).clamp(0.0, 1.0);
    t * t * (3.0 - 2.0 * t)
}

/// `(1 - exp(-r)) / r`, right through zero.
pub fn decay_mean(r: f64) -> f64 {
    if r.abs() < 1e-5 { 1.0 - 0.5 * r } else { -libm::expm1(-r) / r }
}

/// Solves a small dense system by elimination with row exchange; `None` when it is singular.
pub fn solve<const N: usize>(n: usize, a: &mut [[f64; N]; N], b: &mut [f64; N]) -> Option<()> {
    for k in 0..n {
        let mut best = k;
        for r in k + 1..n {
            if a[r][k].abs() > a[best][k].abs() {
                best = r;
            }
        }
        if a[best][k].abs() < 1e-14 || !a[best][k].is_finite() {
            return None;
        }
        a.swap(k, best);
        b.swap(k, best);
        for r in k + 1..n {
            let f = a[r][k] / a[k][k];
            for c in k..n {
                a[r][c] -= f * a[k][c];
            }
            b[r] -= f * b[k];
        }
    }
    for k in (0..n).rev() {
        let mut sum = b[k];
        for c in k + 1..n {
            sum -= a[k][c] * b[c];
        }
        b[k] = sum / a[k][k];
    }
    Some(())
}

/// The root of a function that changes sign between two bounds, by bisection mixed with false position.
pub fn root(mut lo: f64, mut hi: f64, mut f: impl FnMut(f64) -> f64) -> Option<f64> {
    let (mut flo, mut fhi) = (f(lo), f(hi));
    if !(flo * fhi <= 0.0) {
        return None;
    }
    for i in 0..80 {
        let mid = if i % 3 == 2 { 0.5 * (lo + hi) } else { (lo * fhi - hi * flo) / (fhi - flo) };
        let mid = if mid > lo.min(hi) && mid < lo.max(hi) { mid } else { 0.5 * (lo + hi) };
        let fm = f(mid);
        if fm == 0.0 || (hi - lo).abs() < 1e-13 * (1.0 + mid.abs()) {
            return Some(mid);
        }
        if flo * fm < 0.0 {
            hi = mid;
            fhi = fm;
        } else {
            lo = mid;
            flo = fm;
        }
    }
    Some(0.5 * (lo + hi))
}
