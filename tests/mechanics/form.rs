//! Every setup has a form: each field told, each change written into the text, the rest of the text left alone.

use inklatch::mechanics::form::{FormField, Shape};
use inklatch::mechanics::{AnyMechanic, MECHANICS};
use serde_json::{Value, json};

fn fields_of(mechanic: &dyn AnyMechanic) -> Vec<FormField> {
    mechanic.form().unwrap_or_else(|trouble| panic!("{}: {trouble:?}", mechanic.meta().id))
}

#[test]
fn every_field_of_every_setup_is_told() {
    let mut untold = Vec::new();
    for mechanic in MECHANICS {
        let data = mechanic.setup_data(&mechanic.default_setup().unwrap()).unwrap();
        let fields = fields_of(*mechanic);
        let names: Vec<&String> = fields.iter().map(|field| &field.name).collect();
        let held: Vec<&String> = data.as_object().unwrap().keys().collect();
        assert_eq!(names.len(), held.len(), "{}: {names:?} {held:?}", mechanic.meta().id);
        for field in fields {
            assert!(data.get(&field.name).is_some(), "{}: {}", mechanic.meta().id, field.name);
            if field.help.is_empty() {
                untold.push(format!("{}: {}", mechanic.meta().id, field.name));
            }
        }
    }
    assert!(untold.is_empty(), "{untold:#?}");
}

/// Every other value that a control of this shape can bring about, one of each kind.
fn others(shape: &Shape, value: &Value) -> Vec<Value> {
    match shape {
        Shape::Switch => vec![json!(value != &json!(true))],
        Shape::Text => vec![json!("A \"quoted\", (bracketed) text: 'so' // and so"), json!("")],
        Shape::Letter => vec![json!("Q"), json!("'")],
        Shape::Whole(least, most) => vec![json!(least), json!(most)],
        Shape::Number => vec![json!(12.5), json!(-1.0)],
        Shape::Choice(choices) => choices
            .iter()
            .flat_map(|choice| match &choice.inside {
                None => vec![choice.blank()],
                Some(inside) => others(inside, &inside.blank())
                    .into_iter()
                    .map(|inside| json!({ choice.name.clone(): inside }))
                    .collect(),
            })
            .collect(),
        Shape::List(inner) => {
            let blank = inner.blank();
            let mut lists = vec![json!([]), json!([blank])];
            lists.extend(others(inner, &blank).into_iter().map(|other| json!([blank, other])));
            lists
        }
        Shape::Group(fields) => fields
            .iter()
            .flat_map(|field| {
                let change = |other: Value| {
                    let mut group = value.clone();
                    group[&field.name] = other;
                    group
                };
                others(&field.shape, &value[&field.name]).into_iter().map(change).collect::<Vec<_>>()
            })
            .collect(),
        Shape::Maybe(inner) => {
            let mut made = vec![Value::Null, inner.blank()];
            made.extend(others(inner, &inner.blank()));
            made
        }
    }
}

#[test]
fn what_a_form_changes_is_written_and_the_rest_stays() {
    for mechanic in MECHANICS {
        let id = mechanic.meta().id;
        let bare = "( // chosen at leisure\n)";
        let full = mechanic.default_setup().unwrap();
        let data = mechanic.setup_data(&full).unwrap();
        assert_eq!(mechanic.setup_text(&full, &data).unwrap(), full, "{id}");
        assert_eq!(mechanic.setup_text(bare, &data).unwrap(), bare, "{id}");
        for field in fields_of(*mechanic) {
            for other in others(&field.shape, &data[&field.name]) {
                let mut changed = data.clone();
                changed[&field.name] = other;
                for text in [bare, &full] {
                    // A type may refuse a value; then it says so and nothing is written.
                    let Ok(written) = mechanic.setup_text(text, &changed) else { continue };
                    let read = mechanic.setup_data(&written).unwrap_or_else(|e| panic!("{id}: {written}: {e:?}"));
                    // A type may keep a number more narrowly than the form does.
                    let again = mechanic.setup_text(&written, &read).unwrap();
                    assert_eq!(again, written, "{id}");
                    if !matches!(field.shape, Shape::Number) {
                        assert_eq!(read, changed, "{id}: {written}");
                    }
                    assert_eq!(text == bare, written.contains("// chosen at leisure"), "{id}: {written}");
                }
            }
        }
    }
}
