use eframe::egui::{Grid, RichText, TextWrapMode, Ui};

use crate::app::ctx::{Command, Ctx};
use crate::app::places::Locals;
use crate::app::session::Selection;
use crate::app::switches::level_ui;
use crate::app::widgets::{Field, Mark, UiExt as _};
use crate::codes::{SECONDS_PER_TRY, time_to_try};
use crate::ids::LockId;
use crate::party::{LockLeft, lock_table};
use crate::propose::Wish;

/// Width of a lock's name in the table of codes: longer ones take a second line.
const NAME: f32 = 150.0;

/// Least width of the table.
const TABLE: f32 = 620.0;

/// The heads of the table: what guests know.
const HEADS: [&str; 7] = [
    "Lock",
    "Nothing\nknown",
    "All but\nthe order",
    "All but\none wheel",
    "After the\nnudge",
    "After the\nmethod",
    "After the\ngiveaway",
];

/// What the fields of the codes hold.
#[derive(Clone, Debug, Default)]
pub struct CodesDraft {
    seed: u64,
    avoid: String,
}

/// All codes: how many are left to try, and a new set of them.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>, locals: &mut Locals) {
    ui.title("Codes");
    ui.lede(&format!(
        "How many codes are left to try on each lock, and the time to try them all at {SECONDS_PER_TRY} seconds each (an estimate). A hint counts with those before it."
    ));
    level_ui(ui, cx);
    ui.add_space(10.0);
    match cx.derived.party(cx.session.level) {
        None => drop(ui.chip(Mark::Waiting, "being counted")),
        Some(party) => table_ui(ui, cx, &lock_table(cx.kit, party)),
    }
    ui.section("New codes for the whole kit");
    ui.lede(
        "Each is tried as it would be printed. None is easy to guess, like another, or told by a text or a hint. Word answers \
         come from the words of the theme and the kit; keys and spoken words stay.",
    );
    let draft = &mut locals.codes;
    Field::new("Seed").help("Another number draws other codes.").number(ui, cx, &mut draft.seed, 0..=9_999, "");
    Field::new("Codes not to use").help("Last season's, say; parted by commas.").line(ui, cx, &mut draft.avoid);
    if cx.session.proposing {
        ui.chip(Mark::Waiting, "looking for codes");
    } else if ui.primary("Put new codes in").on_hover_text("One step of undo takes them back").clicked() {
        let avoid = draft.avoid.split(',').map(|code| code.trim().to_owned()).filter(|code| !code.is_empty());
        cx.send(Command::Propose(Wish { seed: draft.seed, avoid: avoid.collect(), ..Wish::default() }));
    }
}

/// What is left of a lock's codes, in the order of the heads.
fn left_of(row: &LockLeft) -> impl Iterator<Item = u64> {
    let left = &row.left;
    [left.nothing, left.unordered, left.but_one].into_iter().chain(left.steps.iter().copied())
}

fn name_ui(ui: &mut Ui, cx: &Ctx<'_>, row: &LockLeft) {
    let name = cx.kit.lock(&row.lock).map_or_else(|| row.lock.to_string(), |lock| cx.say(&lock.name));
    if ui.link(name).clicked() {
        cx.send(Command::Select(Selection::Lock(row.lock.clone())));
    }
}

/// The same where the table has no room: each lock with its lines below it.
fn list_ui(ui: &mut Ui, cx: &Ctx<'_>, rows: &[LockLeft]) {
    for row in rows {
        name_ui(ui, cx, row);
        for (head, codes) in HEADS.iter().skip(1).zip(left_of(row)) {
            ui.horizontal_wrapped(|ui| {
                ui.add_space(14.0);
                ui.quiet(&head.replace('\n', " "));
                ui.label(RichText::new(cell(codes)).monospace());
            });
        }
        ui.add_space(6.0);
    }
}

/// One row for each lock with wheels.
fn table_ui(ui: &mut Ui, cx: &Ctx<'_>, rows: &[LockLeft]) {
    if rows.is_empty() {
        ui.quiet("No lock with wheels can be set to its answer yet.");
        return;
    }
    if ui.available_width() < TABLE {
        return list_ui(ui, cx, rows);
    }
    Grid::new("codes left").num_columns(HEADS.len()).striped(true).spacing([12.0, 6.0]).show(ui, |ui| {
        for head in HEADS {
            ui.strong_small(head);
        }
        ui.end_row();
        for row in rows {
            ui.vertical(|ui| {
                ui.set_max_width(NAME);
                name_ui(ui, cx, row);
            });
            for codes in left_of(row) {
                ui.vertical(|ui| {
                    ui.spacing_mut().item_spacing.y = 0.0;
                    ui.style_mut().wrap_mode = Some(TextWrapMode::Extend);
                    ui.label(RichText::new(codes.to_string()).monospace());
                    ui.quiet(&time_to_try(codes));
                });
            }
            ui.end_row();
        }
    });
}

/// The codes of one lock in sentences, for the lock's own page.
pub fn lock_ui(ui: &mut Ui, cx: &Ctx<'_>, id: &LockId) {
    let Some(party) = cx.derived.party(cx.session.level) else { return };
    let Some(row) = lock_table(cx.kit, party).into_iter().find(|row| row.lock == *id) else { return };
    let LockLeft { left, .. } = row;
    ui.section("Codes left to try");
    let mut lines = vec![
        ("when nothing is known", left.nothing),
        ("when only the order is not known", left.unordered),
        ("when all wheels but one are known", left.but_one),
    ];
    lines.extend(["after the nudge", "after the method", "after the giveaway"].into_iter().zip(left.steps));
    let when_width = (ui.available_width() - 170.0).clamp(80.0, 300.0);
    Grid::new(("codes of a lock", id)).num_columns(2).spacing([18.0, 4.0]).show(ui, |ui| {
        for (when, codes) in lines {
            ui.vertical(|ui| {
                ui.set_max_width(when_width);
                ui.label(when);
            });
            ui.label(RichText::new(cell(codes)).monospace());
            ui.end_row();
        }
    });
    ui.quiet(&format!("At {SECONDS_PER_TRY} seconds a try, an estimate."));
}

fn cell(codes: u64) -> String {
    format!("{codes} ({})", time_to_try(codes))
}
