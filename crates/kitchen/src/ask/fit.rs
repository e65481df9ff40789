//! What does a formula come to with what there is?

use std::collections::BTreeMap;

use almanac::{Almanac, CannerKind, JarSize};
use batch::fit::{self, CannerLoad, Fit, FitQuestion, Have, IngredientRef};

use super::error::{AskError, NameKind};
use super::names::{read_canner, read_jar, require_one};

/// The question in a person's words.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct FitWords {
    /// The formula: an id or a name.
    pub formula: String,
    /// What there is: a weight of the main produce, or `ingredient=weight`.
    pub have: Vec<String>,
    /// The jars to fill, in the order wished.
    pub jars: Vec<String>,
    /// The canner.
    pub canner: Option<String>,
    /// The height above the sea.
    pub altitude: Option<String>,
}

/// Fits a formula to what there is.
///
/// # Errors
///
/// When a word names nothing or several things, or when an amount cannot be read.
pub fn fit(almanac: &Almanac, words: &FitWords) -> Result<Fit, AskError> {
    let formula =
        require_one(almanac.find_formula(&words.formula), NameKind::Formula, &words.formula, |formula| {
            formula.id.to_string()
        })?;
    let altitude = words.altitude.as_deref().map(|typed| {
        measure::read_altitude(typed).map_err(|problem| AskError::unreadable("altitude", problem))
    });
    let canner = words.canner.as_deref().map(|typed| read_canner(Some(typed)));
    let question = FitQuestion {
        formula: formula.id.clone(),
        have: words.have.iter().map(|typed| read_have(typed)).collect::<Result<_, _>>()?,
        jars: words.jars.iter().map(|typed| read_jar(Some(typed))).collect::<Result<_, _>>()?,
        canner: canner.transpose()?.map(|kind| printed_load(almanac, kind)),
        altitude: altitude.transpose()?,
        most_batches: None,
    };
    Ok(fit::fit(almanac, &question)?)
}

/// Reads `2.3 kg` or `onions=1 kg`.
fn read_have(typed: &str) -> Result<Have, AskError> {
    let (ingredient, weight) = match typed.split_once('=') {
        Some((name, weight)) => (IngredientRef::Named(name.trim().to_owned()), weight),
        None => (IngredientRef::MainProduce, typed),
    };
    let mass = measure::read_mass(weight.trim())
        .map_err(|problem| AskError::unreadable("weight of what there is", problem))?;
    Ok(Have { ingredient, mass })
}

/// A canner of the usual size, with the smaller of the printed loads.
fn printed_load(almanac: &Almanac, kind: CannerKind) -> CannerLoad {
    let load = |jar: &almanac::Jar| {
        let printed = if kind.is_pressure() { jar.pressure_load } else { jar.boiling_water_load };
        printed.map(|load| (jar.size, load.low))
    };
    let holds: BTreeMap<JarSize, u32> = almanac.jars().iter().filter_map(load).collect();
    CannerLoad { id: kind.to_string(), kind, holds }
}

#[cfg(test)]
mod tests {
    use measure::Mass;

    use super::*;

    #[test]
    fn a_bare_weight_is_the_main_produce_and_a_named_one_is_not() {
        assert_eq!(
            read_have("2.3 kg"),
            Ok(Have { ingredient: IngredientRef::MainProduce, mass: Mass::kilograms(2.3) })
        );
        assert_eq!(
            read_have("onions = 1 kg"),
            Ok(Have { ingredient: IngredientRef::Named("onions".into()), mass: Mass::kilograms(1.0) })
        );
    }

    #[test]
    fn a_weight_that_cannot_be_read_says_so() {
        let said = read_have("onions=much").unwrap_err().to_string();
        assert!(said.starts_with("the weight of what there is: "), "{said}");
        assert!(said.contains("hint:"), "{said}");
    }

    #[test]
    fn a_formula_by_name_is_fitted() {
        let almanac = Almanac::load().expect("the tables built in have no fault");
        let words = FitWords {
            formula: "pickled_jalapeno_rings".into(),
            have: vec!["3 lb".into()],
            ..FitWords::default()
        };
        let fitted = fit(&almanac, &words).unwrap();
        assert_eq!(fitted.batches.len(), 1);
    }
}
