//! Where a function of one number passes through zero.

/// The root between `low` and `high` to the last binary digits; `None` when the ends have the same sign, or when the
/// function is no number at one of them.
///
/// Ridders' method: each step tries the middle and the point where an exponential through ends and middle is zero. The
/// bracket halves at least at every step, so that it is never slower than bisection, and mostly it is done in six.
///
/// # Source
///
/// C. Ridders, A new algorithm for computing a single root of a real continuous function, IEEE Transactions on Circuits and
/// Systems 26, 1979 (from memory).
pub(crate) fn find_root(low: f64, high: f64, function: impl Fn(f64) -> f64) -> Option<f64> {
    /// Halvings after which no interval of doubles is left to halve.
    const STEPS: usize = 1100;
    let (mut low, mut high) = (low, high);
    let (mut at_low, mut at_high) = (function(low), function(high));
    if at_low == 0.0 {
        return Some(low);
    }
    if at_high == 0.0 {
        return Some(high);
    }
    if at_low.is_nan() || at_high.is_nan() || (at_low > 0.0) == (at_high > 0.0) {
        return None;
    }
    let mut last = f64::NAN;
    for _ in 0..STEPS {
        let middle = low + (high - low) / 2.0;
        if middle <= low || middle >= high {
            break;
        }
        let at_middle = function(middle);
        if at_middle == 0.0 {
            return Some(middle);
        }
        let root = libm::sqrt(at_middle * at_middle - at_low * at_high);
        let sign = if at_low > at_high { 1.0 } else { -1.0 };
        let tried = middle + (middle - low) * sign * at_middle / root;
        // The middle closes the bracket where the trial falls outside, or is no number.
        let tried = if tried > low && tried < high { tried } else { middle };
        let at_tried = function(tried);
        if at_tried == 0.0 || (tried - last).abs() <= f64::EPSILON * tried.abs() {
            return Some(tried);
        }
        last = tried;
        for (x, y) in [(middle, at_middle), (tried, at_tried)] {
            if (y > 0.0) == (at_low > 0.0) && x > low {
                (low, at_low) = (x, y);
            } else if (y > 0.0) == (at_high > 0.0) && x < high {
                (high, at_high) = (x, y);
            }
        }
    }
    Some(low + (high - low) / 2.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_root_is_found_to_the_last_digit() {
        let root = find_root(1.0, 2.0, |x| x * x - 2.0).unwrap();
        assert!((root - std::f64::consts::SQRT_2).abs() < 1e-15);
    }

    #[test]
    fn no_change_of_sign_is_no_root() {
        assert_eq!(find_root(1.0, 2.0, |x| x), None);
        assert_eq!(find_root(f64::NAN, 2.0, |x| x), None);
    }
}
