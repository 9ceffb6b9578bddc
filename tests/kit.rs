//! Tests of `kit`.
