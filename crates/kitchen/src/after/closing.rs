//! The lines that end every answer.

/// Whom to ask, whatever the answer was.
pub const WHOM_TO_ASK: &str = "Not sure? Throw it away, or keep it cold and apart and ask your county extension \
    service or local health authority before anyone eats from it.";

/// What to do when somebody ate what should have been thrown away.
pub const EATEN_ALREADY: &str = "If somebody has eaten from it already: call a doctor or the poison centre now, say \
    what was eaten and when, and keep what is left for them, closed and out of reach.";
