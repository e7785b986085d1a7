//! Reading and writing the caller's memory.

use crate::input::RIMEWISE_NOT_KNOWN;
use crate::status::RimewiseStatus as Status;
use core::mem::size_of;
use core::ptr;
use rimewise::field::Value;

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

/// Writes one member of a struct, where the caller's struct reaches to its end.
pub(crate) unsafe fn write_member<T>(at: *mut u8, size: usize, offset: usize, value: T) {
    if offset + size_of::<T>() <= size {
        // SAFETY: the caller's struct has `size` bytes; it may be unaligned.
        unsafe { ptr::write_unaligned(at.add(offset).cast::<T>(), value) };
    }
}

/// How a member of an input stands in the caller's struct.
#[derive(Clone, Copy)]
pub(crate) enum Take {
    /// A number, NaN where it is not known.
    Number,
    /// Three numbers, all NaN where they are not known.
    Three,
    /// 0 or 1.
    Flag,
    /// The number of a choice.
    Code,
    /// One bit for each of several choices.
    Bits,
}

impl Take {
    const fn words(self) -> usize {
        if matches!(self, Self::Three) { 3 } else { 1 }
    }
}

/// A member of an input: the permanent number of its field, and where that stands in core.
pub(crate) struct Slot {
    pub(crate) code: i16,
    pub(crate) part: u8,
    pub(crate) position: u8,
    pub(crate) take: Take,
}

/// An input of the caller: its size, then one word for each number, in the order of its slots.
///
/// # Safety
/// The struct is `repr(C)`, begins with its size, and holds the words of its slots and nothing else.
pub(crate) unsafe trait Input: Copy {
    /// The size it had in the first release that had it.
    const FIRST: u32;
    /// Its members.
    const SLOTS: &'static [Slot];
    /// What core takes.
    type Core;
    /// Reads a member; nothing where it is not known.
    fn get(core: &Self::Core, slot: &Slot) -> Option<Value>;
    /// Writes a member; false where core knows no such choice.
    fn set(core: &mut Self::Core, slot: &Slot, value: Option<Value>) -> bool;
}

/// Why an input cannot be read.
pub(crate) enum Fault {
    /// The struct itself.
    Status(Status),
    /// The number in this field stands for nothing.
    Field(i32),
}

/// A number, unless it is NaN.
pub(crate) fn number(bits: u32) -> Option<f32> {
    // By its bits: comparing numbers costs a call where there is no floating-point unit.
    if bits << 1 > 0xFF00_0000 { None } else { Some(f32::from_bits(bits)) }
}

/// The size that a caller states for an input.
pub(crate) unsafe fn input_size<T: Input>(pointer: *const T) -> Result<usize, Status> {
    if pointer.is_null() {
        return Err(Status::NullPointer);
    }
    // SAFETY: the contract says that a pointer which is not NULL is valid for the size stated in its first word.
    stated::<T>(unsafe { ptr::read_unaligned(pointer.cast::<u32>()) })
}

fn stated<T: Input>(size: u32) -> Result<usize, Status> {
    let known = size >= T::FIRST && size <= size_of::<T>() as u32 && size.is_multiple_of(4);
    if known { Ok(size as usize) } else { Err(Status::WrongSize) }
}

/// Reads an input up to the caller's size; NULL and what an older caller does not have change nothing.
pub(crate) unsafe fn take<T: Input>(pointer: *const T, core: &mut T::Core) -> Result<(), Fault> {
    if pointer.is_null() {
        return Ok(());
    }
    // SAFETY: as the caller's.
    let size = unsafe { input_size(pointer) }.map_err(Fault::Status)?;
    let mut at = 1;
    for slot in T::SLOTS {
        let next = at + slot.take.words();
        if next * 4 > size {
            break;
        }
        // SAFETY: the word lies within the caller's size.
        let word = |n: usize| unsafe { ptr::read_unaligned(pointer.cast::<u32>().add(at + n)) };
        let code = word(0) as i32;
        let value = match slot.take {
            Take::Number => number(word(0)).map(Value::Number),
            Take::Three => {
                let all = [word(0), word(1), word(2)];
                let known = all.iter().any(|bits| number(*bits).is_some());
                known.then(|| Value::Three(all.map(f32::from_bits)))
            }
            _ if code == RIMEWISE_NOT_KNOWN => None,
            Take::Flag if code == 0 || code == 1 => Some(Value::Flag(code == 1)),
            Take::Flag => return Err(Fault::Field(slot.code.into())),
            Take::Code => Some(Value::Choice(code)),
            Take::Bits => Some(Value::Set(code as u32)),
        };
        if !T::set(core, slot, value) {
            return Err(Fault::Field(slot.code.into()));
        }
        at = next;
    }
    Ok(())
}

/// Writes what core has into an input of the caller, up to its size; `core` of nothing says that nothing is known.
pub(crate) unsafe fn give<T: Input>(pointer: *mut T, size: usize, core: Option<&T::Core>) {
    let mut at = 1;
    for slot in T::SLOTS {
        let next = at + slot.take.words();
        if next * 4 > size {
            break;
        }
        // SAFETY: the word lies within the caller's size.
        let put =
            |n: usize, word: u32| unsafe { ptr::write_unaligned(pointer.cast::<u32>().add(at + n), word) };
        match core.and_then(|core| T::get(core, slot)) {
            Some(Value::Number(value)) => put(0, value.to_bits()),
            Some(Value::Three([a, b, c])) => {
                put(0, a.to_bits());
                put(1, b.to_bits());
                put(2, c.to_bits());
            }
            Some(Value::Flag(flag)) => put(0, flag.into()),
            Some(Value::Choice(code)) => put(0, code as u32),
            Some(Value::Set(bits)) => put(0, bits),
            None => {
                let blank = match slot.take {
                    Take::Number | Take::Three => f32::NAN.to_bits(),
                    _ => RIMEWISE_NOT_KNOWN as u32,
                };
                for n in 0..slot.take.words() {
                    put(n, blank);
                }
            }
        }
        at = next;
    }
}

/// Fills an input with what is not known and sets its size to the one that the caller states.
pub(crate) unsafe fn clear<T: Input>(pointer: *mut T, size: u32) -> Status {
    if pointer.is_null() {
        return Status::NullPointer;
    }
    match stated::<T>(size) {
        Ok(bytes) => {
            // SAFETY: the contract says that the pointer is valid for the stated size.
            unsafe {
                give(pointer, bytes, None);
                ptr::write_unaligned(pointer.cast::<u32>(), size);
            }
            Status::Ok
        }
        Err(status) => status,
    }
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
