//! Temperature, phase and quality from pressure and enthalpy or entropy, from subcooled liquid across the dome to vapor.
//!
//! Between bubble and dew a blend's temperature does not rise evenly with its enthalpy, for the composition of its liquid
//! changes. The table has the shape of that rise as a polynomial in the share of evaporation, X, and the dew temperature;
//! the entropy needs no polynomial of its own, because at constant pressure dh = T ds.

use super::inverse::Care;
use super::limit::{at_least, between};
use super::polynomial::value;
use super::potential::Place;
use super::table::{at, number};
use super::{MAX_SUBCOOLING, Phase, PropertyError, Refrigerant, State, liquid, response};
use crate::quantity::{Enthalpy, Entropy, Pressure, Temperature};

/// Glide below which the temperature is taken to rise evenly: its error is then less than a tenth of that, K.
const EVEN_GLIDE: f32 = 0.2;
/// How far below the critical temperature the dome of a blend ends, K: the polynomials were fitted to there.
const BELOW_CRITICAL: f32 = 8.0;
/// Step of a liquid's temperature after which the next Newton step would not be seen, K.
const STEP_ENOUGH: f32 = 1e-3;
/// Newton steps of the liquid and of the share at most.
const STEPS: u32 = 12;

/// Where a pressure and an enthalpy or entropy lead to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Found {
    /// The phase.
    pub phase: Phase,
    /// The temperature.
    pub temperature: Temperature,
    /// Mass fraction of vapor, 0 to 1, between bubble and dew; none elsewhere.
    pub quality: Option<f32>,
}

/// Both ends of the dome at one pressure.
struct Ends {
    bubble: Temperature,
    dew: Temperature,
}

/// Where an enthalpy or entropy lies at a pressure.
enum Side {
    /// Beyond saturated vapor.
    Vapor,
    /// Beyond saturated liquid, whose temperature this is.
    Liquid(Temperature),
    /// At this share of the way from saturated liquid to saturated vapor.
    Between(Ends, f32),
}

impl Refrigerant<'_> {
    /// Finds phase, temperature and quality from pressure and enthalpy.
    ///
    /// Answers from 60 K subcooled liquid to 160 K superheated vapor. Between bubble and dew of a blend with glide it ends
    /// 8 K below the critical temperature. Errors: a pressure outside the table, above the critical point
    /// ([`PropertyError::Transcritical`]), an enthalpy beyond the range ([`PropertyError::Temperature`]), a blend whose dome
    /// the table does not have ([`PropertyError::Glide`]), an input that is not a number. `tables/ERRORS.md` has the
    /// measured worst error of every refrigerant.
    pub fn at_enthalpy(&self, pressure: Pressure, enthalpy: Enthalpy) -> Result<Found, PropertyError> {
        let h = enthalpy.joules_per_kg();
        let read = |state: &State| state.enthalpy.joules_per_kg();
        match self.side(pressure, h, read)? {
            Side::Vapor => self.heated(self.heated_to_enthalpy(pressure, enthalpy, Care::FULL)?),
            Side::Liquid(bubble) => self.cool_to(pressure, bubble, h, read, |_| 1.0),
            Side::Between(ends, share) => self.between(&ends, share),
        }
    }
    /// Finds phase, temperature and quality from pressure and entropy.
    ///
    /// Range and errors are those of [`Self::at_enthalpy`].
    pub fn at_entropy(&self, pressure: Pressure, entropy: Entropy) -> Result<Found, PropertyError> {
        let s = entropy.joules_per_kg_k();
        let read = |state: &State| state.entropy.joules_per_kg_k();
        match self.side(pressure, s, read)? {
            Side::Vapor => self.heated(self.heated_to_entropy(pressure, entropy, Care::FULL)?),
            Side::Liquid(bubble) => self.cool_to(pressure, bubble, s, read, |t| 1.0 / t),
            Side::Between(ends, share) => {
                let share = self.share_of_entropy(&ends, share)?;
                self.between(&ends, share)
            }
        }
    }

    fn heated(&self, temperature: Temperature) -> Result<Found, PropertyError> {
        Ok(Found { phase: Phase::Vapor, temperature, quality: None })
    }

    /// Tells on which side of the dome, or how far in it, an enthalpy or entropy lies.
    ///
    /// One end is enough for the phase beyond it: the curves of a blend do not cover the same pressures.
    fn side(
        &self,
        pressure: Pressure,
        sought: f32,
        read: impl Fn(&State) -> f32,
    ) -> Result<Side, PropertyError> {
        if sought.is_nan() {
            return Err(PropertyError::NotANumber);
        }
        let (vapor, liquid) = (self.saturated_vapor(pressure), self.saturated_liquid(pressure));
        if vapor.is_ok_and(|vapor| sought > read(&vapor)) {
            return Ok(Side::Vapor);
        }
        if liquid.is_ok_and(|liquid| sought < read(&liquid)) {
            return Ok(Side::Liquid(self.bubble_temperature(pressure)?));
        }
        let (low, high) = (read(&liquid?), read(&vapor?));
        let ends = Ends { bubble: self.bubble_temperature(pressure)?, dew: self.dew_temperature(pressure)? };
        Ok(Side::Between(ends, (sought - low) / (high - low)))
    }

    /// How far along the glide the temperature is at a share of the evaporation's enthalpy, and the quality there.
    fn along(&self, ends: &Ends, share: f32) -> (f32, f32) {
        let fixed = self.parts.fixed;
        let y = ends.dew.kelvins() / self.number(at::T_CENTER) - 1.0;
        let of = |part: usize, index: usize| number(fixed, part + 4 * index);
        let row =
            |part: usize, first: usize| value!(y; of(part, first + 2), of(part, first + 1), of(part, first));
        let bump = share * (1.0 - share);
        let rise = [0, 3, 6, 9].map(|first| row(at::DOME_TEMPERATURE, first));
        let [t0, t1, t2, t3] = rise;
        let (q0, q1) = (row(at::DOME_QUALITY, 0), row(at::DOME_QUALITY, 3));
        (share + bump * value!(share; t3, t2, t1, t0), share + bump * value!(share; q1, q0))
    }

    fn between(&self, ends: &Ends, share: f32) -> Result<Found, PropertyError> {
        let glide = ends.dew.kelvins() - ends.bubble.kelvins();
        let (along, quality) = if self.has_one_curve() {
            (share, share)
        } else {
            self.dome_known(ends, glide)?;
            self.along(ends, share)
        };
        let temperature = Temperature::from_kelvins(ends.bubble.kelvins() + glide * along);
        Ok(Found { phase: Phase::TwoPhase, temperature, quality: Some(between(0.0, quality, 1.0)) })
    }

    fn has_one_curve(&self) -> bool {
        self.parts.fixed[at::FLAGS] & 2 != 0
    }

    /// Tells an error where the table cannot say what happens between bubble and dew.
    fn dome_known(&self, ends: &Ends, glide: f32) -> Result<(), PropertyError> {
        let without_shape = self.parts.fixed[at::FLAGS] & 4 != 0;
        if without_shape && glide > EVEN_GLIDE {
            return Err(PropertyError::Glide { bubble: ends.bubble, dew: ends.dew });
        }
        let critical = self.critical_temperature();
        if ends.dew.kelvins() > critical.kelvins() - BELOW_CRITICAL {
            return Err(PropertyError::NearCritical { critical_temperature: critical });
        }
        Ok(())
    }

    /// Finds the share of the evaporation's enthalpy at a share of its entropy.
    ///
    /// ds = dh/T: the entropy up to a share is the integral of 1/T, by Simpson's rule; T moves by a tenth at most.
    fn share_of_entropy(&self, ends: &Ends, share: f32) -> Result<f32, PropertyError> {
        let glide = ends.dew.kelvins() - ends.bubble.kelvins();
        if self.has_one_curve() {
            return Ok(share);
        }
        self.dome_known(ends, glide)?;
        let inverse = |x: f32| 1.0 / (ends.bubble.kelvins() + glide * self.along(ends, x).0);
        let up_to = |x: f32| {
            let (a, b) = (inverse(0.25 * x), inverse(0.75 * x));
            x / 12.0 * (inverse(0.0) + 4.0 * (a + b) + 2.0 * inverse(0.5 * x) + inverse(x))
        };
        let target = share * up_to(1.0);
        let mut x = share;
        for _ in 0..3 {
            x = between(0.0, x + (target - up_to(x)) / inverse(x), 1.0);
        }
        Ok(x)
    }

    /// Newton on the temperature of a liquid at constant pressure; `per_heat` is what one J/kg of heat adds.
    fn cool_to(
        &self,
        pressure: Pressure,
        bubble: Temperature,
        target: f32,
        read: impl Fn(&State) -> f32,
        per_heat: impl Fn(f32) -> f32,
    ) -> Result<Found, PropertyError> {
        let (top, min) = (bubble.kelvins(), self.number(at::T_MIN));
        let low = at_least(min, top - MAX_SUBCOOLING.kelvins());
        let rho = self.number(at::RHO_REDUCING);
        let mut t = top;
        for _ in 0..STEPS {
            let place = Place::of(self.parts.fixed, t);
            let rt = self.number(at::GAS_CONSTANT) * t;
            let solved = liquid::solve(self.parts.fixed, place, pressure.pascals() / (rho * rt));
            let state = self.state(solved, rt);
            let capacity = self.number(at::GAS_CONSTANT)
                * response::liquid(self.parts.fixed, place, solved.d).capacity();
            let next = t + (target - read(&state)) / (capacity * per_heat(t));
            if next.is_nan() || (t <= low && next < low) {
                return Err(PropertyError::Temperature {
                    min: Temperature::from_kelvins(low),
                    max: Temperature::from_kelvins(top),
                });
            }
            let step = next - t;
            t = between(low, next, top);
            if step.abs() < STEP_ENOUGH {
                break;
            }
        }
        Ok(Found { phase: Phase::Liquid, temperature: Temperature::from_kelvins(t), quality: None })
    }
}
