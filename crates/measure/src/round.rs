//! Roundings whose direction stands in their name.
//!
//! A step is forgiven a billionth of the amount, so that an amount that is a whole number of steps but for
//! the last binary digits stays where it is: 0.3 kg in steps of 0.1 kg rounds up to 0.3 kg, not to 0.4 kg.

use crate::quantity::{Length, Mass, Minutes, Percent, Pressure, Volume};

/// The share of an amount by which it may miss a step and still count as standing on it.
pub(crate) const FORGIVEN: f64 = 1e-9;

/// A quantity that can be counted in steps of its own kind; its default is none of it.
pub trait Stepwise: Copy + PartialOrd + Default {
    /// How many times `step` goes into this.
    #[must_use]
    fn steps_of(self, step: Self) -> f64;

    /// So many times this.
    #[must_use]
    fn taken(self, times: f64) -> Self;
}

macro_rules! stepwise {
    ($($quantity:ty),+) => {$(
        impl Stepwise for $quantity {
            fn steps_of(self, step: Self) -> f64 {
                self.ratio_to(step)
            }

            fn taken(self, times: f64) -> Self {
                self * times
            }
        }
    )+};
}

stepwise!(Mass, Volume, Length, Pressure, Percent);

impl Stepwise for Minutes {
    fn steps_of(self, step: Self) -> f64 {
        f64::from(self.0) / f64::from(step.0)
    }

    fn taken(self, times: f64) -> Self {
        // Saturates: a rounding can leave the range only at the very top of it.
        Self((f64::from(self.0) * times) as u32)
    }
}

/// The nearest whole number of steps at or above `amount`.
///
/// # Panics
///
/// When the step is not above zero or the amount is not finite.
///
/// # Examples
///
/// ```
/// use measure::{Minutes, Pressure, round_up_to};
///
/// assert_eq!(round_up_to(Pressure::psi(11.5), Pressure::psi(1.0)), Pressure::psi(12.0));
/// assert_eq!(round_up_to(Minutes(35), Minutes(5)), Minutes(35));
/// ```
#[must_use]
pub fn round_up_to<Q: Stepwise>(amount: Q, step: Q) -> Q {
    let (steps, forgiven) = count_steps(amount, step);
    step.taken(libm::ceil(steps - forgiven))
}

/// The nearest whole number of steps at or below `amount`.
///
/// # Panics
///
/// When the step is not above zero or the amount is not finite.
///
/// # Examples
///
/// ```
/// use measure::{Mass, round_down_to};
///
/// assert_eq!(round_down_to(Mass::grams(847.0), Mass::grams(5.0)), Mass::grams(845.0));
/// ```
#[must_use]
pub fn round_down_to<Q: Stepwise>(amount: Q, step: Q) -> Q {
    let (steps, forgiven) = count_steps(amount, step);
    step.taken(libm::floor(steps + forgiven))
}

/// The whole number of steps nearest to `amount`, away from zero when two are equally near.
///
/// # Panics
///
/// When the step is not above zero or the amount is not finite.
///
/// # Examples
///
/// ```
/// use measure::{Mass, round_nearest_to};
///
/// assert_eq!(round_nearest_to(Mass::grams(847.0), Mass::grams(5.0)), Mass::grams(845.0));
/// assert_eq!(round_nearest_to(Mass::grams(848.0), Mass::grams(5.0)), Mass::grams(850.0));
/// ```
#[must_use]
pub fn round_nearest_to<Q: Stepwise>(amount: Q, step: Q) -> Q {
    let (steps, _) = count_steps(amount, step);
    step.taken(libm::round(steps))
}

/// How many steps an amount is, and how much of one is forgiven at its size.
fn count_steps<Q: Stepwise>(amount: Q, step: Q) -> (f64, f64) {
    assert!(step > Q::default(), "a step is above zero");
    let steps = amount.steps_of(step);
    assert!(steps.is_finite(), "an amount and the step it is rounded to are finite");
    (steps, FORGIVEN * steps.abs())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_stands_on_a_step_stays_there() {
        let tenth = Mass::kilograms(0.1);
        let three = tenth + tenth + tenth;
        for rounded in
            [round_up_to(three, tenth), round_down_to(three, tenth), round_nearest_to(three, tenth)]
        {
            assert!((rounded.as_kilograms() - 0.3).abs() < 1e-12, "{rounded:?}");
        }
    }

    #[test]
    fn the_direction_is_the_one_in_the_name() {
        let step = Pressure::psi(1.0);
        for (psi, down, nearest, up) in [
            (11.2, 11.0, 11.0, 12.0),
            (11.5, 11.0, 12.0, 12.0),
            (-0.5, -1.0, -1.0, 0.0),
            (0.0, 0.0, 0.0, 0.0),
        ] {
            let amount = Pressure::psi(psi);
            assert_eq!(round_down_to(amount, step).as_psi(), down, "{psi} down");
            assert_eq!(round_nearest_to(amount, step).as_psi(), nearest, "{psi} nearest");
            assert_eq!(round_up_to(amount, step).as_psi(), up, "{psi} up");
        }
        assert_eq!(round_up_to(Minutes(36), Minutes(5)), Minutes(40));
        assert_eq!(round_down_to(Minutes(39), Minutes(5)), Minutes(35));
    }
}
