//! The answer about a load: `load-trouble/1`.

use almanac::{Citation, LoadTrouble};
use serde::ser::SerializeStruct as _;
use serde::{Serialize, Serializer};

use super::clock::Moment;
use super::question::LoadQuestion;

/// Whom to ask, at the end of every answer.
pub const WHOM_TO_ASK: &str = "Ask your local extension service, or the health authority where you live, about \
    any jar you are not sure of, before anyone eats from it. What they say comes before what is said here.";

/// What the answer comes to: the closed list of codes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Outcome {
    /// When the clock starts, and when the process ends.
    Start,
    /// The clock may not start yet.
    NotYet,
    /// The whole time again, from the return.
    WholeTimeAgain,
    /// The whole time had run before anything was lost.
    Complete,
    /// Until a clock time the load may be begun again, refrigerated or frozen.
    InTime,
    /// Water is added and the process goes on.
    TopUp,
    /// The acid goes in first, and then everything as printed.
    AcidFirst,
    /// Thrown away.
    Discard,
    /// No time was written down, so there is no clock.
    NoClock,
    /// No printed rule is on file.
    NoPrintedRule,
}

impl Outcome {
    /// Whether the load may not go to the shelf or to the table by this answer.
    #[must_use]
    pub fn is_refusal(self) -> bool {
        matches!(self, Self::NotYet | Self::Discard | Self::NoClock | Self::NoPrintedRule)
    }
}

/// What a time on the answer's clock is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum ClockMark {
    /// A thing that happened.
    Happened,
    /// Not before this the vent is closed.
    VentUntil,
    /// Not before this the process ends.
    Ends,
    /// Not after this it may be begun again or kept.
    Limit,
}

/// A line of the answer's clock.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct LoadClockLine {
    /// When.
    pub at: Moment,
    /// What kind of time it is.
    pub mark: ClockMark,
    /// In words.
    pub text: String,
}

/// Something that is said, and where it stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Said {
    /// In words.
    pub text: String,
    /// Where it is printed; `None` where it is our own advice.
    pub citation: Option<Citation>,
}

/// Something to do now, with the caution that belongs to it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Act {
    /// What to do.
    pub said: Said,
    /// What to mind while doing it.
    pub caution: Option<&'static str>,
}

/// The whole answer.
#[derive(Debug, Clone, PartialEq)]
pub struct LoadAnswer {
    /// What was asked.
    pub question: LoadQuestion,
    /// What it comes to.
    pub outcome: Outcome,
    /// The answer in one sentence.
    pub says: String,
    /// Clock times, in order.
    pub clock: Vec<LoadClockLine>,
    /// Why.
    pub because: Vec<Said>,
    /// What to do now, in order.
    pub acts: Vec<Act>,
    /// Recalled advice and advice of lower rank: it warns and permits nothing.
    pub warnings: Vec<Said>,
}

impl LoadAnswer {
    /// The clock time of a kind, where there is one.
    #[must_use]
    pub fn time_of(&self, mark: ClockMark) -> Option<&Moment> {
        self.clock.iter().find(|line| line.mark == mark).map(|line| &line.at)
    }

    /// Everywhere the answer stands, each place once.
    #[must_use]
    pub fn citations(&self) -> Vec<&Citation> {
        let acts = self.acts.iter().map(|act| &act.said);
        let said = self.because.iter().chain(acts).chain(&self.warnings);
        let mut found: Vec<&Citation> = Vec::new();
        for citation in said.filter_map(|said| said.citation.as_ref()) {
            if !found.contains(&citation) {
                found.push(citation);
            }
        }
        found
    }
}

impl Serialize for LoadAnswer {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let sources: Vec<SourceEntry<'_>> = self.citations().into_iter().map(SourceEntry).collect();
        let mut keys = to.serialize_struct("LoadAnswer", 10)?;
        keys.serialize_field("format", "load-trouble/1")?;
        keys.serialize_field("outcome", &self.outcome)?;
        keys.serialize_field("question", &Asked(&self.question))?;
        keys.serialize_field("says", &self.says)?;
        keys.serialize_field("clock", &self.clock)?;
        keys.serialize_field("because", &self.because)?;
        keys.serialize_field("acts", &self.acts)?;
        keys.serialize_field("warnings", &self.warnings)?;
        keys.serialize_field("ask", WHOM_TO_ASK)?;
        keys.serialize_field("sources", &sources)?;
        keys.end()
    }
}

/// The question as the answer repeats it.
struct Asked<'a>(&'a LoadQuestion);

impl Serialize for Asked<'_> {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let question = self.0;
        let mut keys = to.serialize_struct("Question", 10)?;
        keys.serialize_field("trouble", question.trouble.as_str())?;
        keys.serialize_field("canner", &question.canner.map(|canner| canner.as_str()))?;
        keys.serialize_field("minutes", &question.whole_time().map(|minutes| minutes.0))?;
        keys.serialize_field("noticed", &question.noticed.map(|noticed| noticed.as_str()))?;
        keys.serialize_field("steam", &question.steam)?;
        keys.serialize_field("begun", &question.begun)?;
        keys.serialize_field("stops", &question.stops)?;
        keys.serialize_field("heat_off", &question.heat_off)?;
        keys.serialize_field("food", &question.food.as_ref().map(|food| food.as_str()))?;
        keys.serialize_field("asked_at", &question.now)?;
        keys.end()
    }
}

impl Serialize for Said {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let mut keys = to.serialize_struct("Said", 2)?;
        keys.serialize_field("text", &self.text)?;
        keys.serialize_field("source", &self.citation.as_ref().map(name_of))?;
        keys.end()
    }
}

impl Serialize for Act {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let mut keys = to.serialize_struct("Act", 3)?;
        keys.serialize_field("text", &self.said.text)?;
        keys.serialize_field("source", &self.said.citation.as_ref().map(name_of))?;
        keys.serialize_field("caution", &self.caution)?;
        keys.end()
    }
}

/// A source in one line of text.
pub(crate) fn name_of(citation: &Citation) -> String {
    format!("{}: {}", citation.source, citation.locator)
}

/// A place in a publication, as every answer lists it.
pub(crate) struct SourceEntry<'a>(pub(crate) &'a Citation);

impl Serialize for SourceEntry<'_> {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let mut keys = to.serialize_struct("Source", 4)?;
        keys.serialize_field("id", self.0.source.as_str())?;
        keys.serialize_field("locator", &*self.0.locator)?;
        keys.serialize_field("basis", self.0.basis.as_str())?;
        keys.serialize_field("rank", self.0.rank.as_str())?;
        keys.end()
    }
}

/// A trouble in a sentence.
#[must_use]
pub fn word_trouble(trouble: LoadTrouble) -> &'static str {
    use LoadTrouble as T;
    match trouble {
        T::Start => "when the clock starts",
        T::BoilLost => "a boil that stopped",
        T::PressureLost => "a pressure that fell below the line",
        T::PowerCut => "a power cut or a burner that went out",
        T::BoiledDry => "a canner that boiled dry",
        T::JarBroke => "a jar that broke in the canner",
        T::WaterLow => "water lower than printed, still over the lids",
        T::WaterBelowLids => "water found below the lids",
        T::ForcedCooling => "a pressure canner cooled or opened by force",
        T::AcidForgotten => "forgotten acid",
        T::WrongAcid => "too little or too weak acid",
        T::WrongTime => "too short a time",
        T::WrongPack => "another pack than printed",
        T::WrongJar => "a larger jar than printed",
        T::WrongVent => "a canner vented too short or not at all",
        T::WrongCanner => "another canner than printed",
        T::WrongAltitude => "the line of a lower altitude",
        T::WrongFormula => "food by no tested formula",
        T::LeftAlone => "a load that nobody watched while the heat went off",
        T::Unsealed => "a jar that did not seal after the right process",
    }
}
