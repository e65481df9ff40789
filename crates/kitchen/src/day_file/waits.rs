//! How long produce waits when nobody says: from the shortest printed storage life and its condition.

use almanac::ProduceId;

use crate::day::{Condition, Waits};

use super::baskets::name_condition;
use super::lookup;
use super::reader::Reader;

/// How long a printed life lets produce wait on a kitchen table: up to so many days of life, so long a wait.
///
/// Basis: estimate, ours. The lives are printed for a cold store; on a kitchen table in summer a third of it or
/// less is left, and a cook wants to know before it turns rather than after.
const BY_LIFE: &[(u32, Waits)] =
    &[(1, Waits::Today), (3, Waits::Tomorrow), (13, Waits::Days), (u32::MAX, Waits::Week)];

/// The longest that produce in a condition waits, whatever its printed life.
///
/// Basis: estimate, ours. A broken skin or a cut face is where mould and rot begin.
const BY_CONDITION: &[(Condition, Waits)] = &[
    (Condition::Cut, Waits::Today),
    (Condition::Split, Waits::Today),
    (Condition::Soft, Waits::Today),
    (Condition::Bruised, Waits::Tomorrow),
    (Condition::Fallen, Waits::Tomorrow),
    (Condition::Frosted, Waits::Tomorrow),
    (Condition::Limp, Waits::Tomorrow),
    (Condition::Ripe, Waits::Days),
];

/// The wait of a produce for which no life is printed.
const WITHOUT_LIFE: Waits = Waits::Days;

/// How long a basket waits, by our reckoning; the reason is noted among what was filled in.
pub(super) fn guess_waits(
    produce: &ProduceId,
    called: &str,
    conditions: &[Condition],
    reader: &mut Reader<'_, '_>,
) -> Waits {
    if conditions.contains(&Condition::Frozen) {
        reader.fill_in(format!("{called} from the freezer will wait a week or more"));
        return Waits::Week;
    }
    let life = lookup::find_shortest_life(reader.almanac, produce);
    let by_life = life.map_or(WITHOUT_LIFE, class_of_life);
    let shortest = BY_CONDITION
        .iter()
        .filter(|(condition, _)| conditions.contains(condition))
        .min_by_key(|&&(_, most)| most);
    let (waits, reason) = match shortest {
        Some(&(condition, most)) if most < by_life => (most, format!("being {}", name_condition(condition))),
        _ => match life {
            Some(days) => (by_life, format!("their shortest printed life in a cold store being {days} days")),
            None => (by_life, "no storage life of theirs being on file".to_owned()),
        },
    };
    reader.fill_in(format!("{called} will wait {}, {reason}", name_waits(waits)));
    waits
}

fn class_of_life(days: u32) -> Waits {
    let class = BY_LIFE.iter().find(|&&(most, _)| days <= most);
    class.map(|&(_, waits)| waits).expect("the last class has no upper end")
}

fn name_waits(waits: Waits) -> &'static str {
    match waits {
        Waits::Today => "for today only",
        Waits::Tomorrow => "until tomorrow",
        Waits::Days => "two to four days",
        Waits::Week => "a week or more",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_printed_life_falls_into_one_class() {
        assert_eq!(class_of_life(0), Waits::Today);
        assert_eq!(class_of_life(2), Waits::Tomorrow);
        assert_eq!(class_of_life(4), Waits::Days);
        assert_eq!(class_of_life(13), Waits::Days);
        assert_eq!(class_of_life(14), Waits::Week);
    }
}
