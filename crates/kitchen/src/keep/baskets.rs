//! Baskets: taken in, used, gone as they were.

use almanac::{Almanac, Match};
use book::act::{Act, BasketLeft, BasketTakenIn, BasketUsed, BasketWeight, HouseSet, HouseThing, WentWhere};
use book::view::{Basket, Remaining, Views};
use book::{Amount, Id, Microlitres, Milligrams, Moment, Store};
use measure::{read_amount, read_mass, write_mass_us, write_volume_us};

use super::answer::BasketLine;
use super::error::KeepError;
use super::find::{plain, shelf_id};
use super::{IdMaker, Keeper, Saying};

/// What came in.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct TakeInWords {
    /// What it is.
    pub name: String,
    /// How much: `5.4 kg`, `24 ears`; with a bowl, what the scale showed.
    pub amount: String,
    /// The bowl it was weighed in.
    pub bowl: Option<String>,
    /// What the bowl weighs, the first time it is named or when it is another.
    pub tare: Option<String>,
    /// Split, overgrown, fallen, bought to fill up.
    pub condition: Vec<String>,
    /// The bed, the neighbour, the market.
    pub origin: Option<String>,
}

impl<S: Store, I: IdMaker> Keeper<S, I> {
    /// Takes a basket in, bowl and all or without.
    ///
    /// # Errors
    ///
    /// If the amount cannot be read, or the bowl's weight is not known.
    pub fn take_in(
        &mut self,
        now: &Moment,
        almanac: &Almanac,
        words: &TakeInWords,
    ) -> Result<BasketLine, KeepError> {
        let amount = read_whole_amount("amount", &words.amount)?;
        let tare =
            words.tare.as_deref().map(|tare| read_milligrams("weight of the bowl", tare)).transpose()?;
        let produce = match almanac.find_produce(&words.name) {
            Match::One(produce) => Some(produce.id.as_str().into()),
            _ => None,
        };
        let (ids, ()) = self.say(now, |views, _| {
            let (weight, bowl) = weigh(views, words, amount, tare)?;
            let taken = BasketTakenIn {
                name: words.name.trim().into(),
                produce: produce.clone(),
                weight,
                condition: words.condition.iter().map(|word| word.as_str().into()).collect(),
                origin: words.origin.as_deref().map(Into::into),
                price: None,
            };
            Ok(([Some(taken.into()), bowl].into_iter().flatten().collect(), ()))
        })?;
        self.basket_line(ids[0])
    }

    /// Uses a part of a basket, or all that is left.
    ///
    /// # Errors
    ///
    /// If there is no such basket or the amount cannot be read.
    pub fn use_basket(
        &mut self,
        now: &Moment,
        typed: &str,
        amount: Option<&str>,
    ) -> Result<BasketLine, KeepError> {
        let amount = amount.map(|amount| read_whole_amount("amount", amount)).transpose()?;
        let (_, id) = self.say(now, |views, _| {
            let id = require_basket(views, typed)?;
            Ok((vec![BasketUsed { basket: id, amount, into: None }.into()], id))
        })?;
        self.basket_line(id)
    }

    /// Writes down that a basket, or a part of it, left as it was.
    ///
    /// # Errors
    ///
    /// If there is no such basket or the amount cannot be read.
    pub fn leave_basket(
        &mut self,
        now: &Moment,
        typed: &str,
        amount: Option<&str>,
        went: WentWhere,
        to: Option<&str>,
    ) -> Result<BasketLine, KeepError> {
        let amount = amount.map(|amount| read_whole_amount("amount", amount)).transpose()?;
        let (_, id) = self.say(now, |views, _| {
            let id = require_basket(views, typed)?;
            let left = BasketLeft { basket: id, amount, went, to: to.map(Into::into) };
            Ok((vec![left.into()], id))
        })?;
        self.basket_line(id)
    }

    /// Corrects what came in: how much, or the whole line.
    ///
    /// # Errors
    ///
    /// If there is no such basket or the amount cannot be read.
    pub fn correct_basket(
        &mut self,
        now: &Moment,
        typed: &str,
        amount: &str,
        why: Option<&str>,
    ) -> Result<BasketLine, KeepError> {
        let net = read_whole_amount("amount", amount)?;
        let (_, id) = self.say(now, |views, _| {
            let id = require_basket(views, typed)?;
            let standing = views.record.find_standing(id);
            let Some((taken, last)) = standing.and_then(|standing| match &standing.entry.act {
                Act::BasketTakenIn(taken) => Some((taken.clone(), standing.entry.id)),
                _ => None,
            }) else {
                return Err(no_basket(typed));
            };
            let act = BasketTakenIn { weight: BasketWeight::Net(net), ..taken }.into();
            Ok((vec![Saying { act, follows: Some(last), why: why.map(Into::into) }], id))
        })?;
        self.basket_line(id)
    }

    /// The baskets that still hold something, the oldest first.
    #[must_use]
    pub fn list_baskets(&self) -> Vec<BasketLine> {
        self.views().baskets.waiting().filter_map(|(id, basket)| say_basket(id, basket)).collect()
    }

    fn basket_line(&self, id: Id) -> Result<BasketLine, KeepError> {
        let found = self.views().baskets.find(id).and_then(|basket| say_basket(id, basket));
        found.ok_or_else(|| no_basket(&id.to_string()))
    }
}

/// The weight, and what is to be remembered of the bowl.
fn weigh(
    views: &Views,
    words: &TakeInWords,
    amount: Amount,
    tare: Option<Milligrams>,
) -> Result<(BasketWeight, Option<Saying>), KeepError> {
    let Some(name) = &words.bowl else {
        return Ok(match (amount, tare) {
            (Amount::Mass(gross_mg), Some(tare_mg)) => {
                (BasketWeight::Gross { gross_mg, tare_mg, bowl: None }, None)
            }
            _ => (BasketWeight::Net(amount), None),
        });
    };
    let Amount::Mass(gross_mg) = amount else {
        return Err(KeepError::UnreadableLine {
            typed: words.amount.clone(),
            what: "a weight, and only what is weighed has a bowl",
            example: "5.4 kg",
        });
    };
    let bowl = shelf_id(name);
    let known = match views.house.find(&bowl) {
        Some(HouseThing::Bowl { tare_mg, .. }) => Some(*tare_mg),
        _ => None,
    };
    let Some(tare_mg) = tare.or(known) else {
        return Err(KeepError::NoSuchThing {
            what: "bowl",
            typed: name.clone(),
            hint: "say what it weighs empty once, with --tare \"1 lb 2 oz\"; it is remembered",
        });
    };
    let thing = HouseThing::Bowl { name: name.trim().into(), tare_mg };
    let remembered = (known != Some(tare_mg)).then(|| HouseSet { item: bowl.clone(), thing }.into());
    Ok((BasketWeight::Gross { gross_mg, tare_mg, bowl: Some(bowl) }, remembered))
}

pub(super) fn read_whole_amount(what: &'static str, typed: &str) -> Result<Amount, KeepError> {
    let not_whole = || KeepError::UnreadableLine {
        typed: typed.to_owned(),
        what: "a weight, a volume or a whole number of pieces",
        example: "5.4 kg",
    };
    let read = read_amount(typed).map_err(|problem| KeepError::unreadable(what, problem))?;
    let whole = match read {
        measure::Amount::Mass(mass) => Milligrams::from_mass(mass).map(Amount::Mass),
        measure::Amount::Volume(volume) => Microlitres::from_volume(volume).map(Amount::Volume),
        measure::Amount::Count(number) => {
            let number = number.to_f64();
            // Exact: the reader takes no count above a million.
            (number.fract() == 0.0).then_some(Amount::Count(number as i64))
        }
        measure::Amount::Container { .. } => None,
    };
    whole.ok_or_else(not_whole)
}

fn read_milligrams(what: &'static str, typed: &str) -> Result<Milligrams, KeepError> {
    let mass = read_mass(typed).map_err(|problem| KeepError::unreadable(what, problem))?;
    Milligrams::from_mass(mass).ok_or_else(|| KeepError::UnreadableLine {
        typed: typed.to_owned(),
        what: "a weight",
        example: "1 lb 2 oz",
    })
}

fn no_basket(typed: &str) -> KeepError {
    KeepError::NoSuchThing {
        what: "basket",
        typed: typed.to_owned(),
        hint: "`stillroom basket list` shows what waits",
    }
}

/// A basket by its id, or the oldest of that name that still holds something.
pub(super) fn require_basket(views: &Views, typed: &str) -> Result<Id, KeepError> {
    if let Some(id) = typed.parse().ok().filter(|id| views.baskets.find(*id).is_some()) {
        return Ok(id);
    }
    let sought = plain(typed);
    let named = |basket: &Basket| basket.taken_in().is_some_and(|taken| plain(&taken.name) == sought);
    let found = views.baskets.waiting().find(|(_, basket)| named(basket)).map(|(id, _)| id);
    found.ok_or_else(|| no_basket(typed))
}

fn say_basket(id: Id, basket: &Basket) -> Option<BasketLine> {
    let (taken, act) = (basket.taken_in()?, basket.act()?);
    let left = match basket.remaining() {
        Remaining::Known(amount) => say_amount(amount),
        Remaining::AtMost(amount) => format!("at most {}", say_amount(amount)),
        Remaining::Nothing => "nothing".to_owned(),
    };
    let about: Vec<&str> = taken.condition.iter().chain(&taken.origin).map(|word| &**word).collect();
    Some(BasketLine {
        id: id.to_string(),
        name: taken.name.to_string(),
        came_in: act.entry.happened_at.date().to_string(),
        left,
        about: about.join(", "),
    })
}

fn say_amount(amount: Amount) -> String {
    match amount {
        Amount::Mass(mass) => write_mass_us(mass.to_mass()),
        Amount::Volume(volume) => write_volume_us(volume.to_volume()),
        Amount::Count(count) => count.to_string(),
    }
}
