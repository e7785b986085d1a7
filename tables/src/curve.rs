//! Fits the saturation curves of a table to a substance.

use crate::linear::minimax;
use crate::saturation::{Kind, Specification};
use crate::substance::Substance;
use libm::cos;
use rimewise::refrigerant::table::STEP;

/// A piece of a saturation curve, quantised.
#[derive(Clone, Copy, Debug)]
pub struct Piece {
    /// Value and slope at the middle.
    pub low: [f32; 2],
    /// Coefficients 2 to 5 in steps of the format.
    pub high: [i16; 4],
}

/// A fitted saturation curve.
#[derive(Clone, Debug)]
pub struct Curve {
    /// Binary logarithm of the pieces in the last octave.
    pub resolution: u32,
    /// What brings a pressure to a share of the highest, 1/Pa.
    pub scale: f32,
    /// Stored exponent of the first piece.
    pub first: u32,
    /// The pieces.
    pub pieces: Vec<Piece>,
    /// Lowest and highest pressure, Pa.
    pub range: (f64, f64),
}

impl Curve {
    /// Makes the words that index the pieces, of the octaves below the last and of the last; none when cut too fine.
    pub fn index_words(&self) -> Option<[u16; 2]> {
        let half = 0.5f32.to_bits() >> 23;
        let fine = (half << self.resolution) - (half - self.first);
        let word = |shift: u32, base: u32| u16::try_from(32 * base + shift).ok();
        Some([word(23, self.first)?, word(23 - self.resolution, fine)?])
    }
}

/// Multiplies two polynomials.
fn times(a: &[f64], b: &[f64]) -> Vec<f64> {
    let mut c = vec![0.0; a.len() + b.len() - 1];
    for (i, x) in a.iter().enumerate() {
        for (j, y) in b.iter().enumerate() {
            c[i + j] += x * y;
        }
    }
    c
}

/// Fits one curve between two temperatures, one piece per octave of pressure or part of it.
pub fn curve(substance: &Substance, kind: Kind, resolution: u32) -> Result<Curve, String> {
    let end = |t: f64| {
        substance
            .saturated(kind, Specification::Temperature(t))
            .map(|s| s.p)
            .ok_or_else(|| format!("no {kind:?} point at {t:.2} K"))
    };
    let range = (end(substance.t_min)?, end(substance.t_max)?);
    // A few roundings below one, so that the highest pressure itself stays in the last piece.
    let scale = ((1.0 - 4.0 * f64::from(f32::EPSILON)) / range.1) as f32;
    let lowest = range.0 * f64::from(scale);
    let first = (lowest as f32).to_bits() >> 23;
    let half = 0.5f32.to_bits() >> 23;
    if first > half {
        return Err(format!("{kind:?} curve: less than an octave of pressure"));
    }
    // Starts of the pieces as shares of the highest pressure: octaves, then the parts of the last one.
    let mut starts: Vec<f64> = (first..half).map(|e| f64::from(f32::from_bits(e << 23))).collect();
    let parts = 1u32 << resolution;
    starts.extend((0..=parts).map(|k| 0.5 + 0.5 * f64::from(k) / f64::from(parts)));
    let mut pieces = Vec::new();
    for ends in starts.windows(2) {
        let (start, stop) = (ends[0] / f64::from(scale), ends[1] / f64::from(scale));
        let (a, b) = (start.max(range.0), stop.min(range.1));
        if a < b {
            pieces.push(piece(substance, kind, start, stop - start, a, b)?);
        } else {
            return Err(format!("{kind:?} curve: an empty piece"));
        }
    }
    Ok(Curve { resolution, scale, first, pieces, range })
}

fn piece(substance: &Substance, kind: Kind, start: f64, width: f64, a: f64, b: f64) -> Result<Piece, String> {
    const NODES: usize = 18;
    let temperature = |p: f64| {
        substance
            .saturated(kind, Specification::Pressure(p))
            .map(|s| s.t)
            .ok_or_else(|| format!("no {kind:?} point at {p:.1} Pa"))
    };
    let place = |p: f64| 2.0 * (p - start) / width - 1.0;
    let (ua, ub) = (place(a), place(b));
    let (ta, tb) = (temperature(a)?, temperature(b)?);
    let local = |u: f64| (2.0 * u - ua - ub) / (ub - ua);
    // T = line through the ends + (u - ua)(u - ub) (polynomial in the local place).
    let (mut rows, mut target) = (Vec::new(), Vec::new());
    for k in 0..NODES {
        let x = cos(core::f64::consts::PI * (k as f64 + 0.5) / NODES as f64);
        let u = 0.5 * (ua + ub) + 0.5 * (ub - ua) * x;
        let t = temperature(start + 0.5 * (u + 1.0) * width)?;
        let bump = (u - ua) * (u - ub);
        let mut row = Vec::new();
        let mut power = bump;
        for _ in 0..4 {
            row.push(power);
            power *= local(u);
        }
        rows.push(row);
        target.push(t - (ta + (tb - ta) * (u - ua) / (ub - ua)));
    }
    // A short piece at an end of the curve may need coefficients beyond the format: then a lower degree serves it.
    let (scale, shift) = (2.0 / (ub - ua), -(ua + ub) / (ub - ua));
    let mut high = None;
    for terms in (0..=4).rev() {
        let some: Vec<Vec<f64>> = rows.iter().map(|row| row.iter().take(terms).copied().collect()).collect();
        let mut inner = vec![0.0; terms];
        let mut power = vec![1.0];
        let fit = if terms == 0 { Vec::new() } else { minimax(&some, &target, 12) };
        for c in &fit {
            for (i, p) in power.iter().enumerate() {
                inner[i] += c * p;
            }
            power = times(&power, &[shift, scale]);
        }
        let full = if terms == 0 { Vec::new() } else { times(&inner, &times(&[-ua, 1.0], &[-ub, 1.0])) };
        let steps: [f64; 4] =
            core::array::from_fn(|k| libm::round(full.get(k + 2).copied().unwrap_or(0.0) / f64::from(STEP)));
        if steps.iter().all(|s| s.abs() <= 32767.0) {
            high = Some(steps.map(|s| s as i16));
            break;
        }
    }
    let high =
        high.ok_or_else(|| format!("{kind:?} curve: a piece at {start:.0} Pa does not fit the format"))?;
    // The ends are met exactly again after rounding.
    let tail = |u: f64| {
        let c: Vec<f64> = high.iter().map(|h| f64::from(*h) * f64::from(STEP)).collect();
        u * u * (c[0] + u * (c[1] + u * (c[2] + u * c[3])))
    };
    let (ra, rb) = (ta - tail(ua), tb - tail(ub));
    let slope = (rb - ra) / (ub - ua);
    Ok(Piece { low: [(ra - slope * ua) as f32, slope as f32], high })
}
