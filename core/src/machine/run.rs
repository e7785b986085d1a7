//! One trial of the machine: four unknowns in, four residuals and everything a technician could read out.

use super::calibrate::{Machine, efficiency, polytropic, transfer_units, volumetric};
use super::fluid::Fluid;
use super::positive;
use crate::cause::Cause;

/// The unknowns of the model.
///
/// `[ln p_evaporating, ln p_condensing, superheat, subcooling]`, the last two negative where the outlet is wet.
pub(crate) type Unknowns = [f32; 4];

/// Up to two causes with their severities, as in the report.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Fault([(Cause, f32); 2]);

impl Fault {
    pub(crate) const NONE: Self = Self::new(Cause::None, 0.0);

    /// One cause.
    pub(crate) const fn new(cause: Cause, severity: f32) -> Self {
        Self([(cause, severity), (Cause::None, 0.0)])
    }
    /// Two causes at once.
    pub(crate) const fn two(one: (Cause, f32), other: (Cause, f32)) -> Self {
        Self([one, other])
    }

    fn severity(self, cause: Cause) -> f32 {
        let [one, other] = self.0.map(|(named, severity)| if named == cause { severity } else { 0.0 });
        one + other
    }
}

/// Kelvin of extended superheat in the wet region that stand for an all-liquid outlet.
const WET_SPAN_K: f32 = 40.0;
/// Kelvin over which a starved evaporator's outlet comes to the space's temperature.
const OUTLET_CORNER_K: f32 = 0.6;
/// Kelvin of extended subcooling in the wet region that stand for an all-vapour outlet.
const FLASH_SPAN_K: f32 = 60.0;

/// Exponent of the flow left over that the work per kilogram rises with: gas that leaks back was compressed for nothing
/// and comes back hot, and friction stays, while a stroke that draws less also works less (judged).
const WORK_OF_LOST_FLOW: f32 = 0.65;

/// Vapour in what the metering device passes, which sets where between bubble and dew the evaporator begins (common
/// practice: a quarter to a third flashes).
const INLET_VAPOR: f32 = 0.3;
/// The share of the liquid line's refrigerant that lies behind the drier (judged); on a capillary machine the drier sits
/// at the capillary's inlet, with nothing behind it.
const BEHIND_DRIER: f32 = 0.5;

/// Transfer units between the liquid line and the air around it at the design flow: a metre or two of bare tube round a small
/// machine's stream, tens of metres round a large one's (judged: 0.05 to 0.2). They grow as the flow falls; the sheet's
/// subcooling holds what the design flow loses.
const LIQUID_LINE_NTU: f32 = 0.1;
/// Share of the design flow below which nothing is told apart any more.
const LEAST_FLOW: f32 = 0.02;

/// What the machine does at one trial of the unknowns. Temperatures in kelvin, pressures in pascal.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Run {
    /// Imbalance of flow, evaporator heat, condenser heat and charge, each relative to its design value.
    pub(crate) residuals: [f32; 4],
    pub(crate) evaporating_dew_k: f32,
    pub(crate) suction_dew_k: f32,
    /// Mean of bubble and dew at the gauge's pressure, non-condensables included.
    pub(crate) condensing_k: f32,
    pub(crate) outlet_k: f32,
    pub(crate) inlet_k: f32,
    pub(crate) discharge_h: f32,
    pub(crate) condensing_pa: f32,
    pub(crate) dew_discharge_k: f32,
    /// At a clamp on the liquid line, before the drier.
    pub(crate) liquid_k: f32,
    /// What the line has given to the air around it beyond what it gives at the design flow, K.
    pub(crate) liquid_drift_k: f32,
    pub(crate) drier_outlet_k: f32,
    pub(crate) bubble_k: f32,
    /// Just behind the metering device, and in the middle of the condenser.
    pub(crate) evaporator_inlet_k: f32,
    pub(crate) condenser_middle_k: f32,
    pub(crate) supply_k: f32,
    pub(crate) exhaust_k: f32,
    /// Natural logarithm of current over rated-load current, and of power over design power.
    pub(crate) ln_current: f32,
    pub(crate) ln_power: f32,
    /// Capacity and COP over their design values.
    pub(crate) capacity: f32,
    pub(crate) cop: f32,
}

impl Run {
    /// No run yet.
    pub(crate) const NEW: Self = Self {
        residuals: [0.0; 4],
        evaporating_dew_k: 0.0,
        suction_dew_k: 0.0,
        condensing_k: 0.0,
        outlet_k: 0.0,
        inlet_k: 0.0,
        discharge_h: 0.0,
        condensing_pa: 0.0,
        dew_discharge_k: 0.0,
        liquid_k: 0.0,
        liquid_drift_k: 0.0,
        drier_outlet_k: 0.0,
        bubble_k: 0.0,
        evaporator_inlet_k: 0.0,
        condenser_middle_k: 0.0,
        supply_k: 0.0,
        exhaust_k: 0.0,
        ln_current: 0.0,
        ln_power: 0.0,
        capacity: 1.0,
        cop: 1.0,
    };

    /// The discharge gas's temperature; its dew point where the compressor draws so wet that it leaves no superheat.
    pub(crate) fn discharge_k(&self, fluid: Fluid<'_>) -> f32 {
        fluid.vapor_k_at_h(self.condensing_pa, self.discharge_h).unwrap_or(self.dew_discharge_k)
    }
}

impl Machine {
    /// Tries the unknowns; `None` outside the refrigerant's table.
    pub(crate) fn run(&self, fluid: Fluid<'_>, fault: Fault, x: &Unknowns) -> Option<Run> {
        let [ln_evaporating, ln_condensing, e, c] = *x;
        let p_evaporating = libm::expf(ln_evaporating);
        let p_condensing = libm::expf(ln_condensing);
        let low = fluid.saturation(p_evaporating)?;
        let high = fluid.saturation(p_condensing)?;
        let extended = positive(e, 0.6);
        let wet = (extended - e) / WET_SPAN_K;
        // Gas leaves no warmer than the space; what is extended beyond that is dry surface alone.
        let td = positive(self.space_k - low.dew_k, 1.0);
        let superheat = td - positive(td - extended, OUTLET_CORNER_K);
        let subcooling = positive(c, 0.4);
        let outlet_vapor = (subcooling - c) / FLASH_SPAN_K;

        // Liquid side.
        let liquid_k = high.bubble_k - subcooling;
        let h_liquid = high.h_liquid - self.cp_liquid * subcooling + outlet_vapor * high.latent();

        // Suction line: from the liquid on a capillary machine, else from the surroundings.
        let outlet_k = low.dew_k + superheat;
        let h_outlet = low.h_vapor + self.cp_vapor * superheat - wet * low.latent();
        let source_k = if self.capillary { liquid_k } else { self.ambient_k };
        let delivered_pa = if self.regulator {
            // The regulator passes the evaporator's pressure up to its setting, rounded at the corner.
            let above = p_evaporating - self.regulator_pa;
            p_evaporating - positive(above, 0.05 * self.regulator_pa)
        } else {
            p_evaporating
        };
        // The line's drop goes with the dynamic pressure: flow squared over density, and so, at a nearly constant
        // volume flow, with the pressure itself.
        let inlet_pa = delivered_pa * (1.0 - self.suction_drop / libm::expf(self.design_ln_suction));
        let inlet = fluid.saturation(inlet_pa)?;

        let excess = fault.severity(Cause::NonCondensables);
        let discharge_pa = p_condensing * (1.0 + excess);
        let ln_ratio = libm::logf(discharge_pa / inlet_pa);
        let weak = fault.severity(Cause::WeakCompressor);
        let drawn = self.swept * volumetric(self.clearance, ln_ratio) * (1.0 - weak);
        // What the line takes up warms a small flow more: the transfer units go with the flow to the power -0.2 where the
        // gas film limits them (turbulent, Dittus and Boelter), -1 where insulation or solder does; -3/4 is judged. The
        // flow depends on the gas that the exchange gives, but only a little; here the gas is as dense, beside saturated
        // gas, as at the design point.
        let sizing_flow = drawn * inlet.rho_vapor * self.inlet_thinning;
        let root = libm::sqrtf(sizing_flow.max(0.1));
        let ntu = self.exchange_ntu / (root * libm::sqrtf(root));
        let gained = (source_k - outlet_k) * (1.0 - libm::expf(-ntu));
        let h_inlet = h_outlet + self.cp_vapor * gained;
        let inlet_extended = (h_inlet - inlet.h_vapor) / self.cp_vapor;
        let inlet_superheat = positive(inlet_extended, 0.4);
        let inlet_wet = (inlet_superheat - inlet_extended) * self.cp_vapor / inlet.latent();
        let inlet_k = inlet.dew_k + inlet_superheat;
        let inlet_state = fluid.vapor(inlet_pa, inlet_k)?;
        let rho_inlet = inlet_state.density.kg_per_m3();

        // Compressor.
        let wetness = inlet_wet.max(0.0).min(0.5);
        let flow = drawn * rho_inlet / (1.0 - wetness);
        let work = polytropic(self.exponent, inlet_pa, rho_inlet, ln_ratio.max(0.05))
            / efficiency(self.efficiency, ln_ratio, self.design_ln_ratio)
            / if weak > 0.0 { libm::powf(1.0 - weak, WORK_OF_LOST_FLOW) } else { 1.0 };
        // What the shell gives off goes with its warmth, not with the flow: a small flow loses more of its heat.
        let given_off = self.shell_loss / (1.0 - self.shell_loss) * self.work / (work * flow.max(LEAST_FLOW));
        let h_discharge = h_inlet + work / (1.0 + given_off);

        // Metering device behind the liquid line and its drier. As flow vanishes the line takes its surroundings' warmth,
        // whatever the subcooling at the condenser's outlet.
        let line_ntu = LIQUID_LINE_NTU / flow.max(LEAST_FLOW);
        let drift = libm::expf(-LIQUID_LINE_NTU) - libm::expf(-line_ntu);
        let liquid_drift_k = drift * (liquid_k - self.ambient_k);
        let line_k = liquid_k - liquid_drift_k;
        let blocked = fault.severity(Cause::LiquidLineRestriction);
        let passage = (1.0 - blocked) * (1.0 - blocked);
        let drop = self.drier * flow * flow / passage;
        // The drop can never take more than the pressure there is.
        let p_device = discharge_pa - drop / (1.0 + drop / (0.9 * discharge_pa));
        let p_device = p_device.max(1.05 * p_evaporating);
        let device = fluid.saturation(p_device)?;
        let flash_k = line_k - device.bubble_k;
        let flashing = positive(flash_k, 0.4);
        let flash_vapor = flashing * self.cp_liquid / device.latent() + outlet_vapor;
        let drier_outlet_k = line_k - flashing;
        let specific = 1.0 / device.rho_liquid
            + flash_vapor.min(1.0) * (1.0 / device.rho_vapor - 1.0 / device.rho_liquid);
        let driving = if self.valve {
            p_device - p_evaporating
        } else {
            p_device - self.flash_coefficient * fluid.bubble_pa(drier_outlet_k)?
        };
        let driving = positive(driving, 0.02 * p_condensing);
        let flood = fault.severity(Cause::FloodBack);
        let opening = if self.valve {
            let slope = self.valve_opening / self.valve_range;
            let wanted = self.valve_opening + slope * (e - self.valve_superheat);
            let opened = positive(wanted - 0.02, 0.05) + 0.02;
            let opened = opened - positive(opened - 1.0, 0.05);
            // A valve that hangs open cannot close below a floor.
            let floor = if flood > 0.0 { self.valve_opening * (1.0 + flood) } else { 0.0 };
            opened + positive(floor - opened, 0.02)
        } else {
            1.0 + flood
        };
        let underfed = 1.0 - fault.severity(Cause::MeteringUnderfeed);
        let metered = self.metering * underfed * opening * libm::sqrtf(driving / specific);

        // Evaporator.
        let air = 1.0 - fault.severity(Cause::EvaporatorAirflow);
        let c_air = self.evaporator_air * air;
        let ua = self.evaporator_ua * libm::sqrtf(air);
        let conductance = c_air * (1.0 - libm::expf(-ua / c_air));
        let mean_k = low.dew_k - 0.4 * (low.dew_k - low.bubble_k);
        let gain = self.wet.map_or(1.0, |wet| wet.gain(self.space_k, mean_k));
        let dry = transfer_units(extended / td) * flow * self.cp_vapor / (self.dry_share * conductance);
        let dry = 1.0 - positive(1.0 - dry, 0.05);
        let h_evaporator = h_liquid - self.exchange_share * self.cp_vapor * gained;
        let evaporator_heat = flow * (h_outlet - h_evaporator);
        let transferred =
            conductance * (1.0 - dry) * gain * (self.space_k - mean_k) + flow * self.cp_vapor * superheat;

        // Condenser; the liquid region takes its share of the surface, and gas that cannot condense blankets some.
        let air = 1.0 - fault.severity(Cause::CondenserAirflow);
        let c_air_condenser = self.condenser_air * air;
        let ua = self.condenser_ua * libm::sqrtf(air) * (1.0 - (1.2 * excess).min(0.6));
        let conductance = c_air_condenser * (1.0 - libm::expf(-ua / c_air_condenser));
        let bubble_td = positive(high.bubble_k - self.ambient_k, 1.0);
        let liquid_region = transfer_units(subcooling / bubble_td) * flow * self.cp_liquid
            / (self.liquid_share * conductance);
        let rejected = flow * (h_discharge - high.h_liquid - outlet_vapor * high.latent());
        let to_air = conductance * positive(1.0 - liquid_region, 0.05) * (high.middle_k() - self.ambient_k);
        let condenser_heat = flow * (h_discharge - h_liquid);

        // Charge: where the refrigerant stands, relative to the design point.
        let condenser_part =
            self.condenser_charge * (liquid_region - self.liquid_fraction - 0.6 * outlet_vapor);
        let evaporator_part = self.evaporator_charge * ((self.dry_fraction - dry) + 3.0 * wet);
        let behind = if self.capillary { 0.0 } else { BEHIND_DRIER };
        let line_vapor = outlet_vapor + behind * (flash_vapor - outlet_vapor);
        let line_part = -self.line_charge * (4.0 * line_vapor).min(1.0);
        let added = self.charge - fault.severity(Cause::Undercharge) + fault.severity(Cause::Overcharge);
        let left = added - evaporator_part - line_part;
        let left = if self.receiver {
            // The receiver takes the difference until it is empty or full.
            0.03 * left + positive(left - self.receiver_room, 0.02)
                - positive(-left - self.receiver_contents, 0.02)
        } else {
            left
        };

        let power = flow * work / self.work;
        let active = power * self.power_factor / self.voltage;
        let magnetising =
            (1.0 - self.power_factor * self.power_factor) * self.voltage * self.voltage * self.voltage;
        let current = libm::sqrtf(active * active + magnetising);
        let capacity = evaporator_heat / self.evaporator_heat;
        let shown = if excess > 0.0 { fluid.middle_k(discharge_pa)? } else { high.middle_k() };
        let dew_discharge = if excess > 0.0 { fluid.dew_k(discharge_pa)? } else { high.dew_k };
        Some(Run {
            residuals: [
                libm::logf(flow / metered),
                (evaporator_heat - transferred) / self.evaporator_heat,
                (rejected - to_air) / self.condenser_heat,
                3.0 * (condenser_part - left),
            ],
            evaporating_dew_k: low.dew_k,
            suction_dew_k: inlet.dew_k,
            condensing_k: shown,
            outlet_k,
            inlet_k,
            discharge_h: h_discharge,
            condensing_pa: p_condensing,
            dew_discharge_k: dew_discharge,
            liquid_k: line_k,
            liquid_drift_k,
            drier_outlet_k,
            bubble_k: high.bubble_k,
            evaporator_inlet_k: low.bubble_k + INLET_VAPOR * (low.dew_k - low.bubble_k),
            condenser_middle_k: high.middle_k(),
            // Air leaves no colder than the coil.
            supply_k: mean_k
                + positive(self.space_k - self.sensible * evaporator_heat / (c_air * gain) - mean_k, 0.3),
            exhaust_k: self.ambient_k + condenser_heat / c_air_condenser,
            ln_current: libm::logf(current) + self.ln_rated_current,
            ln_power: libm::logf(positive(power, 1e-3)),
            capacity,
            cop: capacity / positive(power, 1e-3),
        })
    }

    /// Where to start looking for today's balance: the design point.
    pub(crate) fn first_guess(&self) -> Unknowns {
        [self.design_ln_suction, self.design_ln_condensing, self.valve_superheat, self.design_subcooling]
    }
}
