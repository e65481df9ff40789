//! The people of the day: hours, breaks, careful work.

use crate::day::{ClockTime, Person, Span};

use super::fault::FaultKind;
use super::reader::{Files, Names, Reader};
use super::section::{Entry, Section, Words};

const KEYS: &[&str] = &["name", "hours", "breaks", "careful_until", "careful"];

/// The hours of someone whose hours are not given.
const USUAL_HOURS: Span = Span { from: ClockTime(9 * 60), to: ClockTime(17 * 60) };
/// The break of someone whose breaks are not given.
const USUAL_LUNCH: Span = Span { from: ClockTime(12 * 60 + 30), to: ClockTime(13 * 60) };

/// The people of the day's file, else of the house's, else one person of ours.
pub(super) fn read_people(files: Files<'_>, reader: &mut Reader<'_, '_>) -> Vec<Person> {
    let mut named = false;
    let people = reader.read(files, "person", |reader, entry| {
        named = true;
        let mut names = Names::of("[[person]]");
        let tables = entry.sections("[[person]]", &mut reader.faults);
        Some(
            tables.into_iter().filter_map(|table| read_person(table, &mut names, reader)).collect::<Vec<_>>(),
        )
    });
    if named {
        return people.unwrap_or_default();
    }
    reader.fill_in("one cook from 9:00 to 17:00 with a break from 12:30 to 13:00, since no person is named");
    vec![Person {
        name: "the cook".into(),
        hours: vec![USUAL_HOURS],
        breaks: vec![USUAL_LUNCH],
        careful_until: None,
        may_do_careful: true,
    }]
}

fn read_person(table: Section<'_>, names: &mut Names, reader: &mut Reader<'_, '_>) -> Option<Person> {
    table.check_keys(KEYS, &mut reader.faults);
    let entry = table.require("name", "name = \"Ada\"", &mut reader.faults);
    let name = entry.and_then(|entry| {
        let name = reader.name(entry)?;
        names.check(&name, entry, &mut reader.faults);
        Some(name)
    });
    let called = name.clone().unwrap_or_else(|| "a person".into());
    let hours = read_hours(table, &called, reader);
    let breaks = read_breaks(table, &called, &hours, reader);
    let careful_until = table.find("careful_until").and_then(|entry| {
        let words = entry.words("a time of day in quotes such as \"16:00\"", &mut reader.faults)?;
        reader.clock(words)
    });
    let may_do_careful =
        table.find("careful").and_then(|entry| entry.flag(&mut reader.faults)).unwrap_or(true);
    Some(Person { name: name?, hours, breaks, careful_until, may_do_careful })
}

fn read_hours(table: Section<'_>, person: &str, reader: &mut Reader<'_, '_>) -> Vec<Span> {
    let Some(entry) = table.find("hours") else {
        reader.fill_in(format!("9:00 to 17:00 for {person}, whose hours are not given"));
        return vec![USUAL_HOURS];
    };
    let items = entry.list();
    if items.is_empty() {
        reader.faults.add(entry.file, entry.key_at, FaultKind::NoHours { person: person.into() });
    }
    read_spans(&items, "hours", person, reader)
}

fn read_breaks(table: Section<'_>, person: &str, hours: &[Span], reader: &mut Reader<'_, '_>) -> Vec<Span> {
    let Some(entry) = table.find("breaks") else {
        let through_noon = |span: &Span| span.from < USUAL_LUNCH.from && USUAL_LUNCH.to < span.to;
        if !hours.iter().any(through_noon) {
            return Vec::new();
        }
        reader.fill_in(format!("a break from 12:30 to 13:00 for {person}, whose breaks are not given"));
        return vec![USUAL_LUNCH];
    };
    let breaks = read_spans(&entry.list(), "breaks", person, reader);
    for pause in &breaks {
        // Hours that could not be read hold no break, and their own fault is noted already.
        let inside =
            hours.is_empty() || hours.iter().any(|span| span.from <= pause.from && pause.to <= span.to);
        if !inside {
            let kind = FaultKind::BreakOutside { person: person.into(), stretch: write_span(*pause) };
            reader.faults.add(entry.file, entry.key_at, kind);
        }
    }
    breaks
}

/// Reads stretches of hours, sorts them and notes those that overlap.
fn read_spans(
    items: &[Entry<'_>],
    key: &'static str,
    person: &str,
    reader: &mut Reader<'_, '_>,
) -> Vec<Span> {
    let mut spans: Vec<Span> = items
        .iter()
        .filter_map(|item| {
            let words = item.words("hours in quotes such as \"8:00-12:30\"", &mut reader.faults)?;
            reader.span(words)
        })
        .collect();
    spans.sort_unstable();
    for pair in spans.windows(2) {
        if pair[1].from < pair[0].to {
            let kind = FaultKind::HoursOverlap {
                key,
                person: person.into(),
                first: write_span(pair[0]),
                second: write_span(pair[1]),
            };
            reader.faults.add(items[0].file, items[0].key_at, kind);
        }
    }
    spans
}

impl Reader<'_, '_> {
    /// Reads a time of day.
    pub(super) fn clock(&mut self, words: Words<'_>) -> Option<ClockTime> {
        self.understand(words, measure::read_clock).map(|minutes| ClockTime(minutes.0))
    }

    /// Reads two times of day with a dash or `to` between.
    fn span(&mut self, words: Words<'_>) -> Option<Span> {
        let halves = ["–", "—", " to ", "-"].iter().find_map(|between| words.text.split_once(between));
        let Some((from, to)) = halves else {
            let kind = FaultKind::UnreadableHours { key: words.key.into(), text: words.text.into() };
            self.faults.add(words.file, words.at, kind);
            return None;
        };
        let to_at = words.at + (words.text.len() - to.len());
        let from = self.clock(Words { text: from, ..words });
        let to = self.clock(Words { text: to, at: to_at, ..words });
        let (from, to) = (from?, to?);
        if to <= from {
            let kind = FaultKind::HoursBackwards {
                key: words.key.into(),
                from: write_clock(from),
                to: write_clock(to),
            };
            self.faults.add(words.file, words.at, kind);
            return None;
        }
        Some(Span { from, to })
    }
}

/// A time of day as people write it.
pub(super) fn write_clock(time: ClockTime) -> String {
    format!("{}:{:02}", time.0 / 60, time.0 % 60)
}

fn write_span(span: Span) -> String {
    format!("{}-{}", write_clock(span.from), write_clock(span.to))
}
