//! Checks of the motor, its capacitors, its start gear and its supply.

pub mod balance;
pub mod capacitor;
mod examine;
pub mod finding;
pub mod impedance;
pub mod insulation;
pub mod ohmmeter;
pub mod start_gear;
pub mod supply;
pub mod temperature;
pub mod terminals;
pub mod windings;

pub use examine::{Findings, examine};
