//! Keeping the book: one function for each thing a person writes down or asks.
//!
//! Pure: the store, the moment and the maker of ids are handed in. What is written is decided by what the views show; when
//! someone else has written meanwhile, the book is read again and it is decided anew.

mod answer;
mod baskets;
mod demo;
mod draw;
mod error;
mod find;
mod line;
mod loads;
mod lots;
mod put_up;
mod shelves;
mod tell;
mod top_up;
mod undo;
mod workings;

use book::act::Act;
use book::view::Views;
use book::{Book, Entry, Id, Moment, Store, StoreError, WriteError};
use jiff::Timestamp;

pub use answer::{BasketLine, LotLine, LotSheet, SisterLine, Standing, TopUpAnswer, WorkingLine};
pub use baskets::TakeInWords;
pub use demo::{Seeded, write_demo};
pub use draw::{DrawWords, WentWords};
pub use error::KeepError;
pub use line::{KeptLine, read_line, say_containers};
pub use loads::{LoadLine, LoadWords};
pub use lots::LossWords;
pub use put_up::PutUpWords;
pub use shelves::{CountAnswer, CountWords, MoveWords};
pub use tell::{TellRow, Told, Verb, find_period};
pub use top_up::TopUpWords;
pub use undo::{HistoryLine, TakenBack};
pub use workings::{LookWords, WorkingWords};

/// Makes ids where an act is entered.
pub trait IdMaker {
    /// A new id, for an act entered now.
    fn make(&mut self, now: Timestamp) -> Id;
}

/// Someone with the book open before them.
#[derive(Debug)]
pub struct Keeper<S, I> {
    book: Book<S>,
    ids: I,
    who: Box<str>,
    device: Box<str>,
}

/// One thing to be written down.
#[derive(Debug, Clone)]
struct Saying {
    act: Act,
    follows: Option<Id>,
    why: Option<Box<str>>,
}

impl<A: Into<Act>> From<A> for Saying {
    fn from(act: A) -> Self {
        Self { act: act.into(), follows: None, why: None }
    }
}

/// How often it is decided anew when others write at the same time.
const TRIES: usize = 16;

impl<S: Store, I: IdMaker> Keeper<S, I> {
    /// Opens the book before someone.
    pub fn new(book: Book<S>, ids: I, who: &str, device: &str) -> Self {
        Self { book, ids, who: who.into(), device: device.into() }
    }

    /// What the book shows.
    #[must_use]
    pub fn views(&self) -> &Views {
        self.book.views()
    }

    /// The book itself.
    #[must_use]
    pub fn book(&self) -> &Book<S> {
        &self.book
    }

    /// The book itself, to verify, copy or merge.
    #[must_use]
    pub fn book_mut(&mut self) -> &mut Book<S> {
        &mut self.book
    }

    /// Reads what others have written meanwhile.
    ///
    /// # Errors
    ///
    /// If the store cannot be read.
    pub fn catch_up(&mut self) -> Result<(), KeepError> {
        Ok(self.book.catch_up()?)
    }

    /// Decides by the views what is to be said, and writes it down as one act, whole or not at all. Gives the ids in
    /// the order of what was said.
    fn say<T>(
        &mut self,
        now: &Moment,
        decide: impl Fn(&Views, Id) -> Result<(Vec<Saying>, T), KeepError>,
    ) -> Result<(Vec<Id>, T), KeepError> {
        let mut last = None;
        for _ in 0..TRIES {
            let first = self.ids.make(now.at());
            let (sayings, answer) = decide(self.book.views(), first)?;
            let ids: Vec<Id> =
                (0..sayings.len()).map(|at| if at == 0 { first } else { self.ids.make(now.at()) }).collect();
            let group = sayings.into_iter().zip(&ids).map(|(saying, id)| Entry {
                id: *id,
                happened_at: now.clone(),
                arrived_at: now.at(),
                who: self.who.clone(),
                device: self.device.clone(),
                with: (*id != first).then_some(first),
                follows: saying.follows,
                why: saying.why,
                act: saying.act,
            });
            match self.book.append(group.collect()) {
                Ok(()) => return Ok((ids, answer)),
                Err(WriteError::Store(moved @ StoreError::Moved { .. })) => {
                    last = Some(moved);
                    self.book.catch_up()?;
                }
                Err(other) => return Err(other.into()),
            }
        }
        Err(KeepError::Store(Box::new(last.expect("the loop ran and each turn but the last was moved on"))))
    }
}

#[cfg(test)]
mod tests;
