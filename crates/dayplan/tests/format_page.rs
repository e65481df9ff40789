//! The example on the format's page is a problem, its plan keeps every rule, and it is the plan we give.

use dayplan::{Budget, Plan, Problem, check, solve};

#[test]
fn the_example_on_the_format_page_is_solved_as_printed() {
    let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../docs/formats/day-problem.md");
    let page = std::fs::read_to_string(path).unwrap();
    let blocks: Vec<&str> =
        page.split("```json\n").skip(1).map(|rest| rest.split("```").next().unwrap()).collect();
    let [problem, plan] = blocks.as_slice() else {
        panic!("the page has {} examples, not a problem and a plan", blocks.len());
    };
    let problem = Problem::from_json(problem).unwrap();
    let plan = Plan::from_json(plan).unwrap();
    assert_eq!(check(&problem, &plan), vec![]);
    assert_eq!(solve(&problem, Budget::default()), plan);
}
