//! A hand that writes in a book, to be killed, starved and lied to by tests and long runs.
//!
//! - `append FILE NUMBER...` appends one note each and says how that ended.
//! - `write FILE FROM` appends groups of three for ever and prints the number of each once it is acknowledged.
//! - `fill FILE FROM COUNT` appends so many groups, beside whoever else is writing.
//! - `look FILE` opens a book, prints what there is to say about it and how many entries it holds.
//! - `ordeal FOLDER ROUNDS SEED` kills a writer at so many moments and looks each time for what it had acknowledged.
//! - `measure FOLDER` fills books and prints how long they take; `peak FILE` prints the memory that opening one takes.
//! - `flips FOLDER STRIDE` flips a bit of every so many-th byte of a small book and looks whether it is noticed.

#![expect(clippy::unwrap_used, reason = "the hand ends where the world it made is not as it made it")]

use std::process::ExitCode;

use book::act::Noted;
use book::{Entry, Head, Id, Moment, SqliteStore, Store as _, Written};

mod flips;
mod measure;
mod ordeal;

/// Entries of one group.
const GROUP: u32 = 3;

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    match words.as_slice() {
        ["append", file, numbers @ ..] => append(file, numbers),
        ["write", file, from] => write(file, from.parse().unwrap(), u32::MAX),
        ["fill", file, from, count] => write(file, from.parse().unwrap(), count.parse().unwrap()),
        ["look", file] => look(file),
        ["ordeal", folder, rounds, seed] => {
            ordeal::run(folder.as_ref(), rounds.parse().unwrap(), seed.parse().unwrap())
        }
        ["measure", folder] => measure::run(folder.as_ref()),
        ["peak", file] => measure::peak(file.as_ref()),
        ["flips", folder, stride] => flips::run(folder.as_ref(), stride.parse().unwrap()),
        _ => {
            eprintln!("the words are at the head of {}", file!());
            ExitCode::FAILURE
        }
    }
}

fn append(file: &str, numbers: &[&str]) -> ExitCode {
    let mut store = match SqliteStore::open_or_begin(file.as_ref()) {
        Ok(opened) => opened.store,
        Err(fault) => {
            println!("{fault}");
            return ExitCode::FAILURE;
        }
    };
    for number in numbers {
        match store.append(&[note(number.parse().unwrap(), None)], None) {
            Ok(head) => println!("saved {}", head.position.0),
            Err(fault) => println!("{fault}"),
        }
    }
    ExitCode::SUCCESS
}

fn write(file: &str, from: u32, count: u32) -> ExitCode {
    let mut store = SqliteStore::open_or_begin(file.as_ref()).unwrap().store;
    for number in (from..).step_by(GROUP as usize).take(count as usize) {
        store.append(&group(number), None).unwrap();
        println!("{number}");
    }
    ExitCode::SUCCESS
}

fn look(file: &str) -> ExitCode {
    match SqliteStore::open(file.as_ref()) {
        Ok(opened) => {
            opened.notes.iter().for_each(|note| println!("{note}"));
            let mut entries = 0;
            opened.store.read_after(Head::EMPTY, &mut |_, _| entries += 1).unwrap();
            println!("{entries} entries");
            ExitCode::SUCCESS
        }
        Err(fault) => {
            println!("{fault}");
            ExitCode::FAILURE
        }
    }
}

/// The notes of one act: the later ones say whose they are.
fn group(number: u32) -> Vec<Written> {
    (number..number + GROUP).map(|member| note(member, (member > number).then_some(number))).collect()
}

fn note(number: u32, with: Option<u32>) -> Written {
    let at = jiff::Timestamp::UNIX_EPOCH;
    let entry = Entry {
        id: id(number),
        happened_at: Moment::utc(at),
        arrived_at: at,
        who: "Wilma".into(),
        device: "telephone".into(),
        with: with.map(id),
        follows: None,
        why: None,
        act: Noted { about: None, words: "rain".into() }.into(),
    };
    Written::of(entry).unwrap()
}

fn id(number: u32) -> Id {
    format!("{:08x}-{:04x}-7000-8000-000000000000", number >> 16, number & 0xffff).parse().unwrap()
}
