//! The leaf at 80 columns: a figure in the margin, one ruled line, a sentence beside it.
//!
//! Nothing is framed but what must not be left; what goes on by itself breaks the line.

use crate::wrap::{to_the_left, to_the_right, wrap};

/// The width of everything printed for people.
pub(crate) const WIDTH: usize = 80;
/// The margin for figures; wide enough for `12:05-12:55`.
const MARGIN: usize = 11;
/// What is left beside the line, a blank on either side of it.
pub(crate) const BESIDE: usize = WIDTH - MARGIN - 3;

const BOLD: &str = "\u{1b}[1m";
const PLAIN: &str = "\u{1b}[0m";

/// A text that grows downwards.
#[derive(Debug, Default)]
pub(crate) struct Leaf {
    text: String,
    has_section: bool,
}

impl Leaf {
    /// The head: what it is about, then plain lines, closed by a double rule.
    pub(crate) fn head(title: &str, lines: &[String]) -> Self {
        let mut leaf = Self::default();
        for line in wrap(title, WIDTH) {
            leaf.push(&format!("{BOLD}{line}{PLAIN}"));
        }
        for line in lines.iter().flat_map(|line| wrap(line, WIDTH)) {
            leaf.push(&line);
        }
        leaf
    }

    /// Opens a section.
    pub(crate) fn section(&mut self, title: &str) {
        let (rule, knot) = if self.has_section { ("─", "┼") } else { ("═", "╤") };
        self.has_section = true;
        self.push(&format!("{}{knot}{}", rule.repeat(MARGIN + 1), rule.repeat(BESIDE + 1)));
        for line in wrap(title, BESIDE) {
            self.push(&format!("{} │ {BOLD}{line}{PLAIN}", " ".repeat(MARGIN)));
        }
    }

    /// A figure and the sentence beside it.
    pub(crate) fn line(&mut self, figure: &str, sentence: &str) {
        self.beside("│", figure, &wrap(sentence, BESIDE));
    }

    /// A figure and the name of a thing, which the lines under it are about.
    pub(crate) fn named(&mut self, figure: &str, name: &str) {
        let lines: Vec<String> =
            wrap(name, BESIDE).iter().map(|line| format!("{BOLD}{line}{PLAIN}")).collect();
        self.beside("│", figure, &lines);
    }

    /// Sentences below one another, each with a dot in the margin when there are several.
    pub(crate) fn each(&mut self, sentences: &[String]) {
        let dot = if sentences.len() > 1 { "·" } else { "" };
        for sentence in sentences {
            self.line(dot, sentence);
        }
    }

    /// A figure and a sentence that tells of something going on by itself.
    pub(crate) fn by_itself(&mut self, figure: &str, sentence: &str) {
        self.beside("┊", figure, &wrap(sentence, BESIDE));
    }

    /// A second sentence under the one before, drawn in.
    pub(crate) fn under(&mut self, sentence: &str) {
        let lines: Vec<String> = wrap(sentence, BESIDE - 2).iter().map(|line| format!("  {line}")).collect();
        self.beside("│", "", &lines);
    }

    /// A line that is set already, no wider than [`BESIDE`].
    pub(crate) fn set(&mut self, line: &str) {
        self.beside("│", "", &[line.to_owned()]);
    }

    /// A figure and a line that is set already, no wider than [`BESIDE`].
    pub(crate) fn line_set(&mut self, figure: &str, line: &str) {
        self.beside("│", figure, &[line.to_owned()]);
    }

    /// An empty line beside the rule.
    pub(crate) fn gap(&mut self) {
        self.set("");
    }

    /// The closed frame: must not be left. It stops the line and runs edge to edge.
    pub(crate) fn frame(&mut self, figure: &str, sentences: &[String]) {
        /// Inside the frame, so that its text stands in the same column as the sentences outside.
        const INSIDE: usize = BESIDE - 2;
        let edge = "━".repeat(WIDTH - 2);
        self.push(&format!("┏{edge}┓"));
        let mut figures = wrap(figure, MARGIN).into_iter();
        for (at, sentence) in sentences.iter().enumerate() {
            for line in wrap(sentence, INSIDE) {
                let figure = to_the_right(&figures.next().unwrap_or_default(), MARGIN);
                let line = to_the_left(&line, INSIDE);
                let line = if at == 0 { format!("{BOLD}{line}{PLAIN}") } else { line };
                self.push(&format!("┃{figure}  {line} ┃"));
            }
        }
        self.push(&format!("┗{edge}┛"));
    }

    /// The whole text.
    pub(crate) fn finish(self) -> String {
        self.text
    }

    fn beside(&mut self, rule: &str, figure: &str, lines: &[String]) {
        let figures = wrap(figure, MARGIN);
        for at in 0..lines.len().max(figures.len()) {
            let figure = to_the_right(figures.get(at).map_or("", String::as_str), MARGIN);
            let line = lines.get(at).map_or("", String::as_str);
            self.push(format!("{figure} {rule} {line}").trim_end());
        }
    }

    fn push(&mut self, line: &str) {
        self.text.push_str(line);
        self.text.push('\n');
    }
}

/// The text without marks of weight, to measure it.
#[cfg(test)]
pub(crate) fn without_marks(text: &str) -> String {
    text.replace(BOLD, "").replace(PLAIN, "")
}

#[cfg(test)]
mod tests {
    use unicode_width::UnicodeWidthStr;

    use super::*;

    #[test]
    fn nothing_is_wider_than_the_leaf() {
        let long = "word ".repeat(60);
        let mut leaf = Leaf::head(&long, std::slice::from_ref(&long));
        leaf.section(&long);
        leaf.line("12:05-12:55 and more", &long);
        leaf.by_itself("9:10", &long);
        leaf.under(&long);
        leaf.named("7", &long);
        leaf.each(&[long.clone(), long.clone()]);
        leaf.frame("12:05-12:55", &[long.clone(), long]);
        let text = without_marks(&leaf.finish());
        assert!(text.lines().all(|line| line.width() <= WIDTH), "{text}");
        assert!(text.lines().filter(|line| line.starts_with('┃')).all(|line| line.width() == WIDTH));
    }
}
