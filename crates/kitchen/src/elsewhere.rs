//! Where they live: what other authorities print, what a metric jar may be asked for as, and metres in feet.
//!
//! The processes on file are those of the United States. Nothing here gives another one.

use almanac::{Almanac, Citation, JarSize, Place};
use measure::{Altitude, Volume, read_altitude, read_volume, write_altitude};
use serde::ser::SerializeStruct as _;
use serde::{Serialize, Serializer};

use crate::ask::AskError;
use crate::load::Said;

/// The question in a person's words.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct ElsewhereWords {
    /// The place.
    pub place: Option<String>,
    /// A jar by its volume: `500 ml`.
    pub jar: Option<String>,
    /// A height above the sea: `410 m`.
    pub altitude: Option<String>,
}

/// A metric jar beside the printed sizes.
#[derive(Debug, Clone, PartialEq)]
pub struct MetricJar {
    /// What it holds.
    pub volume: Volume,
    /// The printed size it may be asked for as: the next that is no smaller. `None` where there is none, or where
    /// the rule for it is not on file.
    pub ask_as: Option<JarSize>,
    /// What is to be known of it.
    pub says: Vec<Said>,
}

/// The answer: `abroad/1`.
#[derive(Debug, Clone, PartialEq)]
pub struct ElsewhereAnswer {
    /// The place as it was typed.
    pub place: Option<String>,
    /// Whether anything of that place is on file.
    pub is_on_file: bool,
    /// What is said there, and that no process of it is on file.
    pub says: Vec<Said>,
    /// The jar.
    pub jar: Option<MetricJar>,
    /// The height, up to the next whole foot.
    pub altitude: Option<Altitude>,
}

/// Answers what is on file of a place, a metric jar and a height.
///
/// # Errors
///
/// When the jar or the height cannot be read.
pub fn ask_elsewhere(almanac: &Almanac, words: &ElsewhereWords) -> Result<ElsewhereAnswer, AskError> {
    let place = words.place.as_deref().map(find_place);
    let on_file = |place: Place| almanac.elsewhere().iter().any(|fact| fact.place == place);
    let is_on_file = place.is_none_or(|place| place.is_some_and(on_file));
    let jar = words.jar.as_deref().map(|typed| {
        let volume = read_volume(typed).map_err(|problem| AskError::unreadable("jar", problem))?;
        Ok::<_, AskError>(judge_jar(almanac, volume))
    });
    let altitude = words
        .altitude
        .as_deref()
        .map(|typed| read_altitude(typed).map_err(|problem| AskError::unreadable("altitude", problem)));
    Ok(ElsewhereAnswer {
        place: words.place.clone(),
        is_on_file,
        says: say_of_place(almanac, place.flatten(), words.place.as_deref(), is_on_file),
        jar: jar.transpose()?,
        altitude: altitude.transpose()?,
    })
}

/// The place that a word names; `None` for one that is not on file.
fn find_place(typed: &str) -> Option<Place> {
    let parts = typed.split(|mark: char| mark.is_whitespace() || matches!(mark, '-' | '_'));
    let word = parts.filter(|part| !part.is_empty()).collect::<Vec<_>>().join("-").to_lowercase();
    match word.as_str() {
        "uk" | "britain" | "great-britain" | "england" | "scotland" | "wales" => Some(Place::UnitedKingdom),
        "eu" | "europe" => Some(Place::EuropeanUnion),
        "nz" => Some(Place::NewZealand),
        // Not a place where someone lives.
        "everywhere" => None,
        word => Place::find(word),
    }
}

fn say_of_place(almanac: &Almanac, place: Option<Place>, typed: Option<&str>, is_on_file: bool) -> Vec<Said> {
    let plain = |text: String| Said { text, citation: None };
    let mut says = vec![match (typed, is_on_file) {
        (Some(typed), false) => plain(format!(
            "Nothing of the authorities of {typed:?} is on file: ask the authority there. The processes here are those \
             of the United States."
        )),
        (Some(_), true) => plain(
            "No table of processes of the authorities there is on file. The processes here are those of the United \
             States; where your authority says something stricter, do that."
                .to_owned(),
        ),
        (None, _) => plain("The processes on file are those of the United States.".to_owned()),
    }];
    let facts = almanac.elsewhere().iter().filter(|fact| match place {
        Some(place) => fact.place == place || fact.place == Place::Everywhere,
        None => typed.is_none(),
    });
    says.extend(
        facts.map(|fact| Said { text: fact.says.to_string(), citation: Some(fact.citation.clone()) }),
    );
    says
}

fn judge_jar(almanac: &Almanac, volume: Volume) -> MetricJar {
    let printed = |id: &str| {
        let rule = almanac.rule(id).filter(|rule| rule.citation.may_be_called_tested());
        rule.map(|rule| rule.citation.clone())
    };
    let next = JarSize::ALL.iter().copied().find(|size| size.volume() >= volume);
    let below = JarSize::ALL.iter().copied().rfind(|size| size.volume() < volume);
    let rule: Option<Citation> = printed("jar-next-size-up");
    let ask_as = next.filter(|_| rule.is_some());
    let mut says = Vec::new();
    if let Some(below) = below {
        let text = format!(
            "It holds more than a {below} ({:.0} ml) and is none: no source of full rank on file says that it is, so \
             the line of the {below} is not for it.",
            below.volume().as_millilitres()
        );
        says.push(Said { text, citation: printed("jar-not-larger") });
    }
    says.push(match ask_as {
        Some(size) => Said {
            text: format!(
                "It may be asked for as a {size}, the next printed size that is no smaller: the whole time of that line, \
                 where the food has one (stillroom clear --jar {size})."
            ),
            citation: rule,
        },
        None => Said { text: "No printed size is as large: there is no process for it.".to_owned(), citation: None },
    });
    MetricJar { volume, ask_as, says }
}

impl Serialize for ElsewhereAnswer {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let mut keys = to.serialize_struct("Abroad", 6)?;
        keys.serialize_field("format", "abroad/1")?;
        keys.serialize_field("place", &self.place)?;
        keys.serialize_field("on_file", &self.is_on_file)?;
        keys.serialize_field("says", &self.says)?;
        keys.serialize_field("jar", &self.jar)?;
        keys.serialize_field("altitude_ft", &self.altitude.map(|height| height.as_feet()))?;
        keys.end()
    }
}

impl Serialize for MetricJar {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let mut keys = to.serialize_struct("MetricJar", 3)?;
        keys.serialize_field("ml", &self.volume.as_millilitres().round())?;
        keys.serialize_field("ask_as", &self.ask_as.map(JarSize::as_str))?;
        keys.serialize_field("says", &self.says)?;
        keys.end()
    }
}

/// A height in a sentence: what it counts as.
#[must_use]
pub fn word_height(height: Altitude) -> String {
    format!("Counts as {}, up to the next whole foot; the printed bands go by it.", write_altitude(height))
}

#[cfg(test)]
mod tests {
    use super::*;
    use almanac::{Table, Tables};

    fn load() -> Almanac {
        Almanac::load().expect("the tables built in have no fault")
    }

    fn asked(place: Option<&str>, jar: Option<&str>, altitude: Option<&str>) -> ElsewhereAnswer {
        let owned = |text: Option<&str>| text.map(str::to_owned);
        let words = ElsewhereWords { place: owned(place), jar: owned(jar), altitude: owned(altitude) };
        ask_elsewhere(&load(), &words).expect("a question that can be read")
    }

    #[test]
    fn a_metric_jar_never_takes_the_line_of_a_smaller_one() {
        let almanac = load();
        for (jar, ask_as) in [
            ("250 ml", Some(JarSize::TwelveOunce)),
            ("400 ml", Some(JarSize::Pint)),
            ("473 ml", Some(JarSize::Pint)),
            ("500 ml", Some(JarSize::PintAndHalf)),
            ("1 l", Some(JarSize::HalfGallon)),
            ("2 l", None),
        ] {
            let found = asked(None, Some(jar), None).jar.expect("a jar was asked about");
            assert_eq!(found.ask_as, ask_as, "{jar}");
        }
        for ml in 1..1893 {
            let found = judge_jar(&almanac, Volume::millilitres(f64::from(ml)));
            assert!(found.ask_as.expect("no larger than a half-gallon").volume() >= found.volume, "{ml}");
        }
    }

    #[test]
    fn without_the_rule_no_metric_jar_has_a_line() {
        let tables = Tables::embedded()
            .without_lines(Table::CannerRules, |line| line.starts_with("jar-next-size-up,"));
        let almanac = Almanac::from_tables(&tables).expect("a struck row is no fault");
        assert_eq!(judge_jar(&almanac, Volume::millilitres(400.0)).ask_as, None);
    }

    #[test]
    fn a_place_is_told_with_its_own_facts_or_that_there_are_none() {
        let canada = asked(Some("Canada"), None, None);
        assert!(canada.is_on_file);
        assert!(canada.says.iter().any(|said| said.text.contains("500 ml")));
        assert!(canada.says[0].text.contains("No table of processes"));
        let nowhere = asked(Some("Norway"), None, None);
        assert!(!nowhere.is_on_file);
        assert!(nowhere.says[0].text.contains("Nothing of the authorities"));
        assert_eq!(nowhere.says.len(), 1);
        assert!(asked(Some("UK"), None, None).is_on_file);
    }

    /// 304.8 m are 1,000 ft by definition; a tenth of a metre more is the next band.
    #[test]
    fn metres_go_up_to_the_next_foot() {
        assert_eq!(asked(None, None, Some("304.8 m")).altitude, Some(Altitude::feet(1000)));
        assert_eq!(asked(None, None, Some("304.9 m")).altitude, Some(Altitude::feet(1001)));
        assert!(
            ask_elsewhere(&load(), &ElsewhereWords { altitude: Some("high".into()), ..Default::default() })
                .is_err()
        );
    }
}
