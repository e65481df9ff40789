//! Where a function of one number passes through zero.

/// The root between `low` and `high` to the last binary digit; `None` when the ends have the same sign, or when the
/// function is no number at one of them.
///
/// Bisection: slower than cleverer methods and never wrong, and no caller asks for more than a few hundred roots.
pub(crate) fn find_root(low: f64, high: f64, function: impl Fn(f64) -> f64) -> Option<f64> {
    /// Halvings after which no interval of doubles is left to halve.
    const HALVINGS: usize = 1100;
    let (mut low, mut high) = (low, high);
    let at_low = function(low);
    let at_high = function(high);
    if at_low == 0.0 {
        return Some(low);
    }
    if at_high == 0.0 {
        return Some(high);
    }
    if at_low.is_nan() || at_high.is_nan() || (at_low > 0.0) == (at_high > 0.0) {
        return None;
    }
    for _ in 0..HALVINGS {
        let middle = low + (high - low) / 2.0;
        if middle <= low || middle >= high {
            break;
        }
        let here = function(middle);
        if here == 0.0 {
            return Some(middle);
        }
        if (here > 0.0) == (at_low > 0.0) {
            low = middle;
        } else {
            high = middle;
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
