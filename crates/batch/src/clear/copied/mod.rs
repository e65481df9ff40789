//! A formula that the household copied from a publication it owns, and rows it confirmed from its own copy.
//!
//! Such a process is never called tested. It is shown with its title, year and page, as it was entered, and only when
//! it meets every rule: no shorter and no lower than a printed row for the same food, pack, jar and height; no
//! low-acid food in boiling water; no barred pack, jar or practice; no thickener; and no more low-acid food, less acid
//! or more water than the nearest tested formula.
//!
//! A [`CopiedFormula`] exists only where those rules were met, and an [`Entered`] process only as an answer about one:
//!
//! ```compile_fail,E0451
//! use batch::clear::CopiedFormula;
//! let unchecked = CopiedFormula { draft: todo!(), floor: None };
//! ```
//!
//! ```compile_fail,E0451
//! use batch::clear::Entered;
//! let invented = Entered { title: "My own".into(), ..todo!() };
//! ```
//!
//! ```compile_fail,E0277
//! let from_text: batch::clear::Entered = serde_json::from_str("{}").unwrap();
//! ```

mod answer;
mod balance;
mod parts;
mod problem;
mod rows;

use almanac::{Almanac, Band, CannerKind, JarSize, Pack, ProductId};
use measure::{Length, Minutes, Pressure};

pub use answer::{CopiedCleared, CopiedQuestion, Entered, EnteredBand, clear_copied};
pub use problem::{CopiedFault, CopiedPlace, CopiedProblem};

use super::near::HomeIngredient;

/// The first year whose publications are taken: the federal bulletin was revised in it, and what is older prints
/// times that were found too short since.
pub const FIRST_YEAR: u16 = 1994;

/// Who issued a publication from which a process may be copied.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Issuer {
    /// A national food or agriculture authority.
    NationalAuthority,
    /// An extension service or a university.
    Extension,
    /// A maker of jars, canners or supplies, from its own test kitchen.
    TestKitchen,
}

impl Issuer {
    /// Every kind, with the word it is entered by.
    pub const ALL: &'static [(&'static str, Self)] = &[
        ("national-authority", Self::NationalAuthority),
        ("extension-or-university", Self::Extension),
        ("test-kitchen", Self::TestKitchen),
    ];

    /// The word it is entered by.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::NationalAuthority => "national-authority",
            Self::Extension => "extension-or-university",
            Self::TestKitchen => "test-kitchen",
        }
    }
}

/// Where the household found it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OwnCopy {
    /// Who issued it.
    pub issuer: Issuer,
    /// The title.
    pub title: String,
    /// The year of this edition.
    pub year: u16,
    /// The page.
    pub page: String,
}

/// One printed process as it was typed: one pack, jar and canner, one band of heights.
#[derive(Debug, Clone, PartialEq)]
pub struct DraftProcess {
    /// How it goes into the jar.
    pub pack: Pack,
    /// The jar.
    pub jar: JarSize,
    /// The canner.
    pub canner: CannerKind,
    /// The heights.
    pub band: Band,
    /// How long.
    pub minutes: Minutes,
    /// At what gauge pressure; none without pressure.
    pub pressure: Option<Pressure>,
    /// The room left under the lid.
    pub headspace: Option<Length>,
}

/// What was typed and can be read, before any rule is asked.
#[derive(Debug, Clone, PartialEq)]
pub struct CopiedDraft {
    /// What the household calls it.
    pub name: String,
    /// Where it is printed.
    pub copy: OwnCopy,
    /// The food of the process tables, where there is one.
    pub food: Option<ProductId>,
    /// What goes in and what is done; none for a single row that the household confirms from its own copy.
    pub formula: Option<DraftFormula>,
    /// Every process printed, band by band.
    pub processes: Vec<DraftProcess>,
}

/// What goes in and what is done.
#[derive(Debug, Clone, PartialEq)]
pub struct DraftFormula {
    /// What goes in.
    pub ingredients: Vec<HomeIngredient>,
    /// What is done, in the words of the publication.
    pub steps: Vec<String>,
}

/// A copied formula, or a confirmed row, that meets every rule.
#[derive(Debug, Clone, PartialEq)]
pub struct CopiedFormula {
    draft: CopiedDraft,
    /// The food of the process tables whose printed rows it may not fall short of.
    floor: Option<ProductId>,
}

impl CopiedFormula {
    /// Asks every rule about what was typed.
    ///
    /// # Errors
    /// Every rule that refuses it, with its place.
    pub fn check(almanac: &Almanac, draft: CopiedDraft, this_year: u16) -> Result<Self, Vec<CopiedFault>> {
        let mut faults = Vec::new();
        check_copy(&draft.copy, this_year, &mut faults);
        match &draft.formula {
            Some(formula) => {
                parts::check_parts(almanac, &draft.name, formula, &mut faults);
                balance::check_balance(almanac, &draft, formula, &mut faults);
            }
            None => rows::check_on_file(almanac, &draft, &mut faults),
        }
        let floor = balance::find_floor(almanac, &draft);
        rows::check_rows(almanac, &draft, floor.as_ref(), &mut faults);
        if faults.is_empty() { Ok(Self { draft, floor }) } else { Err(faults) }
    }

    /// What was typed.
    #[must_use]
    pub fn draft(&self) -> &CopiedDraft {
        &self.draft
    }
}

fn check_copy(copy: &OwnCopy, this_year: u16, faults: &mut Vec<CopiedFault>) {
    let year = copy.year;
    if year < FIRST_YEAR {
        faults.push(CopiedFault::at(CopiedPlace::Year, CopiedProblem::TooOld { year }));
    } else if year > this_year {
        faults.push(CopiedFault::at(CopiedPlace::Year, CopiedProblem::NotYetPrinted { year, this_year }));
    }
}
