//! Tests of `app`.
