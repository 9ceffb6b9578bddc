use std::io::{Cursor, Write as _};

use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, DateTime, ZipWriter};

use crate::diag::{Hinted, Trouble};

/// All files in one zip file, below one folder, in the order given.
///
/// Every entry carries the format's first date (1980-01-01): the same files give the same bytes. PDF and PNG
/// are compressed already; what is drawn as SVG and the manifest are worth deflating.
pub(super) fn zip(folder: &str, files: &[(&str, &[u8])]) -> Hinted<Vec<u8>> {
    let failed = |error: &dyn std::fmt::Display| Trouble::new(format!("cannot make the zip file: {error}"));
    let mut writer = ZipWriter::new(Cursor::new(Vec::new()));
    let base = SimpleFileOptions::default().last_modified_time(DateTime::default()).unix_permissions(0o644);
    for (path, bytes) in files {
        let packed = path.ends_with(".pdf") || path.ends_with(".png");
        let method = if packed { CompressionMethod::Stored } else { CompressionMethod::Deflated };
        let options = base.compression_method(method);
        writer.start_file(format!("{folder}/{path}"), options).map_err(|error| failed(&error))?;
        writer.write_all(bytes).map_err(|error| failed(&error))?;
    }
    writer.finish().map(Cursor::into_inner).map_err(|error| failed(&error))
}
