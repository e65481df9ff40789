//! A formula copied by the household: every rule that refuses it, and what is shown of one that meets them all.

use std::sync::LazyLock;

use almanac::{Almanac, Band, CannerKind, JarSize, Pack, Part, ProductId, Verdict};
use batch::clear::{
    Because, CopiedDraft, CopiedFault, CopiedFormula, CopiedPlace, CopiedProblem, CopiedQuestion,
    DraftFormula, DraftProcess, Gauge, HomeIngredient, Issuer, OwnCopy, Tested, clear_copied, find_nearest,
};
use measure::{Altitude, Minutes, Pressure, read_amount};

fn load() -> &'static Almanac {
    static ALMANAC: LazyLock<Almanac> = LazyLock::new(|| Almanac::load().expect("the built-in tables load"));
    &ALMANAC
}

const THIS_YEAR: u16 = 2026;

fn ingredient(what: &str, amount: &str, part: Part) -> HomeIngredient {
    let amount = read_amount(amount).unwrap_or_else(|error| panic!("{amount}: {error}"));
    HomeIngredient { what: what.to_owned(), amount: Some(amount), part }
}

fn process(canner: CannerKind, from: u32, to: Option<u32>, minutes: u32) -> DraftProcess {
    DraftProcess {
        pack: Pack::Hot,
        jar: JarSize::Pint,
        canner,
        band: Band { min: Altitude::feet(from), max: to.map(Altitude::feet) },
        minutes: Minutes(minutes),
        pressure: None,
        headspace: None,
    }
}

/// A relish near to the printed pepper and onion relish, with a little more vinegar.
fn relish() -> CopiedDraft {
    CopiedDraft {
        name: "porch relish".into(),
        copy: OwnCopy {
            issuer: Issuer::Extension,
            title: "Relishes for the Shelf".into(),
            year: 2009,
            page: "14".into(),
        },
        food: None,
        formula: Some(DraftFormula {
            ingredients: vec![
                ingredient("onions", "6 cups", Part::LowAcid),
                ingredient("sweet red peppers", "3 cups", Part::LowAcid),
                ingredient("green peppers", "3 cups", Part::LowAcid),
                ingredient("white vinegar 5 %", "7 cups", Part::Acid),
                ingredient("sugar", "1 1/2 cups", Part::Sugar),
                ingredient("canning salt", "2 tbsp", Part::Salt),
            ],
            steps: vec!["boil all of it 30 minutes".into(), "fill hot jars".into()],
        }),
        processes: vec![
            process(CannerKind::BoilingWater, 0, Some(1000), 10),
            process(CannerKind::BoilingWater, 1001, Some(6000), 15),
        ],
    }
}

fn faults(draft: CopiedDraft) -> Vec<CopiedFault> {
    CopiedFormula::check(load(), draft, THIS_YEAR).err().unwrap_or_default()
}

fn question(altitude: u32) -> CopiedQuestion {
    CopiedQuestion {
        pack: Pack::Hot,
        jar: JarSize::Pint,
        canner: CannerKind::BoilingWater,
        altitude: Altitude::feet(altitude),
        gauge: None,
    }
}

/// What each spoiling of a sound formula comes to; the last word says how the fault must read.
#[test]
fn every_rule_refuses_and_says_where() {
    assert_eq!(faults(relish()), []);
    let with = |change: &dyn Fn(&mut CopiedDraft)| {
        let mut draft = relish();
        change(&mut draft);
        faults(draft)
    };
    let add = |what: &'static str, amount: &'static str, part: Part| {
        with(&|draft| {
            let formula = draft.formula.as_mut().expect("a formula");
            formula.ingredients.push(ingredient(what, amount, part));
        })
    };
    let swap_acid = |what: &'static str, amount: &'static str| {
        with(&|draft| {
            let formula = draft.formula.as_mut().expect("a formula");
            formula.ingredients[3] = ingredient(what, amount, Part::Acid);
        })
    };
    let says = |found: &[CopiedFault], place: CopiedPlace, words: &str| {
        assert!(
            found.iter().any(|fault| fault.place == place && fault.problem.to_string().contains(words)),
            "{words:?} at {place:?}: {found:?}"
        );
        assert!(found.iter().all(|fault| !fault.problem.hint().is_empty()));
    };
    says(&with(&|draft| draft.copy.year = 1993), CopiedPlace::Year, "before 1994");
    says(&with(&|draft| draft.copy.year = 2027), CopiedPlace::Year, "this is 2026");
    says(&with(&|draft| draft.name = "pickled garlic".into()), CopiedPlace::Name, "arlic");
    says(&with(&|draft| draft.processes.clear()), CopiedPlace::Whole, "no process");
    says(&add("flour", "1/4 cup", Part::Other), CopiedPlace::Ingredient(6), "thickens");
    says(&add("elderberries", "2 cups", Part::Produce), CopiedPlace::Ingredient(6), "lderberr");
    says(&add("corn", "8 cups", Part::Produce), CopiedPlace::Ingredient(6), "is low-acid");
    says(&add("moonfruit", "2 lb", Part::Produce), CopiedPlace::Ingredient(6), "acid enough");
    says(&add("onions", "12 cups", Part::LowAcid), CopiedPlace::Whole, "is low-acid food");
    says(&add("water", "4 cups", Part::Liquid), CopiedPlace::Whole, "water");
    for part in [Part::Spice, Part::Other, Part::Liquid] {
        says(&add("moonroot", "2 lb", part), CopiedPlace::Ingredient(6), "nothing on file says");
    }
    says(&add("onions", "2 lb", Part::Spice), CopiedPlace::Ingredient(6), "is low-acid");
    says(&add("water", "4 cups", Part::Sugar), CopiedPlace::Ingredient(6), "is liquid");
    says(&add("moonroot", "2 cups", Part::LowAcid), CopiedPlace::Ingredient(6), "weighs");
    says(&swap_acid("white vinegar 5 %", "2 cups"), CopiedPlace::Whole, "of it is acid");
    for weak in ["vinegar 4 %", "homemade vinegar", "fresh lemon juice", "lemon juice", "apple juice"] {
        says(&swap_acid(weak, "7 cups"), CopiedPlace::Ingredient(3), "does not count as acid");
    }
    says(
        &with(&|draft| draft.formula.as_mut().expect("a formula").steps.push("invert the jars".into())),
        CopiedPlace::Step(2),
        "kettle",
    );
    says(
        &with(&|draft| {
            draft.formula.as_mut().expect("a formula").ingredients.remove(3);
        }),
        CopiedPlace::Whole,
        "without acid",
    );
    says(
        &with(&|draft| draft.processes[1].band.min = Altitude::feet(1000)),
        CopiedPlace::Process(1),
        "both hold",
    );
    says(&with(&|draft| draft.processes[0].minutes = Minutes(0)), CopiedPlace::Process(0), "no time");
    says(&with(&|draft| draft.processes[0].jar = JarSize::HalfGallon), CopiedPlace::Process(0), "larger");
    says(
        &with(&|draft| draft.processes[0].canner = CannerKind::Dial),
        CopiedPlace::Process(0),
        "no pressure",
    );
    says(
        &with(&|draft| draft.processes[0].pressure = Some(Pressure::psi(10.0))),
        CopiedPlace::Process(0),
        "has no pressure",
    );
    says(
        &with(&|draft| {
            draft.processes[0].canner = CannerKind::Steam;
            draft.processes[0].minutes = Minutes(50);
        }),
        CopiedPlace::Process(0),
        "steam canner runs",
    );
}

/// Source: USDA, Complete Guide to Home Canning, 2015, Guide 2, applesauce, hot pack, pints: 15 min to 1,000 ft, 20 min
/// from 1,001 to 6,000 ft.
#[test]
fn never_shorter_than_a_printed_row_in_any_band_it_touches() {
    let row = |from, to, minutes| CopiedDraft {
        food: Some(ProductId::from("applesauce")),
        formula: None,
        processes: vec![process(CannerKind::BoilingWater, from, to, minutes)],
        ..relish()
    };
    assert_eq!(faults(row(0, Some(1000), 15)), []);
    assert_eq!(faults(row(1001, Some(3000), 20)), []);
    for (from, to, minutes, printed) in [(0, Some(1000), 14, 15), (0, Some(3000), 15, 20), (0, None, 20, 25)]
    {
        let found = faults(row(from, to, minutes));
        let shorter = |fault: &CopiedFault| matches!(&fault.problem, CopiedProblem::Shorter { printed: at_least, .. } if at_least.0 == printed);
        assert!(found.iter().any(shorter), "{from}, {to:?}, {minutes} min: {found:?}");
    }
}

/// Source: USDA, Complete Guide to Home Canning, 2015, Guide 4, snap beans, pints: 20 min at 11 psi on a dial to 2,000 ft.
#[test]
fn never_lower_than_the_printed_pressure_and_never_low_acid_food_in_boiling_water() {
    let beans = |canner, pressure: Option<f64>| CopiedDraft {
        food: Some(ProductId::from("beans-snap")),
        formula: None,
        processes: vec![DraftProcess {
            pressure: pressure.map(Pressure::psi),
            ..process(canner, 0, Some(2000), 20)
        }],
        ..relish()
    };
    assert_eq!(faults(beans(CannerKind::Dial, Some(11.0))), []);
    let low = faults(beans(CannerKind::Dial, Some(10.0)));
    assert!(matches!(low[0].problem, CopiedProblem::LowerPressure { .. }), "{low:?}");
    let boiled = faults(beans(CannerKind::BoilingWater, None));
    assert!(boiled.iter().any(|fault| fault.problem.verdict() == Verdict::DoNot), "{boiled:?}");
}

#[test]
fn what_meets_every_rule_is_shown_as_entered_and_never_called_tested() {
    let formula = CopiedFormula::check(load(), relish(), THIS_YEAR).expect("it meets every rule");
    for (altitude, minutes) in [(0, 10), (1000, 10), (1001, 15), (6000, 15)] {
        let answer = clear_copied(load(), &formula, &question(altitude));
        assert_eq!(answer.verdict, Verdict::NotTested);
        let entered = answer.entered.as_ref().expect("a band holds it");
        assert_eq!(entered.band().minutes(), Minutes(minutes), "{altitude} ft");
        let words = "not tested by us; printed, as you entered it, in Relishes for the Shelf, 2009, p. 14";
        assert_eq!(entered.words(), words);
        assert!(
            answer
                .because
                .iter()
                .any(|reason| { reason.code == Because::EnteredByYou && reason.text == words })
        );
        let json = serde_json::to_value(&answer).expect("it can be written");
        assert_eq!((&json["judged"], &json["verdict"]), (&"copied".into(), &"not-tested".into()));
        assert_eq!(json["processes"], serde_json::json!([]));
        assert_eq!(json["entered"]["bands"][0]["minutes"], minutes);
    }
}

#[test]
fn no_other_height_jar_pack_or_canner_borrows_an_entered_process() {
    let formula = CopiedFormula::check(load(), relish(), THIS_YEAR).expect("it meets every rule");
    let above = clear_copied(load(), &formula, &question(6001));
    assert_eq!(above.entered, None);
    assert_eq!(above.because[0].code, Because::AltitudeAboveLastBand);
    for asked in [
        CopiedQuestion { jar: JarSize::HalfPint, ..question(0) },
        CopiedQuestion { jar: JarSize::Quart, ..question(0) },
        CopiedQuestion { pack: Pack::Raw, ..question(0) },
        CopiedQuestion { canner: CannerKind::Steam, ..question(0) },
        CopiedQuestion { canner: CannerKind::Dial, ..question(0) },
    ] {
        let answer = clear_copied(load(), &formula, &asked);
        assert_eq!((answer.entered, answer.verdict), (None, Verdict::NotTested), "{asked:?}");
    }
}

#[test]
fn an_untested_gauge_shows_no_entered_process_and_a_high_one_is_held_higher() {
    let draft = CopiedDraft {
        food: Some(ProductId::from("beans-snap")),
        formula: None,
        processes: vec![DraftProcess {
            pressure: Some(Pressure::psi(11.0)),
            ..process(CannerKind::Dial, 0, Some(2000), 25)
        }],
        ..relish()
    };
    let formula = CopiedFormula::check(load(), draft, THIS_YEAR).expect("it is no less than print");
    let ask = |error: f64, tested| {
        let gauge = Some(Gauge { error: Some(Pressure::psi(error)), tested });
        clear_copied(load(), &formula, &CopiedQuestion { canner: CannerKind::Dial, gauge, ..question(0) })
    };
    assert_eq!(ask(0.0, Tested::Never).entered, None);
    assert_eq!(ask(2.0, Tested::WithinTheYear).entered, None);
    let held = ask(0.5, Tested::WithinTheYear).entered.expect("it may be held").band().hold();
    assert_eq!(held, Some(Pressure::psi(12.0)));
    let low = ask(-0.5, Tested::WithinTheYear).entered.expect("it may be held").band().hold();
    assert_eq!(low, Some(Pressure::psi(11.0)));
}

#[test]
fn a_row_to_confirm_must_stand_in_a_table() {
    let nowhere = CopiedDraft {
        food: Some(ProductId::from("applesauce")),
        formula: None,
        processes: vec![DraftProcess {
            pack: Pack::Raw,
            ..process(CannerKind::BoilingWater, 0, Some(1000), 60)
        }],
        ..relish()
    };
    let found = faults(nowhere);
    assert!(found.iter().any(|fault| fault.problem == CopiedProblem::NothingToConfirm), "{found:?}");
}

#[test]
fn the_nearest_tested_formula_is_found_by_what_goes_in() {
    let nearest = |mix: &[HomeIngredient]| {
        find_nearest(load(), mix).map(|nearest| nearest.formula.id.as_str().to_owned())
    };
    let mix = relish().formula.expect("a formula").ingredients;
    assert_eq!(nearest(&mix).as_deref(), Some("pepper_onion_relish"));
    let kraut = [ingredient("cabbage", "5 lb", Part::LowAcid), ingredient("salt", "3 tbsp", Part::Salt)];
    assert_eq!(nearest(&kraut).as_deref(), Some("sauerkraut"));
    assert_eq!(nearest(&[ingredient("moonfruit", "1 lb", Part::Produce)]), None);
    assert_eq!(nearest(&[]), None);
}

/// A mix of tomatoes and salt, as anyone may copy it.
fn tomatoes(canner: CannerKind, pressure: Option<f64>) -> CopiedDraft {
    CopiedDraft {
        name: "our red jars".into(),
        formula: Some(DraftFormula {
            ingredients: vec![
                ingredient("tomatoes", "20 lb", Part::Produce),
                ingredient("salt", "2 tbsp", Part::Salt),
            ],
            steps: vec!["crush".into()],
        }),
        processes: vec![DraftProcess {
            pressure: pressure.map(Pressure::psi),
            ..process(canner, 0, Some(1000), 90)
        }],
        ..relish()
    }
}

/// Source: USDA, Complete Guide to Home Canning, 2015, Guide 3 p. 3-5: acid in every jar of tomatoes, in boiling water and
/// under pressure alike.
#[test]
fn tomatoes_without_acid_are_refused_in_every_canner() {
    for (canner, pressure) in [(CannerKind::BoilingWater, None), (CannerKind::Dial, Some(11.0))] {
        let found = faults(tomatoes(canner, pressure));
        let no_acid = |fault: &CopiedFault| matches!(fault.problem, CopiedProblem::NoAcid { .. });
        assert!(found.iter().any(no_acid), "{canner}: {found:?}");
    }
}

#[test]
fn leaving_the_food_unnamed_opens_no_shorter_process() {
    let shorter = |fault: &CopiedFault| matches!(fault.problem, CopiedProblem::Shorter { .. });
    let short = |name: &str| CopiedDraft {
        name: name.into(),
        formula: Some(DraftFormula {
            ingredients: vec![ingredient("apples", "20 lb", Part::Produce)],
            steps: vec!["cook soft".into()],
        }),
        processes: vec![process(CannerKind::BoilingWater, 0, None, 5)],
        ..relish()
    };
    for name in ["our apple pulp", "applesauce"] {
        let found = faults(short(name));
        assert!(found.iter().any(shorter), "{name}: {found:?}");
    }
}

/// Whatever is typed for a food on file: what is taken is no shorter and no lower than any printed line for the same
/// pack, jar, canner and height, and what is shown is what was typed.
#[test]
fn no_typed_process_falls_short_of_a_printed_line() {
    use proptest::prelude::*;
    let almanac = load();
    let foods: Vec<ProductId> = almanac.products().map(|product| product.id.clone()).collect();
    let typed = (
        prop::sample::select(foods),
        prop::sample::select(Pack::ALL.to_vec()),
        prop::sample::select(JarSize::ALL.to_vec()),
        prop::sample::select(CannerKind::ALL.to_vec()),
        1_u32..130,
        prop::sample::select(vec![5.0, 8.0, 10.0, 11.0, 12.0, 13.0, 14.0, 15.0]),
        (prop::sample::select(vec![0_u32, 1000, 1001, 2001, 3001, 6001]), prop::option::of(0_u32..5000)),
        0_u32..9000,
    );
    let config = ProptestConfig { cases: 3_000, failure_persistence: None, ..ProptestConfig::default() };
    let mut runner = proptest::test_runner::TestRunner::new_with_rng(
        config,
        proptest::test_runner::TestRng::deterministic_rng(proptest::test_runner::RngAlgorithm::ChaCha),
    );
    let shown = std::cell::Cell::new(0_u32);
    runner
        .run(&typed, |(food, pack, jar, canner, minutes, psi, (from, width), asked_at)| {
            let pressure = canner.is_pressure().then(|| Pressure::psi(psi));
            let row = DraftProcess {
                pack,
                jar,
                pressure,
                ..process(canner, from, width.map(|width| from + width), minutes)
            };
            let band = row.band;
            let draft =
                CopiedDraft { food: Some(food.clone()), formula: None, processes: vec![row], ..relish() };
            let Ok(formula) = CopiedFormula::check(almanac, draft, THIS_YEAR) else { return Ok(()) };
            let asked = CopiedQuestion { pack, jar, canner, altitude: Altitude::feet(asked_at), gauge: None };
            let answer = clear_copied(almanac, &formula, &asked);
            prop_assert_eq!(answer.verdict, Verdict::NotTested);
            let Some(entered) = answer.entered else { return Ok(()) };
            shown.set(shown.get() + 1);
            prop_assert!(band.holds(asked.altitude));
            prop_assert_eq!(
                (entered.band().minutes(), entered.band().pressure()),
                (Minutes(minutes), pressure)
            );
            let table = if canner == CannerKind::Steam { CannerKind::BoilingWater } else { canner };
            let lines = almanac.printed_lines(&food).filter(|line| {
                line.pack() == pack
                    && line.jar() == jar
                    && line.canner() == table
                    && line.band().holds(asked.altitude)
            });
            for printed in lines.filter_map(|line| line.process()) {
                prop_assert!(printed.minutes() <= Minutes(minutes), "{food}, {jar}: {printed:?}");
                prop_assert!(printed.pressure() <= pressure, "{food}, {jar}: {printed:?}");
            }
            Ok(())
        })
        .unwrap_or_else(|failure| panic!("{failure}"));
    assert!(shown.get() > 20, "only {} were shown: the test says little", shown.get());
}
