//! The bundle: which file holds what, the host guide's content, the manifest.
