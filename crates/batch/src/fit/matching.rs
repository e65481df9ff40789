//! Which ingredient is meant.

use almanac::{Formula, Part};
use measure::Mass;

use super::line::{Held, Line};
use super::question::{FitError, Have, IngredientRef};

/// The held lines of a formula, in the order they were given.
pub(crate) fn match_haves(formula: &Formula, lines: &[Line], haves: &[Have]) -> Result<Vec<Held>, FitError> {
    if haves.is_empty() {
        let ingredient = main_produce(lines).map_or_else(String::new, |line| line.name.clone());
        return Err(FitError::NothingHad { formula: formula.id.to_string(), ingredient });
    }
    let mut held: Vec<Held> = Vec::with_capacity(haves.len());
    for have in haves {
        let line = match_line(formula, lines, &have.ingredient)?;
        let grams = have.mass.as_grams();
        // Written so that NaN is refused too.
        if !(grams > 0.0 && grams.is_finite()) || have.mass > HEAVIEST {
            return Err(FitError::NoWeight { ingredient: line.name.clone(), grams: grams.to_string() });
        }
        if held.iter().any(|other| other.index == line.index) {
            return Err(FitError::IngredientTwice {
                formula: formula.id.to_string(),
                ingredient: line.name.clone(),
            });
        }
        held.push(Held { index: line.index, mass: have.mass });
    }
    Ok(held)
}

/// The heaviest lot that is taken for one: ten tonnes.
pub(crate) const HEAVIEST: Mass = Mass::kilograms(10_000.0);

fn match_line<'a>(formula: &Formula, lines: &'a [Line], asked: &IngredientRef) -> Result<&'a Line, FitError> {
    let unknown = |asked: String| FitError::UnknownIngredient {
        formula: formula.id.to_string(),
        asked,
        ingredients: lines.iter().map(|line| line.name.clone()).collect(),
    };
    match asked {
        IngredientRef::MainProduce => {
            main_produce(lines).ok_or_else(|| FitError::NoProduce { formula: formula.id.to_string() })
        }
        IngredientRef::Index(index) => lines.get(*index).ok_or_else(|| unknown(format!("number {index}"))),
        IngredientRef::Named(name) => {
            let matches = lines_named(lines, name);
            match matches.as_slice() {
                [] => Err(unknown(name.clone())),
                [line] => Ok(line),
                several => Err(FitError::AmbiguousIngredient {
                    formula: formula.id.to_string(),
                    asked: name.clone(),
                    matches: several.iter().map(|line| line.name.clone()).collect(),
                }),
            }
        }
    }
}

/// What a bare weight means: the first line whose part is produce and that is not bought ready, else the first that
/// is prepared as produce.
pub(crate) fn main_produce(lines: &[Line]) -> Option<&Line> {
    let fresh = |line: &&Line| !line.accepts.is_empty();
    lines
        .iter()
        .filter(fresh)
        .find(|line| line.part == Part::Produce)
        .or_else(|| lines.iter().filter(fresh).find(|line| line.is_produce))
        .or_else(|| lines.iter().find(|line| line.is_produce))
}

/// Lines spelled so, else lines that hold every word, among them produce before anything else.
fn lines_named<'a>(lines: &'a [Line], name: &str) -> Vec<&'a Line> {
    let spelled: Vec<&Line> =
        lines.iter().filter(|line| line.name.eq_ignore_ascii_case(name.trim())).collect();
    if !spelled.is_empty() {
        return spelled;
    }
    let wanted = stems(name);
    if wanted.is_empty() {
        return Vec::new();
    }
    let holding: Vec<&Line> = lines
        .iter()
        .filter(|line| {
            let words = stems(&line.name);
            wanted.iter().all(|stem| words.iter().any(|word| same_word(word, stem)))
        })
        .collect();
    let produce: Vec<&Line> = holding.iter().copied().filter(|line| line.is_produce).collect();
    if produce.is_empty() { holding } else { produce }
}

/// `peach` and `peache` are one word: English drops the rest of the ending unevenly.
fn same_word(one: &str, other: &str) -> bool {
    one == other || one.strip_suffix('e') == Some(other) || other.strip_suffix('e') == Some(one)
}

/// Words without the endings that tell one from many.
fn stems(text: &str) -> Vec<String> {
    text.to_lowercase()
        .split(|letter: char| !letter.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .map(|word| {
            if let Some(stem) = word.strip_suffix("ies") {
                format!("{stem}y")
            } else {
                let stem = word.strip_suffix("oes").map(|stem| format!("{stem}o"));
                stem.unwrap_or_else(|| word.strip_suffix('s').unwrap_or(word).to_owned())
            }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_and_many_are_the_same_word() {
        for (one, many) in
            [("tomato", "tomatoes"), ("cherry", "cherries"), ("onion", "Onions"), ("peach", "peaches")]
        {
            let (one, many) = (stems(one), stems(many));
            assert!(same_word(&one[0], &many[0]), "{one:?} {many:?}");
        }
    }
}
