//! Whatever is written, a reader answers with a value in its range or an error that points into the text.

use measure::{
    Amount, Fraction, Mass, Volume, read_altitude, read_amount, read_clock, read_count, read_fraction,
    read_length, read_mass, read_minutes, read_percent, read_pressure, read_temp, read_volume,
};
use proptest::prelude::*;

/// Texts made of the pieces amounts are made of, so that they come close to being readable.
fn nearly_an_amount() -> impl Strategy<Value = String> {
    let piece = prop::sample::select(vec![
        "0",
        "1",
        "7",
        "12",
        "300",
        "4294967295",
        "99999999999",
        ".",
        ",",
        "/",
        "½",
        "¾",
        "-",
        "−",
        "+",
        ":",
        " ",
        "  ",
        "\u{a0}",
        "a",
        "an",
        "of",
        "and",
        "half",
        "quarter",
        "one",
        "dozen",
        "lb",
        "oz",
        "kg",
        "g",
        "#",
        "cups",
        "T",
        "t",
        "fl",
        "fl oz",
        "cu ft",
        "ml",
        "l",
        "ft",
        "m",
        "'",
        "\"",
        "in",
        "psi",
        "kPa",
        "°",
        "F",
        "°C",
        "degrees",
        "%",
        "min",
        "h",
        "days",
        "am",
        "pm",
        "noon",
        "bushel",
        "ears",
        "NaN",
        "inf",
        "e9",
        "é",
        "日",
        "\u{0}",
    ]);
    prop::collection::vec(piece, 0..9).prop_map(|pieces| pieces.concat())
}

/// Reads a text in every way there is and checks what comes of it.
fn check_every_reader(text: &str) -> Result<(), TestCaseError> {
    let in_range = |name: &str, value: f64, low: f64, high: f64| {
        prop_assert!(value.is_finite() && (low..=high).contains(&value), "{name} of {text:?} is {value}");
        Ok(())
    };
    let errors = [
        read_fraction(text).and_then_check(|n| in_range("fraction", n.to_f64(), 0.0, 5e9))?,
        read_mass(text).and_then_check(|m| in_range("mass", m.as_kilograms(), 0.0, 10_000.0))?,
        read_volume(text).and_then_check(|v| in_range("volume", v.as_litres(), 0.0, 10_000.0))?,
        read_length(text).and_then_check(|l| in_range("length", l.as_metres(), 0.0, 100.0))?,
        read_altitude(text)
            .and_then_check(|a| in_range("altitude", f64::from(a.as_feet()), 0.0, 30_000.0))?,
        read_pressure(text).and_then_check(|p| in_range("pressure", p.as_psi(), -100.0, 100.0))?,
        read_temp(text).and_then_check(|t| in_range("temperature", t.as_fahrenheit(), -100.0, 1000.0))?,
        read_minutes(text).and_then_check(|m| in_range("minutes", f64::from(m.0), 0.0, 5_256_000.0))?,
        read_clock(text).and_then_check(|c| in_range("clock", f64::from(c.0), 0.0, 1439.0))?,
        read_percent(text).and_then_check(|p| in_range("percent", p.as_percent(), 0.0, 100.0))?,
        read_count(text).and_then_check(|n| in_range("count", n.to_f64(), 0.0, 1e6))?,
        read_amount(text).and_then_check(|amount| match amount {
            Amount::Mass(mass) => in_range("mass", mass.as_kilograms(), 0.0, 10_000.0),
            Amount::Volume(volume) => in_range("volume", volume.as_litres(), 0.0, 10_000.0),
            Amount::Count(number) | Amount::Container { number, .. } => {
                in_range("number", number.to_f64(), 0.0, 5e9)
            }
        })?,
    ];
    let characters = text.chars().count();
    for error in errors.into_iter().flatten() {
        prop_assert!((1..=characters + 1).contains(&error.column()), "{error}: column {}", error.column());
        prop_assert!(text.starts_with(error.text()), "{error} does not repeat {text:?}");
        let message = error.to_string();
        prop_assert!(message.contains("hint: "), "{} has no hint", message);
        let quoted = format!("{:?}", error.text());
        prop_assert!(
            error.text().is_empty() || message.contains(&quoted),
            "{} does not name {}",
            message,
            quoted
        );
    }
    Ok(())
}

/// Checks a value and hands back the error, so that every reader's answer can be looked at in one list.
trait Answer<T> {
    fn and_then_check(
        self,
        check: impl FnOnce(T) -> Result<(), TestCaseError>,
    ) -> Result<Option<measure::ReadError>, TestCaseError>;
}

impl<T> Answer<T> for Result<T, measure::ReadError> {
    fn and_then_check(
        self,
        check: impl FnOnce(T) -> Result<(), TestCaseError>,
    ) -> Result<Option<measure::ReadError>, TestCaseError> {
        match self {
            Ok(value) => check(value).map(|()| None),
            Err(error) => Ok(Some(error)),
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1024, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_text_makes_a_reader_panic(text in any::<String>()) {
        check_every_reader(&text)?;
    }

    #[test]
    fn no_text_made_of_the_pieces_of_amounts_makes_a_reader_panic(text in nearly_an_amount()) {
        check_every_reader(&text)?;
    }

    #[test]
    fn a_printed_fraction_reads_back(numerator in 0_i64..1_000_000, denominator in 1_i64..1_000) {
        let fraction = Fraction::new(numerator, denominator).unwrap();
        prop_assert_eq!(fraction.to_string().parse::<Fraction>(), Ok(fraction));
    }

    #[test]
    fn a_fraction_printed_in_decimals_reads_back_to_half_its_last_place(
        numerator in 0_i64..1_000_000,
        denominator in 1_i64..1_000,
        places in 0_u32..=6,
    ) {
        let fraction = Fraction::new(numerator, denominator).unwrap();
        let back: Fraction = fraction.to_decimal(places).parse().unwrap();
        let half_place = 0.5 * 0.1_f64.powi(i32::try_from(places).unwrap());
        prop_assert!((back.to_f64() - fraction.to_f64()).abs() <= half_place * (1.0 + 1e-6), "{fraction} as {back}");
    }

    #[test]
    fn sums_and_products_of_fractions_undo_each_other(
        (a, b) in (0_i64..1_000, 1_i64..100), (c, d) in (1_i64..1_000, 1_i64..100),
    ) {
        let (first, second) = (Fraction::new(a, b).unwrap(), Fraction::new(c, d).unwrap());
        prop_assert_eq!(first.checked_add(second).unwrap().checked_sub(second), Some(first));
        prop_assert_eq!(first.checked_mul(second).unwrap().checked_div(second), Some(first));
        prop_assert_eq!(first.checked_add(second), second.checked_add(first));
    }

    #[test]
    fn the_parts_of_a_written_mass_add_up_to_the_whole(pounds in 1_u32..1_000, ounces in 0_u32..64) {
        let whole = read_mass(&format!("{pounds} lb {ounces} oz")).unwrap();
        let parts: Mass = [Mass::pounds(f64::from(pounds)), Mass::ounces(f64::from(ounces))].into_iter().sum();
        prop_assert!((whole.ratio_to(parts) - 1.0).abs() < 1e-12);
        prop_assert!((whole.as_ounces() - f64::from(16 * pounds + ounces)).abs() < 1e-6);
    }

    #[test]
    fn the_parts_of_a_written_volume_add_up_to_the_whole(
        quarts in 1_u32..100, eighths in 0_u32..32, teaspoons in 0_u32..12,
    ) {
        let cups = Fraction::new(i64::from(eighths), 8).unwrap();
        let whole = read_volume(&format!("{quarts} qt {cups} cups {teaspoons} tsp")).unwrap();
        let parts = Volume::quarts(f64::from(quarts))
            + Volume::cups(f64::from(eighths) / 8.0)
            + Volume::teaspoons(f64::from(teaspoons));
        prop_assert!((whole.ratio_to(parts) - 1.0).abs() < 1e-12);
    }

    #[test]
    fn a_comma_never_changes_an_amount_a_thousandfold_unseen(number in 1_u32..=999, behind in 0_u32..=999) {
        // Whatever is not refused is read as the custom of its unit has it.
        let comma = format!("{number},{behind:03}");
        let point = format!("{number}.{behind:03}");
        let thousands = f64::from(number * 1000 + behind);
        let decimal = f64::from(number) + f64::from(behind) / 1000.0;
        let refused = [
            read_mass(&(comma.clone() + " kg")).is_err(),
            read_volume(&(comma.clone() + " cups")).is_err(),
            read_altitude(&(point.clone() + " m")).is_err(),
            read_mass(&(point.clone() + " g")).is_err(),
        ];
        prop_assert_eq!(refused, [true; 4]);
        let grams = read_mass(&format!("{comma} g")).unwrap().as_grams();
        prop_assert!((grams - thousands).abs() < 1e-6);
        let kilograms = read_mass(&format!("{point} kg")).unwrap().as_kilograms();
        prop_assert!((kilograms - decimal).abs() < 1e-9);
    }
}

#[test]
fn a_page_pasted_by_mistake_is_refused_without_repeating_it_all() {
    let page = "plums ".repeat(10_000);
    let error = read_mass(&page).unwrap_err();
    assert!(error.to_string().len() < 250, "{error}");
    assert!(page.starts_with(error.text()));
}
