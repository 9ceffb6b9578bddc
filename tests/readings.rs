//! Tests of `readings`.
