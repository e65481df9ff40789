//! Weight and volume of an ingredient: printed equivalences first, then densities and handbook yields.
//!
//! A formula prints produce as bought ("3 lb"), as prepared ("8 cups, sliced") or both ("8 cups, about 3 lb"). What
//! there is was weighed as bought. The publication's own equivalence goes before any table; where there is none, cups
//! are turned into grams by a density row and grams as prepared into grams as bought by the trimming row.

use std::cell::RefCell;
use std::collections::BTreeMap;

use almanac::{Almanac, Citation, Density, DensityMeasure, Formula, Procurement, Produce};
use measure::{Fraction, Mass, Volume};

use super::jars::Yielded;
use super::line::{Line, Per, PrintedAmount};
use super::measurable::{CookUnit, Measured};
use super::printed::find_weight;

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

/// The scales of one fit: the density rows of its lines, each looked up once.
#[derive(Debug)]
pub(crate) struct Scales<'a> {
    almanac: &'a Almanac,
    rows: RefCell<BTreeMap<(usize, DensityMeasure), Option<&'a Density>>>,
}

impl<'a> Scales<'a> {
    pub(crate) fn new(almanac: &'a Almanac) -> Self {
        Self { almanac, rows: RefCell::default() }
    }

    /// What a printed batch takes of a line, as bought; `None` where nothing printed or on file tells.
    pub(crate) fn of_one_batch(&self, line: &Line, juice_cups: Option<Fraction>) -> Option<BatchWeight> {
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
        let prepared = self.weigh(line, at(*high)).or_else(|| self.estimate(line, at(*high)))?;
        let bought = if line.is_produce { prepared * (1.0 / self.edible_share(line)) } else { prepared };
        Some(BatchWeight { low: bought, high: bought, known: Known::Density })
    }

    /// What an amount weighs as it is measured, prepared; `None` where no row says.
    pub(crate) fn weigh(&self, line: &Line, amount: Measured) -> Option<Mass> {
        if let Some(mass) = amount.mass() {
            // Cans of juice are printed in ounces by volume.
            return (!line.name.to_lowercase().contains("juice")).then_some(mass);
        }
        self.weigh_by_row(line, amount).map(|(mass, _)| mass)
    }

    /// What a volume or a count weighs, and the row that says so.
    pub(crate) fn weigh_by_row(&self, line: &Line, amount: Measured) -> Option<(Mass, &'a Citation)> {
        if let Some(volume) = amount.volume() {
            let (one, row) = measures_near(amount.unit).iter().find_map(|&measure| {
                Some((measure.as_volume()?.volume_of(Fraction::ONE), self.row(line, measure)?))
            })?;
            return Some((row.mass() * volume.ratio_to(one), &row.citation));
        }
        let by_row = |measure| self.row(line, measure).map(|row| (row.mass(), &row.citation));
        let (one, citation) = match amount.unit {
            CookUnit::Package => by_row(DensityMeasure::Package),
            CookUnit::Pouch => by_row(DensityMeasure::Pouch),
            CookUnit::Clove | CookUnit::Large => by_row(DensityMeasure::Each),
            CookUnit::Each | CookUnit::Ear => self.one_piece(line).or_else(|| by_row(DensityMeasure::Each)),
            _ => None,
        }?;
        Some((one * amount.value.to_f64(), citation))
    }

    /// What a volume of produce weighs by a row of a like form or a like kind: good enough to say how far a basket
    /// goes, never told as the weight of a measure.
    fn estimate(&self, line: &Line, amount: Measured) -> Option<Mass> {
        /// Crushed fruit of any kind is taken for crushed berries: 1 quart is 2 lb (Michigan State University
        /// Extension, Preserving Food Safely, 01600335).
        const ANY_FRUIT: &str = "berries";
        let is_crushed = ["crush", "puree"].iter().any(|word| line.prep.contains(word));
        let like = if is_crushed { "crushed or puree pureed" } else { "chopped sliced slices pieces" };
        let kinds =
            line.accepts.iter().filter_map(|id| self.almanac.produce(id)).map(|produce| &*produce.name);
        let last_word = line.name.rsplit(' ').next();
        let volume = amount.volume()?;
        std::iter::once(&*line.name)
            .chain(kinds)
            .chain(last_word)
            .chain(is_crushed.then_some(ANY_FRUIT))
            .filter_map(|name| self.almanac.weigh_volume(name, Some(like), volume))
            // A cup of whole berries is no cup of crushed ones.
            .find(|(_, row)| !is_crushed || row.form.contains("crush") || row.form.contains("puree"))
            .map(|(mass, _)| mass)
    }

    /// The share of produce as bought that is left when it is prepared; all of it where no row says.
    pub(crate) fn edible_share(&self, line: &Line) -> f64 {
        let trimming = self.produce_of(line).and_then(|produce| self.almanac.find_yield(produce));
        trimming.map_or(1.0, |row| row.edible.as_fraction())
    }

    /// The room that produce takes when it is prepared; `None` where no density is on file.
    pub(crate) fn prepared_volume(&self, line: &Line, bought: Mass) -> Option<Volume> {
        let cup = self.weigh(line, Measured { value: Fraction::ONE, unit: CookUnit::Cup })?;
        Some(Volume::cups((bought * self.edible_share(line)).ratio_to(cup)))
    }

    /// The density row of a line in one measure.
    fn row(&self, line: &Line, measure: DensityMeasure) -> Option<&'a Density> {
        *self.rows.borrow_mut().entry((line.index, measure)).or_insert_with(|| {
            let form = match line.amount {
                PrintedAmount::PerBatch { unit: CookUnit::Clove, .. } => "clove",
                PrintedAmount::PerBatch { unit: CookUnit::Large, .. } => "large",
                _ => &line.prep,
            };
            self.almanac.find_density(&line.name, Some(form), measure)
        })
    }

    fn one_piece(&self, line: &Line) -> Option<(Mass, &'a Citation)> {
        let produce = self.produce_of(line)?;
        Some((produce.each_edible?, &produce.citation))
    }

    /// The produce a line names first.
    fn produce_of(&self, line: &Line) -> Option<&'a Produce> {
        line.accepts.first().and_then(|id| self.almanac.produce(id))
    }
}

/// Spoons and cups of the density table, those nearest in size to a unit first.
fn measures_near(unit: CookUnit) -> &'static [DensityMeasure] {
    use DensityMeasure::{Cup, FluidOunce, Tablespoon, Teaspoon};
    match unit {
        CookUnit::Tsp => &[Teaspoon, Tablespoon, Cup, FluidOunce],
        CookUnit::Tbsp => &[Tablespoon, Teaspoon, Cup, FluidOunce],
        _ => &[Cup, FluidOunce, Tablespoon, Teaspoon],
    }
}

/// The rows on how much of a food goes into jars that speak of this formula.
pub(crate) fn procurement_of<'a>(
    almanac: &'a Almanac,
    formula: &'a Formula,
    printed: Mass,
) -> impl Iterator<Item = &'a Procurement> {
    // Two thicknesses of one sauce share a name; the row of this formula is the one with its load.
    let own = move |load: Option<Mass>| load.is_none_or(|load| (load.ratio_to(printed) - 1.0).abs() < 0.01);
    formula
        .product
        .iter()
        .flat_map(|product| almanac.find_procurement(product))
        .filter(move |row| own(row.per_quart_load))
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
    for row in procurement_of(almanac, formula, printed) {
        let rates = [
            row.per_quart.map(|mass| mass * (1.0 / QUART_OZ)),
            row.per_quart_load.map(|mass| mass * (1.0 / (7.0 * QUART_OZ))),
            row.per_pint_load.map(|mass| mass * (1.0 / (9.0 * PINT_OZ))),
        ];
        jars.extend(rates.into_iter().flatten());
        if let (Some((_, container)), Some((low, high))) = (row.container, row.quarts) {
            all.push(container * (1.0 / (f64::from(low) * QUART_OZ)));
            all.push(container * (1.0 / (f64::from(high) * QUART_OZ)));
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
