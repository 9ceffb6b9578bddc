use eframe::egui::{RichText, Ui};

use crate::app::ctx::{Command, Ctx};
use crate::app::findings::named;
use crate::app::places::Locals;
use crate::app::places::file_name::file_name_ui;
use crate::app::widgets::UiExt as _;
use crate::bundle::mended;
use crate::diag::{Anchor, PuzzleField};
use crate::kit::edit::between;
use crate::redress::{Leftover, Mend, Mended, keep_everywhere, keep_picture, leftovers, mend, old_pictures, standing};

/// What the season before left behind, each with the ways to mend it.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>, locals: &mut Locals) {
    ui.title("Leftovers");
    begun_ui(ui, cx);
    let Some(from) = &cx.kit.dressed.from.as_ref().or_else(|| cx.kit.dressed.old_words.first()?.theme.as_ref()) else {
        ui.lede("When a kit has been put into another theme, words and pictures of the old season are listed here.");
        return;
    };
    // Reading all texts by stem takes longer than a frame has: it is done once for each state of the kit.
    if locals.leftovers.as_ref().is_none_or(|(revision, ..)| *revision != cx.doc.revision) {
        locals.leftovers = Some((cx.doc.revision, leftovers(cx.kit), standing(cx.kit, &locals.mended)));
    }
    let (found, done) =
        locals.leftovers.as_ref().map_or((&[][..], &[][..]), |(_, found, done)| (found.as_slice(), done.as_slice()));
    let pictures = old_pictures(cx.kit);
    let count = found.len() + pictures.len();
    ui.lede(&match count {
        0 => format!("Nothing of {from} is left."),
        1 => format!("One place still speaks of {from}."),
        count => format!("{count} places still speak of {from}."),
    });
    // In a setup a rule may spoil the puzzle; those that it would are left, each with a button of its own.
    let in_setup = |leftover: &Leftover| matches!(leftover.anchor, Anchor::Puzzle(_, PuzzleField::Setup));
    let mut fresh = None;
    if found.iter().any(|leftover| leftover.by_rule && !in_setup(leftover)) {
        ui.quiet(
            "A rule mends what leaves no question open: a word that a slot says as well, and the new name of a picture in \
             the texts of a puzzle that prints it. The rest is yours to judge.",
        );
        if ui.primary("Mend all that a rule can mend").clicked() {
            let (kit, places) = mended(cx.kit, &cx.doc.theme);
            cx.send(Command::Step(between(cx.kit, &kit)));
            cx.send(Command::Say(said(places.len())));
            fresh = Some(places);
        }
    }
    let close = mended_ui(ui, cx, done);
    ui.add_space(8.0);
    for (at, leftover) in found.iter().enumerate() {
        let alike = found.iter().filter(|other| other.word == leftover.word).count();
        ui.push_id(at, |ui| leftover_ui(ui, cx, leftover, alike, &mut locals.file_name));
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
    if close {
        locals.mended.clear();
        locals.leftovers = None;
        ui.ctx().request_repaint();
    }
    if let Some(places) = fresh {
        locals.mended = places;
    }
}

/// Where the theme was begun from another: the search for what the kit still says of that one.
fn begun_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    let Some(begun) = cx.doc.theme.theme.begun_from.as_ref().filter(|_| cx.doc.own_theme()) else { return };
    ui.group_card(|ui| {
        ui.quiet(&format!(
            "Your theme was begun from {begun}. Change its words first; what this kit still says of the old ones can then be \
             looked for, as often as you like."
        ));
        if ui.secondary(&format!("Look for words of {begun}")).clicked() {
            cx.send(Command::WatchBegun(begun.clone()));
        }
    });
    ui.add_space(8.0);
}

/// How many places were mended, in a sentence.
fn said(places: usize) -> String {
    match places {
        0 => "No rule could mend anything.".to_owned(),
        1 => "One place is mended. Read it in the list.".to_owned(),
        count => format!("{count} places are mended. Read them in the list."),
    }
}

/// What was mended by rule, place by place. Answers whether the list is to be closed.
fn mended_ui(ui: &mut Ui, cx: &Ctx<'_>, done: &[Mended]) -> bool {
    if done.is_empty() {
        return false;
    }
    ui.section("Mended by rule");
    let mut close = false;
    ui.group_card(|ui| {
        close = ui.lesser(true, "Close the list", "Close the list of what was mended").clicked();
        for (at, place) in done.iter().enumerate() {
            ui.push_id(at, |ui| {
                ui.horizontal_wrapped(|ui| {
                    let name = named(cx, &place.anchor);
                    if ui.link(RichText::new(&name).size(13.5)).on_hover_text("Go there").clicked() {
                        cx.send(Command::Go(place.anchor.clone(), None));
                    }
                    ui.label(format!("“{}” became", place.was));
                    ui.label(RichText::new(&place.is).monospace().color(cx.tokens.accent));
                    ui.quiet(&format!("… {} …", place.around));
                });
            });
        }
    });
    close
}

fn leftover_ui(ui: &mut Ui, cx: &Ctx<'_>, leftover: &Leftover, alike: usize, file_name: &mut Option<String>) {
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
            ui.quiet(&format!("{}{times}{name}", named(cx, &leftover.anchor)));
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
                    Some(forms) if !leftover.word.slot.is_empty() && !leftover.printed => &forms.one,
                    _ => &leftover.word.now,
                };
                let text = format!("Let “{new}” stand there");
                if ui.lesser(true, &text, &format!("{text}: {place}")).clicked() {
                    step(Mend::Replace);
                }
            }
            if !leftover.file_name && ui.lesser(true, "Write it anew", &format!("Write {place} anew")).clicked() {
                cx.send(Command::Go(leftover.anchor.clone(), None));
            }
            if ui.lesser(true, "Keep", &format!("Keep {place}")).clicked() {
                step(Mend::Keep);
            }
            if alike > 1 {
                let (text, word) = (format!("Keep everywhere ({alike})"), &leftover.word.one);
                if ui.lesser(true, &text, &format!("Keep {word} everywhere, from {}", leftover.anchor)).clicked() {
                    cx.send(Command::Step(keep_everywhere(cx.kit, &leftover.word).0));
                }
            }
        });
        if leftover.file_name && leftover.anchor == Anchor::Kit {
            file_name_ui(ui, cx, file_name);
        }
        if leftover.printed {
            ui.quiet(&format!("{} is printed in its place.", leftover.word.now));
        }
    });
}
