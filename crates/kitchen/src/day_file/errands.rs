//! Other work that shares the day.

use almanac::Attention;
use measure::Minutes;

use crate::day::{ClockTime, Equipment, Errand, ErrandStep, Need};

use super::fault::FaultKind;
use super::people::write_clock;
use super::reader::{Files, Names, Reader};
use super::section::{Entry, Section};

const ERRAND_KEYS: &[&str] = &["name", "must", "step"];
const STEP_KEYS: &[&str] = &[
    "what",
    "minutes",
    "attention",
    "away",
    "needs",
    "earliest",
    "done_by",
    "wait_at_least",
    "wait_at_most",
];
const NEEDS: &[(&str, Need)] = &[
    ("burner", Need::Burner),
    ("oven", Need::Oven),
    ("sink", Need::Sink),
    ("processor", Need::Processor),
    ("blender", Need::Blender),
    ("pot", Need::Pot),
];
/// The longest an errand's step or wait may be: a week.
const LONGEST: Minutes = Minutes(7 * 24 * 60);

/// The errands of the day.
pub(super) fn read_errands(
    files: Files<'_>,
    equipment: &Equipment,
    reader: &mut Reader<'_, '_>,
) -> Vec<Errand> {
    let mut names = Names::of("[[errand]]");
    let mut errands = Vec::new();
    let Some(entry) = files.day.and_then(|root| root.find("errand")) else { return errands };
    for table in entry.sections("[[errand]]", &mut reader.faults) {
        errands.extend(read_errand(table, equipment, &mut names, reader));
    }
    errands
}

fn read_errand(
    table: Section<'_>,
    equipment: &Equipment,
    names: &mut Names,
    reader: &mut Reader<'_, '_>,
) -> Option<Errand> {
    table.check_keys(ERRAND_KEYS, &mut reader.faults);
    let name = table.require("name", "name = \"bread\"", &mut reader.faults).and_then(|entry| {
        let name = reader.name(entry)?;
        names.check(&name, entry, &mut reader.faults);
        Some(name)
    });
    let must = table.find("must").and_then(|entry| entry.flag(&mut reader.faults)).unwrap_or(true);
    let steps = table
        .find("step")
        .map(|entry| entry.sections("[[errand.step]]", &mut reader.faults))
        .unwrap_or_default();
    if steps.is_empty() {
        let errand = name.clone().unwrap_or_default();
        reader.faults.add(table.file, table.at, FaultKind::NoSteps { errand });
    }
    let steps = steps.into_iter().filter_map(|step| read_step(step, equipment, reader)).collect();
    Some(Errand { name: name?, steps, must })
}

fn read_step(table: Section<'_>, equipment: &Equipment, reader: &mut Reader<'_, '_>) -> Option<ErrandStep> {
    table.check_keys(STEP_KEYS, &mut reader.faults);
    let what =
        table.require("what", "what = \"knead\"", &mut reader.faults).and_then(|entry| reader.name(entry));
    let called = what.clone().unwrap_or_default();
    let minutes = table
        .require("minutes", "minutes = 25", &mut reader.faults)
        .and_then(|entry| read_minutes(entry, 1, reader));
    let attentions: Vec<_> =
        Attention::ALL.iter().map(|&attention| (attention.as_str(), attention)).collect();
    let attention = match table.find("attention") {
        Some(entry) => reader.choose(entry, &attentions),
        None => Some(Attention::Hands),
    };
    let away = table.find("away").and_then(|entry| entry.flag(&mut reader.faults)).unwrap_or(false);
    if away && attention == Some(Attention::None) {
        reader.faults.add(table.file, table.at, FaultKind::AwayWithNobody { step: called.clone() });
    }
    let needs =
        table.find("needs").map(|entry| read_needs(entry, &called, equipment, reader)).unwrap_or_default();
    let earliest = table.find("earliest").and_then(|entry| read_time(entry, reader));
    let done_by = table.find("done_by").and_then(|entry| read_time(entry, reader));
    let wait_at_least = table.find("wait_at_least").and_then(|entry| read_minutes(entry, 0, reader));
    let wait_at_most = table.find("wait_at_most").and_then(|entry| read_minutes(entry, 0, reader));
    let step = ErrandStep {
        what: what?,
        minutes: minutes?,
        attention: attention?,
        away,
        needs,
        earliest,
        done_by,
        wait_at_most,
        wait_at_least: wait_at_least.unwrap_or_default(),
    };
    check_times(&step, table, reader);
    Some(step)
}

fn check_times(step: &ErrandStep, table: Section<'_>, reader: &mut Reader<'_, '_>) {
    let earliest = step.earliest.unwrap_or(ClockTime(0));
    if let Some(done_by) = step.done_by
        && earliest.0 + step.minutes.0 > done_by.0
    {
        let kind = FaultKind::WindowTooShort {
            step: step.what.clone(),
            minutes: step.minutes.0,
            earliest: write_clock(earliest),
            done_by: write_clock(done_by),
        };
        reader.faults.add(table.file, table.at, kind);
    }
    if let Some(most) = step.wait_at_most
        && most < step.wait_at_least
    {
        let kind =
            FaultKind::WaitBackwards { step: step.what.clone(), least: step.wait_at_least.0, most: most.0 };
        reader.faults.add(table.file, table.at, kind);
    }
}

fn read_time(entry: Entry<'_>, reader: &mut Reader<'_, '_>) -> Option<ClockTime> {
    let words = entry.words("a time of day in quotes such as \"16:00\"", &mut reader.faults)?;
    reader.clock(words)
}

/// Minutes as text or as a bare number.
fn read_minutes(entry: Entry<'_>, least: u32, reader: &mut Reader<'_, '_>) -> Option<Minutes> {
    let minutes = reader.amount_or_number(entry, "\"1 h 20 min\"", "min", measure::read_minutes)?;
    if minutes < Minutes(least) || minutes > LONGEST {
        let kind = FaultKind::OutOfRange {
            key: entry.key.into(),
            value: format!("{} min", minutes.0),
            least: format!("{least}"),
            most: format!("{} min", LONGEST.0),
        };
        reader.faults.add(entry.file, entry.value_at(), kind);
        return None;
    }
    Some(minutes)
}

/// `needs = ["oven"]`; a thing named twice is needed twice.
fn read_needs(entry: Entry<'_>, step: &str, equipment: &Equipment, reader: &mut Reader<'_, '_>) -> Vec<Need> {
    let mut needs = Vec::new();
    for item in entry.list() {
        let Some(words) = item.words("a word in quotes such as \"oven\"", &mut reader.faults) else {
            continue;
        };
        let plain = words.text.to_lowercase();
        if plain.contains("canner")
            || plain.split(['-', ' ']).any(|word| matches!(word, "jar" | "jars" | "kettle"))
        {
            let kind = FaultKind::NeedsCannerOrJar { step: step.into(), word: words.text.into() };
            reader.faults.add(item.file, words.at, kind);
            continue;
        }
        needs.extend(reader.choose(item, NEEDS));
    }
    for &(what, need) in NEEDS {
        let asked = needs.iter().filter(|&&other| other == need).count();
        // Never overflows: a file holds fewer items than it has bytes, and those are fewer than a million.
        let asked = asked as u32;
        let there = count_of(equipment, need);
        // Machines may be counted in a file that could not be read; its fault is noted already.
        if asked > there && !reader.file_lost {
            let kind = FaultKind::NeedsMoreThanThere { step: step.into(), what, asked, there };
            reader.faults.add(entry.file, entry.key_at, kind);
        }
    }
    needs
}

fn count_of(equipment: &Equipment, need: Need) -> u32 {
    match need {
        Need::Burner => equipment.burners,
        Need::Oven => equipment.ovens,
        Need::Sink => equipment.sinks,
        Need::Processor => equipment.processors,
        Need::Blender => equipment.blenders,
        Need::Pot => equipment.pots,
    }
}
