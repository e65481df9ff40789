//! The pH of a pickle or a sauce, as a range: acids against what the vegetables buffer.
//!
//! It can veto and it cannot clear. A guessed buffer is right within 0.4 of a pH, and says nothing of the inside of a piece.

use measure::{Mass, Percent};

use crate::limits::kitchen::{MASS_KG, SHARE};
use crate::limits::{Limits, ModelError, limits, require_above, require_below};
use crate::root::find_root;

/// A pH.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Ph(pub f64);

/// The pH above which a jar is low-acid (21 CFR 114): C. botulinum can grow.
pub const LOW_ACID: Ph = Ph(4.6);
/// From here on an estimate is flagged: the margin of the published titration model and of a reading.
pub const FLAGGED: Ph = Ph(4.2);

/// Amount of substance in a litre.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Molar(pub f64);

/// Acid or base in a kilogram of produce, in thousandths of an equivalent.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Buffer(pub f64);

/// An acid of the kitchen, with its dissociation constants at 25 °C and zero ionic strength.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Acid {
    /// Of vinegar.
    Acetic,
    /// Of ferments.
    Lactic,
    /// Of citrus and tomatoes.
    Citric,
    /// Of apples and cucumbers.
    Malic,
}

impl Acid {
    /// Its pKa (CRC Handbook of Chemistry and Physics, from memory).
    #[must_use]
    pub const fn pkas(self) -> &'static [f64] {
        match self {
            Self::Acetic => &[4.756],
            Self::Lactic => &[3.86],
            Self::Citric => &[3.128, 4.761, 6.396],
            Self::Malic => &[3.40, 5.11],
        }
    }

    /// Grams in a mole.
    #[must_use]
    pub const fn molar_mass(self) -> f64 {
        match self {
            Self::Acetic => 60.05,
            Self::Lactic => 90.08,
            Self::Citric => 192.12,
            Self::Malic => 134.09,
        }
    }
}

/// The ionic product of water at 25 °C.
const KW: f64 = 1.0e-14;
const MOLAR: Limits = limits("concentration", " mol/L", 0.0, 5.0, "vinegar and lemon juice");

/// What is dissolved: acids, strong base left over from salts and buffers, and the salt that makes the liquid ionic.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Solution {
    /// The acids, each with all of its forms.
    pub acids: Vec<(Acid, Molar)>,
    /// Positive charges held by nothing else: what raises the pH.
    pub base: Option<Molar>,
    /// Table salt.
    pub salt: Option<Molar>,
}

/// The pH at which all charges of a solution balance.
///
/// `[H] + base = Σ c_i Σ_j j α_ij + Kw / [H]`, with the constants of every acid moved by the Davies equation for the ions in the
/// liquid (0.05 of a pH at most in a pickle). Range: pH 2 to 6 and ionic strength to 0.7.
///
/// # Source
///
/// The charge balance of F. Breidt, USDA ARS, Buffer Capacity Model; C. W. Davies, Ion Association, 1962 (from memory).
/// Against titrated foods within 0.11 (R. E. Price and others, Journal of Food Science 85, 2020, abstract).
///
/// # Errors
///
/// When a concentration is none of food, the ionic strength above 0.7, or no pH balances the charges.
pub fn find_ph(solution: &Solution) -> Result<Ph, ModelError> {
    let salt = solution.salt.map_or(0.0, |salt| salt.0);
    let base = solution.base.map_or(0.0, |base| base.0);
    // The ions of the acids themselves are as many as the base that they balance.
    balance(&solution.acids, base, salt + base.max(0.0))
}

/// The same with every ion as active as it is many: the textbook sum.
///
/// # Errors
///
/// As [`find_ph`].
pub fn find_ideal_ph(acids: &[(Acid, Molar)], pkas: Option<&[f64]>) -> Result<Ph, ModelError> {
    let mut checked = Vec::new();
    for (acid, molar) in acids {
        MOLAR.check(molar.0)?;
        checked.push((pkas.unwrap_or(acid.pkas()), molar.0));
    }
    solve(&checked, 0.0, 1.0)
}

fn balance(acids: &[(Acid, Molar)], base: f64, ionic: f64) -> Result<Ph, ModelError> {
    const IONIC: Limits = limits("ionic strength", " mol/L", 0.0, 0.7, "the Davies equation");
    const BASE: Limits = limits("base of salts and vegetables", " mol/L", -1.0, 1.0, "foods");
    let ionic = IONIC.check(ionic)?;
    BASE.check(base)?;
    let mut checked = Vec::new();
    for (acid, molar) in acids {
        MOLAR.check(molar.0)?;
        checked.push((acid.pkas(), molar.0));
    }
    let root = libm::sqrt(ionic);
    // Davies: log γ of a single charge.
    let log_gamma = -0.509 * (root / (1.0 + root) - 0.3 * ionic);
    solve(&checked, base, libm::exp10(log_gamma))
}

/// Bisects the charge balance over pH; `gamma` is the activity coefficient of a single charge.
fn solve(acids: &[(&[f64], f64)], base: f64, gamma: f64) -> Result<Ph, ModelError> {
    let charge = |ph: f64| {
        // A glass electrode shows activity; the balance counts concentrations.
        let activity = libm::exp10(-ph);
        let negative: f64 =
            acids.iter().map(|(pkas, molar)| molar * mean_charge(pkas, activity, gamma)).sum();
        activity / gamma + base - negative - KW / (activity * gamma)
    };
    let found = find_root(-1.0, 15.0, charge).ok_or(ModelError::Never {
        what: "a balance of charges",
        because: "there is more base or acid than water can hold",
        hint: "check the amounts and their units",
    })?;
    Ok(Ph(found))
}

/// How many negative charges an acid carries on the average: `Σ j α_j`.
fn mean_charge(pkas: &[f64], activity: f64, gamma: f64) -> f64 {
    let (mut term, mut whole, mut charged) = (1.0, 1.0, 0.0);
    for (at, pka) in pkas.iter().enumerate() {
        // Exact: an acid has at most three protons.
        let charges = at as f64 + 1.0;
        // γ of a charge z is γ1^(z²); from z - 1 to z the constant moves by γ1^((z-1)² - z²).
        let moved = libm::pow(gamma, (charges - 1.0) * (charges - 1.0) - charges * charges);
        term *= libm::exp10(-pka) * moved / activity;
        whole += term;
        charged += charges * term;
    }
    charged / whole
}

/// The share of an acid that has kept its proton, which is what kills: `1 / (1 + 10^(pH - pKa))`.
///
/// # Errors
///
/// When the pH is none of food.
pub fn find_undissociated(pka: f64, ph: Ph) -> Result<Percent, ModelError> {
    const FOOD_PH: Limits = limits("pH", "", 0.0, 14.0, "water");
    const PKA: Limits = limits("pKa", "", 0.0, 14.0, "weak acids");
    let ph = FOOD_PH.check(ph.0)?;
    Ok(Percent::fraction(1.0 / (1.0 + libm::exp10(ph - PKA.check(pka)?))))
}

/// An amount of acid given to the mix.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AcidGiven {
    /// Which.
    pub acid: Acid,
    /// How much of it, pure.
    pub mass: Mass,
}

/// A vegetable in the mix.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Vegetable {
    /// How much.
    pub mass: Mass,
    /// The share of water in it.
    pub water: Percent,
    /// The base that each kilogram holds: the least and the most it may be.
    pub buffer: (Buffer, Buffer),
}

/// A pickle before it comes to rest.
#[derive(Debug, Clone, PartialEq)]
pub struct Pickle {
    /// The acids that were put in.
    pub acids: Vec<AcidGiven>,
    /// Water that was put in, that of the vinegar included.
    pub water: Mass,
    /// Salt that was put in.
    pub salt: Mass,
    /// The vegetables.
    pub vegetables: Vec<Vegetable>,
}

/// The pH of a mix at rest, from least to most buffered.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PhRange {
    /// With the least buffer.
    pub low: Ph,
    /// With the most buffer.
    pub high: Ph,
}

/// What a range of pH says; there is no word for good.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PhSays {
    /// Nothing against it; it clears nothing either.
    NotVetoed,
    /// From 4.2 on: too near for an estimate.
    Flagged,
    /// The high end is above 4.6.
    Vetoed,
}

impl PhRange {
    /// What it says.
    #[must_use]
    pub fn says(self) -> PhSays {
        match self.high {
            high if high > LOW_ACID => PhSays::Vetoed,
            high if high > FLAGGED => PhSays::Flagged,
            _ => PhSays::NotVetoed,
        }
    }
}

/// The pH of a pickle once acid and vegetables have come to rest, as a range.
///
/// Everything dissolves in all of the water, that of the vegetables included; the vegetables hold their buffer as fixed base.
/// Reached after 1 day (mushrooms) to 30 days (whole peppers). Within 0.4 of a pH with guessed buffers.
///
/// # Source
///
/// [`find_ph`]; buffers are planning ranges of ours (acid needed from pH 6 to 4.6).
///
/// # Errors
///
/// When there is no water, no acid, or an amount none of a kitchen.
pub fn find_ph_range(pickle: &Pickle) -> Result<PhRange, ModelError> {
    const BUFFER: Limits = limits("buffer of a vegetable", " meq/kg", 0.0, 100.0, "vegetables and fruit");
    /// Grams of salt in a mole.
    const SALT_G_PER_MOL: f64 = 58.443;
    let mut water_kg = MASS_KG.check(pickle.water.as_kilograms())?;
    let (mut least, mut most) = (0.0, 0.0);
    for vegetable in &pickle.vegetables {
        let kilograms = MASS_KG.check(vegetable.mass.as_kilograms())?;
        water_kg += kilograms * SHARE.check(vegetable.water.as_fraction())?;
        let (low, high) = vegetable.buffer;
        require_below(("least buffer", low.0), ("most buffer", high.0 + 1e-9), " meq/kg")?;
        least += kilograms * BUFFER.check(low.0)? / 1000.0;
        most += kilograms * BUFFER.check(high.0)? / 1000.0;
    }
    require_above(("water", water_kg), ("nothing", 0.0), " kg")?;
    require_above(("number of acids", pickle.acids.len() as f64), ("nothing", 0.0), "")?;
    let mut acids = Vec::new();
    for given in &pickle.acids {
        let moles = MASS_KG.check(given.mass.as_kilograms())? * 1000.0 / given.acid.molar_mass();
        acids.push((given.acid, Molar(moles / water_kg)));
    }
    let salt = Some(Molar(MASS_KG.check(pickle.salt.as_kilograms())? * 1000.0 / SALT_G_PER_MOL / water_kg));
    let with =
        |base: f64| find_ph(&Solution { acids: acids.clone(), base: Some(Molar(base / water_kg)), salt });
    Ok(PhRange { low: with(least)?, high: with(most)? })
}

/// Published holding times are quoted, not computed: how long acetic acid alone took for a five-log fall, by pH, acid and
/// temperature, stands in the tables of F. Breidt and others, 2007 and 2013.
pub const HOLDING_TIMES_ARE_PRINTED: &str =
    "F. Breidt and others, Journal of Food Protection 70, 2007 and 76, 2013";

#[cfg(test)]
mod tests {
    use super::*;

    fn cucumbers(vinegar_kg: f64, cucumbers_kg: f64, buffer: (f64, f64)) -> Pickle {
        Pickle {
            acids: vec![AcidGiven { acid: Acid::Acetic, mass: Mass::kilograms(vinegar_kg * 0.05) }],
            water: Mass::kilograms(vinegar_kg * 0.95),
            salt: Mass::ZERO,
            vegetables: vec![Vegetable {
                mass: Mass::kilograms(cucumbers_kg),
                water: Percent::of_hundred(95.0),
                buffer: (Buffer(buffer.0), Buffer(buffer.1)),
            }],
        }
    }

    #[test]
    fn more_acid_lowers_the_range_and_more_vegetables_raise_it() {
        let of = |vinegar, cucumbers| find_ph_range(&cucumbers_of(vinegar, cucumbers)).unwrap();
        assert!(of(1.0, 1.0).high < of(0.5, 1.0).high);
        assert!(of(1.0, 2.0).high > of(1.0, 1.0).high);
        assert!(of(1.0, 1.0).low < of(1.0, 1.0).high);
    }

    fn cucumbers_of(vinegar: f64, cucumbers_kg: f64) -> Pickle {
        cucumbers(vinegar, cucumbers_kg, (10.0, 15.0))
    }

    /// A published fresh pack holds 0.5 to 1 % of acetic acid; with 0.8 % in the water and 12 meq/kg it lies at 3.6 to 3.8.
    #[test]
    fn a_fresh_pack_of_cucumbers_lies_where_such_packs_lie() {
        // 0.8 % in the water of 1 kg of cucumbers and 0.19 kg of vinegar.
        let pickle = cucumbers(0.186, 1.0, (12.0, 12.0));
        let range = find_ph_range(&pickle).unwrap();
        assert!((3.6..3.9).contains(&range.high.0), "{range:?}");
    }

    #[test]
    fn a_spoon_of_vinegar_in_a_jar_of_garlic_is_vetoed() {
        let garlic = cucumbers(0.03, 0.4, (35.0, 60.0));
        assert_eq!(find_ph_range(&garlic).unwrap().says(), PhSays::Vetoed);
        let plenty = cucumbers(1.0, 1.0, (10.0, 15.0));
        assert_eq!(find_ph_range(&plenty).unwrap().says(), PhSays::NotVetoed);
        assert_eq!(PhRange { low: Ph(3.9), high: Ph(4.3) }.says(), PhSays::Flagged);
    }

    #[test]
    fn salt_lowers_the_reading_a_little() {
        let of = |salt: f64| {
            let acids = vec![(Acid::Acetic, Molar(0.2))];
            find_ph(&Solution { acids, base: Some(Molar(0.01)), salt: Some(Molar(salt)) }).unwrap().0
        };
        let moved = of(0.0) - of(0.4);
        assert!((0.0..0.2).contains(&moved), "{moved}");
    }

    #[test]
    fn without_acid_or_water_there_is_no_answer() {
        let mut pickle = cucumbers(1.0, 1.0, (10.0, 15.0));
        pickle.acids.clear();
        assert!(find_ph_range(&pickle).is_err());
        assert!(find_ph_range(&cucumbers(f64::NAN, 1.0, (10.0, 15.0))).is_err());
        assert!(find_ph_range(&cucumbers(1.0, 1.0, (15.0, 10.0))).is_err());
        assert!(find_ideal_ph(&[(Acid::Acetic, Molar(9.0))], None).is_err());
    }
}
