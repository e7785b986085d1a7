//! Refrigerant charge: what a hose holds, a weigh-in plan, what superheat and subcooling say about the charge, the
//! standing-pressure test, and how a blend keeps its composition.

pub mod composition;
pub mod hose;
pub mod indicator;
pub mod standing;
pub mod weigh_in;
