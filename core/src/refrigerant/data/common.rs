//! Saturation of common refrigerants from -45 to 60 degC. Written by `cargo run --release -p rimewise-tables`; do not edit.

use crate::refrigerant::approximate::Approximate;

/// One of each group whose pressures lie close to each other.
#[rustfmt::skip]
pub(crate) static COMMON: [Approximate; 9] = [
    // Worst 0.15 K.
    Approximate::new("R22", [21.3351, 2068.808, 21.3897], [21.3351, 2068.808, 21.3897]),
    // Worst 0.13 K.
    Approximate::new("R134a", [21.3577, 2117.8933, 31.6858], [21.3577, 2117.8928, 31.6858]),
    // Worst 0.16 K.
    Approximate::new("R290", [21.0108, 2058.2917, 13.9683], [21.0108, 2058.2908, 13.9684]),
    // Worst 0.31 K.
    Approximate::new("R404A", [21.5506, 2121.465, 15.895], [21.554, 2128.2815, 14.9162]),
    // Worst 0.25 K.
    Approximate::new("R407C", [21.7317, 2148.232, 26.0073], [21.5786, 2098.8594, 24.2172]),
    // Worst 0.29 K.
    Approximate::new("R410A", [21.9665, 2189.0886, 11.8515], [21.9591, 2184.731, 12.0868]),
    // Worst 0.30 K.
    Approximate::new("R448A", [21.7688, 2172.0735, 21.3639], [21.5692, 2090.432, 22.0345]),
    // Worst 0.29 K.
    Approximate::new("R454C", [21.6568, 2217.0747, 17.0921], [21.3379, 2064.584, 21.4344]),
    // Worst 0.08 K.
    Approximate::new("R600a", [20.6416, 2121.583, 28.6792], [20.6416, 2121.5825, 28.6792]),
];
