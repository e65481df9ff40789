//! The file gone wrong: each fault is found and said, and nothing is lost silently.

use std::fs;
use std::path::Path;

use book::{Head, OpenNote, SqliteStore, Store, StoreError, copy_book, restore_book, rotate_backups};

use crate::told::{Folder, note};

/// A book of three entries, closed.
fn small_book(path: &Path) -> Head {
    let mut store = SqliteStore::open_or_begin(path).unwrap().store;
    let mut head = Head::EMPTY;
    for number in 1..4 {
        head = store.append(&[note(number, "a")], None).unwrap();
    }
    head
}

fn fault_of_opening(path: &Path) -> String {
    SqliteStore::open(path).map(|opened| opened.notes).unwrap_err().to_string()
}

/// The file with bytes changed behind the program's back.
fn rewrite(path: &Path, change: impl FnOnce(&mut Vec<u8>)) {
    let mut bytes = fs::read(path).unwrap();
    change(&mut bytes);
    fs::write(path, bytes).unwrap();
}

#[test]
fn a_file_that_is_not_there_is_not_made_by_looking() {
    let folder = Folder::new();
    let path = folder.file("house.book");
    assert!(fault_of_opening(&path).contains("there is no book at"));
    assert!(!path.exists());
}

#[test]
fn a_file_that_is_no_book_is_left_alone() {
    let folder = Folder::new();
    let path = folder.file("letter.txt");
    let letter = "Dear Otto, the plums are ripe. ".repeat(40);
    fs::write(&path, &letter).unwrap();
    assert!(SqliteStore::open_or_begin(&path).unwrap_err().to_string().contains("is not a book"));
    assert_eq!(fs::read_to_string(&path).unwrap(), letter);

    let path = folder.file("other.db");
    rusqlite::Connection::open(&path).unwrap().execute_batch("CREATE TABLE songs (name TEXT)").unwrap();
    assert!(SqliteStore::open_or_begin(&path).unwrap_err().to_string().contains("is not a book"));
}

#[test]
fn a_book_of_a_newer_program_is_left_alone() {
    let folder = Folder::new();
    let path = folder.file("house.book");
    small_book(&path);
    rusqlite::Connection::open(&path).unwrap().pragma_update(None, "user_version", 7).unwrap();
    let before = fs::read(&path).unwrap();
    let fault = fault_of_opening(&path);
    assert!(fault.contains("newer program (book version 7, this one reads 1)"), "{fault}");
    assert_eq!(fs::read(&path).unwrap(), before);
}

#[test]
fn a_file_taken_away_under_us_is_not_written_into_the_void() {
    let folder = Folder::new();
    let path = folder.file("house.book");
    small_book(&path);
    let mut store = SqliteStore::open(&path).unwrap().store;
    fs::remove_file(&path).unwrap();
    let fault = store.append(&[note(9, "z")], None).unwrap_err().to_string();
    assert!(fault.contains("not saved") && fault.contains("moved, deleted or replaced"), "{fault}");
    // Another file in its place is not it.
    fs::write(&path, "").unwrap();
    assert!(matches!(store.append(&[note(9, "z")], None), Err(StoreError::NotSaved { .. })));
}

#[test]
fn a_changed_letter_is_found_where_it_is() {
    let folder = Folder::new();
    let path = folder.file("house.book");
    small_book(&path);
    let connection = rusqlite::Connection::open(&path).unwrap();
    connection
        .execute_batch(
            "DROP TRIGGER entry_is_never_changed; UPDATE entry SET text = replace(text, 'Wilma', 'Wilmo') WHERE position = 2",
        )
        .unwrap();
    drop(connection);
    let mut store = SqliteStore::open(&path).unwrap().store;
    let fault = store.read_after(Head::EMPTY, &mut |_, _| {}).unwrap_err().to_string();
    assert!(fault.contains("entry 2 of"), "{fault}");
    let damages: Vec<String> = store.verify().unwrap().damages.iter().map(ToString::to_string).collect();
    assert_eq!(damages, ["entry 2 is not what was written"]);
}

#[test]
fn a_missing_entry_is_found() {
    let folder = Folder::new();
    let path = folder.file("house.book");
    small_book(&path);
    let connection = rusqlite::Connection::open(&path).unwrap();
    connection
        .execute_batch("DROP TRIGGER entry_is_never_removed; DELETE FROM entry WHERE position = 2")
        .unwrap();
    drop(connection);
    let mut store = SqliteStore::open(&path).unwrap().store;
    let damages: Vec<String> = store.verify().unwrap().damages.iter().map(ToString::to_string).collect();
    assert_eq!(damages, ["after entry 1 comes entry 3"]);
}

/// Cuts the file beside a book that was not closed: what was acknowledged and is gone is told.
#[test]
fn a_cut_off_file_beside_the_book_is_told() {
    let folder = Folder::new();
    let path = folder.file("house.book");
    let copy = folder.file("cut.book");
    let mut store = SqliteStore::open_or_begin(&path).unwrap().store;
    for number in 1..6 {
        store.append(&[note(number, "a")], None).unwrap();
    }
    // A copy as a power cut leaves it, then with its end cut off.
    for ending in ["", "-wal", "-watch"] {
        fs::copy(format!("{}{ending}", path.display()), format!("{}{ending}", copy.display())).unwrap();
    }
    let wal = format!("{}-wal", copy.display());
    let length = fs::metadata(&wal).unwrap().len();
    fs::File::options().write(true).open(&wal).unwrap().set_len(length - 5000).unwrap();

    let opened = SqliteStore::open(&copy).unwrap();
    let missing = opened.notes.iter().find_map(|note| match note {
        OpenNote::EntriesMissing { found, were } => Some((*found, *were)),
        _ => None,
    });
    let (found, were) = missing.expect("the loss is told");
    assert!(found < 5 && were == 5, "{found} of {were}");
    let mut cut = opened.store;
    assert!(cut.verify().unwrap().damages.iter().any(|damage| damage.to_string().contains("held 5")));
    // It is told again and again until it is accepted, though more is written.
    cut.append(&[note(20, "b")], None).unwrap();
    drop(cut);
    let mut again = SqliteStore::open(&copy).unwrap();
    assert!(
        again.notes.iter().any(|note| note.to_string().contains("book verify --accept")),
        "{:?}",
        again.notes
    );
    again.store.accept_as_it_is().unwrap();
    drop(again);
    assert_eq!(SqliteStore::open(&copy).unwrap().notes, []);
}

#[test]
fn a_book_that_was_not_closed_is_checked_and_whole() {
    let folder = Folder::new();
    let path = folder.file("house.book");
    let copy = folder.file("copy.book");
    let mut store = SqliteStore::open_or_begin(&path).unwrap().store;
    let head = store.append(&[note(1, "a"), note(2, "b")], None).unwrap();
    for ending in ["", "-wal", "-watch"] {
        fs::copy(format!("{}{ending}", path.display()), format!("{}{ending}", copy.display())).unwrap();
    }
    let opened = SqliteStore::open(&copy).unwrap();
    assert_eq!(opened.notes, [OpenNote::CheckedAfterStop { entries: 2 }]);
    assert_eq!(opened.store.head().unwrap(), head);
}

#[test]
fn a_backup_is_made_in_use_and_never_over_another() {
    let folder = Folder::new();
    let path = folder.file("house.book");
    let head = small_book(&path);
    let mut store = SqliteStore::open(&path).unwrap().store;
    let backup = folder.file("copies/one.backup");
    assert_eq!(copy_book(&path, &backup).unwrap(), head);
    store.append(&[note(9, "later")], None).unwrap();
    assert!(copy_book(&path, &backup).unwrap_err().to_string().contains("there already"));
    assert_eq!(SqliteStore::open(&backup).unwrap().store.head().unwrap(), head);
}

#[test]
fn restoring_keeps_the_old_file() {
    let folder = Folder::new();
    let path = folder.file("house.book");
    let head = small_book(&path);
    let backup = folder.file("one.backup");
    copy_book(&path, &backup).unwrap();
    let later = SqliteStore::open(&path).unwrap().store.append(&[note(9, "later")], None).unwrap();

    let now = "2026-09-13T08:00:00Z".parse().unwrap();
    let (restored, kept) = restore_book(&backup, &path, now).unwrap();
    let kept = kept.unwrap();
    assert!(kept.to_string_lossy().ends_with("house.book.kept-2026-09-13T080000Z"), "{}", kept.display());
    assert_eq!(restored, head);
    let opened = SqliteStore::open(&path).unwrap();
    assert_eq!((opened.store.head().unwrap(), opened.notes.len()), (head, 0));
    assert_eq!(SqliteStore::open(&kept).unwrap().store.head().unwrap(), later);
}

#[test]
fn a_damaged_backup_is_not_restored() {
    let folder = Folder::new();
    let path = folder.file("house.book");
    let head = small_book(&path);
    let backup = folder.file("one.backup");
    copy_book(&path, &backup).unwrap();
    rewrite(&backup, |bytes| {
        let at = bytes.windows(5).position(|five| five == b"Wilma").unwrap();
        bytes[at] = b'V';
    });
    let now = "2026-09-13T08:00:00Z".parse().unwrap();
    assert!(restore_book(&backup, &path, now).unwrap_err().to_string().contains("not whole"));
    assert_eq!(SqliteStore::open(&path).unwrap().store.head().unwrap(), head);
}

#[test]
fn a_book_in_use_is_not_replaced() {
    let folder = Folder::new();
    let path = folder.file("house.book");
    small_book(&path);
    let backup = folder.file("one.backup");
    copy_book(&path, &backup).unwrap();
    let _open = SqliteStore::open(&path).unwrap();
    let now = "2026-09-13T08:00:00Z".parse().unwrap();
    assert!(restore_book(&backup, &path, now).unwrap_err().to_string().contains("stop it first"));
}

#[test]
fn a_daily_backup_is_made_once_a_day() {
    let folder = Folder::new();
    let path = folder.file("house.book");
    small_book(&path);
    let store = SqliteStore::open(&path).unwrap().store;
    let copies = folder.file("backups");
    for day in 1..=9 {
        let today = jiff::civil::date(2026, 9, day);
        assert!(rotate_backups(&store, &copies, today).unwrap().is_some());
        assert_eq!(rotate_backups(&store, &copies, today).unwrap(), None);
    }
    fs::write(copies.join("notes.txt"), "mine").unwrap();
    rotate_backups(&store, &copies, jiff::civil::date(2026, 9, 10)).unwrap();
    let mut names: Vec<String> = fs::read_dir(&copies)
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    names.sort();
    // Seven days from the fourth to the tenth; of the week before, its last day was the sixth, which is among them.
    let days: Vec<String> = (4..=10).map(|day| format!("book-2026-09-{day:02}.backup")).collect();
    assert_eq!(names, [days, vec!["notes.txt".to_owned()]].concat());
}
