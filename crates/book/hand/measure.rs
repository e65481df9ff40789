//! How long a book takes to open and to write in, with a bare SQLite insert of the same bytes as the peer.

use std::path::Path;
use std::process::{Command, ExitCode};
use std::time::{Duration, Instant};

use book::act::{Act, ContainersMoved, Drawn, LotPutUp, Noted, Put, Spot, Told, Went};
use book::{Book, Entry, Head, Moment, SqliteStore, Store as _, Written};

use super::id;

/// Entries of a household after ten years.
const HOUSEHOLD: u32 = 60_000;
/// The curve of a club.
const CURVE: [u32; 3] = [10_000, 100_000, 1_000_000];
/// Entries written in one transaction while a book is filled.
const AT_ONCE: u32 = 2_000;
/// Runs of each opening; the median counts.
const OPENINGS: usize = 5;
/// Appends and bare inserts, turn by turn.
const APPENDS: u32 = 300;
/// How often what to eat first is asked.
const ASKED: u32 = 20_000;

/// Prints a name, a tab and a number a line: milliseconds, a ratio, views a second, bytes.
pub(crate) fn run(folder: &Path) -> ExitCode {
    let house = folder.join("house.book");
    fill(&house, HOUSEHOLD);
    print("open-snapshot-ms", median_open(&house));
    print("append-ratio", measure_append(folder, &house));
    print("eat-first-per-s", measure_eat_first(&house));
    print("memory-bytes", ask_memory(&house));
    forget_snapshot(&house);
    print("open-texts-ms", median_open(&house));
    for entries in CURVE {
        let club = folder.join(format!("club-{entries}.book"));
        fill(&club, entries);
        print(&format!("open-{entries}-ms"), median_open(&club));
    }
    ExitCode::SUCCESS
}

/// Opens a book, asks one question, and prints the most memory that took.
pub(crate) fn peak(file: &Path) -> ExitCode {
    open_and_ask(file);
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let kilobytes =
        status.lines().find_map(|line| line.strip_prefix("VmHWM:")?.trim().strip_suffix(" kB")?.parse().ok());
    println!("{}", kilobytes.unwrap_or(0_u64) * 1024);
    ExitCode::SUCCESS
}

fn print(name: &str, number: f64) {
    println!("{name}\t{number}");
}

/// Acts as a household writes them: of twelve one lot, some moves, many draws, a word now and then.
fn act(number: u32) -> Act {
    let spot = Spot { size: "half-pint".into(), shelf: Some("cellar".into()) };
    let lot = id(number - number % 12);
    match number % 12 {
        0 => LotPutUp {
            label: format!("{:02}-{:03}", number / 60_000, number / 12).into(),
            name: ["damson jam", "corn", "pear halves", "dill pickles"][(number / 12 % 4) as usize].into(),
            formula: None,
            told: Told::AfterTheFact,
            put_up: Some(book::RoughDate::day(day(number))),
            containers: vec![Put { spot, count: if number.is_multiple_of(5) { 12 } else { 9 } }],
            planned: vec![],
            batch: None,
            loads: vec![],
            from_lots: vec![],
            supplies: vec!["lids-of-august".into()],
            eat_by: None,
            open: None,
        }
        .into(),
        1 => ContainersMoved { lot, spot, count: 1, unsealed: 0, to: Some("pantry".into()) }.into(),
        11 => Noted { about: Some(lot), words: "a little sharper next time".into() }.into(),
        _ => Drawn { lot, spot, count: 1, unsealed: 0, went: Some(Went::Eaten) }.into(),
    }
}

fn day(number: u32) -> jiff::civil::Date {
    at(number).date()
}

fn at(number: u32) -> Moment {
    // Ten years in sixty thousand entries, whatever their number.
    Moment::utc(jiff::Timestamp::from_second(1_400_000_000 + i64::from(number % 60_000) * 5_256).unwrap())
}

fn entry(number: u32) -> Written {
    let at = at(number);
    Written::of(Entry {
        id: id(number),
        arrived_at: at.at(),
        happened_at: at,
        who: "Wilma".into(),
        device: "kitchen telephone".into(),
        with: None,
        follows: None,
        why: None,
        act: act(number),
    })
    .unwrap()
}

fn fill(file: &Path, entries: u32) {
    let mut store = SqliteStore::open_or_begin(file).unwrap().store;
    for from in (0..entries).step_by(AT_ONCE as usize) {
        let group: Vec<Written> = (from..(from + AT_ONCE).min(entries)).map(entry).collect();
        store.append(&group, None).unwrap();
    }
    assert!(Book::open(store).unwrap().keep_snapshot().unwrap());
}

fn forget_snapshot(file: &Path) {
    rusqlite::Connection::open(file).unwrap().execute("DELETE FROM snapshot", []).unwrap();
}

fn open_and_ask(file: &Path) -> Book<SqliteStore> {
    let book = Book::open(SqliteStore::open(file).unwrap().store).unwrap();
    let today = jiff::civil::date(2026, 11, 25);
    assert!(book.views().eat_first.in_order(today).take(10).count() > 0);
    book
}

fn median_open(file: &Path) -> f64 {
    let mut times: Vec<Duration> = (0..OPENINGS)
        .map(|_| {
            let begun = Instant::now();
            let book = open_and_ask(file);
            let taken = begun.elapsed();
            drop(book);
            taken
        })
        .collect();
    times.sort();
    times[OPENINGS / 2].as_secs_f64() * 1000.0
}

/// The median append against the median bare insert of the same bytes, taken turn by turn on one disk.
fn measure_append(folder: &Path, house: &Path) -> f64 {
    let bare = rusqlite::Connection::open(folder.join("bare.db")).unwrap();
    bare.execute_batch(
        "PRAGMA journal_mode = wal; PRAGMA synchronous = full; CREATE TABLE entry (position INTEGER PRIMARY KEY, text TEXT) STRICT;",
    )
    .unwrap();
    let mut store = SqliteStore::open(house).unwrap().store;
    let (mut ours, mut theirs) = (Vec::new(), Vec::new());
    for number in 0..APPENDS {
        let written = entry(2_000_000 + number);
        let begun = Instant::now();
        store.append(std::slice::from_ref(&written), None).unwrap();
        ours.push(begun.elapsed());
        let begun = Instant::now();
        bare.prepare_cached("INSERT INTO entry (text) VALUES ($1)")
            .unwrap()
            .execute([written.text()])
            .unwrap();
        theirs.push(begun.elapsed());
    }
    ours.sort();
    theirs.sort();
    ours[ours.len() / 2].as_secs_f64() / theirs[theirs.len() / 2].as_secs_f64()
}

fn measure_eat_first(file: &Path) -> f64 {
    let book = open_and_ask(file);
    let today = jiff::civil::date(2026, 11, 25);
    let begun = Instant::now();
    let mut seen = 0;
    for _ in 0..ASKED {
        seen += book
            .views()
            .eat_first
            .in_order(today)
            .take(20)
            .filter_map(|lot| book.views().lots.find(lot))
            .count();
    }
    assert!(seen > 0 && book.head() != Head::EMPTY);
    f64::from(ASKED) / begun.elapsed().as_secs_f64()
}

/// In a process of its own: the filling of the book is not the opening of it.
fn ask_memory(file: &Path) -> f64 {
    let output = Command::new(std::env::current_exe().unwrap()).arg("peak").arg(file).output().unwrap();
    String::from_utf8(output.stdout).unwrap().trim().parse().unwrap()
}
