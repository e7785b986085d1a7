//! The field of a visit that no machine can show, and why.

use crate::field;
use rimewise::field::Unit;
use rimewise::invalid::{ErrorCode, Facts, Invalid};

/// The bit of RimewiseInvalid.valid and RimewiseWarning.valid that says `value` is there.
pub const RIMEWISE_FACT_VALUE: u32 = 1;
/// The bit of RimewiseInvalid.valid that says `min` is there.
pub const RIMEWISE_FACT_MIN: u32 = 2;
/// The bit of RimewiseInvalid.valid that says `max` is there.
pub const RIMEWISE_FACT_MAX: u32 = 4;
/// The bit of RimewiseWarning.valid that says `limit` is there.
pub const RIMEWISE_FACT_LIMIT: u32 = 8;

/// Which field of a visit cannot be used, and why.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct RimewiseInvalid {
    /// The size of this struct; set it before the call.
    pub size: u32,
    /// The field, for rimewise_field_text.
    pub field: i32,
    /// The position in `record` of the readings that hold the field; -1 for the visit itself.
    pub record: i32,
    /// A RimewiseErrorCode.
    pub code: i32,
    /// A RimewiseUnit, of all three numbers.
    pub unit: i32,
    /// RIMEWISE_FACT_VALUE, RIMEWISE_FACT_MIN, RIMEWISE_FACT_MAX.
    pub valid: u32,
    /// The value that was given; for an unknown code the code itself is in the caller's struct.
    pub value: f32,
    /// The lowest value that can be.
    pub min: f32,
    /// The highest value that can be.
    pub max: f32,
}

// SAFETY: repr(C), begins with its size, 4-byte numbers only.
unsafe impl crate::boundary::Sized4 for RimewiseInvalid {
    const FIRST: u32 = 36;
}

/// One bit where a number is there.
pub(crate) const fn bit(number: Option<f32>, bit: u32) -> u32 {
    if number.is_some() { bit } else { 0 }
}

impl RimewiseInvalid {
    fn of(field: i32, record: i32, facts: &Facts) -> Self {
        // What is infinite or NaN does not come out.
        let value = facts.value.filter(|value| value.is_finite());
        Self {
            size: 0,
            field,
            record,
            code: facts.code.code(),
            unit: facts.unit.code(),
            valid: bit(value, RIMEWISE_FACT_VALUE)
                | bit(facts.min, RIMEWISE_FACT_MIN)
                | bit(facts.max, RIMEWISE_FACT_MAX),
            value: value.unwrap_or(0.0),
            min: facts.min.unwrap_or(0.0),
            max: facts.max.unwrap_or(0.0),
        }
    }

    pub(crate) fn unknown_code(field: i32) -> Self {
        Self::of(field, -1, &Facts { unit: Unit::None, ..Facts::of(ErrorCode::UnknownCode) })
    }
}

impl From<Invalid> for RimewiseInvalid {
    fn from(invalid: Invalid) -> Self {
        let field = field::number(invalid.section, invalid.field);
        Self::of(field, invalid.record.map_or(-1, |n| n as i32), &invalid.facts())
    }
}
