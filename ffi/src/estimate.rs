//! A value with its standard uncertainty, as C sees it.

use crate::boundary::put;
use crate::status::RimewiseStatus as Status;
use rimewise::estimate::Estimate;
use rimewise::measurement::Measurement;

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

/// Writes quantities behind the mask of those that are there; what is absent, and the room that is left, is 0.
pub(crate) unsafe fn give_quantities(at: *mut u32, room: usize, all: &[(Measurement, Option<Estimate>)]) {
    let mut valid = 0;
    for n in 0..room {
        let estimate = all.get(n).and_then(|(_, estimate)| *estimate);
        valid |= u32::from(estimate.is_some()) << n;
        let Estimate { value, u } = estimate.unwrap_or(Estimate { value: 0.0, u: 0.0 });
        // SAFETY: the caller's struct has room for the mask and `room` pairs; it may be unaligned.
        unsafe {
            at.add(1 + 2 * n).write_unaligned(value.to_bits());
            at.add(2 + 2 * n).write_unaligned(u.to_bits());
        }
    }
    // SAFETY: as above.
    unsafe { at.write_unaligned(valid) };
}
