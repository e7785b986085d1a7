//! How far a machine is from what is expected of it, channel by channel.

mod channel;
mod deviation;
mod discrepancy;
mod instrument;

pub(crate) use channel::*;
pub(crate) use deviation::{CONDITION, CONDITIONS, Conditions, Deviation};
pub(crate) use discrepancy::{DISCREPANCY, NEAR_DESIGN_K, OFF_DESIGN};
#[cfg(test)]
pub(crate) use instrument::BIAS_U_K;
pub(crate) use instrument::Measured;
