use eframe::egui::{Checkbox, DragValue, ProgressBar, TextEdit, Ui, vec2};

use crate::app::action::Action;
use crate::app::ctx::{Command, Ctx, PathFor};
use crate::app::findings::counts_ui;
use crate::app::places::Locals;
use crate::app::places::file_name::file_name_ui;
use crate::app::preview::audience_word;
use crate::app::session::Selection;
use crate::app::switches::{edition_name, edition_ui, named_level_ui, paper_name, paper_ui};
use crate::app::widgets::{Field, Mark, UiExt as _};
use crate::bundle::{Options, Shift};
use crate::checks::blocks;
use crate::diag::Level;
use crate::face::Audience;
use crate::kit::edit::Edit;
use crate::kit::{Flip, TokenMake};
use crate::script::capital;
use crate::sheet::Paper;
use crate::theme::Edition;

/// What to export, as it is being chosen.
#[derive(Clone, Debug)]
pub struct Draft {
    papers: Vec<Paper>,
    levels: Vec<Level>,
    editions: Vec<Edition>,
    zip: bool,
    one_pdf: bool,
    listing: bool,
    force: bool,
    groups: u16,
    right: f64,
    down: f64,
    /// The folder, as typed.
    pub out: String,
}

impl Default for Draft {
    fn default() -> Self {
        let Options { papers, levels, editions, zip, one_pdf, listing, force, groups, shift, out } = Options::default();
        let mm = |tenths: i16| f64::from(tenths) / 10.0;
        // In full, so that the author sees where it goes.
        let out = std::env::current_dir().map_or(out.clone(), |here| here.join(out));
        Self {
            papers,
            levels,
            editions,
            zip,
            one_pdf,
            listing,
            force,
            groups,
            right: mm(shift.right),
            down: mm(shift.down),
            out: out.display().to_string(),
        }
    }
}

impl Draft {
    /// The options chosen.
    #[must_use]
    pub fn options(&self) -> Options {
        Options {
            papers: self.papers.clone(),
            levels: self.levels.clone(),
            editions: self.editions.clone(),
            zip: self.zip,
            one_pdf: self.one_pdf,
            listing: self.listing,
            force: self.force,
            groups: self.groups,
            // The fields hold what they may; should they not, nothing is shifted.
            shift: Shift::parse(&format!("{},{}", self.right, self.down)).unwrap_or_default(),
            out: self.out.trim().into(),
        }
    }
}

/// Sheets, pieces, the bundle.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>, locals: &mut Locals) {
    match cx.session.selection(cx.kit) {
        Selection::Pieces => ui.column("pieces", |ui| pieces_ui(ui, cx)),
        Selection::Bundle => ui.column("bundle", |ui| bundle_ui(ui, cx, &mut locals.export, &mut locals.file_name)),
        _ => ui.column("sheets", |ui| sheets_ui(ui, cx)),
    }
}

fn sheets_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    ui.title("Sheets");
    ui.lede("The pages as they come out of the printer, for both papers laid out truly. Print at 100 %, actual size.");
    ui.horizontal_wrapped(|ui| {
        ui.strong_small("Paper");
        paper_ui(ui, cx);
        ui.add_space(12.0);
        named_level_ui(ui, cx);
    });
    edition_row_ui(ui, cx);
    ui.section("Before you print a stack");
    for line in [
        "Print one sheet and measure its check bar: it must be 50 mm long.",
        "Sheets for players, for hints and for the host never mix: three stacks, three piles.",
        "Every sheet can be printed in grey; no puzzle needs colour alone.",
    ] {
        ui.horizontal_top(|ui| {
            crate::app::widgets::mark_ui(ui, Mark::Notes, 13.0);
            ui.add(eframe::egui::Label::new(line).wrap());
        });
    }
    ui.section("Hand it over");
    if ui.primary("Go to the bundle").clicked() {
        cx.send(Command::Select(Selection::Bundle));
    }
}

/// The edition in a row of its own: beside other choices it would be cut off in a narrow window.
fn edition_row_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    ui.horizontal_wrapped(|ui| {
        ui.strong_small("Edition");
        edition_ui(ui, cx);
    });
    ui.quiet(cx.session.edition.about());
}

fn pieces_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    ui.title("Pieces");
    ui.lede("Everything that is printed and cut, one by one, at this play level.");
    ui.horizontal_wrapped(|ui| {
        named_level_ui(ui, cx);
    });
    edition_row_ui(ui, cx);
    let Some(party) = cx.derived.party(cx.session.level) else {
        ui.chip(Mark::Waiting, "being made");
        return;
    };
    if cx.session.edition == Edition::LargePrint {
        ui.quiet("Sizes below are those of the usual edition; beside stand those of large print.");
    }
    for audience in [Audience::Players, Audience::Hints, Audience::Host] {
        let pieces: Vec<_> = party.pieces.iter().filter(|piece| piece.audience == audience).collect();
        if pieces.is_empty() {
            continue;
        }
        ui.section(&format!("For {}", audience_word(audience)));
        let title = (ui.available_width() - 190.0).max(100.0);
        let grid = eframe::egui::Grid::new(audience_word(audience)).num_columns(3).min_col_width(56.0);
        grid.spacing(vec2(16.0, 5.0)).striped(true).show(ui, |ui| {
            for piece in pieces {
                ui.vertical(|ui| {
                    ui.set_max_width(title);
                    ui.add(eframe::egui::Label::new(&piece.label).wrap());
                });
                let size = piece.front.size;
                ui.quiet(&format!("{:.0} × {:.0} mm", size.w.get(), size.h.get()));
                ui.quiet(&if piece.copies == 1 { String::new() } else { format!("{} copies", piece.copies) });
                ui.end_row();
            }
        });
    }
}

fn bundle_ui(ui: &mut Ui, cx: &Ctx<'_>, draft: &mut Draft, file_name: &mut Option<String>) {
    ui.title("Bundle");
    ui.lede("One folder with everything: for players, for hints, for the host, and each piece as a picture.");
    counts_ui(ui, cx);
    ui.section("Paper");
    ui.horizontal_wrapped(|ui| {
        for paper in Paper::ALL {
            toggle_ui(ui, &mut draft.papers, paper, paper_name(paper));
        }
    });
    ui.section("Play levels");
    ui.horizontal_wrapped(|ui| {
        for level in Level::ALL {
            toggle_ui(ui, &mut draft.levels, level, &capital(level.word()));
        }
    });
    ui.section("Editions");
    for edition in Edition::ALL {
        ui.horizontal_wrapped(|ui| {
            toggle_ui(ui, &mut draft.editions, edition, &edition_name(edition));
            ui.quiet(edition.about());
        });
    }
    Field::new("Groups that play at once")
        .help("Pieces, tokens and shopping come for each; what only you use comes once.")
        .number(ui, cx, &mut draft.groups, 1..=crate::limits::GROUPS, "");
    ui.section("Where to");
    let label = ui.strong_small("Folder");
    ui.horizontal(|ui| {
        let width = (ui.available_width() - 110.0).clamp(120.0, 420.0);
        ui.add(TextEdit::singleline(&mut draft.out).desired_width(width).margin(vec2(10.0, 7.0))).labelled_by(label.id);
        if ui.secondary("Choose…").clicked() {
            cx.send(Command::Path(PathFor::Export, String::new()));
        }
    });
    file_name_ui(ui, cx, file_name);
    ui.checkbox(&mut draft.zip, "Also as one zip file");
    ui.checkbox(&mut draft.one_pdf, "Also everything in one PDF for each paper and level, with bookmarks");
    ui.checkbox(&mut draft.listing, "Also what it is sold by: cover, contact sheets, description, terms, credits");
    making_ui(ui, cx, draft);
    let blocked = blocks(cx.derived.findings());
    if blocked {
        ui.add_space(4.0);
        ui.checkbox(&mut draft.force, "Export although findings block it; the host guide then says so");
    }
    ui.add_space(14.0);
    if let Some(progress) = &cx.derived.export {
        let share = if progress.of == 0 { 0.0 } else { progress.done as f32 / progress.of as f32 };
        // In one row, as high as the button that was here, so that nothing slides out of sight.
        ui.horizontal_wrapped(|ui| {
            let width = (ui.available_width() - 170.0).clamp(160.0, 480.0);
            ui.add(ProgressBar::new(share).text(progress.what.as_str()).desired_width(width));
            if ui.secondary("Cancel the export").clicked() {
                cx.send(Command::CancelExport);
            }
        });
        return;
    }
    let ready = !draft.papers.is_empty()
        && !draft.levels.is_empty()
        && !draft.editions.is_empty()
        && !draft.out.trim().is_empty()
        && (!blocked || draft.force);
    ui.add_enabled_ui(ready, |ui| {
        if ui.primary("Write the bundle").on_hover_text(Action::WriteBundle.tooltip()).clicked() {
            cx.send(Command::Export(Box::new(draft.options())));
        }
    });
    if !ready {
        ui.quiet(if blocked && !draft.force {
            "Findings block the export: mend them, or say that you want it all the same."
        } else {
            "Choose a paper, a level, an edition and a folder."
        });
    }
}

/// How pieces are made: part of the kit. Where backs are printed, also how far this author's printer is off.
fn making_ui(ui: &mut Ui, cx: &Ctx<'_>, draft: &mut Draft) {
    ui.section("How it is made");
    let mut making = cx.kit.making;
    let makes = TokenMake::ALL.map(|make| (make, capital(make.word())));
    let mut changed = Field::new("Hint tokens").help(making.tokens.how()).pick(ui, cx, &mut making.tokens, &makes, "");
    let backs = cx.derived.party(cx.session.level).is_some_and(|party| party.pieces.iter().any(|p| p.back.is_some()));
    if backs || making.tokens == TokenMake::TwoSided {
        let flips = Flip::ALL.map(|flip| (flip, capital(flip.word())));
        changed |= Field::new("The printer turns the paper").pick(ui, cx, &mut making.flip, &flips, "");
        ui.horizontal_wrapped(|ui| {
            let most = f64::from(Shift::MOST) / 10.0;
            for (name, value) in [("Backs lie right by", &mut draft.right), ("and down by", &mut draft.down)] {
                let label = ui.strong_small(name);
                let drag = DragValue::new(value).range(-most..=most).speed(0.1).max_decimals(1).suffix(" mm");
                ui.add(drag).labelled_by(label.id);
            }
        });
        ui.quiet("Your own printer’s shift, as the two test pages at the end of the host’s sheets show it.");
    }
    if changed {
        cx.edit(Edit::Making(Box::new(making)));
    }
}

/// A tick that puts `value` on the list or takes it off.
fn toggle_ui<T: PartialEq + Ord + Copy>(ui: &mut Ui, list: &mut Vec<T>, value: T, words: &str) {
    let mut on = list.contains(&value);
    if ui.add(Checkbox::new(&mut on, words)).changed() {
        if on {
            list.push(value);
            list.sort_unstable();
        } else {
            list.retain(|other| *other != value);
        }
    }
    ui.add_space(10.0);
}
