//! Words to ids: an id or a name, several, or none.

use almanac::{CannerKind, JarSize, Match, Pack};

use super::error::{AskError, NameKind};

/// The one row that is meant, or who else it may be.
pub(crate) fn require_one<'a, T>(
    found: Match<'a, T>,
    kind: NameKind,
    typed: &str,
    id: impl Fn(&T) -> String,
) -> Result<&'a T, AskError> {
    let ids = |rows: Vec<&'a T>| rows.into_iter().map(&id).collect();
    let typed = typed.to_owned();
    match found {
        Match::One(row) => Ok(row),
        Match::Several(rows) => Err(AskError::SeveralNames { kind, typed, ids: ids(rows) }),
        Match::Nearest(rows) => Err(AskError::NoSuchName { kind, typed, nearest: ids(rows) }),
    }
}

/// The pack that a word names.
pub(super) fn read_pack(typed: Option<&str>) -> Result<Pack, AskError> {
    let words = Pack::ALL.iter().map(|pack| pack.as_str());
    read_word("pack", typed, words, |word| Pack::find(word.strip_suffix("-pack").unwrap_or(word)))
}

/// The jar that a word names: `pint`, `pints`, `half pint`.
pub(crate) fn read_jar(typed: Option<&str>) -> Result<JarSize, AskError> {
    let words = JarSize::ALL.iter().map(|jar| jar.as_str());
    read_word("jar", typed, words, |word| {
        let word = word.strip_suffix("-jar").unwrap_or(word);
        JarSize::find(word).or_else(|| JarSize::find(word.strip_suffix('s')?))
    })
}

/// The canner that a word names: `dial`, `dial gauge`, `boiling water canner`.
pub(crate) fn read_canner(typed: Option<&str>) -> Result<CannerKind, AskError> {
    let words = CannerKind::ALL.iter().map(|canner| canner.as_str());
    read_word("canner", typed, words, |word| {
        let word = word.strip_suffix("-canner").unwrap_or(word);
        CannerKind::find(word.strip_suffix("-gauge").unwrap_or(word))
    })
}

/// A word of a list; what parts its words and its capitals do not count.
fn read_word<T>(
    what: &'static str,
    typed: Option<&str>,
    known: impl Iterator<Item = &'static str>,
    find: impl Fn(&str) -> Option<T>,
) -> Result<T, AskError> {
    let Some(typed) = typed else {
        return Err(AskError::Missing { what, known: known.map(str::to_owned).collect() });
    };
    let parts = typed.split(|mark: char| mark.is_whitespace() || matches!(mark, '-' | '_'));
    let word = parts.filter(|part| !part.is_empty()).collect::<Vec<_>>().join("-").to_lowercase();
    find(&word).ok_or_else(|| AskError::UnknownWord {
        what,
        typed: typed.to_owned(),
        known: known.map(str::to_owned).collect(),
    })
}

/// Whether a person spelled out a name: the same words, in any order, one or many of each.
pub(super) fn is_spelled_out(typed: &str, name: &str) -> bool {
    let words = |text: &str| {
        let parts = text.split(|mark: char| !mark.is_alphanumeric()).filter(|part| !part.is_empty());
        let singular = |word: String| word.trim_end_matches('s').trim_end_matches('e').to_owned();
        parts.map(|part| singular(part.to_lowercase())).collect::<std::collections::BTreeSet<_>>()
    };
    words(typed) == words(name)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn jars_packs_and_canners_are_read_as_people_say_them() {
        for (typed, jar) in
            [("pint", JarSize::Pint), ("Half Pints", JarSize::HalfPint), ("quart jar", JarSize::Quart)]
        {
            assert_eq!(read_jar(Some(typed)), Ok(jar), "{typed}");
        }
        for (typed, canner) in [
            ("boiling water", CannerKind::BoilingWater),
            ("dial-gauge canner", CannerKind::Dial),
            ("Weighted gauge", CannerKind::Weighted),
            ("steam", CannerKind::Steam),
        ] {
            assert_eq!(read_canner(Some(typed)), Ok(canner), "{typed}");
        }
        assert_eq!(read_pack(Some("hot pack")), Ok(Pack::Hot));
    }

    #[test]
    fn an_unknown_or_missing_word_lists_the_known_ones() {
        let said = read_pack(Some("warm")).unwrap_err().to_string();
        assert_eq!(said, "\"warm\" is no pack; hint: give one of hot, raw");
        let said = read_canner(None).unwrap_err().to_string();
        assert_eq!(said, "the canner is missing; hint: give one of boiling-water, steam, dial, weighted");
    }

    #[test]
    fn a_name_is_spelled_out_or_it_is_not() {
        assert!(is_spelled_out("tomatoes, crushed", "Crushed tomato"));
        assert!(!is_spelled_out("zucchini", "zucchini pineapple"));
    }
}
