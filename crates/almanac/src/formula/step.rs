//! What is done, in order: by whom it must be watched, with what, and how long it may wait.

use measure::{Fraction, Minutes, Temp};

use crate::FormulaId;
use crate::closed_list::closed_list;
use crate::row::{Reading, Row};
use crate::source::Citation;
use crate::tables::Table;

closed_list!(
    /// What is done in a step.
    Action {
        /// Bring up to heat.
        Heat = "heat",
        /// Wash.
        Wash = "wash",
        /// Slice.
        Slice = "slice",
        /// Mix.
        Mix = "mix",
        /// Soak.
        Soak = "soak",
        /// Rinse.
        Rinse = "rinse",
        /// Drain.
        Drain = "drain",
        /// Pack into containers.
        Pack = "pack",
        /// Keep at the boil.
        Boil = "boil",
        /// Fill jars.
        Fill = "fill",
        /// Free bubbles.
        Debubble = "debubble",
        /// Close jars.
        Close = "close",
        /// Load the canner.
        Load = "load",
        /// Run the process.
        Process = "process",
        /// Let stand in the canner, heat off.
        Rest = "rest",
        /// Lift jars out.
        Lift = "lift",
        /// Let cool.
        Cool = "cool",
        /// Check seals.
        Check = "check",
        /// Cut up.
        Cut = "cut",
        /// Blister skins.
        Blister = "blister",
        /// Let stand.
        Stand = "stand",
        /// Peel.
        Peel = "peel",
        /// Keep just below the boil.
        Simmer = "simmer",
        /// Skim foam.
        Skim = "skim",
        /// Boil empty jars.
        Sterilize = "sterilize",
        /// Take the seeds out.
        Seed = "seed",
        /// Chop.
        Chop = "chop",
        /// Trim.
        Trim = "trim",
        /// Chill.
        Chill = "chill",
        /// Dip into boiling water.
        Dip = "dip",
        /// Shred.
        Shred = "shred",
        /// Keep in the refrigerator.
        Refrigerate = "refrigerate",
        /// Husk.
        Husk = "husk",
        /// Core.
        Core = "core",
        /// Vent the pressure canner.
        Vent = "vent",
        /// Put through a sieve.
        Sieve = "sieve",
        /// Blend.
        Blend = "blend",
        /// Put acid into each jar.
        Acidify = "acidify",
        /// Fry gently.
        Saute = "saute",
        /// Cook.
        Cook = "cook",
        /// Strain through a bag.
        Strain = "strain",
        /// Crush.
        Crush = "crush",
        /// Take off stems.
        Stem = "stem",
        /// Label.
        Label = "label",
        /// Freeze.
        Freeze = "freeze",
        /// Ferment.
        Ferment = "ferment",
        /// Layer.
        Layer = "layer",
        /// Steam.
        Steam = "steam",
        /// Pit.
        Pit = "pit",
        /// Dry.
        Dry = "dry",
        /// Blanch.
        Blanch = "blanch",
        /// Prick.
        Prick = "prick",
        /// Spread out.
        Spread = "spread",
        /// Even out the moisture of dried food.
        Condition = "condition",
        /// Shell.
        Shell = "shell",
    }
);

closed_list!(
    /// What a step asks of a person.
    Attention {
        /// Somebody works at it.
        Hands = "hands",
        /// Somebody looks at it and stirs now and then.
        Eyes = "eyes",
        /// It may be left.
        None = "none",
    }
);

closed_list!(
    /// How dangerous it is to be tired at it.
    Care {
        /// Any work.
        Ordinary = "ordinary",
        /// Hot sugar, hot glass, oil, lime, pressure: the note says which.
        Careful = "careful",
    }
);

closed_list!(
    /// What a step occupies.
    Equipment {
        /// A canner, with the burner under it.
        Canner = "canner",
        /// The sink.
        Sink = "sink",
        /// A board and knife, or a food processor.
        Processor = "processor",
        /// A bowl.
        Bowl = "bowl",
        /// Room in the refrigerator.
        Refrigerator = "refrigerator",
        /// Nothing that runs short.
        None = "none",
        /// A big pot, with the burner under it.
        Kettle = "kettle",
        /// The oven.
        Oven = "oven",
        /// A small pan, with the burner under it.
        Burner = "burner",
        /// A blender.
        Blender = "blender",
        /// A jelly bag.
        JellyBag = "jelly-bag",
        /// A dehydrator.
        Dehydrator = "dehydrator",
    }
);

/// How long a step takes, as published.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct StepMinutes {
    /// At the least, in minutes.
    pub low: Fraction,
    /// At the most, in minutes.
    pub high: Fraction,
}

impl StepMinutes {
    /// Both ends in whole minutes, a part of a minute counted as one.
    #[must_use]
    pub fn round_up(self) -> (Minutes, Minutes) {
        // Never overflows: the tables hold no negative times, and a fraction's whole part fits in 32 bits.
        let whole = |minutes: Fraction| Minutes(minutes.to_f64().ceil() as u32);
        (whole(self.low), whole(self.high))
    }
}

/// A temperature or a range of them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TempRange {
    /// The lower end.
    pub low: Temp,
    /// The upper end; the same when one temperature is printed.
    pub high: Temp,
}

/// One step of a formula.
#[derive(Debug, Clone, PartialEq)]
pub struct FormulaStep {
    /// Its place, from 1.
    pub order: u32,
    /// What is done.
    pub action: Action,
    /// To what.
    pub what: Box<str>,
    /// How long; none when nothing is published.
    pub minutes: Option<StepMinutes>,
    /// How hot.
    pub temp: Option<TempRange>,
    /// What it asks of a person.
    pub attention: Attention,
    /// What it occupies.
    pub equipment: Equipment,
    /// How long the next step may wait; none when no limit is known.
    pub can_wait: Option<Minutes>,
    /// What else to mind.
    pub note: Box<str>,
    /// Whether tired people should leave it.
    pub care: Care,
    /// Where it is printed.
    pub citation: Citation,
}

impl FormulaStep {
    /// Whether the step stands in place of the one before it.
    #[must_use]
    pub fn is_alternative(&self) -> bool {
        self.note.starts_with("alternative")
    }
}

/// Reads `steps.csv`.
pub(crate) fn read_steps(reading: &mut Reading<'_>) -> Vec<(u64, FormulaId, FormulaStep)> {
    const COLUMNS: &[&str] = &[
        "formula_id",
        "order",
        "action",
        "what",
        "minutes_min",
        "minutes_max",
        "temp_F",
        "attention",
        "equipment",
        "can_wait_max_min",
        "note",
        "care",
        "source_id",
        "locator",
        "basis",
    ];
    reading.rows(Table::Steps, COLUMNS, |row| {
        let formula = row.id("formula_id");
        let step = FormulaStep {
            order: row.count("order"),
            action: row.word("action"),
            what: row.text("what").into(),
            minutes: minutes_of(row),
            temp: row.range("temp_F").map(|(low, high)| TempRange {
                low: Temp::fahrenheit(low.into()),
                high: Temp::fahrenheit(high.into()),
            }),
            attention: row.word("attention"),
            equipment: row.word("equipment"),
            can_wait: row.maybe_count("can_wait_max_min").map(Minutes),
            note: row.free_text("note"),
            care: row.word("care"),
            citation: row.citation(),
        };
        (row.line(), formula, step)
    })
}

fn minutes_of(row: &mut Row<'_>) -> Option<StepMinutes> {
    let low = row.maybe_fraction("minutes_min");
    let high = row.maybe_fraction("minutes_max");
    if low.is_some() != high.is_some() || low > high {
        let what = "minutes_min and minutes_max are no range".to_owned();
        row.contradict(what);
    }
    Some(StepMinutes { low: low?, high: high? })
}
