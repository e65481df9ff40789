//! Finding a lot, a basket or a working by what a person calls it.

use book::act::{HouseThing, Spot};
use book::view::{Lot, Stock, Views};
use book::{Id, ItemId};
use jiff::civil::Date;

use super::error::KeepError;

/// Letters and spaces as they are compared.
pub(super) fn plain(text: &str) -> String {
    text.to_lowercase().split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The name of a lot.
pub(super) fn name_of(lot: &Lot) -> &str {
    lot.put_up().map_or("", |put_up| &put_up.name)
}

/// The label of a lot.
pub(super) fn label_of(lot: &Lot) -> &str {
    lot.put_up().map_or("", |put_up| &put_up.label)
}

/// A lot by its label, its id, or its name: of several with one name the one to eat first. Lots with nothing left are
/// found by label and id alone.
pub(super) fn require_lot(views: &Views, typed: &str, today: Date) -> Result<Id, KeepError> {
    let by_label: Vec<Id> = views.lots.with_label(typed.trim()).collect();
    if let [id] = by_label.as_slice() {
        return Ok(*id);
    }
    if by_label.len() > 1 {
        // Two books gave one number: only the ids tell them apart.
        let choices = by_label.iter().map(ToString::to_string).collect();
        return Err(KeepError::SeveralThings { what: "lot", typed: typed.to_owned(), choices });
    }
    if let Some(id) =
        typed.trim().parse().ok().filter(|id| views.lots.find(*id).and_then(Lot::put_up).is_some())
    {
        return Ok(id);
    }
    let sought = plain(typed);
    let in_order =
        || views.eat_first.in_order(today).filter_map(|id| Some((id, plain(name_of(views.lots.find(id)?)))));
    if let Some((id, _)) = in_order().find(|(_, name)| *name == sought) {
        return Ok(id);
    }
    let mut names: Vec<(String, Id)> = Vec::new();
    for (id, name) in in_order() {
        let has_all = !sought.is_empty() && sought.split(' ').all(|word| name.contains(word));
        if has_all && !names.iter().any(|(known, _)| *known == name) {
            names.push((name, id));
        }
    }
    match names.as_slice() {
        [] => Err(KeepError::NoSuchThing {
            what: "lot with anything left",
            typed: typed.to_owned(),
            hint: "`stillroom shelf list` shows what stands where; a lot that is used up is found by its number",
        }),
        [(_, id)] => Ok(*id),
        _ => Err(KeepError::SeveralThings {
            what: "lot",
            typed: typed.to_owned(),
            choices: names.into_iter().map(|(name, _)| format!("{name:?}")).collect(),
        }),
    }
}

/// The lot behind an id that was found before.
pub(super) fn lot(views: &Views, id: Id) -> Result<&Lot, KeepError> {
    views.lots.find(id).filter(|lot| lot.put_up().is_some()).ok_or_else(|| KeepError::NoSuchThing {
        what: "lot",
        typed: id.to_string(),
        hint: "it was taken back meanwhile; look again",
    })
}

/// The one place of a lot that is meant. Without a word for it, the lot must stand in one place only.
pub(super) fn require_spot(
    lot: &Lot,
    shelf: Option<&str>,
    size: Option<&str>,
) -> Result<(Spot, Stock), KeepError> {
    let shelf = shelf.map(shelf_id);
    let size = size.map(super::line::read_size);
    let fits = |spot: &Spot| {
        shelf.as_ref().is_none_or(|shelf| spot.shelf.as_ref() == Some(shelf))
            && size.as_ref().is_none_or(|size| spot.size == *size)
    };
    let found: Vec<(Spot, Stock)> =
        lot.stands().filter(|(spot, _)| fits(spot)).map(|(spot, stock)| (spot.clone(), stock)).collect();
    match found.as_slice() {
        [one] => Ok(one.clone()),
        [] => Err(KeepError::NotSoMany {
            label: label_of(lot).to_owned(),
            wanted: 1,
            there: 0,
            from: shelf.map_or_else(|| "from anywhere".to_owned(), |shelf| format!("from {shelf}")),
        }),
        several => Err(KeepError::WhichPlace {
            label: label_of(lot).to_owned(),
            places: several.iter().map(|(spot, stock)| say_spot(spot, stock.count)).collect(),
        }),
    }
}

/// Containers and their place in words: `4 half-pints (cellar)`.
pub(super) fn say_spot(spot: &Spot, count: i64) -> String {
    let place = spot.shelf.as_ref().map_or("not put away", ItemId::as_str);
    format!("{} ({place})", super::say_containers(count, &spot.size))
}

/// What a shelf is called.
pub(super) fn name_shelf(views: &Views, shelf: &ItemId) -> String {
    match views.house.find(shelf) {
        Some(HouseThing::Shelf { name, .. }) => name.to_string(),
        _ => shelf.to_string(),
    }
}

/// The name for good of a shelf: small letters and digits of its name, with hyphens.
pub(super) fn shelf_id(name: &str) -> ItemId {
    let mut id = String::new();
    for letter in name.to_lowercase().chars() {
        if letter.is_alphanumeric() {
            id.push(letter);
        } else if !id.is_empty() && !id.ends_with('-') {
            id.push('-');
        }
    }
    ItemId::from(id.trim_end_matches('-'))
}
