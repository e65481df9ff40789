//! Kills a writer at many moments. What it had acknowledged is there, and no act is half there.

use std::collections::BTreeSet;
use std::io::{BufRead as _, BufReader};
use std::path::Path;
use std::process::{Command, ExitCode, Stdio};

use book::{Head, SqliteStore, Store as _};

use super::{GROUP, id};

/// The most groups a writer may acknowledge before it is killed.
const MOST: u64 = 7;

/// Rounds before a new book is begun.
const ROUNDS_A_BOOK: u32 = 50;

/// Runs so many rounds on growing books and prints what came of them.
pub(crate) fn run(folder: &Path, rounds: u32, seed: u64) -> ExitCode {
    let mut file = folder.join("ordeal-0.book");
    let mut chance = seed;
    let mut acknowledged: Vec<u32> = Vec::new();
    let mut acts = 0;
    let mut unclean = 0;
    let mut unacknowledged = 0;
    for round in 0..rounds {
        if round % ROUNDS_A_BOOK == 0 && round > 0 {
            // A new book now and then: each round reads the whole of it.
            acts += acknowledged.len();
            acknowledged.clear();
            file = folder.join(format!("ordeal-{}.book", round / ROUNDS_A_BOOK));
        }
        // Numbers that a killed writer may have written without saying so are passed over.
        let from = acknowledged.last().map_or(0, |last| last + 100 * GROUP);
        chance = chance.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        acknowledged.extend(write_and_kill(&file, from, (chance >> 33) % MOST, (chance >> 13) % 2_000));

        let opened = SqliteStore::open_or_begin(&file).unwrap();
        unclean += u32::from(!opened.notes.is_empty());
        let mut there = BTreeSet::new();
        opened.store.read_after(Head::EMPTY, &mut |written, _| _ = there.insert(written.entry().id)).unwrap();
        let missing = acknowledged
            .iter()
            .flat_map(|number| *number..number + GROUP)
            .find(|number| !there.contains(&id(*number)));
        if let Some(number) = missing {
            println!("round {round}: note {number} was acknowledged and is missing");
            return ExitCode::FAILURE;
        }
        let is_whole = (there.len() as u32).is_multiple_of(GROUP);
        if !is_whole {
            println!("round {round}: an act is half there: {} notes", there.len());
            return ExitCode::FAILURE;
        }
        let is_last = round + 1 == rounds || (round + 1) % ROUNDS_A_BOOK == 0;
        if is_last {
            unacknowledged += there.len() as u32 / GROUP - acknowledged.len() as u32;
            let mut store = opened.store;
            if let Some(damage) = store.verify().unwrap().damages.first() {
                println!("damaged after round {round}: {damage}");
                return ExitCode::FAILURE;
            }
        }
    }
    acts += acknowledged.len();
    println!(
        "{rounds} writers killed, {unclean} of them before the book was closed; {} acts acknowledged and all there; \
         {unacknowledged} there that nobody had been told of; none half there",
        acts
    );
    ExitCode::SUCCESS
}

/// Lets a writer acknowledge a few groups, gives it a moment more, and kills it. The numbers it acknowledged.
fn write_and_kill(file: &Path, from: u32, groups: u64, moment: u64) -> Vec<u32> {
    let mut writer = Command::new(std::env::current_exe().unwrap())
        .args(["write".as_ref(), file.as_os_str(), from.to_string().as_ref()])
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let mut lines = BufReader::new(writer.stdout.take().unwrap()).lines();
    let mut told: Vec<u32> = Vec::new();
    for line in lines.by_ref().take(groups as usize) {
        told.push(line.unwrap().parse().unwrap());
    }
    for _ in 0..moment * 20 {
        std::hint::spin_loop();
    }
    writer.kill().unwrap();
    writer.wait().unwrap();
    // What it said before it died counts as well. A line is one short write into a pipe, so it is there whole or not.
    told.extend(lines.map_while(Result::ok).filter_map(|line| line.parse::<u32>().ok()));
    told
}
