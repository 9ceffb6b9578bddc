use super::{Carrier, Direction, JAR, LABEL, View};
use crate::kit::HintLadder;
use crate::kit::material::{Need, PrepStep};
use crate::mechanics::Dressing;
use crate::script::capital;

pub(super) fn jar_name<'a>(view: &View, cx: &Dressing<'a>) -> &'a str {
    cx.name(JAR, carrier_word(view))
}

const fn carrier_word(view: &View) -> &'static str {
    match view.carrier {
        Carrier::Jar => "the jar",
        Carrier::Tile => "the tile",
    }
}

pub(super) fn label_name<'a>(view: &View, cx: &Dressing<'a>) -> &'a str {
    match view.carrier {
        Carrier::Jar => cx.name(LABEL, "the lid"),
        Carrier::Tile => cx.name(LABEL, "the label"),
    }
}

/// The order rule, as guests read it on the lid or the label.
pub(super) fn rule(view: &View) -> &'static str {
    match (view.carrier, view.start, view.direction) {
        (Carrier::Tile, true, _) => "Read what stays row by row, with the arrow up.",
        (Carrier::Tile, false, _) => "Read what stays row by row.",
        (Carrier::Jar, true, Direction::Rightwards) => "Read what stays: from the thick line to the right.",
        (Carrier::Jar, true, Direction::Leftwards) => "Read what stays: from the thick line to the left.",
        (Carrier::Jar, true, Direction::Unstated) => "Read what stays, from the thick line.",
        (Carrier::Jar, false, Direction::Rightwards) => "Read what stays, to the right.",
        (Carrier::Jar, false, Direction::Leftwards) => "Read what stays, to the left.",
        (Carrier::Jar, false, Direction::Unstated) => "Read what stays.",
    }
}

/// Symbols that stay, from left to right and from the top.
fn staying(view: &View) -> String {
    let mut stay: Vec<_> = view.symbols.iter().filter(|symbol| symbol.lasting).collect();
    stay.sort_by(|a, b| a.row.cmp(&b.row).then(a.at.total_cmp(&b.at)));
    let words: Vec<String> = stay.iter().map(|symbol| symbol.text.to_string()).collect();
    words.join(", ")
}

/// Where the disc or label goes, by the title that it bears.
fn label_goes(view: &View, cx: &Dressing<'_>) -> String {
    let title = view.label_title.trim();
    let title = if title.is_empty() { String::new() } else { format!(" “{title}”") };
    match view.carrier {
        Carrier::Jar => format!("Tape the lid disc{title} onto the lid of {}.", jar_name(view, cx)),
        Carrier::Tile => format!("Lay the label{title} ready, to go beside {}.", jar_name(view, cx)),
    }
}

/// How the printed strip goes round: `parts` pieces, each of which has a lap beyond its dashed line.
fn wrap(jar: &str, parts: usize) -> String {
    let join = match parts {
        0 | 1 => String::new(),
        _ => "Glue the pieces of the printed strip into one, letters upright, left to right as their captions number \
              them: each goes on top of the lap of the one before, up to its dashed line. "
            .to_owned(),
    };
    let strip = if parts > 1 { "it" } else { "the printed strip" };
    format!(
        "{join}Wrap {strip} round the outside of {jar}, the letters' tops towards the lid. The left end, where the strip \
         begins, lies on top; the lap of the right end goes beneath it, up to the dashed line. Cover it all smoothly with \
         clear tape: the wipe-off ink needs that skin."
    )
}

/// Which jar to have, for the shopping list: the strip goes round it, the disc onto its lid.
pub(super) fn kinds(view: &View) -> Vec<(&'static str, String)> {
    match view.carrier {
        Carrier::Jar => {
            let (around, lid) = (view.around_mm, view.lid_mm);
            vec![(
                "jar",
                format!(
                    "for the writing one {around:.0} mm round its outside, with a lid of at least {lid:.0} mm across"
                ),
            )]
        }
        Carrier::Tile => Vec::new(),
    }
}

pub(super) fn prep(view: &View, cx: &Dressing<'_>) -> Vec<PrepStep> {
    let need = |material, amount| Need { material, amount };
    let jar = jar_name(view, cx);
    let carrier = match view.carrier {
        Carrier::Jar => need("jar", 1.0),
        Carrier::Tile if view.printed => need("sheet-protector", 1.0),
        Carrier::Tile => need("tile", 1.0),
    };
    let cut = PrepStep {
        key: "cut",
        what: format!(
            "{} Have the host’s template beside you: it shows every symbol at its place; guests never see it.",
            label_goes(view, cx)
        ),
        needs: vec![need("card-paper", 1.0), need("plain-paper", 1.0), need("scissors", 1.0), need("tape", 1.0)],
        hands: 1.0,
        wait: 0.0,
        after: Vec::new(),
    };
    let lasting = if view.printed {
        let how = match view.carrier {
            Carrier::Jar => wrap(jar, super::print::parts(view)),
            Carrier::Tile => "Put the printed sheet into the sheet protector.".to_owned(),
        };
        let needs = match view.carrier {
            Carrier::Jar if super::print::parts(view) > 1 => vec![carrier, need("glue", 1.0)],
            _ => vec![carrier],
        };
        PrepStep { key: "lasting", what: how, needs, hands: 6.0, wait: 0.0, after: vec!["cut"] }
    } else {
        PrepStep {
            key: "lasting",
            what: format!(
                "With a black permanent marker write on the outside of {jar}, where the template shows them: {}.{} Let it \
                 dry well.",
                staying(view),
                match (view.carrier, view.start) {
                    (Carrier::Jar, true) => " Tape the start mark where the template begins.",
                    _ => "",
                }
            ),
            needs: vec![carrier, need("permanent-marker", 1.0)],
            hands: 5.0,
            wait: 60.0,
            after: vec!["cut"],
        }
    };
    let decoys = PrepStep {
        key: "decoys",
        what: format!(
            "With a black wipe-off marker write on {jar} what stands in brackets on the template, without the brackets, \
             at its place, upright, as large and as thick as what stays: nobody may tell the two inks apart. Wipe one to \
             try: it must go without a trace, and the lasting ones must stay."
        ),
        needs: vec![need("wipe-off-marker", 1.0), need("cloth", 1.0)],
        hands: 6.0,
        wait: 5.0,
        after: vec!["lasting"],
    };
    vec![cut, lasting, decoys]
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    let from = match view.carrier {
        Carrier::Jar => "named here from the start of the template to the right",
        Carrier::Tile => "row by row",
    };
    format!(
        "When {} is wiped, most of what is written on it goes. {} stay, {from}. {} says: “{}”",
        jar_name(view, cx),
        staying(view),
        capital(label_name(view, cx)),
        rule(view)
    )
}

pub(super) fn reset(view: &View, cx: &Dressing<'_>) -> String {
    format!(
        "Write the wipe-off symbols on {} again from the template, and lay a clean cloth ready.",
        jar_name(view, cx)
    )
}

pub(super) fn hints(view: &View, cx: &Dressing<'_>) -> HintLadder {
    let (jar, label) = (jar_name(view, cx), label_name(view, cx));
    HintLadder {
        nudge: format!("Look at {jar}. Somebody wrote far too much on it."),
        method: format!("Not all ink is alike. Wipe {jar} with a dry cloth, and see what stays."),
        giveaway: format!(
            "Wipe the whole of {jar} until nothing more comes off. Then do as {label} says. {} Set what you have read \
             on {}.",
            rule(view),
            cx.lock_name
        ),
    }
}
