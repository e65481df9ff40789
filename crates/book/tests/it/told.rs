//! Entries and folders for the tests, short to write.

use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU32, Ordering};

use book::act::{Act, Noted};
use book::{Entry, Id, Moment, Written};

/// The id of a number: grows with it.
pub(crate) fn id(number: u32) -> Id {
    format!("{:08x}-{:04x}-7000-8000-000000000000", number >> 16, number & 0xffff).parse().unwrap()
}

/// An act so many minutes after a September midnight.
pub(crate) fn entry(number: u32, minute: i64, act: impl Into<Act>) -> Entry {
    let midnight: jiff::Timestamp = "2026-09-01T04:00:00Z".parse().unwrap();
    let at = midnight + jiff::SignedDuration::from_mins(minute);
    Entry {
        id: id(number),
        happened_at: Moment::utc(at),
        arrived_at: at + jiff::SignedDuration::from_secs(1),
        who: "Wilma".into(),
        device: "telephone".into(),
        with: None,
        follows: None,
        why: None,
        act: act.into(),
    }
}

pub(crate) fn note(number: u32, words: &str) -> Written {
    Written::of(entry(number, i64::from(number), Noted { about: None, words: words.into() })).unwrap()
}

/// A folder of its own that goes when the test ends.
#[derive(Debug)]
pub(crate) struct Folder(PathBuf);

impl Folder {
    pub(crate) fn new() -> Self {
        static COUNT: AtomicU32 = AtomicU32::new(0);
        let count = COUNT.fetch_add(1, Ordering::Relaxed);
        let path = std::env::temp_dir().join(format!("stillroom-book-{}-{count}", std::process::id()));
        std::fs::create_dir_all(&path).unwrap();
        Self(path)
    }

    pub(crate) fn path(&self) -> &Path {
        &self.0
    }

    pub(crate) fn file(&self, name: &str) -> PathBuf {
        self.0.join(name)
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        let _ = std::fs::remove_dir_all(&self.0);
    }
}
