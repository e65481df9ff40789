//! Daily backups: seven days, five weeks, twelve months.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use jiff::civil::Date;

use super::SqliteStore;
use super::backup::{BackupError, file_fault};

/// How many of the last days keep their backup.
const DAYS: usize = 7;
/// How many of the last weeks keep their last backup.
const WEEKS: usize = 5;
/// How many of the last months keep their last backup.
const MONTHS: usize = 12;

const BEFORE: &str = "book-";
const AFTER: &str = ".backup";

/// Makes today's backup in a folder unless there is one, then removes those whose turn is over. Gives the new file.
///
/// # Errors
///
/// If the backup cannot be made. Nothing is removed then.
pub fn rotate_backups(
    book: &SqliteStore,
    folder: &Path,
    today: Date,
) -> Result<Option<PathBuf>, BackupError> {
    let path = folder.join(format!("{BEFORE}{today}{AFTER}"));
    if path.exists() {
        return Ok(None);
    }
    book.back_up(&path)?;
    let there: BTreeSet<Date> = fs::read_dir(folder)
        .map_err(|source| file_fault(folder, source))?
        .filter_map(|entry| read_name(&entry.ok()?.file_name().into_string().ok()?))
        .collect();
    for date in there.difference(&choose_kept(&there)) {
        let old = folder.join(format!("{BEFORE}{date}{AFTER}"));
        fs::remove_file(&old).map_err(|source| file_fault(&old, source))?;
    }
    Ok(Some(path))
}

/// The date in the name of a backup; `None` for any other file.
fn read_name(name: &str) -> Option<Date> {
    let date: Date = name.strip_prefix(BEFORE)?.strip_suffix(AFTER)?.parse().ok()?;
    (name == format!("{BEFORE}{date}{AFTER}")).then_some(date)
}

/// Which of the backups stay: counted by the backups there are, not by the calendar, so that a book left alone for a
/// year keeps what it has.
fn choose_kept(there: &BTreeSet<Date>) -> BTreeSet<Date> {
    let mut kept: BTreeSet<Date> = there.iter().rev().take(DAYS).copied().collect();
    let mut weeks = BTreeSet::new();
    let mut months = BTreeSet::new();
    for date in there.iter().rev() {
        let week = date.iso_week_date();
        if weeks.len() < WEEKS && weeks.insert((week.year(), week.week())) {
            kept.insert(*date);
        }
        if months.len() < MONTHS && months.insert((date.year(), date.month())) {
            kept.insert(*date);
        }
    }
    kept
}

#[cfg(test)]
mod tests {
    use jiff::ToSpan as _;

    use super::*;

    #[test]
    fn two_years_of_days_leave_seven_days_five_weeks_twelve_months() {
        let mut there = BTreeSet::new();
        let mut day: Date = "2024-11-25".parse().unwrap();
        let last: Date = "2026-11-25".parse().unwrap();
        while day <= last {
            there.insert(day);
            there = choose_kept(&there);
            day = day.checked_add(1.day()).unwrap();
        }
        let kept: Vec<String> = there.iter().rev().map(ToString::to_string).collect();
        insta::assert_snapshot!(kept.join(" "), @"2026-11-25 2026-11-24 2026-11-23 2026-11-22 2026-11-21 2026-11-20 2026-11-19 2026-11-15 2026-11-08 2026-11-01 2026-10-31 2026-09-30 2026-08-31 2026-07-31 2026-06-30 2026-05-31 2026-04-30 2026-03-31 2026-02-28 2026-01-31 2025-12-31");
    }

    #[test]
    fn a_book_left_alone_keeps_what_it_has() {
        let there: BTreeSet<Date> =
            ["2020-01-01", "2020-01-02", "2026-11-25"].map(|d| d.parse().unwrap()).into();
        assert_eq!(choose_kept(&there), there);
    }

    #[test]
    fn only_our_own_names_are_read() {
        assert_eq!(read_name("book-2026-11-25.backup"), Some("2026-11-25".parse().unwrap()));
        for other in [
            "book-2026-11-25.backup.part",
            "my-book-2026-11-25.backup",
            "book-20261125.backup",
            "book-.backup",
        ] {
            assert_eq!(read_name(other), None, "{other}");
        }
    }
}
