//! The driver that is guided by coverage: the target's name stands in RIMEWISE_FUZZ.
#![no_main]

use std::sync::LazyLock;

static TARGET: LazyLock<fn(&[u8])> = LazyLock::new(|| {
    let name = std::env::var("RIMEWISE_FUZZ").unwrap_or_default();
    rimewise_fuzz::find(&name).unwrap_or_else(|| panic!("RIMEWISE_FUZZ names no target: {name}"))
});

libfuzzer_sys::fuzz_target!(|data: &[u8]| TARGET(data));
