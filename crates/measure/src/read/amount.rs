//! Reading an amount of produce, whatever it is measured in.

use super::count::{is_count_word, take_count};
use super::cursor::Cursor;
use super::error::{Expected, ReadError};
use super::mass::{find_mass_unit, take_mass};
use super::number::{Marks, take_number};
use super::volume::{find_volume_unit, take_volume};
use crate::fraction::Fraction;
use crate::quantity::{Mass, Volume};

/// An amount as it was written, before anyone knows what it is an amount of.
#[derive(Debug, Clone, PartialEq)]
pub enum Amount {
    /// Weighed.
    Mass(Mass),
    /// Measured.
    Volume(Volume),
    /// Counted.
    Count(Fraction),
    /// Containers that have a weight only once the crop is known: half a bushel, three crates.
    Container {
        /// How many.
        number: Fraction,
        /// Of which container, in the singular and spelled out: `bushel`.
        name: String,
    },
}

/// Reads an amount: a mass, a volume, a count (`14`, `24 ears`), or containers (`half a bushel`, `2 pecks`,
/// `3 crates`, `1 lug`).
///
/// # Errors
///
/// When it is none of these, or when it would be one but cannot be read as such; `2,5 bushels` is fine,
/// `2,500 bushels` can be read two ways.
///
/// # Examples
///
/// ```
/// use measure::{Amount, Fraction, Mass, read_amount};
///
/// assert_eq!(read_amount("2 kg").unwrap(), Amount::Mass(Mass::kilograms(2.0)));
/// assert_eq!(read_amount("14").unwrap(), Amount::Count(Fraction::whole(14)));
/// let bushel = Amount::Container { number: Fraction::HALF, name: "bushel".to_owned() };
/// assert_eq!(read_amount("half a bushel").unwrap(), bushel);
/// ```
pub fn read_amount(text: &str) -> Result<Amount, ReadError> {
    let mut cursor = Cursor::new(text, Expected::Amount)?;
    let start = cursor.place();
    if cursor.take_known(|word| is_count_word(word).then_some(())).is_some() {
        cursor.go_back_to(start);
        return take_count(&mut cursor).map(Amount::Count);
    }
    let number = take_number(&mut cursor)?;
    if cursor.is_done() {
        cursor.go_back_to(start);
        return take_count(&mut cursor).map(Amount::Count);
    }
    let measured_in = cursor.take_unit(find_measure)?;
    match measured_in {
        Measure::Container(name) => {
            let number = number.resolve(Marks::Parts, &cursor)?;
            cursor.finish()?;
            Ok(Amount::Container { number, name: name.to_owned() })
        }
        Measure::Mass => {
            cursor.go_back_to(start);
            take_mass(&mut cursor).map(Amount::Mass)
        }
        Measure::Volume => {
            cursor.go_back_to(start);
            take_volume(&mut cursor).map(Amount::Volume)
        }
        Measure::Count => {
            cursor.go_back_to(start);
            take_count(&mut cursor).map(Amount::Count)
        }
    }
}

/// What the word behind a number says the number counts.
enum Measure {
    Mass,
    Volume,
    Count,
    Container(&'static str),
}

fn find_measure(word: &str) -> Option<Measure> {
    if find_mass_unit(word).is_some() {
        Some(Measure::Mass)
    } else if find_volume_unit(word).is_some() {
        Some(Measure::Volume)
    } else if is_count_word(word) {
        Some(Measure::Count)
    } else {
        find_container(word).map(Measure::Container)
    }
}

/// The containers produce is picked, sold and carried in.
fn find_container(word: &str) -> Option<&'static str> {
    Some(match word {
        "bushel" | "bushels" | "bu" => "bushel",
        "peck" | "pecks" | "pk" => "peck",
        "crate" | "crates" => "crate",
        "lug" | "lugs" => "lug",
        "flat" | "flats" => "flat",
        "box" | "boxes" => "box",
        "carton" | "cartons" => "carton",
        "case" | "cases" => "case",
        "basket" | "baskets" => "basket",
        "bucket" | "buckets" => "bucket",
        "bag" | "bags" => "bag",
        "sack" | "sacks" => "sack",
        "tray" | "trays" => "tray",
        "bunch" | "bunches" => "bunch",
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn containers(number: &str, name: &str) -> Amount {
        Amount::Container { number: number.parse().unwrap(), name: name.to_owned() }
    }

    #[test]
    fn an_amount_is_whatever_its_unit_says() {
        for (text, want) in [
            ("2 lb 3 oz", Amount::Mass(Mass::ounces(35.0))),
            ("8 oz", Amount::Mass(Mass::ounces(8.0))),
            ("2 qt", Amount::Volume(Volume::quarts(2.0))),
            ("8 fl oz", Amount::Volume(Volume::fluid_ounces(8.0))),
            ("14", Amount::Count(Fraction::whole(14))),
            ("1,200", Amount::Count(Fraction::whole(1200))),
            ("a dozen", Amount::Count(Fraction::whole(12))),
            ("dozen", Amount::Count(Fraction::whole(12))),
            ("24 ears", Amount::Count(Fraction::whole(24))),
            ("3 each", Amount::Count(Fraction::whole(3))),
            ("half a bushel", containers("1/2", "bushel")),
            ("1/2 bu.", containers("1/2", "bushel")),
            ("2 pecks", containers("2", "peck")),
            ("3 crates", containers("3", "crate")),
            ("1 lug", containers("1", "lug")),
            ("a lug", containers("1", "lug")),
            ("2,5 bushels", containers("2 1/2", "bushel")),
        ] {
            let got = read_amount(text).unwrap_or_else(|error| panic!("{text:?}: {error}"));
            assert_eq!(got, want, "{text:?}");
        }
    }

    #[test]
    fn an_amount_that_cannot_be_read_says_what_amounts_look_like() {
        for (text, column) in [
            ("", 1),
            ("2 firkins", 3),
            ("2 bushels of corn", 11),
            ("2,500 bushels", 1),
            ("-1 bushel", 1),
            ("some", 1),
            ("2,300 kg", 1),
            ("5 °F", 3),
        ] {
            let error = read_amount(text).unwrap_err();
            assert_eq!(error.column(), column, "{text:?}: {error}");
            assert_eq!(error.expected(), Expected::Amount, "{text:?}");
        }
        let error = read_amount("2 firkins").unwrap_err();
        assert_eq!(
            error.to_string(),
            "\"firkins\" at column 3 of \"2 firkins\" is not a unit that fits here; hint: write an amount such as \
             \"2 lb 3 oz\", \"2 qt\", \"14\" or \"half a bushel\""
        );
    }
}
