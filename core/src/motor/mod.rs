//! Checks of the motor, its capacitors and its supply.

pub mod finding;
