//! Look-ups, and that every refusal is made by a row: with the row struck, the answer changes.

use measure::{Altitude, Minutes, Pressure};

use crate::{
    Almanac, CannerKind, JarSize, NoProcess, Pack, Process, ProcessQuestion, ProductId, Table, Tables,
};

fn almanac() -> Almanac {
    Almanac::load().expect("the built-in tables hold no fault")
}

fn without(table: Table, strike: impl Fn(&str) -> bool) -> Almanac {
    let tables = Tables::embedded().without_lines(table, strike);
    Almanac::from_tables(&tables).expect("the other rows hold no fault")
}

fn ask(almanac: &Almanac, words: &str) -> Result<Vec<Process>, NoProcess> {
    let [product, pack, jar, canner, feet] =
        words.split(' ').collect::<Vec<_>>().try_into().expect("five words");
    almanac.find_processes(&ProcessQuestion {
        product: ProductId::from(product),
        pack: Pack::find(pack).expect("a pack"),
        jar: JarSize::find(jar).expect("a jar"),
        canner: CannerKind::find(canner).expect("a canner"),
        altitude: Altitude::feet(feet.parse().expect("feet")),
    })
}

/// The minutes and pounds of each line served.
fn figures(almanac: &Almanac, words: &str) -> Vec<(u32, Option<f64>)> {
    ask(almanac, words)
        .unwrap_or_else(|refusal| panic!("{words}: {refusal:?}"))
        .iter()
        .map(|process| (process.minutes().0, process.pressure().map(Pressure::as_psi)))
        .collect()
}

/// Source: US Department of Agriculture, Complete Guide to Home Canning, 2015, Guide 2 (applesauce), Guide 4 (snap
/// beans), Guide 6 (dilled beans), Guide 3 (tomato sauce).
#[test]
fn printed_cells_are_served_as_printed() {
    let almanac = almanac();
    for (feet, minutes) in [(0, 15), (1000, 15), (1001, 20), (3000, 20), (3001, 20), (6000, 20), (6001, 25)] {
        let words = format!("applesauce hot pint boiling-water {feet}");
        assert_eq!(figures(&almanac, &words), [(minutes, None)], "{words}");
    }
    for (feet, psi) in [(0, 11.0), (2000, 11.0), (2001, 12.0), (4001, 13.0), (6001, 14.0), (8000, 14.0)] {
        let words = format!("beans-snap raw quart dial {feet}");
        assert_eq!(figures(&almanac, &words), [(25, Some(psi))], "{words}");
    }
    assert_eq!(figures(&almanac, "beans-snap raw pint weighted 1000"), [(20, Some(10.0))]);
    assert_eq!(figures(&almanac, "beans-snap raw pint weighted 1001"), [(20, Some(15.0))]);
    assert_eq!(figures(&almanac, "dilly-beans raw pint boiling-water 5000"), [(10, None)]);
}

#[test]
fn alternatives_are_whole_lines_and_one_may_end_below_the_others() {
    let almanac = almanac();
    assert_eq!(
        figures(&almanac, "tomato-sauce hot quart weighted 800"),
        [(20, Some(5.0)), (15, Some(10.0)), (10, Some(15.0))]
    );
    assert_eq!(
        figures(&almanac, "tomato-sauce hot quart weighted 1200"),
        [(20, Some(10.0)), (15, Some(15.0))]
    );
}

#[test]
fn pint_row_does_not_serve_a_quart() {
    let refusal = ask(&almanac(), "tomato-ketchup hot quart boiling-water 500").unwrap_err();
    assert!(
        matches!(&refusal, NoProcess::JarTooLarge { largest: JarSize::Pint, barred_by: Some(_) }),
        "{refusal:?}"
    );
    let refusal = ask(&almanac(), "lemon-curd hot 12-ounce boiling-water 500").unwrap_err();
    assert!(matches!(&refusal, NoProcess::JarTooLarge { largest: JarSize::HalfPint, .. }), "{refusal:?}");
}

#[test]
fn a_smaller_jar_takes_the_next_larger_row_by_a_rule_on_file() {
    let cases = [
        ("tomatoes-crushed hot half-pint boiling-water 500", JarSize::Pint, "jar-half-pint-as-pint"),
        ("tomatoes-crushed hot 12-ounce boiling-water 500", JarSize::Pint, "jar-odd-sizes"),
        ("tomatoes-crushed hot pint-and-half boiling-water 500", JarSize::Quart, "jar-half-pint-as-pint"),
        ("tomatoes-crushed hot 28-ounce boiling-water 500", JarSize::Quart, "jar-odd-sizes"),
        ("jam-added-pectin hot quarter-pint boiling-water 500", JarSize::HalfPint, "jar-odd-sizes"),
        ("pie-filling-green-tomato hot pint boiling-water 500", JarSize::Quart, "jar-next-size-up"),
        ("fish-pints raw half-pint dial 500", JarSize::Pint, "jar-fish-small"),
    ];
    let full = almanac();
    for (words, row, rule) in cases {
        let served = ask(&full, words).unwrap_or_else(|refusal| panic!("{words}: {refusal:?}"));
        assert_eq!(served[0].jar_row(), row, "{words}");
        assert_eq!(served[0].jar_rules().last().map(|rule| rule.as_str()), Some(rule), "{words}");
        let without_rule = without(Table::CannerRules, |line| line.starts_with(&format!("{rule},")));
        let refusal = ask(&without_rule, words).unwrap_err();
        assert!(matches!(refusal, NoProcess::JarNotPrinted { .. }), "{words}: {refusal:?}");
    }
}

#[test]
fn a_12_ounce_jar_needs_a_printed_pint() {
    // Green tomato pie filling is printed for quarts alone.
    let refusal = ask(&almanac(), "pie-filling-green-tomato hot 12-ounce boiling-water 500").unwrap_err();
    assert_eq!(refusal, NoProcess::JarNotPrinted { printed: vec![JarSize::Quart] });
}

#[test]
fn half_gallons_are_served_for_the_two_printed_juices_only() {
    let almanac = almanac();
    assert_eq!(figures(&almanac, "apple-juice hot half-gallon boiling-water 500"), [(10, None)]);
    assert_eq!(figures(&almanac, "grape-juice hot half-gallon boiling-water 7000"), [(20, None)]);
    for product in almanac.products().map(|product| product.id.clone()).collect::<Vec<_>>() {
        for (pack, canner) in [("hot", "boiling-water"), ("raw", "boiling-water"), ("hot", "dial")] {
            let served = ask(&almanac, &format!("{product} {pack} half-gallon {canner} 0")).is_ok();
            let juice = matches!(product.as_str(), "apple-juice" | "grape-juice");
            assert!(!served || juice && canner == "boiling-water", "{product}");
        }
    }
}

#[test]
fn altitude_above_the_last_band_is_refused() {
    let refusal = ask(&almanac(), "beans-snap raw pint dial 8001").unwrap_err();
    let NoProcess::AboveLastBand { last, .. } = refusal else { panic!("{refusal:?}") };
    assert_eq!(last, Altitude::feet(8000));
    assert!(ask(&almanac(), "beans-snap raw pint weighted 8001").is_ok());
}

#[test]
fn steam_serves_the_boiling_water_row_within_its_printed_limit() {
    let almanac = almanac();
    assert_eq!(figures(&almanac, "tomatoes-crushed hot pint steam 500"), [(35, None)]);
    let refusal = ask(&almanac, "tomatoes-crushed hot pint steam 6500").unwrap_err();
    let NoProcess::SteamLimit { minutes, limit, barred_by } = refusal else { panic!("{refusal:?}") };
    assert_eq!((minutes, limit), (Minutes(50), Some(Minutes(45))));
    assert!(barred_by.is_some());
    let without_rule = without(Table::CannerRules, |line| line.starts_with("steam-max,"));
    let refusal = ask(&without_rule, "tomatoes-crushed hot pint steam 500").unwrap_err();
    assert!(matches!(refusal, NoProcess::SteamLimit { limit: None, .. }), "{refusal:?}");
}

#[test]
fn low_acid_food_gets_nothing_without_pressure() {
    for (canner, item) in [("boiling-water", "low-acid-in-boiling-water"), ("steam", "steam-canner-low-acid")]
    {
        let words = format!("beans-snap raw pint {canner} 500");
        let refusal = ask(&almanac(), &words).unwrap_err();
        let NoProcess::NoRowForCanner { printed, barred_by } = refusal else { panic!("{refusal:?}") };
        assert_eq!(printed, [CannerKind::Dial, CannerKind::Weighted]);
        assert_eq!(barred_by.expect("a printed bar").0.as_str(), item);
        let without_refusal = without(Table::NotForCanning, |line| line.starts_with(&format!("{item},")));
        let refusal = ask(&without_refusal, &words).unwrap_err();
        assert!(matches!(refusal, NoProcess::NoRowForCanner { barred_by: None, .. }), "{refusal:?}");
    }
}

#[test]
fn an_unprinted_pack_and_an_unknown_food_are_refused() {
    let refusal = ask(&almanac(), "tomatoes-crushed raw pint boiling-water 500").unwrap_err();
    assert_eq!(refusal, NoProcess::PackNotPrinted { printed: vec![Pack::Hot] });
    let refusal = ask(&almanac(), "broccoli hot pint dial 500").unwrap_err();
    assert_eq!(refusal, NoProcess::ProductUnknown { product: ProductId::from("broccoli") });
}

#[test]
fn a_recalled_row_is_never_served_while_the_read_band_beside_it_is() {
    let almanac = almanac();
    assert_eq!(figures(&almanac, "lemon-curd hot half-pint boiling-water 1000"), [(15, None)]);
    let refusal = ask(&almanac, "lemon-curd hot half-pint boiling-water 1001").unwrap_err();
    let NoProcess::OnFileUnverified { citation } = refusal else { panic!("{refusal:?}") };
    assert!(!citation.locator.is_empty());
    let product = ProductId::from("lemon-curd");
    let hidden = almanac.printed_lines(&product).filter(|line| line.process().is_none()).count();
    assert_eq!(hidden, 2);
}

#[test]
fn one_recalled_alternative_falls_away_and_the_others_stay() {
    assert_eq!(
        figures(&almanac(), "tomato-juice hot pint weighted 500"),
        [(20, Some(5.0)), (15, Some(10.0))]
    );
}

#[test]
fn a_row_of_lower_rank_is_served_only_through_a_full_rank_row() {
    let words = "marmalade-citrus hot half-pint boiling-water 500";
    let refusal = ask(&almanac(), words).unwrap_err();
    assert!(matches!(refusal, NoProcess::OnFileLowerRank { .. }), "{refusal:?}");
    let text = Tables::embedded().text(Table::BoilingWater).to_owned();
    let seen_again: String = text
        .lines()
        .filter(|line| line.starts_with("marmalade-citrus,"))
        .map(|line| line.replace("third-party-nchfp-copy", "nchfp-web") + "\n")
        .collect();
    let tables = Tables::embedded().with(Table::BoilingWater, text + &seen_again);
    let almanac = Almanac::from_tables(&tables).expect("a second source is no fault");
    let served = ask(&almanac, words).expect("printed in a full-rank source");
    assert_eq!(served.len(), 1);
    assert_eq!(served[0].citation().source.as_str(), "nchfp-web");
}

#[test]
fn where_sources_disagree_the_strictest_is_served() {
    let text = Tables::embedded().text(Table::BoilingWater).to_owned();
    let longer: String = text
        .lines()
        .filter(|line| line.starts_with("apple-rings-spiced,") && line.contains(",0,1000,10,"))
        .map(|line| line.replace(",0,1000,10,", ",0,1000,12,") + "\n")
        .collect();
    assert!(!longer.is_empty());
    let tables = Tables::embedded().with(Table::BoilingWater, text + &longer);
    let almanac = Almanac::from_tables(&tables).expect("a disagreement is no fault");
    assert_eq!(figures(&almanac, "apple-rings-spiced hot pint boiling-water 500"), [(12, None)]);
}

#[test]
fn tomatoes_get_no_process_where_no_acid_is_on_file() {
    for canner in ["boiling-water", "weighted"] {
        let words = format!("tomato-sauce hot pint {canner} 500");
        let served = ask(&almanac(), &words).expect("acid is on file");
        assert!(served.iter().all(Process::acid_in_each_jar), "{words}");
        let without_acid = without(Table::Acidification, |line| line.starts_with("tomato-sauce,"));
        let refusal = ask(&without_acid, &words).unwrap_err();
        assert!(matches!(refusal, NoProcess::AcidNotPrinted { .. }), "{words}: {refusal:?}");
    }
}

#[test]
fn acid_never_falls_below_the_printed_amount_of_a_larger_jar() {
    let almanac = almanac();
    let acid = |product: &str, jar| almanac.acid_for(&ProductId::from(product), jar);
    let pint = acid("tomatoes-crushed", JarSize::Pint).expect("printed");
    let half_pint = acid("tomatoes-crushed", JarSize::HalfPint).expect("served by the pint");
    assert_eq!((half_pint.jar, half_pint.lemon), (JarSize::Pint, pint.lemon));
    assert!((pint.lemon.expect("printed").as_tablespoons() - 1.0).abs() < 1e-9);
    assert!((pint.citric.expect("printed").as_teaspoons() - 0.25).abs() < 1e-9);
    let quart = acid("tomatoes-crushed", JarSize::Quart).expect("printed");
    assert!((quart.vinegar.expect("printed").as_tablespoons() - 4.0).abs() < 1e-9);
    assert_eq!(acid("tomatoes-crushed", JarSize::HalfGallon), None);
    assert_eq!(acid("applesauce", JarSize::Pint), None);
}

#[test]
fn jars_rest_as_the_rules_print_and_not_without_them() {
    let rest = |almanac: &Almanac, words| ask(almanac, words).expect("printed")[0].rest();
    assert_eq!(rest(&almanac(), "applesauce hot pint boiling-water 0"), Some(Minutes(5)));
    assert_eq!(rest(&almanac(), "beans-snap hot pint dial 0"), Some(Minutes(10)));
    let without_rule = without(Table::CannerRules, |line| line.starts_with("bw-rest,"));
    assert_eq!(rest(&without_rule, "applesauce hot pint boiling-water 0"), None);
}
