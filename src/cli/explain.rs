use std::collections::BTreeMap;
use std::io::Write;

use super::docs::{TypeDoc, types};
use super::explain_pieces;
use super::explain_words::{self, FILES};
use super::outcome::{CLEAN, Outcome};
use super::wrap::wrap;
use crate::bundle;
use crate::checks::{self, CHECKS};
use crate::diag::{Hinted, Trouble};
use crate::files::{Builtin, Files as _, FontBook, VPath};
use crate::kit::file::nearest;
use crate::kit::material::{MATERIALS, material};
use crate::limits;
use crate::mechanics::sample::{answered, sample};
use crate::mechanics::{self, AnyMechanic, MECHANICS};
use crate::rehearse::PRIOR_PLAYS;
use crate::theme::{self, Palette, usual_size};

/// The sources whose doc comments describe `kit.ron`, from the whole to its parts.
const KIT: &[&str] = &[
    include_str!("../kit/mod.rs"),
    include_str!("../kit/text.rs"),
    include_str!("../kit/place.rs"),
    include_str!("../kit/printed.rs"),
    include_str!("../kit/lock.rs"),
    include_str!("../kit/puzzle.rs"),
    include_str!("../kit/preparing.rs"),
    include_str!("../kit/hints.rs"),
    include_str!("../kit/level.rs"),
    include_str!("../kit/dressed.rs"),
    include_str!("../kit/making.rs"),
    include_str!("../kit/revision.rs"),
];

/// The source whose doc comments describe `plays.ron`.
const PLAYS: &[&str] = &[include_str!("../kit/plays.rs")];

/// A file of plays, as an example.
const PLAYED: &str = "(\n    format: 1,\n    plays: [\n        (\n            day: \"2027-01-31\",\n            guests: 4,\n            ages: (15, 52),\n            level: standard,\n            minutes: 48.0,\n            puzzles: {\n                \"cuff\": (minutes: 6.5),\n                \"log\": (minutes: 12.0, hints: 2),\n            },\n            note: \"All four stood around the log.\",\n        ),\n    ],\n)";

/// The sources whose doc comments describe `theme.ron`.
const THEME: &[&str] = &[include_str!("../theme/mod.rs")];

/// The widest line of running text.
const WIDTH: usize = 96;

/// Explains a mechanic, a check, a material, or one of the file formats; with no name, lists what can be explained.
pub(super) fn run(name: Option<&str>, out: &mut dyn Write) -> Outcome {
    let Some(name) = name else { return explain_words::index(out) };
    match name {
        "materials" | "material" => explain_words::materials(out),
        "kit" => kit(out),
        "plays" => plays(out),
        "theme" => theme_file(out),
        "frames" => super::explain_frames::write(out),
        "check-json" => super::check_json_doc::write(out),
        _ => {
            if let Ok(found) = mechanics::find(name) {
                return mechanic(found, out);
            }
            if let Ok(check) = checks::find(name) {
                let info = check.info();
                writeln!(out, "{} ({})\n{}\n", info.name, info.severity.word(), info.flags)?;
                writeln!(out, "{}", info.help().trim())?;
                return Ok(CLEAN);
            }
            if let Some(found) = material(name) {
                return explain_words::material(found, out);
            }
            if let Some(id) = theme::builtin_ids().into_iter().find(|id| id.as_str() == name) {
                writeln!(out, "{id}, a theme (`inklatch themes {id}` also says what is wrong with it)\n")?;
                super::theme_list::write(&theme::load_builtin(&id)?.theme, out)?;
                return Ok(CLEAN);
            }
            Err(unknown(name).into())
        }
    }
}

fn unknown(name: &str) -> Trouble {
    let ids = theme::builtin_ids();
    let known: Vec<&str> = FILES
        .into_iter()
        .map(|(name, _)| name)
        .chain(MECHANICS.iter().map(|mechanic| mechanic.meta().id))
        .chain(CHECKS.iter().map(|check| check.info().name))
        .chain(MATERIALS.iter().map(|material| material.id))
        .chain(ids.iter().map(crate::ids::ThemeId::as_str))
        .collect();
    let mut trouble = Trouble::new(format!("there is nothing called `{name}` to explain"));
    if let Some(near) = nearest(name, &known) {
        trouble = trouble.hint(format!("did you mean `{near}`?"));
    }
    trouble.hint("`inklatch explain` lists what can be explained")
}

fn mechanic(found: &dyn AnyMechanic, out: &mut dyn Write) -> Outcome {
    let meta = found.meta();
    writeln!(out, "{} ({})\n", meta.name, meta.id)?;
    writeln!(out, "guests   {}", meta.guests)?;
    writeln!(out, "order    {}", meta.order)?;
    let id = theme::builtin_ids().into_iter().next().ok_or_else(|| Trouble::new("there is no theme"))?;
    let theme = theme::load_builtin(&id)?;
    writeln!(
        out,
        "answer   {} (tried out with its sample)",
        super::mechanics::locks_in_words(&answered(found, &theme)?)
    )?;
    writeln!(out, "prints   {}", meta.prints)?;
    writeln!(out, "host     {}", meta.host)?;
    let (least, most) = meta.minutes;
    writeln!(out, "minutes  {least} to {most} (estimate), from {} years", meta.least_age)?;
    if !meta.tools.is_empty() {
        writeln!(out, "tools    {}", meta.tools.join(", "))?;
    }
    writeln!(out, "\nParts that must lie somewhere:")?;
    for part in meta.parts {
        let made = if part.printed { "printed" } else { "made by the host" };
        let optional = if part.optional { ", not in every setup" } else { "" };
        writeln!(out, "  {:<12} {} ({made}{optional})", part.key, part.name)?;
    }
    let palette = Palette::new(&theme.theme.palette, &BTreeMap::new())?;
    for (one, other) in sample(found, &theme, &palette)?.view.apart() {
        writeln!(out, "  `{one}` and `{other}` lie apart: side by side they are no search (`check` warns of it)")?;
    }
    explain_pieces::write(found, out)?;
    writeln!(out, "\n{}", meta.help.trim())?;
    writeln!(out, "\nThe setup as it is when nothing is chosen:\n\n{}", found.default_setup()?.trim())?;
    Ok(CLEAN)
}

fn kit(out: &mut dyn Write) -> Outcome {
    writeln!(out, "kit.ron: what an author writes in RON (Rusty Object Notation). Pictures lie beside it in art/.")?;
    writeln!(out, "A line with (*) may be left out.")?;
    write_types(KIT, out)?;
    writeln!(out, "\nA whole kit, as `inklatch new` makes it:\n")?;
    writeln!(out, "{}", bundle::scaffold("A Fresh Kit")?.trim_end())?;
    Ok(CLEAN)
}

fn plays(out: &mut dyn Write) -> Outcome {
    writeln!(
        out,
        "plays.ron: real plays of a kit, in RON, beside its kit.ron. It is never part of a bundle. A line with (*) may"
    )?;
    writeln!(
        out,
        "be left out. `inklatch rehearse` and the window (Prove, Rehearsal) correct the estimates by it: an estimate"
    )?;
    writeln!(
        out,
        "counts as much as {PRIOR_PLAYS:.0} plays, and minutes with hints count as what they would have been without."
    )?;
    writeln!(
        out,
        "A play of which only the whole minutes are known is worth writing down as well: the rehearsal holds them"
    )?;
    writeln!(out, "against its simulated evenings and splits the difference over the puzzles that nobody timed.")?;
    write_types(PLAYS, out)?;
    writeln!(out, "\nA whole file:\n\n{PLAYED}")?;
    Ok(CLEAN)
}

/// The families that the program carries for all themes.
fn bundled() -> Hinted<String> {
    Ok(FontBook::bundled()?.families().join(", "))
}

/// The usual size of a frame, before what it is for.
fn sized(frame: &str) -> String {
    usual_size(frame).map_or_else(String::new, |size| format!("{} × {}, ", size.w.get(), size.h.get()))
}

/// An ornament with its usual size.
fn ornament(name: &str) -> String {
    usual_size(name).map_or_else(String::new, |size| format!("{name} {} × {}; ", size.w.get(), size.h.get()))
}

fn theme_file(out: &mut dyn Write) -> Outcome {
    writeln!(out, "theme.ron: the look and the words of one season, in RON. Pictures are SVG files beside it;")?;
    writeln!(out, "its own fonts, if any, lie in fonts/ with their licence. A line with (*) may be left out.")?;
    write_types(THEME, out)?;
    writeln!(out, "\nFrames that every theme draws, with the slots (rectangles with the id `slot-…`) of each:")?;
    for frame in theme::FRAMES {
        let none = if frame.slots.is_empty() { "none".to_owned() } else { frame.slots.join(", ") };
        let slots = match frame.may {
            ([], _) => none,
            (may, why) => format!("{none}; may have {}: {why}", may.join(", ")),
        };
        writeln!(out, "  {:<12} {}{}; slots: {slots}", frame.name, sized(frame.name), frame.about)?;
    }
    writeln!(out, "\nFrames that a theme may draw; where it has none, a border with its corners stands in:")?;
    for frame in theme::MORE_FRAMES {
        let size = sized(frame.name);
        writeln!(out, "  {:<12} {size}{}; slots: {}", frame.name, frame.about, frame.slots.join(", "))?;
    }
    writeln!(
        out,
        "\nOrnaments: {}{}{}",
        ornament("divider"),
        ornament("corner"),
        ornament("seal").trim_end_matches("; ")
    )?;
    writeln!(
        out,
        "Sizes are those of the built-in themes, width and height in millimetres. Keep to them: text is not set"
    )?;
    writeln!(
        out,
        "smaller to suit a smaller card. `inklatch explain frames` says where each slot stands, in millimetres, and"
    )?;
    writeln!(out, "what is printed on each frame.")?;
    writeln!(out, "\nColour roles (in the art: class `f-ROLE` fills, `s-ROLE` strokes):")?;
    for role in theme::ROLES {
        writeln!(out, "  {:<12} {}", role.name, role.about)?;
    }
    writeln!(out, "\nLettering roles:")?;
    for (role, about) in theme::LETTERING {
        writeln!(out, "  {role:<12} {about}")?;
    }
    writeln!(
        out,
        "\nWords (a WordForms) have `one`, and where it is needed `many` (\"falling leaves\") and `article` (\"an\" hour)."
    )?;
    writeln!(out, "The built-in themes fill: {}", theme::usual().words.iter().cloned().collect::<Vec<_>>().join(", "))?;
    writeln!(out, "Fonts for every theme: {}. Any other lies in the theme's own fonts/.", bundled()?)?;
    if let Some(id) = theme::builtin_ids().first() {
        let path = VPath::new("themes")?.join(id.as_str())?.join("theme.ron")?;
        writeln!(out, "\nA whole theme file, the built-in `{id}`:\n")?;
        writeln!(out, "{}", Builtin::new().read_text(&path, limits::RON_BYTES)?.trim_end())?;
    }
    Ok(CLEAN)
}

fn write_types(sources: &[&str], out: &mut dyn Write) -> std::io::Result<()> {
    let found: Vec<TypeDoc> = sources.iter().flat_map(|source| types(source)).collect();
    for item in &found {
        writeln!(out, "\n{}", item.name)?;
        for line in wrap(&plain(&item.doc), WIDTH - 2) {
            writeln!(out, "  {line}")?;
        }
        for entry in &item.entries {
            let mark = if entry.optional { " (*)" } else { "" };
            writeln!(out, "    {}{mark}", entry.head)?;
            for line in wrap(&plain(&entry.doc), WIDTH - 8) {
                writeln!(out, "        {line}")?;
            }
        }
    }
    explain_words::values(&found, out)
}

/// Doc text without the marks of links between items of code.
fn plain(doc: &str) -> String {
    doc.replace("[`", "`").replace("`]", "`")
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Every type that a file's description names is described in it.
    #[test]
    fn every_type_is_described() {
        for (file, sources) in [("kit", KIT), ("plays", PLAYS), ("theme", THEME)] {
            let mut found: Vec<TypeDoc> = sources.iter().flat_map(|source| types(source)).collect();
            if file == "theme" {
                // Told in words: a theme's words are those of a kit.
                found.extend(types(include_str!("../kit/text.rs")).into_iter().filter(|item| item.name == "WordForms"));
            }
            assert!(found.iter().any(|item| !item.entries.is_empty()), "{file}");
            assert_eq!(explain_words::undescribed(&found), Vec::<String>::new(), "{file}");
        }
    }
}
