//! What the cook wants to do otherwise: read in the cook's words, judged by the change rules.

mod phrases;
mod query;
mod reading;
mod scope;
mod setting;
mod things;
mod verdict;
mod vessels;
mod words;

use almanac::{Almanac, CannerKind, Citation, Formula, JarSize, Pack};

use reading::{Meaning, read_change};
use scope::Scope;
pub(crate) use setting::Setting;
pub(crate) use things::find_thing;
pub(crate) use words::words_of;

use super::answer::ClearedChange;
use super::findings::Findings;
use super::question::{ClearError, Misread};

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

impl Asked {
    /// Whether it names a jar, a pack or a canner, which are looked up in the process tables.
    pub(crate) fn names_a_vessel(&self) -> bool {
        self.jar.is_some() || self.pack.is_some() || self.canner.is_some()
    }
}

/// Reads every change of a question before anything is judged.
pub(crate) fn read_changes(
    almanac: &Almanac,
    changes: &[String],
    setting: &Setting<'_>,
    formula: Option<&Formula>,
) -> Result<Vec<Asked>, ClearError> {
    if changes.is_empty() {
        return Ok(Vec::new());
    }
    let scope = Scope::of(almanac, setting.product, formula);
    let read = |said: &String| {
        if let Some(row) = scope.find_as_printed(said) {
            return Ok(asked(said, vec![Meaning::AsPrinted(row.id.clone())]));
        }
        match read_change(said, setting, scope.formula) {
            Ok(meanings) => Ok(asked(said, meanings)),
            Err(because) => Err(ClearError::ChangeNotUnderstood { change: said.clone(), because }),
        }
    };
    let asked = changes.iter().map(read).collect::<Result<Vec<_>, _>>()?;
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
    let because = match before.iter().find_map(differs) {
        Some(what) => Some(Misread::Contradiction { what }),
        None => before.iter().find_map(|other| opposite(other, one)).map(|what| Misread::Opposite { what }),
    };
    match because {
        Some(because) => Err(ClearError::ChangeNotUnderstood { change: one.said.clone(), because }),
        None => Ok(()),
    }
}

/// What one change takes away and the other puts in.
fn opposite(one: &Asked, other: &Asked) -> Option<String> {
    let less = |asked: &Asked| -> Vec<String> {
        let named = asked.meanings.iter().filter_map(|meaning| match meaning {
            Meaning::Lower(thing) | Meaning::Omit(thing) => Some(thing.name.clone()),
            _ => None,
        });
        named.collect()
    };
    let more = |asked: &Asked, name: &String| {
        asked.meanings.iter().any(|meaning| match meaning {
            Meaning::Raise(thing, _) | Meaning::Add(thing, _) => thing.name == *name,
            _ => false,
        })
    };
    let against = |one: &Asked, other: &Asked| less(one).into_iter().find(|name| more(other, name));
    against(one, other).or_else(|| against(other, one))
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

/// Judges each change by itself and all of them together; `line` is where the line of the changed question stands,
/// none when nothing is printed for it.
pub(crate) fn judge_changes(
    almanac: &Almanac,
    setting: &Setting<'_>,
    formula: Option<&Formula>,
    asked: &[Asked],
    line: Option<&Citation>,
    findings: &mut Findings,
) -> Vec<ClearedChange> {
    let scope = Scope::of(almanac, setting.product, formula);
    let judge_one = |one: &Asked| {
        let mut found = Findings::new();
        for meaning in &one.meanings {
            verdict::judge(almanac, &scope, &one.said, meaning, line, &mut found);
        }
        findings.take_in(&found);
        ClearedChange::of(&one.said, found)
    };
    asked.iter().map(judge_one).collect()
}
