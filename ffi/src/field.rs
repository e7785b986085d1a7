//! The permanent number of every field of a visit, for errors and warnings.

use core::ffi::{CStr, c_char};
use rimewise::cause::Cause;
use rimewise::measurement::Measurement;

use crate::boundary::put;
use crate::status::{RimewiseStatus, RimewiseStatus as Status};

/// The fields that are not readings or observations: section, name, number.
const OTHERS: &[(&CStr, &CStr, i32)] = &[
    (c"system", c"refrigerant", 300),
    (c"system", c"metering", 301),
    (c"system", c"receiver", 302),
    (c"system", c"suction_pressure_regulator", 303),
    (c"system", c"duty", 304),
    (c"system", c"charge_kg", 305),
    (c"system", c"run_capacitor_tolerance_percent", 306),
    (c"system", c"record", 307),
    (c"system", c"design", 308),
    (c"system", c"compressor", 309),
    (c"system.design", c"space_c", 320),
    (c"system.design", c"ambient_c", 321),
    (c"system.design", c"evaporator_td_k", 322),
    (c"system.design", c"condenser_td_k", 323),
    (c"system.design", c"suction_superheat_k", 324),
    (c"system.design", c"subcooling_k", 325),
    (c"system.design", c"suction_pressure_kpa", 326),
    (c"system.design", c"discharge_pressure_kpa", 327),
    (c"system.compressor", c"rated_load_a", 340),
    (c"system.compressor", c"locked_rotor_a", 341),
    (c"system.compressor", c"rated_v", 342),
    (c"system.compressor", c"phases", 343),
    (c"system.compressor", c"hz", 344),
    (c"system.compressor", c"run_winding_ohm", 345),
    (c"system.compressor", c"start_winding_ohm", 346),
    (c"system.compressor", c"winding_reference_c", 347),
    (c"system.compressor", c"run_capacitor_uf", 348),
    (c"system.compressor", c"start_capacitor_uf", 349),
    (c"uncertainty", c"pressure_percent", 360),
    (c"uncertainty", c"pressure_span_kpa", 361),
    (c"uncertainty", c"line_temperature_k", 362),
    (c"uncertainty", c"air_temperature_k", 363),
    (c"uncertainty", c"current_percent", 364),
    (c"settings", c"rated_load_a", 380),
    (c"settings", c"locked_rotor_a", 381),
    (c"settings", c"rated_v", 382),
    (c"settings", c"suction_pressure_regulator", 383),
    (c"settings", c"pump_down_valve", 384),
];

/// A warning may name a cause of the report: this and the cause's own number.
const CAUSES: i32 = 400;

/// Gives the number of a field by its section and name; 0 where it has none.
pub(crate) fn number(section: &str, name: &str) -> i32 {
    let same = |text: &CStr, wanted: &str| text.to_bytes() == wanted.as_bytes();
    if section == "readings" || section == "observations" {
        // By the names that C holds, so that a meter needs no second table of them.
        return Measurement::ALL.iter().find(|m| same(m.c_name(), name)).map_or(0, |m| m.code());
    }
    if section == "causes" {
        let cause = Cause::ALL.iter().find(|cause| same(cause.c_name(), name));
        return cause.map_or(0, |cause| CAUSES + cause.code());
    }
    OTHERS.iter().find(|(s, n, _)| same(s, section) && same(n, name)).map_or(0, |(_, _, number)| *number)
}

/// Gives the section and the name of a field by its number.
fn names(number: i32) -> Option<(&'static CStr, &'static CStr)> {
    if let Some(measurement) = Measurement::from_code(number) {
        let section = match number {
            0..=99 => c"readings",
            100..=199 => c"observations",
            _ => return None,
        };
        return Some((section, measurement.c_name()));
    }
    if let Some(cause) = number.checked_sub(CAUSES).and_then(Cause::from_code) {
        return Some((c"causes", cause.c_name()));
    }
    OTHERS.iter().find(|(_, _, n)| *n == number).map(|(section, name, _)| (*section, *name))
}

/// Gives the section and the name of a field of the visit: "readings" and "suction_pressure_kpa".
///
/// `field` is the number in RimewiseInvalid or RimewiseWarning. A reading has the number of its RimewiseMeasurement,
/// and so has an observation; the fields of the system have numbers from 300, those of the uncertainty from 360,
/// the settings of a monitor from 380. A warning may also name a cause: 400 and the number of the RimewiseCause, in the
/// section "causes".
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
    use rimewise::readings::{Readings, Uncertainty};
    use rimewise::system::{CompressorPlate, Design};

    #[test]
    fn every_field_has_a_number_of_its_own_that_leads_back() {
        let mut seen = std::collections::HashSet::new();
        let mut check = |section: &str, name: &str| {
            let n = number(section, name);
            assert!(n > 0, "{section}.{name} has no number");
            assert!(seen.insert(n), "{section}.{name} shares {n}");
            let (s, t) = names(n).expect("a number leads back");
            assert_eq!((s.to_str(), t.to_str()), (Ok(section), Ok(name)));
        };
        let sections: [(&str, &[rimewise::field::Field]); 4] = [
            ("readings", Readings::FIELDS),
            ("system.design", Design::FIELDS),
            ("system.compressor", CompressorPlate::FIELDS),
            ("uncertainty", Uncertainty::FIELDS),
        ];
        for (section, fields) in sections {
            for field in fields {
                check(section, field.name);
            }
        }
        for name in ["start_noise", "frost_on_compressor", "sight_glass", "coil_iced"] {
            check("observations", name);
        }
        for name in ["running", "pump_down_valve", "pump_down_ended_by", "line_voltages_v", "line_currents_a"]
        {
            check("readings", name);
        }
        for cause in Cause::ALL {
            check("causes", cause.name());
        }
        for name in ["design", "compressor"] {
            check("system", name);
        }
        for name in ["refrigerant", "metering", "receiver", "suction_pressure_regulator", "duty", "record"] {
            check("system", name);
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
