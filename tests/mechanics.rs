//! Tests of `mechanics`.
