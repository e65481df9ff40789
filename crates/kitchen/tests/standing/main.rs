//! What an extension educator is asked all season, put to the program by the door a person uses.

mod refused;
