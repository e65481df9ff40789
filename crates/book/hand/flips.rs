//! Flips one bit of many bytes of a small book. Each flip is found, or the journal reads as it was written.

use std::fs;
use std::path::Path;
use std::process::ExitCode;

use book::{Head, SqliteStore, Store as _};

use super::group;

/// Tries every so many-th byte and prints what came of it.
pub(crate) fn run(folder: &Path, stride: usize) -> ExitCode {
    let file = folder.join("small.book");
    let mut store = SqliteStore::open_or_begin(&file).unwrap().store;
    let mut head = Head::EMPTY;
    for number in [0, 10, 20] {
        head = store.append(&group(number), None).unwrap();
    }
    drop(store);
    let good = fs::read(&file).unwrap();
    let (mut tried, mut found) = (0, 0);
    for at in (0..good.len()).step_by(stride) {
        let mut bytes = good.clone();
        bytes[at] ^= 1 << (at % 8);
        tried += 1;
        match look(folder, &bytes, head) {
            Outcome::Found => found += 1,
            Outcome::Harmless => {}
            Outcome::Unnoticed => {
                println!("a flip in byte {at} of {} went unnoticed", good.len());
                return ExitCode::FAILURE;
            }
        }
    }
    println!("{tried} flips in {} bytes: {found} found, {} where nothing is kept", good.len(), tried - found);
    ExitCode::SUCCESS
}

enum Outcome {
    Found,
    Harmless,
    Unnoticed,
}

fn look(folder: &Path, bytes: &[u8], head: Head) -> Outcome {
    let file = folder.join("flipped.book");
    for ending in ["", "-wal", "-shm", "-watch"] {
        let _ = fs::remove_file(format!("{}{ending}", file.display()));
    }
    fs::write(&file, bytes).unwrap();
    let Ok(mut opened) = SqliteStore::open(&file) else { return Outcome::Found };
    let Ok(found) = opened.store.verify() else { return Outcome::Found };
    if !found.damages.is_empty() {
        return Outcome::Found;
    }
    let mut read = Head::EMPTY;
    let outcome = opened.store.read_after(Head::EMPTY, &mut |_, at| read = at);
    if outcome.is_ok() && found.head == head && read == head { Outcome::Harmless } else { Outcome::Unnoticed }
}
