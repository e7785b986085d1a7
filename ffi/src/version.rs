//! The version of the library.

/// Major version; a change breaks callers.
pub const RIMEWISE_VERSION_MAJOR: u32 = 0;
/// Minor version; while the major version is 0, a change may break callers.
pub const RIMEWISE_VERSION_MINOR: u32 = 1;
/// Patch version.
pub const RIMEWISE_VERSION_PATCH: u32 = 0;

/// Gives the version of the library that is linked: major * 65536 + minor * 256 + patch.
///
/// A program built from this header was built for RIMEWISE_VERSION_MAJOR, _MINOR and _PATCH.
#[unsafe(no_mangle)]
pub extern "C" fn rimewise_version() -> u32 {
    RIMEWISE_VERSION_MAJOR << 16 | RIMEWISE_VERSION_MINOR << 8 | RIMEWISE_VERSION_PATCH
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_macros_agree_with_the_package() {
        let numbers = [RIMEWISE_VERSION_MAJOR, RIMEWISE_VERSION_MINOR, RIMEWISE_VERSION_PATCH];
        assert_eq!(numbers.map(|n| n.to_string()).join("."), env!("CARGO_PKG_VERSION"));
        assert_eq!(rimewise_version(), 0x0000_0100);
    }
}
