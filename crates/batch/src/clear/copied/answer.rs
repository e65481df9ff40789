//! The answer about a copied formula: shown as it was entered, never called tested.

use almanac::{Almanac, Band, CannerKind, JarSize, Pack, Verdict};
use measure::{Altitude, Length, Minutes, Pressure, write_altitude};
use serde::ser::SerializeStruct as _;
use serde::{Serialize, Serializer};

use super::rows::less_than_print;
use super::{CopiedFormula, CopiedPlace, Issuer};
use crate::clear::answer::{
    AcidDose, Because, Cited, Instead, Plain, Reason, Rider, canner_name, feet_of, in_inches, jar_name,
};
use crate::clear::findings::Findings;
use crate::clear::gauge::judge_gauge;
use crate::clear::question::Gauge;

/// The question: how is this copied formula processed here?
#[derive(Debug, Clone, PartialEq)]
pub struct CopiedQuestion {
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
}

/// A process that the household entered from its own copy of a publication.
///
/// There is no way to make one but by asking about a [`CopiedFormula`].
#[derive(Debug, Clone, PartialEq)]
pub struct Entered {
    issuer: Issuer,
    title: String,
    year: u16,
    page: String,
    band: EnteredBand,
}

/// One band of an entered process.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EnteredBand {
    band: Band,
    minutes: Minutes,
    pressure: Option<Pressure>,
    hold: Option<Pressure>,
    headspace: Option<Length>,
}

impl Entered {
    /// Who issued the publication.
    #[must_use]
    pub fn issuer(&self) -> Issuer {
        self.issuer
    }

    /// The title of the publication.
    #[must_use]
    pub fn title(&self) -> &str {
        &self.title
    }

    /// Its year.
    #[must_use]
    pub fn year(&self) -> u16 {
        self.year
    }

    /// The page.
    #[must_use]
    pub fn page(&self) -> &str {
        &self.page
    }

    /// The band that holds the height asked about.
    #[must_use]
    pub fn band(&self) -> EnteredBand {
        self.band
    }

    /// The words that go wherever the process is shown: on the answer, the label, the page.
    #[must_use]
    pub fn words(&self) -> String {
        let Self { title, year, page, .. } = self;
        format!("not tested by us; printed, as you entered it, in {title}, {year}, p. {page}")
    }
}

impl EnteredBand {
    /// The heights.
    #[must_use]
    pub fn band(&self) -> Band {
        self.band
    }

    /// How long.
    #[must_use]
    pub fn minutes(&self) -> Minutes {
        self.minutes
    }

    /// At what gauge pressure, as entered.
    #[must_use]
    pub fn pressure(&self) -> Option<Pressure> {
        self.pressure
    }

    /// The dial reading to keep, never below what was entered; none without a dial.
    #[must_use]
    pub fn hold(&self) -> Option<Pressure> {
        self.hold
    }

    /// The room left under the lid, as entered.
    #[must_use]
    pub fn headspace(&self) -> Option<Length> {
        self.headspace
    }
}

/// The answer about a copied formula. Its verdict is never *tested*.
#[derive(Debug, Clone, PartialEq)]
pub struct CopiedCleared {
    /// What the household calls the formula.
    pub name: String,
    /// What was asked.
    pub question: CopiedQuestion,
    /// *Not tested*, or what else is barred.
    pub verdict: Verdict,
    /// The process as it was entered; none where something else refuses it.
    pub entered: Option<Entered>,
    /// The acid for each jar, where a printed rule adds it jar by jar.
    pub acid: Option<AcidDose>,
    /// Hazards and conditions.
    pub riders: Vec<Rider>,
    /// What is missing or barred.
    pub because: Vec<Reason>,
    /// What may be done instead.
    pub instead: Vec<Instead>,
    /// Where all this stands.
    pub sources: Vec<Cited>,
}

/// Answers with the process a household entered for a formula that meets every rule.
#[must_use]
pub fn clear_copied(almanac: &Almanac, formula: &CopiedFormula, question: &CopiedQuestion) -> CopiedCleared {
    let mut findings = Findings::new();
    let entered = find_entered(almanac, formula, question, &mut findings);
    let mut acid = None;
    if let Some(entered) = &entered {
        findings.refuse(Verdict::NotTested, Because::EnteredByYou, entered.words(), None);
        let printed = formula.floor.as_ref().and_then(|food| almanac.acid_for(food, question.jar));
        if let Some(rule) = &printed {
            findings.cite(&rule.citation);
        }
        acid = printed.map(AcidDose::new);
        remind(almanac, question, &mut findings);
    }
    findings.offer(
        "extension",
        "ask your local extension service whether it knows this formula, or keep it cold or frozen",
        None,
    );
    let Findings { verdict, because, instead, riders, sources, .. } = findings;
    let (name, question) = (formula.draft.name.clone(), question.clone());
    CopiedCleared { name, question, verdict, entered, acid, riders, because, instead, sources }
}

fn find_entered(
    almanac: &Almanac,
    formula: &CopiedFormula,
    question: &CopiedQuestion,
    findings: &mut Findings,
) -> Option<Entered> {
    let CopiedQuestion { pack, jar, canner, altitude, gauge } = *question;
    let draft = &formula.draft;
    let of_jar: Vec<_> = draft
        .processes
        .iter()
        .filter(|process| (process.pack, process.jar, process.canner) == (pack, jar, canner))
        .collect();
    if of_jar.is_empty() {
        let (jar, canner) = (jar_name(jar), canner_name(canner));
        let text = format!("you entered no process for a {pack} pack in a {jar} in a {canner}");
        findings.refuse(Verdict::NotTested, Because::NoRow, text, None);
        return None;
    }
    let Some(process) = of_jar.into_iter().find(|process| process.band.holds(altitude)) else {
        let text = format!("no band you entered holds {}", write_altitude(altitude));
        findings.refuse(Verdict::NotTested, Because::AltitudeAboveLastBand, text, None);
        return None;
    };
    // Asked again at this very height: the rules on file may have changed since the formula was checked.
    let fault = formula
        .floor
        .as_ref()
        .and_then(|food| less_than_print(almanac, food, process, CopiedPlace::Whole, altitude));
    if let Some(fault) = fault {
        let (verdict, code) = (fault.problem.verdict(), fault.problem.code());
        findings.refuse(verdict, code, fault.problem.to_string(), None);
        findings.offer("printed", fault.problem.hint(), None);
        return None;
    }
    let holding = judge_gauge(almanac, canner, gauge, findings);
    if findings.verdict != Verdict::Tested {
        return None;
    }
    let band = EnteredBand {
        band: process.band,
        minutes: process.minutes,
        pressure: process.pressure,
        hold: process.pressure.and_then(|pressure| holding.reading_at(pressure)),
        headspace: process.headspace,
    };
    let copy = &draft.copy;
    let (title, page) = (copy.title.clone(), copy.page.clone());
    Some(Entered { issuer: copy.issuer, title, year: copy.year, page, band })
}

/// When the clock starts, and what to do when it is interrupted: the printed rules of the canner.
fn remind(almanac: &Almanac, question: &CopiedQuestion, findings: &mut Findings) {
    let rules: &[(&'static str, &str)] = match question.canner {
        CannerKind::BoilingWater => &[
            ("bw-start-time", "start the clock when the water is at a full rolling boil"),
            ("bw-restart", "if the boil stops, bring it back and give the whole time again"),
        ],
        CannerKind::Steam => {
            &[("steam-no-open", "the lid stays on and no water is added until the time is up")]
        }
        CannerKind::Dial | CannerKind::Weighted => &[
            (
                "pc-start-time",
                "start the clock when the pressure is reached, or the weight moves as its maker says",
            ),
            (
                "pc-restart",
                "if the pressure falls below the line, bring it back and give the whole time again",
            ),
        ],
    };
    for (id, text) in rules {
        if let Some(rule) = almanac.rule(id) {
            findings.remind(id, *text, Some(&rule.citation));
        }
    }
    findings.remind(
        "label-entered",
        "write on every jar that the process is one you entered, with title, year and page",
        None,
    );
    if let Some(rule) = almanac.rule("discard-signs") {
        let text =
            "never taste from a jar that leaks, bulges, spurts, smells wrong or has mould: throw it away";
        findings.remind("discard-signs", text, Some(&rule.citation));
    }
}

impl Serialize for CopiedCleared {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let mut keys = to.serialize_struct("Clearance", 12)?;
        keys.serialize_field("format", "clearance/1")?;
        keys.serialize_field("judged", "copied")?;
        keys.serialize_field("verdict", self.verdict.as_str())?;
        keys.serialize_field("question", &Asked(self))?;
        keys.serialize_field("processes", &[(); 0])?;
        keys.serialize_field("acid", &self.acid)?;
        keys.serialize_field("riders", &self.riders)?;
        keys.serialize_field("because", &self.because)?;
        keys.serialize_field("instead", &self.instead)?;
        keys.serialize_field("changes", &[(); 0])?;
        keys.serialize_field("entered", &self.entered)?;
        keys.serialize_field("sources", &self.sources)?;
        keys.end()
    }
}

/// The question as the answer repeats it.
struct Asked<'a>(&'a CopiedCleared);

impl Serialize for Asked<'_> {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let CopiedQuestion { pack, jar, canner, altitude, gauge } = &self.0.question;
        let error = gauge.and_then(|gauge| gauge.error).map(|error| Plain(error.as_psi()));
        let mut keys = to.serialize_struct("Question", 8)?;
        keys.serialize_field("food", &self.0.name)?;
        keys.serialize_field("pack", pack.as_str())?;
        keys.serialize_field("jar", jar.as_str())?;
        keys.serialize_field("canner", canner.as_str())?;
        keys.serialize_field("altitude_ft", &altitude.as_feet())?;
        keys.serialize_field("gauge_error_psi", &error)?;
        keys.serialize_field("with", &None::<()>)?;
        keys.serialize_field("changes", &[(); 0])?;
        keys.end()
    }
}

impl Serialize for Entered {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let mut keys = to.serialize_struct("Entered", 6)?;
        keys.serialize_field("issuer", self.issuer.as_str())?;
        keys.serialize_field("title", &self.title)?;
        keys.serialize_field("year", &self.year)?;
        keys.serialize_field("page", &self.page)?;
        keys.serialize_field("words", &self.words())?;
        keys.serialize_field("bands", &[self.band])?;
        keys.end()
    }
}

impl Serialize for EnteredBand {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let psi = |pressure: Option<Pressure>| pressure.map(|pressure| Plain(pressure.as_psi()));
        let mut keys = to.serialize_struct("EnteredBand", 5)?;
        keys.serialize_field("band_ft", &feet_of(self.band))?;
        keys.serialize_field("minutes", &self.minutes.0)?;
        keys.serialize_field("pressure_psi", &psi(self.pressure))?;
        keys.serialize_field("hold_psi", &psi(self.hold))?;
        keys.serialize_field("headspace_in", &self.headspace.map(|length| Plain(in_inches(length))))?;
        keys.end()
    }
}
