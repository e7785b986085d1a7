//! The rig: a simulator of machines with faults, and the judge of what is said about them.
//!
//! It shares nothing with the library's own model of a machine but the property tables.
//!
//! How it works. A machine's parts are sized once so that it runs exactly at its sheet (`machine`). Its coils are
//! marched tube segment by tube segment with film coefficients, friction, dry or wet fins and slip (`exchanger`);
//! capillaries, orifices, valves and driers integrate the momentum of flashing liquid down to where it chokes
//! (`metering`); the compressor is a heat balance of shell, motor, gas and leaks (`compressor`, `motor`). Five
//! unknowns (evaporator inlet, discharge and suction pressure, suction enthalpy, receiver fill or the heat of the
//! suction-liquid exchanger) make five balances close (`cycle`, `solve`), among them the whole inventory of
//! refrigerant. A visit is one unit of a type, off its sheet by hidden variation (`unit`), on one day, with a fault
//! or two (`fault`), read by noisy instruments (`visit`, `pump_down`).
//!
//! One cause can be followed to its total (`total`), the box as warm as that leaves it; where no steady balance is left
//! the state of rest takes over (`limit`). Those, stopped machines, dead motors and bad supplies (`extreme`) are made
//! and graded apart from the visits above.
//!
//! What it leaves out: time. Every point is steady; a machine in pull-down is a steady machine in a warm space.
//! Frost only narrows the air; oil carries refrigerant but does not return late; a regulator is a plain opening.
//!
//! Frozen: a change to what it simulates is a commit of its own, with its reason and the grades before and after.

pub mod air;
pub mod compressor;
pub mod cycle;
pub mod exchanger;
pub mod extreme;
pub mod fault;
pub mod fleet;
pub mod grader;
pub mod limit;
pub mod machine;
pub mod math;
pub mod metering;
pub mod motor;
pub mod props;
pub mod pump_down;
pub mod sample;
pub mod set;
pub mod solve;
pub mod total;
pub mod unit;
pub mod visit;
