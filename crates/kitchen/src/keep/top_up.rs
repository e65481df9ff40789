//! Open containers: what may be added, and closing them.

use book::act::{OpenClosed, OpenHolds, ToppedUp};
use book::{Moment, RoughDate, Store};

use super::answer::{LotLine, TopUpAnswer};
use super::baskets::{read_whole_amount, require_basket};
use super::error::KeepError;
use super::find::{label_of, lot, require_lot};
use super::{IdMaker, Keeper};

/// What is to be added.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct TopUpWords {
    /// The open lot.
    pub lot: String,
    /// How much.
    pub amount: Option<String>,
    /// From which basket.
    pub basket: Option<String>,
    /// How old it is, where it is older than today.
    pub from: Option<RoughDate>,
    /// Whether what is added is low in acid, oiled or cooked: the one who adds it says so.
    pub low_acid_oiled_or_cooked: bool,
}

impl<S: Store, I: IdMaker> Keeper<S, I> {
    /// Adds to an open container. It keeps the date of its oldest part.
    ///
    /// # Errors
    ///
    /// If there is no such lot, it is not open, or the amount cannot be read.
    pub fn top_up(&mut self, now: &Moment, words: &TopUpWords) -> Result<TopUpAnswer, KeepError> {
        let amount = words.amount.as_deref().map(|amount| read_whole_amount("amount", amount)).transpose()?;
        let views = self.views();
        let id = require_lot(views, &words.lot, now.date())?;
        let found = lot(views, id)?;
        let holds = found.open().ok_or_else(|| KeepError::NotOpen { label: label_of(found).to_owned() })?;
        if holds == OpenHolds::ChilledAcid && words.low_acid_oiled_or_cooked {
            return Ok(TopUpAnswer::Refused {
                says: "food that is low in acid, oiled or cooked is not added to a jar that is kept cold: it brings in \
                       what the acid was to keep out, and starts no new date"
                    .to_owned(),
                instead: "put it in a container of its own with today's date, in the freezer or to be eaten within days; \
                          ask the county extension office what keeps how long"
                    .to_owned(),
            });
        }
        self.say(now, |views, _| {
            let found = lot(views, id)?;
            found.open().ok_or_else(|| KeepError::NotOpen { label: label_of(found).to_owned() })?;
            let basket = words.basket.as_deref().map(|basket| require_basket(views, basket)).transpose()?;
            let topped = ToppedUp { lot: id, amount, basket, from: words.from };
            let used = basket.map(|basket| book::act::BasketUsed { basket, amount, into: Some(id) }.into());
            Ok(([Some(topped.into()), used].into_iter().flatten().collect(), ()))
        })?;
        Ok(TopUpAnswer::Added(self.line_of(id)?))
    }

    /// Closes an open container: nothing more is added.
    ///
    /// # Errors
    ///
    /// If there is no such lot or it is not open.
    pub fn close_lot(&mut self, now: &Moment, typed: &str) -> Result<LotLine, KeepError> {
        let (_, id) = self.say(now, |views, _| {
            let id = require_lot(views, typed, now.date())?;
            let found = lot(views, id)?;
            found.open().ok_or_else(|| KeepError::NotOpen { label: label_of(found).to_owned() })?;
            Ok((vec![OpenClosed { lot: id }.into()], id))
        })?;
        self.line_of(id)
    }
}
