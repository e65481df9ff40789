//! Words as people type them: reduced to stems, compared, and the nearest found.

use std::collections::BTreeSet;

/// The stems of a phrase.
pub(crate) type Stems = BTreeSet<Box<str>>;

/// Words that carry no meaning of their own in the name of a food.
const FILLERS: &[&str] = &["a", "an", "and", "for", "from", "in", "of", "on", "or", "the", "to", "with"];

/// The stems of the words of a text, without fillers.
pub(crate) fn stems_of(text: &str) -> Stems {
    fold_of(text)
        .split(|mark: char| !mark.is_alphanumeric())
        .filter(|word| !word.is_empty() && !FILLERS.contains(word))
        .map(|word| stem_of(word).into_boxed_str())
        .collect()
}

/// A text in small letters without accents: `Jalapeño` is typed both ways.
pub(crate) fn fold_of(text: &str) -> String {
    text.chars()
        .flat_map(char::to_lowercase)
        .map(|letter| match letter {
            'à' | 'á' | 'â' | 'ã' | 'ä' | 'å' => 'a',
            'è' | 'é' | 'ê' | 'ë' => 'e',
            'ì' | 'í' | 'î' | 'ï' => 'i',
            'ò' | 'ó' | 'ô' | 'õ' | 'ö' => 'o',
            'ù' | 'ú' | 'û' | 'ü' => 'u',
            'ç' => 'c',
            'ñ' => 'n',
            other => other,
        })
        .collect()
}

/// A word without the endings of number and of things done: `berries` and `berry`, `mashed` and `mash`, `tomatoes`
/// and `tomato` come out alike. A last `e` falls too, so that `puree` and `pureed` do.
fn stem_of(word: &str) -> String {
    // Three letters must be left, or `peas` and `bed` would lose their sense.
    let cut = |ending: &str| word.strip_suffix(ending).filter(|left| left.chars().count() >= 3);
    let cut_short = |ending: &str| word.strip_suffix(ending).filter(|left| left.chars().count() >= 2);
    let stem = if let Some(left) = cut_short("ies").or(cut_short("ied")) {
        format!("{left}y")
    } else if let Some(left) = cut("oes") {
        format!("{left}o")
    } else if let Some(left) = cut("ches").or(cut("shes")) {
        format!("{left}{}", &word[left.len()..left.len() + 2])
    } else if let Some(left) = cut("s").filter(|left| !left.ends_with('s')) {
        left.to_owned()
    } else if let Some(left) = cut("ed").or(cut("ing")) {
        without_doubling(left).to_owned()
    } else {
        word.to_owned()
    };
    let long_enough = |left: &&str| left.chars().count() >= 4;
    stem.strip_suffix('e').filter(long_enough).map(str::to_owned).unwrap_or(stem)
}

/// `chopp` of `chopped` without its second `p`.
fn without_doubling(stem: &str) -> &str {
    ["bb", "dd", "gg", "mm", "nn", "pp", "rr", "tt"]
        .iter()
        .find(|pair| stem.ends_with(**pair))
        .map_or(stem, |_| &stem[..stem.len() - 1])
}

/// The number of letters to change, add or drop to get from one text to the other.
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn forms_of_one_word_come_out_alike() {
        let alike = [
            ["berries", "berry"],
            ["tomatoes", "tomato"],
            ["peaches", "peach"],
            ["radishes", "radish"],
            ["mashed", "mash"],
            ["pureed", "purée"],
            ["chopped", "chopping"],
            ["canned", "canning"],
            ["Jalapeños", "jalapeno"],
            ["dried", "dry"],
            ["apples", "apple"],
        ];
        for [one, other] in alike {
            assert_eq!(stems_of(one), stems_of(other), "{one} and {other}");
        }
        for [one, other] in [["peas", "pea pods"], ["pear", "pea"], ["corn", "acorn"], ["glass", "gla"]] {
            assert_ne!(stems_of(one), stems_of(other), "{one} and {other}");
        }
    }

    #[test]
    fn fillers_do_not_count() {
        assert_eq!(stems_of("garlic in the oil"), stems_of("oil, garlic"));
    }

    /// Source: V. Levenshtein, Binary codes capable of correcting deletions, insertions and reversals, 1966 (the
    /// measure); the words are the usual classroom example, from memory.
    #[test]
    fn distance_counts_letters_changed_added_and_dropped() {
        for (from, to, distance) in
            [("kitten", "sitting", 3), ("", "abc", 3), ("plum", "plum", 0), ("ab", "ba", 2)]
        {
            assert_eq!(edit_distance(from, to), distance, "{from} to {to}");
            assert_eq!(edit_distance(to, from), distance, "{to} to {from}");
        }
    }
}
