//! Lines of text of a given width on a terminal.

use unicode_width::{UnicodeWidthChar, UnicodeWidthStr};

/// Breaks `text` between words into lines no wider than `width`; a word wider than that is broken within. The
/// empty text is one empty line.
pub(crate) fn wrap(text: &str, width: usize) -> Vec<String> {
    let mut lines = Vec::new();
    let mut line = String::new();
    for word in text.split_whitespace() {
        let needed = line.width() + usize::from(!line.is_empty()) + word.width();
        if needed > width && !line.is_empty() {
            lines.push(std::mem::take(&mut line));
        }
        if !line.is_empty() {
            line.push(' ');
        }
        for letter in word.chars() {
            let wide = letter.width().unwrap_or(0);
            if line.width() + wide > width && !line.is_empty() {
                lines.push(std::mem::take(&mut line));
            }
            line.push(letter);
        }
    }
    lines.push(line);
    lines
}

/// `text` with blanks before it until it is `width` wide.
pub(crate) fn to_the_right(text: &str, width: usize) -> String {
    format!("{}{text}", " ".repeat(width.saturating_sub(text.width())))
}

/// `text` with blanks after it until it is `width` wide.
pub(crate) fn to_the_left(text: &str, width: usize) -> String {
    format!("{text}{}", " ".repeat(width.saturating_sub(text.width())))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_line_is_wider_than_asked() {
        let text = "Dip in boiling water 30 to 60 seconds, then in cold. 漬物と梅干し Donaudampfschifffahrtsgesellschaft";
        for width in 2..40 {
            let lines = wrap(text, width);
            assert!(lines.iter().all(|line| line.width() <= width), "{width}: {lines:?}");
            let letters =
                |text: &str| text.chars().filter(|letter| !letter.is_whitespace()).collect::<String>();
            assert_eq!(letters(&lines.concat()), letters(text), "nothing is lost at {width}");
        }
    }

    #[test]
    fn an_empty_text_is_one_line() {
        assert_eq!(wrap("", 10), [""]);
    }

    #[test]
    fn wide_letters_count_twice() {
        assert_eq!(to_the_right("梅", 4), "  梅");
        assert_eq!(to_the_left("梅", 4), "梅  ");
    }
}
