//! Tests of `script`.
