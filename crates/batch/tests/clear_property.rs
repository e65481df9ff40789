//! Whatever is asked, the answer is a printed line or nothing.
//!
//! The tables are read here by themselves, cell by cell, with no help from the program's own reader.

use std::collections::BTreeSet;

use almanac::{Almanac, CannerKind, JarSize, Pack, Table, Tables, Verdict};
use batch::clear::{ClearQuestion, ClearedLine, Gauge, Tested, clear};
use measure::{Altitude, Pressure};
use proptest::prelude::*;
use proptest::test_runner::TestCaseError;

/// One cell of a process table, as its text stands there.
#[derive(Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Cell {
    food: String,
    pack: String,
    jar: String,
    gauge: String,
    from_ft: u32,
    to_ft: Option<u32>,
    minutes: u32,
    /// In hundredths, so that cells can be put in order.
    psi: Option<u32>,
    headspace: u32,
    source: String,
    locator: String,
}

fn hundredths(text: &str) -> u32 {
    (text.parse::<f64>().expect("a number") * 100.0).round() as u32
}

fn cells_of(table: Table) -> BTreeSet<Cell> {
    let tables = Tables::embedded();
    let mut reader = csv::Reader::from_reader(tables.text(table).as_bytes());
    let columns = reader.headers().expect("a line of names").clone();
    let at = |name: &str| columns.iter().position(|column| column == name);
    let mut cells = BTreeSet::new();
    for row in reader.records() {
        let row = row.expect("a row");
        let text = |name: &str| at(name).map_or("", |column| &row[column]).to_owned();
        if text("basis") != "read" {
            continue;
        }
        cells.insert(Cell {
            food: text("product_id"),
            pack: text("pack"),
            jar: text("jar"),
            gauge: text("gauge"),
            from_ft: text("alt_min_ft").parse().expect("feet"),
            to_ft: text("alt_max_ft").parse().ok(),
            minutes: text("minutes").parse().expect("minutes"),
            psi: Some(text("psi")).filter(|psi| !psi.is_empty()).map(|psi| hundredths(&psi)),
            headspace: hundredths(&text("headspace_in")),
            source: text("source_id"),
            locator: text("locator"),
        });
    }
    cells
}

fn questions(foods: Vec<almanac::ProductId>) -> impl Strategy<Value = ClearQuestion> {
    let packs = prop::sample::select(Pack::ALL.to_vec());
    let jars = prop::sample::select(JarSize::ALL.to_vec());
    let canners = prop::sample::select(CannerKind::ALL.to_vec());
    let tested = prop::sample::select(vec![
        Tested::WithinTheYear,
        Tested::WithinTheYear,
        Tested::NotSaid,
        Tested::Overdue,
        Tested::Never,
    ]);
    let gauge = (-200_i32..=200, tested).prop_map(|(hundredths, tested)| Gauge {
        error: Some(Pressure::psi(f64::from(hundredths) / 100.0)),
        tested,
    });
    let heights = prop_oneof![
        0_u32..10_000,
        prop::sample::select(vec![0, 1000, 1001, 2000, 2001, 3000, 3001, 4000, 4001, 6000, 6001, 8000, 8001]),
    ];
    (prop::sample::select(foods), packs, jars, canners, heights, prop::option::of(gauge)).prop_map(
        |(product, pack, jar, canner, feet, gauge)| ClearQuestion {
            product,
            pack,
            jar,
            canner,
            altitude: Altitude::feet(feet),
            gauge,
            formula: None,
            changes: Vec::new(),
        },
    )
}

#[test]
fn every_figure_served_stands_in_one_row_of_the_tables() {
    let almanac = Almanac::load().expect("the built-in tables load");
    let mut cells = cells_of(Table::BoilingWater);
    cells.extend(cells_of(Table::Pressure));
    let foods: Vec<_> = almanac.products().map(|product| product.id.clone()).collect();
    let config = ProptestConfig { cases: 20_000, failure_persistence: None, ..ProptestConfig::default() };
    let mut runner = proptest::test_runner::TestRunner::new_with_rng(
        config,
        proptest::test_runner::TestRng::deterministic_rng(proptest::test_runner::RngAlgorithm::ChaCha),
    );
    let served = std::cell::Cell::new(0_u32);
    runner
        .run(&questions(foods), |question| {
            let clearance = clear(&almanac, &question).expect("the foods here are known");
            if clearance.verdict != Verdict::Tested {
                prop_assert!(clearance.processes.is_empty() && clearance.acid.is_none());
                prop_assert!(!clearance.because.is_empty());
                return Ok(());
            }
            served.set(served.get() + 1);
            prop_assert!(!clearance.processes.is_empty());
            for line in &clearance.processes {
                require_row(&cells, question.jar, question.canner, question.altitude, line)?;
            }
            Ok(())
        })
        .unwrap_or_else(|failure| panic!("{failure}"));
    assert!(served.get() > 1000, "only {} of the questions were served: the test says little", served.get());
}

/// Every figure of a line stands in one row, which holds the height and is for the jar or a larger one.
fn require_row(
    cells: &BTreeSet<Cell>,
    jar: JarSize,
    canner: CannerKind,
    altitude: Altitude,
    line: &ClearedLine,
) -> Result<(), TestCaseError> {
    let process = line.process();
    let gauge = match canner {
        CannerKind::BoilingWater | CannerKind::Steam => "",
        CannerKind::Dial => "dial",
        CannerKind::Weighted => "weighted",
    };
    let cell = Cell {
        food: process.product().to_string(),
        pack: process.pack().to_string(),
        jar: process.jar_row().to_string(),
        gauge: gauge.to_owned(),
        from_ft: process.band().min.as_feet(),
        to_ft: process.band().max.map(|max| max.as_feet()),
        minutes: process.minutes().0,
        psi: process.pressure().map(|psi| (psi.as_psi() * 100.0).round() as u32),
        headspace: (process.headspace().as_inches() * 100.0).round() as u32,
        source: process.citation().source.to_string(),
        locator: process.citation().locator.to_string(),
    };
    prop_assert!(cells.contains(&cell), "{cell:?} stands in no row");
    let feet = altitude.as_feet();
    prop_assert!(cell.from_ft <= feet && cell.to_ft.is_none_or(|top| feet <= top), "{cell:?}");
    prop_assert!(process.jar_row() >= jar, "{cell:?}");
    if let (Some(hold), Some(printed)) = (line.hold(), process.pressure()) {
        prop_assert!(hold >= printed && hold.as_psi() - printed.as_psi() <= 1.0);
        prop_assert_eq!(hold.as_psi().fract(), 0.0);
    }
    prop_assert_eq!(line.hold().is_some(), canner == CannerKind::Dial);
    if canner == CannerKind::Steam {
        prop_assert!(process.minutes().0 <= 45);
    }
    Ok(())
}

/// Formulas, and changes that name every kind of thing; whatever they come to, no figure is made.
#[test]
fn whatever_is_changed_a_process_is_a_row_for_what_will_be_done() {
    let almanac = Almanac::load().expect("the built-in tables load");
    let mut cells = cells_of(Table::BoilingWater);
    cells.extend(cells_of(Table::Pressure));
    let formulas: Vec<_> =
        almanac.formulas().filter(|formula| formula.product.is_some()).map(|one| one.id.clone()).collect();
    let changes = prop::sample::select(vec![
        "no salt",
        "less sugar",
        "less vinegar",
        "add corn",
        "add oil",
        "another pepper",
        "half batch",
        "double batch",
        "quarts",
        "half-pints",
        "half gallon",
        "raw pack",
        "hot pack",
        "steam canner",
        "boiling water",
        "dial gauge",
        "weighted gauge",
        "bigger jar",
        "smaller jar",
        "thicken with flour",
        "honey for sugar",
        "4 % vinegar",
        "vinegar for lemon juice",
        "lemon juice for vinegar",
        "more cumin",
        "sea level time",
        "no processing",
        "mayonnaise jars",
        "add meat",
    ]);
    let heights = prop_oneof![
        (0_u32..10_000).prop_map(Altitude::feet),
        (0_u32..3_000).prop_map(|metres| {
            measure::read_altitude(&format!("{metres} m")).expect("metres can be read")
        }),
        prop::sample::select(vec![1000, 1001, 3000, 3001, 6000, 6001, 8000, 8001]).prop_map(Altitude::feet),
    ];
    let asked = (
        prop::sample::select(formulas),
        prop::sample::select(Pack::ALL.to_vec()),
        prop::sample::select(JarSize::ALL.to_vec()),
        prop::sample::select(CannerKind::ALL.to_vec()),
        heights,
        prop::collection::vec(changes, 0..3),
    );
    let config = ProptestConfig { cases: 3_000, failure_persistence: None, ..ProptestConfig::default() };
    let mut runner = proptest::test_runner::TestRunner::new_with_rng(
        config,
        proptest::test_runner::TestRng::deterministic_rng(proptest::test_runner::RngAlgorithm::ChaCha),
    );
    let served = std::cell::Cell::new(0_u32);
    runner
        .run(&asked, |(formula, pack, jar, canner, altitude, changes)| {
            let made = almanac.formula(&formula).and_then(|formula| formula.product.clone());
            let question = ClearQuestion {
                product: made.expect("only formulas with a food are asked about"),
                pack,
                jar,
                canner,
                altitude,
                gauge: None,
                formula: Some(formula),
                changes: changes.iter().map(|change| (*change).to_owned()).collect(),
            };
            let Ok(clearance) = clear(&almanac, &question) else { return Ok(()) };
            let tested = clearance.verdict == Verdict::Tested;
            prop_assert_eq!(tested, !clearance.processes.is_empty());
            let each_tested = clearance.changes.iter().all(|change| change.verdict == Verdict::Tested);
            prop_assert!(!tested || each_tested, "{:?}", clearance.changes);
            for line in &clearance.processes {
                served.set(served.get() + 1);
                let process = line.process();
                let at_least = if changes.contains(&"quarts") { JarSize::Quart } else { JarSize::HalfPint };
                prop_assert!(!changes.contains(&"quarts") || process.jar_row() >= at_least);
                prop_assert!(!changes.contains(&"raw pack") || process.pack() == Pack::Raw);
                prop_assert!(!changes.contains(&"steam canner") || process.canner() == CannerKind::Steam);
                for barred in [
                    "less vinegar",
                    "add oil",
                    "add corn",
                    "half gallon",
                    "thicken with flour",
                    "no processing",
                ] {
                    // One formula prints a larger jar for its juice; none prints the others.
                    prop_assert!(barred == "half gallon" || !changes.contains(&barred), "{barred}");
                }
                require_row(&cells, process.jar_row(), process.canner(), altitude, line)?;
            }
            Ok(())
        })
        .unwrap_or_else(|failure| panic!("{failure}"));
    assert!(served.get() > 50, "only {} lines were served: the test says little", served.get());
}
