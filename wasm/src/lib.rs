//! The npm package of Rimewise: conversion only. What is exported here is wrapped by `js/index.ts`, which adds types
//! and errors; every answer comes from the library.

mod answer;
mod monitor;
mod quantity;
mod refrigerant;
mod trade;

pub use monitor::*;
pub use quantity::*;
pub use refrigerant::*;
pub use trade::*;

use wasm_bindgen::prelude::wasm_bindgen;

/// Answers are a few short-lived strings, so a free list does; it is smaller than the standard allocator by a
/// percent of what every page loads.
#[cfg(target_arch = "wasm32")]
#[global_allocator]
// SAFETY: the package's module has one thread.
static HEAP: lol_alloc::AssumeSingleThreaded<lol_alloc::FreeListAllocator> =
    unsafe { lol_alloc::AssumeSingleThreaded::new(lol_alloc::FreeListAllocator::new()) };

/// Answers one visit (a line of JSON) with one report or error (a line of JSON).
#[wasm_bindgen(js_name = answerVisit)]
pub fn answer_visit(line: &str) -> String {
    rimewise::json::answer_visit(line)
}

/// Answers one property question (a line of JSON) with one answer or error (a line of JSON).
#[wasm_bindgen(js_name = answerProperty)]
pub fn answer_property(line: &str) -> String {
    rimewise::json::answer_property(line)
}

/// Gives the library's version.
#[wasm_bindgen]
pub fn version() -> String {
    env!("CARGO_PKG_VERSION").to_owned()
}
