use std::collections::{BTreeMap, BTreeSet};

use typst::foundations::Bytes;
use typst::layout::Abs;
use typst::text::{Font, FontBook as Book, FontInstance, FontStretch, FontStyle, FontVariant, FontWeight};
use typst::utils::LazyHash;

use crate::diag::{Hinted, Trouble};
use crate::face::Role;
use crate::files::FontBook;
use crate::theme::Lettering;

/// The fonts of one lettering, read once.
pub(super) struct Fonts {
    pub(super) book: LazyHash<Book>,
    pub(super) fonts: Vec<Font>,
    instances: Vec<FontInstance>,
    /// Family by lettering role, spelled as the engine spells it.
    pub(super) families: BTreeMap<&'static str, String>,
}

/// Roman or italic, plain or bold.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Style {
    pub(super) emph: bool,
    pub(super) strong: bool,
}

impl Style {
    fn variant(self) -> FontVariant {
        let style = if self.emph { FontStyle::Italic } else { FontStyle::Normal };
        let weight = if self.strong { FontWeight::BOLD } else { FontWeight::REGULAR };
        FontVariant::new(style, weight, FontStretch::NORMAL)
    }
}

/// How far ink reaches beyond the box of a line from capital height to baseline, in parts of the type size.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Reach {
    pub(super) above: f64,
    pub(super) below: f64,
    /// Beyond its own width, of letters that begin a word.
    pub(super) left: f64,
    /// Beyond its own width, of letters that end a word.
    pub(super) right: f64,
}

impl Reach {
    /// The larger of each.
    pub(super) fn max(self, other: Self) -> Self {
        Self {
            above: self.above.max(other.above),
            below: self.below.max(other.below),
            left: self.left.max(other.left),
            right: self.right.max(other.right),
        }
    }
}

impl Fonts {
    /// Reads the families that the lettering names. Other fonts stay unread: a machine may have thousands.
    pub(super) fn new(known: &FontBook, lettering: &Lettering) -> Hinted<Self> {
        let mut families = BTreeMap::new();
        let mut fonts: Vec<Font> = Vec::new();
        let mut loaded: BTreeMap<String, Vec<usize>> = BTreeMap::new();
        for (role, family) in lettering.iter() {
            let wanted = family.to_lowercase();
            let at = match loaded.get(&wanted) {
                Some(at) => at.clone(),
                None => {
                    let found = read(known, &wanted);
                    let at: Vec<usize> = (fonts.len()..fonts.len() + found.len()).collect();
                    fonts.extend(found);
                    loaded.insert(wanted, at.clone());
                    at
                }
            };
            let Some(font) = at.first().and_then(|at| fonts.get(*at)) else {
                return Err(unknown(known, role, family));
            };
            families.insert(role, font.info().family.clone());
        }
        let instances = fonts
            .iter()
            .map(|font| font.clone().instantiate(font.info().variant, Abs::pt(12.0), &Default::default()))
            .collect();
        Ok(Self { book: LazyHash::new(Book::from_fonts(&fonts)), fonts, instances, families })
    }

    /// The family of a role.
    pub(super) fn family(&self, role: Role) -> &str {
        self.families.get(role.name()).map_or("", String::as_str)
    }

    fn select(&self, role: Role, style: Style) -> Option<&FontInstance> {
        let family = self.family(role).to_lowercase();
        self.instances.get(self.book.select(&family, style.variant())?)
    }

    /// Whether the role's family has true italics.
    pub(super) fn italic(&self, role: Role) -> bool {
        self.select(role, Style { emph: true, strong: false })
            .is_some_and(|font| font.font().info().variant.style != FontStyle::Normal)
    }

    /// The characters among these that the role's family cannot draw.
    pub(super) fn lacks(&self, role: Role, style: Style, chars: &BTreeSet<char>) -> Vec<char> {
        let Some(font) = self.select(role, style) else { return chars.iter().copied().collect() };
        chars
            .iter()
            .copied()
            .filter(|c| !c.is_whitespace() && !c.is_control() && !IGNORABLE.contains(c))
            .filter(|c| font.ttf().glyph_index(*c).is_none())
            .collect()
    }

    /// Height of the role's capitals, in parts of the type size.
    pub(super) fn cap_height(&self, role: Role) -> f64 {
        self.select(role, Style::default()).map_or(0.7, |font| font.metrics().cap_height.get())
    }

    /// About how wide a text is, in parts of the type size: without kerning.
    pub(super) fn width(&self, role: Role, style: Style, text: &str) -> f64 {
        let Some(font) = self.select(role, style) else { return 0.0 };
        let advance = |c| font.ttf().glyph_index(c).and_then(|glyph| font.x_advance(glyph.0));
        text.chars().map(|c| advance(c).map_or(1.0, |em| em.get())).sum()
    }

    /// How far the ink of a text reaches beyond its lines' boxes.
    pub(super) fn reach(&self, role: Role, style: Style, text: &str) -> Reach {
        let Some(font) = self.select(role, style) else { return Reach::default() };
        let upem = font.units_per_em();
        let cap = font.metrics().cap_height.get();
        let mut all = Reach::default();
        let chars: BTreeSet<char> = text.chars().collect();
        let firsts: BTreeSet<char> = text.split_whitespace().filter_map(|word| word.chars().next()).collect();
        let lasts: BTreeSet<char> = text.split_whitespace().filter_map(|word| word.chars().next_back()).collect();
        for c in chars {
            let Some(glyph) = font.ttf().glyph_index(c) else { continue };
            let Some(bounds) = font.ttf().glyph_bounding_box(glyph) else { continue };
            let em = |units: i16| f64::from(units) / upem;
            let advance = font.x_advance(glyph.0).map_or(0.0, |em| em.get());
            all = all.max(Reach {
                above: em(bounds.y_max) - cap,
                below: -em(bounds.y_min),
                left: if firsts.contains(&c) { -em(bounds.x_min) } else { 0.0 },
                right: if lasts.contains(&c) { em(bounds.x_max) - advance } else { 0.0 },
            });
        }
        all
    }
}

/// Characters that guide the setting and are not drawn: soft hyphen, zero-width space and joiners, word joiner,
/// byte order mark.
const IGNORABLE: [char; 6] = ['\u{AD}', '\u{200B}', '\u{200C}', '\u{200D}', '\u{2060}', '\u{FEFF}'];

fn read(known: &FontBook, family: &str) -> Vec<Font> {
    known
        .db()
        .faces()
        .filter(|face| face.families.iter().any(|(name, _)| name.to_lowercase() == family))
        .filter_map(|face| {
            known.db().with_face_data(face.id, |data, index| Font::new(Bytes::new(data.to_vec()), index))
        })
        .flatten()
        .collect()
}

fn unknown(known: &FontBook, role: &str, family: &str) -> Trouble {
    let trouble = Trouble::new(format!("no font is called `{family}`")).at(format!("lettering, {role}"));
    let families = known.families();
    let mut near: Vec<(usize, &String)> = families
        .iter()
        .map(|name| (strsim::damerau_levenshtein(&name.to_lowercase(), &family.to_lowercase()), name))
        .filter(|(distance, name)| *distance <= name.len() / 3 + 1)
        .collect();
    near.sort();
    let hint = if near.is_empty() {
        format!("the fonts at hand are {}", families.join(", "))
    } else {
        let near: Vec<&str> = near.iter().take(3).map(|(_, name)| name.as_str()).collect();
        format!("did you mean {}?", near.join(" or "))
    };
    trouble.hint(hint).hint("put the font's files into the theme's folder `fonts`")
}
