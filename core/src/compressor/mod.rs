//! The compressor: its rating map, its current, its start, its pump-down and its efficiency.

pub mod current;
pub mod efficiency;
pub mod pump_down;
pub mod rating;
pub mod start;
pub mod superheat;
