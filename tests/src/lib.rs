//! Host-only tests that span the crates of Rimewise.

pub mod rig;
pub mod stream;
