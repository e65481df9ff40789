//! The page `docs/methods/README.md`: each model with the number of its checks and its worst deviation, made from the checks
//! themselves so that it cannot lag behind.

use std::collections::BTreeMap;
use std::fmt::Write;
use std::path::Path;

use crate::ledger::Check;

const HEAD: &str = "\
# Methods

Each model of `crates/foodsci` against the outside: published examples, property tables, and values recorded from
independent libraries. Equation, range, source and departures stand with each function; the rows, with source, place and
basis, in `crates/foodsci/tests/literature/data/`; how near each must be met, and why, in the module of its issuer.

This page is written by the tests. After a change that moves it, run them once with `STILLROOM_WRITE_METHODS=1` and read
the difference before it goes in.

*Worst deviation* is the largest distance from a checked value as a share of it; *of tolerance* is the largest share of a
tolerance that is used up. Above 100 % the tests fail. Where a model is a printed table read between its points, a check
at a point says only that it was copied right; those between the points come from elsewhere.

| model | checks | worst deviation | of tolerance | against |
| --- | --- | --- | --- | --- |
";

fn write_page(checks: &[Check]) -> String {
    let mut models: BTreeMap<&str, Vec<&Check>> = BTreeMap::new();
    for check in checks {
        models.entry(check.model).or_default().push(check);
    }
    let mut page = HEAD.to_owned();
    for (model, checks) in &models {
        let worst = checks.iter().map(|check| check.relative()).fold(0.0, f64::max);
        let used = checks.iter().map(|check| check.used()).fold(0.0, f64::max);
        let mut sources: Vec<&str> = checks.iter().map(|check| check.source.as_str()).collect();
        sources.sort_unstable();
        sources.dedup();
        writeln!(
            page,
            "| {model} | {} | {} | {:.0} % | {} |",
            checks.len(),
            write_share(worst),
            100.0 * used,
            sources.join(", ")
        )
        .unwrap();
    }
    let worst = checks.iter().map(Check::used).fold(0.0, f64::max);
    writeln!(
        page,
        "\n{} checks of {} models; the worst uses {:.0} % of its tolerance.",
        checks.len(),
        models.len(),
        100.0 * worst
    )
    .unwrap();
    page + "\nThe letters of a source are spelled out in the module of its issuer.\n"
}

/// To one digit, rounded up, so that the last binary digits of a machine are not on the page.
fn write_share(share: f64) -> String {
    if share < 1e-9 {
        return "below 1e-9".to_owned();
    }
    let power = libm::floor(libm::log10(share));
    let digit = libm::ceil(share / libm::exp10(power) - 1e-6);
    let (digit, power) = if digit >= 10.0 { (1.0, power + 1.0) } else { (digit, power) };
    format!("{digit:.0}e{power:.0}")
}

/// Pinned: the page is what the checks say.
#[test]
fn the_page_of_methods_is_what_the_checks_say() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../docs/methods/README.md");
    let page = write_page(&crate::all_checks());
    if std::env::var_os("STILLROOM_WRITE_METHODS").is_some() {
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        std::fs::write(&path, &page).unwrap();
    }
    let found = std::fs::read_to_string(&path).unwrap_or_default();
    assert!(
        found == page,
        "docs/methods/README.md lags behind; run the tests with STILLROOM_WRITE_METHODS=1"
    );
}
