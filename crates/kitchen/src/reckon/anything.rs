//! Whatever is typed, a sum answers or says what is wrong; it never panics and never gives what is no number.

use almanac::Almanac;
use proptest::prelude::*;

use super::{Kind, list_sums, reckon};

/// Figures at, over and far beyond the ends of what anyone means.
const FIGURES: &[&str] = &["0", "0.001", "1", "5", "14", "26.5", "60", "85", "99.9", "100", "1000", "99999"];

fn texts_of(kind: Kind) -> Vec<String> {
    let with = |units: &[&str]| {
        FIGURES.iter().flat_map(|figure| units.iter().map(move |unit| format!("{figure} {unit}"))).collect()
    };
    match kind {
        Kind::Mass => with(&["g", "kg", "lb"]),
        Kind::Volume => with(&["ml", "L", "cups"]),
        Kind::Amount => with(&["g", "cups", "bushels", ""]),
        Kind::Percent => with(&["%", ""]),
        Kind::Temp => with(&["F", "C"]).into_iter().chain(["-18 C".to_owned(), "-40 F".to_owned()]).collect(),
        Kind::Altitude => with(&["ft", "m"]),
        Kind::Length => with(&["mm", "cm", "in"]),
        Kind::Span => with(&["min", "h", "days"]),
        Kind::Power => with(&["W", "kW", "Btu/h"]),
        Kind::Air => with(&["hPa", "inHg"]),
        Kind::Gauge => with(&["psi", "kPa"]),
        Kind::Count | Kind::Number => FIGURES.iter().map(|figure| (*figure).to_owned()).collect(),
        Kind::Word(words) => words.iter().map(|word| (*word).to_owned()).collect(),
        Kind::Name => {
            ["pint", "quart", "g", "cup", "sugar", "tomatoes", "sauerkraut", "light", "strawberries", "x"]
                .map(str::to_owned)
                .to_vec()
        }
    }
}

fn load() -> &'static Almanac {
    static LOADED: std::sync::OnceLock<Almanac> = std::sync::OnceLock::new();
    LOADED.get_or_init(|| Almanac::load().expect("the tables built in have no fault"))
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, ..ProptestConfig::default() })]

    #[test]
    fn whatever_is_typed_is_answered_or_refused(at in 0..1000_usize, picks in prop::collection::vec(0..1000_usize, 12)) {
        let sums = list_sums();
        let sum = sums[at % sums.len()];
        let typed: Vec<String> = sum
            .inputs
            .iter()
            .zip(&picks)
            .map(|(input, pick)| {
                let texts = texts_of(input.kind);
                format!("{}={}", input.key, texts[pick % texts.len()])
            })
            .collect();
        match reckon(load(), sum.name, &typed) {
            Ok(answer) => {
                for output in &answer.outputs {
                    let figures = [output.value, output.low, output.high];
                    prop_assert!(figures.into_iter().flatten().all(f64::is_finite), "{typed:?}: {output:?}");
                    prop_assert!(output.low <= output.high || output.low.is_none(), "{typed:?}: {output:?}");
                }
            }
            Err(error) => prop_assert!(error.to_string().contains("hint: "), "{typed:?}: {error}"),
        }
    }

    #[test]
    fn no_text_makes_a_sum_panic(at in 0..1000_usize, key in 0..12_usize, text in "\\PC{0,20}") {
        let sums = list_sums();
        let sum = sums[at % sums.len()];
        let input = sum.inputs[key % sum.inputs.len()];
        let mut typed: Vec<String> = sum
            .example
            .iter()
            .map(|typed| typed.replace('"', ""))
            .filter(|typed| !typed.starts_with(&format!("{}=", input.key)))
            .collect();
        typed.push(format!("{}={text}", input.key));
        if let Err(error) = reckon(load(), sum.name, &typed) {
            prop_assert!(error.to_string().contains("hint: "), "{typed:?}: {error}");
        }
    }
}
