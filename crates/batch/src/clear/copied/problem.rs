//! Why a copied formula is refused: each rule in one sentence, with what to do.

use almanac::{CannerKind, Citation, JarSize, Part, Verdict};
use measure::{Altitude, Minutes, Percent, Pressure, write_altitude, write_percent, write_pressure};

use super::FIRST_YEAR;
use crate::clear::answer::{Because, canner_name, jar_name, name_of};

/// Where in what was typed a rule refuses.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum CopiedPlace {
    /// The whole of it.
    Whole,
    /// Its name.
    Name,
    /// The year.
    Year,
    /// The food.
    Food,
    /// An ingredient, by its place.
    Ingredient(usize),
    /// A step, by its place.
    Step(usize),
    /// A process, by its place.
    Process(usize),
}

/// One rule that refuses.
#[derive(Debug, Clone, PartialEq)]
pub struct CopiedFault {
    /// Where.
    pub place: CopiedPlace,
    /// What.
    pub problem: CopiedProblem,
    /// Where the rule stands; none where it is our own care.
    pub source: Option<String>,
}

impl CopiedFault {
    pub(super) fn at(place: CopiedPlace, problem: CopiedProblem) -> Self {
        Self { place, problem, source: None }
    }

    pub(super) fn cited(place: CopiedPlace, problem: CopiedProblem, citation: Option<&Citation>) -> Self {
        Self { place, problem, source: citation.map(name_of) }
    }
}

/// What a rule finds.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum CopiedProblem {
    /// An edition of before the revision.
    #[error("it is of {year}, and nothing printed before {FIRST_YEAR} is taken")]
    TooOld {
        /// The year.
        year: u16,
    },
    /// A year that has not come.
    #[error("it is of {year}, and this is {this_year}")]
    NotYetPrinted {
        /// The year.
        year: u16,
        /// The year now.
        this_year: u16,
    },
    /// No ingredients.
    #[error("no ingredient is entered")]
    NoIngredients,
    /// No steps.
    #[error("no step is entered")]
    NoSteps,
    /// No process.
    #[error("no process is entered")]
    NoProcess,
    /// A food part without a weight.
    #[error("what {what} weighs is not known, so the balance cannot be checked")]
    NoWeight {
        /// The ingredient.
        what: String,
    },
    /// A part that is milder than what the thing is known to be.
    #[error("{what} is entered as {typed} and is {known}")]
    PartTooMild {
        /// The ingredient.
        what: String,
        /// As entered.
        typed: Part,
        /// As known.
        known: Part,
    },
    /// Something that is not known to be acid enough.
    #[error("nothing on file says what {what} is, or that it is acid enough")]
    NotKnownAsAcidFood {
        /// The ingredient.
        what: String,
    },
    /// An acid that is none, or none that counts.
    #[error("{what} does not count as acid")]
    NotAcid {
        /// The ingredient.
        what: String,
    },
    /// A food or practice that is refused wherever it stands.
    #[error("{words}: {item}: {reason}")]
    Refused {
        /// The words that call it up.
        words: String,
        /// What is refused.
        item: String,
        /// Why.
        reason: String,
        /// What to do instead.
        instead: String,
    },
    /// A thickener.
    #[error("{what} thickens, and a thick mix heats slowly")]
    Thickener {
        /// The ingredient.
        what: String,
    },
    /// Low-acid food without acid in a canner without pressure.
    #[error("low-acid food without acid does not go into a {}", canner_name(*.canner))]
    LowAcid {
        /// The canner.
        canner: CannerKind,
    },
    /// Nothing tested is like it.
    #[error("no tested formula is like it, so nothing says how much low-acid food the acid can bear")]
    NothingNear,
    /// More low-acid food than tested.
    #[error("{} of it is low-acid food; the nearest tested formula, {formula}, holds {}", write_percent(*.share), write_percent(*.limit))]
    TooMuchLowAcid {
        /// Its share.
        share: Percent,
        /// The tested share.
        limit: Percent,
        /// The tested formula.
        formula: String,
    },
    /// No acid where the nearest tested formula is kept by it.
    #[error("it holds no acid, and the nearest tested formula, {formula}, is kept by its acid")]
    NoAcid {
        /// The tested formula.
        formula: String,
    },
    /// Acid goes into each jar, and no amount is printed for this one.
    #[error("this food needs acid in each jar, and no amount is printed for a {}", jar_name(*.jar))]
    AcidNotPrinted {
        /// The jar.
        jar: JarSize,
    },
    /// Less acid than tested.
    #[error("{} of it is acid; the nearest tested formula, {formula}, holds {}", write_percent(*.share), write_percent(*.limit))]
    TooLittleAcid {
        /// Its share.
        share: Percent,
        /// The tested share.
        limit: Percent,
        /// The tested formula.
        formula: String,
    },
    /// More water than tested.
    #[error("its water is {} of the food and acid; the nearest tested formula, {formula}, has {}", write_percent(*.share), write_percent(*.limit))]
    TooMuchLiquid {
        /// Its share.
        share: Percent,
        /// The tested share.
        limit: Percent,
        /// The tested formula.
        formula: String,
    },
    /// Vinegar where the nearest tested formula has the stronger acid.
    #[error(
        "its acid is vinegar; the nearest tested formula, {formula}, has lemon or lime juice, which is stronger"
    )]
    VinegarForLemon {
        /// The tested formula.
        formula: String,
    },
    /// Shorter than print.
    #[error("{} min at {} are fewer than the {} min printed for the same food, pack and jar", .minutes.0, write_altitude(*.at), .printed.0)]
    Shorter {
        /// As entered.
        minutes: Minutes,
        /// As printed.
        printed: Minutes,
        /// A height at which it shows.
        at: Altitude,
    },
    /// Less pressure than print.
    #[error("{} at {} is less than the {} printed for the same food, pack and jar", write_pressure(*.pressure), write_altitude(*.at), write_pressure(*.printed))]
    LowerPressure {
        /// As entered.
        pressure: Pressure,
        /// As printed.
        printed: Pressure,
        /// A height at which it shows.
        at: Altitude,
    },
    /// No pressure where there must be one.
    #[error("no pressure is entered for a {}", canner_name(*.canner))]
    NoPressure {
        /// The canner.
        canner: CannerKind,
    },
    /// A pressure where there is none.
    #[error("a {} has no pressure", canner_name(*.canner))]
    PressureWithoutPressure {
        /// The canner.
        canner: CannerKind,
    },
    /// A pressure no home canner is run at.
    #[error("{} is no pressure that is printed for home canning", write_pressure(*.pressure))]
    PressureUnlikely {
        /// As entered.
        pressure: Pressure,
    },
    /// A time that is none.
    #[error("{} min is no time that is printed for home canning", .minutes.0)]
    MinutesUnlikely {
        /// As entered.
        minutes: Minutes,
    },
    /// Longer than a steam canner runs.
    #[error("{} min is longer than the {} min a steam canner runs at most", .minutes.0, .limit.0)]
    SteamTooLong {
        /// As entered.
        minutes: Minutes,
        /// The limit.
        limit: Minutes,
    },
    /// A jar above what is ever listed.
    #[error("a {} is larger than any jar listed for this", jar_name(*.jar))]
    JarTooLarge {
        /// The jar.
        jar: JarSize,
    },
    /// A food that the tables bar from the canner.
    #[error("{item}: {reason}")]
    FoodBarred {
        /// What is refused.
        item: String,
        /// Why.
        reason: String,
    },
    /// A band that ends below its beginning.
    #[error("the heights end at {} and begin at {}", write_altitude(*.to), write_altitude(*.from))]
    BandBackwards {
        /// The beginning.
        from: Altitude,
        /// The end.
        to: Altitude,
    },
    /// Two bands that share a height.
    #[error("two bands for the same pack, jar and canner both hold {}", write_altitude(*.at))]
    BandsOverlap {
        /// A height both hold.
        at: Altitude,
    },
    /// A row to confirm that no table has.
    #[error("no table has a row for this food, pack, jar and canner to be confirmed")]
    NothingToConfirm,
}

impl CopiedProblem {
    /// How strictly it refuses.
    #[must_use]
    pub fn verdict(&self) -> Verdict {
        match self {
            Self::Refused { .. }
            | Self::Thickener { .. }
            | Self::LowAcid { .. }
            | Self::SteamTooLong { .. }
            | Self::JarTooLarge { .. }
            | Self::FoodBarred { .. }
            | Self::NotAcid { .. } => Verdict::DoNot,
            _ => Verdict::NotTested,
        }
    }

    /// Its code in the answer.
    #[must_use]
    pub fn code(&self) -> Because {
        match self {
            Self::Thickener { .. } => Because::Thickened,
            Self::LowAcid { .. } | Self::FoodBarred { .. } => Because::LowAcid,
            Self::NoAcid { .. } | Self::AcidNotPrinted { .. } => Because::AcidMissing,
            Self::NotAcid { .. } | Self::TooLittleAcid { .. } | Self::VinegarForLemon { .. } => {
                Because::AcidWeaker
            }
            Self::TooMuchLowAcid { .. } | Self::TooMuchLiquid { .. } | Self::NothingNear => {
                Because::RatioChanged
            }
            Self::SteamTooLong { .. } => Because::SteamLimit,
            Self::JarTooLarge { .. } => Because::JarTooLarge,
            Self::Refused { .. } => Because::BannedPractice,
            Self::NothingToConfirm => Because::NoRow,
            _ => Because::EnteredByYou,
        }
    }

    /// One thing to do about it.
    #[must_use]
    pub fn hint(&self) -> String {
        match self {
            Self::TooOld { .. } => "look for a newer edition; until then keep it cold or freeze it".into(),
            Self::NotYetPrinted { .. } => {
                "look at the page with the issuer's name; the year stands there".into()
            }
            Self::NoIngredients => "enter every ingredient as it is printed".into(),
            Self::NoSteps => "enter every step as it is printed".into(),
            Self::NoProcess => "enter every row of the process table, one for each band of heights".into(),
            Self::NoWeight { what } => format!("give the weight of {what}, such as \"2 lb\""),
            Self::PartTooMild { known, .. } => format!("enter it as part = \"{known}\""),
            Self::NotKnownAsAcidFood { .. } => "enter it as part = \"low-acid\"".into(),
            Self::NotAcid { .. } => {
                "acid is vinegar of 5 percent or more, bottled lemon or lime juice, or citric acid".into()
            }
            Self::Refused { instead, .. } => instead.clone(),
            Self::Thickener { .. } => "leave it out and thicken when you serve it, or freeze it".into(),
            Self::LowAcid { .. } => "use a pressure canner with a printed process, or freeze it".into(),
            Self::NoAcid { .. } => {
                "look at the page for vinegar, bottled lemon juice or citric acid, or freeze it".into()
            }
            Self::AcidNotPrinted { .. } => "use a jar for which acid is printed, or freeze it".into(),
            Self::NothingNear => "keep it cold or freeze it, and ask your local extension service".into(),
            Self::TooMuchLowAcid { formula, .. }
            | Self::TooLittleAcid { formula, .. }
            | Self::TooMuchLiquid { formula, .. }
            | Self::VinegarForLemon { formula } => {
                format!("make {formula} instead, or keep this one cold or frozen; check your typing first")
            }
            Self::Shorter { .. } | Self::LowerPressure { .. } => {
                "use the printed row that `clear` gives; check your typing first".into()
            }
            Self::NoPressure { .. } => "enter the pressure as it is printed, such as \"11 psi\"".into(),
            Self::PressureWithoutPressure { .. } => {
                "take the pressure out, or name the pressure canner".into()
            }
            Self::PressureUnlikely { .. } | Self::MinutesUnlikely { .. } => "look at the page again".into(),
            Self::SteamTooLong { .. } => "use a boiling-water canner".into(),
            Self::JarTooLarge { .. } => "use a quart or a smaller jar".into(),
            Self::FoodBarred { .. } => "use a pressure canner, or freeze it".into(),
            Self::BandBackwards { .. } | Self::BandsOverlap { .. } => {
                "enter the bands as they are printed; each height stands in one".into()
            }
            Self::NothingToConfirm => "copy the whole formula in, as [[copied]]".into(),
        }
    }
}
