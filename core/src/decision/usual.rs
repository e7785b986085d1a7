//! Usual ratios of costs, for those that nobody told: all of this table is judged, in hours of work.

use super::costs::{Costs, told};
use crate::cause::Cause;

/// Coming out once more, hours of work (judged).
const VISIT: f32 = 1.0;
/// A new compressor with its fitting (judged).
const COMPRESSOR: f32 = 9.0;
/// A new machine, installed (judged).
const MACHINE: f32 = 22.0;
/// What a day without the machine's work costs its owner (judged).
const LOSS_A_DAY: f32 = 0.5;
/// Days that the loss is reckoned over (judged).
const HORIZON_DAYS: f32 = 30.0;
/// Days until somebody comes again after a repair that did not help (judged).
pub(super) const RETURN_DAYS: f32 = 2.0;

/// What the remedy of a cause takes with its parts, hours of work (judged).
const fn remedy(cause: Cause) -> f32 {
    match cause {
        Cause::None => 0.0,
        Cause::Undercharge => 4.0,
        Cause::Overcharge => 2.0,
        Cause::LiquidLineRestriction => 3.5,
        Cause::MeteringUnderfeed => 4.0,
        Cause::FloodBack => 3.0,
        Cause::WeakCompressor => COMPRESSOR,
        Cause::CondenserAirflow => 0.75,
        Cause::EvaporatorAirflow => 1.0,
        Cause::NonCondensables => 2.5,
    }
}

/// Every cost that is reckoned with: as told, else by its usual ratio to what was told.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Prices {
    /// Coming out once more.
    pub(crate) visit: f32,
    /// An hour of work.
    pub(crate) hour: f32,
    /// The remedy of each cause, in the order of [`Cause`].
    pub(crate) remedy: [f32; Cause::COUNT],
    /// A new machine.
    pub(crate) machine: f32,
    /// A fault left for the whole horizon.
    pub(crate) left: f32,
    /// A fault left until somebody comes again.
    pub(crate) waited: f32,
}

impl Prices {
    /// Completes what was told; an hour is one where nothing was.
    pub(crate) fn complete(costs: &Costs) -> Self {
        let hour = scale(costs).unwrap_or(1.0);
        let or = |cost: Option<f32>, hours: f32| told(cost).unwrap_or(hours * hour);
        let risk = told(costs.product_at_risk);
        // Who told the goods at risk and no loss a day told the whole loss.
        let a_day = match (told(costs.loss_a_day), risk) {
            (Some(loss), _) => loss,
            (None, Some(_)) => 0.0,
            (None, None) => LOSS_A_DAY * hour,
        };
        let days = told(costs.horizon_days).unwrap_or(HORIZON_DAYS);
        let mut all = [0.0; Cause::COUNT];
        for (slot, cause) in all.iter_mut().zip(Cause::ALL) {
            *slot = costs.remedy(*cause).unwrap_or(remedy(*cause) * hour);
        }
        let risk = risk.unwrap_or(0.0);
        Self {
            visit: or(costs.visit, VISIT),
            hour: or(costs.hour, 1.0),
            remedy: all,
            machine: or(costs.machine, MACHINE),
            left: a_day * days + risk,
            waited: a_day * days.min(RETURN_DAYS) + risk,
        }
    }
    /// The remedy of a cause.
    pub(crate) fn remedy(&self, cause: Cause) -> f32 {
        self.remedy.get(cause.index()).copied().unwrap_or(0.0)
    }
}

/// What an hour is worth by the first cost that was told; nothing where none was.
pub(super) fn scale(costs: &Costs) -> Option<f32> {
    let over = |cost: Option<f32>, hours: f32| told(cost).filter(|c| *c > 0.0).map(|c| c / hours);
    let repairs = || Cause::ALL.iter().skip(1).find_map(|c| over(costs.remedy(*c), remedy(*c)));
    over(costs.hour, 1.0)
        .or_else(|| over(costs.visit, VISIT))
        .or_else(|| over(costs.compressor, COMPRESSOR))
        .or_else(|| over(costs.machine, MACHINE))
        .or_else(repairs)
        .or_else(|| over(costs.loss_a_day, LOSS_A_DAY))
}
