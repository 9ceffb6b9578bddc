//! What a picture may hold: shapes, and nothing that runs, reaches outside, or grows without bound.
//!
//! A picture that could harm is refused; what is merely of no use is left out when it is drawn, and said.

use std::collections::{BTreeMap, BTreeSet};

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use resvg::usvg::roxmltree::{Document, Node, ParsingOptions};

use super::ROLES;
use super::whole::whole;
use crate::diag::{Hinted, Trouble};
use crate::limits;

/// Elements that are left out when a picture is drawn, and why.
const IGNORED: &[(&str, &str)] = &[
    ("script", "a picture runs nothing"),
    ("foreignObject", "pages within a picture are not drawn"),
    ("text", "text is not drawn: turn it into paths, or leave it to the lettering"),
    ("animate", "a printed picture stands still"),
    ("animateTransform", "a printed picture stands still"),
    ("animateMotion", "a printed picture stands still"),
    ("set", "a printed picture stands still"),
    ("iframe", "pages within a picture are not drawn"),
    ("video", "a printed picture stands still"),
    ("audio", "paper is silent"),
];

/// Looks through an SVG picture. Answers what will be left out, each with the element at fault.
///
/// # Errors
/// When the picture is no XML, declares entities, nests or refers too deeply, holds too much, or has no size: it is
/// then not to be read at all.
pub fn vet(svg: &str) -> Hinted<Vec<Trouble>> {
    if svg.contains("<!ENTITY") {
        return Err(Trouble::new("<!ENTITY …>: the picture declares entities, which can grow without bound")
            .hint("save it again as plain SVG, without a document type"));
    }
    shallow(svg)?;
    let options = ParsingOptions { allow_dtd: true, nodes_limit: limits::SVG_NODES, ..ParsingOptions::default() };
    let document = Document::parse_with_options(svg, options).map_err(|error| {
        Trouble::new(format!("the picture cannot be read as SVG: {error}"))
            .hint("save it again as plain SVG from the drawing program")
    })?;
    let root = document.root_element();
    if root.tag_name().name() != "svg" {
        return Err(
            Trouble::new(format!("<{}>: this is no SVG picture", root.tag_name().name())).hint("save it as plain SVG")
        );
    }
    sized(root)?;
    grown(&document)?;
    let mut left_out = Vec::new();
    for node in document.descendants().filter(Node::is_element) {
        look(node, &mut left_out)?;
    }
    Ok(left_out)
}

/// Classes of a picture that are written as colour roles (`f-…`, `s-…`) and name none; each once, sorted. Those that the
/// picture's own style sheet knows are the drawing program's.
#[must_use]
pub fn unknown_roles(svg: &str) -> BTreeSet<String> {
    let options = ParsingOptions { allow_dtd: true, nodes_limit: limits::SVG_NODES, ..ParsingOptions::default() };
    let Ok(document) = Document::parse_with_options(svg, options) else { return BTreeSet::new() };
    let elements = || document.descendants().filter(Node::is_element);
    let sheets: String =
        elements().filter(|node| node.tag_name().name() == "style").filter_map(|node| node.text()).collect();
    let classes = elements().filter_map(|node| node.attribute("class")).flat_map(str::split_whitespace);
    let unknown = classes.filter(|class| {
        let role = class.strip_prefix("f-").or_else(|| class.strip_prefix("s-"));
        role.is_some_and(|role| !ROLES.iter().any(|known| known.name == role)) && !sheets.contains(&format!(".{class}"))
    });
    unknown.map(str::to_owned).collect()
}

/// Refuses what nests too deeply, before anything that follows the nesting reads it.
fn shallow(svg: &str) -> Hinted<()> {
    let mut depth = 0_usize;
    let mut rest = svg;
    while let Some(at) = rest.find('<') {
        rest = rest.get(at + 1..).unwrap_or_default();
        if let Some(comment) = rest.strip_prefix("!--") {
            rest = comment.find("-->").and_then(|end| comment.get(end..)).unwrap_or_default();
            continue;
        }
        if rest.starts_with(['!', '?']) {
            continue;
        }
        if rest.starts_with('/') {
            depth = depth.saturating_sub(1);
            continue;
        }
        let end = rest.find('>').unwrap_or(rest.len());
        if !rest.get(..end).is_some_and(|tag| tag.ends_with('/')) {
            depth += 1;
        }
        if depth > limits::SVG_DEPTH {
            return Err(Trouble::new(format!("the picture nests more than {} elements deep", limits::SVG_DEPTH))
                .hint("ungroup it in the drawing program and save it again"));
        }
    }
    Ok(())
}

/// Refuses a picture without a usable size.
fn sized(root: Node<'_, '_>) -> Hinted<()> {
    for name in ["width", "height"] {
        let Some(value) = root.attribute(name) else { continue };
        let number: f64 =
            value.trim_end_matches(|c: char| c.is_ascii_alphabetic() || c == '%').trim().parse().unwrap_or(0.0);
        if !(number > 0.0 && number <= limits::SVG_SIDE) {
            return Err(Trouble::new(format!("<svg {name}=\"{value}\">: a picture needs a size above nothing"))
                .hint("give it a width and a height in millimetres"));
        }
    }
    let boxed = root.attribute("viewBox").is_some();
    if !boxed && (root.attribute("width").is_none() || root.attribute("height").is_none()) {
        return Err(Trouble::new("<svg>: the picture has neither width and height nor a viewBox")
            .hint("give it a width and a height in millimetres"));
    }
    Ok(())
}

/// Refuses pictures whose elements refer to one another so that drawing them would take for ever: each element
/// weighs itself, what it holds, and what it refers to.
fn grown(document: &Document<'_>) -> Hinted<()> {
    let ids: BTreeMap<&str, Node<'_, '_>> =
        document.descendants().filter_map(|node| Some((node.attribute("id")?, node))).collect();
    let mut weights: BTreeMap<u32, u64> = BTreeMap::new();
    // A node stays on the way until all that it leans on is weighed; whoever meets it there has come round a ring.
    let mut way: Vec<(Node<'_, '_>, bool)> = vec![(document.root_element(), false)];
    let mut under: BTreeSet<u32> = BTreeSet::new();
    while let Some((node, ready)) = way.pop() {
        if weights.contains_key(&key(node)) {
            continue;
        }
        let leans: Vec<Node<'_, '_>> = node
            .children()
            .filter(Node::is_element)
            .chain(targets(node).filter_map(|id| ids.get(id).copied()))
            .collect();
        if ready {
            let sum =
                leans.iter().fold(1_u64, |sum, on| sum.saturating_add(weights.get(&key(*on)).copied().unwrap_or(0)));
            if sum > limits::SVG_DRAWN {
                return Err(Trouble::new(format!("{}: the picture draws its parts over and over", named(node)))
                    .hint("expand clones and symbols in the drawing program and save it again"));
            }
            under.remove(&key(node));
            weights.insert(key(node), sum);
            continue;
        }
        under.insert(key(node));
        way.push((node, true));
        for on in &leans {
            if under.contains(&key(*on)) {
                return Err(Trouble::new(format!("{}: the picture refers to itself", named(node)))
                    .hint("expand clones and symbols in the drawing program and save it again"));
            }
            if !weights.contains_key(&key(*on)) {
                way.push((*on, false));
            }
        }
    }
    Ok(())
}

fn key(node: Node<'_, '_>) -> u32 {
    node.id().get()
}

/// The ids to which an element's attributes point: `href="#a"`, `fill="url(#a)"`, `style="…url(#a)…"`.
fn targets<'a>(node: Node<'a, '_>) -> impl Iterator<Item = &'a str> {
    node.attributes().flat_map(|attribute| {
        let value = attribute.value();
        let direct = (attribute.name() == "href").then(|| value.trim().strip_prefix('#')).flatten();
        let urls = value.split("url(").skip(1).filter_map(|rest| {
            let rest = rest.trim_start_matches(['"', '\'', ' ']).strip_prefix('#')?;
            rest.split([')', '"', '\'', ' ']).next()
        });
        direct.into_iter().chain(urls)
    })
}

fn look(node: Node<'_, '_>, left_out: &mut Vec<Trouble>) -> Hinted<()> {
    let name = node.tag_name().name();
    if let Some((_, why)) = IGNORED.iter().find(|(ignored, _)| *ignored == name) {
        left_out.push(Trouble::new(format!("{} is left out: {why}", named(node))));
    }
    for attribute in node.attributes() {
        let (key, value) = (attribute.name(), attribute.value().trim());
        if key.len() > 2 && key.starts_with("on") && key.chars().all(|c| c.is_ascii_lowercase()) {
            left_out.push(Trouble::new(format!("{}: `{key}` is left out: a picture runs nothing", named(node))));
        }
        let data = value.starts_with("data:");
        if key == "href" && name != "a" && !value.starts_with('#') && !value.is_empty() {
            if name == "image" && data {
                inner(node, value)?;
            } else {
                let shown: String = value.chars().take(SHOWN).collect();
                left_out.push(
                    Trouble::new(format!(
                        "{}: \"{shown}\" is left out: a picture reads nothing outside itself",
                        named(node)
                    ))
                    .hint("embed the picture in the drawing program, and save it again"),
                );
            }
        }
        if let Some(outside) = outside(value) {
            left_out.push(Trouble::new(format!(
                "{}: \"{outside}\" is left out: a picture reads nothing outside itself",
                named(node)
            )));
        }
    }
    if name == "style"
        && let Some(text) = node.text()
        && (text.contains("@import") || outside(text).is_some())
    {
        left_out
            .push(Trouble::new("<style>: what it names outside is left out: a picture reads nothing outside itself"));
    }
    for side in ["width", "height"] {
        let negative = node.attribute(side).is_some_and(|value| value.trim().starts_with('-'));
        if negative {
            left_out.push(
                Trouble::new(format!("{} is left out: its {side} is below nothing", named(node)))
                    .hint("draw it anew; a slot is a plain rectangle"),
            );
        }
    }
    Ok(())
}

/// Characters of a reference that a message shows.
const SHOWN: usize = 60;

/// What a `url(…)` names outside the picture, if it does.
fn outside(value: &str) -> Option<String> {
    value.split("url(").skip(1).find_map(|rest| {
        let inner = rest.split(')').next()?.trim_matches(['"', '\'', ' ']);
        (!inner.starts_with('#') && !inner.starts_with("data:")).then(|| inner.chars().take(SHOWN).collect())
    })
}

/// Refuses a picture within the picture that is an SVG of its own, has too many pixels or is not whole.
fn inner(node: Node<'_, '_>, href: &str) -> Hinted<()> {
    let Some((head, body)) = href.split_once(',') else { return Ok(()) };
    if head.contains("svg") {
        return Err(Trouble::new(format!("{}: a drawing within the drawing is not read", named(node)))
            .hint("paste its shapes into the drawing itself"));
    }
    let packed: String = body.chars().filter(|c| !c.is_whitespace()).collect();
    let Ok(bytes) = STANDARD.decode(packed.as_bytes()) else { return Ok(()) };
    let Ok(size) = imagesize::blob_size(&bytes) else { return Ok(()) };
    let pixels = (size.width as u64).saturating_mul(size.height as u64);
    if pixels > limits::PICTURE_PIXELS {
        return Err(Trouble::new(format!(
            "{}: the picture within has {} × {} pixels; {} in all are allowed",
            named(node),
            size.width,
            size.height,
            limits::PICTURE_PIXELS
        ))
        .hint("scale it down: 600 pixels to the inch are enough in print"));
    }
    let broken = |trouble: Trouble| Trouble::new(format!("{}: {}", named(node), trouble.message));
    whole(&bytes).map_err(|trouble| broken(trouble).hint("embed the picture in the drawing anew"))?;
    Ok(())
}

/// An element by its name and id: `<rect id="slot-body">`.
fn named(node: Node<'_, '_>) -> String {
    match node.attribute("id") {
        Some(id) => format!("<{} id=\"{id}\">", node.tag_name().name()),
        None => format!("<{}>", node.tag_name().name()),
    }
}
