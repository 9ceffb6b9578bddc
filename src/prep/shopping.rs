use std::collections::BTreeMap;

use serde::Serialize;

use super::{PuzzleSteps, count, marks, tokens};
use crate::diag::Level;
use crate::kit::material::{MATERIALS, Material, material};
use crate::kit::{BoxDef, HowMany, Kit, LockKind, OwnStep, Prop, PropRole};
use crate::limits;

/// Tools of which one does for the whole kit, however many steps use it.
const SHARED: &[&str] = &[
    "scissors",
    "ruler",
    "pin",
    "glue",
    "tape",
    "uv-torch",
    "uv-pen",
    "permanent-marker",
    "wipe-off-marker",
    "magnet-wand",
    "cloth",
    "hole-punch",
];

/// Tools of the host's, of which one does however many groups play: they are put away before the guests come.
const HOSTS_OWN: &[&str] =
    &["scissors", "ruler", "pin", "glue", "tape", "uv-pen", "permanent-marker", "wipe-off-marker"];

/// What guests write with.
const PENCIL: &str = "pencil";

/// One line of the shopping list, for all groups of guests.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ShoppingLine {
    /// The material's id; empty for what the built-in list does not have.
    pub material: &'static str,
    /// What to have.
    pub name: String,
    /// How much, in `unit`.
    pub amount: f64,
    /// The unit counted in.
    pub unit: &'static str,
    /// What it is for.
    pub for_what: Vec<String>,
    /// Size limits that matter, or what will do as it.
    pub size: String,
    /// What will do instead.
    pub stand_in: &'static str,
    /// Whether most homes have it.
    pub at_home: bool,
    /// Whether one party uses it up.
    pub used_up: bool,
    /// Whether it is a thing that guests find, beside what the host works with.
    pub guests: bool,
}

/// A caution, and the things that it is owed for.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct CautionLine {
    /// What can hurt, what to do about it, whom to defer to.
    pub text: &'static str,
    /// Where it comes from.
    pub source: &'static str,
    /// The things in use that it is owed for.
    pub of: Vec<&'static str>,
}

/// Amounts of one material while they are added up.
#[derive(Default)]
pub(super) struct Sum {
    pub(super) amount: f64,
    pub(super) for_what: Vec<String>,
}

impl Sum {
    fn add(&mut self, amount: f64, for_what: &str) {
        self.amount += amount;
        self.name(for_what);
    }

    fn name(&mut self, for_what: &str) {
        if !for_what.is_empty() && !self.for_what.iter().any(|known| known == for_what) {
            self.for_what.push(for_what.to_owned());
        }
    }
}

/// The shopping list. What is used up adds up; what is kept is counted once within a puzzle, since its steps
/// handle the same things again, and adds up over puzzles; shared tools are counted once. Groups that play at once
/// each have all of it, but for the host's own tools.
pub(super) fn shopping(kit: &Kit, level: Level, steps: &[PuzzleSteps], groups: u16) -> Vec<ShoppingLine> {
    let mut lines: Vec<ShoppingLine> = sums(kit, level, steps)
        .of
        .into_iter()
        .filter_map(|(id, sum)| Some((material(id)?, sum)))
        .map(|(material, sum)| line(material, sum))
        .collect();
    for line in &mut lines {
        let kinds = steps.iter().flat_map(|group| &group.kinds).filter(|(id, _)| *id == line.material);
        let kinds: Vec<&str> = kinds.map(|(_, words)| words.as_str()).collect();
        if !kinds.is_empty() {
            line.size = format!("{}; {}", kinds.join(" and "), line.size);
        }
    }
    lines.extend(unlisted(kit, steps));
    lines.extend(kit.props.iter().filter_map(|prop| apart(kit, prop)));
    // What guests find is theirs, whatever it is made of.
    let hosts = |line: &ShoppingLine| HOSTS_OWN.contains(&line.material) && !line.guests;
    for line in lines.iter_mut().filter(|line| !hosts(line)) {
        line.amount *= f64::from(groups);
    }
    lines.sort_by(|a, b| (a.at_home, &a.name).cmp(&(b.at_home, &b.name)));
    lines
}

/// The cautions of the materials in use, in the order of the materials.
pub(super) fn cautions(kit: &Kit, level: Level, steps: &[PuzzleSteps]) -> Vec<CautionLine> {
    let sums = sums(kit, level, steps).of;
    let props: Vec<&str> = kit.props.iter().filter_map(|prop| apart(kit, prop)).map(|line| line.material).collect();
    let used = |id: &str| sums.contains_key(id) || props.contains(&id);
    let mut cautions: Vec<CautionLine> = Vec::new();
    for material in MATERIALS.iter().filter(|material| used(material.id) && !material.caution.is_empty()) {
        match cautions.iter_mut().find(|caution| caution.text == material.caution) {
            Some(caution) => caution.of.push(material.name),
            None => {
                cautions.push(CautionLine { text: material.caution, source: material.source, of: vec![material.name] })
            }
        }
    }
    cautions
}

/// Pencils that lie ready for one group; none where no step takes any.
pub(super) fn ready(kit: &Kit, level: Level, steps: &[PuzzleSteps]) -> usize {
    if sums(kit, level, steps).pencils { pencils(kit) } else { 0 }
}

fn sums(kit: &Kit, level: Level, steps: &[PuzzleSteps]) -> Sums {
    let mut sums = Sums::default();
    // The check bar of every sheet is measured.
    sums.take("ruler", 1.0, "");
    for prop in &kit.props {
        if let Some(material) = material(&prop.material).filter(|material| !stands_apart(prop, material)) {
            sums.add(material.id, needed(kit, prop), &prop.name);
        }
        for need in super::printed::step(prop).iter().flat_map(|step| &step.needs) {
            sums.take(need.material, need.amount, kit.prop_name(prop));
        }
    }
    for (step, _) in marks::steps(kit) {
        step.needs.iter().for_each(|need| sums.take(need.material, need.amount, step.key));
    }
    for (name, need) in tokens::needs(kit, level) {
        sums.take(need.material, need.amount, name);
    }
    for group in steps {
        let mut own: BTreeMap<&'static str, f64> = BTreeMap::new();
        for need in group.steps.iter().flat_map(|step| &step.needs) {
            let adds = material(need.material).is_some_and(|material| material.used_up);
            let amount = own.entry(need.material).or_default();
            *amount = if adds { *amount + need.amount } else { amount.max(need.amount) };
        }
        own.into_iter().for_each(|(id, amount)| sums.take(id, amount, &group.title));
    }
    if sums.pencils {
        sums.add(PENCIL, count(pencils(kit)), "");
    }
    for (step, title) in own_steps(kit, steps) {
        for (id, amount) in step.takes.iter().filter_map(|(name, amount)| Some((material(name)?.id, *amount))) {
            if SHARED.contains(&id) {
                sums.take(id, sound(amount), title);
            } else {
                sums.add(id, sound(amount), title);
            }
        }
    }
    for item in &kit.boxes {
        for lock in item.locks.iter().filter_map(|id| kit.lock(id)) {
            if let Some(id) = padlock(&lock.kind) {
                sums.add(id, 1.0, &lock.name);
            }
        }
        if item.hasp {
            let hasps = item.locks.len().div_ceil(limits::HASP).max(1);
            sums.add("hasp", count(hasps), &item.name);
        }
        if !opened_by_hand(kit, item) && kit.printed_as(item).is_none() {
            sums.add(if item.hasp { "chest" } else { "small-box" }, 1.0, &item.name);
        }
    }
    sums
}

/// All amounts while they are added up.
#[derive(Default)]
struct Sums {
    of: BTreeMap<&'static str, Sum>,
    /// Whether some step takes pencils.
    pencils: bool,
}

impl Sums {
    fn add(&mut self, id: &'static str, amount: f64, for_what: &str) {
        self.of.entry(id).or_default().add(amount, for_what);
    }

    /// What a step takes: of shared tools the most that any takes. Pencils are shared too; their number goes by the guests.
    fn take(&mut self, id: &'static str, amount: f64, for_what: &str) {
        let sum = self.of.entry(id).or_default();
        sum.name(for_what);
        if id == PENCIL {
            self.pencils = true;
        } else if SHARED.contains(&id) {
            sum.amount = sum.amount.max(amount);
        } else {
            sum.amount += amount;
        }
    }
}

/// Pencils that a group shares, from puzzle to puzzle and with the host beforehand: one for two guests (common practice, no
/// source).
fn pencils(kit: &Kit) -> usize {
    usize::from(kit.players.1).div_ceil(2).max(1)
}

/// The material that a lock is; none for a spoken word and for wheels that the list does not have.
fn padlock(kind: &LockKind) -> Option<&'static str> {
    match kind {
        LockKind::Digits(3) => Some("digit-padlock-3"),
        LockKind::Digits(4) => Some("digit-padlock-4"),
        LockKind::Letters(_) => Some("letter-padlock"),
        LockKind::Directions(_) => Some("direction-padlock"),
        LockKind::Key => Some("key-padlock"),
        LockKind::Digits(_) | LockKind::Spoken => None,
    }
}

pub(super) fn line(material: &'static Material, sum: Sum) -> ShoppingLine {
    ShoppingLine {
        material: material.id,
        name: material.name.into(),
        amount: sum.amount,
        unit: material.unit,
        for_what: sum.for_what,
        size: material.size.into(),
        stand_in: material.stand_in,
        at_home: material.at_home,
        used_up: material.used_up,
        guests: false,
    }
}

/// Whether no padlock shuts a box: it opens when a word is said, or is never shut.
fn opened_by_hand(kit: &Kit, item: &BoxDef) -> bool {
    item.locks.iter().filter_map(|id| kit.lock(id)).all(|lock| lock.kind == LockKind::Spoken)
}

/// How much of a prop one group needs.
fn needed(kit: &Kit, prop: &Prop) -> f64 {
    let usual = if prop.role == PropRole::Treat { HowMany::Each(1.0) } else { HowMany::Usual };
    prop.amount.of(kit.players.1, usual)
}

/// Whether a prop of this material is bought beside what the host works with: the guests' own scissors, a ribbon of the
/// kit's own length, what one party uses up of things that are kept otherwise.
fn stands_apart(prop: &Prop, material: &Material) -> bool {
    let used_up = prop.used_up && !material.used_up;
    used_up || HOSTS_OWN.contains(&material.id) || material.id == "hole-punch" || material.unit != "piece"
}

/// The line of a prop that is bought beside what the host works with.
fn apart(kit: &Kit, prop: &Prop) -> Option<ShoppingLine> {
    let found = material(&prop.material).filter(|material| stands_apart(prop, material))?;
    // Children get scissors without points.
    let blunt = found.id == "scissors" && kit.ages.0 < limits::ADULT;
    let found = if blunt { material("safe-scissors").unwrap_or(found) } else { found };
    let sum = Sum { amount: needed(kit, prop), for_what: vec![prop.name.clone()] };
    let name = format!("{} for the guests: {}", found.name, prop.name);
    Some(ShoppingLine { name, guests: true, used_up: found.used_up || prop.used_up, ..line(found, sum) })
}

/// The author's own steps, with what each is for: those of the puzzles in hand, and those of the whole kit.
fn own_steps<'a>(kit: &'a Kit, steps: &'a [PuzzleSteps]) -> impl Iterator<Item = (&'a OwnStep, &'a str)> {
    let of = |group: &'a PuzzleSteps| {
        let own = kit.puzzle(&group.puzzle).map_or(&[][..], |puzzle| &puzzle.preparation);
        own.iter().map(|step| (step, group.title.as_str()))
    };
    steps.iter().flat_map(of).chain(kit.preparation.iter().map(|step| (step, "")))
}

/// An amount that can be bought.
fn sound(amount: f64) -> f64 {
    if amount.is_finite() && amount > 0.0 { amount } else { 1.0 }
}

/// What no material stands for: locks with other counts of wheels, boxes without a padlock, props and what own steps
/// take beyond the built-in list, and the treat.
fn unlisted(kit: &Kit, steps: &[PuzzleSteps]) -> Vec<ShoppingLine> {
    let own = |name: String, for_what: &str| ShoppingLine {
        material: "",
        name,
        amount: 1.0,
        unit: "piece",
        for_what: vec![for_what.to_owned()],
        size: String::new(),
        stand_in: "",
        at_home: false,
        used_up: false,
        guests: false,
    };
    let odd = kit.locks.iter().filter(|lock| kit.box_of(&lock.id).is_some() && lock.kind != LockKind::Spoken);
    let mut lines: Vec<ShoppingLine> = odd
        .filter(|lock| padlock(&lock.kind).is_none())
        .map(|lock| ShoppingLine {
            size: "code can be set; shackle at most 7 mm thick where it hangs on a hasp, to pass its hole".to_owned(),
            ..own(format!("padlock with {}", lock.kind.describe()), &lock.name)
        })
        .collect();
    let bought = kit.boxes.iter().filter(|item| kit.printed_as(item).is_none());
    for item in bought.filter(|item| opened_by_hand(kit, item)) {
        lines.push(ShoppingLine { size: item.about.clone(), at_home: true, ..own(item.name.clone(), &item.name) });
    }
    let told = !kit.finish.treat.trim().is_empty();
    for prop in &kit.props {
        // A key comes with its lock, and the treat is told below.
        let comes = matches!(prop.role, PropRole::Key(_)) || (told && prop.role == PropRole::Treat);
        if comes || prop.made || prop.printed.is_some() || material(&prop.material).is_some() {
            continue;
        }
        let at_home = matches!(prop.role, PropRole::Decoration | PropRole::Decoy);
        let used_up = prop.used_up || prop.role == PropRole::Treat;
        let name = own(prop.name.clone(), &prop.name);
        lines.push(ShoppingLine { amount: needed(kit, prop), at_home, used_up, ..name });
    }
    for (step, title) in own_steps(kit, steps) {
        for (name, amount) in step.takes.iter().filter(|(name, _)| material(name).is_none()) {
            lines.push(ShoppingLine { amount: sound(*amount), ..own(name.clone(), title) });
        }
    }
    if told {
        let amount = kit.finish.amount.of(kit.players.1, HowMany::Each(1.0));
        let unit = if matches!(kit.finish.amount, HowMany::All(_)) { "piece" } else { "portion" };
        let name = own(kit.finish.treat.clone(), "the finish");
        lines.push(ShoppingLine { amount, unit, used_up: true, ..name });
    }
    lines
}
