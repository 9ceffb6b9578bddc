//! Who tells the truth, for the host.

use super::{View, read};
use crate::mechanics::solved::Solved;

pub(super) fn solved(view: &View) -> Option<Solved> {
    let liars = read::liars(view)?;
    let rows = view.speakers.iter().map(|speaker| {
        let told = !liars.contains(&speaker.name);
        let badge = if told { speaker.badge.to_string() } else { "–".to_owned() };
        vec![speaker.name.clone(), if told { "true" } else { "false" }.to_owned(), badge]
    });
    let head = ["Who", "What they say is", "Badge to read"].map(str::to_owned).to_vec();
    Some(Solved::Table { says: "From the top of the list down:".to_owned(), head, rows: rows.collect() })
}
