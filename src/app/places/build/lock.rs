use eframe::egui::{Checkbox, Ui};

use crate::app::ctx::{Command, Ctx};
use crate::app::places::codes;
use crate::app::places::item::remove_ui;
use crate::app::session::Selection;
use crate::app::widgets::{Field, UiExt as _};
use crate::diag::Anchor;
use crate::ids::{BoxId, LockId};
use crate::kit::edit::Edit;
use crate::kit::{BoxDef, Lock, LockKind};
use crate::limits;

/// The kinds of lock, without what belongs to one kind alone.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Kind {
    Digits,
    Letters,
    Directions,
    Key,
    Spoken,
}

impl Kind {
    const fn of(kind: &LockKind) -> Self {
        match kind {
            LockKind::Digits(_) => Self::Digits,
            LockKind::Letters(_) => Self::Letters,
            LockKind::Directions(_) => Self::Directions,
            LockKind::Key => Self::Key,
            LockKind::Spoken => Self::Spoken,
        }
    }

    /// A lock of this kind with as many wheels as the one before it.
    fn fresh(self, wheels: u8) -> LockKind {
        match self {
            Self::Digits => LockKind::Digits(wheels),
            Self::Letters => LockKind::Letters(vec![WHEEL.to_owned(); usize::from(wheels)]),
            Self::Directions => LockKind::Directions(wheels),
            Self::Key => LockKind::Key,
            Self::Spoken => LockKind::Spoken,
        }
    }
}

/// A letter wheel to begin with; the author writes what stands on the lock at hand.
const WHEEL: &str = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";

/// A lock: what guests must bring to it, and how they tell it from its neighbours.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>, id: &LockId) {
    let Some(old) = cx.kit.lock(id) else { return };
    let mut lock = old.clone();
    ui.title(&cx.say(&lock.name));
    feeds_ui(ui, cx, id);
    let mut changed =
        Field::new("Name").help("What the host calls it.").at(Anchor::Lock(id.clone())).line(ui, cx, &mut lock.name);
    changed |= kind_ui(ui, cx, &mut lock);
    let mut marks = vec![(String::new(), "No mark".to_owned())];
    marks.extend(cx.doc.theme.theme.symbols.keys().map(|name| (name.clone(), name.replace('-', " "))));
    let otherwise = format!("{}, which the theme does not draw", lock.mark);
    changed |= Field::new("Mark").help("The symbol on this lock and on every piece that feeds it.").salt(id).pick(
        ui,
        cx,
        &mut lock.mark,
        &marks,
        &otherwise,
    );
    if lock.kind != LockKind::Spoken && !lock.mark.is_empty() {
        changed |= ui.add(Checkbox::new(&mut lock.tag, "Print a tag with its mark, to tie to its shackle")).changed();
        ui.add_space(8.0);
    }
    let most = u8::try_from(limits::HASP).unwrap_or(6);
    changed |= Field::new("Hole of the hasp").help("Counted from the hinge; 0 when it hangs alone.").salt(id).number(
        ui,
        cx,
        &mut lock.hole,
        0..=most,
        "",
    );
    changed |= Field::new("How to set the code")
        .help("In a sentence, should the maker's sheet be lost.")
        .salt(id)
        .line(ui, cx, &mut lock.how_to_set);
    if changed {
        cx.edit(Edit::Lock(Box::new(lock)));
    }
    codes::lock_ui(ui, cx, id);
    ui.section("Where it hangs");
    hangs_ui(ui, cx, id);
    remove_ui(ui, cx, &Selection::Lock(id.clone()), "Remove this lock");
}

/// Which puzzle opens it.
fn feeds_ui(ui: &mut Ui, cx: &Ctx<'_>, id: &LockId) {
    match cx.kit.puzzle_of(id) {
        Some(puzzle) => {
            ui.horizontal(|ui| {
                ui.quiet("Opened by");
                if ui.link(cx.say(&puzzle.title)).clicked() {
                    cx.send(Command::Select(Selection::Puzzle(puzzle.id.clone())));
                }
            });
        }
        None => {
            ui.lede("No puzzle opens it yet.");
        }
    }
    ui.add_space(8.0);
}

fn kind_ui(ui: &mut Ui, cx: &Ctx<'_>, lock: &mut Lock) -> bool {
    let kinds = [
        (Kind::Digits, "Wheels with digits".to_owned()),
        (Kind::Letters, "Wheels with letters".to_owned()),
        (Kind::Directions, "Pushes up, down, left, right".to_owned()),
        (Kind::Key, "A key".to_owned()),
        (Kind::Spoken, "A word said to the host".to_owned()),
    ];
    let id = lock.id.clone();
    let mut kind = Kind::of(&lock.kind);
    let mut changed = Field::new("How it opens").salt(&id).pick(ui, cx, &mut kind, &kinds, "");
    if changed {
        let wheels = lock.kind.wheels().and_then(|n| u8::try_from(n).ok()).unwrap_or(3);
        lock.kind = kind.fresh(wheels);
    }
    let most = u8::try_from(limits::WHEELS).unwrap_or(12);
    match &mut lock.kind {
        LockKind::Digits(n) => changed |= Field::new("Wheels").salt(&id).number(ui, cx, n, 1..=most, ""),
        LockKind::Directions(n) => changed |= Field::new("Pushes").salt(&id).number(ui, cx, n, 1..=most, ""),
        LockKind::Letters(wheels) => changed |= wheels_ui(ui, cx, wheels, most),
        LockKind::Key | LockKind::Spoken => {}
    }
    if let Some(codes) = lock.kind.codes() {
        ui.quiet(&format!("{codes} codes can be set on it."));
        ui.add_space(8.0);
    }
    changed
}

fn wheels_ui(ui: &mut Ui, cx: &Ctx<'_>, wheels: &mut Vec<String>, most: u8) -> bool {
    let mut changed = false;
    let mut count = u8::try_from(wheels.len()).unwrap_or(most);
    if Field::new("Wheels").number(ui, cx, &mut count, 1..=most, "") {
        wheels.resize(usize::from(count), WHEEL.to_owned());
        changed = true;
    }
    ui.quiet("The letters on each wheel, as they stand on the lock at hand.");
    for (at, wheel) in wheels.iter_mut().enumerate() {
        changed |= Field::new(&format!("Wheel {}", at + 1)).line(ui, cx, wheel);
    }
    changed
}

/// The boxes, each with a tick when the lock hangs on it.
fn hangs_ui(ui: &mut Ui, cx: &Ctx<'_>, id: &LockId) {
    for item in &cx.kit.boxes {
        let mut hangs = item.locks.contains(id);
        if ui.add(Checkbox::new(&mut hangs, cx.say(&item.name))).changed() {
            let fresh = if hangs { with_lock(item, id) } else { without_lock(item, id) };
            let mut edits = vec![Edit::Box(Box::new(fresh))];
            if hangs {
                edits.extend(leave(cx.kit.boxes.iter(), &item.id, id));
            }
            cx.send(Command::Step(edits));
        }
    }
}

fn with_lock(item: &BoxDef, id: &LockId) -> BoxDef {
    let mut item = item.clone();
    item.locks.push(id.clone());
    item
}

fn without_lock(item: &BoxDef, id: &LockId) -> BoxDef {
    let mut item = item.clone();
    item.locks.retain(|lock| lock != id);
    item
}

/// A lock hangs on one box: it leaves the others.
fn leave<'a>(
    boxes: impl Iterator<Item = &'a BoxDef> + 'a,
    to: &'a BoxId,
    id: &'a LockId,
) -> impl Iterator<Item = Edit> + 'a {
    boxes
        .filter(move |item| item.id != *to && item.locks.contains(id))
        .map(move |item| Edit::Box(Box::new(without_lock(item, id))))
}
