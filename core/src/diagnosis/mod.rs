//! From readings to the probability of each cause.

pub mod cause;
