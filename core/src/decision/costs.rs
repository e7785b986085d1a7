//! What things cost, as far as the people who bear it told.

use crate::cause::Cause;
use crate::field::section;

section! {
    /// What things cost, in one currency of the caller's choice; `None` is not known.
    Costs at "costs" {
        /// Coming out once more.
        visit: Money = 540,
        /// An hour of work.
        hour: Money = 541,
        /// A new compressor, fitted.
        compressor: Money = 542,
        /// A new machine, installed.
        machine: Money = 543,
        /// What is lost each day that the machine does not do its work.
        loss_a_day: Money = 544,
        /// Days that the loss is reckoned over.
        horizon_days: Days = 545,
        /// The next test, its time and parts.
        test: Money = 546,
        /// What is lost at once when the machine is left with its fault: the goods at risk times the chance that they
        /// spoil.
        product_at_risk: Money = 547,
    }
    besides {
        /// The repair of each cause in the order of [`Cause`]; that of `none` is not looked at. A weak compressor's is
        /// its replacement, see `compressor`.
        repair: [Option<f32>; Cause::COUNT],
    }
}

impl Costs {
    /// What the remedy of one cause costs, where it was told: a repair, or the new compressor.
    pub(crate) fn remedy(&self, cause: Cause) -> Option<f32> {
        told(match cause {
            Cause::None => None,
            Cause::WeakCompressor => self.compressor,
            other => self.repair.get(other.index()).copied().flatten(),
        })
    }
}

/// A cost that can be reckoned with.
pub(crate) fn told(cost: Option<f32>) -> Option<f32> {
    cost.filter(|c| c.is_finite() && *c >= 0.0)
}
