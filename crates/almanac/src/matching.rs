//! Finding a row by what a person typed: the row, the rows it may be, or the nearest names.

use crate::words::{Stems, edit_distance, fold_of, stems_of};

/// The most names offered for a word that is not found.
const MOST_NEAR: usize = 5;

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

/// Finds rows by name. A name that is spelled in full comes before one that holds all typed words, and that before
/// a name that is merely near.
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
    let full = rows.iter().filter(|(_, names, stems)| {
        names.iter().any(|name| fold_of(name) == spelled) || stems.contains(&wanted)
    });
    let mut found: Vec<&T> = full.map(|(row, _, _)| *row).collect();
    if found.is_empty() && !wanted.is_empty() {
        let holding = rows.iter().filter(|(_, _, stems)| stems.iter().any(|stems| wanted.is_subset(stems)));
        found = holding.map(|(row, _, _)| *row).collect();
    }
    match found.as_slice() {
        [row] => return Match::One(row),
        [] => {}
        _ => return Match::Several(found),
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
    Match::Nearest(near.into_iter().take(MOST_NEAR).map(|(_, row)| row).collect())
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
