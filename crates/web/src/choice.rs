//! One of a list that a person picks from.

/// One of a list, picked or not.
pub(crate) struct Choice {
    pub(crate) value: String,
    pub(crate) words: String,
    pub(crate) is_picked: bool,
}

impl Choice {
    /// The list, with the one picked that was typed.
    pub(crate) fn of<'a>(list: impl IntoIterator<Item = (&'a str, &'a str)>, typed: &str) -> Vec<Self> {
        let choices = list.into_iter().map(|(value, words)| Self {
            value: value.to_owned(),
            words: words.to_owned(),
            is_picked: value.eq_ignore_ascii_case(typed.trim()),
        });
        choices.collect()
    }
}
