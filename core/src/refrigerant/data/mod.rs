//! The built-in refrigerants. Written by `cargo run --release -p rimewise-tables`; do not edit.

use super::Refrigerant;

/// Every built-in refrigerant, in the order of their designations.
pub static ALL: [&Refrigerant<'static>; 0] = [];

/// Common names of pure refrigerants.
pub(crate) static NAMES: [(&str, &Refrigerant<'static>); 0] = [];
