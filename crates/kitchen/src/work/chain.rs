//! Strings the acts of all batches of a make together: what follows what, what may wait, what is held.
//!
//! Every batch is at most one canner load, so each has its own chain: preparing, cooking, filling, the canner,
//! lifting. The canner is brought to heat once, before the first load, and is held with its burner until the last
//! process is over. A long rest before the cooking (a night's soak) parts off the evening before; a long rest with
//! nothing after it that belongs to the day (drying, fermenting, freezing, cooling jars) parts off what is for later.

use std::collections::BTreeMap;

use almanac::{Action, Almanac, Attention, CannerKind, Care, Equipment as Tool, Formula};
use dayplan::{Hold, Lag, Spread};

use super::duration::Lot;
use super::fold::{self, Act};
use super::later::{self, LaterWork, OVERNIGHT};
use super::piece::{self, Phase, Piece, Way};
use crate::day::Units;

/// Letters that a title may have: a line of a sheet 80 letters wide and a bit.
const LONGEST_TITLE: usize = 90;
/// The longest rest that fits between the evening before and the day.
const ONE_NIGHT: u32 = 1_080;

/// How long things may wait where no publication says (ours, first guesses): washed produce, cut produce before it is cooked,
/// rested or chilled produce after its rest, hot food before it is filled, a hot canner before it is loaded,
/// processed jars in the canner, dirty pots.
const WASHED_MAY_WAIT: i32 = 240;
const CUT_MAY_WAIT: i32 = 60;
const RESTED_MAY_WAIT: i32 = 90;
const HOT_MAY_WAIT: i32 = 10;
const CANNER_MAY_WAIT: i32 = 30;
const HOT_BEFORE_LOADING: i32 = 5;
const JARS_MAY_WAIT: i32 = 15;
const NEXT_LOAD_WITHIN: i32 = 90;
const POTS_MAY_WAIT: i32 = 120;

/// A step of the day as the kitchen knows it; the planner sees its minutes and needs.
#[derive(Debug, Clone)]
pub(crate) struct WorkStep {
    pub(crate) id: String,
    pub(crate) title: String,
    pub(crate) detail: Vec<String>,
    pub(crate) minutes: u32,
    /// How long it may really take, where its length is a guess.
    pub(crate) spread: Option<Spread>,
    pub(crate) attention: Attention,
    pub(crate) needs: BTreeMap<String, u32>,
    pub(crate) caution: Option<String>,
    pub(crate) must_not_be_left: bool,
}

/// All the work of one make.
#[derive(Debug, Clone, Default)]
pub(crate) struct Work {
    pub(crate) steps: Vec<WorkStep>,
    pub(crate) lags: Vec<Lag>,
    pub(crate) holds: Vec<Hold>,
    pub(crate) evening: Vec<String>,
    /// Minutes of the evening's work that take a person.
    pub(crate) evening_minutes: u32,
    pub(crate) later: Vec<LaterWork>,
}

/// The formula soaks or stands for longer than one night.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct MultiDay {
    /// Hours of rest before it is cooked.
    pub(crate) rest_hours: u32,
}

/// The canner a make uses.
#[derive(Debug, Clone)]
pub(crate) struct CannerUse {
    /// Its resource in the problem.
    pub(crate) resource: String,
    pub(crate) kind: CannerKind,
}

/// Lays out the work of all batches of a make.
pub(crate) fn lay_out_work(
    almanac: &Almanac,
    formula: &Formula,
    lots: &[Lot],
    way: &Way,
    canner: Option<&CannerUse>,
) -> Result<Work, MultiDay> {
    let mut layout = Layout {
        work: Work::default(),
        canner,
        lots: lots.len(),
        units: lots.first().map_or(Units::Us, |lot| lot.units),
        lifted: None,
    };
    for (batch, lot) in (1_u32..).zip(lots) {
        let mut pieces = piece::pieces_of(almanac, formula, lot, way);
        if canner.is_some_and(|canner| is_pressure(canner.kind)) {
            use_pressure_lines(almanac, lot, way, &mut pieces);
        }
        layout.add_batch(batch, pieces)?;
    }
    layout.add_canner_holds();
    let wash_up = lots.iter().map(|lot| wash_up_minutes(almanac, lot)).sum::<f64>();
    layout.add_wash_up(wash_up);
    Ok(layout.work)
}

/// Whether a canner works under pressure.
pub(crate) fn is_pressure(kind: CannerKind) -> bool {
    matches!(kind, CannerKind::Dial | CannerKind::Weighted)
}

/// Puts the lines of a pressure canner in place of boiling-water lines, taken from a formula that prints them:
/// they are the same for every food.
fn use_pressure_lines(almanac: &Almanac, lot: &Lot, way: &Way, pieces: &mut Vec<Piece>) {
    if pieces.iter().any(|piece| piece.action == Action::Vent) {
        return;
    }
    let Some(pattern) = almanac.formulas().find(|f| f.steps.iter().any(|line| line.action == Action::Vent))
    else {
        return;
    };
    let printed = piece::pieces_of(almanac, pattern, lot, way);
    let of = |phase: Phase| printed.iter().filter(move |piece| piece.phase == phase).cloned();
    let beside: Vec<Piece> = of(Phase::Beside).collect();
    let in_canner: Vec<Piece> = of(Phase::InCanner).collect();
    pieces.retain(|piece| !matches!(piece.phase, Phase::Beside | Phase::InCanner));
    pieces.splice(0..0, beside);
    let after = pieces.iter().position(|piece| piece.phase == Phase::After).unwrap_or(pieces.len());
    pieces.splice(after..after, in_canner);
}

/// Washing up after one batch, at typical speed.
fn wash_up_minutes(almanac: &Almanac, lot: &Lot) -> f64 {
    almanac.wash_up_guess().map_or(10.0, |guess| {
        guess.fixed_min
            + guess.per_kg_min * lot.total().as_kilograms()
            + guess.per_jar_min * f64::from(lot.containers)
    })
}

/// A layout under way.
struct Layout<'a> {
    work: Work,
    canner: Option<&'a CannerUse>,
    lots: usize,
    units: Units,
    /// The lifting of the load before.
    lifted: Option<String>,
}

impl Layout<'_> {
    fn add_batch(&mut self, batch: u32, mut pieces: Vec<Piece>) -> Result<(), MultiDay> {
        let canned = self.canner.is_some();
        let rest = |piece: &Piece| {
            let is_long = piece.minutes >= OVERNIGHT || piece.action == Action::Dry;
            piece.phase == Phase::Head && piece.attention == Attention::None && is_long
        };
        let long: Vec<usize> = (0..pieces.len()).filter(|&at| rest(&pieces[at])).collect();
        let mut later = Vec::new();
        if canned {
            later.extend(pieces.extract_if(.., |piece| piece.phase == Phase::After));
            let total: u32 = long.iter().map(|&at| pieces[at].minutes).sum();
            if long.len() > 1 || total > ONE_NIGHT {
                return Err(MultiDay { rest_hours: total.div_ceil(60) });
            }
            if let Some(&night) = long.first() {
                let beside: Vec<Piece> =
                    pieces.iter().filter(|p| p.phase == Phase::Beside).cloned().collect();
                let evening: Vec<Piece> = pieces.drain(..=night).filter(|p| p.phase == Phase::Head).collect();
                pieces.splice(0..0, beside);
                self.add_evening(batch, evening);
            }
        } else if let Some(&cut) = long.first() {
            later.extend(pieces.drain(cut..));
        }
        let last = self.add_chain(batch, pieces);
        if let Some(after) = last {
            self.work.later.extend(later::later_work(&after, &later));
        }
        Ok(())
    }

    fn add_evening(&mut self, batch: u32, pieces: Vec<Piece>) {
        let acts = fold::fold(pieces);
        let attended = acts.iter().filter(|act| act.attention != Attention::None);
        self.work.evening_minutes += attended.map(|act| act.minutes).sum::<u32>();
        let lines = acts.iter().map(|act| later::evening_line(act, &self.title_of(batch, act, (1, 1))));
        let lines: Vec<String> = lines.collect();
        self.work.evening.extend(lines);
    }

    /// What a part of an act is called on the day sheet.
    fn title_of(&self, batch: u32, act: &Act, (part, parts): (u32, u32)) -> String {
        let mut of = if self.lots > 1 { format!(" (batch {batch} of {})", self.lots) } else { String::new() };
        if parts > 1 {
            of = format!("{of}, part {part} of {parts}");
        }
        format!("{}{of}", act.title(self.units, LONGEST_TITLE.saturating_sub(of.len())))
    }

    /// Adds the acts of a batch in their order; the id of the last one.
    fn add_chain(&mut self, batch: u32, pieces: Vec<Piece>) -> Option<String> {
        let (beside, rest): (Vec<Piece>, Vec<Piece>) =
            pieces.into_iter().partition(|piece| piece.phase == Phase::Beside);
        let (head, in_canner): (Vec<Piece>, Vec<Piece>) =
            rest.into_iter().partition(|piece| piece.phase == Phase::Head);
        if batch == 1 && self.canner.is_some() && !beside.is_empty() {
            self.add_preheat(&beside);
        }
        let mut before: Option<(Vec<String>, Act)> = None;
        let head_acts = fold::fold(head);
        let pot = head_acts.iter().rposition(|act| act.tools.contains(&Tool::Kettle));
        let mut pot_id = None;
        let mut fill_id = None;
        for (at, act) in head_acts.into_iter().enumerate() {
            let ids = self.add_act(batch, &act, before.as_ref());
            if pot == Some(at) {
                pot_id = ids.first().cloned();
            } else if act.tools.contains(&Tool::Kettle) {
                self.need("kettle", &ids);
            }
            fill_id = ids.last().cloned();
            before = Some((ids, act));
        }
        // Canned food stays in its pot until it is in the jars; a blanching pot is free after its last lot.
        if let Some(from) = pot_id {
            let to = if self.canner.is_some() { fill_id.clone() } else { None };
            self.hold("kettle", from.clone(), to.unwrap_or(from));
        }
        if let (true, Some(fill)) = (self.canner.is_some(), fill_id) {
            self.join_canner(batch, &fill);
            for act in fold::fold(in_canner) {
                let ids = self.add_act(batch, &act, before.as_ref());
                before = Some((ids, act));
            }
            self.lifted = before.as_ref().and_then(|(ids, _)| ids.last().cloned());
        }
        before.and_then(|(ids, _)| ids.last().cloned())
    }

    fn add_preheat(&mut self, beside: &[Piece]) {
        let act = fold::fold(beside.iter().cloned());
        let minutes = act.iter().map(|act| act.minutes).sum();
        let detail = act.iter().flat_map(|act| &act.pieces).map(said).collect();
        self.work.steps.push(WorkStep {
            id: "canner-on".to_owned(),
            title: "put the canner on: jars and water hot".to_owned(),
            detail,
            minutes,
            spread: None,
            attention: Attention::None,
            needs: BTreeMap::new(),
            caution: None,
            must_not_be_left: false,
        });
    }

    /// Ties the filling of a batch to the canner: hot before the first load, empty before the others.
    fn join_canner(&mut self, batch: u32, fill: &str) {
        if batch == 1 && self.work.steps.iter().any(|step| step.id == "canner-on") {
            // What counts is the loading, at the end of the filling: the canner is hot some minutes before it and does
            // not stand hot for long, however early the cooking began.
            let filling = self.work.steps.iter().find(|step| step.id == fill).map_or(0, |step| step.minutes);
            let filling = i32::try_from(filling).unwrap_or(i32::MAX);
            self.lag("canner-on", fill, HOT_BEFORE_LOADING - filling, Some(CANNER_MAY_WAIT - filling));
        }
        if let Some(lifted) = self.lifted.clone() {
            self.lag(&lifted, fill, 0, Some(NEXT_LOAD_WITHIN));
        }
    }

    /// Holds canner, burner and strong burner over all loads.
    fn add_canner_holds(&mut self) {
        let Some(canner) = self.canner else { return };
        let Some(first) =
            self.work.steps.iter().find(|step| step.id == "canner-on").map(|step| step.id.clone())
        else {
            return;
        };
        let last_process =
            self.work.steps.iter().rfind(|step| step.id.ends_with("process")).map(|step| step.id.clone());
        let resource = canner.resource.clone();
        if let Some(last) = self.lifted.clone() {
            self.hold(&resource, first.clone(), last);
        }
        if let Some(process) = last_process {
            self.hold("burner", first.clone(), process.clone());
            self.hold("strong-burner", first, process);
        }
    }

    fn add_wash_up(&mut self, minutes: f64) {
        let Some(last) = self.work.steps.last().map(|step| step.id.clone()) else { return };
        self.work.steps.push(WorkStep {
            id: "wash-up".to_owned(),
            title: "wash up, wipe down, look round".to_owned(),
            detail: vec![],
            // Never overflows: a quarter of an hour or two at the most.
            minutes: libm::ceil(minutes.clamp(5.0, 60.0)) as u32,
            spread: None,
            attention: Attention::Hands,
            needs: BTreeMap::from([("hands".to_owned(), 1), ("sink".to_owned(), 1)]),
            caution: None,
            must_not_be_left: false,
        });
        self.lag(&last, "wash-up", 0, Some(POTS_MAY_WAIT));
    }

    /// Adds an act, in parts where it is long, after the act before; the ids of its parts.
    fn add_act(&mut self, batch: u32, act: &Act, before: Option<&(Vec<String>, Act)>) -> Vec<String> {
        let verb = act.pieces.iter().rev().find(|p| p.action == Action::Process).or(act.pieces.first());
        let verb = verb.map_or("work", |piece| piece.action.as_str());
        let number = self.work.steps.len() + 1;
        let parts = fold::parts_of(act);
        let ids: Vec<String> = (1..=parts)
            .map(|part| match parts {
                1 => format!("b{batch}-{number:02}-{verb}"),
                _ => format!("b{batch}-{number:02}-part-{part}-{verb}"),
            })
            .collect();
        for (part, id) in (1..).zip(&ids) {
            self.work.steps.push(self.step_of(batch, act, id, part, parts));
        }
        if let Some((before_ids, before_act)) = before {
            let most = may_wait(before_act);
            let each = |act: &Act, parts: usize| act.minutes.div_ceil(u32::try_from(parts).unwrap_or(1));
            let (each_before, each_now) = (each(before_act, before_ids.len()), each(act, ids.len()));
            // One person does the parts one after the other: the first waits for the last of what comes before,
            // and the last waits for the first of what comes now.
            for (still_to_come, from) in (0..).zip(before_ids.iter().rev()) {
                for (done_first, to) in (0..).zip(&ids) {
                    let parts = still_to_come * each_before + done_first * each_now;
                    self.lag(from, to, 0, most.map(|most| most.saturating_add_unsigned(parts)));
                }
            }
        }
        ids
    }

    fn step_of(&self, batch: u32, act: &Act, id: &str, part: u32, parts: u32) -> WorkStep {
        let cautions: Vec<&str> = act
            .pieces
            .iter()
            .filter(|piece| piece.care == Care::Careful && !piece.note.is_empty())
            .map(|piece| piece.note.as_str())
            .collect();
        let must_not_be_left = act.pieces.iter().any(|piece| {
            piece.note.contains("must not be left") || matches!(piece.action, Action::Process | Action::Vent)
        });
        WorkStep {
            id: id.to_owned(),
            title: self.title_of(batch, act, (part, parts)),
            detail: detail_of(act),
            minutes: act.minutes.div_ceil(parts),
            spread: act.spread().map(|all| Spread {
                low: all.low / parts,
                typical: all.typical.div_ceil(parts),
                high: all.high.div_ceil(parts),
            }),
            attention: act.attention,
            needs: needs_of(act),
            caution: (!cautions.is_empty()).then(|| unique(&cautions).join("; ")),
            must_not_be_left,
        }
    }

    fn need(&mut self, resource: &str, ids: &[String]) {
        for step in self.work.steps.iter_mut().filter(|step| ids.contains(&step.id)) {
            step.needs.insert(resource.to_owned(), 1);
        }
    }

    fn lag(&mut self, from: &str, to: &str, min: i32, max: Option<i32>) {
        self.work.lags.push(Lag { from: from.to_owned(), to: to.to_owned(), min, max });
    }

    fn hold(&mut self, resource: &str, from: String, to: String) {
        self.work.holds.push(Hold { resource: resource.to_owned(), amount: 1, from, to });
    }
}

/// How long an act may wait for the next: as printed, else our own guess by what it leaves standing.
fn may_wait(before: &Act) -> Option<i32> {
    if let Some(printed) = before.may_wait {
        // Never overflows: printed waits are at most a few days of minutes.
        return Some(i32::try_from(printed).unwrap_or(i32::MAX));
    }
    let in_canner = before.pieces.iter().any(|piece| piece.phase == Phase::InCanner);
    Some(if in_canner {
        JARS_MAY_WAIT
    } else if before.attention == Attention::None {
        // A rest printed as a range may go on to its end and no longer.
        match i32::try_from(before.slack) {
            Ok(slack) if slack > 0 => slack,
            _ => RESTED_MAY_WAIT,
        }
    } else if before.is_over_heat() {
        HOT_MAY_WAIT
    } else if before.pieces.iter().all(|piece| matches!(piece.action, Action::Wash | Action::Husk)) {
        WASHED_MAY_WAIT
    } else {
        CUT_MAY_WAIT
    })
}

/// What an act takes while it runs; the canner and its burner are held over the whole load instead.
fn needs_of(act: &Act) -> BTreeMap<String, u32> {
    let mut needs = BTreeMap::new();
    let mut need = |resource: &str| {
        needs.insert(resource.to_owned(), 1);
    };
    match (act.attention, act.care) {
        (Attention::Hands, Care::Careful) => ["hands", "careful-hands"].map(&mut need).into_iter().collect(),
        (Attention::Hands, Care::Ordinary) => need("hands"),
        (Attention::Eyes, Care::Careful) => ["eyes", "careful-eyes"].map(&mut need).into_iter().collect(),
        (Attention::Eyes, Care::Ordinary) => need("eyes"),
        (Attention::None, _) => {}
    }
    if act.pieces.iter().any(takes_a_burner) {
        need("burner");
    }
    for tool in &act.tools {
        match tool {
            Tool::Sink => need("sink"),
            Tool::Processor => need("processor"),
            Tool::Blender => need("blender"),
            Tool::Oven => need("oven"),
            Tool::JellyBag => need("jelly-bag"),
            // Pots and canners are held over several acts; a burner was asked for above.
            Tool::Kettle
            | Tool::Burner
            | Tool::Canner
            | Tool::Dehydrator
            | Tool::Bowl
            | Tool::Refrigerator
            | Tool::None => {}
        }
    }
    needs
}

/// Whether a piece stands over heat long enough to count; what stands or cools off the heat does not.
fn takes_a_burner(piece: &Piece) -> bool {
    match piece.tool {
        Tool::Kettle => piece.minutes > 3 && !matches!(piece.action, Action::Stand | Action::Cool),
        Tool::Burner => !matches!(piece.action, Action::Stand | Action::Cool),
        _ => false,
    }
}

/// The printed lines of an act; none where its title says the one line already.
fn detail_of(act: &Act) -> Vec<String> {
    match act.pieces.as_slice() {
        [only] if only.title.as_ref().is_none_or(|title| title.full.contains(&only.what)) => vec![],
        pieces => pieces.iter().map(said).collect(),
    }
}

/// A piece as a line of detail.
fn said(piece: &Piece) -> String {
    let length = if piece.minutes > 0 { format!(", {} min", piece.minutes) } else { String::new() };
    format!("{}{length}", piece.said())
}

/// Each text once, in the order met.
fn unique<'a>(texts: &[&'a str]) -> Vec<&'a str> {
    let mut seen = Vec::new();
    for text in texts {
        if !seen.contains(text) {
            seen.push(*text);
        }
    }
    seen
}
