//! Finding a refrigerant by its designation as people write it.

use super::Refrigerant;
use super::data::{ALL, NAMES};

/// Longest designation or name looked up, in letters and digits.
const LONGEST: usize = 40;

/// Finds a built-in refrigerant by its designation or common name, as people write it.
///
/// Upper or lower case, with or without the R, hyphens, spaces and brackets: `R404A`, `R-404A`, `r 404a`, `404A`,
/// `R1234ze(E)`, `propane`, `CO2`. Links every built-in table.
pub fn find(designation: &str) -> Option<&'static Refrigerant<'static>> {
    let mut buffer = [0u8; LONGEST];
    let key = normal(designation, &mut buffer)?;
    let stored = |text: &str, key: &[u8]| {
        let mut buffer = [0u8; LONGEST];
        normal(text, &mut buffer).is_some_and(|name| name == key)
    };
    NAMES
        .iter()
        .find(|(name, _)| stored(name, key))
        .map(|(_, refrigerant)| *refrigerant)
        .or_else(|| ALL.iter().copied().find(|r| stored(r.designation(), key)))
}

/// Keeps letters in lower case and digits, and drops a leading r before a digit, c or e.
fn normal<'b>(text: &str, buffer: &'b mut [u8; LONGEST]) -> Option<&'b [u8]> {
    let mut length = 0;
    for byte in text.bytes() {
        let byte = byte.to_ascii_lowercase();
        match byte {
            b'a'..=b'z' | b'0'..=b'9' => {
                *buffer.get_mut(length)? = byte;
                length += 1;
            }
            b' ' | b'-' | b'_' | b'(' | b')' | b',' | b'.' | b'/' => {}
            _ => return None,
        }
    }
    let key = buffer.get(..length)?;
    let key = match key {
        [b'r', b'0'..=b'9', ..] | [b'r', b'c' | b'e', b'0'..=b'9', ..] => key.get(1..)?,
        _ => key,
    };
    if key.is_empty() { None } else { Some(key) }
}
