//! What stands: entries with their corrections and strikes resolved, whatever order they came in.
//!
//! Problem. An entry may be corrected or struck by a later one, the correction may arrive before what it corrects, and
//! two people may correct the same entry without knowing of each other. Every view needs the one answer: which acts
//! stand, and with which words.
//!
//! Approach. Entries that follow one another form a tree. An entry is struck when a strike that is not itself struck
//! follows it. From the root downward: a struck entry counts for nothing, and nothing that follows it counts either;
//! otherwise the correction with the greatest id that is not struck stands in its place, and is asked in turn. The answer
//! is a function of the set of entries and not of their order, which is all that merging and undoing need.
//!
//! Each arrival is told as a [`Change`]: the act that stood before and the one that stands now. A view that can take an
//! act out as well as in therefore never depends on the order of arrival.
//!
//! Not handled. Entries that follow one another in a ring have no root and count for nothing; only a damaged or forged
//! file holds one, and [`Record::find_loose`] names them.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use crate::Id;
use crate::act::Act;
use crate::entry::Entry;

/// An act that stands: under the name of its first entry, with the words of its last correction.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Standing {
    /// The id of the first entry: what others refer to.
    pub id: Id,
    /// The entry whose words count.
    pub entry: Arc<Entry>,
}

/// What the arrival of one entry changed.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Change {
    /// The act that stood, and no longer does in these words.
    pub before: Option<Standing>,
    /// The act that stands now.
    pub after: Option<Standing>,
}

impl Change {
    /// Whether nothing changed.
    #[must_use]
    pub fn is_none(&self) -> bool {
        self.before == self.after
    }
}

/// All entries, and what follows what.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Record {
    entries: BTreeMap<Id, Arc<Entry>>,
    /// The entries that follow an entry, whether it has arrived or not.
    followers: BTreeMap<Id, BTreeSet<Id>>,
}

impl Record {
    /// Takes an entry in and says what it changed. An entry that is there already changes nothing.
    pub fn take(&mut self, entry: Arc<Entry>) -> Change {
        let id = entry.id;
        if self.entries.contains_key(&id) {
            return Change::default();
        }
        let follows = entry.follows;
        if let Some(followed) = follows {
            self.followers.entry(followed).or_default().insert(id);
        }
        if follows.is_none() && !self.followers.contains_key(&id) {
            // Nothing follows it yet and it follows nothing: by far the most.
            self.entries.insert(id, Arc::clone(&entry));
            let stands = !matches!(entry.act, Act::Struck(_));
            return Change { before: None, after: stands.then_some(Standing { id, entry }) };
        }
        // The root is the same before and after unless the entry closes a gap, and then nothing stood above the gap.
        let before =
            follows.and_then(|followed| self.find_root(followed)).and_then(|root| self.find_standing(root));
        self.entries.insert(id, entry);
        let after = self.find_root(id).and_then(|root| self.find_standing(root));
        if before == after { Change::default() } else { Change { before, after } }
    }

    /// Everything that has arrived, by id.
    #[must_use]
    pub fn entries(&self) -> &BTreeMap<Id, Arc<Entry>> {
        &self.entries
    }

    /// The entry of this id.
    #[must_use]
    pub fn find(&self, id: Id) -> Option<&Arc<Entry>> {
        self.entries.get(&id)
    }

    /// The first entry of what this one belongs to: itself, unless it corrects or strikes.
    #[must_use]
    pub fn find_root(&self, id: Id) -> Option<Id> {
        let mut at = id;
        // No path is longer than the entries there are: a longer one runs in a ring.
        for _ in 0..=self.entries.len() {
            match self.entries.get(&at)?.follows {
                Some(followed) => at = followed,
                None => return Some(at),
            }
        }
        None
    }

    /// The act that stands under the name of a first entry; `None` when it was struck or is not there.
    #[must_use]
    pub fn find_standing(&self, root: Id) -> Option<Standing> {
        let mut at = self.entries.get(&root)?;
        if at.follows.is_some() || matches!(at.act, Act::Struck(_)) || self.is_struck(root) {
            return None;
        }
        // Ends: corrections hang below a root, so no id comes twice.
        while let Some(next) = self.find_correction(at.id) {
            at = next;
        }
        Some(Standing { id: root, entry: Arc::clone(at) })
    }

    /// An entry and everything that follows it, corrections and strikes alike, in the order in which they arrived.
    #[must_use]
    pub fn find_history(&self, root: Id) -> Vec<&Arc<Entry>> {
        let mut seen = BTreeSet::new();
        let mut waiting = vec![root];
        let mut found = Vec::new();
        while let Some(id) = waiting.pop() {
            if seen.insert(id) {
                found.extend(self.entries.get(&id));
                waiting.extend(self.followers.get(&id).into_iter().flatten());
            }
        }
        found.sort_by_key(|entry| (entry.arrived_at, entry.id));
        found
    }

    /// The entry to strike when the last word on an act is taken back: its last correction, or itself.
    #[must_use]
    pub fn find_last_word(&self, root: Id) -> Option<Id> {
        self.find_standing(root).map(|standing| standing.entry.id)
    }

    /// Entries that follow something that has not arrived, or one another in a ring.
    #[must_use]
    pub fn find_loose(&self) -> Vec<Id> {
        self.entries
            .values()
            .filter(|entry| entry.follows.is_some() && self.find_root(entry.id).is_none())
            .map(|entry| entry.id)
            .collect()
    }

    /// The correction that stands in place of an entry.
    fn find_correction(&self, id: Id) -> Option<&Arc<Entry>> {
        self.followers
            .get(&id)?
            .iter()
            .rev()
            .filter_map(|follower| self.entries.get(follower))
            .find(|entry| !matches!(entry.act, Act::Struck(_)) && !self.is_struck(entry.id))
    }

    /// Whether a strike follows it that is not itself struck.
    fn is_struck(&self, id: Id) -> bool {
        // Strikes of strikes are listed from the top and judged from the bottom, so that no depth exhausts the stack.
        let mut strikes: Vec<Id> = Vec::new();
        let mut seen = BTreeSet::from([id]);
        let mut from = id;
        let mut next = 0;
        loop {
            for follower in self.followers.get(&from).into_iter().flatten() {
                let strikes_it = self.entries.get(follower).is_some_and(|e| matches!(e.act, Act::Struck(_)));
                if strikes_it && seen.insert(*follower) {
                    strikes.push(*follower);
                }
            }
            match strikes.get(next) {
                Some(strike) => from = *strike,
                None => break,
            }
            next += 1;
        }
        let mut struck: BTreeSet<Id> = BTreeSet::new();
        for strike in strikes.iter().rev() {
            if !struck.contains(strike) {
                struck.extend(self.entries.get(strike).and_then(|entry| entry.follows));
            }
        }
        struck.contains(&id)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::{id, note, strike};

    fn entry(mut entry: Entry, follows: Option<u16>) -> Arc<Entry> {
        entry.follows = follows.map(id);
        Arc::new(entry)
    }

    /// Takes entries in every order of arrival and checks that the same words stand each time.
    fn check(entries: &[Arc<Entry>], expected: Option<&str>) {
        for order in orders(entries.len()) {
            let mut record = Record::default();
            let mut standing = None;
            for index in &order {
                let change = record.take(Arc::clone(&entries[*index]));
                assert_eq!(record.take(Arc::clone(&entries[*index])), Change::default(), "twice is once");
                if !change.is_none() {
                    assert_eq!(change.before, standing, "{order:?}");
                    standing = change.after;
                }
            }
            assert_eq!(standing, record.find_standing(id(1)), "{order:?}");
            let words = standing.map(|standing| match &standing.entry.act {
                Act::Noted(noted) => noted.words.to_string(),
                other => panic!("{other:?} stands"),
            });
            assert_eq!(words.as_deref(), expected, "{order:?}");
        }
    }

    fn orders(count: usize) -> Vec<Vec<usize>> {
        let mut all = vec![vec![]];
        for index in 0..count {
            all = all
                .into_iter()
                .flat_map(|order: Vec<usize>| {
                    (0..=order.len()).map(move |at| {
                        let mut longer = order.clone();
                        longer.insert(at, index);
                        longer
                    })
                })
                .collect();
        }
        all
    }

    #[test]
    fn an_entry_stands_by_itself() {
        check(&[entry(note(1, "nine jars"), None)], Some("nine jars"));
    }

    #[test]
    fn a_correction_stands_in_its_place() {
        check(&[entry(note(1, "nine"), None), entry(note(2, "eight"), Some(1))], Some("eight"));
    }

    #[test]
    fn the_last_of_a_line_of_corrections_stands_though_the_clock_was_set_back() {
        check(
            &[
                entry(note(1, "nine"), None),
                entry(note(9, "eight"), Some(1)),
                entry(note(2, "seven"), Some(9)),
            ],
            Some("seven"),
        );
    }

    #[test]
    fn of_two_corrections_side_by_side_one_stands_and_always_the_same() {
        check(
            &[entry(note(1, "nine"), None), entry(note(2, "eight"), Some(1)), entry(note(3, "ten"), Some(1))],
            Some("ten"),
        );
    }

    #[test]
    fn a_struck_entry_is_gone_with_its_corrections() {
        check(
            &[entry(note(1, "nine"), None), entry(note(2, "eight"), Some(1)), entry(strike(3), Some(1))],
            None,
        );
    }

    #[test]
    fn a_struck_correction_leaves_the_first_words() {
        check(
            &[entry(note(1, "nine"), None), entry(note(2, "eight"), Some(1)), entry(strike(3), Some(2))],
            Some("nine"),
        );
    }

    #[test]
    fn a_struck_strike_counts_for_nothing() {
        check(
            &[entry(note(1, "nine"), None), entry(strike(2), Some(1)), entry(strike(3), Some(2))],
            Some("nine"),
        );
        check(
            &[
                entry(note(1, "nine"), None),
                entry(strike(2), Some(1)),
                entry(strike(3), Some(2)),
                entry(strike(4), Some(3)),
            ],
            None,
        );
    }

    #[test]
    fn of_two_strikes_one_taken_back_leaves_the_other() {
        check(
            &[
                entry(note(1, "nine"), None),
                entry(strike(2), Some(1)),
                entry(strike(3), Some(1)),
                entry(strike(4), Some(3)),
            ],
            None,
        );
    }

    #[test]
    fn a_ring_of_entries_stands_nowhere_and_is_named() {
        let mut record = Record::default();
        for ringed in [entry(note(1, "a"), Some(2)), entry(note(2, "b"), Some(1)), entry(strike(3), Some(3))]
        {
            assert!(record.take(ringed).after.is_none());
        }
        assert_eq!(record.find_loose(), [id(1), id(2), id(3)]);
        assert_eq!(record.find_standing(id(1)), None);
    }

    #[test]
    fn a_long_line_of_strikes_does_not_exhaust_the_stack() {
        let mut record = Record::default();
        let mut parts = vec![entry(note(1, "nine"), None)];
        parts.extend((2..20_001).map(|number| entry(strike(number), Some(number - 1))));
        // From the far end, so that the line is judged once.
        for part in parts.into_iter().rev() {
            record.take(part);
        }
        // 19,999 strikes: the last counts, so every second one does not, and the first counts again.
        assert_eq!(record.find_standing(id(1)), None);
    }

    #[test]
    fn history_tells_everything_in_the_order_it_arrived() {
        let mut record = Record::default();
        for part in
            [entry(note(1, "nine"), None), entry(note(2, "eight"), Some(1)), entry(strike(3), Some(2))]
        {
            record.take(part);
        }
        let ids: Vec<Id> = record.find_history(id(1)).iter().map(|entry| entry.id).collect();
        assert_eq!(ids, [id(1), id(2), id(3)]);
        assert_eq!(record.find_last_word(id(1)), Some(id(1)));
    }
}
