//! Diagnostics for small refrigeration machines: from what was measured to what is wrong, and how sure that is.
//!
//! [`diagnose`] takes one [`Visit`] and gives one [`Report`]: the cycle with its uncertainties, what a healthy machine
//! would show here and now, the probability of each cause with the evidence for and against, what to measure next,
//! what is ruled out, the electrical findings, and cautions. Everything in a visit is optional.
//!
//! ```
//! use rimewise::refrigerant::data::R290;
//! use rimewise::{Readings, Visit, diagnose};
//!
//! let readings = Readings {
//!     suction_pressure_kpa: Some(210.0), // absolute
//!     suction_line_c: Some(-4.0),
//!     ..Readings::default()
//! };
//! let report = diagnose(Some(&R290), &Visit { readings, ..Visit::default() })?;
//! let superheat = report.cycle.compressor_superheat_k.expect("both readings are there");
//! assert!((superheat.value - 20.2).abs() < 0.3 && superheat.u < 1.2);
//! assert!(!report.diagnosis.decided, "two readings decide nothing");
//! # Ok::<(), rimewise::Invalid>(())
//! ```
//!
//! # Features
//! `std` (default) links the standard library; `json` (default) reads and writes the JSON contract. Without both the
//! crate is `no_std` and never allocates: [`diagnose_in`] works in memory that the caller owns.
#![cfg_attr(not(feature = "std"), no_std)]
#![forbid(unsafe_code)]

pub mod alarm;
mod answer;
pub mod cause;
pub mod caution;
pub mod charge;
mod check;
pub mod compressor;
pub mod cycle;
pub mod decision;
pub mod diagnosis;
pub mod estimate;
mod expectation;
pub mod expected;
mod exponential;
pub mod field;
pub mod invalid;
pub mod job;
#[cfg(feature = "json")]
pub mod json;
mod machine;
pub mod measurement;
pub mod monitor;
pub mod motor;
mod normal;
pub mod plan;
pub mod quantity;
pub mod readings;
pub mod refrigerant;
pub mod report;
pub mod schema;
mod sort;
mod student_t;
mod symptom;
pub mod system;
pub mod text;
mod triangular;
pub mod verdict;
pub mod warning;

pub use answer::{diagnose, diagnose_in};
pub use check::check;
pub use diagnosis::Workspace;
pub use invalid::Invalid;
pub use readings::{Observations, Readings, Uncertainty, Visit};
pub use refrigerant::Refrigerant;
pub use report::Report;
pub use system::System;

/// Compiles and runs the Rust examples of the README.
#[cfg(doctest)]
#[doc = include_str!("../../README.md")]
pub struct Readme;
