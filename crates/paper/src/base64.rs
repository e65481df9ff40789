//! Bytes as base64 (RFC 4648, section 4), so that a page can carry its own letters.

const ALPHABET: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

/// The base64 of `bytes`, padded.
pub(crate) fn encode(bytes: &[u8]) -> String {
    let mut text = String::with_capacity(bytes.len().div_ceil(3) * 4);
    for three in bytes.chunks(3) {
        let bits =
            three.iter().enumerate().fold(0_u32, |bits, (at, byte)| bits | u32::from(*byte) << (16 - 8 * at));
        for at in 0..4 {
            // A chunk of n bytes fills n + 1 letters; the rest is padding.
            if at <= three.len() {
                let six = (bits >> (18 - 6 * at)) & 0b11_1111;
                text.push(char::from(ALPHABET[six as usize]));
            } else {
                text.push('=');
            }
        }
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: RFC 4648, The Base16, Base32, and Base64 Data Encodings, 2006, section 10, test vectors.
    #[test]
    fn printed_vectors_are_met() {
        for (bytes, text) in [
            ("", ""),
            ("f", "Zg=="),
            ("fo", "Zm8="),
            ("foo", "Zm9v"),
            ("foob", "Zm9vYg=="),
            ("fooba", "Zm9vYmE="),
            ("foobar", "Zm9vYmFy"),
        ] {
            assert_eq!(encode(bytes.as_bytes()), text);
        }
    }
}
