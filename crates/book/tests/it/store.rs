//! What every store promises, asked of each of them; and what the file alone promises.

use book::{Head, MemoryStore, OpenNote, Position, SqliteStore, Store, StoreError, StoredSnapshot, Written};

use crate::told::{Folder, id, note};

/// Asks the same of both stores.
fn each(ask: impl Fn(&mut dyn Store)) {
    ask(&mut MemoryStore::default());
    let folder = Folder::new();
    ask(&mut SqliteStore::open_or_begin(&folder.file("house.book")).unwrap().store);
}

fn texts(store: &dyn Store, from: Head) -> Vec<String> {
    let mut found = Vec::new();
    store.read_after(from, &mut |written, _| found.push(written.text().to_owned())).unwrap();
    found
}

#[test]
fn what_is_appended_is_read_in_order_and_chained() {
    each(|store| {
        let group = [note(1, "a"), note(2, "b")];
        let head = store.append(&group, Some(Head::EMPTY)).unwrap();
        assert_eq!(head, Head::EMPTY.after(group[0].text()).after(group[1].text()));
        assert_eq!(store.head().unwrap(), head);
        assert_eq!(texts(store, Head::EMPTY), [group[0].text(), group[1].text()]);
        let first = Head::EMPTY.after(group[0].text());
        assert_eq!(texts(store, first), [group[1].text()]);
        assert_eq!(store.find_link(Position(1)).unwrap(), Some(first.link));
        assert_eq!(store.find_link(Position(0)).unwrap(), Some(Head::EMPTY.link));
        assert_eq!(store.find_link(Position(3)).unwrap(), None);
    });
}

#[test]
fn what_is_sent_twice_is_written_once() {
    each(|store| {
        let head = store.append(&[note(1, "a")], None).unwrap();
        let again = store.append(&[note(1, "a"), note(2, "b"), note(2, "b")], None).unwrap();
        assert_eq!(again, head.after(note(2, "b").text()));
        assert_eq!(texts(store, Head::EMPTY).len(), 2);
    });
}

#[test]
fn other_words_under_one_id_are_refused_with_their_whole_group() {
    each(|store| {
        let head = store.append(&[note(1, "a")], None).unwrap();
        let fault = store.append(&[note(2, "b"), note(1, "z")], None).unwrap_err();
        assert!(matches!(fault, StoreError::OtherWords { id: found } if found == id(1)), "{fault}");
        assert_eq!(store.head().unwrap(), head);
        assert_eq!(texts(store, Head::EMPTY), [note(1, "a").text()]);
        store.append(&[note(2, "b")], Some(head)).unwrap();
    });
}

#[test]
fn who_decided_by_an_older_book_is_told() {
    each(|store| {
        store.append(&[note(1, "a")], Some(Head::EMPTY)).unwrap();
        let fault = store.append(&[note(2, "b")], Some(Head::EMPTY)).unwrap_err();
        assert!(fault.to_string().contains("moved on from entry 0 to entry 1"), "{fault}");
        assert_eq!(texts(store, Head::EMPTY).len(), 1);
    });
}

#[test]
fn an_act_of_the_future_is_kept_word_for_word() {
    each(|store| {
        let text = note(1, "a").text().replace("\"noted\"", "\"moon-howled-at\"");
        store.append(&[Written::take(&text).unwrap()], None).unwrap();
        assert_eq!(texts(store, Head::EMPTY), [text]);
    });
}

#[test]
fn the_last_snapshot_is_the_one_that_is_kept() {
    each(|store| {
        assert_eq!(store.read_snapshot().unwrap(), None);
        let head = store.append(&[note(1, "a")], None).unwrap();
        for bytes in [vec![1, 2], vec![3]] {
            let snapshot = StoredSnapshot { head, bytes };
            store.write_snapshot(&snapshot).unwrap();
            assert_eq!(store.read_snapshot().unwrap(), Some(snapshot));
        }
    });
}

#[test]
fn a_book_is_there_when_it_is_opened_again() {
    let folder = Folder::new();
    let path = folder.file("of the house/my.book");
    let opened = SqliteStore::open_or_begin(&path).unwrap();
    assert_eq!(opened.notes, [OpenNote::New { path: path.clone() }]);
    let mut store = opened.store;
    let head = store.append(&[note(1, "a")], None).unwrap();
    drop(store);
    let opened = SqliteStore::open(&path).unwrap();
    assert_eq!(opened.notes, []);
    assert_eq!(opened.store.head().unwrap(), head);
}

#[test]
fn a_reader_sees_what_another_writes_meanwhile() {
    let folder = Folder::new();
    let path = folder.file("house.book");
    let mut writer = SqliteStore::open_or_begin(&path).unwrap().store;
    let reader = SqliteStore::open(&path).unwrap().store;
    let head = writer.append(&[note(1, "a")], None).unwrap();
    assert_eq!(reader.head().unwrap(), head);
    assert_eq!(texts(&reader, Head::EMPTY).len(), 1);
}

#[test]
fn a_whole_book_is_found_whole() {
    let folder = Folder::new();
    let mut store = SqliteStore::open_or_begin(&folder.file("house.book")).unwrap().store;
    let future = note(2, "b").text().replace("\"noted\"", "\"moon-howled-at\"");
    let head = store.append(&[note(1, "a"), Written::take(&future).unwrap()], None).unwrap();
    let found = store.verify().unwrap();
    assert_eq!((found.head, found.entries, found.damages.len()), (head, 2, 0));
    assert_eq!(found.unknown.into_iter().collect::<Vec<_>>(), [("moon-howled-at".into(), 1)]);
}

#[test]
fn the_tables_refuse_what_the_book_refuses() {
    let folder = Folder::new();
    let path = folder.file("house.book");
    SqliteStore::open_or_begin(&path).unwrap().store.append(&[note(1, "a"), note(2, "b")], None).unwrap();
    let other = rusqlite::Connection::open(&path).unwrap();
    for (attempt, words) in [
        ("UPDATE entry SET text = '{}' WHERE position = 1", "never changed"),
        ("DELETE FROM entry WHERE position = 2", "never removed"),
        ("INSERT INTO entry SELECT 9, 'x', link, text FROM entry WHERE position = 1", "without a gap"),
        (
            "INSERT OR REPLACE INTO entry SELECT position, 'x', link, text FROM entry WHERE position = 2",
            "without a gap",
        ),
        ("INSERT OR REPLACE INTO entry SELECT 3, id, link, text FROM entry WHERE position = 2", "once"),
        ("INSERT INTO entry VALUES (3, 'x', x'00', 'y')", "CHECK"),
    ] {
        let fault = other.execute(attempt, []).unwrap_err().to_string();
        assert!(fault.contains(words), "{attempt}: {fault}");
    }
}
