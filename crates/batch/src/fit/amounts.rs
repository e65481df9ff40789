//! The amounts of one batch: exact, then as a cook can measure them, with their weight.

use almanac::{Almanac, JarSize, Part, ProductId};
use measure::{Fraction, Mass};

use super::answer::{FittedIngredient, JarCount};
use super::jars::ounces;
use super::line::{Balance, Held, Line, Per, PrintedAmount};
use super::measurable::{CookUnit, Measured, Rounding};
use super::weights::Scales;

/// What the amounts of a batch are worked out from.
#[derive(Debug, Clone)]
pub(crate) struct Frame<'a, 't> {
    pub(crate) almanac: &'a Almanac,
    pub(crate) scales: &'a Scales<'t>,
    pub(crate) lines: &'a [Line],
    pub(crate) balance: Balance,
    pub(crate) product: Option<&'a ProductId>,
    /// The share of the printed formula.
    pub(crate) factor: Fraction,
    /// The jars of the batch.
    pub(crate) jars: &'a [JarCount],
    /// The cups of strained juice, for a formula that counts by them.
    pub(crate) juice_cups: Option<Fraction>,
    /// What there is in all.
    pub(crate) held: &'a [Held],
    /// Produce to use, as bought or picked, where what is there decides and not the printed amount.
    pub(crate) by_weight: &'a [Held],
    /// Percent of salt by weight of the produce, where the salt is weighed against it.
    pub(crate) salt_percent: Option<f64>,
    /// The cover liquid of the jars, where the formula prints none.
    pub(crate) cover: Option<Measured>,
}

/// Every ingredient of the batch.
pub(crate) fn fit_amounts(frame: &Frame<'_, '_>) -> Vec<FittedIngredient> {
    frame.lines.iter().map(|line| fit_line(frame, line)).collect()
}

fn fit_line(frame: &Frame<'_, '_>, line: &Line) -> FittedIngredient {
    let (exact, per) = exact_of(frame, line);
    let as_printed = frame.factor == Fraction::ONE
        && matches!(line.amount, PrintedAmount::PerBatch { .. })
        && exact == line.of_one_batch(frame.balance);
    let rounding = if is_cover(line) { Rounding::NeverDown } else { line.rounding(frame.balance) };
    let is_all_there_is =
        frame.salt_percent.is_some() && frame.by_weight.iter().any(|held| held.index == line.index);
    let measured = if as_printed || is_all_there_is || per.is_some() {
        exact
    } else {
        exact.and_then(|exact| exact.to_mark(rounding))
    };
    let moved_percent =
        measured.zip(exact).map_or(0.0, |(measured, exact)| measured.moved_percent_from(exact));
    let weight = measured.filter(|_| per.is_none()).and_then(|amount| frame.scales.weigh(line, amount));
    FittedIngredient {
        index: line.index,
        ingredient: line.name.clone(),
        part: line.part,
        prep: line.prep.clone(),
        optional: line.optional,
        exact,
        measured,
        per,
        weight,
        takes: measured
            .and_then(|amount| takes(frame, line, amount))
            .map(|mass| at_most_held(frame, line, mass)),
        moved_percent,
    }
}

/// The exact amount, and for each of what it is meant when it is not for the batch.
fn exact_of(frame: &Frame<'_, '_>, line: &Line) -> (Option<Measured>, Option<&'static str>) {
    if let Some(held) = frame.by_weight.iter().find(|held| held.index == line.index) {
        // Where salt is weighed against it, produce is told in the same grams.
        let exact =
            if frame.salt_percent.is_some() { in_grams(held.mass) } else { in_line_unit(line, held.mass) };
        return (exact, None);
    }
    let exact = match &line.amount {
        PrintedAmount::PerBatch { .. } if line.part == Part::Salt && frame.salt_percent.is_some() => {
            salt_by_weight(frame)
        }
        PrintedAmount::PercentOfWhole { .. } => salt_by_weight(frame),
        PrintedAmount::PerBatch { .. } => {
            line.of_one_batch(frame.balance).and_then(|amount| amount.times(frame.factor))
        }
        PrintedAmount::Per { low, high, unit, per } => {
            let value = if line.rounding(frame.balance) == Rounding::NeverDown { *high } else { *low };
            let each = Measured { value, unit: *unit };
            return match times_of(frame, *per) {
                Some(_) if acid_by_table(frame, line).is_some() => (acid_by_table(frame, line), None),
                Some(times) => (each.times(times), None),
                None => (Some(each), Some(per.told())),
            };
        }
        PrintedAmount::Parts(parts) => by_parts(frame, *parts),
        PrintedAmount::SyrupOfLoad => frame.cover,
        PrintedAmount::Open if is_cover(line) => frame.cover,
        PrintedAmount::Open => None,
    };
    (exact, None)
}

/// Liquid that is poured over what stands in the jars and of which there must be enough.
pub(crate) fn is_cover(line: &Line) -> bool {
    match line.amount {
        PrintedAmount::SyrupOfLoad => true,
        PrintedAmount::Open => line.part == Part::Liquid,
        _ => false,
    }
}

/// How many times an amount is taken that does not go with the batch; `None` when the batch does not tell.
fn times_of(frame: &Frame<'_, '_>, per: Per) -> Option<Fraction> {
    match per {
        Per::Jar(size) => jar_space(frame.jars)?.checked_div(ounces(size.volume())),
        Per::QuartOfKernels => jar_space(frame.jars)?.checked_div(ounces(JarSize::Quart.volume())),
        Per::CupOfJuice => frame.juice_cups,
        Per::PoundsOfFruit(pounds) => fruit_pounds(frame)?.checked_div(Fraction::whole(pounds)),
        Per::CupOfWater | Per::QuartOfSyrup | Per::GallonOfWaterPouredOff => None,
    }
}

/// The room of the likely jars in fluid ounces; `None` without jars.
fn jar_space(jars: &[JarCount]) -> Option<Fraction> {
    let total = jars.iter().try_fold(Fraction::ZERO, |total, count| {
        total.checked_add(ounces(count.size.volume()).checked_mul(Fraction::whole(count.likely))?)
    })?;
    (total > Fraction::ZERO).then_some(total)
}

/// Pounds of fruit in the batch: those weighed, or those that the juice takes.
fn fruit_pounds(frame: &Frame<'_, '_>) -> Option<Fraction> {
    frame.lines.iter().find(|line| line.is_produce).and_then(|line| {
        let (exact, per) = exact_of(frame, line);
        let exact = exact.filter(|exact| exact.unit == CookUnit::Lb && per.is_none())?;
        Some(exact.value)
    })
}

/// Bottled lemon juice by the acid table: a jar between two printed sizes gets the amount of the larger.
fn acid_by_table(frame: &Frame<'_, '_>, line: &Line) -> Option<Measured> {
    if line.part != Part::Acid || !line.name.contains("lemon") {
        return None;
    }
    let product = frame.product?;
    let total = frame.jars.iter().try_fold(0.0, |total, count| {
        let lemon = frame.almanac.acid_for(product, count.size)?.lemon?;
        Some(total + lemon.as_teaspoons() * f64::from(count.likely))
    })?;
    // Quarter teaspoons: the printed amounts are whole tablespoons.
    let value = Fraction::new(libm::ceil(total * 4.0 - 1e-6) as i64, 12)?;
    (value > Fraction::ZERO).then_some(Measured { value, unit: CookUnit::Tbsp })
}

/// Salt weighed against the produce of the batch, in grams, exact to a hundredth and never less.
fn salt_by_weight(frame: &Frame<'_, '_>) -> Option<Measured> {
    let percent = frame.salt_percent?;
    let produce: Mass = frame.by_weight.iter().map(|held| held.mass).sum();
    let grams = produce.as_grams() * percent / 100.0;
    // Never overflows: what a person weighs is far below 10^13 g.
    let value = Fraction::new(libm::ceil(grams * 100.0 - 1e-6) as i64, 100)?;
    Some(Measured { value, unit: CookUnit::G })
}

/// Parts by weight, beside the produce that is there.
fn by_parts(frame: &Frame<'_, '_>, parts: Fraction) -> Option<Measured> {
    let held = frame.by_weight.first()?;
    let of_held = frame.lines.iter().find(|line| line.index == held.index)?;
    let PrintedAmount::Parts(held_parts) = of_held.amount else { return None };
    let grams = held.mass.as_grams() * parts.to_f64() / held_parts.to_f64();
    Some(Measured { value: Fraction::new(libm::floor(grams) as i64, 1)?, unit: CookUnit::G })
}

/// A mass in grams, cut to a whole one, so never more.
fn in_grams(mass: Mass) -> Option<Measured> {
    // Never overflows: what a person weighs is far below 10^13 g.
    let value = Fraction::new(libm::floor(mass.as_grams() + 1e-6) as i64, 1)?;
    Some(Measured { value, unit: CookUnit::G })
}

/// A mass in the unit of its line where that is a weight, else in grams; cut to a hundredth, so never more.
fn in_line_unit(line: &Line, mass: Mass) -> Option<Measured> {
    let unit = match line.amount {
        PrintedAmount::PerBatch { unit: unit @ (CookUnit::Lb | CookUnit::Oz), .. } => unit,
        _ => return in_grams(mass),
    };
    let (amount, parts) = if unit == CookUnit::Lb { (mass.as_pounds(), 100) } else { (mass.as_ounces(), 10) };
    // Never overflows: what a person weighs is far below 10^13 g.
    let value = Fraction::new(libm::floor(amount * parts as f64 + 1e-6) as i64, parts)?;
    Some(Measured { value, unit })
}

/// A batch within the slack of weighing takes what is there and no more.
fn at_most_held(frame: &Frame<'_, '_>, line: &Line, mass: Mass) -> Mass {
    frame.held.iter().find(|held| held.index == line.index).map_or(mass, |held| mass.min(held.mass))
}

/// What an amount takes of the produce as it was bought.
fn takes(frame: &Frame<'_, '_>, line: &Line, measured: Measured) -> Option<Mass> {
    if !line.is_produce {
        return None;
    }
    if let Some(held) = frame.by_weight.iter().find(|held| held.index == line.index) {
        return Some(measured.mass().unwrap_or(held.mass).min(held.mass));
    }
    if let Some(mass) = measured.mass() {
        return Some(mass);
    }
    Some(frame.scales.of_one_batch(line, frame.juice_cups)?.enough() * frame.factor.to_f64())
}
