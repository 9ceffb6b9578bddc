//! What lies on which sheet: the sheets as they are printed, so that a host who holds a sheet knows what it is for, and a
//! host who needs a piece knows where it is.

use serde::Serialize;

use super::Source;
use super::places::{self, titled};
use super::words::{SHEETS, list};
use crate::bundle::documents::folder;
use crate::bundle::manifest::{Lies, SheetOf};
use crate::face::{Audience, Layer, Piece, Stock};
use crate::kit::Puzzle;
use crate::party::is_copy;
use crate::script::capital;

/// The sheets of one document, in the order of their numbers; number 1 is the first.
struct Stack<'a> {
    audience: Audience,
    sheets: &'a [SheetOf],
}

/// The documents of sheets, for guests, tokens, host.
fn stacks<'a>(source: &Source<'a>) -> impl Iterator<Item = Stack<'a>> {
    let files = source.files;
    [Audience::Players, Audience::Hints, Audience::Host].into_iter().flat_map(move |audience| {
        let own = files.iter().filter(move |file| file.audience == folder(audience) && !file.sheets.is_empty());
        own.map(move |file| Stack { audience, sheets: &file.sheets })
    })
}

impl Stack<'_> {
    /// The numbers of the sheets on which a piece lies of which this holds.
    fn numbers(&self, wanted: impl Fn(&str) -> bool) -> Vec<usize> {
        let lies = |sheet: &SheetOf| sheet.pieces.iter().any(|piece| wanted(&piece.id));
        (1..).zip(self.sheets).filter(|(_, sheet)| lies(sheet)).map(|(number, _)| number).collect()
    }
}

/// A row of the table: a sheet, or several with the same pieces on them.
#[derive(Clone, Debug, Serialize)]
pub(super) struct SheetRow {
    sheet: String,
    stock: String,
    /// The pieces, puzzle by puzzle.
    holds: Vec<Holding>,
}

/// What a sheet holds of one puzzle, or of what belongs to none.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
struct Holding {
    mark: String,
    puzzle: String,
    pieces: String,
}

/// How the table is read, and which pieces do not wear the mark of their lock.
pub(super) fn note(source: &Source<'_>) -> String {
    match list(&unmarked(source)) {
        bare if bare.is_empty() => SHEETS.to_owned(),
        bare => format!("{SHEETS} Of the guests’ pieces these do not wear the mark of their lock: {bare}."),
    }
}

/// The guests’ pieces of puzzles that do not wear the mark of their lock: those too small for it, and those that wear
/// another.
pub(super) fn unmarked(source: &Source<'_>) -> Vec<String> {
    let mut names: Vec<String> = Vec::new();
    for piece in source.party.pieces.iter().filter(|piece| piece.audience == Audience::Players) {
        let lock = of_puzzle(source, piece).and_then(|puzzle| source.opened.kit.lock(&puzzle.opens));
        let Some(lock) = lock.filter(|lock| source.opened.theme.symbol(&lock.mark).is_some()) else { continue };
        let mark = format!("mark: {}", lock.mark);
        let layers = std::iter::once(&piece.front).chain(&piece.back).flat_map(|face| &face.layers);
        let mut drawn = layers.filter_map(|layer| match layer {
            Layer::Art(art) => Some(art.alt.as_str()),
            Layer::Text(_) => None,
        });
        let name = piece.label.split([',', ';']).next().unwrap_or(&piece.label).to_owned();
        if !drawn.any(|alt| alt == mark) && !names.contains(&name) {
            names.push(name);
        }
    }
    // Of a part of which no piece wears it the name alone says so.
    let (mut told, all): (Vec<String>, Vec<String>) = (Vec::new(), names);
    for name in &all {
        let part = name.split(':').next().unwrap_or(name);
        let whole = source.party.pieces.iter().filter(|piece| places::called(piece) == part);
        let whole = whole.into_iter().all(|piece| {
            let own = piece.label.split([',', ';']).next().unwrap_or(&piece.label);
            all.iter().any(|name| name == own)
        });
        let said = if whole { part.to_owned() } else { name.clone() };
        if !told.contains(&said) {
            told.push(said);
        }
    }
    told
}

/// Whether a part's pieces for guests, or one of them, wear this mark.
pub(super) fn wears(source: &Source<'_>, puzzle: &Puzzle, part: &str, mark: &str) -> bool {
    let own =
        |piece: &&Piece| piece.audience == Audience::Players && piece.group == puzzle.id.as_str() && piece.part == part;
    let alt = format!("mark: {mark}");
    let pieces = source.party.pieces.iter().filter(own);
    let mut layers =
        pieces.flat_map(|piece| std::iter::once(&piece.front).chain(&piece.back)).flat_map(|face| &face.layers);
    !mark.is_empty() && layers.any(|layer| matches!(layer, Layer::Art(art) if art.alt == alt))
}

/// On how many sides the sheets are printed: on one, but for those with backs, which the printer turns as the kit says.
pub(super) fn sides(source: &Source<'_>) -> String {
    let backed = stacks(source).map(|stack| {
        let back = |sheet: &SheetOf| sheet.stock.is_none();
        let pairs = (1..).zip(stack.sheets).filter(|(_, sheet)| back(sheet)).flat_map(|(back, _)| [back - 1, back]);
        let numbers: Vec<usize> = pairs.collect();
        if numbers.is_empty() { String::new() } else { named(stack.audience, &numbers) }
    });
    let backed: Vec<String> = backed.filter(|said| !said.is_empty()).collect();
    if backed.is_empty() {
        return "Print every file at 100 % (“actual size”), on one side.".to_owned();
    }
    let flip = source.opened.kit.making.flip.word();
    let test = if source.files.iter().any(|file| file.audience == folder(Audience::Host)) {
        " The host’s are the printer test: print it first, and see whether front and back meet."
    } else {
        ""
    };
    format!(
        "Print every file at 100 % (“actual size”). Print on both sides: {}. They go in pairs, each page of backs on the \
         sheet before it; let the printer turn the paper {flip}. Print all others on one side.{test}",
        list(&backed)
    )
}

/// The table, sheet by sheet.
pub(super) fn rows(source: &Source<'_>) -> Vec<SheetRow> {
    let mut rows = Vec::new();
    for stack in stacks(source) {
        let mut from = 0;
        while let Some(sheet) = stack.sheets.get(from) {
            let holds = holds(source, stack.audience, sheet);
            let alike =
                stack.sheets.iter().skip(from).take_while(|other| {
                    other.stock == sheet.stock && self::holds(source, stack.audience, other) == holds
                });
            let count = alike.count().max(1);
            let numbers: Vec<usize> = (from + 1..=from + count).collect();
            rows.push(SheetRow {
                sheet: capital(&named(stack.audience, &numbers)),
                stock: match sheet.stock.map(Stock::words).and_then(|words| words.split(',').next()) {
                    Some(stock) => stock.to_owned(),
                    None => "the same".to_owned(),
                },
                holds,
            });
            from += count;
        }
    }
    rows
}

/// "guests’ sheets 4 to 6".
fn named(audience: Audience, numbers: &[usize]) -> String {
    let whose = match audience {
        Audience::Players => "guests’",
        Audience::Hints => "token",
        Audience::Host => "host’s",
    };
    let sheets = if numbers.len() == 1 { "sheet" } else { "sheets" };
    format!("{whose} {sheets} {}", runs(numbers))
}

/// Numbers in rising order, those in a row as "4 to 6".
fn runs(numbers: &[usize]) -> String {
    let said = numbers.chunk_by(|a, b| a + 1 == *b).flat_map(|run| match run {
        [first, _, .., last] if run.len() > 2 => vec![format!("{first} to {last}")],
        few => few.iter().map(usize::to_string).collect(),
    });
    list(&said.collect::<Vec<_>>())
}

/// What a sheet holds, puzzle by puzzle in the order in which they lie.
fn holds(source: &Source<'_>, audience: Audience, sheet: &SheetOf) -> Vec<Holding> {
    let plain = |pieces: String| vec![Holding { mark: String::new(), puzzle: String::new(), pieces }];
    if sheet.stock.is_none() {
        return plain("The backs of the sheet before".to_owned());
    }
    if sheet.pieces.iter().all(|lies| lies.label.is_empty()) {
        // A sheet without captions says in its head what it is.
        let what = sheet.heading.split(" · ").nth(1).and_then(|head| head.split(',').next());
        return plain(capital(what.unwrap_or("see its head")));
    }
    let mut groups: Vec<(Option<&Puzzle>, Vec<Named>)> = Vec::new();
    for Lies { id, label, count } in &sheet.pieces {
        let piece = source.party.piece(id);
        let puzzle = piece.and_then(|piece| of_puzzle(source, piece));
        let named = Named::new(source, piece, label, *count);
        let at = groups.iter().position(|(known, _)| known.map(|p| &p.id) == puzzle.map(|p| &p.id));
        match at.and_then(|at| groups.get_mut(at)) {
            Some((_, all)) => match all.iter_mut().find(|known| known.name == named.name) {
                Some(known) => known.add(named.of),
                None => all.push(named),
            },
            None => groups.push((puzzle, vec![named])),
        }
    }
    let holding = |(puzzle, names): (Option<&Puzzle>, Vec<Named>)| {
        let lock = puzzle.and_then(|puzzle| source.opened.kit.lock(&puzzle.opens));
        let text = puzzle.and_then(|puzzle| source.party.script.puzzle(&puzzle.id));
        let said: Vec<String> = names.iter().map(|named| named.said(audience)).collect();
        Holding {
            mark: lock.map(|lock| lock.mark.clone()).unwrap_or_default(),
            puzzle: text.map(|text| capital(&text.title)).unwrap_or_default(),
            pieces: said.join(" · "),
        }
    };
    groups.into_iter().map(holding).collect()
}

/// The puzzle that a piece belongs to, or helps with.
fn of_puzzle<'a>(source: &Source<'a>, piece: &Piece) -> Option<&'a Puzzle> {
    let helps = |puzzle: &&Puzzle| piece.id == format!("token-{}-{}", puzzle.id, piece.part);
    let own = |puzzle: &&Puzzle| puzzle.id.as_str() == piece.group;
    let puzzles = &source.opened.kit.puzzles;
    puzzles.iter().find(|puzzle| if piece.audience == Audience::Hints { helps(puzzle) } else { own(puzzle) })
}

/// Pieces of one name, with which of them lie there and how often.
struct Named {
    name: String,
    of: Vec<(String, usize)>,
}

impl Named {
    fn new(source: &Source<'_>, piece: Option<&Piece>, label: &str, count: usize) -> Self {
        // What follows a comma says what to do with it.
        let (name, of) = label.split_once(": ").unwrap_or((label, ""));
        let of = if piece.is_some_and(is_copy) { of } else { of.split(',').next().unwrap_or_default() }.to_owned();
        let alike = |piece: &Piece| {
            let same = |other: &&Piece| other.group == piece.group && other.part == piece.part;
            source.party.pieces.iter().filter(same).count()
        };
        let alone = piece.filter(|piece| of_puzzle(source, piece).is_some() && alike(piece) == 1);
        Self { name: titled(name, alone.and_then(Piece::title)), of: vec![(of, count)] }
    }

    fn add(&mut self, more: Vec<(String, usize)>) {
        for (of, count) in more {
            match self.of.iter_mut().find(|(known, _)| *known == of) {
                Some((_, all)) => *all += count,
                None => self.of.push((of, count)),
            }
        }
    }

    fn said(&self, audience: Audience) -> String {
        let times = |count: usize| if count > 1 { format!(" ×\u{a0}{count}") } else { String::new() };
        let each = self.of.iter().map(|(of, count)| match audience {
            // The lock's mark stands before them.
            Audience::Hints => format!("{}{}", of.rsplit(' ').next().unwrap_or(of), times(*count)),
            Audience::Players | Audience::Host => format!("{of}{}", times(*count)).trim().to_owned(),
        });
        let each: Vec<String> = each.filter(|of| !of.is_empty()).collect();
        match (each.as_slice(), self.of.as_slice()) {
            ([], _) => self.name.clone(),
            ([_], [(of, count)]) if of.is_empty() => format!("{}{}", self.name, times(*count)),
            _ if audience == Audience::Hints => each.join(", "),
            _ => format!("{}: {}", self.name, each.join(", ")),
        }
    }
}

/// On which sheets the pieces of this group lie: "guests’ sheets 4 to 7, host’s sheet 1"; empty where on none.
pub(super) fn of_group(source: &Source<'_>, group: &str) -> String {
    let own = |id: &str| source.party.piece(id).is_some_and(|piece| piece.group == group);
    let said = stacks(source).map(|stack| {
        let numbers = stack.numbers(own);
        if numbers.is_empty() { String::new() } else { named(stack.audience, &numbers) }
    });
    said.filter(|said| !said.is_empty()).collect::<Vec<_>>().join(", ")
}

/// Which sheets are printed on what: "Plain paper, 80 to 100 g/m²: guests’ sheets 1 to 3".
pub(super) fn papers(source: &Source<'_>) -> String {
    let said = Stock::ALL.into_iter().map(|stock| {
        let on = stacks(source).map(|stack| {
            let own = |sheet: &SheetOf| sheet.stock == Some(stock);
            let numbers: Vec<usize> =
                (1..).zip(stack.sheets).filter(|(_, sheet)| own(sheet)).map(|(number, _)| number).collect();
            if numbers.is_empty() { String::new() } else { named(stack.audience, &numbers) }
        });
        let on: Vec<String> = on.filter(|said| !said.is_empty()).collect();
        if on.is_empty() { String::new() } else { format!("{}: {}.", capital(stock.words()), list(&on)) }
    });
    said.filter(|said| !said.is_empty()).collect::<Vec<_>>().join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_said_in_runs() {
        assert_eq!(named(Audience::Players, &[4]), "guests’ sheet 4");
        assert_eq!(named(Audience::Host, &[1, 2, 4, 5, 6, 9]), "host’s sheets 1, 2, 4 to 6 and 9");
    }
}
