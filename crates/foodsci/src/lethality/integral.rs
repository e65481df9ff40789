//! The exponential integral, which a jar that nears its surroundings leaves behind when its lethality is added up.

use crate::limits::{Limits, ModelError, limits};

/// `E1(x) = ∫ from x to infinity of e^(-u) / u du`, for x above zero.
///
/// The power series up to 1, a continued fraction (Lentz) above; within 1e-14 of the true value.
///
/// # Source
///
/// M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, 1964, equations 5.1.11 and 5.1.22 (from memory); values
/// of its table 5.1 stand in the tests.
///
/// # Errors
///
/// At zero and below, where it has no value.
pub fn find_exponential_integral(x: f64) -> Result<f64, ModelError> {
    const ABOVE_ZERO: Limits =
        limits("argument of the exponential integral", "", 1e-300, f64::INFINITY, "E1");
    let x = ABOVE_ZERO.check(x)?;
    Ok(if x <= 1.0 { by_series(x) } else { by_fraction(x) })
}

fn by_series(x: f64) -> f64 {
    /// Euler's constant.
    const GAMMA: f64 = 0.577_215_664_901_532_9;
    let mut sum = -GAMMA - libm::log(x);
    let mut term = 1.0;
    for n in 1..40 {
        let n = f64::from(n);
        term *= -x / n;
        sum -= term / n;
    }
    sum
}

fn by_fraction(x: f64) -> f64 {
    const TINY: f64 = 1e-300;
    if x > 700.0 {
        return 0.0;
    }
    let mut b = x + 1.0;
    let mut c = 1.0 / TINY;
    let mut d = 1.0 / b;
    let mut h = d;
    for n in 1..200 {
        let n = f64::from(n);
        b += 2.0;
        d = 1.0 / (b - n * n * d);
        c = b - n * n / c;
        h *= c * d;
        if (c * d - 1.0).abs() < 1e-16 {
            break;
        }
    }
    h * libm::exp(-x)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, 1964, table 5.1 (from memory).
    /// Tolerance: 1e-9, the digits of the table.
    #[test]
    fn the_exponential_integral_has_its_printed_values() {
        for (x, want) in [(0.5, 0.559_773_594_8), (1.0, 0.219_383_934_4), (2.0, 0.048_900_510_7)] {
            assert!((find_exponential_integral(x).unwrap() - want).abs() < 1e-9, "{x}");
        }
    }

    #[test]
    fn series_and_fraction_meet() {
        for x in [0.9, 1.0, 1.1, 1.5] {
            assert!((by_series(x) - by_fraction(x)).abs() < 1e-14, "{x}");
        }
        assert!(find_exponential_integral(0.0).is_err());
        assert!(find_exponential_integral(f64::NAN).is_err());
        assert_eq!(find_exponential_integral(1e4).unwrap(), 0.0);
    }
}
