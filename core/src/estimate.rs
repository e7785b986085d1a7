//! A value with its standard uncertainty.

/// A value with its standard uncertainty (k = 1), both in the unit of the name they stand under.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Estimate {
    /// The value.
    pub value: f32,
    /// The standard uncertainty.
    pub u: f32,
}

impl Estimate {
    /// Makes an estimate, or nothing where either number is not finite.
    pub fn new(value: f32, u: f32) -> Option<Self> {
        (value.is_finite() && u.is_finite()).then_some(Self { value, u })
    }
}
