//! From a stated day to a planned one: candidates, limits, the problem, and what the plan says.
