//! What stays the same in a house from day to day, as far as the question of a process needs it: the height above
//! the sea and the register of canners with their gauges.

mod register;

use almanac::CannerKind;
use batch::clear::Tested;
use jiff::civil::Date;
use measure::{Altitude, Pressure};

use crate::ask::{ClearWords, read_canner};
use crate::day::Canner;
use crate::gauge;

pub use register::{CannerSheet, Capacity, GaugeSheet, Register, list_canners};

/// A house file as far as it is read here.
#[derive(Debug, Clone)]
pub struct House {
    /// The kitchen's height above the sea.
    pub altitude: Option<Altitude>,
    /// The canners.
    pub canners: Vec<Canner>,
}

impl House {
    /// The canner that a word means: its name, or a kind of which the house has one only.
    #[must_use]
    pub fn find_canner(&self, typed: &str) -> Option<&Canner> {
        let by_name = self.canners.iter().find(|canner| canner.id.eq_ignore_ascii_case(typed.trim()));
        by_name.or_else(|| {
            let kind = read_canner(Some(typed)).ok()?;
            let mut of_kind = self.canners.iter().filter(|canner| canner.kind == kind);
            of_kind.next().filter(|_| of_kind.next().is_none())
        })
    }
}

/// The question with what the house knows: the canner by its name, its gauge, the altitude. What was said in the
/// question itself stays.
#[must_use]
pub fn fill_in_house(words: ClearWords, house: &House, today: Date) -> ClearWords {
    let canner = words.canner.as_deref().and_then(|typed| house.find_canner(typed));
    let altitude = words.altitude.or_else(|| house.altitude.map(|height| format!("{} ft", height.as_feet())));
    let Some(canner) = canner else { return ClearWords { altitude, ..words } };
    let is_dial = canner.kind == CannerKind::Dial;
    let error = canner.gauge_error.filter(|_| is_dial).map(word_error);
    let tested = gauge::of_canner(canner, today).and_then(|gauge| word_tested(gauge.tested));
    ClearWords {
        canner: Some(canner.kind.to_string()),
        gauge_error: words.gauge_error.or(error),
        gauge_tested: words.gauge_tested.or_else(|| tested.map(str::to_owned)),
        altitude,
        ..words
    }
}

/// An error as a gauge test writes it.
fn word_error(error: Pressure) -> String {
    format!("{:+} psi", error.as_psi())
}

fn word_tested(tested: Tested) -> Option<&'static str> {
    match tested {
        Tested::WithinTheYear => Some("this-year"),
        Tested::Overdue => Some("overdue"),
        Tested::Never => Some("never"),
        Tested::NotSaid => None,
    }
}
