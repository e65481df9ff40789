//! Acts about one thing, in the order in which they happened, and the state they add up to.
//!
//! Entries arrive late. A thread keeps its acts sorted by when they happened; an act that comes last is simply folded on,
//! any other makes this one thread be folded again from its beginning. So the state is always the fold of the final
//! order, whatever the order of arrival, and the usual case costs one step.

use std::collections::BTreeMap;

use jiff::Timestamp;

use crate::Id;
use crate::record::{Change, Standing};

/// A state that acts add up to.
pub(crate) trait Fold: Default {
    /// Adds the act that happened next.
    fn step(&mut self, act: &Standing);
}

/// The place of an act in a thread. Of two acts of one instant the one with the smaller id comes first.
type Place = (Timestamp, Id);

fn place(act: &Standing) -> Place {
    (act.entry.happened_at.at(), act.id)
}

/// The acts about one thing.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(crate) struct Thread<S> {
    acts: BTreeMap<Place, Standing>,
    state: S,
}

impl<S: Fold> Thread<S> {
    fn remove(&mut self, act: &Standing) {
        if self.acts.remove(&place(act)).is_some() {
            self.fold_again();
        }
    }

    fn add(&mut self, act: &Standing) {
        let here = place(act);
        let is_last = self.acts.last_key_value().is_none_or(|(last, _)| *last < here);
        self.acts.insert(here, act.clone());
        if is_last {
            self.state.step(act);
        } else {
            self.fold_again();
        }
    }

    fn fold_again(&mut self) {
        self.state = S::default();
        for act in self.acts.values() {
            self.state.step(act);
        }
    }
}

/// Threads by what they are about.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Threads<K: Ord, S>(BTreeMap<K, Thread<S>>);

impl<K: Ord, S> Default for Threads<K, S> {
    fn default() -> Self {
        Self(BTreeMap::new())
    }
}

impl<K: Ord + Clone, S: Fold> Threads<K, S> {
    /// Carries out a change and names the threads it touched: one, or two where a correction moved an act.
    pub(crate) fn change(&mut self, change: &Change, about: impl Fn(&Standing) -> Option<K>) -> Vec<K> {
        let mut touched = Vec::new();
        if let Some((before, key)) = change.before.as_ref().and_then(|act| Some((act, about(act)?))) {
            if let Some(thread) = self.0.get_mut(&key) {
                thread.remove(before);
                if thread.acts.is_empty() {
                    self.0.remove(&key);
                }
            }
            touched.push(key);
        }
        if let Some((after, key)) = change.after.as_ref().and_then(|act| Some((act, about(act)?))) {
            self.0.entry(key.clone()).or_insert_with(Thread::<S>::fresh).add(after);
            if !touched.contains(&key) {
                touched.push(key);
            }
        }
        touched
    }

    pub(crate) fn find(&self, key: &K) -> Option<&S> {
        self.0.get(key).map(|thread| &thread.state)
    }

    pub(crate) fn acts<'a>(&'a self, key: &K) -> impl Iterator<Item = &'a Standing> + use<'a, K, S> {
        self.0.get(key).into_iter().flat_map(|thread| thread.acts.values())
    }

    pub(crate) fn iter(&self) -> impl Iterator<Item = (&K, &S)> {
        self.0.iter().map(|(key, thread)| (key, &thread.state))
    }
}

impl<S: Fold> Thread<S> {
    fn fresh() -> Self {
        Self { acts: BTreeMap::new(), state: S::default() }
    }
}
