//! Printed process tables against what `clear` serves.
//!
//! Each block was typed from the publication named beside it, without looking at the tables of the program,
//! and says how it was come by: *seen* is a page read as text, *from memory* is recalled. Every cell is asked
//! at both ends of its altitude band, so a band that starts or stops a foot off is found too.

mod fruit;
mod meats;
mod pickles;
mod seen;
mod sweet_spreads;
mod table;
mod tomatoes;
mod traps;
mod vegetables;

/// The least that the blocks above must hold, so that a block lost in an edit does not go unseen.
#[test]
fn the_printed_cells_are_as_many_as_promised() {
    let mut printed: Vec<table::Printed> = Vec::new();
    printed.extend(fruit::ALL.iter().copied());
    printed.extend(tomatoes::ALL.iter().copied());
    printed.extend(pickles::ALL.iter().copied());
    printed.extend(sweet_spreads::ALL.iter().copied());
    printed.extend(vegetables::ALL.iter().copied());
    printed.extend(meats::ALL.iter().copied());
    let cells: usize = printed.iter().map(table::Printed::cells).sum();
    let foods: std::collections::BTreeSet<&str> = printed.iter().map(|one| one.food).collect();
    assert!(cells >= 80, "{cells} cells");
    assert!(foods.len() >= 30, "{} foods", foods.len());
}
