//! Saturation of common refrigerants from -45 to 60 degC. Written by `cargo run --release -p rimewise-tables`; do not edit.

use crate::refrigerant::approximate::Approximate;

/// One of each group whose pressures lie close to each other.
#[rustfmt::skip]
pub(crate) static COMMON: [Approximate; 12] = [
    // Worst 0.15 K.
    Approximate::new("R22", [21.3351, 2068.808, 21.390], [21.3351, 2068.808, 21.390]),
    // Worst 0.13 K.
    Approximate::new("R134a", [21.3577, 2117.893, 31.686], [21.3577, 2117.893, 31.686]),
    // Worst 0.16 K.
    Approximate::new("R290", [21.0108, 2058.292, 13.968], [21.0108, 2058.292, 13.968]),
    // Worst 0.31 K.
    Approximate::new("R404A", [21.5506, 2121.465, 15.895], [21.5683, 2140.952, 13.573]),
    // Worst 0.25 K.
    Approximate::new("R407C", [21.7317, 2148.232, 26.007], [21.4984, 2086.085, 20.272]),
    // Worst 0.29 K.
    Approximate::new("R410A", [21.9665, 2189.089, 11.852], [21.9537, 2181.476, 12.256]),
    // Worst 0.30 K.
    Approximate::new("R448A", [21.7688, 2172.074, 21.364], [21.4417, 2045.970, 20.543]),
    // Worst 0.36 K.
    Approximate::new("R452A", [21.7855, 2217.899, 13.959], [21.3314, 1999.322, 22.203]),
    // Worst 0.30 K.
    Approximate::new("R454B", [21.9673, 2224.687, 10.319], [21.8116, 2138.260, 14.332]),
    // Worst 0.29 K.
    Approximate::new("R454C", [21.6568, 2217.075, 17.092], [21.0966, 1955.140, 23.435]),
    // Worst 0.08 K.
    Approximate::new("R600a", [20.6416, 2121.583, 28.679], [20.6416, 2121.583, 28.679]),
    // Worst 0.17 K.
    Approximate::new("R1234yf", [21.1258, 2104.473, 24.495], [21.1258, 2104.473, 24.495]),
];
