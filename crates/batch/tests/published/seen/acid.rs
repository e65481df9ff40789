//! Acid that goes into the jar.

use almanac::{Almanac, CannerKind, Verdict};

use super::{GUIDE_1994, MICHIGAN, MISSOURI, PFS, SEEN, USDA};
use crate::table::ask;

/// A page that prints how much acid goes into a jar, and the foods it prints it for.
struct AcidPage {
    issuer: &'static str,
    title: &'static str,
    place: &'static str,
    seen: &'static str,
    /// Food, pack, and a canner it has a line for.
    foods: &'static [(&'static str, &'static str, CannerKind)],
    doses: &'static [Dose],
}

/// One line of such a page: enough of any one of the three. `None` where the page does not print it.
struct Dose {
    jar: &'static str,
    lemon_tbsp: Option<f64>,
    citric_tsp: Option<f64>,
    vinegar_tbsp: Option<f64>,
}

/// What the whole, crushed and juiced tomatoes take, as each of the three pages prints it.
const QUART: Dose =
    Dose { jar: "quart", lemon_tbsp: Some(2.0), citric_tsp: Some(0.5), vinegar_tbsp: Some(4.0) };
const PINT: Dose = Dose { jar: "pint", lemon_tbsp: Some(1.0), citric_tsp: Some(0.25), vinegar_tbsp: None };

const PAGES: &[AcidPage] = &[
    AcidPage {
        issuer: MISSOURI,
        title: "GH1456, How to Can Fresh Tomato Products",
        place: "extension.missouri.edu/publications/gh1456, opening paragraphs",
        seen: SEEN,
        foods: &[
            ("tomatoes-whole-water", "hot", CannerKind::BoilingWater),
            ("tomatoes-crushed", "hot", CannerKind::BoilingWater),
            ("tomato-sauce", "hot", CannerKind::BoilingWater),
        ],
        doses: &[QUART, PINT],
    },
    AcidPage {
        issuer: MICHIGAN,
        title: PFS,
        place: "file 01600830, Tomatoes, crushed",
        seen: SEEN,
        foods: &[("tomatoes-crushed", "hot", CannerKind::Dial)],
        doses: &[QUART, PINT],
    },
    AcidPage {
        issuer: USDA,
        title: GUIDE_1994,
        place: "guide 3, Tomatoes, introduction, acidification",
        seen: SEEN,
        foods: &[
            ("tomatoes-whole-juice", "raw", CannerKind::BoilingWater),
            ("tomato-juice", "hot", CannerKind::Dial),
        ],
        doses: &[QUART, PINT],
    },
    AcidPage {
        issuer: MICHIGAN,
        title: PFS,
        place: "file 01600852, King and Dungeness crab meat",
        seen: SEEN,
        foods: &[("crab", "hot", CannerKind::Dial)],
        doses: &[
            Dose { jar: "half-pint", lemon_tbsp: Some(2.0), citric_tsp: Some(0.5), vinegar_tbsp: None },
            Dose { jar: "pint", lemon_tbsp: Some(4.0), citric_tsp: Some(1.0), vinegar_tbsp: None },
        ],
    },
];

/// How many amounts of acid the pages give.
pub const CELLS: usize = 34;

/// Source: the pages named in the list.
#[test]
fn every_amount_of_acid_seen_is_served_as_printed() {
    let almanac = Almanac::load().expect("the built-in tables load");
    let mut cells = 0;
    for page in PAGES {
        assert!(!page.issuer.is_empty() && !page.title.is_empty() && page.seen.len() == "2026-11-25".len());
        for (food, pack, canner) in page.foods {
            for dose in page.doses {
                let clearance = ask(&almanac, food, pack, dose.jar, *canner, 900);
                assert_eq!(clearance.verdict, Verdict::Tested, "{}: {food} {}", page.place, dose.jar);
                let acid = clearance.acid.unwrap_or_else(|| panic!("{food} is served without its acid"));
                let rule = acid.rule();
                let served = [
                    (dose.lemon_tbsp, rule.lemon.map(measure::Volume::as_tablespoons)),
                    (dose.citric_tsp, rule.citric.map(measure::Volume::as_teaspoons)),
                    (dose.vinegar_tbsp, rule.vinegar.map(measure::Volume::as_tablespoons)),
                ];
                for (printed, served) in
                    served.into_iter().filter_map(|(printed, served)| Some((printed?, served)))
                {
                    let served =
                        served.unwrap_or_else(|| panic!("{}: an acid of {food} is not served", page.place));
                    assert!((served - printed).abs() < 1e-9, "{}: {food} {}: {served}", page.place, dose.jar);
                    cells += 1;
                }
            }
        }
    }
    assert_eq!(cells, CELLS);
}
