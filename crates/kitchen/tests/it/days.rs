//! Days to plan: the demo days, and small ones put together from a few lines.

use std::sync::LazyLock;

use almanac::Almanac;
use jiff::civil::{Date, date};
use kitchen::answer::DayAnswer;
use kitchen::day::Day;
use kitchen::{plan_day, read_day_on};

pub static ALMANAC: LazyLock<Almanac> =
    LazyLock::new(|| Almanac::load().expect("the tables of the tree load"));

const TODAY: Date = date(2026, 8, 29);

/// A day with its answer.
pub struct Planned {
    pub day: Day,
    pub answer: DayAnswer,
}

/// The demo household's day.
pub static DEMO: LazyLock<Planned> = LazyLock::new(|| {
    plan_files(include_str!("../../../../demo/day.toml"), Some(include_str!("../../../../demo/house.toml")))
});

/// The metric kitchen in the hills.
pub static METRIC: LazyLock<Planned> = LazyLock::new(|| {
    plan_files(
        include_str!("../../../../demo/metric/day.toml"),
        Some(include_str!("../../../../demo/metric/house.toml")),
    )
});

/// The club's thirty baskets.
pub static CLUB: LazyLock<Planned> = LazyLock::new(|| {
    plan_files(
        include_str!("../../../../demo/club/day.toml"),
        Some(include_str!("../../../../demo/club/house.toml")),
    )
});

/// Reads and plans a day, beside a house file where there is one.
pub fn plan_files(day: &str, house: Option<&str>) -> Planned {
    let day = read_day_on(TODAY, day.as_bytes(), house.map(str::as_bytes), &ALMANAC)
        .unwrap_or_else(|faults| panic!("{faults}\n{day}"));
    let answer = plan_day(&ALMANAC, &day);
    Planned { day, answer }
}

/// Reads and plans a small day put together from parts; lines that stand in no table come first.
pub fn plan(parts: &[&str]) -> Planned {
    plan_files(&parts.join("\n"), None)
}

pub const LOW: &str = "altitude = \"800 ft\"";
pub const COOK: &str = "[[person]]\nname = \"Ada\"\nhours = \"8:00-15:00\"\nbreaks = []";
pub const KETTLE: &str = "[[canner]]\nname = \"kettle\"\nkind = \"boiling-water\"";
pub const PEACHES: &str = "[[basket]]\nproduce = \"peaches\"\nnet = \"9 lb\"";
pub const BEANS: &str = "[[basket]]\nproduce = \"green beans\"\nnet = \"9 lb\"";
pub const CUCUMBERS: &str = "[[basket]]\nproduce = \"pickling cucumbers\"\nnet = \"9 lb\"";
pub const PINTS: &str = "[[jars]]\nsize = \"pint\"\nmouth = \"regular\"\ncount = 16";

/// New lids for regular mouths.
pub fn lids(count: u32) -> String {
    format!("[lids]\nregular = {count}")
}

/// A dial canner with its gauge as the lines say.
pub fn dial(gauge: &str) -> String {
    format!("[[canner]]\nname = \"dial canner\"\nkind = \"dial\"\n{gauge}")
}

/// Nothing to freeze anything in.
pub const NO_BAGS: &str = "[supplies]\nbags = 0";
