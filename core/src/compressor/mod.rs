//! The compressor: its rating map, its current, its start and its pump-down.

pub mod current;
pub mod pump_down;
pub mod rating;
pub mod start;
