//! Every function of the C header, called with drawn arguments by a program that `build.rs` writes from the header.

// The functions that the C program calls.
use rimewise_ffi as _;
use std::ffi::{CStr, c_char};

unsafe extern "C" {
    fn rimewise_fuzz_c(data: *const u8, length: usize) -> *const c_char;
}

/// A few calls, one after the other.
pub fn target(data: &[u8]) {
    // SAFETY: the pointer and the length are those of one slice, which the function only reads.
    let complaint = unsafe { rimewise_fuzz_c(data.as_ptr(), data.len()) };
    if !complaint.is_null() {
        // SAFETY: what is not NULL is a text in static memory that ends with NUL.
        let text = unsafe { CStr::from_ptr(complaint) };
        panic!("{}", text.to_string_lossy());
    }
}
