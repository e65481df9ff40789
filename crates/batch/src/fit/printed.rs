//! Weights that stand in the words beside an ingredient: `about 3 lb`, `10-11 lb`, `from 4-6 lb peaches`.
//!
//! Such a weight is the publication's own equivalence for a measure in cups, and goes before any density.

use measure::{Fraction, Mass};

/// A printed weight or a range of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct PrintedWeight {
    /// The lighter end.
    pub(crate) low: Mass,
    /// The heavier end; the same where one weight is printed.
    pub(crate) high: Mass,
}

/// Finds the weight of the produce in the words of its preparation.
///
/// A rate (`per 5 lb`, `21 lb for 9 pints`) is none, nor is the weight of a frozen or canned stand-in.
pub(crate) fn find_weight(prep: &str) -> Option<PrintedWeight> {
    let words: Vec<&str> = prep.split([' ', ',', ';', '(', ')']).filter(|word| !word.is_empty()).collect();
    words.iter().enumerate().find_map(|(at, &word)| {
        let mass_of: fn(f64) -> Mass = match word {
            "lb" => Mass::pounds,
            "oz" => Mass::ounces,
            _ => return None,
        };
        let number = *words.get(at.checked_sub(1)?)?;
        let before = at.checked_sub(2).and_then(|at| words.get(at)).copied();
        let after = words.get(at + 1).copied();
        if before == Some("per") || matches!(after, Some("for" | "frozen")) {
            return None;
        }
        let (low, high) = number.split_once('-').unwrap_or((number, number));
        Some(PrintedWeight { low: mass_of(to_number(low)?), high: mass_of(to_number(high)?) })
    })
}

fn to_number(text: &str) -> Option<f64> {
    let value: Fraction = text.parse().ok()?;
    (value > Fraction::ZERO).then(|| value.to_f64())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(prep: &str, want: Option<(f64, f64)>) {
        let got = find_weight(prep).map(|found| (found.low.as_pounds(), found.high.as_pounds()));
        match (got, want) {
            (None, None) => {}
            (Some((low, high)), Some((want_low, want_high))) => {
                assert!(
                    (low - want_low).abs() < 1e-9 && (high - want_high).abs() < 1e-9,
                    "{prep}: {low} {high}"
                );
            }
            _ => panic!("{prep}: {got:?} is not {want:?}"),
        }
    }

    #[test]
    fn weights_are_found_in_the_words_of_a_preparation() {
        check("thin slices, about 3 lb", Some((3.0, 3.0)));
        check("sliced, 10-11 lb", Some((10.0, 11.0)));
        check("freshly grated, about 3/4 lb", Some((0.75, 0.75)));
        check("3.33-3.5 lb grapes", Some((3.33, 3.5)));
        check("about 4.5 lb plums and 1 cup water", Some((4.5, 4.5)));
        check("drained, from 4-6 lb peaches", Some((4.0, 6.0)));
        check("diced, about 2.4 oz; any onion", Some((0.15, 0.15)));
        check("peeled, cored, chopped; about 4 lb by the Northwest text", Some((4.0, 4.0)));
    }

    #[test]
    fn rates_counts_and_stand_ins_are_no_weights() {
        check("21 lb for 9 pints", None);
        check("3 tbsp per 5 lb, five lots", None);
        check("16-20 ears or 60 oz frozen", None);
        check("chopped, about 4 large", None);
        check("", None);
    }
}
