//! Checks by programs that were not written here: readers of PDF, fonts, zip.
