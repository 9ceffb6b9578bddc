//! What several tests use.
