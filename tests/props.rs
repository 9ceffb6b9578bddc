//! Printed props: their true sizes, their joins, and that every theme dresses them without a word left over.

use inklatch::checks::set_pieces;
use inklatch::diag::{Anchor, Level};
use inklatch::face::{Outline, Piece};
use inklatch::ids::{PropId, SpotId};
use inklatch::kit::file::{read_kit, write_kit};
use inklatch::kit::{Edge, Form, Kit, Place, Printed, Prop, PropRole};
use inklatch::limits;
use inklatch::party::Party;
use inklatch::prep::plan;
use inklatch::sheet::{Paper, impose};
use inklatch::theme::{Loaded, builtin_ids, load_builtin};

use crate::common::PRESS;

/// A kit with nothing but these printed props.
pub fn kit_of(props: Vec<Printed>) -> Kit {
    let mut kit = read_kit(&inklatch::bundle::scaffold("Props").unwrap(), "kit.ron").unwrap();
    kit.puzzles.clear();
    kit.locks.iter_mut().for_each(|lock| lock.tag = false);
    kit.notes.clear();
    kit.props = props
        .into_iter()
        .enumerate()
        .map(|(at, printed)| Prop {
            id: PropId::from_text(&format!("prop-{at}")),
            name: format!("the {} {at}", printed.form.word()),
            role: PropRole::Decoration,
            place: Place::Spot(SpotId::from_text("table")),
            material: String::new(),
            amount: Default::default(),
            used_up: false,
            made: false,
            about: String::new(),
            printed: Some(printed),
        })
        .collect();
    kit
}

fn of(form: Form, size: (f64, f64), text: &str) -> Printed {
    Printed { size, text: text.into(), ..Printed::fresh(form) }
}

/// One of everything, in sizes with a frame of the theme and without.
pub fn all() -> Vec<Printed> {
    vec![
        Printed { hole: Some(5.0), ..of(Form::Banner, (122.0, 96.0), "WE COME") },
        Printed { edge: Edge::Pointed, ..of(Form::Banner, (250.0, 197.0), "IM") },
        Printed { edge: Edge::Forked, hole: Some(6.0), ..of(Form::Banner, (96.0, 122.0), "Go") },
        of(Form::Strip, (620.0, 55.0), "PLEASE DO NOT WAKE IT"),
        of(Form::Strip, (500.0, 40.0), ""),
        of(Form::Strip, (240.0, 60.0), "SHORT"),
        Printed { copies: 3, ..of(Form::Tent, (95.0, 48.0), "") },
        Printed {
            more: vec!["Second Winder\n\nkeeps the rope".into(), "Reader".into()],
            back: "On duty".into(),
            ..of(Form::Tent, (95.0, 48.0), "First Winder")
        },
        of(Form::Envelope, (110.0, 100.0), "To the helpers of the town\n\nby hand, and in a hurry"),
        Printed { tab: Some(10.0), ..of(Form::Envelope, (70.0, 50.0), "Open me last") },
        of(Form::Band, (310.0, 45.0), "Not to be lent"),
        of(Form::Band, (190.0, 40.0), "Twelve cards"),
        Printed {
            more: vec![String::new(), "Fragile".into()],
            ..of(Form::Tag, (40.0, 70.0), "Turn to the right\n\nseven times")
        },
        of(Form::Tag, (110.0, 60.0), "To the tower"),
        of(Form::Tag, (50.0, 110.0), "Hang me up"),
        of(Form::Label, (140.0, 60.0), "Winter apples\n\nfrom the loft, not before twelve has struck"),
        of(Form::Label, (95.0, 58.0), "Spare cogs"),
        Printed {
            back: "Whoever finds this book, please bring it back up the stairs.".into(),
            spine: 22.0,
            flaps: 55.0,
            ..of(Form::Cover, (130.0, 185.0), "The Tower Log\n\nkept in all weathers")
        },
        Printed { spine: 8.0, flaps: 30.0, ..of(Form::Cover, (85.0, 120.0), "Songs\n\nfor one voice") },
        Printed { spine: 5.0, flaps: 0.0, ..of(Form::Cover, (110.0, 110.0), "Square") },
        of(Form::Disc, (80.0, 80.0), "Sugar"),
    ]
}

fn party(kit: &Kit, theme: &Loaded) -> Party {
    Party::new(kit, theme, Level::Standard).unwrap()
}

fn pieces_of(printed: Printed) -> Vec<Piece> {
    let theme = crate::common::plain_theme();
    let party = party(&kit_of(vec![printed]), &theme);
    assert!(party.troubles.is_empty(), "{:?}", party.troubles);
    party.pieces
}

fn size(piece: &Piece) -> (f64, f64) {
    (piece.front.size.w.get(), piece.front.size.h.get())
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() < 1e-6
}

#[test]
fn every_theme_dresses_every_prop_and_no_word_is_left_over() {
    for id in builtin_ids() {
        let theme = load_builtin(&id).unwrap();
        let kit = kit_of(all());
        let party = party(&kit, &theme);
        assert!(party.troubles.is_empty(), "{id}: {:?}", party.troubles);
        for piece in set_pieces(&PRESS, &party, &theme) {
            assert!(piece.trouble.is_none(), "{id}, {}: {:?}", piece.piece, piece.trouble);
            if !piece.piece.starts_with("prop-") {
                continue;
            }
            assert!(piece.missing.is_empty(), "{id}, {}: {:?}", piece.piece, piece.missing);
            for fit in piece.fits {
                assert!(!fit.overflows, "{id}, {}: {}", piece.piece, fit.words);
                assert!(fit.size.get() >= 8.95, "{id}, {}: {} at {}", piece.piece, fit.words, fit.size.get());
            }
        }
        for paper in Paper::ALL {
            let sheets = impose(&party.pieces, paper, inklatch::face::Audience::Players, "Props").unwrap();
            assert!(sheets.iter().all(|sheet| sheet.check_bar.is_some() || sheet.placed.iter().all(|p| !p.cut)));
        }
    }
}

#[test]
fn pieces_have_the_sizes_that_are_asked_for() {
    for (form, asked, flat) in [
        (Form::Label, (95.0, 58.0), (95.0, 58.0)),
        (Form::Label, (140.5, 61.25), (140.5, 61.25)),
        (Form::Tag, (40.0, 70.0), (40.0, 70.0)),
        (Form::Disc, (83.0, 83.0), (83.0, 83.0)),
        (Form::Tent, (95.0, 48.0), (95.0, 96.0)),
    ] {
        let made = pieces_of(of(form, asked, "Words"));
        assert_eq!(made.len(), 1);
        assert_eq!(size(&made[0]), flat, "{form:?}");
        assert!(made[0].measured);
    }
    let tent = &pieces_of(of(Form::Tent, (95.0, 48.0), "Words"))[0].front;
    assert_eq!(tent.folds.len(), 1);
    assert!(near(tent.folds[0].0.1.get(), 48.0));
    assert_eq!(pieces_of(of(Form::Disc, (83.0, 83.0), ""))[0].front.outline, Outline::Round);
}

/// Whoever stands on the far side reads the text upright: on the sheet it stands on its head.
#[test]
fn a_tent_card_is_upright_on_both_sides() {
    let front = &pieces_of(Printed { back: "There".into(), ..of(Form::Tent, (95.0, 48.0), "Here") })[0].front;
    let runs: Vec<(String, f64, bool)> =
        front.runs().map(|run| (run.text.text(), run.turn, run.rect.bottom().get() <= 48.0)).collect();
    assert_eq!(runs, [("There".to_owned(), 180.0, true), ("Here".to_owned(), 0.0, false)]);
}

#[test]
fn a_strip_is_as_long_as_asked_without_its_tabs() {
    for (length, text) in [(240.0, "SHORT"), (620.0, "PLEASE DO NOT WAKE IT"), (1100.0, "ELEVEN"), (900.0, "")] {
        let made = pieces_of(of(Form::Strip, (length, 55.0), text));
        let tabs = 12.0 * (made.len() - 1) as f64;
        let sum: f64 = made.iter().map(|piece| size(piece).0).sum();
        assert!(near(sum - tabs, length), "{length}: {sum}");
        assert!(made.iter().all(|piece| size(piece).0 <= limits::PROP_PAGE.1 && near(size(piece).1, 55.0)));
        let letters: String = made.iter().flat_map(|piece| piece.front.runs()).map(|run| run.text.text()).collect();
        let letters: String = letters.chars().filter(|c| !c.is_lowercase()).collect();
        for word in text.split(' ') {
            assert!(letters.contains(word.chars().next().unwrap_or('G')), "{letters}");
        }
        for (at, piece) in made.iter().enumerate().take(made.len() - 1) {
            assert!(piece.label.ends_with(&format!("part {} of {}, tab 12 mm", at + 1, made.len())), "{}", piece.label);
            let next = format!("part {}", at + 2);
            assert!(piece.front.runs().any(|run| run.text.text().to_lowercase().contains(&next)), "{next}");
        }
    }
}

#[test]
fn a_band_closes_to_its_girth() {
    for (girth, tab) in [(190.0, 12.0), (310.0, 15.0), (1200.0, 10.0)] {
        let made = pieces_of(Printed { tab: Some(tab), ..of(Form::Band, (girth, 45.0), "Shut") });
        let sum: f64 = made.iter().map(|piece| size(piece).0 - tab).sum();
        assert!(near(sum, girth), "{girth}: {sum}");
        let words: Vec<String> = made.iter().flat_map(|piece| piece.front.runs()).map(|run| run.text.text()).collect();
        assert_eq!(words.iter().filter(|words| *words == "Shut").count(), 1);
        assert!(made.last().unwrap().label.contains(&format!("{girth} mm round")), "{}", made.last().unwrap().label);
    }
}

#[test]
fn an_envelope_takes_what_it_is_made_for() {
    let front = &pieces_of(of(Form::Envelope, (110.0, 90.0), "To you"))[0].front;
    // The folds: flap, foot, and the two sides. Between them lies the front, 5 mm larger than what goes in.
    let [top, foot, left, right] = front.folds.as_slice() else { panic!("{:?}", front.folds) };
    assert!(near(right.0.0.get() - left.0.0.get(), 115.0));
    assert!(near(foot.0.1.get() - top.0.1.get(), 95.0));
    // The back ends 3 mm below the mouth, and the tabs lie behind it.
    assert!(near(front.size.h.get() - foot.0.1.get(), 92.0));
    assert!(near(left.0.0.get(), 12.0) && near(front.size.w.get() - right.0.0.get(), 12.0));
    assert!(top.0.1.get() >= 18.0, "a flap that closes");
}

#[test]
fn a_cover_goes_round_its_book() {
    let small = pieces_of(Printed { spine: 8.0, flaps: 20.0, ..of(Form::Cover, (90.0, 120.0), "One") });
    assert_eq!(small.len(), 1);
    assert_eq!(size(&small[0]), (20.0 + 90.0 + 8.0 + 90.0 + 20.0, 120.0));
    let folds: Vec<f64> = small[0].front.folds.iter().map(|fold| fold.0.0.get()).collect();
    assert_eq!(folds, [20.0, 110.0, 118.0, 208.0]);
    let large = pieces_of(Printed { spine: 22.0, flaps: 55.0, ..of(Form::Cover, (130.0, 185.0), "Two") });
    assert_eq!(large.len(), 2);
    let sum: f64 = large.iter().map(|piece| size(piece).0).sum();
    assert!(near(sum - 12.0, 55.0 + 130.0 + 22.0 + 130.0 + 55.0));
    assert!(large.iter().all(|piece| near(size(piece).1, 185.0)));
}

#[test]
fn a_banner_has_a_flag_for_each_letter() {
    let made = pieces_of(of(Form::Banner, (250.0, 197.0), "HI YOU"));
    assert_eq!(made.len(), 6);
    let letters: Vec<String> = made.iter().flat_map(|piece| piece.front.runs()).map(|run| run.text.text()).collect();
    assert_eq!(letters.concat(), "HIYOU");
    assert!(made.iter().all(|piece| size(piece) == (250.0, 197.0)));
    // One letter a page, on either paper.
    for paper in Paper::ALL {
        assert_eq!(impose(&made, paper, inklatch::face::Audience::Players, "Kit").unwrap().len(), 6);
    }
    for (flag, a_page) in [((197.0, 122.0), 2), ((122.0, 96.0), 4), ((96.0, 80.0), 6)] {
        let made = pieces_of(of(Form::Banner, flag, "TWELVESTRIKE"));
        for paper in Paper::ALL {
            let sheets = impose(&made, paper, inklatch::face::Audience::Players, "Kit").unwrap();
            assert_eq!(sheets.len(), 12 / a_page, "{flag:?} on {}", paper.word());
        }
    }
}

#[test]
fn what_fits_no_sheet_is_told_with_a_way_out() {
    for printed in [
        of(Form::Banner, (300.0, 200.0), "A"),
        of(Form::Strip, (400.0, 260.0), "A"),
        of(Form::Tent, (200.0, 130.0), "A"),
        of(Form::Envelope, (180.0, 150.0), "A"),
        of(Form::Band, (400.0, 200.0), "A"),
        of(Form::Tag, (210.0, 210.0), "A"),
        of(Form::Label, (260.0, 60.0), "A"),
        Printed { flaps: 90.0, ..of(Form::Cover, (160.0, 240.0), "A") },
        of(Form::Disc, (200.0, 200.0), "A"),
        of(Form::Label, (2.0, 60.0), "A"),
        of(Form::Label, (f64::NAN, f64::INFINITY), "A"),
        of(Form::Strip, (100.0, 60.0), "A strip with more letters than it has room"),
        of(Form::Strip, (5000.0, 60.0), "A"),
        of(Form::Banner, (120.0, 90.0), " "),
        Printed { hole: Some(18.0), ..of(Form::Tag, (20.0, 70.0), "A") },
        Printed { hole: Some(20.0), ..of(Form::Banner, (96.0, 30.0), "A") },
        Printed { tab: Some(1.0), ..of(Form::Strip, (400.0, 60.0), "AB") },
        Printed { copies: 0, ..of(Form::Label, (80.0, 60.0), "A") },
        Printed { more: vec![String::new(); 100], ..of(Form::Label, (80.0, 60.0), "A") },
        of(Form::Banner, (96.0, 80.0), &"A".repeat(200)),
    ] {
        let theme = crate::common::plain_theme();
        let said = format!("{printed:?}");
        let party = party(&kit_of(vec![printed]), &theme);
        let [(Anchor::Prop(_), trouble)] = party.troubles.as_slice() else { panic!("{said}: {:?}", party.troubles) };
        assert!(!trouble.hints.is_empty(), "{said}: {trouble}");
        assert!(party.pieces.is_empty(), "{said}");
    }
}

#[test]
fn a_kit_file_keeps_printed_props() {
    let kit = kit_of(all());
    let text = write_kit(&kit).unwrap();
    assert_eq!(read_kit(&text, "kit.ron").unwrap(), kit);
    let short = "(form: Disc, size: (70, 70), text: \"Lid\")";
    let printed: Printed = inklatch::kit::file::from_ron(short, "kit.ron").unwrap();
    assert_eq!(printed, Printed { size: (70.0, 70.0), text: "Lid".into(), ..Printed::fresh(Form::Disc) });
}

#[test]
fn the_host_is_told_what_they_take() {
    let mut kit = kit_of(all());
    kit.boxes.clear();
    let plan = plan(&kit, Level::Standard, &[], 2);
    for (at, prop) in kit.props.iter().enumerate() {
        let name = inklatch::script::capital(&prop.name);
        assert!(plan.tasks.iter().any(|task| task.what.starts_with(&format!("{name}: "))), "{at}");
    }
    for material in ["card-paper", "plain-paper", "scissors", "glue", "string", "hole-punch", "tape", "pencil"] {
        let line = plan.shopping.iter().find(|line| line.material == material);
        assert!(line.is_some_and(|line| line.amount > 0.0), "{material}");
    }
    let string = plan.shopping.iter().find(|line| line.material == "string").unwrap();
    // Two groups: banners of 7 × 122 and 2 × 96 mm with a metre over each, tags: five at 0.3 m.
    assert!((string.amount - 2.0 * (2.0 + 2.0 + 0.9 + 0.3 + 0.3)).abs() < 1e-6, "{}", string.amount);
}
