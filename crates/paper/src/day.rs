//! The day sheet: a planned day on one page, to open on a phone or to print.

use askama::Template;

use crate::kitchen_text as filters;
use crate::letter::write_style;

/// A planned day in finished words, in the order it is read.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct DaySheet {
    /// The date in words.
    pub title: String,
    /// How high the kitchen lies, or that it is not known.
    pub place: String,
    /// Who is there, and from when to when.
    pub people: String,
    /// When the day is done.
    pub finish: Finish,
    /// Facts that cannot hold together; empty when there is a plan.
    pub clash: Vec<String>,
    /// What must be bought or borrowed first.
    pub fetch: Vec<Fetch>,
    /// What is done the evening before.
    pub evening_before: Vec<String>,
    /// What is made.
    pub makes: Vec<MadeToday>,
    /// Other work that shares the day.
    pub errands: Vec<String>,
    /// The day, act by act.
    pub clock: Vec<Act>,
    /// The same day for each person; empty when there is only one.
    pub lists: Vec<PersonList>,
    /// What is not made, and why.
    pub not_made: Vec<Reason>,
    /// What is left over and where it goes.
    pub left_over: Vec<Reason>,
    /// What goes on after the day.
    pub later: Vec<Later>,
    /// What was refused.
    pub refused: Vec<Refused>,
    /// Cautions of the day, each once.
    pub cautions: Vec<String>,
    /// What was filled in because the day file left it out.
    pub filled_in: Vec<String>,
    /// The publications behind the day.
    pub sources: Vec<Publication>,
}

/// A publication, listed under the mark it is cited by.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Publication {
    /// The mark: `[1]`.
    pub mark: String,
    /// Issuer, title, year.
    pub title: String,
}

/// When the day is done.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Finish {
    /// The time of day; `None` when nothing is planned.
    pub time: Option<String>,
    /// What is to be said about it: the margin and how good the plan is known to be.
    pub words: Vec<String>,
}

/// Something to buy or borrow.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Fetch {
    /// What.
    pub what: String,
    /// How much is short.
    pub short: String,
    /// What to ask for in a shop.
    pub shop: String,
    /// What it is for.
    pub for_what: String,
}

/// One thing made today.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct MadeToday {
    /// The likely count of containers, as the figure of the margin.
    pub count: Option<String>,
    /// The range around it ("6 to 8").
    pub range: Option<String>,
    /// What it is.
    pub name: String,
    /// What goes in.
    pub from: String,
    /// What comes out.
    pub yields: String,
    /// Where it keeps.
    pub keeps: String,
    /// How it is cleared for the shelf.
    pub clearance: Option<Cleared>,
    /// Where the formula is printed.
    pub source: Option<String>,
    /// What each batch takes.
    pub batches: Vec<BatchAmounts>,
}

/// A printed process and what must go with it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Cleared {
    /// The verdict as one says it: "Tested".
    pub verdict: String,
    /// Method, time and, for a dial, the reading to hold.
    pub process: String,
    /// Headspace in words.
    pub headspace: String,
    /// The altitude band used.
    pub band: String,
    /// Acid into each jar.
    pub acid: Option<String>,
    /// Where the row is printed.
    pub source: String,
}

/// What a batch takes, or several that are alike.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct BatchAmounts {
    /// Which batch, and how much of the printed one.
    pub heading: String,
    /// The lines.
    pub amounts: Vec<Amount>,
}

/// One ingredient as it is measured.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Amount {
    /// What.
    pub what: String,
    /// How it is prepared; may be empty.
    pub prep: String,
    /// By measure.
    pub measure: String,
    /// By weight, where it is known.
    pub weight: Option<String>,
    /// How far rounding moved it, where that is worth a word.
    pub moved: Option<String>,
}

/// What kind of attention an act takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Attention {
    /// Someone works at it.
    #[default]
    Hands,
    /// Someone keeps an eye on it.
    Eyes,
    /// It goes on by itself.
    Alone,
}

/// One act of the day.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Act {
    /// When it begins.
    pub from: String,
    /// When it ends; empty for a moment.
    pub to: String,
    /// Who; `None` when it goes on by itself.
    pub who: Option<String>,
    /// What kind of attention it takes.
    pub attention: Attention,
    /// What is done.
    pub what: String,
    /// What it belongs to.
    pub make: String,
    /// The printed lines behind it.
    pub detail: Vec<String>,
    /// Caution at the act.
    pub caution: Option<String>,
    /// Whether it must not be left.
    pub must_not_be_left: bool,
}

impl Act {
    fn is_alone(&self) -> bool {
        self.attention == Attention::Alone
    }

    fn is_eyes(&self) -> bool {
        self.attention == Attention::Eyes
    }
}

/// The day of one person.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct PersonList {
    /// Who.
    pub name: String,
    /// Their acts.
    pub acts: Vec<Act>,
}

/// Something, and what is to be said about it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Reason {
    /// What.
    pub what: String,
    /// Why it is not made, or where it goes.
    pub why: String,
}

/// Something that goes on after the day.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Later {
    /// When to look or act.
    pub when: String,
    /// What.
    pub what: String,
    /// What it belongs to.
    pub make: String,
}

/// How firmly a wish is refused.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Firmness {
    /// Nothing is printed for it.
    #[default]
    NotTested,
    /// It is printed as wrong.
    DoNot,
    /// It is no question of safety: the day has no room or no formula for it.
    NotPlanned,
}

/// A wish that is refused.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Refused {
    /// What was wished.
    pub wish: String,
    /// The verdict as one says it: "Not tested".
    pub verdict: String,
    /// How firmly.
    pub firmness: Firmness,
    /// Why.
    pub because: Vec<String>,
    /// What may be done instead.
    pub instead: Vec<String>,
    /// Where that is printed.
    pub source: Option<String>,
}

impl Refused {
    fn bar(&self) -> &'static str {
        match self.firmness {
            Firmness::NotTested => "not",
            Firmness::DoNot => "donot",
            Firmness::NotPlanned => "plain",
        }
    }
}

#[derive(Template)]
#[template(path = "day.html")]
struct DayPage<'a> {
    sheet: &'a DaySheet,
    style: String,
}

impl DayPage<'_> {
    fn has_amounts(&self) -> bool {
        self.sheet.makes.iter().any(|make| !make.batches.is_empty())
    }
}

/// The day as one page that fetches nothing: style and letters are inside it, and it has no scripts.
#[must_use]
pub fn render_day_sheet(sheet: &DaySheet) -> String {
    let page = DayPage { sheet, style: write_style() };
    page.render().expect("the template writes into a string and calls nothing that fails")
}
