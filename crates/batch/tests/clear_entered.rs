//! A process copied by the household is shown as entered, never called tested, and never shorter than print.

use almanac::{Almanac, Band, CannerKind, JarSize, Pack, ProductId, Verdict};
use batch::clear::{Because, ClearQuestion, Clearance, Entered, EnteredBand, clear_entered};
use measure::{Altitude, Minutes};

fn ask(food: &str, canner: CannerKind, minutes: u32, year: u16) -> Clearance {
    let almanac = Almanac::load().expect("the built-in tables load");
    let question = ClearQuestion {
        product: ProductId::from(food),
        pack: Pack::Hot,
        jar: JarSize::Pint,
        canner,
        altitude: Altitude::feet(1200),
        gauge: None,
        formula: None,
        changes: Vec::new(),
    };
    let entered = Entered {
        title: "A Canning Leaflet".to_owned(),
        year,
        page: "7".to_owned(),
        bands: vec![EnteredBand {
            band: Band { min: Altitude::feet(1001), max: Some(Altitude::feet(3000)) },
            minutes: Minutes(minutes),
        }],
    };
    clear_entered(&almanac, &question, entered).expect("a question that can be judged")
}

#[test]
fn what_was_entered_is_shown_and_not_called_tested() {
    let shown = ask("applesauce", CannerKind::BoilingWater, 20, 2015);
    assert_eq!(shown.verdict, Verdict::NotTested);
    assert!(shown.processes.is_empty() && shown.acid.is_none());
    assert_eq!(shown.because.last().map(|reason| reason.code), Some(Because::EnteredByYou));
    let said = serde_json::to_value(&shown).expect("an answer can be written");
    assert_eq!(said["entered"]["bands"][0]["minutes"], 20);
    assert_eq!(said["entered"]["bands"][0]["band_ft"], serde_json::json!([1001, 3000]));
    assert_eq!(said["entered"]["page"], "7");
}

#[test]
fn fewer_minutes_than_printed_are_not_shown() {
    let refused = ask("applesauce", CannerKind::BoilingWater, 19, 2015);
    assert_eq!(refused.verdict, Verdict::NotTested);
    assert_eq!(refused.entered, None);
}

#[test]
fn a_publication_of_before_1994_is_not_taken() {
    assert_eq!(ask("applesauce", CannerKind::BoilingWater, 20, 1993).entered, None);
    assert!(ask("applesauce", CannerKind::BoilingWater, 20, 1994).entered.is_some());
}

#[test]
fn what_is_barred_stays_barred() {
    let barred = ask("beets", CannerKind::BoilingWater, 300, 2015);
    assert_eq!(barred.verdict, Verdict::DoNot);
    assert_eq!(barred.entered, None);
}
