//! Acts before, the book after, in its own words; and random acts against a plain count of jars.

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::rc::Rc;

use book::act::{LossReason, OpenHolds, Settled};
use book::{Book, Head, Link, MemoryStore, Position, StoredSnapshot, Written};
use proptest::collection::vec;
use proptest::prelude::*;

use super::*;

/// Ids in a row.
#[derive(Debug, Default)]
struct Row(u8, u64);

impl IdMaker for Row {
    fn make(&mut self, now: Timestamp) -> Id {
        self.1 += 1;
        let mut chance = [self.0; 10];
        chance[2..].copy_from_slice(&self.1.to_be_bytes());
        Id::make(now, chance)
    }
}

type Kept = Keeper<MemoryStore, Row>;

fn keeper() -> Kept {
    Keeper::new(Book::open(MemoryStore::default()).unwrap(), Row::default(), "Wilma", "telephone")
}

fn at(minute: i64) -> Moment {
    let begin: Timestamp = "2026-09-12T14:00:00Z".parse().unwrap();
    Moment::utc(begin + jiff::SignedDuration::from_mins(minute))
}

fn put_up(keeper: &mut Kept, line: &str) -> LotLine {
    keeper.put_up(&at(0), &PutUpWords { line: line.to_owned(), ..PutUpWords::default() }).unwrap()
}

fn draw_words(lot: &str, count: i64) -> DrawWords {
    DrawWords { lot: lot.to_owned(), count, shelf: None, size: None, unsealed: false, went: None }
}

fn stands(line: &LotLine) -> Vec<(&str, i64)> {
    line.stands.iter().map(|spot| (spot.shelf.as_deref().unwrap_or("-"), spot.count)).collect()
}

#[test]
fn one_line_puts_a_lot_on_a_shelf_and_shows_no_verdict() {
    let mut keeper = keeper();
    let line = put_up(&mut keeper, "damson jam, 9 half-pints, the cellar");
    assert_eq!(
        (line.label.as_str(), line.told, line.oldest.as_deref()),
        ("26-001", "process not recorded", Some("2026-09-12"))
    );
    assert_eq!(stands(&line), [("the cellar", 9)]);
    assert_eq!(put_up(&mut keeper, "corn, 6 bags").label, "26-002");
    let shelves: Vec<String> = keeper.list_shelves().into_iter().map(|(name, _)| name).collect();
    assert_eq!(shelves, ["not put away", "the cellar"]);
}

#[test]
fn what_already_stands_keeps_year_and_place_of_the_line_before() {
    let mut keeper = keeper();
    let lines = ["peaches, 12 quarts, 2024, cellar", "beans, 7 pints", "pickles, 3 quarts, not known"];
    let lots = keeper.stand(&at(0), &lines.map(str::to_owned)).unwrap();
    let found: Vec<_> =
        lots.iter().map(|lot| (lot.label.as_str(), lot.oldest.as_deref(), lot.told)).collect();
    let told = "from before this book";
    assert_eq!(
        found,
        [("26-001", Some("2024"), told), ("26-002", Some("2024"), told), ("26-003", None, told)]
    );
    assert!(lots.iter().all(|lot| lot.stands[0].shelf.as_deref() == Some("cellar")));
    // One act: taken back together.
    assert_eq!(keeper.take_back(&at(1), None, None).unwrap().acts.len(), 3);
    assert_eq!(keeper.views().lots.iter().count(), 0);
}

/// One journal that two people have open.
#[derive(Debug, Clone, Default)]
struct Shared(Rc<RefCell<MemoryStore>>);

impl Store for Shared {
    fn head(&self) -> Result<Head, StoreError> {
        self.0.borrow().head()
    }

    fn append(&mut self, group: &[Written], expected: Option<Head>) -> Result<Head, StoreError> {
        self.0.borrow_mut().append(group, expected)
    }

    fn read_after(&self, from: Head, reader: &mut dyn FnMut(Written, Head)) -> Result<(), StoreError> {
        self.0.borrow().read_after(from, reader)
    }

    fn read_snapshot(&self) -> Result<Option<StoredSnapshot>, StoreError> {
        self.0.borrow().read_snapshot()
    }

    fn write_snapshot(&mut self, snapshot: &StoredSnapshot) -> Result<(), StoreError> {
        self.0.borrow_mut().write_snapshot(snapshot)
    }

    fn find_link(&self, position: Position) -> Result<Option<Link>, StoreError> {
        self.0.borrow().find_link(position)
    }
}

#[test]
fn of_two_who_take_the_last_jar_at_once_one_is_told() {
    let journal = Shared::default();
    let open = |who, ids| Keeper::new(Book::open(journal.clone()).unwrap(), Row(ids, 0), who, "telephone");
    let (mut wilma, mut otto) = (open("Wilma", 1), open("Otto", 2));
    let words = PutUpWords { line: "damson jam, 1 half-pint, cellar".into(), ..PutUpWords::default() };
    wilma.put_up(&at(0), &words).unwrap();
    otto.catch_up().unwrap();
    wilma.draw(&at(1), &draw_words("26-001", 1)).unwrap();
    // Otto still sees the jar; the book does not let him take it.
    assert_eq!(otto.list_shelves().len(), 1);
    let error = otto.draw(&at(1), &draw_words("26-001", 1)).unwrap_err();
    assert!(matches!(error, KeepError::NotSoMany { .. }), "{error}");
    // What does not clash is decided anew and written: two numbers, not one twice.
    wilma.put_up(&at(2), &words).unwrap();
    assert_eq!(otto.put_up(&at(2), &words).unwrap().label, "26-003");
    // Each takes back their own.
    assert_eq!(wilma.take_back(&at(3), None, None).unwrap().acts.len(), 1);
    otto.catch_up().unwrap();
    let labels: Vec<String> = otto.eat_first(at(3).date(), 9).into_iter().map(|lot| lot.label).collect();
    assert_eq!(labels, ["26-003"]);
}

#[test]
fn a_bad_line_writes_nothing_of_the_others() {
    let mut keeper = keeper();
    assert!(keeper.stand(&at(0), &["peaches, 12 quarts".to_owned(), "beans".to_owned()]).is_err());
    assert_eq!(keeper.book().head(), book::Head::EMPTY);
}

#[test]
fn took_one_takes_the_oldest_of_that_name() {
    let mut keeper = keeper();
    put_up(&mut keeper, "damson jam, 9 half-pints, cellar, 2026-09-01");
    put_up(&mut keeper, "damson jam, 2 half-pints, cellar, 2025-09-01");
    let taken = keeper.draw(&at(1), &draw_words("Damson  Jam", 1)).unwrap();
    assert_eq!((taken.label.as_str(), stands(&taken)), ("26-002", vec![("cellar", 1)]));
    keeper.draw(&at(2), &draw_words("damson", 1)).unwrap();
    assert_eq!(keeper.draw(&at(3), &draw_words("damson", 1)).unwrap().label, "26-001");
}

#[test]
fn more_than_there_are_cannot_be_taken() {
    let mut keeper = keeper();
    put_up(&mut keeper, "damson jam, 9 half-pints, cellar");
    let error = keeper.draw(&at(1), &draw_words("26-001", 10)).unwrap_err().to_string();
    assert!(
        error.starts_with("10 of lot 26-001 were to be taken from cellar, and the book has 9 there; hint:"),
        "{error}"
    );
    for wrong in [0, -1, i64::MIN, i64::MAX] {
        assert!(keeper.draw(&at(1), &draw_words("26-001", wrong)).is_err());
    }
}

#[test]
fn a_lot_in_two_places_wants_a_word_for_which() {
    let mut keeper = keeper();
    put_up(&mut keeper, "damson jam, 9 half-pints, cellar");
    let words =
        MoveWords { lot: "26-001".into(), to: "Pantry".into(), count: Some(4), shelf: None, size: None };
    let moved = keeper.move_containers(&at(1), &words).unwrap();
    assert_eq!(stands(&moved), [("cellar", 5), ("Pantry", 4)]);
    let error = keeper.draw(&at(2), &draw_words("26-001", 1)).unwrap_err().to_string();
    assert!(error.contains("5 half-pints (cellar), 4 half-pints (pantry); hint: add --shelf"), "{error}");
    let from = DrawWords { shelf: Some("pantry".into()), ..draw_words("26-001", 1) };
    assert_eq!(stands(&keeper.draw(&at(2), &from).unwrap()), [("cellar", 5), ("Pantry", 3)]);
}

#[test]
fn a_count_is_shown_and_settled() {
    let mut keeper = keeper();
    put_up(&mut keeper, "damson jam, 9 half-pints, cellar");
    let words = CountWords { lot: "26-001".into(), count: 7, shelf: None, size: None };
    let answer = keeper.count_shelf(&at(1), &words).unwrap();
    assert_eq!((answer.counted, answer.expected), (7, 9));
    assert!(
        answer.lot.notes[0].starts_with("counted 7 half-pints (cellar) and the book had 9"),
        "{:?}",
        answer.lot
    );
    let settled = keeper.settle_counts(&at(2), "26-001", Settled::Accepted).unwrap();
    assert_eq!((stands(&settled), settled.notes.len()), (vec![("cellar", 7)], 0));
    assert!(keeper.settle_counts(&at(3), "26-001", Settled::Accepted).is_err());
}

#[test]
fn a_bad_jar_leads_to_whoever_has_its_sisters() {
    let mut keeper = keeper();
    put_up(&mut keeper, "damson jam, 9 half-pints, cellar");
    let went = Some(WentWords::Given("Otto".into()));
    keeper.draw(&at(1), &DrawWords { went, ..draw_words("26-001", 2) }).unwrap();
    keeper.draw(&at(2), &draw_words("26-001", 1)).unwrap();
    keeper.tell_draw(&at(3), "26-001", &WentWords::Given("Ines".into())).unwrap();
    let sheet = keeper.find_trouble(&at(4), "26-001", &["bulging lid".to_owned()], 1).unwrap();
    assert_eq!(sheet.with_people, ["Ines (1)", "Otto (2)"]);
    keeper.warn(&at(5), "26-001", "Otto").unwrap();
    let sheet = keeper.trace(&at(6), "26-001").unwrap();
    assert_eq!(sheet.with_people, ["Ines (1)", "Otto (2, was told)"]);
    assert_eq!(sheet.lot.notes, ["trouble in 1: bulging lid"]);
    assert_eq!(sheet.happened.len(), 5, "{:?}", sheet.happened);
}

#[test]
fn low_acid_food_is_not_added_to_a_chilled_jar() {
    let mut keeper = keeper();
    let words = PutUpWords {
        line: "pickled peppers, 1 quart".into(),
        open: Some(OpenHolds::ChilledAcid),
        ..PutUpWords::default()
    };
    keeper.put_up(&at(0), &words).unwrap();
    let add = |low| top_up::TopUpWords {
        lot: "26-001".into(),
        low_acid_oiled_or_cooked: low,
        ..top_up::TopUpWords::default()
    };
    let before = keeper.book().head();
    assert!(matches!(keeper.top_up(&at(1), &add(true)).unwrap(), TopUpAnswer::Refused { .. }));
    assert_eq!(keeper.book().head(), before);
    assert!(matches!(keeper.top_up(&at(1), &add(false)).unwrap(), TopUpAnswer::Added(_)));
    keeper.close_lot(&at(2), "26-001").unwrap();
    assert!(matches!(keeper.top_up(&at(3), &add(false)), Err(KeepError::NotOpen { .. })));
}

#[test]
fn the_month_is_told_in_figures_and_in_a_paragraph() {
    let mut keeper = keeper();
    put_up(&mut keeper, "damson jam, 9 half-pints, cellar");
    put_up(&mut keeper, "corn, 6 bags, freezer");
    keeper.check_seals(&at(1), "26-001", 2).unwrap();
    keeper.draw(&at(2), &draw_words("corn", 1)).unwrap();
    let lost = LossWords {
        lot: "26-001".into(),
        count: 1,
        reason: LossReason::Broken,
        shelf: None,
        size: None,
        unsealed: false,
    };
    keeper.lose(&at(3), &lost).unwrap();
    let days = find_period("month", at(0).date()).unwrap();
    let told = keeper.tell(days);
    assert_eq!((told.from.as_str(), told.to.as_str()), ("2026-09-01", "2026-09-30"));
    insta::assert_snapshot!(told.paragraph, @"Put up 6 bags of corn and 9 half-pints of damson jam. 2 did not seal. Lost 1 half-pint of damson jam (broken). One came off the shelves.");
    let other = keeper.tell(find_period("2026-10-01..2026-10-31", at(0).date()).unwrap());
    assert_eq!(other.paragraph, "Nothing was written down.");
}

#[test]
fn periods_are_whole() {
    let check = |typed, from: &str, to: &str| {
        let days = find_period(typed, "2026-09-12".parse().unwrap()).unwrap();
        assert_eq!(
            (days.start().to_string().as_str(), days.end().to_string().as_str()),
            (from, to),
            "{typed}"
        );
    };
    check("week", "2026-09-07", "2026-09-13");
    check("month", "2026-09-01", "2026-09-30");
    check("season", "2026-04-01", "2027-03-31");
    check("year", "2026-01-01", "2026-12-31");
    for wrong in ["fortnight", "2026-09-12..2026-09-11", "..", ""] {
        assert!(find_period(wrong, "2026-09-12".parse().unwrap()).is_err(), "{wrong}");
    }
}

#[test]
fn taking_back_goes_step_by_step_and_never_under_what_was_built_upon_it() {
    let mut keeper = keeper();
    put_up(&mut keeper, "damson jam, 9 half-pints, cellar");
    keeper.draw(&at(1), &draw_words("26-001", 1)).unwrap();
    let lot = keeper.trace(&at(1), "26-001").unwrap().lot;
    let error = keeper.take_back(&at(2), Some(&lot.id), None).unwrap_err();
    assert!(matches!(error, KeepError::BuiltUpon { .. }), "{error}");
    assert_eq!(
        keeper.take_back(&at(2), None, Some("put it back")).unwrap().acts,
        ["took 1 half-pint (cellar)"]
    );
    assert_eq!(stands(&keeper.trace(&at(3), "26-001").unwrap().lot), [("cellar", 9)]);
    assert_eq!(keeper.take_back(&at(3), None, None).unwrap().acts.len(), 1);
    assert!(matches!(keeper.take_back(&at(4), None, None), Err(KeepError::NothingToTakeBack { .. })));
    let history = keeper.tell_history(&at(5), &lot.id).unwrap();
    assert_eq!(history.len(), 4, "{history:?}");
    assert!(history.iter().all(|line| !line.stands));
    assert_eq!(history[2].says, "took back: took 1 half-pint (cellar)");
}

#[test]
fn a_bowl_is_weighed_once() {
    let almanac = almanac::Almanac::load().unwrap();
    let mut keeper = keeper();
    let mut words = TakeInWords {
        name: "damsons".into(),
        amount: "5.4 kg".into(),
        bowl: Some("blue bowl".into()),
        ..TakeInWords::default()
    };
    let error = keeper.take_in(&at(0), &almanac, &words).unwrap_err().to_string();
    assert!(error.contains("--tare"), "{error}");
    words.tare = Some("400 g".into());
    keeper.take_in(&at(0), &almanac, &words).unwrap();
    words.tare = None;
    words.amount = "2.4 kg".into();
    keeper.take_in(&at(1), &almanac, &words).unwrap();
    let left: Vec<String> = keeper.list_baskets().into_iter().map(|basket| basket.left).collect();
    assert_eq!(left, [write(5.0), write(2.0)]);
    keeper.use_basket(&at(2), "damsons", Some("1 kg")).unwrap();
    assert_eq!(keeper.list_baskets()[0].left, write(4.0));
    keeper.correct_basket(&at(3), "damsons", "4.5 kg", Some("read it wrong")).unwrap();
    assert_eq!(keeper.list_baskets()[0].left, write(3.5));
}

#[test]
fn a_load_is_clock_times_and_the_lot_that_came_out_of_it() {
    let mut keeper = keeper();
    let words = LoadWords { containers: "7 quarts".into(), canner: Some("big canner".into()), gauge: None };
    keeper.begin_load(&at(0), &words).unwrap();
    keeper.mark_load(&at(12), None, book::act::LoadMark::AtPressure, Some("11 psi")).unwrap();
    assert!(keeper.begin_load(&at(13), &words).is_ok());
    let several = keeper.mark_load(&at(14), None, book::act::LoadMark::HeatOff, None);
    assert!(matches!(several, Err(KeepError::SeveralThings { .. })), "{several:?}");
    let second = keeper.list_loads(at(0).date())[0].id.clone();
    keeper.end_load(&at(15), Some(&second), Some(false)).unwrap();
    let load = keeper.end_load(&at(40), None, Some(true)).unwrap();
    let clock: Vec<(&str, &str)> =
        load.clock.iter().map(|(time, says)| (time.as_str(), says.as_str())).collect();
    assert_eq!(
        clock,
        [("14:00", "in"), ("14:12", "at pressure, 11 psi"), ("14:40", "out, the whole process")]
    );
    let error = keeper.end_load(&at(41), None, None).unwrap_err().to_string();
    assert!(error.contains("no load that is in"), "{error}");

    let line = "pears, 7 quarts, cellar".to_owned();
    keeper.put_up(&at(50), &PutUpWords { line, from_last_load: true, ..PutUpWords::default() }).unwrap();
    let sheet = keeper.trace(&at(51), "pears").unwrap();
    assert!(sheet.from.iter().any(|line| line.starts_with("load: in 2026-09-12 14:13")), "{:?}", sheet.from);
    assert!(sheet.from.contains(&"big-canner".to_owned()), "{:?}", sheet.from);
}

#[test]
fn a_lot_is_said_anew_but_not_below_what_was_taken_from_it() {
    let mut keeper = keeper();
    put_up(&mut keeper, "damson jam, 9 half-pints, cellar");
    keeper.draw(&at(1), &draw_words("26-001", 3)).unwrap();
    let corrected =
        keeper.correct_lot(&at(2), "26-001", "damson jam, 8 half-pints", Some("miscounted")).unwrap();
    assert_eq!(stands(&corrected), [("cellar", 5)]);
    let error = keeper.correct_lot(&at(3), "26-001", "damson jam, 2 half-pints", None).unwrap_err();
    assert!(matches!(error, KeepError::BuiltUpon { .. }), "{error}");
    // Taken back step by step: the correction first.
    keeper.take_back(&at(4), None, None).unwrap();
    assert_eq!(stands(&keeper.trace(&at(5), "26-001").unwrap().lot), [("cellar", 6)]);
}

#[test]
fn what_the_winter_wants_and_lacks_is_told() {
    let mut keeper = keeper();
    put_up(&mut keeper, "damson jam, 9 half-pints, cellar");
    keeper.want(&at(1), "Damson jam, 12 half-pints").unwrap();
    keeper.want(&at(1), "corn, 6 bags").unwrap();
    assert_eq!(keeper.find_low(), ["corn: 0 of 6 bags", "Damson jam: 9 of 12 half-pints"]);
    keeper.want(&at(2), "damson jam, 9 half-pints").unwrap();
    assert_eq!(keeper.find_low(), ["corn: 0 of 6 bags"]);
}

#[test]
fn the_demo_is_the_same_for_the_same_seed() {
    let demo = |seed| {
        let book = Book::open(MemoryStore::default()).unwrap();
        let mut keeper = Keeper::new(book, Seeded::new(seed), "Marta", "kitchen telephone");
        write_demo(&mut keeper, seed).unwrap();
        keeper
    };
    let keeper = demo(1);
    assert_eq!(keeper.book().link(), demo(1).book().link());
    assert_ne!(keeper.book().link(), demo(2).book().link());
    assert!(keeper.list_shelves().len() >= 3);
    assert!(keeper.views().lots.iter().all(|(_, lot)| lot.doubts().count() == 0));
    let told = keeper.tell(find_period("2025-09-01..2025-09-30", at(0).date()).unwrap());
    assert!(told.paragraph.contains("of damson jam"), "{}", told.paragraph);
}

fn write(kilograms: f64) -> String {
    measure::write_mass_us(measure::Mass::kilograms(kilograms))
}

/// What a model of shelves needs to know: which act, on which lot, how many.
#[derive(Debug, Clone)]
enum Play {
    PutUp(i64, usize),
    Draw(usize, i64, usize),
    Move(usize, i64, usize, usize),
    Lose(usize, i64, usize),
    CountAndAccept(usize, i64, usize),
    TakeBack,
}

const SHELVES: [&str; 3] = ["cellar", "pantry", "attic"];

fn any_play() -> impl Strategy<Value = Play> {
    let (lot, count, shelf) = (0..4_usize, 1..9_i64, 0..SHELVES.len());
    prop_oneof![
        (count.clone(), shelf.clone()).prop_map(|(count, shelf)| Play::PutUp(count, shelf)),
        (lot.clone(), count.clone(), shelf.clone())
            .prop_map(|(lot, count, shelf)| Play::Draw(lot, count, shelf)),
        (lot.clone(), count.clone(), shelf.clone(), shelf.clone())
            .prop_map(|(lot, count, from, to)| Play::Move(lot, count, from, to)),
        (lot.clone(), count.clone(), shelf.clone())
            .prop_map(|(lot, count, shelf)| Play::Lose(lot, count, shelf)),
        (lot, 0..9_i64, shelf).prop_map(|(lot, count, shelf)| Play::CountAndAccept(lot, count, shelf)),
        Just(Play::TakeBack),
    ]
}

/// Jars by lot and shelf.
type Jars = BTreeMap<(usize, usize), i64>;

/// Plays one act on the book; `true` if the book took it.
fn play(keeper: &mut Kept, minute: i64, act: &Play) -> bool {
    let now = at(minute);
    let label = |lot: &usize| format!("26-{:03}", lot + 1);
    let shelf = |shelf: &usize| Some(SHELVES[*shelf].to_owned());
    match act {
        Play::PutUp(count, on) => {
            let line = format!("jam, {count} pints, {}", SHELVES[*on]);
            keeper.put_up(&now, &PutUpWords { line, ..PutUpWords::default() }).is_ok()
        }
        Play::Draw(lot, count, from) => {
            keeper.draw(&now, &DrawWords { shelf: shelf(from), ..draw_words(&label(lot), *count) }).is_ok()
        }
        Play::Move(lot, count, from, to) => {
            let words = MoveWords {
                lot: label(lot),
                to: SHELVES[*to].to_owned(),
                count: Some(*count),
                shelf: shelf(from),
                size: None,
            };
            keeper.move_containers(&now, &words).is_ok()
        }
        Play::Lose(lot, count, from) => {
            let words = LossWords {
                lot: label(lot),
                count: *count,
                reason: LossReason::Broken,
                shelf: shelf(from),
                size: None,
                unsealed: false,
            };
            keeper.lose(&now, &words).is_ok()
        }
        Play::CountAndAccept(lot, count, on) => {
            let words = CountWords { lot: label(lot), count: *count, shelf: shelf(on), size: None };
            keeper.count_shelf(&now, &words).is_ok_and(|answer| {
                answer.counted == answer.expected
                    || keeper.settle_counts(&now, &label(lot), Settled::Accepted).is_ok()
            })
        }
        Play::TakeBack => keeper.take_back(&now, None, None).is_ok(),
    }
}

/// Plays one act on the plain count; `None` where a household could not have done it.
fn model(jars: &Jars, lots: usize, act: &Play) -> Option<Jars> {
    let mut after = jars.clone();
    let mut take = |lot: usize, shelf: usize, count: i64| {
        let there = after.entry((lot, shelf)).or_default();
        *there -= count;
        *there >= 0
    };
    match *act {
        Play::PutUp(count, on) => {
            after.insert((lots, on), count);
        }
        Play::Draw(lot, count, from) | Play::Lose(lot, count, from) => take(lot, from, count).then_some(())?,
        Play::Move(lot, count, from, to) => {
            take(lot, from, count).then_some(())?;
            *after.entry((lot, to)).or_default() += count;
        }
        Play::CountAndAccept(lot, count, on) => {
            (lot < lots).then_some(())?;
            after.insert((lot, on), count);
        }
        Play::TakeBack => return None,
    }
    Some(after)
}

fn shown(keeper: &Kept) -> Jars {
    let mut jars = Jars::new();
    for (_, lot) in keeper.views().lots.iter() {
        assert_eq!(lot.doubts().count(), 0, "a use case never takes what is not there");
        let number: usize = lot.put_up().unwrap().label[3..].parse().unwrap();
        for (spot, stock) in lot.stands() {
            let shelf =
                SHELVES.iter().position(|name| spot.shelf.as_ref().unwrap().as_str() == *name).unwrap();
            assert!(jars.insert((number - 1, shelf), stock.count).is_none());
        }
    }
    jars
}

proptest! {
    /// No container is in two places, no count goes below zero, and what was taken back was never there.
    #[test]
    fn the_book_counts_jars_as_a_child_would(plays in vec(any_play(), 1..30)) {
        let mut keeper = keeper();
        let mut lots = 0;
        let mut jars = Jars::new();
        // What was before each act that can be taken back, the last on top.
        let mut before: Vec<(Jars, usize)> = Vec::new();
        for (minute, act) in (1..).zip(&plays) {
            let mut counted_alike = false;
            if let Play::CountAndAccept(lot, count, on) = act {
                counted_alike = *lot < lots && jars.get(&(*lot, *on)).copied().unwrap_or(0) == *count;
            }
            let taken = play(&mut keeper, minute, act);
            match (act, model(&jars, lots, act)) {
                (Play::TakeBack, _) => {
                    prop_assert_eq!(taken, !before.is_empty());
                    if let Some((jars_before, lots_before)) = before.pop() {
                        (jars, lots) = (jars_before, lots_before);
                    }
                }
                (_, Some(after)) if taken => {
                    before.push((jars.clone(), lots));
                    if matches!(act, Play::CountAndAccept(..)) && !counted_alike {
                        // Counting and settling are two acts: taking back the second leaves the count asserted.
                        before.push((jars.clone(), lots));
                    }
                    lots += usize::from(matches!(act, Play::PutUp(..)));
                    jars = after;
                }
                (_, Some(_)) => prop_assert!(false, "{act:?} was refused and could be done"),
                (_, None) => prop_assert!(!taken, "{act:?} was taken and could not be done"),
            }
            jars.retain(|_, count| *count > 0);
            prop_assert_eq!(shown(&keeper), jars.clone());
        }
    }
}
