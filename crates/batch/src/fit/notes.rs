//! What must be known beside the figures of a fit.

use almanac::{Almanac, Basis, Citation, Formula, KeptIn, Method, ScaleRule};

use crate::clear::find_doubt;

use super::answer::{FittedBatch, JarCount, Note, NoteCode};
use super::batches::PlannedBatch;
use super::factor::SHOWN_MOVE_PERCENT;
use super::line::{Balance, Held, Line, PrintedAmount};
use super::measurable::Measured;
use super::weights::{BatchWeight, Known};

/// Where the rule on separate batches is printed.
const SEPARATE_BATCHES: &str = "National Center for Home Food Preservation, on doubling; USDA, Complete Guide to Home \
                                Canning, 2015, p. 1-30";
/// Where it is printed that the proportions stay.
const PROPORTIONS: &str = "USDA, Complete Guide to Home Canning, 2015, p. 1-28";

/// A citation in one line.
pub(crate) fn cite(citation: &Citation) -> String {
    format!("{}, {}", citation.source, citation.locator)
}

fn ours(code: NoteCode, text: impl Into<String>) -> Note {
    Note { code, text: text.into(), source: None }
}

/// Why a formula that is printed for the shelf is kept cold all the same.
pub(crate) fn not_tested(formula: &Formula) -> Option<Note> {
    formula.product.as_ref()?;
    let doubt = find_doubt(formula)?;
    let why = if doubt.basis == Basis::Memory {
        "a part of the formula was recalled and not seen in print"
    } else {
        "the formula stands only in a source of lower rank"
    };
    let text =
        format!("not tested: {why}, so it is kept in the refrigerator or frozen; `clear` names others");
    Some(Note { code: NoteCode::NotTested, text, source: Some(cite(doubt)) })
}

/// How the formula may be scaled, and what follows from it here.
pub(crate) fn note_scale(formula: &Formula, planned: &[PlannedBatch]) -> Vec<Note> {
    let mut notes = Vec::new();
    let is_ferment = formula.methods.contains(&Method::Ferment);
    let canned = formula.kept_in == KeptIn::CanningJar && !is_ferment;
    match formula.scale {
        ScaleRule::SingleBatch => {
            let text = "made in whole printed batches, one at a time: a larger or a smaller pot does not set as printed";
            let source = Some("USDA, Complete Guide to Home Canning, 2015, p. 1-30".to_owned());
            notes.push(Note { code: NoteCode::WholeBatchesOnly, text: text.to_owned(), source });
        }
        ScaleRule::OneFactor if canned => {
            let text =
                "all parts go by one factor; acid, food and water keep the printed proportion".to_owned();
            notes.push(Note { code: NoteCode::RatioLocked, text, source: Some(PROPORTIONS.to_owned()) });
        }
        ScaleRule::OneFactor => {}
        ScaleRule::ByJar => {
            notes.push(ours(
                NoteCode::FreeByWeight,
                "packed jar by jar, by the heaviest weight that is printed for a jar",
            ));
        }
        ScaleRule::Free => {
            notes.push(ours(NoteCode::FreeByWeight, "free in amount: the figures touch quality only"));
        }
    }
    if planned.len() > 1 && !canned {
        let text = format!("{} batches, none larger than the printed one", planned.len());
        notes.push(ours(NoteCode::SeveralBatches, text));
    } else if planned.len() > 1 {
        let text = format!(
            "{} batches, each filled and processed before the next one is filled: none is larger than the printed one or \
             than one canner load",
            planned.len()
        );
        notes.push(Note { code: NoteCode::SeveralBatches, text, source: Some(SEPARATE_BATCHES.to_owned()) });
    }
    if let Some(moved) = planned.iter().find(|batch| batch.stepped_down_percent > SHOWN_MOVE_PERCENT) {
        let text = format!(
            "the factor is {}, {:.0} % below what there is: the next that can be measured with acid never short and food \
             never over",
            moved.factor, moved.stepped_down_percent
        );
        notes.push(ours(NoteCode::FactorMoved, text));
    }
    notes
}

/// Which ingredient sets the size, and how its weight is known.
pub(crate) fn note_weights(
    lines: &[Line],
    held: &[Held],
    of_batch: &[Option<BatchWeight>],
    scarce: Option<usize>,
) -> Vec<Note> {
    let mut notes = Vec::new();
    if let Some(line) = scarce.and_then(|index| lines.get(index)).filter(|_| held.len() > 1) {
        notes.push(ours(NoteCode::Limiting, format!("{} is the scarcest and sets the size", line.name)));
    }
    for (held, of_batch) in held.iter().zip(of_batch) {
        let (Some(line), Some(of_batch)) = (lines.get(held.index), of_batch) else { continue };
        match of_batch.known {
            Known::Weighed => {}
            Known::Equivalence => {
                let text = format!(
                    "{}: the formula prints \"{}\", and that weight is taken for the printed measure; the measure decides",
                    line.name, line.prep
                );
                notes.push(ours(NoteCode::PrintedEquivalence, text));
            }
            Known::Density => {
                let text = format!(
                    "{}: about {:.0} g as bought make the printed measure, by the density and trimming tables; the measure \
                     decides",
                    line.name,
                    of_batch.high.as_grams()
                );
                notes.push(ours(NoteCode::EstimatedWeight, text));
            }
        }
    }
    notes
}

/// Amounts that moved, have no weight, or were printed as a range.
pub(crate) fn note_amounts(lines: &[Line], balance: Balance, batches: &[FittedBatch]) -> Vec<Note> {
    let mut notes = Vec::new();
    let mut without_weight: Vec<&str> = Vec::new();
    let mut moved: Vec<String> = Vec::new();
    for line in lines {
        let of_line = || {
            batches.iter().flat_map(|batch| &batch.ingredients).filter(|fitted| fitted.index == line.index)
        };
        let furthest = of_line()
            .map(|fitted| fitted.moved_percent)
            .fold(0.0_f64, |furthest, moved| if moved.abs() > furthest.abs() { moved } else { furthest });
        if furthest.abs() > SHOWN_MOVE_PERCENT {
            let way = if furthest > 0.0 { "up" } else { "down" };
            moved.push(format!("{} {way} by {:.1} %", line.name, furthest.abs()));
        }
        let measured = of_line()
            .find_map(|fitted| fitted.measured.filter(|_| fitted.weight.is_none() && fitted.per.is_none()));
        if measured.is_some() {
            without_weight.push(&line.name);
        }
        if line.is_range() && !matches!(line.amount, PrintedAmount::PercentOfWhole { .. }) {
            notes.push(note_range(line, balance));
        }
    }
    if !moved.is_empty() {
        let text = format!("moved to an amount that can be measured: {}", moved.join("; "));
        notes.push(ours(NoteCode::Moved, text));
    }
    if !without_weight.is_empty() {
        let text = format!("no row on file says what these weigh as measured: {}", without_weight.join("; "));
        notes.push(ours(NoteCode::NoWeightOnFile, text));
    }
    notes
}

fn note_range(line: &Line, balance: Balance) -> Note {
    let ends = match &line.amount {
        PrintedAmount::PerBatch { low, high, unit } | PrintedAmount::Per { low, high, unit, .. } => {
            Some((Measured { value: *low, unit: *unit }, Measured { value: *high, unit: *unit }))
        }
        _ => None,
    };
    let end =
        if line.rounding(balance) == super::measurable::Rounding::NeverDown { "upper" } else { "lower" };
    let printed = ends.map_or_else(String::new, |(low, high)| {
        format!("{} to {} {}", low.value, high.value, high.unit.told())
    });
    ours(
        NoteCode::PrintedRange,
        format!("{}: {printed} is printed; where nothing else decides, the {end} end is taken", line.name),
    )
}

/// Amounts that were only recalled and are left to the words beside them.
pub(crate) fn note_recalled(formula: &Formula) -> Vec<Note> {
    let recalled = formula
        .ingredients
        .iter()
        .filter(|ingredient| ingredient.amount.is_some() && ingredient.citation.basis == Basis::Memory);
    recalled
        .map(|ingredient| {
            let text = format!(
                "{}: the printed amount was not seen and none is shown; go by these words: {}",
                ingredient.name, ingredient.prep
            );
            ours(NoteCode::NotPrinted, text)
        })
        .collect()
}

/// How the jars were estimated, and what the load is.
pub(crate) fn note_jars(
    almanac: &Almanac,
    formula: &Formula,
    batches: &[FittedBatch],
    usual_load: bool,
) -> Vec<Note> {
    let mut notes = Vec::new();
    if formula.yield_.is_none() && formula.kept_in == KeptIn::CanningJar {
        notes.push(ours(NoteCode::NotPrinted, "no yield is printed, so no jars are counted"));
    }
    let jars: Vec<&JarCount> = batches.iter().flat_map(|batch| &batch.jars).collect();
    if jars.is_empty() {
        return notes;
    }
    if let Some(yielded) = &formula.yield_ {
        let text = match formula.scale {
            ScaleRule::ByJar => "jars by the heaviest weight printed for a jar; the fewest and the most by every printed weight and \
                                 by what a bushel, lug or crate gives; have the higher number ready"
                .to_owned(),
            _ if yielded.min == yielded.max => format!(
                "jars by the printed yield ({}), give or take 5 %, which is our own spread; have the higher number ready",
                yielded.printed
            ),
            _ => format!("jars by the printed yield ({}); have the higher number ready", yielded.printed),
        };
        notes.push(ours(NoteCode::JarEstimate, text));
    }
    if usual_load && batches.iter().any(|batch| !batch.loads.is_empty()) {
        notes.push(ours(
            NoteCode::CannerLoad,
            "no canner is named, so the usual load of its size of jar is taken",
        ));
    }
    if batches.iter().flat_map(|batch| &batch.loads).any(|load| load.jars < load.holds) {
        let text = "a load smaller than the canner holds is processed as printed all the same; the jars must stand steady";
        let source = almanac.rule("canner-underfilled").map(|rule| cite(&rule.citation));
        notes.push(Note { code: NoteCode::CannerLoad, text: text.to_owned(), source });
    }
    if formula.methods.contains(&Method::Ferment) {
        notes.push(ours(
            NoteCode::CannerLoad,
            "jars are filled after the ferment; each load is canned by itself",
        ));
    }
    notes
}
