//! Insulation of the windings to the frame.
//!
//! IEEE 43 covers motors from 1 hp and asks 5 megohm of random windings below 1 kV at 40 degC (from memory). Its
//! polarisation index says nothing of small random windings, whose absorption current dies in seconds (IEEE 43-2013).
//! Small hermetic motors fall outside it, and refrigerant, oil and moisture around the winding lower the reading: their
//! limit is common practice. A hermetic motor is never tested under vacuum.

/// What IEEE 43 asks of random windings below 1 kV at 40 degC, megohm (from memory).
///
/// Most hermetic motors are outside its scope, and a reading below it asks for a second one rather than for a new
/// compressor.
pub const IEEE_43_MEGOHM: f32 = 5.0;
/// Insulation at 40 degC below which a hermetic winding counts as leaking to its frame, megohm (common practice).
pub const HERMETIC_LIMIT_MEGOHM: f32 = 0.5;
/// Test voltage below which a good reading proves little, V: a plain ohmmeter finds a dead short only.
pub const TELLING_TEST_V: f32 = 250.0;

/// Temperature that insulation resistances are referred to, degC (IEEE 43).
pub const REFERENCE_C: f32 = 40.0;

/// How a winding stands to its frame.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Insulation {
    /// No leak to the frame.
    Good,
    /// Between the limits: warm the compressor, dry the system, measure again before anything is condemned.
    Doubtful,
    /// The winding leaks to the frame.
    Leaks,
}

/// Refers an insulation resistance to 40 degC, megohm.
///
/// It halves for every 10 K more (IEEE 43, the approximate rule); the rule is good to a factor of two over 20 K.
/// `None` where the reading is negative, open or not a number, or the temperature lies outside -40 to 200 degC.
pub fn referred_to_40c(megohm: f32, winding_c: f32) -> Option<f32> {
    if !megohm.is_finite() || megohm < 0.0 || !(-40.0..=200.0).contains(&winding_c) {
        return None;
    }
    Some(megohm * libm::exp2f((winding_c - REFERENCE_C) / 10.0)).filter(|r| r.is_finite())
}

/// Judges an insulation resistance at a winding temperature, or as it reads where the temperature is not known.
///
/// Positive infinity is an open reading and good. Without a temperature the raw reading is held against the limit,
/// which is lenient when cold. `None` where the reading is negative or not a number.
pub fn judge(megohm: f32, winding_c: Option<f32>) -> Option<Insulation> {
    if megohm.is_nan() || megohm < 0.0 {
        return None;
    }
    if megohm.is_infinite() {
        return Some(Insulation::Good);
    }
    let at_40c = winding_c.and_then(|c| referred_to_40c(megohm, c)).unwrap_or(megohm);
    Some(if at_40c < HERMETIC_LIMIT_MEGOHM {
        Insulation::Leaks
    } else if at_40c < IEEE_43_MEGOHM {
        Insulation::Doubtful
    } else {
        Insulation::Good
    })
}
