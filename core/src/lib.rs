//! Diagnostics for small refrigeration machines.
#![cfg_attr(not(feature = "std"), no_std)]
#![forbid(unsafe_code)]

pub mod caution;
pub mod charge;
pub mod compressor;
pub mod cycle;
pub mod diagnosis;
pub mod estimate;
pub mod field;
pub mod invalid;
pub mod measurement;
pub mod motor;
mod normal;
pub mod quantity;
pub mod refrigerant;
pub mod readings;

pub mod report;
pub mod system;
