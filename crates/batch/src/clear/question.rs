//! What is asked, and the ways a question itself can be wrong.

use almanac::{CannerKind, FormulaId, JarSize, Pack, ProductId};
use measure::{Altitude, Pressure};

/// When a dial gauge was last tested.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Tested {
    /// Within the last year, and nothing happened to it since.
    WithinTheYear,
    /// Longer ago, or something happened to it since.
    Overdue,
    /// Never.
    Never,
    /// The person has not said; the answer reminds of the yearly test.
    NotSaid,
}

/// What is known of the gauge of a pressure canner.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gauge {
    /// How much it reads high (above zero) or low (below zero), as its last test found.
    pub error: Option<Pressure>,
    /// When that was.
    pub tested: Tested,
}

/// The question: may this be processed so?
#[derive(Debug, Clone, PartialEq)]
pub struct ClearQuestion {
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
    /// The gauge; `None` when nothing was said of it.
    pub gauge: Option<Gauge>,
    /// The formula the food is made by.
    pub formula: Option<FormulaId>,
    /// What the cook wants to do otherwise, in the cook's own words.
    pub changes: Vec<String>,
}

/// The question: may this formula be changed so? What is left open is not needed, or is asked for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ChangesQuestion {
    /// The formula.
    pub formula: FormulaId,
    /// How it goes into the jar.
    pub pack: Option<Pack>,
    /// The jar.
    pub jar: Option<JarSize>,
    /// The canner.
    pub canner: Option<CannerKind>,
    /// The height above the sea.
    pub altitude: Option<Altitude>,
    /// What the cook wants to do otherwise, in the cook's own words.
    pub changes: Vec<String>,
}

/// A question that cannot be judged as it stands; nothing has been answered.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum ClearError {
    /// No process table knows the food.
    #[error("no process table has a food {product}\nhint: list the foods and use one of their names")]
    UnknownFood {
        /// What was asked for.
        product: ProductId,
    },
    /// No formula has that name.
    #[error("no formula {formula} is on file\nhint: list the formulas and use one of their names")]
    UnknownFormula {
        /// What was asked for.
        formula: FormulaId,
    },
    /// The formula makes another food.
    #[error(
        "the formula {formula} makes {makes}, not {product}\nhint: ask for {makes}, or leave the formula out"
    )]
    FormulaOfAnotherFood {
        /// The formula.
        formula: FormulaId,
        /// The food it makes.
        makes: ProductId,
        /// The food asked for.
        product: ProductId,
    },
    /// The gauge error is no number a gauge can have.
    #[error(
        "a gauge error of {psi} psi cannot be right; a dial ends well below {limit} psi\nhint: give the error as \
         the gauge test wrote it, such as +0.5 psi"
    )]
    GaugeErrorOutOfRange {
        /// What was given.
        psi: f64,
        /// The largest error that is taken for one.
        limit: f64,
    },
    /// No change was named.
    #[error("no change is named\nhint: say what is to be done otherwise, such as \"less salt\"")]
    NoChange,
    /// Whether the change is printed hangs on something that was left open.
    #[error("whether a process is printed for this hangs on the {}\nhint: ask again and say it", .on.join(" and the "))]
    HangsOn {
        /// What: the pack, the jar, the canner, the altitude.
        on: Vec<&'static str>,
    },
    /// A change was not understood, or not all of it.
    #[error(
        "the change {change:?} was not understood: {because}\nhint: say one thing at a time, such as \"less \
         salt\", \"honey instead of sugar\", \"add corn\" or \"quart instead of pint\""
    )]
    ChangeNotUnderstood {
        /// The cook's words.
        change: String,
        /// What about them.
        because: Misread,
    },
}

/// What about a change was not understood.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Misread {
    /// There are no words in it.
    #[error("there is nothing to read")]
    Empty,
    /// No way of saying a change was recognized in it.
    #[error("it names no change that is known")]
    NoSuchChange,
    /// Something is to be changed that is not known.
    #[error("{what:?} is no ingredient that is known")]
    NoSuchIngredient {
        /// The words left over.
        what: String,
    },
    /// Something is to be lowered, left out or replaced that the formula does not hold.
    #[error("{formula} holds no {what}")]
    NotInFormula {
        /// The thing.
        what: String,
        /// The formula.
        formula: FormulaId,
    },
    /// It names another jar, pack or canner than a change before it.
    #[error("an earlier change names another {what}")]
    Contradiction {
        /// What is named twice.
        what: &'static str,
    },
    /// An earlier change takes away what this one puts in, or the other way round.
    #[error("an earlier change says the opposite of {what}")]
    Opposite {
        /// The thing.
        what: String,
    },
    /// The jar named in the change is not the jar of the question, and neither takes its place.
    #[error("it is about a {old} and the question is about a {asked}")]
    AnotherJar {
        /// The jar the change starts from.
        old: JarSize,
        /// The jar of the question.
        asked: JarSize,
    },
}
