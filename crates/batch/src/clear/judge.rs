//! The verdict: the strictest of the printed row, every matching change rule and every matching refusal.

use almanac::{
    Almanac, Basis, CannerKind, Citation, Formula, JarSize, NoProcess, Pack, Process, ProcessQuestion,
    ProductId, Verdict,
};
use measure::write_altitude;

use super::answer::{AcidDose, Because, Clearance, ClearedChange, ClearedLine, canner_name, jar_name};
use super::change::{self, Asked, Setting};
use super::findings::Findings;
use super::gauge::{Holding, judge_gauge, require_plausible};
use super::question::{ClearError, ClearQuestion};
use super::refusal::add_refusal;
use super::riders::add_riders;

/// Answers whether a food may be processed as asked.
///
/// # Errors
/// [`ClearError`] when the question itself is wrong: an unknown food or formula, a gauge error no gauge has, or a
/// change that is not understood. Then nothing is judged.
pub fn clear(almanac: &Almanac, question: &ClearQuestion) -> Result<Clearance, ClearError> {
    require_plausible(question)?;
    if almanac.product(&question.product).is_none() {
        return Err(ClearError::UnknownFood { product: question.product.clone() });
    }
    let formula = require_formula(almanac, question)?;
    let setting = Setting::of_question(question, formula);
    let asked = change::read_changes(almanac, &question.changes, &setting, formula)?;
    let mut findings = Findings::new();
    let changed = changed_question(question, &asked);
    let holding = judge_gauge(almanac, changed.canner, changed.gauge, &mut findings);
    if let Some(formula) = formula {
        judge_formula(almanac, formula, &mut findings);
    }
    let lines = look_up(almanac, &changed, holding, &mut findings);
    let line = lines.as_deref().and_then(|lines| lines.first()).map(|line| line.process().citation().clone());
    let setting = Setting::of_question(&changed, formula);
    let changes = change::judge_changes(almanac, &setting, formula, &asked, line.as_ref(), &mut findings);
    Ok(finish(almanac, question, &changed, lines.unwrap_or_default(), changes, findings))
}

/// The formula named in the question, which must make the food asked about.
fn require_formula<'a>(
    almanac: &'a Almanac,
    question: &ClearQuestion,
) -> Result<Option<&'a Formula>, ClearError> {
    let Some(id) = &question.formula else { return Ok(None) };
    let formula = almanac.formula(id).ok_or_else(|| ClearError::UnknownFormula { formula: id.clone() })?;
    match &formula.product {
        Some(makes) if *makes != question.product => Err(ClearError::FormulaOfAnotherFood {
            formula: id.clone(),
            makes: makes.clone(),
            product: question.product.clone(),
        }),
        _ => Ok(Some(formula)),
    }
}

/// The question with the jar, pack and canner that the changes name, so that what is looked up, and what is
/// served, is always what the cook is going to do.
fn changed_question(question: &ClearQuestion, asked: &[Asked]) -> ClearQuestion {
    let mut changed = question.clone();
    for one in asked {
        changed.jar = one.jar.unwrap_or(changed.jar);
        changed.pack = one.pack.unwrap_or(changed.pack);
        changed.canner = one.canner.unwrap_or(changed.canner);
    }
    changed
}

/// The minutes of a food are for what was tested: a formula that stands only in a lower source, or of which a part
/// that keeps the jar was only recalled, gets none of them.
pub(super) fn judge_formula(almanac: &Almanac, formula: &Formula, findings: &mut Findings) {
    let name = &formula.name;
    let Some(product) = &formula.product else {
        let text = format!("no process is on file for the formula {name}");
        findings.refuse(Verdict::NotTested, Because::NoRow, text, Some(&formula.citation));
        findings.offer("cold", "keep it in the refrigerator, or freeze it", None);
        return;
    };
    let Some(doubt) = find_doubt(formula) else { return };
    let recalled = doubt.basis == Basis::Memory;
    let (code, text) = if recalled {
        let text = format!(
            "a part of the formula {name} was recalled and not seen in print; look it up in {}",
            place_of(almanac, doubt)
        );
        (Because::OnFileUnverified, text)
    } else {
        let text =
            format!("the formula {name} stands only in a source of lower rank: {}", place_of(almanac, doubt));
        (Because::OnFileLowerRank, text)
    };
    findings.refuse(Verdict::NotTested, code, text, Some(doubt));
    for other in others_of(almanac, formula, product) {
        findings.offer("formula", format!("make it by the formula {}", other.name), Some(&other.citation));
    }
    findings.offer("cold", "keep it in the refrigerator, or freeze it", None);
}

/// A place in a publication, in a sentence.
fn place_of(almanac: &Almanac, citation: &Citation) -> String {
    let title = almanac.source(&citation.source).map_or(citation.source.as_str(), |source| &*source.title);
    format!("{title}, {}", citation.locator)
}

/// Formulas that may be called tested and are of the same food, else of the same produce.
fn others_of<'a>(almanac: &'a Almanac, formula: &Formula, product: &ProductId) -> Vec<&'a Formula> {
    /// More of them help nobody to choose.
    const MOST: usize = 3;
    let main = |formula: &Formula| {
        let produce = formula.ingredients.iter().find(|part| !part.accepts.is_empty());
        produce.map(|part| part.accepts.clone()).unwrap_or_default()
    };
    let wanted = main(formula);
    let is_of_food = |other: &Formula| other.product.as_ref() == Some(product);
    let mut others: Vec<&Formula> = almanac
        .formulas()
        .filter(|other| other.product.is_some() && find_doubt(other).is_none())
        .filter(|other| is_of_food(other) || main(other).iter().any(|produce| wanted.contains(produce)))
        .collect();
    others.sort_by_key(|other| !is_of_food(other));
    others.truncate(MOST);
    others
}

/// The row that keeps a formula from being called tested; none when every row it rests on was read in a source of
/// full rank.
#[must_use]
pub fn find_doubt(formula: &Formula) -> Option<&Citation> {
    let parts = formula.ingredients.iter().filter(|part| part.safety_critical).map(|part| &part.citation);
    std::iter::once(&formula.citation).chain(parts).find(|citation| !citation.may_be_called_tested())
}

/// The printed lines with the readings to hold, or a reason why there are none.
fn look_up(
    almanac: &Almanac,
    question: &ClearQuestion,
    holding: Holding,
    findings: &mut Findings,
) -> Option<Vec<ClearedLine>> {
    let ClearQuestion { product, pack, jar, canner, altitude, .. } = question.clone();
    match almanac.find_processes(&ProcessQuestion { product, pack, jar, canner, altitude }) {
        Ok(processes) => Some(processes.into_iter().map(|process| line_of(process, holding)).collect()),
        Err(missing) => {
            refuse_missing(almanac, question, missing, findings);
            None
        }
    }
}

fn line_of(process: Process, holding: Holding) -> ClearedLine {
    let hold = holding.reading_for(&process);
    ClearedLine::new(process, hold)
}

/// Turns what the tables lack into a reason and an offer.
fn refuse_missing(almanac: &Almanac, question: &ClearQuestion, missing: NoProcess, findings: &mut Findings) {
    match missing {
        NoProcess::ProductUnknown { product } => {
            let text = format!("no process table has a food {product}");
            findings.refuse(Verdict::NotTested, Because::NoRow, text, None);
            findings.offer("cold", "keep it in the refrigerator, or freeze it", None);
        }
        NoProcess::NoRowForCanner { printed, barred_by } => {
            refuse_canner(almanac, question, &printed, barred_by.map(|(id, _)| id), findings);
        }
        NoProcess::PackNotPrinted { printed } => {
            let text =
                format!("this food is not printed as a {} pack for a {}", question.pack, canner(question));
            findings.refuse(Verdict::NotTested, Because::PackNotPrinted, text, None);
            for pack in printed {
                findings.offer(
                    "pack",
                    format!("{pack} pack is printed"),
                    citation_for(almanac, question, pack),
                );
            }
        }
        NoProcess::JarTooLarge { largest, barred_by } => {
            refuse_jar(almanac, question, largest, barred_by.as_ref(), findings);
        }
        NoProcess::JarNotPrinted { printed } => {
            let text = format!(
                "this food is not printed for a {}, and no rule gives it another line",
                jar_name(question.jar)
            );
            findings.refuse(Verdict::NotTested, Because::NoRow, text, None);
            offer_jars(&printed, findings);
        }
        NoProcess::AboveLastBand { last, citation } => {
            let text = format!(
                "the last printed band for a {} ends at {}, and {} lies above it",
                canner(question),
                write_altitude(last),
                write_altitude(question.altitude)
            );
            findings.refuse(Verdict::NotTested, Because::AltitudeAboveLastBand, text, Some(&citation));
            offer_other_ways(almanac, question, findings);
            findings.offer("extension", "ask the local extension office, or freeze the food", None);
        }
        NoProcess::SteamLimit { minutes, limit, barred_by } => {
            refuse_steam(almanac, minutes.0, limit.map(|limit| limit.0), barred_by.as_ref(), findings);
        }
        NoProcess::AcidNotPrinted { citation } => {
            let text = format!(
                "this food needs acid in each jar, and no amount is on file for a {}",
                jar_name(question.jar)
            );
            findings.refuse(Verdict::NotTested, Because::AcidMissing, text, Some(&citation));
            findings.offer("freeze", "freeze it", None);
        }
        NoProcess::OnFileUnverified { citation } => {
            let text = format!(
                "a line is on file but was never seen in print; look it up in {}",
                place_of(almanac, &citation)
            );
            findings.refuse(Verdict::NotTested, Because::OnFileUnverified, text, Some(&citation));
            offer_other_ways(almanac, question, findings);
            findings.offer("extension", "ask the local extension office, or freeze the food", None);
        }
        NoProcess::OnFileLowerRank { citation } => {
            let text =
                format!("a line stands only in a source of lower rank: {}", place_of(almanac, &citation));
            findings.refuse(Verdict::NotTested, Because::OnFileLowerRank, text, Some(&citation));
            offer_other_ways(almanac, question, findings);
            findings.offer("extension", "ask the local extension office, or freeze the food", None);
        }
    }
}

/// Offers each other canner and pack for which a tested line is printed, for this jar at this altitude.
fn offer_other_ways(almanac: &Almanac, question: &ClearQuestion, findings: &mut Findings) {
    for &canner in CannerKind::ALL {
        for &pack in Pack::ALL {
            let (product, jar, altitude) = (question.product.clone(), question.jar, question.altitude);
            let found = almanac.find_processes(&ProcessQuestion { product, pack, jar, canner, altitude });
            if let Some(process) = found.unwrap_or_default().first() {
                let text = format!("a process is printed for a {pack} pack in a {}", canner_name(canner));
                findings.offer("canner", text, Some(process.citation()));
            }
        }
    }
}

fn canner(question: &ClearQuestion) -> &'static str {
    canner_name(question.canner)
}

fn citation_for<'a>(almanac: &'a Almanac, question: &ClearQuestion, pack: Pack) -> Option<&'a Citation> {
    almanac.printed_lines(&question.product).find(|line| line.pack() == pack).map(|line| line.citation())
}

fn refuse_canner(
    almanac: &Almanac,
    question: &ClearQuestion,
    printed: &[CannerKind],
    barred_by: Option<almanac::RefusalId>,
    findings: &mut Findings,
) {
    if let Some(refusal) = barred_by.and_then(|id| almanac.refusal(id.as_str())) {
        add_refusal(refusal, Verdict::DoNot, Because::LowAcid, findings);
    } else {
        let text = format!("nothing is printed for this food in a {}", canner(question));
        findings.refuse(Verdict::NotTested, Because::NoRow, text, None);
    }
    for kind in printed {
        findings.offer("canner", format!("a process is printed for a {}", canner_name(*kind)), None);
    }
}

fn refuse_jar(
    almanac: &Almanac,
    question: &ClearQuestion,
    largest: JarSize,
    barred_by: Option<&Citation>,
    findings: &mut Findings,
) {
    let jar = jar_name(question.jar);
    let mut text =
        format!("this food is printed for jars up to the {}, and a {jar} is larger", jar_name(largest));
    if barred_by.is_some() {
        text.push_str("; a jar larger than the largest listed one is never used");
    }
    // Either the rule or the refusal bars it; with both struck it is only unprinted.
    let refusal = almanac.refusal("oversize-jars");
    let verdict = if barred_by.is_some() || refusal.is_some() { Verdict::DoNot } else { Verdict::NotTested };
    findings.refuse(verdict, Because::JarTooLarge, text, barred_by);
    let own = almanac
        .refusal("cream-corn-quarts")
        .filter(|_| question.product.as_str() == "corn-cream-style" && question.jar == JarSize::Quart);
    for refusal in refusal.into_iter().chain(own) {
        add_refusal(refusal, Verdict::DoNot, Because::JarTooLarge, findings);
    }
    offer_jars(&[largest], findings);
}

fn offer_jars(printed: &[JarSize], findings: &mut Findings) {
    for jar in printed {
        findings.offer("jar", format!("a {} is printed", jar_name(*jar)), None);
    }
}

fn refuse_steam(
    almanac: &Almanac,
    minutes: u32,
    limit: Option<u32>,
    barred_by: Option<&Citation>,
    findings: &mut Findings,
) {
    let Some(limit) = limit else {
        let text = "no rule on file says how long a steam canner may run".to_owned();
        findings.refuse(Verdict::NotTested, Because::SteamLimit, text, None);
        return;
    };
    let text = format!("a steam canner runs {limit} min at most, and the printed line asks for {minutes}");
    findings.refuse(Verdict::NotTested, Because::SteamLimit, text, barred_by);
    if let Some(refusal) = almanac.refusal("steam-canner-over-45") {
        add_refusal(refusal, Verdict::DoNot, Because::SteamLimit, findings);
    }
    findings.offer("canner", "a process is printed for a boiling-water canner", None);
}

/// Puts the answer together; nothing is served unless it is tested.
fn finish(
    almanac: &Almanac,
    question: &ClearQuestion,
    changed: &ClearQuestion,
    lines: Vec<ClearedLine>,
    changes: Vec<ClearedChange>,
    mut findings: Findings,
) -> Clearance {
    let tested = findings.verdict == Verdict::Tested && !lines.is_empty();
    let mut acid = None;
    let mut processes = Vec::new();
    if tested {
        for line in &lines {
            findings.cite(line.process().citation());
        }
        let needs_acid = lines.iter().any(|line| line.process().acid_in_each_jar());
        let rule = almanac.acid_for(&changed.product, changed.jar).filter(|_| needs_acid);
        if let Some(rule) = &rule {
            findings.cite(&rule.citation);
        }
        acid = rule.map(AcidDose::new);
        add_riders(almanac, changed, &lines, &mut findings);
        processes = lines;
    } else {
        findings.riders.clear();
    }
    Clearance {
        question: question.clone(),
        verdict: findings.verdict,
        processes,
        acid,
        riders: findings.riders,
        because: findings.because,
        instead: findings.instead,
        changes,
        sources: findings.sources,
    }
}
