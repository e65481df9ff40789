//! Finding a row by what a person typed: the row, the rows it may be, or the nearest names.

use crate::words::{Stems, edit_distance, fold_of, stems_of};

/// The most names offered for a word that is not found.
const MOST_NEAR: usize = 5;

/// Longer than any name on file. Whatever is longer is no misspelled name, and comparing it letter by letter would
/// take as long as the person who sent it likes.
const LONGEST_NAME: usize = 200;

/// What a typed name stands for.
#[derive(Debug, Clone, PartialEq)]
pub enum Match<'a, T> {
    /// One row.
    One(&'a T),
    /// Several rows; the person must choose.
    Several(Vec<&'a T>),
    /// None; these are the nearest, the likeliest first.
    Nearest(Vec<&'a T>),
}

impl<'a, T> Match<'a, T> {
    /// The row, when there is exactly one.
    #[must_use]
    pub fn one(&self) -> Option<&'a T> {
        match self {
            Self::One(row) => Some(row),
            Self::Several(_) | Self::Nearest(_) => None,
        }
    }
}

/// Finds rows by name. A name that is spelled in full comes first; then the one whose head words are all typed and
/// that holds every typed word; then those that hold all typed words, and those that are merely near.
///
/// A name of which the typed words are only a part never stands for them alone: who types `zucchini butter` does not
/// mean bread-and-butter zucchini, and `baby carrots` are not pickled ones. Such a name is offered.
pub(crate) fn match_name<'a, T>(
    typed: &str,
    rows: impl Iterator<Item = &'a T>,
    names: impl Fn(&'a T) -> Vec<&'a str>,
) -> Match<'a, T> {
    let wanted = stems_of(typed);
    let spelled = fold_of(typed.trim());
    let rows: Vec<(&T, Vec<&str>, Vec<Stems>)> = rows
        .map(|row| {
            let names = names(row);
            let stems = names.iter().map(|name| stems_of(name)).collect();
            (row, names, stems)
        })
        .collect();
    // To the letter first: two names may hold the same words, and an id must always reach its own row.
    let to_the_letter = rows.iter().filter(|(_, names, _)| names.iter().any(|name| fold_of(name) == spelled));
    let mut found: Vec<&T> = to_the_letter.map(|(row, _, _)| *row).collect();
    if found.is_empty() {
        let word_for_word = rows.iter().filter(|(_, _, stems)| stems.contains(&wanted));
        found = word_for_word.map(|(row, _, _)| *row).collect();
    }
    if found.is_empty() && !wanted.is_empty() {
        let meant = rows.iter().filter(|(_, names, stems)| {
            names
                .iter()
                .zip(stems)
                .any(|(name, stems)| wanted.is_subset(stems) && is_head_typed(name, &wanted))
        });
        found = meant.map(|(row, _, _)| *row).collect();
    }
    match found.as_slice() {
        [row] => return Match::One(row),
        [] => {}
        _ => return Match::Several(found),
    }
    let holding = rows
        .iter()
        .filter(|(_, _, stems)| !wanted.is_empty() && stems.iter().any(|stems| wanted.is_subset(stems)));
    let holding: Vec<&T> = holding.map(|(row, _, _)| *row).collect();
    if holding.len() > 1 {
        return Match::Several(holding);
    }
    if spelled.chars().count() > LONGEST_NAME {
        return Match::Nearest(holding);
    }
    // A third of the letters may be wrong; beyond that a name is no help.
    let farthest = (spelled.chars().count() / 3).max(1);
    let mut near: Vec<(usize, &T)> = rows
        .iter()
        .filter_map(|(row, names, stems)| {
            let distances =
                names.iter().zip(stems).map(|(name, stems)| distance(&spelled, &wanted, name, stems));
            Some((distances.min().filter(|distance| *distance <= farthest)?, *row))
        })
        .collect();
    near.sort_by_key(|(distance, _)| *distance);
    let others = near.into_iter().map(|(_, row)| row);
    let others = others.filter(|row| !holding.iter().any(|held| std::ptr::eq(*held, *row)));
    Match::Nearest(holding.iter().copied().chain(others).take(MOST_NEAR).collect())
}

/// Whether every word of a name's head was typed. The head is what stands before the first comma or bracket:
/// `tomatoes` of `tomatoes, crushed, no added liquid`.
fn is_head_typed(name: &str, wanted: &Stems) -> bool {
    let head = stems_of(name.split([',', '(', ';', ':']).next().unwrap_or(name));
    !head.is_empty() && head.is_subset(wanted)
}

/// How far a name is from what was typed: the letters of the whole, or word by word the letters to the nearest word.
/// A word that stands inside a longer one (`berry` in `blackberry`) is one letter away.
fn distance(spelled: &str, wanted: &Stems, name: &str, stems: &Stems) -> usize {
    let whole = edit_distance(spelled, &fold_of(name));
    if wanted.is_empty() {
        return whole;
    }
    let to_nearest = |word: &str| {
        let inside = |stem: &str| word.len() >= 4 && stem.contains(word);
        let letters = |stem: &str| if inside(stem) { 1 } else { edit_distance(word, stem) };
        stems.iter().map(|stem| letters(stem)).min().unwrap_or(word.len())
    };
    whole.min(wanted.iter().map(|word| to_nearest(word)).sum())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Almanac, Produce};

    fn names<T>(found: &Match<'_, T>, id: impl Fn(&T) -> &str) -> (&'static str, Vec<String>) {
        let list = |rows: &[&T]| rows.iter().map(|row| id(row).to_owned()).collect();
        match found {
            Match::One(row) => ("one", vec![id(row).to_owned()]),
            Match::Several(rows) => ("several", list(rows)),
            Match::Nearest(rows) => ("nearest", list(rows)),
        }
    }

    #[test]
    fn what_is_longer_than_any_name_is_near_to_none() {
        let almanac = Almanac::load().expect("the tables built in have no fault");
        let names = almanac.products().flat_map(|product| product.names.iter());
        assert!(names.map(|name| name.chars().count()).max() < Some(LONGEST_NAME));
        assert_eq!(almanac.find_product(&"x".repeat(10_000)), Match::Nearest(Vec::new()));
    }

    #[test]
    fn every_id_finds_its_own_row_and_no_other() {
        let almanac = Almanac::load().expect("the tables built in have no fault");
        for formula in almanac.formulas() {
            let found = almanac.find_formula(formula.id.as_str());
            assert_eq!(found.one().map(|found| &found.id), Some(&formula.id));
        }
        for product in almanac.products() {
            let found = almanac.find_product(product.id.as_str());
            assert_eq!(found.one().map(|found| &found.id), Some(&product.id));
        }
    }

    #[test]
    fn produce_is_found_by_every_name_people_use() {
        let almanac = Almanac::load().expect("the built-in tables hold no fault");
        let cases = [
            ("tomatoes", "one", "tomatoes"),
            ("Tomato", "one", "tomatoes"),
            ("jalapeños", "one", "jalapenos"),
            ("ears of corn", "one", "sweet-corn"),
            ("green beans", "one", "snap-beans"),
            ("Roma tomatoes", "one", "paste-tomatoes"),
            ("cherries", "one", "sweet-cherries"),
            ("beans", "several", "lima-beans snap-beans wax-beans"),
            ("squash", "several", "summer-squash winter-squash"),
            ("zuchini", "nearest", "zucchini"),
            ("blackbery", "nearest", "blackberries"),
            ("qwxz", "nearest", ""),
            ("", "nearest", ""),
        ];
        for (typed, kind, ids) in cases {
            let (got, list) = names(&almanac.find_produce(typed), |produce: &Produce| produce.id.as_str());
            assert_eq!(got, kind, "{typed:?}: {list:?}");
            match kind {
                "nearest" => assert_eq!(list.first().map_or("", String::as_str), ids, "{typed:?}"),
                _ => assert_eq!(list.join(" "), ids, "{typed:?}"),
            }
        }
    }

    #[test]
    fn a_name_that_merely_holds_the_words_is_offered_and_never_taken() {
        let almanac = Almanac::load().expect("the built-in tables hold no fault");
        let formulas = [
            ("zucchini butter", "bread_butter_zucchini"),
            ("pineapple jam", "peach_pineapple_spread"),
            ("garlic beans", "pickled_three_bean_salad"),
        ];
        for (typed, held) in formulas {
            let (kind, list) = names(&almanac.find_formula(typed), |formula| formula.id.as_str());
            assert_ne!(kind, "one", "{typed}: {list:?}, such as {held}");
        }
        let foods = ["zucchini", "baby carrots", "pineapple juice", "apple rings", "peppers in oil"];
        for typed in foods {
            let (kind, list) = names(&almanac.find_product(typed), |product| product.id.as_str());
            assert_ne!(kind, "one", "{typed}: {list:?}");
        }
        let (kind, list) = names(&almanac.find_product("baby carrots"), |product| product.id.as_str());
        assert_eq!((kind, list.first().map(String::as_str)), ("nearest", Some("carrots-baby-pickled")));
    }

    #[test]
    fn the_head_of_a_name_is_enough_when_only_one_has_it() {
        let almanac = Almanac::load().expect("the built-in tables hold no fault");
        let foods = [
            ("applesauce", "applesauce"),
            ("peaches", "peach-halves"),
            ("crushed tomatoes", "tomatoes-crushed"),
            ("asparagus spears", "asparagus"),
            ("green beans", "beans-snap"),
        ];
        for (typed, id) in foods {
            let (kind, list) = names(&almanac.find_product(typed), |product| product.id.as_str());
            assert_eq!((kind, list.join(" ").as_str()), ("one", id), "{typed}");
        }
        let (kind, list) =
            names(&almanac.find_formula("bread and butter zucchini"), |formula| formula.id.as_str());
        assert_eq!((kind, list.join(" ").as_str()), ("one", "bread_butter_zucchini"));
    }

    #[test]
    fn a_word_inside_a_longer_one_is_near() {
        let almanac = Almanac::load().expect("the built-in tables hold no fault");
        let (kind, list) = names(&almanac.find_product("kraut"), |product| product.id.as_str());
        assert_eq!((kind, list.first().map(String::as_str)), ("nearest", Some("sauerkraut")));
    }

    #[test]
    fn every_produce_is_found_by_its_own_names_and_no_name_means_two() {
        let almanac = Almanac::load().expect("the built-in tables hold no fault");
        for produce in almanac.produce_list() {
            for name in
                produce.aliases.iter().map(|alias| &**alias).chain([&*produce.name, produce.id.as_str()])
            {
                let found = almanac.find_produce(name).one().map(|found| found.id.as_str());
                assert_eq!(found, Some(produce.id.as_str()), "{name}");
            }
        }
    }
}
