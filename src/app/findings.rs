use eframe::egui::{Align, Button, Label, Layout, RichText, ScrollArea, Ui, vec2};

use crate::app::action::Action;
use crate::app::ctx::{Command, Ctx};
use crate::app::session::Selection;
use crate::app::widgets::{Mark, UiExt as _, follow_focus, mark_ui};
use crate::checks::{Finding, FixKind, find};
use crate::diag::{Anchor, Severity};
use crate::script::capital;

/// The strip below: the count of findings, and the list when it is open.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>) {
    ui.horizontal(|ui| {
        ui.strong_small("Findings");
        counts_ui(ui, cx);
        if !has_rows(cx) {
            return;
        }
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            let words = if cx.prefs.findings { "Hide" } else { "Show" };
            if ui.lesser(true, words, &format!("{words} the findings")).clicked() {
                cx.send(Command::Do(Action::ToggleFindings));
            }
        });
    });
    if listed(cx) {
        ScrollArea::vertical().id_salt("findings").auto_shrink([false, false]).show(ui, |ui| {
            ui.spacing_mut().item_spacing.y = 3.0;
            // Room for the bar of the scrolled list, which else covers the buttons.
            ui.set_max_width(ui.available_width() - 12.0);
            list_ui(ui, cx, false, false);
            follow_focus(ui, ui.min_rect());
        });
    }
}

/// The height of the strip at which all rows are in sight.
pub fn full_height(cx: &Ctx<'_>) -> f32 {
    const HEAD: f32 = 58.0;
    const ROW: f32 = 27.0;
    let rows = cx.derived.findings().len();
    #[expect(clippy::cast_precision_loss, reason = "more rows than fit any window are as good as very many")]
    let rows = rows.min(100) as f32;
    if cx.derived.trouble().is_some() { f32::INFINITY } else { HEAD + ROW * rows }
}

/// Whether the strip lists the findings: not where they are listed in full anyway, nor when there are none.
pub fn listed(cx: &Ctx<'_>) -> bool {
    has_rows(cx) && cx.prefs.findings
}

/// Whether there is anything to list elsewhere than where all findings are listed in full.
fn has_rows(cx: &Ctx<'_>) -> bool {
    let any = !cx.derived.findings().is_empty() || cx.derived.trouble().is_some();
    any && cx.session.selection(cx.kit) != Selection::Findings
}

/// How many findings there are, by what they weigh.
pub fn counts_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    if !cx.derived.proven() {
        ui.chip(Mark::Waiting, "being proved");
        return;
    }
    let count = |severity| cx.derived.findings().iter().filter(|finding| finding.severity == severity).count();
    let mut any = false;
    for (severity, one, many) in
        [(Severity::Blocks, "blocks", "block"), (Severity::Warns, "warns", "warn"), (Severity::Notes, "note", "notes")]
    {
        let n = count(severity);
        if n > 0 {
            any = true;
            ui.chip(Mark::severity(severity), &format!("{n} {}", if n == 1 { one } else { many }));
        }
    }
    if !any {
        ui.chip(Mark::Good, "nothing found");
    }
    if cx.derived.stale(cx.doc.revision) {
        ui.quiet("looking again");
    } else if cx.derived.mending() {
        ui.quiet("looking for mends");
    }
}

/// The findings, one row each; with `full`, reasons and ways to mend are shown
/// too; with `hide_notes`, only what blocks or warns.
pub fn list_ui(ui: &mut Ui, cx: &Ctx<'_>, full: bool, hide_notes: bool) {
    if let Some(trouble) = cx.derived.trouble() {
        ui.trouble(trouble);
    }
    let shown = |finding: &&Finding| !(hide_notes && finding.severity == Severity::Notes);
    for (at, finding) in cx.derived.findings().iter().filter(shown).enumerate() {
        ui.push_id(at, |ui| row_ui(ui, cx, finding, full));
    }
}

fn row_ui(ui: &mut Ui, cx: &Ctx<'_>, finding: &Finding, full: bool) {
    if full {
        full_ui(ui, cx, finding);
        return;
    }
    ui.spacing_mut().interact_size.y = 24.0;
    ui.horizontal(|ui| {
        ui.spacing_mut().button_padding = vec2(6.0, 2.0);
        mark_ui(ui, Mark::severity(finding.severity), 13.0).on_hover_text(finding.severity.word());
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            if let Some(fix) = finding.fix.as_ref() {
                fix_ui(ui, cx, fix);
            }
            ui.quiet(&place(cx, finding));
            ui.with_layout(Layout::left_to_right(Align::Center), |ui| go_ui(ui, cx, finding));
        });
    });
}

/// The message as a button that leads to the field at fault.
fn go_ui(ui: &mut Ui, cx: &Ctx<'_>, finding: &Finding) {
    let row = Button::new(RichText::new(capital(&finding.message)).size(14.5)).truncate().frame_when_inactive(false);
    let words = format!("{}: {}", finding.severity.word(), finding.message);
    let row = ui.add(row).accessible_name(words).on_hover_text(format!("Go to {}", place(cx, finding)));
    if row.clicked() {
        cx.send(Command::Go(finding.anchor.clone(), finding.level));
    }
}

/// Where it was found.
fn place(cx: &Ctx<'_>, finding: &Finding) -> String {
    let at = named(cx, &finding.anchor);
    capital(&finding.level.map_or_else(|| at.clone(), |level| format!("{at}, {} level", level.word())))
}

/// A place in the kit by the name that the author gave.
pub fn named(cx: &Ctx<'_>, anchor: &Anchor) -> String {
    let kit = cx.kit;
    let at = anchor.to_string();
    let name = match anchor {
        Anchor::Puzzle(id, _) => kit.puzzle(id).map(|puzzle| (format!("puzzle {id}"), &puzzle.title)),
        Anchor::Lock(id) => kit.lock(id).map(|lock| (format!("lock {id}"), &lock.name)),
        Anchor::Box(id) => kit.box_def(id).map(|item| (format!("box {id}"), &item.name)),
        Anchor::Spot(id) => kit.spot(id).map(|spot| (format!("spot {id}"), &spot.name)),
        Anchor::Prop(id) => kit.prop(id).map(|prop| (format!("prop {id}"), &prop.name)),
        Anchor::Note(id) => kit.note(id).map(|note| (format!("note {id}"), &note.title)),
        _ => None,
    };
    match name.filter(|(_, name)| !name.trim().is_empty()) {
        Some((id, name)) => at.replacen(&id, &cx.say(name), 1),
        None => at,
    }
}

/// A finding with its reason and the ways to mend it.
fn full_ui(ui: &mut Ui, cx: &Ctx<'_>, finding: &Finding) {
    let mark = Mark::severity(finding.severity);
    let (tone, _) = mark.colours(cx.tokens);
    ui.horizontal_top(|ui| {
        ui.vertical(|ui| {
            ui.set_width(14.0);
            ui.add_space(3.0);
            mark_ui(ui, mark, 14.0).on_hover_text(finding.severity.word());
        });
        ui.vertical(|ui| {
            ui.spacing_mut().item_spacing.y = 3.0;
            let words = format!("{}: {}", finding.severity.word(), finding.message);
            let head = ui.link(RichText::new(capital(&finding.message)).size(15.5).color(tone)).accessible_name(words);
            if head.on_hover_text(format!("Go to {}", place(cx, finding))).clicked() {
                cx.send(Command::Go(finding.anchor.clone(), finding.level));
            }
            ui.quiet(&place(cx, finding));
            if !finding.why.is_empty() {
                ui.add(Label::new(RichText::new(sentence(&finding.why)).size(14.0)).wrap());
            }
            for help in &finding.help {
                ui.add(Label::new(RichText::new(format!("To mend: {}", ended(help))).size(14.0)).wrap());
            }
            ui.horizontal(|ui| {
                if let Some(fix) = finding.fix.as_ref() {
                    fix_ui(ui, cx, fix);
                }
                ui.quiet(finding.name);
            });
            if let Ok(check) = find(finding.name) {
                ui.collapsing("About this check", |ui| {
                    ui.add(Label::new(RichText::new(check.info().help()).size(14.0)).wrap());
                });
            }
        });
    });
    ui.add_space(14.0);
}

/// What a check says, as a sentence of its own.
fn sentence(words: &str) -> String {
    capital(&ended(words))
}

/// The words with a full stop, unless they end with a mark already.
fn ended(words: &str) -> String {
    if words.ends_with(['.', '?', '!', ':']) { words.to_owned() } else { format!("{words}.") }
}

fn fix_ui(ui: &mut Ui, cx: &Ctx<'_>, fix: &crate::checks::Fix) {
    if fix.kind == FixKind::ShowOnly {
        ui.quiet(&fix.title);
        return;
    }
    // A mend sets whole things as they were when it was found; what was written since must not be lost.
    let button = ui.lesser(!cx.derived.stale(cx.doc.revision), &fix.title, "");
    let button = match fix.kind {
        FixKind::Ask => button.on_hover_text("Changes what you wrote; one step of undo takes it back"),
        FixKind::Safe | FixKind::ShowOnly => button.on_hover_text("Mends it in one step"),
    };
    if button.clicked() {
        cx.send(Command::Step(fix.edits.clone()));
    }
}
