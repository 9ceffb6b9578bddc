use std::collections::BTreeMap;

use super::{BATCH, Item, Job, Shown, draw_face, laid_out, scale};
use crate::bundle::{Opened, pairs, redone};
use crate::diag::Hinted;
use crate::ids::ThemeId;
use crate::print::Press;
use crate::theme::Lettering;

/// Each piece as it is and as another theme dresses it, in turn; pieces that only one of them has are left out.
pub fn beside(
    job: &Job,
    (opened, theme, symbols): (&Opened, &ThemeId, &BTreeMap<String, String>),
    press: &Press,
    shown: &mut Shown,
    stop: &dyn Fn() -> bool,
    report: &dyn Fn(Shown),
) -> Hinted<()> {
    let fresh = redone(opened, theme, false, symbols)?;
    shown.troubles.extend(fresh.troubles);
    let new = fresh.opened;
    let lettering = Lettering::new(&new.theme.theme.lettering, &new.kit.look.lettering)?;
    let new_press = Press::new(&new.fonts, &lettering)?;
    let before = laid_out(&job.kit, &job.theme, job, press)?;
    let after = laid_out(&new.kit, &new.theme, job, &new_press)?;
    for (at, (old, new)) in pairs(&before, &after).into_iter().enumerate() {
        let (Some(old), Some(new)) = (old, new) else { continue };
        if stop() {
            return Ok(());
        }
        if at > 0 && at % BATCH == 0 {
            report(shown.clone());
        }
        let backs = old.back.as_ref().zip(new.back.as_ref());
        let sides = [("", Some((&old.front, &new.front))), (", back", backs)];
        for (side, faces) in sides {
            let Some((before, after)) = faces else { continue };
            for (piece, face, press, tag) in
                [(old, before, press, "as it is"), (new, after, &new_press, theme.as_str())]
            {
                let label = format!("{}{side} ({tag})", piece.label);
                let item = draw_face(press, piece, face, side, scale(face.size, job.width_px / 2))?;
                shown.items.push(Item { label, ..item });
            }
        }
    }
    Ok(())
}
