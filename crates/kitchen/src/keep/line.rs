//! One line for what was put up: `damson jam, 9 half-pints`, with year and place where they are known.

use almanac::JarSize;
use book::RoughDate;
use book::act::Contents;
use measure::read_count;

use super::error::KeepError;

/// A line, read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KeptLine {
    /// The food.
    pub name: Box<str>,
    /// How many of which size.
    pub contents: Vec<Contents>,
    /// When it was put up: `Some(None)` where it says that nobody knows, `None` where it does not say.
    pub put_up: Option<Option<RoughDate>>,
    /// The place.
    pub shelf: Option<Box<str>>,
}

/// The most containers that one line may speak of: more is a slip of the finger.
pub(super) const MOST: i64 = 9_999;

const EXAMPLE: &str = "damson jam, 9 half-pints";

/// Reads a line: the food, then in any order, each behind a comma, counts with sizes, a year or date (or `not known`),
/// a place.
///
/// # Errors
///
/// If the food or every count is missing, or there are two places or dates.
///
/// # Examples
///
/// ```
/// use kitchen::keep::read_line;
///
/// let line = read_line("damson jam, 9 half-pints, 2 pints, 2024, cellar").unwrap();
/// assert_eq!((&*line.name, &*line.contents[0].size, line.contents[0].count), ("damson jam", "half-pint", 9));
/// assert_eq!(line.shelf.as_deref(), Some("cellar"));
/// ```
pub fn read_line(typed: &str) -> Result<KeptLine, KeepError> {
    let missing = |what| KeepError::UnreadableLine { typed: typed.to_owned(), what, example: EXAMPLE };
    let mut parts = typed.split(',').map(str::trim);
    let name = parts.next().filter(|name| !name.is_empty()).ok_or_else(|| missing("what the food is"))?;
    let mut line = KeptLine { name: name.into(), contents: Vec::new(), put_up: None, shelf: None };
    for part in parts.filter(|part| !part.is_empty()) {
        if let Ok(date) = part.parse::<RoughDate>() {
            if line.put_up.replace(Some(date)).is_some() {
                return Err(missing("one date: it has two"));
            }
        } else if ["not known", "unknown", "?"].contains(&part) {
            line.put_up = Some(None);
        } else if let Some(contents) = read_contents(part) {
            check_count(contents.count)?;
            line.contents.push(contents);
        } else if line.shelf.replace(part.into()).is_some() {
            return Err(missing("one place: it has two"));
        }
    }
    if line.contents.is_empty() {
        return Err(missing("how many of which size"));
    }
    Ok(line)
}

/// That a number of containers is one.
pub(super) fn check_count(count: i64) -> Result<(), KeepError> {
    if (1..=MOST).contains(&count) { Ok(()) } else { Err(KeepError::NoCount { typed: count, most: MOST }) }
}

/// `9 half-pints`, `a dozen pints`, `6 bags`; `None` when it does not begin with a number.
fn read_contents(part: &str) -> Option<Contents> {
    // The longest beginning that is a number leaves the size: `a dozen` before `a`.
    let breaks = part.match_indices(char::is_whitespace).map(|(at, _)| at);
    let at = breaks.filter(|at| read_whole(&part[..*at]).is_some()).max()?;
    Some(Contents { size: read_size(&part[at..]), count: read_whole(&part[..at])? })
}

fn read_whole(text: &str) -> Option<i64> {
    // Only words of number: `9 half` is nine of something, not nine and a half.
    let is_number = text.split_whitespace().all(|word| {
        word.bytes().all(|byte| byte.is_ascii_digit() || byte == b',')
            || [
                "a", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
                "twelve", "dozen",
            ]
            .contains(&word)
    });
    let number = read_count(text).ok().filter(|_| is_number)?.to_f64();
    // Exact: a count of the reader stays below a million.
    (number.fract() == 0.0).then_some(number as i64)
}

/// The name of a size in the singular: a jar of the published list by its name there, anything else as it was written.
pub(super) fn read_size(typed: &str) -> Box<str> {
    let plain = typed.trim().to_lowercase();
    let plain = plain.strip_suffix(" jars").or(plain.strip_suffix(" jar")).unwrap_or(&plain);
    let singular = plain.strip_suffix('s').filter(|short| !short.ends_with('s')).unwrap_or(plain);
    let jar = [plain, singular].iter().find_map(|name| JarSize::find(&name.replace(' ', "-")));
    jar.map_or_else(|| singular.into(), |jar| jar.as_str().into())
}

/// So many of a size in words: `9 half-pints`, `1 bag`, `3 12-ounce jars`.
#[must_use]
pub fn say_containers(count: i64, size: &str) -> String {
    let (size, jar) = if size.ends_with("ounce") { (size, " jar") } else { (size, "") };
    let many = if count == 1 { "" } else { "s" };
    format!("{count} {size}{jar}{many}")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(typed: &str, contents: &[(i64, &str)]) {
        let line = read_line(typed).unwrap();
        let found: Vec<(i64, &str)> =
            line.contents.iter().map(|contents| (contents.count, &*contents.size)).collect();
        assert_eq!(found, contents, "{typed}");
    }

    #[test]
    fn counts_and_sizes_are_read_as_people_write_them() {
        check("damson jam, 9 half-pints", &[(9, "half-pint")]);
        check("damson jam, 9 Half Pints, 1 quart", &[(9, "half-pint"), (1, "quart")]);
        check("corn, a dozen pint jars", &[(12, "pint")]);
        check("corn, two dozen pints", &[(24, "pint")]);
        check("corn, 6 1 qt bags", &[(6, "1 qt bag")]);
        check("plums, seven glass", &[(7, "glass")]);
    }

    #[test]
    fn year_and_place_come_in_any_order() {
        let line = read_line("peaches, cellar, left, 2024").unwrap_err();
        assert!(line.to_string().contains("two"), "{line}");
        let line = read_line("peaches, the cellar, 2024-09, 12 quarts").unwrap();
        assert_eq!(line.shelf.as_deref(), Some("the cellar"));
        assert_eq!(line.put_up, Some("2024-09".parse().ok()));
        assert_eq!(read_line("peaches, 12 quarts, not known").unwrap().put_up, Some(None));
    }

    #[test]
    fn what_is_missing_is_named() {
        for (typed, words) in [
            ("", "what the food is"),
            (", 9 pints", "what the food is"),
            ("damson jam", "how many of which size"),
            ("damson jam, cellar", "how many of which size"),
            ("damson jam, 0 pints", "0 is no number"),
            ("damson jam, 99999 pints", "99999 is no number"),
        ] {
            let error = read_line(typed).unwrap_err().to_string();
            assert!(error.contains(words) && error.contains("hint:"), "{typed}: {error}");
        }
    }

    #[test]
    fn numbers_of_containers_are_said_as_people_say_them() {
        assert_eq!(say_containers(9, "half-pint"), "9 half-pints");
        assert_eq!(say_containers(1, "1 qt bag"), "1 1 qt bag");
        assert_eq!(say_containers(3, "12-ounce"), "3 12-ounce jars");
    }
}
