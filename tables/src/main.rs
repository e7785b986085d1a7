//! Compiles the property tables of Rimewise.

fn main() {}
