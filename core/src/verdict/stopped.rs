//! What only a machine that runs can show.

use crate::measurement::Measurement;
use crate::readings::Visit;

/// Fraction of the rated load below which a clamp shows that the motor does not run (judged: a motor that turns without
/// any load takes a third of it).
const NO_CURRENT: f32 = 0.05;
/// The same where the plate is not known, A: what a clamp shows on a dead lead (common practice: 0.1 to 0.3 A on large
/// jaws, whose motors are large too).
const NO_CURRENT_A: f32 = 0.05;

/// Tells whether the compressor runs, or nothing says that it does not: neither the technician nor the clamp.
pub fn runs(visit: &Visit<'_>) -> bool {
    let readings = &visit.readings;
    let highest = readings.line_currents_a.map(|amps| amps.iter().copied().fold(0.0, f32::max));
    let least = visit.system.compressor.rated_load_a.map_or(NO_CURRENT_A, |rated| NO_CURRENT * rated);
    readings.running != Some(false) && readings.current_a.or(highest).is_none_or(|amps| amps > least)
}

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
