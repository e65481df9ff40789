//! Published scheduling instances with known answers.

#![expect(clippy::unwrap_used, reason = "a test reads data that is in the tree")]

mod psplib;
