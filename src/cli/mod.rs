//! The command line: one file a command. Only here is anything printed.

mod apart;
mod args;
mod build;
mod check;
mod choose;
mod editions;
mod errata;
mod explain;
mod figures;
mod jobs;
mod kept;
mod new;
mod opening;
mod output;
mod page;
mod press;
mod proof;
mod publish;
mod remembered;
mod sets;
mod share;
mod sheets;
mod trace;
mod values;

use std::process::ExitCode;

use clap::{CommandFactory, Parser};

use args::{Arguments, Command, Form};

use crate::out::OutFault;

/// How a run ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Outcome {
    /// All is well.
    Clean,
    /// There are findings that stop.
    Findings,
    /// The call or the files could not be used.
    Unusable,
}

impl From<Outcome> for ExitCode {
    fn from(outcome: Outcome) -> ExitCode {
        match outcome {
            Outcome::Clean => ExitCode::SUCCESS,
            Outcome::Findings => ExitCode::from(1),
            Outcome::Unusable => ExitCode::from(2),
        }
    }
}

/// A reason why a command cannot be carried out: the fact and the act.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Refusal {
    pub fact: String,
    pub act: String,
}

impl Refusal {
    pub fn new(fact: impl Into<String>, act: impl Into<String>) -> Refusal {
        Refusal { fact: fact.into(), act: act.into() }
    }
}

impl From<OutFault> for Refusal {
    fn from(fault: OutFault) -> Refusal {
        Refusal { fact: fault.fact, act: fault.act }
    }
}

/// Runs the command that the arguments ask for.
pub fn run() -> ExitCode {
    let arguments = Arguments::parse();
    let folder = arguments.folder.as_deref();
    apart::bound(arguments.patience);
    let bounds = |form| apart::Bounds { patience: arguments.patience, form };
    let outcome = match arguments.command {
        Command::New(args) => new::run(folder, &args),
        Command::Check(args) => check::run(folder, &args, bounds(args.format)),
        Command::Build(args) => build::run(folder, &args, bounds(Form::People)),
        Command::Sheets(args) => sheets::run(folder, &args, bounds(Form::People)),
        Command::Proof(args) => proof::run(folder, &args, bounds(Form::People)),
        Command::Publish(args) => publish::run(folder, &args, bounds(Form::People)),
        Command::Errata(args) => errata::run(folder, &args),
        Command::Values(args) => values::run(folder, &args),
        Command::Trace(args) => trace::run(folder, &args),
        Command::Figures(args) => figures::run(folder, &args, bounds(Form::People)),
        Command::Explain(args) => explain::run(&args),
        Command::Completions { shell } => {
            let mut script = Vec::new();
            clap_complete::generate(shell, &mut Arguments::command(), "notchbook", &mut script);
            output::line(String::from_utf8_lossy(&script).trim_end());
            Ok(Outcome::Clean)
        }
    };
    match outcome {
        Ok(outcome) => outcome.into(),
        Err(refusal) => {
            output::refuse(&refusal);
            Outcome::Unusable.into()
        }
    }
}
