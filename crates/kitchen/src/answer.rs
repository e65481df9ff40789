//! The planned day as data: what the command line prints, the page shows and `--json` gives.
//!
//! Clock times are minutes from midnight of the date; amounts are already worded in the units of the house,
//! with the plain figure beside them where a program may want it.

use std::collections::BTreeMap;

use batch::clear::Clearance;
use dayplan::{Plan, Problem};
use serde::Serialize;

use crate::ranges::RangesDocument;
use crate::staff::PeopleDocument;

/// The whole answer to "plan my day".
#[derive(Debug, Clone, Serialize)]
pub struct DayAnswer {
    /// `day-answer/1`.
    pub format: &'static str,
    /// The date, `2026-08-29`.
    pub date: String,
    /// The weekday and date in words.
    pub date_in_words: String,
    /// Height above the sea, if it was given.
    pub altitude_ft: Option<u32>,
    /// The people, in the order of the day file.
    pub people: Vec<String>,
    /// First minute anybody is there.
    pub starts: u32,
    /// Last minute anybody is there.
    pub ends: u32,
    /// When the last step ends; `None` when nothing is planned.
    pub finish: Option<u32>,
    /// Minutes between the finish and the end of the day.
    pub margin_min: Option<u32>,
    /// Whether the plan is proved best, in words.
    pub proof: String,
    /// Facts that cannot hold together, where there is no plan.
    pub clash: Vec<String>,
    /// What is made.
    pub makes: Vec<Make>,
    /// What is not made, and why.
    pub not_made: Vec<NotMade>,
    /// Every act of the day in order.
    pub clock: Vec<ClockLine>,
    /// What must be bought or borrowed first.
    pub to_fetch: Vec<FetchLine>,
    /// What is left over and where it goes.
    pub left_over: Vec<LeftOverLine>,
    /// What must be done the evening before.
    pub evening_before: Vec<String>,
    /// What goes on by itself after the day, and what to look at when.
    pub later: Vec<LaterLine>,
    /// What was refused, with what may be done instead.
    pub refusals: Vec<Refusal>,
    /// Cautions that stand where the act is; each once for the day as well.
    pub cautions: Vec<String>,
    /// What Stillroom filled in, a sentence each.
    pub filled_in: Vec<String>,
    /// The figures behind the answer, for `--why`.
    pub why: Vec<Why>,
    /// What each project of the problem is called.
    pub names: BTreeMap<String, String>,
    /// Who is there and who does what: a `people/1` document.
    pub staff: PeopleDocument,
    /// How long the planned steps may really take: a `ranges/1` document.
    pub ranges: RangesDocument,
    /// The stated problem.
    pub problem: Problem,
    /// Its plan.
    pub plan: Plan,
    /// The clearance of each canned make.
    pub clearances: Vec<Clearance>,
}

/// One thing made today.
#[derive(Debug, Clone, Serialize)]
pub struct Make {
    /// Its project in the problem; an errand's too.
    pub project: String,
    /// What it is, as one would say it.
    pub name: String,
    /// Whether it is an errand.
    pub is_errand: bool,
    /// The formula, where there is one.
    pub formula: Option<String>,
    /// How much of what goes in ("21 lb of tomatoes").
    pub from: Vec<String>,
    /// What comes out ("6 to 8 quarts, likely 7").
    pub yields: String,
    /// Containers: low, likely, high.
    pub containers: Option<[u32; 3]>,
    /// Where it keeps.
    pub keeps: String,
    /// The process as printed, in one line, where it is canned.
    pub process: Option<ProcessLine>,
    /// What each batch takes, ingredient by ingredient.
    pub batches: Vec<BatchSheet>,
    /// Worth in servings for the winter.
    pub worth: f64,
    /// The parts of the worth, named.
    pub worth_parts: Vec<WorthPart>,
    /// The clearance's verdict, where one was asked.
    pub verdict: Option<String>,
    /// Where it is printed.
    pub source: Option<String>,
}

/// A tested process in words.
#[derive(Debug, Clone, Serialize)]
pub struct ProcessLine {
    /// "boiling water, 45 minutes at a full boil" or "dial gauge at 12 lb, 25 minutes".
    pub words: String,
    /// Minutes of the process.
    pub minutes: u32,
    /// The dial reading to hold, or the weight, in psi.
    pub hold_psi: Option<f64>,
    /// The printed pressure.
    pub printed_psi: Option<f64>,
    /// Headspace in words.
    pub headspace: String,
    /// The altitude band used.
    pub band: String,
    /// Acid into each jar, in words.
    pub acid: Option<String>,
    /// Which printed row and publication.
    pub source: String,
}

/// One batch as the cook measures it.
#[derive(Debug, Clone, Serialize)]
pub struct BatchSheet {
    /// "1 of 2".
    pub number: String,
    /// The factor of the printed formula, `7/10`.
    pub factor: String,
    /// The lines.
    pub ingredients: Vec<IngredientLine>,
}

/// One ingredient as the cook measures it.
#[derive(Debug, Clone, Serialize)]
pub struct IngredientLine {
    /// What.
    pub ingredient: String,
    /// How much by measure.
    pub measure: String,
    /// The weight beside it, where it is known.
    pub weight: Option<String>,
    /// How it is prepared.
    pub prep: String,
    /// How far rounding moved it, where that is more than 2 %.
    pub moved: Option<String>,
}

/// A named part of a worth.
#[derive(Debug, Clone, Serialize)]
pub struct WorthPart {
    /// What adds or takes away.
    pub part: String,
    /// Servings.
    pub servings: f64,
    /// The arithmetic in words.
    pub how: String,
}

/// What is not made, and what stands in the way.
#[derive(Debug, Clone, Serialize)]
pub struct NotMade {
    /// What.
    pub name: String,
    /// The binding limit in words.
    pub why: String,
    /// What it would be worth, in servings for the winter; the list is in this order.
    pub worth: f64,
}

/// One act of the day.
#[derive(Debug, Clone, Serialize)]
pub struct ClockLine {
    /// Begins.
    pub from: u32,
    /// Ends.
    pub to: u32,
    /// Who does it or watches it; `None` when it goes on by itself.
    pub who: Option<String>,
    /// What kind of attention it takes.
    pub attention: LineAttention,
    /// What is done, short.
    pub act: String,
    /// The printed lines folded into it.
    pub detail: Vec<String>,
    /// The make it belongs to.
    pub project: String,
    /// Its step in the problem.
    pub step: String,
    /// The make's name, short.
    pub make: String,
    /// Caution at the act.
    pub caution: Option<String>,
    /// Whether it must not be left.
    pub must_not_be_left: bool,
}

/// What kind of attention an act takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum LineAttention {
    /// Someone works at it.
    Hands,
    /// Someone keeps an eye on it.
    Eyes,
    /// It goes on by itself.
    Alone,
}

/// Something to buy or borrow.
#[derive(Debug, Clone, Serialize)]
pub struct FetchLine {
    /// What.
    pub what: String,
    /// How much is short.
    pub short: String,
    /// In shop units.
    pub shop: String,
    /// For which makes.
    pub for_makes: Vec<String>,
}

/// Something left over.
#[derive(Debug, Clone, Serialize)]
pub struct LeftOverLine {
    /// What and how much.
    pub what: String,
    /// Where it goes.
    pub goes_to: String,
}

/// Something that goes on after the day.
#[derive(Debug, Clone, Serialize)]
pub struct LaterLine {
    /// When, in words.
    pub when: String,
    /// What.
    pub what: String,
    /// Which make.
    pub make: String,
}

/// A wish that is refused.
#[derive(Debug, Clone, Serialize)]
pub struct Refusal {
    /// What was wished.
    pub wish: String,
    /// `not tested` or `do not`.
    pub verdict: String,
    /// Why.
    pub because: Vec<String>,
    /// What may be done instead.
    pub instead: Vec<String>,
    /// Where that is printed.
    pub source: Option<String>,
}

/// Where a figure comes from.
#[derive(Debug, Clone, Serialize)]
pub struct Why {
    /// What one would ask for: a make, a produce, a step, `finish`, a resource.
    pub about: String,
    /// The explanation, a line each.
    pub lines: Vec<String>,
}
