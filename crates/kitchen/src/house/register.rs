//! The register of canners: what each holds, what its gauge is worth, and what to hold for a process.

use almanac::{Almanac, CannerKind, Citation, JarSize};
use batch::clear::Tested;
use jiff::Span;
use jiff::civil::Date;
use measure::Pressure;
use serde::ser::SerializeStruct as _;
use serde::{Serialize, Serializer};

use super::{House, fill_in_house};
use crate::ask::{AskError, ClearAnswer, ClearWords, clear};
use crate::day::Canner;
use crate::gauge;
use crate::load::Said;

/// Days that a yearly test lasts.
const TEST_LASTS_DAYS: i32 = 365;

/// Every canner of a house on a date: `canners/1`.
#[derive(Debug, Clone, PartialEq)]
pub struct Register {
    /// The date.
    pub today: Date,
    /// The canners in the order of the file.
    pub canners: Vec<CannerSheet>,
}

/// One canner.
#[derive(Debug, Clone, PartialEq)]
pub struct CannerSheet {
    /// As the house names it.
    pub name: String,
    /// What kind it is.
    pub kind: CannerKind,
    /// How many jars of a size go in at once.
    pub holds: Vec<Capacity>,
    /// Its gauge; `None` where it has no dial.
    pub gauge: Option<GaugeSheet>,
    /// What is to be known of it.
    pub says: Vec<Said>,
    /// Whether a process may be asked for it and what to hold; `None` where no food was named.
    pub process: Option<ClearAnswer>,
}

/// How many jars of a size a canner holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct Capacity {
    /// The size.
    #[serde(serialize_with = "write_jar")]
    pub jar: JarSize,
    /// As the owner found it; `None` where nobody has tried.
    pub found: Option<u32>,
    /// As printed for a canner of the usual size, the smaller figure; `None` where none is.
    pub printed: Option<u32>,
}

/// A dial gauge.
#[derive(Debug, Clone, PartialEq)]
pub struct GaugeSheet {
    /// How far it reads high (above zero) or low, as its last test found.
    pub error: Option<Pressure>,
    /// When it was last tested.
    pub tested: Option<Date>,
    /// The last day that test is good for.
    pub due: Option<Date>,
    /// Whether it was never tested, or the test is older than a year.
    pub is_overdue: bool,
    /// Whether it is off by so much that it is replaced, by the stricter printed threshold.
    pub is_to_replace: bool,
}

/// Lists the canners of a house; with the words of a food, also what each is to hold for it.
///
/// # Errors
///
/// As for [`clear`], when the words of the food cannot be read.
pub fn list_canners(
    almanac: &Almanac,
    house: &House,
    today: Date,
    food: Option<&ClearWords>,
) -> Result<Register, AskError> {
    let sheet = |canner: &Canner| {
        let asked = food.map(|words| {
            let words = ClearWords { canner: Some(canner.id.clone()), ..words.clone() };
            clear(almanac, &fill_in_house(words, house, today))
        });
        let gauge = read_gauge(almanac, canner, today);
        Ok(CannerSheet {
            name: canner.id.clone(),
            kind: canner.kind,
            holds: read_holds(almanac, canner),
            says: say_of_gauge(almanac, canner.kind, gauge.as_ref()),
            gauge,
            process: asked.transpose()?,
        })
    };
    Ok(Register { today, canners: house.canners.iter().map(sheet).collect::<Result<_, AskError>>()? })
}

fn read_holds(almanac: &Almanac, canner: &Canner) -> Vec<Capacity> {
    let printed = |jar: JarSize| {
        let jar = almanac.jar(jar)?;
        let load = if canner.kind.is_pressure() { jar.pressure_load } else { jar.boiling_water_load };
        load.map(|load| load.low)
    };
    let found = |jar: JarSize| canner.holds.iter().find(|(size, _)| *size == jar).map(|(_, count)| *count);
    let sizes = JarSize::ALL.iter().copied();
    let all = sizes.map(|jar| Capacity { jar, found: found(jar), printed: printed(jar) });
    all.filter(|capacity| capacity.found.or(capacity.printed).is_some()).collect()
}

fn read_gauge(almanac: &Almanac, canner: &Canner, today: Date) -> Option<GaugeSheet> {
    let found = gauge::of_canner(canner, today)?;
    let due = canner.gauge_tested.and_then(|date| date.checked_add(Span::new().days(TEST_LASTS_DAYS)).ok());
    let off = found.error.map_or(0.0, |error| error.as_psi().abs());
    // Without the threshold nobody can say how far is too far, so any error is.
    let limit = threshold(almanac).map_or(0.0, |(limit, _)| limit.as_psi());
    Some(GaugeSheet {
        error: found.error,
        tested: canner.gauge_tested,
        due,
        is_overdue: found.tested != Tested::WithinTheYear,
        is_to_replace: off > 0.0 && off >= limit,
    })
}

/// The stricter printed threshold, which is used.
fn threshold(almanac: &Almanac) -> Option<(Pressure, &Citation)> {
    let rule = almanac.rule("gauge-threshold-used")?;
    Some((rule.value?.as_pressure()?.0, &rule.citation))
}

fn say_of_gauge(almanac: &Almanac, kind: CannerKind, gauge: Option<&GaugeSheet>) -> Vec<Said> {
    let mut says = Vec::new();
    let mut say = |rule: &str, text: String| {
        let citation = almanac.rule(rule).map(|rule| rule.citation.clone());
        says.push(Said { text, citation });
    };
    if kind == CannerKind::Weighted {
        say(
            "gauge-weighted",
            "A weight needs no test and is never corrected; the altitude step counts.".into(),
        );
    }
    let Some(gauge) = gauge else { return says };
    match (gauge.tested, gauge.is_overdue) {
        (None, _) => say(
            "gauge-untested",
            "Never tested as far as the register knows: no process until it is tested. Ask your extension office."
                .into(),
        ),
        (Some(tested), true) => say(
            "gauge-untested",
            format!("Overdue: last tested {tested}. No process until it is tested. Ask your extension office."),
        ),
        (Some(tested), false) => say("pc-gauge-check", format!("Tested {tested}; a test counts for a year.")),
    }
    say_of_error(almanac, gauge, &mut say);
    says
}

fn say_of_error(almanac: &Almanac, gauge: &GaugeSheet, say: &mut impl FnMut(&str, String)) {
    let Some(error) = gauge.error else {
        say(
            "gauge-test-when",
            "What the test found is not in the register: write gauge_error beside it.".into(),
        );
        return;
    };
    let off = error.as_psi().abs();
    if gauge.is_to_replace {
        match threshold(almanac) {
            Some((limit, _)) => say(
                "gauge-replace-1",
                format!(
                    "Off by {off} psi. At {} psi or more it is replaced and no process is given on it: the stricter of \
                     two printed thresholds.",
                    limit.as_psi()
                ),
            ),
            None => {
                say("", "No rule on file says how far a dial may be off: no process is given on it.".into())
            }
        }
        if let Some((looser, _)) =
            almanac.rule("gauge-replace-over-2").and_then(|rule| rule.value?.as_pressure())
        {
            say(
                "gauge-replace-over-2",
                format!(
                    "The looser threshold, printed in 2024: replaced when off by more than {} psi. It is shown and not \
                     used.",
                    looser.as_psi()
                ),
            );
        }
    } else if error > Pressure::ZERO {
        say(
            "gauge-reads-high",
            format!(
                "Reads {off} psi high: hold the printed reading and {off} psi more, up to the next whole pound."
            ),
        );
    } else if error < Pressure::ZERO {
        say(
            "gauge-reads-low",
            format!("Reads {off} psi low: hold the printed reading. Nothing is taken off, ever."),
        );
    } else {
        say("pc-gauge-check", "The test found no error: hold the printed reading.".into());
    }
}

fn write_jar<S: Serializer>(jar: &JarSize, to: S) -> Result<S::Ok, S::Error> {
    to.serialize_str(jar.as_str())
}

impl Serialize for Register {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let mut keys = to.serialize_struct("Register", 3)?;
        keys.serialize_field("format", "canners/1")?;
        keys.serialize_field("today", &self.today.to_string())?;
        keys.serialize_field("canners", &self.canners)?;
        keys.end()
    }
}

impl Serialize for CannerSheet {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let mut keys = to.serialize_struct("Canner", 6)?;
        keys.serialize_field("name", &self.name)?;
        keys.serialize_field("kind", self.kind.as_str())?;
        keys.serialize_field("holds", &self.holds)?;
        keys.serialize_field("gauge", &self.gauge)?;
        keys.serialize_field("says", &self.says)?;
        keys.serialize_field("process", &self.process)?;
        keys.end()
    }
}

impl Serialize for GaugeSheet {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let mut keys = to.serialize_struct("Gauge", 5)?;
        keys.serialize_field("error_psi", &self.error.map(|error| error.as_psi()))?;
        keys.serialize_field("tested", &self.tested.map(|date| date.to_string()))?;
        keys.serialize_field("due", &self.due.map(|date| date.to_string()))?;
        keys.serialize_field("overdue", &self.is_overdue)?;
        keys.serialize_field("replace", &self.is_to_replace)?;
        keys.end()
    }
}
