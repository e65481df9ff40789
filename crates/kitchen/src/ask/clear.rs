//! May this be processed so?

use almanac::{Almanac, Formula, Product, Verdict};
use batch::clear::{
    self, ChangesCleared, ChangesQuestion, ClearError, ClearQuestion, Clearance, CopiedQuestion, Gauge,
    RefusedWords, Tested, refuse_formula, refuse_words,
};
use serde::ser::{Serialize, SerializeStruct, Serializer};

use super::error::{AskError, NameKind};
use super::names::{is_spelled_out, read_canner, read_jar, read_pack, require_one};

/// The question in a person's words.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct ClearWords {
    /// The food: an id or a name; empty for the one that the formula makes.
    pub food: String,
    /// How it goes into the jar.
    pub pack: Option<String>,
    /// The jar.
    pub jar: Option<String>,
    /// The canner.
    pub canner: Option<String>,
    /// The height above the sea.
    pub altitude: Option<String>,
    /// How far the dial reads high or low.
    pub gauge_error: Option<String>,
    /// When the dial was last tested.
    pub gauge_tested: Option<String>,
    /// The formula the food is made by: an id or a name.
    pub with: Option<String>,
    /// What is to be done otherwise.
    pub changes: Vec<String>,
}

/// The answer: a judged question, or a food that is refused by its name.
#[derive(Debug, Clone, PartialEq)]
pub enum ClearAnswer {
    /// The question was judged.
    Judged(Box<Clearance>),
    /// No process table has such a food, and a refusal names it.
    Refused(Box<RefusedFood>),
    /// Only the changes were judged: what a process needs was not all said.
    Changes(Box<ChangesCleared>),
}

/// A food that is refused by its name, whatever the pack, jar and canner.
#[derive(Debug, Clone, PartialEq)]
pub struct RefusedFood {
    /// The question as it was asked.
    pub words: ClearWords,
    /// Why, and what to do instead.
    pub refused: RefusedWords,
}

impl ClearAnswer {
    /// The verdict.
    #[must_use]
    pub fn verdict(&self) -> Verdict {
        match self {
            Self::Judged(clearance) => clearance.verdict,
            Self::Refused(food) => food.refused.verdict,
            Self::Changes(changes) => changes.verdict,
        }
    }
}

/// Answers whether this food may be processed so. With a formula and a change, what a process needs may be left
/// out: then the change is judged alone.
///
/// # Errors
///
/// When a word names nothing or several things, when an amount cannot be read, when something is missing (the
/// altitude above all), or when a change is not understood.
pub fn clear(almanac: &Almanac, words: &ClearWords) -> Result<ClearAnswer, AskError> {
    let formula = words.with.as_deref().map(|typed| {
        require_one(almanac.find_formula(typed), NameKind::Formula, typed, |formula| formula.id.to_string())
    });
    let formula = formula.transpose()?;
    let refuse = |refused| Ok(ClearAnswer::Refused(Box::new(RefusedFood { words: words.clone(), refused })));
    let product = match (find_food(almanac, words, formula)?, formula) {
        (Food::Refused(refused), _) => return refuse(refused),
        (food, Some(formula)) if asks_for_changes_alone(words, &food) => {
            return clear_changes(almanac, words, &food, formula);
        }
        (Food::OnFile(product), _) => product,
        (Food::OfNone(formula), _) => return refuse(refuse_formula(almanac, formula)),
    };
    let question = ClearQuestion {
        product: product.id.clone(),
        pack: read_pack(words.pack.as_deref())?,
        jar: read_jar(words.jar.as_deref())?,
        canner: read_canner(words.canner.as_deref())?,
        altitude: {
            let typed = words.altitude.as_deref().ok_or(AskError::AltitudeMissing)?;
            read_altitude(typed)?
        },
        gauge: read_gauge(words)?,
        formula: formula.map(|formula| formula.id.clone()),
        changes: words.changes.clone(),
    };
    Ok(ClearAnswer::Judged(Box::new(clear::clear(almanac, &question)?)))
}

/// What a person's word for a food leads to.
enum Food<'a> {
    OnFile(&'a Product),
    Refused(RefusedWords),
    /// The formula makes none of the process tables.
    OfNone(&'a Formula),
}

/// Whether changes are asked about, and not everything was said that a process needs.
fn asks_for_changes_alone(words: &ClearWords, food: &Food<'_>) -> bool {
    let ClearWords { pack, jar, canner, altitude, .. } = words;
    let open = [pack, jar, canner, altitude].into_iter().any(Option::is_none);
    !words.changes.is_empty() && (open || matches!(food, Food::OfNone(_)))
}

fn clear_changes(
    almanac: &Almanac,
    words: &ClearWords,
    food: &Food<'_>,
    formula: &Formula,
) -> Result<ClearAnswer, AskError> {
    if let (Food::OnFile(product), Some(makes)) = (food, &formula.product)
        && product.id != *makes
    {
        let (formula, makes, product) = (formula.id.clone(), makes.clone(), product.id.clone());
        return Err(ClearError::FormulaOfAnotherFood { formula, makes, product }.into());
    }
    let question = ChangesQuestion {
        formula: formula.id.clone(),
        pack: words.pack.as_deref().map(|typed| read_pack(Some(typed))).transpose()?,
        jar: words.jar.as_deref().map(|typed| read_jar(Some(typed))).transpose()?,
        canner: words.canner.as_deref().map(|typed| read_canner(Some(typed))).transpose()?,
        altitude: words.altitude.as_deref().map(read_altitude).transpose()?,
        changes: words.changes.clone(),
    };
    Ok(ClearAnswer::Changes(Box::new(clear::clear_changes(almanac, &question)?)))
}

/// The question about a copied formula, in a person's words.
pub(crate) fn read_copied_question(words: &ClearWords) -> Result<CopiedQuestion, AskError> {
    Ok(CopiedQuestion {
        pack: read_pack(words.pack.as_deref())?,
        jar: read_jar(words.jar.as_deref())?,
        canner: read_canner(words.canner.as_deref())?,
        altitude: read_altitude(words.altitude.as_deref().ok_or(AskError::AltitudeMissing)?)?,
        gauge: read_gauge(words)?,
    })
}

fn read_altitude(typed: &str) -> Result<measure::Altitude, AskError> {
    measure::read_altitude(typed).map_err(|problem| AskError::unreadable("altitude", problem))
}

/// A food that is spelled out is meant. Else a refusal comes before a food that merely holds the typed words: who
/// asks for zucchini must not be answered with zucchini in pineapple juice.
fn find_food<'a>(
    almanac: &'a Almanac,
    words: &ClearWords,
    formula: Option<&'a Formula>,
) -> Result<Food<'a>, AskError> {
    if words.food.trim().is_empty() {
        let formula = formula.ok_or(AskError::FoodMissing)?;
        let product = formula.product.as_ref().and_then(|id| almanac.product(id));
        return Ok(product.map_or(Food::OfNone(formula), Food::OnFile));
    }
    let found = almanac.find_product(&words.food);
    if let Some(product) = found.one()
        && (is_spelled_out(&words.food, product.id.as_str())
            || product.names.iter().any(|name| is_spelled_out(&words.food, name)))
    {
        return Ok(Food::OnFile(product));
    }
    if let Some(refused) = refuse_words(almanac, &words.food) {
        return Ok(Food::Refused(refused));
    }
    require_one(found, NameKind::Food, &words.food, |product| product.id.to_string()).map(Food::OnFile)
}

fn read_gauge(words: &ClearWords) -> Result<Option<Gauge>, AskError> {
    const TESTED: &[(&str, Tested)] =
        &[("this-year", Tested::WithinTheYear), ("overdue", Tested::Overdue), ("never", Tested::Never)];
    let error = words.gauge_error.as_deref().map(|typed| {
        measure::read_pressure(typed).map_err(|problem| AskError::unreadable("gauge error", problem))
    });
    let tested = words.gauge_tested.as_deref().map(|typed| {
        let found = TESTED.iter().find(|(word, _)| word.eq_ignore_ascii_case(typed.trim()));
        found.map(|(_, tested)| *tested).ok_or_else(|| AskError::UnknownWord {
            what: "word for when a gauge was tested",
            typed: typed.to_owned(),
            known: TESTED.iter().map(|(word, _)| (*word).to_owned()).collect(),
        })
    });
    match (error.transpose()?, tested.transpose()?) {
        (None, None) => Ok(None),
        (error, tested) => Ok(Some(Gauge { error, tested: tested.unwrap_or(Tested::NotSaid) })),
    }
}

impl Serialize for ClearAnswer {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Judged(clearance) => clearance.serialize(to),
            Self::Refused(food) => food.serialize(to),
            Self::Changes(changes) => changes.serialize(to),
        }
    }
}

impl Serialize for RefusedFood {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let mut keys = to.serialize_struct("Clearance", 12)?;
        keys.serialize_field("format", "clearance/1")?;
        keys.serialize_field("judged", "name")?;
        keys.serialize_field("verdict", self.refused.verdict.as_str())?;
        keys.serialize_field("question", &AskedInWords(&self.words))?;
        keys.serialize_field("processes", &[(); 0])?;
        keys.serialize_field("acid", &None::<()>)?;
        keys.serialize_field("riders", &[(); 0])?;
        keys.serialize_field("because", &self.refused.because)?;
        keys.serialize_field("instead", &self.refused.instead)?;
        keys.serialize_field("changes", &[(); 0])?;
        keys.serialize_field("entered", &None::<()>)?;
        keys.serialize_field("sources", &self.refused.sources)?;
        keys.end()
    }
}

/// The question of a food refused by its name: what else was asked is repeated where it can be read.
struct AskedInWords<'a>(&'a ClearWords);

impl Serialize for AskedInWords<'_> {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let words = self.0;
        let pack = read_pack(words.pack.as_deref()).ok().map(|pack| pack.as_str());
        let jar = read_jar(words.jar.as_deref()).ok().map(|jar| jar.as_str());
        let canner = read_canner(words.canner.as_deref()).ok().map(|canner| canner.as_str());
        let altitude = words.altitude.as_deref().and_then(|typed| measure::read_altitude(typed).ok());
        let error = words.gauge_error.as_deref().and_then(|typed| measure::read_pressure(typed).ok());
        let mut keys = to.serialize_struct("Question", 8)?;
        keys.serialize_field("food", &words.food)?;
        keys.serialize_field("pack", &pack)?;
        keys.serialize_field("jar", &jar)?;
        keys.serialize_field("canner", &canner)?;
        keys.serialize_field("altitude_ft", &altitude.map(|altitude| altitude.as_feet()))?;
        keys.serialize_field("gauge_error_psi", &error.map(|error| error.as_psi()))?;
        keys.serialize_field("with", &words.with)?;
        keys.serialize_field("changes", &words.changes)?;
        keys.end()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn load() -> Almanac {
        Almanac::load().expect("the tables built in have no fault")
    }

    fn words(food: &str) -> ClearWords {
        ClearWords {
            food: food.into(),
            pack: Some("hot".into()),
            jar: Some("pint".into()),
            canner: Some("boiling-water".into()),
            altitude: Some("1,200 ft".into()),
            ..ClearWords::default()
        }
    }

    /// Source: USDA Complete Guide to Home Canning, 2015, Guide 3, crushed tomatoes: pints, hot pack, 1,001 to 3,000
    /// ft, 40 minutes.
    #[test]
    fn a_food_by_id_or_by_name_gets_the_printed_minutes() {
        let almanac = load();
        for food in ["tomatoes-crushed", "crushed tomatoes", "Tomatoes crushed"] {
            let ClearAnswer::Judged(clearance) = clear(&almanac, &words(food)).unwrap() else {
                panic!("{food} is on file")
            };
            assert_eq!(clearance.verdict, Verdict::Tested, "{food}");
            assert_eq!(clearance.processes[0].process().minutes().0, 40);
        }
    }

    #[test]
    fn a_formula_and_a_change_are_enough_for_a_verdict_on_the_change() {
        let almanac = load();
        let asked = ClearWords {
            with: Some("chile_salsa".into()),
            changes: vec!["less vinegar".into()],
            ..ClearWords::default()
        };
        let ClearAnswer::Changes(answer) = clear(&almanac, &asked).unwrap() else {
            panic!("nothing was said that a process needs")
        };
        assert_eq!(answer.verdict, Verdict::DoNot);
        assert_eq!(answer.changes[0].rules[0].as_str(), "cr-s01");
        let whole = ClearWords { with: asked.with.clone(), changes: vec!["less salt".into()], ..words("") };
        let ClearAnswer::Judged(answer) = clear(&almanac, &whole).unwrap() else {
            panic!("everything was said that a process needs")
        };
        assert_eq!((answer.verdict, answer.processes.len()), (Verdict::Tested, 1));
    }

    #[test]
    fn a_formula_of_no_process_is_refused_and_says_where_it_is_kept() {
        let almanac = load();
        let formula = almanac.formulas().find(|formula| formula.product.is_none()).expect("one is frozen");
        let asked = ClearWords { with: Some(formula.id.to_string()), ..words("") };
        let answer = clear(&almanac, &asked).unwrap();
        assert_eq!(answer.verdict(), Verdict::NotTested);
        let ClearAnswer::Refused(refused) = answer else { panic!("no process is printed for it") };
        assert!(!refused.refused.instead.is_empty());
    }

    #[test]
    fn neither_food_nor_formula_is_a_wrong_question() {
        assert_eq!(clear(&load(), &ClearWords::default()), Err(AskError::FoodMissing));
    }

    #[test]
    fn a_refused_food_is_refused_by_its_name_alone() {
        let almanac = load();
        for food in ["pumpkin puree", "garlic in oil", "candied pepper rings"] {
            let asked = ClearWords { food: food.into(), ..ClearWords::default() };
            let answer = clear(&almanac, &asked).unwrap();
            assert!(matches!(answer, ClearAnswer::Refused(_)), "{food}");
            assert_ne!(answer.verdict(), Verdict::Tested);
            let json = serde_json::to_value(&answer).unwrap();
            assert_eq!(json["format"], "clearance/1");
            assert_eq!(json["question"]["food"], food);
            assert!(json["question"]["altitude_ft"].is_null());
            assert_eq!(json["processes"].as_array().map(Vec::len), Some(0));
            assert!(!json["instead"].as_array().unwrap().is_empty(), "{food}");
        }
    }

    #[test]
    fn plain_zucchini_is_not_answered_with_another_food_that_holds_it() {
        let answer = clear(&load(), &words("zucchini")).unwrap();
        assert_ne!(answer.verdict(), Verdict::Tested);
    }

    #[test]
    fn a_missing_altitude_names_three_ways_to_find_it() {
        let asked = ClearWords { altitude: None, ..words("tomatoes-crushed") };
        let said = clear(&load(), &asked).unwrap_err().to_string();
        for way in ["topographic map", "phone", "extension office"] {
            assert!(said.contains(way), "{said}");
        }
    }

    #[test]
    fn several_foods_are_listed_and_none_is_chosen() {
        match clear(&load(), &words("tomatoes")) {
            Err(AskError::SeveralNames { ids, .. }) => {
                assert!(ids.contains(&"tomatoes-crushed".to_owned()), "{ids:?}");
            }
            other => panic!("{other:?}"),
        }
    }

    #[test]
    fn a_misspelled_food_gets_the_nearest_names() {
        match clear(&load(), &words("tomatos crusht")) {
            Err(AskError::NoSuchName { nearest, .. }) => {
                assert!(nearest.contains(&"tomatoes-crushed".to_owned()), "{nearest:?}");
            }
            other => panic!("{other:?}"),
        }
    }

    #[test]
    fn an_untested_gauge_gives_no_process() {
        let asked = ClearWords {
            pack: Some("raw".into()),
            canner: Some("dial".into()),
            gauge_tested: Some("never".into()),
            ..words("beans-snap-italian")
        };
        match clear(&load(), &asked) {
            Ok(answer) => assert_ne!(answer.verdict(), Verdict::Tested),
            Err(error) => panic!("{error}"),
        }
    }
}
