//! A jar that heats along a straight line on paper of logarithms, or along two (broken heating).

use measure::{Span, Temp, TempDifference};

use super::{Lethal, find_exponential_integral};
use crate::conduction::HeatingLag;
use crate::limits::{Limits, ModelError, limits, require_above, require_below};

/// The line, or the two lines, along which the centre nears the temperature around the jar.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum HeatingCurve {
    /// `T = T_R - j (T_R - T_0) 10^(-t / f)`.
    Straight(HeatingLag),
    /// The same up to a moment; from there with another slope, because the food thickened or its starch swelled.
    Broken {
        /// Before the break.
        before: HeatingLag,
        /// When the line breaks.
        at: Span,
        /// The slope behind it.
        f_after: Span,
    },
}

/// A jar that heats in surroundings that keep their temperature.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Heating {
    /// How it nears them.
    pub curve: HeatingCurve,
    /// Its temperature at the start.
    pub start: Temp,
    /// The temperature of the surroundings.
    pub around: Temp,
}

const F_MIN: Limits = limits("slope f", " min", 0.1, 10_000.0, "jars and cans");
const J: Limits = limits("lag j", "", 0.2, 10.0, "jars and cans");

impl Heating {
    fn check(&self) -> Result<(), ModelError> {
        require_above(
            ("temperature around the jar", self.around.as_celsius()),
            ("temperature at the start", self.start.as_celsius()),
            " °C",
        )?;
        let (lag, after) = match self.curve {
            HeatingCurve::Straight(lag) => (lag, lag.f),
            HeatingCurve::Broken { before, f_after, .. } => (before, f_after),
        };
        F_MIN.check(lag.f.as_minutes())?;
        F_MIN.check(after.as_minutes())?;
        J.check(lag.j).map(|_| ())
    }

    /// How far the centre is still below the surroundings after a time.
    fn gap(&self, time: Span) -> f64 {
        let first = (self.around - self.start).as_kelvins();
        match self.curve {
            HeatingCurve::Straight(lag) => gap_on_line(first, lag, time),
            HeatingCurve::Broken { before, at, .. } if time <= at => gap_on_line(first, before, time),
            HeatingCurve::Broken { before, at, f_after } => {
                gap_on_line(first, before, at) * libm::exp10(-(time - at).ratio_to(f_after))
            }
        }
    }

    /// The temperature of the centre after a time; never below the start, where the line runs before the lag has passed.
    ///
    /// # Errors
    ///
    /// When slope or lag are none of a jar, or the surroundings are colder than the start.
    pub fn centre(&self, time: Span) -> Result<Temp, ModelError> {
        self.check()?;
        let on_line = self.around - TempDifference::kelvins(self.gap(time));
        Ok(if on_line < self.start { self.start } else { on_line })
    }
}

fn gap_on_line(first: f64, lag: HeatingLag, time: Span) -> f64 {
    lag.j * first * libm::exp10(-time.ratio_to(lag.f))
}

/// The lethality along the heating line alone, from the start to a time, in closed form.
///
/// `F = f / ln 10 × 10^((T_R - T_ref) / z) [E1(ln 10 g / z) - E1(ln 10 g_0 / z)]` for each stretch of the line, g the distance
/// from the surroundings at its end and g_0 at its beginning. The line is taken below the start as well, where it counts
/// for next to nothing.
///
/// # Source
///
/// C. O. Ball and F. C. W. Olson, Sterilization in Food Technology, 1957 (from memory); checked against the general method.
///
/// # Errors
///
/// As [`Heating::centre`], or when the time is below zero.
pub fn find_heating_lethality(heating: &Heating, until: Span, lethal: &Lethal) -> Result<Span, ModelError> {
    heating.check()?;
    require_above(("time", until.as_minutes()), ("the start", -1e-12), " min")?;
    let around = lethal.rate(heating.around)?;
    let z = lethal.z.as_kelvins();
    let stretch = |from: Span, to: Span, f: Span| -> Result<Span, ModelError> {
        let [early, late] = [from, to].map(|time| std::f64::consts::LN_10 * heating.gap(time) / z);
        require_below(("distance at the end", late), ("distance before", early + 1e-300), "")?;
        let integral = find_exponential_integral(late)? - find_exponential_integral(early)?;
        Ok(f * (around * integral / std::f64::consts::LN_10))
    };
    if until.as_seconds() <= 0.0 {
        return Ok(Span::ZERO);
    }
    match heating.curve {
        HeatingCurve::Straight(lag) => stretch(Span::ZERO, until, lag.f),
        HeatingCurve::Broken { before, at, .. } if until <= at => stretch(Span::ZERO, until, before.f),
        HeatingCurve::Broken { before, at, f_after } => {
            Ok(stretch(Span::ZERO, at, before.f)? + stretch(at, until, f_after)?)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::{Between, Reading, add_up_lethality};
    use super::*;

    fn heating(curve: HeatingCurve) -> Heating {
        Heating { curve, start: Temp::celsius(60.0), around: Temp::celsius(100.0) }
    }

    const LAG: HeatingLag = HeatingLag { f: Span::minutes(40.0), j: 1.6 };

    #[test]
    fn the_closed_form_is_the_general_method_on_the_same_line() {
        let broken =
            HeatingCurve::Broken { before: LAG, at: Span::minutes(25.0), f_after: Span::minutes(80.0) };
        for curve in [HeatingCurve::Straight(LAG), broken] {
            let heating = heating(curve);
            let readings: Vec<Reading> = (0..=20_000)
                .map(|at| {
                    let at = Span::minutes(f64::from(at) * 0.004);
                    let temp = heating.around - TempDifference::kelvins(heating.gap(at));
                    Reading { at, temp }
                })
                .collect();
            let added = add_up_lethality(&readings, &Lethal::ACID_FOOD, Between::LinearTemperature).unwrap();
            let closed = find_heating_lethality(&heating, Span::minutes(80.0), &Lethal::ACID_FOOD).unwrap();
            assert!((closed.ratio_to(added) - 1.0).abs() < 1e-6, "{curve:?}");
        }
    }

    #[test]
    fn a_line_that_does_not_break_is_the_straight_one() {
        let same = HeatingCurve::Broken { before: LAG, at: Span::minutes(25.0), f_after: LAG.f };
        for minutes in [5.0, 25.0, 60.0] {
            let at = Span::minutes(minutes);
            let one = heating(HeatingCurve::Straight(LAG)).centre(at).unwrap();
            let other = heating(same).centre(at).unwrap();
            assert!((one - other).as_kelvins().abs() < 1e-12);
        }
    }

    #[test]
    fn thickening_slows_the_centre() {
        let thick =
            HeatingCurve::Broken { before: LAG, at: Span::minutes(20.0), f_after: Span::minutes(90.0) };
        let at = Span::minutes(60.0);
        let (straight, broken) = (heating(HeatingCurve::Straight(LAG)), heating(thick));
        assert!(broken.centre(at).unwrap() < straight.centre(at).unwrap());
        let of = |heating: &Heating| find_heating_lethality(heating, at, &Lethal::ACID_FOOD).unwrap();
        assert!(of(&broken) < of(&straight));
        let cold = Heating { around: Temp::celsius(50.0), ..straight };
        assert!(cold.centre(at).is_err());
    }
}
