use eframe::egui::{Align, Button, Layout, RichText, ScrollArea, Ui};

use crate::app::action::Action;
use crate::app::ctx::{Command, Ctx};
use crate::app::widgets::{Mark, UiExt as _, mark_ui};
use crate::checks::{Finding, FixKind};
use crate::diag::Severity;

/// The strip below: the count of findings, and the list when it is open.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>) {
    ui.horizontal(|ui| {
        ui.strong_small("Findings");
        counts_ui(ui, cx);
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            let words = if cx.prefs.findings { "Hide" } else { "Show" };
            let button = ui.add(Button::new(words).small()).accessible_name(format!("{words} the findings"));
            if button.clicked() {
                cx.send(Command::Do(Action::ToggleFindings));
            }
        });
    });
    if cx.prefs.findings {
        ScrollArea::vertical().id_salt("findings").auto_shrink([false, false]).show(ui, |ui| {
            list_ui(ui, cx, false, false);
        });
    }
}

/// How many findings there are, by what they weigh.
pub fn counts_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    if !cx.derived.proven() {
        ui.chip(Mark::Waiting, "being proved");
        return;
    }
    let count = |severity| cx.derived.findings().iter().filter(|finding| finding.severity == severity).count();
    let mut any = false;
    for (severity, one, many) in [
        (Severity::Blocks, "blocks", "block"),
        (Severity::Warns, "warns", "warn"),
        (Severity::Notes, "note", "notes"),
    ] {
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
    let mark = Mark::severity(finding.severity);
    ui.horizontal_top(|ui| {
        ui.add_space(2.0);
        ui.vertical(|ui| {
            ui.add_space(9.0);
            mark_ui(ui, mark, 13.0).on_hover_text(finding.severity.word());
        });
        ui.with_layout(Layout::right_to_left(Align::Min), |ui| {
            if let Some(fix) = finding.fix.as_ref() {
                fix_ui(ui, cx, fix);
            }
            ui.with_layout(Layout::top_down(Align::Min), |ui| {
                ui.spacing_mut().item_spacing.y = 2.0;
                let place = finding.level.map_or_else(
                    || finding.anchor.to_string(),
                    |level| format!("{}, {} level", finding.anchor, level.word()),
                );
                let words = format!("{}: {}", finding.severity.word(), finding.message);
                let row = Button::new(RichText::new(&finding.message).size(14.5))
                    .wrap()
                    .frame_when_inactive(false);
                let row = ui.add(row).accessible_name(words).on_hover_text(format!("Go to {place}"));
                if row.clicked() {
                    cx.send(Command::Go(finding.anchor.clone(), finding.level));
                }
                ui.horizontal_wrapped(|ui| {
                    ui.add_space(12.0);
                    ui.quiet(&place);
                });
                if full {
                    more_ui(ui, finding);
                }
            });
        });
    });
    ui.add_space(if full { 10.0 } else { 2.0 });
}

fn fix_ui(ui: &mut Ui, cx: &Ctx<'_>, fix: &crate::checks::Fix) {
    if fix.kind == FixKind::ShowOnly {
        ui.quiet(&fix.title);
        return;
    }
    let button = ui.add(Button::new(fix.title.as_str()).small());
    let button = match fix.kind {
        FixKind::Ask => button.on_hover_text("Changes what you wrote; one step of undo takes it back"),
        FixKind::Safe | FixKind::ShowOnly => button.on_hover_text("Mends it in one step"),
    };
    if button.clicked() {
        cx.send(Command::Step(fix.edits.clone()));
    }
}

fn more_ui(ui: &mut Ui, finding: &Finding) {
    ui.indent("more", |ui| {
        if !finding.why.is_empty() {
            ui.label(RichText::new(&finding.why).size(13.5));
        }
        for help in &finding.help {
            ui.horizontal_wrapped(|ui| {
                ui.quiet("To mend:");
                ui.label(RichText::new(help).size(13.5));
            });
        }
        ui.quiet(&format!("inklatch explain {}", finding.name));
    });
}
