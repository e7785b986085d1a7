//! A value with its standard uncertainty, as C sees it.

use crate::boundary::put;
use crate::status::RimewiseStatus as Status;
use rimewise::estimate::Estimate;

/// A value with its standard uncertainty (k = 1), both in the unit of the name they stand under.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct RimewiseEstimate {
    /// The value; 0 where the bit in the valid mask is clear.
    pub value: f32,
    /// The standard uncertainty; 0 where the bit in the valid mask is clear.
    pub u: f32,
}

impl From<Estimate> for RimewiseEstimate {
    fn from(Estimate { value, u }: Estimate) -> Self {
        Self { value, u }
    }
}

impl From<RimewiseEstimate> for Estimate {
    fn from(RimewiseEstimate { value, u }: RimewiseEstimate) -> Self {
        Self { value, u }
    }
}

impl RimewiseEstimate {
    /// Writes what a calculation gave; where it gave nothing, an input was out of its range.
    pub(crate) unsafe fn put(pointer: *mut Self, estimate: Option<Estimate>) -> Status {
        match estimate {
            // SAFETY: as the caller's.
            Some(estimate) => unsafe { put(pointer, estimate.into()) },
            None => Status::OutOfRange,
        }
    }
}

/// Collects estimates and the mask of those that are there.
pub(crate) struct Collector {
    pub(crate) valid: u32,
    next: u32,
}

impl Collector {
    pub(crate) const fn new() -> Self {
        Self { valid: 0, next: 1 }
    }
    /// Takes the next estimate in the order of the bits.
    pub(crate) fn take(&mut self, estimate: Option<Estimate>) -> RimewiseEstimate {
        let bit = self.next;
        self.next <<= 1;
        match estimate {
            Some(Estimate { value, u }) => {
                self.valid |= bit;
                RimewiseEstimate { value, u }
            }
            None => RimewiseEstimate { value: 0.0, u: 0.0 },
        }
    }
}
