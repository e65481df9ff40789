//! Words of the kitchen as HTML: escaped, with fractions the typeface can draw.

use askama::filters::Safe;

/// Fractions the typeface lacks as one letter; they are set from figures instead.
const LACKING: [(char, &str); 8] = [
    ('⅓', "1/3"),
    ('⅔', "2/3"),
    ('⅛', "1/8"),
    ('⅜', "3/8"),
    ('⅝', "5/8"),
    ('⅞', "7/8"),
    ('⅙', "1/6"),
    ('⅚', "5/6"),
];

/// Fractions the typeface has as one letter.
const HAVING: [(&str, char); 3] = [("1/2", '½'), ("1/4", '¼'), ("3/4", '¾')];

/// Escapes `words` and marks each fraction, so that "3 3/4 cups" is set as a cook writes it.
#[askama::filter_fn]
pub(crate) fn kitchen(words: impl std::fmt::Display, _: &dyn askama::Values) -> askama::Result<Safe<String>> {
    Ok(Safe(mark_fractions(&words.to_string())))
}

/// The escaped words, each fraction in a span of class `fr`.
#[must_use]
pub fn mark_fractions(words: &str) -> String {
    let mut html = String::with_capacity(words.len());
    let letters: Vec<char> = words.chars().collect();
    let mut at = 0;
    while at < letters.len() {
        if let Some((_, figures)) = LACKING.iter().find(|(letter, _)| *letter == letters[at]) {
            push_fraction(&mut html, figures);
            at += 1;
        } else if let Some(length) = measure_fraction(&letters, at) {
            push_fraction(&mut html, &letters[at..at + length].iter().collect::<String>());
            at += length;
        } else {
            push_escaped(&mut html, letters[at]);
            at += 1;
        }
    }
    html
}

/// How many letters of a fraction such as `3/16` begin at `at`; `None` inside a longer figure or a date.
fn measure_fraction(letters: &[char], at: usize) -> Option<usize> {
    let joins = |letter: &char| letter.is_ascii_digit() || matches!(letter, '/' | '.' | ',');
    if at > 0 && joins(&letters[at - 1]) {
        return None;
    }
    let digits = |from: usize| letters[from..].iter().take_while(|letter| letter.is_ascii_digit()).count();
    let above = digits(at);
    if !(1..=2).contains(&above) || letters.get(at + above) != Some(&'/') {
        return None;
    }
    let below = digits(at + above + 1);
    let end = at + above + 1 + below;
    let ends = letters.get(end) != Some(&'/');
    ((1..=2).contains(&below) && ends).then_some(end - at)
}

/// As one letter where the typeface has it; "3 1/2" closes up to "3½" then.
fn push_fraction(html: &mut String, figures: &str) {
    if let Some((_, letter)) = HAVING.iter().find(|(having, _)| *having == figures) {
        if html.ends_with(' ') && html.trim_end().ends_with(|before: char| before.is_ascii_digit()) {
            html.pop();
        }
        html.push(*letter);
        return;
    }
    let (above, below) = figures.split_once('/').expect("every caller hands over figures with a bar between");
    html.push_str(&format!("<span class=\"fr\"><sup>{above}</sup>\u{2044}<sub>{below}</sub></span>"));
}

fn push_escaped(html: &mut String, letter: char) {
    match letter {
        '&' => html.push_str("&amp;"),
        '<' => html.push_str("&lt;"),
        '>' => html.push_str("&gt;"),
        '"' => html.push_str("&quot;"),
        '\'' => html.push_str("&#39;"),
        _ => html.push(letter),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(words: &str, html: &str) {
        assert_eq!(mark_fractions(words), html);
    }

    #[test]
    fn fractions_are_marked_and_other_slashes_are_not() {
        check("3 3/4 cups", "3¾ cups");
        check("leave 1/2 inch", "leave ½ inch");
        check("2 1/3 cups", "2 <span class=\"fr\"><sup>1</sup>⁄<sub>3</sub></span> cups");
        check("slices of 3/16 inch", "slices of <span class=\"fr\"><sup>3</sup>⁄<sub>16</sub></span> inch");
        check("⅓ cup", "<span class=\"fr\"><sup>1</sup>⁄<sub>3</sub></span> cup");
        check("read 12/31/2015", "read 12/31/2015");
        check("4.1/2", "4.1/2");
        check("and/or", "and/or");
    }

    #[test]
    fn what_a_person_typed_cannot_become_markup() {
        check("<b>Tom & \"Jo\"</b>", "&lt;b&gt;Tom &amp; &quot;Jo&quot;&lt;/b&gt;");
    }
}
