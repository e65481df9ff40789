//! The answer, as people and programs read it: `clearance/1`.

use almanac::{AcidRule, Band, CannerKind, Citation, JarSize, Process, RuleId, Verdict};
use measure::{Length, Pressure, Volume};
use serde::ser::SerializeStruct as _;
use serde::{Serialize, Serializer};

use super::findings::Findings;
use super::question::{ChangesQuestion, ClearQuestion};

/// Why the answer is not *tested*: the closed list of codes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Because {
    /// No line is printed for this canner or jar.
    NoRow,
    /// The food is not printed for this pack.
    PackNotPrinted,
    /// The jar is larger than any printed one.
    JarTooLarge,
    /// The place lies above the last printed band.
    AltitudeAboveLastBand,
    /// The lines for a gauge of this kind are missing.
    GaugeKindMissing,
    /// The dial gauge was not tested within the year.
    GaugeUntested,
    /// The dial gauge is too far off, or no rule says what its error means.
    GaugeOff,
    /// Acid is left out, or no amount of it is on file.
    AcidMissing,
    /// The acid is less or weaker than printed.
    AcidWeaker,
    /// An amount was changed.
    RatioChanged,
    /// Something was added.
    IngredientAdded,
    /// Something takes the place of something else.
    IngredientReplaced,
    /// The batch is larger or smaller than printed.
    BatchChanged,
    /// It is thickened.
    Thickened,
    /// The food is low in acid and the canner is too cool for it.
    LowAcid,
    /// The process is too long for a steam canner.
    SteamLimit,
    /// A practice that publications bar.
    BannedPractice,
    /// A row was recalled and never seen in print.
    OnFileUnverified,
    /// A row stands only in a source of lower rank.
    OnFileLowerRank,
    /// The formula is the household's own.
    OwnFormula,
    /// The process was copied from a publication by the household.
    EnteredByYou,
    /// The treatment is printed without a limit of altitude.
    NoAltitudeLimitPrinted,
    /// A model finds the heat too little.
    VetoedByModel,
}

/// One reason.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Reason {
    /// Its code.
    pub code: Because,
    /// In words.
    pub text: String,
    /// Where it stands; `None` where nothing printed says it.
    pub source: Option<String>,
}

/// One thing that may be done instead.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Instead {
    /// What kind of thing: a jar, a pack, a canner, a food, a practice.
    pub what: &'static str,
    /// In words.
    pub text: String,
    /// Where it stands; `None` where it is our own advice.
    pub source: Option<String>,
}

/// A hazard or a condition that goes with a tested answer, to be shown where the act is.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Rider {
    /// A short name that stays the same.
    pub code: &'static str,
    /// In words.
    pub text: String,
    /// Where it stands; `None` where it is our own advice.
    pub source: Option<String>,
}

/// One printed line, enough by itself, with the dial reading to keep.
///
/// It holds a [`Process`], so it exists only where a row was read.
#[derive(Debug, Clone, PartialEq)]
pub struct ClearedLine {
    process: Process,
    hold: Option<Pressure>,
}

impl ClearedLine {
    pub(crate) fn new(process: Process, hold: Option<Pressure>) -> Self {
        Self { process, hold }
    }

    /// The printed process.
    #[must_use]
    pub fn process(&self) -> &Process {
        &self.process
    }

    /// The dial reading to keep, never below the printed pressure; `None` without a dial.
    #[must_use]
    pub fn hold(&self) -> Option<Pressure> {
        self.hold
    }
}

/// The acid that goes into each jar; each amount is enough by itself.
#[derive(Debug, Clone, PartialEq)]
pub struct AcidDose {
    rule: AcidRule,
}

impl AcidDose {
    pub(crate) fn new(rule: AcidRule) -> Self {
        Self { rule }
    }

    /// The printed rule.
    #[must_use]
    pub fn rule(&self) -> &AcidRule {
        &self.rule
    }
}

/// Where something in the answer stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cited(pub(crate) Citation);

impl Cited {
    /// The citation itself.
    #[must_use]
    pub fn citation(&self) -> &Citation {
        &self.0
    }
}

/// What one change comes to by itself.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ClearedChange {
    /// The cook's words.
    pub said: String,
    /// What publications print of it.
    pub verdict: Verdict,
    /// Where it is printed as allowed, and how far.
    pub allowed: Vec<Rider>,
    /// What bars it or is missing.
    pub because: Vec<Reason>,
    /// What may be done instead.
    pub instead: Vec<Instead>,
    /// The change rules that decided; none when no rule speaks of it.
    pub rules: Vec<RuleId>,
    /// Where all this stands.
    pub sources: Vec<Cited>,
}

impl ClearedChange {
    pub(crate) fn of(said: &str, found: Findings) -> Self {
        let Findings { verdict, because, instead, riders, sources, rules } = found;
        Self { said: said.to_owned(), verdict, allowed: riders, because, instead, rules, sources }
    }
}

/// The answer to a question about changes alone. It holds no process.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ChangesCleared {
    /// What was asked.
    pub question: ChangesQuestion,
    /// The strictest of everything that was found.
    pub verdict: Verdict,
    /// Each change by itself.
    pub changes: Vec<ClearedChange>,
    /// Hazards and conditions.
    pub riders: Vec<Rider>,
    /// What is missing or barred, of all changes together.
    pub because: Vec<Reason>,
    /// What may be done instead.
    pub instead: Vec<Instead>,
    /// Where all this stands.
    pub sources: Vec<Cited>,
}

/// The whole answer.
#[derive(Debug, Clone, PartialEq)]
pub struct Clearance {
    /// What was asked.
    pub question: ClearQuestion,
    /// The strictest of everything that was found.
    pub verdict: Verdict,
    /// Whole printed lines, each enough by itself; empty unless tested.
    pub processes: Vec<ClearedLine>,
    /// The acid for each jar, where it is added jar by jar.
    pub acid: Option<AcidDose>,
    /// Hazards and conditions.
    pub riders: Vec<Rider>,
    /// What is missing or barred.
    pub because: Vec<Reason>,
    /// What may be done instead.
    pub instead: Vec<Instead>,
    /// Each change by itself.
    pub changes: Vec<ClearedChange>,
    /// Where all this stands.
    pub sources: Vec<Cited>,
}

impl Serialize for Clearance {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let mut keys = to.serialize_struct("Clearance", 12)?;
        keys.serialize_field("format", "clearance/1")?;
        keys.serialize_field("judged", "process")?;
        keys.serialize_field("verdict", self.verdict.as_str())?;
        keys.serialize_field("question", &Asked(&self.question))?;
        keys.serialize_field("processes", &self.processes)?;
        keys.serialize_field("acid", &self.acid)?;
        keys.serialize_field("riders", &self.riders)?;
        keys.serialize_field("because", &self.because)?;
        keys.serialize_field("instead", &self.instead)?;
        keys.serialize_field("changes", &self.changes)?;
        keys.serialize_field("entered", &None::<()>)?;
        keys.serialize_field("sources", &self.sources)?;
        keys.end()
    }
}

/// The question as the answer repeats it.
struct Asked<'a>(&'a ClearQuestion);

impl Serialize for Asked<'_> {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let ClearQuestion { product, pack, jar, canner, altitude, gauge, formula, changes } = self.0;
        let error = gauge.and_then(|gauge| gauge.error);
        let mut keys = to.serialize_struct("Question", 8)?;
        keys.serialize_field("food", product.as_str())?;
        keys.serialize_field("pack", pack.as_str())?;
        keys.serialize_field("jar", jar.as_str())?;
        keys.serialize_field("canner", canner.as_str())?;
        keys.serialize_field("altitude_ft", &altitude.as_feet())?;
        keys.serialize_field("gauge_error_psi", &error.map(|error| Plain(error.as_psi())))?;
        keys.serialize_field("with", &formula.as_ref().map(|formula| formula.as_str()))?;
        keys.serialize_field("changes", changes)?;
        keys.end()
    }
}

impl Serialize for ChangesCleared {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let mut keys = to.serialize_struct("Clearance", 12)?;
        keys.serialize_field("format", "clearance/1")?;
        keys.serialize_field("judged", "changes")?;
        keys.serialize_field("verdict", self.verdict.as_str())?;
        keys.serialize_field("question", &AskedChanges(&self.question))?;
        keys.serialize_field("processes", &[(); 0])?;
        keys.serialize_field("acid", &None::<()>)?;
        keys.serialize_field("riders", &self.riders)?;
        keys.serialize_field("because", &self.because)?;
        keys.serialize_field("instead", &self.instead)?;
        keys.serialize_field("changes", &self.changes)?;
        keys.serialize_field("entered", &None::<()>)?;
        keys.serialize_field("sources", &self.sources)?;
        keys.end()
    }
}

/// A question about changes as the answer repeats it.
struct AskedChanges<'a>(&'a ChangesQuestion);

impl Serialize for AskedChanges<'_> {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let ChangesQuestion { formula, pack, jar, canner, altitude, changes } = self.0;
        let mut keys = to.serialize_struct("Question", 8)?;
        keys.serialize_field("food", &None::<()>)?;
        keys.serialize_field("pack", &pack.map(|pack| pack.as_str()))?;
        keys.serialize_field("jar", &jar.map(|jar| jar.as_str()))?;
        keys.serialize_field("canner", &canner.map(|canner| canner.as_str()))?;
        keys.serialize_field("altitude_ft", &altitude.map(|altitude| altitude.as_feet()))?;
        keys.serialize_field("gauge_error_psi", &None::<()>)?;
        keys.serialize_field("with", formula.as_str())?;
        keys.serialize_field("changes", changes)?;
        keys.end()
    }
}

impl Serialize for ClearedChange {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let rules: Vec<&str> = self.rules.iter().map(RuleId::as_str).collect();
        let mut keys = to.serialize_struct("Change", 7)?;
        keys.serialize_field("said", &self.said)?;
        keys.serialize_field("verdict", self.verdict.as_str())?;
        keys.serialize_field("allowed", &self.allowed)?;
        keys.serialize_field("because", &self.because)?;
        keys.serialize_field("instead", &self.instead)?;
        keys.serialize_field("rules", &rules)?;
        keys.serialize_field("sources", &self.sources)?;
        keys.end()
    }
}

impl Serialize for ClearedLine {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let process = &self.process;
        let psi = |pressure: Option<Pressure>| pressure.map(|pressure| Plain(pressure.as_psi()));
        let mut keys = to.serialize_struct("Process", 8)?;
        keys.serialize_field("minutes", &process.minutes().0)?;
        keys.serialize_field("pressure_psi", &psi(process.pressure()))?;
        keys.serialize_field("hold_psi", &psi(self.hold))?;
        keys.serialize_field("headspace_in", &Plain(in_inches(process.headspace())))?;
        keys.serialize_field("jar_row", process.jar_row().as_str())?;
        keys.serialize_field("band_ft", &feet_of(process.band()))?;
        keys.serialize_field("rest_min", &process.rest().map(|rest| rest.0))?;
        keys.serialize_field("source", &name_of(process.citation()))?;
        keys.end()
    }
}

impl Serialize for AcidDose {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let spoons =
            |volume: Option<Volume>, read: fn(Volume) -> f64| volume.map(|some| Plain(tidy(read(some))));
        let mut keys = to.serialize_struct("Acid", 5)?;
        keys.serialize_field("bottled_lemon_tbsp", &spoons(self.rule.lemon, Volume::as_tablespoons))?;
        keys.serialize_field("citric_acid_tsp", &spoons(self.rule.citric, Volume::as_teaspoons))?;
        keys.serialize_field("vinegar_5pct_tbsp", &spoons(self.rule.vinegar, Volume::as_tablespoons))?;
        keys.serialize_field("each_is_enough", &true)?;
        keys.serialize_field("per", self.rule.jar.as_str())?;
        keys.end()
    }
}

impl Serialize for Cited {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let mut keys = to.serialize_struct("Source", 5)?;
        keys.serialize_field("id", self.0.source.as_str())?;
        keys.serialize_field("locator", &*self.0.locator)?;
        keys.serialize_field("basis", self.0.basis.as_str())?;
        keys.serialize_field("rank", self.0.rank.as_str())?;
        keys.serialize_field("year", &self.0.year)?;
        keys.end()
    }
}

/// Writes a verdict as its word.
pub(crate) fn write_verdict<S: Serializer>(verdict: &Verdict, to: S) -> Result<S::Ok, S::Error> {
    to.serialize_str(verdict.as_str())
}

/// A number without a fraction is written without one: `11`, not `11.0`.
pub(crate) struct Plain(pub(crate) f64);

impl Serialize for Plain {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        /// Whole numbers below this are exact in both types.
        const EXACT: f64 = 1e15;
        if self.0.fract() == 0.0 && self.0.abs() < EXACT {
            // Never truncates: the number is whole and small.
            to.serialize_i64(self.0 as i64)
        } else {
            to.serialize_f64(self.0)
        }
    }
}

/// Takes away what converting to millilitres or millimetres and back leaves in the last digits.
pub(crate) fn tidy(value: f64) -> f64 {
    /// Finer than any printed figure: the tables go down to hundredths.
    const STEPS: f64 = 10_000.0;
    (value * STEPS).round() / STEPS
}

pub(crate) fn in_inches(length: Length) -> f64 {
    tidy(length.as_inches())
}

pub(crate) fn feet_of(band: Band) -> (u32, Option<u32>) {
    (band.min.as_feet(), band.max.map(|max| max.as_feet()))
}

/// A source in one line of text.
pub(crate) fn name_of(citation: &Citation) -> String {
    format!("{}: {}", citation.source, citation.locator)
}

/// A canner in a sentence.
pub(crate) fn canner_name(canner: CannerKind) -> &'static str {
    match canner {
        CannerKind::BoilingWater => "boiling-water canner",
        CannerKind::Steam => "steam canner",
        CannerKind::Dial => "pressure canner with a dial gauge",
        CannerKind::Weighted => "pressure canner with a weighted gauge",
    }
}

/// A jar in a sentence.
pub(crate) fn jar_name(jar: JarSize) -> &'static str {
    match jar {
        JarSize::TwelveOunce => "12-ounce jar",
        JarSize::TwentyEightOunce => "28-ounce jar",
        JarSize::PintAndHalf => "pint-and-a-half jar",
        JarSize::QuarterPint => "quarter-pint",
        JarSize::HalfPint => "half-pint",
        JarSize::Pint => "pint",
        JarSize::Quart => "quart",
        JarSize::HalfGallon => "half-gallon",
    }
}
