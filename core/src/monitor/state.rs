//! What the machine does at the moment.

use crate::field::choice;

choice! {
    /// What the machine does at the moment.
    ///
    /// The three running states are statements about the last two minutes (at least one, and none of the first minute
    /// after a start): steady when nothing measured drifts or scatters beyond its limit, pulling down when the suction
    /// pressure falls smoothly, unsteady otherwise.
    State {
        /// Not enough was seen yet, or a gap has just ended.
        Unknown = 0 "unknown",
        /// The compressor is off in the ordinary cycle.
        Off = 1 "off",
        /// The compressor was started less than one minute ago, whether or not it turns.
        Starting = 2 "starting",
        /// It runs and the suction pressure falls smoothly.
        PullingDown = 3 "pulling_down",
        /// It runs and holds still.
        Steady = 4 "steady",
        /// It runs and does neither: not settled yet, hunting, or taking up a load.
        Unsteady = 5 "unsteady",
        /// It pumps down against a closed valve.
        PumpingDown = 6 "pumping_down",
        /// It stands after a pump-down, and no pressure shows yet that the valve was opened.
        Holding = 7 "holding",
        /// It stands and its coil is being heated.
        Defrost = 8 "defrost",
        /// It stands because its overload opened, or a start failed.
        Stopped = 9 "stopped",
    }
}
