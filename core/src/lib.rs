//! Diagnostics for small refrigeration machines.
#![cfg_attr(not(feature = "std"), no_std)]
#![forbid(unsafe_code)]

pub mod quantity;
