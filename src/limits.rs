//! Every bound of the program, each with its reason.
//!
//! Input that passes a bound is refused with a message that says what to do; nothing is cut off in silence.

/// Bytes of one RON file. A kit of 2,000 puzzles stays under 8 MB; more is no kit.
pub const RON_BYTES: u64 = 16 << 20;
/// Bytes of one SVG picture: drawn art is far smaller, larger is a traced photo.
pub const SVG_BYTES: u64 = 4 << 20;
/// Bytes of one raster picture (PNG, JPEG).
pub const PICTURE_BYTES: u64 = 32 << 20;
/// Pixels of one raster picture: 600 dpi on a whole Letter sheet is 34 million.
pub const PICTURE_PIXELS: u64 = 40_000_000;
/// Bytes of one font file.
pub const FONT_BYTES: u64 = 32 << 20;
/// Elements, texts and comments of one SVG picture: a drawing of a thousand paths has a few thousand.
pub const SVG_NODES: u32 = 200_000;
/// Nesting of elements in one SVG picture: drawing programs nest ten deep, and what reads it follows the nesting.
pub const SVG_DEPTH: usize = 100;
/// Elements of one SVG picture as drawn, clones counted: twice what a large drawing has.
pub const SVG_DRAWN: u64 = 400_000;
/// Width or height of one SVG picture in its own units: a sheet in hundredths of a millimetre is 30,000.
pub const SVG_SIDE: f64 = 1_000_000.0;
/// Nesting of one RON file; deeper is an attack or an accident.
pub const RON_DEPTH: usize = 64;
/// Age in years from which a guest gets what an adult gets; the cautions for scissors and magnets speak of fourteen.
pub const ADULT: u8 = 14;
/// Puzzles of one kit.
pub const PUZZLES: usize = 2_000;
/// Own steps of the preparation, of one puzzle or of the whole kit: more is no afternoon.
pub const OWN_STEPS: usize = 60;
/// Locks, boxes, spots, props or smaller texts of one kit, each.
pub const THINGS: usize = 4_000;
/// Characters of one text of the kit (letter, hint, note).
pub const TEXT_CHARS: usize = 20_000;
/// Wheels or moves of one lock; shop locks have three to six.
pub const WHEELS: usize = 12;
/// Different symbols on one wheel; shop locks have ten, and no alphabet of letters and digits has more.
pub const WHEEL_SYMBOLS: usize = 64;
/// Guests of one party: a party of two hundred is played in groups.
pub const GUESTS: u8 = 200;
/// Greatest age of a guest, in years: nobody is older (the greatest on record is 122, from memory).
pub const AGE: u8 = 125;
/// Minutes that a host prepares: four weeks.
pub const PREP_MINUTES: u32 = 40_320;
/// Steps of a hint ladder: nudge, method, giveaway.
pub const HINT_STEPS: u8 = 3;
/// Padlocks on one hasp (lock-out hasps take six; common practice).
pub const HASP: usize = 6;
/// Readings listed for one puzzle: more tell the author nothing new.
pub const READINGS: usize = 24;
/// Steps of one solver before it answers `Unproven`.
pub const SOLVER_STEPS: u64 = 2_000_000;
/// Marks in one field of numbers (a Letter page of 14 mm shapes holds about 150).
pub const FIELD_MARKS: usize = 160;
/// Letters, spaces and signs on one sign: more would be smaller than 9 pt on a sign of 190 mm.
pub const SIGN_CHARS: usize = 80;
/// Like things among which a key is hidden: more would be a search, not a puzzle.
pub const HIDING_THINGS: usize = 24;
/// Rounds in which the marks of a field push one another apart; fields that can be settled are settled by then.
pub const FIELD_ROUNDS: usize = 400;
/// Fresh starts of a field before it is called too full.
pub const FIELD_STARTS: usize = 6;
/// Tries to find places for the washers of a board before it is strewn anew; six boards of such tries take milliseconds.
pub const STEEL_PICKS: usize = 300;
/// Groups that play at once from one export: more than a school's hall takes.
pub const GROUPS: u16 = 20;
/// Sheets of one export; a kit on more paper than this is a mistake.
pub const SHEETS: usize = 2_000;
/// Pixels of one preview or exported picture.
pub const RASTER_PIXELS: u64 = 40_000_000;
/// Sets of boxes tried in the search for the shortest loop: kits of fifteen shut boxes are searched wholly.
pub const LOOP_SETS: usize = 1 << 15;
/// Steps of the search for the shortest preparation: a kit's twenty tasks are mostly settled within them.
pub const PREP_STEPS: u64 = 200_000;
/// Characters of a word or phrase that is made a slot: a longer one is a sentence.
pub const SLOT_CHARS: usize = 60;
/// Names tried for a picture that is copied into a theme: more of one name would be lost sight of.
pub const PICTURE_NAMES: u32 = 200;
/// Undo steps kept.
pub const UNDO_STEPS: usize = 100;
/// Rounds of `check --fix` before it stops: a fix that brings back another's finding would turn for ever.
pub const FIX_ROUNDS: usize = 10;
/// Findings of one proof for which a mend is looked for that has to be tried: each lays puzzles out, and one mend often
/// takes the others' reason away.
pub const LONG_MENDS: usize = 12;
/// Mends that are tried for one finding before it is left to the author: each lays the kit out and checks it.
pub const MEND_CANDIDATES: usize = 16;
/// Findings of one check for which no mend was found before the rest of them are left to the author: what keeps the first
/// few from being mended mostly keeps all.
pub const MEND_FAILURES: usize = 3;
/// Output bytes of one filled slot text, against templates that grow.
pub const FILLED_BYTES: usize = 1 << 20;
/// Bytes of one page template that the program carries; ours are below 40 kB.
pub const TEMPLATE_BYTES: u64 = 1 << 20;
/// Pixels of pictures that a press keeps for previews: about forty faces at a window's resolution, 64 MB.
pub const KEPT_PIXELS: u64 = 16_000_000;
/// Pixels of lines of text that a press keeps for previews: some hundred pages at a window's resolution, 32 MB.
pub const KEPT_LINE_PIXELS: u64 = 8_000_000;
/// Plain counters of one jar: more do not go into a jar that a table holds.
pub const COUNTERS: usize = 400;
/// Least and greatest diameter of a lid disc in millimetres: room for a few words, and within the paper.
pub const LID_MM: (f64, f64) = (30.0, 150.0);
/// CIEDE2000 difference under which two bands, seen across a table and not side by side, may be taken for each
/// other (estimate; common practice, no source).
pub const BANDS_APART: f64 = 10.0;
/// Least and greatest way round a marked jar, or width of a marked tile, in millimetres.
pub const AROUND_MM: (f64, f64) = (120.0, 500.0);
/// Least room for one written symbol, in millimetres: a digit of 7 mm with air (common practice, no source).
pub const SYMBOL_MM: f64 = 9.0;
/// A finger's width in millimetres: closer than this, a wipe takes the neighbour as well (common practice, no
/// source).
pub const FINGER_MM: f64 = 12.0;
/// Widest printed piece in millimetres: it must fit across Letter and A4 with margins of 12.7 mm.
pub const PRINTED_MM: f64 = 180.0;
/// Pages of one letter in large print: more is no letter, and the rest stands on the last page as it may.
pub const LETTER_PAGES: usize = 40;
/// Pieces laid out at once, copies counted: a thousand sheets of twenty.
pub const PLACED: usize = 20_000;
/// Measures of text runs that a press remembers: every run of a large kit at three levels, about 20 MB.
pub const KEPT_FITS: usize = 20_000;
/// Fresh starts of a grid made by chance before it is refused; nearly all are sound at the first.
pub const GRID_STARTS: usize = 60;
/// Steps of one search while a grid is made: a hundred times what grids of nine rows usually take.
pub const GRID_STEPS: u64 = 200_000;
/// Arrangements among which the lightest or the deepest is taken: with more, a deep puzzle is no longer made while one
/// looks at it, and hardly deeper.
pub const WORK_STARTS: usize = 8;
/// Symbols drawn from a lock to fill a grid's alphabet: enough that nine different ones come together.
pub const GRID_SPARE: usize = 60;
/// Panels of picture grids on one sheet: more would have cells too small for a pencil.
pub const PANELS: usize = 6;
/// Blank rows and columns by which a panel may be larger than its digit; more makes cells too small for a pencil.
pub const PANEL_MARGIN: u8 = 4;
/// Rows or columns of one panel that are looked at: larger ones are not filled at a party.
pub const PANEL_CELLS: usize = 25;
/// Pictures of one panel that are looked at: a panel with more is no puzzle, and what it shows is unproven.
pub const PANEL_PICTURES: usize = 200;
/// Pieces of one domino chain: longer rows do not fit across a table, and all ways to lay them are tried.
pub const DOMINOES: usize = 12;
/// Things on bills whose prices are worked out: with more, a group adds up for the rest of the evening.
pub const BILL_THINGS: usize = 6;
/// Most pieces of one thing on a bill: more makes sums that want a calculator.
pub const BILL_PIECES: u8 = 5;
/// Bills beyond those that are needed: more do not fit on the sheet.
pub const BILL_SPARE: u8 = 4;
/// Things on one sheet of scales: more have tags and pictures too small to read across a table.
pub const SCALES_THINGS: usize = 6;
/// Rows or columns of a word search: more letters than this on a board are smaller than 9 points allows to circle.
pub const SEARCH_SIDE: usize = 20;
/// Words hidden in one word search: more do not fit beside the letters.
pub const SEARCH_WORDS: usize = 30;
/// Choices of places for the listed words that are looked at: a search with more is no puzzle.
pub const SEARCH_CHOICES: usize = 4_096;
/// Tries to put one word into a word search before the square is begun anew.
pub const SEARCH_TRIES: usize = 400;
/// Slips of one puzzle that the host is told of: of more a host remembers none.
pub const SLIPS: usize = 3;
/// Speakers of whom it must be found who tells the truth: a group keeps no more apart, and all cases are looked at.
pub const SPEAKERS: usize = 12;
/// Kinds of a logic grid, the tags included: with more, the table to tick leaves no room for the statements.
pub const GRID_KINDS: usize = 4;
/// Things of each kind of a logic grid: with more, the table's cells are too small for a pencil.
pub const GRID_THINGS: usize = 5;
/// Fresh starts of a logic grid before it is refused; nearly all are sound at the first.
pub const STATEMENT_STARTS: usize = 12;
/// Statements of a logic grid: more do not fit above its table at 9 points.
pub const STATEMENTS: usize = 24;
/// Units of a strip of short and long signs: six digits; more would be shorter than 1.2 mm on a sign of 190 mm.
pub const STRIP_UNITS: u32 = 126;
/// Signs and gaps of a strip that a reader walks; a strip of that many is longer than its units allow.
pub const STRIP_RUNS: usize = 160;
/// Outlines of one printed picture that a proof looks at: a theme's frame has some hundreds, a large grid a thousand.
pub const TRACED: usize = 20_000;
/// Codes of one lock that are looked through for a proposal: all of four wheels, a fair sample of more.
pub const PROPOSED_CODES: usize = 10_000;
/// Arrangements of one puzzle that are tried for a proposal: a mechanic that carries one code in fifty is found by
/// then, and a slow one still ends within seconds.
pub const PROPOSED_TRIES: usize = 300;
/// Steps of the search for codes that go together; thirty locks rarely take a thousand.
pub const PROPOSED_STEPS: u64 = 200_000;
/// Rounds in which a proposal is laid out whole and what then stands in plain sight is barred.
pub const PROPOSED_ROUNDS: usize = 12;
/// Pieces whose orders are looked at: more strips than this nobody lays out at a party.
pub const ORDER_PIECES: usize = 16;
/// Half-laid orders that are remembered so that none is followed twice: some tens of megabytes.
pub const ORDER_STATES: usize = 200_000;
/// Digits or letters across a picture that is cut into strips: with more, a strip of 150 mm shows them too small.
pub const CUT_SIGNS: usize = 6;
/// Rows of cells on one strip that are looked at.
pub const CUT_ROWS: usize = 24;
/// Pictures that are drawn and cut by chance before an answer is refused; most are sound at the first.
pub const CUT_STARTS: usize = 40;
/// Steps of a search while a picture is cut: one that takes more is cut anew.
pub const CUT_STEPS: u64 = 60_000;
/// Readings of one arrangement of strips that are spelt out.
pub const CUT_SPELT: usize = 64;
/// Figures on a strip that is folded: with more, the pleats are too narrow to fold by hand.
pub const FOLD_FIGURES: usize = 6;
/// Strips that are drawn by chance before an answer is refused; most are sound at the first.
pub const FOLD_STARTS: usize = 60;
/// Digits on two sheets that are laid on one another: with more, the cells are under a millimetre.
pub const OVERLAY_DIGITS: usize = 6;
/// The same, on sheets of the size of a card.
pub const OVERLAY_CARD: usize = 5;
/// Cells along a side of an overlay that are looked at.
pub const OVERLAY_SIDE: usize = 200;
/// Pairs of sheets that are drawn by chance before an answer is refused; nearly all are sound at the first.
pub const OVERLAY_STARTS: usize = 20;
/// Answers drawn by chance until a mechanic carries one: most carry the first, word puzzles one in a few.
pub const SAMPLE_TRIES: usize = 60;
/// What the chance of samples begins with: any number, so that a sample looks the same every day.
pub const SAMPLE_SEED: u64 = 1;
/// Least and greatest cells along a side of a maze: fewer have no forks, more are smaller than 10 mm on a board.
pub const MAZE_SIDE: (usize, usize) = (5, 18);
/// Mazes that are dug until one has a way for the answer; nearly all have at the first.
pub const MAZE_STARTS: usize = 40;
/// Signs in the dead ends of one maze: more crowd the floor.
pub const MAZE_DECOYS: u8 = 24;
/// Dots of one panel: more stand too near one another for numbers of 9 points.
pub const PANEL_DOTS: usize = 48;
/// Dots that belong to no line, on one panel: more leave no room.
pub const PANEL_STRAYS: u8 = 14;
/// Largest step in which dots are counted: larger ones make numbers of three digits.
pub const COUNT_STEP: u8 = 4;
/// Kinds on the list of a scene: more lines than this do not fit on a card.
pub const SCENE_KINDS: usize = 6;
/// Least and greatest squares along a side of a map: fewer have no ways to choose, more are under 14 mm on a board.
pub const MAP_SIDE: (usize, usize) = (5, 12);
/// Places on one map besides those of the route: more crowd it.
pub const MAP_OTHERS: u8 = 24;
/// Maps that are drawn up until one carries the answer; nearly all do at the first.
pub const MAP_STARTS: usize = 60;
/// Lines of one text whose lines are fixed, the gap after three paragraphs counted as one: more would be smaller than
/// 9 points on the largest sheet.
pub const FIXED_LINES: usize = 40;
/// Characters of one fixed line: a longer one would be smaller than 9 points on the largest sheet, and hard to follow.
pub const FIXED_CHARS: usize = 64;
/// Rows of a list of numbers that lead to words: more do not fit on the card at 9 points.
pub const LEADS: usize = 24;
/// Least and greatest side of a grid under a mask, in cells: smaller ones have no room for windows, larger ones have
/// cells too small to cut windows for.
pub const MASK_SIDE: (u8, u8) = (4, 8);
/// Tries to find windows and fill a grid under a mask; nearly always the first one serves.
pub const MASK_STARTS: usize = 200;
/// Letters or digits on one tag: more are no longer read as one.
pub const TAG_SYMBOLS: usize = 3;
/// Nodes and bends of a drawing of the flow whose order is looked for; a larger one is drawn in the kit's order,
/// because no screen shows it whole and the search would take seconds.
pub const DRAWN_VERTICES: usize = 2_000;
/// Bends of all edges of a drawing of the flow; past them edges run straight.
pub const DRAWN_BENDS: usize = 20_000;
/// Sweeps in which neighbours of a drawing of the flow are swapped; drawings of thirty puzzles settle in five.
pub const DRAWN_SWEEPS: usize = 40;
/// Pages of the host guide that the drawn flow may fill, about; a longer one is no longer taken in at a glance, and the
/// guide says in words where it is to be found.
pub const GUIDE_FLOW_PAGES: f64 = 10.0;
/// Entries of one list in a setup's form: longer ones are better written as text.
pub const FORM_ENTRIES: usize = 60;
/// A number in a setup's form: millimetres and the like; the mechanic says what it can carry.
pub const FORM_NUMBER: f64 = 10_000.0;
/// Least and greatest side of a printed prop in millimetres: below, no scissors follow; above, a strip is longer than a
/// room.
pub const PROP_MM: (f64, f64) = (8.0, 5_000.0);
/// Width and height that a sheet of either paper takes beside head, foot and label, in whole millimetres (A4 is the
/// narrower, Letter the shorter): printed props are cut and joined by it, so that they are alike on both.
pub const PROP_PAGE: (f64, f64) = (197.0, 250.0);
/// Least and greatest width of a tab that is glued, in millimetres: narrower ones do not hold.
pub const PROP_TAB: (f64, f64) = (6.0, 40.0);
/// Least and greatest diameter of a hole, in millimetres: a needle's, and the largest that leaves a tag its edge.
pub const PROP_HOLE: (f64, f64) = (2.0, 20.0);
/// Flags of one banner and letters of one strip: more do not hang in a room.
pub const PROP_LETTERS: usize = 60;
/// Texts of one printed prop, each on a piece of its own.
pub const PROP_TEXTS: usize = 60;
/// Copies of one printed prop: a hall full of guests.
pub const PROP_COPIES: u16 = 200;
/// Pages of which one printed prop is joined.
pub const PROP_PARTS: usize = 24;
/// Simulated evenings of one rehearsal: with them a chance of 60 % is known to 1.5 points and one of 98 % to 0.5 (standard
/// errors), and a kit of eight puzzles takes some hundredths of a second.
pub const REHEARSED_RUNS: usize = 1_000;
/// Evenings times puzzles of one rehearsal that is made after every edit: larger kits get fewer evenings, so that two
/// thousand puzzles are rehearsed within a fraction of a second.
pub const REHEARSED_PUZZLES: usize = 25_000;
/// Least evenings of one rehearsal, however large the kit: fewer say nothing of one group in ten.
pub const REHEARSED_LEAST: usize = 40;
/// Most evenings that may be asked for: the chance is then known to a fifth of a point.
pub const REHEARSED_MOST: usize = 100_000;
/// Most evenings times puzzles that may be asked for: what is kept of them takes some hundred megabytes.
pub const REHEARSED_ASKED: usize = 4_000_000;
/// Guests of one simulated group: more than this do not stand around one table, and the rest would look on.
pub const REHEARSED_GUESTS: u8 = 24;
/// Bars of the drawn spread of evenings: more are narrower than the chance error lets them tell.
pub const REHEARSED_BARS: usize = 24;
/// Plays written down for one kit: hundreds of evenings leave nothing to learn from one more.
pub const PLAYS: usize = 500;
/// Minutes of one play, or of one puzzle in it: a whole day.
pub const PLAY_MINUTES: f64 = 1_440.0;
