use std::collections::BTreeMap;
use std::sync::Arc;

use crate::diag::{Anchor, Hinted, PuzzleField, Trouble};
use crate::face::proof::{Look, Looks, Printed};
use crate::face::{Align, Audience, Face, Frame, Pictures, Piece, Role, TextRun, Valign, clean_svg};
use crate::ids::PuzzleId;
use crate::kit::LockKind;
use crate::mechanics::find;
use crate::mechanics::words::caption;
use crate::script::{Rich, capital, typographic};
use crate::theme::{Colour, Edition, Loaded, Palette};
use crate::units::{Pt, Rect, Size};

/// For what has no names of its own.
pub static NO_NAMES: BTreeMap<String, String> = BTreeMap::new();

/// What a mechanic needs to draw and word a puzzle in its theme.
#[derive(Clone, Copy, Debug)]
pub struct Dressing<'a> {
    /// The puzzle's id.
    pub puzzle: &'a PuzzleId,
    /// The mechanic's id.
    pub mechanic: &'a str,
    /// The lock that the answer opens.
    pub lock: &'a LockKind,
    /// What the host calls that lock.
    pub lock_name: &'a str,
    /// The symbol that marks the lock and its pieces; empty when it has none.
    pub mark: &'a str,
    /// What the puzzle calls its own parts, before any word of the theme.
    pub names: &'a BTreeMap<String, String>,
    /// The theme.
    pub theme: &'a Loaded,
    /// The palette in force.
    pub palette: &'a Palette,
    /// What was read of the theme's pictures in this palette.
    pub pictures: &'a Pictures,
}

impl<'a> Dressing<'a> {
    /// What the puzzle calls a part, else what the theme does; `plain` where neither has a word of its own.
    #[must_use]
    pub fn name(&self, part: &str, plain: &'a str) -> &'a str {
        self.names.get(part).map_or_else(|| self.theme.dressing(self.mechanic, part, plain), String::as_str)
    }

    /// Whether it is drawn for the large-print edition, in which no text is set under [`crate::theme::LARGE_PRINT`].
    #[must_use]
    pub fn large(&self) -> bool {
        self.palette.edition() == Edition::LargePrint
    }

    /// The colour of a role.
    #[must_use]
    pub fn colour(&self, role: &str) -> Colour {
        self.palette.get(role)
    }

    /// A frame of the theme, in the palette's colours.
    ///
    /// # Errors
    /// When the theme has none of this name, or it cannot be read.
    pub fn frame(&self, name: &str) -> Hinted<Arc<Frame>> {
        let svg = self.theme.frame(name).ok_or_else(|| {
            Trouble::new(format!("the theme draws no `{name}`"))
                .hint(format!("add `{name}` to `frames` of its theme.ron"))
        })?;
        let read = || Frame::read(svg, self.palette).map_err(|trouble| trouble.at(format!("frame {name}")));
        self.pictures.frame(name, read)
    }

    /// A slot of a frame.
    ///
    /// # Errors
    /// When the frame has none of this name.
    pub fn slot(&self, frame: &Frame, frame_name: &str, slot: &str) -> Hinted<Rect> {
        frame.slot(slot).ok_or_else(|| {
            Trouble::new(format!("the frame `{frame_name}` has no slot `{slot}`"))
                .hint(format!("draw a rectangle with the id `slot-{slot}` in it"))
        })
    }

    /// A slot of the frame on which a printed piece stands, at the piece's printed scale.
    ///
    /// # Errors
    /// As [`Dressing::frame`] and [`Dressing::slot`].
    pub fn slot_on(&self, printed: &Printed, frame_name: &str, slot: &str) -> Hinted<Rect> {
        let frame = self.frame(frame_name)?;
        let whole = self.slot(&frame, frame_name, slot)?;
        Ok(printed.slot(&frame, slot).unwrap_or(whole))
    }

    /// A symbol of the theme, in the palette's colours.
    ///
    /// # Errors
    /// When the theme has none of this name, or it cannot be read.
    pub fn symbol(&self, name: &str) -> Hinted<Arc<str>> {
        let svg = self.theme.symbol(name).ok_or_else(|| {
            let known: Vec<&str> = self.theme.theme.symbols.keys().map(String::as_str).collect();
            let mut trouble = Trouble::new(format!("the theme has no symbol `{name}`"));
            if let Some(near) = crate::kit::file::nearest(name, &known) {
                trouble = trouble.hint(format!("did you mean `{near}`?"));
            }
            trouble.hint(format!("its symbols are {}", known.join(", ")))
        })?;
        let read = || clean_svg(svg, self.palette).map_err(|trouble| trouble.at(format!("symbol {name}")));
        self.pictures.symbol(name, read)
    }

    /// How the theme's symbols look, by name, to be recognised on paper.
    ///
    /// # Errors
    /// When a symbol cannot be read.
    pub fn looks(&self) -> Hinted<Looks> {
        let mut looks = Looks::new();
        for name in self.theme.theme.symbols.keys() {
            if self.theme.symbol(name).is_some() {
                looks.add(name.as_str(), Look::of_svg(&self.symbol(name)?, Size::mm(10.0, 10.0))?);
            }
        }
        Ok(looks)
    }

    /// The place in the kit that a text of this puzzle comes from.
    #[must_use]
    pub fn at(&self, field: PuzzleField) -> Anchor {
        Anchor::Puzzle(self.puzzle.clone(), field)
    }

    /// A card on a frame with its title and body set, and the lock's mark drawn.
    ///
    /// # Errors
    /// As [`Dressing::frame`] and [`Dressing::slot`].
    pub fn card(&self, frame_name: &str, title: &str, body: &Rich, alt: &str) -> Hinted<Face> {
        let frame = self.frame(frame_name)?;
        let mut face = Face::on(&frame, alt);
        self.title(&mut face, &frame, frame_name, title)?;
        let slot = self.slot(&frame, frame_name, "body")?;
        let ink = self.colour("ink");
        let from = self.at(PuzzleField::Setup);
        face.text(TextRun::new(slot, Role::Text, body.clone(), Pt::new(15.0), ink, from));
        self.draw_mark(&mut face, &frame)?;
        Ok(face)
    }

    /// Sets the title in the frame's slot.
    ///
    /// # Errors
    /// As [`Dressing::slot`].
    pub fn title(&self, face: &mut Face, frame: &Frame, frame_name: &str, title: &str) -> Hinted<()> {
        let slot = self.slot(frame, frame_name, "title")?;
        let run = TextRun::new(
            slot,
            Role::Display,
            Rich::plain(typographic(title)),
            Pt::new(22.0),
            self.colour("ink"),
            self.at(PuzzleField::Setup),
        );
        face.text(run.aligned(Align::Centre, Valign::Middle));
        Ok(())
    }

    /// Draws the lock's mark into the frame's slot `mark`, if the lock has a mark and the frame the slot.
    ///
    /// # Errors
    /// When the theme has no such symbol.
    pub fn draw_mark(&self, face: &mut Face, frame: &Frame) -> Hinted<()> {
        if let (false, Some(slot)) = (self.mark.is_empty(), frame.slot("mark")) {
            face.art(self.symbol(self.mark)?, slot, format!("mark: {}", self.mark));
        }
        Ok(())
    }

    /// An ornament of the theme in the palette's colours, if it has one of this name.
    ///
    /// # Errors
    /// When its picture cannot be used.
    pub fn ornament(&self, name: &str) -> Hinted<Option<Arc<str>>> {
        let Some(svg) = self.theme.ornament(name) else { return Ok(None) };
        let read = || clean_svg(svg, self.palette).map_err(|trouble| trouble.at(format!("ornament {name}")));
        self.pictures.ornament(name, read).map(Some)
    }

    /// A printed piece of this puzzle for guests. Its label is what preparation and guide call the part, and after it,
    /// where the part has several pieces or asks for something, which of them it is: `of`, else empty.
    #[must_use]
    pub fn piece(&self, part: &str, of: &str, front: Face) -> Piece {
        let known = find(self.mechanic).ok().and_then(|mechanic| mechanic.meta().part(part));
        let name = known.map(|known| self.name(part, known.name));
        let label = name.map_or_else(|| capital(of), |name| caption(name, of));
        Piece {
            id: format!("{}-{part}", self.puzzle),
            part: part.to_owned(),
            label,
            audience: Audience::Players,
            front,
            back: None,
            copies: 1,
            measured: false,
            stock: crate::face::Stock::Card,
            on_a_thing: false,
            large: false,
            group: self.puzzle.to_string(),
        }
    }
}
