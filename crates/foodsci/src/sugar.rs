//! Sugar by weight: blending, boiling down, what a jam yields.

use measure::{Mass, Percent};

use crate::limits::kitchen::MASS_KG;
use crate::limits::{Limits, ModelError, limits, require_above, require_below};

const SOLIDS: Limits = limits("share of solids", " %", 0.0, 100.0, "a share of a whole");

/// Two parts that are blended, and what comes out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Blend {
    /// Of the weaker.
    pub weaker: Mass,
    /// Of the stronger.
    pub stronger: Mass,
}

/// Weaker and stronger for a blend between them: Pearson's square, `weaker / stronger = (high - target) / (target - low)`.
///
/// # Errors
///
/// When the target does not lie between the two.
///
/// # Examples
///
/// ```
/// use foodsci::sugar::blend;
/// use measure::{Mass, Percent};
///
/// let [low, high, target] = [10.0, 60.0, 15.0].map(Percent::of_hundred);
/// let blend = blend(low, high, target, Mass::kilograms(50.0)).unwrap();
/// assert!((blend.weaker.as_kilograms() - 45.0).abs() < 1e-9);
/// ```
pub fn blend(low: Percent, high: Percent, target: Percent, total: Mass) -> Result<Blend, ModelError> {
    let [low, high, target] = [low, high, target].map(|share| SOLIDS.check(share.as_percent()));
    let (low, high, target) = (low?, high?, target?);
    let total_kg = MASS_KG.check(total.as_kilograms())?;
    require_above(("strength wanted", target), ("weaker part", low), " %")?;
    require_below(("strength wanted", target), ("stronger part", high), " %")?;
    let stronger = total_kg * (target - low) / (high - low);
    Ok(Blend { weaker: Mass::kilograms(total_kg - stronger), stronger: Mass::kilograms(stronger) })
}

/// What is left when something is boiled down or dried from one share of solids to another: `m1 s1 / s2`.
///
/// # Errors
///
/// When the end has fewer solids than the start.
pub fn find_reduced_mass(start: Mass, solids: Percent, end_solids: Percent) -> Result<Mass, ModelError> {
    MASS_KG.check(start.as_kilograms())?;
    let before = SOLIDS.check(solids.as_percent())?;
    let after = SOLIDS.check(end_solids.as_percent())?;
    require_above(("share of solids at the end", after), ("share at the start", before), " %")?;
    Ok(start * (before / after))
}

/// What is needed at the start for an end: the inverse of [`find_reduced_mass`].
///
/// # Errors
///
/// When the end has fewer solids than the start, or the start none.
pub fn find_mass_to_reduce(end: Mass, solids: Percent, end_solids: Percent) -> Result<Mass, ModelError> {
    MASS_KG.check(end.as_kilograms())?;
    let before = SOLIDS.check(solids.as_percent())?;
    let after = SOLIDS.check(end_solids.as_percent())?;
    require_above(("share of solids at the start", before), ("nothing", 0.0), " %")?;
    require_above(("share of solids at the end", after), ("share at the start", before), " %")?;
    Ok(end * (after / before))
}

/// One thing that goes into a jam pan.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PanPart {
    /// How much.
    pub mass: Mass,
    /// Its soluble solids: sugar 100 %, fruit about 10 %.
    pub solids: Percent,
}

/// What a pan yields when it is boiled down to a share of soluble solids: `Σ m s / s_end`.
///
/// # Errors
///
/// When there are fewer solids than that to begin with even without water, or nothing in the pan.
pub fn find_jam_yield(parts: &[PanPart], end_solids: Percent) -> Result<Mass, ModelError> {
    let mut solids = 0.0;
    let mut whole = 0.0;
    for part in parts {
        let mass = MASS_KG.check(part.mass.as_kilograms())?;
        solids += mass * SOLIDS.check(part.solids.as_percent())? / 100.0;
        whole += mass;
    }
    let end = SOLIDS.check(end_solids.as_percent())? / 100.0;
    require_above(("weight in the pan", whole), ("nothing", 0.0), " kg")?;
    require_above(
        ("share of solids at the end", 100.0 * end),
        ("share in the pan", 100.0 * solids / whole),
        " %",
    )?;
    Ok(Mass::kilograms(solids / end))
}

/// Sugar and water for a weight of syrup: `sugar = total × p / 100`.
///
/// # Errors
///
/// Outside 0 to 100 %.
pub fn mix_syrup(total: Mass, sugar: Percent) -> Result<Blend, ModelError> {
    MASS_KG.check(total.as_kilograms())?;
    let share = SOLIDS.check(sugar.as_percent())? / 100.0;
    Ok(Blend { weaker: total * (1.0 - share), stronger: total * share })
}

/// The real strength of a syrup from what went in, by weight: `100 × sugar / (sugar + water)`.
///
/// # Errors
///
/// When nothing went in.
pub fn find_syrup_strength(sugar: Mass, water: Mass) -> Result<Percent, ModelError> {
    let sugar_kg = MASS_KG.check(sugar.as_kilograms())?;
    let whole = sugar_kg + MASS_KG.check(water.as_kilograms())?;
    require_above(("sugar and water together", whole), ("nothing", 0.0), " kg")?;
    Ok(Percent::of_hundred(100.0 * sugar_kg / whole))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn solids_are_neither_made_nor_lost() {
        let [low, high, target] = [12.0, 68.0, 40.0].map(Percent::of_hundred);
        let parts = blend(low, high, target, Mass::kilograms(3.0)).unwrap();
        let solids = parts.weaker * low.as_fraction() + parts.stronger * high.as_fraction();
        assert!((solids - Mass::kilograms(1.2)).as_grams().abs() < 1e-9);
        let end = find_reduced_mass(Mass::kilograms(4.0), low, target).unwrap();
        let back = find_mass_to_reduce(end, low, target).unwrap();
        assert!((back - Mass::kilograms(4.0)).as_grams().abs() < 1e-9);
    }

    #[test]
    fn what_stands_the_wrong_way_round_is_said() {
        let of = |low, high, target| {
            blend(
                Percent::of_hundred(low),
                Percent::of_hundred(high),
                Percent::of_hundred(target),
                Mass::kilograms(1.0),
            )
        };
        assert!(of(60.0, 10.0, 15.0).is_err());
        assert!(of(10.0, 60.0, 70.0).is_err());
        assert!(of(10.0, 60.0, f64::NAN).is_err());
        let thin =
            find_reduced_mass(Mass::kilograms(1.0), Percent::of_hundred(40.0), Percent::of_hundred(12.0));
        assert!(thin.unwrap_err().to_string().contains("exchanged"));
    }
}
