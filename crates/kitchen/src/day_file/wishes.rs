//! What the household wants: must, not today, targets, likes.

use almanac::JarSize;

use crate::day::{Liking, Wish, WishFor};

use super::fault::{FaultKind, WhichFile};
use super::jars::MOST_JARS;
use super::reader::{Files, Reader};
use super::section::{Entry, Section, Words};

const KEYS: &[&str] = &["must", "not_today", "target", "containers", "on_shelf", "size"];
const VERBS: [&str; 3] = ["must", "not_today", "target"];
const LIKINGS: &[(&str, Liking)] = &[
    ("much", Liking::Much),
    ("well", Liking::Well),
    ("little", Liking::Little),
    ("not eaten", Liking::NotEaten),
];

/// A wish with its place, until it is known that no other wish contradicts it.
struct PlacedWish {
    wish: Wish,
    written: String,
    file: WhichFile,
    at: usize,
}

/// The wishes and likes of both files. The day's target or liking of a thing takes the place of the house's.
pub(super) fn read_wishes(files: Files<'_>, reader: &mut Reader<'_, '_>) -> Vec<Wish> {
    let mut placed: Vec<PlacedWish> = Vec::new();
    for entry in files.find("wish") {
        for table in entry.sections("[[wish]]", &mut reader.faults) {
            placed.extend(read_wish(table, reader));
        }
    }
    for entry in files.find("likes") {
        let Some(table) = entry.section("[likes]", &mut reader.faults) else { continue };
        for like in table.entries() {
            placed.extend(read_like(like, reader));
        }
    }
    check_clashes(&placed, reader);
    keep_the_last_word(placed)
}

fn read_wish(table: Section<'_>, reader: &mut Reader<'_, '_>) -> Option<PlacedWish> {
    table.check_keys(KEYS, &mut reader.faults);
    let verbs: Vec<(&'static str, Entry<'_>)> =
        VERBS.iter().filter_map(|&verb| Some((verb, table.find(verb)?))).collect();
    let &[(verb, entry)] = verbs.as_slice() else {
        let kind = match verbs.as_slice() {
            [(first, _), (second, _), ..] => FaultKind::TwoWishes { first, second },
            _ => FaultKind::EmptyWish,
        };
        reader.faults.add(table.file, table.at, kind);
        return None;
    };
    let words = entry.words("the name of a produce or a formula in quotes", &mut reader.faults)?;
    let what = reader.wish_for(words);
    let wish = if verb == "target" {
        let containers = table
            .require("containers", "containers = 20", &mut reader.faults)
            .and_then(|entry| entry.whole(1, MOST_JARS, &mut reader.faults));
        let on_shelf = read_on_shelf(table, words, reader);
        let size = read_size(table, words, reader);
        Wish::Target { what: what?, containers: containers?, on_shelf: on_shelf?, size: size? }
    } else {
        for key in ["containers", "on_shelf", "size"] {
            if let Some(stray) = table.find(key) {
                reader.faults.add(stray.file, stray.key_at, FaultKind::NotOfThisWish { key, verb });
            }
        }
        if verb == "must" { Wish::Must(what?) } else { Wish::NotToday(what?) }
    };
    Some(PlacedWish { wish, written: words.text.into(), file: entry.file, at: entry.key_at })
}

fn read_on_shelf(table: Section<'_>, words: Words<'_>, reader: &mut Reader<'_, '_>) -> Option<u32> {
    match table.find("on_shelf") {
        Some(entry) => entry.whole(0, MOST_JARS, &mut reader.faults),
        None => {
            reader.fill_in(format!("none of {} on the shelf yet, since `on_shelf` is not given", words.text));
            Some(0)
        }
    }
}

fn read_size(table: Section<'_>, words: Words<'_>, reader: &mut Reader<'_, '_>) -> Option<JarSize> {
    match table.find("size") {
        Some(entry) => reader.jar_size(entry),
        None => {
            reader.fill_in(format!("pints for the target of {}, since its `size` is not given", words.text));
            Some(JarSize::Pint)
        }
    }
}

fn read_like(entry: Entry<'_>, reader: &mut Reader<'_, '_>) -> Option<PlacedWish> {
    let how = reader.choose(entry, LIKINGS);
    let words = Words { file: entry.file, key: "likes", text: entry.key, at: entry.key_at, bare: false };
    let what = reader.wish_for(words)?;
    let wish = Wish::Like { what, how: how? };
    Some(PlacedWish { wish, written: entry.key.into(), file: entry.file, at: entry.key_at })
}

/// Notes what must be made and must not.
fn check_clashes(placed: &[PlacedWish], reader: &mut Reader<'_, '_>) {
    for one in placed {
        let Wish::NotToday(unwanted) = &one.wish else { continue };
        let must = placed.iter().find(|other| matches!(&other.wish, Wish::Must(what) if what == unwanted));
        if let Some(must) = must {
            let other_line = reader.faults.place(must.file, must.at).0;
            let kind =
                FaultKind::MustAndNotToday { what: one.written.clone(), other_file: must.file, other_line };
            reader.faults.add(one.file, one.at, kind);
        }
    }
}

/// Drops every target and liking that a later one of the same thing replaces.
fn keep_the_last_word(placed: Vec<PlacedWish>) -> Vec<Wish> {
    let mut wishes: Vec<Wish> = Vec::new();
    for PlacedWish { wish, .. } in placed {
        wishes.retain(|before| match (before, &wish) {
            (Wish::Like { what: old, .. }, Wish::Like { what: new, .. })
            | (Wish::Target { what: old, .. }, Wish::Target { what: new, .. })
            | (Wish::Must(old), Wish::Must(new))
            | (Wish::NotToday(old), Wish::NotToday(new)) => old != new,
            _ => true,
        });
        wishes.push(wish);
    }
    wishes
}

impl Reader<'_, '_> {
    /// What the words of a wish speak of. Words that are nearly a name on file are a slip of the pen and a fault;
    /// words that are far from any are kept, so that the answer can say that nothing tested goes by them.
    fn wish_for(&mut self, words: Words<'_>) -> Option<WishFor> {
        if words.text.trim().is_empty() {
            self.faults.add(words.file, words.at, FaultKind::Empty { key: words.key.into() });
            return None;
        }
        super::lookup::find_wish(self, words)
    }
}
