//! The chain: each entry is bound to all before it, so that a flipped bit or a missing entry is found.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Serialize};

/// The hash of an entry and of everything before it (BLAKE3, 32 bytes).
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct Link([u8; 32]);

impl Link {
    /// The link of an empty journal.
    pub const FIRST: Self = Self([0; 32]);

    /// The link of the entry that comes next: the hash of this link's bytes followed by the entry's canonical text.
    #[must_use]
    pub fn next(self, text: &str) -> Self {
        let mut hasher = blake3::Hasher::new();
        hasher.update(&self.0);
        hasher.update(text.as_bytes());
        Self(*hasher.finalize().as_bytes())
    }

    /// The hash of bytes that are no entry: a snapshot.
    #[must_use]
    pub fn over(bytes: &[u8]) -> Self {
        Self(*blake3::hash(bytes).as_bytes())
    }

    /// The bytes.
    #[must_use]
    pub fn as_bytes(&self) -> &[u8; 32] {
        &self.0
    }

    /// A link from its bytes; `None` unless they are 32.
    #[must_use]
    pub fn from_bytes(bytes: &[u8]) -> Option<Self> {
        bytes.try_into().ok().map(Self)
    }
}

impl fmt::Display for Link {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
    }
}

impl fmt::Debug for Link {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

/// A text that is no link.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{0:?} is no link of a chain; hint: a link is 64 hexadecimal digits in small letters")]
pub struct LinkError(String);

impl FromStr for Link {
    type Err = LinkError;

    fn from_str(text: &str) -> Result<Self, LinkError> {
        let hash = blake3::Hash::from_hex(text).map_err(|_| LinkError(text.to_owned()))?;
        let link = Self(*hash.as_bytes());
        if link.to_string() == text { Ok(link) } else { Err(LinkError(text.to_owned())) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: test vectors of the BLAKE3 specification (2020), input length 0; from memory.
    #[test]
    fn the_hash_is_the_published_one() {
        assert_eq!(
            Link::over(b"").to_string(),
            "af1349b9f5f9a1a6a0404dea36dcc9499bcb25c9adc112b7cc9a93cae41f3262"
        );
    }

    #[test]
    fn a_link_binds_the_text_and_all_before_it() {
        let one = Link::FIRST.next("a").next("b");
        assert_ne!(one, Link::FIRST.next("b").next("a"));
        assert_ne!(one, Link::FIRST.next("ab"));
        assert_eq!(one.to_string().parse::<Link>().unwrap(), one);
        assert!(one.to_string().to_uppercase().parse::<Link>().is_err());
    }
}
