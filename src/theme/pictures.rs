use std::sync::Arc;

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;

use super::whole::whole;
use super::{Loaded, vet};
use crate::diag::{Hinted, Trouble};
use crate::files::{Files, VPath};
use crate::kit::Kit;
use crate::limits;

/// Loads the pictures that `kit` names from its own folder into `loaded`. One that is missing or cannot be read
/// goes onto [`Loaded::lost_pictures`]: the kit can still be opened and mended.
pub fn load_pictures(loaded: &mut Loaded, files: &dyn Files, kit: &Kit) {
    loaded.pictures.clear();
    loaded.lost_pictures.clear();
    loaded.less_pictures.clear();
    for path in kit.notes.iter().filter_map(|note| note.picture.as_ref()) {
        if loaded.pictures.contains_key(path) || loaded.lost_pictures.contains_key(path) {
            continue;
        }
        match picture(files, path) {
            Ok((svg, remarks)) => {
                loaded.less_pictures.extend(remarks.into_iter().map(|remark| (path.clone(), remark)));
                loaded.pictures.insert(path.clone(), svg);
            }
            Err(trouble) => {
                loaded.lost_pictures.insert(path.clone(), trouble);
            }
        }
    }
}

/// A picture as SVG text with what is left out of it; a PNG or JPEG is wrapped into one, inside a square so that it keeps its shape.
fn picture(files: &dyn Files, path: &VPath) -> Hinted<(Arc<str>, Vec<Trouble>)> {
    match path.extension().as_str() {
        "svg" => {
            let text = files.read_text(path, limits::SVG_BYTES)?;
            let remarks = vet(&text)?;
            return Ok((Arc::from(text), remarks));
        }
        "png" | "jpg" | "jpeg" => {}
        other => {
            return Err(Trouble::new(format!("a picture of the kind \"{other}\" cannot be used"))
                .hint("save it as SVG, PNG or JPEG"));
        }
    }
    let bytes = files.read(path, limits::PICTURE_BYTES)?;
    let unknown =
        || Trouble::new("the picture is no PNG or JPEG, or its beginning is lost").hint("save it again as PNG or JPEG");
    let size = imagesize::blob_size(&bytes).map_err(|_| unknown())?;
    // In u64, so that a header that lies about its size cannot overflow.
    let (w, h) = (size.width as u64, size.height as u64);
    if w == 0 || h == 0 || w.saturating_mul(h) > limits::PICTURE_PIXELS {
        return Err(Trouble::new(format!(
            "the picture has {w} × {h} pixels; {} in all are allowed",
            limits::PICTURE_PIXELS
        ))
        .hint("scale it down: 600 pixels to the inch are enough in print"));
    }
    let mime = whole(&bytes)?.ok_or_else(unknown)?;
    let side = w.max(h);
    let (x, y) = ((side - w) / 2, (side - h) / 2);
    let data = STANDARD.encode(&bytes);
    let wrapped = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{side}\" height=\"{side}\"><image x=\"{x}\" y=\"{y}\" \
         width=\"{w}\" height=\"{h}\" href=\"data:{mime};base64,{data}\"/></svg>"
    );
    Ok((Arc::from(wrapped), Vec::new()))
}
