//! Words made into sentences.

/// With a capital.
#[must_use]
pub fn capitalize(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// With a capital and a final stop, as it stands between other sentences.
#[must_use]
pub fn as_sentence(words: &str) -> String {
    let words = capitalize(words.trim());
    if words.is_empty() || words.ends_with(['.', '!', '?', ':']) { words } else { words + "." }
}

/// "A", "A and B", "A, B and C".
#[must_use]
pub fn join_names(names: &[String]) -> String {
    match names {
        [] => String::new(),
        [one] => one.clone(),
        [before @ .., last] => format!("{} and {last}", before.join(", ")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_become_sentences_once() {
        assert_eq!(as_sentence("peel them"), "Peel them.");
        assert_eq!(as_sentence("Peel them."), "Peel them.");
        assert_eq!(as_sentence(""), "");
    }

    #[test]
    fn names_are_joined_as_one_says_them() {
        let names =
            |names: &[&str]| join_names(&names.iter().map(|name| (*name).to_owned()).collect::<Vec<_>>());
        assert_eq!(names(&["Tove", "Ansel", "Per"]), "Tove, Ansel and Per");
        assert_eq!(names(&["Tove"]), "Tove");
    }
}
