//! One line of a list of what is on file.

use serde::Serialize;

/// One line of a list.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Listed {
    /// The id.
    pub id: String,
    /// The name for people.
    pub name: String,
    /// What else tells it from others, short.
    pub about: String,
}

/// The words of several things, with the same between each two.
pub(super) fn join<T: ToString>(items: impl Iterator<Item = T>, between: &str) -> String {
    items.map(|item| item.to_string()).collect::<Vec<_>>().join(between)
}
