//! The rig: a simulator of machines with faults, and the judge of what is said about them.
//!
//! It shares nothing with the library's own model of a machine but the property tables.

pub mod air;
pub mod compressor;
pub mod cycle;
pub mod exchanger;
pub mod fault;
pub mod fleet;
pub mod grader;
pub mod machine;
pub mod math;
pub mod metering;
pub mod motor;
pub mod props;
pub mod pump_down;
pub mod sample;
pub mod set;
pub mod solve;
pub mod unit;
pub mod visit;
