//! What the command line takes.

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum};
use clap_complete::Shell;

use super::share::Share;
use crate::sheets::SheetPaper;
use crate::typeset::Paper;

/// Compiles the instruction booklets of sewing patterns: checked, typeset, one for each size.
#[derive(Debug, Parser)]
#[command(name = "notchbook", version, max_term_width = 100)]
pub(super) struct Arguments {
    /// The folder that holds the booklets; nothing outside it is read [default: ./booklets, or .]
    #[arg(long, short = 'f', global = true, value_name = "DIR")]
    pub folder: Option<PathBuf>,
    /// How long a booklet that brings its own templates or fonts may take
    #[arg(long, global = true, value_name = "SECONDS", default_value_t = 60)]
    pub patience: u64,
    #[command(subcommand)]
    pub command: Command,
}

#[derive(Debug, Subcommand)]
pub(super) enum Command {
    /// Make a small worked booklet to start from
    New(NewArgs),
    /// Look for everything that is wrong or missing, in every size
    Check(CheckArgs),
    /// Make the booklets: one PDF for each size
    Build(BuildArgs),
    /// Make the true-scale pattern sheets: one PDF for each size, and one of all sizes nested
    Sheets(SheetsArgs),
    /// Make what an editor works through and signs: every figure in every size, faults and all
    Proof(ProofArgs),
    /// Make the folder that a seller uploads: one for each booklet and edition, never replaced
    Publish(PublishArgs),
    /// Tell buyers what has changed between two editions
    Errata(ErrataArgs),
    /// List every measurement, exact and as shown in both systems
    Values(ValuesArgs),
    /// Show how a value comes about, or the state of the work after a step
    Trace(TraceArgs),
    /// Write the diagrams of a booklet as they are printed
    Figures(FiguresArgs),
    /// Explain a word of the language or a check, or list them all
    Explain(ExplainArgs),
    /// Print a completion script for a shell
    Completions {
        /// Which shell
        shell: Shell,
    },
}

#[derive(Debug, Args)]
pub(super) struct NewArgs {
    /// The new booklet's name: small letters, digits and hyphens
    pub name: String,
}

#[derive(Debug, Args)]
pub(super) struct CheckArgs {
    /// Booklets, by name or folder [default: all in the folder]
    pub booklets: Vec<String>,
    /// How findings are shown
    #[arg(long, value_enum, default_value_t = Form::People)]
    pub format: Form,
    /// Tells all that was not checked, however long the list
    #[arg(long)]
    pub unchecked: bool,
    #[command(flatten)]
    pub strictness: Strictness,
}

#[derive(Debug, Args)]
pub(super) struct Strictness {
    /// What else stops: `warnings`
    #[arg(long, value_enum, value_name = "WHAT")]
    pub deny: Option<Deny>,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum Deny {
    Warnings,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum Form {
    /// With excerpts, for reading
    People,
    /// One JSON object a line, for programs
    Json,
}

#[derive(Debug, Args)]
pub(super) struct BuildArgs {
    /// Booklets, by name or folder [default: all in the folder]
    pub booklets: Vec<String>,
    /// Only these sizes [default: all]
    #[arg(long, value_delimiter = ',', value_name = "SIZE")]
    pub size: Vec<String>,
    /// Papers to print on, or `phone`
    #[arg(long, value_enum, value_delimiter = ',', default_value = "a4")]
    pub paper: Vec<PaperName>,
    /// Leave out the booklets and sheets of several sizes, in which figures stand in a row: 20 (26, 32) cm
    #[arg(long)]
    pub only_sizes: bool,
    /// Leave the pattern sheets out
    #[arg(long)]
    pub no_sheets: bool,
    /// Leave out the page for a screen
    #[arg(long)]
    pub no_page: bool,
    /// Only a share of the booklets, such as 3/8 for the third of eight; all shares together make what one run makes
    #[arg(long, value_name = "K/N")]
    pub share: Option<Share>,
    /// Where they go: DIR/NAME/NAME-SIZE-PAPER.pdf, and the page: DIR/NAME/NAME.html
    #[arg(long, default_value = "out", value_name = "DIR")]
    pub out: PathBuf,
    #[command(flatten)]
    pub cache: CacheArgs,
    #[command(flatten)]
    pub strictness: Strictness,
}

#[derive(Debug, Args)]
pub(super) struct SheetsArgs {
    /// Booklets, by name or folder [default: all in the folder]
    pub booklets: Vec<String>,
    /// Only these sizes; `nested` is all of them in one set [default: all, and nested]
    #[arg(long, value_delimiter = ',', value_name = "SIZE")]
    pub size: Vec<String>,
    /// Papers to print on [default: a4,letter,a0]
    #[arg(long, value_enum, value_delimiter = ',', default_value = "a4,letter,a0")]
    pub paper: Vec<SheetPaperName>,
    /// Where the PDFs go: DIR/NAME/sheets/NAME-SIZE-sheets-PAPER.pdf
    #[arg(long, default_value = "out", value_name = "DIR")]
    pub out: PathBuf,
    #[command(flatten)]
    pub cache: CacheArgs,
    #[command(flatten)]
    pub strictness: Strictness,
}

#[derive(Debug, Args)]
pub(super) struct CacheArgs {
    /// Where PDFs are kept, so that they need not be set anew where nothing of theirs has changed; safe to delete
    /// [default: .notchbook-cache in the folder named by --out]
    #[arg(long, value_name = "DIR")]
    pub cache: Option<PathBuf>,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum SheetPaperName {
    /// 210 × 297 mm
    A4,
    /// 8.5 × 11 in
    Letter,
    /// 841 × 1189 mm, for a print shop
    A0,
    /// A roll of 914 mm (36 in)
    Roll,
    /// One unbroken page
    Projector,
}

impl SheetPaperName {
    pub fn paper(self) -> SheetPaper {
        match self {
            SheetPaperName::A4 => SheetPaper::A4,
            SheetPaperName::Letter => SheetPaper::Letter,
            SheetPaperName::A0 => SheetPaper::A0,
            SheetPaperName::Roll => SheetPaper::Roll,
            SheetPaperName::Projector => SheetPaper::Projector,
        }
    }
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum PaperName {
    /// 210 × 297 mm
    A4,
    /// 8.5 × 11 in
    Letter,
    /// A4 with words of 16 pt
    A4LargePrint,
    /// Letter with words of 16 pt
    LetterLargePrint,
    /// A4 on both sides, folded in half
    A4Folded,
    /// Letter on both sides, folded in half
    LetterFolded,
    /// To be read on a phone, in one column
    Phone,
}

impl PaperName {
    pub fn paper(self) -> Paper {
        match self {
            PaperName::A4 => Paper::A4,
            PaperName::Letter => Paper::Letter,
            PaperName::A4LargePrint => Paper::A4LargePrint,
            PaperName::LetterLargePrint => Paper::LetterLargePrint,
            PaperName::A4Folded => Paper::A4Folded,
            PaperName::LetterFolded => Paper::LetterFolded,
            PaperName::Phone => Paper::Phone,
        }
    }
}

#[derive(Debug, Args)]
pub(super) struct ProofArgs {
    /// Booklets, by name or folder [default: all in the folder]
    pub booklets: Vec<String>,
    /// Tell what has changed since an older edition: its published folder, or the manifest in it
    #[arg(long, value_name = "FILE")]
    pub since: Option<PathBuf>,
    /// Paper to print on
    #[arg(long, value_enum, default_value_t = ProofPaperName::A4)]
    pub paper: ProofPaperName,
    /// Where they go: DIR/NAME/NAME-proof.html and DIR/NAME/NAME-proof-PAPER.pdf
    #[arg(long, default_value = "proofs", value_name = "DIR")]
    pub out: PathBuf,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum ProofPaperName {
    /// 210 × 297 mm
    A4,
    /// 8.5 × 11 in
    Letter,
}

impl ProofPaperName {
    pub fn paper(self) -> Paper {
        match self {
            ProofPaperName::A4 => Paper::A4,
            ProofPaperName::Letter => Paper::Letter,
        }
    }
}

#[derive(Debug, Args)]
pub(super) struct PublishArgs {
    /// Booklets, by name or folder [default: all in the folder]
    pub booklets: Vec<String>,
    /// Papers to print on, or `phone`
    #[arg(long, value_enum, value_delimiter = ',', default_value = "a4,letter")]
    pub paper: Vec<PaperName>,
    /// Where the folder goes: DIR/NAME/EDITION/
    #[arg(long, default_value = "published", value_name = "DIR")]
    pub out: PathBuf,
    #[command(flatten)]
    pub cache: CacheArgs,
    #[command(flatten)]
    pub strictness: Strictness,
}

#[derive(Debug, Args)]
pub(super) struct ErrataArgs {
    /// The older edition: its published folder, or the manifest in it
    pub old: PathBuf,
    /// The newer one: the same, or the name of a booklet, as it stands now
    pub new: PathBuf,
    /// Where the sheet for buyers goes: DIR/NAME/changes-OLD-to-NEW/
    #[arg(long, default_value = "published", value_name = "DIR")]
    pub out: PathBuf,
}

#[derive(Debug, Args)]
pub(super) struct ValuesArgs {
    /// Booklets, by name or folder [default: all in the folder]
    pub booklets: Vec<String>,
    /// Only these sizes [default: all]
    #[arg(long, value_delimiter = ',', value_name = "SIZE")]
    pub size: Vec<String>,
    /// How they are listed
    #[arg(long, value_enum, default_value_t = Listing::Table)]
    pub format: Listing,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum Listing {
    Table,
    Csv,
    Json,
}

#[derive(Debug, Args)]
pub(super) struct TraceArgs {
    /// A measurement, or a figure such as `zip.length` or `front.top`
    #[arg(required_unless_present = "step")]
    pub name: Option<String>,
    /// Show the state of the work after this step instead: its id
    #[arg(long, value_name = "ID", conflicts_with = "name")]
    pub step: Option<String>,
    /// The size
    #[arg(long)]
    pub size: String,
    /// The booklet, where more than one has the name
    #[arg(long = "in", value_name = "BOOKLET")]
    pub booklet: Option<String>,
}

#[derive(Debug, Args)]
pub(super) struct FiguresArgs {
    /// The booklet, by name or folder
    pub booklet: String,
    /// Pictures as well as drawings
    #[arg(long, conflicts_with = "svg")]
    pub png: bool,
    /// The drawn steps alone, to go on by hand: with classes and formulas
    #[arg(long)]
    pub svg: bool,
    /// Dots to the inch of the pictures
    #[arg(long, default_value_t = 200, value_parser = clap::value_parser!(u16).range(20..=1200))]
    pub dpi: u16,
    /// Only these sizes [default: all]
    #[arg(long, value_delimiter = ',', value_name = "SIZE")]
    pub size: Vec<String>,
    /// Where they go: DIR/NAME/figures/SIZE/, with --svg DIR/NAME/drawn/SIZE/
    #[arg(long, default_value = "out", value_name = "DIR")]
    pub out: PathBuf,
}

#[derive(Debug, Args)]
pub(super) struct ExplainArgs {
    /// A word: a verb, a key, a function, a unit, a check (or `keys`, `checks` and so on, to list them)
    pub name: Option<String>,
    /// All pages, one after the other
    #[arg(long, conflicts_with = "name")]
    pub all: bool,
}
