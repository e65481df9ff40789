//! What a batch takes, in three columns beside the line: what, by measure, by weight.

use measure::Fraction;
use paper::day::Amount;

use crate::leaf::{BESIDE, Leaf};
use crate::wrap::{to_the_left, to_the_right, wrap};

const WEIGHT: usize = 15;
const MEASURE: usize = 18;
const WHAT: usize = BESIDE - MEASURE - WEIGHT;

/// Lays out the amounts of one batch.
pub(crate) fn lay_out_amounts(leaf: &mut Leaf, amounts: &[Amount]) {
    for amount in amounts {
        let what = wrap(&word_what(amount), WHAT - 1);
        let measure = wrap(&amount.measure, MEASURE - 1);
        let weight = amount.weight.as_deref().unwrap_or("not known");
        for at in 0..what.len().max(measure.len()) {
            let cell = |lines: &[String]| lines.get(at).cloned().unwrap_or_default();
            let weight = if at == 0 { weight } else { "" };
            let row = to_the_left(&cell(&what), WHAT) + &to_the_right(&cell(&measure), MEASURE);
            leaf.set((row + &to_the_right(weight, WEIGHT)).trim_end());
        }
    }
}

/// An amount as one reads it at the counter: spoons counted in the larger spoon, nothing weighed twice, and no figure
/// where the cook is free.
pub(crate) fn tidy_amount(amount: Amount) -> Amount {
    let (number, unit) = amount.measure.rsplit_once(' ').unwrap_or((amount.measure.as_str(), ""));
    let is_free = number == "0" || amount.measure == "as you like";
    if is_free {
        return Amount {
            measure: "as you like".to_owned(),
            weight: Some(String::new()),
            moved: None,
            ..amount
        };
    }
    // Ounces of juice are a volume.
    let is_weight = matches!(unit, "g" | "kg" | "oz" | "lb") && !amount.what.to_lowercase().contains("juice");
    if is_weight {
        let weight = amount.weight.or(Some(amount.measure));
        return Amount { measure: String::new(), weight, ..amount };
    }
    let measure = match (unit, number.parse::<Fraction>()) {
        ("tsp", Ok(spoons)) => write_spoons(spoons).unwrap_or_else(|| amount.measure.clone()),
        _ => amount.measure.clone(),
    };
    Amount { measure, ..amount }
}

/// Teaspoons as tablespoons and the rest; none when there is not a whole tablespoon in them.
fn write_spoons(teaspoons: Fraction) -> Option<String> {
    /// Teaspoons in a tablespoon.
    const IN_A_TABLESPOON: u32 = 3;
    let whole = u32::try_from(teaspoons.floor()).ok()? / IN_A_TABLESPOON;
    let rest = teaspoons.checked_sub(Fraction::whole(whole * IN_A_TABLESPOON))?;
    match (whole, rest == Fraction::whole(0)) {
        (0, _) => None,
        (whole, true) => Some(format!("{whole} tbsp")),
        (whole, false) => Some(format!("{whole} tbsp {rest} tsp")),
    }
}

/// A factor in words. One that no cook can picture is told in percent or as a decimal; the amounts are exact.
pub(crate) fn word_factor(factor: Fraction) -> String {
    /// Twelfths can still be pictured.
    const FINEST: i64 = 12;
    if factor == Fraction::ONE {
        "the whole printed formula".to_owned()
    } else if factor > Fraction::ONE {
        format!("{} times what is printed", factor.to_decimal(1))
    } else if factor.denominator() <= FINEST {
        format!("{factor} of the printed formula")
    } else {
        format!("about {:.0} % of the printed formula", factor.to_f64() * 100.0)
    }
}

fn word_what(amount: &Amount) -> String {
    match (amount.prep.as_str(), &amount.moved) {
        ("", None) => amount.what.clone(),
        ("", Some(moved)) => format!("{} ({moved})", amount.what),
        (prep, None) => format!("{}, {prep}", amount.what),
        (prep, Some(moved)) => format!("{}, {prep} ({moved})", amount.what),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tidied(measure: &str, weight: Option<&str>) -> (String, Option<String>) {
        let amount =
            Amount { measure: measure.to_owned(), weight: weight.map(str::to_owned), ..Amount::default() };
        let amount = tidy_amount(amount);
        (amount.measure, amount.weight)
    }

    #[test]
    fn amounts_are_told_as_one_measures_them() {
        let cases = [
            ("11 3/4 tsp", Some("2 1/4 oz"), "3 tbsp 2 3/4 tsp", Some("2 1/4 oz")),
            ("3 tsp", Some("1/2 oz"), "1 tbsp", Some("1/2 oz")),
            ("2 tsp", None, "2 tsp", None),
            ("0 tbsp", Some("0 oz"), "as you like", Some("")),
            ("as you like", None, "as you like", Some("")),
            ("2721 g", Some("6 lb"), "", Some("6 lb")),
            ("2 lb", Some("2 lb"), "", Some("2 lb")),
            ("8 lb 5 oz", None, "", Some("8 lb 5 oz")),
            ("58 1/2 oz", Some("1.66 kg"), "", Some("1.66 kg")),
            ("4 cloves", Some("0.42 oz"), "4 cloves", Some("0.42 oz")),
            ("4", Some("3/4 oz"), "4", Some("3/4 oz")),
        ];
        for (measure, weight, told, beside) in cases {
            assert_eq!(tidied(measure, weight), (told.to_owned(), beside.map(str::to_owned)), "{measure}");
        }
    }

    #[test]
    fn a_factor_is_told_so_that_one_can_picture_it() {
        let of = |numerator, denominator| {
            word_factor(Fraction::new(numerator, denominator).expect("a fraction with parts"))
        };
        assert_eq!(of(1, 1), "the whole printed formula");
        assert_eq!(of(7, 10), "7/10 of the printed formula");
        assert_eq!(of(144, 25), "5.8 times what is printed");
        assert_eq!(of(37, 50), "about 74 % of the printed formula");
    }
}
