//! Water activity of sugars: how much of the water in a jam is left for moulds to drink.
//!
//! It explains why a jam with little sugar moulds sooner. It never clears anything: a home kitchen cannot measure it.

use measure::{Mass, Percent};

use crate::limits::kitchen::MASS_KG;
use crate::limits::{Limits, ModelError, limits, require_above};

const SHARE_DISSOLVED: Limits =
    limits("share dissolved", " %", 0.0, 85.0, "Norrish's equation above a water activity of about 0.6");

/// The share of its vapour pressure that water keeps in a food: 1 is pure water.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct WaterActivity(pub f64);

/// Something dissolved, with its molar mass and Norrish's constant.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Solute {
    /// Table sugar.
    Sucrose,
    /// Glucose, fructose, or both as invert sugar.
    Glucose,
    /// Glycerol, for comparison with published work.
    Glycerol,
    /// Citric acid.
    CitricAcid,
}

impl Solute {
    /// Grams in a mole.
    const fn molar_mass(self) -> f64 {
        match self {
            Self::Sucrose => 342.3,
            Self::Glucose => 180.16,
            Self::Glycerol => 92.09,
            Self::CitricAcid => 192.12,
        }
    }

    /// Norrish's constant at 25 °C; glycerol from Table 3 of International Journal of Dentistry 2010, 981072, the others
    /// from memory.
    const fn norrish_k(self) -> f64 {
        match self {
            Self::Sucrose => 6.47,
            Self::Glucose => 2.25,
            Self::Glycerol => 1.16,
            Self::CitricAcid => 6.17,
        }
    }
}

/// Grams of water in a mole.
const WATER_MOLAR_MASS: f64 = 18.015;

/// The water activity of one thing dissolved in water at 25 °C.
///
/// `aw = xw exp(-K xs²)`, x the mole fractions. Argument: percent of the solute by weight. Within 0.005 for one solute
/// above 0.75.
///
/// # Source
///
/// R. S. Norrish, An equation for the activity coefficients and equilibrium relative humidities of water in
/// confectionery syrups, Journal of Food Technology 1, 1966 (form read in R. Baeza and others, 2010).
///
/// # Errors
///
/// Outside 0 to 85 %.
///
/// # Examples
///
/// ```
/// use foodsci::water_activity::{Solute, find_water_activity};
/// use measure::Percent;
///
/// let jam_like = find_water_activity(Solute::Sucrose, Percent::of_hundred(65.0)).unwrap();
/// assert!((jam_like.0 - 0.8654).abs() < 0.0005);
/// ```
pub fn find_water_activity(solute: Solute, dissolved: Percent) -> Result<WaterActivity, ModelError> {
    let share = SHARE_DISSOLVED.check(dissolved.as_percent())? / 100.0;
    Ok(norrish(solute, share, 1.0 - share))
}

fn norrish(solute: Solute, solute_mass: f64, water_mass: f64) -> WaterActivity {
    let of_solute = solute_mass / solute.molar_mass();
    let of_water = water_mass / WATER_MOLAR_MASS;
    let solute_fraction = of_solute / (of_solute + of_water);
    let activity =
        (1.0 - solute_fraction) * libm::exp(-solute.norrish_k() * solute_fraction * solute_fraction);
    WaterActivity(activity)
}

/// The water activity of several things dissolved together: the product of each alone in all of the water.
///
/// # Source
///
/// K. D. Ross, Estimation of water activity in intermediate moisture foods, Food Technology 29, 1975 (from memory). Error
/// under 0.01 above 0.8; reads low in strong mixtures.
///
/// # Errors
///
/// When there is no water, or more dissolved than the equation covers.
pub fn find_mixed_water_activity(
    solutes: &[(Solute, Mass)],
    water: Mass,
) -> Result<WaterActivity, ModelError> {
    let water_g = water.as_grams();
    require_above(("water", water_g), ("nothing", 0.0), " g")?;
    let mut product = 1.0;
    for (solute, mass) in solutes {
        MASS_KG.check(mass.as_kilograms())?;
        let grams = mass.as_grams();
        SHARE_DISSOLVED.check(100.0 * grams / (grams + water_g))?;
        product *= norrish(*solute, grams, water_g).0;
    }
    Ok(WaterActivity(product))
}

/// The highest and lowest water activity of a jam: all its sugar as it was put in, and half of it inverted by acid and
/// heat.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct JamActivity {
    /// With nothing inverted.
    pub high: WaterActivity,
    /// With half inverted.
    pub low: WaterActivity,
}

/// The water activity of a jam from what went in and what was left after boiling.
///
/// Ross's product of the added sugar and the fruit's own, counted as glucose; half the sucrose inverted gives 1.053 g of
/// invert sugar for each gram. Pectin and pieces are not counted.
///
/// # Source
///
/// [`find_mixed_water_activity`].
///
/// # Errors
///
/// When the end weighs more than the start or less than its solids.
pub fn find_jam_activity(
    fruit: Mass,
    fruit_solids: Percent,
    sugar: Mass,
    end: Mass,
) -> Result<JamActivity, ModelError> {
    /// Grams of invert sugar from a gram of sucrose, which takes up water: 360.31 / 342.30.
    const INVERT_PER_SUCROSE: f64 = 1.0526;
    SHARE_DISSOLVED.check(fruit_solids.as_percent())?;
    let own = fruit * fruit_solids.as_fraction();
    let water = end - own - sugar;
    require_above(
        ("weight before boiling", (fruit + sugar).as_grams()),
        ("weight at the end", end.as_grams() - 1e-6),
        " g",
    )?;
    let high = find_mixed_water_activity(&[(Solute::Sucrose, sugar), (Solute::Glucose, own)], water)?;
    let inverted = sugar * (0.5 * INVERT_PER_SUCROSE);
    let low = find_mixed_water_activity(
        &[(Solute::Sucrose, sugar * 0.5), (Solute::Glucose, own + inverted)],
        water - (inverted - sugar * 0.5),
    )?;
    Ok(JamActivity { high, low })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pure_water_is_one_and_sugar_only_lowers_it() {
        for solute in [Solute::Sucrose, Solute::Glucose, Solute::Glycerol, Solute::CitricAcid] {
            assert_eq!(find_water_activity(solute, Percent::ZERO).unwrap(), WaterActivity(1.0));
            for percent in 0..84 {
                let of =
                    |percent| find_water_activity(solute, Percent::of_hundred(f64::from(percent))).unwrap();
                assert!(of(percent + 1) < of(percent), "{solute:?} {percent}");
            }
        }
    }

    #[test]
    fn boiling_down_and_inverting_both_lower_it() {
        let of = |end| {
            find_jam_activity(
                Mass::kilograms(1.0),
                Percent::of_hundred(10.0),
                Mass::kilograms(1.0),
                Mass::kilograms(end),
            )
            .unwrap()
        };
        assert!(of(1.7).high < of(2.0).high);
        assert!(of(1.7).low < of(1.7).high);
    }

    #[test]
    fn a_pan_that_weighs_more_than_went_in_is_refused() {
        let heavy = find_jam_activity(
            Mass::kilograms(1.0),
            Percent::of_hundred(10.0),
            Mass::kilograms(1.0),
            Mass::kilograms(2.5),
        );
        assert!(heavy.is_err());
        assert!(find_water_activity(Solute::Sucrose, Percent::of_hundred(f64::NAN)).is_err());
    }
}
