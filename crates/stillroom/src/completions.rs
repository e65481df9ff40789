//! `stillroom completions`.

use clap::{Args, CommandFactory};
use clap_complete::Shell;

use crate::command::StillroomCommand;
use crate::ending::Answered;

const EXAMPLES: &str = "\
Examples:
  stillroom completions bash > ~/.local/share/bash-completion/completions/stillroom
  stillroom completions fish > ~/.config/fish/completions/stillroom.fish";

/// Print completions for a shell.
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct CompletionsCommand {
    /// The shell
    shell: Shell,
}

impl CompletionsCommand {
    pub(crate) fn run(&self) -> Answered {
        let mut script = Vec::new();
        clap_complete::generate(self.shell, &mut StillroomCommand::command(), "stillroom", &mut script);
        Answered::with(String::from_utf8_lossy(&script).into_owned())
    }
}
