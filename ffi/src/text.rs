//! What a status and a caution say, as text.

use crate::boundary::put;
use crate::status::{RimewiseStatus, RimewiseStatus as Status};
use core::ffi::c_char;

/// Gives a status as a short English text that lives as long as the program.
///
/// Errors: UNKNOWN_CODE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_status_text(status: i32, text: *mut *const c_char) -> RimewiseStatus {
    match Status::ALL.iter().find(|known| **known as i32 == status) {
        // SAFETY: the contract of the header.
        Some(known) => unsafe { put(text, known.text().as_ptr()) },
        None => Status::UnknownCode,
    }
}

/// Gives the sentence of a RimewiseCautionCode, for the person on site, as text that lives as long as the program.
///
/// Errors: UNKNOWN_CODE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_caution_text(code: i32, text: *mut *const c_char) -> RimewiseStatus {
    match rimewise::caution::CautionCode::from_code(code) {
        // SAFETY: the contract of the header.
        Some(known) => unsafe { put(text, known.c_sentence().as_ptr()) },
        None => Status::UnknownCode,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_status_has_a_text_and_a_number_of_its_own() {
        let numbers: std::collections::HashSet<i32> = Status::ALL.iter().map(|s| *s as i32).collect();
        assert_eq!(numbers.len(), Status::ALL.len());
        assert!(Status::ALL.iter().all(|s| !s.text().is_empty()));
    }
}
