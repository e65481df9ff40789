//! The ways in which a plan can break its problem's rules, each told in one sentence.

use crate::fault::Fault;

/// One rule that a plan breaks.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Breach {
    /// The problem itself is not valid, so no plan can be judged against it.
    #[error("the problem has a fault: {0}")]
    Problem(Fault),
    /// A claim that there is no plan, with a plan.
    #[error("the plan claims to be {claim} and chooses {count} options all the same")]
    ClaimedAndChosen {
        /// The claim.
        claim: &'static str,
        /// Options chosen.
        count: usize,
    },
    /// A claim that there is no plan, with figures of one.
    #[error("the plan claims to be {claim} and gives a value, finish or bound all the same")]
    ClaimedWithFigures {
        /// The claim.
        claim: &'static str,
    },
    /// No reason given for a claim of infeasibility.
    #[error("the plan claims to be infeasible and gives no reason; hint: list what clashes in because")]
    NoReason,
    /// A reason that names nothing of the problem.
    #[error("because names {name:?}, which the problem does not have")]
    UnknownReason {
        /// The name.
        name: String,
    },
    /// A project the problem does not have, or that has no such option.
    #[error("project {project:?} has no option {option:?}")]
    UnknownOption {
        /// The project chosen.
        project: String,
        /// The option chosen.
        option: String,
    },
    /// A project chosen more than once.
    #[error("project {project:?} is chosen more than once")]
    ChosenTwice {
        /// The project.
        project: String,
    },
    /// A project that must be done is left out.
    #[error("project {project:?} must be done and is not chosen")]
    LeftOut {
        /// The project.
        project: String,
    },
    /// A step of a chosen option without a start.
    #[error("step {step:?} of {project:?} has no start")]
    NoStart {
        /// The project.
        project: String,
        /// The step.
        step: String,
    },
    /// A start for something that is not a step of the chosen option.
    #[error("a start is given for {step:?}, which is no step of {project:?} as chosen")]
    StrayStart {
        /// The project.
        project: String,
        /// The name given.
        step: String,
    },
    /// A step starts before it may.
    #[error("step {step:?} of {project:?} starts at {start}, before {earliest}")]
    TooEarly {
        /// The project.
        project: String,
        /// The step.
        step: String,
        /// Its start.
        start: u32,
        /// The first minute allowed.
        earliest: u32,
    },
    /// A step ends after it may.
    #[error("step {step:?} of {project:?} ends at {end}, after {latest_end}")]
    TooLate {
        /// The project.
        project: String,
        /// The step.
        step: String,
        /// Its end.
        end: u64,
        /// The last end allowed.
        latest_end: u32,
    },
    /// Two steps start too close together.
    #[error(
        "from the end of {from:?} to the start of {to:?} in {project:?} are {gap} minutes, fewer than {min}"
    )]
    TooClose {
        /// The project.
        project: String,
        /// The step before.
        from: String,
        /// The step after.
        to: String,
        /// The gap found.
        gap: i64,
        /// The least gap.
        min: i32,
    },
    /// Two steps lie too far apart.
    #[error(
        "from the end of {from:?} to the start of {to:?} in {project:?} are {gap} minutes, more than {max}"
    )]
    TooFar {
        /// The project.
        project: String,
        /// The step before.
        from: String,
        /// The step after.
        to: String,
        /// The gap found.
        gap: i64,
        /// The greatest gap.
        max: i32,
    },
    /// More of a resource in use than there is.
    #[error("{used} of {resource:?} are in use at minute {minute}, of {capacity}")]
    OverCapacity {
        /// The resource.
        resource: String,
        /// The first minute at which it happens.
        minute: u64,
        /// Units in use.
        used: u64,
        /// Units there are.
        capacity: u32,
    },
    /// A resource in use while it is closed.
    #[error("{resource:?} is in use at minute {minute}, while it is closed")]
    Closed {
        /// The resource.
        resource: String,
        /// The first closed minute in use.
        minute: u64,
    },
    /// More stock used than there is.
    #[error("{used} of stock {stock:?} are used, of {there}")]
    OverStock {
        /// The stock.
        stock: String,
        /// Units used.
        used: u64,
        /// Units there are.
        there: u32,
    },
    /// A figure of the plan is not its own.
    #[error("the plan says {figure} {said}, and it is {is}", said = said.map_or("nothing".to_owned(), |n| n.to_string()))]
    WrongFigure {
        /// Which figure.
        figure: &'static str,
        /// What the plan says.
        said: Option<u32>,
        /// What it is.
        is: u64,
    },
    /// A bound that the plan itself passes.
    #[error("the bound on the {figure} is {bound}, and the plan itself reaches {is}")]
    PassedBound {
        /// Which figure.
        figure: &'static str,
        /// The bound given.
        bound: u32,
        /// The plan's own figure.
        is: u64,
    },
    /// A proof claimed while the bound leaves room.
    #[error("the {figure} {is} is called proved, and its bound is {bound}")]
    OpenBound {
        /// Which figure.
        figure: &'static str,
        /// The bound given.
        bound: u32,
        /// The plan's own figure.
        is: u64,
    },
}
