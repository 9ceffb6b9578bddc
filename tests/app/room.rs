//! Room: in a small window nothing that is read or used runs over the edge of its column.

use eframe::egui::accesskit::Role;
use eframe::egui::vec2;
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT as _, Queryable as _};
use inklatch::app::App;
use inklatch::bundle::{DEMO_KITS, open_demo};

use super::{SETTLE, rest, window};

/// The least window, and one of 1440 by 900 points at 200 %.
const SMALL: [[f32; 2]; 2] = [[900.0, 560.0], [720.0, 450.0]];
/// Room for rounding.
const SLACK: f32 = 2.0;

/// The edges between outline, fields and desk; without a desk the fields reach to the window's edge.
fn edges(harness: &Harness<'_, App>, width: f32) -> (f32, f32) {
    let mut x: Vec<f32> = harness
        .root()
        .children_recursive()
        .filter(|node| node.accesskit_node().role() == Role::Splitter)
        .map(|node| node.rect())
        .filter(|rect| rect.height() > rect.width())
        .map(|rect| rect.center().x)
        .collect();
    x.sort_by(f32::total_cmp);
    (x.first().copied().unwrap_or_default(), x.get(1).copied().unwrap_or(width))
}

/// What runs over the edge of the column of fields.
fn over_the_edge(harness: &Harness<'_, App>, width: f32) -> Vec<String> {
    let (left, right) = edges(harness, width);
    let mut found = Vec::new();
    for node in harness.root().children_recursive() {
        let inner = node.accesskit_node();
        let read = matches!(
            inner.role(),
            Role::Label
                | Role::Button
                | Role::TextInput
                | Role::MultilineTextInput
                | Role::ComboBox
                | Role::CheckBox
                | Role::SpinButton
                | Role::Link
        );
        if !read || inner.raw_bounds().is_none() {
            continue;
        }
        let rect = node.rect();
        if rect.min.x > left - SLACK && rect.min.x < right - SLACK && rect.max.x > right + SLACK && rect.width() > 1.0 {
            let words = inner.label().or_else(|| inner.value()).unwrap_or_default();
            found.push(format!(
                "{:?} \"{words}\" {:.0} to {:.0}, edge {right:.0}",
                inner.role(),
                rect.min.x,
                rect.max.x
            ));
        }
    }
    found
}

#[test]
fn nothing_runs_over_the_edge_in_a_small_window() {
    let mut found = Vec::new();
    for kit in DEMO_KITS {
        found.extend(over_in(kit).into_iter().map(|what| format!("{kit}, {what}")));
    }
    found.dedup();
    assert!(found.is_empty(), "{}", found.join("\n"));
}

/// What runs over the edge anywhere in a demo kit.
fn over_in(kit: &str) -> Vec<String> {
    let mut harness = window(open_demo(kit).unwrap(), false);
    rest(&mut harness);
    let mut found = Vec::new();
    for [width, height] in SMALL {
        harness.set_size(vec2(width, height));
        harness.run_steps(SETTLE);
        for place in ["Write", "Build", "Dress", "Prove", "Print"] {
            harness.get_by_role_and_label(Role::Tab, place).click();
            harness.run_steps(SETTLE);
            let (left, _) = edges(&harness, width);
            let outline = |harness: &Harness<'_, App>| -> Vec<String> {
                let rows = harness.query_all_by_role(Role::Button);
                let rows = rows.filter(|row| row.rect().max.x <= left + SLACK && row.rect().min.y > 58.0);
                rows.filter_map(|row| row.accesskit_node().label()).filter(|row| !row.starts_with("Add a")).collect()
            };
            let rows = outline(&harness);
            assert!(rows.len() > 2, "{rows:?}");
            for (at, row) in rows.iter().enumerate() {
                let same = rows.iter().take(at).filter(|other| *other == row).count();
                let Some(node) = harness.query_all_by_role_and_label(Role::Button, row).nth(same) else {
                    panic!("{place}: no row {row} in {rows:?}");
                };
                node.click_accesskit();
                harness.run_steps(SETTLE);
                // The drawn flow is larger than any window, and is moved.
                if (place, row.as_str()) == ("Build", "Flow") {
                    continue;
                }
                let over = over_the_edge(&harness, width);
                found.extend(over.into_iter().map(|what| format!("{width} {place}, {row}: {what}")));
            }
        }
    }
    found
}
