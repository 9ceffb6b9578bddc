use eframe::egui::{RichText, Ui};

use crate::app::ctx::{Command, Ctx};
use crate::app::places::Locals;
use crate::app::widgets::UiExt as _;
use crate::bundle::mended;
use crate::diag::{Anchor, PuzzleField};
use crate::kit::edit::between;
use crate::redress::{Leftover, Mend, keep_picture, leftovers, mend, old_pictures};

/// What the season before left behind, each with the ways to mend it.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>, locals: &mut Locals) {
    ui.title("Leftovers");
    let Some(from) = &cx.kit.dressed.from else {
        ui.lede("When a kit has been put into another theme, words and pictures of the old season are listed here.");
        return;
    };
    // Reading all texts by stem takes longer than a frame has: it is done once for each state of the kit.
    if locals.leftovers.as_ref().is_none_or(|(revision, _)| *revision != cx.doc.revision) {
        locals.leftovers = Some((cx.doc.revision, leftovers(cx.kit)));
    }
    let found = locals.leftovers.as_ref().map_or(&[][..], |(_, found)| found.as_slice());
    let pictures = old_pictures(cx.kit);
    let count = found.len() + pictures.len();
    ui.lede(&match count {
        0 => format!("Nothing of {from} is left."),
        1 => format!("One place still speaks of {from}."),
        count => format!("{count} places still speak of {from}."),
    });
    // In a setup a rule may spoil the puzzle; those that it would are left, each with a button of its own.
    let in_setup = |leftover: &Leftover| matches!(leftover.anchor, Anchor::Puzzle(_, PuzzleField::Setup));
    if found.iter().any(|leftover| (leftover.slot || leftover.replace) && !in_setup(leftover))
        && ui.primary("Mend all that a rule can mend").clicked()
    {
        cx.send(Command::Step(between(cx.kit, &mended(cx.kit, &cx.doc.theme))));
    }
    ui.add_space(8.0);
    for (at, leftover) in found.iter().enumerate() {
        ui.push_id(at, |ui| leftover_ui(ui, cx, leftover));
        ui.add_space(6.0);
    }
    for (at, path) in pictures {
        ui.group_card(|ui| {
            ui.label(format!("The picture {path}, at {at}, was there before."));
            if ui.lesser(true, "Keep", &format!("Keep the picture {path}")).clicked() {
                cx.send(Command::Step(keep_picture(cx.kit, &at, &path)));
            }
        });
        ui.add_space(6.0);
    }
}

fn leftover_ui(ui: &mut Ui, cx: &Ctx<'_>, leftover: &Leftover) {
    let theme = &cx.doc.theme.theme;
    let step = |how| cx.send(Command::Step(mend(cx.kit, theme, leftover, how)));
    ui.group_card(|ui| {
        ui.horizontal_wrapped(|ui| {
            let head = ui.link(RichText::new(format!("“{}”", leftover.said)).size(15.5));
            if head.on_hover_text("Go there").clicked() {
                cx.send(Command::Go(leftover.anchor.clone(), None));
            }
            let times = if leftover.count > 1 { format!(", {} times", leftover.count) } else { String::new() };
            let name = if leftover.file_name { ", in a file name" } else { "" };
            ui.quiet(&format!("{}{times}{name}", leftover.anchor));
        });
        ui.label(format!("… {} …", leftover.around));
        ui.horizontal_wrapped(|ui| {
            let place = format!("{} at {}", leftover.said, leftover.anchor);
            let slot = format!("Make it {{{{ {} }}}}", leftover.word.slot);
            if leftover.slot && ui.lesser(true, &slot, &format!("{slot}: {place}")).clicked() {
                step(Mend::Slot);
            }
            // A word of the kit's own then stands there, to be changed once for all places.
            let own = !leftover.slot && !leftover.file_name && !matches!(leftover.anchor, Anchor::Word(_));
            if own && ui.lesser(true, "Make it a slot…", &format!("Make a slot of {place}")).clicked() {
                cx.send(Command::PickSlot(leftover.anchor.clone(), leftover.said.clone()));
            }
            if leftover.replace {
                let filled = cx.kit.words.get(&leftover.word.slot).or_else(|| theme.words.get(&leftover.word.slot));
                let new = match filled {
                    Some(forms) if !leftover.word.slot.is_empty() => &forms.one,
                    _ => &leftover.word.now,
                };
                let text = format!("Let “{new}” stand there");
                if ui.lesser(true, &text, &format!("{text}: {place}")).clicked() {
                    step(Mend::Replace);
                }
            }
            if ui.lesser(true, "Write it anew", &format!("Write {place} anew")).clicked() {
                cx.send(Command::Go(leftover.anchor.clone(), None));
            }
            if ui.lesser(true, "Keep", &format!("Keep {place}")).clicked() {
                step(Mend::Keep);
            }
        });
    });
}
