//! The finite cylinder: a can or a jar of thick food.

use measure::{Conductivity, Diffusivity, Film, Length, Span, Temp};

use super::{Biot, Fourier, Modes, Shape};
use crate::limits::kitchen::{HALF_SIZE_M, TEMP_C};
use crate::limits::{Limits, ModelError, limits};

const DIFFUSIVITY: Limits = limits("diffusivity", " m2/s", 1e-9, 1e-4, "foods and metals");

/// A cylinder of one substance with a film of heat transfer all round.
#[derive(Debug, Clone, PartialEq)]
pub struct FiniteCylinder {
    radius: Length,
    half_height: Length,
    diffusivity: Diffusivity,
    across: Modes,
    along: Modes,
}

/// How a body heats once the first unevenness has died away: `T = T_R - j (T_R - T_0) 10^(-t / f)`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HeatingLag {
    /// The time in which the difference to the surroundings falls to a tenth.
    pub f: Span,
    /// How far the straight line begins above the real start.
    pub j: f64,
}

impl FiniteCylinder {
    /// A cylinder with its film; `terms` of each series are kept.
    ///
    /// # Errors
    ///
    /// When a size is none a kitchen has, or the diffusivity none of a food or metal.
    pub fn new(
        radius: Length,
        height: Length,
        diffusivity: Diffusivity,
        (film, conducts): (Film, Conductivity),
        terms: usize,
    ) -> Result<Self, ModelError> {
        let half_height = height * 0.5;
        let across = Biot::of(film, radius, conducts)?;
        let along = Biot::of(film, half_height, conducts)?;
        Self::with_biots(radius, half_height, diffusivity, (across, along), terms)
    }

    /// The same with the two Biot numbers given: across (radius) and along (half-height).
    ///
    /// # Errors
    ///
    /// As [`FiniteCylinder::new`].
    pub fn with_biots(
        radius: Length,
        half_height: Length,
        diffusivity: Diffusivity,
        (across, along): (Biot, Biot),
        terms: usize,
    ) -> Result<Self, ModelError> {
        HALF_SIZE_M.check(radius.as_metres())?;
        HALF_SIZE_M.check(half_height.as_metres())?;
        DIFFUSIVITY.check(diffusivity.as_square_metres_per_second())?;
        Ok(Self {
            radius,
            half_height,
            diffusivity,
            across: Modes::find(Shape::Cylinder, across, terms)?,
            along: Modes::find(Shape::Slab, along, terms)?,
        })
    }

    /// The share of the first difference left at the centre after a time: `Y_cylinder × Y_slab`.
    ///
    /// # Source
    ///
    /// The product solution (A. B. Newman, 1936; C. J. Geankoplis, Transport Processes and Unit Operations, 3rd ed., 1993,
    /// section 5.3F).
    #[must_use]
    pub fn left_at_centre(&self, time: Span) -> f64 {
        let (across, along) = self.fouriers(time);
        self.across.centre(across) * self.along.centre(along)
    }

    /// The same at the centre of an end.
    #[must_use]
    pub fn left_at_end(&self, time: Span) -> f64 {
        let (across, along) = self.fouriers(time);
        self.across.centre(across) * self.along.at(along, 1.0)
    }

    /// The same on the average of the whole body.
    #[must_use]
    pub fn left_on_average(&self, time: Span) -> f64 {
        let (across, along) = self.fouriers(time);
        self.across.average(across) * self.along.average(along)
    }

    fn fouriers(&self, time: Span) -> (Fourier, Fourier) {
        (
            Fourier::of(self.diffusivity, time, self.radius),
            Fourier::of(self.diffusivity, time, self.half_height),
        )
    }

    /// The temperature of the centre after a time in surroundings that keep theirs.
    ///
    /// # Errors
    ///
    /// When a temperature is none of a kitchen.
    pub fn find_centre_temp(&self, start: Temp, around: Temp, time: Span) -> Result<Temp, ModelError> {
        TEMP_C.check(start.as_celsius())?;
        TEMP_C.check(around.as_celsius())?;
        Ok(around + (start - around) * self.left_at_centre(time))
    }

    /// The slope and the start of its straight line.
    #[must_use]
    pub fn lag(&self) -> HeatingLag {
        let [r, h] = [self.radius, self.half_height].map(Length::as_metres);
        let (across, along) = (self.across.roots()[0], self.along.roots()[0]);
        let rate = self.diffusivity.as_square_metres_per_second()
            * (across * across / (r * r) + along * along / (h * h));
        HeatingLag {
            f: Span::seconds(std::f64::consts::LN_10 / rate),
            j: self.across.centre_weights()[0] * self.along.centre_weights()[0],
        }
    }
}

/// The slowest that a cylinder of a substance can heat or cool when its surface takes the temperature around it at once.
///
/// `f = 0.398 / (α (1/R² + 0.427 / (H/2)²))`, `j = 2.04`.
///
/// # Source
///
/// The first terms of the two series; C. O. Ball and F. C. W. Olson, Sterilization in Food Technology, 1957 (from memory).
///
/// # Errors
///
/// When a size is none a kitchen has.
pub fn find_slowest_heating(
    radius: Length,
    height: Length,
    diffusivity: Diffusivity,
) -> Result<HeatingLag, ModelError> {
    let both = (Biot::INFINITE, Biot::INFINITE);
    Ok(FiniteCylinder::with_biots(radius, height * 0.5, diffusivity, both, 1)?.lag())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn jar(radius_mm: f64, height_mm: f64) -> FiniteCylinder {
        FiniteCylinder::new(
            Length::millimetres(radius_mm),
            Length::millimetres(height_mm),
            Diffusivity::square_metres_per_second(1.5e-7),
            (Film::watts_per_square_metre_kelvin(260.0), Conductivity::watts_per_metre_kelvin(0.55)),
            40,
        )
        .unwrap()
    }

    #[test]
    fn the_centre_only_nears_its_surroundings() {
        let jar = jar(38.0, 110.0);
        let at = |minutes| {
            jar.find_centre_temp(Temp::celsius(60.0), Temp::celsius(100.0), Span::minutes(minutes)).unwrap()
        };
        assert!((1..200).all(|step| at(f64::from(step)) < at(f64::from(step) + 1.0)));
        assert!(at(600.0) < Temp::celsius(100.0) && at(600.0) > Temp::celsius(99.9));
        assert!(jar.left_on_average(Span::minutes(20.0)) < jar.left_at_centre(Span::minutes(20.0)));
        assert!(jar.left_at_end(Span::minutes(20.0)) < jar.left_at_centre(Span::minutes(20.0)));
        let none = jar.find_centre_temp(Temp::celsius(f64::NAN), Temp::celsius(100.0), Span::minutes(1.0));
        assert!(none.is_err());
    }

    #[test]
    fn a_larger_jar_heats_slower() {
        let left = |jar: FiniteCylinder| jar.left_at_centre(Span::minutes(40.0));
        assert!(left(jar(38.0, 110.0)) < left(jar(46.0, 150.0)));
        assert!(left(jar(38.0, 110.0)) < left(jar(38.0, 150.0)));
    }

    #[test]
    fn after_a_while_the_curve_is_the_straight_line() {
        let jar = jar(46.0, 150.0);
        let lag = jar.lag();
        let late = lag.f * 6.0;
        let line = lag.j * libm::exp10(-6.0);
        assert!((jar.left_at_centre(late) / line - 1.0).abs() < 1e-4);
    }
}
