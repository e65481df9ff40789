//! The book of an invented household: two years, the same for the same seed.
//!
//! Everything in it is made up: the people, the harvests, the accidents.

use book::act::{LossReason, OpenHolds, WorkingKind, WorkingOutcome};
use book::{Id, Moment, Store};
use jiff::civil::Date;
use jiff::{SignedDuration, Timestamp, ToSpan as _};

use super::{
    CountWords, DrawWords, IdMaker, KeepError, Keeper, LookWords, LossWords, PutUpWords, TopUpWords,
    WentWords, WorkingWords,
};

/// Chance that is the same for the same seed, on any machine.
#[derive(Debug, Clone)]
pub struct Seeded(u64);

impl Seeded {
    /// From a seed.
    #[must_use]
    pub fn new(seed: u64) -> Self {
        Self(seed ^ 0x9e37_79b9_7f4a_7c15)
    }

    /// The next number below `limit`, which is not 0. Even enough for an invented household.
    fn below(&mut self, limit: u64) -> u64 {
        // The step and output of SplitMix64.
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        (mixed ^ (mixed >> 31)) % limit
    }
}

impl IdMaker for Seeded {
    fn make(&mut self, now: Timestamp) -> Id {
        let mut chance = [0; 10];
        chance[..8].copy_from_slice(&self.below(u64::MAX).to_be_bytes());
        Id::make(now, chance)
    }
}

/// What the Brandls put up: month, food, how many at least, size, where.
const HABITS: [(i8, &str, u64, &str, &str); 14] = [
    (5, "rhubarb sauce", 5, "pint", "cellar"),
    (6, "strawberry jam", 8, "half-pint", "pantry shelf"),
    (6, "peas", 6, "bag", "freezer top drawer"),
    (7, "sour cherries", 6, "quart", "cellar"),
    (7, "currant jelly", 7, "half-pint", "pantry shelf"),
    (7, "bush beans", 9, "bag", "freezer top drawer"),
    (8, "dill pickles", 7, "quart", "cellar"),
    (8, "crushed tomatoes", 12, "pint", "cellar"),
    (8, "corn", 10, "bag", "freezer top drawer"),
    (9, "damson jam", 9, "half-pint", "pantry shelf"),
    (9, "pear halves", 7, "quart", "cellar"),
    (9, "apple sauce", 10, "pint", "cellar"),
    (10, "quince jelly", 5, "half-pint", "pantry shelf"),
    (10, "dried apple rings", 3, "jar", "pantry shelf"),
];

/// Whom the Brandls give jars to.
const FRIENDS: [&str; 4] = ["Aunt Ruta", "Ben next door", "the choir", "Ilse"];

/// Writes two years, from the spring of 2024, into an empty book.
///
/// # Errors
///
/// If the book cannot be written.
pub fn write_demo<S: Store, I: IdMaker>(keeper: &mut Keeper<S, I>, seed: u64) -> Result<(), KeepError> {
    let mut chance = Seeded::new(seed.wrapping_add(1));
    let before = [
        "plum sauce, 4 pints, 2023, cellar",
        "pickled beets, 6 pints",
        "mystery jelly, 3 half-pints, not known",
    ];
    keeper.stand(&at(Date::constant(2024, 4, 6), 9), &before.map(str::to_owned))?;
    for year in [2024, 2025] {
        for month in 4..=15_i8 {
            // The winter of a year's putting up runs into March.
            let (year, month) = if month > 12 { (year + 1, month - 12) } else { (year, month) };
            let first = Date::constant(year, month, 1);
            put_up_month(keeper, &mut chance, first)?;
            eat_month(keeper, &mut chance, first)?;
            if month == 9 {
                ferment(keeper, first)?;
            }
        }
        let march = Date::constant(year + 1, 3, 30);
        count_something(keeper, &mut chance, march)?;
    }
    Ok(())
}

fn put_up_month<S: Store, I: IdMaker>(
    keeper: &mut Keeper<S, I>,
    chance: &mut Seeded,
    first: Date,
) -> Result<(), KeepError> {
    for (_, name, least, size, shelf) in HABITS.iter().filter(|(month, ..)| *month == first.month()) {
        let day = day_of(first, 1 + chance.below(25));
        let count = least + chance.below(5);
        let line = format!("{name}, {count} {size}s, {shelf}");
        let lot = keeper.put_up(&at(day, 16), &PutUpWords { line, ..PutUpWords::default() })?;
        let is_jar = !["bag", "jar"].contains(size);
        if is_jar {
            let failed = i64::from(chance.below(4) == 0);
            keeper.check_seals(&at(day_of(day, 1), 8), &lot.label, failed)?;
            if failed == 1 {
                let words = DrawWords { unsealed: true, went: Some(WentWords::Eaten), ..draw(&lot.label) };
                keeper.draw(&at(day_of(day, 2), 18), &words)?;
            }
        }
        if chance.below(9) == 0 {
            let words = LossWords {
                lot: lot.label.clone(),
                count: 1,
                reason: if is_jar { LossReason::Broken } else { LossReason::Spoiled },
                shelf: None,
                size: None,
                unsealed: false,
            };
            keeper.lose(&at(day_of(day, 3), 12), &words)?;
        }
    }
    if first.month() == 6 {
        let line = "raspberries, 1 bag, freezer top drawer".to_owned();
        let words = PutUpWords { line, open: Some(OpenHolds::Frozen), ..PutUpWords::default() };
        let lot = keeper.put_up(&at(day_of(first, 20), 19), &words)?;
        for days in [23, 26, 29] {
            let words = TopUpWords {
                lot: lot.label.clone(),
                amount: Some("1/2 lb".to_owned()),
                ..TopUpWords::default()
            };
            keeper.top_up(&at(day_of(first, days), 19), &words)?;
        }
        keeper.close_lot(&at(day_of(first, 30), 19), &lot.label)?;
    }
    Ok(())
}

fn eat_month<S: Store, I: IdMaker>(
    keeper: &mut Keeper<S, I>,
    chance: &mut Seeded,
    first: Date,
) -> Result<(), KeepError> {
    let meals = if (4..=9).contains(&first.month()) { 4 } else { 11 };
    for meal in 0..meals {
        let day = day_of(first, 26 + meal / 6);
        let row = keeper.eat_first(day, 6);
        let Some(lot) = row.get(usize::try_from(chance.below(6)).unwrap_or(0)) else { continue };
        let Some(standing) = lot.stands.first() else { continue };
        let went = match chance.below(6) {
            0 => Some(WentWords::Given(FRIENDS[usize::try_from(chance.below(4)).unwrap_or(0)].to_owned())),
            1 | 2 => None,
            _ => Some(WentWords::Eaten),
        };
        let words = DrawWords {
            shelf: standing.shelf.clone(),
            size: Some(standing.size.clone()),
            went,
            ..draw(&lot.label)
        };
        keeper.draw(&at(day, 17), &words)?;
    }
    Ok(())
}

fn ferment<S: Store, I: IdMaker>(keeper: &mut Keeper<S, I>, first: Date) -> Result<(), KeepError> {
    let name = format!("kraut of {}", first.year());
    let words = WorkingWords {
        name: name.clone(),
        what: WorkingKind::Ferment,
        shelf: Some("cellar".to_owned()),
        look_in_days: Some(3),
    };
    keeper.begin_working(&at(first, 11), &words)?;
    for (days, taste) in [(3, "salt, no sour yet"), (10, "not sour enough"), (21, "sour, and good")] {
        let words = LookWords {
            working: name.clone(),
            temp: Some("66 F".to_owned()),
            taste: Some(taste.to_owned()),
            look_in_days: Some(7),
            ..LookWords::default()
        };
        keeper.look(&at(day_of(first, days), 18), &words)?;
    }
    keeper.move_working(&at(day_of(first, 22), 18), &name, "refrigerator", Some(30))?;
    keeper.end_working(&at(day_of(first, 90), 18), &name, WorkingOutcome::Eaten)?;
    Ok(())
}

/// The spring count of one lot: the book was right, or it was not.
fn count_something<S: Store, I: IdMaker>(
    keeper: &mut Keeper<S, I>,
    chance: &mut Seeded,
    day: Date,
) -> Result<(), KeepError> {
    let row = keeper.eat_first(day, 4);
    let Some((lot, standing)) = row.first().and_then(|lot| Some((lot, lot.stands.first()?))) else {
        return Ok(());
    };
    let missing = i64::from(chance.below(2) == 0 && standing.count > 1);
    let words = CountWords {
        lot: lot.label.clone(),
        count: standing.count - missing,
        shelf: standing.shelf.clone(),
        size: Some(standing.size.clone()),
    };
    keeper.count_shelf(&at(day, 10), &words)?;
    if missing > 0 {
        keeper.settle_counts(&at(day, 11), &lot.label, book::act::Settled::Accepted)?;
    }
    Ok(())
}

fn draw(lot: &str) -> DrawWords {
    DrawWords { lot: lot.to_owned(), count: 1, shelf: None, size: None, unsealed: false, went: None }
}

/// So many days later; the same day where the calendar ends.
fn day_of(date: Date, days: u64) -> Date {
    date.checked_add(i64::try_from(days).unwrap_or(0).days()).unwrap_or(date)
}

/// An hour of a day by the clock of Greenwich, where the Brandls might as well live.
fn at(date: Date, hour: i64) -> Moment {
    let midnight = jiff::tz::Offset::UTC.to_timestamp(date.to_datetime(jiff::civil::Time::MIN));
    let midnight = midnight.expect("the years of the demo are in the calendar");
    Moment::utc(midnight + SignedDuration::from_hours(hour))
}
