//! The pieces of an act in one line that fits the day sheet.

use super::piece::Piece;
use super::title::Called;
use crate::tell::words;

/// What stands where a phrase is left to the detail.
const LEFT_OUT: &str = " ...";

/// The pieces as one line: in full where that fits, then in fewer words, then with the trailing phrases of its longest
/// part left to the detail.
pub(crate) fn word_title(pieces: &[Piece], room: usize) -> String {
    let clauses = clauses_of(pieces);
    let full = join(clauses.iter().map(|clause| clause.full.as_str()));
    if full.len() <= room {
        return full;
    }
    let mut short: Vec<String> = clauses.into_iter().map(|clause| clause.short).collect();
    loop {
        let line = join(short.iter().map(String::as_str));
        if line.len() <= room {
            return line;
        }
        let Some((cut, at)) = short
            .iter()
            .enumerate()
            .filter_map(|(at, clause)| Some((last_phrase(clause)?, at)))
            .max_by_key(|(cut, at)| (short[*at].len(), *cut))
        else {
            return line;
        };
        short[at].truncate(cut);
        short[at].push_str(LEFT_OUT);
    }
}

fn join<'a>(clauses: impl Iterator<Item = &'a str>) -> String {
    clauses.filter(|clause| !clause.is_empty()).collect::<Vec<_>>().join("; ")
}

/// Where the last phrase of a clause begins; what a jar is filled to is never cut off.
fn last_phrase(clause: &str) -> Option<usize> {
    let clause = clause.strip_suffix(LEFT_OUT).unwrap_or(clause);
    let at = clause.find('(').or_else(|| clause.rfind([',', ';']))?;
    let is_needed = ["headspace", " min"].iter().any(|word| clause[at..].contains(word));
    let kept = clause[..at].trim_end();
    // A verb alone says nothing.
    (!is_needed && kept.contains(' ')).then_some(kept.len())
}

/// The parts of a line: verbs that share an object, and objects that share a verb, are said together.
fn clauses_of(pieces: &[Piece]) -> Vec<Called> {
    let mut clauses = Vec::new();
    let mut run: Vec<&Piece> = Vec::new();
    for piece in pieces {
        if piece.title.is_none() && piece.is_produce_work() {
            run.push(piece);
            continue;
        }
        clauses.extend(word_run(&std::mem::take(&mut run)));
        clauses.push(match &piece.title {
            Some(title) => title.clone(),
            None => Called::plainly(piece.said().trim_end()),
        });
    }
    clauses.extend(word_run(&run));
    clauses
}

/// A stretch of work at the board in one clause.
fn word_run(run: &[&Piece]) -> Option<Called> {
    if run.is_empty() {
        return None;
    }
    let mut parts: Vec<(Vec<&str>, Vec<&str>)> = Vec::new();
    for piece in run {
        let (verb, what) = (piece.action.as_str(), piece.what.as_str());
        match parts.last_mut() {
            Some((verbs, whats)) if *whats == [what] && !verbs.contains(&verb) => verbs.push(verb),
            Some((verbs, whats)) if *verbs == [verb] => whats.push(what),
            _ => parts.push((vec![verb], vec![what])),
        }
    }
    let full = parts.iter().map(|(verbs, whats)| say(verbs, whats)).collect::<Vec<_>>().join("; ");
    let verbs = each_once(run.iter().map(|piece| piece.action.as_str()));
    let whats = each_once(run.iter().map(|piece| piece.what.as_str()));
    let together = say(&verbs, &whats);
    /// A list longer than this is no longer read (ours).
    const READABLE: usize = 60;
    let short = if together.len() <= READABLE || parts.len() == 1 && whats.len() == 1 && !is_list(whats[0]) {
        together
    } else {
        format!("{} everything", and_list(&verbs))
    };
    Some(Called { full, short })
}

fn say(verbs: &[&str], whats: &[&str]) -> String {
    let things = match whats {
        [only] if !is_list(only) => vec![*only],
        _ => each_once(whats.iter().flat_map(|what| things_of(what))),
    };
    format!("{} {}", and_list(verbs), and_list(&things))
}

/// Whether an object is a bare list of things: "tomatoes and onions and peppers".
fn is_list(what: &str) -> bool {
    !what.contains([',', ';']) && what.contains(" and ")
}

fn things_of(what: &str) -> Vec<&str> {
    if is_list(what) { what.split(" and ").collect() } else { vec![what] }
}

fn each_once<'a>(said: impl IntoIterator<Item = &'a str>) -> Vec<&'a str> {
    let mut seen = Vec::new();
    for word in said {
        if !seen.contains(&word) {
            seen.push(word);
        }
    }
    seen
}

fn and_list(said: &[&str]) -> String {
    words::and_list(&said.iter().map(|word| (*word).to_owned()).collect::<Vec<_>>())
}

#[cfg(test)]
mod tests {
    use super::*;
    use almanac::{Action, Attention, Care, Equipment};

    use crate::work::piece::Phase;

    fn piece(action: Action, what: &str) -> Piece {
        Piece {
            phase: Phase::Head,
            action,
            what: what.to_owned(),
            minutes: 10,
            spread: None,
            slack: 0,
            attention: Attention::Hands,
            care: Care::Ordinary,
            tool: Equipment::None,
            may_wait: None,
            note: String::new(),
            title: None,
            handles: vec![],
        }
    }

    fn check(pieces: &[(Action, &str)], room: usize, title: &str) {
        let pieces: Vec<Piece> = pieces.iter().map(|(action, what)| piece(*action, what)).collect();
        assert_eq!(word_title(&pieces, room), title);
    }

    #[test]
    fn things_in_a_row_are_listed_with_commas() {
        check(
            &[(Action::Wash, "tomatoes and onions and jalapeno peppers")],
            80,
            "wash tomatoes, onions and jalapeno peppers",
        );
        check(
            &[(Action::Chop, "long green chiles"), (Action::Chop, "garlic")],
            80,
            "chop long green chiles and garlic",
        );
    }

    #[test]
    fn a_title_that_grows_long_says_verbs_and_things_once() {
        let board = [
            (Action::Core, "tomatoes"),
            (Action::Seed, "peppers"),
            (Action::Chop, "tomatoes"),
            (Action::Chop, "peppers"),
        ];
        check(&board, 80, "core tomatoes; seed peppers; chop tomatoes and peppers");
        check(&board, 45, "core, seed and chop tomatoes and peppers");
        let many = [
            (Action::Core, "tomatoes of the slicing kind"),
            (Action::Seed, "long green chiles"),
            (Action::Chop, "tomatoes of the slicing kind and onions"),
        ];
        check(&many, 60, "core, seed and chop everything");
    }

    #[test]
    fn what_is_cut_off_is_marked_and_a_verb_is_never_left_alone() {
        let mix = [(Action::Mix, "sugar, mustard and cornstarch, stirring"), (Action::Boil, "all")];
        check(&mix, 36, "mix sugar ...; boil all");
        check(&[(Action::Wash, "peppers (bell, Hungarian or banana)")], 20, "wash peppers ...");
        check(&[(Action::Mix, "(all)")], 2, "mix (all)");
    }
}
