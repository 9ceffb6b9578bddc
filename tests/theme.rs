//! Tests of `theme`: what a theme file must hold, and that the built-in ones hold it.

#[path = "theme/drawn.rs"]
mod drawn;
#[path = "theme/fonts.rs"]
mod fonts;
#[path = "theme/guard.rs"]
mod guard;

use inklatch::checks::theme_findings;
use inklatch::diag::{Hinted, Severity};
use inklatch::face::{Frame, clean_svg};
use inklatch::files::{Builtin, FontBook, Memory, VPath};
use inklatch::ids::ThemeId;
use inklatch::theme::colour::Eyes;
use inklatch::theme::{Colour, FRAMES, LETTERING, Lettering, Loaded, Palette, builtin_ids, load, load_builtin};
use inklatch::units::Mm;

fn builtin() -> Vec<Loaded> {
    let ids = builtin_ids();
    assert!(ids.iter().any(|id| id.as_str() == "midwinter"), "{ids:?}");
    ids.iter().map(|id| load_builtin(id).unwrap_or_else(|trouble| panic!("{id}: {trouble}"))).collect()
}

fn palette(loaded: &Loaded) -> Palette {
    Palette::new(&loaded.theme.palette, &Default::default()).unwrap_or_else(|trouble| panic!("{trouble}"))
}

#[test]
fn built_in_themes_lack_no_picture() {
    for loaded in builtin() {
        assert!(loaded.missing.is_empty(), "{}: {:?}", loaded.theme.id, loaded.missing);
        assert!(!loaded.theme.credit.trim().is_empty(), "{} names no licence", loaded.theme.id);
    }
}

#[test]
fn built_in_themes_draw_every_frame_with_every_slot() {
    for loaded in builtin() {
        let palette = palette(&loaded);
        for info in FRAMES {
            let at = format!("{} {}", loaded.theme.id, info.name);
            let svg = loaded.frame(info.name).unwrap_or_else(|| panic!("{at} is missing"));
            let frame = Frame::read(svg, &palette).unwrap_or_else(|trouble| panic!("{at}: {trouble}"));
            for slot in info.slots {
                let rect = frame.slot(slot).unwrap_or_else(|| panic!("{at} has no slot {slot}"));
                let within = rect.x >= Mm::new(0.0)
                    && rect.y >= Mm::new(0.0)
                    && rect.right() <= frame.size.w + Mm::new(0.01)
                    && rect.bottom() <= frame.size.h + Mm::new(0.01);
                assert!(within, "{at}, slot {slot} leaves the frame: {rect:?} in {:?}", frame.size);
                assert!(rect.w >= Mm::new(5.0) && rect.h >= Mm::new(3.0), "{at}, slot {slot} is tiny: {rect:?}");
            }
            let slots: Vec<_> = info.slots.iter().filter_map(|slot| Some((slot, frame.slot(slot)?))).collect();
            for (index, (a, one)) in slots.iter().enumerate() {
                for (b, other) in &slots[index + 1..] {
                    let apart = one.right() <= other.x
                        || other.right() <= one.x
                        || one.bottom() <= other.y
                        || other.bottom() <= one.y;
                    assert!(apart, "{at}: the slots {a} and {b} overlap");
                }
            }
        }
        let token = Frame::read(loaded.frame("token").unwrap(), &palette).unwrap();
        let outline = token.outline.unwrap_or_else(|| panic!("{}: the token has no outline", loaded.theme.id));
        assert_eq!(outline.matches('M').count(), 1, "{}: the token is cut in one piece", loaded.theme.id);
        assert!(outline.ends_with('Z'), "{}: the token's outline is open", loaded.theme.id);
    }
}

#[test]
fn symbols_are_pictures_that_differ() {
    for loaded in builtin() {
        let palette = palette(&loaded);
        let mut seen = std::collections::BTreeMap::new();
        for name in loaded.theme.symbols.keys() {
            let svg =
                clean_svg(loaded.symbol(name).unwrap(), &palette).unwrap_or_else(|trouble| panic!("{name}: {trouble}"));
            assert!(svg.contains("<path"), "{name} is empty");
            if let Some(other) = seen.insert(svg, name) {
                panic!("{name} and {other} are the same picture");
            }
        }
        assert!(seen.len() >= 12, "{} has few symbols", loaded.theme.id);
    }
}

#[test]
fn the_palette_colours_the_art() {
    let loaded = load_builtin(&ThemeId::new("midwinter").unwrap()).unwrap();
    let svg = loaded.symbol("bell").unwrap();
    let changes = [("ink".to_owned(), "#123456".to_owned())].into();
    let changed = Palette::new(&loaded.theme.palette, &changes).unwrap();
    let (plain, dressed) = (clean_svg(svg, &palette(&loaded)).unwrap(), clean_svg(svg, &changed).unwrap());
    assert!(dressed.contains("#123456") && !plain.contains("#123456"));
}

#[test]
fn text_on_paper_can_be_read() {
    for loaded in builtin() {
        let palette = palette(&loaded);
        // WCAG 2.2, success criterion 1.4.6: 7 to 1 for text.
        let ratio = palette.get("ink").contrast(palette.get("paper"));
        assert!(ratio >= 7.0, "{}: {ratio}", loaded.theme.id);
    }
}

#[test]
fn the_lettering_is_of_bundled_fonts_or_the_themes_own() {
    let bundled = FontBook::bundled().unwrap();
    for loaded in builtin() {
        let folder = VPath::new("themes").unwrap().join(loaded.theme.id.as_str()).unwrap();
        let own = Builtin::below(folder);
        let families = bundled.with_folder(&own, &VPath::new("fonts").unwrap()).unwrap().families();
        let lettering = Lettering::new(&loaded.theme.lettering, &Default::default()).unwrap();
        for (role, _) in LETTERING {
            let family = lettering.family(role);
            assert!(families.iter().any(|known| known == family), "{}: {role}: {family}", loaded.theme.id);
        }
    }
}

/// The least CIEDE2000 difference that telling colours keep under every simulation. 2.3 is a just noticeable
/// difference in CIE76 (Mahy and others 1994, from memory); bands in a jar by lamplight want several times that
/// (common practice, no source).
const TELLING: f64 = 10.0;

#[test]
fn telling_colours_can_be_told_apart_by_all_eyes() {
    for loaded in builtin() {
        let colours: Vec<(&String, Colour)> =
            loaded.theme.colours.iter().map(|(name, hex)| (name, Colour::parse(hex).expect(hex))).collect();
        for (index, (a, one)) in colours.iter().enumerate() {
            for (b, other) in &colours[index + 1..] {
                for eyes in Eyes::ALL {
                    let difference = eyes.difference(*one, *other);
                    assert!(
                        difference >= TELLING,
                        "{}: {a} and {b} {}: {difference:.1}",
                        loaded.theme.id,
                        eyes.words()
                    );
                }
            }
        }
    }
}

#[test]
fn dressings_are_of_mechanics_and_parts_that_exist() {
    for loaded in builtin() {
        for id in loaded.theme.dressings.keys() {
            assert!(inklatch::mechanics::find(id).is_ok(), "{}: {id}", loaded.theme.id);
        }
    }
}

#[test]
fn an_unknown_theme_names_the_nearest() {
    let trouble = load_builtin(&ThemeId::new("midwintr").unwrap()).unwrap_err();
    assert!(trouble.hints.iter().any(|hint| hint == "did you mean `midwinter`?"), "{trouble}");
}

/// Loads a theme file of this text from memory, with one picture beside it.
fn load_text(text: &str) -> Hinted<Loaded> {
    let file = |path: &str, text: &str| (VPath::new(path).unwrap(), text.as_bytes().to_vec());
    let picture = r##"<svg xmlns="http://www.w3.org/2000/svg" width="10mm" height="10mm"><path d="M0 0H9V9Z"/></svg>"##;
    load(&Memory::with([file("theme.ron", text), file("art/a.svg", picture)]), "t")
}

const SMALL: &str = r##"(
    format: 1, id: "t", name: "T", credit: "own",
    palette: {"ink": "#000000"}, lettering: {"text": "Alegreya"},
    frames: {"portrait": "art/a.svg"}, symbols: {"dot": "art/gone.svg"},
)"##;

#[test]
fn a_missing_picture_is_a_finding_and_no_error() {
    let loaded = load_text(SMALL).unwrap_or_else(|trouble| panic!("{trouble}"));
    assert!(loaded.frame("portrait").is_some());
    assert!(loaded.symbol("dot").is_none());
    assert_eq!(loaded.missing.len(), 1);
    assert!(loaded.missing[0].place.as_deref().is_some_and(|place| place.contains("art/gone.svg")));
}

#[test]
fn bad_theme_files_say_where_and_what() {
    let refused = |old: &str, new: &str| load_text(&SMALL.replacen(old, new, 1)).expect_err(new).to_string();
    assert!(refused("format: 1", "format: 7").contains("format 7"));
    let text = refused("symbols", "symbls");
    assert!(text.contains("did you mean `symbols`?") && text.contains("t/theme.ron:4:"), "{text}");
    assert!(refused("art/a.svg", "../../etc/passwd").contains("climbs out"));
    assert!(refused("credit: \"own\",", "").contains("the field `credit` is missing"));
    assert!(refused("{\"text\"", "{\"text").contains("t/theme.ron:"));
    assert!(load(&Memory::new(), "t").is_err());
}

#[test]
fn unknown_roles_and_colours_are_refused() {
    let none = Default::default();
    let of = |name: &str, value: &str| [(name.to_owned(), value.to_owned())].into();
    assert!(Palette::new(&of("inc", "#000000"), &none).unwrap_err().message.contains("inc"));
    assert!(Palette::new(&of("ink", "black"), &none).unwrap_err().to_string().contains("#1F2A44"));
    assert!(Lettering::new(&of("texte", "Alegreya"), &none).is_err());
    assert!(Lettering::new(&of("display", "Almendra"), &none).unwrap_err().message.contains("text"));
    let lettering = Lettering::new(&of("text", "Alegreya"), &none).unwrap();
    assert_eq!(lettering.family("code"), "Alegreya");
}

/// Findings of a theme changed in one place, as `name: message` lines.
fn found(change: impl FnOnce(&mut Loaded), files: &Memory) -> Vec<String> {
    let mut loaded = load_builtin(&ThemeId::new("plain").unwrap()).unwrap();
    change(&mut loaded);
    let findings = theme_findings(&loaded, &FontBook::bundled().unwrap(), files, Some("plain"));
    findings
        .iter()
        .map(|finding| format!("{} {}: {}", finding.severity.word(), finding.name, finding.message))
        .collect()
}

#[test]
fn built_in_themes_are_without_a_finding() {
    for theme in inklatch::bundle::themes(None).unwrap() {
        assert_eq!(theme.source, inklatch::bundle::ThemeSource::Builtin);
        let said: Vec<String> = theme
            .findings
            .iter()
            // A mechanic that is new may still wait for words in every theme.
            .filter(|finding| finding.severity != Severity::Notes)
            .map(|finding| format!("{} {}", finding.name, finding.message))
            .collect();
        assert_eq!(said, [""; 0], "{}", theme.id);
    }
}

#[test]
fn what_a_theme_lacks_is_found() {
    let none = Memory::new();
    let says = |change: fn(&mut Loaded), line: &str| {
        let lines = found(change, &none);
        assert!(lines.iter().any(|found| found.contains(line)), "\"{line}\" is not said: {lines:#?}");
    };
    assert_eq!(found(|_| {}, &none).iter().filter(|line| !line.starts_with("notes")).count(), 0);
    says(|loaded| drop(loaded.theme.frames.remove("sign")), "blocks theme-incomplete: the frame `sign` is missing");
    says(
        |loaded| {
            let path = loaded.theme.frames["tag"].clone();
            let art = loaded.art[&path].replace("slot-title", "slot-titel");
            loaded.art.insert(path, art.into());
        },
        "blocks theme-incomplete: the frame `tag` has no slot `title`",
    );
    says(
        |loaded| {
            let path = loaded.theme.frames["token"].clone();
            let art = loaded.art[&path].replace("\"outline\"", "\"rim\"");
            loaded.art.insert(path, art.into());
        },
        "blocks theme-incomplete: the frame `token` has no cut line",
    );
    says(|loaded| drop(loaded.theme.palette.remove("glow")), "warns theme-incomplete: the colour `glow` is missing");
    says(|loaded| drop(loaded.theme.lettering.remove("hand")), "warns theme-incomplete: no font is named for `hand`");
    says(
        |loaded| drop(loaded.theme.dressings.remove("glow-ink")),
        "notes theme-incomplete: no words of its own for the parts of `glow-ink`",
    );
    says(
        |loaded| loaded.theme.symbols.retain(|name, _| name < &"c".to_owned()),
        "warns theme-incomplete: the theme has 3 symbols",
    );
    says(|loaded| loaded.theme.credit.clear(), "warns licence-missing: the theme Plain says neither");
    says(
        |loaded| drop(loaded.theme.colours.insert("amber".into(), "#F2C22C".into())),
        "blocks colours-alike: amber and yellow are",
    );
    // Told apart by full colour vision alone.
    says(
        |loaded| {
            loaded.theme.colours = [("red", "#C8483C"), ("green", "#7C7A1E")].map(|(a, b)| (a.into(), b.into())).into();
        },
        "colours-alike: green and red are",
    );
    says(
        |loaded| {
            let (bell, moon) = (loaded.theme.symbols["bell"].clone(), loaded.theme.symbols["moon"].clone());
            loaded.art.insert(bell, loaded.art[&moon].clone());
        },
        "warns pictures-alike: the symbols bell and moon look alike",
    );
    says(
        |loaded| drop(loaded.theme.palette.insert("ink".into(), "#9A9A9A".into())),
        "warns low-contrast: ink #9A9A9A on the grounds of ",
    );
    let pale = found(|loaded| drop(loaded.theme.palette.insert("ink".into(), "#9A9A9A".into())), &none);
    assert_eq!(pale.iter().filter(|line| line.contains("low-contrast")).count(), 1, "{pale:#?}");
    says(
        |loaded| {
            let part = loaded.theme.dressings.get_mut("letter-key").unwrap();
            part.insert("keycard".into(), "the list".into());
        },
        "warns theme-incomplete: `letter-key` has no part `keycard` to dress",
    );
    says(
        |loaded| {
            let bird = loaded.theme.words.remove("bird").unwrap();
            loaded.theme.words.insert("birdy".into(), bird);
        },
        "warns theme-incomplete: words that the built-in themes fill are missing: bird",
    );
    says(
        |loaded| {
            let bird = loaded.theme.words.remove("bird").unwrap();
            loaded.theme.words.insert("birdy".into(), bird);
        },
        "warns theme-incomplete: the word `birdy` is none that",
    );
    says(
        |loaded| drop(loaded.theme.words.insert("wagon".into(), Default::default())),
        "notes theme-incomplete: the word `wagon` is one of its own",
    );
    says(
        |loaded| {
            let path = loaded.theme.frames["portrait"].clone();
            let art = loaded.art[&path].replace("75mm", "75px").replace("105mm", "105px");
            loaded.art.insert(path, art.into());
        },
        "warns theme-incomplete: the frame `portrait` is 19.8 × 27.8 mm; 75 × 105 mm is usual",
    );
    says(
        |loaded| loaded.theme.id = ThemeId::new("night-stalls").unwrap(),
        "warns theme-incomplete: the folder is called `plain`, and the theme's `id` is `night-stalls`",
    );
    says(|loaded| loaded.theme.languages = vec!["cs".into(), "xx".into()], "notes glyph-missing: the language `xx`");
    let file = |path: &str| (VPath::new(path).unwrap(), vec![0_u8]);
    let lone = Memory::with([file("fonts/Odd-Regular.ttf"), file("fonts/Other-LICENCE.txt")]);
    assert!(found(|_| {}, &lone).iter().any(|line| line.contains("the font fonts/Odd-Regular.ttf has no licence")));
    let kept = Memory::with([file("fonts/Odd-Regular.ttf"), file("fonts/Odd-LICENCE.txt")]);
    assert!(!found(|_| {}, &kept).iter().any(|line| line.contains("licence")));
}

#[test]
fn the_usual_sizes_are_those_of_the_built_in_art() {
    for id in builtin_ids() {
        let loaded = load_builtin(&id).unwrap();
        let palette = Palette::new(&loaded.theme.palette, &Default::default()).unwrap();
        for (name, size) in inklatch::theme::SIZES {
            let svg = loaded.frame(name).or_else(|| loaded.ornament(name)).unwrap();
            let read = Frame::read(svg, &palette).unwrap().size;
            let near = |a: Mm, b: Mm| (a.get() - b.get()).abs() < 0.01;
            assert!(near(read.w, size.w) && near(read.h, size.h), "{name} in {id}: {read:?}");
        }
    }
}

#[test]
fn a_text_on_a_frame_that_is_too_small_is_not_told_to_be_short() {
    let mut opened = inklatch::bundle::open(None).unwrap();
    let path = opened.theme.theme.frames["portrait"].clone();
    let art = opened.theme.art[&path].replace("75mm", "75px").replace("105mm", "105px");
    opened.theme.art.insert(path, art.into());
    let press = inklatch::bundle::press_of(&opened).unwrap();
    let proof =
        inklatch::checks::prove(&opened.kit, &opened.theme, Some(&press), &[inklatch::diag::Level::Standard]).unwrap();
    let over: Vec<_> = proof.findings.iter().filter(|found| found.name == "text-overflows").collect();
    assert!(!over.is_empty());
    for found in over {
        assert!(found.help.iter().any(|help| help.contains("the theme's frame `portrait` at true size")), "{found:?}");
    }
}
