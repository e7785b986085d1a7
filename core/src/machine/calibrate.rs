//! Fixes the constants of a machine from its design point, where its mass flow is 1.

use super::design::{Nominal, SUCTION_DROP_K};
use super::fluid::Fluid;
use super::moist_air;
use super::nuisance::{Nuisance, Other};
use crate::system::Metering;

/// The constants of one machine and today's conditions.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Machine {
    pub(crate) valve: bool,
    pub(crate) capillary: bool,
    pub(crate) receiver: bool,
    pub(crate) regulator: bool,
    pub(crate) space_k: f32,
    /// What a wet coil takes from moist air; none where the coil counts as dry.
    pub(crate) wet: Option<Wet>,
    pub(crate) ambient_k: f32,
    pub(crate) design_space_k: f32,
    pub(crate) design_ambient_k: f32,
    pub(crate) voltage: f32,
    /// Swept flow, m3 a second at a mass flow of 1.
    pub(crate) swept: f32,
    pub(crate) clearance: f32,
    /// Polytropic exponent of the isentropic work.
    pub(crate) exponent: f32,
    pub(crate) efficiency: f32,
    pub(crate) design_ln_ratio: f32,
    pub(crate) shell_loss: f32,
    /// Heat capacity rates of the air, W/K at a mass flow of 1.
    pub(crate) evaporator_air: f32,
    pub(crate) condenser_air: f32,
    pub(crate) evaporator_ua: f32,
    pub(crate) condenser_ua: f32,
    pub(crate) dry_share: f32,
    pub(crate) liquid_share: f32,
    pub(crate) cp_vapor: f32,
    pub(crate) cp_liquid: f32,
    pub(crate) exchange_ntu: f32,
    /// Density of the suction gas over that of saturated gas at its pressure, at the design point.
    pub(crate) inlet_thinning: f32,
    pub(crate) exchange_share: f32,
    pub(crate) metering: f32,
    pub(crate) flash_coefficient: f32,
    /// The valve: superheat at design, opening at design, superheat from shut to that opening.
    pub(crate) valve_superheat: f32,
    pub(crate) valve_opening: f32,
    pub(crate) valve_range: f32,
    pub(crate) drier: f32,
    pub(crate) liquid_fraction: f32,
    pub(crate) dry_fraction: f32,
    pub(crate) condenser_charge: f32,
    pub(crate) evaporator_charge: f32,
    pub(crate) line_charge: f32,
    pub(crate) receiver_contents: f32,
    pub(crate) receiver_room: f32,
    pub(crate) charge: f32,
    pub(crate) evaporator_heat: f32,
    pub(crate) condenser_heat: f32,
    pub(crate) work: f32,
    pub(crate) power_factor: f32,
    pub(crate) ln_rated_current: f32,
    pub(crate) sensible: f32,
    pub(crate) regulator_pa: f32,
    /// Pressure that the suction line takes at the design flow, Pa.
    pub(crate) suction_drop: f32,
    pub(crate) design_ln_suction: f32,
    pub(crate) design_ln_condensing: f32,
    pub(crate) design_subcooling: f32,
}

/// A coil that takes water out of the air.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Wet {
    pub(crate) wet_bulb_k: f32,
    /// Heat over that of a dry coil at the design point.
    pub(crate) design_gain: f32,
    /// How much of it counts, 0 to 1.
    pub(crate) share: f32,
}

impl Wet {
    /// Heat over that of a dry coil, relative to the design point.
    pub(crate) fn gain(&self, space_k: f32, surface_k: f32) -> f32 {
        let dry = (space_k - surface_k).max(1.0);
        let wet = moist_air::drive(space_k, self.wet_bulb_k, surface_k) / dry / self.design_gain;
        1.0 + self.share * (wet - 1.0)
    }
}

/// Volumetric efficiency of a reciprocating compressor with clearance re-expansion.
///
/// 1 + C - C (p2/p1)^(1/n) with n = 1.1 (textbook form, re-expansion near isothermal); never below 2 %.
pub(crate) fn volumetric(clearance: f32, ln_ratio: f32) -> f32 {
    super::positive(1.0 + clearance - clearance * libm::expf(ln_ratio / 1.1) - 0.02, 0.02) + 0.02
}

/// Polytropic work of compression, J/kg, before its efficiency.
pub(crate) fn polytropic(exponent: f32, pa: f32, rho: f32, ln_ratio: f32) -> f32 {
    let k = (exponent - 1.0) / exponent;
    // Heavy molecules cool so little on expansion that the exponent comes to 1 and below it.
    let steps = if k.abs() > 1.0e-5 { libm::expm1f(k * ln_ratio) / k } else { ln_ratio };
    pa / rho * steps
}

/// Efficiency of compression, which falls slowly away from the design ratio.
pub(crate) fn efficiency(base: f32, ln_ratio: f32, design_ln_ratio: f32) -> f32 {
    let off = ln_ratio - design_ln_ratio;
    base / (1.0 + 0.12 * off * off)
}

/// -ln(1 - x), continued with its slope beyond x = 0.95.
pub(crate) fn transfer_units(x: f32) -> f32 {
    const KNEE: f32 = 0.95;
    if x < KNEE { -libm::logf(1.0 - x) } else { 2.995_732 + (x - KNEE) / (1.0 - KNEE) }
}

impl Machine {
    /// No machine yet.
    pub(crate) const NEW: Self = Self {
        valve: false,
        capillary: false,
        receiver: false,
        regulator: false,
        space_k: 0.0,
        wet: None,
        ambient_k: 0.0,
        design_space_k: 0.0,
        design_ambient_k: 0.0,
        voltage: 0.0,
        swept: 0.0,
        clearance: 0.0,
        exponent: 0.0,
        efficiency: 0.0,
        design_ln_ratio: 0.0,
        shell_loss: 0.0,
        evaporator_air: 0.0,
        condenser_air: 0.0,
        evaporator_ua: 0.0,
        condenser_ua: 0.0,
        dry_share: 0.0,
        liquid_share: 0.0,
        cp_vapor: 0.0,
        cp_liquid: 0.0,
        exchange_ntu: 0.0,
        inlet_thinning: 0.0,
        exchange_share: 0.0,
        metering: 0.0,
        flash_coefficient: 0.0,
        valve_superheat: 0.0,
        valve_opening: 0.0,
        valve_range: 0.0,
        drier: 0.0,
        liquid_fraction: 0.0,
        dry_fraction: 0.0,
        condenser_charge: 0.0,
        evaporator_charge: 0.0,
        line_charge: 0.0,
        receiver_contents: 0.0,
        receiver_room: 0.0,
        charge: 0.0,
        evaporator_heat: 0.0,
        condenser_heat: 0.0,
        work: 0.0,
        power_factor: 0.0,
        ln_rated_current: 0.0,
        sensible: 0.0,
        regulator_pa: 0.0,
        suction_drop: 0.0,
        design_ln_suction: 0.0,
        design_ln_condensing: 0.0,
        design_subcooling: 0.0,
    };

    /// Fixes the constants; `None` where the design point lies outside the refrigerant's table.
    pub(crate) fn new(fluid: Fluid<'_>, nominal: &Nominal, other: &Other) -> Option<Self> {
        let z = |n: Nuisance| other.of(n);
        let valve = nominal.valve();
        let capillary = nominal.metering == Metering::Capillary;
        let room = nominal.air_conditioning;

        let evaporating_k =
            nominal.evaporating_k.mean + nominal.evaporating_k.sd * z(Nuisance::DesignEvaporator);
        let condensing_k = nominal.condensing_k.mean + nominal.condensing_k.sd * z(Nuisance::DesignCondenser);
        let suction = nominal.suction_superheat_k;
        let suction_superheat = (suction.mean + suction.sd * z(Nuisance::DesignSuperheat)).max(0.5);
        let own = nominal.evaporator_superheat_k;
        let evaporator_td = (nominal.design_space_k - evaporating_k).max(1.0);
        let superheat = (own.mean + own.sd * z(Nuisance::EvaporatorSuperheat))
            .min(suction_superheat + 0.8)
            .min(0.9 * evaporator_td)
            .max(0.3);
        let sub = nominal.subcooling_k;
        let subcooling = (sub.mean + sub.sd * z(Nuisance::DesignSubcooling)).max(0.2);

        // Both ends of the suction line: the evaporator's pressure and the compressor's.
        let p_evaporating = fluid.dew_pa(evaporating_k)?;
        let drop_k = (SUCTION_DROP_K.mean + SUCTION_DROP_K.sd * z(Nuisance::SuctionDrop)).max(0.05);
        let p_suction = fluid.dew_pa(evaporating_k - drop_k)?;
        let p_condensing = fluid.middle_pa(condensing_k)?;
        let low = fluid.saturation(p_evaporating)?;
        let suction_dew_k = evaporating_k - drop_k;
        let high = fluid.saturation(p_condensing)?;
        let ln_ratio = libm::logf(p_condensing / p_suction);
        if ln_ratio < 0.2 {
            return None;
        }

        // Superheats and the exchange on the suction line.
        let outlet_k = low.dew_k + superheat;
        let inlet_k = suction_dew_k + suction_superheat;
        let outlet = fluid.vapor(p_evaporating, outlet_k)?;
        let inlet = fluid.vapor(p_suction, inlet_k)?;
        let (h_outlet, h_inlet) = (outlet.enthalpy.joules_per_kg(), inlet.enthalpy.joules_per_kg());
        let at_inlet = fluid.saturation(p_suction)?;
        let cp_vapor = (h_inlet - at_inlet.h_vapor) / suction_superheat;
        let liquid_k = high.bubble_k - subcooling;
        let h_liquid = fluid.liquid_h(p_condensing, liquid_k)?;
        let cp_liquid = (high.h_liquid - h_liquid) / subcooling;
        let source_k = if capillary { liquid_k } else { nominal.design_ambient_k };
        let gain = (inlet_k - outlet_k) / (source_k - outlet_k).max(5.0);
        let exchange_ntu = transfer_units(gain.max(0.0)) * (1.0 + 0.13 * z(Nuisance::ExchangeSize)).max(0.1);
        let exchange_share =
            if capillary { (0.75 + 0.17 * z(Nuisance::ExchangeShare)).max(0.0).min(1.0) } else { 0.0 };
        let h_evaporator = h_liquid - exchange_share * (h_inlet - h_outlet);

        // Compressor.
        let clearance = (0.03 + 0.007 * z(Nuisance::Clearance)).max(0.005);
        let rho_inlet = inlet.density.kg_per_m3();
        let swept = 1.0 / (rho_inlet * volumetric(clearance, ln_ratio));
        // Heaviest molecules end compression wet; their dry gas at the same pressure stands for it.
        let isentropic_k =
            fluid.vapor_k_at_s(p_condensing, inlet.entropy.joules_per_kg_k()).unwrap_or(high.dew_k);
        let isentropic = fluid.vapor(p_condensing, isentropic_k)?;
        let exponent = ln_ratio / libm::logf(isentropic.density.kg_per_m3() / rho_inlet);
        if !(exponent > 0.8 && exponent < 2.0) {
            return None;
        }
        let base = 0.60 + 0.06 * room + 0.05 * z(Nuisance::BaseEfficiency);
        let work = polytropic(exponent, p_suction, rho_inlet, ln_ratio) / base;
        let shell_loss = 0.12 + 0.085 * z(Nuisance::ShellLoss);
        let h_discharge = h_inlet + work * (1.0 - shell_loss);

        // Evaporator: air-side effectiveness fixes the air's capacity rate.
        let evaporator_heat = h_outlet - h_evaporator;
        let mean_k = low.dew_k - 0.4 * (low.dew_k - low.bubble_k);
        let effectiveness = 0.48 + 0.14 * room + 0.10 * z(Nuisance::EvaporatorAir);
        let effectiveness = effectiveness.max(0.1).min(0.9);
        let sensible = 0.95 + 0.05 * room + (0.035 + 0.035 * room) * z(Nuisance::SensibleShare);
        let dry_share = 0.3 * (1.0 + 0.25 * z(Nuisance::DryRegion)).max(0.2);
        let td_mean = nominal.design_space_k - mean_k;
        let two_phase = evaporator_heat - cp_vapor * superheat;
        let units = transfer_units(superheat / evaporator_td);
        // (1 - f) G td = two_phase with f = units cp / (r G)  ->  G = two_phase / td + units cp / r
        let conductance = two_phase / td_mean + units * cp_vapor / dry_share;
        let dry_fraction = units * cp_vapor / (dry_share * conductance);
        let evaporator_air = conductance / effectiveness;
        let evaporator_ua = -evaporator_air * libm::logf(1.0 - effectiveness);

        let wet = (room > 0.0).then(|| {
            let drive = moist_air::drive(nominal.design_space_k, nominal.design_wet_bulb_k, mean_k);
            let wet_bulb_k = nominal.wet_bulb_k.mean + nominal.wet_bulb_k.sd * z(Nuisance::WetBulb);
            Wet { wet_bulb_k, design_gain: drive / td_mean.max(1.0), share: room }
        });

        // Condenser.
        let condenser_td = (condensing_k - nominal.design_ambient_k).max(1.0);
        let liquid_share = 0.5 * (1.0 + 0.25 * z(Nuisance::LiquidRegion)).max(0.2);
        let bubble_td = (high.bubble_k - nominal.design_ambient_k).max(1.0);
        let units = transfer_units(subcooling / bubble_td);
        let main = h_discharge - high.h_liquid;
        let conductance = main / condenser_td + units * cp_liquid / liquid_share;
        let liquid_fraction = units * cp_liquid / (liquid_share * conductance);
        // The air of an air conditioner's condenser warms by 8 to 11 K at 11 to 14 K of difference (common practice).
        let effectiveness = 0.60 + 0.12 * room + 0.085 * z(Nuisance::CondenserAir);
        let effectiveness = effectiveness.max(0.1).min(0.9);
        let condenser_air = conductance / effectiveness;
        let condenser_ua = -condenser_air * libm::logf(1.0 - effectiveness);

        // Metering device.
        let drier = 0.012 * p_condensing * (1.0 + 0.43 * z(Nuisance::CleanDrier)).max(0.1);
        let flash_coefficient = (0.72 + 0.085 * z(Nuisance::CapillaryCoefficient)).max(0.2).min(0.9);
        let p_inlet = p_condensing - drier;
        let driving = if valve {
            p_inlet - p_evaporating
        } else {
            p_inlet - flash_coefficient * fluid.bubble_pa(liquid_k)?
        };
        let valve_opening = 1.0 / (1.0 + (0.33 + 0.17 * z(Nuisance::ValveOversize)).max(0.05));
        let electronic = nominal.metering == Metering::ElectronicValve;
        let valve_range = (if electronic { 2.5 } else { 4.0 } + 1.0 * z(Nuisance::ValveRange)).max(1.0);
        let opening = if valve { valve_opening } else { 1.0 };
        let metering = 1.0 / (opening * libm::sqrtf(driving.max(1.0) * high.rho_liquid));

        // Current: rated-load amperes over the design current, common practice 1.15 to 1.4.
        let ln_rated_current = -libm::logf(1.25) + 0.085 * z(Nuisance::RatedCurrent);

        Some(Self {
            valve,
            capillary,
            receiver: nominal.receiver,
            regulator: nominal.regulator,
            wet,
            space_k: nominal.space_k.mean + nominal.space_k.sd * z(Nuisance::Space),
            ambient_k: nominal.ambient_k.mean + nominal.ambient_k.sd * z(Nuisance::Ambient),
            design_space_k: nominal.design_space_k,
            design_ambient_k: nominal.design_ambient_k,
            voltage: (nominal.voltage.mean + nominal.voltage.sd * z(Nuisance::Voltage)).max(0.3),
            swept: swept * (1.0 + 0.05 * z(Nuisance::Pumping)),
            clearance,
            exponent,
            efficiency: base * (1.0 + 0.043 * z(Nuisance::Isentropic)),
            design_ln_ratio: ln_ratio,
            shell_loss,
            evaporator_air,
            condenser_air,
            evaporator_ua: evaporator_ua * (1.0 + 0.07 * z(Nuisance::EvaporatorUa)),
            condenser_ua: condenser_ua * (1.0 + 0.07 * z(Nuisance::CondenserUa)),
            dry_share,
            liquid_share,
            cp_vapor,
            cp_liquid,
            exchange_ntu,
            inlet_thinning: rho_inlet / at_inlet.rho_vapor,
            exchange_share,
            metering: metering * (1.0 + 0.026 * z(Nuisance::MeteringConstant)),
            flash_coefficient,
            valve_superheat: superheat,
            valve_opening,
            valve_range,
            drier,
            liquid_fraction,
            dry_fraction,
            condenser_charge: (1.0 + 0.43 * z(Nuisance::CondenserCharge)).max(0.1),
            evaporator_charge: (0.25 + 0.13 * z(Nuisance::EvaporatorCharge)).max(0.0),
            line_charge: (0.18 + 0.10 * z(Nuisance::LineCharge)).max(0.0),
            receiver_contents: (0.30 + 0.085 * z(Nuisance::ReceiverContents)).max(0.02),
            receiver_room: (0.30 + 0.10 * z(Nuisance::ReceiverRoom)).max(0.02),
            charge: 0.026 * z(Nuisance::Charge),
            evaporator_heat,
            condenser_heat: h_discharge - h_liquid,
            work,
            power_factor: (0.85 + 0.06 * z(Nuisance::PowerFactor)).max(0.3).min(0.99),
            ln_rated_current,
            sensible,
            suction_drop: p_evaporating - p_suction,
            regulator_pa: p_suction * 1.2 * (1.0 + 0.13 * z(Nuisance::RegulatorSetting)).max(0.5),
            design_ln_suction: libm::logf(p_evaporating),
            design_ln_condensing: libm::logf(p_condensing),
            design_subcooling: subcooling,
        })
    }
}
