//! What the complaint and the machine's history say of the causes before anything is measured.
//!
//! Every number is how many times more often the cause is met with that complaint or history than without it: judged,
//! from common practice; no published statistics are known. A complaint weighs little, because most causes end in the
//! same one.

use crate::cause::Cause;
use crate::readings::{Call, Complaint, History};

/// The ratio under one cause; 1 where it says nothing.
const fn ratio_of_complaint(complaint: Complaint, cause: Cause) -> f32 {
    use Cause as C;
    match (complaint, cause) {
        // A space that is not cold enough has a reason.
        (Complaint::NotCold | Complaint::NeverStops, C::None) => 0.5,
        (Complaint::NotCold | Complaint::NeverStops, C::Overcharge) => 0.7,
        // Short cycles come from head pressure, from a wrong charge, or from the controls.
        (Complaint::ShortCycles, C::CondenserAirflow | C::NonCondensables | C::Overcharge) => 1.7,
        (Complaint::Trips, C::CondenserAirflow | C::NonCondensables) => 1.8,
        (Complaint::NoisyStart, C::FloodBack | C::Overcharge) => 1.8,
        (Complaint::NoisyRunning, C::WeakCompressor | C::FloodBack) => 1.6,
        (Complaint::IcesUp, C::EvaporatorAirflow) => 2.5,
        (Complaint::IcesUp, C::Undercharge | C::LiquidLineRestriction | C::MeteringUnderfeed) => 1.3,
        // A machine that nobody complains of is more often sound.
        (Complaint::Maintenance, C::None) => 2.5,
        (Complaint::Maintenance, C::CondenserAirflow | C::EvaporatorAirflow) => 1.3,
        _ => 1.0,
    }
}

const fn ratio_of_history(history: History, cause: Cause) -> f32 {
    use Cause as C;
    match (history, cause) {
        (History::CompressorReplaced, C::WeakCompressor) => 0.6,
        // A circuit that was open may hold air, a wrong charge, or dirt in its drier.
        (History::CompressorReplaced | History::CircuitOpened, C::NonCondensables) => 3.0,
        (History::CompressorReplaced | History::CircuitOpened, C::Undercharge | C::Overcharge) => 1.8,
        (History::CompressorReplaced | History::CircuitOpened, C::LiquidLineRestriction) => 1.5,
        // A new capillary may be of another length or bore.
        (History::MeteringReplaced, C::MeteringUnderfeed | C::FloodBack) => 2.5,
        (History::MeteringReplaced, C::NonCondensables | C::Undercharge | C::Overcharge) => 1.5,
        (History::ChargeAdded, C::Overcharge) => 3.0,
        (History::ChargeAdded, C::Undercharge) => 2.0,
        (History::ChargeAdded, C::NonCondensables) => 1.5,
        (History::LeakedBefore, C::Undercharge) => 3.0,
        (History::LeakedBefore, C::NonCondensables) => 1.3,
        (History::CoilCleaned, C::EvaporatorAirflow) => 0.6,
        _ => 1.0,
    }
}

/// The logarithm of what complaint and history say together of each cause; nothing where they say nothing.
pub(crate) fn ln_ratios(call: &Call) -> Option<[f32; Cause::COUNT]> {
    let complaints = call.complaint.unwrap_or_default();
    let history = call.history.unwrap_or_default();
    if complaints.bits() == 0 && history.bits() == 0 {
        return None;
    }
    let mut all = [0.0; Cause::COUNT];
    for (slot, cause) in all.iter_mut().zip(Cause::ALL) {
        let mut ratio = 1.0;
        // Several complaints of one machine tell one story: the strongest of them counts.
        let told =
            Complaint::ALL.iter().filter(|c| complaints.has(**c)).map(|c| ratio_of_complaint(*c, *cause));
        let (low, high) = told.fold((1.0f32, 1.0f32), |(low, high), r| (low.min(r), high.max(r)));
        ratio *= low * high;
        for done in History::ALL.iter().filter(|h| history.has(**h)) {
            ratio *= ratio_of_history(*done, *cause);
        }
        *slot = libm::logf(ratio);
    }
    Some(all)
}
