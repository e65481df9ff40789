//! Whatever order entries come in, however often, the views are those of the final order.

use std::sync::Arc;

use book::act::{
    Act, BasketTakenIn, BasketUsed, BasketWeight, ContainersMoved, DifferenceSettled, Drawn, HouseDropped,
    HouseSet, HouseThing, LotPutUp, Noted, Put, SealOutcome, SealsChecked, Settled, ShelfCounted, Spot,
    Struck, Told, ToppedUp, WorkingBegun, WorkingKind, WorkingLooked,
};
use book::view::{Baskets, Batches, EatFirst, House, Lots, Shelves, Tallies, View, Views, Workings, rebuild};
use book::{Amount, Book, Entry, ItemId, MemoryStore, Store as _, Written, export_lines, read_lines};
use proptest::collection::vec;
use proptest::prelude::*;

use crate::told::{entry, id};

/// Few names, so that acts meet.
const NAMES: u32 = 24;

fn any_spot() -> impl Strategy<Value = Spot> {
    (
        prop_oneof![Just("pint"), Just("quart")],
        proptest::option::of(prop_oneof![Just("cellar"), Just("pantry")]),
    )
        .prop_map(|(size, shelf)| Spot { size: size.into(), shelf: shelf.map(ItemId::from) })
}

fn any_act() -> impl Strategy<Value = Act> {
    let of = || (0..NAMES).prop_map(id);
    let some = 1..6_i64;
    prop_oneof![
        4 => (vec((any_spot(), 1..9_i64), 1..3), proptest::option::of(2020..2027_i16)).prop_map(|(put, year)| {
            Act::from(LotPutUp {
                label: "26-001".into(),
                name: "plums".into(),
                formula: None,
                told: Told::AfterTheFact,
                put_up: year.and_then(book::RoughDate::year),
                containers: put.into_iter().map(|(spot, count)| Put { spot, count }).collect(),
                planned: vec![],
                batch: None,
                loads: vec![],
                from_lots: vec![],
                supplies: vec![],
                eat_by: None,
                open: None,
            })
        }),
        3 => (of(), any_spot(), some.clone()).prop_map(|(lot, spot, count)| {
            Drawn { lot, spot, count, unsealed: 0, went: None }.into()
        }),
        2 => (of(), any_spot(), some.clone()).prop_map(|(lot, spot, count)| {
            ContainersMoved { lot, spot, count, unsealed: 1, to: Some("attic".into()) }.into()
        }),
        2 => (of(), any_spot(), some.clone()).prop_map(|(lot, spot, count)| ShelfCounted { lot, spot, count }.into()),
        2 => (of(), of(), any::<bool>()).prop_map(|(lot, count, accepted)| {
            let how = if accepted { Settled::Accepted } else { Settled::BookWasRight };
            DifferenceSettled { lot, count, how }.into()
        }),
        1 => (of(), any_spot(), some.clone()).prop_map(|(lot, spot, count)| {
            SealsChecked { lot, spot, count, outcome: SealOutcome::Failed }.into()
        }),
        1 => (of(), 2018..2027_i16).prop_map(|(lot, year)| {
            ToppedUp { lot, amount: None, basket: None, from: book::RoughDate::year(year) }.into()
        }),
        1 => (1..99_i64).prop_map(|count| BasketTakenIn {
            name: "plums".into(),
            produce: None,
            weight: BasketWeight::Net(Amount::Count(count)),
            condition: vec![],
            origin: None,
            price: None,
        }.into()),
        1 => (of(), proptest::option::of(some)).prop_map(|(basket, count)| {
            BasketUsed { basket, amount: count.map(Amount::Count), into: None }.into()
        }),
        1 => any::<bool>().prop_map(|careful| HouseSet {
            item: "wilma".into(),
            thing: HouseThing::Person { name: "Wilma".into(), careful },
        }.into()),
        1 => Just(HouseDropped { item: "wilma".into() }.into()),
        1 => Just(WorkingBegun {
            name: "kraut".into(), what: WorkingKind::Ferment, batch: None, lot: None, vessel: None, shelf: None,
            amount: None, next_look: None,
        }.into()),
        1 => (of(), 1..28_i8).prop_map(|(working, day)| WorkingLooked {
            working, temp_mc: None, ph_hundredths: None, weight_mg: None, taste: None, surface: None, topped_up: None,
            next_look: Some(jiff::civil::date(2026, 10, day)),
        }.into()),
        1 => Just(Noted { about: None, words: "rain".into() }.into()),
        4 => Just(Struck {}.into()),
    ]
}

/// Entries with clocks that jump, corrections and strikes of anything, rings among them.
fn any_entries() -> impl Strategy<Value = Vec<Entry>> {
    let one = (any_act(), 0..6_i64, proptest::option::weighted(0.3, 0..NAMES));
    vec(one, 1..NAMES as usize).prop_map(|acts| {
        let numbered = acts.into_iter().zip(0..);
        numbered
            .map(|((act, minute, follows), number)| {
                let must_follow = matches!(act, Act::Struck(_));
                let mut entry = entry(number, minute, act);
                entry.follows = follows.or(must_follow.then_some(number / 2)).map(id);
                entry
            })
            .collect()
    })
}

fn draw(entries: &[Entry]) -> Views {
    Views::rebuild(entries.iter().cloned().map(Arc::new))
}

fn alone<V: View>(entries: &[Entry]) -> V {
    rebuild(entries.iter().cloned().map(Arc::new))
}

proptest! {
    #[test]
    fn any_order_of_arrival_gives_the_views_of_the_final_order(
        (entries, shuffled) in any_entries().prop_flat_map(|entries| {
            let twice = [entries.clone(), entries.clone()].concat();
            (Just(entries), Just(twice).prop_shuffle())
        })
    ) {
        let mut last = entries.clone();
        last.sort_by_key(|entry| (entry.happened_at.at(), entry.id));
        prop_assert_eq!(draw(&shuffled), draw(&last));
    }

    #[test]
    fn each_view_drawn_alone_is_the_one_drawn_with_the_others(entries in any_entries()) {
        let views = draw(&entries);
        prop_assert_eq!(&alone::<House>(&entries), &views.house);
        prop_assert_eq!(&alone::<Baskets>(&entries), &views.baskets);
        prop_assert_eq!(&alone::<Batches>(&entries), &views.batches);
        prop_assert_eq!(&alone::<Lots>(&entries), &views.lots);
        prop_assert_eq!(&alone::<Workings>(&entries), &views.workings);
        prop_assert_eq!(&alone::<Tallies>(&entries), &views.tallies);
        prop_assert_eq!(&Shelves::rebuild(&views.lots), &views.shelves);
        prop_assert_eq!(&EatFirst::rebuild(&views.lots), &views.eat_first);
    }

    #[test]
    fn no_shown_number_is_below_zero(entries in any_entries()) {
        for (_, lot) in draw(&entries).lots.iter() {
            for (_, stock) in lot.stands() {
                prop_assert!(stock.count > 0 && (0..=stock.count).contains(&stock.unsealed));
            }
        }
    }

    #[test]
    fn a_file_brings_an_empty_book_to_the_same_views_and_bytes(entries in any_entries()) {
        let written: Vec<Written> = entries.iter().cloned().map(|entry| Written::of(entry).unwrap()).collect();
        let mut first = MemoryStore::default();
        let head = first.append(&written, None).unwrap();
        let mut text = String::new();
        export_lines(&first, &mut |part| text += part).unwrap();

        let mut second = Book::open(MemoryStore::default()).unwrap();
        second.merge(&read_lines(&text).unwrap()).unwrap();
        prop_assert_eq!(second.head(), head);
        let first = Book::open(first).unwrap();
        prop_assert_eq!(second.views(), first.views());
        let mut again = String::new();
        export_lines(second.store(), &mut |part| again += part).unwrap();
        prop_assert_eq!(again, text);
    }

    #[test]
    fn two_books_merged_either_way_show_the_same(entries in any_entries(), cut in 0..24_usize, both in 0..24_usize) {
        let written: Vec<Written> = entries.iter().cloned().map(|entry| Written::of(entry).unwrap()).collect();
        let (cut, both) = (cut.min(written.len()), both.min(written.len()));
        let (one, other) = (&written[..cut.max(both)], &written[cut.min(both)..]);
        let mut here = Book::open(MemoryStore::default()).unwrap();
        here.merge(one).unwrap();
        let mut there = Book::open(MemoryStore::default()).unwrap();
        there.merge(other).unwrap();
        let added = here.merge(other).unwrap();
        there.merge(one).unwrap();
        prop_assert_eq!(here.views(), there.views());
        prop_assert_eq!(added as usize, written.len() - one.len());
        prop_assert_eq!(here.merge(other).unwrap(), 0);
    }
}
