//! Makes numbers and choices of bytes, so that a small change of the bytes is a small change of the input.

/// Numbers that break careless code, and some that instruments give.
const EDGES: [f32; 20] = [
    f32::NAN,
    f32::INFINITY,
    f32::NEG_INFINITY,
    0.0,
    -0.0,
    1.0e-45,
    -1.0e-45,
    f32::MIN_POSITIVE,
    f32::MAX,
    f32::MIN,
    1.0e30,
    1.0e-30,
    1.0,
    -1.0,
    -273.15,
    100.0,
    101.325,
    230.0,
    -20.0,
    25.0,
];

/// Bytes that are read from the front; behind their end there are zeros.
pub struct Bytes<'a>(pub &'a [u8]);

impl<'a> Bytes<'a> {
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    pub fn byte(&mut self) -> u8 {
        match self.0.split_first() {
            Some((first, rest)) => {
                self.0 = rest;
                *first
            }
            None => 0,
        }
    }

    pub fn word(&mut self) -> u32 {
        u32::from_le_bytes([self.byte(), self.byte(), self.byte(), self.byte()])
    }

    /// A whole number below `count`.
    pub fn below(&mut self, count: usize) -> usize {
        let drawn = if count > 256 {
            usize::from(self.byte()) * 256 + usize::from(self.byte())
        } else {
            self.byte().into()
        };
        drawn % count.max(1)
    }

    /// True once in `count` times.
    pub fn once_in(&mut self, count: u8) -> bool {
        self.byte() % count.max(1) == count.max(1) - 1
    }

    /// A number of a range, in 65,536 steps.
    pub fn within(&mut self, low: f32, high: f32) -> f32 {
        let share = f32::from(u16::from_le_bytes([self.byte(), self.byte()])) / 65535.0;
        low + share * (high - low)
    }

    /// Any number: mostly of the range, now and then an edge or any 32 bits.
    pub fn number(&mut self, low: f32, high: f32) -> f32 {
        match self.byte() {
            0..=7 => EDGES[self.below(EDGES.len())],
            8..=11 => f32::from_bits(self.word()),
            _ => self.within(low, high),
        }
    }
}
