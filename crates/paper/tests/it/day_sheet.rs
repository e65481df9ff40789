//! The day sheet as a page.

use paper::day::{Act, Attention, DaySheet, Reason};
use paper::render_day_sheet;

use crate::sample::sample_day;
use crate::well_formed::{find_faults, remove_style};

#[test]
fn a_whole_day_is_set_as_it_was() {
    insta::assert_snapshot!(remove_style(&render_day_sheet(&sample_day())));
}

#[test]
fn a_page_is_well_formed_full_or_empty() {
    for sheet in [sample_day(), DaySheet::default()] {
        assert!(find_faults(&render_day_sheet(&sheet)).is_empty());
    }
}

#[test]
fn a_page_has_no_scripts_and_fetches_nothing() {
    let page = render_day_sheet(&sample_day());
    for forbidden in ["<script", "http://", "https://", "<link", "<img", "@import"] {
        assert!(!page.contains(forbidden), "{forbidden} stands in the page");
    }
}

#[test]
fn headings_go_down_one_step_at_a_time() {
    let page = remove_style(&render_day_sheet(&sample_day()));
    let steps: Vec<u32> = page
        .match_indices("<h")
        .filter_map(|(at, _)| page[at + 2..].chars().next().and_then(|letter| letter.to_digit(10)))
        .collect();
    assert_eq!(steps.iter().filter(|step| **step == 1).count(), 1);
    assert!(steps.windows(2).all(|pair| pair[1] <= pair[0] + 1), "{steps:?}");
}

#[test]
fn only_what_must_not_be_left_is_framed() {
    let mut sheet =
        DaySheet { clock: vec![Act { attention: Attention::Eyes, ..Act::default() }], ..DaySheet::default() };
    assert!(!render_day_sheet(&sheet).contains("class=\"hold\""));
    sheet.clock[0].must_not_be_left = true;
    assert_eq!(render_day_sheet(&sheet).matches("class=\"hold\"").count(), 1);
}

#[test]
fn what_was_typed_stays_text() {
    let not_made = vec![Reason { what: "<script>alert(1)</script>".into(), why: "\"no\" & no".into() }];
    let page = render_day_sheet(&DaySheet { title: "<b>".into(), not_made, ..DaySheet::default() });
    assert!(!page.contains("<script>"));
    assert!(page.contains("&lt;script&gt;alert(1)&lt;/script&gt;"));
    assert!(find_faults(&page).is_empty());
}
