//! Salt by weight: for a ferment, for a brine, and what a brine is when the produce has given its water.

use measure::{Diffusivity, Length, Mass, Percent, Span, Volume};

use crate::brine::find_brine_density;
use crate::conduction::{Biot, Fourier, Modes, Shape};
use crate::limits::kitchen::{MASS_KG, SHARE};
use crate::limits::{Limits, ModelError, limits, require_below};
use crate::root::find_root;

const FERMENT_SALT: Limits = limits("share of salt", " %", 0.0, 15.0, "salting produce by its weight");
const BRINE_SALT: Limits = limits("strength of the brine", " %", 0.0, 26.5, "salt that dissolves in water");
const DEGREES: Limits = limits("salometer reading", "°", 0.0, 100.0, "a salometer");

/// Salt in a saturated brine, percent by weight: 100 degrees of a salometer (E. LeFevre, Making Fermented Pickles, USDA
/// Farmers' Bulletin 1438, 1924, table 1).
const SATURATED_PERCENT: f64 = 26.5;

/// What stands on the scale without its bowl.
///
/// # Errors
///
/// When the bowl is heavier than both together, or one is no mass a kitchen holds.
///
/// # Examples
///
/// ```
/// use foodsci::salt::weigh_net;
/// use measure::Mass;
///
/// let net = weigh_net(Mass::grams(3410.0), Mass::grams(610.0)).unwrap();
/// assert_eq!(net, Mass::grams(2800.0));
/// ```
pub fn weigh_net(gross: Mass, bowl: Mass) -> Result<Mass, ModelError> {
    MASS_KG.check(gross.as_kilograms())?;
    MASS_KG.check(bowl.as_kilograms())?;
    require_below(("weight of the bowl", bowl.as_grams()), ("weight with the bowl", gross.as_grams()), " g")?;
    Ok(gross - bowl)
}

/// Salt for produce that is salted dry: `salt = produce × percent / 100`.
///
/// Percent of the produce's own weight, as kraut formulas print it: 2.25 % of the cabbage is 2.20 % of the whole. A tested
/// formula fixes the share; this only weighs it out.
///
/// # Errors
///
/// Outside 0 to 15 %, or a mass no kitchen holds.
///
/// # Examples
///
/// ```
/// use foodsci::salt::find_ferment_salt;
/// use measure::{Mass, Percent};
///
/// let salt = find_ferment_salt(Mass::grams(2800.0), Percent::of_hundred(2.25)).unwrap();
/// assert!((salt.as_grams() - 63.0).abs() < 1e-9);
/// ```
pub fn find_ferment_salt(produce: Mass, percent: Percent) -> Result<Mass, ModelError> {
    MASS_KG.check(produce.as_kilograms())?;
    Ok(produce * (FERMENT_SALT.check(percent.as_percent())? / 100.0))
}

/// The share of salt in a brine made from salt and water: `100 × salt / (salt + water)`, percent by weight.
///
/// # Errors
///
/// When a mass is none a kitchen holds, or more salt than dissolves.
pub fn find_brine_strength(salt: Mass, water: Mass) -> Result<Percent, ModelError> {
    let salt_kg = MASS_KG.check(salt.as_kilograms())?;
    let whole = salt_kg + MASS_KG.check(water.as_kilograms())?;
    Ok(Percent::of_hundred(BRINE_SALT.check(100.0 * salt_kg / whole)?))
}

/// Salt to stir into water for a brine of a strength: `salt = water × p / (100 - p)`.
///
/// # Errors
///
/// Outside 0 to 26.5 %, or a mass no kitchen holds.
pub fn find_salt_for_brine(water: Mass, strength: Percent) -> Result<Mass, ModelError> {
    MASS_KG.check(water.as_kilograms())?;
    let percent = BRINE_SALT.check(strength.as_percent())?;
    Ok(water * (percent / (100.0 - percent)))
}

/// What goes into a volume of brine.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BrineMix {
    /// The salt.
    pub salt: Mass,
    /// The water.
    pub water: Mass,
}

/// Salt and water for a volume of brine at 20 °C: a top-up of the same strength for a crock that has dried.
///
/// The volume times the density of the brine, divided by its strength.
///
/// # Source
///
/// [`find_brine_density`].
///
/// # Errors
///
/// Outside 0 to 20 %, the range of the density.
pub fn mix_brine(volume: Volume, strength: Percent) -> Result<BrineMix, ModelError> {
    let whole = find_brine_density(strength)?.mass_of(volume);
    MASS_KG.check(whole.as_kilograms())?;
    let salt = whole * strength.as_fraction();
    Ok(BrineMix { salt, water: whole - salt })
}

/// Salt in everything once brine and produce have come to rest: `100 × salt / (brine + produce)`, on the total weight.
///
/// # Errors
///
/// When a mass is none a kitchen holds, or the brine is stronger than salt dissolves.
///
/// # Examples
///
/// ```
/// use foodsci::salt::find_resting_salt;
/// use measure::{Mass, Percent};
///
/// let one = Mass::kilograms(1.0);
/// let rests = find_resting_salt(one, Percent::of_hundred(5.0), one).unwrap();
/// assert!((rests.as_percent() - 2.5).abs() < 1e-12);
/// ```
pub fn find_resting_salt(brine: Mass, strength: Percent, produce: Mass) -> Result<Percent, ModelError> {
    let brine_kg = MASS_KG.check(brine.as_kilograms())?;
    let produce_kg = MASS_KG.check(produce.as_kilograms())?;
    let percent = BRINE_SALT.check(strength.as_percent())?;
    require_below(("nothing", 0.0), ("brine and produce together", brine_kg + produce_kg), " kg")?;
    Ok(Percent::of_hundred(percent * brine_kg / (brine_kg + produce_kg)))
}

/// The same on the water alone: `100 × salt / (salt + water of brine and produce)`; what the tongue and the microbes meet.
///
/// # Errors
///
/// As [`find_resting_salt`], or when the produce holds more than its weight of water.
pub fn find_resting_salt_in_water(
    brine: Mass,
    strength: Percent,
    produce: Mass,
    water_in_produce: Percent,
) -> Result<Percent, ModelError> {
    let total = find_resting_salt(brine, strength, produce)?;
    let share = SHARE.check(water_in_produce.as_fraction())?;
    let salt = brine.as_kilograms() * strength.as_fraction();
    let water = brine.as_kilograms() - salt + produce.as_kilograms() * share;
    if salt == 0.0 {
        return Ok(total);
    }
    Ok(Percent::of_hundred(100.0 * salt / (salt + water)))
}

/// The strength a brine must have to come to rest at a share of the total weight.
///
/// # Errors
///
/// When that would need more salt than dissolves.
pub fn find_brine_to_rest_at(target: Percent, brine: Mass, produce: Mass) -> Result<Percent, ModelError> {
    let brine_kg = MASS_KG.check(brine.as_kilograms())?;
    let produce_kg = MASS_KG.check(produce.as_kilograms())?;
    require_below(("nothing", 0.0), ("brine", brine_kg), " kg")?;
    let percent = BRINE_SALT.check(target.as_percent())?;
    Ok(Percent::of_hundred(BRINE_SALT.check(percent * (brine_kg + produce_kg) / brine_kg)?))
}

/// Salt in a brine from a salometer, percent by weight: `degrees × 26.5 / 100`.
///
/// # Source
///
/// E. LeFevre, Making Fermented Pickles, USDA Farmers' Bulletin 1438, 1924, table 1.
///
/// # Errors
///
/// Outside 0 to 100 degrees.
pub fn read_salometer(degrees: SalometerDegrees) -> Result<Percent, ModelError> {
    Ok(Percent::of_hundred(DEGREES.check(degrees.0)? * SATURATED_PERCENT / 100.0))
}

/// Degrees of a salometer: hundredths of a saturated brine.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct SalometerDegrees(pub f64);

/// How long salt takes to come within a share of its final strength, on the average of a piece with an open surface.
///
/// The series of diffusion into a sphere of the given radius. A lower bound: skin, which salt passes only at the stomata,
/// makes whole cucumbers take one to three weeks. Arguments: the diffusivity of salt in the food in m²/s, half the
/// thickness in m, the share of the way to the end.
///
/// # Source
///
/// J. Crank, The Mathematics of Diffusion, 1975, equation 6.20 (from memory); diffusivities 6.0e-10 to 1.3e-9 m²/s for
/// peeled or cut vegetables at room temperature (doi 10.47363/JPSOS/2025(7)324, abstract).
///
/// # Errors
///
/// When the share is not between 1 % and 99.9 %, or the size none a kitchen has.
pub fn find_salting_time(
    diffusivity: Diffusivity,
    radius: Length,
    share: Percent,
) -> Result<Span, ModelError> {
    const APPROACH: Limits = limits("share of the way", "", 0.01, 0.999, "the series of diffusion");
    const RADIUS_M: Limits = limits("half the thickness", " m", 5e-4, 0.1, "a piece of a vegetable");
    const D: Limits = limits("diffusivity", " m2/s", 1e-11, 1e-8, "salt in vegetables and in water");
    let left = 1.0 - APPROACH.check(share.as_fraction())?;
    let metres = RADIUS_M.check(radius.as_metres())?;
    let spread = D.check(diffusivity.as_square_metres_per_second())?;
    let modes = Modes::find(Shape::Sphere, Biot::INFINITE, 200)?;
    let fourier = find_root(0.0, 10.0, |fourier| modes.average(Fourier::new(fourier)) - left)
        .expect("the average falls from nearly 1 to nearly 0 in between");
    Ok(Span::seconds(fourier * metres * metres / spread))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_brine_that_rests_at_a_share_rests_at_it() {
        for percent in 1..8 {
            let target = Percent::of_hundred(f64::from(percent));
            let (brine, produce) = (Mass::kilograms(1.2), Mass::kilograms(1.0));
            let strength = find_brine_to_rest_at(target, brine, produce).unwrap();
            let back = find_resting_salt(brine, strength, produce).unwrap();
            assert!((back - target).as_percent().abs() < 1e-12);
        }
    }

    #[test]
    fn salt_is_neither_made_nor_lost() {
        let mix = mix_brine(Volume::litres(2.0), Percent::of_hundred(5.0)).unwrap();
        let strength = find_brine_strength(mix.salt, mix.water).unwrap();
        assert!((strength.as_percent() - 5.0).abs() < 1e-12);
        let salt = find_salt_for_brine(mix.water, Percent::of_hundred(5.0)).unwrap();
        assert!((salt - mix.salt).as_grams().abs() < 1e-9);
    }

    #[test]
    fn the_share_of_the_water_is_above_that_of_the_whole() {
        let (brine, produce) = (Mass::kilograms(1.0), Mass::kilograms(1.0));
        let strength = Percent::of_hundred(5.0);
        let total = find_resting_salt(brine, strength, produce).unwrap();
        let water = find_resting_salt_in_water(brine, strength, produce, Percent::of_hundred(95.0)).unwrap();
        assert!(water > total);
        assert!((water.as_percent() - 2.564).abs() < 0.001);
    }

    #[test]
    fn a_bowl_heavier_than_both_is_a_slip() {
        let said = weigh_net(Mass::grams(610.0), Mass::grams(3410.0)).unwrap_err().to_string();
        assert!(said.contains("weight of the bowl is 3410 g and must be below"), "{said}");
        assert!(find_ferment_salt(Mass::grams(f64::NAN), Percent::of_hundred(2.0)).is_err());
        assert!(find_ferment_salt(Mass::grams(100.0), Percent::of_hundred(40.0)).is_err());
    }

    #[test]
    fn thicker_pieces_take_longer_by_the_square() {
        let of = |mm| {
            find_salting_time(
                Diffusivity::square_metres_per_second(1e-9),
                Length::millimetres(mm),
                Percent::of_hundred(90.0),
            )
            .unwrap()
        };
        assert!((of(20.0).ratio_to(of(10.0)) - 4.0).abs() < 1e-9);
    }
}
