//! Salt, temperature, signs and pH of ferments.

use almanac::Table;
use proptest::prelude::*;

use super::*;
use crate::after::tests::{almanac, almanac_without, at};

fn now() -> Moment {
    at("2026-10-01 23:10")
}

fn ask(words: &FermentWords) -> FermentAnswer {
    look_at_ferment(almanac(), words, &now()).unwrap()
}

fn kraut() -> FermentWords {
    FermentWords { product: "sauerkraut".into(), ..FermentWords::default() }
}

fn part(answer: &FermentAnswer, name: &str) -> FermentPart {
    answer
        .parts
        .iter()
        .find(|part| part.part == name)
        .cloned()
        .unwrap_or_else(|| panic!("no {name} in {answer:?}"))
}

fn salt(product: &str, percent: &str) -> &'static str {
    let words =
        FermentWords { product: product.into(), salt: Some(percent.into()), ..FermentWords::default() };
    part(&ask(&words), "salt").verdict
}

fn warmth(product: &str, temp: &str) -> &'static str {
    let words = FermentWords { product: product.into(), temp: Some(temp.into()), ..FermentWords::default() };
    part(&ask(&words), "temperature").verdict
}

/// Source: USDA Complete Guide, 2015, Guide 6 p. 6-8: 3 tablespoons for 5 lb, which are 2.4 percent; Johanningsmeier
/// and others, 2007: 2.0 to 2.25 percent; Colorado State on kimchi: 2 to 5 percent.
#[test]
fn salt_falls_into_its_band_edges_and_all() {
    for (percent, want) in [
        ("1.9 %", "do-not"),
        ("2 %", "not-tested"),
        ("2.24 %", "not-tested"),
        ("2.25 %", "tested"),
        ("2.4 %", "tested"),
        ("2.5 %", "tested"),
        ("2.6 %", "not-tested"),
    ] {
        assert_eq!(salt("sauerkraut", percent), want, "{percent}");
    }
    for (percent, want) in
        [("1.9 %", "not-tested"), ("2 %", "tested"), ("5 %", "tested"), ("5.1 %", "not-tested")]
    {
        assert_eq!(salt("kimchi", percent), want, "{percent}");
    }
    assert_eq!(salt("brined green beans", "3 %"), "not-tested");
}

/// Source: Michigan State University Extension, file 01600078: kraut 70 to 75 °F 3 to 4 weeks, 60 to 65 °F 5 to 6 weeks,
/// not under 60, soft over 75; USDA 2009: dills not over 80.
#[test]
fn temperature_falls_into_its_band() {
    for (temp, want) in [
        ("59 F", "do-not"),
        ("60 F", "tested"),
        ("68 F", "not-tested"),
        ("75 F", "tested"),
        ("76 F", "do-not"),
    ] {
        assert_eq!(warmth("sauerkraut", temp), want, "{temp}");
    }
    assert_eq!(warmth("fermented dill pickles", "81 F"), "do-not");
    assert_eq!(warmth("fermented dill pickles", "60 F"), "tested");
}

#[test]
fn the_end_is_dated_by_the_temperature_and_by_the_longest_without_one() {
    let by = |temp: Option<&str>| {
        let words =
            FermentWords { temp: temp.map(str::to_owned), started: Some("2026-09-12".into()), ..kraut() };
        let answer = ask(&words);
        answer.done_from.zip(answer.done_by).map(|(from, by)| (from.in_words(), by.in_words()))
    };
    let dates = |from: &str, by: &str| Some((from.to_owned(), by.to_owned()));
    assert_eq!(by(Some("72 F")), dates("Sat 3 Oct, 00:00", "Sat 10 Oct, 00:00"));
    assert_eq!(by(Some("62 F")), dates("Sat 17 Oct, 00:00", "Sat 24 Oct, 00:00"));
    assert_eq!(by(None), by(Some("62 F")));
    assert_eq!(by(Some("68 F")), by(Some("62 F")));
}

/// Source: North Dakota State on sauerkraut; Oregon State SP 50-745, 2025: scum is skimmed, slime is thrown away.
#[test]
fn scum_is_skimmed_and_mould_slime_and_stink_end_the_ferment() {
    for (seen, want) in [
        ("white scum on top", "care"),
        ("a white film", "care"),
        ("blue mold", "discard"),
        ("fuzzy spots", "discard"),
        ("slimy", "discard"),
        ("it stinks", "discard"),
        ("scum and green fuzz", "discard"),
        ("bubbles", "care"),
        ("pink and slimy", "discard"),
        ("a white film that sings", "not-tested"),
    ] {
        let answer = ask(&FermentWords { seen: vec![seen.into()], ..kraut() });
        assert_eq!(part(&answer, "sign").verdict, want, "{seen}");
    }
    let said =
        look_at_ferment(almanac(), &FermentWords { seen: vec!["frobnicated".into()], ..kraut() }, &now());
    assert!(said.unwrap_err().to_string().contains("slimy"));
}

/// Source: Colorado State University Extension, kimchi page: eaten only at pH 4.6 or lower.
#[test]
fn a_ph_closes_above_its_line_and_opens_nothing() {
    let with = |ph: Option<&str>, seen: &str| {
        ask(&FermentWords { ph: ph.map(str::to_owned), seen: vec![seen.into()], ..kraut() })
    };
    assert_eq!(with(Some("4.7"), "bubbles").verdict, "do-not");
    assert_eq!(with(Some("pH 3.2"), "blue mold").verdict, "discard");
    assert_eq!(with(Some("3.2"), "bubbles").verdict, with(None, "bubbles").verdict);
    let low = part(&with(Some("3.2"), "bubbles"), "ph");
    assert!(low.text.is_some_and(|text| text.contains("opens nothing")));
    for wrong in ["sour", "15", "-1", ""] {
        let words = FermentWords { ph: Some(wrong.into()), ..kraut() };
        assert!(
            matches!(look_at_ferment(almanac(), &words, &now()), Err(AfterError::NoPh { .. })),
            "{wrong}"
        );
    }
}

#[test]
fn no_shelf_process_where_none_is_printed() {
    let shelf = |product: &str| {
        let answer = ask(&FermentWords { product: product.into(), ..FermentWords::default() });
        (answer.shelf_process.clone(), part(&answer, "shelf").text.unwrap_or_default())
    };
    assert_eq!(shelf("kraut").0.as_deref(), Some("sauerkraut"));
    assert_eq!(shelf("dill pickles").0.as_deref(), Some("dill-pickles-fermented"));
    for product in ["kimchi", "pepper mash", "carrots", "half-sour"] {
        let (process, text) = shelf(product);
        assert!(process.is_none() && text.contains("refrigerator"), "{product}: {text}");
    }
    assert!(ask(&FermentWords { product: "pepper mash".into(), ..FermentWords::default() }).is_refusal());
}

#[test]
fn a_plain_question_about_a_printed_ferment_is_no_refusal() {
    for product in ["sauerkraut", "fermented dill pickles", "kimchi", "half-sour pickles"] {
        let answer = ask(&FermentWords { product: product.into(), ..FermentWords::default() });
        assert!(!answer.is_refusal(), "{product}: {answer:?}");
    }
}

#[test]
fn every_rule_is_reached_and_its_loss_is_felt() {
    let questions: Vec<FermentWords> = almanac()
        .ferment_names()
        .iter()
        .flat_map(|name| {
            let words = |salt: &str, temp: Option<&str>, ph: &str| FermentWords {
                product: name.product.to_string(),
                salt: Some(salt.into()),
                temp: temp.map(str::to_owned),
                ph: Some(ph.into()),
                seen: almanac().askable_ferment_signs(),
                ..FermentWords::default()
            };
            [
                words("1 %", Some("50 F"), "5"),
                words("2.1 %", Some("62 F"), "4"),
                words("2.4 %", Some("72 F"), "4"),
                words("6 %", Some("90 F"), "4"),
                words("3 %", None, "4"),
            ]
        })
        .collect();
    let shown = |almanac: &Almanac, words: &FermentWords| {
        look_at_ferment(almanac, words, &now()).map(|answer| serde_json::to_string(&answer).unwrap()).ok()
    };
    for row in almanac().ferment_rules() {
        let quoted = format!("\"{}\"", row.id);
        let asked =
            questions.iter().find(|words| shown(almanac(), words).is_some_and(|text| text.contains(&quoted)));
        let asked = asked.unwrap_or_else(|| panic!("nothing shows {}", row.id));
        let without = almanac_without(Table::FermentRules, row.id.as_str());
        assert_ne!(shown(&without, asked), shown(almanac(), asked), "{}", row.id);
    }
}

fn weight(words: &FermentWords) -> FermentVerdict {
    FermentVerdict::find(ask(words).verdict).expect("a verdict of the list")
}

proptest! {
    #[test]
    fn less_salt_below_the_band_is_never_kinder(thousandths in 0_u32..2250, less in 0_u32..2250) {
        let at_salt = |thousandths: u32| {
            let salt = Some(format!("{:.3} %", f64::from(thousandths) / 1000.0));
            weight(&FermentWords { salt, ..kraut() })
        };
        prop_assert!(at_salt(thousandths.saturating_sub(less)) <= at_salt(thousandths));
    }

    #[test]
    fn no_ph_makes_an_answer_kinder(hundredths in 0_u32..1400, percent in 10_u32..40) {
        let without = FermentWords { salt: Some(format!("{} %", f64::from(percent) / 10.0)), ..kraut() };
        let with = FermentWords { ph: Some(format!("{}", f64::from(hundredths) / 100.0)), ..without.clone() };
        prop_assert!(weight(&with) <= weight(&without));
    }
}
