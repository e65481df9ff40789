//! What an extension educator is asked all season, put to the program by the door a person uses.
//!
//! Each question carries the verdict an educator would sign, and in our own words the sentence of the publication
//! it rests on, with issuer, title, year and place. Sentences marked *read again* were read in the publication, or
//! in a copy that names it, on 25 November 2026; the others stand where the row of the program says.

mod changes;
mod foods;
mod practices;
mod question;
mod refused;
mod vessels;

/// The least that the lists hold, so that a question lost in an edit does not go unseen.
#[test]
fn the_standing_questions_are_sixty_and_more_and_none_is_asked_twice() {
    let lists = [foods::ALL, changes::ALL, practices::ALL, vessels::ALL];
    let asked: Vec<&str> = lists.into_iter().flatten().map(|question| question.asked).collect();
    let different: std::collections::BTreeSet<&str> = asked.iter().copied().collect();
    assert!(asked.len() >= 60, "{} questions", asked.len());
    assert_eq!(asked.len(), different.len(), "a question is asked twice");
}
