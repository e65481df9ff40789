//! `stillroom serve`.

use std::io::Write;

use anyhow::Result;
use clap::Args;
use web::Settings;

use crate::almanac::load_almanac;
use crate::ending::Answered;

/// The port when none is given (ours; nothing well known listens there).
const PORT: u16 = 7746;

const EXAMPLES: &str = "\
Examples:
  stillroom serve
  stillroom serve --port 8000

The pages are served to this machine only. Stop with Ctrl-C.";

/// Serve the kitchen's pages on this machine, until stopped with Ctrl-C.
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct ServeCommand {
    /// The port to listen on; 0 takes any that is free
    #[arg(long, default_value_t = PORT)]
    port: u16,
}

impl ServeCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        web::serve(load_almanac()?, Settings { port: self.port }, |address| {
            let mut out = anstream::stdout();
            // Whoever closed standard output does not want to be told; the pages are there all the same.
            let _ =
                writeln!(out, "The kitchen's pages: http://{address}/\nThis machine only. Stop with Ctrl-C.")
                    .and_then(|()| out.flush());
        })?;
        Ok(Answered::with(String::new()))
    }
}
