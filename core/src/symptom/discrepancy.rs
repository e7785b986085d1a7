//! Where the model's structure may be off, beside what is not known of the one machine.

use super::channel::*;

/// Where the model's structure may be off by itself: the channels it moves together and by how much, K.
///
/// The spreads are judged from how compact models of this kind compare with detailed ones and with published
/// measurements; they stand beside what is not known of the one machine.
pub(crate) const DISCREPANCY: [(Vector, f32); 15] = {
    const fn on(channels: &[usize]) -> Vector {
        let mut v = [0.0; CHANNELS];
        let mut i = 0;
        while i < channels.len() {
            v[channels[i]] = 1.0;
            i += 1;
        }
        v
    }
    [
        (
            on(&[SUCTION_PRESSURE, EVAPORATOR_PRESSURE, EVAPORATOR_OUTLET, SUCTION_LINE, EVAPORATOR_INLET]),
            0.6,
        ),
        (on(&[EVAPORATOR_PRESSURE, EVAPORATOR_OUTLET]), 0.5),
        (
            on(&[
                DISCHARGE_PRESSURE,
                LIQUID_PRESSURE,
                DISCHARGE_LINE,
                LIQUID_LINE,
                DRIER_OUTLET,
                CONDENSER_MIDDLE,
            ]),
            0.6,
        ),
        (on(&[LIQUID_PRESSURE]), 0.5),
        (on(&[LIQUID_LINE, DRIER_OUTLET]), 0.5),
        (on(&[EVAPORATOR_OUTLET]), 2.4),
        (on(&[SUCTION_LINE, DISCHARGE_LINE]), 2.7),
        (on(&[DRIER_OUTLET]), 0.4),
        (on(&[DISCHARGE_LINE]), 4.0),
        (on(&[SUPPLY_AIR]), 0.7),
        (on(&[CONDENSER_EXHAUST]), 0.8),
        (on(&[CURRENT, POWER]), 2.5),
        (on(&[POWER]), 12.0),
        // The pressure falls along the coil from its inlet, and a bend in the middle may lie in the hot or the cold part.
        (on(&[EVAPORATOR_INLET]), 1.2),
        (on(&[CONDENSER_MIDDLE]), 1.2),
    ]
};

/// The same, K of evaporating temperature for each kelvin by which the space stands off its design temperature beyond
/// [`NEAR_DESIGN_K`].
///
/// What a metering device passes far from its design point hangs on the law it follows, and laws differ: a capillary may
/// starve a warm evaporator or feed it well (judged; no compressor should be condemned on that difference).
pub(crate) const OFF_DESIGN: f32 = 0.3;
/// Kelvin off the design temperature of the space that a running machine is in any case.
pub(crate) const NEAR_DESIGN_K: f32 = 3.0;
