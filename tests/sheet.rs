//! Tests of `sheet`.
