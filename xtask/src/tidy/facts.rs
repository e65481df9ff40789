//! Rules for the published facts of `data/`: each row says where it comes from, each source named is listed, each
//! source listed is named.

use std::collections::BTreeSet;

use csv::StringRecord;
use toml::{Table, Value};

use super::Fault;
use super::tree::{Tree, ends_in};

/// The list of sources.
const SOURCES: &str = "data/sources.toml";

/// The columns by which a row says where it comes from. No table does without them.
const SOURCE_ID: &str = "source_id";
const LOCATOR: &str = "locator";
const BASIS: &str = "basis";

/// How a figure came into a row: seen in the source, computed from other rows, our reading of printed rules, a first
/// guess, recalled without the source at hand.
const BASES: [&str; 5] = ["read", "computed", "derived", "estimate", "memory"];

/// The ranks of a source. Only the first can make a process *tested*.
const RANKS: [&str; 2] = ["full", "lower"];

/// Every fault of the tables and of the list of sources.
pub(super) fn find_faults(tree: &Tree) -> Vec<Fault> {
    let mut faults = Vec::new();
    let (sources, source_faults) = read_sources(tree.find_text(SOURCES).unwrap_or_default());
    let listed: BTreeSet<String> = sources.keys().cloned().collect();
    faults.extend(source_faults);
    let tables: Vec<(&str, &str)> =
        tree.texts().filter(|(path, _)| path.starts_with("data/") && ends_in(path, "csv")).collect();
    let mut named = Named::default();
    for (path, text) in &tables {
        faults.extend(find_table_faults(path, text, &listed, &mut named));
    }
    for id in sources.keys().filter(|id| !named.holds(id)) {
        faults.push(Fault::of(SOURCES, format!("`{id}` is listed and no row names it")));
    }
    faults
}

/// What the rows say of where they come from.
#[derive(Default)]
struct Named {
    /// The sources they are read off, and those that print the same.
    ids: BTreeSet<String>,
    /// The places in them, which may name another source by its id.
    places: BTreeSet<String>,
}

impl Named {
    fn holds(&self, id: &str) -> bool {
        self.ids.contains(id) || self.places.iter().any(|place| names(place, id))
    }
}

/// Whether the text names the source, and not only one whose id is longer.
fn names(text: &str, id: &str) -> bool {
    let goes_on = |letter: char| letter.is_alphanumeric() || letter == '_' || letter == '-';
    text.match_indices(id)
        .any(|(at, _)| !text[..at].ends_with(goes_on) && !text[at + id.len()..].starts_with(goes_on))
}

/// The ids of the sources, and what is wrong with their entries.
fn read_sources(text: &str) -> (Table, Vec<Fault>) {
    let sources: Table = match text.parse() {
        Ok(sources) => sources,
        Err(error) => {
            return (Table::new(), vec![Fault::of(SOURCES, format!("cannot be read: {}", error.message()))]);
        }
    };
    let mut faults = Vec::new();
    for (id, entry) in &sources {
        let said = |key: &str| entry.get(key).and_then(Value::as_str).unwrap_or_default().trim();
        if said("title").is_empty() {
            faults.push(Fault::of(SOURCES, format!("`{id}` has no title")));
        }
        if !RANKS.contains(&said("rank")) {
            faults.push(Fault::of(
                SOURCES,
                format!("`{id}` has the rank {:?}, not one of {RANKS:?}", said("rank")),
            ));
        }
    }
    (sources, faults)
}

/// Every fault of one table; the sources that its rows name are added to `named`.
fn find_table_faults(path: &str, text: &str, listed: &BTreeSet<String>, named: &mut Named) -> Vec<Fault> {
    let mut faults = Vec::new();
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let header = match reader.headers() {
        Ok(header) => header.clone(),
        Err(error) => return vec![Fault::of(path, format!("has no readable header: {error}"))],
    };
    for column in [SOURCE_ID, LOCATOR, BASIS] {
        if !header.iter().any(|name| name == column) {
            faults.push(Fault::at(path, 1, format!("has no column `{column}`")));
        }
    }
    for record in reader.records() {
        match record {
            Ok(record) => faults.extend(find_row_faults(path, &header, &record, listed, named)),
            Err(error) => faults.push(Fault::of(path, format!("has a row that cannot be read: {error}"))),
        }
    }
    faults
}

fn find_row_faults(
    path: &str,
    header: &StringRecord,
    row: &StringRecord,
    listed: &BTreeSet<String>,
    named: &mut Named,
) -> Vec<Fault> {
    // Never fails: a line number of a file in memory fits a usize.
    let line = row.position().map_or(1, |position| position.line() as usize);
    let cell = |column: &str| {
        header.iter().position(|name| name == column).and_then(|at| row.get(at)).map(str::trim)
    };
    let mut faults = Vec::new();
    if let Some(ids) = cell(SOURCE_ID) {
        // A row read off two publications names both.
        for id in ids.split("; ") {
            named.ids.insert(id.to_owned());
            if !listed.contains(id) {
                faults.push(Fault::at(
                    path,
                    line,
                    format!("names the source `{id}`, which {SOURCES} does not list"),
                ));
            }
        }
    }
    if let Some(place) = cell(LOCATOR) {
        named.places.insert(place.to_owned());
    }
    if cell(LOCATOR) == Some("") {
        faults.push(Fault::at(path, line, "does not say where in its source it stands"));
    }
    if let Some(basis) = cell(BASIS).filter(|basis| !BASES.contains(basis)) {
        faults.push(Fault::at(path, line, format!("has the basis {basis:?}, not one of {BASES:?}")));
    }
    faults
}

#[cfg(test)]
mod tests {
    use super::*;

    const LISTED: &str =
        "[guide]\ntitle = \"A guide, 2015\"\nrank = \"full\"\nwhy = \"national authority\"\n";
    const TABLE: &str = "produce,kg,source_id,locator,basis\nbeans,3,guide,p. 4,read\n";

    fn check(sources: &str, table: &str, expected: &[&str]) {
        let tree = Tree::of(&[(SOURCES, sources), ("data/produce/yields.csv", table)]);
        let found: Vec<String> = find_faults(&tree).iter().map(ToString::to_string).collect();
        assert_eq!(found.len(), expected.len(), "{found:?}");
        for (fault, words) in found.iter().zip(expected) {
            assert!(fault.contains(words), "{fault} does not say {words}");
        }
    }

    #[test]
    fn a_sourced_row_is_no_fault() {
        check(LISTED, TABLE, &[]);
    }

    #[test]
    fn a_source_must_be_listed() {
        check(
            LISTED,
            &TABLE.replace("guide", "hearsay"),
            &["yields.csv:2: names the source `hearsay`", "`guide` is listed"],
        );
    }

    #[test]
    fn a_listed_source_must_be_named() {
        let more = format!("{LISTED}[other]\ntitle = \"Another\"\nrank = \"lower\"\n");
        check(&more, TABLE, &["`other` is listed and no row names it"]);
        check(&more, &TABLE.replace("guide", "guide; other"), &[]);
        check(&more, &TABLE.replace("p. 4", "p. 4; other says the same"), &[]);
        check(&more, &TABLE.replace("p. 4", "p. 4; other-2 says the same"), &["`other` is listed"]);
        // A word of the row itself names no source.
        check(&more, &TABLE.replace("beans", "other"), &["`other` is listed"]);
    }

    #[test]
    fn a_source_has_a_title_and_a_rank() {
        check(&LISTED.replace("full", "good"), TABLE, &["rank \"good\""]);
        check(&LISTED.replace("title", "name"), TABLE, &["no title"]);
    }

    #[test]
    fn a_table_has_its_three_columns() {
        check(
            LISTED,
            "produce,source_id,basis\nbeans,guide,read\n",
            &["yields.csv:1: has no column `locator`"],
        );
    }

    #[test]
    fn a_row_says_where_and_on_what_basis() {
        check(LISTED, &TABLE.replace("p. 4", ""), &["yields.csv:2: does not say where"]);
        check(LISTED, &TABLE.replace(",read", ",certain"), &["basis \"certain\""]);
    }

    #[test]
    fn a_ragged_row_is_found() {
        check(LISTED, &format!("{TABLE}peas,2\n"), &["cannot be read"]);
    }

    #[test]
    fn a_list_that_cannot_be_read_is_found() {
        check("[guide", "source_id,locator,basis\n", &["cannot be read"]);
    }
}
