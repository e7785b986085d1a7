//! What is written from core's lists by `cargo run -p rimewise-schema`.

pub mod fields;
pub mod inputs;
pub mod quantities;
pub mod refrigerants;
pub mod texts;
