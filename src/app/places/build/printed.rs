use eframe::egui::Ui;

use crate::app::ctx::Ctx;
use crate::app::tokens::GAP_M;
use crate::app::widgets::{Field, UiExt as _};
use crate::ids::PropId;
use crate::kit::{Edge, Form, Printed, Prop};
use crate::limits;
use crate::script::capital;

/// Flags by how many of them a page takes: words, width and height in millimetres.
const FLAGS: &[(&str, (f64, f64))] =
    &[("One letter a page", (250.0, 197.0)), ("Two", (197.0, 122.0)), ("Four", (122.0, 96.0)), ("Six", (96.0, 80.0))];

/// What a prop is printed as; true when it changed.
pub fn printed_ui(ui: &mut Ui, cx: &Ctx<'_>, prop: &mut Prop) -> bool {
    ui.section("Printed");
    let mut prints = prop.printed.is_some();
    let mut changed = ui.checkbox(&mut prints, "The kit prints it, at its true size").changed();
    if changed {
        prop.printed = prints.then(|| Printed::fresh(Form::Label));
    }
    let Prop { id, printed: Some(printed), .. } = prop else { return changed };
    let forms: Vec<(Form, String)> = Form::ALL.iter().map(|form| (*form, capital(form.word()))).collect();
    let mut form = printed.form;
    if Field::new("As").salt(&*id).pick(ui, cx, &mut form, &forms, "") {
        // The words stay; sizes mean something else with each form.
        let old = std::mem::replace(printed, Printed::fresh(form));
        if !old.text.is_empty() && old.text != Printed::fresh(old.form).text {
            printed.text = old.text;
        }
        printed.back = old.back;
        printed.more = old.more;
        changed = true;
    }
    changed |= size_ui(ui, cx, id, printed);
    changed |= words_ui(ui, cx, id, printed);
    changed | making_ui(ui, cx, id, printed)
}

/// Number fields side by side.
fn row_ui(ui: &mut Ui, cx: &Ctx<'_>, id: &PropId, fields: &mut [(&str, &mut f64, (f64, f64))]) -> bool {
    let mut changed = false;
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = GAP_M;
        for (name, value, (least, most)) in fields {
            ui.make_room(150.0);
            ui.vertical(|ui| {
                ui.set_max_width(150.0);
                changed |= Field::new(name).salt(id).number(ui, cx, *value, *least..=*most, "mm");
            });
        }
    });
    changed
}

fn size_ui(ui: &mut Ui, cx: &Ctx<'_>, id: &PropId, printed: &mut Printed) -> bool {
    let (across, down, help) = match printed.form {
        Form::Banner => ("Flag, width", "Flag, height", "A space in the text is a flag with the theme's seal."),
        Form::Strip => ("Length", "Height", "Longer than a page is joined from several, with tabs to glue."),
        Form::Tent => ("Side, width", "Side, height", "It is folded in the middle and read from both sides."),
        Form::Envelope => ("Takes, width", "Takes, height", "The size of what is put into it, from above."),
        Form::Band => ("Way round", "Height", "Lay a string round the stack and measure it."),
        Form::Tag => ("Width", "Height", "The hole is at the upper end, or at the left of a lying tag."),
        Form::Label => ("Width", "Height", "The size of the side that it covers."),
        Form::Cover => ("Book, width", "Book, height", "Measure the closed book's board, then its back."),
        Form::Disc => ("Diameter", "", "The size of the lid that it covers."),
    };
    ui.quiet(help);
    ui.add_space(4.0);
    let bounds = limits::PROP_MM;
    let (w, h) = &mut printed.size;
    if printed.form == Form::Disc {
        let changed = row_ui(ui, cx, id, &mut [(across, w, bounds)]);
        *h = *w;
        return changed;
    }
    let mut changed = row_ui(ui, cx, id, &mut [(across, w, bounds), (down, h, bounds)]);
    if printed.form == Form::Banner {
        ui.horizontal_wrapped(|ui| {
            ui.label("Letters a page:");
            for (words, size) in FLAGS {
                let chosen = printed.size == *size;
                if ui.selectable_label(chosen, *words).clicked() && !chosen {
                    printed.size = *size;
                    changed = true;
                }
            }
        });
        ui.add_space(8.0);
    }
    changed
}

fn words_ui(ui: &mut Ui, cx: &Ctx<'_>, id: &PropId, printed: &mut Printed) -> bool {
    let form = printed.form;
    let help = match form {
        Form::Strip => "Without a text it shows the theme's seal again and again.",
        Form::Tent | Form::Tag | Form::Label => "Without a text it has a line to write on.",
        Form::Cover => "The first paragraph is the title, on the back of the book as well.",
        _ => "",
    };
    let rows = if matches!(form, Form::Banner | Form::Strip) { 1 } else { 3 };
    let mut changed = Field::new("What stands on it").salt(id).help(help).text(ui, cx, rows, &mut printed.text);
    if form.has_more() {
        let mut gone = None;
        for (at, text) in printed.more.iter_mut().enumerate() {
            let name = format!("Text of piece {}", at + 2);
            changed |= Field::new(&name).salt((id, at)).text(ui, cx, 2, text);
            if ui.lesser(true, "Take it out", &format!("Take out piece {}", at + 2)).clicked() {
                gone = Some(at);
            }
        }
        if let Some(at) = gone {
            printed.more.remove(at);
            changed = true;
        }
        if printed.more.len() + 1 < limits::PROP_TEXTS && ui.secondary("Add one with another text").clicked() {
            printed.more.push(String::new());
            changed = true;
        }
        ui.add_space(8.0);
    }
    if form.has_back() {
        let (name, help) = match form {
            Form::Tent => ("On the other side", "Empty: the same on both sides."),
            _ => ("On the back", ""),
        };
        changed |= Field::new(name).salt(id).help(help).text(ui, cx, 2, &mut printed.back);
    }
    changed
}

fn making_ui(ui: &mut Ui, cx: &Ctx<'_>, id: &PropId, printed: &mut Printed) -> bool {
    let mut changed = false;
    if printed.form == Form::Cover {
        let most = limits::PROP_PAGE.0;
        let (spine, flaps) = (&mut printed.spine, &mut printed.flaps);
        changed |= row_ui(ui, cx, id, &mut [("Spine", spine, (0.0, most)), ("Each flap", flaps, (0.0, most))]);
    }
    if printed.form == Form::Banner {
        let edges = [
            (Edge::Straight, "Straight".to_owned()),
            (Edge::Pointed, "In a point".to_owned()),
            (Edge::Forked, "In two points".to_owned()),
        ];
        changed |= Field::new("Lower edge").salt(id).pick(ui, cx, &mut printed.edge, &edges, "");
        let mut holed = printed.hole.is_some();
        if ui.checkbox(&mut holed, "Two holes for a string in each flag").changed() {
            printed.hole = holed.then_some(5.0);
            changed = true;
        }
    }
    if let Some(mut hole) = printed.holes()
        && row_ui(ui, cx, id, &mut [("Hole", &mut hole, limits::PROP_HOLE)])
    {
        printed.hole = Some(hole);
        changed = true;
    }
    if printed.form.is_glued() {
        let mut tab = printed.tab_width();
        if row_ui(ui, cx, id, &mut [("Tab to glue", &mut tab, limits::PROP_TAB)]) {
            printed.tab = Some(tab);
            changed = true;
        }
    }
    ui.vertical(|ui| {
        ui.set_max_width(150.0);
        changed |=
            Field::new("Copies of each").salt(id).number(ui, cx, &mut printed.copies, 1..=limits::PROP_COPIES, "");
    });
    changed
}
