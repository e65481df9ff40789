//! The models against the outside: published examples, tables, and values recorded from independent libraries.
//!
//! One module for each issuer. The rows stand in `data/` with source, place and basis; how a row is put to a model stands in
//! `worked` and `anchored`, and never uses the answer of the row.

#![expect(clippy::unwrap_used, reason = "a check that cannot be asked is a failed test")]

mod altitude_tables2015;
mod anchored;
mod arithmetic2026;
mod ashrae2014;
mod ashrae2017;
mod breidt2014;
mod cengel2003;
mod chemical_engineering2002;
mod coolprop800;
mod food_engineering2009;
mod geankoplis1993;
mod iapws155;
mod iapws1997;
mod ingham2009;
mod ledger;
mod lefevre1924;
mod methods_page;
mod property_tables2026;
mod psychrolib250;
mod recorded_coolprop800;
mod recorded_iapws155;
mod recorded_psychrolib250;
mod rows;
mod scipy1171;
mod sugar_and_pickle_texts1995;
mod worked;

use ledger::Check;

/// Every check there is.
fn all_checks() -> Vec<Check> {
    [
        geankoplis1993::checks(),
        cengel2003::checks(),
        ashrae2017::checks(),
        ashrae2014::checks(),
        iapws1997::checks(),
        breidt2014::checks(),
        ingham2009::checks(),
        lefevre1924::checks(),
        altitude_tables2015::checks(),
        food_engineering2009::checks(),
        chemical_engineering2002::checks(),
        sugar_and_pickle_texts1995::checks(),
        scipy1171::checks(),
        iapws155::checks(),
        arithmetic2026::checks(),
        psychrolib250::checks(),
        coolprop800::checks(),
        recorded_iapws155::checks(),
        recorded_psychrolib250::checks(),
        recorded_coolprop800::checks(),
        property_tables2026::checks(),
    ]
    .concat()
}

#[test]
fn there_are_more_than_three_hundred_checks_and_every_example_is_used() {
    let checks = all_checks();
    assert!(checks.len() > 300, "{}", checks.len());
    let met = |id: &str| checks.iter().any(|check| check.id == id);
    for row in
        rows::worked().iter().chain(&rows::anchors()).chain(&rows::recorded()).chain(&rows::properties())
    {
        // Printed holding times are quoted, never computed.
        let is_quoted = row.source == "BREIDT2007";
        assert!(met(&row.id) || is_quoted, "{} of {} is put to no model", row.id, row.source);
    }
}
