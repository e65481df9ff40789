//! What is wrong with a question, and under which field it is said.

use almanac::{Almanac, FormulaId, ProductId};
use batch::clear::ClearError;
use kitchen::ask::{AskError, NameKind};
use kitchen::wording::{as_sentence, capitalize};

use super::process::Typed;

/// What is wrong, where, and what to do.
pub(crate) struct Wrong {
    /// The name of the field.
    pub(crate) field: &'static str,
    /// One sentence of what is wrong.
    pub(crate) why: String,
    /// One of what to do; empty where the choices say it.
    pub(crate) hint: String,
    /// What may have been meant: the words, and the address that asks with them.
    pub(crate) meant: Vec<(String, String)>,
}

/// What is wrong with the question as it was typed.
pub(crate) fn find_wrong(almanac: &Almanac, error: &AskError, typed: &Typed) -> Wrong {
    let (why, hint) = sentences(error);
    let field = field_of(error);
    let meant = match error {
        AskError::NoSuchName { nearest: names, .. } | AskError::SeveralNames { ids: names, .. } => names
            .iter()
            .filter_map(|name| Some((say_id(almanac, field, name), address_with(field, name, typed)?)))
            .collect(),
        _ => Vec::new(),
    };
    let hint = match error {
        AskError::NoSuchName { nearest, kind, .. } if nearest.is_empty() => {
            format!("Type the first letters of the {kind}; the list shows what is on file.")
        }
        _ if !meant.is_empty() => "Did you mean:".to_owned(),
        _ => hint,
    };
    Wrong { field, why, hint, meant }
}

/// The error and its hint, each as a sentence.
fn sentences(error: &AskError) -> (String, String) {
    let said = match error {
        AskError::NoSuchName { kind, typed, .. } => format!("no {kind} is called {typed:?}"),
        AskError::SeveralNames { kind, typed, .. } => format!("{typed:?} may be more than one {kind}"),
        other => other.to_string(),
    };
    let (why, hint) = said.split_once("hint:").unwrap_or((&said, ""));
    (as_sentence(why.trim().trim_end_matches(';')), as_sentence(hint.trim()))
}

fn field_of(error: &AskError) -> &'static str {
    match error {
        AskError::NoSuchName { kind: NameKind::Formula, .. }
        | AskError::SeveralNames { kind: NameKind::Formula, .. } => "with",
        AskError::NoSuchName { .. } | AskError::SeveralNames { .. } | AskError::Fit(_) => "food",
        AskError::UnknownWord { what, .. } | AskError::Missing { what, .. } => match *what {
            "pack" => "pack",
            "jar" => "jar",
            "canner" => "canner",
            _ => "gauge_tested",
        },
        AskError::AltitudeMissing | AskError::Unreadable { what: "altitude", .. } => "altitude",
        AskError::Unreadable { .. } => "gauge_error",
        AskError::Clear(clear) => match **clear {
            ClearError::UnknownFood { .. } => "food",
            ClearError::UnknownFormula { .. } | ClearError::FormulaOfAnotherFood { .. } => "with",
            ClearError::GaugeErrorOutOfRange { .. } => "gauge_error",
            ClearError::ChangeNotUnderstood { .. } => "change",
        },
    }
}

/// The name of what an id stands for.
fn say_id(almanac: &Almanac, field: &str, id: &str) -> String {
    let name = match field {
        "food" => almanac
            .product(&ProductId::from(id))
            .and_then(|product| product.names.first())
            .map(ToString::to_string),
        _ => almanac.formula(&FormulaId::from(id)).map(|formula| formula.name.to_string()),
    };
    capitalize(&name.unwrap_or_else(|| id.to_owned()))
}

/// The address that asks the same with another word in one field.
fn address_with(field: &str, word: &str, typed: &Typed) -> Option<String> {
    let mut other = typed.clone();
    *(match field {
        "food" => &mut other.food,
        "with" => &mut other.with,
        _ => return None,
    }) = word.to_owned();
    let query = serde_urlencoded::to_string(&other).ok()?;
    Some(format!("/ask/process?{query}"))
}
