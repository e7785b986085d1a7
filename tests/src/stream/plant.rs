//! The machine itself: masses, pressures and temperatures moved on in time.

use super::fluid::Fluid;

/// Step of the integration, s.
pub const STEP_S: f64 = 0.1;
/// Isentropic exponent used for compression work and volumetric efficiency of every refrigerant.
const EXPONENT: f64 = 1.14;
/// Specific heat of vapor, J/(kg K), and of liquid, for every refrigerant.
const VAPOR_HEAT: f64 = 900.0;
const LIQUID_HEAT: f64 = 1400.0;

/// How the metering device works.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Metering {
    /// Always open.
    Capillary,
    /// Follows the superheat at the evaporator outlet, shuts when the compressor stands.
    Valve,
}

/// What a machine is built like; everything in SI units and degC.
#[derive(Clone, Debug)]
pub struct Build {
    /// The refrigerant.
    pub fluid: Fluid,
    /// The metering device.
    pub metering: Metering,
    /// Set point of the suction pressure regulator, Pa, where one is fitted.
    pub regulator: Option<f64>,
    /// Design temperatures: space, ambient, evaporating, condensing.
    pub space: f64,
    /// Air onto the condenser at the design point.
    pub ambient: f64,
    /// Evaporating temperature at the design point.
    pub evaporating: f64,
    /// Condensing temperature at the design point.
    pub condensing: f64,
    /// Capacity at the design point, W.
    pub capacity: f64,
    /// Part of the capacity that the space needs at the design point.
    pub load: f64,
    /// Heat capacity of the space, J/K.
    pub space_heat: f64,
    /// Swept volume flow, m3/s.
    pub swept: f64,
    /// Clearance part of the swept volume.
    pub clearance: f64,
    /// Conductance of the metering device, kg/s per sqrt(kg/m3 Pa).
    pub metering_size: f64,
    /// Conductances air to wall and wall to refrigerant, W/K.
    pub evaporator_air: f64,
    /// Wall to refrigerant in the evaporator.
    pub evaporator_wall: f64,
    /// Air to wall in the condenser.
    pub condenser_air: f64,
    /// Refrigerant to wall in the condenser.
    pub condenser_wall: f64,
    /// Heat capacities of the walls, J/K.
    pub evaporator_heat: f64,
    /// Heat capacity of the condenser.
    pub condenser_heat: f64,
    /// Vapor volumes, m3: evaporator, compressor suction, high side.
    pub evaporator_volume: f64,
    /// Volume between the suction service valve and the pistons.
    pub shell_volume: f64,
    /// Volume of the high side.
    pub high_volume: f64,
    /// Liquid that wets the whole evaporator, kg.
    pub full_mass: f64,
    /// Part of the way to ambient that the suction line takes at the design flow.
    pub line_gain: f64,
    /// Time constant of the suction line's wall, s.
    pub line_lag: f64,
    /// Superheat the valve holds, K.
    pub valve_superheat: f64,
    /// Rated load of the plate, A; locked rotor, A; rated voltage, V.
    pub rated: f64,
    /// Locked-rotor current.
    pub locked: f64,
    /// Rated voltage.
    pub volts: f64,
    /// Magnetising current, A.
    pub magnetising: f64,
    /// Shaft power at the design point, W, and amperes per watt at rated voltage.
    pub design_power: f64,
    /// Amperes per watt at rated voltage.
    pub amps_per_watt: f64,
    /// Time to come up to speed, s.
    pub acceleration: f64,
    /// Part of the shaft power at the design point that liquid in the compressor adds.
    pub liquid_work: f64,
    /// Time in which a running compressor clears itself of liquid, s.
    pub clearing: f64,
    /// Liquid in the condenser or receiver at the design point, kg.
    pub reserve: f64,
}

/// What is wrong with it.
#[derive(Clone, Copy, Debug, Default)]
pub struct Faults {
    /// Leak of the compressor's valves from high to low side, as a part of the design flow.
    pub leak: f64,
    /// Friction, as a part of the design power.
    pub friction: f64,
    /// Amperes that start gear adds when it stays in, as a part of the rated load.
    pub gear: f64,
}

/// What controls and people do to it at the moment.
#[derive(Clone, Copy, Debug)]
pub struct Hands {
    /// Whether the compressor is energised.
    pub on: bool,
    /// Whether its rotor is locked.
    pub locked: bool,
    /// Whether start gear stays in.
    pub gear_in: bool,
    /// Suction service valve open.
    pub suction_valve: bool,
    /// Liquid-line valve open.
    pub liquid_valve: bool,
    /// Heat into the evaporator, W.
    pub heater: f64,
    /// Factor on the evaporator's air side.
    pub fan: f64,
    /// Factor on the opening of the valve, for hunting.
    pub valve: f64,
    /// Supply voltage, V.
    pub volts: f64,
    /// Air onto the condenser, degC.
    pub ambient: f64,
    /// Heat into the space beside its walls, W.
    pub door: f64,
}

/// The state that is moved on.
#[derive(Clone, Debug)]
pub struct Plant {
    /// How it is built.
    pub build: Build,
    /// What is wrong.
    pub faults: Faults,
    /// Pressure in the evaporator, Pa.
    pub evaporator: f64,
    /// Pressure at the compressor's suction, Pa.
    pub suction: f64,
    /// Pressure on the high side, Pa.
    pub discharge: f64,
    /// Liquid in the evaporator, kg.
    pub evaporator_liquid: f64,
    /// Liquid in the condenser or receiver, kg.
    pub condenser_liquid: f64,
    /// Liquid in the suction line and compressor, kg.
    pub slug: f64,
    /// Temperatures of the walls, degC.
    pub evaporator_wall: f64,
    /// Condenser wall.
    pub condenser_wall: f64,
    /// Space air.
    pub space: f64,
    /// Pipe at the evaporator outlet.
    pub outlet: f64,
    /// Pipe at the compressor inlet.
    pub line: f64,
    /// Pipe at the compressor outlet.
    pub discharge_line: f64,
    /// Liquid line.
    pub liquid_line: f64,
    /// Opening of the valve, 1 at the design point.
    pub opening: f64,
    /// Current, A.
    pub current: f64,
    /// Time since it was energised, s.
    pub running: f64,
}

impl Plant {
    /// Makes a machine that has stood for long, everything at rest: the evaporator side at one temperature.
    pub fn at_rest(build: Build, space: f64, ambient: f64) -> Self {
        let low = build.fluid.pressure(space.min(ambient));
        let high = match build.metering {
            Metering::Capillary => low,
            Metering::Valve => build.fluid.pressure(ambient),
        };
        let full = build.full_mass;
        // What stands as vapor at rest beyond what does at the design point has evaporated from the liquid.
        let density = |pascals: f64| build.fluid.vapor_density(pascals, build.fluid.temperature(pascals));
        let vapor = |low: f64, high: f64| {
            (build.evaporator_volume + build.shell_volume) * density(low) + build.high_volume * density(high)
        };
        let running = vapor(build.fluid.pressure(build.evaporating), build.fluid.pressure(build.condensing));
        let more_vapor = vapor(low, high) - running;
        let (evaporator_liquid, condenser_liquid) = match build.metering {
            Metering::Capillary => ((0.85 * full + build.reserve - more_vapor).max(0.02 * full), 0.0),
            Metering::Valve => (0.6 * full, build.reserve + 0.3 * full),
        };
        Self {
            evaporator: low,
            suction: low,
            discharge: high,
            evaporator_liquid,
            condenser_liquid,
            slug: 0.0,
            evaporator_wall: space,
            condenser_wall: ambient,
            space,
            outlet: space,
            line: ambient,
            discharge_line: ambient + 0.5,
            liquid_line: ambient,
            opening: if build.metering == Metering::Valve { 0.0 } else { 1.0 },
            current: 0.0,
            running: 0.0,
            faults: Faults::default(),
            build,
        }
    }

    /// Moves the machine on by one step.
    pub fn step(&mut self, hands: &Hands) {
        let dt = STEP_S;
        let b = &self.build;
        let f = &b.fluid;
        let te = f.temperature(self.evaporator);
        let ts = f.temperature(self.suction);
        let tc = f.temperature(self.discharge);
        let (latent_e, latent_c) = (f.latent(te), f.latent(tc));
        let turning = hands.on && !hands.locked;
        self.running = if hands.on { self.running + dt } else { 0.0 };
        let speed = if turning { (self.running / b.acceleration).min(1.0).powi(2) } else { 0.0 };

        // Compressor.
        let suction_density = f.vapor_density(self.suction, ts) * 0.93;
        let ratio = (self.discharge / self.suction).max(1.0);
        let filling = (1.0 - b.clearance * (ratio.powf(1.0 / EXPONENT) - 1.0)).max(0.0);
        let pumped = speed * b.swept * filling * suction_density;
        let design_flow = b.capacity / f.latent(b.evaporating);
        let leak_size =
            self.faults.leak * design_flow / (f.pressure(b.condensing) - f.pressure(b.evaporating));
        let leaked = leak_size * (self.discharge - self.suction).max(0.0);
        let cleared = if self.running > 0.5 { self.slug / b.clearing * speed } else { 0.0 };

        // Metering device.
        let liquid_there = self.condenser_liquid / (self.condenser_liquid + 0.04 * b.full_mass);
        let difference = self.discharge - self.evaporator;
        let open = if hands.liquid_valve { self.opening * hands.valve } else { 0.0 };
        let conductance = open * b.metering_size;
        let liquid_density = f.liquid_density(tc);
        let vapor_density = f.vapor_density(self.discharge, tc);
        let flow = |density: f64| conductance * (density * difference.max(0.0)).sqrt();
        let metered_liquid = liquid_there * flow(liquid_density);
        let metered_vapor = (1.0 - liquid_there) * flow(vapor_density);
        let flash = (LIQUID_HEAT * (tc - 3.0 - te) / latent_e).clamp(0.0, 0.8);

        // Evaporator.
        let wet = (self.evaporator_liquid / b.full_mass).clamp(0.0, 1.0);
        let pull = self.evaporator_wall - te;
        let boiling_heat =
            if pull > 0.0 { b.evaporator_wall * wet * pull } else { 0.6 * b.evaporator_wall * pull };
        let boiled = boiling_heat / latent_e;
        let boiled = if boiled > 0.0 { boiled.min(self.evaporator_liquid / (4.0 * dt)) } else { boiled };
        let carried = if hands.suction_valve { 1.0 } else { 0.0 };
        let over = carried * ((self.evaporator_liquid - 1.6 * b.full_mass).max(0.0) / 20.0) * speed;

        // Suction line with its valve and regulator: flow in proportion to the pressure difference, implicit in it.
        let evaporator_store = b.evaporator_volume * f.vapor_density(self.evaporator, te) / self.evaporator;
        let shell_store = b.shell_volume * suction_density / self.suction;
        let throttle = b.regulator.map_or(1.0, |set| ((set - self.suction) / (0.08 * set)).clamp(0.004, 1.0));
        let line_size = if hands.suction_valve { throttle * design_flow / 4000.0 } else { 0.0 };
        let implicit = 1.0 + line_size * dt * (1.0 / evaporator_store + 1.0 / shell_store);
        let through = line_size * (self.evaporator - self.suction) / implicit;

        // Condenser.
        let push = tc - self.condenser_wall;
        let condensed = b.condenser_wall * push / latent_c;
        let condensed = condensed.max(-self.condenser_liquid / (10.0 * dt));
        let high_store = b.high_volume * vapor_density / self.discharge;

        // Balances of mass.
        self.evaporator +=
            dt * (boiled + flash * metered_liquid + metered_vapor - through) / evaporator_store;
        self.suction += dt * (through + leaked + cleared - pumped) / shell_store;
        self.discharge += dt * (pumped - leaked - condensed - metered_vapor) / high_store;
        self.evaporator = self.evaporator.max(500.0);
        self.suction = self.suction.max(500.0);
        self.discharge = self.discharge.max(1000.0);
        self.evaporator_liquid =
            (self.evaporator_liquid + dt * ((1.0 - flash) * metered_liquid - boiled - over)).max(0.0);
        self.condenser_liquid = (self.condenser_liquid + dt * (condensed - metered_liquid)).max(0.0);
        self.slug = (self.slug + dt * (over - cleared)).max(0.0);

        // Balances of heat.
        let from_air = hands.fan * b.evaporator_air * (self.space - self.evaporator_wall);
        self.evaporator_wall += dt * (from_air + hands.heater - boiled * latent_e) / b.evaporator_heat;
        let leak_in = b.load * b.capacity * (hands.ambient - self.space) / (b.ambient - b.space).max(5.0);
        self.space += dt * (leak_in + hands.door - from_air) / b.space_heat;
        let hot = (self.discharge_line - tc).max(0.0) * VAPOR_HEAT * pumped;
        let to_air = b.condenser_air * (self.condenser_wall - hands.ambient);
        self.condenser_wall += dt * (condensed * latent_c + hot - to_air) / b.condenser_heat;

        // Pipes.
        let dry = 1.0 - wet;
        let leaving = te + (self.space - te).max(0.0) * (1.0 - (-6.0 * dry).exp()) * 0.9;
        let flows = pumped > 0.05 * design_flow;
        let outlet_target = if flows { leaving } else { self.evaporator_wall };
        self.outlet += dt * (outlet_target - self.outlet) / if flows { 10.0 } else { 120.0 };
        let gain = 1.0 - (1.0 - b.line_gain).powf((design_flow / pumped.max(0.02 * design_flow)).min(4.0));
        let vapor_in = leaving + (hands.ambient - leaving) * gain;
        let wetted = (self.slug / (0.1 * b.full_mass)).min(1.0);
        let line_target = if !flows {
            hands.ambient
        } else if hands.suction_valve {
            wetted * ts + (1.0 - wetted) * vapor_in.max(ts)
        } else {
            hands.ambient
        };
        let lag = if flows { b.line_lag } else { 500.0 };
        self.line += dt * (line_target - self.line) / lag;
        let discharge_target = if flows {
            let rise = (ratio.powf((EXPONENT - 1.0) / EXPONENT) - 1.0) * (self.line + 273.0) * 1.25;
            self.line + rise * (1.0 - 0.6 * wetted) + 12.0
        } else {
            hands.ambient
        };
        self.discharge_line +=
            dt * (discharge_target - self.discharge_line) / if flows { 90.0 } else { 900.0 };
        let liquid_target = if flows { tc - 0.3 * (tc - hands.ambient) } else { hands.ambient };
        self.liquid_line += dt * (liquid_target - self.liquid_line) / if flows { 20.0 } else { 300.0 };

        // The valve follows the superheat at the outlet, slowly; it shuts when the compressor stands.
        if b.metering == Metering::Valve {
            let wanted = if turning { 1.0 + 0.12 * (leaving - te - b.valve_superheat) } else { 0.0 };
            self.opening += dt * (wanted.clamp(0.0, 1.8) - self.opening) / if turning { 12.0 } else { 8.0 };
        }

        // Motor.
        let work = EXPONENT / (EXPONENT - 1.0) * self.suction / suction_density.max(0.01)
            * (ratio.powf((EXPONENT - 1.0) / EXPONENT) - 1.0);
        let liquid = b.liquid_work * (self.slug / (0.25 * b.full_mass)).min(1.0);
        let power = pumped * work / 0.62 + b.design_power * (0.12 + self.faults.friction + liquid) * speed;
        let supply = hands.volts / b.volts;
        let load = power * b.amps_per_watt / supply;
        let running = ((b.magnetising * supply).powi(2) + load * load).sqrt();
        let gear = if hands.gear_in { self.faults.gear * b.rated * supply } else { 0.0 };
        self.current = if !hands.on {
            0.0
        } else if hands.locked || self.running < b.acceleration {
            b.locked * supply * (1.0 - 0.1 * (self.running / b.acceleration).min(1.0))
        } else {
            running + gear
        };
    }
}
