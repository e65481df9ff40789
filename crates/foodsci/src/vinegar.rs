//! Vinegar: what is left of its strength when other water comes to it.
//!
//! Nothing here leads to a weaker pickle. Strength is worked out for cleaning, for a dressing eaten at once, or to show
//! how far a formula's acid is thinned by its vegetables; a pickle takes the vinegar its formula prints.

use measure::{Mass, Percent};

use crate::limits::kitchen::{MASS_KG, SHARE};
use crate::limits::{Limits, ModelError, limits, require_below};

const ACIDITY: Limits =
    limits("strength of the vinegar", " %", 0.0, 30.0, "bottled vinegar and vinegar essence");

/// The least strength that pickling formulas are printed for (USDA Complete Guide to Home Canning, 2015, guide 6, p. 6-5:
/// vinegar of 5 % acidity).
pub const PICKLING_PERCENT: Percent = Percent::of_hundred(5.0);

/// Acid in vinegar and water mixed: `strength × vinegar / (vinegar + water)`, by weight.
///
/// # Errors
///
/// When a mass or strength is none a kitchen has.
pub fn find_mixed_strength(vinegar: Mass, strength: Percent, water: Mass) -> Result<Percent, ModelError> {
    let vinegar_kg = MASS_KG.check(vinegar.as_kilograms())?;
    let water_kg = MASS_KG.check(water.as_kilograms())?;
    let percent = ACIDITY.check(strength.as_percent())?;
    require_below(("nothing", 0.0), ("vinegar and water together", vinegar_kg + water_kg), " kg")?;
    Ok(Percent::of_hundred(percent * vinegar_kg / (vinegar_kg + water_kg)))
}

/// Whether a vinegar may stand in a pickle at all.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum VinegarForPickles {
    /// At least as strong as the formulas are printed for; the formula still decides.
    StrongEnough,
    /// Weaker, and nothing a kitchen adds makes a tested formula of it.
    TooWeak {
        /// How much is missing.
        short_by: Percent,
    },
}

/// Compares a vinegar with the strength that pickling formulas are printed for. A weak one cannot be mended: adding acid or
/// boiling it down gives a vinegar that nobody tested.
///
/// # Errors
///
/// When the strength is none a vinegar has.
pub fn compare_with_pickling(strength: Percent) -> Result<VinegarForPickles, ModelError> {
    ACIDITY.check(strength.as_percent())?;
    Ok(if strength >= PICKLING_PERCENT {
        VinegarForPickles::StrongEnough
    } else {
        VinegarForPickles::TooWeak { short_by: PICKLING_PERCENT - strength }
    })
}

/// Vinegar, added water and vegetables that come to rest together.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PickleMix {
    /// The vinegar.
    pub vinegar: Mass,
    /// Its strength by weight.
    pub strength: Percent,
    /// Water beside the vinegar.
    pub water: Mass,
    /// The vegetables.
    pub vegetables: Mass,
    /// The share of water in them.
    pub vegetable_water: Percent,
}

/// Acetic acid in the water of everything once it has come to rest: grams in 100 g of water, solids left out.
///
/// `acid / (water of the vinegar + added water + water of the vegetables)`. Valid for cut vegetables after days to weeks; the
/// inside of whole peppers, onions and garlic lags (1 to 30 days).
///
/// # Source
///
/// Mass balance; times to rest after Acid equilibrium development in mushrooms, pearl onions, and cherry peppers, Journal
/// of Food Science (about 1985), abstract.
///
/// # Errors
///
/// When a mass or share is none a kitchen has, or there is no water.
pub fn find_resting_acid(mix: &PickleMix) -> Result<Percent, ModelError> {
    let acid = MASS_KG.check(mix.vinegar.as_kilograms())? * ACIDITY.check(mix.strength.as_percent())? / 100.0;
    let vegetable_water =
        MASS_KG.check(mix.vegetables.as_kilograms())? * SHARE.check(mix.vegetable_water.as_fraction())?;
    let water =
        mix.vinegar.as_kilograms() - acid + MASS_KG.check(mix.water.as_kilograms())? + vegetable_water;
    require_below(("nothing", 0.0), ("water of the mix", water), " kg")?;
    Ok(Percent::of_hundred(100.0 * acid / water))
}

/// The vinegar that leaves a share of acid in the water of everything: the inverse of [`find_resting_acid`].
///
/// # Errors
///
/// When not even the vinegar alone has that share.
pub fn find_vinegar_for_resting_acid(mix: &PickleMix, target: Percent) -> Result<Mass, ModelError> {
    let strength = ACIDITY.check(mix.strength.as_percent())? / 100.0;
    let wanted = ACIDITY.check(target.as_percent())? / 100.0;
    let alone = strength / (1.0 - strength);
    require_below(
        ("share of acid wanted", wanted * 100.0),
        ("share in the vinegar itself", alone * 100.0),
        " %",
    )?;
    let vegetable_water =
        MASS_KG.check(mix.vegetables.as_kilograms())? * SHARE.check(mix.vegetable_water.as_fraction())?;
    let other = MASS_KG.check(mix.water.as_kilograms())? + vegetable_water;
    Ok(Mass::kilograms(wanted * other / (strength - wanted * (1.0 - strength))))
}

/// Acid in a sample from a titration with lye: `percent = V N E / (10 × sample)`, grams in 100 ml.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Titration {
    /// Lye used, in ml.
    pub lye: measure::Volume,
    /// Its strength in equivalents a litre.
    pub normality: Normality,
    /// The sample.
    pub sample: measure::Volume,
    /// The acid it is counted as.
    pub counted_as: TitratedAcid,
}

/// Equivalents in a litre.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Normality(pub f64);

/// The acid that a titration is counted as.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TitratedAcid {
    /// Of vinegar.
    Acetic,
    /// Of ferments.
    Lactic,
    /// Of citrus and tomatoes.
    Citric,
}

impl TitratedAcid {
    /// Grams in one equivalent.
    const fn equivalent_g(self) -> f64 {
        match self {
            Self::Acetic => 60.05,
            Self::Lactic => 90.08,
            // One third of 192.12 g/mol: three protons.
            Self::Citric => 64.04,
        }
    }
}

/// Acid from a titration.
///
/// # Errors
///
/// When the lye is not between 0 and 10 N, or the sample is nothing.
///
/// # Examples
///
/// ```
/// use foodsci::vinegar::{Normality, TitratedAcid, Titration, find_titrated_acid};
/// use measure::Volume;
///
/// let titration = Titration {
///     lye: Volume::millilitres(4.55),
///     normality: Normality(0.1),
///     sample: Volume::millilitres(5.0),
///     counted_as: TitratedAcid::Lactic,
/// };
/// let acid = find_titrated_acid(&titration).unwrap();
/// assert!((acid.as_percent() - 0.82).abs() < 0.005);
/// ```
pub fn find_titrated_acid(titration: &Titration) -> Result<Percent, ModelError> {
    const NORMAL: Limits = limits("strength of the lye", " N", 0.0, 10.0, "a titration");
    const LYE_ML: Limits = limits("lye used", " ml", 0.0, 1000.0, "a titration");
    let normality = NORMAL.check(titration.normality.0)?;
    let lye = LYE_ML.check(titration.lye.as_millilitres())?;
    let sample = titration.sample.as_millilitres();
    require_below(("nothing", 0.0), ("sample", sample), " ml")?;
    Ok(Percent::of_hundred(lye * normality * titration.counted_as.equivalent_g() / (10.0 * sample)))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mix(water: f64, vegetables: f64) -> PickleMix {
        PickleMix {
            vinegar: Mass::kilograms(1.0),
            strength: PICKLING_PERCENT,
            water: Mass::kilograms(water),
            vegetables: Mass::kilograms(vegetables),
            vegetable_water: Percent::of_hundred(95.0),
        }
    }

    #[test]
    fn more_water_or_vegetables_thin_the_acid() {
        let of = |water, vegetables| find_resting_acid(&mix(water, vegetables)).unwrap();
        assert!(of(1.0, 1.0) < of(0.5, 1.0));
        assert!(of(1.0, 1.5) < of(1.0, 1.0));
    }

    #[test]
    fn the_vinegar_for_an_acid_gives_that_acid() {
        for target in [0.5, 1.0, 2.0, 3.0] {
            let target = Percent::of_hundred(target);
            let vinegar = find_vinegar_for_resting_acid(&mix(1.0, 2.0), target).unwrap();
            let back = find_resting_acid(&PickleMix { vinegar, ..mix(1.0, 2.0) }).unwrap();
            assert!((back - target).as_percent().abs() < 1e-12);
        }
        assert!(find_vinegar_for_resting_acid(&mix(1.0, 2.0), Percent::of_hundred(6.0)).is_err());
    }

    #[test]
    fn four_percent_cannot_be_mended() {
        let weak = compare_with_pickling(Percent::of_hundred(4.0)).unwrap();
        assert_eq!(weak, VinegarForPickles::TooWeak { short_by: Percent::of_hundred(1.0) });
        assert_eq!(compare_with_pickling(PICKLING_PERCENT), Ok(VinegarForPickles::StrongEnough));
        assert!(compare_with_pickling(Percent::of_hundred(f64::NAN)).is_err());
    }
}
