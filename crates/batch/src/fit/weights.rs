//! Weight and volume of an ingredient: printed equivalences first, then densities and handbook yields.
//!
//! A formula prints produce as bought ("3 lb"), as prepared ("8 cups, sliced") or both ("8 cups, about 3 lb"). What
//! there is was weighed as bought. The publication's own equivalence goes before any table; where there is none, cups
//! are turned into grams by a density row and grams as prepared into grams as bought by the trimming row.

use almanac::{Almanac, Formula};
use measure::{Fraction, Mass, Percent, Volume};

use super::jars::Yielded;
use super::kinds::find_kind;
use super::line::{Line, Per, PrintedAmount};
use super::measurable::{CookUnit, Measure, Measured};
use super::printed::find_weight;
use super::rows::{self, DensityMeasure};

/// How the weight of a printed batch is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Known {
    /// The formula prints a weight.
    Weighed,
    /// The formula prints a weight beside a measure.
    Equivalence,
    /// Worked out from a density and, for produce, a trimming row.
    Density,
}

/// What a printed batch takes of an ingredient, as bought.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct BatchWeight {
    pub(crate) low: Mass,
    pub(crate) high: Mass,
    pub(crate) known: Known,
}

impl BatchWeight {
    /// So much is enough for a printed batch: the lower end of a printed range, the heavier of two equivalents.
    pub(crate) fn enough(&self) -> Mass {
        match self.known {
            Known::Weighed => self.low,
            Known::Equivalence | Known::Density => self.high,
        }
    }

    /// Whether the formula lets the cook choose within a range of weight.
    pub(crate) fn is_weighed_range(&self) -> bool {
        self.known == Known::Weighed && self.low != self.high
    }
}

/// What a printed batch takes of a line, as bought; `None` where nothing printed or on file tells.
pub(crate) fn of_one_batch(
    almanac: &Almanac,
    line: &Line,
    juice_cups: Option<Fraction>,
) -> Option<BatchWeight> {
    let (low, high, unit, times) = match &line.amount {
        PrintedAmount::PerBatch { low, high, unit } => (low, high, unit, 1.0),
        PrintedAmount::Per { low, high, unit, per: Per::CupOfJuice } => {
            (low, high, unit, juice_cups?.to_f64())
        }
        _ => return None,
    };
    let at = |value: Fraction| Measured { value, unit: *unit };
    if let (Some(low), Some(high)) = (at(*low).mass(), at(*high).mass()) {
        return Some(BatchWeight { low: low * times, high: high * times, known: Known::Weighed });
    }
    if let Some(printed) = find_weight(&line.prep) {
        return Some(BatchWeight { low: printed.low, high: printed.high, known: Known::Equivalence });
    }
    let prepared = weigh(almanac, line, at(*high))?;
    let bought = if line.is_produce { as_bought(almanac, line, prepared) } else { prepared };
    Some(BatchWeight { low: bought, high: bought, known: Known::Density })
}

/// What an amount weighs as it is measured, prepared; `None` where no row says.
pub(crate) fn weigh(almanac: &Almanac, line: &Line, amount: Measured) -> Option<Mass> {
    if let Some(mass) = amount.mass() {
        // Cans of juice are printed in ounces by volume.
        return (!line.name.to_lowercase().contains("juice")).then_some(mass);
    }
    let kind = find_kind(&line.name)?;
    kind.densities.iter().find_map(|key| weigh_by(almanac, key, line, amount))
}

/// The density row of one key whose form comes closest to the words of the preparation.
fn weigh_by(almanac: &Almanac, key: &str, line: &Line, amount: Measured) -> Option<Mass> {
    let rows = rows::densities(almanac, key);
    let words = format!("{} {}", line.prep, line.name).to_lowercase();
    let closeness = |form: &str| {
        form.to_lowercase()
            .split(|letter: char| !letter.is_alphanumeric())
            .filter(|word| word.len() > 2 && words.contains(&word[..word.len().min(4)]))
            .count()
    };
    let best = |measures: &[DensityMeasure]| {
        measures.iter().find_map(|measure| {
            let of_measure = rows.iter().filter(|row| row.measure == *measure);
            // The first of equally close rows: the tables put the plainest form first.
            of_measure.rev().max_by_key(|row| closeness(&row.form)).map(|row| (*measure, row.grams))
        })
    };
    match amount.unit.measure() {
        Measure::Spooned(_) => {
            let (measure, grams) = best(measures_near(amount.unit))?;
            Some(grams * amount.volume()?.ratio_to(measure.volume()?))
        }
        Measure::Counted(_) => {
            let measure = match amount.unit {
                CookUnit::Package => DensityMeasure::Package,
                CookUnit::Pouch => DensityMeasure::Pouch,
                CookUnit::Each | CookUnit::Clove | CookUnit::Large | CookUnit::Ear => DensityMeasure::Each,
                _ => return None,
            };
            let (_, grams) = best(&[measure])?;
            Some(grams * amount.value.to_f64())
        }
        Measure::Weighed(_) | Measure::WeighedMetric => None,
    }
}

/// Spoons and cups of a density row, those nearest in size first.
fn measures_near(unit: CookUnit) -> &'static [DensityMeasure] {
    use DensityMeasure::{Cup, FluidOunce, Tablespoon, Teaspoon};
    match unit {
        CookUnit::Tsp => &[Teaspoon, Tablespoon, Cup, FluidOunce],
        CookUnit::Tbsp => &[Tablespoon, Teaspoon, Cup, FluidOunce],
        _ => &[Cup, FluidOunce, Tablespoon, Teaspoon],
    }
}

/// The weight as bought of produce that weighs so much prepared; the same where no row says what is lost.
fn as_bought(almanac: &Almanac, line: &Line, prepared: Mass) -> Mass {
    prepared * (1.0 / edible_share(almanac, line))
}

/// The share of produce as bought that is left when it is prepared; all of it where no row says.
pub(crate) fn edible_share(almanac: &Almanac, line: &Line) -> f64 {
    let trimming = find_kind(&line.name).and_then(|kind| kind.trimming);
    trimming.and_then(|key| rows::edible(almanac, key)).map_or(1.0, Percent::as_fraction)
}

/// The room that produce takes when it is prepared; `None` where no density is on file.
pub(crate) fn prepared_volume(almanac: &Almanac, line: &Line, bought: Mass) -> Option<Volume> {
    let cup = weigh(almanac, line, Measured { value: Fraction::ONE, unit: CookUnit::Cup })?;
    Some(Volume::cups((bought * edible_share(almanac, line)).ratio_to(cup)))
}

/// What a jar takes of a plain pack, for each fluid ounce of its size.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct JarRates {
    /// The heaviest figure printed for a jar or a load: by it jars are filled.
    pub(crate) heaviest: Mass,
    /// The heaviest of all, yields of a bushel or crate among them: the fewest jars.
    pub(crate) most_ever: Mass,
    /// The lightest of all: the most jars.
    pub(crate) least_ever: Mass,
}

/// What a jar of a plain pack takes, by every figure that is printed: pounds for the batch, a quart, a load of seven
/// quarts and one of nine pints, and quarts from a bushel, lug or crate.
pub(crate) fn mass_per_ounce_of_jar(
    almanac: &Almanac,
    formula: &Formula,
    printed: Mass,
    yielded: Yielded,
) -> JarRates {
    const QUART_OZ: f64 = 32.0;
    const PINT_OZ: f64 = 16.0;
    let of_batch = printed * (1.0 / yielded.high.as_fluid_ounces());
    let mut jars = vec![of_batch];
    let mut all = vec![printed * (1.0 / yielded.low.as_fluid_ounces())];
    let rows =
        formula.product.as_ref().map(|product| rows::procurement(almanac, product)).unwrap_or_default();
    // Two thicknesses of one sauce share a name; the row of this formula is the one with its load.
    let own = |load: Option<Mass>| load.is_none_or(|load| (load.ratio_to(printed) - 1.0).abs() < 0.01);
    for row in rows.iter().filter(|row| own(row.seven_quarts)) {
        let rates = [
            row.quart.map(|mass| mass * (1.0 / QUART_OZ)),
            row.seven_quarts.map(|mass| mass * (1.0 / (7.0 * QUART_OZ))),
            row.nine_pints.map(|mass| mass * (1.0 / (9.0 * PINT_OZ))),
        ];
        jars.extend(rates.into_iter().flatten());
        if let (Some(container), Some((low, high))) = (row.container, row.container_quarts) {
            all.push(container * (1.0 / (low * QUART_OZ)));
            all.push(container * (1.0 / (high * QUART_OZ)));
        }
    }
    let heaviest = jars.iter().copied().fold(Mass::ZERO, Mass::max);
    all.extend(jars);
    JarRates {
        heaviest,
        most_ever: all.iter().copied().fold(Mass::ZERO, Mass::max),
        least_ever: all.iter().copied().fold(heaviest, Mass::min),
    }
}
