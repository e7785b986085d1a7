//! Names and sentences by their numbers, each list under a name of its own, so that an image holds what it asks for.

use crate::boundary::put;
use crate::status::{RimewiseStatus, RimewiseStatus as Status};
use core::ffi::c_char;
use rimewise::field::Texts;

/// A list of texts. Opaque: take the address of one, such as &rimewise_cause_names for the names of the contract,
/// &rimewise_cause_en for English and &rimewise_cause_es for Spanish sentences.
#[derive(Debug)]
pub struct RimewiseTexts(pub(crate) &'static Texts);

/// A text ended by NUL, in a static of its own: a linker keeps plain literals that end in NUL all together or not at all.
macro_rules! c_text {
    ($text:literal) => {
        const {
            static BYTES: [u8; concat!($text, "\0").len()] = {
                let mut bytes = [0; concat!($text, "\0").len()];
                bytes.copy_from_slice(concat!($text, "\0").as_bytes());
                bytes
            };
            match core::ffi::CStr::from_bytes_with_nul(&BYTES) {
                Ok(text) => text,
                Err(_) => c"",
            }
        }
    };
}

pub(crate) use c_text;

/// Gives the text of a number of the enum that a list is of, in UTF-8; it lives as long as the program.
///
/// The sentences of RimewiseErrorCode have places in braces, such as {min}, for the members of RimewiseInvalid.
/// Errors: UNKNOWN_CODE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_text(
    texts: *const RimewiseTexts,
    code: i32,
    text: *mut *const c_char,
) -> RimewiseStatus {
    // SAFETY: the contract of the header.
    unsafe {
        let Some(RimewiseTexts(texts)) = texts.as_ref() else {
            return Status::NullPointer;
        };
        match texts.iter().find(|(known, _)| *known == code) {
            Some((_, found)) => put(text, found.as_ptr()),
            None => Status::UnknownCode,
        }
    }
}
