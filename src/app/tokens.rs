//! Colours, spacing and type sizes of the window: the only place with raw values.
//!
//! The look is a writing desk: warm paper, one ink blue for what can be done, and three sober tones for what
//! a finding weighs. Text tones keep a contrast of at least 4.5 on every ground they stand on (WCAG 2.2,
//! success criterion 1.4.3); a test holds them to it.

use eframe::egui::{
    self, Color32, CornerRadius, FontFamily, FontId, Margin, Shadow, Stroke, TextStyle, Theme, Visuals, vec2,
};

/// The smallest gap, between a label and its field.
pub const GAP_S: f32 = 4.0;
/// Between neighbours of one thought.
pub const GAP: f32 = 8.0;
/// Between fields.
pub const GAP_M: f32 = 16.0;
/// Between sections.
pub const GAP_L: f32 = 28.0;
/// Round corners.
pub const RADIUS: u8 = 7;
/// Width of the outline on the left.
pub const OUTLINE: f32 = 236.0;
/// First width of the desk on the right.
pub const DESK: f32 = 430.0;
/// Widest column of fields: longer lines are hard to read (about 80 characters).
pub const COLUMN: f32 = 660.0;
/// Width that the fields keep when outline and desk are made wide.
pub const FIELDS: f32 = 420.0;
/// Height that they keep when the list of findings is made high.
pub const BODY: f32 = 330.0;
/// Outer margin of a panel.
pub const MARGIN: i8 = 20;

/// Family of headings and of what will be printed in a book face.
pub const SERIF: &str = "serif";
/// Bold face of the headings.
pub const SERIF_BOLD: &str = "serif-bold";
/// Bold face of labels.
pub const BOLD: &str = "bold";

/// The colours of one theme of the window.
#[derive(Clone, Copy, Debug)]
pub struct Tokens {
    /// Under the printed pieces.
    pub desk: Color32,
    /// Behind the header and the outline.
    pub shelf: Color32,
    /// Behind the fields.
    pub panel: Color32,
    /// Inside a field.
    pub well: Color32,
    /// Text.
    pub ink: Color32,
    /// Text that explains.
    pub quiet: Color32,
    /// Thin lines.
    pub line: Color32,
    /// Edges of fields and buttons: 3 to 1 against the ground (WCAG 2.2, 1.4.11).
    pub edge: Color32,
    /// What can be done, and where one is.
    pub accent: Color32,
    /// Ground of the chosen thing.
    pub accent_soft: Color32,
    /// Ground of a thing under the pointer.
    pub hover: Color32,
    /// Text on the accent.
    pub on_accent: Color32,
    /// A finding that blocks.
    pub blocks: Color32,
    /// Its ground.
    pub blocks_soft: Color32,
    /// A finding that warns.
    pub warns: Color32,
    /// Its ground.
    pub warns_soft: Color32,
    /// A finding worth knowing.
    pub notes: Color32,
    /// Its ground.
    pub notes_soft: Color32,
    /// What is proven.
    pub good: Color32,
    /// Its ground.
    pub good_soft: Color32,
    /// Shadow of a piece on the desk.
    pub shadow: Color32,
}

const fn rgb(r: u8, g: u8, b: u8) -> Color32 {
    Color32::from_rgb(r, g, b)
}

/// Daylight.
pub const LIGHT: Tokens = Tokens {
    desk: rgb(0xDD, 0xDA, 0xD1),
    shelf: rgb(0xF1, 0xEE, 0xE6),
    panel: rgb(0xFB, 0xFA, 0xF6),
    well: rgb(0xFF, 0xFF, 0xFF),
    ink: rgb(0x1D, 0x24, 0x33),
    quiet: rgb(0x55, 0x5C, 0x6B),
    line: rgb(0xDE, 0xD9, 0xCD),
    edge: rgb(0x92, 0x8D, 0x80),
    accent: rgb(0x1F, 0x4E, 0x8C),
    accent_soft: rgb(0xDF, 0xE8, 0xF4),
    hover: rgb(0xE9, 0xE5, 0xDA),
    on_accent: rgb(0xFF, 0xFF, 0xFF),
    blocks: rgb(0x9B, 0x22, 0x2C),
    blocks_soft: rgb(0xF8, 0xE4, 0xE2),
    warns: rgb(0x7D, 0x51, 0x00),
    warns_soft: rgb(0xF8, 0xEB, 0xCF),
    notes: rgb(0x3F, 0x55, 0x7A),
    notes_soft: rgb(0xE6, 0xEA, 0xF2),
    good: rgb(0x20, 0x66, 0x47),
    good_soft: rgb(0xDD, 0xEE, 0xE4),
    shadow: Color32::from_black_alpha(46),
};

/// Lamplight.
pub const DARK: Tokens = Tokens {
    desk: rgb(0x10, 0x13, 0x19),
    shelf: rgb(0x1C, 0x20, 0x29),
    panel: rgb(0x16, 0x1A, 0x22),
    well: rgb(0x0F, 0x12, 0x18),
    ink: rgb(0xEC, 0xE7, 0xDC),
    quiet: rgb(0xA9, 0xAE, 0xB9),
    line: rgb(0x31, 0x37, 0x45),
    edge: rgb(0x6C, 0x75, 0x88),
    accent: rgb(0x93, 0xB9, 0xF2),
    accent_soft: rgb(0x27, 0x38, 0x55),
    hover: rgb(0x27, 0x2D, 0x3A),
    on_accent: rgb(0x10, 0x18, 0x26),
    blocks: rgb(0xF3, 0x9C, 0x98),
    blocks_soft: rgb(0x45, 0x22, 0x26),
    warns: rgb(0xEB, 0xC0, 0x6A),
    warns_soft: rgb(0x3E, 0x31, 0x17),
    notes: rgb(0xB4, 0xC4, 0xE2),
    notes_soft: rgb(0x27, 0x30, 0x42),
    good: rgb(0x8F, 0xD6, 0xB1),
    good_soft: rgb(0x1B, 0x3A, 0x2C),
    shadow: Color32::from_black_alpha(150),
};

impl Tokens {
    /// The colours for a theme of the window.
    #[must_use]
    pub const fn of(theme: Theme) -> &'static Self {
        match theme {
            Theme::Light => &LIGHT,
            Theme::Dark => &DARK,
        }
    }
}

/// Gives the window its look in both themes.
pub fn install(ctx: &egui::Context) {
    for theme in [Theme::Light, Theme::Dark] {
        let tokens = Tokens::of(theme);
        ctx.style_mut_of(theme, |style| {
            style.visuals = visuals(theme, tokens);
            style.text_styles = [
                (TextStyle::Small, FontId::new(13.0, FontFamily::Proportional)),
                (TextStyle::Body, FontId::new(15.0, FontFamily::Proportional)),
                (TextStyle::Button, FontId::new(14.5, FontFamily::Proportional)),
                (TextStyle::Heading, FontId::new(27.0, FontFamily::Name(SERIF_BOLD.into()))),
                (TextStyle::Monospace, FontId::new(13.5, FontFamily::Monospace)),
            ]
            .into();
            let space = &mut style.spacing;
            space.item_spacing = vec2(GAP, GAP);
            space.button_padding = vec2(12.0, 6.0);
            space.interact_size = vec2(36.0, 30.0);
            space.icon_width = 18.0;
            space.icon_width_inner = 10.0;
            space.menu_margin = Margin::same(8);
            space.text_edit_width = COLUMN;
            space.combo_width = 160.0;
            space.combo_height = 320.0;
            space.tooltip_width = 360.0;
            space.scroll.bar_width = 8.0;
            space.scroll.floating = true;
            style.interaction.selectable_labels = false;
            style.interaction.tooltip_delay = 0.4;
        });
    }
}

fn visuals(theme: Theme, t: &Tokens) -> Visuals {
    let mut v = theme.default_visuals();
    let radius = CornerRadius::same(RADIUS);
    v.override_text_color = None;
    v.weak_text_color = Some(t.quiet);
    v.hyperlink_color = t.accent;
    v.faint_bg_color = t.shelf;
    v.extreme_bg_color = t.well;
    v.text_edit_bg_color = Some(t.well);
    v.code_bg_color = t.shelf;
    v.warn_fg_color = t.warns;
    v.error_fg_color = t.blocks;
    v.panel_fill = t.panel;
    v.window_fill = t.panel;
    v.window_stroke = Stroke::new(1.0, t.line);
    v.window_corner_radius = radius;
    v.menu_corner_radius = radius;
    v.popup_shadow = Shadow { offset: [0, 6], blur: 18, spread: 0, color: t.shadow };
    v.selection.bg_fill = t.accent_soft;
    v.selection.stroke = Stroke::new(2.0, t.accent);
    v.striped = false;
    v.slider_trailing_fill = true;
    let w = &mut v.widgets;
    for (state, fill, weak, edge, text) in [
        (&mut w.noninteractive, t.panel, t.panel, t.line, t.ink),
        (&mut w.inactive, t.shelf, t.shelf, t.edge, t.ink),
        (&mut w.hovered, t.hover, t.hover, t.accent, t.ink),
        (&mut w.active, t.accent_soft, t.accent_soft, t.accent, t.ink),
        (&mut w.open, t.hover, t.hover, t.accent, t.ink),
    ] {
        state.bg_fill = fill;
        state.weak_bg_fill = weak;
        state.bg_stroke = Stroke::new(1.0, edge);
        state.fg_stroke = Stroke::new(1.0, text);
        state.corner_radius = radius;
        state.expansion = 0.0;
    }
    // What has the keyboard is drawn as what is pressed: an edge that cannot be overlooked.
    w.active.bg_stroke.width = 2.0;
    v
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::theme::Colour;

    fn colour(c: Color32) -> Colour {
        Colour { r: c.r(), g: c.g(), b: c.b() }
    }

    /// WCAG 2.2, 1.4.3 (text, 4.5) and 1.4.11 (edges of controls, 3).
    #[test]
    fn text_and_edges_have_contrast_in_both_themes() {
        for t in [LIGHT, DARK] {
            for ground in [t.shelf, t.panel, t.well, t.hover, t.accent_soft, t.desk] {
                for text in [t.ink, t.quiet, t.accent] {
                    let ratio = colour(text).contrast(colour(ground));
                    assert!(ratio >= 4.5, "{text:?} on {ground:?}: {ratio:.2}");
                }
            }
            for (text, soft) in
                [(t.blocks, t.blocks_soft), (t.warns, t.warns_soft), (t.notes, t.notes_soft), (t.good, t.good_soft)]
            {
                for ground in [soft, t.panel, t.shelf] {
                    assert!(colour(text).contrast(colour(ground)) >= 4.5, "{text:?} on {ground:?}");
                }
            }
            assert!(colour(t.on_accent).contrast(colour(t.accent)) >= 4.5);
            for ground in [t.panel, t.well] {
                let ratio = colour(t.edge).contrast(colour(ground));
                assert!(ratio >= 3.0, "edge on {ground:?}: {ratio:.2}");
            }
        }
    }
}
