//! The views: entries before, an act, what is shown after.

use std::sync::Arc;

use book::act::{
    Act, BasketLeft, BasketTakenIn, BasketUsed, BasketWeight, ContainersLost, ContainersMoved,
    DifferenceSettled, Drawn, LossReason, LotPutUp, Put, SealOutcome, SealsChecked, Settled, ShelfCounted,
    Spot, Struck, Told, ToppedUp, Went, WentWhere, WorkingBegun, WorkingEnded, WorkingKind, WorkingLooked,
    WorkingOutcome,
};
use book::view::{Figure, Remaining, Views, trace_lot};
use book::{Amount, Entry, Id, ItemId, Milligrams, read_lines};

use crate::told::{entry, id};

fn spot(shelf: &str) -> Spot {
    Spot { size: "half-pint".into(), shelf: Some(ItemId::from(shelf)) }
}

/// Nine half-pints of damson jam in the cellar.
fn damson() -> LotPutUp {
    LotPutUp {
        label: "26-031".into(),
        name: "damson jam".into(),
        formula: None,
        told: Told::AfterTheFact,
        put_up: Some("2026-09-01".parse().unwrap()),
        containers: vec![Put { spot: spot("cellar"), count: 9 }],
        planned: vec![],
        batch: None,
        loads: vec![],
        from_lots: vec![],
        supplies: vec![],
        eat_by: None,
        open: None,
    }
}

fn drawn(count: i64, went: Option<Went>) -> Drawn {
    Drawn { lot: id(1), spot: spot("cellar"), count, unsealed: 0, went }
}

fn moved(count: i64) -> ContainersMoved {
    ContainersMoved { lot: id(1), spot: spot("cellar"), count, unsealed: 0, to: Some(ItemId::from("pantry")) }
}

fn counted(count: i64) -> ShelfCounted {
    ShelfCounted { lot: id(1), spot: spot("cellar"), count }
}

/// Acts a minute apart, the first being entry 1.
fn views(acts: Vec<Act>) -> Views {
    let entries = acts.into_iter().zip(1..).map(|(act, number)| entry(number, i64::from(number), act));
    draw(entries.collect())
}

fn draw(entries: Vec<Entry>) -> Views {
    Views::rebuild(entries.into_iter().map(Arc::new))
}

fn stands(views: &Views) -> Vec<(String, i64, i64)> {
    let lot = views.lots.find(id(1)).unwrap();
    lot.stands()
        .map(|(spot, stock)| (spot.shelf.as_ref().unwrap().to_string(), stock.count, stock.unsealed))
        .collect()
}

#[test]
fn containers_stand_where_they_were_put_and_moved() {
    let views = views(vec![damson().into(), moved(4).into(), drawn(1, None).into()]);
    assert_eq!(stands(&views), [("cellar".into(), 4, 0), ("pantry".into(), 4, 0)]);
    let on = |shelf: &str| views.shelves.lots_on(Some(&ItemId::from(shelf))).collect::<Vec<Id>>();
    assert_eq!((on("cellar"), on("pantry"), on("attic")), (vec![id(1)], vec![id(1)], vec![]));
}

#[test]
fn an_empty_lot_leaves_the_shelf_and_the_row() {
    let views = views(vec![damson().into(), drawn(9, Some(Went::Eaten)).into()]);
    assert_eq!(stands(&views), []);
    assert_eq!(views.shelves.iter().count(), 0);
    assert_eq!(views.eat_first.in_order(jiff::civil::date(2026, 12, 1)).count(), 0);
}

#[test]
fn failed_seals_stay_marked_until_they_are_gone() {
    let failed = SealsChecked { lot: id(1), spot: spot("cellar"), count: 2, outcome: SealOutcome::Failed };
    let lost = ContainersLost {
        lot: id(1),
        spot: spot("cellar"),
        count: 1,
        unsealed: 1,
        reason: LossReason::Spoiled,
    };
    let views = views(vec![damson().into(), failed.into(), lost.into()]);
    assert_eq!(stands(&views), [("cellar".into(), 8, 1)]);
}

#[test]
fn a_count_changes_nothing_until_it_is_settled() {
    let before = views(vec![damson().into(), counted(7).into()]);
    assert_eq!(stands(&before), [("cellar".into(), 9, 0)]);
    let count = &before.lots.find(id(1)).unwrap().counts()[&id(2)];
    assert_eq!((count.expected, count.counted, count.is_open()), (9, 7, true));

    let settle = |how| DifferenceSettled { lot: id(1), count: id(2), how };
    let accepted = views(vec![damson().into(), counted(7).into(), settle(Settled::Accepted).into()]);
    assert_eq!(stands(&accepted), [("cellar".into(), 7, 0)]);
    let refused = views(vec![damson().into(), counted(7).into(), settle(Settled::BookWasRight).into()]);
    assert_eq!(stands(&refused), [("cellar".into(), 9, 0)]);
}

#[test]
fn a_draw_told_late_explains_an_accepted_count() {
    // Counted seven of nine at minute 20, accepted; then a telephone tells of two drawn at minute 10.
    let settled = DifferenceSettled { lot: id(1), count: id(2), how: Settled::Accepted };
    let views = draw(vec![
        entry(1, 1, damson()),
        entry(2, 20, counted(7)),
        entry(3, 21, settled),
        entry(4, 10, drawn(2, Some(Went::Eaten))),
    ]);
    assert_eq!(stands(&views), [("cellar".into(), 7, 0)]);
}

#[test]
fn the_last_jar_drawn_twice_is_a_doubt_and_no_negative_number() {
    let views = views(vec![damson().into(), drawn(9, None).into(), drawn(1, None).into()]);
    assert_eq!(stands(&views), []);
    let doubts: Vec<i64> = views.lots.find(id(1)).unwrap().doubts().map(|(_, number)| number).collect();
    assert_eq!(doubts, [1]);
}

#[test]
fn where_a_jar_went_is_told_later_by_a_correction() {
    let mut told = entry(3, 2, drawn(1, Some(Went::Given("Otto".into()))));
    told.follows = Some(id(2));
    let views = draw(vec![entry(1, 1, damson()), entry(2, 2, drawn(1, None)), told]);
    assert_eq!(stands(&views), [("cellar".into(), 8, 0)]);
    let day = jiff::civil::date(2026, 9, 1);
    let sum = views.tallies.sum(day..=day);
    assert_eq!(sum[&Figure::Drawn(id(1), "half-pint".into(), Some(Went::Given("Otto".into())))], 1);
    assert_eq!(sum.len(), 2, "{sum:?}");
}

#[test]
fn a_clock_set_back_or_in_1970_loses_nothing() {
    let mut in_1970 = entry(2, 2, drawn(1, None));
    in_1970.happened_at = book::Moment::utc(jiff::Timestamp::UNIX_EPOCH);
    in_1970.arrived_at = jiff::Timestamp::UNIX_EPOCH;
    let hour_back = entry(3, -59, drawn(2, None));
    let views = draw(vec![entry(1, 1, damson()), in_1970, hour_back]);
    assert_eq!(stands(&views), [("cellar".into(), 6, 0)]);
}

#[test]
fn the_night_of_two_hours_is_counted_once() {
    let at = |number, moment: &str, act: Act| Entry {
        happened_at: moment.parse().unwrap(),
        ..entry(number, 0, act)
    };
    let views = draw(vec![
        at(1, "2026-11-01T01:10:00-04:00[America/New_York]", damson().into()),
        at(3, "2026-11-01T01:05:00-05:00[America/New_York]", drawn(1, None).into()),
        at(2, "2026-11-01T01:50:00-04:00[America/New_York]", counted(9).into()),
    ]);
    // By the wall the draw came first; it did not.
    assert_eq!(views.lots.find(id(1)).unwrap().counts()[&id(2)].expected, 9);
    let day = jiff::civil::date(2026, 11, 1);
    assert_eq!(views.tallies.sum(day..=day)[&Figure::Drawn(id(1), "half-pint".into(), None)], 1);
}

#[test]
fn a_struck_lot_is_gone_from_every_view() {
    let mut strike = entry(3, 3, Struck {});
    strike.follows = Some(id(1));
    let views = draw(vec![entry(1, 1, damson()), entry(2, 2, drawn(1, None)), strike]);
    assert!(views.lots.find(id(1)).unwrap().put_up().is_none());
    assert_eq!(views.lots.iter().count() + views.lots.labels().count() + views.shelves.iter().count(), 0);
    assert_eq!(views.eat_first.in_order(jiff::civil::date(2026, 12, 1)).count(), 0);
}

#[test]
fn what_has_not_sealed_comes_first_then_what_is_past_its_date_then_the_oldest() {
    let lot = |put_up: Option<&str>, eat_by: Option<&str>| LotPutUp {
        put_up: put_up.map(|date| date.parse().unwrap()),
        eat_by: eat_by.map(|date| date.parse().unwrap()),
        ..damson()
    };
    let failed = SealsChecked { lot: id(1), spot: spot("cellar"), count: 1, outcome: SealOutcome::Failed };
    let views = views(vec![
        lot(Some("2026-09-01"), None).into(),
        lot(Some("2026-07-01"), Some("2026-11")).into(),
        lot(Some("2025"), None).into(),
        lot(None, None).into(),
        lot(Some("2024-08"), Some("2027-08")).into(),
        failed.into(),
    ]);
    let order: Vec<Id> = views.eat_first.in_order(jiff::civil::date(2026, 12, 1)).collect();
    assert_eq!(order, [id(1), id(2), id(4), id(5), id(3)]);
}

#[test]
fn an_open_container_keeps_the_date_of_its_oldest_part() {
    let top_up = |from: Option<&str>| ToppedUp {
        lot: id(1),
        amount: None,
        basket: None,
        from: from.map(|date| date.parse().unwrap()),
    };
    let views = views(vec![
        damson().into(),
        top_up(Some("2026-08-02")).into(),
        top_up(Some("2026-08-20")).into(),
        top_up(None).into(),
    ]);
    assert_eq!(views.lots.find(id(1)).unwrap().oldest().unwrap().to_string(), "2026-08-02");
}

#[test]
fn a_basket_knows_what_is_left_of_it() {
    let taken: Act = BasketTakenIn {
        name: "damsons".into(),
        produce: None,
        weight: BasketWeight::Gross { gross_mg: Milligrams(5_400), tare_mg: Milligrams(400), bowl: None },
        condition: vec![],
        origin: None,
        price: None,
    }
    .into();
    let used = |amount| Act::from(BasketUsed { basket: id(1), amount, into: None });
    let left = BasketLeft { basket: id(1), amount: None, went: WentWhere::Composted, to: None };
    let remaining = |acts| views(acts).baskets.find(id(1)).unwrap().remaining();
    let grams = |number| Amount::Mass(Milligrams(number));
    assert_eq!(remaining(vec![taken.clone()]), Remaining::Known(grams(5_000)));
    assert_eq!(remaining(vec![taken.clone(), used(Some(grams(3_000)))]), Remaining::Known(grams(2_000)));
    assert_eq!(remaining(vec![taken.clone(), used(Some(Amount::Count(3)))]), Remaining::AtMost(grams(5_000)));
    assert_eq!(remaining(vec![taken.clone(), used(Some(grams(3_000))), left.into()]), Remaining::Nothing);
    assert_eq!(remaining(vec![taken, used(Some(grams(9_000)))]), Remaining::Nothing);
}

#[test]
fn a_working_is_due_until_it_ends() {
    let day = |day| Some(jiff::civil::date(2026, 9, day));
    let begun = WorkingBegun {
        name: "kraut".into(),
        what: WorkingKind::Ferment,
        batch: None,
        lot: None,
        vessel: None,
        shelf: None,
        amount: None,
        next_look: day(5),
    };
    let looked = WorkingLooked {
        working: id(1),
        temp_mc: None,
        ph_hundredths: None,
        weight_mg: None,
        taste: Some("not sour enough".into()),
        surface: None,
        topped_up: None,
        next_look: day(9),
    };
    let ended = WorkingEnded { working: id(1), outcome: WorkingOutcome::Done, lot: None };
    let due = |views: &Views, on| views.workings.due(jiff::civil::date(2026, 9, on)).len();
    let begun_only = views(vec![begun.clone().into()]);
    assert_eq!((due(&begun_only, 4), due(&begun_only, 5)), (0, 1));
    let looked_at = views(vec![begun.clone().into(), looked.clone().into()]);
    assert_eq!((due(&looked_at, 5), due(&looked_at, 9)), (0, 1));
    let done = views(vec![begun.into(), looked.into(), ended.into()]);
    assert_eq!(due(&done, 9), 0);
}

#[test]
fn a_jar_is_traced_to_its_load_batch_basket_and_sisters() {
    let text = include_str!("one_of_each.jsonl");
    let mut entries: Vec<Entry> =
        read_lines(text).unwrap().into_iter().map(book::Written::into_entry).collect();
    // A second lot that shared nothing but the box of lids, and a third that shared nothing.
    let lids = LotPutUp { label: "26-032".into(), supplies: vec![ItemId::from("lids-3")], ..damson() };
    entries.push(entry(900, 9000, lids));
    entries.push(entry(901, 9001, LotPutUp { label: "26-033".into(), ..damson() }));
    let views = draw(entries);
    let lot = views.lots.with_label("26-031").next().unwrap();
    let trace = trace_lot(&views, lot).unwrap();
    let items: Vec<&str> = trace.items.iter().map(ItemId::as_str).collect();
    assert_eq!(items, ["big-kettle", "lids-3", "sugar-7"]);
    assert_eq!((trace.loads.len(), trace.baskets.len(), trace.batch.is_some()), (1, 1, true));
    let sisters: Vec<Id> = trace.sisters.iter().map(|sister| sister.lot).collect();
    assert_eq!(sisters, [id(900)]);
}
