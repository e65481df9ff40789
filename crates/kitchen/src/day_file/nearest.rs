//! The known word nearest to one that is not known.

/// The nearest of `known` to `word`, when one is near enough to be meant.
pub(super) fn find_nearest<'k>(word: &str, known: impl IntoIterator<Item = &'k str>) -> Option<&'k str> {
    let word = word.to_lowercase();
    let most = (word.chars().count() / 3).clamp(1, 3);
    known
        .into_iter()
        .map(|candidate| (count_edits(&word, candidate), candidate))
        .filter(|&(edits, _)| edits <= most)
        .min_by_key(|&(edits, _)| edits)
        .map(|(_, candidate)| candidate)
}

/// How many letters must be put in, taken out, changed or swapped with their neighbour to turn one word into the
/// other (the optimal string alignment distance).
fn count_edits(one: &str, other: &str) -> usize {
    /// A word longer than this is no misspelt key; the work grows with the product of the lengths.
    const LONGEST: usize = 64;
    let one: Vec<char> = one.chars().take(LONGEST).collect();
    let other: Vec<char> = other.chars().take(LONGEST).collect();
    let mut above: Vec<usize> = vec![0; other.len() + 1];
    let mut row: Vec<usize> = (0..=other.len()).collect();
    for i in 1..=one.len() {
        let mut next = vec![i; other.len() + 1];
        for j in 1..=other.len() {
            let same = one[i - 1] == other[j - 1];
            let mut edits = (row[j - 1] + usize::from(!same)).min(row[j] + 1).min(next[j - 1] + 1);
            if i > 1 && j > 1 && one[i - 1] == other[j - 2] && one[i - 2] == other[j - 1] {
                edits = edits.min(above[j - 2] + 1);
            }
            next[j] = edits;
        }
        above = std::mem::replace(&mut row, next);
    }
    row[other.len()]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_misspelt_key_finds_the_one_that_was_meant() {
        let keys = ["produce", "gross", "bowl", "net", "count", "condition", "waits"];
        let find = |word| find_nearest(word, keys);
        assert_eq!(find("produse"), Some("produce"));
        assert_eq!(find("Gross"), Some("gross"));
        assert_eq!(find("conditon"), Some("condition"));
        assert_eq!(find("wiats"), Some("waits"));
        assert_eq!(find("colour"), None);
        assert_eq!(find(""), None);
    }

    #[test]
    fn swapped_neighbours_count_as_one_edit() {
        assert_eq!(count_edits("bowl", "bolw"), 1);
        assert_eq!(count_edits("", "net"), 3);
        assert_eq!(count_edits("net", "net"), 0);
    }
}
