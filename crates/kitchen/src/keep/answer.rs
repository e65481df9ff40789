//! What keeping the book answers, as people and programs read it.

use serde::Serialize;

/// Containers of one size in one place.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Standing {
    /// The size.
    pub size: String,
    /// The place; `None` while they stand where they were made.
    pub shelf: Option<String>,
    /// How many.
    pub count: i64,
    /// How many of them have not sealed.
    pub unsealed: i64,
}

/// A lot in one line.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct LotLine {
    /// Its id.
    pub id: String,
    /// The number on the label.
    pub label: String,
    /// What is in it.
    pub name: String,
    /// When it was put up, or its oldest part; `None` when nobody knows.
    pub oldest: Option<String>,
    /// Best before.
    pub eat_by: Option<String>,
    /// How the book knows of it: `as made`, `process not recorded`, `from before this book`.
    pub told: &'static str,
    /// Where its containers stand.
    pub stands: Vec<Standing>,
    /// What is doubtful or wrong about it, a sentence each.
    pub notes: Vec<String>,
}

/// A lot that shares something with another.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SisterLine {
    /// The lot.
    pub lot: LotLine,
    /// What they share: the load, the batch, a box of lids.
    pub shares: Vec<String>,
    /// Who has containers of it, with how many.
    pub with_people: Vec<String>,
}

/// Everything about a lot, and its sisters: the recall sheet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct LotSheet {
    /// The lot.
    pub lot: LotLine,
    /// Where it came from, a sentence each.
    pub from: Vec<String>,
    /// What happened to it, a sentence each, the earliest first.
    pub happened: Vec<String>,
    /// Who has containers of it, with how many, and whether they were told.
    pub with_people: Vec<String>,
    /// Lots that share something with it.
    pub sisters: Vec<SisterLine>,
}

/// A basket in one line.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct BasketLine {
    /// Its id.
    pub id: String,
    /// What is in it.
    pub name: String,
    /// When it came in.
    pub came_in: String,
    /// What is left of it, in words.
    pub left: String,
    /// Condition and origin, in words.
    pub about: String,
}

/// A working in one line.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct WorkingLine {
    /// Its id.
    pub id: String,
    /// What it is called.
    pub name: String,
    /// What kind it is.
    pub what: String,
    /// Where it stands.
    pub shelf: Option<String>,
    /// When it was begun.
    pub begun: String,
    /// When to look at it next.
    pub next_look: Option<String>,
    /// What was seen last, in words.
    pub last_look: Option<String>,
    /// What to know now, a sentence each.
    pub notes: Vec<String>,
}

/// Whether something was added to an open container.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum TopUpAnswer {
    /// It was.
    Added(LotLine),
    /// It may not be: why, and what to do instead.
    Refused {
        /// Why.
        says: String,
        /// What to do instead.
        instead: String,
    },
}
