//! The property compiler: published equations of state in, compact tables of Rimewise out.
// Matrices read best by their indices.
#![allow(clippy::needless_range_loop)]

pub mod blend_file;
pub mod common;
pub mod compile;
pub mod curve;
pub mod data;
pub mod dome;
pub mod encode;
pub mod environment;
pub mod fit;
pub mod ideal;
pub mod level;
pub mod linear;
pub mod measure;
pub mod mixture;
pub mod output;
pub mod potential;
pub mod pseudo;
pub mod published;
pub mod report;
pub mod saturation;
pub mod stability;
pub mod substance;
pub mod term;
pub mod uncertainty;
