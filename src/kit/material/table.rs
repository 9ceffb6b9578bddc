use super::Material;
use super::caution::{self, Caution};

/// A thing that no caution is owed for, counted in `unit`.
const fn thing(id: &'static str, name: &'static str, unit: &'static str) -> Material {
    Material {
        id,
        name,
        unit,
        size: "",
        stand_in: "",
        at_home: false,
        used_up: false,
        caution: "",
        source: "",
        least_age: 3,
    }
}

impl Material {
    const fn size(mut self, size: &'static str) -> Self {
        self.size = size;
        self
    }
    const fn or(mut self, stand_in: &'static str) -> Self {
        self.stand_in = stand_in;
        self
    }
    const fn at_home(mut self) -> Self {
        self.at_home = true;
        self
    }
    const fn used_up(mut self) -> Self {
        self.used_up = true;
        self
    }
    const fn for_age(mut self, years: u8) -> Self {
        self.least_age = years;
        self
    }
    const fn careful(mut self, caution: Caution) -> Self {
        self.caution = caution.text;
        self.source = caution.source;
        self
    }
}

/// Every material that a mechanic or a kit may name, by what it is for.
///
/// Sizes, stand-ins, ages and the wish for reuse are common practice, no source.
pub const MATERIALS: &[Material] = &[
    // Paper and what shapes it.
    thing("card-paper", "card paper", "sheet")
        .size("160 to 250 g/m², if the printer takes it")
        .or("plain paper glued to thin card")
        .used_up(),
    thing("plain-paper", "plain printer paper", "sheet")
        .size("80 to 100 g/m²")
        .or("any paper the printer takes")
        .at_home()
        .used_up(),
    thing("tinted-paper", "off-white, cream or kraft paper", "sheet")
        .size("without optical brighteners: under the UV torch it must stay dark")
        .or("a book with old, yellowed pages")
        .used_up(),
    thing("corrugated-card", "corrugated card", "sheet")
        .size("at least as large as the printed board, about 3 mm thick")
        .or("the side of a parcel")
        .at_home(),
    thing("sheet-protector", "clear sheet protector", "piece")
        .size("to fit the paper; smooth, not embossed")
        .or("clear packing tape over the print"),
    thing("printer-film", "clear film for printers", "sheet")
        .size("of the paper's size, made for your kind of printer: inkjet or laser")
        .or("tracing paper, held with the other sheet against a window by day")
        .used_up()
        .careful(caution::FILM),
    thing("envelope", "envelope", "piece")
        .size("to take a card of 75 by 105 mm")
        .or("folded paper")
        .at_home()
        .used_up(),
    thing("sticker", "small sticker to close something with", "piece")
        .size("15 to 25 mm across")
        .or("a bit of paper tape, or of clear tape that peels off")
        .used_up(),
    thing("book", "old book with many pages", "piece")
        .size("about 130 by 185 mm, at least 15 mm thick")
        .or("a notebook with numbered pages, of paper that stays dark under a UV torch")
        .at_home(),
    thing("scissors", "scissors", "piece")
        .or("a craft knife and ruler, used by an adult")
        .at_home()
        .for_age(6)
        .careful(caution::SCISSORS),
    thing("ruler", "ruler", "piece").size("with millimetres").or("a tape measure").at_home(),
    thing("pin", "pin or needle", "piece")
        .or("the tip of a sharp pencil")
        .at_home()
        .for_age(6)
        .careful(caution::PIN),
    thing("safe-scissors", "blunt-tipped scissors", "piece")
        .size("made for children, with round tips; they must cut what the puzzle asks for")
        .or("a grown-up who cuts where they point")
        .for_age(4)
        .careful(caution::SCISSORS),
    thing("glue", "white glue", "bottle")
        .size("one small bottle")
        .or("a glue stick, or double-sided tape")
        .at_home()
        .for_age(6)
        .careful(caution::GLUE),
    thing("paper-fastener", "brass paper fastener", "piece")
        .size("legs of 15 to 20 mm, head of about 8 mm")
        .or("a short string through the hole, knotted on both sides")
        .careful(caution::SMALL_PARTS),
    thing("hole-punch", "hole punch", "piece")
        .size("for holes of 6 mm, as paper is punched (ISO 838)")
        .or("the point of a pencil, turned in the card until the hole is 6 mm wide")
        .at_home(),
    thing("tape", "clear tape", "roll").or("paper tape").at_home(),
    thing("string", "string", "metre").or("ribbon or wool").at_home().careful(caution::STRING),
    // What writes, shows and wipes.
    thing("pencil", "pencil", "piece").size("soft, with an eraser").or("any pen, with spare prints").at_home(),
    thing("uv-torch", "small UV torch", "piece")
        .size("low power, marked 385 to 395 nm, battery case shut by a screw")
        .or("a UV pen with its own lamp")
        .for_age(8)
        .careful(caution::UV_TORCH),
    thing("uv-pen", "UV pen (ink that shows under UV only)", "piece")
        .size("try it on the very paper, by daylight and under the torch")
        .or("a soft pencil, written small and faint: the torch then only lights it")
        .for_age(8)
        .careful(caution::INK),
    thing("permanent-marker", "permanent marker", "piece")
        .size("black, fine tip of 1 to 2 mm")
        .or("paint marker, dried as its label says")
        .for_age(8)
        .careful(caution::INK),
    thing("wipe-off-marker", "wipe-off (dry-erase) marker", "piece")
        .size("black, with a tip that writes as thick as the letters that stay")
        .or("water-based felt pen on smooth plastic")
        .for_age(6)
        .careful(caution::INK),
    thing("cloth", "soft dry cloth", "piece").size("a hand's size").or("a sock or paper towel").at_home(),
    // Jars and what fills them.
    thing("jar", "clear jar with a screw lid", "piece")
        .size("about 120 mm tall")
        .or("a clear plastic tub")
        .at_home()
        .careful(caution::GLASS),
    thing("tile", "smooth glazed tile", "piece")
        .size("about 200 by 150 mm, light in colour")
        .or("a printed sheet in a sheet protector")
        .careful(caution::TILE),
    thing("wooden-counters", "wooden counters or cut sticks", "piece")
        .size("25 to 40 mm, room for one digit")
        .or("large buttons or clothes pegs")
        .careful(caution::SMALL_PARTS),
    thing("elastic-bands", "small elastic bands, coloured", "piece")
        .size("to sit firmly on a counter; better a few more than are counted; latex-free if anyone is allergic")
        .or("coloured wool tied round")
        .for_age(4)
        .careful(caution::ELASTIC_BANDS),
    thing("printed-counters", "printed counter discs on card", "set")
        .or("wooden counters with bands")
        .careful(caution::SMALL_PARTS),
    // Magnets.
    thing("magnets", "flat ferrite magnets, large", "piece")
        .size("disc, at least 35 mm across, 3 to 5 mm thick; no small, strong (neodymium) ones")
        .or("squares of about 40 mm cut from a magnetic sheet")
        .for_age(14)
        .careful(caution::MAGNETS),
    thing("magnet-wand", "magnet on a stick", "piece")
        .size("magnet 8 to 15 mm across at the end of a handle, pressed or moulded in so that it cannot come out")
        .or("a magnetic pick-up tool from a tool shop")
        .for_age(8)
        .careful(caution::MAGNET_WAND),
    thing("steel-washers", "flat steel washers", "piece")
        .size("18 mm across (wide ones for M6 screws) or a little less, of plain steel: a magnet must hold them")
        .or("small coins that a magnet holds, as many copper-coloured ones are")
        .careful(caution::SMALL_PARTS),
    // Locks and boxes.
    thing("digit-padlock-3", "padlock with three digit wheels, code can be set", "piece")
        .size("shackle at most 7 mm thick where it hangs on a hasp, to pass its hole")
        .or("a padlock with four wheels, the last set to 0 and said so")
        .for_age(4)
        .careful(caution::LOCKS),
    thing("digit-padlock-4", "padlock with four digit wheels, code can be set", "piece")
        .size("shackle at most 7 mm thick where it hangs on a hasp, to pass its hole")
        .or("none: you hold the number, guests tell it to you, and for you this lock is then open")
        .for_age(4)
        .careful(caution::LOCKS),
    thing("letter-padlock", "padlock with letter wheels, code can be set", "piece")
        .size("wheels that carry the letters of the code; shackle at most 7 mm thick where it hangs on a hasp, to pass its hole")
        .or("none: you hold the word, guests say it to you, and for you this lock is then open")
        .for_age(4)
        .careful(caution::LOCKS),
    thing("direction-padlock", "padlock opened by pushes", "piece")
        .size("pushed up, down, left and right; code can be set; shackle at most 7 mm thick where it hangs on a hasp, to pass its hole")
        .or("a padlock with a digit wheel for each push: up is 1, right is 2, down is 3, left is 4; write that on a slip and lay it beside")
        .for_age(4)
        .careful(caution::LOCKS),
    thing("key-padlock", "padlock with a key", "piece")
        .size("keyed differently from any other in the kit; shackle at most 7 mm thick where it hangs on a hasp, to pass its hole; keep the second key")
        .or("a lock with wheels and a slip of paper with its code")
        .for_age(4)
        .careful(caution::LOCKS),
    thing("hasp", "lock-out hasp for up to six padlocks", "piece")
        .size("jaw about 25 mm, holes of 8 mm or more; try the padlocks on it before you set them: wide ones may not turn freely side by side")
        .or("a short steel chain through the chest's own staple, drawn tight: every padlock joins one link of its one end to one of its other, so that all must go; hole 1 is the pair next to the staple")
        .for_age(4)
        .careful(caution::LOCKS),
    thing("chest", "chest or box that a hasp can shut", "piece")
        .size("with a hasp and a staple that the jaw of the lock-out hasp passes; no gap for fingers")
        .or("a strong case with a buckle")
        .at_home()
        .careful(caution::LOCKS),
    thing("small-box", "small box or tin that a padlock can shut", "piece")
        .size("two holes or rings for one shackle")
        .or("a zip bag whose two zips take one shackle")
        .at_home()
        .careful(caution::LOCKS),
    thing("battery-light", "battery tea light", "piece")
        .size("battery case shut by a screw")
        .or("a lamp out of reach")
        .careful(caution::BATTERY_LIGHT),
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_caution_has_a_source_and_all_defer() {
        for row in MATERIALS {
            assert!(crate::ids::is_id(row.id) && !row.name.is_empty() && !row.unit.is_empty(), "{}", row.id);
            assert_eq!(row.caution.is_empty(), row.source.is_empty(), "{}", row.id);
            assert_eq!(MATERIALS.iter().filter(|other| other.id == row.id).count(), 1, "{}", row.id);
        }
        assert!(caution::DEFERS.contains("Local codes") && caution::DEFERS.contains("maker's label"));
    }
}
