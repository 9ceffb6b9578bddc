//! Tests of `flow`.
