use eframe::egui::{Key, KeyboardShortcut, Modifiers};

use crate::app::session::Tab;

/// What a menu, a button or a key can set off; anything that carries data is an `Edit` or a `Command`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Action {
    /// Take back the last step.
    Undo,
    /// Do it again.
    Redo,
    /// Make a fresh kit.
    New,
    /// Open another kit.
    Open,
    /// Open a demo kit, by its place among [`crate::bundle::DEMO_KITS`].
    Demo(usize),
    /// Save where the kit lies.
    Save,
    /// Save in another folder.
    SaveAs,
    /// Show what the bundle will hold.
    Export,
    /// Write the bundle.
    WriteBundle,
    /// Show a place.
    Show(Tab),
    /// Light or dark.
    SwitchLight,
    /// Larger.
    ZoomIn,
    /// Smaller.
    ZoomOut,
    /// 100 %.
    ZoomReset,
    /// Show or hide the findings.
    ToggleFindings,
    /// Close the window.
    Quit,
}

impl Action {
    /// All actions.
    pub const ALL: &[Self] = &[
        Self::Undo,
        Self::Redo,
        Self::New,
        Self::Open,
        Self::Demo(0),
        Self::Demo(1),
        Self::Save,
        Self::SaveAs,
        Self::Export,
        Self::WriteBundle,
        Self::Show(Tab::Write),
        Self::Show(Tab::Build),
        Self::Show(Tab::Dress),
        Self::Show(Tab::Prove),
        Self::Show(Tab::Print),
        Self::SwitchLight,
        Self::ZoomIn,
        Self::ZoomOut,
        Self::ZoomReset,
        Self::ToggleFindings,
        Self::Quit,
    ];

    /// The label: sentence case, `…` when more is asked.
    #[must_use]
    pub const fn text(self) -> &'static str {
        match self {
            Self::Undo => "Undo",
            Self::Redo => "Redo",
            Self::New => "New…",
            Self::Open => "Open…",
            Self::Demo(0) => "Open The Stopped Clock",
            Self::Demo(_) => "Open The Harbour Regatta",
            Self::Save => "Save",
            Self::SaveAs => "Save as…",
            Self::Export => "Export…",
            Self::WriteBundle => "Write the bundle",
            Self::Show(tab) => tab.name(),
            Self::SwitchLight => "Light or dark",
            Self::ZoomIn => "Larger",
            Self::ZoomOut => "Smaller",
            Self::ZoomReset => "Actual size",
            Self::ToggleFindings => "Findings",
            Self::Quit => "Quit",
        }
    }

    /// What it does, in a sentence.
    #[must_use]
    pub const fn tooltip(self) -> &'static str {
        match self {
            Self::Undo => "Take back the last change",
            Self::Redo => "Make the change again that was taken back",
            Self::New => "Make a fresh kit in a folder: one box, one lock, one puzzle, to be changed as you like",
            Self::Open => "Open a kit: a folder with a kit.ron in it",
            Self::Demo(0) => "Open the demo kit that uses things from a shop; nothing of yours is changed",
            Self::Demo(_) => "Open the demo kit that is all paper; nothing of yours is changed",
            Self::Save => "Write the kit to its folder",
            Self::SaveAs => "Write the kit, with its pictures and its own themes, to another folder",
            Self::Export => "Choose papers, levels and folder of the bundle",
            Self::WriteBundle => "Write the bundle as it is chosen",
            Self::Show(tab) => tab.about(),
            Self::SwitchLight => "Switch the window between light and dark",
            Self::ZoomIn => "Make everything in the window larger, up to 200 %",
            Self::ZoomOut => "Make everything in the window smaller, down to 100 %",
            Self::ZoomReset => "Show the window at 100 %",
            Self::ToggleFindings => "Show or hide the list of findings",
            Self::Quit => "Close the window; unsaved changes are asked about",
        }
    }

    /// The keys.
    #[must_use]
    pub const fn shortcut(self) -> Option<KeyboardShortcut> {
        const fn ctrl(key: Key) -> Option<KeyboardShortcut> {
            Some(KeyboardShortcut::new(Modifiers::COMMAND, key))
        }
        const fn ctrl_shift(key: Key) -> Option<KeyboardShortcut> {
            Some(KeyboardShortcut::new(Modifiers::COMMAND.plus(Modifiers::SHIFT), key))
        }
        match self {
            Self::Undo => ctrl(Key::Z),
            Self::Redo => ctrl_shift(Key::Z),
            Self::New => ctrl(Key::N),
            Self::Open => ctrl(Key::O),
            Self::Demo(_) => None,
            Self::Save => ctrl(Key::S),
            Self::SaveAs => ctrl_shift(Key::S),
            Self::Export => ctrl(Key::E),
            Self::WriteBundle => ctrl_shift(Key::E),
            Self::Show(Tab::Write) => ctrl(Key::Num1),
            Self::Show(Tab::Build) => ctrl(Key::Num2),
            Self::Show(Tab::Dress) => ctrl(Key::Num3),
            Self::Show(Tab::Prove) => ctrl(Key::Num4),
            Self::Show(Tab::Print) => ctrl(Key::Num5),
            Self::SwitchLight => ctrl_shift(Key::L),
            Self::ZoomIn => ctrl(Key::Plus),
            Self::ZoomOut => ctrl(Key::Minus),
            Self::ZoomReset => ctrl(Key::Num0),
            Self::ToggleFindings => ctrl_shift(Key::F),
            Self::Quit => ctrl(Key::Q),
        }
    }

    /// All actions with keys, those with the most modifier keys first, so that the longer shortcut is not taken
    /// for the shorter one.
    #[must_use]
    pub fn by_shortcut() -> Vec<(Self, KeyboardShortcut)> {
        let mut found: Vec<_> = Self::ALL.iter().filter_map(|action| Some((*action, action.shortcut()?))).collect();
        found.sort_by_key(|(_, keys)| std::cmp::Reverse(usize::from(keys.modifiers.shift)));
        found
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_two_shortcuts_clash_and_all_speak() {
        let all = Action::by_shortcut();
        for (at, (action, keys)) in all.iter().enumerate() {
            assert!(!action.text().is_empty() && !action.tooltip().is_empty());
            assert!(all.iter().skip(at + 1).all(|(_, other)| other != keys), "{action:?} shares its keys");
        }
    }
}
