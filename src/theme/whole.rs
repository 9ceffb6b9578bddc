//! Whether a picture file is whole. A reader of its size alone takes half a file, which then stops an export or is printed
//! with a grey end.

use std::io::Cursor;

use crate::diag::{Hinted, Trouble};

/// Reads a PNG or JPEG to its end and answers its media type; none for a file of another kind, whatever its name says.
///
/// # Errors
/// When it is cut off or broken.
pub(super) fn whole(bytes: &[u8]) -> Hinted<Option<&'static str>> {
    if bytes.starts_with(&[0xFF, 0xD8]) {
        return jpeg(bytes).map(|()| Some("image/jpeg"));
    }
    if bytes.starts_with(&[0x89, b'P', b'N', b'G']) {
        return png(bytes).map(|()| Some("image/png"));
    }
    Ok(None)
}

/// Reads a PNG to its end.
///
/// # Errors
/// When it is cut off or broken.
fn png(bytes: &[u8]) -> Hinted<()> {
    let broken = |error: png::DecodingError| broken(&error.to_string());
    let mut reader = png::Decoder::new(Cursor::new(bytes)).read_info().map_err(broken)?;
    while reader.next_row().map_err(broken)?.is_some() {}
    Ok(())
}

/// Walks through the segments of a JPEG to its end (ITU-T T.81, B.1 and B.2): each begins with 0xFF and a marker, most with
/// their length after it; after a start of scan comes data, in which 0xFF stands before a zero or a restart only.
///
/// # Errors
/// When it is cut off or broken.
fn jpeg(bytes: &[u8]) -> Hinted<()> {
    const START: u8 = 0xD8;
    const END: u8 = 0xD9;
    const SCAN: u8 = 0xDA;
    let cut_off = || broken("it ends too early");
    let byte = |at: usize| bytes.get(at).copied().ok_or_else(cut_off);
    let mut at = 0;
    loop {
        if byte(at)? != 0xFF {
            return Err(broken(&format!("no marker stands at byte {at}")));
        }
        match byte(at + 1)? {
            END => return Ok(()),
            // A byte that fills up.
            0xFF => at += 1,
            START | 0x01 | 0xD0..=0xD7 => at += 2,
            marker => {
                let length = usize::from(byte(at + 2)?) << 8 | usize::from(byte(at + 3)?);
                at += 2 + length;
                while marker == SCAN && (byte(at)? != 0xFF || matches!(byte(at + 1)?, 0x00 | 0xD0..=0xD7)) {
                    at += 1;
                }
            }
        }
    }
}

fn broken(how: &str) -> Trouble {
    Trouble::new(format!("the picture is not whole: {how}")).hint("save or copy it again, as PNG or JPEG")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn encoded() -> Vec<u8> {
        let mut bytes = Vec::new();
        let mut encoder = png::Encoder::new(&mut bytes, 64, 64);
        encoder.set_color(png::ColorType::Grayscale);
        let noise: Vec<u8> = (0..64 * 64_u32).map(|at| (at.wrapping_mul(2_654_435_761) >> 24) as u8).collect();
        encoder.write_header().unwrap().write_image_data(&noise).unwrap();
        bytes
    }

    #[test]
    fn half_a_png_is_found_out() {
        let whole = encoded();
        assert!(png(&whole).is_ok());
        for part in [0, 8, 40, whole.len() / 2] {
            assert!(png(&whole[..part]).is_err(), "{part} of {} bytes", whole.len());
        }
    }

    #[test]
    fn half_a_jpeg_is_found_out() {
        // A start, a segment with what looks like markers in it, a filled-up scan with a stuffed byte and a restart, an end.
        let whole = [
            0xFF, 0xD8, 0xFF, 0xE1, 0, 6, 0xFF, 0xD9, 0xFF, 0xDA, 0xFF, 0xFF, 0xDA, 0, 2, 9, 0xFF, 0, 9, 0xFF, 0xD3, 9,
            0xFF, 0xD9, 7, 7,
        ];
        assert!(jpeg(&whole).is_ok());
        for part in 0..whole.len() - 2 {
            assert!(jpeg(&whole[..part]).is_err(), "{part} bytes");
        }
        assert!(jpeg(&[0xFF, 0xD8, 7, 7]).is_err());
    }
}
