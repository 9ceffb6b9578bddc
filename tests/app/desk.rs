//! What lies on the desk beside the fields.

use eframe::egui::accesskit::Role;
use eframe::egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable as _;
use inklatch::ids::PropId;
use inklatch::kit::{Form, Printed, Prop};

use super::{click, press, rest, small, window};

#[test]
fn a_lock_shows_its_tag_and_a_box_the_envelope_that_it_is() {
    let folder = tempfile::tempdir().unwrap();
    let mut opened = small(folder.path());
    let kit = &mut opened.kit;
    let id = PropId::new("wrap").unwrap();
    let printed = Some(Printed::fresh(Form::Envelope));
    kit.props.push(Prop { id: id.clone(), place: kit.boxes[0].place.clone(), printed, ..kit.props[0].clone() });
    kit.boxes[0].printed = Some(id);
    let (lock, item) = (kit.locks[0].name.clone(), kit.boxes[0].name.clone());
    let tag = format!("Tag: {lock}");
    let mut harness = window(opened, false);
    press(&mut harness, Modifiers::COMMAND, Key::Num2);
    click(&mut harness, Role::Button, &lock);
    rest(&mut harness);
    assert!(harness.query_all_by_label_contains(&tag).next().is_some());
    click(&mut harness, Role::Button, &item);
    rest(&mut harness);
    assert!(harness.query_all_by_label_contains("139 × 250 mm").next().is_some());
}
