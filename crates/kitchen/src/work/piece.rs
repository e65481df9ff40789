//! A line of a formula as a piece of work with a length.

use almanac::{
    Action, Almanac, Attention, CannerKind, Care, Equipment as Tool, Formula, FormulaStep, Pack, StepMinutes,
};

use dayplan::Spread;
use measure::Mass;

use super::duration::{self, Lot};
use super::title::{self, Called};

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
    /// How long it may really take, where its length is a guess.
    pub(crate) spread: Option<Spread>,
    /// For a piece that needs nobody: how much longer it may go on.
    pub(crate) slack: u32,
    pub(crate) attention: Attention,
    pub(crate) care: Care,
    pub(crate) tool: Tool,
    /// Minutes that may pass before the next piece, where they are printed.
    pub(crate) may_wait: Option<u32>,
    pub(crate) note: String,
    /// What the piece is called where its verb and object would read badly; the canner's lines are the same for all.
    pub(crate) title: Option<Called>,
    /// The produce it handles, for hand work on produce: which ingredient of the batch, and its weight.
    pub(crate) handles: Vec<(usize, Mass)>,
}

impl Piece {
    /// Whether it is hand work on produce: cutting board and sink, no heat.
    pub(crate) fn is_produce_work(&self) -> bool {
        self.attention == Attention::Hands
            && matches!(
                self.action,
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
                    | Action::Crush
            )
    }

    /// The piece in its own words.
    pub(crate) fn said(&self) -> String {
        let own = self.title.as_ref().filter(|_| title::begins_with_a_verb(&self.what));
        own.map_or_else(|| format!("{} {}", self.action.as_str(), self.what), |title| title.full.clone())
    }
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
        let from_cold = !hot && line.minutes.is_some() && comes_to_the_boil(line, phase);
        if from_cold {
            piece.minutes += duration::come_up_minutes(almanac, lot.spoken_of(&line.what));
        }
        if piece.title.is_none() && phase == Phase::Head {
            piece.title = title::timed(line, &piece.what, from_cold);
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
    let mut piece = Piece {
        phase,
        action: line.action,
        what: lot.in_their_words(&line.what),
        minutes,
        spread: is_guessed(line, way).then(|| duration::spread_minutes(almanac, line, lot)).flatten(),
        slack,
        attention: attention_of(line),
        care: line.care,
        tool: duration::tool_used(line, lot),
        may_wait: line.can_wait.map(|wait| wait.0),
        note: line.note.to_string(),
        title: title::title_of(line, lot, way, phase),
        handles: vec![],
    };
    if phase == Phase::Head && piece.is_produce_work() {
        let masses = lot.lines_spoken_of(&line.what).into_iter().map(|at| (at, lot.produce[at].mass));
        piece.handles = masses.collect();
    }
    piece
}

/// Whether the length of a line is a guess of ours: what is printed, and what a process takes, is no guess.
fn is_guessed(line: &FormulaStep, way: &Way) -> bool {
    let timed = matches!(line.action, Action::Process) && way.process.is_some();
    line.minutes.is_none() && !timed
}

/// Who is needed: a pot that is fed lot by lot takes hands whatever the line says, what only stands takes a look.
fn attention_of(line: &FormulaStep) -> Attention {
    match line.action {
        _ if duration::goes_by_lots(line) => Attention::Hands,
        Action::Stand if line.equipment == Tool::Sink => Attention::Eyes,
        _ => line.attention,
    }
}

/// Planned minutes, and how much longer a rest may go on.
fn length_of(almanac: &Almanac, line: &FormulaStep, lot: &Lot, way: &Way, phase: Phase) -> (u32, u32) {
    match (line.action, line.minutes.map(StepMinutes::round_up), way) {
        (Action::Process, _, Way { process: Some((_, minutes)), .. }) => (*minutes, 0),
        (Action::Sterilize, _, Way { sterilize_min: Some(minutes), .. }) => (*minutes, 0),
        (Action::Blanch | Action::Steam | Action::Dip, _, _) => {
            (duration::plan_minutes(almanac, line, lot), 0)
        }
        // A printed minute is for one filling of the blender.
        (Action::Blend, Some((_, most)), _) => (duration::plan_minutes(almanac, line, lot).max(most.0), 0),
        // What goes on by itself is planned at its shortest and may go on to its longest.
        (_, Some((least, most)), _) if line.attention == Attention::None && phase != Phase::InCanner => {
            (least.0, most.0 - least.0)
        }
        (_, Some((_, most)), _) => (most.0, 0),
        (_, None, _) => (duration::plan_minutes(almanac, line, lot), 0),
    }
}
