//! What the wishes of a day say about a formula.

use almanac::Formula;
use measure::Volume;

use crate::day::{Day, Liking, Wish, WishFor};

/// Whether a wish speaks of a formula: by its own name, by the food it makes, or by its main produce.
fn speaks_of(what: &WishFor, formula: &Formula) -> bool {
    match what {
        WishFor::Formula(id) => *id == formula.id,
        WishFor::Product(product) => formula.product.as_ref() == Some(product),
        WishFor::Produce(produce) => formula
            .ingredients
            .iter()
            .find(|line| !line.accepts.is_empty())
            .is_some_and(|line| line.accepts.contains(produce)),
        WishFor::Unknown(_) => false,
    }
}

/// How closely a wish speaks of a formula: its own name counts before a wish for any of its produce.
fn closeness(what: &WishFor) -> u8 {
    match what {
        WishFor::Formula(_) => 2,
        WishFor::Product(_) => 1,
        WishFor::Produce(_) | WishFor::Unknown(_) => 0,
    }
}

/// Whether this very formula must be made.
pub(crate) fn is_must(day: &Day, formula: &Formula) -> bool {
    day.wishes.iter().any(|wish| match wish {
        Wish::Must(WishFor::Produce(_)) => false,
        Wish::Must(what) => speaks_of(what, formula),
        _ => false,
    })
}

/// Whether it is not to be made today.
pub(crate) fn is_not_today(day: &Day, formula: &Formula) -> bool {
    day.wishes.iter().any(|wish| matches!(wish, Wish::NotToday(what) if speaks_of(what, formula)))
}

/// How well it is liked: the closest wish counts; as most things when nothing is said.
pub(crate) fn liking_of(day: &Day, formula: &Formula) -> Liking {
    day.wishes
        .iter()
        .filter_map(|wish| match wish {
            Wish::Like { what, how } if speaks_of(what, formula) => Some((closeness(what), *how)),
            _ => None,
        })
        .max_by_key(|(close, _)| *close)
        .map_or(Liking::Well, |(_, how)| how)
}

/// How much of it a target still wants.
pub(crate) fn wanted_of(day: &Day, formula: &Formula) -> Option<Volume> {
    day.wishes
        .iter()
        .filter_map(|wish| match wish {
            Wish::Target { what, containers, on_shelf, size } if speaks_of(what, formula) => {
                let missing = containers.saturating_sub(*on_shelf);
                Some((closeness(what), size.volume() * f64::from(missing)))
            }
            _ => None,
        })
        .max_by_key(|(close, _)| *close)
        .map(|(_, wanted)| wanted)
}
