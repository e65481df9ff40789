//! A line of a formula as a piece of work with a length.

use almanac::{Action, Almanac, Attention, CannerKind, Care, Equipment as Tool, Formula, FormulaStep, Pack, StepMinutes};

use super::duration::{self, Lot};

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
}

/// What decides which lines of a formula are done.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Way {
    /// The pack, for what is canned.
    pub(crate) pack: Option<Pack>,
    /// The canner and the minutes of the process, for what is canned.
    pub(crate) process: Option<(CannerKind, u32)>,
    /// Minutes that empty jars are boiled, where they must be.
    pub(crate) sterilize_min: Option<u32>,
}

/// The pieces of one batch, in the working order of the formula.
pub(crate) fn pieces_of(almanac: &Almanac, formula: &Formula, lot: &Lot, way: Way) -> Vec<Piece> {
    let lines: Vec<&FormulaStep> = lines_done(formula, way).collect();
    let loaded = lines.iter().position(|line| line.action == Action::Load);
    let lifted = lines.iter().position(|line| line.action == Action::Lift);
    let mut pieces = Vec::new();
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
        pieces.push(piece_of(almanac, line, lot, way, phase));
    }
    pieces
}

/// The lines that are done this way: no alternatives, no canning of what is not canned, one pack.
fn lines_done<'a>(formula: &'a Formula, way: Way) -> impl Iterator<Item = &'a FormulaStep> {
    formula.steps.iter().filter(move |line| {
        let is_alternative = line.note.contains("alternative");
        let only_canned = line.note.contains("only if the ferment is canned") && way.process.is_none();
        let other_pack = line.note.contains("hot pack only") && way.pack == Some(Pack::Raw);
        let unneeded_sterilizing = line.action == Action::Sterilize && way.sterilize_min.is_none();
        !(is_alternative || only_canned || other_pack || unneeded_sterilizing)
    })
}

/// One line with its length.
fn piece_of(almanac: &Almanac, line: &FormulaStep, lot: &Lot, way: Way, phase: Phase) -> Piece {
    let (minutes, slack) = match (line.action, line.minutes.map(StepMinutes::round_up), way) {
        (Action::Process, _, Way { process: Some((_, minutes)), .. }) => (minutes, 0),
        (Action::Sterilize, _, Way { sterilize_min: Some(minutes), .. }) => (minutes, 0),
        (Action::Blanch | Action::Dip, _, _) => (duration::plan_minutes(almanac, line, lot), 0),
        // What goes on by itself is planned at its shortest and may go on to its longest.
        (_, Some((least, most)), _) if line.attention == Attention::None && phase == Phase::Head => {
            (least.0, most.0 - least.0)
        }
        (_, Some((_, most)), _) => (most.0, 0),
        (_, None, _) => (duration::plan_minutes(almanac, line, lot), 0),
    };
    let by_lots = line.action == Action::Blanch;
    Piece {
        phase,
        action: line.action,
        what: line.what.to_string(),
        minutes,
        slack,
        attention: if by_lots { Attention::Hands } else { line.attention },
        care: line.care,
        tool: if line.equipment == Tool::Processor && !lot.processor { Tool::None } else { line.equipment },
        may_wait: line.can_wait.map(|wait| wait.0),
        note: line.note.to_string(),
    }
}
