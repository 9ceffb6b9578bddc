//! The usual cautions, each with its source and what all of them defer to.

/// A caution.
#[derive(Clone, Copy, Debug)]
pub(super) struct Caution {
    /// What can hurt and what to do about it.
    pub text: &'static str,
    /// Where that is written.
    pub source: &'static str,
}

/// What every caution defers to; said once, wherever cautions are told.
pub const DEFERS: &str = "Local codes and rules, licensed practice, and the maker's label on every product come before \
    anything that is said here.";

/// A caution with its source.
macro_rules! caution {
    ($text:literal, $source:expr) => {
        Caution { text: $text, source: $source }
    };
}

const COMMON: &str = "common practice, no source";

pub(super) const SMALL_PARTS: Caution = caution!(
    "Small parts can choke: keep them from children under three and from anyone who still puts things into the \
     mouth; count them out and in.",
    "16 CFR 1501.4 (small parts for under threes); 16 CFR 1500.19 (cautions for small parts and balls from three \
     up)"
);
pub(super) const INK: Caution = caution!(
    "Write on outsides that touch neither food nor lips: \"non-toxic\" does not mean \"edible\". Air the room \
     while ink dries.",
    "FDA advice to bakers on decorations that are not edible; that pens need airing: common practice, no source"
);
pub(super) const FILM: Caution = caution!(
    "A laser printer is hot inside: film that is not made for it can melt and harm the printer. Feed the sheets as \
     its maker says, one at a time, and let them cool.",
    COMMON
);
pub(super) const GLASS: Caution = caution!(
    "Glass breaks: with children take a clear plastic jar; otherwise let an adult carry it, on a table, never \
     over hard floors.",
    COMMON
);
pub(super) const LOCKS: Caution = caution!(
    "Lock the box, never a door, a cupboard or a person. Keep a second key or a way in that the host alone knows; \
     nobody forces a lock.",
    "IBC 2021 section 411 (puzzle rooms: exits that open at once); on second keys and force: common practice, no \
     source"
);
pub(super) const SCISSORS: Caution = caution!("Sharp: with young children an adult cuts.", COMMON);
pub(super) const PIN: Caution = caution!("Sharp, and easily lost: an adult pricks, and counts pins back in.", COMMON);
pub(super) const GLUE: Caution = caution!("Keep glue from eyes and mouth; hot glue is for adults only.", COMMON);
pub(super) const STRING: Caution = caution!("No loops round necks, no lines across a way where people walk.", COMMON);
pub(super) const UV_TORCH: Caution = caution!(
    "Never into eyes, and not for long: UV-A is dim to the eye, so nobody looks away in time. Use low-power UV-A \
     only, never UV-C and never an unmarked lamp; the host keeps it and takes it back. Button and coin cells are \
     dangerous when swallowed: take a torch whose case needs a tool to open, and treat a suspected swallow as an \
     emergency.",
    "IEC 62471-6 (photobiological safety of UV lamp products); EU Safety Gate A12/00987/20; 16 CFR 1263 (button \
     and coin cells)"
);
pub(super) const TILE: Caution = caution!("Edges can be sharp: tape them.", COMMON);
pub(super) const ELASTIC_BANDS: Caution = caution!(
    "Not to be shot, chewed or wound round fingers; latex can bring on allergies, so ask, or take bands without \
     latex. Keep them from children under three.",
    "16 CFR 1501.4 (small parts for under threes); on allergies and shooting: common practice, no source"
);
pub(super) const MAGNETS: Caution = caution!(
    "Two swallowed magnets attract each other through the gut and can kill: no small strong ones, count every \
     magnet out and in, none where anyone under fourteen plays unwatched, and treat a suspected swallow as an \
     emergency. Keep magnets from pacemakers and cards with a stripe.",
    "16 CFR 1262.2 and 1262.3 and EN 71-1 (magnets that fit the small parts cylinder: flux index under 50 kG² mm²); on \
     pacemakers and cards: common practice, no source"
);
pub(super) const MAGNET_WAND: Caution = caution!(
    "The magnet must sit fast, so that it cannot come out: a loose one that is swallowed with another, or with steel, \
     can kill. Use one wand only, let nobody under eight have it unwatched, and take it back. Keep it from pacemakers and \
     cards with a stripe.",
    "16 CFR 1262.2 and 1262.3 and EN 71-1 (magnets); on pacemakers and cards: common practice, no source"
);
pub(super) const BATTERY_LIGHT: Caution = caution!(
    "No flames, and no paper near bulbs. Button and coin cells are dangerous when swallowed: the case must need a \
     tool to open.",
    "16 CFR 1263 (button and coin cells); NFPA home candle fire figures 2015-2019 (why no flames)"
);
