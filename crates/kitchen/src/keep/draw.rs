//! Took one: a container leaves a shelf.

use book::act::{Act, Drawn, Went};
use book::{Moment, Store};

use super::answer::LotLine;
use super::error::KeepError;
use super::find::{label_of, lot, require_lot, require_spot};
use super::line::check_count;
use super::{IdMaker, Keeper, Saying};

/// Where a container went, in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum WentWords {
    /// Eaten.
    Eaten,
    /// Given to.
    Given(String),
    /// Swapped with.
    Swapped(String),
    /// Sold to.
    Sold(String),
    /// Shown at.
    Shown(String),
    /// Thrown away, and why.
    Thrown(String),
}

/// What was taken.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DrawWords {
    /// The lot: its number or its name.
    pub lot: String,
    /// How many.
    pub count: i64,
    /// From which shelf.
    pub shelf: Option<String>,
    /// Of which size.
    pub size: Option<String>,
    /// Whether these are some that had not sealed.
    pub unsealed: bool,
    /// Where they went, when it is known.
    pub went: Option<WentWords>,
}

impl From<&WentWords> for Went {
    fn from(words: &WentWords) -> Self {
        match words {
            WentWords::Eaten => Self::Eaten,
            WentWords::Given(whom) => Self::Given(whom.as_str().into()),
            WentWords::Swapped(whom) => Self::Swapped(whom.as_str().into()),
            WentWords::Sold(whom) => Self::Sold(whom.as_str().into()),
            WentWords::Shown(place) => Self::Shown(place.as_str().into()),
            WentWords::Thrown(why) => Self::Thrown(why.as_str().into()),
        }
    }
}

impl<S: Store, I: IdMaker> Keeper<S, I> {
    /// Takes containers off a shelf. Of several lots with one name it is the one to eat first.
    ///
    /// # Errors
    ///
    /// If there is no such lot, it stands in several places, or there are not so many.
    pub fn draw(&mut self, now: &Moment, words: &DrawWords) -> Result<LotLine, KeepError> {
        check_count(words.count)?;
        let (_, id) = self.say(now, |views, _| {
            let id = require_lot(views, &words.lot, now.date())?;
            let lot = lot(views, id)?;
            let (spot, stock) = require_spot(lot, words.shelf.as_deref(), words.size.as_deref())?;
            let there = if words.unsealed { stock.unsealed } else { stock.count };
            super::shelves::require_so_many(lot, &spot, words.count, there)?;
            let drawn = Drawn {
                lot: id,
                spot,
                count: words.count,
                unsealed: if words.unsealed { words.count } else { 0 },
                went: words.went.as_ref().map(Went::from),
            };
            Ok((vec![drawn.into()], id))
        })?;
        self.line_of(id)
    }

    /// Says later where the containers of the last draw from a lot went.
    ///
    /// # Errors
    ///
    /// If nothing was drawn from it whose end is not told yet.
    pub fn tell_draw(&mut self, now: &Moment, typed: &str, went: &WentWords) -> Result<LotLine, KeepError> {
        let (_, id) = self.say(now, |views, _| {
            let id = require_lot(views, typed, now.date())?;
            let lot = lot(views, id)?;
            let untold = lot.gone().iter().rev().find_map(|act| match &act.entry.act {
                Act::Drawn(drawn) if drawn.went.is_none() => Some((act, drawn)),
                _ => None,
            });
            let (act, drawn) = untold.ok_or_else(|| KeepError::NoSuchThing {
                what: "draw without an end",
                typed: label_of(lot).to_owned(),
                hint: "`stillroom history LOT` shows where each container went",
            })?;
            let told = Drawn { went: Some(went.into()), ..drawn.clone() };
            let saying =
                Saying { act: told.into(), follows: Some(act.entry.id), why: Some("where it went".into()) };
            Ok((vec![saying], id))
        })?;
        self.line_of(id)
    }
}
