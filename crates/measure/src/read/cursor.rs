//! A place in a text that moves forward, and that can say what is wrong where it stands.

use super::error::{Expected, ReadError};

/// The longest text that is read; no amount needs more, and a pasted page is refused early.
const LONGEST_TEXT: usize = 200;
/// How much of a text that is too long its error repeats.
const SHOWN_OF_LONG_TEXT: usize = 40;

/// A reader's place in a text.
#[derive(Debug, Clone)]
pub(crate) struct Cursor<'a> {
    text: &'a str,
    chars: Vec<char>,
    at: usize,
    expected: Expected,
}

impl<'a> Cursor<'a> {
    /// A cursor at the first thing written.
    pub(crate) fn new(text: &'a str, expected: Expected) -> Result<Self, ReadError> {
        if text.trim().is_empty() {
            return Err(ReadError::Empty { expected });
        }
        let length = text.chars().count();
        if length > LONGEST_TEXT {
            let text = text.chars().take(SHOWN_OF_LONG_TEXT).collect();
            return Err(ReadError::TooLong { text, length, limit: LONGEST_TEXT, expected });
        }
        let mut cursor = Self { text, chars: text.chars().collect(), at: 0, expected };
        cursor.skip_spaces();
        Ok(cursor)
    }

    pub(crate) fn peek(&self) -> Option<char> {
        self.peek_past(0)
    }

    pub(crate) fn peek_past(&self, ahead: usize) -> Option<char> {
        self.chars.get(self.at + ahead).copied()
    }

    /// Moves over one character.
    pub(crate) fn step(&mut self) {
        self.at = (self.at + 1).min(self.chars.len());
    }

    pub(crate) fn skip_spaces(&mut self) {
        while self.peek().is_some_and(char::is_whitespace) {
            self.step();
        }
    }

    /// Moves over `wanted` if it stands here.
    pub(crate) fn take(&mut self, wanted: impl Fn(char) -> bool) -> Option<char> {
        let found = self.peek().filter(|c| wanted(*c))?;
        self.step();
        Some(found)
    }

    /// The longest run of characters that fit.
    pub(crate) fn take_while(&mut self, fits: impl Fn(char) -> bool) -> String {
        let start = self.at;
        while self.peek().is_some_and(&fits) {
            self.step();
        }
        self.chars[start..self.at].iter().collect()
    }

    /// The word standing here after blanks: letters and the signs that stand for units; empty if none does.
    pub(crate) fn take_word(&mut self) -> String {
        self.skip_spaces();
        let start = self.at;
        while let Some(c) = self.peek() {
            let abbreviates = c == '.' && self.at > start;
            if !(is_word_char(c) || abbreviates) {
                break;
            }
            self.step();
        }
        self.chars[start..self.at].iter().collect()
    }

    /// Moves over the next word if `accept` knows it, and stays otherwise.
    pub(crate) fn take_known<T>(&mut self, accept: impl Fn(&str) -> Option<T>) -> Option<T> {
        let before = self.at;
        let word = self.take_word();
        let found = if word.is_empty() { None } else { accept(&plain(&word)) };
        if found.is_none() {
            self.at = before;
        }
        found
    }

    /// Moves over the next word if it is one of `words`.
    pub(crate) fn take_any_of(&mut self, words: &[&str]) -> bool {
        self.take_known(|word| words.contains(&word).then_some(())).is_some()
    }

    /// The unit standing here, of one word or two (`fl oz`).
    pub(crate) fn take_unit<U>(&mut self, find: impl Fn(&str) -> Option<U>) -> Result<U, ReadError> {
        self.skip_spaces();
        let column = self.column();
        let first = self.take_word();
        if first.is_empty() {
            return Err(if self.peek().is_none_or(|c| c.is_ascii_digit()) {
                ReadError::NoUnit { text: self.text.to_owned(), column, expected: self.expected }
            } else {
                self.unreadable()
            });
        }
        let after_first = self.at;
        let second = self.take_word();
        if !second.is_empty()
            && let Some(unit) = find(&format!("{} {}", plain(&first).to_lowercase(), plain(&second)))
        {
            return Ok(unit);
        }
        self.at = after_first;
        find(&plain(&first)).ok_or_else(|| ReadError::UnknownUnit {
            text: self.text.to_owned(),
            column,
            unit: first,
            expected: self.expected,
        })
    }

    /// Whether everything has been read.
    pub(crate) fn is_done(&mut self) -> bool {
        self.skip_spaces();
        self.peek().is_none()
    }

    /// Refuses whatever still stands behind the amount.
    pub(crate) fn finish(&mut self) -> Result<(), ReadError> {
        if self.is_done() { Ok(()) } else { Err(self.unreadable()) }
    }

    /// The place, to come back to.
    pub(crate) fn place(&self) -> usize {
        self.at
    }

    /// Back to a place noted before.
    pub(crate) fn go_back_to(&mut self, place: usize) {
        self.at = place;
    }

    /// The text between a place noted before and here.
    pub(crate) fn text_since(&self, place: usize) -> String {
        self.chars[place..self.at].iter().collect()
    }

    pub(crate) fn text(&self) -> String {
        self.text.to_owned()
    }

    pub(crate) fn expected(&self) -> Expected {
        self.expected
    }

    /// The column here, from 1.
    pub(crate) fn column(&self) -> usize {
        self.at + 1
    }

    pub(crate) fn unreadable(&self) -> ReadError {
        self.unreadable_at(self.column())
    }

    pub(crate) fn unreadable_at(&self, column: usize) -> ReadError {
        ReadError::Unreadable { text: self.text(), column, expected: self.expected }
    }

    pub(crate) fn too_large(&self, column: usize, limit: &'static str) -> ReadError {
        ReadError::TooLarge { text: self.text(), column, limit, expected: self.expected }
    }

    pub(crate) fn too_fine(&self, column: usize) -> ReadError {
        ReadError::TooFine { text: self.text(), column, expected: self.expected }
    }

    pub(crate) fn negative(&self, column: usize) -> ReadError {
        ReadError::Negative { text: self.text(), column, expected: self.expected }
    }

    pub(crate) fn out_of_range(&self, column: usize, limit: &'static str) -> ReadError {
        ReadError::OutOfRange { text: self.text(), column, limit, expected: self.expected }
    }
}

/// Letters and the signs people write for units: `°F`, `%`, `5#`, `1/2"`, `6'`, `ft³`.
fn is_word_char(c: char) -> bool {
    c.is_alphabetic() || "°%#³'\"′″’”&".contains(c)
}

/// A word without the points of its abbreviation and in small letters; a single letter keeps its case,
/// because cooks write `T` for a tablespoon and `t` for a teaspoon.
fn plain(word: &str) -> String {
    let bare: String = word.chars().filter(|c| *c != '.').collect();
    if bare.chars().count() == 1 { bare } else { bare.to_lowercase() }
}
