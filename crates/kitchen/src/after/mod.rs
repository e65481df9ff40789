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
mod told;
mod when;

pub use closing::{EATEN_ALREADY, WHOM_TO_ASK};
pub use cooling::{CoolingAnswer, CoolingState, CoolingWords, plan_cooling};
pub use dried::{DriedAnswer, DriedVerdict, DriedWords, look_at_dried};
pub use error::AfterError;
pub use ferment::{FermentAnswer, FermentPart, FermentWords, look_at_ferment};
pub use keeps::{KeepsAnswer, KeepsWords, tell_keeping};
pub use oil::{OilAnswer, OilVerdict, OilWords, date_oil};
pub use outage::{DoorClock, FoodAnswer, FoodVerdict, OutageAnswer, OutageWords, judge_outage};
pub use saying::{
    say_cooling, say_dried, say_ferment, say_food, say_keeping, say_oil, say_outage, say_seals, say_sign,
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

    use super::Moment;

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
        let used = |table: Table| table == Table::Sources || table.file().starts_with("keeping/");
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
}
