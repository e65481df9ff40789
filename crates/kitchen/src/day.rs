//! A day as a person states it, read and typed: people, kitchen, baskets, jars, supplies, wishes, errands.
//!
//! What was left out has been filled in, and [`Day::filled_in`] names each such default, so that an answer can
//! say what is ours. Only the altitude has no default.

use jiff::civil::Date;
use measure::{Altitude, Mass, Minutes, Percent, Pressure, Volume};

/// One stated day with everything the planner needs to know.
#[derive(Debug, Clone)]
pub struct Day {
    /// The date of the day.
    pub date: Date,
    /// The kitchen's height above the sea; without it nothing is canned.
    pub altitude: Option<Altitude>,
    /// How amounts are printed.
    pub units: Units,
    /// Who is there; never empty.
    pub people: Vec<Person>,
    /// The stove, the pots, the machines.
    pub equipment: Equipment,
    /// The canners of the house.
    pub canners: Vec<Canner>,
    /// What came in.
    pub baskets: Vec<Basket>,
    /// Empty jars, by size and mouth.
    pub jars: Vec<JarStock>,
    /// New lids, by mouth.
    pub lids: Vec<LidStock>,
    /// What is in the cupboard.
    pub supplies: Supplies,
    /// Must, not today, targets, likes.
    pub wishes: Vec<Wish>,
    /// Other work that shares the day.
    pub errands: Vec<Errand>,
    /// Every default that was filled in, as a sentence each, in the order met.
    pub filled_in: Vec<String>,
}

/// How amounts are printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Units {
    /// Cups, spoons, pounds, Fahrenheit.
    Us,
    /// Grams, litres, Celsius.
    Metric,
}

/// A minute of the day, counted from midnight of [`Day::date`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ClockTime(pub u32);

/// A stretch of the clock, from the first minute to the one it ends before.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Span {
    /// Its first minute.
    pub from: ClockTime,
    /// The minute it ends before.
    pub to: ClockTime,
}

/// Someone who works in the kitchen.
#[derive(Debug, Clone)]
pub struct Person {
    /// As the day file names them.
    pub name: String,
    /// When they are there; sorted, apart from one another.
    pub hours: Vec<Span>,
    /// When they are there but do not work.
    pub breaks: Vec<Span>,
    /// Careful work (hot sugar, pressure, lye, hot oil) only before this time; `None` means at any hour.
    pub careful_until: Option<ClockTime>,
    /// Whether careful work may be given to them at all.
    pub may_do_careful: bool,
}

/// The stove, the pots, the machines.
#[derive(Debug, Clone)]
pub struct Equipment {
    /// Burners in all.
    pub burners: u32,
    /// How many of them are strong enough for a canner.
    pub strong_burners: u32,
    /// Big pots, besides the canners.
    pub pots: u32,
    /// Ovens.
    pub ovens: u32,
    /// Food processors.
    pub processors: u32,
    /// Blenders.
    pub blenders: u32,
    /// Dehydrator trays.
    pub dryer_trays: u32,
    /// Sinks.
    pub sinks: u32,
    /// Jelly bags or straining cloths.
    pub jelly_bags: u32,
    /// Crocks or jars for ferments.
    pub crocks: u32,
    /// Bowls with their tare weights.
    pub bowls: Vec<Bowl>,
}

/// A bowl of the house.
#[derive(Debug, Clone)]
pub struct Bowl {
    /// As the day file names it.
    pub name: String,
    /// Its own weight; `None` when it was not given.
    pub tare: Option<Mass>,
}

/// A canner of the house.
#[derive(Debug, Clone)]
pub struct Canner {
    /// As the day file names it.
    pub id: String,
    /// What kind it is.
    pub kind: almanac::CannerKind,
    /// How many jars of a size it holds, as the owner found it; a size that is missing takes the printed load.
    pub holds: Vec<(almanac::JarSize, u32)>,
    /// For a dial: how far it reads high (+) or low (-).
    pub gauge_error: Option<Pressure>,
    /// For a dial: when it was last tested.
    pub gauge_tested: Option<Date>,
}

/// What came in and waits.
#[derive(Debug, Clone)]
pub struct Basket {
    /// The produce.
    pub produce: almanac::ProduceId,
    /// The words it was entered with.
    pub entered: String,
    /// Its weight, net of the bowl.
    pub net: Mass,
    /// How the weight was come by, as a sentence ("23 lb 6 oz less the blue bowl, 1 lb 5 oz").
    pub weighed: String,
    /// What state it is in.
    pub condition: Vec<Condition>,
    /// How long it will wait.
    pub waits: Waits,
    /// Whether `waits` is ours rather than the person's.
    pub waits_is_ours: bool,
}

/// What state produce is in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Condition {
    /// Nothing wrong with it.
    Sound,
    /// Skins burst.
    Split,
    /// Knocked or bruised.
    Bruised,
    /// Past its size: seedy, tough.
    Overgrown,
    /// Not ripe yet.
    Unripe,
    /// Fully ripe.
    Ripe,
    /// Soft, past its best.
    Soft,
    /// Picked up from the ground.
    Fallen,
    /// Wilted.
    Limp,
    /// Cut already.
    Cut,
    /// From the freezer.
    Frozen,
    /// From vines killed by frost.
    Frosted,
    /// Bought to fill up.
    Bought,
}

/// How long produce will wait before it is lost.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Waits {
    /// Today or never.
    Today,
    /// Until tomorrow.
    Tomorrow,
    /// Two to four days.
    Days,
    /// A week or more.
    Week,
}

/// Empty jars of one size and mouth.
#[derive(Debug, Clone)]
pub struct JarStock {
    /// The size.
    pub size: almanac::JarSize,
    /// The mouth.
    pub mouth: almanac::Mouth,
    /// How many.
    pub count: u32,
}

/// New lids of one mouth.
#[derive(Debug, Clone)]
pub struct LidStock {
    /// The mouth.
    pub mouth: almanac::Mouth,
    /// How many.
    pub count: u32,
}

/// What is in the cupboard. A `None` is not known: it is neither counted on nor fetched without a word.
#[derive(Debug, Clone, Default)]
pub struct Supplies {
    /// Vinegar, each bottle with its strength.
    pub vinegar: Vec<Vinegar>,
    /// Bottled lemon juice.
    pub bottled_lemon: Option<Volume>,
    /// Citric acid.
    pub citric_acid: Option<Mass>,
    /// Sugar by kind.
    pub sugar: Vec<(String, Mass)>,
    /// Salt by kind (`canning`, `table`, `kosher flake`).
    pub salt: Vec<(String, Mass)>,
    /// Pectin packages by kind (`powdered`, `liquid`).
    pub pectin: Vec<(String, u32)>,
    /// Freezer bags, quart size.
    pub bags: Option<u32>,
    /// Room in the freezer.
    pub freezer: Option<Volume>,
    /// Anything else by name, as it was written.
    pub other: Vec<(String, measure::Amount)>,
}

/// A stock of vinegar.
#[derive(Debug, Clone)]
pub struct Vinegar {
    /// The kind as written: white, cider.
    pub kind: String,
    /// How much.
    pub amount: Volume,
    /// Its acidity by the label; `None` when not given.
    pub strength: Option<Percent>,
}

/// What the household wants.
#[derive(Debug, Clone)]
pub enum Wish {
    /// This formula, or something of this produce, must be made.
    Must(WishFor),
    /// Not today.
    NotToday(WishFor),
    /// How well it is liked.
    Like {
        /// What.
        what: WishFor,
        /// How well.
        how: Liking,
    },
    /// How much of it the winter wants, and what stands on the shelf already.
    Target {
        /// What.
        what: WishFor,
        /// How many containers of `size` in all.
        containers: u32,
        /// How many of those stand there already.
        on_shelf: u32,
        /// Their size.
        size: almanac::JarSize,
    },
}

/// What a wish speaks of.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum WishFor {
    /// A formula.
    Formula(almanac::FormulaId),
    /// Anything made of a produce.
    Produce(almanac::ProduceId),
    /// A food of the process tables that no formula on file makes.
    Product(almanac::ProductId),
    /// Words that name nothing tested; kept so that the answer can say so.
    Unknown(String),
}

/// How well a thing is liked at the table.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Liking {
    /// Nobody eats it.
    NotEaten,
    /// It gets eaten in the end.
    Little,
    /// As most things.
    Well,
    /// First to go.
    Much,
}

/// Other work that shares the day.
#[derive(Debug, Clone)]
pub struct Errand {
    /// Its name.
    pub name: String,
    /// Its steps, one after the other.
    pub steps: Vec<ErrandStep>,
    /// Whether the day is no day without it (default yes).
    pub must: bool,
}

/// One step of an errand.
#[derive(Debug, Clone)]
pub struct ErrandStep {
    /// What is done.
    pub what: String,
    /// How long it takes.
    pub minutes: Minutes,
    /// Who is needed.
    pub attention: almanac::Attention,
    /// Whether it takes someone out of the house.
    pub away: bool,
    /// What it needs: `burner`, `oven`, `sink`, `processor`, `blender`, `pot`; a canner or a jar is refused.
    pub needs: Vec<Need>,
    /// Not before.
    pub earliest: Option<ClockTime>,
    /// Done by.
    pub done_by: Option<ClockTime>,
    /// How long may pass at most before the next step begins; `None` means as long as it likes.
    pub wait_at_most: Option<Minutes>,
    /// How long must pass at least before the next step begins.
    pub wait_at_least: Minutes,
}

/// Equipment that an errand may ask for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Need {
    /// A burner.
    Burner,
    /// The oven.
    Oven,
    /// A sink.
    Sink,
    /// The food processor.
    Processor,
    /// The blender.
    Blender,
    /// A big pot.
    Pot,
}
