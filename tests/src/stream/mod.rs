//! A transient model of small machines that writes streams of samples with faults, for the monitor to watch.
//!
//! Lumped masses and temperatures of evaporator, condenser, suction line and compressor, integrated in time; a motor
//! with its start; controls, valves and people that act on a script; gauges, clamps and meters with their lag, offset
//! and correlated noise. It shares no code with the monitor: properties come from the refrigerant's table at the
//! start, everything after is its own, in binary64.
#![allow(clippy::disallowed_methods)]

pub mod csv;
pub mod fleet;
pub mod fluid;
pub mod grade;
pub mod meter;
pub mod plant;
pub mod random;
pub mod recorded;
pub mod scenario;
pub mod truth;
