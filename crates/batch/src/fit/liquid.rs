//! Cover liquid: that there is enough for the jars and not half as much again.
//!
//! How much a jar takes is read off the printed syrup amounts of a canner load, the one place where a publication says
//! how much liquid goes over pieces in jars. Where a formula prints its own brine, that brine stands, all parts by the
//! factor: its proportion to the food is part of what was tested. The comparison is then only told.

use almanac::{Almanac, Citation, Formula, FormulaClass, JarSize, Part, SyrupUse};
use measure::{Fraction, Mass, Percent, Volume};

use super::answer::{FittedBatch, JarCount, Note, NoteCode};
use super::line::{Line, PrintedAmount};
use super::measurable::{CookUnit, Measured};
use super::notes::cite;

/// The printed liquid of a load.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct LoadLiquid {
    pub(crate) water: Fraction,
    pub(crate) sugar: Fraction,
    pub(crate) strength: String,
    pub(crate) sugar_percent: Option<f64>,
    /// Jars of the load and their size.
    pub(crate) jars: u32,
    pub(crate) size: JarSize,
    pub(crate) citation: Citation,
}

/// Liquid that is likely to be left.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct SpareLiquid {
    pub(crate) mass: Option<Mass>,
    pub(crate) is_syrup: bool,
}

/// What a cup of sugar adds to a syrup, in cups: 198 g of sucrose take 0.62 ml a gram in solution (ours, from the
/// density of a 60 % syrup, 1.286 g/ml; the printed yields of freezing syrups, 4 cups of water and 4 of sugar to 6
/// cups, say the same).
const CUPS_FROM_A_CUP_OF_SUGAR: f64 = 0.5;
/// How much more than the jars take is made, so that the last jar is not short; ours.
const TO_BE_SURE: f64 = 1.15;
/// From here on there is too much: half as much again.
const HALF_AS_MUCH_AGAIN: f64 = 1.5;
/// Below this share of what jars usually take the printed brine may run short; ours.
const MAY_RUN_SHORT: f64 = 0.9;

/// The printed liquid of a load of seven quarts in the strength that is taken where nobody asks for another; `None`
/// when its row is not on file.
pub(crate) fn read_load(almanac: &Almanac) -> Option<LoadLiquid> {
    /// Lighter syrups are advised, and the lightest is near water; ours.
    const STRENGTH: &str = "light";
    let row = almanac.find_syrups(SyrupUse::Canning, STRENGTH).find(|row| &*row.batch == "7-quart load")?;
    Some(LoadLiquid {
        water: row.water_cups,
        sugar: row.sugar_cups,
        strength: row.strength.to_string(),
        sugar_percent: row.sugar_percent.map(Percent::as_percent),
        jars: 7,
        size: JarSize::Quart,
        citation: row.citation.clone(),
    })
}

impl LoadLiquid {
    /// What a fluid ounce of jar takes, in cups.
    pub(crate) fn cups_per_ounce(&self) -> f64 {
        let cups = self.water.to_f64() + self.sugar.to_f64() * CUPS_FROM_A_CUP_OF_SUGAR;
        cups / (f64::from(self.jars) * self.size.volume().as_fluid_ounces())
    }
}

/// The liquid to pour over the jars of a batch, up to the next half cup.
pub(crate) fn cover_for(load: &LoadLiquid, jars: &[JarCount]) -> Option<Measured> {
    let ounces: f64 =
        jars.iter().map(|count| count.size.volume().as_fluid_ounces() * f64::from(count.likely)).sum();
    let cups = load.cups_per_ounce() * ounces * TO_BE_SURE;
    // Never overflows: a batch is one canner load.
    let value = Fraction::new(libm::ceil(cups * 2.0 - 1e-9) as i64, 2)?;
    (value > Fraction::ZERO).then_some(Measured { value, unit: CookUnit::Cup })
}

/// Whether a formula pours its liquid over pieces: a fresh pickle whose cooking line says that it covers.
pub(crate) fn is_poured_over_pieces(formula: &Formula) -> bool {
    formula.class == Some(FormulaClass::PickleFresh)
        && formula.outline.split(';').any(|step| {
            let verb_and_what = step.split(':').take(2).collect::<Vec<_>>().join(" ");
            ["cover", "covers"].iter().any(|word| verb_and_what.split([' ', ',']).any(|said| said == *word))
        })
        && !formula.outline.contains("boil and fill")
}

/// How the syrup of a batch is mixed, in words.
pub(crate) fn note_syrup(load: &LoadLiquid, cover: Measured) -> Note {
    let parts = load.water.to_f64() + load.sugar.to_f64() * CUPS_FROM_A_CUP_OF_SUGAR;
    let share = cover.value.to_f64() / parts;
    let quarter_cups = |cups: f64| {
        let value = Fraction::new(libm::ceil(cups * 4.0 - 1e-9) as i64, 4).unwrap_or(Fraction::ZERO);
        format!("{value} {}", if value > Fraction::ONE { "cups" } else { "cup" })
    };
    let percent = load.sugar_percent.map_or_else(String::new, |percent| format!(" ({percent} % sugar)"));
    let text = format!(
        "a {} syrup{percent} for these jars: {} of water and {} of sugar; lighter or heavier is a matter of taste, and \
         plain water or juice will do",
        load.strength,
        quarter_cups(load.water.to_f64() * share),
        quarter_cups(load.sugar.to_f64() * share),
    );
    Note { code: NoteCode::CoverLiquid, text, source: Some(cite(&load.citation)) }
}

/// Compares the brine of a pickle with what its jars take; the brine itself is not changed.
pub(crate) fn judge_brine(
    lines: &[Line],
    batches: &[FittedBatch],
    load: &LoadLiquid,
) -> Option<(Note, Option<SpareLiquid>)> {
    let printed: Volume = batches.iter().map(|batch| brine_of(lines, batch)).sum();
    let ounces: f64 = batches
        .iter()
        .flat_map(|batch| &batch.jars)
        .map(|count| count.size.volume().as_fluid_ounces() * f64::from(count.likely))
        .sum();
    if ounces <= 0.0 || printed == Volume::ZERO {
        return None;
    }
    let taken = Volume::cups(load.cups_per_ounce() * ounces);
    let ratio = printed.ratio_to(taken);
    let each_pint = printed.as_cups() / ounces * JarSize::Pint.volume().as_fluid_ounces();
    let usual = load.cups_per_ounce() * JarSize::Pint.volume().as_fluid_ounces();
    let start = format!(
        "the printed liquid comes to about {} cups for each pint of jars, where jars of pieces usually take about {}",
        in_tenths(each_pint),
        in_tenths(usual)
    );
    let (rest, spare) = if ratio > HALF_AS_MUCH_AGAIN {
        let mass = Some(Mass::grams((printed - taken * TO_BE_SURE).as_millilitres()));
        let rest = "so some is likely to be left; it is made as printed all the same, since the proportion is what was tested";
        (rest, Some(SpareLiquid { mass, is_syrup: false }))
    } else if ratio < MAY_RUN_SHORT {
        (
            "so it may run short: keep the pieces close, and have vinegar and water at hand in the printed proportion",
            None,
        )
    } else {
        ("so it is enough and not much over", None)
    };
    Some((
        Note {
            code: NoteCode::CoverLiquid,
            text: format!("{start}, {rest}"),
            source: Some(cite(&load.citation)),
        },
        spare,
    ))
}

/// Acid, water and dissolved sugar that go into the jars.
fn brine_of(lines: &[Line], batch: &FittedBatch) -> Volume {
    batch
        .ingredients
        .iter()
        .zip(lines)
        .filter(|(_, line)| !line.is_poured_off() && matches!(line.amount, PrintedAmount::PerBatch { .. }))
        .filter_map(|(fitted, line)| {
            let volume = fitted.measured?.volume()?;
            match line.part {
                Part::Acid | Part::Liquid | Part::Oil => Some(volume),
                Part::Sugar => Some(volume * CUPS_FROM_A_CUP_OF_SUGAR),
                _ => None,
            }
        })
        .sum()
}

fn in_tenths(value: f64) -> f64 {
    libm::round(value * 10.0) / 10.0
}
