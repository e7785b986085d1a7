//! Benchmarks of Rimewise: speed, instruction counts and sizes.
//!
//! The library part is the functions that an instruction counter calls, on this machine and on a Cortex-M4F.
#![cfg_attr(target_os = "none", no_std)]

pub mod property;

#[cfg(target_os = "none")]
#[panic_handler]
fn panic(_: &core::panic::PanicInfo<'_>) -> ! {
    loop {}
}
