//! Words as people type them: reduced to stems, compared, and the nearest found.

use std::collections::BTreeSet;

/// The stems of a phrase.
pub(crate) type Stems = BTreeSet<Box<str>>;

/// Words that carry no meaning of their own in the name of a food.
const FILLERS: &[&str] = &["a", "an", "and", "for", "from", "in", "of", "on", "or", "the", "to", "with"];

/// The stems of the words of a text, without fillers.
pub(crate) fn stems_of(text: &str) -> Stems {
    text.split(|mark: char| !mark.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .map(str::to_lowercase)
        .filter(|word| !FILLERS.contains(&word.as_str()))
        .map(|word| stem_of(&word).into_boxed_str())
        .collect()
}

/// A word without the endings of number and doing: `berries`, `berry`; `mashed`, `mash`; `tomatoes`, `tomato`.
fn stem_of(word: &str) -> String {
    let cut = |ending: &str, with: &str| {
        // Three letters must be left, or `peas` and `bed` would lose their sense.
        word.strip_suffix(ending).filter(|left| left.chars().count() >= 3).map(|left| format!("{left}{with}"))
    };
    cut("ies", "y")
        .or_else(|| cut("oes", "o"))
        .or_else(|| cut("ches", "ch"))
        .or_else(|| cut("shes", "sh"))
        .or_else(|| if word.ends_with("ss") { None } else { cut("s", "") })
        .or_else(|| cut("ened", "en"))
        .or_else(|| cut("eed", "eed"))
        .or_else(|| cut("ied", "y"))
        .or_else(|| cut("ed", ""))
        .or_else(|| cut("ning", ""))
        .or_else(|| cut("ing", ""))
        .map(|stem| stem.strip_suffix('e').filter(|left| left.len() >= 4).map_or(stem.clone(), str::to_owned))
        .unwrap_or_else(|| word.strip_suffix('e').filter(|left| left.len() >= 4).unwrap_or(word).to_owned())
}

/// The number of letters to change, add or drop to get from one text to the other (Levenshtein 1966).
pub(crate) fn edit_distance(from: &str, to: &str) -> usize {
    let to: Vec<char> = to.chars().collect();
    let mut row: Vec<usize> = (0..=to.len()).collect();
    for (i, a) in from.chars().enumerate() {
        let mut diagonal = row[0];
        row[0] = i + 1;
        for (j, b) in to.iter().enumerate() {
            let change = diagonal + usize::from(a != *b);
            diagonal = row[j + 1];
            row[j + 1] = change.min(diagonal + 1).min(row[j] + 1);
        }
    }
    row[to.len()]
}
