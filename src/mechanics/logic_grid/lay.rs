use std::collections::BTreeSet;

use rand::RngExt as _;
use rand::seq::SliceRandom as _;

use super::{Kind, Setup, Statement, Thing, View, texts};
use crate::diag::{Hinted, Trouble};
use crate::limits;
use crate::mechanics::words::{any_symbol, symbols};
use crate::mechanics::work::{Effort, arranged};
use crate::mechanics::{Job, Rng};
use crate::readings::Budget;
use crate::readings::matching::{Clue, Matching};

pub(super) fn lay_out(setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
    let answer = symbols(job.answer, job.lock)?;
    let items = sound(setup)?;
    let tags = tags(&answer, items, job, rng)?;
    let mut kinds = setup.kinds.clone();
    kinds.push(Kind { name: String::new(), things: tags.iter().map(char::to_string).collect(), in_order: false });
    let job = Grid { answer: &answer, tags: &tags, kinds: &kinds, setup };
    arranged(setup.work, rng, &mut |rng| job.grid(rng), &texts::work)
}

/// What every grid for the answer is made with.
struct Grid<'a> {
    answer: &'a [char],
    tags: &'a [char],
    kinds: &'a [Kind],
    setup: &'a Setup,
}

impl Grid<'_> {
    /// Now and then the statements that are drawn leave so much open that they cannot be proven in time; others are
    /// drawn then, with less time, for most are settled at once.
    fn grid(&self, rng: &mut Rng) -> Hinted<View> {
        let mut made = self.once(limits::SOLVER_STEPS, rng);
        for _ in 1..limits::STATEMENT_STARTS {
            if made.is_ok() {
                break;
            }
            made = self.once(limits::GRID_STEPS, rng);
        }
        made
    }

    fn once(&self, steps: u64, rng: &mut Rng) -> Hinted<View> {
        let Self { answer, tags, kinds, setup } = *self;
        let items = tags.len();
        let size = Matching { kinds: kinds.len(), items };

        // Which things belong together: for each kind, the row of each thing. The first kind and those in order are
        // shuffled as well, so that nothing follows from the order in which things are listed.
        let rows: Vec<Vec<usize>> = (0..size.kinds)
            .map(|_| {
                let mut row: Vec<usize> = (0..items).collect();
                row.shuffle(rng);
                row
            })
            .collect();
        let asked = asked(answer, tags, &rows, rng);
        let mut pool = truths(kinds, &rows);
        pool.shuffle(rng);
        // What links an asked thing straight with its tag would be the answer itself.
        pool.retain(|statement| !gives_away(statement, size, &asked));
        let statements = thinned(&pool, size, setup, (steps, rng))?;
        Ok(View { kinds: kinds.to_vec(), tag: setup.tag.trim().to_owned(), statements, asked })
    }
}

/// How many things each kind has, when the kinds can be used.
fn sound(setup: &Setup) -> Hinted<usize> {
    let (kinds, items) = (setup.kinds.len(), setup.kinds.first().map_or(0, |kind| kind.things.len()));
    if !(2..limits::GRID_KINDS).contains(&kinds) || !(3..=limits::GRID_THINGS).contains(&items) {
        return Err(Trouble::new(format!("{kinds} kinds of {items} things make no logic grid")).hint(format!(
            "write two or {} kinds of 3 to {} things each; the tags are one kind more",
            limits::GRID_KINDS - 1,
            limits::GRID_THINGS
        )));
    }
    if let Some(kind) = setup.kinds.iter().find(|kind| kind.things.len() != items) {
        return Err(Trouble::new(format!(
            "the kind \"{}\" has {} things, and the first has {items}",
            kind.name,
            kind.things.len()
        ))
        .hint("give all kinds as many things"));
    }
    let mut names = BTreeSet::new();
    for thing in setup.kinds.iter().flat_map(|kind| &kind.things) {
        if thing.trim().is_empty() || !names.insert(thing.trim().to_lowercase()) {
            return Err(Trouble::new(format!("the thing \"{thing}\" has no name of its own"))
                .hint("give every thing of every kind a different name"));
        }
    }
    Ok(items)
}

/// The symbols of the tags: the answer's, and others of the lock, in order.
fn tags(answer: &[char], items: usize, job: &Job<'_>, rng: &mut Rng) -> Hinted<Vec<char>> {
    let mut tags: Vec<char> = answer.to_vec();
    tags.sort_unstable();
    tags.dedup();
    if tags.len() > items {
        return Err(Trouble::new(format!(
            "the answer has {} different symbols, and there are {items} tags",
            tags.len()
        ))
        .hint("give every kind one thing more, or write an answer that repeats a symbol"));
    }
    let digits = answer.iter().all(char::is_ascii_digit);
    let mut spare: Vec<char> = (0..limits::GRID_SPARE).map(|_| any_symbol(job.lock, rng)).collect();
    spare.extend(if digits { '0'..='9' } else { 'A'..='Z' });
    for symbol in spare {
        if tags.len() < items && symbol.is_alphanumeric() && !tags.contains(&symbol) {
            tags.push(symbol);
        }
    }
    tags.sort_unstable();
    Ok(tags)
}

/// The things whose tags spell the answer: of those that belong with a tag, one of any kind, by chance.
fn asked(answer: &[char], tags: &[char], rows: &[Vec<usize>], rng: &mut Rng) -> Vec<Thing> {
    let last = rows.len() - 1;
    answer
        .iter()
        .filter_map(|symbol| {
            let tag = tags.iter().position(|tag| tag == symbol)?;
            let row = *rows.get(last)?.get(tag)?;
            let kind = rng.random_range(0..last);
            Some((kind, rows.get(kind)?.iter().position(|other| *other == row)?))
        })
        .collect()
}

/// Every true statement of the forms that the sheet uses.
fn truths(kinds: &[Kind], rows: &[Vec<usize>]) -> Vec<Statement> {
    let items = rows.first().map_or(0, Vec::len);
    let things: Vec<Thing> = (0..kinds.len()).flat_map(|kind| (0..items).map(move |at| (kind, at))).collect();
    let row = |(kind, at): Thing| rows[kind][at];
    let mut pool = Vec::new();
    for a in things.iter().copied() {
        for b in things.iter().copied().filter(|b| b.0 > a.0) {
            pool.push(if row(a) == row(b) { Statement::Same(a, b) } else { Statement::NotSame(a, b) });
        }
        for (b, c) in things.iter().flat_map(|b| things.iter().map(move |c| (*b, *c))) {
            if b.0 > a.0 && b.0 == c.0 && b.1 < c.1 && (row(a) == row(b)) != (row(a) == row(c)) {
                pool.push(Statement::Either(a, b, c));
            }
        }
        for (by, _) in kinds.iter().enumerate().filter(|(_, kind)| kind.in_order) {
            let number = |thing| rows[by].iter().position(|other| *other == row(thing)).unwrap_or_default();
            for b in things.iter().copied().filter(|b| *b != a && a.0 != by && b.0 != by) {
                let (x, y) = (number(a), number(b));
                if x < y {
                    pool.push(Statement::Before(a, b, by));
                }
                if x + 1 == y {
                    pool.push(Statement::RightBefore(a, b, by));
                }
                if a < b && x.abs_diff(y) == 1 {
                    pool.push(Statement::NextTo(a, b, by));
                }
            }
        }
    }
    pool
}

/// Whether a statement links an asked thing straight with a tag.
fn gives_away(statement: &Statement, size: Matching, asked: &[Thing]) -> bool {
    match statement {
        Statement::Same(a, b) => b.0 + 1 == size.kinds && asked.contains(a),
        _ => false,
    }
}

/// How much thought a statement takes, and tells in return.
const fn telling(statement: &Statement) -> u8 {
    match statement {
        Statement::NotSame(..) => 0,
        Statement::Same(..) => 1,
        Statement::Before(..) => 2,
        Statement::Either(..) | Statement::NextTo(..) | Statement::RightBefore(..) => 3,
    }
}

/// Statements of which each is needed for the one solution, and then as many more as the author wants.
fn thinned(pool: &[Statement], size: Matching, setup: &Setup, (steps, rng): (u64, &mut Rng)) -> Hinted<Vec<Statement>> {
    let none = || {
        Trouble::new("no set of statements with one solution was found")
            .hint("take fewer things or kinds, or mark one kind `in_order`")
    };
    let mut budget = Budget::new(steps);
    let mut one = |clues: &[Clue]| size.count(clues, 2, &mut budget) == Ok(1);
    // As many as settle it, by chance; the share of each form is bounded so that none makes up the whole sheet.
    let mut kept: Vec<Statement> = Vec::new();
    let mut share = [0_usize; 4];
    let mut mixed: Vec<&Statement> = pool.iter().collect();
    mixed.shuffle(rng);
    let straight = |statement: &&Statement| matches!(statement, Statement::Same(..));
    match setup.work {
        Effort::Light => mixed.sort_by_key(|statement| !straight(statement)),
        Effort::Fair => {}
        Effort::Deep => mixed.sort_by_key(straight),
    }
    for most in [3, 6, usize::MAX] {
        for statement in &mixed {
            let form = usize::from(telling(statement));
            if share[form] < most && !kept.contains(statement) {
                share[form] += 1;
                kept.push((*statement).clone());
            }
            let done = kept.len().is_multiple_of(4) && one(&clues(&kept));
            if done {
                break;
            }
        }
        if one(&clues(&kept)) {
            break;
        }
    }
    if !one(&clues(&kept)) {
        return Err(none());
    }
    // Those that tell least are tried first, from the back, so that few statements are left.
    // Where little work is wanted, what says straight that two things belong together stays longest.
    kept.sort_by_key(|statement| {
        let stays = setup.work == Effort::Light && straight(&statement);
        std::cmp::Reverse((stays, telling(statement)))
    });
    let mut at = kept.len();
    while let Some(last) = at.checked_sub(1) {
        at = last;
        let statement = kept.remove(at);
        if !one(&clues(&kept)) {
            kept.insert(at, statement);
        }
    }
    let spare: Vec<Statement> = mixed
        .into_iter()
        .filter(|statement| !kept.contains(statement))
        .take(usize::from(setup.spare))
        .cloned()
        .collect();
    kept.extend(spare);
    kept.shuffle(rng);
    if kept.len() > limits::STATEMENTS {
        return Err(Trouble::new(format!("{} statements do not fit on the sheet", kept.len()))
            .hint("take fewer things or kinds, or fewer `spare` statements"));
    }
    Ok(kept)
}

fn clues(statements: &[Statement]) -> Vec<Clue> {
    statements.iter().map(Statement::clue).collect()
}
