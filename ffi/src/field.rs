//! The permanent number of every field of a visit, for errors and warnings.

use crate::boundary::put;
use crate::generated::fields::OTHERS;
use crate::status::{RimewiseStatus, RimewiseStatus as Status};
use core::ffi::{CStr, c_char};
use rimewise::cause::Cause;
use rimewise::field::{Choice, Texts};
use rimewise::measurement::Measurement;
use rimewise::schema::CAUSE_FIELDS;

fn by_name(texts: &Texts, name: &str) -> i32 {
    texts.iter().find(|(_, text)| text.to_bytes() == name.as_bytes()).map_or(0, |(code, _)| *code)
}

fn by_code(texts: &'static Texts, code: i32) -> Option<&'static CStr> {
    texts.iter().find(|(known, _)| *known == code).map(|(_, text)| *text)
}

/// Gives the number of a field by its section and name; 0 where it has none.
pub(crate) fn number(section: &str, name: &str) -> i32 {
    match section {
        // By the names that C holds, so that a meter needs no second table of them.
        "readings" | "observations" => by_name(Measurement::C_NAMES, name),
        "causes" => CAUSE_FIELDS + by_name(Cause::C_NAMES, name),
        _ => {
            let of_section = OTHERS.iter().find(|(path, _)| path.to_bytes() == section.as_bytes());
            of_section.map_or(0, |(_, names)| by_name(names, name))
        }
    }
}

/// Gives the section and the name of a field by its number.
fn names(number: i32) -> Option<(&'static CStr, &'static CStr)> {
    match number {
        1..=99 => Some((c"readings", by_code(Measurement::C_NAMES, number)?)),
        100..=199 => Some((c"observations", by_code(Measurement::C_NAMES, number)?)),
        _ => OTHERS
            .iter()
            .find_map(|(path, names)| by_code(names, number).map(|name| (*path, name)))
            .or_else(|| Some((c"causes", by_code(Cause::C_NAMES, number.checked_sub(CAUSE_FIELDS)?)?))),
    }
}

/// Gives the section and the name of a field of the visit: "readings" and "suction_pressure_kpa".
///
/// `field` is the number in RimewiseInvalid or RimewiseWarning. A reading has the number of its RimewiseMeasurement,
/// and so has an observation; the fields of the system have numbers from 300, those of the uncertainty from 360,
/// the settings of a monitor from 380. A warning may also name a cause: 400 and the number of the RimewiseCause, in the
/// section "causes". A field that stands at the top of the visit has an empty section.
/// Errors: UNKNOWN_CODE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_field_text(
    field: i32,
    section: *mut *const c_char,
    name: *mut *const c_char,
) -> RimewiseStatus {
    if section.is_null() || name.is_null() {
        return Status::NullPointer;
    }
    let Some((section_text, name_text)) = names(field) else {
        return Status::UnknownCode;
    };
    // SAFETY: the contract of the header.
    unsafe {
        put(section, section_text.as_ptr());
        put(name, name_text.as_ptr())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use rimewise::schema::{BESIDES, SECTIONS};

    #[test]
    fn every_field_has_a_number_that_leads_back() {
        let entries = SECTIONS.iter().filter(|part| part.path != "sample");
        let fields = entries.flat_map(|part| part.entries.iter().map(|e| (part.path, e.name, e.code)));
        let besides = BESIDES.iter().map(|(path, name, code, _)| (*path, *name, *code));
        let causes = Cause::ALL.iter().map(|cause| ("causes", cause.name(), CAUSE_FIELDS + cause.code()));
        for (path, name, code) in fields.chain(besides).chain(causes) {
            assert_eq!(number(path, name), code, "{path}.{name}");
            let (section, text) = names(code).expect("a number leads back");
            assert_eq!((section.to_str(), text.to_str()), (Ok(path), Ok(name)));
        }
    }

    #[test]
    fn what_is_no_field_has_no_number() {
        assert_eq!(number("readings", "colour"), 0);
        assert_eq!(number("readings", "superheat_k"), 201, "derived quantities keep their number");
        assert_eq!(names(201), None, "but are no field of a visit");
        assert_eq!(names(-1), None);
    }
}
