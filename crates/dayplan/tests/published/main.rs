//! Published scheduling instances with known answers.

mod psplib;
