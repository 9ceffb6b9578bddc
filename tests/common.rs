//! What several tests use.

use std::fmt::Write as _;
use std::sync::LazyLock;

use inklatch::face::proof::Printed;
use inklatch::files::{Builtin, FontBook, Memory, VPath};
use inklatch::ids::PuzzleId;
use inklatch::kit::LockKind;
use inklatch::mechanics::{AnyMechanic, AnyView, Dressing, Hung, Job, Rng};
use inklatch::print::Press;
use inklatch::theme::{self, Colour, Edition, FRAMES, Lettering, Loaded, Palette};
use rand_chacha::rand_core::SeedableRng as _;

/// Sizes of the plain frames, in millimetres, and their slots: name, x, y, width, height.
type PlainSlot = (&'static str, f64, f64, f64, f64);
const PLAIN: &[(&str, f64, f64, &[PlainSlot])] = &[
    (
        "portrait",
        75.0,
        105.0,
        &[("title", 8.0, 7.0, 59.0, 9.0), ("body", 7.0, 20.0, 61.0, 68.0), ("mark", 32.0, 91.0, 11.0, 11.0)],
    ),
    (
        "landscape",
        105.0,
        75.0,
        &[("title", 12.0, 7.0, 81.0, 9.0), ("body", 9.0, 19.0, 87.0, 40.0), ("mark", 47.0, 61.0, 11.0, 11.0)],
    ),
    (
        "square",
        80.0,
        80.0,
        &[("title", 9.0, 7.0, 62.0, 9.0), ("body", 8.0, 19.0, 64.0, 44.0), ("mark", 35.0, 66.0, 10.0, 10.0)],
    ),
    (
        "note",
        105.0,
        75.0,
        &[("title", 12.0, 9.0, 68.0, 8.0), ("body", 9.0, 21.0, 87.0, 42.0), ("mark", 85.0, 8.0, 10.6, 10.6)],
    ),
    ("letterhead", 190.0, 46.0, &[("title", 50.0, 5.0, 90.0, 14.0)]),
    ("letterfoot", 190.0, 16.0, &[]),
    (
        "sign",
        190.0,
        62.0,
        &[("title", 45.0, 6.0, 100.0, 7.0), ("letters", 15.0, 17.0, 160.0, 26.0), ("mark", 90.0, 47.0, 10.0, 10.0)],
    ),
    (
        "bookmark",
        52.0,
        180.0,
        &[
            ("title", 6.5, 14.0, 39.0, 12.0),
            ("table", 6.5, 31.0, 39.0, 116.0),
            ("foot", 6.5, 151.0, 39.0, 12.0),
            ("mark", 21.0, 166.0, 10.0, 10.0),
        ],
    ),
    (
        "cover",
        130.0,
        185.0,
        &[("title", 20.0, 15.0, 90.0, 33.0), ("body", 20.0, 136.0, 90.0, 26.0), ("mark", 59.0, 165.0, 11.0, 11.0)],
    ),
    ("disc", 72.0, 72.0, &[("body", 16.0, 21.0, 40.0, 32.0), ("mark", 32.0, 56.0, 8.0, 8.0)]),
    (
        "label",
        95.0,
        58.0,
        &[("title", 11.0, 7.0, 73.0, 10.0), ("body", 9.0, 22.0, 77.0, 19.0), ("mark", 42.0, 43.0, 10.0, 10.0)],
    ),
    (
        "closing",
        150.0,
        100.0,
        &[("title", 20.0, 12.0, 110.0, 14.0), ("body", 20.0, 30.0, 110.0, 40.0), ("line", 20.0, 76.0, 110.0, 10.0)],
    ),
    (
        "token",
        58.0,
        66.0,
        &[("body", 8.0, 10.0, 42.0, 36.0), ("mark", 24.5, 47.0, 9.0, 9.0), ("dots", 22.0, 57.0, 14.0, 4.0)],
    ),
    (
        "board",
        190.0,
        250.0,
        &[("title", 20.0, 8.0, 150.0, 12.0), ("field", 7.0, 24.0, 176.0, 205.0), ("mark", 90.0, 234.0, 10.0, 10.0)],
    ),
    (
        "tag",
        40.0,
        70.0,
        &[("title", 5.0, 14.0, 30.0, 9.0), ("body", 5.0, 25.0, 30.0, 26.0), ("mark", 15.0, 55.0, 10.0, 10.0)],
    ),
];

/// Symbols of the plain theme.
const SYMBOLS: &[&str] = &["bell", "gear", "key", "lantern", "moon", "owl", "star", "weight"];

/// A theme that draws bare rectangles: every frame with every slot, a few symbols, no words of its own.
pub fn plain_theme() -> Loaded {
    let mut files: Vec<(VPath, Vec<u8>)> = Vec::new();
    let mut frames = String::new();
    for info in FRAMES {
        let (_, w, h, slots) = PLAIN.iter().find(|row| row.0 == info.name).expect("a plain frame for every frame");
        let mut svg = format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{w}mm\" height=\"{h}mm\" viewBox=\"0 0 {w} {h}\">"
        );
        let id = if info.name == "token" { " id=\"outline\"" } else { "" };
        let _ = write!(
            svg,
            "<rect{id} class=\"f-paper s-ink\" x=\"1\" y=\"1\" width=\"{}\" height=\"{}\" fill=\"#FFFFFF\" stroke=\"#000000\" stroke-width=\"0.3\"/>",
            w - 2.0,
            h - 2.0
        );
        for slot in info.slots {
            assert!(slots.iter().any(|row| row.0 == *slot), "plain {} lacks {slot}", info.name);
        }
        for (name, x, y, w, h) in *slots {
            let _ = write!(
                svg,
                "<rect id=\"slot-{name}\" x=\"{x}\" y=\"{y}\" width=\"{w}\" height=\"{h}\" fill=\"none\"/>"
            );
        }
        svg.push_str("</svg>");
        files.push((VPath::new(&format!("art/{}.svg", info.name)).unwrap(), svg.into_bytes()));
        let _ = writeln!(frames, "        \"{0}\": \"art/{0}.svg\",", info.name);
    }
    let mut symbols = String::new();
    for (index, name) in SYMBOLS.iter().enumerate() {
        // A row of as many bars as the symbol's place in the list: drawn simply, yet none like another.
        let mut svg = String::from(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"24mm\" height=\"24mm\" viewBox=\"0 0 24 24\">",
        );
        for bar in 0..=index {
            let _ = write!(
                svg,
                "<rect class=\"f-ink\" x=\"{}\" y=\"4\" width=\"1.5\" height=\"16\" fill=\"#000000\"/>",
                2.0 + 2.5 * bar as f64
            );
        }
        svg.push_str("</svg>");
        files.push((VPath::new(&format!("art/sym-{name}.svg")).unwrap(), svg.into_bytes()));
        let _ = writeln!(symbols, "        \"{name}\": \"art/sym-{name}.svg\",");
    }
    let ron = format!(
        "(\n    format: 1,\n    id: \"plain\",\n    name: \"Plain\",\n    credit: \"Drawn for the tests.\",\n    palette: {{}},\n    \
         lettering: {{ \"text\": \"Atkinson Hyperlegible\" }},\n    frames: {{\n{frames}    }},\n    symbols: {{\n{symbols}    }},\n    \
         colours: {{ \"white\": \"#FFFFFF\", \"gold\": \"#D9A520\", \"blue\": \"#23408E\", \"red\": \"#B03030\" }},\n)\n"
    );
    files.push((VPath::new("theme.ron").unwrap(), ron.into_bytes()));
    let loaded = theme::load(&Memory::with(files), "plain").expect("the plain theme loads");
    assert!(loaded.missing.is_empty());
    loaded
}

/// The plain theme, loaded once.
pub static THEME: LazyLock<Loaded> = LazyLock::new(plain_theme);

/// Chance from a seed.
pub fn rng(seed: u64) -> Rng {
    Rng::seed_from_u64(seed)
}

/// Locks on the hasp of the plain kit.
pub const HUNG: &[Hung<'static>] = &[
    Hung { name: "the brass padlock", mark: "owl", hole: 1, needed: true },
    Hung { name: "the long padlock", mark: "key", hole: 2, needed: true },
    Hung { name: "the black padlock", mark: "moon", hole: 4, needed: true },
];

/// Lays a puzzle out in the plain theme.
pub fn lay_out(
    mechanic: &dyn AnyMechanic,
    setup: &str,
    answer: &str,
    lock: &LockKind,
    seed: u64,
) -> inklatch::diag::Hinted<Box<dyn AnyView>> {
    let symbols: Vec<&str> = THEME.theme.symbols.keys().map(String::as_str).collect();
    let colours: Vec<(&str, Colour)> =
        THEME.theme.colours.iter().filter_map(|(name, hex)| Some((name.as_str(), Colour::parse(hex)?))).collect();
    let job = Job { answer, lock, symbols: &symbols, marks: &["gear"], colours: &colours, hung: HUNG };
    mechanic.lay_out(setup, &job, &mut rng(seed))
}

/// Calls `with` with a dressing of the plain theme.
pub fn dressed<T>(mechanic: &str, lock: &LockKind, with: impl FnOnce(&Dressing<'_>) -> T) -> T {
    let palette = Palette::new(&THEME.theme.palette, &std::collections::BTreeMap::new()).expect("the palette is sound");
    let puzzle = PuzzleId::new("sample").expect("an id");
    with(&Dressing {
        puzzle: &puzzle,
        mechanic,
        lock,
        lock_name: "the iron lock",
        mark: "gear",
        names: &inklatch::mechanics::NO_NAMES,
        theme: &THEME,
        palette: &palette,
        pictures: &inklatch::face::Pictures::default(),
    })
}

/// A press for the plain theme.
pub static PRESS: LazyLock<Press> = LazyLock::new(|| {
    let lettering = Lettering::new(&THEME.theme.lettering, &std::collections::BTreeMap::new()).expect("lettering");
    Press::new(&FontBook::bundled().expect("fonts"), &lettering).expect("a press")
});

/// What is printed of a puzzle in the plain theme: every side of every piece as it was laid out, and what the host is
/// told.
pub fn printed(mechanic: &str, lock: &LockKind, view: &dyn AnyView) -> Vec<Printed> {
    dressed(mechanic, lock, |cx| print(&PRESS, view, cx))
}

fn print(press: &Press, view: &dyn AnyView, cx: &Dressing<'_>) -> Vec<Printed> {
    let mut sides = Vec::new();
    let mut pieces = view.pieces(cx).expect("pieces");
    if cx.palette.edition() == Edition::LargePrint {
        pieces = inklatch::party::enlarged(&pieces, &|face| press.fits(face)).expect("large pieces");
        for face in pieces.iter().flat_map(|piece| std::iter::once(&piece.front).chain(&piece.back)) {
            let fits = press.fits(face).expect("a face");
            assert!(fits.into_iter().all(|fits| fits), "{} overflows in large print", cx.mechanic);
        }
    }
    for piece in &pieces {
        let faces = std::iter::once((&piece.front, false)).chain(piece.back.iter().map(|back| (back, true)));
        for (face, back) in faces {
            sides.push(press.face(face).expect("a face").printed(piece, back).seen());
        }
    }
    sides.push(Printed::told(view.prep(cx).into_iter().map(|step| step.what)));
    sides
}

/// The view read back from what is printed; none for a mechanic that has no such reader.
pub fn reread(
    mechanic: &dyn AnyMechanic,
    lock: &LockKind,
    printed: &[Printed],
) -> Option<inklatch::diag::Hinted<Box<dyn AnyView>>> {
    dressed(mechanic.meta().id, lock, |cx| mechanic.reread(printed, cx))
}

/// A theme with its palette and a press: where puzzles are laid out, printed and read back.
pub struct Stage {
    /// The theme.
    pub theme: Loaded,
    /// Its palette in the edition.
    pub palette: Palette,
    /// The press with its fonts.
    pub press: Press,
}

impl Stage {
    /// The plain theme, which only draws boxes, and after it the built-in ones.
    pub fn all() -> Vec<Self> {
        Self::in_edition(Edition::Colour)
    }

    /// The same, drawn for one edition.
    pub fn in_edition(edition: Edition) -> Vec<Self> {
        let bundled = FontBook::bundled().expect("fonts");
        let mut stages = vec![Self::new(plain_theme(), &bundled, edition)];
        for id in theme::builtin_ids() {
            let own = Builtin::below(VPath::new("themes").and_then(|path| path.join(id.as_str())).expect("a path"));
            let fonts = bundled.with_folder(&own, &VPath::new("fonts").expect("a path")).expect("fonts");
            stages.push(Self::new(theme::load_builtin(&id).expect("a theme"), &fonts, edition));
        }
        stages
    }

    fn new(theme: Loaded, fonts: &FontBook, edition: Edition) -> Self {
        let none = std::collections::BTreeMap::new();
        let palette = Palette::new(&theme.theme.palette, &none).expect("a palette").in_edition(edition);
        let lettering = Lettering::new(&theme.theme.lettering, &none).expect("lettering");
        Self { theme, palette, press: Press::new(fonts, &lettering).expect("a press") }
    }

    /// Lays a puzzle out in this theme.
    pub fn lay_out(
        &self,
        mechanic: &dyn AnyMechanic,
        setup: &str,
        answer: &str,
        lock: &LockKind,
        seed: u64,
    ) -> inklatch::diag::Hinted<Box<dyn AnyView>> {
        let theme = &self.theme.theme;
        let symbols: Vec<&str> = theme.symbols.keys().map(String::as_str).collect();
        let colours: Vec<(&str, Colour)> =
            theme.colours.iter().filter_map(|(name, hex)| Some((name.as_str(), Colour::parse(hex)?))).collect();
        let marks = symbols.get(..1).unwrap_or_default();
        let job = Job { answer, lock, symbols: &symbols, marks, colours: &colours, hung: HUNG };
        mechanic.lay_out(setup, &job, &mut rng(seed))
    }

    /// Calls `with` with a dressing of this theme; the lock's mark is the first of its symbols.
    pub fn dressed<T>(&self, mechanic: &str, lock: &LockKind, with: impl FnOnce(&Dressing<'_>) -> T) -> T {
        let puzzle = PuzzleId::new("sample").expect("an id");
        with(&Dressing {
            puzzle: &puzzle,
            mechanic,
            lock,
            lock_name: "the iron lock",
            mark: self.theme.theme.symbols.keys().next().map_or("", String::as_str),
            theme: &self.theme,
            palette: &self.palette,
            names: &inklatch::mechanics::NO_NAMES,
            pictures: &inklatch::face::Pictures::default(),
        })
    }

    /// What is printed of a puzzle in this theme, and what the host is told.
    pub fn printed(&self, mechanic: &str, lock: &LockKind, view: &dyn AnyView) -> Vec<Printed> {
        self.dressed(mechanic, lock, |cx| print(&self.press, view, cx))
    }

    /// A face as a picture in PNG.
    pub fn drawn(&self, face: &inklatch::face::Face, px_per_mm: f64) -> Vec<u8> {
        self.press.face(face).and_then(|set| set.raster(px_per_mm)).and_then(|raster| raster.png()).expect("a picture")
    }

    /// The view read back from what is printed; none for a mechanic that has no such reader.
    pub fn reread(
        &self,
        mechanic: &dyn AnyMechanic,
        lock: &LockKind,
        printed: &[Printed],
    ) -> Option<inklatch::diag::Hinted<Box<dyn AnyView>>> {
        self.dressed(mechanic.meta().id, lock, |cx| mechanic.reread(printed, cx))
    }
}

/// The words of a puzzle's pieces as they stand on sheets of this paper, line by line from the top: of each baseline
/// its words, whatever page it is on.
pub fn lines_on(paper: inklatch::sheet::Paper, pieces: &[inklatch::face::Piece]) -> Vec<String> {
    let audience = inklatch::face::Audience::Players;
    let sheets = inklatch::sheet::impose(pieces, paper, audience, "Kit").expect("sheets");
    let info = inklatch::print::DocInfo { title: "Kit".into(), ..Default::default() };
    let doc = PRESS.sheets(&sheets, &info).expect("pages");
    let mut found = Vec::new();
    for page in 0..doc.page_count() {
        let words = doc.words(page);
        let all: Vec<_> = words.iter().collect();
        found.extend(inklatch::face::proof::lines(&all).into_iter().map(|line| line.text));
    }
    found
}
