//! The bytes of a day file as text, and the place in it that a byte offset stands for.

use std::borrow::Cow;

use toml::Spanned;
use toml::de::DeTable;

use super::fault::{Encoding, FaultKind, Faults, WhichFile};

/// Longer than any day a person writes; a file above it was named by mistake.
pub(super) const MOST_BYTES: usize = 1_000_000;

/// Why bytes are no text, with the line and the column where that shows. Boxed, as it is rare and large.
pub(super) type Undecodable = Box<((usize, usize), FaultKind)>;

/// Reads bytes as text: UTF-8 with or without a byte order mark, or UTF-16 with one.
pub(super) fn decode(bytes: &[u8]) -> Result<Cow<'_, str>, Undecodable> {
    if bytes.len() > MOST_BYTES {
        return Err(Box::new(((1, 1), FaultKind::TooLong { bytes: bytes.len(), most: MOST_BYTES })));
    }
    let text = match bytes {
        [0xEF, 0xBB, 0xBF, rest @ ..] => decode_utf8(rest)?,
        [0xFF, 0xFE, rest @ ..] => Cow::Owned(decode_utf16(rest, u16::from_le_bytes)?),
        [0xFE, 0xFF, rest @ ..] => Cow::Owned(decode_utf16(rest, u16::from_be_bytes)?),
        all => decode_utf8(all)?,
    };
    match text.find('\0') {
        Some(at) => Err(Box::new((Places::of(&text).find(at), FaultKind::NotText { found: Encoding::Nul }))),
        None => Ok(text),
    }
}

fn decode_utf8(bytes: &[u8]) -> Result<Cow<'_, str>, Undecodable> {
    str::from_utf8(bytes).map(Cow::Borrowed).map_err(|error| {
        let before = String::from_utf8_lossy(&bytes[..error.valid_up_to()]);
        // A NUL says more about a file than a byte that is no UTF-8 does: it is no text at all.
        let found = if bytes.contains(&0) { Encoding::Nul } else { Encoding::NotUtf8 };
        Box::new((Places::of(&before).find(before.len()), FaultKind::NotText { found }))
    })
}

fn decode_utf16(bytes: &[u8], join: fn([u8; 2]) -> u16) -> Result<String, Undecodable> {
    let pairs = bytes.chunks_exact(2);
    let whole = pairs.remainder().is_empty();
    let units: Vec<u16> = pairs.map(|pair| join([pair[0], pair[1]])).collect();
    match String::from_utf16(&units) {
        Ok(text) if whole => Ok(text),
        _ => Err(Box::new(((1, 1), FaultKind::NotText { found: Encoding::BrokenUtf16 }))),
    }
}

/// Parses the text of a file; a syntax fault is noted and ends the reading of this file.
pub(super) fn parse<'t>(
    text: &'t str,
    file: WhichFile,
    faults: &mut Faults<'_>,
) -> Option<Spanned<DeTable<'t>>> {
    match DeTable::parse(text) {
        Ok(table) => Some(table),
        Err(error) => {
            let at = error.span().map_or(text.len(), |span| span.start);
            faults.add(file, at, FaultKind::Syntax { message: error.message().into() });
            None
        }
    }
}

/// Lines and columns of a text, counted from one; columns in characters.
pub(super) struct Places<'t> {
    text: &'t str,
    line_starts: Vec<usize>,
}

impl<'t> Places<'t> {
    pub(super) fn of(text: &'t str) -> Self {
        let ends = text.bytes().enumerate().filter(|&(_, byte)| byte == b'\n');
        let line_starts = std::iter::once(0).chain(ends.map(|(at, _)| at + 1)).collect();
        Self { text, line_starts }
    }

    /// The line and the column of a byte offset; an offset past the end counts as the end.
    pub(super) fn find(&self, offset: usize) -> (usize, usize) {
        let offset = self.text.floor_char_boundary(offset.min(self.text.len()));
        let line = self.line_starts.partition_point(|&start| start <= offset);
        let start = self.line_starts[line - 1];
        (line, self.text[start..offset].chars().count() + 1)
    }
}
