//! A book that is opened, written in, and opened again: from its snapshot or from its texts.

use std::sync::Arc;

use book::act::Noted;
use book::view::Views;
use book::{Book, Entry, Head, MemoryStore, SqliteStore, Store, StoreError, StoredSnapshot, WriteError};

use crate::told::{Folder, entry, note};

fn notes(numbers: std::ops::Range<u32>) -> Vec<Entry> {
    numbers
        .map(|number| entry(number, i64::from(number), Noted { about: None, words: "rain".into() }))
        .collect()
}

fn draw(entries: Vec<Entry>) -> Views {
    Views::rebuild(entries.into_iter().map(Arc::new))
}

#[test]
fn what_is_written_is_shown_at_once_and_after_opening_again() {
    let folder = Folder::new();
    let path = folder.file("house.book");
    let mut book = Book::open(SqliteStore::open_or_begin(&path).unwrap().store).unwrap();
    book.append(notes(0..3)).unwrap();
    book.append(notes(2..4)).unwrap();
    assert_eq!(book.views(), &draw(notes(0..4)));
    let again = Book::open(SqliteStore::open(&path).unwrap().store).unwrap();
    assert_eq!((again.views(), again.head()), (book.views(), book.head()));
}

#[test]
fn who_writes_by_an_old_view_is_told_to_look_again() {
    let folder = Folder::new();
    let path = folder.file("house.book");
    let mut here = Book::open(SqliteStore::open_or_begin(&path).unwrap().store).unwrap();
    let mut there = Book::open(SqliteStore::open(&path).unwrap().store).unwrap();
    there.append(notes(0..1)).unwrap();
    let fault = here.append(notes(1..2)).unwrap_err();
    assert!(matches!(fault, WriteError::Store(StoreError::Moved { .. })), "{fault}");
    here.catch_up().unwrap();
    here.append(notes(1..2)).unwrap();
    there.catch_up().unwrap();
    assert_eq!(here.views(), there.views());
}

#[test]
fn a_snapshot_is_kept_when_it_is_worth_it_and_gives_the_same_views() {
    let mut book = Book::open(MemoryStore::default()).unwrap();
    book.append(notes(0..1999)).unwrap();
    assert!(!book.keep_snapshot().unwrap());
    book.append(notes(1999..2001)).unwrap();
    assert!(book.keep_snapshot().unwrap());
    assert!(!book.keep_snapshot().unwrap());
    book.append(notes(2001..2003)).unwrap();
    let store = book.store().clone();
    assert_eq!(store.read_snapshot().unwrap().unwrap().head.position.0, 2001);
    let again = Book::open(store).unwrap();
    assert_eq!((again.views(), again.head()), (book.views(), book.head()));
}

/// Lays a snapshot into the store of a book of four notes and opens it.
fn open_with(snapshot: impl FnOnce(&MemoryStore) -> StoredSnapshot) -> Book<MemoryStore> {
    let mut store = MemoryStore::default();
    store.append(&[0, 1, 2, 3].map(|number| note(number, "rain")), None).unwrap();
    let snapshot = snapshot(&store);
    store.write_snapshot(&snapshot).unwrap();
    Book::open(store).unwrap()
}

#[test]
fn a_snapshot_that_does_not_match_the_chain_is_thrown_away() {
    let of_another_book = open_with(|_| {
        let mut other = Book::open(MemoryStore::default()).unwrap();
        other.append(notes(5000..7500)).unwrap();
        other.keep_snapshot().unwrap();
        other.store().read_snapshot().unwrap().unwrap()
    });
    assert_eq!(of_another_book.views(), &draw(notes(0..4)));
    let nonsense = open_with(|store| StoredSnapshot { head: store.head().unwrap(), bytes: vec![1, 2, 3] });
    assert_eq!(nonsense.views(), &draw(notes(0..4)));
    assert_ne!(nonsense.head(), Head::EMPTY);
}

#[test]
fn a_snapshot_with_a_flipped_bit_is_not_believed() {
    let folder = Folder::new();
    let path = folder.file("house.book");
    let mut book = Book::open(SqliteStore::open_or_begin(&path).unwrap().store).unwrap();
    book.append(notes(0..2001)).unwrap();
    assert!(book.keep_snapshot().unwrap());
    drop(book);
    let connection = rusqlite::Connection::open(&path).unwrap();
    let mut bytes: Vec<u8> =
        connection.query_row("SELECT bytes FROM snapshot", [], |row| row.get(0)).unwrap();
    let at = bytes.windows(4).position(|four| four == b"rain").unwrap();
    bytes[at] = b'v';
    connection.execute("UPDATE snapshot SET bytes = $1", [bytes]).unwrap();
    drop(connection);
    let store = SqliteStore::open(&path).unwrap().store;
    assert_eq!(store.read_snapshot().unwrap(), None);
    assert_eq!(Book::open(store).unwrap().views(), &draw(notes(0..2001)));
}
