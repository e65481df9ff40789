//! Ball's formula: the lethality of a whole process, heating and cooling, from one number.

use measure::{Span, TempDifference};

use super::find_exponential_integral;
use crate::limits::{Limits, ModelError, limits, require_above};

/// How a can cools after the steam is off: a hyperbola down to 0.343 of the way, then a straight line on paper of logarithms.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BallCooling {
    /// From the temperature around the jar while it heated down to that of the cooling water.
    pub drop: TempDifference,
    /// The slope of cooling over that of heating.
    pub slope_ratio: f64,
}

/// Ball's lag of cooling; the hyperbola is drawn for it.
const J_COOLING: f64 = 1.41;
/// The hyperbola ends at this share of the drop.
const HYPERBOLA_ENDS: f64 = 0.343;

/// `f_h / U`: the slope of heating over the lethality at the temperature around the jar, from how far below it the centre is
/// when the steam goes off.
///
/// The heating line from 80 K below, in closed form, and Ball's cooling curve, added up by Simpson's rule. Arguments: the
/// distance g in K, z in K, and how the can cools.
///
/// # Source
///
/// C. O. Ball, Thermal process time for canned food, Bulletin of the National Research Council 37, 1923; C. O. Ball and
/// F. C. W. Olson, 1957 (both from memory).
///
/// # Errors
///
/// When g is not between 0.001 and 30 K, or the drop is not larger than it.
pub fn find_ball_ratio(
    gap: TempDifference,
    z: TempDifference,
    cooling: &BallCooling,
) -> Result<f64, ModelError> {
    const GAP_K: Limits =
        limits("distance of the centre from the surroundings", " K", 0.001, 30.0, "Ball's tables");
    const SLOPES: Limits = limits("slope of cooling over that of heating", "", 0.2, 5.0, "Ball's tables");
    /// Where the heating line is taken to begin, in K below the surroundings.
    const BEGINS_K: f64 = 80.0;
    let g = GAP_K.check(gap.as_kelvins())?;
    let z = super::Z_K.check(z.as_kelvins())?;
    let slopes = SLOPES.check(cooling.slope_ratio)?;
    const DROP_K: Limits = limits("drop to the cooling water", " K", 0.1, 200.0, "Ball's tables");
    let drop = DROP_K.check(cooling.drop.as_kelvins())?;
    require_above(("drop to the cooling water", drop), ("distance of the centre", g), " K")?;
    let ten = std::f64::consts::LN_10;
    let heating =
        (find_exponential_integral(ten * g / z)? - find_exponential_integral(ten * BEGINS_K / z)?) / ten;
    Ok(1.0 / (heating + cooling_share(g, z, drop - g, slopes)))
}

/// Lethality of the cooling over `f_h`, at the temperature around the jar.
fn cooling_share(gap: f64, z: f64, fall: f64, slopes: f64) -> f64 {
    // When the hyperbola ends, in units of the slope of cooling.
    let ends = libm::log10(J_COOLING / (1.0 - HYPERBOLA_ENDS));
    let hyperbola = |time: f64| {
        let x = time / 0.175;
        gap - 0.3 * fall + 0.3 * fall * libm::sqrt(1.0 + x * x)
    };
    let line = |time: f64| gap + fall * (1.0 - J_COOLING * libm::exp10(-time));
    let rate = |below: f64| libm::exp10(-below / z);
    slopes * (simpson(0.0, ends, |time| rate(hyperbola(time))) + simpson(ends, 3.0, |time| rate(line(time))))
}

fn simpson(from: f64, to: f64, function: impl Fn(f64) -> f64) -> f64 {
    /// Even, and enough for ten digits of so smooth a curve.
    const PARTS: u32 = 2000;
    let step = (to - from) / f64::from(PARTS);
    let inner: f64 = (1..PARTS)
        .map(|at| (if at % 2 == 1 { 4.0 } else { 2.0 }) * function(from + step * f64::from(at)))
        .sum();
    (function(from) + inner + function(to)) * step / 3.0
}

/// The lethality of a whole process at the temperature around the jar, from its slope and Ball's ratio.
///
/// # Errors
///
/// As [`find_ball_ratio`].
pub fn find_ball_lethality(
    f: Span,
    gap: TempDifference,
    z: TempDifference,
    cooling: &BallCooling,
) -> Result<Span, ModelError> {
    Ok(f * (1.0 / find_ball_ratio(gap, z, cooling)?))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_centre_nearer_to_the_surroundings_has_had_more() {
        let cooling = BallCooling { drop: TempDifference::kelvins(100.0), slope_ratio: 1.0 };
        let z = TempDifference::kelvins(10.0);
        let of = |gap| {
            find_ball_lethality(Span::minutes(30.0), TempDifference::kelvins(gap), z, &cooling).unwrap()
        };
        assert!(of(0.1) > of(1.0) && of(1.0) > of(5.0));
        assert!(find_ball_ratio(TempDifference::kelvins(0.0), z, &cooling).is_err());
        let shallow = BallCooling { drop: TempDifference::kelvins(1.0), slope_ratio: 1.0 };
        assert!(find_ball_ratio(TempDifference::kelvins(2.0), z, &shallow).is_err());
    }

    #[test]
    fn the_cooling_curve_has_no_step() {
        // Hyperbola and line meet where one ends and the other begins.
        let ends = libm::log10(J_COOLING / (1.0 - HYPERBOLA_ENDS));
        let x = ends / 0.175;
        let hyperbola = -0.3 + 0.3 * libm::sqrt(1.0 + x * x);
        let line = 1.0 - J_COOLING * libm::exp10(-ends);
        assert!((hyperbola - line).abs() < 0.001);
    }
}
