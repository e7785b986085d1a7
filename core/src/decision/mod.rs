//! What each way to go on is expected to cost, given the probabilities of the causes.
//!
//! Costs come from the people who bear them (`costs`); those that nobody told stand in their usual ratio to those that
//! were (`usual`). A fault that is left costs by the day over a horizon. A remedy that does not help (`cures`) is followed
//! by the right one, on one more visit (`weigh`).

mod costs;
mod cures;
mod usual;
mod weigh;

pub use costs::Costs;
pub(crate) use usual::Prices;
pub use weigh::{Action, Alternative, Decision, weigh};
pub(crate) use weigh::{WAYS, cheapest_of_likely};
