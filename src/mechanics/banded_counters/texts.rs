use super::{Band, Counter, JAR, ORDER_CARD, View};
use crate::kit::HintLadder;
use crate::kit::material::{Need, PrepStep};
use crate::mechanics::Dressing;
use crate::mechanics::words::listed;
use crate::readings::tokens::turns;
use crate::script::capital;

pub(super) fn jar_name<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(JAR, "the jar")
}

pub(super) fn card_name<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(ORDER_CARD, "the order card")
}

fn counters_name<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name("counter", "the counters")
}

/// The order rule, as guests read it on the card.
pub(super) fn rule(cx: &Dressing<'_>) -> String {
    format!("Find {} with a number. Read them in the order of this list, from the top.", counters_name(cx))
}

/// " “Spare cogs”": the title by which a host with two jars knows the disc.
fn lid_title(view: &View) -> String {
    let title = view.lid_title.trim();
    if title.is_empty() { String::new() } else { format!(" “{title}”") }
}

/// "white, marked with the sign \"cross\"".
fn band_words(band: &Band) -> String {
    match band.pattern {
        Some(pattern) => format!("{}, with {}", band.name, pattern.drawn()),
        None => band.name.clone(),
    }
}

fn numbered(view: &View) -> impl Iterator<Item = &Counter> {
    view.counters.iter().filter(|counter| !counter.text.is_empty())
}

/// How many counters wear each band, by its place in the list of bands.
fn worn(view: &View, band: usize) -> u32 {
    view.counters.iter().filter(|counter| counter.band == Some(band)).map(|counter| u32::from(counter.count)).sum()
}

/// The bands with their counts, in a settled order, so that the texts tell nothing that the card does not.
fn by_name(view: &View, words: impl Fn(&Band) -> String) -> Vec<String> {
    let mut names: Vec<(String, u32)> =
        view.bands.iter().enumerate().map(|(at, band)| (words(band), worn(view, at))).collect();
    names.sort();
    names.into_iter().map(|(name, count)| format!("{count} {name}")).collect()
}

/// Which bands to have, for the shopping list.
pub(super) fn kinds(view: &View) -> Vec<(&'static str, String)> {
    let jar = (
        "jar",
        format!(
            "for the counters one about 240 mm round its outside, with a lid of at least {:.0} mm across",
            view.lid_mm
        ),
    );
    if view.discs {
        return vec![jar];
    }
    vec![jar, ("elastic-bands", listed(&by_name(view, |band| band.name.clone())))]
}

pub(super) fn prep(view: &View, cx: &Dressing<'_>) -> Vec<PrepStep> {
    let need = |material, amount| Need { material, amount };
    let total: f64 = view.counters.iter().map(|counter| f64::from(counter.count)).sum();
    let digits: Vec<String> = numbered(view)
        .map(|counter| {
            let band = counter.band.and_then(|band| view.bands.get(band));
            let band = band.map_or_else(|| "no band".into(), |band| format!("the {} band", band.name));
            let line = if view.baseline && turns(&counter.text) { " with a line beneath" } else { "" };
            format!("{}{line} on one with {band}", counter.text)
        })
        .collect();
    let mut steps = vec![PrepStep {
        key: "cut",
        what: format!("Tape the lid disc{} onto the lid of {}.", lid_title(view), jar_name(cx)),
        needs: vec![need("card-paper", 1.0), need("scissors", 1.0), need("tape", 1.0), need("jar", 1.0)],
        hands: 1.0,
        wait: 0.0,
        after: Vec::new(),
    }];
    if view.discs {
        steps.push(PrepStep {
            key: "discs",
            what: "Count the printed counters; the digits are on them already.".into(),
            needs: vec![need("printed-counters", 1.0), need("card-paper", (total / DISCS_A_SHEET).ceil())],
            hands: total * 0.5,
            wait: 0.0,
            after: Vec::new(),
        });
    } else {
        steps.push(PrepStep {
            key: "band",
            what: format!(
                "Put a band on each of {total} counters: {}.{}",
                listed(&by_name(view, band_words)),
                if view.bands.iter().any(|band| band.pattern.is_some()) {
                    " Draw the sign on every counter beside its band, also on those that get no digit."
                } else {
                    ""
                }
            ),
            needs: vec![need("wooden-counters", total), need("elastic-bands", total), need("permanent-marker", 1.0)],
            hands: (total * 0.4).ceil(),
            wait: 0.0,
            after: Vec::new(),
        });
        steps.push(PrepStep {
            key: "digits",
            what: format!("Write the digits: {}. Let the ink dry.", listed(&digits)),
            needs: vec![need("permanent-marker", 1.0)],
            hands: 3.0,
            wait: 5.0,
            after: vec!["band"],
        });
    }
    steps.push(PrepStep {
        key: "fill",
        what: format!("Put the counters into {}, mix them, and count what went in.", jar_name(cx)),
        needs: Vec::new(),
        hands: 3.0,
        wait: 0.0,
        after: vec!["cut", if view.discs { "discs" } else { "digits" }],
    });
    steps
}

/// Printed counters on a sheet, with gaps to cut in (30 mm squares on the area that Letter and A4 share).
const DISCS_A_SHEET: f64 = 48.0;

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    let digits: Vec<String> = numbered(view)
        .map(|counter| {
            let band = counter.band.and_then(|band| view.bands.get(band));
            format!("{} on the {} one", counter.text, band.map_or("bare", |band| band.name.as_str()))
        })
        .collect();
    let order = view.card.as_ref().map_or_else(
        || "Nothing says in which order they are read.".to_owned(),
        |card| {
            let names: Vec<String> =
                card.iter().filter_map(|band| view.bands.get(*band)).map(|band| band.name.clone()).collect();
            format!("{} names the bands in order: {}.", capital(card_name(cx)), names.join(", "))
        },
    );
    format!("Among {} in {} a few carry a digit: {}. {order}", counters_name(cx), jar_name(cx), listed(&digits))
}

pub(super) fn reset(cx: &Dressing<'_>) -> String {
    format!(
        "Put every counter back into {}, count them, mix them, and lay {} in its place.",
        jar_name(cx),
        card_name(cx)
    )
}

pub(super) fn hints(view: &View, cx: &Dressing<'_>) -> HintLadder {
    let (jar, card, counters) = (jar_name(cx), card_name(cx), counters_name(cx));
    let sign = if view.bands.iter().any(|band| band.pattern.is_some()) { " or by its sign" } else { "" };
    HintLadder {
        nudge: format!("Not all of {counters} in {jar} are alike. Pour them out and look at each."),
        method: match view.card {
            Some(_) => format!("A few of {counters} carry a digit. {} tells which band comes when.", capital(card)),
            None => format!("A few of {counters} carry a digit. Lay those aside."),
        },
        giveaway: format!(
            "Lay out those of {counters} that carry a digit. {}Read the digits in that order and set them on {}.",
            match view.card {
                Some(_) => format!(
                    "Find the band that {card} names first, by its colour{sign}, lay that one first, and go down the \
                     list. "
                ),
                None => String::new(),
            },
            cx.lock_name
        ),
    }
}
