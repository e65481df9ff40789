//! What is to be done with a load: the rule on file that decides its trouble, or that there is none.

use almanac::{Almanac, LoadRuling, LoadTrouble, Noticed};

use super::answer::{LoadAnswer, Outcome, word_trouble};
use super::begin_again::{judge_limit, throw_away};
use super::draft::Draft;
use super::gap::tell_gap;
use super::interrupted::judge_interruption;
use super::question::LoadQuestion;
use super::start::judge_start;

/// Answers a question about a load.
#[must_use]
pub fn answer_load(almanac: &Almanac, question: &LoadQuestion) -> LoadAnswer {
    let draft = Draft::new(almanac, question, noticed_of(question));
    match ruling_needed(question.trouble, question.noticed) {
        LoadRuling::Start => judge_start(draft),
        LoadRuling::WholeTimeAgain => judge_interruption(draft),
        LoadRuling::TopUp => judge_top_up(draft),
        LoadRuling::AcidFirst => judge_acid_first(draft),
        LoadRuling::Discard => judge_discard(draft),
        _ => judge_limit(draft),
    }
}

/// What a rule must say for the trouble to be more than a gap.
pub(super) fn ruling_needed(trouble: LoadTrouble, noticed: Option<Noticed>) -> LoadRuling {
    use LoadTrouble as T;
    match trouble {
        T::Start => LoadRuling::Start,
        T::BoilLost | T::PressureLost | T::PowerCut => LoadRuling::WholeTimeAgain,
        T::WaterLow => LoadRuling::TopUp,
        T::AcidForgotten if noticed == Some(Noticed::Before) => LoadRuling::AcidFirst,
        T::WrongFormula | T::LeftAlone => LoadRuling::Discard,
        T::AcidForgotten
        | T::WrongAcid
        | T::WrongTime
        | T::WrongPack
        | T::WrongJar
        | T::WrongVent
        | T::WrongCanner
        | T::WrongAltitude
        | T::Unsealed
        | T::BoiledDry
        | T::JarBroke
        | T::WaterBelowLids
        | T::ForcedCooling => LoadRuling::Limit,
    }
}

/// A lost boil is judged while the process runs; whether it had ended is found from the clock.
pub(super) fn noticed_of(question: &LoadQuestion) -> Option<Noticed> {
    use LoadTrouble as T;
    match question.trouble {
        T::BoilLost | T::PressureLost | T::PowerCut | T::WaterLow => Some(Noticed::During),
        _ => question.noticed,
    }
}

fn judge_top_up(mut draft: Draft<'_>) -> LoadAnswer {
    let Some(found) = draft.find_permitting(LoadRuling::TopUp) else { return tell_gap(draft) };
    // Adding water is let happen only where it is also printed what to do when the boil is lost by it.
    let Some(restart) = draft.rule("bw-restart") else { return tell_gap(draft) };
    let depth = draft.rule("bw-water-depth").and_then(|rule| Some((rule, rule.value?.as_length()?)));
    let height = depth.map_or("the printed height".to_owned(), |(_, (low, high))| {
        format!("{} to {} in over the lids", low.as_inches().round(), high.as_inches().round())
    });
    draft.act_with_care(
        format!("Add boiling water up to {height}. Pour it between the jars, not onto their tops."),
        Some(found.citation()),
        Some("boiling water and steam burn: pour slowly, face and hands out of the steam"),
    );
    draft.act(
        "Look whether the boil stops. If it does, bring it back to a full boil, write down that time, and give the \
         whole printed time again from it (boil-lost).",
        Some(&restart.citation),
    );
    draft.explain(
        "The water stands over the lids, and only lower than printed. Water found below the lids is another matter \
         (water-below-lids).",
        depth.map(|(rule, _)| &rule.citation),
    );
    draft.finish(Outcome::TopUp, "Add boiling water, and keep the boil.")
}

fn judge_acid_first(mut draft: Draft<'_>) -> LoadAnswer {
    let Some(found) = draft.find_permitting(LoadRuling::AcidFirst) else { return tell_gap(draft) };
    draft.explain("Nothing has been heated in the jars yet, so nothing is lost.", None);
    draft.act_with_care(
        "Do not load them, or lift them out again. Empty each jar, put the whole printed amount of acid into it, and \
         fill it again as the formula says, hot food hot.",
        Some(found.citation()),
        Some("hot jars and hot food burn and crack on anything cold"),
    );
    let dose = draft.question.food.as_ref().zip(draft.question.jar);
    match dose.and_then(|(food, jar)| draft.almanac.acid_for(food, jar)) {
        Some(rule) => {
            let text = format!("Into each {}: {}.", rule.jar, word_dose(&rule));
            draft.act(text, Some(&rule.citation));
        }
        None => draft.act(
            "Look the amount up for your food and your jar (stillroom clear). Where none is printed, the jars are not \
             canned: refrigerate or freeze the food.",
            None,
        ),
    }
    draft.act("Then the whole process as printed, from the beginning.", None);
    draft.finish(Outcome::AcidFirst, "Empty the jars, put the acid in first, and start anew.")
}

fn word_dose(rule: &almanac::AcidRule) -> String {
    let ways = [
        rule.lemon.map(|lemon| format!("{} bottled lemon juice", measure::write_volume_us(lemon))),
        rule.citric.map(|citric| format!("{} citric acid", measure::write_volume_us(citric))),
        rule.vinegar.map(|vinegar| format!("{} vinegar of 5 %", measure::write_volume_us(vinegar))),
    ];
    let ways: Vec<String> = ways.into_iter().flatten().collect();
    let enough = if ways.len() > 1 { "; each is enough" } else { "" };
    format!("{}{enough}", ways.join(", or "))
}

fn judge_discard(mut draft: Draft<'_>) -> LoadAnswer {
    let Some(found) = draft.find_discard() else { return tell_gap(draft) };
    draft.explain(format!("{}.", found.rule.rule), Some(found.citation()));
    draft.explain("A seal proves nothing: a wrong process seals a jar as well as a right one.", None);
    throw_away(&mut draft);
    let says = format!("Throw the load away untasted: {}.", word_trouble(draft.question.trouble));
    draft.finish(Outcome::Discard, says)
}
