//! The book asked by other programs: the documented format, and the SQL views over it.

use std::collections::BTreeSet;

use book::act::Act;
use book::view::Views;
use book::{Head, SqliteStore, Store as _, Written, read_lines};
use rusqlite::Connection;

use crate::told::Folder;

const PAGE: &str = include_str!("../../../../docs/formats/journal.md");
const ONE_OF_EACH: &str = include_str!("one_of_each.jsonl");

fn entries() -> Vec<Written> {
    read_lines(ONE_OF_EACH).unwrap()
}

/// The example book, and a plain connection to it.
fn asked(folder: &Folder) -> (SqliteStore, Connection) {
    let path = folder.file("house.book");
    let mut store = SqliteStore::open_or_begin(&path).unwrap().store;
    store.append(&entries(), None).unwrap();
    let connection = Connection::open(&path).unwrap();
    (store, connection)
}

#[test]
fn there_is_an_example_of_each_kind_and_it_is_canonical() {
    let kinds: BTreeSet<String> =
        entries().iter().map(|written| written.entry().act.kind().to_owned()).collect();
    let known: BTreeSet<String> = Act::KINDS.iter().map(|kind| (*kind).to_owned()).collect();
    assert!(known.is_subset(&kinds), "{:?}", known.difference(&kinds));
    for (line, written) in ONE_OF_EACH.lines().zip(entries()) {
        assert_eq!(line, written.text());
        // No field of the example is one that the program does not know: writing it again loses nothing.
        assert_eq!(Written::of(written.entry().clone()).unwrap().text(), line);
    }
}

#[test]
fn the_page_names_each_kind_and_its_fields() {
    for written in entries() {
        let kind = written.entry().act.kind();
        if !Act::KINDS.contains(&kind) {
            continue;
        }
        let row = PAGE.lines().find(|line| line.starts_with(&format!("| `{kind}` |")));
        let row = row.unwrap_or_else(|| panic!("docs/formats/journal.md has no row for {kind}"));
        let value: serde_json::Value = serde_json::from_str(written.text()).unwrap();
        for field in value["body"].as_object().unwrap().keys() {
            assert!(row.contains(&format!("`{field}`")), "the row of {kind} does not name {field}");
        }
    }
}

#[test]
fn the_chain_of_the_page_is_the_chain_of_the_program() {
    let (entry, link) = PAGE
        .lines()
        .collect::<Vec<_>>()
        .windows(5)
        .find_map(|lines| {
            lines[0].trim().starts_with("{\"arrived_at\"").then(|| (lines[0].trim(), lines[4].trim()))
        })
        .expect("the page shows an entry and its link");
    assert_eq!(Head::EMPTY.after(entry).link.to_string(), link);
    assert_eq!(Written::take(entry).unwrap().text(), entry);
}

#[test]
fn the_view_of_acts_is_what_stands() {
    let folder = Folder::new();
    let (_store, connection) = asked(&folder);
    let mut statement = connection.prepare("SELECT id FROM act ORDER BY id").unwrap();
    let asked: Vec<String> = statement.query_map([], |row| row.get(0)).unwrap().map(Result::unwrap).collect();
    let views = Views::rebuild(entries().into_iter().map(|written| written.into_entry().into()));
    let stands: Vec<String> = views
        .record
        .entries()
        .keys()
        .filter_map(|id| views.record.find_standing(*id))
        .map(|standing| standing.id.to_string())
        .collect();
    assert_eq!(asked, stands);
    assert_eq!(asked.len(), 32, "of 34 entries one is a strike and one is struck");
}

#[test]
fn the_queries_of_the_page_answer() {
    let folder = Folder::new();
    let (_store, connection) = asked(&folder);
    let queries: Vec<&str> =
        PAGE.split("```sql\n").skip(1).map(|rest| rest.split("```").next().unwrap()).collect();
    assert!(queries.len() >= 3);
    for query in queries {
        let mut statement = connection.prepare(query).unwrap_or_else(|error| panic!("{query}: {error}"));
        let rows = statement.query_map([], |_| Ok(())).unwrap().count();
        assert!(rows > 0, "{query} answers nothing");
    }
}

#[test]
fn a_lot_and_a_basket_read_as_columns() {
    let folder = Folder::new();
    let (_store, connection) = asked(&folder);
    let lot: (String, String, i64) = connection
        .query_row("SELECT label, name, containers FROM lot", [], |row| {
            Ok((row.get(0)?, row.get(1)?, row.get(2)?))
        })
        .unwrap();
    assert_eq!(lot, ("26-031".into(), "damson jam".into(), 9));
    let basket: (String, i64) = connection
        .query_row("SELECT name, net_mg FROM basket", [], |row| Ok((row.get(0)?, row.get(1)?)))
        .unwrap();
    assert_eq!(basket, ("damsons".into(), 5_000_000));
}
