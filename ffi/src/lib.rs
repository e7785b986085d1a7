//! The C API of Rimewise: conversion and checks only; everything is decided in core.
//!
//! The header `include/rimewise.h` is the manual. It is written from this crate by
//! `cargo run -p rimewise-schema`, whose configuration holds the contract that stands at the
//! header's top.
#![cfg_attr(target_os = "none", no_std)]
// The safety contract of every function is the one contract of the header: pointers are NULL or valid.
#![allow(clippy::missing_safety_doc)]

mod boundary;
pub mod charge;
pub mod compressor;
pub mod cycle;
pub mod decision;
pub mod diagnose;
pub mod estimate;
pub mod field;
#[rustfmt::skip]
pub mod generated;
pub mod input;
pub mod invalid;
pub mod monitor;
pub mod motor;
pub mod plan;
pub mod property;
pub mod refrigerant;
pub mod report;
pub mod status;
pub mod text;
pub mod unit;
pub mod version;

/// Where a panic would end on a meter. Nothing calls it: a test shows that a release image does not hold it.
///
/// It is a function of its own, never inlined, so that a reachable panic could not hide as a bare loop.
#[cfg(target_os = "none")]
#[inline(never)]
#[unsafe(no_mangle)]
extern "C" fn rimewise_panicked() -> ! {
    loop {}
}

#[cfg(target_os = "none")]
#[panic_handler]
fn panic(_: &core::panic::PanicInfo<'_>) -> ! {
    rimewise_panicked()
}
