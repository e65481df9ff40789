//! The answer `fit/1`: batches with amounts, jars and loads, what is left over, and what must be known.

use almanac::{Citation, FormulaId, JarSize, Part};
use measure::{Fraction, Mass};
use serde::{Serialize, Serializer};

use super::measurable::Measured;

/// One formula fitted to what is there. Fitting is no permission: a process comes from a clearance only.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Fit {
    /// The name and number of the format.
    pub format: &'static str,
    /// Whether it can be made.
    pub verdict: FitVerdict,
    /// The question as it was understood.
    pub question: Understood,
    /// The batches, in the order to make them; none when it does not fit.
    pub batches: Vec<FittedBatch>,
    /// How it will keep.
    pub keeps: Keeps,
    /// What is left and where it may go.
    pub left_over: Vec<LeftOver>,
    /// Why it does not fit; empty when it does.
    pub because: Vec<Because>,
    /// What must be known beside the figures.
    pub notes: Vec<Note>,
    /// The paper trail.
    pub sources: Vec<Trail>,
}

/// Whether a formula can be made of what is there.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum FitVerdict {
    /// It can.
    Fits,
    /// It cannot; `because` says why.
    DoesNotFit,
}

/// The question as it was understood.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Understood {
    /// The formula.
    #[serde(serialize_with = "as_text")]
    pub formula: FormulaId,
    /// What there is, by the formula's own names.
    pub have: Vec<UnderstoodHave>,
    /// The jars that will be filled.
    #[serde(serialize_with = "as_texts")]
    pub jars: Vec<JarSize>,
    /// The canner named in the question.
    pub canner: Option<String>,
    /// The altitude in feet.
    pub altitude_ft: Option<u32>,
}

/// An ingredient that is there.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct UnderstoodHave {
    /// Its place in the formula.
    pub index: usize,
    /// Its name in the formula.
    pub ingredient: String,
    /// How much there is.
    #[serde(rename = "grams", serialize_with = "as_grams")]
    pub mass: Mass,
}

/// One batch.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FittedBatch {
    /// The share of the printed formula.
    #[serde(serialize_with = "as_text")]
    pub factor: Fraction,
    /// The amounts.
    pub ingredients: Vec<FittedIngredient>,
    /// Jars to have ready, by size.
    pub jars: Vec<JarCount>,
    /// Bags to have ready, for what is frozen or dried and has no jars.
    pub bags: Option<BagCount>,
    /// What goes into the canner.
    pub loads: Vec<Load>,
}

/// One ingredient of a batch.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FittedIngredient {
    /// Its place in the formula.
    pub index: usize,
    /// Its name in the formula.
    pub ingredient: String,
    /// Its part in the safety balance.
    #[serde(serialize_with = "as_text")]
    pub part: Part,
    /// How it is prepared, as printed.
    pub prep: String,
    /// Whether the publication leaves it to the cook.
    pub optional: bool,
    /// The printed amount times the factor; `None` where none is printed.
    pub exact: Option<Measured>,
    /// The amount to measure.
    pub measured: Option<Measured>,
    /// For each of what the amount is meant, where it is not for the batch.
    pub per: Option<&'static str>,
    /// What the measured amount weighs; `None` where no row says.
    #[serde(rename = "grams", serialize_with = "as_grams_or_null")]
    pub weight: Option<Mass>,
    /// What the measured amount takes of the produce as bought or picked; `None` where it cannot be told.
    #[serde(rename = "takes_grams", serialize_with = "as_grams_or_null")]
    pub takes: Option<Mass>,
    /// How far the measured amount lies from the exact one, in percent.
    #[serde(serialize_with = "as_tenths")]
    pub moved_percent: f64,
}

/// Jars of one size: fewest, likeliest, most.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct JarCount {
    /// The size.
    #[serde(serialize_with = "as_text")]
    pub size: JarSize,
    /// The fewest to expect.
    pub low: u32,
    /// The likeliest number.
    pub likely: u32,
    /// The most; so many are made ready.
    pub high: u32,
}

/// Freezer bags or boxes of one quart: fewest, likeliest, most.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct BagCount {
    /// What they hold.
    pub size: &'static str,
    /// The fewest to expect.
    pub low: u32,
    /// The likeliest number.
    pub likely: u32,
    /// The most; so many are made ready.
    pub high: u32,
}

/// What goes into a canner at once.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Load {
    /// Which canner.
    pub canner: String,
    /// Which jars.
    #[serde(serialize_with = "as_text")]
    pub size: JarSize,
    /// How many of them.
    pub jars: u32,
    /// How many would go in.
    pub holds: u32,
}

/// How the product keeps.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Keeps {
    /// On the shelf, if a clearance gives a process; else cold.
    ShelfIfCleared,
    /// In the refrigerator or a cold place only.
    Cold,
    /// In the freezer.
    Frozen,
    /// Dried, airtight.
    Dried,
}

/// Something left over, with a place to go.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LeftOver {
    /// What it is.
    pub what: String,
    /// How much; `None` where it cannot be told before.
    #[serde(rename = "grams", serialize_with = "as_grams_or_null")]
    pub mass: Option<Mass>,
    /// Where it may go, in words.
    pub goes_to: String,
}

/// A reason why a formula does not fit.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Because {
    /// Which kind of reason.
    pub code: BecauseCode,
    /// In words, with what is missing.
    pub text: String,
}

/// The kinds of reasons why a formula does not fit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum BecauseCode {
    /// Too little for the smallest permitted batch.
    TooLittle,
    /// A formula that is made whole, asked for in part.
    WholeBatchOnly,
    /// A jar for which no process is on file.
    JarNotPermitted,
    /// No batch was wanted.
    NoBatchWanted,
}

/// Something to know beside the figures.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Note {
    /// Which kind of note.
    pub code: NoteCode,
    /// In words.
    pub text: String,
    /// Where it stands; `None` where it is ours.
    pub source: Option<String>,
}

/// The kinds of notes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum NoteCode {
    /// All parts go by one factor.
    RatioLocked,
    /// The formula may not be called tested, so no jar of it stands on the shelf.
    NotTested,
    /// Made whole or not at all.
    WholeBatchesOnly,
    /// A larger amount is made as several batches.
    SeveralBatches,
    /// The amount is free; quality only.
    FreeByWeight,
    /// The ingredient that sets the size.
    Limiting,
    /// A printed weight stands for a printed measure.
    PrintedEquivalence,
    /// A weight worked out from a density and a handbook yield.
    EstimatedWeight,
    /// No row gives the weight of a measure.
    NoWeightOnFile,
    /// An amount moved more than 2 % to a mark.
    Moved,
    /// The factor went down to the next that can be measured.
    FactorMoved,
    /// Salt by weight.
    SaltByWeight,
    /// How much cover liquid, and how it compares with what the jars take.
    CoverLiquid,
    /// The estimate of jars.
    JarEstimate,
    /// Several jar sizes, and whether they may go together.
    MixedJars,
    /// A load smaller than the canner holds, or the usual load taken for want of a canner.
    CannerLoad,
    /// A jar that no load has room for.
    SpareJar,
    /// A printed range and which end was taken.
    PrintedRange,
    /// A jar the formula does not name.
    JarSize,
    /// Something the publication leaves open.
    NotPrinted,
}

/// The paper trail of one figure.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct Trail {
    /// The publication.
    pub id: String,
    /// The place in it.
    pub locator: String,
    /// How the figure got here.
    pub basis: String,
    /// How far the publication is trusted.
    pub rank: String,
}

impl From<&Citation> for Trail {
    fn from(citation: &Citation) -> Self {
        Self {
            id: citation.source.to_string(),
            locator: citation.locator.to_string(),
            basis: citation.basis.to_string(),
            rank: citation.rank.to_string(),
        }
    }
}

impl Serialize for Measured {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        /// A number as a cook writes it, and its unit.
        #[derive(Serialize)]
        struct Written {
            value: String,
            unit: super::measurable::CookUnit,
        }
        Written { value: self.value.to_string(), unit: self.unit }.serialize(serializer)
    }
}

fn as_text<T: ToString, S: Serializer>(value: &T, serializer: S) -> Result<S::Ok, S::Error> {
    serializer.serialize_str(&value.to_string())
}

fn as_texts<T: ToString, S: Serializer>(values: &[T], serializer: S) -> Result<S::Ok, S::Error> {
    serializer.collect_seq(values.iter().map(ToString::to_string))
}

fn as_grams<S: Serializer>(mass: &Mass, serializer: S) -> Result<S::Ok, S::Error> {
    serializer.serialize_f64(to_tenth(mass.as_grams()))
}

#[expect(clippy::ref_option, reason = "the shape that serialize_with asks for")]
fn as_grams_or_null<S: Serializer>(mass: &Option<Mass>, serializer: S) -> Result<S::Ok, S::Error> {
    mass.map(|mass| to_tenth(mass.as_grams())).serialize(serializer)
}

fn as_tenths<S: Serializer>(value: &f64, serializer: S) -> Result<S::Ok, S::Error> {
    serializer.serialize_f64(to_tenth(*value))
}

fn to_tenth(value: f64) -> f64 {
    // Adding zero turns a negative zero into a plain one.
    libm::round(value * 10.0) / 10.0 + 0.0
}
