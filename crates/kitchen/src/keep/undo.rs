//! Taking back, and what was ever said.

use std::collections::BTreeSet;
use std::sync::Arc;

use book::act::{Act, Struck};
use book::view::Views;
use book::{Entry, Id, Moment, Store};
use serde::Serialize;

use super::error::KeepError;
use super::find::{label_of, require_lot};
use super::{IdMaker, Keeper, Saying};

/// What was taken back.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct TakenBack {
    /// The acts in words.
    pub acts: Vec<String>,
}

/// One entry of a history.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct HistoryLine {
    /// Its id.
    pub id: String,
    /// When it happened.
    pub happened: String,
    /// Who.
    pub who: String,
    /// What, in words.
    pub says: String,
    /// Whether it counts: it was neither struck nor corrected.
    pub stands: bool,
    /// Why it corrects or strikes.
    pub why: Option<String>,
}

impl<S: Store, I: IdMaker> Keeper<S, I> {
    /// Takes back an act: the last of whoever asks, or the one whose entry is named. A corrected act falls back to the
    /// words before its last correction.
    ///
    /// # Errors
    ///
    /// If there is nothing to take back, or something was built upon it.
    pub fn take_back(
        &mut self,
        now: &Moment,
        which: Option<&str>,
        why: Option<&str>,
    ) -> Result<TakenBack, KeepError> {
        let who = self.who.clone();
        let (_, taken) = self.say(now, |views, _| {
            let entry = match which {
                Some(typed) => find_entry(views, typed),
                None => find_last_of(views, &who),
            };
            let entry = entry.ok_or_else(|| KeepError::NothingToTakeBack { who: who.to_string() })?;
            let group = find_group(views, &entry);
            require_adds_up(views, &group)?;
            let acts = group.iter().map(|entry| say_entry(views, entry)).collect();
            let strikes = group.iter().map(|entry| Saying {
                act: Struck {}.into(),
                follows: Some(entry.id),
                why: why.map(Into::into),
            });
            Ok((strikes.collect(), TakenBack { acts }))
        })?;
        Ok(taken)
    }

    /// Everything that was ever said about a lot, or about one entry, as it arrived.
    ///
    /// # Errors
    ///
    /// If there is no such lot or entry.
    pub fn tell_history(&self, now: &Moment, typed: &str) -> Result<Vec<HistoryLine>, KeepError> {
        let views = self.views();
        let named = find_entry(views, typed).and_then(|entry| views.record.find_root(entry.id));
        let lot = match named.map(|root| views.record.find(root).and_then(|first| first.act.lot(root))) {
            Some(lot) => lot,
            None => Some(require_lot(views, typed, now.date())?),
        };
        let about = |entry: &&Arc<Entry>| lot.is_some() && entry.act.lot(entry.id) == lot;
        let roots: BTreeSet<Id> = views
            .record
            .entries()
            .values()
            .filter(about)
            .filter_map(|entry| views.record.find_root(entry.id))
            .chain(named)
            .collect();
        let mut entries: Vec<&Arc<Entry>> =
            roots.iter().flat_map(|root| views.record.find_history(*root)).collect();
        entries.sort_by_key(|entry| (entry.arrived_at, entry.id));
        Ok(entries.into_iter().map(|entry| say_line(views, entry)).collect())
    }
}

fn find_entry(views: &Views, typed: &str) -> Option<Arc<Entry>> {
    views.record.find(typed.trim().parse().ok()?).cloned()
}

/// The last act of someone that still counts.
fn find_last_of(views: &Views, who: &str) -> Option<Arc<Entry>> {
    let entries = views.record.entries().values();
    let counts = |entry: &&Arc<Entry>| *entry.who == *who && stands(views, entry) && entry.with.is_none();
    entries.filter(counts).max_by_key(|entry| (entry.arrived_at, entry.id)).cloned()
}

fn stands(views: &Views, entry: &Entry) -> bool {
    let standing = views.record.find_root(entry.id).and_then(|root| views.record.find_standing(root));
    standing.is_some_and(|standing| standing.entry.id == entry.id)
}

/// The entries of one act that still count. What a shelf or bowl is called stays, unless that was the act.
fn find_group(views: &Views, entry: &Entry) -> Vec<Arc<Entry>> {
    let first = entry.with.unwrap_or(entry.id);
    let is_in = |other: &&Arc<Entry>| other.id == first || other.with == Some(first);
    let all: Vec<Arc<Entry>> = views
        .record
        .entries()
        .range(first..)
        .map(|(_, other)| other)
        .filter(is_in)
        .filter(|e| stands(views, e))
        .cloned()
        .collect();
    let acts: Vec<Arc<Entry>> =
        all.iter().filter(|entry| !matches!(entry.act, Act::HouseSet(_))).cloned().collect();
    if acts.is_empty() { all } else { acts }
}

/// That without these entries no place holds fewer than none.
fn require_adds_up(views: &Views, group: &[Arc<Entry>]) -> Result<(), KeepError> {
    let lots: BTreeSet<Id> =
        group.iter().filter_map(|entry| entry.act.lot(views.record.find_root(entry.id)?)).collect();
    let strikes: Vec<Entry> = group.iter().map(|struck| follow_on_trial(struck, Struck {}.into())).collect();
    lots.into_iter().try_for_each(|lot| require_adds_up_with(views, lot, &strikes))
}

/// An entry that follows another, for a trial only: nothing of it is written.
pub(super) fn follow_on_trial(followed: &Entry, act: Act) -> Entry {
    Entry {
        // Any id that is not in the book.
        id: Id::make(followed.arrived_at, fold_bytes(followed.id)),
        follows: Some(followed.id),
        act,
        ..followed.clone()
    }
}

/// That with these further entries no place of a lot holds fewer than none.
pub(super) fn require_adds_up_with(views: &Views, id: Id, further: &[Entry]) -> Result<(), KeepError> {
    let Some(lot) = views.lots.find(id) else { return Ok(()) };
    let about = |entry: &&Arc<Entry>| {
        let root = views.record.find_root(entry.id).and_then(|root| views.record.find(root));
        root.is_some_and(|first| first.act.lot(first.id) == Some(id)) || entry.act.lot(entry.id) == Some(id)
    };
    let known = views.record.entries().values().filter(about).cloned();
    let trial = Views::rebuild(known.chain(further.iter().cloned().map(Arc::new)));
    let count = |lot: &book::view::Lot| lot.doubts().map(|(_, number)| number).sum::<i64>();
    if trial.lots.find(id).map_or(0, count) > count(lot) {
        return Err(KeepError::BuiltUpon { label: label_of(lot).to_owned() });
    }
    Ok(())
}

/// Ten bytes unlike those of an id that was made by chance.
fn fold_bytes(id: Id) -> [u8; 10] {
    let mut bytes = [0; 10];
    for (byte, from) in bytes.iter_mut().zip(&id.as_bytes()[6..]) {
        *byte = !from;
    }
    bytes
}

fn say_line(views: &Views, entry: &Entry) -> HistoryLine {
    HistoryLine {
        id: entry.id.to_string(),
        happened: entry.happened_at.wall().strftime("%Y-%m-%d %H:%M").to_string(),
        who: entry.who.to_string(),
        says: say_entry(views, entry),
        stands: stands(views, entry),
        why: entry.why.as_ref().map(ToString::to_string),
    }
}

fn say_entry(views: &Views, entry: &Entry) -> String {
    let said = match &entry.act {
        Act::Struck(_) => {
            let struck = entry.follows.and_then(|id| views.record.find(id));
            let what = struck
                .map_or_else(|| "an entry that is not here".to_owned(), |struck| say_entry(views, struck));
            return format!("took back: {what}");
        }
        Act::BasketTakenIn(taken) => Some(format!("took in {}", taken.name)),
        Act::WorkingBegun(begun) => Some(format!("began {}", begun.name)),
        other => super::lots::say_act(other),
    };
    let said = said.unwrap_or_else(|| entry.act.kind().replace('-', " "));
    if entry.follows.is_some() { format!("corrected to: {said}") } else { said }
}
