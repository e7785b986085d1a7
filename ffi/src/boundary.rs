//! Reading and writing the caller's memory.

use crate::status::RimewiseStatus as Status;
use core::mem::size_of;
use core::ptr;

/// A struct of the caller that begins with its own size.
///
/// # Safety
/// The struct is `repr(C)`, begins with a `u32` that is its size, and holds only 4-byte numbers.
pub(crate) unsafe trait Sized4: Copy {
    /// The size it had in the first release that had it.
    const FIRST: u32;
}

/// Checks a size that a caller stated for a struct.
fn known_size<T: Sized4>(size: u32) -> Result<usize, Status> {
    let full = size_of::<T>() as u32;
    if size >= T::FIRST && size <= full && size.is_multiple_of(4) {
        Ok(size as usize)
    } else {
        Err(Status::WrongSize)
    }
}

/// Reads a struct; what a caller of an older release does not have stays as in `blank`.
pub(crate) unsafe fn read<T: Sized4>(pointer: *const T, blank: T) -> Result<T, Status> {
    if pointer.is_null() {
        return Err(Status::NullPointer);
    }
    // SAFETY: the contract says that a pointer which is not NULL is valid for the size stated in its first word.
    unsafe {
        let size = known_size::<T>(ptr::read_unaligned(pointer.cast::<u32>()))?;
        let mut value = blank;
        ptr::copy_nonoverlapping(pointer.cast::<u8>(), (&raw mut value).cast::<u8>(), size);
        Ok(value)
    }
}

/// Reads a struct that may be NULL, which then is `blank`.
pub(crate) unsafe fn read_or<T: Sized4>(pointer: *const T, blank: T) -> Result<T, Status> {
    if pointer.is_null() {
        return Ok(blank);
    }
    // SAFETY: as the caller's.
    unsafe { read(pointer, blank) }
}

/// Checks that a struct can be written and gives how many of its bytes the caller has.
pub(crate) unsafe fn writable<T: Sized4>(pointer: *mut T) -> Result<usize, Status> {
    if pointer.is_null() {
        return Err(Status::NullPointer);
    }
    // SAFETY: the contract says that a pointer which is not NULL is valid for the size stated in its first word.
    known_size::<T>(unsafe { ptr::read_unaligned(pointer.cast::<u32>()) })
}

/// Writes as much of a struct as the caller has, its size excepted; `size` comes from [`writable`].
pub(crate) unsafe fn write_sized<T: Sized4>(pointer: *mut T, size: usize, value: &T) {
    // SAFETY: `size` is at least 4 and at most the size of the struct, see `known_size`.
    unsafe {
        let from = ptr::from_ref(value).cast::<u8>();
        ptr::copy_nonoverlapping(from.add(4), pointer.cast::<u8>().add(4), size - 4);
    }
}

/// Fills a struct with `blank` and sets its size to the one that the caller states.
pub(crate) unsafe fn clear<T: Sized4>(pointer: *mut T, size: u32, blank: T) -> Status {
    if pointer.is_null() {
        return Status::NullPointer;
    }
    let bytes = match known_size::<T>(size) {
        Ok(bytes) => bytes,
        Err(status) => return status,
    };
    // SAFETY: the contract says that the pointer is valid for the stated size.
    unsafe {
        write_sized(pointer, bytes, &blank);
        ptr::write_unaligned(pointer.cast::<u32>(), size);
    }
    Status::Ok
}

/// Writes one result, or says that its pointer is NULL.
pub(crate) unsafe fn put<T>(pointer: *mut T, value: T) -> Status {
    if pointer.is_null() {
        return Status::NullPointer;
    }
    // SAFETY: the contract says that a pointer which is not NULL is valid.
    unsafe { ptr::write_unaligned(pointer, value) };
    Status::Ok
}

/// Writes a result or returns the status of the error.
pub(crate) unsafe fn put_result<T, E: Into<Status>>(pointer: *mut T, value: Result<T, E>) -> Status {
    match value {
        // SAFETY: as the caller's.
        Ok(value) => unsafe { put(pointer, value) },
        Err(error) => error.into(),
    }
}

/// Lets only finite numbers out and in.
pub(crate) fn finite(value: f32) -> Result<f32, Status> {
    if value.is_finite() { Ok(value) } else { Err(Status::NotFinite) }
}
