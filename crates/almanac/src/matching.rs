//! Finding a row by what a person typed: the row, the rows it may be, or the nearest names.

use crate::words::{edit_distance, stems_of};

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
    let spelled = typed.trim().to_lowercase();
    let mut full = Vec::new();
    let mut holding = Vec::new();
    let mut near = Vec::new();
    for row in rows {
        let names = names(row);
        let best = names.iter().map(|name| distance(&spelled, &wanted, name)).min();
        if names.iter().any(|name| name.to_lowercase() == spelled || stems_of(name) == wanted) {
            full.push(row);
        } else if !wanted.is_empty() && names.iter().any(|name| wanted.is_subset(&stems_of(name))) {
            holding.push(row);
        }
        near.push((best.unwrap_or(usize::MAX), row));
    }
    let found = if full.is_empty() { holding } else { full };
    match found.as_slice() {
        [row] => Match::One(row),
        [] => {
            near.sort_by_key(|(distance, _)| *distance);
            Match::Nearest(near.into_iter().take(MOST_NEAR).map(|(_, row)| row).collect())
        }
        _ => Match::Several(found),
    }
}

/// How far a name is from what was typed: letters to change in the nearest word, and words that are missing.
fn distance(spelled: &str, wanted: &crate::words::Stems, name: &str) -> usize {
    let stems = stems_of(name);
    let by_word: usize = wanted
        .iter()
        .map(|word| stems.iter().map(|stem| edit_distance(word, stem)).min().unwrap_or(word.len()))
        .sum();
    by_word.min(edit_distance(spelled, &name.to_lowercase()))
}
