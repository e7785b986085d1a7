//! Checks of the motor, its capacitors, its start gear and its supply.

pub mod balance;
pub mod capacitor;
mod examine;
pub mod finding;
pub mod insulation;
pub mod ohmmeter;
pub mod supply;
pub mod temperature;
pub mod terminals;
pub mod windings;

pub(crate) use examine::examine_start;
pub use examine::{Findings, examine};
