//! Memory that one part of a diagnosis after the other writes anew.

use super::next_measurement::Predictive;
use super::screen::Screened;
use crate::symptom::CHANNELS;

/// What does not live at the same time.
#[derive(Clone, Debug)]
#[allow(clippy::large_enum_variant)] // They are about as large, and lie over each other on purpose.
#[repr(u8)] // Memory of zeros is the first of them.
pub(crate) enum Scratch {
    /// While the hypotheses are weighed.
    Screened(Screened),
    /// While what everything would tell is summed.
    Predictive([Predictive; CHANNELS]),
}

impl Scratch {
    pub(crate) const NEW: Self = Self::Screened(Screened::NEW);

    /// Room for the pairs' first look; what was there is lost.
    // Never inlined, nor the other: what is written goes over the stack, and must not stay there while all is weighed.
    #[inline(never)]
    pub(super) fn screened(&mut self) -> Option<&mut Screened> {
        if !matches!(self, Self::Screened(_)) {
            *self = Self::NEW;
        }
        match self {
            Self::Screened(screened) => Some(screened),
            Self::Predictive(_) => None,
        }
    }
    /// Room for what every reading would show; what was there is lost.
    #[inline(never)]
    pub(super) fn predictive(&mut self) -> Option<&mut [Predictive; CHANNELS]> {
        *self = Self::Predictive([[(0.0, 1.0); super::kept::KEPT]; CHANNELS]);
        match self {
            Self::Predictive(predictive) => Some(predictive),
            Self::Screened(_) => None,
        }
    }
}
