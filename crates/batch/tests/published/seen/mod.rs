//! Cells typed from pages that were read, each with its issuer, the place on the page and the day it was seen.
//!
//! Nothing here was taken from the tables of the program. Three families of pages were read as text: those of
//! Michigan State University Extension's data base of 1997, those of the national center, of Oklahoma State and of
//! the University of Missouri, and copies of the federal guide, the typed one of 1994 and a reprint of a later
//! revision. The copies name the guide as what they copy. [`twice`] types part of it again from another page.
//!
//! Looked for and not found as a page that shows its figures, so left to the lists beside this one, which say what
//! is from memory: the process tables of sauerkraut, of bread-and-butter pickles, of fermented dill pickles
//! and of the jellies without added pectin, and the dial lines of whole berries.

mod acid;
mod fruit;
mod meats;
mod pickles;
mod procurement;
mod tomatoes;
mod twice;
mod vegetables;

use std::collections::BTreeSet;

use almanac::{Almanac, CannerKind, Verdict};

use crate::table::{Lines, Printed, agree, ask};

/// The day on which the pages of these lists were read.
pub const SEEN: &str = "2026-11-25";

/// The issuers of the pages.
pub const MICHIGAN: &str = "Michigan State University Extension";
pub const MISSOURI: &str = "University of Missouri Extension";
pub const OKLAHOMA: &str = "Oklahoma State University Extension";
pub const CENTER: &str = "National Center for Home Food Preservation";
pub const USDA: &str = "US Department of Agriculture";

/// The titles that several pages stand in.
pub const PFS: &str = "Preserving Food Safely, data base 01, last revised 13 October 1997";
pub const GUIDE_1994: &str =
    "Complete Guide to Home Canning, AIB 539, revised 1994, a typed copy of its text";
pub const GUIDE_REPRINT: &str = "Complete Guide to Home Canning, a reprint on a third-party page";

/// Dial pounds of low-acid food and of acid food, from the lowest band up. Typed from each page anew; they read
/// alike on all of them.
pub const LOW_ACID: [u32; 4] = [11, 12, 13, 14];
pub const ACID: [u32; 4] = [6, 7, 8, 9];

/// One page: what it is, and what was typed from it.
pub struct Sheet {
    pub issuer: &'static str,
    pub title: &'static str,
    /// Guide, file or address.
    pub place: &'static str,
    pub seen: &'static str,
    /// Its process tables.
    pub tables: &'static [Printed],
    /// Food, pack, jar, inches.
    pub headspace: &'static [(&'static str, &'static str, &'static str, f64)],
}

pub const fn water(
    food: &'static str,
    pack: &'static str,
    jar: &'static str,
    minutes: &'static [u32],
) -> Printed {
    Printed { food, pack, jar, lines: Lines::Water(minutes) }
}

pub const fn dial(
    food: &'static str,
    pack: &'static str,
    jar: &'static str,
    lines: &'static [(u32, [u32; 4])],
) -> Printed {
    Printed { food, pack, jar, lines: Lines::Dial(lines) }
}

pub const fn weighted(
    food: &'static str,
    pack: &'static str,
    jar: &'static str,
    lines: &'static [(u32, u32, Option<u32>)],
) -> Printed {
    Printed { food, pack, jar, lines: Lines::Weighted(lines) }
}

fn all_sheets() -> impl Iterator<Item = &'static Sheet> {
    [fruit::SHEETS, tomatoes::SHEETS, pickles::SHEETS, vegetables::SHEETS, meats::SHEETS]
        .into_iter()
        .flatten()
}

fn tables_of<'a>(sheets: impl Iterator<Item = &'a Sheet>) -> Vec<Printed> {
    sheets.flat_map(|sheet| sheet.tables).copied().collect()
}

/// Source: the pages named in the lists.
#[test]
fn every_cell_seen_is_served_as_printed() {
    agree(&tables_of(all_sheets()));
}

/// Source: the pages named in the lists.
#[test]
fn every_headspace_seen_is_served_as_printed() {
    let almanac = Almanac::load().expect("the built-in tables load");
    for sheet in all_sheets().chain(twice::SHEETS) {
        for (food, pack, jar, inches) in sheet.headspace {
            let canners = [CannerKind::BoilingWater, CannerKind::Dial]
                .map(|kind| ask(&almanac, food, pack, jar, kind, 900));
            let served: Vec<f64> = canners
                .iter()
                .filter(|clearance| clearance.verdict == Verdict::Tested)
                .flat_map(|clearance| &clearance.processes)
                .map(|line| line.process().headspace().as_inches())
                .collect();
            assert!(!served.is_empty(), "{}: {food} {pack} {jar} is not served", sheet.place);
            for one in served {
                assert!((one - inches).abs() < 1e-9, "{}: {food} {pack} {jar}: {one} in", sheet.place);
            }
        }
    }
}

#[test]
fn every_sheet_says_whose_it_is_where_it_stands_and_when_it_was_seen() {
    for sheet in all_sheets().chain(twice::SHEETS) {
        assert!(!sheet.issuer.is_empty() && !sheet.title.is_empty() && !sheet.place.is_empty());
        let day: Vec<&str> = sheet.seen.split('-').collect();
        assert!(
            matches!(day[..], [year, month, day] if year.len() == 4 && month.len() == 2 && day.len() == 2)
        );
        assert!(!sheet.tables.is_empty(), "{} gives no cell", sheet.place);
    }
}

/// The least that the lists hold, so that a page lost in an edit does not go unseen.
#[test]
fn the_cells_seen_are_two_hundred_and_more_over_every_kind_of_table() {
    let tables = tables_of(all_sheets());
    let count = |wanted: fn(&Lines) -> bool| -> usize {
        tables.iter().filter(|table| wanted(&table.lines)).map(Printed::cells).sum()
    };
    let water = count(|lines| matches!(lines, Lines::Water(_)));
    let dial = count(|lines| matches!(lines, Lines::Dial(_)));
    let weighted = count(|lines| matches!(lines, Lines::Weighted(_)));
    let headspace: usize = all_sheets().map(|sheet| sheet.headspace.len()).sum();
    assert!(water >= 100 && dial >= 100 && weighted >= 50, "{water}, {dial}, {weighted}");
    assert!(headspace >= 20 && acid::CELLS >= 20, "{headspace}, {}", acid::CELLS);
    let foods: BTreeSet<&str> = tables.iter().map(|table| table.food).collect();
    assert!(foods.len() >= 35, "{} foods", foods.len());
}
