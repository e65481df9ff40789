//! The style of a page and the letters it is set in, both inside the page.

use crate::base64;

/// Atkinson Hyperlegible Next, regular, subset to Latin, as WOFF2 (SIL Open Font License 1.1).
pub const REGULAR: &[u8] = include_bytes!("../assets/fonts/hyperlegible-next-regular.woff2");
/// The same, bold.
pub const BOLD: &[u8] = include_bytes!("../assets/fonts/hyperlegible-next-bold.woff2");
const STYLE: &str = include_str!("../assets/sheet.css");

/// The whole style sheet with both weights embedded.
pub(crate) fn write_style() -> String {
    let face = |bytes: &[u8], weight: u32| {
        format!(
            "@font-face{{font-family:\"Hyperlegible Next\";font-weight:{weight};font-display:swap;\
             src:url(data:font/woff2;base64,{}) format(\"woff2\")}}\n",
            base64::encode(bytes)
        )
    };
    face(REGULAR, 400) + &face(BOLD, 700) + STYLE
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_weights_are_embedded_and_nothing_is_fetched() {
        let style = write_style();
        assert_eq!(style.matches("url(data:font/woff2;base64,").count(), 2);
        assert_eq!(style.matches("url(").count(), 2, "a style that fetches would fail without a network");
    }
}
