//! `inklatch explain` with no name, `explain materials`, and how values are written in the files.

use std::io::Write;

use super::docs::TypeDoc;
use super::outcome::{CLEAN, Outcome};
use super::wrap::wrap;
use crate::checks::CHECKS;
use crate::diag::Severity;
use crate::kit::material::{DEFERS, MATERIALS, Material};
use crate::mechanics::MECHANICS;
use crate::theme;

/// The widest line of running text.
const WIDTH: usize = 96;

/// What is explained beside mechanics, checks and materials.
pub(super) const FILES: [(&str, &str); 6] = [
    ("kit", "the file kit.ron: all that an author writes"),
    ("theme", "the file theme.ron: look and words of a season"),
    ("frames", "the frames of a theme: sizes, slots, what is printed on each"),
    ("plays", "the file plays.ron: real plays, which correct the estimates"),
    ("materials", "what props are made of: name, unit, cautions"),
    ("check-json", "the output of `inklatch check --json`"),
];

/// How values are written: the words of a type's name, and what to write.
const VALUES: &[(&str, &str)] = &[
    (
        "String",
        "a text in quotation marks: \"the oak chest\"; a long one, or one with quotation marks in it, between r#\" and \"#",
    ),
    ("u8", "a whole number from 0 to 255: 4"),
    ("u16", "a whole number from 0 to 65,535: 60"),
    ("u32", "a whole number, 0 or more: 180"),
    ("u64", "a whole number, 0 or more: 4107"),
    ("f64", "a number: 12.5"),
    ("bool", "true or false"),
    ("Vec", "a list: [a, b]"),
    ("BTreeMap", "names with their values: { \"card\": Spot(\"shelf\"), \"key\": Box(\"tin\") }"),
    ("Option", "the value itself; or leave the field out"),
    ("VPath", "a path below the folder of the file, with forward slashes: \"art/owl.svg\""),
    ("Day", "a day in quotation marks, as year, month and day: \"2027-01-31\""),
    ("Level", "gentle, standard or stiff, without quotation marks"),
    (
        "…Id",
        "a name, stable and short: lower-case letters, digits and single hyphens, a letter first, up to 64: \"oak-chest\". \
         A SpotId names a spot of the kit, a BoxId a box, and so on",
    ),
];

/// The names of types in what a file's entry is: "title: String" has one.
pub(super) fn named(head: &str) -> Vec<String> {
    // The form of an enum is named before its bracket, a field before its colon.
    let held = match (head.split_once(':'), head.split_once('(')) {
        (Some((field, kind)), _) if !field.contains('(') => kind,
        (_, Some((_, kind))) => kind,
        _ => "",
    };
    let words = held.split(|c: char| !c.is_alphanumeric() && c != '_');
    words.filter(|word| !word.is_empty()).map(str::to_owned).collect()
}

/// Whether a type needs no description of its own, because [`values`] tells it.
fn plain(name: &str) -> Option<&'static str> {
    let known = VALUES.iter().map(|(known, _)| *known);
    known.into_iter().find(|known| *known == name || (*known == "…Id" && name.ends_with("Id")))
}

/// The types that some entries name and that nothing describes; none in a file that is explained wholly.
#[cfg(test)]
pub(super) fn undescribed(types: &[TypeDoc]) -> Vec<String> {
    let entries = types.iter().flat_map(|item| &item.entries);
    let names = entries.flat_map(|entry| named(&entry.head));
    names.filter(|name| plain(name).is_none() && types.iter().all(|item| item.name != *name)).collect()
}

/// How the values are written that the entries of a file name.
pub(super) fn values(types: &[TypeDoc], out: &mut dyn Write) -> std::io::Result<()> {
    let names: Vec<String> = types.iter().flat_map(|item| &item.entries).flat_map(|entry| named(&entry.head)).collect();
    let used: Vec<&str> = names.iter().filter_map(|name| plain(name)).collect();
    writeln!(out, "\nHow values are written\n")?;
    for (name, how) in
        VALUES.iter().filter(|(name, _)| used.contains(name) && types.iter().all(|item| item.name != *name))
    {
        for (at, line) in wrap(how, WIDTH - 14).iter().enumerate() {
            writeln!(out, "    {:<9} {line}", if at == 0 { name } else { "" })?;
        }
    }
    writeln!(out, "    {:<9} both, in round brackets: (4, 8)", "(A, B)")
}

/// Everything that can be explained, by group.
pub(super) fn index(out: &mut dyn Write) -> Outcome {
    writeln!(out, "`inklatch explain NAME` explains one of these.\n\nFiles and lists")?;
    for (name, about) in FILES {
        writeln!(out, "    {name:<12} {about}")?;
    }
    writeln!(out, "\nMechanics (`inklatch mechanics` says of each what guests do and which locks it opens)")?;
    names(MECHANICS.iter().map(|mechanic| mechanic.meta().id), out)?;
    for (severity, what) in
        [(Severity::Blocks, "that may block an export"), (Severity::Warns, "that warn"), (Severity::Notes, "that note")]
    {
        writeln!(out, "\nChecks {what}")?;
        names(
            CHECKS.iter().map(|check| check.info()).filter(|info| info.severity == severity).map(|info| info.name),
            out,
        )?;
    }
    writeln!(out, "\nMaterials")?;
    names(MATERIALS.iter().map(|material| material.id), out)?;
    writeln!(out, "\nThemes (`inklatch themes NAME` lists all that one has)")?;
    let ids = theme::builtin_ids();
    names(ids.iter().map(crate::ids::ThemeId::as_str), out)?;
    Ok(CLEAN)
}

fn names<'a>(names: impl Iterator<Item = &'a str>, out: &mut dyn Write) -> std::io::Result<()> {
    let all: Vec<&str> = names.collect();
    wrap(&all.join(", "), WIDTH - 4).iter().try_for_each(|line| writeln!(out, "    {line}"))
}

/// The list of materials.
pub(super) fn materials(out: &mut dyn Write) -> Outcome {
    writeln!(
        out,
        "Materials: write one as `material` of a prop, and the shopping list and the cautions follow. A thing that is"
    )?;
    writeln!(out, "on no list needs none: leave it out. Mechanics add what they take by themselves.\n")?;
    for material in MATERIALS {
        line(material, out)?;
    }
    writeln!(out)?;
    wrap(DEFERS, WIDTH).iter().try_for_each(|line| writeln!(out, "{line}"))?;
    writeln!(out, "\n`inklatch explain` with one of the names says all of it, and where its caution comes from.")?;
    Ok(CLEAN)
}

fn line(material: &Material, out: &mut dyn Write) -> std::io::Result<()> {
    writeln!(out, "{:<18} {}; counted by the {}", material.id, material.name, material.unit)?;
    if material.caution.is_empty() {
        return Ok(());
    }
    wrap(material.caution, WIDTH - 19).iter().try_for_each(|line| writeln!(out, "{:<18} {line}", ""))
}

/// One material, whole.
pub(super) fn material(material: &Material, out: &mut dyn Write) -> Outcome {
    writeln!(out, "{} ({}), a material\n", material.name, material.id)?;
    writeln!(out, "counted by the {}", material.unit)?;
    let mut tell = |what: &str, text: &str| -> std::io::Result<()> {
        if text.is_empty() {
            return Ok(());
        }
        wrap(&format!("{what}: {text}"), WIDTH).iter().try_for_each(|line| writeln!(out, "{line}"))
    };
    tell("size", material.size)?;
    tell("what will do instead", material.stand_in)?;
    tell("at home", if material.at_home { "most homes have it" } else { "most homes lack it" })?;
    tell("used up", if material.used_up { "yes: each group has it anew" } else { "no: the next group has it too" })?;
    tell("caution", material.caution)?;
    tell("source of the caution", material.source)?;
    tell("before all else", if material.caution.is_empty() { "" } else { DEFERS })?;
    writeln!(out, "handled by guests from {} years", material.least_age)?;
    Ok(CLEAN)
}
