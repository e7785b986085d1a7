//! Tables as loadable binaries, and designations as people write them.

use rimewise::quantity::{Pressure, Temperature};
use rimewise::refrigerant::data::{ALL, R404A, R744};
use rimewise::refrigerant::{Refrigerant, TableError, find, table};
use std::path::{Path, PathBuf};

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../core/src/refrigerant/data")
}

fn bytes(name: &str) -> Vec<u8> {
    std::fs::read(folder().join(name)).expect("a committed table")
}

#[test]
fn every_committed_table_loads_and_answers_like_the_built_in_one() {
    let mut count = 0;
    for entry in std::fs::read_dir(folder()).expect("the data folder") {
        let path = entry.expect("an entry").path();
        if path.extension().is_none_or(|e| e != "table") {
            continue;
        }
        let bytes = std::fs::read(&path).expect("readable");
        assert!(bytes.len() <= 1200, "{}: {} bytes", path.display(), bytes.len());
        let loaded = Refrigerant::from_bytes(&bytes).expect("a whole table");
        let built_in = find(loaded.designation()).expect("built in");
        let (low, high) = loaded.pressure_range();
        let p = Pressure::from_pascals(0.5 * (low.pascals() + high.pascals()));
        assert_eq!(loaded.dew_temperature(p), built_in.dew_temperature(p));
        assert_eq!(loaded.saturated_liquid(p), built_in.saturated_liquid(p));
        assert!(loaded.composition().eq(built_in.composition()));
        count += 1;
    }
    assert_eq!(count, ALL.len());
}

#[test]
fn a_truncated_or_altered_table_is_refused() {
    let good = bytes("r404a.table");
    for length in 0..good.len() {
        assert!(Refrigerant::from_bytes(&good[..length]).is_err(), "{length} bytes");
    }
    let mut long = good.clone();
    long.push(0);
    assert_eq!(
        Refrigerant::from_bytes(&long).err(),
        Some(TableError::Length { stated: good.len(), given: good.len() + 1 })
    );
    for at in 0..good.len() {
        for bit in 0..8 {
            let mut bad = good.clone();
            bad[at] ^= 1 << bit;
            assert!(Refrigerant::from_bytes(&bad).is_err(), "byte {at}, bit {bit}");
        }
    }
}

#[test]
fn each_refusal_says_why() {
    let good = bytes("r404a.table");
    assert_eq!(Refrigerant::from_bytes(b"RIFF").err(), Some(TableError::NotATable));
    assert_eq!(
        Refrigerant::from_bytes(&good[..100]).err(),
        Some(TableError::Length { stated: good.len(), given: 100 })
    );
    let mut newer = good.clone();
    newer[table::at::VERSION] = 9;
    assert_eq!(Refrigerant::from_bytes(&newer).err(), Some(TableError::Version { found: 9 }));
    let mut altered = good.clone();
    altered[300] ^= 1;
    assert_eq!(Refrigerant::from_bytes(&altered).err(), Some(TableError::Checksum));
}

/// A table whose numbers are not numbers is refused even where its checksum is right.
#[test]
fn a_table_with_a_nan_is_refused_under_a_right_checksum() {
    let mut bad = bytes("r404a.table");
    bad[table::at::VAPOR..table::at::VAPOR + 4].copy_from_slice(&f32::NAN.to_le_bytes());
    let sum = table::checksum(&bad[table::at::FLAGS..]);
    bad[table::at::CHECKSUM..table::at::CHECKSUM + 4].copy_from_slice(&sum.to_le_bytes());
    assert_eq!(Refrigerant::from_bytes(&bad).err(), Some(TableError::Content));
}

/// The CRC-32 check value of "123456789" is CBF43926 (IEEE 802.3; catalogue value, from memory).
#[test]
fn the_checksum_is_crc_32() {
    assert_eq!(table::checksum(b"123456789"), 0xCBF4_3926);
}

#[test]
fn designations_are_found_as_people_write_them() {
    for written in ["R404A", "R-404A", "r404a", "404A", "R 404A", "404a", " r-404 a "] {
        assert_eq!(find(written).map(|r| r.designation()), Some("R404A"), "{written}");
    }
    for (written, found) in [
        ("propane", "R290"),
        ("Propane", "R290"),
        ("R290", "R290"),
        ("isobutane", "R600a"),
        ("R-600a", "R600a"),
        ("ammonia", "R717"),
        ("CO2", "R744"),
        ("carbon dioxide", "R744"),
        ("propylene", "R1270"),
        ("R1234yf", "R1234yf"),
        ("r-1234ze(e)", "R1234ze(E)"),
        ("R1234zeE", "R1234ze(E)"),
        ("1234ze(Z)", "R1234ze(Z)"),
        ("RC318", "RC318"),
        ("c318", "RC318"),
        ("R-E170", "RE170"),
        ("dimethyl ether", "RE170"),
        ("water", "R718"),
    ] {
        assert_eq!(find(written).map(|r| r.designation()), Some(found), "{written}");
    }
    for unknown in ["", "R", "R999Z", "R404", "404A!", "thing", &"R4".repeat(40)] {
        assert_eq!(find(unknown).map(|r| r.designation()), None, "{unknown}");
    }
    for r in ALL {
        assert_eq!(find(r.designation()).map(|f| f.designation()), Some(r.designation()));
    }
}

#[test]
fn carbon_dioxide_above_its_critical_point_is_told_so() {
    let error = R744.dew_temperature(Pressure::from_bar(90.0)).expect_err("transcritical");
    assert!(error.to_string().contains("transcritical"), "{error}");
    let error = R744.bubble_pressure(Temperature::from_celsius(35.0)).expect_err("transcritical");
    assert!(error.to_string().contains("30.98"), "{error}");
}

#[test]
fn an_estimated_pair_is_told() {
    for (name, estimated) in
        [("R408A", true), ("R409A", true), ("R438A", true), ("R404A", false), ("R448A", false)]
    {
        assert_eq!(find(name).expect("built in").estimated_pair(), estimated, "{name}");
    }
    assert!(R404A.glide().kelvins() > 0.5 && R404A.glide().kelvins() < 1.0);
}
