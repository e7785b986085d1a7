//! What only a machine that runs can show.

use crate::measurement::Measurement;

/// Tells whether a measurement or observation asks for a compressor that runs, or is switched on to take it.
pub const fn needs_running(measurement: Measurement) -> bool {
    use Measurement as M;
    match measurement {
        M::StandingPressure
        | M::StandingTemperature
        | M::Space
        | M::SpaceWetBulb
        | M::Ambient
        | M::WindingRun
        | M::WindingStart
        | M::WindingRunToStart
        | M::WindingToFrame
        | M::WindingTemperature
        | M::InsulationTest
        | M::Terminal12
        | M::Terminal23
        | M::Terminal13
        | M::RunCapacitor
        | M::StartCapacitor
        | M::LineVoltages
        | M::Recovered
        | M::Added
        | M::Running
        | M::CoilIced
        | M::CondenserFace
        | M::OilTraces
        | M::LeakFound
        | M::CallsForCooling
        | M::DoorCloses => false,
        // Pressures, pipes, air over the exchangers, current and power, fans that the control runs with the compressor,
        // and what is seen or heard while it runs.
        _ => true,
    }
}
