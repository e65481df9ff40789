//! How much a spoon, a cup or a piece of something weighs.

use std::collections::BTreeMap;

use measure::{Fraction, Mass, Volume, VolumeUnit};

use crate::Almanac;
use crate::closed_list::closed_list;
use crate::fault::DataProblem;
use crate::row::Reading;
use crate::source::Citation;
use crate::tables::Table;
use crate::words::{Stems, stems_of};

closed_list!(
    /// What is weighed.
    DensityMeasure {
        /// A teaspoon.
        Teaspoon = "tsp",
        /// A tablespoon.
        Tablespoon = "tbsp",
        /// A cup.
        Cup = "cup",
        /// A fluid ounce.
        FluidOunce = "fl oz",
        /// A piece.
        Each = "each",
        /// A package as sold.
        Package = "package",
        /// A pouch as sold.
        Pouch = "pouch",
    }
);

impl DensityMeasure {
    /// The unit of volume it is, if it is one.
    #[must_use]
    pub const fn as_volume(self) -> Option<VolumeUnit> {
        match self {
            Self::Teaspoon => Some(VolumeUnit::Tsp),
            Self::Tablespoon => Some(VolumeUnit::Tbsp),
            Self::Cup => Some(VolumeUnit::Cup),
            Self::FluidOunce => Some(VolumeUnit::FlOz),
            Self::Each | Self::Package | Self::Pouch => None,
        }
    }
}

/// What one measure of something weighs.
#[derive(Debug, Clone, PartialEq)]
pub struct Density {
    /// What.
    pub ingredient: Box<str>,
    /// In what form: `chopped`, `packed`, a size; empty when there is only one.
    pub form: Box<str>,
    /// One of these.
    pub measure: DensityMeasure,
    /// The printed weight; none when only a range is known.
    pub typical: Option<Mass>,
    /// The lower and the upper end, where known.
    pub range: Option<(Mass, Mass)>,
    /// Where it stands.
    pub citation: Citation,
}

impl Density {
    /// The printed weight, else the middle of the range.
    #[must_use]
    pub fn mass(&self) -> Mass {
        self.typical.or(self.range.map(|(low, high)| (low + high) * 0.5)).unwrap_or(Mass::ZERO)
    }
}

impl Density {
    /// How many words of the form are among these; none when it is not meant. A form such as `chopped or sliced`
    /// is meant by either.
    fn form_words_in(&self, words: &Stems) -> Option<usize> {
        let ways = self.form.split(" or ").map(stems_of).filter(|way| !way.is_empty());
        ways.filter(|way| way.is_subset(words)).map(|way| way.len()).max()
    }
}

/// Reads `densities.csv`.
pub(super) fn read_densities(reading: &mut Reading<'_>) -> Vec<Density> {
    const COLUMNS: &[&str] =
        &["ingredient", "form", "measure", "grams", "low", "high", "source_id", "locator", "basis"];
    reading.rows(Table::Densities, COLUMNS, |row| {
        let density = Density {
            ingredient: row.text("ingredient").into(),
            form: row.free_text("form"),
            measure: row.word("measure"),
            typical: row.maybe_number("grams").map(Mass::grams),
            range: row.maybe_number("low").zip(row.maybe_number("high")).map(|(low, high)| {
                let (low, high) = (Mass::grams(low), Mass::grams(high));
                (low, high)
            }),
            citation: row.citation(),
        };
        let heavy = |mass: Mass| mass > Mass::ZERO;
        if !heavy(density.mass()) || density.range.is_some_and(|(low, high)| !heavy(low) || low > high) {
            row.contradict("it weighs nothing, or its range is none".to_owned());
        }
        density
    })
}

/// Under which names, and in which form, an ingredient of the formulas is weighed.
#[derive(Debug, Clone)]
pub(super) struct DensityKeys {
    /// Names in the density table, the nearest first.
    keys: Vec<Box<str>>,
    /// Words of the form that go without saying.
    form: Box<str>,
}

/// Reads `ingredient_density.csv`.
pub(super) fn read_density_keys(
    reading: &mut Reading<'_>,
    densities: &[Density],
) -> BTreeMap<Box<str>, DensityKeys> {
    const COLUMNS: &[&str] = &["ingredient", "density_keys", "form", "source_id", "locator", "basis"];
    reading
        .rows(Table::IngredientDensity, COLUMNS, |row| {
            let ingredient = row.text("ingredient").into();
            let keys: Vec<Box<str>> = row.names("density_keys");
            for key in keys.iter().filter(|key| !densities.iter().any(|known| known.ingredient == **key)) {
                let (text, table) = (key.to_string(), Table::Densities.file());
                row.spoil(DataProblem::UnknownKey { column: "density_keys", text, table });
            }
            let form = row.free_text("form");
            row.citation();
            (ingredient, DensityKeys { keys, form })
        })
        .into_iter()
        .collect()
}

impl Almanac {
    /// Every weighed measure, as the table lists them.
    #[must_use]
    pub fn densities(&self) -> &[Density] {
        &self.produce.densities
    }

    /// What one measure of an ingredient weighs, by the name it has in a formula, on the produce list or in the
    /// density table.
    ///
    /// With a form (`chopped`, or the whole preparation of a formula's line) the row whose form is named in it; else
    /// the row without a form, else the only row there is. None rather than a guess between several.
    #[must_use]
    pub fn find_density(&self, name: &str, form: Option<&str>, measure: DensityMeasure) -> Option<&Density> {
        self.density_among(name, form, |density| density.measure == measure)
    }

    /// What a volume of an ingredient weighs, and the row that says so: one measured by volume, as near as may be
    /// to the volume asked about.
    #[must_use]
    pub fn weigh_volume(&self, name: &str, form: Option<&str>, volume: Volume) -> Option<(Mass, &Density)> {
        // Largest first: what is measured in cups is weighed by the cup, down to a quarter of one; a
        // spoonful is weighed by the spoon; anything by what there is.
        let measures = [
            DensityMeasure::Cup,
            DensityMeasure::FluidOunce,
            DensityMeasure::Tablespoon,
            DensityMeasure::Teaspoon,
        ];
        let measured = measures.into_iter().filter_map(|measure| {
            let density = self.find_density(name, form, measure)?;
            Some((measure.as_volume()?.volume_of(Fraction::ONE), density))
        });
        let measured: Vec<(Volume, &Density)> = measured.collect();
        let fitting = measured.iter().find(|(one, _)| *one <= volume * 4.0).or(measured.last())?;
        let (one, density) = *fitting;
        Some((density.mass() * volume.ratio_to(one), density))
    }

    fn density_among(
        &self,
        name: &str,
        form: Option<&str>,
        measured: impl Fn(&Density) -> bool,
    ) -> Option<&Density> {
        let (keys, unsaid) = self.density_keys(name);
        let said = form.map(stems_of).unwrap_or_default();
        let unsaid = stems_of(unsaid);
        keys.into_iter().find_map(|key| {
            let of_key =
                |density: &&Density| measured(density) && density.ingredient.eq_ignore_ascii_case(key);
            let rows: Vec<&Density> = self.produce.densities.iter().filter(of_key).collect();
            let named = |words: &Stems| {
                let fits = rows.iter().filter_map(|row| Some((row.form_words_in(words)?, *row)));
                fits.max_by_key(|(stems, _)| *stems).map(|(_, row)| row)
            };
            let plain = || rows.iter().copied().find(|row| row.form.is_empty());
            let only = || match rows.as_slice() {
                [row] => Some(*row),
                _ => None,
            };
            named(&said).or_else(|| named(&unsaid)).or_else(plain).or_else(only)
        })
    }

    /// The names an ingredient has in the density table, and the words of its form that go without saying.
    fn density_keys<'a>(&'a self, name: &'a str) -> (Vec<&'a str>, &'a str) {
        if let Some(known) = self.produce.density_keys.get(name) {
            return (known.keys.iter().map(|key| &**key).collect(), &known.form);
        }
        let listed = self.produce_named(name);
        (vec![listed.and_then(|produce| produce.density_key.as_deref()).unwrap_or(name)], "")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn grams(name: &str, form: &str, volume: Volume) -> Option<f64> {
        let almanac = Almanac::load().expect("the built-in tables hold no fault");
        almanac
            .weigh_volume(name, Some(form), volume)
            .map(|(mass, _)| (mass.as_grams() * 10.0).round() / 10.0)
    }

    /// Source: US Department of Agriculture, National Nutrient Database for Standard Reference, Release 28 (2016),
    /// household weights of NDB 11282 (onions), 02048 (cider vinegar), 19335 (sugar), 02047 (salt).
    #[test]
    fn a_measure_weighs_what_its_row_prints() {
        assert_eq!(grams("onions", "peeled, chopped", Volume::cups(2.0)), Some(320.0));
        assert_eq!(grams("onions", "thin slices", Volume::cups(2.0)), Some(230.0));
        assert_eq!(grams("cider vinegar 5%", "", Volume::cups(3.0)), Some(717.0));
        assert_eq!(grams("sugar", "", Volume::cups(4.0)), Some(800.0));
        assert_eq!(grams("canning salt", "", Volume::tablespoons(2.0)), Some(36.0));
    }

    #[test]
    fn a_form_between_several_rows_is_not_guessed() {
        assert_eq!(grams("strawberries", "", Volume::cups(1.0)), Some(227.0));
        let almanac = Almanac::load().expect("the built-in tables hold no fault");
        assert_eq!(almanac.find_density("raspberries", None, DensityMeasure::Package), None);
        assert_eq!(almanac.find_density("carrots", None, DensityMeasure::Each), None);
        let sliced = almanac.find_density("carrots", Some("grated"), DensityMeasure::Cup).expect("printed");
        assert_eq!((&*sliced.form, sliced.mass()), ("grated", Mass::grams(110.0)));
    }
}
