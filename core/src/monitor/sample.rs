//! One sample of a stream: a time and whatever was measured at it.

use crate::field::{choice, section};

section! {
    /// What was measured at one moment, under the names of the readings; not measured is `None`.
    ///
    /// A value that arrives more slowly than the others is best repeated with its latest value: superheat is only
    /// known at a sample that holds both its pressure and its temperature.
    Sample at "sample" {
        /// Pressure at the compressor's suction, kPa absolute.
        suction_pressure_kpa: Pressure = 1,
        /// Pressure at the evaporator outlet, kPa absolute.
        evaporator_pressure_kpa: Pressure = 2,
        /// Pressure at the compressor's discharge, kPa absolute.
        discharge_pressure_kpa: Pressure = 3,
        /// Pressure at the condenser or receiver outlet, kPa absolute.
        liquid_pressure_kpa: Pressure = 4,
        /// Pipe temperature at the evaporator outlet, degC.
        evaporator_outlet_c: Temperature = 5,
        /// Pipe temperature at the compressor inlet, degC.
        suction_line_c: Temperature = 6,
        /// Pipe temperature at the compressor outlet, degC.
        discharge_line_c: Temperature = 7,
        /// Pipe temperature of the liquid line ahead of the drier, degC.
        liquid_line_c: Temperature = 8,
        /// Pipe temperature behind the drier, degC.
        drier_outlet_c: Temperature = 9,
        /// Air temperature of the cooled space, onto the evaporator, degC.
        space_c: Temperature = 10,
        /// Air temperature off the evaporator, degC.
        supply_air_c: Temperature = 11,
        /// Air temperature onto the condenser, degC.
        ambient_c: Temperature = 12,
        /// Air temperature off the condenser, degC.
        condenser_exhaust_c: Temperature = 13,
        /// Compressor current, A, without fans and heaters.
        current_a: Current = 14,
        /// Supply voltage, V.
        voltage_v: Voltage = 15,
    }
    besides {
        /// Time on any clock that does not run backwards, ms.
        time_ms: u64,
    }
}

choice! {
    /// Why a sample could not be used, whole or in part.
    SampleProblem {
        /// The time is that of the sample before: nothing was used.
        RepeatedTime = 1 "repeated_time",
        /// The time lies before that of a sample already taken: nothing was used.
        BackwardTime = 2 "backward_time",
        /// No channel holds a number that a machine can show: nothing but the time was used.
        NothingMeasured = 3 "nothing_measured",
        /// Some channels hold what no machine can show; they were left out and the others used.
        SomeUnusable = 4 "some_unusable",
    }
}

/// Number of channels of a sample, in the order of [`Sample::FIELDS`].
pub const CHANNELS: usize = Sample::FIELDS.len();

pub(super) const SUCTION: usize = 0;
pub(super) const DISCHARGE: usize = 2;
pub(super) const LIQUID: usize = 3;
pub(super) const EVAPORATOR_OUTLET: usize = 4;
pub(super) const SUCTION_LINE: usize = 5;
pub(super) const DISCHARGE_LINE: usize = 6;
pub(super) const SPACE: usize = 9;
pub(super) const SUPPLY_AIR: usize = 10;
pub(super) const AMBIENT: usize = 11;
pub(super) const CURRENT: usize = 13;
pub(super) const VOLTAGE: usize = 14;

/// Finds the binary places that a channel's whole numbers keep: 1/1024 A, 1/256 of everything else.
pub(super) const fn places(channel: usize) -> u32 {
    if channel == CURRENT { 10 } else { 8 }
}

/// Finds the lowest and highest whole number a channel can show.
const fn limits(channel: usize) -> (i32, i32) {
    match channel {
        ..EVAPORATOR_OUTLET => (1, 20_000 << 8),
        CURRENT => (0, 5000 << 10),
        VOLTAGE => (0, 1000 << 8),
        _ => (-(120 << 8), 300 << 8),
    }
}

/// Converts the channels to whole numbers, `None` where not measured, and marks those no machine can show.
pub(super) fn whole(sample: &Sample, values: &mut [Option<i32>; CHANNELS]) -> u16 {
    let mut unusable = 0;
    let numbers = sample.numbers();
    for (channel, (value, number)) in values.iter_mut().zip(&numbers).enumerate() {
        let Some(number) = *number else { continue };
        let (low, high) = limits(channel);
        let fixed = super::fixed_point::fixed(number, places(channel));
        if fixed >= low && fixed <= high {
            *value = Some(fixed);
        } else {
            unusable |= 1 << channel;
        }
    }
    unusable
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::readings::Readings;

    #[test]
    fn the_channels_are_the_first_readings_in_the_same_order() {
        for (channel, reading) in Sample::FIELDS.iter().zip(Readings::FIELDS) {
            assert_eq!(channel, reading);
        }
        let named = |channel: usize| Sample::FIELDS[channel].name;
        assert_eq!(named(SUCTION), "suction_pressure_kpa");
        assert_eq!(named(DISCHARGE), "discharge_pressure_kpa");
        assert_eq!(named(LIQUID), "liquid_pressure_kpa");
        assert_eq!(named(EVAPORATOR_OUTLET), "evaporator_outlet_c");
        assert_eq!(named(SUCTION_LINE), "suction_line_c");
        assert_eq!(named(DISCHARGE_LINE), "discharge_line_c");
        assert_eq!(named(SPACE), "space_c");
        assert_eq!(named(SUPPLY_AIR), "supply_air_c");
        assert_eq!(named(AMBIENT), "ambient_c");
        assert_eq!(named(CURRENT), "current_a");
        assert_eq!(named(VOLTAGE), "voltage_v");
    }

    #[test]
    fn the_limits_are_those_of_the_fields() {
        for (channel, field) in Sample::FIELDS.iter().enumerate() {
            let (low, high) = limits(channel);
            let (least, most) = field.kind.range();
            let unit = (1 << places(channel)) as f32;
            // A pressure of less than one unit is none.
            assert!((low as f32 / unit - least).abs() < 0.01, "{}", field.name);
            assert_eq!(high as f32 / unit, most, "{}", field.name);
        }
    }

    #[test]
    fn what_no_machine_can_show_is_left_out() {
        for bad in [f32::NAN, f32::INFINITY, f32::NEG_INFINITY, -1.0, 0.0, 1e30] {
            let sample = Sample { suction_pressure_kpa: Some(bad), space_c: Some(3.0), ..Sample::default() };
            let mut values = [None; CHANNELS];
            let unusable = whole(&sample, &mut values);
            assert_eq!((values[SUCTION], unusable), (None, 1), "{bad}");
            assert_eq!(values[SPACE], Some(3 << 8));
        }
    }
}
