//! Tables of bytes whose checksum is right: what loads must answer as a refrigerant does.

use crate::bytes::Bytes;
use crate::property;
use rimewise::quantity::Pressure;
use rimewise::refrigerant::{Refrigerant, table};

/// The tables that stand in the tree.
const TABLES: &[&[u8]] = &include!(concat!(env!("OUT_DIR"), "/tables.rs"));
/// Pressures at which a loaded table is asked.
const STEPS: u16 = 24;

/// How far a forged curve may lead from where it came from: nothing is promised of how smooth it is.
const BACK_K: f32 = 5.0;

/// A committed table with some bytes changed, or any bytes behind a right head.
pub fn target(bytes: &[u8]) {
    let bytes = &mut Bytes(bytes);
    let mut table = TABLES[bytes.below(TABLES.len())].to_vec();
    if bytes.once_in(16) {
        table.truncate(16);
        table.extend(bytes.0);
    } else {
        while !bytes.is_empty() {
            let at = bytes.below(table.len());
            match bytes.byte() % 4 {
                // A bit, which is a small change of a number as often as a large one.
                0 => table[at] ^= 1 << (bytes.byte() % 8),
                1 => table[at] = bytes.byte(),
                // A number where the numbers stand.
                2 => {
                    let value = bytes.number(-10.0, 1000.0).to_le_bytes();
                    let at = at & !3;
                    for (to, from) in table.iter_mut().skip(at).zip(value) {
                        *to = from;
                    }
                }
                _ => table.truncate(at.max(1)),
            }
        }
    }
    sign(&mut table);
    if let Ok(refrigerant) = Refrigerant::from_bytes(&table) {
        answers(&refrigerant, bytes);
    }
}

/// Writes the length and the checksum that the bytes ask for.
fn sign(table: &mut [u8]) {
    let length = (table.len() as u16).to_le_bytes();
    put(table, table::at::LENGTH, &length);
    let sum = table::checksum(table.get(table::at::FLAGS..).unwrap_or_default());
    put(table, table::at::CHECKSUM, &sum.to_le_bytes());
}

fn put(table: &mut [u8], at: usize, bytes: &[u8]) {
    for (to, from) in table.iter_mut().skip(at).zip(bytes) {
        *to = *from;
    }
}

fn answers(refrigerant: &Refrigerant<'_>, bytes: &mut Bytes<'_>) {
    let parts: Vec<f32> = refrigerant.composition().map(|c| c.mass_fraction).collect();
    let sum: f32 = parts.iter().sum();
    assert!((sum - 1.0).abs() < 1.0e-3, "the mass fractions {parts:?} sum to {sum}");
    assert!(parts.iter().all(|p| *p > 0.0), "mass fractions {parts:?}");
    let (low, high) = refrigerant.pressure_range();
    assert!(low.pascals() > 0.0 && low < high, "pressures from {low:?} to {high:?}");
    let (mut dew, mut bubble) = (0.0, 0.0);
    for step in 0..=STEPS {
        let share = f32::from(step) / f32::from(STEPS);
        // By ratio, as the curves lie.
        let p = low.pascals() * (high.pascals() / low.pascals()).powf(share);
        if let Ok(t) = refrigerant.dew_temperature(Pressure::from_pascals(p)) {
            assert!(t.kelvins() > dew, "the dew curve falls at {p} Pa: {dew} to {} K", t.kelvins());
            dew = t.kelvins();
        }
        if let Ok(t) = refrigerant.bubble_temperature(Pressure::from_pascals(p)) {
            assert!(t.kelvins() > bubble, "the bubble curve falls at {p} Pa: {bubble} to {} K", t.kelvins());
            bubble = t.kelvins();
        }
        property::at(refrigerant, p, dew + bytes.within(0.0, 40.0), bytes.within(0.0, 6.0e5), BACK_K);
        property::at(refrigerant, p, bubble - bytes.within(0.0, 30.0), bytes.within(0.0, 3.0e3), BACK_K);
    }
}
