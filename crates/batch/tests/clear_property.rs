//! Whatever is asked, the answer is a printed line or nothing.
//!
//! The tables are read here by themselves, cell by cell, with no help from the program's own reader.

use std::collections::BTreeSet;

use almanac::{Almanac, CannerKind, JarSize, Pack, Table, Tables, Verdict};
use batch::clear::{ClearQuestion, Gauge, Tested, clear};
use measure::{Altitude, Pressure};
use proptest::prelude::*;

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
                let process = line.process();
                let gauge = match question.canner {
                    CannerKind::BoilingWater | CannerKind::Steam => "",
                    CannerKind::Dial => "dial",
                    CannerKind::Weighted => "weighted",
                };
                let cell = Cell {
                    food: question.product.to_string(),
                    pack: question.pack.to_string(),
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
                let feet = question.altitude.as_feet();
                prop_assert!(cell.from_ft <= feet && cell.to_ft.is_none_or(|top| feet <= top), "{cell:?}");
                prop_assert!(process.jar_row() >= question.jar, "{cell:?}");
                if let (Some(hold), Some(printed)) = (line.hold(), process.pressure()) {
                    prop_assert!(hold >= printed && hold.as_psi() - printed.as_psi() <= 1.0);
                    prop_assert_eq!(hold.as_psi().fract(), 0.0);
                }
                prop_assert_eq!(line.hold().is_some(), question.canner == CannerKind::Dial);
                if question.canner == CannerKind::Steam {
                    prop_assert!(process.minutes().0 <= 45);
                }
            }
            Ok(())
        })
        .unwrap_or_else(|failure| panic!("{failure}"));
    assert!(served.get() > 1000, "only {} of the questions were served: the test says little", served.get());
}
