//! The command line: one file per command.
//!
//! Results go to standard output, progress and errors to the other. A reader that closes the pipe early is
//! no error.

mod check;
mod check_json;
mod check_json_doc;
mod codes;
mod docs;
mod explain;
mod explain_frames;
mod explain_pieces;
mod explain_words;
mod export;
mod mechanics;
mod new;
mod outcome;
mod parse;
mod redress;
mod rehearse;
mod theme_list;
mod themes;
mod wrap;

use std::io::Write;
use std::path::PathBuf;

use clap::{Parser, Subcommand, ValueEnum};

pub use outcome::{BLOCKED, CLEAN, FAILED};
use outcome::{Fail, report};
pub use parse::parse;

use crate::bundle::{Opened, open};
use crate::diag::{Hinted, Level};
use crate::sheet::Paper;
use crate::theme::Edition;

/// Write, prove and print themed puzzle-party kits.
#[derive(Clone, Debug, Parser)]
#[command(name = "inklatch", version, args_conflicts_with_subcommands = true)]
#[command(after_help = "Exit codes: 0 clean, 1 findings that block, 2 failure.\n\
    Example: inklatch check the-stopped-clock\n\
    A KIT is a folder with a kit.ron in it, or that file. With none, the built-in demo kit\n    the-stopped-clock is meant; the-harbour-regatta is built in as well.")]
pub struct Args {
    /// The kit to open in the window
    kit: Option<PathBuf>,
    #[command(subcommand)]
    command: Option<Command>,
}

#[derive(Clone, Debug, Subcommand)]
enum Command {
    /// Prove a kit: one reading for every puzzle, nothing locked behind itself, all text fits
    #[command(after_help = "Example: inklatch check my-kit --level gentle")]
    Check {
        /// The kit
        kit: Option<PathBuf>,
        /// Write the findings and readings as JSON
        #[arg(long)]
        json: bool,
        /// First make the mends that are safe, and save the kit
        #[arg(long)]
        fix: bool,
        /// One play level only
        #[arg(long, value_enum)]
        level: Option<LevelArg>,
    },
    /// Make the bundle: players' sheets, hint tokens, host guide, pieces, manifest
    #[command(after_help = "Example: inklatch export my-kit --paper a4 --edition low-ink --out printed")]
    Export {
        /// The kit
        kit: Option<PathBuf>,
        /// The paper to lay out for
        #[arg(long, value_enum, default_value_t = PaperArg::Both)]
        paper: PaperArg,
        /// The play level to export
        #[arg(long, value_enum, default_value_t = LevelsArg::All)]
        level: LevelsArg,
        /// The edition: as drawn, line work that needs little ink, or no text under 16 points
        #[arg(long, value_enum, default_value_t = EditionArg::Colour)]
        edition: EditionArg,
        /// The folder into which the bundle's own folder goes
        #[arg(long, value_name = "DIR", default_value = "out")]
        out: PathBuf,
        /// Put all files into one zip file as well
        #[arg(long)]
        zip: bool,
        /// Put everything into one PDF as well, for each paper and level: guests' pages first, with bookmarks
        #[arg(long)]
        one_pdf: bool,
        /// Make what the kit is sold by as well: cover, contact sheets, description, terms of use, credits
        #[arg(long)]
        listing: bool,
        /// Export although findings block; the host guide then says so
        #[arg(long)]
        force: bool,
        /// How many groups play at once: pieces and shopping for each of them
        #[arg(long, default_value_t = 1, value_parser = clap::value_parser!(u16).range(1..=i64::from(crate::limits::GROUPS)))]
        groups: u16,
        /// How far your printer's backs are off, in millimetres, as its test sheet shows
        #[arg(long, value_name = "RIGHT,DOWN", default_value = "0,0", allow_hyphen_values = true)]
        shift: String,
    },
    /// Make a fresh kit: small, sound, ready to be changed; or, with --theme-from, a theme of your own
    #[command(after_help = "Example: inklatch new my-kit --title 'The Waking Hive'")]
    New {
        /// The folder to make it in; empty or not there yet
        folder: PathBuf,
        /// The kit's title
        #[arg(long, conflicts_with = "from")]
        title: Option<String>,
        /// Copy a demo kit instead: the-stopped-clock or the-harbour-regatta
        #[arg(long, value_name = "KIT")]
        from: Option<String>,
        /// Make a theme in the folder instead, called as the folder: a whole copy of this one to begin from, its id or
        /// its folder (`inklatch themes` lists them)
        #[arg(long, value_name = "THEME", conflicts_with_all = ["from", "title"])]
        theme_from: Option<String>,
    },
    /// Propose codes for the whole kit: none easy to guess, none like another, none told by a text or a hint
    #[command(after_help = "Example: inklatch codes my-kit --seed 7 --avoid-kit last-season --write")]
    Codes {
        /// The kit
        kit: Option<PathBuf>,
        /// Another number draws other codes; the kit's own seed when left out
        #[arg(long)]
        seed: Option<u64>,
        /// Codes not to use, such as last season's; parted by commas
        #[arg(long, value_name = "CODES", value_delimiter = ',')]
        avoid: Vec<String>,
        /// A kit whose codes are not to be used
        #[arg(long, value_name = "KIT")]
        avoid_kit: Vec<PathBuf>,
        /// Puzzles that keep their answers, by id; parted by commas
        #[arg(long, value_name = "PUZZLES", value_delimiter = ',')]
        keep: Vec<String>,
        /// Write the codes into the kit
        #[arg(long)]
        write: bool,
        /// Write the proposal as JSON
        #[arg(long)]
        json: bool,
    },
    /// List the mechanics: what guests do, what is printed, what the host needs, minutes and ages
    #[command(after_help = "Example: inklatch mechanics --json")]
    Mechanics {
        /// Write the list as JSON
        #[arg(long)]
        json: bool,
    },
    /// List the themes, and say what is wrong with each
    #[command(after_help = "Example: inklatch themes hive")]
    Themes {
        /// A kit, whose own themes then come first; or one theme, its id or its folder: then all that it has is listed
        place: Option<PathBuf>,
        /// Write the list and the findings as JSON
        #[arg(long)]
        json: bool,
    },
    /// Put a kit into another theme: look, words, symbols, new codes; all proven anew
    #[command(after_help = "Example: inklatch redress my-kit --theme harbour --out my-summer-kit --mend")]
    Redress {
        /// The kit
        kit: Option<PathBuf>,
        /// The theme to put it into; `inklatch themes` lists them
        #[arg(long, value_name = "THEME")]
        theme: String,
        /// The folder for the new kit; empty or not there yet
        #[arg(long, value_name = "DIR")]
        out: PathBuf,
        /// Keep the codes of the locks
        #[arg(long)]
        keep_codes: bool,
        /// Put slots and new words in the place of what the old season left behind
        #[arg(long)]
        mend: bool,
        /// Which symbol of the new theme takes the place of an old one; may be given several times
        #[arg(long, value_name = "OLD=NEW")]
        symbol: Vec<String>,
    },
    /// Rehearse the evening: simulated groups play the kit; the chance to be done in time, where they wait, which tokens go
    #[command(after_help = "Example: inklatch rehearse my-kit --level stiff --runs 2000")]
    Rehearse {
        /// The kit
        kit: Option<PathBuf>,
        /// One play level only
        #[arg(long, value_enum)]
        level: Option<LevelArg>,
        /// How many evenings to simulate; as many as suit the kit's size when left out
        #[arg(long, value_name = "N")]
        runs: Option<usize>,
        /// Write the rehearsal as JSON
        #[arg(long)]
        json: bool,
    },
    /// Explain a mechanic, a check, a material, the files `kit`, `plays` and `theme`, a theme's `frames`, or `check-json`
    #[command(after_help = "Example: inklatch explain letter-key")]
    Explain {
        /// What to explain; with no name, the list of what can be explained
        name: Option<String>,
    },
}

#[derive(Clone, Copy, Debug, ValueEnum)]
enum PaperArg {
    Letter,
    A4,
    Both,
}

impl PaperArg {
    fn papers(self) -> Vec<Paper> {
        match self {
            Self::Letter => vec![Paper::Letter],
            Self::A4 => vec![Paper::A4],
            Self::Both => Paper::ALL.to_vec(),
        }
    }
}

#[derive(Clone, Copy, Debug, ValueEnum)]
enum EditionArg {
    Colour,
    LowInk,
    LargePrint,
    All,
}

impl EditionArg {
    fn editions(self) -> Vec<Edition> {
        match self {
            Self::Colour => vec![Edition::Colour],
            Self::LowInk => vec![Edition::LowInk],
            Self::LargePrint => vec![Edition::LargePrint],
            Self::All => Edition::ALL.to_vec(),
        }
    }
}

#[derive(Clone, Copy, Debug, ValueEnum)]
enum LevelArg {
    Gentle,
    Standard,
    Stiff,
}

impl From<LevelArg> for Level {
    fn from(level: LevelArg) -> Self {
        match level {
            LevelArg::Gentle => Self::Gentle,
            LevelArg::Standard => Self::Standard,
            LevelArg::Stiff => Self::Stiff,
        }
    }
}

#[derive(Clone, Copy, Debug, ValueEnum)]
enum LevelsArg {
    Gentle,
    Standard,
    Stiff,
    All,
}

impl LevelsArg {
    fn levels(self) -> Vec<Level> {
        match self {
            Self::Gentle => vec![Level::Gentle],
            Self::Standard => vec![Level::Standard],
            Self::Stiff => vec![Level::Stiff],
            Self::All => Level::ALL.to_vec(),
        }
    }
}

/// What opens the window on a kit and returns when it is closed. It is handed in, as the command line and the
/// window do not know each other.
pub type Window<'a> = &'a dyn Fn(Opened) -> Hinted<()>;

/// Runs the command and answers the exit code: [`CLEAN`], [`BLOCKED`] or [`FAILED`].
pub fn run(args: &Args, out: &mut dyn Write, err: &mut dyn Write, window: Window<'_>) -> u8 {
    let result = match &args.command {
        None => {
            let named = args.kit.as_deref().and_then(|kit| kit.to_str());
            let opened =
                open(args.kit.as_deref()).map_err(|trouble| named.and_then(parse::misspelt).unwrap_or(trouble));
            opened.and_then(window).map(|()| CLEAN).map_err(Fail::from)
        }
        Some(Command::Check { kit, json, fix, level }) => {
            let levels = level.map_or_else(|| Level::ALL.to_vec(), |level| vec![level.into()]);
            check::run(kit.as_deref(), &levels, check::How { json: *json, fix: *fix }, out)
        }
        Some(Command::Export {
            kit,
            paper,
            level,
            edition,
            out: folder,
            zip,
            one_pdf,
            listing,
            force,
            groups,
            shift,
        }) => {
            let shift = match crate::bundle::Shift::parse(shift) {
                Ok(shift) => shift,
                Err(trouble) => return report(&trouble.into(), err),
            };
            let options = crate::bundle::Options {
                papers: paper.papers(),
                levels: level.levels(),
                editions: edition.editions(),
                zip: *zip,
                one_pdf: *one_pdf,
                listing: *listing,
                force: *force,
                groups: *groups,
                shift,
                out: folder.clone(),
            };
            export::run(kit.as_deref(), &options, out)
        }
        Some(Command::New { folder, theme_from: Some(theme), .. }) => new::theme(folder, theme, out),
        Some(Command::New { folder, title, from, .. }) => new::run(folder, title.as_deref(), from.as_deref(), out),
        Some(Command::Codes { kit, seed, avoid, avoid_kit, keep, write, json }) => {
            let kit = kit.as_deref();
            let request = codes::Request { kit, seed: *seed, avoid, avoid_kit, keep, write: *write, json: *json };
            codes::run(&request, out)
        }
        Some(Command::Mechanics { json }) => mechanics::run(*json, out),
        Some(Command::Themes { place, json }) => themes::run(place.as_deref(), *json, out),
        Some(Command::Redress { kit, theme, out: folder, keep_codes, mend, symbol }) => {
            let (keep_codes, mend) = (*keep_codes, *mend);
            let kit = kit.as_deref();
            redress::run(&redress::Request { kit, theme, out: folder, keep_codes, mend, symbols: symbol }, out)
        }
        Some(Command::Rehearse { kit, level, runs, json }) => {
            let levels = level.map_or_else(|| Level::ALL.to_vec(), |level| vec![level.into()]);
            rehearse::run(kit.as_deref(), &levels, *runs, *json, out)
        }
        Some(Command::Explain { name }) => explain::run(name.as_deref(), out),
    };
    let result = result.and_then(|code| out.flush().map(|()| code).map_err(Fail::from));
    match result {
        Ok(code) => code,
        Err(fail) => report(&fail, err),
    }
}
