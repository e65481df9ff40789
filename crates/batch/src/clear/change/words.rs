//! Words: a sentence cut into plain words.

/// Words that carry no meaning of their own in a change.
const FILLERS: &[&str] = &[
    "a", "an", "the", "some", "of", "my", "our", "please", "use", "using", "only", "just", "i", "we", "want",
    "to", "would", "like", "it", "them", "this", "that", "bit", "little", "slightly", "lot", "much", "all",
    "is", "will", "make", "put", "can", "at", "any", "kind", "sort", "amount", "content", "level",
];

/// Ways of saying that one thing takes the place of another; the first one named is the new one.
const TAKES_PLACE: &[&str] = &["instead of", "in place of", "rather than", "in lieu of", "for"];

/// The word that stands for all of [`TAKES_PLACE`] in a read sentence.
pub(crate) const FOR: &str = "for";

/// The word that parts two things; a comma is read as one.
pub(crate) const AND: &str = "and";

/// A sentence as plain words: lower case, one form for singular and plural, no fillers.
pub(crate) fn words_of(sentence: &str) -> Vec<String> {
    let mut spaced = String::with_capacity(sentence.len());
    let mut last = ' ';
    for mark in sentence.to_lowercase().chars() {
        match mark {
            '%' => spaced.push_str(" percent "),
            '½' => spaced.push_str(" half "),
            '¼' => spaced.push_str(" 1/4 "),
            // A dot or a comma between digits belongs to the number.
            '.' | ',' if last.is_ascii_digit() => spaced.push('.'),
            '/' => spaced.push('/'),
            '+' => spaced.push_str(" plus "),
            ',' | ';' => spaced.push_str(" and "),
            _ if mark.is_alphanumeric() => spaced.push(mark),
            _ => spaced.push(' '),
        }
        last = mark;
    }
    let spaced = spaced.replace("per cent", "percent");
    let mut plain = format!(" {} ", spaced.split_whitespace().collect::<Vec<_>>().join(" "));
    for way in TAKES_PLACE {
        plain = plain.replace(&format!(" {way} "), &format!(" {FOR} "));
    }
    let words: Vec<String> = plain
        .split_whitespace()
        .map(|word| word.trim_end_matches(['.', '/']))
        .filter(|word| !word.is_empty() && !FILLERS.contains(word))
        .map(singular)
        .collect();
    trim_ands(&words).to_vec()
}

/// The words without an `and` at either end, which a comma may have left there.
fn trim_ands(mut words: &[String]) -> &[String] {
    while let [first, rest @ ..] = words
        && first == AND
    {
        words = rest;
    }
    while let [rest @ .., last] = words
        && last == AND
    {
        words = rest;
    }
    words
}

/// The singular of a word, by its ending; numbers and short words stay.
fn singular(word: &str) -> String {
    if word.len() < 4 || word.ends_with("ss") || word.ends_with("us") || word == "molasses" {
        return word.to_owned();
    }
    if let Some(stem) = word.strip_suffix("ies") {
        return format!("{stem}y");
    }
    if let Some(stem) = word.strip_suffix("oes") {
        return format!("{stem}o");
    }
    if let Some(stem) = word.strip_suffix("ches").or_else(|| word.strip_suffix("shes")) {
        return format!("{stem}{}", &word[word.len() - 4..word.len() - 2]);
    }
    word.strip_suffix('s').unwrap_or(word).to_owned()
}

/// Whether one of several phrases, written in plain words, is these words.
pub(crate) fn is_one_of(phrases: &[&str], words: &[String]) -> bool {
    let said = words.join(" ");
    phrases.contains(&said.as_str())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(sentence: &str, words: &str) {
        assert_eq!(words_of(sentence).join(" "), words, "{sentence:?}");
    }

    #[test]
    fn a_sentence_becomes_plain_words() {
        check("Use a bit less of the Vinegar, please!", "less vinegar");
        check("2.25 % salt", "2.25 percent salt");
        check("2,25% salt", "2.25 percent salt");
        check("honey instead of sugar", "honey for sugar");
        check("tomatoes in place of berries", "tomato for berry");
        check("4 per cent vinegar", "4 percent vinegar");
        check("half-pint jars", "half pint jar");
        check("molasses, no less", "molasses and no less");
    }
}
