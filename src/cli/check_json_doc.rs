use std::io::Write;

use super::outcome::{CLEAN, Outcome};

/// Every field of the output of `check --json`, by its path, and what it says. `[]` stands for each entry of a list.
pub(super) const FIELDS: &[(&str, &str)] = &[
    ("format", "the number of this format; it grows when a field changes its meaning or goes"),
    ("kit", "the kit's id"),
    ("theme", "the theme's id"),
    ("blocks", "how many findings stop an export"),
    ("warns", "how many findings warn"),
    ("notes", "how many findings note something"),
    ("mended", "what --fix has mended, in order; empty without it"),
    ("mended[].name", "the check whose finding was mended"),
    ("mended[].done", "what was done"),
    ("findings", "all findings, what blocks first, then by place, then by name"),
    ("findings[].name", "the check; `inklatch explain NAME` tells about it"),
    ("findings[].severity", "\"blocks\", \"warns\" or \"notes\""),
    ("findings[].level", "the play level; null when every level that was proven has it"),
    ("findings[].anchor", "the place in the kit: the kind, with the id or field where it has one"),
    ("findings[].place", "the place in words"),
    ("findings[].message", "what was found, in a line"),
    ("findings[].why", "why it matters at the table"),
    ("findings[].help", "ways to mend it, a sentence each"),
    ("findings[].fix", "what the program can do about it; null when it can do nothing"),
    ("findings[].safe", "whether --fix does that without asking"),
    ("levels", "what is known at each play level that was proven"),
    ("levels[].level", "\"gentle\", \"standard\" or \"stiff\""),
    ("levels[].puzzles", "the puzzles, in the kit's order"),
    ("levels[].puzzles[].id", "the puzzle's id"),
    ("levels[].puzzles[].mechanic", "its mechanic's id"),
    (
        "levels[].puzzles[].verdict",
        "\"one\", \"several\", \"other\", \"none\" or \"unproven\"; null when it cannot be laid out",
    ),
    ("levels[].puzzles[].trouble", "why it cannot be laid out; null when it can"),
    ("levels[].puzzles[].readings", "what the independent solver found"),
    ("levels[].puzzles[].readings.list", "the answers that the pieces allow and the lock can show, sorted"),
    ("levels[].puzzles[].readings.list[].answer", "the answer as it is set on the lock"),
    ("levels[].puzzles[].readings.list[].why", "which choice leads to it"),
    ("levels[].puzzles[].readings.more", "whether there are more than are listed"),
    ("levels[].puzzles[].readings.unproven", "whether the solver gave up before it had seen everything"),
    ("levels[].puzzles[].readings.remarks", "what a guest should not have to guess, though the reading is one"),
    ("levels[].puzzles[].work", "the work that the puzzle is for guests; null where its mechanic counts none"),
    ("levels[].puzzles[].work.count", "the count; what is counted depends on the mechanic"),
    ("levels[].puzzles[].work.says", "the count in words"),
    ("levels[].codes", "the codes left to try on each lock with wheels that can be set to its answer"),
    ("levels[].codes[].lock", "the lock's id"),
    ("levels[].codes[].puzzle", "the puzzle whose answer opens it"),
    ("levels[].codes[].left", "how many codes are left, by what guests know"),
    ("levels[].codes[].left.nothing", "nothing is known"),
    ("levels[].codes[].left.unordered", "all symbols are known, but not their order"),
    ("levels[].codes[].left.but_one", "all wheels but one are known; the one with the most symbols is open"),
    ("levels[].codes[].left.steps", "after the nudge, the method, the giveaway, each with those before it"),
    (
        "levels[].codes[].minutes",
        "minutes to try all codes when nothing is known, at three seconds a try (an estimate)",
    ),
    ("levels[].reachable", "ids of what guests can reach or open"),
    ("levels[].reachable.boxes", "boxes that open"),
    ("levels[].reachable.locks", "locks that open"),
    ("levels[].reachable.puzzles", "puzzles that can be solved"),
    ("levels[].reachable.props", "props that come to hand"),
    ("levels[].reachable.notes", "notes that come to hand"),
    ("levels[].rounds", "the rounds of the fastest play"),
    ("levels[].rounds[].solves", "ids of the puzzles solved in it"),
    ("levels[].rounds[].opens", "ids of the locked boxes that open in it"),
    ("levels[].loops", "boxes that hold one another shut, the shortest loop first"),
    ("levels[].loops[].words", "the loop in words"),
    ("levels[].loops[].boxes", "ids of its boxes"),
    ("levels[].loops[].anchors", "places in the kit to look at, as in a finding's anchor"),
    ("levels[].loops[].finish", "whether the finish depends on it"),
    ("levels[].finish", "whether the finish can be reached"),
];

/// Describes the output of `check --json`.
pub(super) fn write(out: &mut dyn Write) -> Outcome {
    writeln!(out, "check --json: the findings, readings and reach of a kit, as one JSON object.")?;
    writeln!(out, "`[]` stands for each entry of a list.\n")?;
    for (path, words) in FIELDS {
        writeln!(out, "{path}\n    {words}")?;
    }
    Ok(CLEAN)
}
