//! Refrigerant charge: what is in the machine, what goes in, and what is still in the hoses.
//!
//! What a hose holds, a weigh-in plan, what superheat and subcooling say about the charge, the standing-pressure test,
//! and how a blend keeps its composition.

pub mod composition;
pub mod hose;
pub mod indicator;
pub mod standing;
pub mod weigh_in;
