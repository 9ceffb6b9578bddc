use std::collections::BTreeMap;
use std::fmt::Write as _;

use super::{Colour, Edition};
use crate::diag::{Hinted, Trouble};

/// The colour roles of a palette.
pub const ROLES: &[RoleInfo] = &[
    RoleInfo { name: "paper", about: "the ground of every piece", fallback: Colour::WHITE },
    RoleInfo { name: "ink", about: "text and the main line work", fallback: Colour::BLACK },
    RoleInfo { name: "accent", about: "the strong second colour", fallback: Colour { r: 0x80, g: 0x30, b: 0x30 } },
    RoleInfo { name: "second", about: "a metal or earth tone", fallback: Colour { r: 0x90, g: 0x70, b: 0x30 } },
    RoleInfo { name: "soft", about: "a pale tint for areas", fallback: Colour { r: 0xE4, g: 0xE8, b: 0xEC } },
    RoleInfo { name: "line", about: "thin lines", fallback: Colour { r: 0x70, g: 0x78, b: 0x80 } },
    RoleInfo { name: "glow", about: "light", fallback: Colour { r: 0xF0, g: 0xD8, b: 0x80 } },
];

/// A colour role.
#[derive(Clone, Copy, Debug)]
pub struct RoleInfo {
    /// Key in `palette`, and in the classes `f-…` (fill) and `s-…` (stroke) of the art.
    pub name: &'static str,
    /// What it colours.
    pub about: &'static str,
    /// What is used where a theme names none.
    pub fallback: Colour,
}

/// A palette with every role filled, for one edition.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Palette {
    roles: BTreeMap<&'static str, Colour>,
    edition: Edition,
}

/// Least contrast with white of a line that stands alone (WCAG 2.2, 1.4.11, for graphics).
const LINE_CONTRAST: f64 = 3.0;
/// Roles that colour areas, never lines.
const GROUNDS: &[&str] = &["paper", "soft", "glow"];

impl Palette {
    /// The palette of a theme with a kit's changes.
    ///
    /// # Errors
    /// When a colour cannot be read or a role is unknown.
    pub fn new(theme: &BTreeMap<String, String>, changes: &BTreeMap<String, String>) -> Hinted<Self> {
        let known: Vec<&str> = ROLES.iter().map(|role| role.name).collect();
        let mut roles: BTreeMap<&'static str, Colour> = ROLES.iter().map(|role| (role.name, role.fallback)).collect();
        for (name, hex) in theme.iter().chain(changes) {
            let colour = Colour::parse(hex).ok_or_else(|| {
                Trouble::new(format!("\"{hex}\" is no colour"))
                    .at(format!("palette, {name}"))
                    .hint("write six hex digits, as in #1F2A44")
            })?;
            let role = ROLES.iter().find(|role| role.name == name).ok_or_else(|| {
                Trouble::new(format!("there is no colour role `{name}`"))
                    .at("palette")
                    .hint(format!("the roles are {}", known.join(", ")))
            })?;
            roles.insert(role.name, colour);
        }
        Ok(Self { roles, edition: Edition::Colour })
    }

    /// The same palette for another edition. For little ink the roles of areas turn white and a role too faint for
    /// lines takes the ink's colour.
    #[must_use]
    pub fn in_edition(mut self, edition: Edition) -> Self {
        self.edition = edition;
        if edition == Edition::LowInk {
            let ink = self.get("ink");
            for (role, colour) in &mut self.roles {
                if GROUNDS.contains(role) {
                    *colour = Colour::WHITE;
                } else if colour.contrast(Colour::WHITE) < LINE_CONTRAST {
                    *colour = ink;
                }
            }
        }
        self
    }

    /// The edition that it is for.
    #[must_use]
    pub const fn edition(&self) -> Edition {
        self.edition
    }

    /// The colour of a role; black for a role that does not exist.
    #[must_use]
    pub fn get(&self, role: &str) -> Colour {
        self.roles.get(role).copied().unwrap_or(Colour::BLACK)
    }

    /// All roles with their colours, sorted by name.
    pub fn iter(&self) -> impl Iterator<Item = (&'static str, Colour)> + '_ {
        self.roles.iter().map(|(role, colour)| (*role, *colour))
    }

    /// The style sheet that gives the classes of a theme's art their colours.
    #[must_use]
    pub fn style_sheet(&self) -> String {
        let mut css = String::new();
        for (role, colour) in self.iter() {
            // Writing to a String cannot fail.
            let _ = write!(css, ".f-{role}{{fill:{colour}}}.s-{role}{{stroke:{colour}}}");
        }
        css
    }
}
