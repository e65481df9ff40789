//! The world gone wrong around a writing program: killed, out of room, lied to, locked out, not alone.

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use book::{Head, SqliteStore, Store as _};

use crate::told::Folder;

fn hand() -> Command {
    Command::new(env!("CARGO_BIN_EXE_book-hand"))
}

fn said(output: &Output) -> String {
    String::from_utf8(output.stdout.clone()).unwrap()
}

/// The disk that lies, built for this test.
#[cfg(target_os = "linux")]
fn build_disk(folder: &Folder) -> PathBuf {
    let library = folder.file("disk.so");
    let source = Path::new(env!("CARGO_MANIFEST_DIR")).join("hand/disk.c");
    let built =
        Command::new("cc").args(["-shared", "-fPIC", "-o"]).arg(&library).arg(source).status().unwrap();
    assert!(built.success(), "the C compiler that also builds SQLite could not build the disk");
    library
}

/// A book of one note, and what the hand says when it writes to it on such a disk.
#[cfg(target_os = "linux")]
fn on_a_disk_that_is(mode: &str, folder: &Folder, words: &[&str]) -> (PathBuf, String) {
    let path = folder.file("house.book");
    assert_eq!(said(&hand().arg("append").arg(&path).arg("1").output().unwrap()), "saved 1\n");
    let mut command = hand();
    command.arg(words[0]).arg(&path).args(&words[1..]);
    command.env("LD_PRELOAD", build_disk(folder)).env("BOOK_DISK", mode);
    let text = said(&command.output().unwrap());
    (path, text)
}

fn count(path: &Path) -> u64 {
    let mut store = SqliteStore::open(path).unwrap().store;
    let found = store.verify().unwrap();
    assert_eq!(found.damages, []);
    found.entries
}

/// Twelve rounds here; the long run has a thousand.
#[test]
fn a_killed_writer_loses_nothing_it_acknowledged() {
    let folder = Folder::new();
    let output = hand().arg("ordeal").arg(folder.path()).args(["12", "20261125"]).output().unwrap();
    assert!(output.status.success(), "{}", said(&output));
    assert!(said(&output).starts_with("12 writers killed"), "{}", said(&output));
}

/// Every fifty-third byte here; the long run flips each.
#[test]
fn a_flipped_bit_is_found_or_changes_nothing() {
    let folder = Folder::new();
    let output = hand().arg("flips").arg(folder.path()).arg("53").output().unwrap();
    assert!(output.status.success(), "{}", said(&output));
    assert!(!said(&output).contains(" 0 found"), "{}", said(&output));
}

#[cfg(target_os = "linux")]
#[test]
fn a_sync_that_fails_is_not_saved_and_nothing_more_is_written() {
    let folder = Folder::new();
    let (path, text) = on_a_disk_that_is("unsynced", &folder, &["append", "2", "3"]);
    let lines: Vec<&str> = text.lines().collect();
    assert_eq!(lines.len(), 2, "{text}");
    assert!(lines[0].contains("not saved") && lines[0].contains("did not confirm"), "{text}");
    assert!(lines[1].contains("not saved") && lines[1].contains("open the book again"), "{text}");
    // Sending it again on a good disk is always right, whether or not it had reached the disk after all.
    assert!(said(&hand().arg("append").arg(&path).args(["2"]).output().unwrap()).starts_with("saved"));
    assert_eq!(count(&path), 2);
}

#[cfg(target_os = "linux")]
#[test]
fn a_full_disk_is_not_saved_and_what_was_saved_is_there() {
    let folder = Folder::new();
    let (path, text) = on_a_disk_that_is("full", &folder, &["append", "2"]);
    assert!(text.contains("not saved") && text.contains("the disk is full"), "{text}");
    assert_eq!(count(&path), 1);
}

#[cfg(target_os = "linux")]
#[test]
fn a_locked_disk_can_be_read_and_says_that_nothing_is_written() {
    let folder = Folder::new();
    let (path, text) = on_a_disk_that_is("locked", &folder, &["append", "2"]);
    assert!(text.contains("not saved") && text.contains("may only be read"), "{text}");
    let (_, text) = on_a_disk_that_is("locked", &folder, &["look"]);
    assert!(text.contains("may only be read: nothing can be written down now"), "{text}");
    assert!(text.ends_with("1 entries\n"), "{text}");
    assert_eq!(count(&path), 1);
}

#[test]
fn two_writers_at_once_both_get_everything_in() {
    const GROUPS: u64 = 40;
    let folder = Folder::new();
    let path = folder.file("house.book");
    drop(SqliteStore::open_or_begin(&path).unwrap());
    let fill = |from: u32| {
        let mut command = hand();
        command.arg("fill").arg(&path).args([from.to_string(), GROUPS.to_string()]);
        command.stdout(std::process::Stdio::null()).spawn().unwrap()
    };
    let writers = [fill(1), fill(1_000)];
    for mut writer in writers {
        assert!(writer.wait().unwrap().success());
    }
    assert_eq!(count(&path), 2 * 3 * GROUPS);
    let store = SqliteStore::open(&path).unwrap().store;
    let mut ids = Vec::new();
    store.read_after(Head::EMPTY, &mut |written, _| ids.push(written.entry().with.is_none())).unwrap();
    assert!(ids.chunks(3).all(|group| group == [true, false, false]), "groups stand together");
}
