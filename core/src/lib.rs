//! Diagnostics for small refrigeration machines.
#![cfg_attr(not(feature = "std"), no_std)]
#![forbid(unsafe_code)]

mod answer;
pub mod caution;
pub mod charge;
mod check;
pub mod compressor;
pub mod cycle;
pub mod decision;
pub mod diagnosis;
pub mod estimate;
mod expectation;
pub mod field;
pub mod invalid;
#[cfg(feature = "json")]
pub mod json;
mod machine;
pub mod measurement;
pub mod monitor;
pub mod motor;
mod normal;
pub mod quantity;
pub mod readings;
pub mod refrigerant;

pub mod report;
pub mod system;

pub use answer::{diagnose, diagnose_in};
pub use check::check;
pub use diagnosis::Workspace;
pub use invalid::Invalid;
pub use readings::{Observations, Readings, Uncertainty, Visit};
pub use refrigerant::Refrigerant;
pub use report::Report;
pub use system::System;
