//! The judge: what is said about a case against what is really so.

pub mod answer;
pub mod continuity;
pub mod extremes;
pub mod guided;
pub mod hard;
pub mod known;
pub mod known_fields;
pub mod mistaken;
pub mod outcome;
pub mod report;
pub mod said;
pub mod sets;
pub mod spoken;
pub mod tally;
pub mod value;
pub mod worse;
