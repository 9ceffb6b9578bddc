use std::collections::BTreeMap;

use super::LETTERING;
use crate::diag::{Hinted, Trouble};

/// The font family of each lettering role.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Lettering {
    families: BTreeMap<&'static str, String>,
}

impl Lettering {
    /// The lettering of a theme with a kit's changes. A role that neither names is set in the role `text`.
    ///
    /// # Errors
    /// When a role is unknown or `text` is missing.
    pub fn new(theme: &BTreeMap<String, String>, changes: &BTreeMap<String, String>) -> Hinted<Self> {
        let mut families = BTreeMap::new();
        for (name, family) in theme.iter().chain(changes) {
            let (role, _) = LETTERING.iter().find(|(role, _)| role == name).ok_or_else(|| {
                let known: Vec<&str> = LETTERING.iter().map(|(role, _)| *role).collect();
                Trouble::new(format!("there is no lettering role `{name}`"))
                    .at("lettering")
                    .hint(format!("the roles are {}", known.join(", ")))
            })?;
            families.insert(*role, family.clone());
        }
        let Some(text) = families.get("text").cloned() else {
            return Err(Trouble::new("the theme names no font for `text`").at("lettering").hint("add text: \"…\""));
        };
        for (role, _) in LETTERING {
            families.entry(*role).or_insert_with(|| text.clone());
        }
        Ok(Self { families })
    }

    /// The family of a role; empty for a role that does not exist.
    #[must_use]
    pub fn family(&self, role: &str) -> &str {
        self.families.get(role).map_or("", String::as_str)
    }

    /// All roles with their families.
    pub fn iter(&self) -> impl Iterator<Item = (&'static str, &str)> + '_ {
        self.families.iter().map(|(role, family)| (*role, family.as_str()))
    }
}
