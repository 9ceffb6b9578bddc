//! Whether the pictures of a legend can be told apart in print.

use crate::diag::{Hinted, Trouble};
use crate::face::Glance;
use crate::mechanics::Dressing;

/// Refuses symbols of which two look alike in grey.
pub(in crate::mechanics) fn refuse(names: &[&str], cx: &Dressing<'_>) -> Hinted<()> {
    let mut seen: Vec<(&str, Glance)> = Vec::new();
    for sign in names {
        let glance = Glance::of(&cx.symbol(sign)?)?;
        for (name, other) in &seen {
            if glance.alike(other) {
                return Err(Trouble::new(format!("the pictures `{name}` and `{sign}` look alike in print"))
                    .hint("name other symbols in `pictures`, or draw one of the two anew"));
            }
        }
        seen.push((sign, glance));
    }
    Ok(())
}
