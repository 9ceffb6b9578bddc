use super::{Draft, Facts, Finding, Fix, Sink, trying};
use crate::diag::{Anchor, Level};
use crate::kit::Levels;
use crate::kit::edit::Edit;

check!(
    /// ## What it does
    /// Notes a play level that plays like `standard`: no puzzle changes, and the tokens follow the same rules.
    ///
    /// ## Why it matters at the table
    /// A host who chooses it finds no difference.
    ///
    /// ## How to mend
    /// Let it lay other hints open, or change a setup or a hint.
    LevelAddsNothing, "level-adds-nothing", Notes, "a play level that plays like another",
    "a host who chooses it finds no difference", run, mend
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let (kit, level) = (facts.kit, facts.party.level);
    if level == Level::Standard {
        return;
    }
    let (own, base) = (kit.levels.of(level), kit.levels.of(Level::Standard));
    let same_rules = own.open_steps == base.open_steps && own.quiet_minutes == base.quiet_minutes;
    let same_puzzles = kit.puzzles.iter().all(|puzzle| {
        puzzle.setup_at(level) == puzzle.setup_at(Level::Standard)
            && puzzle.hints_at(level) == puzzle.hints_at(Level::Standard)
    });
    if same_rules && same_puzzles {
        let message = format!("the level {} plays like {}", level.word(), Level::Standard.word());
        sink.add(Draft::new(Anchor::Levels, message).help("let it lay other hints open, or change a setup or a hint"));
    }
}

/// The rules that a fresh kit has for the level.
fn mend(facts: &Facts<'_>, finding: &Finding) -> Option<Fix> {
    let level = finding.level?;
    let mut levels = facts.kit.levels.clone();
    levels.of_mut(level).clone_from(Levels::default().of(level));
    let title = format!("Give the level {} the rules of a fresh kit", level.word());
    trying::sound(facts, finding, [trying::ask(title, vec![Edit::Levels(Box::new(levels))])])
}
