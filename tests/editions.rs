//! Tests of the editions: each is proven on its own, needs what it promises, and says what it is.

mod bundled;
mod large_print;
mod low_ink;

use inklatch::bundle::{Opened, open_in};
use inklatch::checks::{Proof, blocks, prove_edition};
use inklatch::diag::Level;
use inklatch::files::{Builtin, FontBook, VPath};
use inklatch::kit::Kit;
use inklatch::print::Press;
use inklatch::readings::Verdict;
use inklatch::redress::redress;
use inklatch::theme::{Edition, Lettering, Loaded, builtin_ids, load_builtin};

/// A demo kit in a theme, with a press.
pub struct Dressed {
    pub kit: Kit,
    pub theme: Loaded,
    pub press: Press,
}

/// Both demo kits in every built-in theme.
pub fn dressed() -> Vec<Dressed> {
    let bundled = FontBook::bundled().unwrap();
    let mut all = Vec::new();
    for id in ["the-stopped-clock", "the-harbour-regatta"] {
        let Opened { kit, theme: home, .. } = demo(id);
        for other in builtin_ids() {
            let theme = load_builtin(&other).unwrap();
            let kit = if kit.theme == other { kit.clone() } else { redress(&kit, &home.theme, &theme.theme).kit };
            let own = Builtin::below(VPath::new("themes").unwrap().join(other.as_str()).unwrap());
            let fonts = bundled.with_folder(&own, &VPath::new("fonts").unwrap()).unwrap();
            let lettering = Lettering::new(&theme.theme.lettering, &kit.look.lettering).unwrap();
            all.push(Dressed { press: Press::new(&fonts, &lettering).unwrap(), kit, theme });
        }
    }
    all
}

pub fn demo(id: &str) -> Opened {
    let files = Builtin::below(VPath::new("assets/kits").unwrap().join(id).unwrap());
    open_in(std::sync::Arc::new(files), VPath::new("kit.ron").unwrap()).unwrap()
}

/// Proves a kit in one edition and holds that nothing blocks and every puzzle has one reading.
pub fn sound(dressed: &Dressed, levels: &[Level], edition: Edition) -> Proof {
    let Dressed { kit, theme, press } = dressed;
    let proof = prove_edition(kit, theme, press, levels, edition).unwrap();
    let name = format!("{} in {}, {}", kit.id, theme.theme.id, edition.word());
    assert_eq!(proof.edition, edition);
    assert!(!blocks(&proof.findings), "{name}: {:#?}", proof.findings);
    for level in &proof.levels {
        for laid in &level.party.puzzles {
            assert_eq!(laid.verdict, Some(Verdict::One), "{name}: {}", laid.id);
        }
    }
    proof
}
