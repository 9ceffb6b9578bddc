//! What a picture may hold: each harmful thing is refused, each useless one left out, and the message names it.

use inklatch::bundle::open;
use inklatch::face::{Frame, clean_svg};
use inklatch::files::{Disk, Files as _, Memory, VPath};
use inklatch::theme::{Palette, load, load_pictures, vet};

fn svg(inside: &str) -> String {
    format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" width=\"10mm\" \
         height=\"10mm\" viewBox=\"0 0 10 10\">{inside}</svg>"
    )
}

fn palette() -> Palette {
    Palette::new(&Default::default(), &Default::default()).unwrap()
}

/// The picture is refused, and the message names what is at fault.
fn refused(text: &str, says: &str) {
    let trouble = vet(text).expect_err(says).to_string();
    assert!(trouble.contains(says), "\"{says}\" is not said: {trouble}");
}

/// Something is left out, said, and not in what is drawn.
fn left_out(inside: &str, says: &str, gone: &str) {
    let text = svg(inside);
    let said: Vec<String> = vet(&text).unwrap().iter().map(ToString::to_string).collect();
    assert!(said.iter().any(|line| line.contains(says)), "\"{says}\" is not said: {said:?}");
    let drawn = clean_svg(&text, &palette()).unwrap();
    assert!(!drawn.contains(gone), "{gone} is drawn: {drawn}");
}

#[test]
fn a_plain_picture_passes_without_a_word() {
    let plain = svg(
        "<!-- a < b --><defs><path id=\"a\" d=\"M0 0h3v3z\"/></defs><use xlink:href=\"#a\"/><g><use href=\"#a\" x=\"4\"/></g>",
    );
    assert!(vet(&plain).unwrap().is_empty());
}

#[test]
fn what_runs_or_reaches_outside_is_left_out() {
    left_out("<script>alert(1)</script><path d=\"M0 0h3v3z\"/>", "<script> is left out", "alert");
    left_out("<path id=\"p\" onclick=\"alert(1)\" d=\"M0 0h3v3z\"/>", "<path id=\"p\">: `onclick`", "alert");
    left_out(
        "<image id=\"i\" href=\"../../etc/passwd\" width=\"5\" height=\"5\"/>",
        "<image id=\"i\">: \"../../etc/passwd\"",
        "passwd",
    );
    left_out(
        "<image href=\"https://example.org/x.png\" width=\"5\" height=\"5\"/>",
        "reads nothing outside",
        "example.org",
    );
    left_out("<use xlink:href=\"other.svg#a\"/><path d=\"M0 0h3v3z\"/>", "<use>: \"other.svg#a\"", "other.svg");
    left_out(
        "<rect width=\"3\" height=\"3\" fill=\"url(file:///etc/x#a)\"/>",
        "\"file:///etc/x#a\" is left out",
        "etc",
    );
    left_out("<style>@import url(x.css);</style><path d=\"M0 0h3v3z\"/>", "<style>", "x.css");
    left_out("<foreignObject><p>hello</p></foreignObject><path d=\"M0 0h3v3z\"/>", "<foreignObject>", "hello");
    left_out("<text id=\"t\">hello</text><path d=\"M0 0h3v3z\"/>", "<text id=\"t\"> is left out", "hello");
}

#[test]
fn what_grows_without_bound_is_refused() {
    refused(
        "<!DOCTYPE svg [<!ENTITY a \"aaaa\"><!ENTITY b \"&a;&a;\">]><svg width=\"1\" height=\"1\">&b;</svg>",
        "ENTITY",
    );
    let deep = svg(&format!("{}{}", "<g>".repeat(5_000), "</g>".repeat(5_000)));
    refused(&deep, "nests more than 100");
    // Ten clones of ten clones of …: a billion paths out of ten lines.
    let mut bomb = String::from("<path id=\"a0\" d=\"M0 0h1v1z\"/>");
    for step in 1..10 {
        let uses = format!("<use href=\"#a{}\"/>", step - 1).repeat(10);
        bomb.push_str(&format!("<g id=\"a{step}\">{uses}</g>"));
    }
    refused(&svg(&bomb), "over and over");
    refused(&svg("<g id=\"a\"><use href=\"#b\"/></g><g id=\"b\"><use href=\"#a\"/></g>"), "refers to itself");
    refused(&svg(&"<path d=\"M0 0\"/>".repeat(250_000)), "cannot be read");
}

/// Base64 (RFC 4648, section 4).
fn base64(bytes: &[u8]) -> String {
    const LETTERS: &[u8] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    bytes
        .chunks(3)
        .flat_map(|chunk| {
            let word = chunk.iter().fold(0_u32, |word, byte| word << 8 | u32::from(*byte)) << (8 * (3 - chunk.len()));
            (0..4).map(move |at| match at <= chunk.len() {
                true => LETTERS[(word >> (18 - 6 * at)) as usize & 63] as char,
                false => '=',
            })
        })
        .collect()
}

/// The first bytes of a PNG that says it is 60,000 pixels wide and high (PNG specification, IHDR).
fn huge_png() -> String {
    let mut bytes = vec![0x89, b'P', b'N', b'G', 0x0D, 0x0A, 0x1A, 0x0A, 0, 0, 0, 13];
    bytes.extend(b"IHDR");
    bytes.extend(60_000_u32.to_be_bytes());
    bytes.extend(60_000_u32.to_be_bytes());
    bytes.extend([8, 6, 0, 0, 0, 0, 0, 0, 0]);
    base64(&bytes)
}

#[test]
fn huge_and_nested_pictures_are_refused() {
    let image = format!("<image id=\"photo\" width=\"5\" height=\"5\" href=\"data:image/png;base64,{}\"/>", huge_png());
    refused(&svg(&image), "<image id=\"photo\">: the picture within has 60000 × 60000 pixels");
    refused(
        &svg("<image href=\"data:image/svg+xml;base64,AAAA\" width=\"5\" height=\"5\"/>"),
        "a drawing within the drawing",
    );
}

/// Half a picture would stop an export long after the kit was found sound.
#[test]
fn half_a_picture_is_refused() {
    // A PNG of 2 by 2 grey pixels (PNG specification), cut off in its data.
    let mut bytes = vec![0x89, b'P', b'N', b'G', 0x0D, 0x0A, 0x1A, 0x0A, 0, 0, 0, 13];
    bytes.extend(b"IHDR");
    bytes.extend([0, 0, 0, 2, 0, 0, 0, 2, 8, 0, 0, 0, 0, 0x57, 0xDD, 0x52, 0xF8, 0, 0, 0, 14]);
    bytes.extend(b"IDAT");
    bytes.extend([0x78, 0x9C]);
    let image = |bytes: &[u8]| {
        svg(&format!("<image width=\"5\" height=\"5\" href=\"data:image/png;base64,{}\"/>", base64(bytes)))
    };
    refused(&image(&bytes), "the picture is not whole");
    refused(&image(&[0xFF, 0xD8, 0xFF, 0xC0, 0, 11, 8, 0, 2, 0, 2, 1, 1, 0x11, 0]), "the picture is not whole");
    let files = Memory::new();
    let path = VPath::new("art/half.png").unwrap();
    files.write(&path, &bytes).unwrap();
    let mut opened = open(None).unwrap();
    opened.kit.notes[0].picture = Some(path.clone());
    load_pictures(&mut opened.theme, &files, &opened.kit);
    assert!(opened.theme.lost_pictures[&path].message.contains("not whole"), "{:?}", opened.theme.lost_pictures);
}

#[test]
fn sizes_below_nothing_are_told() {
    refused("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"-5\" height=\"5\"/>", "width=\"-5\"");
    refused("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"0\" height=\"5\"/>", "width=\"0\"");
    refused("<svg xmlns=\"http://www.w3.org/2000/svg\"/>", "neither width and height nor a viewBox");
    refused("<html/>", "<html>: this is no SVG");
    refused("no picture", "cannot be read as SVG");
    let text =
        svg("<rect id=\"slot-body\" x=\"1\" y=\"1\" width=\"-4\" height=\"3\" fill=\"none\"/><path d=\"M0 0h3v3z\"/>");
    let said = vet(&text).unwrap();
    assert!(
        said.iter().any(|line| line.message.contains("<rect id=\"slot-body\"> is left out: its width")),
        "{said:?}"
    );
    assert!(Frame::read(&text, &palette()).unwrap().slot("body").is_none());
}

const THEME: &str = r##"(
    format: 1, id: "t", name: "T", credit: "own",
    palette: {"ink": "#000000"}, lettering: {"text": "Alegreya"},
    frames: {"portrait": "art/bad.svg", "note": "art/odd.svg"}, symbols: {},
)"##;

#[test]
fn a_theme_keeps_out_what_is_refused_and_names_file_and_element() {
    let file = |path: &str, text: &str| (VPath::new(path).unwrap(), text.as_bytes().to_vec());
    let odd = svg("<script id=\"s\"/><path d=\"M0 0h3v3z\"/>");
    let bad = svg("<g id=\"a\"><use href=\"#a\"/></g>");
    let loaded =
        load(&Memory::with([file("theme.ron", THEME), file("art/bad.svg", &bad), file("art/odd.svg", &odd)]), "t");
    let loaded = loaded.unwrap();
    assert!(loaded.frame("portrait").is_none() && loaded.frame("note").is_some());
    let (lost, less) = (loaded.missing[0].to_string(), loaded.left_out[0].to_string());
    assert!(lost.contains("t/art/bad.svg") && lost.contains("refers to itself"), "{lost}");
    assert!(less.contains("t/art/odd.svg") && less.contains("<script id=\"s\">"), "{less}");
}

#[cfg(unix)]
#[test]
fn a_theme_reads_nothing_outside_its_folder() {
    let folder = tempfile::tempdir().unwrap();
    let (inside, outside) = (Disk::new(folder.path().join("theme")), Disk::new(folder.path()));
    let path = |text: &str| VPath::new(text).unwrap();
    outside.write(&path("secret.svg"), svg("<path d=\"M0 0h3v3z\"/>").as_bytes()).unwrap();
    inside.write(&path("theme.ron"), THEME.replace("art/odd.svg", "art/link.svg").as_bytes()).unwrap();
    inside.write(&path("art/bad.svg"), svg("").as_bytes()).unwrap();
    std::os::unix::fs::symlink(folder.path().join("secret.svg"), folder.path().join("theme/art/link.svg")).unwrap();
    let loaded = load(&inside, "t").unwrap();
    assert!(loaded.frame("note").is_none(), "a link led out of the folder");
    assert!(
        loaded.missing.iter().any(|trouble| trouble.to_string().contains("leads out of the folder")),
        "{:?}",
        loaded.missing
    );
}
