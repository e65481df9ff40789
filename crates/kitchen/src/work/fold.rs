//! Joins lines that one person does in one go, so that a day reads as acts and not as a list of verbs.

use std::collections::{BTreeMap, BTreeSet};

use almanac::{Action, Attention, Care, Equipment as Tool};
use dayplan::Spread;
use measure::Mass;

use super::piece::Piece;
use super::wording;
use crate::day::Units;
use crate::tell::words;

/// Hand work without a pot is joined up to this length; longer work is cut into parts that two people, or
/// one person between other things, can do.
const LONGEST_STRETCH: u32 = 45;

/// A weight below this is not said: nobody weighs out two cloves of garlic.
const LEAST_SAID: Mass = Mass::grams(50.0);

/// A tool that is used for no longer than this inside a longer stretch is not booked for it.
const PASSING_USE: u32 = 6;

/// Pieces done in one go.
#[derive(Debug, Clone)]
pub(crate) struct Act {
    /// The pieces, in order; never empty.
    pub(crate) pieces: Vec<Piece>,
    pub(crate) minutes: u32,
    pub(crate) slack: u32,
    pub(crate) attention: Attention,
    pub(crate) care: Care,
    pub(crate) tools: BTreeSet<Tool>,
    pub(crate) may_wait: Option<u32>,
}

impl Act {
    fn alone(piece: Piece) -> Self {
        Self {
            minutes: piece.minutes,
            slack: piece.slack,
            attention: piece.attention,
            care: piece.care,
            tools: tools_of(&piece),
            may_wait: piece.may_wait,
            pieces: vec![piece],
        }
    }

    fn join(&mut self, piece: Piece) {
        let mut tools: BTreeSet<Tool> = self.tools.union(&tools_of(&piece)).copied().collect();
        self.minutes += piece.minutes;
        self.slack = piece.slack;
        self.care = self.care.max_of(piece.care);
        self.may_wait = piece.may_wait;
        self.pieces.push(piece);
        if tools.contains(&Tool::Sink) && self.minutes_with(Tool::Sink) <= PASSING_USE {
            tools.remove(&Tool::Sink);
        }
        self.tools = tools;
    }

    /// How long it may really take: the guessed pieces by their spread, the others as planned. `None` where nothing is
    /// guessed.
    pub(crate) fn spread(&self) -> Option<Spread> {
        self.pieces.iter().any(|piece| piece.spread.is_some()).then(|| {
            let of = |pick: fn(Spread) -> u32| {
                self.pieces.iter().map(|piece| piece.spread.map_or(piece.minutes, pick)).sum()
            };
            Spread { low: of(|s| s.low), typical: of(|s| s.typical), high: of(|s| s.high) }
        })
    }

    fn minutes_with(&self, tool: Tool) -> u32 {
        self.pieces.iter().filter(|piece| piece.tool == tool).map(|piece| piece.minutes).sum()
    }

    /// Whether a pot or a canner stands over heat in it.
    pub(crate) fn is_over_heat(&self) -> bool {
        self.pieces.iter().any(|piece| matches!(piece.tool, Tool::Kettle | Tool::Burner | Tool::Oven))
    }

    /// What is done, in about `room` letters, with the weight of the produce it handles.
    pub(crate) fn title(&self, units: Units, room: usize) -> String {
        let handled: BTreeMap<usize, Mass> =
            self.pieces.iter().flat_map(|piece| piece.handles.iter().copied()).collect();
        let mass: Mass = handled.into_values().sum();
        let weight =
            if mass >= LEAST_SAID { format!(" ({})", words::weight(units, mass)) } else { String::new() };
        let room = room.saturating_sub(weight.len());
        format!("{}{weight}", wording::word_title(&self.pieces, room))
    }
}

/// The tools of a piece that someone else might want.
fn tools_of(piece: &Piece) -> BTreeSet<Tool> {
    match piece.tool {
        Tool::None | Tool::Bowl | Tool::Refrigerator => BTreeSet::new(),
        tool => BTreeSet::from([tool]),
    }
}

/// The more careful of two.
trait MaxOf {
    fn max_of(self, other: Self) -> Self;
}

impl MaxOf for Care {
    fn max_of(self, other: Self) -> Self {
        if self == Self::Careful || other == Self::Careful { Self::Careful } else { Self::Ordinary }
    }
}

/// Joins the pieces of one stretch of a batch into acts.
pub(crate) fn fold(pieces: impl IntoIterator<Item = Piece>) -> Vec<Act> {
    let mut acts: Vec<Act> = Vec::new();
    for piece in pieces {
        match acts.last_mut() {
            Some(act) if go_together(act, &piece) => act.join(piece),
            _ => acts.push(Act::alone(piece)),
        }
    }
    acts
}

/// Whether a piece is done in one go with what comes before it.
fn go_together(act: &Act, piece: &Piece) -> bool {
    // Work at the jars and at the crock begins an act of its own, however little was left to cut before it.
    if act.attention != piece.attention
        || act.slack > 0
        || matches!(piece.action, Action::Acidify | Action::Layer)
    {
        return false;
    }
    let tools: BTreeSet<Tool> = act.tools.union(&tools_of(piece)).copied().collect();
    let at_once = act.may_wait == Some(0);
    match piece.attention {
        // Scalded peaches peel at once, but a bushel of them is a stretch of its own.
        Attention::Hands if at_once => {
            !piece.is_produce_work() || act.minutes + piece.minutes <= LONGEST_STRETCH
        }
        Attention::Hands => {
            let over_heat =
                act.is_over_heat() != matches!(piece.tool, Tool::Kettle | Tool::Burner | Tool::Oven);
            let passing = act.minutes <= PASSING_USE || piece.minutes <= PASSING_USE;
            let short = act.minutes + piece.minutes <= LONGEST_STRETCH;
            !over_heat && act.care == piece.care && short && (tools.len() <= 1 || passing)
        }
        Attention::Eyes => at_once && tools.len() <= 1 && piece.action != Action::Process,
        Attention::None => false,
    }
}

/// Into how many parts a stretch of plain hand work is cut.
pub(crate) fn parts_of(act: &Act) -> u32 {
    let two_can_do_it = act.pieces.iter().all(|piece| piece.action == Action::Sieve);
    let may_be_cut = act.attention == Attention::Hands
        && (act.care == Care::Ordinary || two_can_do_it)
        && act.may_wait != Some(0)
        && !act.is_over_heat();
    if may_be_cut { act.minutes.div_ceil(LONGEST_STRETCH).max(1) } else { 1 }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::work::piece::Phase;

    fn piece(action: Action, what: &str, minutes: u32, tool: Tool) -> Piece {
        Piece {
            phase: Phase::Head,
            action,
            what: what.to_owned(),
            minutes,
            spread: None,
            slack: 0,
            attention: Attention::Hands,
            care: Care::Ordinary,
            tool,
            may_wait: None,
            note: String::new(),
            title: None,
            handles: vec![],
        }
    }

    #[test]
    fn verbs_of_one_object_are_said_together() {
        let acts = fold([
            piece(Action::Wash, "carrots", 5, Tool::Sink),
            piece(Action::Peel, "carrots", 12, Tool::None),
            piece(Action::Slice, "carrots", 12, Tool::None),
        ]);
        assert_eq!(acts.len(), 1);
        assert_eq!(acts[0].title(Units::Us, 80), "wash, peel and slice carrots");
        assert!(acts[0].tools.is_empty(), "five minutes at the sink do not book it for half an hour");
    }

    #[test]
    fn long_hand_work_is_not_joined_and_is_cut() {
        let acts = fold([
            piece(Action::Peel, "pears", 80, Tool::None),
            piece(Action::Slice, "pears", 40, Tool::None),
        ]);
        assert_eq!(acts.len(), 2);
        assert_eq!(parts_of(&acts[0]), 2);
        assert_eq!(parts_of(&acts[1]), 1);
    }

    #[test]
    fn what_goes_on_at_once_is_one_act_and_as_careful_as_its_worst_piece() {
        let mut fill = piece(Action::Fill, "hot food into hot jars", 9, Tool::None);
        fill.may_wait = Some(0);
        fill.care = Care::Careful;
        let acts = fold([fill, piece(Action::Close, "wipe rims, lids on, bands on", 4, Tool::None)]);
        assert_eq!(acts.len(), 1);
        assert_eq!(acts[0].care, Care::Careful);
        assert_eq!(parts_of(&acts[0]), 1);
    }
}
