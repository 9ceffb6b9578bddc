use rand::seq::SliceRandom as _;

use super::{Carrier, Direction, Setup, Symbol, View};
use crate::diag::{Hinted, Trouble};
use crate::limits;
use crate::mechanics::words::{any_symbol, symbols};
use crate::mechanics::{Job, Rng};

pub(super) fn lay_out(setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
    let answer = symbols(job.answer, job.lock)?;
    let (least, most) = limits::LID_MM;
    if !(least..=most).contains(&setup.lid_mm) {
        return Err(Trouble::new(format!("a lid disc of {} mm cannot be printed", setup.lid_mm))
            .hint(format!("give `lid_mm` from {least} to {most}")));
    }
    let (least, most) = limits::AROUND_MM;
    if !(least..=most).contains(&setup.around_mm) {
        return Err(Trouble::new(format!("{} mm is no way round a jar or across a tile", setup.around_mm))
            .hint(format!("give `around_mm` from {least} to {most}")));
    }
    if setup.carrier == Carrier::Tile && setup.printed && setup.around_mm > limits::PRINTED_MM {
        return Err(Trouble::new(format!("a sheet {} mm wide does not fit on the paper", setup.around_mm))
            .hint(format!("give `around_mm` up to {}, or set `printed: false`", limits::PRINTED_MM)));
    }
    if usize::from(setup.decoys) > limits::FIELD_MARKS {
        return Err(Trouble::new(format!("{} decoys are too many", setup.decoys))
            .hint(format!("take at most {}", limits::FIELD_MARKS)));
    }
    let count = answer.len() + usize::from(setup.decoys);
    let per_row = match setup.carrier {
        Carrier::Jar => count,
        // Rows a little longer than there are of them, as on a sheet that lies.
        Carrier::Tile => (1..=count).find(|row| row * row * 2 >= count * 3).unwrap_or(count),
    };
    let pitch = setup.around_mm / per_row as f64;
    if pitch < limits::SYMBOL_MM {
        let room = (setup.around_mm / limits::SYMBOL_MM).floor();
        return Err(Trouble::new(format!("{count} symbols do not fit on {} mm", setup.around_mm))
            .hint(format!("take fewer `decoys`, so that {room} symbols stand side by side at most, or a larger one")));
    }
    let mut lasting: Vec<bool> = (0..count).map(|index| index < answer.len()).collect();
    lasting.shuffle(rng);
    let mut order = answer;
    if setup.carrier == Carrier::Jar && setup.direction == Direction::Leftwards {
        order.reverse();
    }
    let mut next = order.into_iter();
    let mut placed = Vec::new();
    for (index, lasting) in lasting.into_iter().enumerate() {
        let text = if lasting { next.next() } else { None };
        placed.push(Symbol {
            text: text.unwrap_or_else(|| any_symbol(job.lock, rng)),
            lasting,
            row: u16::try_from(index / per_row).unwrap_or(u16::MAX),
            // To a tenth of a millimetre, so that the view reads back as it was written.
            at: ((index % per_row) as f64 * pitch * 10.0 + pitch * 5.0).round() / 10.0,
        });
    }
    Ok(View {
        carrier: setup.carrier,
        symbols: placed,
        start: setup.start,
        direction: setup.direction,
        around_mm: setup.around_mm,
        pitch_mm: pitch,
        printed: setup.printed,
        lid_mm: setup.lid_mm,
        label_title: setup.label_title.clone(),
        label_text: setup.label_text.clone(),
    })
}
