//! Refrigerants: opaque constants, lookup by designation, and tables that a caller brings.

use crate::boundary::put;
use crate::status::{RimewiseStatus, RimewiseStatus as Status};
use core::ffi::{c_char, c_void};
use core::mem::{align_of, offset_of, size_of};
use rimewise::quantity::{Pressure, Temperature};
use rimewise::refrigerant::{self, Refrigerant};

/// One refrigerant. Opaque: take the address of a built-in one, look one up, or load one from a table.
// Not repr(transparent), because the header would then name core's type; the assertions below say the same.
#[derive(Debug)]
pub struct RimewiseRefrigerant(pub(crate) Refrigerant<'static>);

const _: () = assert!(offset_of!(RimewiseRefrigerant, 0) == 0);
const _: () = assert!(size_of::<RimewiseRefrigerant>() == size_of::<Refrigerant<'static>>());

/// Memory of the caller for a refrigerant that is loaded from a table. Its content is private.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct RimewiseRefrigerantStorage {
    /// Private.
    pub opaque: [*const c_void; 12],
}

const _: () = assert!(size_of::<RimewiseRefrigerant>() <= size_of::<RimewiseRefrigerantStorage>());
const _: () = assert!(align_of::<RimewiseRefrigerant>() <= align_of::<RimewiseRefrigerantStorage>());

/// Longest designation that is looked up, in bytes.
const LONGEST: usize = 63;

/// A safety class of ANSI/ASHRAE Standard 34: toxicity A (lower) or B (higher), flammability 1 to 3.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewiseSafetyClass {
    /// No source gives one; treat the refrigerant as flammable and toxic.
    NotKnown = 0,
    /// Lower toxicity, no flame propagation.
    A1 = 1,
    /// Lower toxicity, lower flammability, slow flame.
    A2l = 2,
    /// Lower toxicity, flammable.
    A2 = 3,
    /// Lower toxicity, higher flammability.
    A3 = 4,
    /// Higher toxicity, no flame propagation.
    B1 = 5,
    /// Higher toxicity, lower flammability, slow flame.
    B2l = 6,
    /// Higher toxicity, flammable.
    B2 = 7,
    /// Higher toxicity, higher flammability.
    B3 = 8,
}

/// What a refrigerant's table says of the refrigerant itself.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct RimewiseRefrigerantInfo {
    /// The size of this struct; set it before the call.
    pub size: u32,
    /// A RimewiseSafetyClass, 0 where no source gives one.
    pub safety_class: i32,
    /// 1 where a binary pair of the blend had no published parameters and was estimated, else 0.
    pub estimated_pair: i32,
    /// Number of components; 1 for a pure fluid.
    pub component_count: u32,
    /// Molar mass, g/mol.
    pub molar_mass_g_mol: f32,
    /// Critical temperature, degC.
    pub critical_c: f32,
    /// Critical pressure, kPa absolute.
    pub critical_kpa: f32,
    /// Bubble temperature at one standard atmosphere, degC.
    pub normal_boiling_c: f32,
    /// Dew minus bubble temperature at one standard atmosphere, K; 0 for a pure fluid.
    pub glide_k: f32,
    /// Lowest saturation temperature of the table, degC.
    pub temperature_min_c: f32,
    /// Highest saturation temperature of the table, degC.
    pub temperature_max_c: f32,
    /// Lowest pressure that both saturation curves cover, kPa absolute.
    pub pressure_min_kpa: f32,
    /// Highest pressure that both saturation curves cover, kPa absolute.
    pub pressure_max_kpa: f32,
}

// SAFETY: repr(C), begins with its size, 4-byte numbers only.
unsafe impl crate::boundary::Sized4 for RimewiseRefrigerantInfo {
    const FIRST: u32 = 52;
}

/// Reads a text of the caller, at most `LONGEST` bytes.
unsafe fn text<'a>(pointer: *const c_char) -> Result<&'a str, Status> {
    if pointer.is_null() {
        return Err(Status::NullPointer);
    }
    let mut length = 0;
    // SAFETY: the contract says that the text ends with NUL; nothing after it is read.
    while unsafe { *pointer.add(length) } != 0 {
        length += 1;
        if length > LONGEST {
            return Err(Status::UnknownDesignation);
        }
    }
    // SAFETY: the bytes were just read one by one.
    let bytes = unsafe { core::slice::from_raw_parts(pointer.cast::<u8>(), length) };
    core::str::from_utf8(bytes).map_err(|_| Status::UnknownDesignation)
}

/// Finds a built-in refrigerant by its designation or common name, as people write it.
///
/// `designation` ends with NUL: "R404A", "R-404A", "r404a", "404A", "R290", "propane". Writes the refrigerant, which
/// lives as long as the program. Links every built-in table: where the refrigerant is fixed, name its constant
/// instead. Errors: UNKNOWN_DESIGNATION.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_refrigerant_find(
    designation: *const c_char,
    refrigerant: *mut *const RimewiseRefrigerant,
) -> RimewiseStatus {
    // SAFETY: the contract of the header.
    let name = match unsafe { text(designation) } {
        Ok(name) => name,
        Err(status) => return status,
    };
    let Some(found) = refrigerant::find(name) else {
        return Status::UnknownDesignation;
    };
    // SAFETY: the contract of the header; the wrapper holds this and nothing else.
    unsafe { put(refrigerant, core::ptr::from_ref(found).cast::<RimewiseRefrigerant>()) }
}

/// Gives the built-in refrigerant at a position of the list, from 0, in the order of the designations.
///
/// Links every built-in table. Errors: OUT_OF_RANGE past the end, which is how a loop over all ends.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_refrigerant_at(
    position: u32,
    refrigerant: *mut *const RimewiseRefrigerant,
) -> RimewiseStatus {
    let Some(found) = refrigerant::data::ALL.get(position as usize) else {
        return Status::OutOfRange;
    };
    // SAFETY: the contract of the header; the wrapper holds this and nothing else.
    unsafe { put(refrigerant, core::ptr::from_ref(*found).cast::<RimewiseRefrigerant>()) }
}

/// Loads a refrigerant from a table that the property compiler wrote, after checking all of it.
///
/// The table stays where it is (flash or RAM): `table` and `storage` must both outlive every use of the refrigerant,
/// and neither may be changed meanwhile. Writes the refrigerant, whose address is that of `storage`.
/// Errors: NOT_A_TABLE, TABLE_VERSION, TABLE_LENGTH, TABLE_CHECKSUM, TABLE_CONTENT.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_refrigerant_load(
    table: *const u8,
    length: u32,
    storage: *mut RimewiseRefrigerantStorage,
    refrigerant: *mut *const RimewiseRefrigerant,
) -> RimewiseStatus {
    if table.is_null() || storage.is_null() || refrigerant.is_null() {
        return Status::NullPointer;
    }
    if !storage.is_aligned() {
        return Status::OutOfRange;
    }
    // SAFETY: the contract of the header: the bytes are there for as long as the refrigerant is used.
    let bytes: &'static [u8] = unsafe { core::slice::from_raw_parts(table, length as usize) };
    match Refrigerant::from_bytes(bytes) {
        Ok(loaded) => {
            let place = storage.cast::<RimewiseRefrigerant>();
            // SAFETY: the storage is large enough and aligned, see the assertions above.
            unsafe {
                place.write(RimewiseRefrigerant(loaded));
                put(refrigerant, place.cast_const())
            }
        }
        Err(error) => error.into(),
    }
}

/// Tells what a refrigerant is: safety class, critical point, range of its table.
///
/// `info->size` must be set before the call.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_refrigerant_info(
    refrigerant: *const RimewiseRefrigerant,
    info: *mut RimewiseRefrigerantInfo,
) -> RimewiseStatus {
    // SAFETY: the contract of the header.
    unsafe {
        let Some(RimewiseRefrigerant(r)) = refrigerant.as_ref() else {
            return Status::NullPointer;
        };
        let size = match crate::boundary::writable(info) {
            Ok(size) => size,
            Err(status) => return status,
        };
        let (coldest, warmest) = r.temperature_range();
        let (lowest, highest) = r.pressure_range();
        let value = RimewiseRefrigerantInfo {
            size: 0,
            safety_class: r.safety_class().map_or(0, |class| class as i32),
            estimated_pair: i32::from(r.estimated_pair()),
            component_count: r.composition().count() as u32,
            molar_mass_g_mol: r.molar_mass(),
            critical_c: r.critical_temperature().celsius(),
            critical_kpa: r.critical_pressure().kilopascals(),
            normal_boiling_c: r.normal_boiling_point().celsius(),
            glide_k: r.glide().kelvins(),
            temperature_min_c: Temperature::celsius(coldest),
            temperature_max_c: Temperature::celsius(warmest),
            pressure_min_kpa: Pressure::kilopascals(lowest),
            pressure_max_kpa: Pressure::kilopascals(highest),
        };
        crate::boundary::write_sized(info, size, &value);
    }
    Status::Ok
}

/// Copies a text with a NUL behind it into the caller's buffer.
unsafe fn copy(text: &str, buffer: *mut c_char, capacity: u32, length: *mut u32) -> Status {
    if buffer.is_null() || length.is_null() {
        return Status::NullPointer;
    }
    let bytes = text.len();
    // SAFETY: the contract of the header; the buffer is written only where the text and its NUL fit.
    unsafe {
        put(length, bytes as u32);
        if bytes >= capacity as usize {
            return Status::ShortBuffer;
        }
        core::ptr::copy_nonoverlapping(text.as_ptr().cast::<c_char>(), buffer, bytes);
        *buffer.add(bytes) = 0;
    }
    Status::Ok
}

/// Writes a refrigerant's designation, such as "R404A", ended by NUL.
///
/// `capacity` is the size of `buffer` in bytes; 24 hold every built-in designation. Writes `length`, without the NUL.
/// Errors: SHORT_BUFFER, with nothing written but `length`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_refrigerant_designation(
    refrigerant: *const RimewiseRefrigerant,
    buffer: *mut c_char,
    capacity: u32,
    length: *mut u32,
) -> RimewiseStatus {
    // SAFETY: the contract of the header.
    unsafe {
        match refrigerant.as_ref() {
            Some(RimewiseRefrigerant(r)) => copy(r.designation(), buffer, capacity, length),
            None => Status::NullPointer,
        }
    }
}

/// Writes one component of a refrigerant: its designation, ended by NUL, and its mass fraction, 0 to 1.
///
/// `position` counts from 0 to `component_count` - 1. `buffer`, `capacity` and `length` as in
/// rimewise_refrigerant_designation. Errors: OUT_OF_RANGE, SHORT_BUFFER.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_refrigerant_component(
    refrigerant: *const RimewiseRefrigerant,
    position: u32,
    buffer: *mut c_char,
    capacity: u32,
    length: *mut u32,
    mass_fraction: *mut f32,
) -> RimewiseStatus {
    if mass_fraction.is_null() {
        return Status::NullPointer;
    }
    // SAFETY: the contract of the header.
    unsafe {
        let Some(RimewiseRefrigerant(r)) = refrigerant.as_ref() else {
            return Status::NullPointer;
        };
        let Some(component) = r.composition().nth(position as usize) else {
            return Status::OutOfRange;
        };
        match copy(component.name, buffer, capacity, length) {
            Status::Ok => put(mass_fraction, component.mass_fraction),
            status => status,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use rimewise::refrigerant::SafetyClass;

    #[test]
    fn the_safety_classes_have_the_numbers_of_core() {
        use RimewiseSafetyClass as C;
        let ours = [C::A1, C::A2l, C::A2, C::A3, C::B1, C::B2l, C::B2, C::B3];
        for (ours, theirs) in ours.into_iter().zip(SafetyClass::ALL) {
            assert_eq!(ours as i32, theirs as i32);
            assert_eq!(format!("{ours:?}").to_uppercase(), theirs.name());
        }
    }

    #[test]
    fn a_short_buffer_says_how_long_it_must_be() {
        let mut buffer = [7 as c_char; 6];
        let mut length = 0;
        // SAFETY: the buffer is as long as stated.
        unsafe {
            assert_eq!(copy("R404A", buffer.as_mut_ptr(), 5, &mut length), Status::ShortBuffer);
            assert_eq!((length, buffer), (5, [7; 6]));
            assert_eq!(copy("R404A", buffer.as_mut_ptr(), 6, &mut length), Status::Ok);
        }
        assert_eq!((buffer[4], buffer[5]), (b'A' as c_char, 0));
    }
}
