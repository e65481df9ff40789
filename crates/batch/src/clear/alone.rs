//! May I change this? The change judged by itself, without a process: what publications print about it, for a
//! formula on file.
//!
//! Most changes need no jar and no height above the sea. One that names a jar, a pack or a canner is looked up in
//! the process tables; where the answer hangs on something that was left open, the question is handed back.

use std::collections::BTreeSet;

use almanac::{
    Almanac, CannerKind, Citation, Formula, JarSize, KeptIn, Method, Pack, ProcessQuestion, ProductId,
    Verdict,
};
use measure::Altitude;

use super::answer::ChangesCleared;
use super::change::{self, Asked, Setting};
use super::findings::Findings;
use super::judge::judge_formula;
use super::question::{ChangesQuestion, ClearError};

/// Answers whether a formula may be changed as asked. The answer holds no process.
///
/// # Errors
/// [`ClearError`] when the formula is unknown, when no change is named or one is not understood, or when the answer
/// hangs on a pack, jar, canner or height that was left open. Then nothing is judged.
pub fn clear_changes(almanac: &Almanac, question: &ChangesQuestion) -> Result<ChangesCleared, ClearError> {
    let formula = almanac
        .formula(&question.formula)
        .ok_or_else(|| ClearError::UnknownFormula { formula: question.formula.clone() })?;
    if question.changes.is_empty() {
        return Err(ClearError::NoChange);
    }
    let setting = Setting::of_formula(almanac, formula, question.jar, question.canner);
    let asked = change::read_changes(almanac, &question.changes, &setting, Some(formula))?;
    let line = if asked.iter().any(Asked::names_a_vessel) {
        formula.product.as_ref().map_or(Ok(None), |product| {
            Open::of(almanac, formula, product, question, &asked).find_line(almanac, product)
        })?
    } else {
        None
    };
    let mut findings = Findings::new();
    let changes =
        change::judge_changes(almanac, &setting, Some(formula), &asked, line.as_ref(), &mut findings);
    if formula.product.is_some() {
        judge_formula(almanac, formula, &mut findings);
    }
    findings.cite(&formula.citation);
    remind_of_the_rest(formula, &mut findings);
    let Findings { verdict, because, instead, riders, sources, .. } = findings;
    Ok(ChangesCleared { question: question.clone(), verdict, changes, riders, because, instead, sources })
}

/// A permission for a change is none for a process.
fn remind_of_the_rest(formula: &Formula, findings: &mut Findings) {
    let rest = match (&formula.product, formula.kept_in) {
        (Some(_), _) => {
            "this answers for the change and gives no process: say the pack, the jar, the canner and the altitude \
             to have the printed one"
        }
        (None, KeptIn::Freezer) => "this formula is for the freezer; no process is printed for it",
        (None, KeptIn::DryJar | KeptIn::Wrapped) => {
            "this formula is for drying; no process is printed for it"
        }
        (None, _) => "this formula is kept cold; no process is printed for it",
    };
    if findings.verdict == Verdict::Tested || formula.product.is_none() {
        findings.remind("change-alone", rest, None);
    }
    findings.remind(
        "local-extension",
        "where your local extension service says something stricter, do that; what is sold or shared meets local law",
        None,
    );
}

/// What may still be meant: every pack, jar, canner and height that the question leaves open.
struct Open {
    packs: Vec<Pack>,
    jars: Vec<JarSize>,
    canners: Vec<CannerKind>,
    heights: Vec<Altitude>,
}

/// One choice of everything that was left open.
type Choice = (Pack, JarSize, CannerKind, Altitude);

impl Open {
    fn of(
        almanac: &Almanac,
        formula: &Formula,
        product: &ProductId,
        question: &ChangesQuestion,
        asked: &[Asked],
    ) -> Self {
        let one_or = |one: Option<Pack>, all: &[Pack]| one.map_or_else(|| all.to_vec(), |one| vec![one]);
        let pack = asked.iter().find_map(|one| one.pack).or(question.pack);
        let jar = asked.iter().find_map(|one| one.jar).or(question.jar);
        let canner = asked.iter().find_map(|one| one.canner).or(question.canner);
        // The lowest height of each printed band stands for the band.
        let bands: BTreeSet<Altitude> = almanac.printed_lines(product).map(|line| line.band().min).collect();
        Self {
            packs: one_or(pack, &formula.packs),
            jars: jar.map_or_else(|| jars_of(almanac, formula, product), |jar| vec![jar]),
            canners: canner.map_or_else(|| canners_of(almanac, formula, product), |canner| vec![canner]),
            heights: question.altitude.map_or_else(|| bands.into_iter().collect(), |altitude| vec![altitude]),
        }
    }

    /// Where a line is printed for every choice; none where no choice has one.
    fn find_line(&self, almanac: &Almanac, product: &ProductId) -> Result<Option<Citation>, ClearError> {
        let look_up = |(pack, jar, canner, altitude): Choice| {
            let asked = ProcessQuestion { product: product.clone(), pack, jar, canner, altitude };
            almanac
                .find_processes(&asked)
                .ok()
                .and_then(|found| found.first().map(|one| one.citation().clone()))
        };
        let found: Vec<(Choice, Option<Citation>)> =
            self.choices().into_iter().map(|choice| (choice, look_up(choice))).collect();
        if found.iter().all(|(_, line)| line.is_none()) {
            return Ok(None);
        }
        if found.iter().all(|(_, line)| line.is_some()) {
            return Ok(found.into_iter().find_map(|(_, line)| line));
        }
        Err(ClearError::HangsOn { on: hangs_on(&found) })
    }

    fn choices(&self) -> Vec<Choice> {
        let mut all = Vec::new();
        for &pack in &self.packs {
            for &jar in &self.jars {
                for &canner in &self.canners {
                    all.extend(self.heights.iter().map(|&height| (pack, jar, canner, height)));
                }
            }
        }
        all
    }
}

/// The jars a formula is printed for, else those its food is printed for.
fn jars_of(almanac: &Almanac, formula: &Formula, product: &ProductId) -> Vec<JarSize> {
    if formula.jars.is_empty() {
        let printed: BTreeSet<JarSize> = almanac.printed_lines(product).map(|line| line.jar()).collect();
        return printed.into_iter().collect();
    }
    formula.jars.clone()
}

/// The canners a formula is printed for; a steam canner is meant only when it is named.
fn canners_of(almanac: &Almanac, formula: &Formula, product: &ProductId) -> Vec<CannerKind> {
    let printed = almanac.product(product).map_or(&[][..], |product| &product.canners);
    let meant = |canner: &CannerKind| match canner {
        CannerKind::BoilingWater => formula.methods.contains(&Method::BoilingWater),
        CannerKind::Steam => false,
        CannerKind::Dial | CannerKind::Weighted => formula.methods.contains(&Method::Pressure),
    };
    let by_method: Vec<CannerKind> = printed.iter().copied().filter(meant).collect();
    if by_method.is_empty() {
        return printed.iter().copied().filter(|canner| *canner != CannerKind::Steam).collect();
    }
    by_method
}

/// What tells choices with a line from choices without: two that differ in one thing only and not in the rest.
fn hangs_on(found: &[(Choice, Option<Citation>)]) -> Vec<&'static str> {
    let differ = |parts: fn(&Choice, &Choice) -> [bool; 4], at: usize| {
        found.iter().any(|(one, line)| {
            found.iter().any(|(other, other_line)| {
                let same = parts(one, other);
                let rest = same.iter().enumerate().all(|(part, same)| (part == at) != *same);
                rest && line.is_some() != other_line.is_some()
            })
        })
    };
    let same: fn(&Choice, &Choice) -> [bool; 4] =
        |one, other| [one.0 == other.0, one.1 == other.1, one.2 == other.2, one.3 == other.3];
    let names = ["pack", "jar", "canner", "altitude"];
    names.into_iter().enumerate().filter(|(at, _)| differ(same, *at)).map(|(_, name)| name).collect()
}
