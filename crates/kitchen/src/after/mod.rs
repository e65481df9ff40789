//! After the jars come out, and whatever else is put up: signs and seals, cuts of power, a hot pot, food in oil,
//! ferments, dried food.
//!
//! Words go in and typed answers come out; the clock is passed in. The rows of the almanac decide. Where several are
//! printed the strictest is used and the others stand beside it; what is not understood is said; a row that was only
//! recalled, or stands in a source of lower rank, may add caution and never keeps food.

mod closing;
mod cooling;
mod dried;
mod error;
mod ferment;
mod keeps;
mod oil;
mod outage;
mod saying;
mod seals;
mod sign;
#[cfg(test)]
mod standing;
mod told;
mod when;

pub use closing::{EATEN_ALREADY, WHOM_TO_ASK};
pub use cooling::{CoolingAnswer, CoolingState, CoolingWords, Mark, plan_cooling};
pub use dried::{DriedAnswer, DriedVerdict, DriedWords, look_at_dried};
pub use error::AfterError;
pub use ferment::{FermentAnswer, FermentPart, FermentWords, look_at_ferment};
pub use keeps::{KeepsAnswer, KeepsWords, tell_keeping};
pub use oil::{OilAnswer, OilVerdict, OilWords, date_oil};
pub use outage::{DoorClock, FoodAnswer, FoodVerdict, OutageAnswer, OutageWords, judge_outage};
pub use saying::{
    say_cooling, say_dried, say_ferment, say_food, say_keeping, say_mark, say_oil, say_outage, say_seals,
    say_sign,
};
pub use seals::{SealsAnswer, SealsState, SealsWords, WayOut, plan_seals};
pub use sign::{SignAnswer, SignVerdict, SignWords, look_at_signs};
pub use told::Told;
pub use when::Moment;

#[cfg(test)]
mod tests {
    use std::sync::LazyLock;

    use almanac::{Almanac, Table, Tables};
    use jiff::civil::DateTime;
    use jiff::tz::TimeZone;
    use proptest::prelude::*;

    use super::*;

    static ALMANAC: LazyLock<Almanac> =
        LazyLock::new(|| Almanac::load().expect("the tables built in have no fault"));

    /// The almanac, read once for all tests of a run.
    pub(super) fn almanac() -> &'static Almanac {
        &ALMANAC
    }

    /// The almanac without one row. Of the tables that no answer of this room looks at only the column names are left:
    /// reading them is most of the work.
    pub(super) fn almanac_without(table: Table, id: &str) -> Almanac {
        let start = format!("{id},");
        // The tables of engineering are whole or they are a fault.
        let used = |table: Table| {
            let file = table.file();
            table == Table::Sources || file.starts_with("keeping/") || file.starts_with("engineering/")
        };
        let ferments =
            |line: &str| line.starts_with("sauerkraut,") || line.starts_with("dill-pickles-fermented,");
        let whole = Tables::embedded().without_lines(table, |line| line.starts_with(&start));
        let tables = Table::ALL.iter().filter(|table| !used(**table)).fold(whole, |tables, unused| {
            tables.without_lines(*unused, |line| *unused != Table::BoilingWater || !ferments(line))
        });
        Almanac::from_tables(&tables).expect("the other rows hold no fault")
    }

    /// A moment in a house whose clocks are never set.
    pub(super) fn at(shown: &str) -> Moment {
        on_the_clock("UTC0", shown)
    }

    /// A moment as a clock of this zone shows it.
    pub(super) fn on_the_clock(zone: &str, shown: &str) -> Moment {
        let zone = TimeZone::posix(zone).expect("a zone written in the POSIX way");
        let shown: DateTime = shown.parse().expect("a day and a time");
        Moment::of_now(&shown.to_zoned_datetime(zone).expect("the clock shows it"))
    }

    /// What people type when they are tired: words of the tables, figures, and letters that mean nothing.
    fn typed() -> impl Strategy<Value = String> {
        prop_oneof![
            "\\PC{0,24}",
            "[0-9]{1,4}[:.-][0-9]{1,2}( ?(am|pm|F|C|h|%))?",
            "(yesterday|today|monday|2026-09-1[0-9])( [0-9]{1,2}:[0-9]{2})?",
            "(lid|milk|kraut|garlic|mould|pH|cheese|jar|oil|=|\\|| ){1,6}",
        ]
    }

    proptest! {
        #[test]
        fn whatever_is_typed_is_answered_or_told_in_one_sentence(
            one in typed(), other in typed(), third in typed(), flag: bool,
        ) {
            let (almanac, now) = (almanac(), at("2026-09-12 23:10"));
            let some = |text: &String| Some(text.clone());
            let sign = SignWords { seen: vec![one.clone(), other.clone()], lost: some(&third) };
            let seals = SealsWords { heat_off: some(&one), process_was_wrong: flag };
            let outage = OutageWords {
                about: vec![one.clone()], lost: some(&other), back: some(&third), opened: flag, ..OutageWords::default()
            };
            let warm = OutageWords {
                about: vec![one.clone()], temp: some(&other), warm_for: some(&third), ..OutageWords::default()
            };
            let pot = CoolingWords { off: one.clone(), temp: some(&other) };
            let oil = OilWords { food: one.clone(), made: some(&other), stood_warm: flag };
            let ferment = FermentWords {
                product: one.clone(), salt: some(&other), ph: some(&third), ..FermentWords::default()
            };
            let dried = DriedWords { seen: vec![one.clone()], kind: some(&other), jarred: some(&third), outdoors: flag };
            let keeps = KeepsWords { food: one.clone(), kind: other.clone(), store: some(&third), put_up: None };
            let told = [
                look_at_signs(almanac, &sign).err(),
                plan_seals(almanac, &seals, &now).err(),
                judge_outage(almanac, &outage, &now).err(),
                judge_outage(almanac, &warm, &now).err(),
                plan_cooling(almanac, &pot, &now).err(),
                date_oil(almanac, &oil, &now).err(),
                look_at_ferment(almanac, &ferment, &now).err(),
                look_at_dried(almanac, &dried, &now).err(),
                tell_keeping(almanac, &keeps, &now).err(),
            ];
            for error in told.into_iter().flatten() {
                prop_assert!(error.to_string().contains("hint: "), "{error}");
            }
        }
    }
}
