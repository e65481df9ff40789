//! What a fitted formula takes, as one reads it at the counter.

use batch::fit::{CookUnit, FittedIngredient, Measured};
use measure::{Fraction, write_mass_metric};

use super::sentence::capitalize;

/// One line of what a batch takes, in finished words.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct SaidAmount {
    /// What it is.
    pub what: String,
    /// How it is prepared.
    pub prep: String,
    /// By measure; empty where the weight says it all.
    pub measure: String,
    /// By weight; `None` where no row says.
    pub weight: Option<String>,
    /// How far the measure lies from the exact amount, where that is worth a word.
    pub moved: Option<String>,
}

/// A line of a fitted batch as one reads it at the counter.
#[must_use]
pub fn say_amount(line: &FittedIngredient) -> SaidAmount {
    /// A smaller move is not worth a word.
    const TOLD_PERCENT: f64 = 2.0;
    tidy_amount(SaidAmount {
        what: capitalize(&line.ingredient),
        prep: line.prep.clone(),
        measure: line.measured.as_ref().map_or_else(
            || "as you like".to_owned(),
            |measured| {
                format!("{} {}", write_measured(measured), line.per.unwrap_or_default()).trim_end().to_owned()
            },
        ),
        weight: line.weight.map(write_mass_metric),
        moved: (line.moved_percent.abs() > TOLD_PERCENT)
            .then(|| format!("moved {:+.1} % to a mark", line.moved_percent)),
    })
}

fn write_measured(measured: &Measured) -> String {
    let many = measured.value > Fraction::ONE;
    let unit = match measured.unit {
        CookUnit::Tsp => "tsp",
        CookUnit::Tbsp => "tbsp",
        CookUnit::Cup if many => "cups",
        CookUnit::Cup => "cup",
        CookUnit::Pint => "pt",
        CookUnit::Qt => "qt",
        CookUnit::Gal => "gal",
        CookUnit::Oz => "oz",
        CookUnit::Lb => "lb",
        CookUnit::G => "g",
        CookUnit::Each => "",
        CookUnit::Clove if many => "cloves",
        CookUnit::Clove => "clove",
        CookUnit::Stick if many => "sticks",
        CookUnit::Stick => "stick",
        CookUnit::Large => "large",
        CookUnit::Ear if many => "ears",
        CookUnit::Ear => "ear",
        CookUnit::Bunch if many => "bunches",
        CookUnit::Bunch => "bunch",
        CookUnit::Drop if many => "drops",
        CookUnit::Drop => "drop",
        CookUnit::Package if many => "packages",
        CookUnit::Package => "package",
        CookUnit::Pouch if many => "pouches",
        CookUnit::Pouch => "pouch",
    };
    format!("{} {unit}", measured.value).trim_end().to_owned()
}

/// An amount as one reads it at the counter: spoons counted in the larger spoon, nothing weighed twice, and no figure
/// where the cook is free.
#[must_use]
pub fn tidy_amount(amount: SaidAmount) -> SaidAmount {
    let (number, unit) = amount.measure.rsplit_once(' ').unwrap_or((amount.measure.as_str(), ""));
    let is_free = number == "0" || amount.measure == "as you like";
    if is_free {
        return SaidAmount {
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
        return SaidAmount { measure: String::new(), weight, ..amount };
    }
    let measure = match (unit, number.parse::<Fraction>()) {
        ("tsp", Ok(spoons)) => write_spoons(spoons).unwrap_or_else(|| amount.measure.clone()),
        _ => amount.measure.clone(),
    };
    SaidAmount { measure, ..amount }
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
#[must_use]
pub fn say_factor(factor: Fraction) -> String {
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

#[cfg(test)]
mod tests {
    use super::*;

    fn tidied(measure: &str, weight: Option<&str>) -> (String, Option<String>) {
        let amount = SaidAmount {
            measure: measure.to_owned(),
            weight: weight.map(str::to_owned),
            ..SaidAmount::default()
        };
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
            say_factor(Fraction::new(numerator, denominator).expect("a fraction with parts"))
        };
        assert_eq!(of(1, 1), "the whole printed formula");
        assert_eq!(of(7, 10), "7/10 of the printed formula");
        assert_eq!(of(144, 25), "5.8 times what is printed");
        assert_eq!(of(37, 50), "about 74 % of the printed formula");
    }
}
