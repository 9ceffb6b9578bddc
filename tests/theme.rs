//! Tests of `theme`.
