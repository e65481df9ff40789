//! Every refusal is made by a row: with the row the answer is no, and without it the answer changes.

use almanac::{Almanac, CannerKind, JarSize, Pack, ProductId, Table, Tables, Verdict};
use batch::clear::{Because, ClearQuestion, Clearance, clear, refuse_words};
use measure::Altitude;

fn load(tables: &Tables) -> Almanac {
    Almanac::from_tables(tables).expect("the tables still load")
}

fn without(table: Table, names: &[&str]) -> Almanac {
    let starts: Vec<String> = names.iter().map(|name| format!("{name},")).collect();
    let tables = Tables::embedded()
        .without_lines(table, |line| starts.iter().any(|start| line.starts_with(start.as_str())));
    load(&tables)
}

fn question(food: &str, pack: Pack, jar: JarSize, canner: CannerKind, feet: u32) -> ClearQuestion {
    ClearQuestion {
        product: ProductId::from(food),
        pack,
        jar,
        canner,
        altitude: Altitude::feet(feet),
        gauge: None,
        formula: None,
        changes: Vec::new(),
    }
}

fn ask(almanac: &Almanac, question: &ClearQuestion) -> Clearance {
    clear(almanac, question).expect("a question that can be judged")
}

fn codes(clearance: &Clearance) -> Vec<Because> {
    clearance.because.iter().map(|reason| reason.code).collect()
}

/// A refusal in full, and that striking its rows changes it.
fn check(asked: &ClearQuestion, verdict: Verdict, code: Because, table: Table, rows: &[&str]) {
    let with = ask(&load(&Tables::embedded()), asked);
    assert_eq!(with.verdict, verdict, "{asked:?}");
    assert!(codes(&with).contains(&code), "{asked:?}: {:?}", with.because);
    assert!(with.processes.is_empty() && with.acid.is_none() && with.riders.is_empty(), "{asked:?}");
    assert!(!with.instead.is_empty(), "{asked:?} has no way out");
    let struck = ask(&without(table, rows), asked);
    assert_ne!(
        (struck.verdict, &struck.because),
        (with.verdict, &with.because),
        "striking {rows:?} changes nothing"
    );
}

#[test]
fn low_acid_food_in_boiling_water_is_barred() {
    let asked = question("beans-snap", Pack::Raw, JarSize::Pint, CannerKind::BoilingWater, 0);
    let rows = ["low-acid-in-boiling-water"];
    check(&asked, Verdict::DoNot, Because::LowAcid, Table::NotForCanning, &rows);
}

#[test]
fn low_acid_food_in_a_steam_canner_is_barred() {
    let asked = question("meat-stock", Pack::Hot, JarSize::Pint, CannerKind::Steam, 0);
    check(&asked, Verdict::DoNot, Because::LowAcid, Table::NotForCanning, &["steam-canner-low-acid"]);
}

#[test]
fn a_steam_canner_past_its_limit_is_barred() {
    let asked = question("tomatoes-whole-juice", Pack::Raw, JarSize::Pint, CannerKind::Steam, 0);
    check(&asked, Verdict::DoNot, Because::SteamLimit, Table::NotForCanning, &["steam-canner-over-45"]);
    check(&asked, Verdict::DoNot, Because::SteamLimit, Table::CannerRules, &["steam-max"]);
}

#[test]
fn a_steam_canner_within_its_limit_takes_the_boiling_water_line() {
    let almanac = load(&Tables::embedded());
    let steam = ask(&almanac, &question("applesauce", Pack::Hot, JarSize::Quart, CannerKind::Steam, 4000));
    let water =
        ask(&almanac, &question("applesauce", Pack::Hot, JarSize::Quart, CannerKind::BoilingWater, 4000));
    assert_eq!(steam.verdict, Verdict::Tested);
    assert_eq!(steam.processes[0].process().minutes(), water.processes[0].process().minutes());
    assert!(steam.riders.iter().any(|rider| rider.code == "steam-max"));
    assert!(!steam.riders.iter().any(|rider| rider.code == "bw-water-depth"));
}

#[test]
fn the_step_of_altitude_counts_for_the_steam_limit() {
    let almanac = load(&Tables::embedded());
    let at =
        |feet| ask(&almanac, &question("figs", Pack::Hot, JarSize::Pint, CannerKind::Steam, feet)).verdict;
    assert_eq!(at(1000), Verdict::Tested);
    assert_eq!(at(1001), Verdict::DoNot);
}

#[test]
fn a_larger_jar_is_barred() {
    let asked = question("salsa-chile", Pack::Hot, JarSize::Quart, CannerKind::BoilingWater, 0);
    check(&asked, Verdict::DoNot, Because::JarTooLarge, Table::NotForCanning, &["oversize-jars"]);
    check(&asked, Verdict::DoNot, Because::JarTooLarge, Table::CannerRules, &["jar-not-larger"]);
    let tables = Tables::embedded()
        .without_lines(Table::NotForCanning, |line| line.starts_with("oversize-jars,"))
        .without_lines(Table::CannerRules, |line| line.starts_with("jar-not-larger,"));
    assert_eq!(ask(&load(&tables), &asked).verdict, Verdict::NotTested);
}

#[test]
fn cream_corn_in_quarts_has_its_own_refusal() {
    let asked = question("corn-cream-style", Pack::Hot, JarSize::Quart, CannerKind::Weighted, 0);
    check(&asked, Verdict::DoNot, Because::JarTooLarge, Table::NotForCanning, &["cream-corn-quarts"]);
}

#[test]
fn a_smaller_jar_takes_the_next_larger_line_and_only_by_a_rule() {
    let asked = question("applesauce", Pack::Hot, JarSize::HalfPint, CannerKind::BoilingWater, 4000);
    let served = ask(&load(&Tables::embedded()), &asked);
    assert_eq!(served.processes[0].process().jar_row(), JarSize::Pint);
    assert_eq!(served.processes[0].process().minutes().0, 20);
    assert!(served.riders.iter().any(|rider| rider.code == "smaller-jar"));
    let struck = ask(&without(Table::CannerRules, &["jar-half-pint-as-pint", "jar-next-size-up"]), &asked);
    assert_eq!(struck.verdict, Verdict::NotTested);
}

#[test]
fn a_jar_is_never_served_by_a_smaller_line() {
    let almanac = load(&Tables::embedded());
    for jar in [JarSize::TwelveOunce, JarSize::Pint, JarSize::Quart] {
        let asked = question("lemon-curd", Pack::Hot, jar, CannerKind::BoilingWater, 0);
        assert_ne!(ask(&almanac, &asked).verdict, Verdict::Tested, "{jar}");
    }
}

#[test]
fn acid_is_asked_for_in_every_canner_and_nothing_is_served_without_its_row() {
    for (canner, jar) in [
        (CannerKind::BoilingWater, JarSize::Pint),
        (CannerKind::Dial, JarSize::Quart),
        (CannerKind::Weighted, JarSize::Quart),
    ] {
        let asked = question("tomatoes-whole-juice", Pack::Hot, jar, canner, 500);
        let served = ask(&load(&Tables::embedded()), &asked);
        let acid = served.acid.as_ref().expect("acid in every canner");
        assert_eq!(acid.rule().jar, jar, "{canner}");
        assert!(served.riders.iter().any(|rider| rider.code == "acid-in-each-jar"), "{canner}");
        let rows = ["tomatoes-whole-juice"];
        check_refused_without(&asked, Table::Acidification, &rows, Because::AcidMissing);
    }
}

/// Without the rows the answer is no, for the reason given.
fn check_refused_without(asked: &ClearQuestion, table: Table, rows: &[&str], code: Because) {
    let struck = ask(&without(table, rows), asked);
    assert_eq!((struck.verdict, codes(&struck)), (Verdict::NotTested, vec![code]), "{asked:?}");
    assert!(struck.processes.is_empty() && struck.acid.is_none());
}

#[test]
fn a_line_of_lower_rank_is_named_and_not_served() {
    let asked = question("tomatoes-crushed", Pack::Hot, JarSize::Pint, CannerKind::Weighted, 0);
    let refused = ask(&load(&Tables::embedded()), &asked);
    assert_eq!((refused.verdict, codes(&refused)), (Verdict::NotTested, vec![Because::OnFileLowerRank]));
    assert!(refused.processes.is_empty());
}

#[test]
fn a_pack_without_a_line_is_not_served() {
    let almanac = load(&Tables::embedded());
    let refused =
        ask(&almanac, &question("applesauce", Pack::Raw, JarSize::Pint, CannerKind::BoilingWater, 0));
    assert_eq!((refused.verdict, codes(&refused)), (Verdict::NotTested, vec![Because::PackNotPrinted]));
    assert!(refused.instead.iter().any(|offer| offer.what == "pack" && offer.text.contains("hot")));
}

#[test]
fn a_pickle_under_pressure_is_not_served() {
    let almanac = load(&Tables::embedded());
    let refused = ask(&almanac, &question("beets-pickled", Pack::Hot, JarSize::Pint, CannerKind::Dial, 0));
    assert_eq!((refused.verdict, codes(&refused)), (Verdict::NotTested, vec![Because::NoRow]));
}

#[test]
fn a_line_goes_with_its_rows() {
    let asked = question("rhubarb-stewed", Pack::Hot, JarSize::Pint, CannerKind::BoilingWater, 0);
    let struck = Tables::embedded().without_lines(Table::BoilingWater, |line| {
        line.starts_with("rhubarb-stewed,") && (line.contains(",pint,") || line.contains(",quart,"))
    });
    assert_eq!(ask(&load(&Tables::embedded()), &asked).verdict, Verdict::Tested);
    assert_ne!(ask(&load(&struck), &asked).verdict, Verdict::Tested);
}

/// Foods a person may name for which there is no line, with the row that answers.
const NAMED: &[(&str, Verdict, &str)] = &[
    ("pumpkin puree", Verdict::DoNot, "pumpkin-squash-puree"),
    ("squash puree", Verdict::DoNot, "pumpkin-squash-puree"),
    ("pumpkin butter", Verdict::DoNot, "pumpkin-butter"),
    ("garlic in oil", Verdict::DoNot, "garlic-in-oil"),
    ("pesto", Verdict::DoNot, "herbs-vegetables-in-oil"),
    ("zucchini, plain", Verdict::DoNot, "summer-squash-alone"),
    ("pickled garlic", Verdict::DoNot, "pickled-garlic-shelf"),
    ("candied pepper rings", Verdict::NotTested, "candied-pepper-rings"),
    ("pepper rings in syrup", Verdict::NotTested, "candied-pepper-rings"),
    ("pickled eggs", Verdict::DoNot, "eggs"),
    ("white peaches", Verdict::DoNot, "white-peaches"),
    ("elderberries", Verdict::DoNot, "elderberries"),
    ("my own salsa", Verdict::DoNot, "untested-salsa"),
    ("sugar snap peas", Verdict::DoNot, "edible-pod-peas"),
    ("broccoli", Verdict::DoNot, "broccoli"),
    ("refried beans", Verdict::DoNot, "dense-purees"),
    ("wild mushrooms", Verdict::DoNot, "wild-mushrooms"),
    ("tomatoes from dead vines", Verdict::DoNot, "tomatoes-dead-vines"),
    ("oven canning", Verdict::DoNot, "oven-canning"),
];

#[test]
fn a_food_named_in_words_meets_its_refusal_and_only_by_its_row() {
    let almanac = load(&Tables::embedded());
    for (words, verdict, row) in NAMED {
        let refused = refuse_words(&almanac, words).unwrap_or_else(|| panic!("{words:?} is not refused"));
        assert_eq!(refused.verdict, *verdict, "{words:?}: {:?}", refused.because);
        assert!(!refused.instead.is_empty() && !refused.sources.is_empty(), "{words:?}");
        let struck = refuse_words(&without(Table::NotForCanning, &[*row]), words);
        assert_ne!(struck.as_ref(), Some(&refused), "{words:?}: striking {row} changes nothing");
    }
}

#[test]
fn words_that_no_row_knows_are_not_answered() {
    let almanac = load(&Tables::embedded());
    assert_eq!(refuse_words(&almanac, "applesauce"), None);
    assert_eq!(refuse_words(&almanac, ""), None);
}

/// Pepper rings in syrup: by practice 10 min for half-pints and 15 min for pints (common practice, no source).
/// No official formula is on file, so no such figure may appear.
#[test]
fn pepper_rings_in_syrup_get_no_figure_of_common_practice() {
    let almanac = load(&Tables::embedded());
    let refused = refuse_words(&almanac, "pepper rings in syrup").expect("they are refused");
    assert_eq!(refused.verdict, Verdict::NotTested);
    let said = serde_json::to_string(&refused).expect("an answer can be written");
    assert!(!said.contains("10 min") && !said.contains("15 min"), "{said}");
}

#[test]
fn either_of_two_rows_is_enough_to_bar_a_larger_jar() {
    let asked = question("tomatoes-crushed", Pack::Hot, JarSize::HalfGallon, CannerKind::BoilingWater, 500);
    for (table, row) in [(Table::NotForCanning, "oversize-jars"), (Table::CannerRules, "jar-not-larger")] {
        assert_eq!(ask(&without(table, &[row]), &asked).verdict, Verdict::DoNot, "without {row}");
    }
}

#[test]
fn raw_ground_meat_is_refused_by_its_own_row() {
    let almanac = load(&Tables::embedded());
    let mut asked = question("meat-ground", Pack::Hot, JarSize::Pint, CannerKind::Dial, 500);
    asked.changes = vec!["raw pack".to_owned()];
    let answer = ask(&almanac, &asked);
    assert_ne!(answer.verdict, Verdict::Tested);
    assert!(answer.changes[0].rules.iter().any(|rule| rule.as_str() == "cr-m19"), "{:?}", answer.changes);
}

/// A refusal shows the way out: another jar, pack or canner that is printed, or another formula of the same food.
#[test]
fn the_ways_out_are_those_that_are_printed() {
    let almanac = load(&Tables::embedded());
    let offers = |asked: &ClearQuestion| -> Vec<String> {
        ask(&almanac, asked).instead.into_iter().map(|offer| offer.text).collect()
    };
    let jar = question("tomatoes-crushed", Pack::Hot, JarSize::HalfGallon, CannerKind::BoilingWater, 500);
    assert!(offers(&jar).iter().any(|text| text == "a quart is printed"), "{:?}", offers(&jar));
    let pack = question("applesauce", Pack::Raw, JarSize::Pint, CannerKind::BoilingWater, 500);
    assert!(offers(&pack).iter().any(|text| text == "hot pack is printed"), "{:?}", offers(&pack));
    let said = ask(&almanac, &pack).because;
    assert!(said[0].text.contains("boiling-water canner"), "{said:?}");
}
