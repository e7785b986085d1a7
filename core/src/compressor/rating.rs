//! The rating map of a compressor: the polynomial of ten coefficients over both dew temperatures.
//!
//! Form of AHRI Standard 540: X = C1 + C2 S + C3 D + C4 S^2 + C5 S D + C6 D^2 + C7 S^3 + C8 D S^2 + C9 S D^2 +
//! C10 D^3, S the suction and D the discharge dew temperature, both in the unit the map was made in. A cubic leaves
//! its points fast: outside the map's envelope there is no answer.

use crate::estimate::Estimate;
use crate::field::choice;
use crate::normal::usable;

choice! {
    /// The temperature scale a map's coefficients were made for.
    Scale {
        /// Degrees Celsius.
        Celsius = 1 "celsius",
        /// Degrees Fahrenheit.
        Fahrenheit = 2 "fahrenheit",
    }
}

/// One rated quantity as ten coefficients C1 to C10, in whatever unit the map states: W, A, kg/h, lb/h.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Polynomial {
    /// C1 to C10 in the order of AHRI Standard 540.
    pub coefficients: [f32; 10],
}

impl Polynomial {
    /// Computes the polynomial at both dew temperatures in the map's own scale, without looking at its envelope.
    ///
    /// `None` where the result is not finite.
    pub fn value(&self, suction_dew: f32, discharge_dew: f32) -> Option<f32> {
        let [c1, c2, c3, c4, c5, c6, c7, c8, c9, c10] = self.coefficients;
        let (s, d) = (suction_dew, discharge_dew);
        // By powers of D, each a polynomial in S: fewer operations than the printed sum, the same terms.
        let d0 = c1 + s * (c2 + s * (c4 + s * c7));
        let d1 = c3 + s * (c5 + s * c8);
        let d2 = c6 + s * c9;
        Some(d0 + d * (d1 + d * (d2 + d * c10))).filter(|x| x.is_finite())
    }
}

/// A rating map: its quantities, the scale of its temperatures, and the envelope it holds in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Map<'a> {
    /// The scale of both dew temperatures in the coefficients.
    pub scale: Scale,
    /// Mass flow, in the map's unit.
    pub mass_flow: Option<Polynomial>,
    /// Electrical power, in the map's unit.
    pub power: Option<Polynomial>,
    /// Current at rated voltage, A.
    pub current: Option<Polynomial>,
    /// Cooling capacity, in the map's unit.
    pub capacity: Option<Polynomial>,
    /// Corners of the envelope in order around it, evaporating and condensing dew temperature, degC.
    pub envelope_c: &'a [(f32, f32)],
    /// Standard uncertainty of a map's value, as a fraction; [`Map::USUAL_SPREAD`] where the map states none.
    pub spread: f32,
}

/// A quantity of a rating map.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Quantity {
    /// Mass flow.
    MassFlow,
    /// Electrical power.
    Power,
    /// Current.
    Current,
    /// Cooling capacity.
    Capacity,
}

/// Why a map has no answer.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum NoRating {
    /// The map holds no coefficients for this quantity.
    QuantityMissing,
    /// A temperature is not a finite number.
    NotFinite,
    /// The map states no envelope of three corners or more, so nothing tells where it holds.
    NoEnvelope,
    /// The point lies outside the envelope.
    OutsideEnvelope {
        /// Distance to the envelope, K of either dew temperature.
        beyond_k: f32,
    },
    /// The coefficients give no positive value here: they are not this compressor's, or not in this scale.
    NotPositive,
}

impl core::fmt::Display for NoRating {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            Self::QuantityMissing => f.write_str("the map holds no coefficients for this quantity"),
            Self::NotFinite => f.write_str("a dew temperature is not a finite number"),
            Self::NoEnvelope => f.write_str("the map states no envelope"),
            Self::OutsideEnvelope { beyond_k } => write!(f, "outside the map's envelope by {beyond_k:.1} K"),
            Self::NotPositive => f.write_str("the coefficients give no positive value at this point"),
        }
    }
}

impl core::error::Error for NoRating {}

impl Map<'_> {
    /// Standard uncertainty of a published rating: 5 % at k = 2 over most of the envelope (AHRI 540, from memory).
    pub const USUAL_SPREAD: f32 = 0.025;

    /// Reads a quantity off the map at evaporating and condensing dew temperature, degC, in the map's unit.
    ///
    /// It holds at the superheat and voltage the map was made for; see [`super::current::at_voltage`]. Errors: no
    /// coefficients, no envelope, a point outside it, no finite number.
    pub fn rate(
        &self,
        quantity: Quantity,
        evaporating_c: f32,
        condensing_c: f32,
    ) -> Result<Estimate, NoRating> {
        let polynomial = match quantity {
            Quantity::MassFlow => self.mass_flow,
            Quantity::Power => self.power,
            Quantity::Current => self.current,
            Quantity::Capacity => self.capacity,
        };
        let polynomial = polynomial.ok_or(NoRating::QuantityMissing)?;
        if !evaporating_c.is_finite() || !condensing_c.is_finite() || !self.spread.is_finite() {
            return Err(NoRating::NotFinite);
        }
        let beyond_k =
            distance_outside(self.envelope_c, evaporating_c, condensing_c).ok_or(NoRating::NoEnvelope)?;
        if beyond_k > 0.0 {
            return Err(NoRating::OutsideEnvelope { beyond_k });
        }
        let (s, d) = match self.scale {
            Scale::Celsius => (evaporating_c, condensing_c),
            Scale::Fahrenheit => (evaporating_c * 1.8 + 32.0, condensing_c * 1.8 + 32.0),
        };
        let value = polynomial.value(s, d).filter(|v| *v > 0.0).ok_or(NoRating::NotPositive)?;
        Estimate::new(value, self.spread * value).filter(|e| usable(*e)).ok_or(NoRating::NotFinite)
    }
}

/// Computes how far a point lies outside a polygon, K; zero inside and on its edge.
///
/// The polygon is given by its corners in order, either way around. `None` for fewer than three corners or where a
/// number is not finite.
pub fn distance_outside(corners: &[(f32, f32)], x: f32, y: f32) -> Option<f32> {
    if corners.len() < 3 || !x.is_finite() || !y.is_finite() {
        return None;
    }
    let mut inside = false;
    let mut nearest = f32::INFINITY;
    let following = corners.iter().skip(1).chain(corners.first());
    for ((x0, y0), (x1, y1)) in corners.iter().zip(following) {
        let (dx, dy) = (x1 - x0, y1 - y0);
        let length = dx * dx + dy * dy;
        // Where a ray to the right crosses this side, inside and outside change places.
        if (*y0 > y) != (*y1 > y) && x < x0 + (y - y0) / dy * dx {
            inside = !inside;
        }
        let along =
            if length > 0.0 { (((x - x0) * dx + (y - y0) * dy) / length).clamp(0.0, 1.0) } else { 0.0 };
        nearest = nearest.min(libm::hypotf(x - x0 - along * dx, y - y0 - along * dy));
    }
    if !nearest.is_finite() {
        return None;
    }
    // A hundredth of a kelvin of rounding belongs to the edge.
    Some(if inside || nearest <= 0.01 { 0.0 } else { nearest })
}
