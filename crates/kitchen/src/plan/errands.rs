//! Errands as projects: other work that shares the day, with its steps and waits.

use std::collections::BTreeMap;

use almanac::Attention;
use dayplan::{Choice, Lag, Project, Step};

use super::pools::EYES_EACH;
use crate::day::{ClockTime, Errand, ErrandStep, Need, Span};

/// The project id of an errand.
pub(crate) fn errand_id(errand: &Errand) -> String {
    format!("errand-{}", slug(&errand.name))
}

/// The step id of an errand's step.
pub(crate) fn errand_step_id(at: usize, step: &ErrandStep) -> String {
    format!("{:02}-{}", at + 1, slug(&step.what))
}

/// Lower-case letters and digits, parted by hyphens.
pub(crate) fn slug(text: &str) -> String {
    let words: Vec<String> = text
        .split(|letter: char| !letter.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .map(str::to_lowercase)
        .collect();
    if words.is_empty() { "unnamed".to_owned() } else { words.join("-") }
}

/// An errand as a project of the problem; it takes neither canner nor jar.
pub(crate) fn errand_project(errand: &Errand, day: Span, value: u32) -> Project {
    let steps: Vec<Step> =
        errand.steps.iter().enumerate().map(|(at, step)| plan_step(at, step, day)).collect();
    let lags = errand
        .steps
        .windows(2)
        .zip(steps.windows(2))
        .map(|(stated, planned)| Lag {
            from: planned[0].id.clone(),
            to: planned[1].id.clone(),
            min: i32::try_from(stated[0].wait_at_least.0).unwrap_or(i32::MAX),
            max: stated[0].wait_at_most.map(|wait| i32::try_from(wait.0).unwrap_or(i32::MAX)),
        })
        .collect();
    let choice = Choice { id: "as-stated".to_owned(), value, steps, lags, ..Choice::default() };
    Project { id: errand_id(errand), must: errand.must, options: vec![choice] }
}

fn plan_step(at: usize, step: &ErrandStep, day: Span) -> Step {
    let mut needs = BTreeMap::new();
    match step.attention {
        Attention::Hands => needs.insert("hands".to_owned(), 1),
        Attention::Eyes => needs.insert("eyes".to_owned(), 1),
        Attention::None => None,
    };
    if step.away {
        needs.insert("hands".to_owned(), 1);
        needs.insert("eyes".to_owned(), EYES_EACH);
    }
    for need in &step.needs {
        let resource = match need {
            Need::Burner => "burner",
            Need::Oven => "oven",
            Need::Sink => "sink",
            Need::Processor => "processor",
            Need::Blender => "blender",
            Need::Pot => "kettle",
        };
        needs.insert(resource.to_owned(), 1);
    }
    let from_start = |time: ClockTime| time.0.saturating_sub(day.from.0);
    Step {
        id: errand_step_id(at, step),
        minutes: step.minutes.0,
        needs,
        earliest: step.earliest.map_or(0, from_start),
        latest_end: step.done_by.map(from_start),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use measure::Minutes;

    fn step(what: &str, minutes: u32, attention: Attention) -> ErrandStep {
        ErrandStep {
            what: what.to_owned(),
            minutes: Minutes(minutes),
            attention,
            away: false,
            needs: vec![],
            earliest: None,
            done_by: None,
            wait_at_most: Some(Minutes(30)),
            wait_at_least: Minutes(0),
        }
    }

    #[test]
    fn a_rise_needs_nobody_and_the_oven_is_booked() {
        let mut bake = step("bake", 40, Attention::None);
        bake.needs = vec![Need::Oven];
        bake.done_by = Some(ClockTime(1080));
        let errand = Errand {
            name: "Rye bread".into(),
            steps: vec![
                step("mix the dough", 15, Attention::Hands),
                step("let it rise", 90, Attention::None),
                bake,
            ],
            must: true,
        };
        let project = errand_project(&errand, Span { from: ClockTime(480), to: ClockTime(1080) }, 0);
        assert_eq!(project.id, "errand-rye-bread");
        let choice = &project.options[0];
        assert_eq!(choice.steps[1].needs, BTreeMap::new());
        assert_eq!(choice.steps[2].needs["oven"], 1);
        assert_eq!(choice.steps[2].latest_end, Some(600));
        assert_eq!(choice.lags[0].max, Some(30));
    }

    #[test]
    fn someone_away_takes_hands_and_eyes_along() {
        let mut drive = step("fetch the children", 40, Attention::Hands);
        drive.away = true;
        let errand = Errand { name: "school".into(), steps: vec![drive], must: true };
        let project = errand_project(&errand, Span { from: ClockTime(480), to: ClockTime(1080) }, 0);
        assert_eq!(project.options[0].steps[0].needs["eyes"], EYES_EACH);
    }
}
