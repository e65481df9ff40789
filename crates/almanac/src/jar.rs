//! Jars: their sizes, mouths, how many go into a canner, and which may take a larger one's minutes.

use measure::Volume;

use crate::closed_list::closed_list;
use crate::row::Reading;
use crate::source::Citation;
use crate::tables::Table;
use crate::{ProductId, RuleId};

closed_list!(
    /// A jar size, smallest first.
    JarSize {
        /// 4 fl oz.
        QuarterPint = "quarter-pint",
        /// 8 fl oz.
        HalfPint = "half-pint",
        /// 12 fl oz.
        TwelveOunce = "12-ounce",
        /// 16 fl oz.
        Pint = "pint",
        /// 24 fl oz.
        PintAndHalf = "pint-and-half",
        /// 28 fl oz.
        TwentyEightOunce = "28-ounce",
        /// 32 fl oz.
        Quart = "quart",
        /// 64 fl oz.
        HalfGallon = "half-gallon",
    }
);

impl JarSize {
    /// What it holds to the brim, by the definition of its name.
    #[must_use]
    pub fn volume(self) -> Volume {
        Volume::fluid_ounces(match self {
            Self::QuarterPint => 4.0,
            Self::HalfPint => 8.0,
            Self::TwelveOunce => 12.0,
            Self::Pint => 16.0,
            Self::PintAndHalf => 24.0,
            Self::TwentyEightOunce => 28.0,
            Self::Quart => 32.0,
            Self::HalfGallon => 64.0,
        })
    }
}

closed_list!(
    /// The mouth of a jar: which lid fits it.
    Mouth {
        /// 2 3/8 in.
        Regular = "regular",
        /// 3 in.
        Wide = "wide",
    }
);

/// How many jars go into a canner at once, as printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct JarLoad {
    /// The smaller printed number.
    pub low: u32,
    /// The larger printed number.
    pub high: u32,
}

/// What is known of a jar size.
#[derive(Debug, Clone, PartialEq)]
pub struct Jar {
    /// The size.
    pub size: JarSize,
    /// The millilitres printed beside it, rounded.
    pub nominal: Volume,
    /// The mouths it is sold with; none when not seen.
    pub mouths: Vec<Mouth>,
    /// The openings as printed, in inches.
    pub mouth_opening_in: Box<str>,
    /// Jars in a boiling-water canner of the usual size.
    pub boiling_water_load: Option<JarLoad>,
    /// Jars in a pressure canner of the usual size.
    pub pressure_load: Option<JarLoad>,
    /// What it may be used for.
    pub note: Box<str>,
    /// Where this stands.
    pub citation: Citation,
}

/// A printed permission to give a jar the minutes of a larger one.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct JarStep {
    pub(crate) jar: JarSize,
    pub(crate) as_jar: JarSize,
    /// Foods it is about; empty for every food that has no steps of its own.
    pub(crate) products: Vec<ProductId>,
    /// Whether it ends at the larger jar: that jar must have a line of its own.
    pub(crate) only_if_listed: bool,
    pub(crate) rule: RuleId,
}

/// Reads `jars.csv`.
pub(crate) fn read_jars(reading: &mut Reading<'_>) -> Vec<Jar> {
    const COLUMNS: &[&str] = &[
        "jar",
        "nominal_us_fl_oz",
        "nominal_ml",
        "mouths",
        "mouth_opening_in",
        "bw_canner_load",
        "pressure_canner_load",
        "use_note",
        "source_id",
        "locator",
        "basis",
    ];
    reading.rows(Table::Jars, COLUMNS, |row| {
        let size: JarSize = row.word("jar");
        let ounces = row.number("nominal_us_fl_oz");
        if (Volume::fluid_ounces(ounces).as_fluid_ounces() - size.volume().as_fluid_ounces()).abs() > 1e-9 {
            row.contradict(format!("a {size} does not hold {ounces} fl oz"));
        }
        Jar {
            size,
            nominal: Volume::millilitres(row.number("nominal_ml")),
            mouths: row.words("mouths", " and "),
            mouth_opening_in: row.free_text("mouth_opening_in"),
            boiling_water_load: row.range("bw_canner_load").map(|(low, high)| JarLoad { low, high }),
            pressure_load: row.range("pressure_canner_load").map(|(low, high)| JarLoad { low, high }),
            note: row.free_text("use_note"),
            citation: row.citation(),
        }
    })
}

/// Reads `jar_steps.csv`.
pub(crate) fn read_jar_steps(reading: &mut Reading<'_>) -> Vec<(u64, JarStep)> {
    const COLUMNS: &[&str] =
        &["jar", "as_jar", "products", "only_if_listed", "rule_id", "source_id", "locator", "basis"];
    reading.rows(Table::JarSteps, COLUMNS, |row| {
        let step = JarStep {
            jar: row.word("jar"),
            as_jar: row.word("as_jar"),
            products: match row.cell("products") {
                "any" => Vec::new(),
                _ => row.names("products"),
            },
            only_if_listed: row.yes("only_if_listed"),
            rule: row.id("rule_id"),
        };
        row.citation();
        if step.as_jar <= step.jar {
            let what = format!("a {} may not take the minutes of a {}", step.jar, step.as_jar);
            row.contradict(what);
        }
        (row.line(), step)
    })
}
