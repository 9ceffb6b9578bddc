//! Imports go down only, and what is named in one place only is named there only.

use std::path::{Path, PathBuf};

/// The layer of every module of the library (the table of the crate's design). A module may import lower layers,
/// itself, and those of its own layer that `BESIDE` names.
const LAYERS: &[(&str, u8)] = &[
    ("units", 0),
    ("limits", 0),
    ("ids", 0),
    ("diag", 1),
    ("files", 1),
    ("kit", 2),
    ("theme", 2),
    ("script", 3),
    ("readings", 3),
    ("face", 3),
    ("mechanics", 4),
    ("flow", 4),
    ("prep", 4),
    ("codes", 4),
    ("redress", 4),
    ("sheet", 5),
    ("party", 5),
    ("rehearse", 5),
    ("print", 6),
    ("propose", 6),
    ("checks", 7),
    ("bundle", 7),
    ("cli", 8),
    ("app", 8),
];

/// Imports within a layer, and why each is no ring: `files` says what went wrong; `theme` uses the words of `kit`; `face` is made of `script`'s
/// rich text; `bundle` writes what `checks` found; `redress` asks what the rules of `mechanics` say.
const BESIDE: &[(&str, &str)] =
    &[("files", "diag"), ("theme", "kit"), ("face", "script"), ("bundle", "checks"), ("redress", "mechanics")];

/// What `sheet` and `print` may import of layers 2 to 5: faces, the text on them, colours and lettering; never the
/// model.
const NARROW: &[(&str, &[&str])] = &[("sheet", &["face"]), ("print", &["face", "sheet", "script", "theme"])];

/// Names that only one folder may write: the name, and the folders.
const ONLY: &[(&str, &[&str])] = &[
    ("typst", &["print"]),
    ("typst_pdf", &["print"]),
    ("typst_svg", &["print"]),
    ("typst_layout", &["print"]),
    ("comemo", &["print"]),
    ("egui", &["app"]),
    ("eframe", &["app"]),
    ("rfd", &["app"]),
    ("clap", &["cli"]),
    ("rust_sugiyama", &["flow"]),
    ("notify", &["files"]),
    ("rust_stemmers", &["script"]),
    ("std::fs", &["files"]),
];

#[expect(clippy::disallowed_methods, reason = "the test reads the sources, which the program never does")]
fn sources() -> Vec<(PathBuf, String)> {
    let mut found = Vec::new();
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut open = vec![root];
    while let Some(folder) = open.pop() {
        for entry in std::fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                open.push(path);
            } else if path.extension().is_some_and(|ext| ext == "rs") {
                let text = std::fs::read_to_string(&path).unwrap();
                found.push((path, text));
            }
        }
    }
    found.sort();
    assert!(found.len() > 50, "the sources are not where they were");
    found
}

/// The top-level module of a file: the folder or file below `src`.
fn module(path: &Path) -> String {
    let src = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let first = path.strip_prefix(src).unwrap().components().next().unwrap();
    first.as_os_str().to_string_lossy().trim_end_matches(".rs").to_owned()
}

/// Code without comments and strings' contents, as far as imports go.
fn code(text: &str) -> String {
    let lines = text.lines().map(|line| line.split("//").next().unwrap_or_default());
    lines.collect::<Vec<_>>().join("\n")
}

/// The modules that a file names after `crate::`, also inside `crate::{a, b::c}`.
fn imports(code: &str) -> Vec<String> {
    let mut found = Vec::new();
    for (at, _) in code.match_indices("crate::") {
        let before = code[..at].chars().next_back();
        if before.is_some_and(|c| c.is_alphanumeric() || c == '_' || c == '$') {
            continue;
        }
        let rest = &code[at + "crate::".len()..];
        match rest.strip_prefix('{') {
            Some(group) => found.extend(members(group)),
            None => found.push(name(rest)),
        }
    }
    found.retain(|name| !name.is_empty());
    found
}

fn name(text: &str) -> String {
    text.chars().take_while(|c| c.is_ascii_lowercase() || *c == '_').collect()
}

/// The first names of a group's members, at its own depth.
fn members(group: &str) -> Vec<String> {
    let (mut depth, mut start, mut found) = (0, true, Vec::new());
    for (at, c) in group.char_indices() {
        match c {
            '{' => depth += 1,
            '}' if depth == 0 => break,
            '}' => depth -= 1,
            ',' if depth == 0 => start = true,
            c if start && !c.is_whitespace() => {
                found.push(name(&group[at..]));
                start = false;
            }
            _ => {}
        }
    }
    found
}

fn layer(module: &str) -> Option<u8> {
    LAYERS.iter().find(|(name, _)| *name == module).map(|(_, layer)| *layer)
}

#[test]
fn imports_go_down_only() {
    let mut faults = Vec::new();
    for (path, text) in sources() {
        let from = module(&path);
        if matches!(from.as_str(), "lib" | "main" | "build") {
            continue;
        }
        let own = layer(&from).unwrap_or_else(|| panic!("{from} has no layer: put it into the table"));
        for to in imports(&code(&text)) {
            let Some(other) = layer(&to) else {
                // A macro or an item of the crate root; the library keeps none but modules there.
                faults.push(format!("{}: `crate::{to}` is no module", path.display()));
                continue;
            };
            let beside = BESIDE.contains(&(from.as_str(), to.as_str()));
            if from != to && other >= own && !beside {
                faults.push(format!("{}: {from} (layer {own}) imports {to} (layer {other})", path.display()));
            }
            let narrow = NARROW.iter().find(|(name, _)| *name == from);
            if let Some((_, allowed)) = narrow
                && from != to
                && other >= 2
                && !allowed.contains(&to.as_str())
            {
                faults.push(format!("{}: {from} imports {to}", path.display()));
            }
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn the_table_names_what_there_is() {
    let mut modules: Vec<String> = sources().iter().map(|(path, _)| module(path)).collect();
    modules.dedup();
    for (name, _) in LAYERS {
        assert!(modules.iter().any(|module| module == name), "there is no module {name}");
    }
}

#[test]
fn engines_are_named_in_one_place() {
    let mut faults = Vec::new();
    for (path, text) in sources() {
        let from = module(&path);
        // The program itself hands its arguments to the command line.
        if matches!(from.as_str(), "build" | "main") {
            continue;
        }
        let code = code(&text);
        for (name, folders) in ONLY {
            let named = code.match_indices(&format!("{name}::")).any(|(at, _)| {
                let before = code[..at].chars().next_back();
                !before.is_some_and(|c| c.is_alphanumeric() || c == '_' || c == ':')
            });
            if named && !folders.contains(&from.as_str()) {
                faults.push(format!("{}: names {name}", path.display()));
            }
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn the_reader_of_imports_reads() {
    assert_eq!(imports("use crate::kit::Kit; use crate::{diag::{A, b}, ids}; $crate::x::y"), ["kit", "diag", "ids"]);
}
