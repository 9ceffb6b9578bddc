use std::cell::RefCell;
use std::collections::BTreeMap;

use eframe::egui;

use crate::app::action::Action;
use crate::app::derived::Derived;
use crate::app::doc::Doc;
use crate::app::history::History;
use crate::app::prefs::Prefs;
use crate::app::session::{Selection, Session};
use crate::app::tokens::Tokens;
use crate::bundle::Options;
use crate::checks::Finding;
use crate::diag::{Anchor, Level};
use crate::ids::ThemeId;
use crate::kit::Kit;
use crate::kit::edit::Edit;
use crate::propose::Wish;
use crate::sheet::Paper;
use crate::theme::colour::Eyes;
use crate::theme::{Edition, PictureKind, ThemeEdit};

/// What a view asks for. One place carries it out, after all views are done, so that the kit stands still for
/// the whole frame.
#[derive(Clone, Debug)]
pub enum Command {
    /// Changes the kit as part of the gesture under way.
    Edit(Edit),
    /// Changes the kit in one step of its own: adding, removing, fixing.
    Step(Vec<Edit>),
    /// Sets off an action.
    Do(Action),
    /// Takes a thing in hand.
    Select(Selection),
    /// Goes to the field of a finding, at the level at which it was found.
    Go(Anchor, Option<Level>),
    /// Looks at another play level.
    Level(Level),
    /// Looks at another paper.
    Paper(Paper),
    /// Looks at the sheets in another edition.
    Edition(Edition),
    /// Looks through other eyes.
    Eyes(Eyes),
    /// Shows the kit's words in every font, for a lettering role; with none the pieces again.
    Specimens(Option<String>),
    /// Holds another theme beside the one worn.
    Target(Option<ThemeId>),
    /// Says which symbols of that theme take the place of which.
    Symbols(BTreeMap<String, String>),
    /// Puts the kit into another theme, with new codes or with those that it has.
    Redress(ThemeId, bool),
    /// Changes the theme worn, one of the kit's own, as part of the gesture under way.
    ThemeEdit(ThemeEdit),
    /// Changes it in one step of its own.
    ThemeStep(Vec<ThemeEdit>),
    /// Asks for a file that takes the place of a picture of the theme.
    Replace(PictureKind, String),
    /// Gives a symbol of the theme worn another name, in the kit as well.
    RenameSymbol(String, String),
    /// Looks for what the kit still says of the theme that the one worn was begun from.
    WatchBegun(ThemeId),
    /// Gives up what was changed here in the theme's file, for what another program has made of it.
    TakeThemeFile,
    /// Copies the theme worn from the author's folder into the kit.
    BringTheme,
    /// Begins a theme of the kit's own, under this name.
    StartTheme(String),
    /// Asks how a word picked in a text shall become a slot.
    PickSlot(Anchor, String),
    /// Makes a word a slot: at one place, or with none everywhere.
    MakeSlot(Option<Anchor>, String, String),
    /// Writes the bundle.
    Export(Box<Options>),
    /// Looks for codes for the whole kit and puts them in.
    Propose(Wish),
    /// Stops the writing of the bundle.
    CancelExport,
    /// Answers the path field.
    Path(PathFor, String),
    /// Says in the bar what was done.
    Say(String),
    /// Puts the bar away.
    CloseBar,
    /// Leaves without saving what is unsaved.
    Discard(Leaving),
    /// Saves, then leaves.
    SaveThen(Leaving),
}

/// What the author was about to do when unsaved changes were in the way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Leaving {
    /// Closing the window.
    Quit,
    /// Making a fresh kit.
    New,
    /// Opening another kit.
    Open,
    /// Opening a demo kit.
    Demo(usize),
}

/// What a folder is asked for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PathFor {
    /// To make a fresh kit in it.
    New,
    /// To open the kit in it.
    Open,
    /// To save the kit in it.
    SaveAs,
    /// To put the bundle in it.
    Export,
    /// A file, to put it in the place of a picture of the theme: which one, in words.
    Picture(String),
}

impl PathFor {
    /// The question.
    #[must_use]
    pub fn title(&self) -> String {
        match self {
            Self::New => "Folder for the new kit, empty or not there yet".to_owned(),
            Self::Open => "Folder of the kit to open".to_owned(),
            Self::SaveAs => "Folder to save the kit in".to_owned(),
            Self::Export => "Folder to put the bundle in".to_owned(),
            Self::Picture(what) => format!("SVG picture for the {what}"),
        }
    }

    /// The button.
    #[must_use]
    pub const fn verb(&self) -> &'static str {
        match self {
            Self::New => "Make it",
            Self::Open => "Open it",
            Self::SaveAs => "Save here",
            Self::Export => "Use this folder",
            Self::Picture(_) => "Take it",
        }
    }
}

/// What views may see, and where they send what they want.
pub struct Ctx<'a> {
    /// The kit as it stands in this frame.
    pub kit: &'a Kit,
    /// The kit's theme and place.
    pub doc: &'a Doc,
    /// What was computed last.
    pub derived: &'a Derived,
    /// Where the author is.
    pub session: &'a Session,
    /// What the author likes.
    pub prefs: &'a Prefs,
    /// Undo and redo, to be asked only.
    pub history: &'a History,
    /// The colours in force.
    pub tokens: &'static Tokens,
    out: RefCell<Vec<Command>>,
    jump: RefCell<Option<Anchor>>,
}

impl<'a> Ctx<'a> {
    /// What the views of one frame see.
    #[must_use]
    pub fn new(
        doc: &'a Doc,
        derived: &'a Derived,
        session: &'a Session,
        prefs: &'a Prefs,
        history: &'a History,
        theme: egui::Theme,
    ) -> Self {
        Self {
            kit: &doc.kit,
            doc,
            derived,
            session,
            prefs,
            history,
            tokens: Tokens::of(theme),
            out: RefCell::default(),
            jump: RefCell::new(session.jump.clone()),
        }
    }

    /// Sends a command.
    pub fn send(&self, command: Command) {
        self.out.borrow_mut().push(command);
    }

    /// Sends an edit.
    pub fn edit(&self, edit: Edit) {
        self.send(Command::Edit(edit));
    }

    /// What was sent.
    #[must_use]
    pub fn into_commands(self) -> Vec<Command> {
        self.out.into_inner()
    }

    /// Whether the author is on the way to this field; true once.
    pub fn arrives(&self, anchor: &Anchor) -> bool {
        let mut jump = self.jump.borrow_mut();
        let here = jump.as_ref().is_some_and(|to| to == anchor);
        if here {
            *jump = None;
        }
        here
    }

    /// A name with its slots filled, as guests and host read it; as written until the kit is proved.
    #[must_use]
    pub fn say(&self, text: &str) -> String {
        match self.derived.party(self.session.level) {
            Some(party) if text.contains("{{") => party.say(text),
            _ => text.to_owned(),
        }
    }

    /// The findings at exactly this place.
    pub fn findings_at<'b>(&'b self, anchor: &'b Anchor) -> impl Iterator<Item = &'b Finding> + 'b {
        self.derived.findings().iter().filter(move |finding| finding.anchor == *anchor)
    }
}
