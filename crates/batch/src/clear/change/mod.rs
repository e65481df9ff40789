//! What the cook wants to do otherwise: read in the cook's words, judged by the change rules.

mod phrases;
mod query;
mod reading;
mod scope;
mod things;
mod verdict;
mod vessels;
mod words;

use almanac::{Almanac, CannerKind, Formula, JarSize, Pack};

use reading::{Meaning, read_change};
use scope::Scope;

use super::findings::Findings;
use super::question::{ClearError, ClearQuestion, Misread};

/// One change as it was asked, with what it means.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Asked {
    /// The cook's words.
    pub(crate) said: String,
    /// What they mean; every meaning is judged and the strictest verdict stands.
    meanings: Vec<Meaning>,
    /// The jar it names.
    pub(crate) jar: Option<JarSize>,
    /// The pack it names.
    pub(crate) pack: Option<Pack>,
    /// The canner it names.
    pub(crate) canner: Option<CannerKind>,
}

/// Reads every change of a question before anything is judged.
pub(crate) fn read_changes(
    almanac: &Almanac,
    question: &ClearQuestion,
    formula: Option<&Formula>,
) -> Result<Vec<Asked>, ClearError> {
    if question.changes.is_empty() {
        return Ok(Vec::new());
    }
    let scope = Scope::of(almanac, question, formula);
    let read = |said: &String| {
        if let Some(row) = scope.find_as_printed(said) {
            return Ok(asked(said, vec![Meaning::AsPrinted(row.id.clone())]));
        }
        match read_change(said, question, scope.formula) {
            Ok(meanings) => Ok(asked(said, meanings)),
            Err(because) => Err(ClearError::ChangeNotUnderstood { change: said.clone(), because }),
        }
    };
    let asked = question.changes.iter().map(read).collect::<Result<Vec<_>, _>>()?;
    for (at, one) in asked.iter().enumerate() {
        require_agreement(&asked[..at], one)?;
    }
    Ok(asked)
}

/// Only one jar, pack and canner can be meant.
fn require_agreement(before: &[Asked], one: &Asked) -> Result<(), ClearError> {
    let differs = |other: &Asked| {
        let jar = one.jar.is_some() && other.jar.is_some() && one.jar != other.jar;
        let pack = one.pack.is_some() && other.pack.is_some() && one.pack != other.pack;
        let canner = one.canner.is_some() && other.canner.is_some() && one.canner != other.canner;
        jar.then_some("jar").or(pack.then_some("pack")).or(canner.then_some("canner"))
    };
    match before.iter().find_map(differs) {
        Some(what) => {
            let because = Misread::Contradiction { what };
            Err(ClearError::ChangeNotUnderstood { change: one.said.clone(), because })
        }
        None => Ok(()),
    }
}

fn asked(said: &str, meanings: Vec<Meaning>) -> Asked {
    let mut asked = Asked { said: said.to_owned(), meanings, jar: None, pack: None, canner: None };
    for meaning in &asked.meanings {
        match meaning {
            Meaning::Jar { to, .. } => asked.jar = Some(*to),
            Meaning::Pack(pack) => asked.pack = Some(*pack),
            Meaning::Canner(canner) => asked.canner = Some(*canner),
            _ => {}
        }
    }
    asked
}

/// Judges every change together; `line_found` says whether the changed question has a printed line.
pub(crate) fn judge_changes(
    almanac: &Almanac,
    question: &ClearQuestion,
    formula: Option<&Formula>,
    asked: &[Asked],
    line_found: bool,
    findings: &mut Findings,
) {
    let scope = Scope::of(almanac, question, formula);
    for one in asked {
        for meaning in &one.meanings {
            verdict::judge(almanac, &scope, &one.said, meaning, line_found, findings);
        }
    }
}
