//! How each cause ends: where a machine goes as what is left of it vanishes.
//!
//! The steady model's balances stop where a part all but stops. What is then left is simple: without flow every pipe
//! takes the temperature of its surroundings, the suction goes as low as the compressor pulls against what still leaks
//! into it, the condenser as low as the air, and the motor turns without load. Each state here is closed form, and holds
//! by so much as is left undone of the last balance.

use crate::cause::Cause;
use crate::expectation::Balance;
use crate::machine::{Fluid, Machine};
use crate::symptom::*;

/// Flow that leaks past a compressor in good order, as a fraction of its flow.
const LEAK: f32 = 0.03;
/// Exponent of re-expansion from the clearance volume, as in the volumetric efficiency.
const RE_EXPANSION: f32 = 1.1;
/// Power without load over that at the design point (judged: friction and iron of small hermetic motors).
const NO_LOAD: f32 = 0.2;
/// Share of the heat that a starved condenser still gets, gas from the shell's heat included.
const HEAT_LEFT: f32 = 0.1;
/// Kelvin that a dead condenser's saturation stands above the air: liquid that fills it leaves little surface (judged).
const FLOODED_K: f32 = 1.5;
/// Kelvin below the air at which an empty circuit's discharge saturates (judged: a few bar of what gas is left).
const EMPTY_BELOW_AIR_K: f32 = 35.0;
/// Flow of vapour that a metering device passes where no liquid reaches it, over the design flow (vapour is as much
/// thinner as its square root says: some tenth to fifth of the liquid's flow).
const GAS_PASSES: f32 = 0.18;
/// Share of a discharge line's excess over the air that stays without flow: the shell is warm (judged).
const SHELL_WARMS: f32 = 0.25;
/// How far liquid left in the condenser holds the discharge up toward its air's saturation: all the way while there is
/// any, not at all when all of it lies in the evaporator (judged: either).
const HELD_BY_LIQUID: f32 = 0.6;
/// Kelvin by which an evaporator that does not cool stands below its space.
const STANDS_BELOW_SPACE_K: f32 = 2.0;
/// Kelvin inside the end of the refrigerant's table.
const INSIDE_K: f32 = 1.0;

/// Standard deviation of each channel in a limit state beside a share of its movement (judged: nothing flows, and what a
/// clamp then shows hangs on where it sits).
pub(super) const LOOSE: Vector = {
    let mut loose = [2.0; CHANNELS];
    loose[SUCTION_PRESSURE] = 4.0;
    loose[DISCHARGE_PRESSURE] = 4.0;
    loose[LIQUID_PRESSURE] = 4.0;
    loose[EVAPORATOR_PRESSURE] = 4.0;
    loose[EVAPORATOR_OUTLET] = 4.0;
    loose[SUCTION_LINE] = 4.0;
    loose[DISCHARGE_LINE] = 14.0;
    loose[LIQUID_LINE] = 3.0;
    loose[DRIER_OUTLET] = 5.0;
    loose[CURRENT] = 12.0;
    loose[POWER] = 20.0;
    loose[EVAPORATOR_INLET] = 5.0;
    loose[CONDENSER_MIDDLE] = 3.0;
    loose
};

/// The number of states beyond the last balance.
pub(super) const BEYOND: usize = 4;

/// Parts left of what the last balance had at which the states beyond it stand; 0 is the limit itself. What only grows
/// takes shorter steps at first: its limit is further on the same way.
pub(super) fn parts_left(cause: Cause) -> [f32; BEYOND] {
    match cause {
        Cause::Undercharge
        | Cause::LiquidLineRestriction
        | Cause::MeteringUnderfeed
        | Cause::WeakCompressor => [0.55, 0.3, 0.12, 0.0],
        _ => [0.75, 0.5, 0.25, 0.0],
    }
}

/// The end of a ladder: what the last balance shows there, what is left of the machine, and what the machine is.
pub(super) struct End<'a> {
    pub(super) fluid: Fluid<'a>,
    /// Its balance.
    pub(super) healthy: &'a Balance,
    /// What the healthy machine shows.
    pub(super) base: &'a Vector,
    /// How far the last balance has moved it.
    pub(super) shift: &'a Vector,
    /// Capacity or COP there over healthy.
    pub(super) impact: f32,
}

impl End<'_> {
    /// How far the machine has moved where a part of what the last balance had is left, and its capacity or COP there.
    pub(super) fn beyond(&self, cause: Cause, left: f32) -> (Vector, f32) {
        let shift = match cause {
            Cause::Undercharge | Cause::LiquidLineRestriction | Cause::MeteringUnderfeed => {
                self.closing(left, &|left| self.starved(cause, left))
            }
            Cause::WeakCompressor => super::signature::way(&self.broken(), self.shift, left),
            _ => self.further(left),
        };
        let impact = match cause {
            Cause::Overcharge | Cause::FloodBack | Cause::NonCondensables => self.impact * (0.4 + 0.6 * left),
            _ => self.impact * left,
        };
        (self.possible(&shift), impact)
    }

    fn machine(&self) -> &Machine {
        &self.healthy.machine
    }
    fn last(&self, channel: usize) -> f32 {
        let at = |v: &Vector| v.get(channel).copied().unwrap_or(0.0);
        at(self.base) + at(self.shift)
    }

    /// A closed form that holds where nothing is left, and by so much less where the last balance is near.
    fn closing(&self, left: f32, form: &dyn Fn(f32) -> Vector) -> Vector {
        let (mut shift, there) = (form(left), form(1.0));
        for ((shift, there), last) in shift.iter_mut().zip(there).zip(self.shift) {
            *shift += left * (last - there);
        }
        shift
    }

    /// Too little reaches the evaporator: the compressor pulls down toward its own limit.
    fn starved(&self, cause: Cause, left: f32) -> Vector {
        let (machine, run) = (self.machine(), &self.healthy.run);
        let (space_k, ambient_k) = (machine.space_k, machine.ambient_k);
        let capacity = left * self.impact.min(1.0);
        let lift_k = (run.condensing_k - ambient_k).max(1.0);
        let heat = capacity + HEAT_LEFT * (1.0 - capacity);
        let leaked = cause == Cause::Undercharge;
        // With the charge the liquid goes, then the pressure; behind a blockage the liquid stays, and fills the condenser.
        let cube = (1.0 - left) * (1.0 - left) * (1.0 - left);
        let empty = if leaked { cube * cube * cube * cube * cube * cube } else { 0.0 };
        let condensing_k = ambient_k + lift_k * heat - EMPTY_BELOW_AIR_K * empty
            + if leaked { 0.0 } else { FLOODED_K * (1.0 - left) };
        // What an emptied circuit passes is vapour, which cools little but flows on while its pressure lasts.
        let density =
            match (self.fluid.middle_pa(self.inside(condensing_k)), self.fluid.middle_pa(run.condensing_k)) {
                (Some(now), Some(healthy)) => now / healthy,
                _ => 1.0,
            };
        let gas = if leaked { GAS_PASSES * (1.0 - left) * density } else { 0.0 };
        let flow = capacity + gas;
        let suction_k = self.pulled_k(condensing_k, flow);
        let toward = |channel: usize, surroundings_k: f32, left: f32| {
            surroundings_k + left * (self.last(channel) - surroundings_k)
        };
        let mut at = *self.base;
        at[SUCTION_PRESSURE] = suction_k;
        at[EVAPORATOR_PRESSURE] = suction_k + flow * (run.evaporating_dew_k - run.suction_dew_k);
        at[DISCHARGE_PRESSURE] = condensing_k;
        at[LIQUID_PRESSURE] = condensing_k;
        // Behind the metering device it stays as cold as the suction while anything evaporates.
        at[EVAPORATOR_INLET] = space_k + libm::sqrtf(left) * (suction_k - space_k);
        at[CONDENSER_MIDDLE] = condensing_k.max(ambient_k);
        at[EVAPORATOR_OUTLET] = toward(EVAPORATOR_OUTLET, space_k - 1.0, left);
        at[SUCTION_LINE] = toward(SUCTION_LINE, ambient_k - 1.0, left);
        // A discharge line takes the shell's warmth where nothing flows.
        at[DISCHARGE_LINE] = toward(DISCHARGE_LINE, ambient_k, SHELL_WARMS + (1.0 - SHELL_WARMS) * left);
        at[LIQUID_LINE] = toward(LIQUID_LINE, ambient_k + 0.3, if leaked { left * left } else { left });
        // What still passes a drier flashes in it, the more the tighter it is.
        at[DRIER_OUTLET] = toward(DRIER_OUTLET, ambient_k, libm::sqrtf(left));
        at[SUPPLY_AIR] = toward(SUPPLY_AIR, space_k, left);
        at[CONDENSER_EXHAUST] = toward(CONDENSER_EXHAUST, ambient_k + 0.4, left);
        // Each kilogram is lifted further.
        let lift = (condensing_k - suction_k) / (run.condensing_k - run.suction_dew_k).max(5.0);
        self.turn(&mut at, flow * lift.max(0.0).min(2.0));
        self.moved(&at)
    }

    /// Nothing is pumped: the suction stands where the evaporator does, the discharge between that and its condenser's air.
    fn broken(&self) -> Vector {
        let machine = self.machine();
        let (space_k, ambient_k) = (machine.space_k, machine.ambient_k);
        let suction_k = space_k.min(ambient_k) - STANDS_BELOW_SPACE_K;
        let discharge_k = suction_k + HELD_BY_LIQUID * (ambient_k - suction_k) + STANDS_BELOW_SPACE_K;
        let mut at = *self.base;
        at[SUCTION_PRESSURE] = suction_k;
        at[EVAPORATOR_PRESSURE] = suction_k;
        at[DISCHARGE_PRESSURE] = discharge_k;
        at[LIQUID_PRESSURE] = discharge_k;
        at[EVAPORATOR_INLET] = space_k - 1.0;
        at[CONDENSER_MIDDLE] = ambient_k;
        at[EVAPORATOR_OUTLET] = space_k - 1.0;
        at[SUCTION_LINE] = ambient_k - 2.0;
        at[DISCHARGE_LINE] = ambient_k + SHELL_WARMS * (self.base[DISCHARGE_LINE] - ambient_k);
        at[LIQUID_LINE] = ambient_k;
        at[DRIER_OUTLET] = ambient_k;
        at[SUPPLY_AIR] = space_k - 0.3;
        at[CONDENSER_EXHAUST] = ambient_k + 0.5;
        self.turn(&mut at, 0.0);
        self.moved(&at)
    }

    /// Further the way that the last balance went: what is added or lost grows, its kind of machine stays.
    fn further(&self, left: f32) -> Vector {
        let further = 1.0 + FURTHER * (1.0 - left);
        self.shift.map(|shift| further * shift)
    }

    /// Dew temperature at which what flows, leaks and re-expands from the clearance volume fills the whole stroke.
    ///
    /// p (1 + C) = (flow and leak) e p0 d/d0 + C d^(1/n) p^(1 - 1/n), as the pump-down's limit.
    fn pulled_k(&self, condensing_k: f32, flow: f32) -> f32 {
        let (fluid, run) = (self.fluid, &self.healthy.run);
        let lowest_k = fluid.0.temperature_range().0.kelvins() + INSIDE_K;
        let pull = || {
            let (d, d0) = (fluid.middle_pa(self.inside(condensing_k))?, fluid.middle_pa(run.condensing_k)?);
            let p0 = fluid.dew_pa(run.suction_dew_k)?;
            let clearance = self.machine().clearance;
            let filled = p0 * (1.0 + clearance) - clearance * libm::powf(d0 / p0, 1.0 / RE_EXPANSION) * p0;
            let leak = (flow + LEAK * (1.0 - flow) * (d / d0)) * filled.max(0.0);
            let expansion = clearance * libm::powf(d, 1.0 / RE_EXPANSION);
            let mut pa = p0;
            for _ in 0..4 {
                pa = (leak + expansion * libm::powf(pa, 1.0 - 1.0 / RE_EXPANSION)) / (1.0 + clearance);
            }
            fluid.dew_k(pa)
        };
        pull().unwrap_or(lowest_k).max(lowest_k)
    }

    /// Current and power of a motor that does a fraction of the work.
    fn turn(&self, at: &mut Vector, work: f32) {
        let machine = self.machine();
        let full = libm::expf(self.healthy.run.ln_power);
        let power = NO_LOAD + (full - NO_LOAD).max(0.0) * work;
        let active = power * machine.power_factor / machine.voltage;
        let magnetising = (1.0 - machine.power_factor * machine.power_factor)
            * machine.voltage
            * machine.voltage
            * machine.voltage;
        let current = libm::sqrtf(active * active + magnetising);
        at[CURRENT] = 100.0 * (libm::logf(current) + machine.ln_rated_current);
        at[POWER] = 100.0 * libm::logf(power);
    }

    fn moved(&self, at: &Vector) -> Vector {
        let mut shift = *at;
        for (shift, base) in shift.iter_mut().zip(self.base) {
            *shift -= base;
        }
        shift
    }

    /// A saturation temperature, kept inside the refrigerant's table.
    fn inside(&self, k: f32) -> f32 {
        let (low, high) = self.fluid.0.temperature_range();
        k.max(low.kelvins() + INSIDE_K).min(high.kelvins() - INSIDE_K)
    }

    /// The movement kept to what a machine can show: saturation inside the table, the evaporator no warmer than its
    /// space, air between the coil and where it comes from, no pipe colder than what cools it.
    fn possible(&self, shift: &Vector) -> Vector {
        let machine = self.machine();
        let (space_k, ambient_k) = (machine.space_k, machine.ambient_k);
        let mut at = *shift;
        for (at, base) in at.iter_mut().zip(self.base) {
            *at += base;
        }
        let warmest = space_k.max(ambient_k);
        at[SUCTION_PRESSURE] = self.inside(at[SUCTION_PRESSURE].min(warmest));
        at[EVAPORATOR_PRESSURE] = self.inside(at[EVAPORATOR_PRESSURE].min(warmest));
        at[DISCHARGE_PRESSURE] = self.inside(at[DISCHARGE_PRESSURE]);
        at[LIQUID_PRESSURE] = self.inside(at[LIQUID_PRESSURE]);
        at[EVAPORATOR_INLET] = at[EVAPORATOR_INLET].min(warmest);
        let coil = at[EVAPORATOR_PRESSURE];
        at[EVAPORATOR_OUTLET] = at[EVAPORATOR_OUTLET].min(warmest).max(coil);
        at[SUCTION_LINE] = at[SUCTION_LINE].min(warmest + 10.0).max(coil);
        at[SUPPLY_AIR] = at[SUPPLY_AIR].min(space_k).max(coil.min(space_k));
        at[LIQUID_LINE] = at[LIQUID_LINE].max(ambient_k.min(self.base[LIQUID_LINE]));
        let condenser = at[DISCHARGE_PRESSURE].max(ambient_k);
        at[CONDENSER_EXHAUST] =
            at[CONDENSER_EXHAUST].max(ambient_k.min(self.base[CONDENSER_EXHAUST])).min(condenser);
        at[DISCHARGE_LINE] = at[DISCHARGE_LINE].max(ambient_k).min(HOTTEST_K);
        self.moved(&at)
    }
}

/// How much further than the last balance the last state of a cause stands that only grows, in movements of that balance.
pub(super) const FURTHER: f32 = 1.2;
/// No discharge line is hotter: the oil burns and the motor's protector opens (judged).
const HOTTEST_K: f32 = 430.0;
