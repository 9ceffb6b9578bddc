//! Tests of `party`.
