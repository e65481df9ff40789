//! A line of a formula as a piece of work with a length.

use almanac::{
    Action, Almanac, Attention, CannerKind, Care, Equipment as Tool, Formula, FormulaStep, Pack, StepMinutes,
};

use super::duration::{self, Lot};
use crate::tell::words;

/// Where in the life of a batch a piece belongs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Phase {
    /// Runs beside the others: jars and canner water are kept hot.
    Beside,
    /// Washing, cutting, cooking, filling, up to the loaded canner or the packed container.
    Head,
    /// Between the loaded canner and the lifted jars.
    InCanner,
    /// From the lifted jars on.
    After,
}

/// One piece of work.
#[derive(Debug, Clone)]
pub(crate) struct Piece {
    pub(crate) phase: Phase,
    pub(crate) action: Action,
    pub(crate) what: String,
    pub(crate) minutes: u32,
    /// For a piece that needs nobody: how much longer it may go on.
    pub(crate) slack: u32,
    pub(crate) attention: Attention,
    pub(crate) care: Care,
    pub(crate) tool: Tool,
    /// Minutes that may pass before the next piece, where they are printed.
    pub(crate) may_wait: Option<u32>,
    pub(crate) note: String,
    /// What the piece is called where its verb and object would read badly; the canner's lines are the same for all.
    pub(crate) title: Option<String>,
    /// The weight of produce it handles, in words, for hand work on produce.
    pub(crate) handles: Option<String>,
}

/// What decides which lines of a formula are done.
#[derive(Debug, Clone)]
pub(crate) struct Way {
    /// The pack, for what is canned.
    pub(crate) pack: Option<Pack>,
    /// The canner and the minutes of the process, for what is canned.
    pub(crate) process: Option<(CannerKind, u32)>,
    /// What the process is held at, in words: "a full rolling boil", "12 lb on the dial".
    pub(crate) held_at: String,
    /// Headspace in words.
    pub(crate) headspace: Option<String>,
    /// Minutes that empty jars are boiled, where they must be.
    pub(crate) sterilize_min: Option<u32>,
}

/// The pieces of one batch, in the working order of the formula.
pub(crate) fn pieces_of(almanac: &Almanac, formula: &Formula, lot: &Lot, way: &Way) -> Vec<Piece> {
    let lines: Vec<&FormulaStep> = lines_done(formula, way).collect();
    let loaded = lines.iter().position(|line| line.action == Action::Load);
    let lifted = lines.iter().position(|line| line.action == Action::Lift);
    let mut pieces = Vec::new();
    let mut hot = false;
    for (at, line) in lines.into_iter().enumerate() {
        let phase = if line.note.starts_with("runs beside") {
            Phase::Beside
        } else if lifted.is_some_and(|lift| at > lift) {
            Phase::After
        } else if loaded.is_some_and(|load| at > load) {
            Phase::InCanner
        } else {
            Phase::Head
        };
        let mut piece = piece_of(almanac, line, lot, way, phase);
        // Printed minutes count from the boil; a cold pot has to come to it first.
        if !hot && line.minutes.is_some() && comes_to_the_boil(line, phase) {
            piece.minutes += duration::come_up_minutes(almanac, lot.spoken_of(&line.what));
        }
        hot = line.equipment == Tool::Kettle;
        pieces.push(piece);
    }
    pieces
}

/// Whether a line boils or simmers something in a pot.
fn comes_to_the_boil(line: &FormulaStep, phase: Phase) -> bool {
    phase == Phase::Head
        && matches!(line.equipment, Tool::Kettle | Tool::Burner)
        && matches!(line.action, Action::Boil | Action::Simmer | Action::Cook)
}

/// The lines that are done this way: no alternatives, no canning of what is not canned, one pack.
fn lines_done<'a>(formula: &'a Formula, way: &'a Way) -> impl Iterator<Item = &'a FormulaStep> {
    formula.steps.iter().filter(move |line| {
        let is_alternative = line.note.contains("alternative");
        let only_canned = line.note.contains("only if the ferment is canned") && way.process.is_none();
        let other_pack = line.note.contains("hot pack only") && way.pack == Some(Pack::Raw);
        let unneeded_sterilizing = line.action == Action::Sterilize && way.sterilize_min.is_none();
        !(is_alternative || only_canned || other_pack || unneeded_sterilizing)
    })
}

/// One line with its length.
fn piece_of(almanac: &Almanac, line: &FormulaStep, lot: &Lot, way: &Way, phase: Phase) -> Piece {
    let (minutes, slack) = length_of(almanac, line, lot, way, phase);
    let by_lots = line.action == Action::Blanch;
    Piece {
        phase,
        action: line.action,
        what: lot.in_their_words(&line.what),
        minutes,
        slack,
        attention: if by_lots { Attention::Hands } else { line.attention },
        care: line.care,
        tool: if line.equipment == Tool::Processor && !lot.processor { Tool::None } else { line.equipment },
        may_wait: line.can_wait.map(|wait| wait.0),
        note: line.note.to_string(),
        title: title_of(line, lot, way, phase),
        handles: handles(line, phase).then(|| words::weight(lot.units, lot.spoken_of(&line.what))),
    }
}

/// Planned minutes, and how much longer a rest may go on.
fn length_of(almanac: &Almanac, line: &FormulaStep, lot: &Lot, way: &Way, phase: Phase) -> (u32, u32) {
    match (line.action, line.minutes.map(StepMinutes::round_up), way) {
        (Action::Process, _, Way { process: Some((_, minutes)), .. }) => (*minutes, 0),
        (Action::Sterilize, _, Way { sterilize_min: Some(minutes), .. }) => (*minutes, 0),
        (Action::Blanch | Action::Dip, _, _) => (duration::plan_minutes(almanac, line, lot), 0),
        // What goes on by itself is planned at its shortest and may go on to its longest.
        (_, Some((least, most)), _) if line.attention == Attention::None && phase == Phase::Head => {
            (least.0, most.0 - least.0)
        }
        (_, Some((_, most)), _) => (most.0, 0),
        (_, None, _) => (duration::plan_minutes(almanac, line, lot), 0),
    }
}

/// Whether a line is hand work on produce, told with its weight.
fn handles(line: &FormulaStep, phase: Phase) -> bool {
    phase == Phase::Head
        && line.attention == Attention::Hands
        && matches!(
            line.action,
            Action::Wash
                | Action::Trim
                | Action::Peel
                | Action::Core
                | Action::Slice
                | Action::Chop
                | Action::Shred
                | Action::Cut
                | Action::Pit
                | Action::Stem
                | Action::Seed
                | Action::Husk
                | Action::Shell
        )
}

/// What a line is called where its verb and object would not read well together.
fn title_of(line: &FormulaStep, lot: &Lot, way: &Way, phase: Phase) -> Option<String> {
    let vessels = &lot.vessels;
    let under_pressure = way.process.is_some_and(|(kind, _)| kind.is_pressure());
    let said = match (line.action, phase) {
        (Action::Acidify, _) => "acid into each jar".to_owned(),
        (Action::Fill, _) => {
            let headspace =
                way.headspace.as_ref().map_or_else(String::new, |space| format!(", headspace {space}"));
            if line.what.contains("over") {
                format!("pour the boiling liquid into {vessels}{headspace}")
            } else {
                format!("fill {vessels}{headspace}")
            }
        }
        (Action::Debubble, _) => "bubbles out".to_owned(),
        (Action::Close, _) => "rims wiped, lids and bands on".to_owned(),
        (Action::Load, _) => "load the canner".to_owned(),
        (Action::Heat, Phase::InCanner) if !under_pressure => {
            "bring the loaded canner to a full boil".to_owned()
        }
        (Action::Heat, Phase::InCanner) if line.what.contains("steam") => {
            "bring the canner to steam".to_owned()
        }
        (Action::Heat, Phase::InCanner) => "weight on, bring it to pressure".to_owned(),
        (Action::Vent, _) => format!("vent {} min", line.minutes.map_or(0, |minutes| minutes.round_up().1.0)),
        (Action::Process, _) => {
            let minutes = way.process.map_or(0, |(_, minutes)| minutes);
            format!("process {vessels} {minutes} min at {}", way.held_at)
        }
        (Action::Rest, Phase::InCanner) => "heat off, lid off, let them stand".to_owned(),
        (Action::Stand, Phase::InCanner) if line.what.contains("pressure") => {
            "heat off; let the pressure fall by itself".to_owned()
        }
        (Action::Stand, Phase::InCanner) => "weight off, lid on, wait".to_owned(),
        (Action::Lift, _) => format!("lift {vessels} out onto a towel"),
        (Action::Label, _) => "label".to_owned(),
        _ if begins_with_a_verb(&line.what) => lot.in_their_words(&line.what),
        (Action::Stand, Phase::Head) => format!("let stand: {}", lot.in_their_words(&line.what)),
        _ => return None,
    };
    Some(said)
}

/// Whether the object of a line already says what to do.
fn begins_with_a_verb(what: &str) -> bool {
    const VERBS: [&str; 15] = [
        "add", "preheat", "crush", "throw", "take", "slip", "drip", "drain", "squeeze", "press", "slit",
        "discard", "measure", "peel", "strain",
    ];
    what.split(|letter: char| !letter.is_alphabetic()).next().is_some_and(|word| VERBS.contains(&word))
}
