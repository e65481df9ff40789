//! Snapshots: the entries in a short form, so that a book opens without reading every text again.
//!
//! A snapshot holds entries and no view: views are always folded by the code that is running, so an old snapshot can
//! make a book slow and never wrong. It is thrown away when its format is another, when its bytes are not the ones that
//! were written, or when the journal's chain does not pass through it.

use std::sync::Arc;

use crate::entry::Entry;
use crate::store::{Head, StoredSnapshot};
use crate::view::Views;

/// The number of the short form. It grows whenever an act gains a field; the test below pins the bytes of each.
const FORMAT: u8 = 1;

/// Writes what is needed to draw the views again.
pub(crate) fn write_snapshot(views: &Views, head: Head) -> Option<StoredSnapshot> {
    let entries: Vec<&Entry> = views.record.entries().values().map(|entry| &**entry).collect();
    let bytes = postcard::to_extend(&entries, vec![FORMAT]).ok()?;
    Some(StoredSnapshot { head, bytes })
}

/// Draws the views of a snapshot; `None` when it is not one of this format.
pub(crate) fn read_snapshot(snapshot: &StoredSnapshot) -> Option<Views> {
    let (format, bytes) = snapshot.bytes.split_first()?;
    if *format != FORMAT {
        return None;
    }
    let (entries, rest): (Vec<Entry>, _) = postcard::take_from_bytes(bytes).ok()?;
    let is_whole = rest.is_empty() && entries.len() as u64 == snapshot.head.position.0;
    is_whole.then(|| Views::rebuild(entries.into_iter().map(Arc::new)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chain::Link;
    use crate::store::Position;
    use crate::testing::{note, one_of_each, strike};

    fn views() -> Views {
        let mut struck = strike(2);
        struck.follows = Some(crate::testing::id(1));
        Views::rebuild([note(1, "nine"), struck, note(3, "ten")].map(Arc::new))
    }

    fn head(position: u64) -> Head {
        Head { position: Position(position), link: Link::FIRST }
    }

    #[test]
    fn a_snapshot_gives_the_views_back() {
        let snapshot = write_snapshot(&views(), head(3)).unwrap();
        assert_eq!(read_snapshot(&snapshot), Some(views()));
    }

    #[test]
    fn what_is_no_whole_snapshot_is_thrown_away() {
        let good = write_snapshot(&views(), head(3)).unwrap();
        let mut other = good.clone();
        other.bytes[0] += 1;
        assert_eq!(read_snapshot(&other), None, "another format");
        let mut short = good.clone();
        short.bytes.pop();
        assert_eq!(read_snapshot(&short), None, "cut off");
        let mut long = good.clone();
        long.bytes.push(0);
        assert_eq!(read_snapshot(&long), None, "too long");
        assert_eq!(read_snapshot(&StoredSnapshot { head: head(4), ..good }), None, "an entry is missing");
        assert_eq!(read_snapshot(&StoredSnapshot { head: head(0), bytes: vec![] }), None, "empty");
    }

    /// Pinned: by this program. When it changes, so does [`FORMAT`].
    #[test]
    fn the_short_form_changes_only_with_its_number() {
        let entries: Vec<Entry> = one_of_each();
        let bytes = postcard::to_allocvec(&entries).unwrap();
        assert_eq!(format!("{FORMAT} {}", &Link::over(&bytes).to_string()[..16]), "1 dd50a8c6dda7b1d1");
        assert_eq!(postcard::from_bytes::<Vec<Entry>>(&bytes).unwrap(), entries);
    }
}
