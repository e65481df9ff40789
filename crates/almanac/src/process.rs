//! Thermal processes: what is printed for a food, a pack, a jar, a canner and a height above the sea.
//!
//! Figures here can hurt people when they are wrong. A [`Process`] exists only because a row of `data/` was read:
//! its fields are private, nothing outside this module can make or change one, and it cannot be read back from
//! text.
//!
//! ```compile_fail,E0451
//! use almanac::Process;
//! let invented = Process { minutes: measure::Minutes(10), ..todo!() };
//! ```
//!
//! ```compile_fail,E0277
//! let from_text: almanac::Process = toml::from_str("minutes = 10").unwrap();
//! ```
//!
//! ```compile_fail,E0599
//! let empty = almanac::Process::default();
//! ```

mod find;
mod read;

use measure::{Altitude, Length, Minutes, Pressure};

use crate::closed_list::closed_list;
use crate::jar::JarSize;
use crate::source::Citation;
use crate::{ProductId, RefusalId, RuleId};

pub(crate) use read::{ProcessRows, read_processes};

closed_list!(
    /// How the food goes into the jar.
    Pack {
        /// Heated first.
        Hot = "hot",
        /// As it is.
        Raw = "raw",
    }
);

closed_list!(
    /// The kind of canner.
    CannerKind {
        /// Jars under boiling water.
        BoilingWater = "boiling-water",
        /// An atmospheric steam canner.
        Steam = "steam",
        /// A pressure canner with a dial gauge.
        Dial = "dial",
        /// A pressure canner with a weighted gauge.
        Weighted = "weighted",
    }
);

impl CannerKind {
    /// Whether the food is heated above the boiling point of water.
    #[must_use]
    pub const fn is_pressure(self) -> bool {
        matches!(self, Self::Dial | Self::Weighted)
    }
}

closed_list!(
    /// The family of foods a process table belongs to.
    FoodGroup {
        /// Fruit.
        Fruit = "fruit",
        /// Fruit juices and syrups.
        Juice = "juice",
        /// Tomatoes and what is made of them.
        Tomato = "tomato",
        /// Salsas and hot sauces.
        Salsa = "salsa",
        /// Pickles and relishes in vinegar.
        Pickle = "pickle",
        /// Ferments.
        Fermented = "fermented",
        /// Sweet spreads.
        JamJelly = "jam-jelly",
        /// Vegetables.
        Vegetable = "vegetable",
        /// Soups.
        Soup = "soup",
        /// Meat, poultry and fish.
        Meat = "meat",
    }
);

/// A band of heights above the sea, both ends included.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Band {
    /// The lowest height.
    pub min: Altitude,
    /// The highest height; none when the band is open above.
    pub max: Option<Altitude>,
}

impl Band {
    /// Whether a height lies in the band.
    #[must_use]
    pub fn holds(&self, altitude: Altitude) -> bool {
        self.min <= altitude && self.max.is_none_or(|max| altitude <= max)
    }
}

/// A food with printed processes.
#[derive(Debug, Clone, PartialEq)]
pub struct Product {
    /// Its name in the tables.
    pub id: ProductId,
    /// Its name for people; the second one where the pressure table words it otherwise.
    pub names: Vec<Box<str>>,
    /// Its family.
    pub group: FoodGroup,
    /// The canners a process is printed for. A steam canner stands beside boiling water.
    pub canners: Vec<CannerKind>,
}

/// A printed process, taken from one row.
///
/// There is no way to make one outside this module, not even from another one.
#[derive(Debug, Clone, PartialEq)]
pub struct Process {
    product: ProductId,
    pack: Pack,
    jar_row: JarSize,
    canner: CannerKind,
    minutes: Minutes,
    pressure: Option<Pressure>,
    headspace: Length,
    band: Band,
    option: Box<str>,
    acid_in_each_jar: bool,
    rest: Option<Minutes>,
    jar_rules: Vec<RuleId>,
    citation: Citation,
}

impl Process {
    /// The food.
    #[must_use]
    pub fn product(&self) -> &ProductId {
        &self.product
    }

    /// The pack.
    #[must_use]
    pub fn pack(&self) -> Pack {
        self.pack
    }

    /// The jar the row is printed for: the jar asked about, or the next larger printed one.
    #[must_use]
    pub fn jar_row(&self) -> JarSize {
        self.jar_row
    }

    /// The rules by which a smaller jar takes the row's minutes; none when the row is printed for the jar itself.
    #[must_use]
    pub fn jar_rules(&self) -> &[RuleId] {
        &self.jar_rules
    }

    /// The canner.
    #[must_use]
    pub fn canner(&self) -> CannerKind {
        self.canner
    }

    /// How long.
    #[must_use]
    pub fn minutes(&self) -> Minutes {
        self.minutes
    }

    /// At what gauge pressure; none without pressure.
    #[must_use]
    pub fn pressure(&self) -> Option<Pressure> {
        self.pressure
    }

    /// The room left under the lid.
    #[must_use]
    pub fn headspace(&self) -> Length {
        self.headspace
    }

    /// The heights the row is printed for.
    #[must_use]
    pub fn band(&self) -> Band {
        self.band
    }

    /// What tells this line from its alternatives; empty when there is only one.
    #[must_use]
    pub fn option(&self) -> &str {
        &self.option
    }

    /// Whether the row is printed for food that gets acid jar by jar.
    #[must_use]
    pub fn acid_in_each_jar(&self) -> bool {
        self.acid_in_each_jar
    }

    /// How long the jars rest in the canner with the heat off, where a rule prints it.
    #[must_use]
    pub fn rest(&self) -> Option<Minutes> {
        self.rest
    }

    /// Where the row stands.
    #[must_use]
    pub fn citation(&self) -> &Citation {
        &self.citation
    }
}

/// A line of the process tables as one may list it: which jar, pack, canner and band there is a row for. Its
/// figures are seen only when the row may be called tested.
#[derive(Debug, Clone, Copy)]
pub struct PrintedLine<'a> {
    row: &'a Process,
}

impl<'a> PrintedLine<'a> {
    /// The pack.
    #[must_use]
    pub fn pack(&self) -> Pack {
        self.row.pack
    }

    /// The jar.
    #[must_use]
    pub fn jar(&self) -> JarSize {
        self.row.jar_row
    }

    /// The canner.
    #[must_use]
    pub fn canner(&self) -> CannerKind {
        self.row.canner
    }

    /// The heights.
    #[must_use]
    pub fn band(&self) -> Band {
        self.row.band
    }

    /// Where it stands.
    #[must_use]
    pub fn citation(&self) -> &'a Citation {
        &self.row.citation
    }

    /// The process; none when the row is recalled or its source is of lower rank.
    #[must_use]
    pub fn process(&self) -> Option<&'a Process> {
        self.row.citation.may_be_called_tested().then_some(self.row)
    }
}

/// What is asked of the process tables.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ProcessQuestion {
    /// The food.
    pub product: ProductId,
    /// How it goes into the jar.
    pub pack: Pack,
    /// The jar.
    pub jar: JarSize,
    /// The canner.
    pub canner: CannerKind,
    /// The height above the sea.
    pub altitude: Altitude,
}

/// Why there is no process to serve. A refusal, not an error.
#[derive(Debug, Clone, PartialEq)]
pub enum NoProcess {
    /// The food has no line in any table.
    ProductUnknown {
        /// What was asked for.
        product: ProductId,
    },
    /// Nothing is printed for this kind of canner.
    NoRowForCanner {
        /// The canners something is printed for.
        printed: Vec<CannerKind>,
        /// The refusal that bars it, with where it stands, where one is printed.
        barred_by: Option<(RefusalId, Citation)>,
    },
    /// The food is not printed for this pack.
    PackNotPrinted {
        /// The packs that are printed for this canner.
        printed: Vec<Pack>,
    },
    /// The jar is larger than any that is printed.
    JarTooLarge {
        /// The largest printed jar.
        largest: JarSize,
        /// The rule against larger jars, where one is on file.
        barred_by: Option<Citation>,
    },
    /// The jar has no line of its own and no rule on file gives it the line of a larger one.
    JarNotPrinted {
        /// The printed jars.
        printed: Vec<JarSize>,
    },
    /// The place lies above the last printed band.
    AboveLastBand {
        /// The top of the last band.
        last: Altitude,
        /// The table that ends there.
        citation: Citation,
    },
    /// The steam canner would have to run longer than is printed for it.
    SteamLimit {
        /// The printed minutes of the boiling-water row.
        minutes: Minutes,
        /// The longest time printed for a steam canner; none when the rule is not on file.
        limit: Option<Minutes>,
        /// The rule.
        barred_by: Option<Citation>,
    },
    /// Acid must go into each jar, and no amount is on file for this one.
    AcidNotPrinted {
        /// The row that asks for acid.
        citation: Citation,
    },
    /// There is a row, but it was only recalled.
    OnFileUnverified {
        /// Where to look it up.
        citation: Citation,
    },
    /// There is a row, but only from a source of lower rank.
    OnFileLowerRank {
        /// Where it stands.
        citation: Citation,
    },
}
